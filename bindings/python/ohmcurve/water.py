# SPDX-License-Identifier: MIT
"""Where water boils."""

from __future__ import annotations

from . import _ohmcurve


def water_boiling(pressure_hpa: float) -> float:
    """Temperature at which water boils, degrees Celsius; the pressure is absolute."""
    return float(_ohmcurve.ohm_water_boiling(pressure_hpa))


def water_pressure(altitude_m: float) -> float:
    """Pressure of the standard atmosphere at a height, hectopascal."""
    return float(_ohmcurve.ohm_water_pressure(altitude_m))
