# SPDX-License-Identifier: MIT
"""Which part of a fan circuit is at fault."""

# mypy: enable-incomplete-feature=Unpack
from __future__ import annotations

import os
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, Callable

from . import _ohmcurve
from ._fields import Settings
from ._text import whole
from .answer import Answer
from .finding import Finding

if TYPE_CHECKING:
    from typing_extensions import Unpack


def circuits() -> tuple[str, ...]:
    """Names of the circuits built in, in order."""
    count = _ohmcurve.ohm_circuit_built_in_count()
    return tuple(_ohmcurve.ohm_circuit_built_in_name(index) for index in range(count))


def _rows(
    circuit: Any, count: int, columns: int, name_of: Callable[[int], str], text_of: Callable[..., str]
) -> tuple[dict[str, str], ...]:
    return tuple(
        {name_of(column): text_of(circuit, index, column) for column in range(columns)}
        for index in range(count)
    )


class Circuit:
    """A circuit: links that can fail, and tests that clear or accuse them. It never
    changes; threads may share it. str() of it is the text of its circuit file, which
    parses back to an equal one.
    """

    __slots__ = ("_circuit",)
    _circuit: Any

    def __init__(self) -> None:
        raise TypeError("a circuit is made by Circuit.load(), .parse() or .built_in()")

    @classmethod
    def _of(cls, circuit: Any) -> Circuit:
        self = object.__new__(cls)
        self._circuit = circuit
        return self

    @classmethod
    def load(cls, path: str | os.PathLike[str]) -> Circuit:
        """Read a circuit file."""
        return cls._of(_ohmcurve.ohm_circuit_load(path))

    @classmethod
    def parse(cls, text: str | bytes, *, name: str = "circuit") -> Circuit:
        """Read the text of a circuit file; name is used where the text gives none."""
        return cls._of(_ohmcurve.ohm_circuit_parse(text, name))

    @classmethod
    def built_in(cls, name: str) -> Circuit:
        """A circuit built in, by its name; see circuits()."""
        return cls._of(_ohmcurve.ohm_circuit_built_in_load(name))

    @property
    def name(self) -> str:
        return str(_ohmcurve.ohm_circuit_name(self._circuit))

    @property
    def description(self) -> str:
        """Empty when there is none."""
        return str(_ohmcurve.ohm_circuit_description(self._circuit))

    @property
    def source(self) -> str:
        """Where it comes from; empty when not told."""
        return str(_ohmcurve.ohm_circuit_source(self._circuit))

    @property
    def notes(self) -> tuple[str, ...]:
        """What loading left out, each with its place."""
        count = _ohmcurve.ohm_circuit_note_count(self._circuit)
        return tuple(_ohmcurve.ohm_circuit_note(self._circuit, index) for index in range(count))

    @property
    def links(self) -> tuple[dict[str, str], ...]:
        """What can fail, each as the cells of its row by column."""
        return _rows(
            self._circuit,
            _ohmcurve.ohm_circuit_link_count(self._circuit),
            _ohmcurve.OHM_LINK_COLUMN_COUNT,
            _ohmcurve.ohm_link_column_name,
            _ohmcurve.ohm_circuit_link_text,
        )

    @property
    def tests(self) -> tuple[dict[str, str], ...]:
        """What can be seen, each as the cells of its row by column."""
        return _rows(
            self._circuit,
            _ohmcurve.ohm_circuit_test_count(self._circuit),
            _ohmcurve.OHM_TEST_COLUMN_COUNT,
            _ohmcurve.ohm_test_column_name,
            _ohmcurve.ohm_circuit_test_text,
        )

    def isolate(
        self, record: str | Iterable[str] = "", **settings: Unpack[Settings]
    ) -> Finding:
        """What stands after a record, lines of NAME=OUTCOME, and what to test next."""
        from .verbs import isolate

        return isolate(self, record, **settings)

    def reading_of(self, answer: Answer) -> str | None:
        """What an answer on a sensor says to this circuit, as a reading for its bench; None
        when it says nothing to it.
        """
        reading = whole(_ohmcurve.ohm_circuit_print_answer, self._circuit, answer._answer)
        return reading.rstrip() or None

    def __str__(self) -> str:
        return whole(_ohmcurve.ohm_circuit_print, self._circuit)

    def __repr__(self) -> str:
        return f"<Circuit {self.name!r}: {self.description}>"
