# SPDX-License-Identifier: MIT
"""Judge a sensor that lies at a known temperature."""

from __future__ import annotations

from collections.abc import Iterable
from numbers import Real
from typing import Any, TypeVar

from . import _ohmcurve
from .error import Error, Status
from .finding import Finding
from .meter import Meter, Reading
from .reference import Reference, read_temperature, read_tolerance
from .sensor import Sensor
from .verdict import Place

_Noted = TypeVar("_Noted", Meter, Reading, Reference)


def _noted(noun: type[_Noted], name: str, given: Any) -> _Noted:
    """An object as it is, a text by its notation."""
    if isinstance(given, str):
        return noun.parse(given)
    if isinstance(given, noun):
        return given
    raise TypeError(f"{name} is {given!r}: pass a str or a {noun.__name__}")


def _reading(given: Any) -> Any:
    return _noted(Reading, "reading", given)._struct()


def _reference(given: Any) -> Any:
    return _noted(Reference, "at", given)._struct()


def _instrument(meter: Any, leads: str | None) -> Any:
    instrument = (Meter() if meter is None else _noted(Meter, "meter", meter))._struct()
    if leads is not None:
        _ohmcurve.ohm_leads_read(leads, instrument)
    return instrument


def _fan_c(given: Any) -> float:
    if isinstance(given, str):
        return read_temperature(given)
    if isinstance(given, Real):
        return float(given)
    raise TypeError(f"fan is {given!r}: pass degrees Celsius, or a str with the unit")


def _asked(
    tolerance: str | None,
    level: float,
    place: str | Place,
    fan: str | float | None,
    limit_k: float,
) -> Any:
    how = _ohmcurve.ohm_check()
    how.level = level
    how.limit_k = limit_k
    how.place = getattr(_ohmcurve, f"OHM_PLACE_{Place(place).name}")
    if tolerance is not None:
        how.tolerance_percent = read_tolerance(tolerance)
    if fan is not None:
        # 0 would mean the default; below 0 is refused by the library.
        how.fan_c = _fan_c(fan) or -1.0
    return how


def _how(
    sensor: Any,
    tolerance: str | None,
    level: float,
    place: str | Place,
    fan: str | float | None,
    limit_k: float,
    band: str | None,
) -> Any:
    if not isinstance(sensor, Sensor):
        raise TypeError(f"sensor is {sensor!r}: pass a Sensor, for instance Sensor.load(path)")
    how = _asked(tolerance, level, place, fan, limit_k)
    if band is not None:
        if band not in sensor.bands:
            allowed = ", ".join(sensor.bands) or "none"
            raise Error(
                f"{sensor.name} has no band {band!r}: pass one of its bands ({allowed})",
                Status.NOT_FOUND,
            )
        how.band = band
    return how


def check(
    sensor: Sensor,
    reading: str | Reading,
    *,
    at: str | Reference,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
    place: str | Place = Place.NOT_TOLD,
    fan: str | float | None = None,
    limit_k: float = 0.0,
    band: str | None = None,
) -> Finding:
    """Judge a sensor that lies at a known temperature: a bath, a room, the open air.

    reading    "2.31k", "2k31", "OL@20k", or a Reading
    at         "21.5C+-1", "70F", "ice", "boil@1200m", "infrared@80C", or a Reference
    meter      "0.8%+3", "0.8%+3@2000", "exact", or a Meter
    leads      "0.4", "0.4+-0.1" ohm; comes before what a Meter says
    tolerance  "5%" of resistance, instead of the sensor's own
    level      probability asked for before anything is decided; 0: 0.95
    place      where the probes were: "sensor", "plug_on", "module", or a Place
    fan        the fan is to start here: "97C", or degrees Celsius; None: ASSUMED
    limit_k    and may be late or early by this, kelvin; 0: ASSUMED
    band       a maker's band to judge by, of Sensor.bands; None: the widest

    What is left out is assumed; Finding.assumed says what was.
    """
    how = _how(sensor, tolerance, level, place, fan, limit_k, band)
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_bath_check(
        sensor._sensor,
        _reading(reading),
        _instrument(meter, leads),
        _reference(at),
        how,
        finding,
    )
    return Finding._of(finding)


def check_several(
    sensor: Sensor,
    readings: Iterable[tuple[str | Reading, str | Reference]],
    *,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
    place: str | Place = Place.NOT_TOLD,
    fan: str | float | None = None,
    limit_k: float = 0.0,
    band: str | None = None,
) -> tuple[Finding, list[Finding]]:
    """Judge a sensor by 1 to 16 readings, in the order they were taken.

    readings   pairs (reading, at)

    Readings in a row with equal temperatures are repeats: the last one counts, unless
    it still differs from the one before. The rest is as for check(). Returns the
    finding of all together, and that of each reading alone.
    """
    how = _how(sensor, tolerance, level, place, fan, limit_k, band)
    pairs = [(_reading(reading), _reference(at)) for reading, at in readings]
    taken = _ohmcurve.readings(len(pairs))
    references = _ohmcurve.references(len(pairs))
    findings = _ohmcurve.findings(len(pairs))
    for index, (reading, reference) in enumerate(pairs):
        taken[index] = reading
        references[index] = reference
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_bath_check_several(
        sensor._sensor,
        taken.cast(),
        references.cast(),
        len(pairs),
        _instrument(meter, leads),
        how,
        findings.cast(),
        finding,
    )
    return Finding._of(finding), [Finding._of(findings[index]) for index in range(len(pairs))]
