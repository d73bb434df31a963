# SPDX-License-Identifier: MIT
"""From the reading of an ohmmeter to a verdict on a temperature sensor.

    import ohmcurve

    sensor = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")
    finding = ohmcurve.check(sensor, "2.31k", at="21.5C+-1", meter="0.8%+3")
    print(finding.verdict, finding.p_within)
    print(finding)
    print(finding.budget)

    bench = ohmcurve.Bench(sensor=sensor, fan_c="95C", place="sensor")
    bench.read("2.31k@21.5C")
    bench.read(("191", "boil"))
    answer = bench.check()
    print(answer.finding.job, [each.t_c for each in answer.readings])

    fit = ohmcurve.fit([(0, 5790), (20, 2450), (80, 322)], model="steinhart_hart")
    print(fit.curve, fit.temperature(1000))
    print(ohmcurve.Audit.load("table.csv"))

Resistance is in ohm, temperature in degrees Celsius; the suffix of a name is its
unit. Keywords are the settings of the header, see Settings and SETTINGS: a str is in
the notation, a number a number, None is unset. A bad definition or value raises Error,
which is a ValueError. A verdict is a result, never an exception. Curves, sensors and
answers never change and may be shared between threads.
"""

from __future__ import annotations

from . import _fields, _ohmcurve
from ._fields import *
from .answer import Answer
from .audit import Audit, Suspect, Suspicion
from .bench import Bench, Quantity, Reading
from .circuit import Circuit, circuits
from .cooling import cooling_hours, cooling_tau, cooling_temperature
from .curve import Curve, Range
from .decision import Conformance, conformance
from .divider import Series, divider_resistance, divider_volts, preferred_nearest
from .error import Error, Status
from .finding import Finding
from .fit import Fit, FitBasis, FitModel, FitPoint, Parameter, fit
from .history import History
from .module import reported_of
from .notation import read_resistance, read_temperature
from .sensor import Band, Row, Sensor, Temperature, catalogue, find_sensors
from .setting import SETTINGS, Setting
from .verbs import (
    Estimate,
    check,
    check_several,
    explain,
    fanpoint,
    identify,
    identify_pins,
    isolate,
    loom,
    measure,
    signal,
    soak,
    substitute,
)
from .water import water_boiling, water_pressure

__version__: str = _ohmcurve.ohm_version()
tables_version: str = _ohmcurve.ohm_tables_version()

__all__ = [
    "Answer",
    "Audit",
    "Band",
    "Bench",
    "Circuit",
    "Conformance",
    "Curve",
    "Error",
    "Estimate",
    "Finding",
    "Fit",
    "FitBasis",
    "FitModel",
    "FitPoint",
    "History",
    "Parameter",
    "Quantity",
    "Range",
    "Reading",
    "Row",
    "SETTINGS",
    "Sensor",
    "Series",
    "Setting",
    "Status",
    "Suspect",
    "Suspicion",
    "Temperature",
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
    "isolate",
    "loom",
    "measure",
    "preferred_nearest",
    "read_resistance",
    "read_temperature",
    "reported_of",
    "signal",
    "soak",
    "substitute",
    "tables_version",
    "water_boiling",
    "water_pressure",
]
__all__ += _fields.__all__
