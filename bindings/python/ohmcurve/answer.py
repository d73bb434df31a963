# SPDX-License-Identifier: MIT
"""What a verb says of a bench."""

from __future__ import annotations

from functools import cached_property
from typing import Any

from . import _ohmcurve
from ._text import whole
from .finding import Finding


class Answer:
    """An answer: a finding of the whole, and findings in groups. It never changes, outlives
    the bench and the sensors, and threads may share it. str() of it is the report.
    """

    _answer: Any

    def __init__(self) -> None:
        raise TypeError("an answer is what a verb of a Bench returns, such as Bench().check()")

    @classmethod
    def _of(cls, answer: Any) -> Answer:
        self = object.__new__(cls)
        self.__dict__["_answer"] = answer
        return self

    def _group(self, group: int) -> tuple[Finding, ...]:
        return tuple(
            Finding._of(_ohmcurve.ohm_answer_member(self._answer, group, index))
            for index in range(_ohmcurve.ohm_answer_count(self._answer, group))
        )

    @cached_property
    def finding(self) -> Finding:
        """That of the whole."""
        return Finding._of(_ohmcurve.ohm_answer_finding(self._answer))

    @cached_property
    def readings(self) -> tuple[Finding, ...]:
        """One for each reading, in their order."""
        return self._group(_ohmcurve.OHM_GROUP_READINGS)

    @cached_property
    def candidates(self) -> tuple[Finding, ...]:
        """Sensors compared, the likeliest first."""
        return self._group(_ohmcurve.OHM_GROUP_CANDIDATES)

    @cached_property
    def explanations(self) -> tuple[Finding, ...]:
        """One for each Explanation."""
        return self._group(_ohmcurve.OHM_GROUP_EXPLANATIONS)

    @cached_property
    def tests(self) -> tuple[Finding, ...]:
        """Tests made on a circuit, in their order."""
        return self._group(_ohmcurve.OHM_GROUP_TESTS)

    @cached_property
    def resistors(self) -> tuple[Finding, ...]:
        """What could be fitted: the single one, then the pair."""
        return self._group(_ohmcurve.OHM_GROUP_RESISTORS)

    @property
    def budget(self) -> str:
        """Its uncertainty by cause, so that it can be worked out again by hand."""
        return whole(_ohmcurve.ohm_answer_print_budget, self._answer)

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"an answer never changes: {name} cannot be set")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"an answer never changes: {name} cannot be deleted")

    def __reduce__(self) -> Any:
        raise TypeError("an answer cannot be pickled: pickle its findings")

    def __str__(self) -> str:
        return whole(_ohmcurve.ohm_answer_print_report, self._answer)

    def __repr__(self) -> str:
        return f"<Answer: {self.finding!r}>"
