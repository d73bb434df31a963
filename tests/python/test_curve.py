# SPDX-License-Identifier: MIT
"""A curve in Python."""

import math
import unittest

import samples
from ohmcurve import Curve, Range


class CurveTest(unittest.TestCase):
    def test_a_beta_curve_gives_its_own_resistance_at_its_own_temperature(self):
        self.assertAlmostEqual(samples.curve().resistance(25), 10000, delta=1e-8)

    def test_temperature_undoes_resistance(self):
        curve = samples.curve()
        for t_c in range(-40, 126, 5):
            self.assertAlmostEqual(curve.temperature(curve.resistance(t_c)), t_c, delta=1e-9)

    def test_a_steinhart_hart_curve_without_c_is_a_beta_curve(self):
        b = 1 / 3950
        a = 1 / 298.15 - b * math.log(10000)
        curve = Curve.steinhart_hart(a=a, b=b, c=0, low_c=-40, high_c=125)
        self.assertAlmostEqual(curve.resistance(80), samples.curve().resistance(80), delta=1e-8)

    def test_a_four_term_curve_without_its_last_two_is_a_beta_curve(self):
        curve = Curve.four_term(
            r_ref_ohm=10000, a1=1 / 298.15, b1=1 / 3950, c1=0, d1=0, low_c=-40, high_c=125
        )
        self.assertAlmostEqual(curve.resistance(80), samples.curve().resistance(80), delta=1e-8)

    def test_a_four_term_curve_of_temperature_without_its_last_two_is_a_beta_curve(self):
        curve = Curve.four_term_of_temperature(
            r_ref_ohm=10000, a=-3950 / 298.15, b=3950, c=0, d=0, low_c=-40, high_c=125
        )
        self.assertAlmostEqual(curve.resistance(80), samples.curve().resistance(80), delta=1e-8)

    def test_the_terms_of_a_four_term_curve_are_not_exchanged(self):
        curve = Curve.four_term(
            r_ref_ohm=10000, a1=3.354e-3, b1=2.57e-4, c1=2.6e-6, d1=6.3e-8, low_c=-40, high_c=125
        )
        log = math.log(3250.5 / 10000)
        one_over_t = 3.354e-3 + 2.57e-4 * log + 2.6e-6 * log**2 + 6.3e-8 * log**3
        self.assertAlmostEqual(curve.temperature(3250.5), 1 / one_over_t - 273.15, delta=1e-9)

    def test_the_terms_of_a_four_term_curve_of_temperature_are_not_exchanged(self):
        curve = Curve.four_term_of_temperature(
            r_ref_ohm=10000, a=-14.6, b=4790, c=-115000, d=-3.7e6, low_c=-40, high_c=125
        )
        t_k = 273.15 + 60
        log = -14.6 + 4790 / t_k - 115000 / t_k**2 - 3.7e6 / t_k**3
        self.assertAlmostEqual(curve.resistance(60), 10000 * math.exp(log), delta=1e-8)

    def test_a_platinum_curve_is_that_of_its_equation(self):
        curve = Curve.platinum(r0_ohm=100, low_c=-200, high_c=850)
        self.assertAlmostEqual(curve.resistance(0), 100, delta=1e-9)
        # IEC 60751: 100 (1 + 3.9083e-3 100 - 5.775e-7 100^2), by hand.
        self.assertAlmostEqual(curve.resistance(100), 138.5055, delta=1e-9)
        self.assertAlmostEqual(curve.temperature(curve.resistance(-150)), -150, delta=1e-9)

    def test_a_silicon_curve_is_that_of_its_equation(self):
        curve = Curve.silicon(
            r25_ohm=1000, alpha_per_k=7.8e-3, beta_per_k2=1.8e-5, low_c=-50, high_c=150
        )
        # 1000 (1 + 7.8e-3 75 + 1.8e-5 75^2), by hand.
        self.assertAlmostEqual(curve.resistance(100), 1686.25, delta=1e-8)

    def test_alpha_of_what_rises_is_positive(self):
        self.assertGreater(Curve.platinum(r0_ohm=100, low_c=-200, high_c=850).alpha(0), 0)

    def test_points_convert_exactly(self):
        curve = Curve.points(t_c=[0, 20, 80], r_ohm=[5700, 2450, 320])
        self.assertEqual(curve.resistance(20), 2450)
        self.assertEqual(curve.temperature(2450), 20)

    def test_alpha_of_an_ntc_element_is_negative(self):
        self.assertLess(samples.curve().alpha(25), 0)

    def test_the_range_has_named_parts(self):
        bounds = samples.curve().range
        self.assertIsInstance(bounds, Range)
        self.assertEqual((bounds.low_c, bounds.high_c), (-40, 125))
        self.assertGreater(bounds.at_low_ohm, bounds.at_high_ohm)

    def test_definitions_are_given_by_keyword_only(self):
        with self.assertRaises(TypeError):
            Curve.beta(10000, 25, 3950, -40, 125)

    def test_a_missing_part_of_a_definition_is_named(self):
        with self.assertRaisesRegex(TypeError, "beta_k"):
            Curve.beta(r0_ohm=10000, t0_c=25, low_c=-40, high_c=125)

    def test_a_curve_is_not_made_out_of_nothing(self):
        with self.assertRaisesRegex(TypeError, "Curve.beta"):
            Curve()

    def test_repr_shows_the_range(self):
        self.assertRegex(repr(samples.curve()), r"^<Curve -40 to 125 C, .* to .* ohm>$")

    def test_an_attribute_cannot_be_added(self):
        with self.assertRaises(AttributeError):
            samples.curve().name = "other"


if __name__ == "__main__":
    unittest.main()
