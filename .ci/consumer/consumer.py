# SPDX-License-Identifier: MIT
"""A program outside the tree, against the installed copy whose prefix is given."""

import os
import sys

import numpy

import ohmcurve

prefix = os.path.realpath(sys.argv[1])
assert os.path.realpath(ohmcurve.__file__).startswith(prefix), ohmcurve.__file__
with open("/proc/self/maps", encoding="utf-8") as maps:
    libraries = {line.split()[-1] for line in maps if "libohmcurve" in line}
assert libraries and all(path.startswith(prefix) for path in libraries), libraries

sensor = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")
finding = ohmcurve.check(sensor, "2.31k", at="21.5C+-0.5", meter="0.8%+3")
assert finding.verdict == "within", finding.verdict

together, each = ohmcurve.check_several(sensor, [("2.31k", "21.5C"), ("191", "boil")])
assert (together.verdict, together.job, len(each)) == ("within", "within", 2), together

bench = ohmcurve.Bench(sensor=sensor, leads=0.4, place="sensor")
bench.read("2.31k@21.5C")
bench.read(("191", "boil"))
answer = ohmcurve.Bench.from_record(bench.record()).measure()
assert [round(one.lead_ohm, 9) for one in answer.readings] == [0.4, 0.4], answer
assert bench.check().finding.verdict == "within", bench.check()

ohms = numpy.array([2450.0, 1e9, 300.0])
temperatures = numpy.asarray(sensor.curve.temperatures(ohms))
assert list(numpy.isnan(temperatures)) == [False, True, False], temperatures
assert sensor.curve.temperatures(ohms, out=ohms) is ohms
assert numpy.array_equal(ohms, temperatures, equal_nan=True)

table = numpy.zeros(2, dtype=[("r_ohm", "f8"), ("t_c", "f8")])
table["r_ohm"] = 2450, 300
sensor.curve.temperatures(table["r_ohm"], out=table["t_c"])
assert table["t_c"][0] == sensor.curve.temperature(2450), table

try:
    ohmcurve.Sensor.from_catalogue("ntc-2k45-20")
except ohmcurve.Error as error:
    print(error)
else:
    raise AssertionError("a wrong name is refused")
