# SPDX-License-Identifier: MIT
"""Resistances and temperatures as they are written."""

from __future__ import annotations

from . import _ohmcurve


def read_resistance(text: str) -> float:
    """Ohm of 2310, 2.31k, 2k31, 2.31 kohm or 0R47."""
    return float(_ohmcurve.ohm_resistance_read(text))


def read_temperature(text: str) -> float:
    """Degrees Celsius of 21.5C, 70F or 294.7K."""
    return float(_ohmcurve.ohm_temperature_read(text))
