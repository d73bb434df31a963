# SPDX-License-Identifier: MIT
"""Conformance probability of a measured quantity."""

from __future__ import annotations

from math import inf
from typing import NamedTuple

from . import _ohmcurve


class Conformance(NamedTuple):
    """Probabilities that a quantity lies below, inside and above its limits."""

    p_low: float
    p_within: float
    p_high: float


def conformance(
    *, value: float, u: float = 0.0, limit: float = 0.0, low: float = -inf, high: float = inf
) -> Conformance:
    """Conformance probability of a quantity measured once (JCGM 106:2012, clause 7).

    The error is a normal part of standard uncertainty u and an independent
    rectangular part within limit; all in one unit.
    """
    return Conformance(*_ohmcurve.ohm_conformance_of(value, u, limit, low, high))
