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
