/* SPDX-License-Identifier: MIT */
#include "../fits.h"

#include <string.h>

START_TEST(as_many_points_as_coefficients_have_no_interval_and_say_so)
{
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, three_rows, 3);
  ck_assert_int_eq(ohm_fit_basis_of(fit), OHM_FIT_NO_INTERVAL);
  ck_assert_ptr_nonnull(strstr(ohm_fit_basis_text(ohm_fit_basis_of(fit)), "no interval"));
  ck_assert_uint_eq(ohm_fit_degrees(fit), 0);
  ck_assert(isnan(ohm_fit_scatter_k(fit)));
  ck_assert(isnan(ohm_fit_misfit_k(fit)));
  ck_assert(isnan(u_of_parameter(fit, 0)));
  ohm_estimate t_c;
  double expanded_k;
  double covariance;
  PROVOKES(ohm_fit_temperature, OHM_NOT_FOUND,
           ohm_fit_temperature(fit, 10000, 0.95, &t_c, &expanded_k));
  CHECK_NEAR(t_c.value, 25, 1e-11);
  ck_assert(isnan(t_c.u) && isnan(expanded_k));
  PROVOKES(ohm_fit_chi_square, OHM_NOT_FOUND, ohm_fit_chi_square(fit, NULL, NULL));
  PROVOKES(ohm_fit_covariance, OHM_NOT_FOUND, ohm_fit_covariance(fit, 0, 0, &covariance, NULL));
  ck_assert(isnan(covariance));
  ohm_fit_free(fit);
}
END_TEST

START_TEST(known_uncertainties_give_an_exact_fit_an_interval)
{
  ohm_fit_point points[] = {{0, 32650, 0.1, 0}, {100, 680, 0.2, 0}};
  ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, points, 2);
  ck_assert_int_eq(ohm_fit_basis_of(fit), OHM_FIT_KNOWN);
  ohm_estimate t_c;
  double expanded_k;
  ck_assert_int_eq(ohm_fit_temperature(fit, 32650, 0.95, &t_c, &expanded_k), OHM_OK);
  CHECK_NEAR(t_c.u, 0.1, 1e-12);
  CHECK_NEAR(expanded_k, 0.195996398454005, 1e-12);
  ck_assert_int_eq(ohm_fit_temperature(fit, 680, 0.95, &t_c, NULL), OHM_OK);
  CHECK_NEAR(t_c.u, 0.2, 1e-12);
  /* beta is ln(R1/R2)/(1/T1 - 1/T2); its two causes added by hand. */
  double beta_k = parameter(fit, 2);
  double span = 1 / 273.15 - 1 / 373.15;
  double u = beta_k / span * hypot(0.1 / (273.15 * 273.15), 0.2 / (373.15 * 373.15));
  check_relative(u_of_parameter(fit, 2), u, 1e-12);
  ck_assert(isnan(ohm_fit_misfit_k(fit)));
  ohm_fit_free(fit);
}
END_TEST

/* A resistance known to 1 % is a temperature known to 1 % over alpha. */
START_TEST(an_uncertain_resistance_counts_through_the_slope)
{
  ohm_fit_point points[] = {{0, 32650, 0, 326.5}, {100, 680, 0, 6.8}};
  ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, points, 2);
  ohm_estimate t_c;
  double alpha_per_k;
  ohm_fit_temperature(fit, 680, 0.95, &t_c, NULL);
  ohm_curve_alpha(ohm_fit_curve(fit), 100, &alpha_per_k);
  check_relative(t_c.u, 0.01 / -alpha_per_k, 1e-11);
  ohm_fit_free(fit);
}
END_TEST

/* Points of a beta moved up and down by step_k in turn, each said to be known to u_k. */
static ohm_fit *moved_points(double step_k, double u_k) {
  ohm_fit_point points[20];
  spread(0, 0, 95, points, 20);
  for (size_t i = 0; i < 20; i++) {
    points[i].t_c += i % 2 == 0 ? step_k : -step_k;
    points[i].u_t_k = u_k;
  }
  return fit_or_fail(OHM_FIT_BETA, points, 20);
}

START_TEST(known_uncertainties_are_never_scaled)
{
  ohm_fit *calm = moved_points(0.001, 0.1);
  ohm_fit *rough = moved_points(0.3, 0.1);
  for (size_t i = 0; i < 3; i += 2)
    check_relative(u_of_parameter(calm, i), u_of_parameter(rough, i), 0.01);
  double calm_probability;
  double rough_probability;
  ck_assert_int_eq(ohm_fit_chi_square(calm, NULL, &calm_probability), OHM_OK);
  ck_assert_int_eq(ohm_fit_chi_square(rough, NULL, &rough_probability), OHM_OK);
  ck_assert(calm_probability > 0.999999);
  ck_assert(rough_probability < 1e-6);
  ohm_fit_free(calm);
  ohm_fit_free(rough);
}
END_TEST

