# SPDX-License-Identifier: MIT
"""The words of a finding; each member is also its text."""

from __future__ import annotations

import enum
from typing import Any


class Word(str, enum.Enum):
    """A word out of a short list."""

    def __str__(self) -> str:
        return str(self.value)

    def __format__(self, format_spec: str) -> str:
        return format(str(self.value), format_spec)

    @classmethod
    def _missing_(cls, value: Any) -> Word:
        raise ValueError(f"{value!r} is no {cls.__name__}: pass one of {', '.join(cls)}")


class Verdict(Word):
    """The verdict on the part, and on the job."""

    WITHIN = "within"
    OUTSIDE = "outside"
    UNDECIDED = "undecided"


class Reason(Word):
    """Why the verdict is what it is."""

    CONFORMS = "conforms"
    LOW = "low"
    """Below what is allowed."""
    HIGH = "high"
    """Above what is allowed."""
    OPEN = "open"
    """No circuit."""
    OVER_RANGE = "over_range"
    """The meter showed no number."""
    NO_TOLERANCE = "no_tolerance"
    """Nothing says what is allowed."""
    OUTSIDE_BAND = "outside_band"
    """Nothing says what is allowed at this temperature."""
    UNCERTAIN = "uncertain"
    """The measurement is too coarse to decide."""
    PLUG_ON = "plug_on"
    """It fits a good sensor with the plug left on."""
    MISSING_K = "missing_k"
    """A thousand times as much was probably read."""
    LONE_ONE = "lone_one"
    """Over-range, or 1 ohm."""
    MOVING = "moving"
    """The last two readings differ: wait."""
    SHORTED = "shorted"
    """0 ohm, or nearly."""
    ONE = "one"
    """One answer fits the readings."""
    ALIKE = "alike"
    """Several do, that no reading could tell apart."""
    SEVERAL = "several"
    """A further reading tells them apart."""
    NONE = "none"
    """Nothing compared fits."""
    WARM = "warm"
    """Warmer than a soak explains, but sun, a heater, a garage or a move would."""
    SERIES = "series"
    """Ohms in plug or wire."""
    LEAKAGE = "leakage"
    """A path across the sensor, in plug or wire."""
    GROUND = "ground"
    """The volts were read from another ground."""
    PULL_UP = "pull_up"
    """Not the pull-up or the supply that was told."""
    CURVE = "curve"
    """The module makes other degrees of the same volts."""
    BETWEEN = "between"
    """They part, and more than one thing could be it."""
    STUCK = "stuck"
    """The reported value never moves."""
    STAND_IN = "stand_in"
    """The reported value is a known substitute."""
    RANGE = "range"
    """Which of two pull-ups is in use is not known."""
    ALONE = "alone"
    """There is nothing to hold it against."""
    COLD = "cold"
    """The module would not ask for the fan."""


class JobReason(Word):
    """Why the sensor is or is not good enough for the fan."""

    CONFORMS = "conforms"
    LATE = "late"
    """At the least the fan starts too late."""
    EARLY = "early"
    """At the least it starts too early."""
    HIDDEN = "hidden"
    """What could still hide would be too much."""
    UNCERTAIN = "uncertain"
    """The measurement is too coarse to say."""


class Negative(Word):
    """Where the negative lead of the voltmeter was."""

    NOT_TOLD = "not_told"
    PIN = "pin"
    """The module's own pin for the sensor's ground."""
    SENSOR = "sensor"
    """The ground terminal at the sensor."""
    BODY = "body"
    """Engine, body or battery."""


class Joined(Word):
    """How two resistors are joined."""

    SINGLE = "single"
    SERIES = "series"
    PARALLEL = "parallel"


class Role(Word):
    """What lies between two pins."""

    NONE = "none"
    MODULE = "module"
    GAUGE = "gauge"
    EITHER = "either"
    """An element, of the module or of the gauge."""
    UNKNOWN = "unknown"
    """An element that goes with no sensor compared."""
    BOTH = "both"
    """Two elements in series: the wrong pair."""
    JOINED = "joined"
    GROUND = "ground"
    """The same element by way of the engine and its ground."""
    ASK = "ask"
    """The display showed no number, and not that it is open."""


class Explanation(Word):
    """What may be wrong with what was read."""

    HEALTHY = "healthy"
    SERIES = "series"
    """Resistance in the plug, the pins or a wire."""
    LEAKAGE = "leakage"
    """Something conducts across the sensor."""
    DRIFT = "drift"
    """More or fewer ohms, by the same part everywhere."""
    BETA = "beta"
    """Right near 25 C, and too steep or too flat."""
    OTHER_PART = "other_part"
    """It is another sensor."""
    OPEN = "open"
    SHORT = "short"
    PLUG_ON = "plug_on"
    """A good one with the plug left on."""
    WRONG_RANGE = "wrong_range"
    """A thousand times as much or as little was read."""


class Place(Word):
    """Where the probes were."""

    NOT_TOLD = "not_told"
    SENSOR = "sensor"
    """At its own pins, plug off."""
    PLUG_ON = "plug_on"
    """Back-probed with the plug on."""
    MODULE = "module"
    """At the module's end of the wires, module unplugged, sensor plugged in."""


class Agreement(Word):
    """What the sensors of a car that stood say of each other."""

    CONSISTENT = "consistent"
    ODD = "odd"
    """One does not agree with the others; Finding.odd says which."""
    DISAGREE = "disagree"
    """And nothing says which one is off."""


class Soaked(Word):
    """A sensor of a car that stood."""

    COOLANT = "coolant"
    INTAKE = "intake"
    """The air that goes into the engine."""
    OIL = "oil"
    AMBIENT = "ambient"
    """The air in front of the car."""
