# SPDX-License-Identifier: MIT
"""From the reading of an ohmmeter to a verdict on a temperature sensor.

    import ohmcurve

    sensor = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")
    finding = ohmcurve.check(sensor, "2.31k", at="21.5C+-1")
    print(finding.verdict, finding.p_within)
    print(finding)
    print(finding.budget)

    fit = ohmcurve.fit([(0, 5790), (20, 2450), (80, 322)], model="steinhart_hart")
    print(fit.curve, fit.temperature(1000))
    print(ohmcurve.Audit.load("table.csv"))

    finding = ohmcurve.soak(sensor, "3.9k", air="9C+-2", hours=7, others={"intake": "10.5C"})
    print(finding.verdict, finding.missed_cold_k, finding.decidable_h)

Resistance is in ohm, temperature in degrees Celsius; the suffix of a name is its
unit. A bad definition or value raises Error, which is a ValueError. A verdict is
a result, never an exception. Curves and sensors never change and may be shared
between threads.
"""

from __future__ import annotations

from . import _ohmcurve
from .assumed import ASSUMED
from .audit import Audit, Suspect, Suspicion
from .bath import check, check_several
from .circuit import Circuit, circuits
from .curve import Curve, Range
from .decision import Conformance, conformance
from .divider import Series, divider_resistance, divider_volts, preferred_nearest
from .error import Error, Status
from .explain import explain
from .finding import Finding
from .fit import Fit, FitBasis, FitModel, FitPoint, Parameter, fit
from .identify import identify, identify_pins
from .meter import Display, Estimate, Meter, Reading
from .module import Module, Moves, Reported, Rounding, Volts, WhichRange, reported_of
from .pin import fanpoint, loom, signal, substitute
from .reference import Reference, ReferenceKind, read_temperature, read_tolerance
from .sensor import Band, Row, Sensor, Temperature, catalogue, find_sensors
from .soak import (
    Companion,
    History,
    cooling_hours,
    cooling_tau,
    cooling_temperature,
    soak,
)
from .verdict import (
    Agreement,
    Explanation,
    JobReason,
    Joined,
    Negative,
    Place,
    Reason,
    Role,
    Soaked,
    Verdict,
)
from .water import water_boiling, water_pressure

__version__: str = _ohmcurve.ohm_version()
tables_version: str = _ohmcurve.ohm_tables_version()

__all__ = [
    "ASSUMED",
    "Agreement",
    "Audit",
    "Band",
    "Circuit",
    "Companion",
    "Conformance",
    "Curve",
    "Display",
    "Error",
    "Estimate",
    "Explanation",
    "Finding",
    "Fit",
    "FitBasis",
    "FitModel",
    "FitPoint",
    "History",
    "JobReason",
    "Joined",
    "Meter",
    "Module",
    "Moves",
    "Negative",
    "Parameter",
    "Place",
    "Range",
    "Reading",
    "Reason",
    "Reference",
    "ReferenceKind",
    "Reported",
    "Role",
    "Rounding",
    "Row",
    "Sensor",
    "Series",
    "Soaked",
    "Status",
    "Suspect",
    "Suspicion",
    "Temperature",
    "Verdict",
    "Volts",
    "WhichRange",
    "catalogue",
    "check",
    "check_several",
    "circuits",
    "conformance",
    "cooling_hours",
    "cooling_tau",
    "cooling_temperature",
    "divider_resistance",
    "divider_volts",
    "explain",
    "fanpoint",
    "find_sensors",
    "fit",
    "identify",
    "identify_pins",
    "loom",
    "preferred_nearest",
    "read_temperature",
    "read_tolerance",
    "reported_of",
    "signal",
    "soak",
    "substitute",
    "tables_version",
    "water_boiling",
    "water_pressure",
]
