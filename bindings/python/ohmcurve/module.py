# SPDX-License-Identifier: MIT
"""What a control module reports."""

from __future__ import annotations

from . import _ohmcurve


def reported_of(t_c: float, *, cut: bool = False) -> float:
    """What a module reports of a temperature: whole degrees of one byte, rounded to the
    nearest or cut off to the next below.
    """
    return float(_ohmcurve.ohm_reported_of(t_c, int(cut)))
