# SPDX-License-Identifier: MIT
"""The module's side of the wire in Python."""

import unittest

import ohmcurve
import samples
from ohmcurve import (
    Error,
    Joined,
    Module,
    Moves,
    Negative,
    Reading,
    Reason,
    Reported,
    Rounding,
    Series,
    Status,
    Verdict,
    Volts,
    WhichRange,
    _ohmcurve,
)

SENSOR = ohmcurve.Sensor.from_catalogue("ntc-2k45-20c")


class EnumTest(unittest.TestCase):
    def test_enums_have_every_constant(self):
        for noun, name, prefix in (
            (Negative, "ohm_negative", "OHM_NEGATIVE_"),
            (WhichRange, "ohm_range", "OHM_RANGE_"),
            (Series, "ohm_series", "OHM_SERIES_"),
        ):
            self.assertEqual(
                [prefix + each.name for each in noun], samples.enum_constants(name), name
            )
        self.assertEqual(len(Rounding), len(samples.enum_constants("ohm_rounding")))
        self.assertEqual(len(Moves), len(samples.enum_constants("ohm_moves")))
        self.assertEqual(len(Joined), len(samples.enum_constants("ohm_joined")))


class SignalTest(unittest.TestCase):
    def test_ohms_in_the_plug_are_found(self):
        finding = ohmcurve.signal(SENSOR, ohms="187", volts="0.97", reported="91C", module="1k")
        self.assertIs(finding.verdict, Verdict.OUTSIDE)
        self.assertIs(finding.reason, Reason.SERIES)
        self.assertAlmostEqual(finding.between_ohm, 54, delta=1)
        self.assertIs(finding.negative, Negative.NOT_TOLD)
        self.assertIn("in plug or wire", str(finding))

    def test_r_ohm_and_t_c_are_as_seen_from_the_volts(self):
        finding = ohmcurve.signal(SENSOR, volts="0.97", module="1k")
        self.assertAlmostEqual(finding.r_ohm, 1000 * 0.97 / 4.03)
        self.assertAlmostEqual(finding.t_c, SENSOR.curve.temperature(finding.r_ohm))
        self.assertIs(finding.reason, Reason.ALONE)

    def test_objects_say_the_same_as_texts(self):
        self.assertEqual(
            ohmcurve.signal(
                SENSOR,
                ohms=Reading.parse("187"),
                volts=Volts.parse("0.97", negative="pin"),
                reported=Reported.parse("91C"),
                module=Module.parse("1k", supply="5V"),
            ),
            ohmcurve.signal(
                SENSOR,
                ohms="187",
                volts=Volts(0.97, 0.01, negative=Negative.PIN),
                reported="91C",
                module="1k",
            ),
        )

    def test_what_was_stated_is_not_assumed(self):
        finding = ohmcurve.signal(
            SENSOR,
            ohms="187",
            volts=Volts.parse("0.97+-0.01", negative=Negative.PIN),
            reported=Reported.parse("91C+-1", rounding=Rounding.ROUNDED, moves=Moves.MOVES),
            module=Module.parse("1k+-1%", supply="5.02V+-0.01"),
            meter="0.5%+1",
            leads="0.4",
            fan=97,
            limit_k=5,
            moved_limit_k=0.5,
        )
        self.assertEqual(finding.assumed, ())

    def test_a_thermometer_names_the_sensor(self):
        finding = ohmcurve.signal(
            SENSOR, ohms="240.0", volts=Volts.parse("0.97", negative="pin"), module="1k",
            at="100C+-1",
        )
        self.assertIs(finding.reason, Reason.HIGH)

    def test_the_range_of_two_pull_ups_can_be_told(self):
        for which, pull_up_ohm in ((WhichRange.COLD, 4000), (WhichRange.HOT, 348)):
            module = Module(4000, 348, 40, which)
            self.assertEqual(
                ohmcurve.signal(SENSOR, volts="2.0", module=module).pull_up_ohm, pull_up_ohm
            )

    def test_volts_without_a_pull_up_raise(self):
        with self.assertRaises(Error) as caught:
            ohmcurve.signal(SENSOR, volts="0.97")
        self.assertIs(caught.exception.status, Status.BAD_ARGUMENT)

    def test_nothing_taken_raises(self):
        with self.assertRaises(Error):
            ohmcurve.signal(SENSOR)

    def test_what_is_of_another_type_is_named(self):
        with self.assertRaisesRegex(TypeError, "volts is 0.97"):
            ohmcurve.signal(SENSOR, volts=0.97, module="1k")
        with self.assertRaisesRegex(TypeError, "sensor is 'x'"):
            ohmcurve.signal("x", volts="0.97", module="1k")


