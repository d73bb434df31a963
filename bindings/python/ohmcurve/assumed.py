# SPDX-License-Identifier: MIT
"""What is assumed when it is not stated."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from . import _ohmcurve

_PREFIX = "OHM_ASSUMED_"

ASSUMED: Mapping[str, float] = MappingProxyType(
    {
        name[len(_PREFIX) :].lower(): getattr(_ohmcurve, name)
        for name in dir(_ohmcurve)
        if name.startswith(_PREFIX)
    }
)
"""By name: ASSUMED["fan_c"] is OHM_ASSUMED_FAN_C of the header, and so on. All are
common practice.
"""
