/* SPDX-License-Identifier: MIT */
#include "../fits.h"

START_TEST(an_exact_fit_passes_through_its_points)
{
  for (int model = OHM_FIT_BETA; model <= OHM_FIT_FOUR_TERM; model++)
    for (double low_c = -60; low_c < 100; low_c += 37)
      for (double width = 1; width < 200; width *= 3) {
        ohm_fit_point points[4];
        size_t count = (size_t)model + 2;
        spread(abc[2], low_c, low_c + width, points, count);
        ohm_fit *fit = fit_or_fail(model, points, count);
        for (size_t i = 0; i < count; i++) {
          CHECK_NEAR(ohm_fit_residual_k(fit, i), 0, 2e-12);
          double r_ohm;
          ohm_curve_resistance(ohm_fit_curve(fit), points[i].t_c, &r_ohm);
          /* The printed coefficients lose digits as the span narrows. */
          check_relative(r_ohm, points[i].r_ohm, 1e-12 + 1e-11 / (width * width));
        }
        ohm_fit_free(fit);
      }
}
END_TEST

START_TEST(the_order_of_the_points_does_not_matter)
{
  ohm_fit_point turned[MGH10];
  for (size_t i = 0; i < MGH10; i++)
    turned[i] = mgh10[(7 * i + 3) % MGH10];
  ohm_fit *one = fit_or_fail(OHM_FIT_STEINHART_HART, mgh10, MGH10);
  ohm_fit *other = fit_or_fail(OHM_FIT_STEINHART_HART, turned, MGH10);
  for (size_t i = 0; i < 3; i++) {
    CHECK_NEAR(parameter(other, i), parameter(one, i), 0);
    CHECK_NEAR(u_of_parameter(other, i), u_of_parameter(one, i), 0);
  }
  for (size_t i = 0; i < MGH10; i++)
    CHECK_NEAR(ohm_fit_residual_k(other, i), ohm_fit_residual_k(one, (7 * i + 3) % MGH10), 0);
  ohm_fit_free(one);
  ohm_fit_free(other);
}
END_TEST

/* Of the forms that know a reference resistance; Steinhart-Hart is one in ohm. */
START_TEST(the_unit_of_resistance_does_not_matter)
{
  static const int models[] = {OHM_FIT_BETA, OHM_FIT_FOUR_TERM};
  for (int m = 0; m < 2; m++)
    for (double factor = 1e-3; factor < 1e7; factor *= 1e3) {
      ohm_fit_point scaled[MGH10];
      for (size_t i = 0; i < MGH10; i++) {
        scaled[i] = mgh10[i];
        scaled[i].r_ohm *= factor;
      }
      ohm_fit *one = fit_or_fail(models[m], mgh10, MGH10);
      ohm_fit *other = fit_or_fail(models[m], scaled, MGH10);
      check_relative(parameter(other, 0), factor * parameter(one, 0), 1e-11);
      for (size_t i = 1; i < (m == 0 ? 3 : 5); i++)
        check_relative(parameter(other, i), parameter(one, i), 1e-8);
      check_relative(ohm_fit_scatter_k(other), ohm_fit_scatter_k(one), 1e-8);
      ohm_fit_free(one);
      ohm_fit_free(other);
    }
}
END_TEST

START_TEST(a_small_third_coefficient_comes_back_and_none_too)
{
  static const double cs[] = {1e-7, 1e-8, 1e-9, 1e-10, 1e-12, 1e-14, 1e-16, 0};
  for (size_t i = 0; i < sizeof cs / sizeof cs[0]; i++)
    for (size_t count = 3; count <= 48; count += 15) {
      ohm_fit_point points[48];
      spread(cs[i], -40, 125, points, count);
      ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, points, count);
      check_relative(parameter(fit, 0), abc[0], 1e-13);
      check_relative(parameter(fit, 1), abc[1], 1e-13);
      CHECK_NEAR(parameter(fit, 2), cs[i], 2e-20);
      for (size_t j = 0; j < count; j++)
        CHECK_NEAR(ohm_fit_residual_k(fit, j), 0, 1e-12);
      ohm_fit_free(fit);
    }
}
END_TEST

/* Cholesky of the correlations. */
static bool is_positive(const ohm_fit *fit, const size_t *index, size_t count) {
  double root[4][4] = {{0}};
  for (size_t i = 0; i < count; i++)
    for (size_t j = 0; j <= i; j++) {
      double sum = correlation(fit, index[i], index[j]);
      for (size_t k = 0; k < j; k++)
        sum -= root[i][k] * root[j][k];
      if (i == j && !(sum > 0))
        return false;
      root[i][j] = i == j ? sqrt(sum) : sum / root[j][j];
    }
  return true;
}

START_TEST(a_covariance_is_symmetric_and_positive)
{
  static const size_t fitted[3][4] = {{0, 2}, {0, 1, 2}, {1, 2, 3, 4}};
  for (int model = OHM_FIT_BETA; model <= OHM_FIT_FOUR_TERM; model++) {
    ohm_fit *fit = fit_or_fail(model, mgh10, MGH10);
    for (size_t i = 0; ohm_fit_parameter_name(fit, i); i++)
      for (size_t j = 0; ohm_fit_parameter_name(fit, j); j++) {
        double one;
        double other;
        ohm_fit_covariance(fit, i, j, &one, NULL);
        ohm_fit_covariance(fit, j, i, &other, NULL);
        CHECK_NEAR(one, other, 0);
        ck_assert(fabs(correlation(fit, i, j)) <= 1);
      }
    ck_assert(is_positive(fit, fitted[model], (size_t)model + 2));
    ohm_fit_free(fit);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("fit_form", an_exact_fit_passes_through_its_points,
                   the_order_of_the_points_does_not_matter, the_unit_of_resistance_does_not_matter,
                   a_small_third_coefficient_comes_back_and_none_too,
                   a_covariance_is_symmetric_and_positive);
}
