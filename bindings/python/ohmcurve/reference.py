# SPDX-License-Identifier: MIT
"""What says how warm the sensor is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from . import _ohmcurve


def read_temperature(text: str) -> float:
    """Degrees Celsius of a temperature with its unit: 21.5C, 70F, 294.7K."""
    return float(_ohmcurve.ohm_temperature_read(text))


def read_tolerance(text: str) -> float:
    """Percent of a tolerance: 5%."""
    return float(_ohmcurve.ohm_tolerance_read(text))


@dataclass(frozen=True)
class Reference:
    """The temperature of the sensor and how well it is known.

    t_c is None for ice. The accuracy is stated when limit_k (within this) or u_k
    (standard uncertainty of a further normal part) is given, the other being 0
    then; otherwise it is assumed, and the finding says so.
    """

    t_c: float | None
    limit_k: float | None = None
    u_k: float | None = None

    @classmethod
    def ice(cls, *, limit_k: float | None = None, u_k: float | None = None) -> Reference:
        """Crushed ice and water, stirred."""
        return cls(None, limit_k, u_k)

    @classmethod
    def parse(cls, text: str) -> Reference:
        """Read 21.5C, 70F, 294.7K or ice, each with its limit or without: 21.5C+-1."""
        reference = _ohmcurve.ohm_reference()
        _ohmcurve.ohm_reference_read(text, reference)
        ice = reference.kind == _ohmcurve.OHM_REFERENCE_ICE
        stated = reference.accuracy != _ohmcurve.OHM_ASSUMED
        return cls(
            None if ice else reference.t_c,
            reference.limit_k if stated else None,
            reference.u_k if stated else None,
        )

    def _struct(self) -> Any:
        reference = _ohmcurve.ohm_reference()
        if self.t_c is None:
            reference.kind = _ohmcurve.OHM_REFERENCE_ICE
        else:
            reference.t_c = self.t_c
        if self.limit_k is not None or self.u_k is not None:
            reference.accuracy = _ohmcurve.OHM_STATED
            reference.limit_k = self.limit_k or 0.0
            reference.u_k = self.u_k or 0.0
        return reference
