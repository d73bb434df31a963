# SPDX-License-Identifier: MIT
"""What says how warm the sensor is."""

from __future__ import annotations

import enum
from dataclasses import dataclass
from typing import Any

from . import _ohmcurve


def read_temperature(text: str) -> float:
    """Degrees Celsius of a temperature with its unit: 21.5C, 70F, 294.7K."""
    return float(_ohmcurve.ohm_temperature_read(text))


def read_tolerance(text: str) -> float:
    """Percent of a tolerance: 5%."""
    return float(_ohmcurve.ohm_tolerance_read(text))


class ReferenceKind(enum.IntEnum):
    """What the temperature was taken from."""

    THERMOMETER = _ohmcurve.OHM_REFERENCE_THERMOMETER
    ICE = _ohmcurve.OHM_REFERENCE_ICE
    BOIL = _ohmcurve.OHM_REFERENCE_BOIL
    BOIL_ALTITUDE = _ohmcurve.OHM_REFERENCE_BOIL_ALTITUDE
    BOIL_PRESSURE = _ohmcurve.OHM_REFERENCE_BOIL_PRESSURE
    INFRARED = _ohmcurve.OHM_REFERENCE_INFRARED


_QUANTITIES = ("t_c", "altitude_m", "pressure_hpa")
_TOLD_BY = {
    ReferenceKind.THERMOMETER: "t_c",
    ReferenceKind.INFRARED: "t_c",
    ReferenceKind.BOIL_ALTITUDE: "altitude_m",
    ReferenceKind.BOIL_PRESSURE: "pressure_hpa",
}


@dataclass(frozen=True)
class Reference:
    """The temperature of the sensor and how well it is known.

    Reference(21.5) is a thermometer beside it; ice(), boil() and infrared() are the
    others. The accuracy is stated when limit_k (within this) or u_k (standard
    uncertainty of a further normal part) is given, the other being 0 then; otherwise
    it is assumed, and the finding says so.
    """

    t_c: float | None = None
    """None for ice and boiling water."""
    limit_k: float | None = None
    u_k: float | None = None
    kind: ReferenceKind = ReferenceKind.THERMOMETER
    altitude_m: float | None = None
    """Above sea level; of BOIL_ALTITUDE alone."""
    pressure_hpa: float | None = None
    """Where you stand, not reduced to sea level; of BOIL_PRESSURE alone."""

    def __post_init__(self) -> None:
        needed = _TOLD_BY.get(self.kind)
        given = [name for name in _QUANTITIES if getattr(self, name) is not None]
        if given != [needed] * (needed is not None):
            raise TypeError(
                f"{' and '.join(given) or 'nothing'} was given where a reference of the kind "
                f"{self.kind.name} takes {needed or 'nothing'}: use Reference(t_c), .ice(), "
                ".boil() or .infrared()"
            )

    @classmethod
    def ice(cls, *, limit_k: float | None = None, u_k: float | None = None) -> Reference:
        """Crushed ice and water, stirred."""
        return cls(None, limit_k, u_k, ReferenceKind.ICE)

    @classmethod
    def boil(
        cls,
        *,
        altitude_m: float | None = None,
        pressure_hpa: float | None = None,
        limit_k: float | None = None,
        u_k: float | None = None,
    ) -> Reference:
        """Boiling water: near sea level, at a height, or at a pressure as measured there."""
        kind = (
            ReferenceKind.BOIL_PRESSURE
            if pressure_hpa is not None
            else ReferenceKind.BOIL_ALTITUDE
            if altitude_m is not None
            else ReferenceKind.BOIL
        )
        return cls(None, limit_k, u_k, kind, altitude_m, pressure_hpa)

    @classmethod
    def infrared(
        cls, t_c: float, *, limit_k: float | None = None, u_k: float | None = None
    ) -> Reference:
        """An infrared thermometer aimed at it."""
        return cls(t_c, limit_k, u_k, ReferenceKind.INFRARED)

    @classmethod
    def parse(cls, text: str) -> Reference:
        """Read 21.5C, 70F, 294.7K, ice, boil, boil@1200m, boil@870hPa or infrared@80C,
        each with its limit or without: 21.5C+-1.
        """
        reference = _ohmcurve.ohm_reference()
        _ohmcurve.ohm_reference_read(text, reference)
        kind = ReferenceKind(reference.kind)
        names = [_TOLD_BY[kind]] if kind in _TOLD_BY else []
        if reference.accuracy != _ohmcurve.OHM_ASSUMED:
            names += ["limit_k", "u_k"]
        return cls(kind=kind, **{name: getattr(reference, name) for name in names})

    def _struct(self) -> Any:
        reference = _ohmcurve.ohm_reference()
        reference.kind = self.kind
        if self.limit_k is not None or self.u_k is not None:
            reference.accuracy = _ohmcurve.OHM_STATED
        for name in (*_QUANTITIES, "limit_k", "u_k"):
            setattr(reference, name, getattr(self, name) or 0.0)
        return reference
