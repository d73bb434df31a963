# SPDX-License-Identifier: MIT
"""Judge a sensor that lies at a known temperature."""

from __future__ import annotations

from typing import Any, TypeVar

from . import _ohmcurve
from .finding import Finding
from .meter import Meter, Reading
from .reference import Reference, read_tolerance
from .sensor import Sensor

_Noted = TypeVar("_Noted", Meter, Reading, Reference)


def _noted(noun: type[_Noted], name: str, given: Any) -> _Noted:
    """An object as it is, a text by its notation."""
    if isinstance(given, str):
        return noun.parse(given)
    if isinstance(given, noun):
        return given
    raise TypeError(f"{name} is {given!r}: pass a str or a {noun.__name__}")


def check(
    sensor: Sensor,
    reading: str | Reading,
    *,
    at: str | Reference,
    meter: str | Meter | None = None,
    leads: str | None = None,
    tolerance: str | None = None,
    level: float = 0.0,
) -> Finding:
    """Judge a sensor that lies at a known temperature: a bath, a room, the open air.

    reading    "2.31k", "2k31", "OL", or a Reading
    at         "21.5C+-1", "70F", "ice", or a Reference
    meter      "0.8%+3", "0.8%+3@2000", "exact", or a Meter
    leads      "0.4", "0.4+-0.1" ohm; comes before what a Meter says
    tolerance  "5%" of resistance, instead of the sensor's own
    level      probability asked for before anything is decided; 0: 0.95

    What is left out is assumed; Finding.assumed says what was.
    """
    if not isinstance(sensor, Sensor):
        raise TypeError(f"sensor is {sensor!r}: pass a Sensor, for instance Sensor.load(path)")
    instrument = (Meter() if meter is None else _noted(Meter, "meter", meter))._struct()
    if leads is not None:
        _ohmcurve.ohm_leads_read(leads, instrument)
    how = _ohmcurve.ohm_check()
    how.level = level
    if tolerance is not None:
        how.tolerance_percent = read_tolerance(tolerance)
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_bath_check(
        sensor._sensor,
        _noted(Reading, "reading", reading)._struct(),
        instrument,
        _noted(Reference, "at", at)._struct(),
        how,
        finding,
    )
    return Finding._of(finding)
