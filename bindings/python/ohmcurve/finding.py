# SPDX-License-Identifier: MIT
"""The one result of every answer."""

from __future__ import annotations

import enum
from dataclasses import dataclass, field, fields
from typing import Any, Callable

from . import _ohmcurve
from ._text import whole


class _Word(str, enum.Enum):
    def __str__(self) -> str:
        return str(self.value)

    def __format__(self, format_spec: str) -> str:
        return format(str(self.value), format_spec)


class Verdict(_Word):
    """The verdict; each member is also its text."""

    WITHIN = "within"
    OUTSIDE = "outside"
    UNDECIDED = "undecided"


class Reason(_Word):
    """Why the verdict is what it is; each member is also its text."""

    CONFORMS = "conforms"
    LOW = "low"
    """Below what is allowed."""
    HIGH = "high"
    """Above what is allowed."""
    OPEN = "open"
    """No circuit."""
    OVER_RANGE = "over_range"
    """The meter showed no number."""
    NO_TOLERANCE = "no_tolerance"
    """Nothing says what is allowed."""
    OUTSIDE_BAND = "outside_band"
    """Nothing says what is allowed at this temperature."""
    UNCERTAIN = "uncertain"
    """The measurement is too coarse to decide."""


def _texts(finding: Any, index: int) -> tuple[str, ...]:
    texts: list[str] = []
    while (text := _ohmcurve.ohm_finding_text(finding, index, len(texts))) is not None:
        texts.append(text)
    return tuple(texts)


def _number(finding: Any, index: int) -> float | None:
    number = float(_ohmcurve.ohm_finding_number(finding, index))
    return None if number != number else number


def _text(finding: Any, index: int) -> str | None:
    text: str | None = _ohmcurve.ohm_finding_text(finding, index, 0)
    return text


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    return value.value if isinstance(value, _Word) else value


_BY_KIND: dict[int, Callable[[Any, int], Any]] = {
    _ohmcurve.OHM_KIND_NUMBER: _number,
    _ohmcurve.OHM_KIND_TEXT: _text,
    _ohmcurve.OHM_KIND_LIST: _texts,
}


@dataclass(frozen=True, repr=False)
class Finding:
    """A finding. What is absent is None. str() of it is the report in sentences.

    Finding.meaning() says what a field means.
    """

    verdict: Verdict
    reason: Reason
    p_low: float | None
    p_within: float | None
    p_high: float | None
    level: float | None
    r_ohm: float | None
    u_r_ohm: float | None
    expanded_r_ohm: float | None
    t_c: float | None
    u_t_c: float | None
    expanded_t_k: float | None
    at_c: float | None
    u_at_c: float | None
    expanded_at_k: float | None
    expected_ohm: float | None
    low_ohm: float | None
    high_ohm: float | None
    tolerance_percent: float | None
    sensor: str | None
    source: str | None
    read: str | None
    reference: str | None
    assumed: tuple[str, ...]
    version: str | None
    tables_version: str | None
    _report: str = field(compare=False)

    @classmethod
    def _of(cls, finding: Any) -> Finding:
        values: dict[str, Any] = {
            _ohmcurve.ohm_field_name(index): _BY_KIND[_ohmcurve.ohm_field_kind_of(index)](
                finding, index
            )
            for index in range(_ohmcurve.OHM_FIELD_COUNT)
        }
        values["verdict"] = Verdict(values["verdict"])
        values["reason"] = Reason(values["reason"])
        return cls(**values, _report=whole(_ohmcurve.ohm_report_print, finding))

    @staticmethod
    def meaning(name: str) -> str:
        """What the field of that name means."""
        for index in range(_ohmcurve.OHM_FIELD_COUNT):
            if _ohmcurve.ohm_field_name(index) == name:
                return str(_ohmcurve.ohm_field_meaning(index))
        raise KeyError(name)

    def as_dict(self) -> dict[str, Any]:
        """Every field by its name, as JSON would hold it."""
        return {
            each.name: _plain(getattr(self, each.name)) for each in fields(self) if each.compare
        }

    def __str__(self) -> str:
        return self._report

    def __repr__(self) -> str:
        return (
            f"<Finding {self.verdict} ({self.reason}): {self.sensor} reads {self.read}, "
            f"p_within {self.p_within}>"
        )
