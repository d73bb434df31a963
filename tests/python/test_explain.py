# SPDX-License-Identifier: MIT
"""Explaining readings in Python."""

import unittest

import ohmcurve
from ohmcurve import Error, Explanation, Reason, Sensor, Status, Verdict


class ExplainTest(unittest.TestCase):
    def setUp(self):
        self.sensor = Sensor.from_catalogue("ntc-2k45-20c")

    def test_a_healthy_sensor_explains_its_readings(self):
        finding, each = ohmcurve.explain(self.sensor, [("2.31k", "21.5C"), ("185", "boil")])
        self.assertIs(finding.verdict, Verdict.WITHIN)
        self.assertEqual([one.explanation for one in each], list(Explanation))
        leading = [one.explanation for one in each if one.leading]
        self.assertEqual(leading, [Explanation.HEALTHY])

    def test_a_fault_has_its_size(self):
        finding, each = ohmcurve.explain(
            self.sensor, [("2.31k", "21.5C"), ("412", "80C")], leads="0.4"
        )
        self.assertIs(finding.verdict, Verdict.OUTSIDE)
        series = each[list(Explanation).index(Explanation.SERIES)]
        self.assertEqual(series.leading, 1)
        self.assertLess(series.fault_low_ohm, series.fault_ohm)
        self.assertLess(series.fault_ohm, series.fault_high_ohm)
        self.assertIn(" in plug, pins or wire", str(series))
        self.assertIn(Explanation.SERIES, finding.candidates)

    def test_another_part_is_looked_for_among_those_given(self):
        readings = [("3.5k", "20C"), ("177", "boil")]
        finding, each = ohmcurve.explain(self.sensor, readings)
        self.assertIs(finding.reason, Reason.ONE)
        self.assertIs(finding.explanation, Explanation.OTHER_PART)
        self.assertEqual(
            each[list(Explanation).index(Explanation.OTHER_PART)].sensor, "ntc-3k5-20c"
        )
        finding, _ = ohmcurve.explain(self.sensor, readings, others=[])
        self.assertIsNot(finding.explanation, Explanation.OTHER_PART)

    def test_what_cannot_be_used_is_an_error(self):
        with self.assertRaises(Error) as raised:
            ohmcurve.explain(self.sensor, [])
        self.assertIs(raised.exception.status, Status.NOT_FOUND)
        with self.assertRaises(Error) as raised:
            ohmcurve.explain(self.sensor, [("330", "80C")], band="nobody's")
        self.assertIs(raised.exception.status, Status.NOT_FOUND)
        with self.assertRaises(TypeError):
            ohmcurve.explain("ntc-2k45-20c", [("330", "80C")])
        with self.assertRaises(TypeError):
            ohmcurve.explain(self.sensor, [("330", "80C")], others=["ntc-2k45-20c"])


if __name__ == "__main__":
    unittest.main()
