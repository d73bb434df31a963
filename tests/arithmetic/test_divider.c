/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/divider.h"
#include "../support.h"

static const double pull_ups_ohm[] = {348, 1000, 2740, 20000};
enum { PULL_UPS = sizeof pull_ups_ohm / sizeof pull_ups_ohm[0] };

START_TEST(what_was_divided_is_found_again)
{
  for (double r_ohm = 1; r_ohm < 1e6; r_ohm *= 1.3) {
    double v_volt;
    double again_ohm;
    double p_ohm = pull_ups_ohm[_i];
    PROVOKES(ohm_divider_volts, OHM_OK, ohm_divider_volts(r_ohm, p_ohm, 5, &v_volt));
    PROVOKES(ohm_divider_resistance, OHM_OK, ohm_divider_resistance(v_volt, p_ohm, 5, &again_ohm));
    CHECK_NEAR(again_ohm, r_ohm, 1e-12 * r_ohm * (1 + r_ohm / p_ohm));
    CHECK_NEAR(oc_above(5, v_volt, r_ohm), p_ohm, 1e-12 * p_ohm * (1 + r_ohm / p_ohm));
  }
}
END_TEST

START_TEST(volts_rise_with_the_resistance_and_fall_with_the_pull_up)
{
  double before_volt = 0;
  for (double r_ohm = 1; r_ohm < 1e6; r_ohm *= 1.3) {
    double v_volt;
    double larger_volt;
    ohm_divider_volts(r_ohm, pull_ups_ohm[_i], 5, &v_volt);
    ohm_divider_volts(r_ohm, 1.01 * pull_ups_ohm[_i], 5, &larger_volt);
    ck_assert(before_volt < v_volt && larger_volt < v_volt && v_volt < 5);
    before_volt = v_volt;
  }
}
END_TEST

START_TEST(only_ratios_matter)
{
  double v_volt;
  double scaled_volt;
  ohm_divider_volts(187, pull_ups_ohm[_i], 5, &v_volt);
  ohm_divider_volts(187 * 64, 64 * pull_ups_ohm[_i], 10, &scaled_volt);
  CHECK_NEAR(scaled_volt, 2 * v_volt, 1e-15);
}
END_TEST

START_TEST(ends_are_a_short_and_nearly_the_supply)
{
  double got;
  ck_assert_int_eq(ohm_divider_volts(0, pull_ups_ohm[_i], 5, &got), OHM_OK);
  ck_assert(got == 0);
  ck_assert_int_eq(ohm_divider_volts(1e12, 1e12, 1e12, &got), OHM_OK);
  CHECK_NEAR(got, 5e11, 1);
  ck_assert_int_eq(ohm_divider_resistance(0, pull_ups_ohm[_i], 5, &got), OHM_OK);
  ck_assert(got == 0);
  static const double beyond[] = {5, 5.1, -0.01, INFINITY, -INFINITY};
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    PROVOKES(ohm_divider_resistance, OHM_OUT_OF_RANGE,
             ohm_divider_resistance(beyond[i], pull_ups_ohm[_i], 5, &got));
    ck_assert(isnan(got));
  }
}
END_TEST

START_TEST(no_value_of_the_wrong_kind_is_divided)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1, 1e13};
  double got;
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    PROVOKES(ohm_divider_volts, OHM_BAD_ARGUMENT, ohm_divider_volts(bad[i], 1000, 5, &got));
    ck_assert(isnan(got));
    ck_assert_int_eq(ohm_divider_volts(187, bad[i], 5, &got), OHM_BAD_ARGUMENT);
    ck_assert_int_eq(ohm_divider_volts(187, 1000, bad[i], &got), OHM_BAD_ARGUMENT);
    ck_assert_int_eq(ohm_divider_resistance(1, bad[i], 5, &got), OHM_BAD_ARGUMENT);
    ck_assert_int_eq(ohm_divider_resistance(1, 1000, bad[i], &got), OHM_BAD_ARGUMENT);
    ck_assert(isnan(got));
  }
  ck_assert_int_eq(ohm_divider_volts(187, 0, 5, &got), OHM_BAD_ARGUMENT);
  PROVOKES(ohm_divider_resistance, OHM_BAD_ARGUMENT, ohm_divider_resistance(NAN, 1000, 5, &got));
  PROVOKES(ohm_divider_volts, OHM_NULL_ARGUMENT, ohm_divider_volts(187, 1000, 5, NULL));
  PROVOKES(ohm_divider_resistance, OHM_NULL_ARGUMENT, ohm_divider_resistance(1, 1000, 5, NULL));
}
END_TEST

/* The two ranges of an input as printed: 4 k below 40 C, 348 ohm above. */
static const struct oc_divider dual = {5, 4000, 348, 1150};

START_TEST(every_resistance_is_among_the_solutions_of_its_volts)
{
  for (double r_ohm = 60; r_ohm < 40000; r_ohm *= 1.05) {
    double p_ohm = oc_divider_pull_up(&dual, r_ohm);
    ck_assert(p_ohm == (r_ohm < 1150 ? 348 : 4000));
    double found_ohm[OC_RANGES_MAX];
    double met_ohm[OC_RANGES_MAX];
    size_t count = oc_divider_solve(&dual, oc_divided(5, p_ohm, r_ohm), found_ohm, met_ohm);
    size_t hits = 0;
    for (size_t i = 0; i < count; i++)
      hits += met_ohm[i] == p_ohm && is_near(found_ohm[i], r_ohm, 1e-9 * r_ohm);
    ck_assert_uint_eq(hits, 1);
  }
}
END_TEST

START_TEST(volts_that_only_one_range_has_are_solved_once)
{
  double r_ohm[OC_RANGES_MAX];
  double p_ohm[OC_RANGES_MAX];
  ck_assert_uint_eq(oc_divider_solve(&dual, 4.5, r_ohm, p_ohm), 1);
  ck_assert(p_ohm[0] == 4000);
  ck_assert_uint_eq(oc_divider_solve(&dual, 0.5, r_ohm, p_ohm), 1);
  ck_assert(p_ohm[0] == 348);
  ck_assert_uint_eq(oc_divider_solve(&dual, 2, r_ohm, p_ohm), 2);
  ck_assert_uint_eq(oc_divider_solve(&dual, 5, r_ohm, p_ohm), 0);
  ck_assert_uint_eq(oc_divider_solve(&dual, 0, r_ohm, p_ohm), 0);
  ck_assert_uint_eq(oc_divider_solve(&dual, NAN, r_ohm, p_ohm), 0);
}
END_TEST

START_TEST(one_range_meets_everything)
{
  const struct oc_divider one = {5, 1000, 0, 0};
  double r_ohm[OC_RANGES_MAX];
  double p_ohm[OC_RANGES_MAX];
  ck_assert(oc_divider_pull_up(&one, 1) == 1000 && oc_divider_pull_up(&one, 1e6) == 1000);
  ck_assert_uint_eq(oc_divider_solve(&one, 1, r_ohm, p_ohm), 1);
  CHECK_NEAR(r_ohm[0], 250, 1e-12);
}
END_TEST

int main(void) {
  return RUN_TESTS_FOR_EACH(
      "divider", PULL_UPS, what_was_divided_is_found_again,
      volts_rise_with_the_resistance_and_fall_with_the_pull_up, only_ratios_matter,
      ends_are_a_short_and_nearly_the_supply, no_value_of_the_wrong_kind_is_divided,
      every_resistance_is_among_the_solutions_of_its_volts,
      volts_that_only_one_range_has_are_solved_once, one_range_meets_everything);
}
