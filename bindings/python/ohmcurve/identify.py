# SPDX-License-Identifier: MIT
"""Tell which sensor readings were taken of."""

from __future__ import annotations

from collections.abc import Iterable

from . import _ohmcurve
from .bath import _asked, _instrument, _reading, _reference
from .finding import Finding
from .meter import Meter, Reading
from .reference import Reference
from .sensor import Sensor, catalogue
from .verdict import Place


def _among(sensors: Iterable[Sensor] | None) -> list[Sensor]:
    if sensors is None:
        return [Sensor.from_catalogue(name) for name in catalogue()]
    among = list(sensors)
    for sensor in among:
        if not isinstance(sensor, Sensor):
            raise TypeError(f"one of sensors is {sensor!r}: pass Sensor objects")
    return among


def identify(
    readings: Iterable[tuple[str | Reading, str | Reference]],
    *,
    sensors: Iterable[Sensor] | None = None,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
    place: str | Place = Place.NOT_TOLD,
    fan: str | float | None = None,
) -> tuple[Finding, list[Finding]]:
    """Tell which sensor 1 to 16 readings were taken of.

    readings   pairs (reading, at)
    sensors    those to compare them with; None: all that are built in

    The rest is as for check(). Returns what they come to, and a finding for each sensor
    that could be compared, the likeliest first. What was identified by readings is not
    checked by the same readings.
    """
    among = _among(sensors)
    how = _asked(tolerance, level, place, fan, 0.0)
    pairs = [(_reading(reading), _reference(at)) for reading, at in readings]
    taken = _ohmcurve.readings(len(pairs))
    references = _ohmcurve.references(len(pairs))
    candidates = _ohmcurve.findings(len(among))
    for index, (reading, reference) in enumerate(pairs):
        taken[index] = reading
        references[index] = reference
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_identify(
        [sensor._sensor for sensor in among],
        taken.cast(),
        references.cast(),
        len(pairs),
        _instrument(meter, leads),
        how,
        candidates.cast(),
        finding,
    )
    found = Finding._of(finding)
    compared = int(found.compared or 0)
    return found, [Finding._of(candidates[index]) for index in range(compared)]


def identify_pins(
    pairs: Iterable[str],
    *,
    at: str | Reference,
    sensors: Iterable[Sensor] | None = None,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
) -> tuple[Finding, list[Finding]]:
    """Tell which pins of a body are the module's element, and which the gauge's.

    pairs   1 to 16 texts "1-2=2.31k", "B-D=OL", "1-body=480", "1-minus=480"
    at      the temperature of all: "21.5C+-1", "ice", or a Reference

    The rest is as for identify(). Returns what they come to, and a finding for each pair.
    """
    among = _among(sensors)
    how = _asked(tolerance, level, Place.NOT_TOLD, None, 0.0)
    texts = list(pairs)
    taken = _ohmcurve.pairs(len(texts))
    findings = _ohmcurve.findings(len(texts))
    candidates = _ohmcurve.findings(len(among))
    for index, text in enumerate(texts):
        pair = _ohmcurve.ohm_pair()
        _ohmcurve.ohm_pair_read(text, pair)
        taken[index] = pair
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_pins_identify(
        [sensor._sensor for sensor in among],
        taken.cast(),
        len(texts),
        _reference(at),
        _instrument(meter, leads),
        how,
        findings.cast(),
        candidates.cast(),
        finding,
    )
    return Finding._of(finding), [Finding._of(findings[index]) for index in range(len(texts))]
