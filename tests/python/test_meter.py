# SPDX-License-Identifier: MIT
"""Readings, meters and references: by text and by keyword."""

import dataclasses
import unittest

import ohmcurve
from ohmcurve import Display, Meter, Reading, Reference


class ReadingTest(unittest.TestCase):
    def test_a_text_gives_value_and_resolution(self):
        self.assertEqual(Reading.parse("2.31k"), Reading(r_ohm=2310, resolution_ohm=10))

    def test_over_range_and_open_are_no_numbers(self):
        self.assertIs(Reading.parse("OL").display, Display.OVER)
        self.assertIs(Reading.parse("open").display, Display.OPEN)
        self.assertEqual(Reading.over().display, Display.OVER)
        self.assertEqual(Reading.open().display, Display.OPEN)

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
        limit = Meter(percent=1, counts=3).limit_ohm(Reading.parse("2000"))
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