class SubstituteTest(unittest.TestCase):
    def test_one_resistor_and_two(self):
        single, pair = ohmcurve.substitute(SENSOR, "105C", series="E24")
        self.assertEqual(single.first_ohm, 160)
        self.assertIsNone(single.second_ohm)
        self.assertIs(single.joined, Joined.SINGLE)
        self.assertIs(single.verdict, Verdict.WITHIN)
        self.assertAlmostEqual(pair.t_c, 105, delta=0.1)

    def test_a_drawer_is_searched(self):
        single, pair = ohmcurve.substitute(SENSOR, 105, drawer=[100, 220, 330, 1000])
        self.assertEqual(single.first_ohm, 220)
        self.assertEqual((pair.first_ohm, pair.second_ohm), (1000, 220))
        self.assertIs(pair.joined, Joined.PARALLEL)
        self.assertIsNone(ohmcurve.substitute(SENSOR, 105, drawer=[160])[1])

    def test_without_an_aim_it_is_above_the_fan(self):
        self.assertEqual(ohmcurve.substitute(SENSOR)[0].aim_c, 105)
        self.assertEqual(ohmcurve.substitute(SENSOR, fan="90C")[0].aim_c, 98)

    def test_an_aim_of_0_is_no_aim_left_out(self):
        with self.assertRaises(Error):
            ohmcurve.substitute(SENSOR, 0)

    def test_the_loom_is_told_by_two(self):
        finding = ohmcurve.loom(SENSOR, [("179.4", "93C"), ("998", "42C")])
        self.assertIs(finding.reason, Reason.SERIES)
        self.assertAlmostEqual(finding.between_ohm, 40.6, delta=0.5)
        with self.assertRaisesRegex(TypeError, "1 resistors were fitted"):
            ohmcurve.loom(SENSOR, [("179.4", "93C")])
        with self.assertRaises(Error) as caught:
            ohmcurve.loom(SENSOR, [("180", "93C"), ("200", "90C")])
        self.assertIs(caught.exception.status, Status.BAD_DEFINITION)


class FanpointTest(unittest.TestCase):
    def test_ohms_and_volts_where_it_starts(self):
        finding = ohmcurve.fanpoint(SENSOR, "98C", 93, module="1k")
        self.assertAlmostEqual(finding.on_ohm, SENSOR.curve.resistance(98))
        self.assertAlmostEqual(finding.on_volt, ohmcurve.divider_volts(finding.on_ohm, 1000))
        self.assertEqual(finding.hidden_ohm, ohmcurve.ASSUMED["hidden_ohm"])
        self.assertGreater(finding.start_c, 105)

    def test_what_is_not_known_is_none(self):
        finding = ohmcurve.fanpoint(SENSOR, 98)
        self.assertIsNone(finding.on_volt)
        self.assertIsNone(finding.off_ohm)


class ReportedTest(unittest.TestCase):
    def test_whole_degrees_of_one_byte(self):
        self.assertEqual(ohmcurve.reported_of(91.6), 92)
        self.assertEqual(ohmcurve.reported_of(91.6, Rounding.TRUNCATED), 91)
        self.assertEqual(ohmcurve.reported_of(-60), -40)

    def test_notations_are_read(self):
        self.assertEqual(Reported.parse("212F").resolution_k, 5 / 9)
        self.assertEqual(Module.parse("10k,1k@50C+-1%").changeover_c, 50)
        for junk in ("1k,", "junk"):
            with self.assertRaises(Error):
                Module.parse(junk)
        with self.assertRaises(ValueError):
            Volts.parse("1", negative="engine")

    def test_structs_start_from_the_header(self):
        self.assertEqual(_ohmcurve.ohm_module().range, WhichRange.NOT_TOLD)


if __name__ == "__main__":
    unittest.main()
