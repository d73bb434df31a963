# SPDX-License-Identifier: MIT
"""The one result of every answer."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Any, Callable

from . import _ohmcurve
from ._fields import WORDS, Fields
from ._text import known, whole
from .verdict import Word


def _texts(finding: Any, index: int) -> tuple[str, ...]:
    texts: list[str] = []
    while (text := _ohmcurve.ohm_finding_text(finding, index, len(texts))) is not None:
        texts.append(text)
    return tuple(texts)


def _number(finding: Any, index: int) -> float | None:
    return known(_ohmcurve.ohm_finding_number(finding, index))


def _text(finding: Any, index: int) -> str | None:
    text: str | None = _ohmcurve.ohm_finding_text(finding, index, 0)
    return text


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    return value.value if isinstance(value, Word) else value


_BY_KIND: dict[int, Callable[[Any, int], Any]] = {
    _ohmcurve.OHM_KIND_NUMBER: _number,
    _ohmcurve.OHM_KIND_TEXT: _text,
    _ohmcurve.OHM_KIND_LIST: _texts,
}


@dataclass(frozen=True, repr=False)
class Finding(Fields):
    """A finding. What is absent is None. str() of it is the report in sentences.

    Its attributes are the list of fields in the header; Finding.meaning() says what
    each means.
    """

    _report: str = field(compare=False)
    _budget: str = field(compare=False)

    @classmethod
    def _of(cls, finding: Any) -> Finding:
        values: dict[str, Any] = {
            _ohmcurve.ohm_field_name(index): _BY_KIND[_ohmcurve.ohm_field_kind_of(index)](
                finding, index
            )
            for index in range(_ohmcurve.OHM_FIELD_COUNT)
        }
        for name, word in WORDS.items():
            if values[name] is not None:
                values[name] = word(values[name])
        return cls(
            **values,
            _report=whole(_ohmcurve.ohm_report_print, finding),
            _budget=whole(_ohmcurve.ohm_report_print_budget, finding),
        )

    @property
    def budget(self) -> str:
        """Its uncertainty by cause, so that it can be worked out again by hand."""
        return self._budget

    @staticmethod
    def meaning(name: str) -> str:
        """What the field of that name means."""
        for index in range(_ohmcurve.OHM_FIELD_COUNT):
            if _ohmcurve.ohm_field_name(index) == name:
                return str(_ohmcurve.ohm_field_meaning(index))
        raise KeyError(name)

    def as_dict(self) -> dict[str, Any]:
        """Every field by its name, as JSON would hold it."""
        return {each.name: _plain(getattr(self, each.name)) for each in fields(Fields)}

    def __str__(self) -> str:
        return self._report

    def __repr__(self) -> str:
        return (
            f"<Finding {self.verdict} ({self.reason}): {self.sensor} reads {self.read}, "
            f"p_within {self.p_within}>"
        )
