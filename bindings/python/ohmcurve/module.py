# SPDX-License-Identifier: MIT
"""A control module: how its input is made, and what is read of it."""

from __future__ import annotations

import enum
from dataclasses import dataclass
from typing import Any

from . import _ohmcurve
from .verdict import Negative


class WhichRange(enum.IntEnum):
    """Which of two pull-ups was in use."""

    NOT_TOLD = _ohmcurve.OHM_RANGE_NOT_TOLD
    COLD = _ohmcurve.OHM_RANGE_COLD
    HOT = _ohmcurve.OHM_RANGE_HOT


class Rounding(enum.IntEnum):
    """How a module makes whole degrees."""

    NOT_TOLD = _ohmcurve.OHM_ROUNDING_NOT_TOLD
    ROUNDED = _ohmcurve.OHM_ROUNDED
    TRUNCATED = _ohmcurve.OHM_TRUNCATED


class Moves(enum.IntEnum):
    """Whether a reported value follows the engine."""

    NOT_TOLD = _ohmcurve.OHM_MOVES_NOT_TOLD
    MOVES = _ohmcurve.OHM_MOVES
    NEVER_MOVES = _ohmcurve.OHM_NEVER_MOVES


@dataclass(frozen=True)
class Module:
    """The input of a module. What is None or 0 is assumed, and the finding says so."""

    pull_up_ohm: float = 0.0
    """Of the cold range when there are two; 0: not known."""
    hot_pull_up_ohm: float = 0.0
    """Of the hot range; 0: one range."""
    changeover_c: float = 0.0
    range: WhichRange = WhichRange.NOT_TOLD
    pull_up_percent: float | None = None
    """Either is within this of what was told."""
    supply_volt: float = 0.0
    supply_limit_volt: float | None = None
    open_volt: float = 0.0
    """From here up the module sees no circuit."""
    short_volt: float = 0.0
    """From here down it sees a short."""

    @classmethod
    def parse(cls, pull_up: str | None = None, *, supply: str | None = None) -> Module:
        """Read a pull-up (1k, 1k+-1%, 10k,1k@50C) and its supply (5V, 5.02V+-0.01)."""
        module = _ohmcurve.ohm_module()
        if pull_up is not None:
            _ohmcurve.ohm_pull_up_read(pull_up, module)
        if supply is not None:
            _ohmcurve.ohm_supply_read(supply, module)
        stated = _ohmcurve.OHM_STATED
        return cls(
            pull_up_ohm=module.pull_up_ohm,
            hot_pull_up_ohm=module.hot_pull_up_ohm,
            changeover_c=module.changeover_c,
            pull_up_percent=module.pull_up_percent if module.pull_up_accuracy == stated else None,
            supply_volt=module.supply_volt,
            supply_limit_volt=(
                module.supply_limit_volt if module.supply_accuracy == stated else None
            ),
        )

    def _struct(self) -> Any:
        module = _ohmcurve.ohm_module()
        module.pull_up_ohm = self.pull_up_ohm
        module.hot_pull_up_ohm = self.hot_pull_up_ohm
        module.changeover_c = self.changeover_c
        module.range = int(self.range)
        if self.pull_up_percent is not None:
            module.pull_up_accuracy = _ohmcurve.OHM_STATED
            module.pull_up_percent = self.pull_up_percent
        module.supply_volt = self.supply_volt
        if self.supply_limit_volt is not None:
            module.supply_accuracy = _ohmcurve.OHM_STATED
            module.supply_limit_volt = self.supply_limit_volt
        module.open_volt = self.open_volt
        module.short_volt = self.short_volt
        return module


@dataclass(frozen=True)
class Volts:
    """Volts at the module's pin, plug on, key on."""

    v_volt: float
    resolution_volt: float = 0.0
    limit_volt: float | None = None
    """The display is within this of the truth; None: assumed."""
    negative: Negative = Negative.NOT_TOLD

    @classmethod
    def parse(cls, text: str, *, negative: str | Negative = Negative.NOT_TOLD) -> Volts:
        """Read 0.97, 0.97V, 970mV or 0.97+-0.02."""
        volts = _ohmcurve.ohm_volts()
        _ohmcurve.ohm_volts_read(text, volts)
        stated = volts.accuracy == _ohmcurve.OHM_STATED
        return cls(
            v_volt=volts.v_volt,
            resolution_volt=volts.resolution_volt,
            limit_volt=volts.limit_volt if stated else None,
            negative=Negative(negative),
        )

    def _struct(self) -> Any:
        volts = _ohmcurve.ohm_volts()
        volts.v_volt = self.v_volt
        volts.resolution_volt = self.resolution_volt
        volts.negative = getattr(_ohmcurve, f"OHM_NEGATIVE_{Negative(self.negative).name}")
        if self.limit_volt is not None:
            volts.accuracy = _ohmcurve.OHM_STATED
            volts.limit_volt = self.limit_volt
        return volts


@dataclass(frozen=True)
class Reported:
    """Degrees that a module reports: a scan tool, or a gauge with figures."""

    t_c: float
    resolution_k: float = 0.0
    """Of the display when coarser than a degree."""
    rounding: Rounding = Rounding.NOT_TOLD
    limit_k: float | None = None
    """What the module makes of a resistance is within this; None: assumed."""
    moves: Moves = Moves.NOT_TOLD

    @classmethod
    def parse(
        cls,
        text: str,
        *,
        rounding: Rounding = Rounding.NOT_TOLD,
        moves: Moves = Moves.NOT_TOLD,
    ) -> Reported:
        """Read 91C, 196F or 91C+-2."""
        reported = _ohmcurve.ohm_reported()
        _ohmcurve.ohm_reported_read(text, reported)
        stated = reported.accuracy == _ohmcurve.OHM_STATED
        return cls(
            t_c=reported.t_c,
            resolution_k=reported.resolution_k,
            rounding=rounding,
            limit_k=reported.limit_k if stated else None,
            moves=moves,
        )

    def _struct(self) -> Any:
        reported = _ohmcurve.ohm_reported()
        reported.t_c = self.t_c
        reported.resolution_k = self.resolution_k
        reported.rounding = int(self.rounding)
        reported.moves = int(self.moves)
        if self.limit_k is not None:
            reported.accuracy = _ohmcurve.OHM_STATED
            reported.limit_k = self.limit_k
        return reported


def reported_of(t_c: float, rounding: Rounding = Rounding.NOT_TOLD) -> float:
    """What a module reports of a temperature: whole degrees from -40 to 215."""
    return float(_ohmcurve.ohm_reported_of(t_c, int(rounding)))
