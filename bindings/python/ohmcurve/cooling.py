# SPDX-License-Identifier: MIT
"""What a warm thing does in air that never changes."""

from __future__ import annotations

from . import _ohmcurve


def cooling_temperature(start_c: float, air_c: float, tau_h: float, after_h: float) -> float:
    """What a warm thing has cooled to in air that never changes."""
    return float(_ohmcurve.ohm_cooling_temperature(start_c, air_c, tau_h, after_h))


def cooling_hours(start_c: float, air_c: float, tau_h: float, t_c: float) -> float:
    """Hours after which it has come to a temperature."""
    return float(_ohmcurve.ohm_cooling_hours(start_c, air_c, tau_h, t_c))


def cooling_tau(start_c: float, air_c: float, t_c: float, after_h: float) -> float:
    """Its time constant, hours, from one temperature on the way."""
    return float(_ohmcurve.ohm_cooling_tau(start_c, air_c, t_c, after_h))
