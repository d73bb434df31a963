# SPDX-License-Identifier: MIT
"""The module's side of the wire in Python."""

import unittest

import ohmcurve
from ohmcurve import Error, Joined, Negative, Reason, Status, Verdict

SENSOR = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")


class SignalTest(unittest.TestCase):
    def test_ohms_in_the_plug_are_found(self):
        finding = ohmcurve.signal(SENSOR, "187", "0.97V", "91C", pull_up="1k")
        self.assertIs(finding.verdict, Verdict.OUTSIDE)
        self.assertIs(finding.reason, Reason.SERIES)
        self.assertAlmostEqual(finding.between_ohm, 54, delta=1)
        self.assertIs(finding.negative, Negative.NOT_TOLD)
        self.assertIn("in plug or wire", str(finding))

    def test_r_ohm_and_t_c_are_as_seen_from_the_volts(self):
        finding = ohmcurve.signal(SENSOR, "0.97V", pull_up="1k")
        self.assertAlmostEqual(finding.r_ohm, 1000 * 0.97 / 4.03)
        self.assertAlmostEqual(finding.t_c, SENSOR.curve.temperature(finding.r_ohm))
        self.assertIs(finding.reason, Reason.ALONE)

    def test_the_negative_lead_is_told_with_the_volts_or_of_all(self):
        for place in (Negative.PIN, "body"):
            finding = ohmcurve.signal(SENSOR, f"0.97V,{place}", "91C", pull_up=1000)
            self.assertEqual(finding.negative, place)
            self.assertEqual(
                finding, ohmcurve.signal(SENSOR, "0.97V", "91C", pull_up="1k", negative=place)
            )

    def test_what_was_stated_is_not_assumed(self):
        finding = ohmcurve.signal(
            SENSOR,
            "187",
            "0.97V+-0.01,pin",
            "91C+-1",
            rounding="rounded",
            moves=True,
            pull_up="1k+-1%",
            supply="5.02V+-0.01",
            meter="0.5%+1",
            leads="0.4+-0.1",
            fan_c=97,
            limit_k=5,
            moved_k=0.5,
        )
        self.assertEqual(finding.assumed, ())

    def test_a_thermometer_names_the_sensor(self):
        finding = ohmcurve.signal(SENSOR, "240.0", "0.97V,pin", pull_up="1k", at="100C+-1")
        self.assertIs(finding.reason, Reason.HIGH)

    def test_the_range_of_two_pull_ups_can_be_told(self):
        for which, pull_up_ohm in (("cold", 4000), ("hot", 348)):
            finding = ohmcurve.signal(SENSOR, "2.0V", pull_up="4k,348@40C", range=which)
            self.assertEqual(finding.pull_up_ohm, pull_up_ohm)

    def test_volts_without_a_pull_up_raise(self):
        with self.assertRaisesRegex(Error, "pull_up") as caught:
            ohmcurve.signal(SENSOR, "0.97V")
        self.assertIs(caught.exception.status, Status.NOT_FOUND)

    def test_nothing_taken_raises(self):
        with self.assertRaises(Error):
            ohmcurve.signal(SENSOR)

    def test_what_is_of_another_type_is_named(self):
        with self.assertRaisesRegex(TypeError, "reading is None"):
            ohmcurve.signal(SENSOR, None, pull_up="1k")
        with self.assertRaisesRegex(TypeError, "sensor is 'x'"):
            ohmcurve.signal("x", "0.97V", pull_up="1k")


class SubstituteTest(unittest.TestCase):
    def test_one_resistor_and_two(self):
        single, pair = ohmcurve.substitute(SENSOR, aim_c="105C", series="E24")
        self.assertEqual(single.first_ohm, 160)
        self.assertIsNone(single.second_ohm)
        self.assertIs(single.joined, Joined.SINGLE)
        self.assertIs(single.verdict, Verdict.WITHIN)
        self.assertAlmostEqual(pair.t_c, 105, delta=0.1)

    def test_a_drawer_is_searched(self):
        single, pair = ohmcurve.substitute(SENSOR, aim_c=105, drawer="100,220,330,1k")
        self.assertEqual(single.first_ohm, 220)
        self.assertEqual((pair.first_ohm, pair.second_ohm), (1000, 220))
        self.assertIs(pair.joined, Joined.PARALLEL)
        self.assertIsNone(ohmcurve.substitute(SENSOR, aim_c=105, drawer="160")[1])

    def test_without_an_aim_it_is_above_the_fan(self):
        self.assertEqual(ohmcurve.substitute(SENSOR)[0].aim_c, 105)
        self.assertEqual(ohmcurve.substitute(SENSOR, fan_c="90C")[0].aim_c, 98)

    def test_an_aim_of_0_is_no_aim_left_out(self):
        with self.assertRaises(Error):
            ohmcurve.substitute(SENSOR, aim_c=0)

    def test_the_loom_is_told_by_two(self):
        finding = ohmcurve.loom(SENSOR, [("179.4", "93C"), ("998", "42C")])
        self.assertIs(finding.reason, Reason.SERIES)
        self.assertAlmostEqual(finding.between_ohm, 40.6, delta=0.5)
        with self.assertRaises(Error):
            ohmcurve.loom(SENSOR, [("179.4", "93C")])
        with self.assertRaises(Error) as caught:
            ohmcurve.loom(SENSOR, [("180", "93C"), ("200", "90C")])
        self.assertIs(caught.exception.status, Status.BAD_DEFINITION)


class FanpointTest(unittest.TestCase):
    def test_ohms_and_volts_where_it_starts(self):
        finding = ohmcurve.fanpoint(SENSOR, fan_c="98C", off_c=93, pull_up="1k")
        self.assertAlmostEqual(finding.on_ohm, SENSOR.curve.resistance(98))
        self.assertAlmostEqual(finding.on_volt, ohmcurve.divider_volts(finding.on_ohm, 1000))
        told = ohmcurve.SETTINGS["hidden_ohm"].default
        self.assertEqual(finding.hidden_ohm, ohmcurve.read_resistance(told))
        self.assertGreater(finding.start_c, 105)

    def test_what_is_not_known_is_none(self):
        finding = ohmcurve.fanpoint(SENSOR, fan_c=98)
        self.assertIsNone(finding.on_volt)
        self.assertIsNone(finding.off_ohm)


class ReportedTest(unittest.TestCase):
    def test_whole_degrees_of_one_byte(self):
        self.assertEqual(ohmcurve.reported_of(91.6), 92)
        self.assertEqual(ohmcurve.reported_of(91.6, cut=True), 91)
        self.assertEqual(ohmcurve.reported_of(-60), -40)


if __name__ == "__main__":
    unittest.main()
