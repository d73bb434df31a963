# SPDX-License-Identifier: MIT
"""What a meter says with no sensor, and the notations of numbers."""

import math
import unittest

import ohmcurve
from ohmcurve import Bench, Error, Estimate, Status


def limit_ohm(reading, meter):
    bench = Bench(meter=meter, leads="exact")
    bench.read(reading)
    return bench.measure().finding.meter_limit_ohm


class MeasureTest(unittest.TestCase):
    def test_a_reading_is_a_resistance_and_its_uncertainty(self):
        estimate = ohmcurve.measure("2.31k", meter="0.8%+3", leads="exact")
        self.assertIsInstance(estimate, Estimate)
        self.assertEqual(estimate.value, 2310)
        # 0.8 % of 2310 and 3 counts of 10 ohm, rectangular, by hand.
        self.assertAlmostEqual(estimate.u, (18.48 + 30) / math.sqrt(3), delta=1e-9)

    def test_leads_are_taken_off(self):
        estimate = ohmcurve.measure("100.0", meter="exact", leads="0.5+-0.1")
        self.assertAlmostEqual(estimate.value, 99.5, delta=1e-9)
        self.assertAlmostEqual(estimate.u, 0.1 / math.sqrt(3), delta=1e-9)

    def test_an_exact_meter_has_no_error(self):
        self.assertEqual(limit_ohm("2.31k", "exact"), 0)

    def test_the_limit_is_percent_of_reading_plus_counts(self):
        self.assertAlmostEqual(limit_ohm("=2000", "1%+3x1"), 23, delta=1e-12)

    def test_zeros_left_open_widen_the_limit(self):
        self.assertGreater(limit_ohm("2300", "1%+3"), limit_ohm("2.300k", "1%+3"))

    def test_a_display_of_so_many_counts_has_its_last_digit(self):
        self.assertAlmostEqual(limit_ohm("1.5k", "0.8%+2@2000"), 14, delta=1e-12)

    def test_what_shows_no_number_is_out_of_range(self):
        for reading in ("OL", "open"):
            with self.assertRaises(Error) as caught:
                ohmcurve.measure(reading)
            self.assertIs(caught.exception.status, Status.OUT_OF_RANGE)

    def test_an_accuracy_that_cannot_be_read_is_bad_syntax(self):
        with self.assertRaises(Error) as caught:
            ohmcurve.measure("100", meter="good")
        self.assertIs(caught.exception.status, Status.BAD_SYNTAX)

    def test_a_negative_test_current_is_out_of_range(self):
        with self.assertRaises(Error) as caught:
            Bench(current_ma=-1)
        self.assertIs(caught.exception.status, Status.OUT_OF_RANGE)


class NotationTest(unittest.TestCase):
    def test_a_temperature_is_read_with_its_unit(self):
        self.assertEqual(ohmcurve.read_temperature("-10C"), -10)
        with self.assertRaises(Error) as caught:
            ohmcurve.read_temperature("21.5")
        self.assertIs(caught.exception.status, Status.BAD_SYNTAX)

    def test_a_resistance_is_read_in_its_spellings(self):
        for text in ("2310", "2.31k", "2k31", "2.31 kohm"):
            self.assertEqual(ohmcurve.read_resistance(text), 2310)
        with self.assertRaises(Error):
            ohmcurve.read_resistance("OL")

    def test_no_text_is_a_null_argument(self):
        with self.assertRaises(Error) as caught:
            ohmcurve.read_resistance(None)
        self.assertIs(caught.exception.status, Status.NULL_ARGUMENT)


if __name__ == "__main__":
    unittest.main()
