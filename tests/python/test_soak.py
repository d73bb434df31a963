# SPDX-License-Identifier: MIT
"""A coolant sensor of a car that stood."""

import math
import tempfile
import unittest
from pathlib import Path

import ohmcurve
from ohmcurve import (
    Agreement,
    Error,
    History,
    Place,
    Reason,
    Soaked,
    Status,
    Verdict,
)

AIR = "hours,temp_c\n0,15\n4,11\n14,9\n"


def soak(reading="3.8k", air="9C+-1", after_h=14, **keywords):
    sensor = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")
    return ohmcurve.soak(sensor, reading, air=air, after_h=after_h, place="sensor", **keywords)


class SoakTest(unittest.TestCase):
    def test_a_sound_sensor_is_within_after_a_night(self):
        finding = soak()
        self.assertIs(finding.verdict, Verdict.WITHIN)
        self.assertEqual(finding.about, "soak")
        self.assertEqual(finding.after_h, 14)
        self.assertLess(finding.coolant_low_c, finding.at_c)
        self.assertLess(finding.at_c, finding.coolant_high_c)
        self.assertIn("GOOD cold", str(finding))

    def test_colder_is_outside_and_warmer_is_undecided_until_undisturbed(self):
        self.assertIs(soak("9k").reason, Reason.HIGH)
        self.assertIs(soak("1200ohm").reason, Reason.WARM)
        self.assertIs(soak("1200ohm", undisturbed=True).reason, Reason.LOW)

    def test_what_was_told_is_not_assumed(self):
        told = soak(stop="92C+-3", tau="1h-3h", allow_k=9, undisturbed=True, fan_c=97, limit_k=5)
        assumed = " ".join(told.assumed)
        for part in ("stop", "cools", "allowed", "sun", "fan", "air"):
            self.assertNotIn(part, assumed)
        self.assertEqual((told.stop_c, told.stop_limit_k), (92, 3))
        self.assertEqual((told.tau_low_h, told.tau_high_h, told.allow_k), (1, 3, 9))

    def test_a_stop_at_0_is_told(self):
        for stop in ("0C", 0):
            finding = soak(stop=stop)
            self.assertEqual(finding.stop_c, 0)
            self.assertFalse([each for each in finding.assumed if "start" in each])
        self.assertNotEqual(soak().stop_c, 0)

    def test_numbers_are_taken_like_texts(self):
        self.assertEqual(soak(air=9, stop=92, undisturbed=1), soak(air="9C", stop="92C", undisturbed="yes"))

    def test_a_history_replaces_the_air(self):
        finding = soak(air=None, after_h=None, history=History.parse(AIR))
        self.assertEqual(finding.after_h, 14)
        self.assertEqual(finding.air_c, 9)
        self.assertIn("air +-2C", finding.assumed)

    def test_a_history_is_extended_only_when_asked(self):
        with self.assertRaises(Error) as caught:
            soak(after_h=20, history=History.parse(AIR))
        self.assertEqual(caught.exception.status, Status.OUT_OF_RANGE)
        self.assertEqual(soak(after_h=20, history=History.parse(AIR), extend=True).after_h, 20)

    def test_no_air_at_all_is_refused(self):
        with self.assertRaises(Error) as caught:
            soak(air=None)
        self.assertEqual(caught.exception.status, Status.NOT_FOUND)

    def test_others_are_texts_or_degrees_celsius(self):
        sound = soak(others={"intake": "10.5C", "ambient": "9C+-1"})
        self.assertIs(sound.agreement, Agreement.CONSISTENT)
        self.assertIsNone(sound.odd)
        odd = soak(others={"intake": -15, Soaked.AMBIENT: "9C+-1"})
        self.assertIs(odd.agreement, Agreement.ODD)
        self.assertIs(odd.odd, Soaked.INTAKE)
        self.assertLess(odd.odd_off_k, -15)
        two = soak(others={"intake": "-15C"})
        self.assertIs(two.agreement, Agreement.DISAGREE)

    def test_no_such_companion_is_refused(self):
        with self.assertRaisesRegex(ValueError, "'gearbox' is no Soaked.*intake"):
            soak(others={"gearbox": "10C"})
        with self.assertRaisesRegex(TypeError, "intake is None"):
            soak(others={"intake": None})

    def test_the_place_counts(self):
        self.assertIs(soak().place, Place.SENSOR)


class HistoryTest(unittest.TestCase):
    def test_points_are_what_was_written(self):
        history = History.parse(AIR)
        self.assertEqual(history.points, ((0, 15), (4, 11), (14, 9)))
        self.assertEqual(len(history), 3)
        self.assertEqual(repr(history), "<History of 3 points>")

    def test_it_is_made_of_any_iterables(self):
        self.assertEqual(History(range(2), iter([15, 11])).points, ((0, 15), (1, 11)))

    def test_a_file_is_read(self):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder, "air.csv")
            path.write_text(AIR)
            self.assertEqual(History.load(path).points, History.parse(AIR).points)
            with self.assertRaises(Error) as caught:
                History.load(Path(folder, "none.csv"))
            self.assertEqual(caught.exception.status, Status.CANNOT_OPEN)

    def test_a_fault_has_its_place(self):
        with self.assertRaises(Error) as caught:
            History.parse("hours,temp_c\n0,cold\n", name="air.csv")
        self.assertEqual((caught.exception.line, caught.exception.column), (2, 3))
        self.assertIn("air.csv", str(caught.exception))

    def test_times_that_do_not_rise_are_refused(self):
        with self.assertRaises(Error) as caught:
            History([1, 1], [10, 10])
        self.assertEqual(caught.exception.status, Status.BAD_DEFINITION)


class CoolingTest(unittest.TestCase):
    def test_the_three_are_inverses(self):
        t_c = ohmcurve.cooling_temperature(90, 10, 2, 2)
        self.assertAlmostEqual(t_c, 10 + 80 * math.exp(-1), places=12)
        self.assertAlmostEqual(ohmcurve.cooling_hours(90, 10, 2, t_c), 2, places=10)
        self.assertAlmostEqual(ohmcurve.cooling_tau(90, 10, t_c, 2), 2, places=10)

    def test_what_never_happens_is_refused(self):
        with self.assertRaises(Error) as caught:
            ohmcurve.cooling_hours(90, 10, 2, 5)
        self.assertEqual(caught.exception.status, Status.OUT_OF_RANGE)


if __name__ == "__main__":
    unittest.main()
