# SPDX-License-Identifier: MIT
"""Curves fitted to points, and how well they are known."""

from __future__ import annotations

import enum
from collections.abc import Iterable
from typing import Any, NamedTuple

from . import _ohmcurve
from ._text import known
from .curve import Curve
from .sensor import Sensor, Temperature
from .word import Word


class FitModel(Word):
    """What can be fitted, by the name of its method of Curve."""

    BETA = "beta"
    """From 2 points; t0_c is 25."""
    STEINHART_HART = "steinhart_hart"
    """From 3."""
    FOUR_TERM = "four_term"
    """From 4."""


class FitBasis(enum.IntEnum):
    """What the intervals of a fit rest on."""

    NO_INTERVAL = _ohmcurve.OHM_FIT_NO_INTERVAL
    KNOWN = _ohmcurve.OHM_FIT_KNOWN
    """The uncertainties given, as they are, never scaled."""
    SCATTER = _ohmcurve.OHM_FIT_SCATTER
    """The scatter about the fit."""

    @property
    def sentence(self) -> str:
        """What they rest on, or why there are none."""
        return str(_ohmcurve.ohm_fit_basis_text(self))


class FitPoint(NamedTuple):
    """A point a curve is fitted to; an uncertainty of 0 is not known."""

    t_c: float
    r_ohm: float
    u_t_k: float = 0.0
    """Standard uncertainty of the temperature, kelvin."""
    u_r_ohm: float = 0.0
    """Standard uncertainty of the resistance."""


class Parameter(NamedTuple):
    """A parameter of a fitted curve and its standard uncertainty: 0 for one that was
    chosen, None when there is no interval.
    """

    value: float
    u: float | None


class Fit:
    """A curve fitted to points by fit(), and how well it is known. It never changes. What
    is not known is None.
    """

    __slots__ = ("_count", "_fit", "_model")
    _count: int
    _fit: Any
    _model: FitModel

    def __init__(self) -> None:
        raise TypeError("a fit is made by fit(points)")

    @classmethod
    def _of(cls, made: Any, model: FitModel, count: int) -> Fit:
        self = object.__new__(cls)
        self._fit = made
        self._count = count
        self._model = model
        return self

    @property
    def model(self) -> FitModel:
        """What was fitted."""
        return self._model

    @property
    def curve(self) -> Curve:
        """The fitted curve, which keeps what it needs of the fit alive."""
        return Curve._of(_ohmcurve.ohm_fit_curve(self._fit), owner=self._fit)

    @property
    def coefficients(self) -> dict[str, Parameter]:
        """By name, in the order of the curve's own: as its method of Curve takes them."""
        found: dict[str, Parameter] = {}
        while (name := _ohmcurve.ohm_fit_parameter_name(self._fit, len(found))) is not None:
            value, u = _ohmcurve.ohm_fit_parameter(self._fit, len(found))
            found[name] = Parameter(value, known(u))
        return found

    def _matrix(self, which: int) -> tuple[tuple[float, ...], ...] | None:
        if self.basis is FitBasis.NO_INTERVAL:
            return None
        each = range(len(self.coefficients))
        return tuple(
            tuple(_ohmcurve.ohm_fit_covariance(self._fit, row, column)[which] for column in each)
            for row in each
        )

    @property
    def covariance(self) -> tuple[tuple[float, ...], ...] | None:
        """Rows of the covariance matrix of the coefficients, in their order."""
        return self._matrix(0)

    @property
    def correlation(self) -> tuple[tuple[float, ...], ...] | None:
        """Rows of their correlation matrix; a parameter that was chosen has none with others."""
        return self._matrix(1)

    @property
    def basis(self) -> FitBasis:
        """What the intervals rest on."""
        return FitBasis(_ohmcurve.ohm_fit_basis_of(self._fit))

    @property
    def degrees_of_freedom(self) -> int:
        """Points less coefficients."""
        return int(_ohmcurve.ohm_fit_degrees(self._fit))

    @property
    def residuals_k(self) -> tuple[float, ...]:
        """Fitted temperature less that of each point, in the order given."""
        return tuple(
            _ohmcurve.ohm_fit_residual_k(self._fit, index) for index in range(self._count)
        )

    @property
    def scatter_k(self) -> float | None:
        """Scatter of the points about the fit, one standard deviation; None when the
        uncertainties are known, or nothing is left to tell it from.
        """
        return known(_ohmcurve.ohm_fit_scatter_k(self._fit))

    @property
    def chi_square(self) -> float | None:
        """Chi-square of the points about the fit; None when their uncertainties are not
        known, or there are only as many as coefficients.
        """
        return known(_ohmcurve.ohm_fit_chi_square(self._fit)[0])

    @property
    def p(self) -> float | None:
        """Probability that chance alone exceeds chi_square. Near 0: the model does not
        follow the points, or their uncertainties are too small; near 1: too large.
        """
        return known(_ohmcurve.ohm_fit_chi_square(self._fit)[1])

    @property
    def misfit_k(self) -> float | None:
        """What the uncertainties do not explain, one standard deviation alike at every
        point; in no other figure. None where there is no chi_square.
        """
        return known(_ohmcurve.ohm_fit_misfit_k(self._fit))

    def temperature(self, r_ohm: float, level: float = 0.95) -> Temperature:
        """Temperature from a resistance, with what the points leave uncertain of the
        curve: the uncertainty of the resistance and the misfit are not in it.
        """
        return Temperature._of(_ohmcurve.ohm_fit_temperature(self._fit, r_ohm, level))

    def sensor(self, *, name: str) -> Sensor:
        """A sensor of that name; its file keeps the covariance."""
        return Sensor._of(_ohmcurve.ohm_fit_sensor_new(self._fit, name))

    def __repr__(self) -> str:
        return f"<Fit {self.model} of {self._count} points: {self.curve!r}>"


def fit(
    points: Iterable[FitPoint | tuple[float, ...]],
    *,
    model: str | FitModel = FitModel.BETA,
    r_ref_ohm: float = 0.0,
    low_c: float = 0.0,
    high_c: float = 0.0,
) -> Fit:
    """Fit a curve to points: exactly when there are as many as coefficients, else by
    least squares of temperature.

    points     FitPoint, or tuples (t_c, r_ohm), (t_c, r_ohm, u_t_k) and so on; all with
               an uncertainty or none
    model      "beta", "steinhart_hart", "four_term", or a FitModel
    r_ref_ohm  Rref of the four-term form; 0: that of the point nearest to 25 C
    low_c, high_c  range the curve is to have; both 0: the span of the points
    """
    request = _ohmcurve.ohm_fit_request()
    chosen = FitModel(model)
    request.model = getattr(_ohmcurve, f"OHM_FIT_{chosen.name}")
    request.r_ref_ohm = r_ref_ohm
    request.low_c = low_c
    request.high_c = high_c
    given = [FitPoint(*point) for point in points]
    array = _ohmcurve.fit_points(len(given))
    for index, point in enumerate(given):
        one = _ohmcurve.ohm_fit_point()
        one.t_c, one.r_ohm, one.u_t_k, one.u_r_ohm = point
        array[index] = one
    made = _ohmcurve.ohm_curve_fit(array.cast(), len(given), request)
    return Fit._of(made, chosen, len(given))