/* Alike uncertainties: chi-square / degrees is 1 + misfit^2 / u^2. */
START_TEST(misfit_is_what_the_uncertainties_do_not_explain)
{
  ohm_fit *rough = moved_points(0.3, 0.1);
  double chi_square;
  ohm_fit_chi_square(rough, &chi_square, NULL);
  double degrees = (double)ohm_fit_degrees(rough);
  check_relative(ohm_fit_misfit_k(rough), 0.1 * sqrt(chi_square / degrees - 1), 1e-9);
  CHECK_NEAR(ohm_fit_misfit_k(rough), 0.3, 0.03);
  ohm_fit *calm = moved_points(0.001, 0.1);
  CHECK_NEAR(ohm_fit_misfit_k(calm), 0, 0);
  ohm_fit_free(calm);
  ohm_fit_free(rough);
}
END_TEST

START_TEST(each_basis_has_its_sentence)
{
  ck_assert_str_ne(ohm_fit_basis_text(OHM_FIT_KNOWN), ohm_fit_basis_text(OHM_FIT_SCATTER));
  ck_assert_str_ne(ohm_fit_basis_text(OHM_FIT_SCATTER), ohm_fit_basis_text(OHM_FIT_NO_INTERVAL));
}
END_TEST

/* How often the interval of a fit to points with errors holds the true temperature. */
static double coverage(int model, bool known, bool of_resistance, double level) {
  enum { TRIALS = 1500, COUNT = 7 };
  ohm_fit_point truth[COUNT];
  int held = 0;
  spread(abc[2], 0, 90, truth, COUNT);
  if (model == OHM_FIT_BETA)
    spread(0, 0, 90, truth, COUNT);
  for (int trial = 0; trial < TRIALS; trial++) {
    ohm_fit_point points[COUNT];
    for (size_t i = 0; i < COUNT; i++) {
      points[i] = truth[i];
      if (of_resistance) {
        double u = 0.003 * points[i].r_ohm;
        points[i].u_r_ohm = known ? u : 0;
        points[i].r_ohm += u * normal();
      } else {
        double u = known ? 0.02 + 0.02 * (double)i : 0.05;
        points[i].u_t_k = known ? u : 0;
        points[i].t_c += u * normal();
      }
    }
    ohm_fit *fit = fit_or_fail(model, points, COUNT);
    size_t at = (size_t)trial % (COUNT - 2) + 1;
    ohm_estimate t_c;
    double expanded_k;
    ck_assert_int_eq(ohm_fit_temperature(fit, truth[at].r_ohm, level, &t_c, &expanded_k), OHM_OK);
    held += fabs(t_c.value - truth[at].t_c) <= expanded_k;
    ohm_fit_free(fit);
  }
  return (double)held / TRIALS;
}

/* Four standard deviations of 1500 trials. */
static double chance(double level) {
  return 4 * sqrt(level * (1 - level) / 1500);
}

START_TEST(an_interval_covers_as_often_as_it_says)
{
  seed(20240229);
  for (int model = OHM_FIT_BETA; model <= OHM_FIT_FOUR_TERM; model++) {
    CHECK_NEAR(coverage(model, true, false, 0.95), 0.95, chance(0.95));
    CHECK_NEAR(coverage(model, false, false, 0.95), 0.95, chance(0.95));
    CHECK_NEAR(coverage(model, true, true, 0.8), 0.8, chance(0.8));
  }
}
END_TEST

START_TEST(a_range_may_be_wider_than_the_points)
{
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  double low_c;
  double high_c;
  request.low_c = -20;
  request.high_c = 150;
  ohm_fit *fit = ohm_curve_fit(mgh10, MGH10, &request, NULL);
  ohm_curve_range(ohm_fit_curve(fit), &low_c, &high_c, NULL, NULL);
  CHECK_NEAR(low_c, -20, 0);
  CHECK_NEAR(high_c, 150, 0);
  ohm_estimate t_c;
  ohm_estimate inside;
  ck_assert_int_eq(ohm_fit_temperature(fit, 2000, 0.95, &t_c, NULL), OHM_OK);
  ck_assert_int_eq(ohm_fit_temperature(fit, 10000, 0.95, &inside, NULL), OHM_OK);
  ck_assert(t_c.u > inside.u);
  PROVOKES(ohm_fit_temperature, OHM_OUT_OF_RANGE, ohm_fit_temperature(fit, 1, 0.95, &t_c, NULL));
  ohm_fit_free(fit);
  request.high_c = -30;
  ck_assert_ptr_null(ohm_curve_fit(mgh10, MGH10, &request, &error));
  PROVOKES(ohm_curve_fit, OHM_BAD_ARGUMENT, error.status);
  PROVOKES(ohm_curve_fit, OHM_BAD_DEFINITION,
           (ohm_curve_fit(mgh10, 1, &request, &error), error.status));
}
END_TEST

