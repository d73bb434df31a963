# SPDX-License-Identifier: MIT
"""Identifying a sensor in Python."""

import unittest

import ohmcurve
import samples
from ohmcurve import Error, Reason, Role, Sensor, Status, Verdict


class IdentifyTest(unittest.TestCase):
    def test_one_that_leads_is_found(self):
        finding, candidates = ohmcurve.identify([("37.4k", "20C+-0.5"), ("3.7k", "80C+-0.5")])
        self.assertIs(finding.verdict, Verdict.WITHIN)
        self.assertIs(finding.reason, Reason.ONE)
        self.assertEqual(finding.sensor, "ntc-37k-20c")
        self.assertEqual(finding.candidates, ("ntc-37k-20c",))
        self.assertEqual(candidates[0].sensor, "ntc-37k-20c")
        self.assertEqual(candidates[0].leading, 1)
        self.assertIn("FOUND", str(finding))

    def test_the_likeliest_come_first_and_all_compared_are_there(self):
        finding, candidates = ohmcurve.identify([("330", "80C")])
        self.assertIs(finding.reason, Reason.SEVERAL)
        self.assertEqual(len(candidates), finding.compared)
        self.assertEqual(finding.compared + finding.not_compared, len(ohmcurve.catalogue()))
        chances = [candidate.p_sensor for candidate in candidates]
        self.assertEqual(chances, sorted(chances, reverse=True))
        self.assertAlmostEqual(sum(chances), 1)

    def test_none_of_these_is_an_answer(self):
        finding, _ = ohmcurve.identify([("480", "35C")])
        self.assertIs(finding.verdict, Verdict.OUTSIDE)
        self.assertIs(finding.reason, Reason.NONE)
        self.assertIsNone(finding.sensor)

    def test_a_display_without_a_number_identifies_nothing(self):
        finding, candidates = ohmcurve.identify([("OL", "20C")])
        self.assertIs(finding.reason, Reason.OVER_RANGE)
        self.assertEqual(candidates, ())

    def test_given_sensors_are_compared(self):
        mine = Sensor.parse(samples.BARE_TABLE, name="mine")
        theirs = Sensor.from_catalogue("ntc-37k-20c")
        finding, candidates = ohmcurve.identify([("2.45k", "20C")], sensors=[theirs, mine])
        self.assertEqual(finding.sensor, mine.name)
        self.assertEqual(finding.sensor_index, 1)
        self.assertEqual(len(candidates), 2)

    def test_a_pair_is_read_like_its_text(self):
        pairs = ohmcurve.identify([("330", "80C")])
        self.assertEqual(pairs, ohmcurve.identify(["330@80C"]))
        self.assertEqual(pairs, ohmcurve.identify(["330"], at="80C"))

    def test_what_cannot_be_used_is_an_error(self):
        with self.assertRaises(Error) as raised:
            ohmcurve.identify([])
        self.assertIs(raised.exception.status, Status.NOT_FOUND)
        with self.assertRaises(Error) as raised:
            ohmcurve.identify([("330", "80C")] * 17)
        self.assertIs(raised.exception.status, Status.TOO_LARGE)
        with self.assertRaises(Error):
            ohmcurve.identify([("330", "80C")], level=2)
        with self.assertRaises(Error):
            ohmcurve.identify([("330", "80C")], sensors=[])
        with self.assertRaises(TypeError):
            ohmcurve.identify([("330", "80C")], sensors=["ntc-37k-20c"])


class PinsTest(unittest.TestCase):
    def test_the_modules_pins_are_found_beside_the_gauges(self):
        finding, each = ohmcurve.identify_pins(
            ["1-3=810", "1-2=OL", "2-body=210ohm"], at="50C"
        )
        self.assertIs(finding.verdict, Verdict.WITHIN)
        self.assertEqual((finding.pair, finding.gauge_pair), ("1-3", "2-body"))
        self.assertEqual([one.role for one in each], [Role.MODULE, Role.NONE, Role.GAUGE])
        self.assertIn("FOUND: the module's element is on 1-3", str(finding))

    def test_what_is_no_pair_is_an_error(self):
        with self.assertRaises(Error) as raised:
            ohmcurve.identify_pins(["1-1=2"], at="50C")
        self.assertIs(raised.exception.status, Status.BAD_SYNTAX)

    def test_pins_without_a_temperature_are_refused(self):
        with self.assertRaisesRegex(Error, "temperature is missing"):
            ohmcurve.identify_pins(["1-3=810"])


if __name__ == "__main__":
    unittest.main()
