# SPDX-License-Identifier: MIT
"""One result of an answer."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Any, Callable

from . import _ohmcurve
from ._fields import WORDS, Fields
from ._text import known, whole
from .word import Word


def _number(finding: Any, number: int, name: str) -> float | None:
    return known(_ohmcurve.ohm_finding_number(finding, number))


def _text(finding: Any, number: int, name: str) -> str | None:
    text: str | None = _ohmcurve.ohm_finding_text(finding, number, 0)
    return text


def _word(finding: Any, number: int, name: str) -> str | None:
    text = _text(finding, number, name)
    # A library newer than this package may know more words.
    known_words = {word.value: word for word in WORDS[name]} if name in WORDS else {}
    return None if text is None else known_words.get(text, text)


def _list(finding: Any, number: int, name: str) -> tuple[str, ...]:
    texts: list[str] = []
    while (text := _ohmcurve.ohm_finding_text(finding, number, len(texts))) is not None:
        texts.append(text)
    return tuple(texts)


_BY_KIND: dict[int, Callable[[Any, int, str], Any]] = {
    _ohmcurve.OHM_KIND_NUMBER: _number,
    _ohmcurve.OHM_KIND_TEXT: _text,
    _ohmcurve.OHM_KIND_WORD: _word,
    _ohmcurve.OHM_KIND_LIST: _list,
}


def _reader(name: str) -> tuple[str, int, Callable[[Any, int, str], Any]]:
    number = _ohmcurve.ohm_field_named(name)
    return name, number, _BY_KIND[_ohmcurve.ohm_field_kind_of(number)]


_READERS = [_reader(each.name) for each in fields(Fields)]


_SHOWN = ("verdict", "reason", "explanation", "sensor", "read")


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    return value.value if isinstance(value, Word) else value


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
        return cls(
            **{name: read(finding, number, name) for name, number, read in _READERS},
            _report=whole(_ohmcurve.ohm_finding_print_report, finding),
            _budget=whole(_ohmcurve.ohm_finding_print_budget, finding),
        )

    @property
    def budget(self) -> str:
        """Its uncertainty by cause, so that it can be worked out again by hand."""
        return self._budget

    @staticmethod
    def meaning(name: str) -> str:
        """What the field of that name means."""
        number = _ohmcurve.ohm_field_named(name)
        if number == 0:
            raise KeyError(name)
        return str(_ohmcurve.ohm_field_meaning(number))

    def as_dict(self) -> dict[str, Any]:
        """Every field by its name, as JSON would hold it."""
        return {each.name: _plain(getattr(self, each.name)) for each in fields(Fields)}

    def __str__(self) -> str:
        return self._report

    def __repr__(self) -> str:
        told = {name: getattr(self, name) for name in _SHOWN}
        return f"<Finding {', '.join(f'{name} {value}' for name, value in told.items() if value)}>"
