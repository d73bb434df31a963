# SPDX-License-Identifier: MIT
"""A fit in Python."""

import gc
import math
import unittest

import ohmcurve
import samples
from ohmcurve import Curve, Fit, FitBasis, FitModel, Sensor, Status

# NIST Statistical Reference Datasets, nonlinear regression, MGH10 (Meyer 1970).
MGH10_OHM = (
    [34780, 28610, 23650, 19630, 16370, 13720, 11540, 9744]
    + [8261, 7030, 6005, 5147, 4427, 3820, 3307, 2872]
)
MGH10 = [(50 + 5 * index, r_ohm) for index, r_ohm in enumerate(MGH10_OHM)]

# EPCOS B57861S data sheet, page 6, characteristic 8016, times 10 kohm.
THREE_ROWS = [(0, 32650), (25, 10000), (100, 680)]


def scattered():
    return ohmcurve.fit(samples.fit_points())


def weighted():
    return ohmcurve.fit(samples.fit_points(u_t_k=0.02))


def exact():
    return ohmcurve.fit(THREE_ROWS, model="steinhart_hart")


class CurveTest(unittest.TestCase):
    def test_as_many_points_as_coefficients_are_met_exactly(self):
        made = exact()
        for t_c, r_ohm in THREE_ROWS:
            self.assertAlmostEqual(made.temperature(r_ohm).t_c, t_c, delta=1e-10)

    def test_the_coefficients_make_the_same_curve(self):
        for model, points in ((FitModel.STEINHART_HART, THREE_ROWS), ("four_term", MGH10)):
            with self.subTest(model=model):
                made = ohmcurve.fit(points, model=model)
                bounds = made.curve.range
                again = getattr(Curve, made.model)(
                    **{name: each.value for name, each in made.coefficients.items()},
                    low_c=bounds.low_c,
                    high_c=bounds.high_c,
                )
                self.assertAlmostEqual(again.resistance(75), made.curve.resistance(75), delta=1e-6)

    def test_the_curve_outlives_the_fit(self):
        curve = exact().curve
        gc.collect()
        others = [scattered() for _ in range(50)]
        self.assertAlmostEqual(curve.temperature(10000), 25, delta=1e-10)
        self.assertEqual(len(others), 50)

    def test_the_range_is_the_span_of_the_points(self):
        bounds = exact().curve.range
        self.assertEqual((bounds.low_c, bounds.high_c), (0, 100))

    def test_the_range_is_as_asked(self):
        bounds = ohmcurve.fit(MGH10, low_c=20, high_c=130).curve.range
        self.assertEqual((bounds.low_c, bounds.high_c), (20, 130))

    def test_a_generator_of_points_is_taken(self):
        self.assertEqual(ohmcurve.fit(point for point in MGH10).degrees_of_freedom, 14)

    def test_the_order_of_the_points_does_not_matter(self):
        self.assertAlmostEqual(
            ohmcurve.fit(MGH10[::-1]).coefficients["beta_k"].value,
            ohmcurve.fit(MGH10).coefficients["beta_k"].value,
            delta=1e-8,
        )

    def test_the_reference_resistance_is_as_asked(self):
        made = ohmcurve.fit(MGH10, model="four_term", r_ref_ohm=10000)
        self.assertEqual(made.coefficients["r_ref_ohm"], (10000, 0))

    def test_an_unknown_model_is_answered_with_those_known(self):
        with self.assertRaisesRegex(ValueError, "'parabola'.*beta, steinhart_hart, four_term"):
            ohmcurve.fit(MGH10, model="parabola")

    def test_points_that_contradict_each_other_are_refused_with_a_sentence(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            ohmcurve.fit([(0, 100), (50, 200)])
        self.assertIs(caught.exception.status, Status.BAD_DEFINITION)
        self.assertTrue(str(caught.exception))

    def test_no_points_are_a_bad_definition(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            ohmcurve.fit([])
        self.assertIs(caught.exception.status, Status.BAD_DEFINITION)

    def test_a_point_of_one_number_is_a_type_error(self):
        with self.assertRaises(TypeError):
            ohmcurve.fit([(25,), (50, 3600)])


# The figures of MGH10: normal equations in 60 digits for the least sum of
# (T^2 (1/T fitted - 1/T))^2.
class HighPrecisionTest(unittest.TestCase):
    def setUp(self):
        self.fit = ohmcurve.fit(MGH10, model="steinhart_hart")

    def assert_relative(self, got, want, part):
        self.assertLessEqual(abs(got - want), part * abs(want))

    def test_coefficients_agree_with_high_precision(self):
        coefficients = self.fit.coefficients
        self.assertEqual(list(coefficients), ["a", "b", "c"])
        self.assert_relative(coefficients["a"].value, 0.000830164907244990273, 1e-12)
        self.assert_relative(coefficients["b"].value, 0.000203735881027897038, 1e-12)
        self.assert_relative(coefficients["c"].value, 1.17159064408271721e-7, 1e-11)

    def test_their_uncertainties_agree_with_high_precision(self):
        coefficients = self.fit.coefficients
        self.assert_relative(coefficients["a"].u, 8.76509161935709998e-7, 1e-8)
        self.assert_relative(coefficients["c"].u, 5.77891579623191274e-10, 1e-8)

    def test_correlations_agree_with_high_precision(self):
        correlation = self.fit.correlation
        self.assertAlmostEqual(correlation[0][1], -0.9993022032025077, delta=1e-10)
        self.assertAlmostEqual(correlation[0][2], 0.993770719869859291, delta=1e-10)
        self.assertAlmostEqual(correlation[1][2], -0.997182391829007653, delta=1e-10)

    def test_scatter_and_residuals_agree_with_high_precision(self):
        self.assert_relative(self.fit.scatter_k, 0.00424018589568416481, 1e-8)
        self.assertAlmostEqual(self.fit.residuals_k[4], 0.0102973848676013708, delta=1e-11)

    def test_a_temperature_agrees_with_high_precision(self):
        t_c, u_k, _ = self.fit.temperature(10000)
        self.assertAlmostEqual(t_c, 84.2251462718187053, delta=1e-11)
        self.assert_relative(u_k, 0.0015862990816674727, 1e-8)


class AnswerTest(unittest.TestCase):
    def test_there_is_a_residual_for_every_point_in_the_order_given(self):
        points = samples.fit_points()
        made = ohmcurve.fit(points)
        self.assertEqual(len(made.residuals_k), len(points))
        for point, residual_k in zip(points, made.residuals_k):
            self.assertAlmostEqual(
                made.temperature(point.r_ohm).t_c - point.t_c, residual_k, delta=1e-9
            )

    def test_degrees_of_freedom_are_points_less_coefficients(self):
        self.assertEqual(scattered().degrees_of_freedom, 4)
        self.assertEqual(exact().degrees_of_freedom, 0)

    def test_the_covariance_holds_the_squares_of_the_uncertainties(self):
        made = scattered()
        for index, each in enumerate(made.coefficients.values()):
            self.assertAlmostEqual(made.covariance[index][index], each.u**2, delta=1e-9 * each.u**2)

    def test_covariance_and_correlation_are_symmetric(self):
        made = ohmcurve.fit(MGH10, model="four_term")
        for matrix in (made.covariance, made.correlation):
            self.assertEqual(len(matrix), len(made.coefficients))
            self.assertEqual(matrix, tuple(zip(*matrix)))

    def test_a_parameter_that_was_chosen_has_none_with_another(self):
        made = scattered()
        chosen = list(made.coefficients).index("t0_c")
        self.assertEqual(made.coefficients["t0_c"], (25, 0))
        self.assertEqual(set(made.covariance[chosen]), {0})
        self.assertEqual(made.correlation[chosen][chosen], 1)
        others = made.correlation[chosen][:chosen] + made.correlation[chosen][chosen + 1 :]
        self.assertEqual(set(others), {0})

    def test_without_uncertainties_the_basis_is_the_scatter(self):
        made = scattered()
        self.assertIs(made.basis, FitBasis.SCATTER)
        self.assertGreater(made.scatter_k, 0)
        self.assertEqual((made.chi_square, made.p, made.misfit_k), (None, None, None))

    def test_with_uncertainties_the_basis_is_what_is_known(self):
        made = weighted()
        self.assertIs(made.basis, FitBasis.KNOWN)
        self.assertIsNone(made.scatter_k)
        weights = sum((residual_k / 0.02) ** 2 for residual_k in made.residuals_k)
        self.assertAlmostEqual(made.chi_square, weights, delta=0.01 * weights)
        self.assertTrue(0 < made.p < 1)
        self.assertGreaterEqual(made.misfit_k, 0)

    def test_uncertainties_too_small_show_as_misfit(self):
        made = ohmcurve.fit(samples.fit_points(u_t_k=0.001))
        self.assertLess(made.p, 1e-6)
        self.assertGreater(made.misfit_k, 0.01)

    def test_an_uncertain_resistance_is_taken(self):
        made = ohmcurve.fit([(0, 32650, 0, 326.5), (100, 680, 0, 6.8)])
        self.assertIs(made.basis, FitBasis.KNOWN)
        self.assertAlmostEqual(
            made.temperature(680).u_k, -0.01 / made.curve.alpha(100), delta=1e-9
        )

    def test_the_expanded_uncertainty_grows_with_the_level(self):
        made = weighted()
        estimate = made.temperature(5000, 0.95)
        self.assertAlmostEqual(estimate.expanded_k / estimate.u_k, 1.959963984540054, delta=1e-9)
        self.assertGreater(made.temperature(5000, 0.99).expanded_k, estimate.expanded_k)
        self.assertEqual(made.temperature(5000), estimate)

    def test_without_an_interval_the_temperature_is_given_alone(self):
        made = exact()
        t_c, u_k, expanded_k = made.temperature(10000)
        self.assertAlmostEqual(t_c, 25, delta=1e-10)
        self.assertEqual((u_k, expanded_k), (None, None))

    def test_without_an_interval_nothing_else_is_known(self):
        made = exact()
        self.assertIs(made.basis, FitBasis.NO_INTERVAL)
        self.assertEqual({each.u for each in made.coefficients.values()}, {None})
        self.assertEqual((made.covariance, made.correlation, made.scatter_k), (None, None, None))

    def test_each_basis_has_its_sentence(self):
        self.assertEqual(len({each.sentence for each in FitBasis}), len(FitBasis))

    def test_a_resistance_beyond_the_range_is_out_of_range(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            exact().temperature(1e6)
        self.assertIs(caught.exception.status, Status.OUT_OF_RANGE)

    def test_a_resistance_that_is_no_number_is_a_bad_argument(self):
        with self.assertRaises(ohmcurve.Error) as caught:
            exact().temperature(math.nan)
        self.assertIs(caught.exception.status, Status.BAD_ARGUMENT)


class SensorTest(unittest.TestCase):
    def test_a_sensor_has_the_name_and_the_curve_of_the_fit(self):
        made = scattered()
        sensor = made.sensor(name="fitted")
        self.assertEqual(sensor.name, "fitted")
        self.assertEqual(sensor.curve.resistance(50), made.curve.resistance(50))

    def test_a_sensor_keeps_the_interval_through_a_file(self):
        for made in (scattered(), weighted()):
            with self.subTest(basis=made.basis):
                sensor = Sensor.parse(str(made.sensor(name="fitted")))
                got, want = sensor.temperature(5000, 0.9), made.temperature(5000, 0.9)
                for one, other in zip(got, want):
                    self.assertAlmostEqual(one, other, delta=1e-9 * abs(other))

    def test_a_sensor_outlives_the_fit(self):
        sensor = scattered().sensor(name="fitted")
        gc.collect()
        self.assertEqual(Sensor.parse(str(sensor)).name, "fitted")

    def test_a_sensor_can_be_judged(self):
        finding = ohmcurve.check(
            scattered().sensor(name="fitted"), "10.0k", at="25C+-0.5", tolerance_percent="5%"
        )
        self.assertEqual(finding.sensor, "fitted")


class ObjectTest(unittest.TestCase):
    def test_repr_shows_model_points_and_curve(self):
        expected = r"^<Fit steinhart_hart of 3 points: <Curve 0 to 100 C, .*>>$"
        self.assertRegex(repr(exact()), expected)

    def test_a_fit_cannot_be_changed(self):
        with self.assertRaises(AttributeError):
            exact().model = FitModel.BETA

    def test_a_fit_is_not_made_out_of_nothing(self):
        with self.assertRaisesRegex(TypeError, r"fit\(points\)"):
            Fit()

    def test_the_model_is_told_by_keyword_only(self):
        with self.assertRaises(TypeError):
            ohmcurve.fit(MGH10, "beta")


if __name__ == "__main__":
    unittest.main()
