/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/gaussian.h"

/* ---- of one quantity ---- */

/* Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1. */
START_TEST(probabilities_are_those_of_the_table)
{
  static const double rows[][2] = {{0, 0.5},
                                   {0.5, 0.691462461274013},
                                   {1, 0.841344746068543},
                                   {2, 0.977249868051821},
                                   {3, 0.998650101968370}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    CHECK_NEAR(oc_normal_below(rows[i][0]), rows[i][1], 0.5e-15 + 2e-15);
    CHECK_NEAR(oc_normal_below(-rows[i][0]), 1 - rows[i][1], 0.5e-15 + 2e-15);
  }
}
END_TEST

/* The same, table 26.2: -log10 of the probability above. */
START_TEST(probabilities_far_out_are_those_of_the_table)
{
  static const double rows[][2] = {{5, 6.54265},     {10, 23.11805},  {20, 88.56010},
                                   {30, 197.30921},  {40, 349.43701}, {50, 544.96634},
                                   {100, 2173.87154}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    double above = oc_normal_log_between(rows[i][0], INFINITY) / log(10);
    double below = oc_normal_log_between(-INFINITY, -rows[i][0]) / log(10);
    CHECK_NEAR(-above, rows[i][1], 0.5e-5);
    CHECK_NEAR(below, above, 1e-12 * rows[i][1]);
  }
}
END_TEST

/* The same, table 26.5. */
START_TEST(quantiles_are_those_of_the_table)
{
  static const double rows[][2] = {{0.5, 0},        {0.25, 0.67449},  {0.1, 1.28155},
                                   {0.05, 1.64485}, {0.025, 1.95996}, {0.005, 2.57583}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    CHECK_NEAR(oc_normal_quantile(1 - rows[i][0]), rows[i][1], 0.5e-5);
    CHECK_NEAR(oc_normal_quantile(rows[i][0]), -rows[i][1], 0.5e-5);
  }
}
END_TEST

START_TEST(a_quantile_gives_its_probability_back)
{
  for (double p = 1e-300; p < 0.5; p *= 3.7)
    CHECK_NEAR(oc_normal_below(oc_normal_quantile(p)) / p, 1, 1e-9);
  for (double p = 0.5; p < 1; p += 0.01)
    CHECK_NEAR(oc_normal_below(oc_normal_quantile(p)), p, 1e-14);
  CHECK_NEAR(oc_normal_quantile(0.5), 0, 1e-15);
}
END_TEST

START_TEST(what_is_no_probability_has_no_quantile)
{
  ck_assert(oc_normal_quantile(0) == -INFINITY);
  ck_assert(oc_normal_quantile(1) == INFINITY);
  static const double bad[] = {NAN, -INFINITY, INFINITY, -1e-9, 1.1};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
    ck_assert(isnan(oc_normal_quantile(bad[i])));
}
END_TEST

/* Computed: mpmath, difference of two erfc() in 40 digits. */
START_TEST(an_interval_has_its_probability_however_far_out)
{
  static const double rows[][3] = {
      {-1, 2, -0.200166294324462580},   {1, 1.5, -2.38761966882393465},
      {-3, -2.5, -5.32676472407906225}, {8, 9, -35.0136185934371481},
      {29, 31, -424.787419909730163},   {37, 37.5, -689.030585584934076},
      {45, 46, -1017.22609424195237},   {100, 100.001, -5007.87627734274689}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    double low = rows[i][0];
    double high = rows[i][1];
    CHECK_NEAR(oc_normal_log_between(low, high), rows[i][2], 2e-9);
    CHECK_NEAR(oc_normal_log_between(-high, -low), rows[i][2], 2e-9);
  }
  CHECK_NEAR(oc_normal_log_between(-INFINITY, INFINITY), 0, 0);
  ck_assert(oc_normal_log_between(3, 3) == -INFINITY);
}
END_TEST

/* ---- of a few together ---- */

static struct oc_gaussian gaussian_of(size_t count, const double *covariance) {
  struct oc_gaussian gaussian = {.count = count};
  for (size_t i = 0; i < count; i++)
    for (size_t j = 0; j <= i; j++)
      gaussian.factor[i][j] = covariance[i * count + j];
  return gaussian;
}

/* Density of two by the textbook, for deviations (x, y). */
static double log_density_of_two(double a, double b, double c, double x, double y) {
  double determinant = a * c - b * b;
  double form = (c * x * x - 2 * b * x * y + a * y * y) / determinant;
  return -form / 2 - log(2 * acos(-1)) - log(determinant) / 2;
}

START_TEST(white_deviations_have_the_density)
{
  for (double b = -0.9; b < 1; b += 0.3)
    for (double x = -2; x <= 2; x += 1) {
      const double covariance[] = {1.3, b, b, 0.8};
      struct oc_gaussian gaussian = gaussian_of(2, covariance);
      ck_assert(oc_gaussian_factor(&gaussian));
      double white[] = {x, 0.7};
      oc_gaussian_whiten(&gaussian, white, white);
      double log_density =
          oc_gaussian_log_peak(&gaussian) - (white[0] * white[0] + white[1] * white[1]) / 2;
      CHECK_NEAR(log_density, log_density_of_two(1.3, b, 0.8, x, 0.7), 1e-12);
    }
}
END_TEST

/* The first is by itself, the second what the first leaves open. */
START_TEST(deviations_are_made_white_in_their_order)
{
  const double covariance[] = {4, 2, 2, 5};
  struct oc_gaussian gaussian = gaussian_of(2, covariance);
  ck_assert(oc_gaussian_factor(&gaussian));
  const double deviation[] = {2, 5};
  double white[2];
  oc_gaussian_whiten(&gaussian, deviation, white);
  CHECK_NEAR(white[0], 1, 1e-15);
  CHECK_NEAR(white[1], (5 - 0.5 * 2) / 2, 1e-15);
}
END_TEST

int main(void) {
  return RUN_TESTS("gaussian", probabilities_are_those_of_the_table,
                   probabilities_far_out_are_those_of_the_table, quantiles_are_those_of_the_table,
                   a_quantile_gives_its_probability_back, what_is_no_probability_has_no_quantile,
                   an_interval_has_its_probability_however_far_out,
                   white_deviations_have_the_density, deviations_are_made_white_in_their_order);
}
