# SPDX-License-Identifier: MIT
"""What can be asked: the list of settings, as the library knows it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from . import _ohmcurve
from ._text import whole


class Setting(NamedTuple):
    """One setting."""

    number: int
    """Its OHM_SETTING_ constant."""
    default: str
    """What holds without it."""
    allowed: str
    example: str
    meaning: str

    @classmethod
    def _of(cls, number: int) -> Setting:
        return cls(
            number,
            _ohmcurve.ohm_setting_default(number),
            whole(_ohmcurve.ohm_setting_allowed, number),
            _ohmcurve.ohm_setting_example(number),
            _ohmcurve.ohm_setting_meaning(number),
        )


_NUMBERS = [_ohmcurve.ohm_setting_at(index) for index in range(_ohmcurve.ohm_setting_count())]

SETTINGS: Mapping[str, Setting] = MappingProxyType(
    {_ohmcurve.ohm_setting_name(number): Setting._of(number) for number in _NUMBERS}
)
"""By name, in the order of the header: SETTINGS["fan_c"].default and so on."""


def refusal(name: str, allowed: list[str], sentence: str) -> TypeError:
    """The error of a keyword that is none of those allowed, with the nearest of them."""
    nearest = _ohmcurve.ohm_nearest(name, allowed)
    hint = f"did you mean {nearest}?" if nearest else f"there are {', '.join(allowed)}"
    return TypeError(f"{sentence} {name!r}: {hint}")
