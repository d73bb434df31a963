# SPDX-License-Identifier: MIT
"""Readings, meters and references: by text and by keyword."""

import dataclasses
import unittest

import ohmcurve
from ohmcurve import Display, Meter, Reading, Reference, ReferenceKind


class ReadingTest(unittest.TestCase):
    def test_a_text_gives_value_and_resolution(self):
        self.assertEqual(Reading.parse("2.31k"), Reading(r_ohm=2310, resolution_ohm=10))

    def test_over_range_and_open_are_no_numbers(self):
        self.assertIs(Reading.parse("OL").display, Display.OVER)
        self.assertIs(Reading.parse("open").display, Display.OPEN)
        self.assertEqual(Reading.over().display, Display.OVER)
        self.assertEqual(Reading.open().display, Display.OPEN)

    def test_over_range_has_its_range(self):
        self.assertEqual(Reading.parse("OL@20k"), Reading.over(20000))
        self.assertEqual(Reading.parse(">20k").range_ohm, 20000)
        self.assertEqual(Reading.over().range_ohm, 0)

    def test_a_lone_one_is_a_display_of_its_own(self):
        self.assertEqual(Reading.parse("1"), Reading.one())
        self.assertIs(Reading.one().display, Display.ONE)

    def test_equal_texts_give_equal_readings_also_without_a_number(self):
        for text in ("OL", "open", "1", "2.31k"):
            with self.subTest(text=text):
                self.assertEqual(Reading.parse(text), Reading.parse(text))

    def test_a_whole_number_leaves_its_zeros_open(self):
        self.assertEqual(Reading.parse("2300").zeros_ohm, 100)
        self.assertEqual(Reading.parse("2.300k").zeros_ohm, 0)

    def test_a_bare_number_is_known_as_one(self):
        self.assertIs(Reading.parse("2.31").bare, True)
        self.assertIs(Reading.parse("2.31k").bare, False)

    def test_a_reading_cannot_be_changed(self):
        with self.assertRaises(dataclasses.FrozenInstanceError):
            Reading(2310).r_ohm = 1


class MeterTest(unittest.TestCase):
    def test_a_text_gives_percent_and_counts(self):
        self.assertEqual(Meter.parse("0.8%+3"), Meter(percent=0.8, counts=3))

    def test_a_display_count_alone_leaves_the_accuracy_to_be_assumed(self):
        self.assertEqual(Meter.parse("@2000"), Meter(display_count=2000))

    def test_an_exact_meter_has_no_error(self):
        self.assertEqual(Meter.parse("exact"), Meter(exact=True))
        self.assertEqual(Meter(exact=True).limit_ohm(Reading.parse("2.31k")), 0)

    def test_an_exact_meter_with_a_percent_is_refused(self):
        with self.assertRaisesRegex(TypeError, "exact"):
            Meter(percent=1, exact=True)

    def test_leads_are_read_with_their_limit(self):
        meter = Meter.parse(leads="0.4+-0.2")
        self.assertEqual((meter.lead_ohm, meter.lead_limit_ohm), (0.4, 0.2))
        self.assertIsNone(meter.percent)

    def test_a_lead_without_its_limit_is_refused(self):
        with self.assertRaisesRegex(TypeError, "lead_limit_ohm"):
            Meter(lead_ohm=0.4)

    def test_the_limit_is_percent_of_reading_plus_counts(self):
        limit = Meter(percent=1, counts=3).limit_ohm(Reading(2000, resolution_ohm=1))
        self.assertAlmostEqual(limit, 23, delta=1e-12)

    def test_leads_are_taken_off_the_estimate(self):
        meter = Meter(percent=0, counts=0, lead_ohm=0.5, lead_limit_ohm=0)
        estimate = meter.estimate(Reading.parse("100.0"))
        self.assertAlmostEqual(estimate.value, 99.5, delta=1e-9)
        self.assertGreater(estimate.u, 0)

    def test_a_meter_read_from_text_is_the_meter_given_by_keyword(self):
        reading = Reading.parse("2.31k")
        self.assertEqual(
            Meter.parse("0.8%+3", leads="0.4+-0.1").estimate(reading),
            Meter(percent=0.8, counts=3, lead_ohm=0.4, lead_limit_ohm=0.1).estimate(reading),
        )

    def test_zeros_left_open_widen_the_limit(self):
        meter = Meter(percent=1, counts=3)
        shown = Reading(2300, resolution_ohm=1)
        left_open = Reading(2300, resolution_ohm=1, zeros_ohm=100)
        self.assertGreater(meter.limit_ohm(left_open), meter.limit_ohm(shown))

    def test_a_negative_test_current_is_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            Meter(current_ma=-1).limit_ohm(Reading(100))
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_ARGUMENT)

    def test_a_negative_percent_is_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            Meter(percent=-1).limit_ohm(Reading(100))
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_ARGUMENT)

    def test_repr_shows_what_was_given(self):
        self.assertIn("percent=0.8", repr(Meter.parse("0.8%+3")))


class ReferenceTest(unittest.TestCase):
    def test_a_text_gives_temperature_and_limit(self):
        self.assertEqual(Reference.parse("21.5C+-1"), Reference(21.5, limit_k=1, u_k=0))

    def test_without_a_limit_the_accuracy_is_to_be_assumed(self):
        self.assertEqual(Reference.parse("21.5C"), Reference(21.5))

    def test_ice_has_no_temperature_of_its_own(self):
        self.assertEqual(Reference.parse("ice"), Reference.ice())
        self.assertIsNone(Reference.ice().t_c)

    def test_ice_may_have_a_limit(self):
        self.assertEqual(Reference.parse("ice+-0.2C"), Reference.ice(limit_k=0.2, u_k=0))

    def test_boiling_water_is_known_by_altitude_or_by_pressure(self):
        self.assertEqual(Reference.parse("boil"), Reference.boil())
        self.assertEqual(Reference.parse("boil@1200m"), Reference.boil(altitude_m=1200))
        self.assertEqual(Reference.parse("boil@870hPa"), Reference.boil(pressure_hpa=870))

    def test_an_altitude_of_0_is_an_altitude(self):
        self.assertIs(Reference.boil(altitude_m=0).kind, ReferenceKind.BOIL_ALTITUDE)

    def test_a_pressure_given_with_an_altitude_is_refused(self):
        with self.assertRaisesRegex(TypeError, "altitude_m and pressure_hpa"):
            Reference.boil(altitude_m=1200, pressure_hpa=1013)

    def test_an_infrared_thermometer_has_its_temperature(self):
        self.assertEqual(Reference.parse("infrared@80C+-3"), Reference.infrared(80, limit_k=3, u_k=0))

    def test_a_thermometer_without_its_temperature_is_refused(self):
        with self.assertRaisesRegex(TypeError, "nothing was given.* takes t_c"):
            Reference()

    def test_ice_with_a_temperature_is_refused(self):
        with self.assertRaisesRegex(TypeError, "t_c was given.* ICE takes nothing"):
            Reference(0.5, kind=ReferenceKind.ICE)

    def test_a_temperature_without_a_unit_is_refused(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            Reference.parse("21.5")
        self.assertIs(caught.exception.status, ohmcurve.Status.BAD_SYNTAX)

    def test_a_temperature_alone_is_read(self):
        self.assertEqual(ohmcurve.read_temperature("-10C"), -10)

    def test_a_tolerance_is_read_in_percent(self):
        self.assertEqual(ohmcurve.read_tolerance("5%"), 5)


if __name__ == "__main__":
    unittest.main()