START_TEST(bad_questions_get_a_status_and_nan)
{
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  ck_assert_ptr_null(ohm_curve_fit(mgh10, MGH10, NULL, &error));
  PROVOKES(ohm_curve_fit, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_curve_fit(NULL, 2, &request, &error));
  ck_assert_int_eq(error.status, OHM_NULL_ARGUMENT);
  ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, mgh10, MGH10);
  ohm_sensor *sensor = ohm_fit_sensor_new(fit, "s", NULL);
  ohm_estimate t_c = {0, 0};
  PROVOKES(ohm_fit_parameter, OHM_NULL_ARGUMENT, ohm_fit_parameter(NULL, 0, &t_c));
  PROVOKES(ohm_fit_parameter, OHM_NULL_ARGUMENT, ohm_fit_parameter(fit, 0, NULL));
  PROVOKES(ohm_fit_parameter, OHM_NOT_FOUND, ohm_fit_parameter(fit, 3, &t_c));
  ck_assert(isnan(t_c.value) && isnan(t_c.u));
  PROVOKES(ohm_fit_covariance, OHM_NULL_ARGUMENT, ohm_fit_covariance(NULL, 0, 0, NULL, NULL));
  PROVOKES(ohm_fit_covariance, OHM_NOT_FOUND, ohm_fit_covariance(fit, 0, 3, NULL, NULL));
  PROVOKES(ohm_fit_chi_square, OHM_NULL_ARGUMENT, ohm_fit_chi_square(NULL, NULL, NULL));
  PROVOKES(ohm_fit_temperature, OHM_NULL_ARGUMENT, ohm_fit_temperature(fit, 1, 0.9, NULL, NULL));
  PROVOKES(ohm_fit_temperature, OHM_NULL_ARGUMENT, ohm_fit_temperature(NULL, 1, 0.9, &t_c, NULL));
  PROVOKES(ohm_fit_temperature, OHM_BAD_ARGUMENT, ohm_fit_temperature(fit, NAN, 0.9, &t_c, NULL));
  PROVOKES(ohm_fit_temperature, OHM_BAD_ARGUMENT, ohm_fit_temperature(fit, 1e4, NAN, &t_c, NULL));
  PROVOKES(ohm_fit_temperature, OHM_OUT_OF_RANGE, ohm_fit_temperature(fit, 1e4, 1, &t_c, NULL));
  PROVOKES(ohm_sensor_temperature, OHM_NULL_ARGUMENT,
           ohm_sensor_temperature(sensor, 1, 0.9, NULL, NULL));
  PROVOKES(ohm_sensor_temperature, OHM_NULL_ARGUMENT,
           ohm_sensor_temperature(NULL, 1, 0.9, &t_c, NULL));
  PROVOKES(ohm_sensor_temperature, OHM_BAD_ARGUMENT,
           ohm_sensor_temperature(sensor, NAN, 0.9, &t_c, NULL));
  PROVOKES(ohm_sensor_temperature, OHM_OUT_OF_RANGE,
           ohm_sensor_temperature(sensor, 1e4, 0, &t_c, NULL));
  ck_assert_ptr_null(ohm_fit_sensor_new(NULL, "s", &error));
  PROVOKES(ohm_fit_sensor_new, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_fit_sensor_new(fit, NULL, NULL));
  ohm_sensor_free(sensor);
  ohm_fit_free(fit);
}
END_TEST

START_TEST(nothing_is_asked_of_no_fit)
{
  ck_assert_ptr_null(ohm_fit_curve(NULL));
  ck_assert_ptr_null(ohm_fit_parameter_name(NULL, 0));
  ck_assert_int_eq(ohm_fit_basis_of(NULL), OHM_FIT_NO_INTERVAL);
  ck_assert_uint_eq(ohm_fit_degrees(NULL), 0);
  ck_assert(isnan(ohm_fit_residual_k(NULL, 0)));
  ck_assert(isnan(ohm_fit_scatter_k(NULL)));
  ck_assert(isnan(ohm_fit_misfit_k(NULL)));
  ohm_fit_free(NULL);
}
END_TEST

int main(void) {
  return RUN_TESTS("fit_answer", as_many_points_as_coefficients_have_no_interval_and_say_so,
                   known_uncertainties_give_an_exact_fit_an_interval,
                   an_uncertain_resistance_counts_through_the_slope,
                   known_uncertainties_are_never_scaled,
                   misfit_is_what_the_uncertainties_do_not_explain, each_basis_has_its_sentence,
                   an_interval_covers_as_often_as_it_says, a_range_may_be_wider_than_the_points,
                   bad_questions_get_a_status_and_nan, nothing_is_asked_of_no_fit);
}
