# SPDX-License-Identifier: MIT
"""Say what would explain the readings of a sensor."""

from __future__ import annotations

from collections.abc import Iterable

from . import _ohmcurve
from .bath import _how, _instrument, _reading, _reference
from .finding import Finding
from .identify import _among
from .meter import Meter, Reading
from .reference import Reference
from .sensor import Sensor
from .verdict import Place


def explain(
    sensor: Sensor,
    readings: Iterable[tuple[str | Reading, str | Reference]],
    *,
    others: Iterable[Sensor] | None = None,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
    place: str | Place = Place.NOT_TOLD,
    fan: str | float | None = None,
    band: str | None = None,
) -> tuple[Finding, list[Finding]]:
    """Say what would explain 1 to 16 readings of a sensor, and how large it would be.

    readings   pairs (reading, at)
    others     sensors that it may be instead; None: all that are built in

    The rest is as for check(). Returns what they come to, and a finding for each
    explanation, in the order of Explanation; leading is 1 of those that would do.
    """
    how = _how(sensor, tolerance, level, place, fan, 0.0, band)
    among = _among(others)
    pairs = [(_reading(reading), _reference(at)) for reading, at in readings]
    taken = _ohmcurve.readings(len(pairs))
    references = _ohmcurve.references(len(pairs))
    explanations = _ohmcurve.findings(_ohmcurve.OHM_EXPLANATION_COUNT)
    for index, (reading, reference) in enumerate(pairs):
        taken[index] = reading
        references[index] = reference
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_explain(
        sensor._sensor,
        [other._sensor for other in among],
        taken.cast(),
        references.cast(),
        len(pairs),
        _instrument(meter, leads),
        how,
        explanations.cast(),
        finding,
    )
    return Finding._of(finding), [
        Finding._of(explanations[index]) for index in range(_ohmcurve.OHM_EXPLANATION_COUNT)
    ]
