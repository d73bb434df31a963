/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/distribution.h"

static const double PI = 3.14159265358979324;

/* Computed: mpmath gammainc(n/2, x/2, inf, regularized) in 30 digits. */
START_TEST(chi_square_agrees_with_high_precision)
{
  static const struct {
    double chi_square;
    double degrees;
    double above;
  } rows[] = {
      {3.84, 1, 0.050043521248705099},    {9.5, 9, 0.39245576033480641},
      {0.39, 13, 0.9999999890400195},     {25, 13, 0.023083728033730091},
      {1100, 1000, 0.014614408126295194},
  };
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    CHECK_NEAR(oc_chi_square_above(rows[i].chi_square, rows[i].degrees), rows[i].above, 1e-13);
}
END_TEST

START_TEST(chi_square_of_two_degrees_is_an_exponential)
{
  for (double x = 0.01; x < 100; x *= 1.3)
    CHECK_NEAR(oc_chi_square_above(x, 2), exp(-x / 2), 1e-14);
}
END_TEST

/* Computed: mpmath betainc(n/2, 1/2, 0, n/(n + t^2), regularized) solved in 30 digits. */
START_TEST(student_factor_agrees_with_high_precision)
{
  static const struct {
    double level;
    double degrees;
    double factor;
  } rows[] = {
      {0.95, 3, 3.1824463052837096},        {0.95, 9, 2.2621571627982055},
      {0.99, 13, 3.0122758387165784},       {0.6827, 40, 1.0126794918225305},
      {0.95, INFINITY, 1.9599639845400542},
  };
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    CHECK_NEAR(oc_student_factor(rows[i].level, rows[i].degrees), rows[i].factor,
               1e-12 * rows[i].factor);
}
END_TEST

START_TEST(student_of_one_and_two_degrees_has_its_closed_form)
{
  for (double level = 0.05; level < 1; level += 0.09) {
    double one = tan(PI * level / 2);
    double two = level * sqrt(2 / (1 - level * level));
    CHECK_NEAR(oc_student_factor(level, 1), one, 1e-12 * one);
    CHECK_NEAR(oc_student_factor(level, 2), two, 1e-12 * two);
  }
}
END_TEST

START_TEST(student_factor_falls_to_the_normal_one_as_degrees_grow)
{
  double before = INFINITY;
  for (double degrees = 1; degrees < 1e5; degrees *= 2) {
    double factor = oc_student_factor(0.95, degrees);
    ck_assert(factor < before && factor > oc_student_factor(0.95, INFINITY));
    before = factor;
  }
}
END_TEST

START_TEST(student_outside_undoes_its_factor)
{
  for (double degrees = 1; degrees < 5000; degrees *= 3)
    for (double level = 0.1; level < 1; level += 0.1)
      CHECK_NEAR(oc_student_outside(oc_student_factor(level, degrees), degrees), 1 - level, 1e-12);
}
END_TEST

START_TEST(ends_are_exact)
{
  CHECK_NEAR(oc_chi_square_above(0, 5), 1, 0);
  CHECK_NEAR(oc_chi_square_above(INFINITY, 5), 0, 0);
  CHECK_NEAR(oc_student_outside(0, 5), 1, 0);
  CHECK_NEAR(oc_student_outside(INFINITY, 5), 0, 0);
}
END_TEST

START_TEST(outside_its_domain_nothing_is_given)
{
  ck_assert(isnan(oc_chi_square_above(-1, 3)));
  ck_assert(isnan(oc_chi_square_above(1, 0)));
  ck_assert(isnan(oc_chi_square_above(NAN, 3)));
  ck_assert(isnan(oc_student_outside(NAN, 3)));
  ck_assert(isnan(oc_student_outside(1, 0)));
  ck_assert(isnan(oc_student_factor(0, 3)));
  ck_assert(isnan(oc_student_factor(1, 3)));
  ck_assert(isnan(oc_student_factor(0.95, NAN)));
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "distribution", chi_square_agrees_with_high_precision,
      chi_square_of_two_degrees_is_an_exponential, student_factor_agrees_with_high_precision,
      student_of_one_and_two_degrees_has_its_closed_form,
      student_factor_falls_to_the_normal_one_as_degrees_grow, student_outside_undoes_its_factor,
      ends_are_exact, outside_its_domain_nothing_is_given);
}
