# SPDX-License-Identifier: MIT
"""Texts the library writes into a buffer."""

from __future__ import annotations

from typing import Any, Callable


def whole(write: Callable[..., Any], *arguments: Any) -> str:
    """The whole text: asked for its length first, then for itself."""
    length, _ = write(*arguments, 0)
    _, text = write(*arguments, length + 1)
    return str(text)
