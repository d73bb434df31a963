# SPDX-License-Identifier: MIT
"""A word out of a short list; each member is also its text."""

from __future__ import annotations

import enum
from typing import Any


class Word(str, enum.Enum):
    """A word out of a short list."""

    def __str__(self) -> str:
        return str(self.value)

    def __format__(self, format_spec: str) -> str:
        return format(str(self.value), format_spec)

    @classmethod
    def _missing_(cls, value: Any) -> Word:
        raise ValueError(f"{value!r} is no {cls.__name__}: pass one of {', '.join(cls)}")
