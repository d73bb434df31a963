# SPDX-License-Identifier: MIT
"""What speaks against the rows of a printed table, before it is believed."""

from __future__ import annotations

import os
from typing import Any, NamedTuple

from . import _ohmcurve
from ._text import known
from .word import Word


class Suspicion(Word):
    """What is wrong with a suspect figure."""

    ORDER = "order"
    """Temperatures do not rise, or resistances do not fall."""
    BAND = "band"
    """The nominal is not between its limits."""
    DIGITS = "digits"
    """Off the line through the other rows; a slip of digits fits."""
    LINE = "line"
    """Off that line; no slip of digits fits."""
    CURVE = "curve"
    """Off that line together with neighbours: another curve."""
    DEGREES = "degrees"
    """Degrees Celsius and Fahrenheit disagree."""
    VOLTS = "volts"
    """The volts do not fit the pull-up of the other rows."""


class Suspect(NamedTuple):
    """One suspect figure. str() of it is its sentence."""

    kind: Suspicion
    line: int
    """Of the text, 1 is the first."""
    column: int
    """In bytes, 1 is the first."""
    t_c: float | None
    name: str
    """Of its column, "r_nom_ohm"."""
    printed: str
    """The figure as it stands there."""
    would_fit: str | None
    """The figure that a slip would explain; suggested, never applied."""
    low: float | None
    """What would fit lies from here, in the unit of the column;"""
    high: float | None
    """to here."""
    level: float
    """How sure it is, 0.5 to 1."""
    sentence: str
    """The place and the evidence."""

    @classmethod
    def _of(cls, suspect: Any) -> Suspect:
        values = {name: getattr(suspect, name) for name in cls._fields}
        for name in ("t_c", "low", "high"):
            values[name] = known(values[name])
        values["kind"] = Suspicion(_ohmcurve.ohm_suspicion_name(suspect.kind))
        return cls(**values)

    def __str__(self) -> str:
        return self.sentence


class Audit(NamedTuple):
    """What was looked at, and what was found; str() of it is one sentence a line."""

    row_count: int
    suspects: tuple[Suspect, ...]
    """In the order of the lines."""
    remarks: tuple[str, ...]
    """Doubts that concern the table as a whole."""

    @classmethod
    def load(cls, path: str | os.PathLike[str]) -> Audit:
        """Look for misprints in a sensor file."""
        return cls._of(_ohmcurve.ohm_audit_load(path))

    @classmethod
    def parse(cls, text: str | bytes, *, name: str = "sensor") -> Audit:
        """Look for misprints in the text of a sensor file; name is used in sentences."""
        return cls._of(_ohmcurve.ohm_audit_parse(text, name))

    @classmethod
    def _of(cls, audit: Any) -> Audit:
        suspects = range(_ohmcurve.ohm_audit_count(audit))
        remarks = range(_ohmcurve.ohm_audit_remark_count(audit))
        return cls(
            int(_ohmcurve.ohm_audit_row_count(audit)),
            tuple(Suspect._of(_ohmcurve.ohm_audit_suspect(audit, index)) for index in suspects),
            tuple(_ohmcurve.ohm_audit_remark(audit, index) for index in remarks),
        )

    def __str__(self) -> str:
        return "\n".join([*map(str, self.suspects), *self.remarks])
