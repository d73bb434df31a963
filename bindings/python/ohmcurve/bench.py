# SPDX-License-Identifier: MIT
"""What was set and what was read, and the verbs that ask of it."""

# mypy: enable-incomplete-feature=Unpack
from __future__ import annotations

import enum
from collections.abc import Iterable
from numbers import Real
from typing import TYPE_CHECKING, Any, Callable, Tuple, Union

from . import _ohmcurve
from ._fields import Settings
from ._text import whole
from .answer import Answer
from .circuit import Circuit
from .history import History
from .sensor import Sensor
from .setting import SETTINGS, refusal

if TYPE_CHECKING:
    from typing_extensions import Unpack

Shown = Union[str, float]
"""A text in its notation, or a number in the unit of what it is: ohm, degrees Celsius."""

Reading = Union[Shown, Tuple[Shown, Shown]]
"""A reading in the notation of the bench, a number of ohms, or either with the temperature
of the sensor, (reading, at).
"""


class Quantity(enum.IntEnum):
    """What a number is a reading of."""

    OHMS = _ohmcurve.OHM_QUANTITY_OHMS
    VOLTS = _ohmcurve.OHM_QUANTITY_VOLTS
    REPORTED = _ohmcurve.OHM_QUANTITY_REPORTED


def noted(name: str, given: Any, number: str) -> str:
    """A text as it is; a number written into the given form."""
    if isinstance(given, str):
        return given
    if isinstance(given, Real):
        return number.format(float(given))
    raise TypeError(f"{name} is {given!r}: pass a str in its notation, or a number")


def _borrowed(name: str, noun: type, given: Any) -> None:
    if not isinstance(given, noun):
        raise TypeError(f"{name} is {given!r}: pass a {noun.__name__}")


def _set(bench: Any, name: str, value: Any) -> None:
    number = SETTINGS[name].number
    if isinstance(value, bool):
        value = "yes" if value else "no"
    if value is None or isinstance(value, str):
        _ohmcurve.ohm_bench_set(bench, number, value)
    elif isinstance(value, Real):
        _ohmcurve.ohm_bench_set_number(bench, number, float(value))
    else:
        raise TypeError(f"{name} is {value!r}: pass a str in its notation, a number or None")


def _verb(ask: Callable[[Any], Any], meaning: str) -> Callable[[Bench], Answer]:
    def verb(self: Bench) -> Answer:
        return Answer._of(ask(self._bench))

    verb.__doc__ = meaning
    return verb


