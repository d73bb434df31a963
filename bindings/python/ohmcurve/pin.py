# SPDX-License-Identifier: MIT
"""The module's side of the wire: where the way from the sensor to the gauge parts,
resistors in the sensor's place, and what to expect where the fan starts.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from . import _ohmcurve
from .bath import _fan_c, _instrument, _reading, _reference
from .divider import Series
from .finding import Finding
from .meter import Meter, Reading
from .module import Module, Reported, Volts
from .reference import Reference, read_temperature, read_tolerance
from .sensor import Sensor


def _of(noun: Any, name: str, given: Any) -> Any:
    """The struct of an object, or of a text in its notation; None stays."""
    if given is None:
        return None
    if isinstance(given, str):
        return noun.parse(given)._struct()
    if isinstance(given, noun):
        return given._struct()
    raise TypeError(f"{name} is {given!r}: pass a str or a {noun.__name__}")


def _need_sensor(sensor: Any) -> Any:
    if not isinstance(sensor, Sensor):
        raise TypeError(f"sensor is {sensor!r}: pass a Sensor, for instance Sensor.load(path)")
    return sensor._sensor


def _strictness(
    level: float, fan: str | float | None, limit_k: float, moved_limit_k: float | None
) -> Any:
    pin = _ohmcurve.ohm_pin()
    pin.level = level
    pin.limit_k = limit_k
    if fan is not None:
        # 0 would mean the default; below 0 is refused by the library.
        pin.fan_c = _fan_c(fan) or -1.0
    if moved_limit_k is not None:
        pin.moved = _ohmcurve.OHM_STATED
        pin.moved_limit_k = moved_limit_k
    return pin


def signal(
    sensor: Sensor,
    *,
    ohms: str | Reading | None = None,
    volts: str | Volts | None = None,
    reported: str | Reported | None = None,
    module: str | Module | None = None,
    at: str | Reference | None = None,
    meter: str | Meter | None = None,
    leads: str | None = None,
    level: float = 0.0,
    fan: str | float | None = None,
    limit_k: float = 0.0,
    moved_limit_k: float | None = None,
) -> Finding:
    """Say where the way from the sensor to what the module reports parts.

    ohms       at the sensor's own pins, plug off, key off: "187", or a Reading
    volts      at the module's pin, plug on, key on: "0.97", or Volts, which also say
               where the negative lead was
    reported   what a scan tool or gauge shows: "91C", or Reported
    module     its pull-up: "1k", "10k,1k@50C", or a Module; needed with volts
    at         what a thermometer beside the sensor says
    moved_limit_k  what the sensor cooled or warmed meanwhile; None: ASSUMED

    Any two or three of them; the rest is as for check().
    """
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_pin_check(
        _need_sensor(sensor),
        _of(Module, "module", module),
        None if ohms is None else _reading(ohms),
        _instrument(meter, leads),
        _of(Volts, "volts", volts),
        _of(Reported, "reported", reported),
        None if at is None else _reference(at),
        _strictness(level, fan, limit_k, moved_limit_k),
        finding,
    )
    return Finding._of(finding)


def substitute(
    sensor: Sensor,
    aim: str | float | None = None,
    *,
    series: Series | str = Series.E12,
    drawer: Iterable[float] = (),
    tolerance: str | None = None,
    module: str | Module | None = None,
    fan: str | float | None = None,
) -> tuple[Finding, Finding | None]:
    """Resistors across the plug in the sensor's place, for the module to see a temperature.

    aim        what it is to see, "105C" or degrees Celsius; None: 8 above the fan's start
    series     values to choose from
    drawer     values at hand instead, ohm, each as often as it is there
    tolerance  of each resistor, "5%"

    Key off to fit one, blades clear, one minute at most with the engine running, and a
    matching terminal, never a lead pushed into the socket. Returns the finding of the
    single resistor and that of the pair, which is None of a drawer of one.
    """
    values = list(drawer)
    wanted = _ohmcurve.ohm_substitute()
    wanted.series = Series(series)._code
    held = _ohmcurve.doubles(max(1, len(values)))
    for index, value in enumerate(values):
        held[index] = value
    wanted.drawer_ohm = held.cast()
    wanted.drawer_count = len(values)
    if aim is not None:
        # 0 would mean the default; at 0 K the library refuses.
        wanted.aim_c = (read_temperature(aim) if isinstance(aim, str) else float(aim)) or -273.15
    if fan is not None:
        wanted.fan_c = _fan_c(fan) or -1.0
    if tolerance is not None:
        wanted.tolerance_percent = read_tolerance(tolerance)
    single, pair = _ohmcurve.ohm_finding(), _ohmcurve.ohm_finding()
    _ohmcurve.ohm_substitute_find(
        _need_sensor(sensor), _of(Module, "module", module), wanted, single, pair
    )
    has_pair = _ohmcurve.ohm_finding_text(pair, _ohmcurve.OHM_FIELD_ABOUT, 0) is not None
    return Finding._of(single), Finding._of(pair) if has_pair else None


def loom(
    sensor: Sensor,
    fitted: Iterable[tuple[str | Reading, str | Reported]],
    *,
    meter: str | Meter | None = None,
    leads: str | None = None,
    level: float = 0.0,
    fan: str | float | None = None,
    limit_k: float = 0.0,
) -> Finding:
    """The ohms in plug and wires, from two resistors fitted in the sensor's place.

    fitted     two pairs (ohms as measured, degrees the module reported with it)
    """
    pairs = list(fitted)
    if len(pairs) != 2:
        raise TypeError(f"{len(pairs)} resistors were fitted: pass two pairs (ohms, degrees)")
    readings = _ohmcurve.readings(2)
    reports = _ohmcurve.reports(2)
    for index, (reading, reported) in enumerate(pairs):
        readings[index] = _reading(reading)
        reports[index] = _of(Reported, "reported", reported)
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_loom_check(
        _need_sensor(sensor),
        readings.cast(),
        _instrument(meter, leads),
        reports.cast(),
        _strictness(level, fan, limit_k, None),
        finding,
    )
    return Finding._of(finding)


def fanpoint(
    sensor: Sensor,
    on: str | float,
    off: str | float | None = None,
    *,
    module: str | Module | None = None,
    hidden_ohm: float | None = None,
) -> Finding:
    """What to expect where the fan starts and stops.

    on, off     "98C", or degrees Celsius; off may be None
    hidden_ohm  in plug or wire, to ask about; None: ASSUMED
    """
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_fanpoint_find(
        _need_sensor(sensor),
        _fan_c(on),
        float("nan") if off is None else _fan_c(off),
        _of(Module, "module", module),
        _ohmcurve.OHM_ASSUMED_HIDDEN_OHM if hidden_ohm is None else hidden_ohm,
        finding,
    )
    return Finding._of(finding)
