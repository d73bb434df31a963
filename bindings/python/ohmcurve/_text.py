# SPDX-License-Identifier: MIT
"""How the library's texts and numbers are told in Python."""

from __future__ import annotations

from typing import Any, Callable


def known(number: float) -> float | None:
    """The number; None when it is NaN, which stands for one that is not there."""
    return None if number != number else number


def whole(write: Callable[..., Any], *arguments: Any) -> str:
    """The whole text: asked for its length first, then for itself."""
    length, _ = write(*arguments, 0)
    _, text = write(*arguments, length + 1)
    return str(text)
