/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/preferred.h"
#include "../support.h"

static const double spread[] = {0.126, 0.078, 0.0151}; /* half of the widest step, as ratio */

START_TEST(a_series_rises_in_steps_of_its_kind)
{
  static const size_t of_decade[] = {12, 24, 96};
  double values_ohm[OC_PREFERRED_MAX];
  size_t count = oc_preferred_all((ohm_series)_i, values_ohm);
  ck_assert_uint_eq(count, 7 * of_decade[_i] + 1);
  ck_assert(values_ohm[0] == 1 && values_ohm[count - 1] == 1e7);
  for (size_t i = 1; i < count; i++) {
    double step = values_ohm[i] / values_ohm[i - 1] - 1;
    ck_assert(0 < step && step < 2 * spread[_i]);
    ck_assert(i < of_decade[_i] ||
              is_near(values_ohm[i], 10 * values_ohm[i - of_decade[_i]], 1e-9 * values_ohm[i]));
  }
}
END_TEST

START_TEST(a_preferred_value_is_its_own_nearest)
{
  double values_ohm[OC_PREFERRED_MAX];
  size_t count = oc_preferred_all((ohm_series)_i, values_ohm);
  for (size_t i = 0; i < count; i++) {
    double nearest_ohm;
    PROVOKES(ohm_preferred_nearest, OHM_OK, ohm_preferred_nearest(values_ohm[i], _i, &nearest_ohm));
    ck_assert(nearest_ohm == values_ohm[i]);
  }
}
END_TEST

START_TEST(no_other_value_is_nearer)
{
  double values_ohm[OC_PREFERRED_MAX];
  size_t count = oc_preferred_all((ohm_series)_i, values_ohm);
  for (double r_ohm = 1; r_ohm < 1e7; r_ohm *= 1.0173) {
    double nearest_ohm;
    ck_assert_int_eq(ohm_preferred_nearest(r_ohm, _i, &nearest_ohm), OHM_OK);
    double off = fabs(log(nearest_ohm / r_ohm));
    ck_assert(off <= spread[_i]);
    for (size_t i = 0; i < count; i++)
      ck_assert(off <= fabs(log(values_ohm[i] / r_ohm)) + 1e-12);
  }
}
END_TEST

START_TEST(only_values_that_shops_carry_are_looked_for)
{
  static const double beyond_ohm[] = {0, 0.99, 1.0001e7, -1, INFINITY, -INFINITY};
  double nearest_ohm;
  for (size_t i = 0; i < sizeof beyond_ohm / sizeof beyond_ohm[0]; i++) {
    PROVOKES(ohm_preferred_nearest, OHM_OUT_OF_RANGE,
             ohm_preferred_nearest(beyond_ohm[i], _i, &nearest_ohm));
    ck_assert(isnan(nearest_ohm));
  }
  PROVOKES(ohm_preferred_nearest, OHM_BAD_ARGUMENT, ohm_preferred_nearest(NAN, _i, &nearest_ohm));
  ck_assert(isnan(nearest_ohm));
  ck_assert_int_eq(ohm_preferred_nearest(100, OHM_SERIES_E96 + 1, &nearest_ohm), OHM_BAD_ARGUMENT);
  ck_assert_int_eq(ohm_preferred_nearest(100, -1, &nearest_ohm), OHM_BAD_ARGUMENT);
  PROVOKES(ohm_preferred_nearest, OHM_NULL_ARGUMENT, ohm_preferred_nearest(100, _i, NULL));
}
END_TEST

int main(void) {
  return RUN_TESTS_FOR_EACH("preferred", 3, a_series_rises_in_steps_of_its_kind,
                            a_preferred_value_is_its_own_nearest, no_other_value_is_nearer,
                            only_values_that_shops_carry_are_looked_for);
}
