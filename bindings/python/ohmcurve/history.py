# SPDX-License-Identifier: MIT
"""What the air did while a car stood."""

from __future__ import annotations

import os
from array import array
from collections.abc import Iterable
from typing import Any

from . import _ohmcurve


class History:
    """What the air did while the car stood: straight between points. It never changes."""

    __slots__ = ("_history",)
    _history: Any

    def __init__(self, after_h: Iterable[float], t_c: Iterable[float]) -> None:
        """Hours after the engine was stopped, rising, and the temperatures then."""
        points = (array("d", after_h), array("d", t_c))
        self._history = _ohmcurve.ohm_history_new(points)

    @classmethod
    def _of(cls, made: Any) -> History:
        self = object.__new__(cls)
        self._history = made
        return self

    @classmethod
    def load(cls, path: str | os.PathLike[str]) -> History:
        """Read a file as a logger writes it: columns hours, minutes or time, and temp_c or
        temp_f; a line "# stopped: 21:40" when the times are of a clock.
        """
        return cls._of(_ohmcurve.ohm_history_load(path))

    @classmethod
    def parse(cls, text: str | bytes, *, name: str = "history") -> History:
        """Read the text of such a file; name is used in sentences."""
        return cls._of(_ohmcurve.ohm_history_parse(text, name))

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """Pairs of hours after the stop and degrees Celsius, in the order of time."""
        points: list[tuple[float, float]] = []
        for index in range(len(self)):
            after_h, t_c = _ohmcurve.ohm_history_point(self._history, index)
            points.append((after_h, t_c))
        return tuple(points)

    def __len__(self) -> int:
        return int(_ohmcurve.ohm_history_count(self._history))

    def __repr__(self) -> str:
        return f"<History of {len(self)} points>"

    def cooling(self, start_c: float, tau_h: float, after_h: float) -> float:
        """What a warm thing has cooled to in this air."""
        return float(_ohmcurve.ohm_history_cooling(self._history, start_c, tau_h, after_h))
