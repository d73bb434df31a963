# SPDX-License-Identifier: MIT
"""What a display showed, and what is known of the ohmmeter."""

from __future__ import annotations

import enum
from dataclasses import dataclass, fields
from typing import Any, NamedTuple

from . import _ohmcurve


class Display(enum.IntEnum):
    """What the display showed."""

    VALUE = _ohmcurve.OHM_DISPLAY_VALUE
    OVER = _ohmcurve.OHM_DISPLAY_OVER
    OPEN = _ohmcurve.OHM_DISPLAY_OPEN
    ONE = _ohmcurve.OHM_DISPLAY_ONE
    """A lone 1: over-range on many displays, or 1 ohm."""


class Estimate(NamedTuple):
    """A quantity and its standard uncertainty (k = 1)."""

    value: float
    u: float


@dataclass(frozen=True)
class Reading:
    """One reading of an ohmmeter, as displayed, leads included.

    Without resolution_ohm the last digit is not known; Reading.parse() takes it
    from the digits.
    """

    r_ohm: float = 0.0
    resolution_ohm: float = 0.0
    display: Display = Display.VALUE
    range_ohm: float = 0.0
    """The range an over-range display was on; 0: not told."""
    zeros_ohm: float = 0.0
    """What a whole number leaves open: 100 of a bare 2300; 0: every digit was shown."""
    bare: bool = False
    """A bare number: the dial's k may be missing."""

    @classmethod
    def parse(cls, text: str) -> Reading:
        """Read 2310, 2.31k, 2k31, 2.31 kohm, 0R47, OL, OL@20k, >20k, 1 or open."""
        reading = _ohmcurve.ohm_reading()
        _ohmcurve.ohm_reading_read(text, reading)
        return cls(
            # NaN, where no number was shown, would make equal readings differ.
            r_ohm=0.0 if reading.r_ohm != reading.r_ohm else reading.r_ohm,
            resolution_ohm=reading.resolution_ohm,
            display=Display(reading.display),
            range_ohm=reading.range_ohm,
            zeros_ohm=reading.zeros_ohm,
            bare=bool(reading.bare),
        )

    @classmethod
    def over(cls, range_ohm: float = 0.0) -> Reading:
        """The display showed over-range, on that range if told."""
        return cls(display=Display.OVER, range_ohm=range_ohm)

    @classmethod
    def one(cls) -> Reading:
        """The display showed a lone 1."""
        return cls(r_ohm=1.0, resolution_ohm=1.0, display=Display.ONE, bare=True)

    @classmethod
    def open(cls) -> Reading:
        """The display showed no circuit, on the highest range."""
        return cls(display=Display.OPEN)

    def _struct(self) -> Any:
        reading = _ohmcurve.ohm_reading()
        for each in fields(self):
            setattr(reading, each.name, getattr(self, each.name))
        return reading


@dataclass(frozen=True)
class Meter:
    """What is known of the ohmmeter. What is None is assumed, and the finding says so.

    The accuracy is stated when percent (of reading) or counts (of the last digit)
    is given, the other being 0 then; the leads, when lead_ohm is given together
    with lead_limit_ohm. An exact meter has no error at all.
    """

    percent: float | None = None
    counts: float | None = None
    resolution_ohm: float = 0.0
    """Resistance of one count; 0: from display_count or the reading."""
    display_count: float = 0.0
    """2000 for a display up to 1999; 0: not known."""
    lead_ohm: float | None = None
    lead_limit_ohm: float | None = None
    exact: bool = False
    current_ma: float = 0.0
    """Test current, milliampere; 0: not known."""

    def __post_init__(self) -> None:
        if self.exact and (self.percent is not None or self.counts is not None):
            raise TypeError("exact was given with percent or counts: give one or the other")
        if (self.lead_ohm is None) != (self.lead_limit_ohm is None):
            raise TypeError(
                "one of lead_ohm and lead_limit_ohm was given: give both, or Meter.parse() "
                "the leads as text"
            )

    @classmethod
    def parse(cls, accuracy: str | None = None, *, leads: str | None = None) -> Meter:
        """Read an accuracy (0.8%+3, 0.8%+3x10, 0.8%+3@2000, @2000, exact) and the
        resistance of the leads (0.4, 0.4+-0.1).
        """
        meter = _ohmcurve.ohm_meter()
        if accuracy is not None:
            _ohmcurve.ohm_meter_read(accuracy, meter)
        if leads is not None:
            _ohmcurve.ohm_leads_read(leads, meter)
        return cls._of(meter)

    @classmethod
    def _of(cls, meter: Any) -> Meter:
        accuracy = meter.accuracy == _ohmcurve.OHM_STATED
        leads = meter.leads != _ohmcurve.OHM_ASSUMED
        return cls(
            percent=meter.percent if accuracy else None,
            counts=meter.counts if accuracy else None,
            resolution_ohm=meter.resolution_ohm,
            display_count=meter.display_count,
            lead_ohm=meter.lead_ohm if leads else None,
            lead_limit_ohm=meter.lead_limit_ohm if leads else None,
            exact=meter.accuracy == _ohmcurve.OHM_EXACT,
            current_ma=meter.current_ma,
        )

    def limit_ohm(self, reading: Reading) -> float:
        """Limit of error of a reading by the meter's own specification."""
        return float(_ohmcurve.ohm_meter_limit(self._struct(), reading._struct()))

    def estimate(self, reading: Reading) -> Estimate:
        """What a reading says of the resistance at the probes' tips, in ohm."""
        return Estimate(*_ohmcurve.ohm_meter_estimate(self._struct(), reading._struct()))

    def _struct(self) -> Any:
        meter = _ohmcurve.ohm_meter()
        if self.exact:
            meter.accuracy = _ohmcurve.OHM_EXACT
        elif self.percent is not None or self.counts is not None:
            meter.accuracy = _ohmcurve.OHM_STATED
            meter.percent = self.percent or 0.0
            meter.counts = self.counts or 0.0
        meter.resolution_ohm = self.resolution_ohm
        meter.display_count = self.display_count
        meter.current_ma = self.current_ma
        if self.lead_ohm is not None:
            meter.leads = _ohmcurve.OHM_STATED
            meter.lead_ohm = self.lead_ohm
            meter.lead_limit_ohm = self.lead_limit_ohm
        return meter
