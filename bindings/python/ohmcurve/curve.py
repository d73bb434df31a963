# SPDX-License-Identifier: MIT
"""Resistance against temperature, one face over all models."""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Sized
from typing import Any, Callable, NamedTuple, TypeVar, overload

from . import _ohmcurve

_Out = TypeVar("_Out", bound=Sized)


class Range(NamedTuple):
    """The range of a curve, both ends included."""

    low_c: float
    high_c: float
    at_low_ohm: float
    at_high_ohm: float


def _doubles(values: Any) -> Any:
    """A buffer as it is, anything else as an array of double."""
    try:
        memoryview(values)
    except TypeError:
        return array("d", values)
    return values


def _filled(fill: Callable[[Any, Any], int], values: Any, out: Any) -> Any:
    source = _doubles(values)
    # Held, lest another thread resize the source before it is converted.
    with memoryview(source) as view:
        if out is None:
            out = array("d", bytes(array("d").itemsize)) * (view.nbytes // view.itemsize)
        fill(source, out)
    return out


class Curve:
    """A curve of an element. It never changes; threads may share it.

    Made by one of the methods named after its model, Curve.beta() and so on, or taken
    from a sensor or a fit.
    """

    __slots__ = ("_curve", "_owner")
    _curve: Any
    _owner: Any

    def __init__(self) -> None:
        raise TypeError("a curve is made by Curve.beta(), .points() and the like")

    @classmethod
    def _of(cls, curve: Any, owner: Any = None) -> Curve:
        # The curve of a sensor or a fit lives inside it, which owner keeps alive.
        self = object.__new__(cls)
        self._curve = curve
        self._owner = owner
        return self

    @classmethod
    def beta(
        cls, *, r0_ohm: float, t0_c: float, beta_k: float, low_c: float, high_c: float
    ) -> Curve:
        """Two-parameter model: 1/T = 1/T0 + ln(R/R0) / B."""
        return cls._of(_ohmcurve.ohm_curve_beta_new(r0_ohm, t0_c, beta_k, low_c, high_c))

    @classmethod
    def steinhart_hart(
        cls, *, a: float, b: float, c: float, low_c: float, high_c: float
    ) -> Curve:
        """Three-parameter model: 1/T = A + B ln(R) + C ln(R)^3."""
        return cls._of(_ohmcurve.ohm_curve_steinhart_hart_new(a, b, c, low_c, high_c))

    @classmethod
    def four_term(
        cls,
        *,
        r_ref_ohm: float,
        a1: float,
        b1: float,
        c1: float,
        d1: float,
        low_c: float,
        high_c: float,
    ) -> Curve:
        """Four-term model, canonical from resistance to temperature:
        1/T = A1 + B1 L + C1 L^2 + D1 L^3, L = ln(R/Rref).
        """
        return cls._of(
            _ohmcurve.ohm_curve_four_term_new(r_ref_ohm, a1, b1, c1, d1, low_c, high_c)
        )

    @classmethod
    def four_term_of_temperature(
        cls,
        *,
        r_ref_ohm: float,
        a: float,
        b: float,
        c: float,
        d: float,
        low_c: float,
        high_c: float,
    ) -> Curve:
        """Four-term model, canonical from temperature to resistance:
        ln(R/Rref) = A + B/T + C/T^2 + D/T^3.
        """
        return cls._of(
            _ohmcurve.ohm_curve_four_term_of_temperature_new(r_ref_ohm, a, b, c, d, low_c, high_c)
        )

    @classmethod
    def platinum(cls, *, r0_ohm: float, low_c: float, high_c: float) -> Curve:
        """Platinum element of IEC 60751: R = R0 (1 + A t + B t^2), below 0 C also
        + R0 C (t - 100) t^3.
        """
        return cls._of(_ohmcurve.ohm_curve_platinum_new(r0_ohm, low_c, high_c))

    @classmethod
    def silicon(
        cls,
        *,
        r25_ohm: float,
        alpha_per_k: float,
        beta_per_k2: float,
        low_c: float,
        high_c: float,
    ) -> Curve:
        """Silicon element that rises: R = R25 (1 + alpha D + beta D^2), D = t - 25."""
        return cls._of(
            _ohmcurve.ohm_curve_silicon_new(r25_ohm, alpha_per_k, beta_per_k2, low_c, high_c)
        )

    @classmethod
    def points(cls, *, t_c: Iterable[float], r_ohm: Iterable[float]) -> Curve:
        """Curve through printed points of an NTC element, which convert exactly: t_c
        rising, r_ohm falling.
        """
        return cls._of(_ohmcurve.ohm_curve_points_new((_doubles(t_c), _doubles(r_ohm))))

    @property
    def range(self) -> Range:
        """The temperatures it reaches from and to, and its resistance there."""
        return Range(*_ohmcurve.ohm_curve_range(self._curve))

    def temperature(self, r_ohm: float) -> float:
        """Temperature of the element from its resistance, degrees Celsius."""
        return float(_ohmcurve.ohm_curve_temperature(self._curve, r_ohm))

    def resistance(self, t_c: float) -> float:
        """Resistance of the element at a temperature, ohm."""
        return float(_ohmcurve.ohm_curve_resistance(self._curve, t_c))

    def alpha(self, t_c: float) -> float:
        """Temperature coefficient (1/R) dR/dT at a temperature, per kelvin."""
        return float(_ohmcurve.ohm_curve_alpha(self._curve, t_c))

    @overload
    def temperatures(self, r_ohm: Iterable[float], out: None = None) -> array[float]: ...
    @overload
    def temperatures(self, r_ohm: Iterable[float], out: _Out) -> _Out: ...
    def temperatures(self, r_ohm: Iterable[float], out: Any = None) -> Any:
        """Temperatures of an array of resistances; NaN where there is none.

        r_ohm is a buffer of float64 or any sequence of numbers; a buffer of one dimension
        may have gaps, such as a column of a record array. The results go into out, a
        writable buffer of the same length that may be r_ohm itself, or else into a new
        array.array("d"); they are also returned.
        """
        return _filled(self.temperatures_into, r_ohm, out)

    def temperatures_into(self, r_ohm: Iterable[float], out: Any) -> int:
        """Fill out as temperatures() does; return how many of it are NaN."""
        return int(_ohmcurve.ohm_curve_temperatures(self._curve, (_doubles(r_ohm), out)))

    @overload
    def resistances(self, t_c: Iterable[float], out: None = None) -> array[float]: ...
    @overload
    def resistances(self, t_c: Iterable[float], out: _Out) -> _Out: ...
    def resistances(self, t_c: Iterable[float], out: Any = None) -> Any:
        """Resistances at an array of temperatures, as temperatures() does it."""
        return _filled(self.resistances_into, t_c, out)

    def resistances_into(self, t_c: Iterable[float], out: Any) -> int:
        """Fill out as resistances() does; return how many of it are NaN."""
        return int(_ohmcurve.ohm_curve_resistances(self._curve, (_doubles(t_c), out)))

    def __repr__(self) -> str:
        low_c, high_c, at_low_ohm, at_high_ohm = self.range
        return f"<Curve {low_c:g} to {high_c:g} C, {at_low_ohm:.4g} to {at_high_ohm:.4g} ohm>"
