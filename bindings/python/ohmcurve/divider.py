# SPDX-License-Identifier: MIT
"""A sensor below a module's pull-up resistor, and the resistors that shops carry."""

from __future__ import annotations

from . import _ohmcurve
from .word import Word


class Series(Word):
    """A series of preferred values, IEC 60063."""

    E12 = "E12"
    E24 = "E24"
    E96 = "E96"

    @property
    def _code(self) -> int:
        return int(getattr(_ohmcurve, "OHM_SERIES_" + self.name))


def divider_volts(r_ohm: float, pull_up_ohm: float, supply_volt: float = 5.0) -> float:
    """Volts at the module's pin with a resistance to ground below the pull-up."""
    return float(_ohmcurve.ohm_divider_volts(r_ohm, pull_up_ohm, supply_volt))


def divider_resistance(v_volt: float, pull_up_ohm: float, supply_volt: float = 5.0) -> float:
    """The resistance that leaves these volts at the pin."""
    return float(_ohmcurve.ohm_divider_resistance(v_volt, pull_up_ohm, supply_volt))


def preferred_nearest(r_ohm: float, series: Series | str = Series.E24) -> float:
    """The preferred value nearest to a resistance, by their ratio."""
    return float(_ohmcurve.ohm_preferred_nearest(r_ohm, Series(series)._code))
