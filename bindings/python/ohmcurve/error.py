# SPDX-License-Identifier: MIT
"""What a failed call says of itself."""

from __future__ import annotations

import enum

from . import _ohmcurve


class Status(enum.IntEnum):
    """The kind of a failure."""

    OK = _ohmcurve.OHM_OK
    NULL_ARGUMENT = _ohmcurve.OHM_NULL_ARGUMENT
    BAD_ARGUMENT = _ohmcurve.OHM_BAD_ARGUMENT
    OUT_OF_RANGE = _ohmcurve.OHM_OUT_OF_RANGE
    BAD_SYNTAX = _ohmcurve.OHM_BAD_SYNTAX
    BAD_DEFINITION = _ohmcurve.OHM_BAD_DEFINITION
    NOT_FOUND = _ohmcurve.OHM_NOT_FOUND
    CANNOT_OPEN = _ohmcurve.OHM_CANNOT_OPEN
    TOO_LARGE = _ohmcurve.OHM_TOO_LARGE
    NO_MEMORY = _ohmcurve.OHM_NO_MEMORY


class Error(ValueError):
    """A bad definition, notation or value; str() of it is one sentence.

    A failed allocation raises MemoryError instead.
    """

    status: Status
    line: int | None
    """Line of the text it is about, 1 is the first; None when no line is meant."""
    column: int | None
    """Column in bytes, 1 is the first; None when none is meant."""

    def __init__(self, sentence: str, status: int, line: int = 0, column: int = 0) -> None:
        super().__init__(sentence, status, line, column)
        self.status = Status(status)
        self.line = line or None
        self.column = column or None

    @property
    def name(self) -> str:
        """Name of the status, "out_of_range"."""
        return str(_ohmcurve.ohm_status_name(self.status))

    def __str__(self) -> str:
        return str(self.args[0])
