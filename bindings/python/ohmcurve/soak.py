# SPDX-License-Identifier: MIT
"""Judge a coolant sensor of a car that stood, by the air."""

from __future__ import annotations

import os
from array import array
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from . import _ohmcurve
from .bath import _how, _instrument, _noted, _reading
from .finding import Finding
from .meter import Meter, Reading
from .reference import Reference
from .sensor import Sensor
from .verdict import Place, Soaked


def cooling_temperature(start_c: float, air_c: float, tau_h: float, after_h: float) -> float:
    """What a warm thing has cooled to in air that never changes."""
    return float(_ohmcurve.ohm_cooling_temperature(start_c, air_c, tau_h, after_h))


def cooling_hours(start_c: float, air_c: float, tau_h: float, t_c: float) -> float:
    """Hours after which it has come to a temperature."""
    return float(_ohmcurve.ohm_cooling_hours(start_c, air_c, tau_h, t_c))


def cooling_tau(start_c: float, air_c: float, t_c: float, after_h: float) -> float:
    """Its time constant, hours, from one temperature on the way."""
    return float(_ohmcurve.ohm_cooling_tau(start_c, air_c, t_c, after_h))


class History:
    """What the air did while the car stood: straight between points. It never changes."""

    __slots__ = ("_history",)
    _history: Any

    def __init__(self, after_h: Iterable[float], t_c: Iterable[float]) -> None:
        """Hours after the engine was stopped, rising, and the temperatures then."""
        points = (array("d", after_h), array("d", t_c))
        self._history = _ohmcurve.ohm_history_new(points)

    @classmethod
    def _of(cls, made: Any) -> History:
        self = object.__new__(cls)
        self._history = made
        return self

    @classmethod
    def load(cls, path: str | os.PathLike[str]) -> History:
        """Read a file as a logger writes it: columns hours, minutes or time, and temp_c or
        temp_f; a line "# stopped: 21:40" when the times are of a clock.
        """
        return cls._of(_ohmcurve.ohm_history_load(path))

    @classmethod
    def parse(cls, text: str | bytes, *, name: str = "history") -> History:
        """Read the text of such a file; name is used in sentences."""
        return cls._of(_ohmcurve.ohm_history_parse(text, name))

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """Pairs of hours after the stop and degrees Celsius, in the order of time."""
        points: list[tuple[float, float]] = []
        for index in range(len(self)):
            after_h, t_c = _ohmcurve.ohm_history_point(self._history, index)
            points.append((after_h, t_c))
        return tuple(points)

    def __len__(self) -> int:
        return int(_ohmcurve.ohm_history_count(self._history))

    def __repr__(self) -> str:
        return f"<History of {len(self)} points>"

    def cooling(self, start_c: float, tau_h: float, after_h: float) -> float:
        """What a warm thing has cooled to in this air."""
        return float(_ohmcurve.ohm_history_cooling(self._history, start_c, tau_h, after_h))


class Companion(NamedTuple):
    """What another sensor of the car shows at the same time."""

    kind: str | Soaked
    t_c: float
    limit_k: float = 0.0
    """It is within this; 0: ASSUMED."""
    tau_low_h: float = 0.0
    """Its time constant, hours; both 0: ASSUMED by its kind."""
    tau_high_h: float = 0.0

    def _struct(self) -> Any:
        companion = _ohmcurve.ohm_companion()
        companion.kind = getattr(_ohmcurve, f"OHM_SOAKED_{Soaked(self.kind).name}")
        for name in self._fields[1:]:
            setattr(companion, name, getattr(self, name))
        return companion


def _companions(given: Mapping[str, str | Reference] | Iterable[Companion]) -> list[Any]:
    if not isinstance(given, Mapping):
        return [companion._struct() for companion in given]
    shown = [(kind, _noted(Reference, f"others[{kind!r}]", at)) for kind, at in given.items()]
    return [Companion(kind, at.t_c or 0.0, at.limit_k or 0.0)._struct() for kind, at in shown]


def soak(
    sensor: Sensor,
    reading: str | Reading,
    *,
    air: str | Reference | None = None,
    hours: float = 0.0,
    history: History | None = None,
    extend: bool = False,
    stop: str | Reference | None = None,
    tau_h: tuple[float, float] | None = None,
    undisturbed: bool = False,
    allow_k: float = 0.0,
    others: Mapping[str, str | Reference] | Iterable[Companion] = (),
    meter: str | Meter | None = None,
    leads: str | None = None,
    level: float = 0.0,
    place: str | Place = Place.NOT_TOLD,
    fan: str | float | None = None,
    limit_k: float = 0.0,
) -> Finding:
    """Judge a coolant sensor of a car that stood, by the air.

    reading      "3.9k", or a Reading
    air          "9C+-2", or a Reference; with a history its limit and u_k are those of the
                 history, and it may be left out
    hours        since the engine was stopped; 0: up to the last point of the history
    history      what the air did; None: it never changed
    extend       whether past its last point the air stays as it was there
    stop         temperature of the coolant when the engine was stopped, "92C+-3"
    tau_h        least and greatest time constant of the coolant, hours
    undisturbed  whether there was no sun, block heater, warm garage or move
    allow_k      how far the sensor may be off, kelvin
    others       what other sensors show: {"intake": "10.5C"}, or Companions

    The rest is as for check(). What is left out is assumed; Finding.assumed says what was.
    """
    told = _ohmcurve.ohm_soak()
    told.after_h = hours
    told.extend = int(extend)
    told.undisturbed = int(undisturbed)
    told.allow_k = allow_k
    if tau_h is not None:
        told.tau_low_h, told.tau_high_h = tau_h
    if history is not None:
        told.history = history._history
    if stop is not None:
        at = _noted(Reference, "stop", stop)
        told.stop_c = at.t_c or 0.0
        if at.limit_k is not None:
            told.start = _ohmcurve.OHM_STATED
            told.stop_limit_k = at.limit_k
    companions = _companions(others)
    shown = _ohmcurve.companions(len(companions))
    for index, companion in enumerate(companions):
        shown[index] = companion
    told.companions = shown.cast()
    told.companion_count = len(companions)
    finding = _ohmcurve.ohm_finding()
    _ohmcurve.ohm_soak_check(
        sensor._sensor,
        _reading(reading),
        _instrument(meter, leads),
        None if air is None else _noted(Reference, "air", air)._struct(),
        told,
        _how(sensor, None, level, place, fan, limit_k, None),
        finding,
    )
    return Finding._of(finding)