class Bench:
    """What is set and what was read. A mistake raises Error and leaves it as it was.

    It keeps alive what it borrows. One thread at a time may use it. str() of it is its
    record.
    """

    __slots__ = ("_bench", "_circuit", "_compared", "_history", "_sensor")
    _bench: Any
    _circuit: Circuit | None
    _compared: list[Sensor]
    _history: History | None
    _sensor: Sensor | None

    def __init__(
        self,
        *,
        sensor: Sensor | None = None,
        compared: Iterable[Sensor] = (),
        history: History | None = None,
        circuit: Circuit | None = None,
        **settings: Unpack[Settings],
    ) -> None:
        self._bench = _ohmcurve.ohm_bench_new()
        self._compared = []
        self.sensor = sensor
        self.history = history
        self.circuit = circuit
        for each in compared:
            self.compare(each)
        self.set(**settings)

    @classmethod
    def from_record(cls, text: str | bytes, *, circuit: Circuit | None = None) -> Bench:
        """A bench of the lines of a record; str() of it is an equal one."""
        self = cls(circuit=circuit)
        self.read_record(text)
        return self

    def copy(self) -> Bench:
        """Another one with the same settings and readings, that borrows the same."""
        other = type(self)()
        other._bench = _ohmcurve.ohm_bench_copy_new(self._bench)
        other._sensor, other._history, other._circuit = self._sensor, self._history, self._circuit
        other._compared = list(self._compared)
        return other

    __copy__ = copy

    def clear(self) -> None:
        """Forget every setting, every reading and what is borrowed."""
        _ohmcurve.ohm_bench_clear(self._bench)
        self._sensor = self._history = self._circuit = None
        self._compared = []

    # ---- settings

    def set(self, **settings: Unpack[Settings]) -> None:
        """Set all of these, or nothing. A str is in the notation, a number in the unit of
        the name, True and False are yes and no, None unsets.
        """
        for name in settings:
            if name not in SETTINGS:
                raise refusal(name, list(SETTINGS), "there is no setting")
        bench = _ohmcurve.ohm_bench_copy_new(self._bench)
        for name, value in settings.items():
            _set(bench, name, value)
        self._bench = bench

    @property
    def settings(self) -> dict[str, str]:
        """What is set, each in its notation."""
        texts = (
            (name, _ohmcurve.ohm_bench_setting(self._bench, setting.number))
            for name, setting in SETTINGS.items()
        )
        return {name: text for name, text in texts if text is not None}

    # ---- what is borrowed

    @property
    def sensor(self) -> Sensor | None:
        """The sensor to ask about."""
        return self._sensor

    @sensor.setter
    def sensor(self, sensor: Sensor | None) -> None:
        if sensor is not None:
            _borrowed("sensor", Sensor, sensor)
        _ohmcurve.ohm_bench_use_sensor(self._bench, sensor and sensor._sensor)
        self._sensor = sensor

    @property
    def compared(self) -> tuple[Sensor, ...]:
        """Sensors to compare with: what it may be instead."""
        return tuple(self._compared)

    def compare(self, sensor: Sensor) -> None:
        """Compare with one more sensor."""
        _borrowed("sensor", Sensor, sensor)
        _ohmcurve.ohm_bench_compare(self._bench, sensor._sensor)
        self._compared.append(sensor)

    @property
    def history(self) -> History | None:
        """What the air did while the car stood."""
        return self._history

    @history.setter
    def history(self, history: History | None) -> None:
        if history is not None:
            _borrowed("history", History, history)
        _ohmcurve.ohm_bench_use_history(self._bench, None if history is None else history._history)
        self._history = history

    @property
    def circuit(self) -> Circuit | None:
        """The circuit to ask about."""
        return self._circuit

    @circuit.setter
    def circuit(self, circuit: Circuit | None) -> None:
        if circuit is not None:
            _borrowed("circuit", Circuit, circuit)
        _ohmcurve.ohm_bench_use_circuit(self._bench, circuit and circuit._circuit)
        self._circuit = circuit

    # ---- readings

    def read(self, reading: Reading) -> int:
        """Put a reading down, "2.31k@21.5C,sensor", "1-2=480", "0.97V" and so on; return its
        place.
        """
        if isinstance(reading, Real):
            return self.read_number(Quantity.OHMS, float(reading))
        if isinstance(reading, tuple) and len(reading) == 2:
            shown, at = reading
            reading = f"{noted('reading', shown, '={!r}')}@{noted('at', at, '{!r}C')}"
        if not isinstance(reading, str):
            raise TypeError(
                f"reading is {reading!r}: pass a str such as '2.31k@21.5C', a number of ohms, or "
                "a pair (reading, at)"
            )
        return int(_ohmcurve.ohm_bench_read(self._bench, reading))

    def read_number(
        self, quantity: Quantity, value: float, at_c: float | None = None
    ) -> int:
        """Put a number down, of ohms perhaps with the temperature of the sensor; return its
        place.
        """
        at = float("nan") if at_c is None else at_c
        return int(_ohmcurve.ohm_bench_read_number(self._bench, Quantity(quantity), value, at))

    def read_record(self, text: str | bytes) -> None:
        """Put down all lines of a record, or none: readings, and settings "# fan_c: 97C"."""
        _ohmcurve.ohm_bench_read_record(self._bench, text)

    @property
    def readings(self) -> tuple[str, ...]:
        """What lies on it, each in its notation."""
        return tuple(_ohmcurve.ohm_bench_reading(self._bench, each) for each in range(len(self)))

    def forget(self, index: int) -> None:
        """Forget a reading; those behind it move up by one."""
        if index < 0:
            raise IndexError(f"there is no reading {index}: count them from 0")
        _ohmcurve.ohm_bench_forget(self._bench, index)

    def record(self) -> str:
        """Settings and readings, a line each, as from_record() takes them."""
        return whole(_ohmcurve.ohm_bench_print, self._bench)

    def __len__(self) -> int:
        return int(_ohmcurve.ohm_bench_count(self._bench))

    def __bool__(self) -> bool:
        return True

    def __reduce__(self) -> Any:
        raise TypeError("a bench cannot be pickled: pickle its record()")

    def __str__(self) -> str:
        return self.record()

    def __repr__(self) -> str:
        return f"<Bench of {len(self)} readings, set {', '.join(self.settings) or 'nothing'}>"

    # ---- verbs, a line each

    check = _verb(_ohmcurve.ohm_bench_check, "Judge a sensor at known temperatures.")
    expect = _verb(_ohmcurve.ohm_bench_expect, "Tell what a good sensor shows, not yet measured.")
    identify = _verb(_ohmcurve.ohm_bench_identify, "Tell which sensor was read.")
    pins = _verb(_ohmcurve.ohm_bench_pins, "Tell which pins are which element.")
    explain = _verb(_ohmcurve.ohm_bench_explain, "Tell what would explain the readings.")
    soak = _verb(_ohmcurve.ohm_bench_soak, "Judge a coolant sensor of a car that stood.")
    signal = _verb(_ohmcurve.ohm_bench_signal, "Tell where the way to the module parts.")
    substitute = _verb(_ohmcurve.ohm_bench_substitute, "Find resistors for its place.")
    loom = _verb(_ohmcurve.ohm_bench_loom, "Tell the ohms in plug and wires.")
    fanpoint = _verb(_ohmcurve.ohm_bench_fanpoint, "Tell what to expect at the fan's start.")
    isolate = _verb(_ohmcurve.ohm_bench_isolate, "Tell which part of a circuit is at fault.")
    measure = _verb(_ohmcurve.ohm_bench_measure, "Tell what readings say, with no sensor.")
