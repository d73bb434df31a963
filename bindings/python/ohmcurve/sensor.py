# SPDX-License-Identifier: MIT
"""A curve with its tolerance, name and source: what a sensor file holds."""

from __future__ import annotations

import os
from typing import Any, NamedTuple

from . import _ohmcurve
from ._text import known, whole
from .curve import Curve


class Band(NamedTuple):
    """What the maker allows at a temperature."""

    low_ohm: float
    nominal_ohm: float
    high_ohm: float


class Row(NamedTuple):
    """A printed row; None for a cell that was left blank."""

    t_c: float
    min_ohm: float | None
    nominal_ohm: float | None
    max_ohm: float | None


class Temperature(NamedTuple):
    """A temperature and how well the curve behind it is known, kelvin; None for no
    interval.
    """

    t_c: float
    u_k: float | None
    """Standard uncertainty (k = 1)."""
    expanded_k: float | None
    """Expanded uncertainty at the level asked for."""

    @classmethod
    def _of(cls, parts: Any) -> Temperature:
        (t_c, u_k), expanded_k = parts
        return cls(t_c, known(u_k), known(expanded_k))


def catalogue() -> tuple[str, ...]:
    """Names of the sensors built in, in order."""
    count = _ohmcurve.ohm_sensor_built_in_count()
    return tuple(_ohmcurve.ohm_sensor_built_in_name(index) for index in range(count))


def find_sensors(words: str) -> tuple[str, ...]:
    """Names of the sensors built in whose description and sources hold every one of
    the words (maker, model, year, engine), case aside.
    """
    found = _ohmcurve.ohm_sensor_built_in_matches(words)
    return tuple(_ohmcurve.ohm_sensor_built_in_name(index) for index in found)


class Sensor:
    """A sensor. It never changes; threads may share it. str() of it is the text
    of its sensor file, which parses back to an equal one.
    """

    __slots__ = ("_sensor",)
    _sensor: Any

    def __init__(self) -> None:
        raise TypeError("a sensor is made by Sensor.load(), .parse() or .from_catalogue()")

    @classmethod
    def _of(cls, sensor: Any) -> Sensor:
        self = object.__new__(cls)
        self._sensor = sensor
        return self

    @classmethod
    def load(cls, path: str | os.PathLike[str]) -> Sensor:
        """Read a sensor file."""
        return cls._of(_ohmcurve.ohm_sensor_load(path))

    @classmethod
    def parse(cls, text: str | bytes, *, name: str = "sensor") -> Sensor:
        """Read the text of a sensor file; name is used where the text gives none."""
        return cls._of(_ohmcurve.ohm_sensor_parse(text, name))

    @classmethod
    def from_catalogue(cls, name: str) -> Sensor:
        """A sensor built in, by its name; see catalogue()."""
        return cls._of(_ohmcurve.ohm_sensor_built_in_load(name))

    @property
    def name(self) -> str:
        return str(_ohmcurve.ohm_sensor_name(self._sensor))

    @property
    def description(self) -> str:
        """Empty when there is none."""
        return str(_ohmcurve.ohm_sensor_description(self._sensor))

    @property
    def source(self) -> str:
        """Where its figures were printed; empty when not told."""
        return str(_ohmcurve.ohm_sensor_source(self._sensor))

    @property
    def kind(self) -> str:
        """"module" or "gauge"; empty when not told."""
        return str(_ohmcurve.ohm_sensor_kind(self._sensor))

    @property
    def dissipation_mw_per_k(self) -> float | None:
        """Dissipation factor; None when not known."""
        return known(_ohmcurve.ohm_sensor_dissipation_mw_per_k(self._sensor))

    @property
    def notes(self) -> tuple[str, ...]:
        """What loading left out or altered, each with its place."""
        count = _ohmcurve.ohm_sensor_note_count(self._sensor)
        return tuple(_ohmcurve.ohm_sensor_note(self._sensor, index) for index in range(count))

    @property
    def curve(self) -> Curve:
        """Its curve, which keeps what it needs of the sensor alive."""
        return Curve._of(_ohmcurve.ohm_sensor_curve(self._sensor), owner=self._sensor)

    @property
    def rows(self) -> tuple[Row, ...]:
        """Its printed rows in rising temperature, those of makers' bands aside; none for
        a model.
        """
        count = _ohmcurve.ohm_sensor_row_count(self._sensor)
        printed = (_ohmcurve.ohm_sensor_row_at(self._sensor, index) for index in range(count))
        return tuple(
            Row(row.t_c, known(row.min_ohm), known(row.nominal_ohm), known(row.max_ohm))
            for row in printed
        )

    @property
    def bands(self) -> dict[str, str]:
        """Makers' bands beside its own limits: where each was printed, by name."""
        count = _ohmcurve.ohm_sensor_band_count(self._sensor)
        return {
            _ohmcurve.ohm_sensor_band_name(self._sensor, index): _ohmcurve.ohm_sensor_band_source(
                self._sensor, index
            )
            for index in range(count)
        }

    def band(self, t_c: float) -> Band:
        """What the maker allows at a temperature; where makers' bands differ, the widest."""
        return Band(*_ohmcurve.ohm_sensor_band(self._sensor, t_c))

    def temperature(self, r_ohm: float, level: float = 0.95) -> Temperature:
        """Fit.temperature() of a sensor that was fitted, also after it went through a
        file; any other gives the temperature without an interval.
        """
        return Temperature._of(_ohmcurve.ohm_sensor_temperature(self._sensor, r_ohm, level))

    def __str__(self) -> str:
        return whole(_ohmcurve.ohm_sensor_print, self._sensor)

    def __repr__(self) -> str:
        return f"<Sensor {self.name!r}: {self.curve!r}>"
