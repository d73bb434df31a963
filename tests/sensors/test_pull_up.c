/* SPDX-License-Identifier: MIT */
#include "../../lib/sensors/pull_up.h"
#include "../support.h"

enum { ROWS = 8 };

static const double r_ohm[ROWS] = {100000, 30000, 10000, 4000, 1500, 600, 300, 150};

static struct oc_signal rows[ROWS];

/* Rounded to hundredths of a volt. */
static void set_volts(size_t i, double v) {
  rows[i] = (struct oc_signal){.r_ohm = r_ohm[i], .v = rint(v * 100) / 100, .v_half = 0.005};
}

static void fill(double supply_v, double p_ohm, double load_ohm) {
  for (size_t i = 0; i < ROWS; i++) {
    double r = 1 / (1 / r_ohm[i] + 1 / load_ohm);
    set_volts(i, supply_v * r / (r + p_ohm));
  }
}

START_TEST(volts_of_one_pull_up_give_it_back)
{
  fill(5, 2490, INFINITY);
  struct oc_pull_up found = oc_pull_up_find(rows, ROWS, 5);
  ck_assert_int_eq(found.kind, OC_PULL_UP_ONE);
  CHECK_NEAR(found.p_ohm, 2490, 25);
  for (size_t i = 0; i < ROWS; i++)
    ck_assert(!rows[i].off);
}
END_TEST

START_TEST(one_row_that_disagrees_is_off_and_alone)
{
  for (size_t bad = 0; bad < ROWS; bad++) {
    fill(5, 2490, INFINITY);
    double v = rows[bad].v;
    rows[bad].v += v < 2.5 ? 0.1 : -0.1;
    ck_assert_int_eq(oc_pull_up_find(rows, ROWS, 5).kind, OC_PULL_UP_ONE);
    for (size_t i = 0; i < ROWS; i++)
      ck_assert(rows[i].off == (i == bad));
    CHECK_NEAR(rows[bad].fits_v, v, 0.02);
  }
}
END_TEST

START_TEST(an_input_of_two_ranges_is_two_pull_ups)
{
  for (size_t i = 0; i < ROWS; i++) {
    double p_ohm = i < 4 ? 10000 : 909;
    set_volts(i, 5 * r_ohm[i] / (r_ohm[i] + p_ohm));
  }
  struct oc_pull_up found = oc_pull_up_find(rows, ROWS, 5);
  ck_assert_int_eq(found.kind, OC_PULL_UP_TWO);
  CHECK_NEAR(found.p_ohm, 10000, 200);
  CHECK_NEAR(found.hot_ohm, 909, 20);
}
END_TEST

START_TEST(a_load_to_ground_is_told_from_a_bare_pull_up)
{
  fill(5, 20400, 250000);
  struct oc_pull_up found = oc_pull_up_find(rows, ROWS, 5);
  ck_assert_int_eq(found.kind, OC_PULL_UP_LOADED);
  CHECK_NEAR(found.p_ohm, 20400, 800);
  CHECK_NEAR(found.load_ohm, 250000, 25000);
}
END_TEST

START_TEST(volts_of_a_constant_current_are_known)
{
  for (size_t i = 3; i < ROWS; i++)
    set_volts(i, r_ohm[i] * 1e-3);
  struct oc_pull_up found = oc_pull_up_find(rows + 3, ROWS - 3, 5);
  ck_assert_int_eq(found.kind, OC_PULL_UP_CURRENT);
  CHECK_NEAR(found.current_a, 1e-3, 1e-5);
}
END_TEST

START_TEST(volts_at_random_fit_nothing_and_accuse_no_row)
{
  static const double v[ROWS] = {4.9, 4.1, 3.9, 2.2, 2.1, 0.6, 0.9, 0.1};
  for (size_t i = 0; i < ROWS; i++)
    set_volts(i, v[i]);
  struct oc_pull_up found = oc_pull_up_find(rows, ROWS, 5);
  ck_assert_int_eq(found.kind, OC_PULL_UP_NONE);
  ck_assert(found.least_ohm < found.most_ohm);
  for (size_t i = 0; i < ROWS; i++)
    ck_assert(!rows[i].off);
}
END_TEST

START_TEST(two_rows_say_nothing)
{
  fill(5, 2490, INFINITY);
  ck_assert_int_eq(oc_pull_up_find(rows, 2, 5).kind, OC_PULL_UP_UNKNOWN);
}
END_TEST

START_TEST(the_supply_is_what_it_is_told_to_be)
{
  fill(9, 2490, INFINITY);
  ck_assert_int_eq(oc_pull_up_find(rows, ROWS, 9).kind, OC_PULL_UP_ONE);
  ck_assert_int_ne(oc_pull_up_find(rows, ROWS, 5).kind, OC_PULL_UP_ONE);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "pull_up", volts_of_one_pull_up_give_it_back, one_row_that_disagrees_is_off_and_alone,
      an_input_of_two_ranges_is_two_pull_ups, a_load_to_ground_is_told_from_a_bare_pull_up,
      volts_of_a_constant_current_are_known, volts_at_random_fit_nothing_and_accuse_no_row,
      two_rows_say_nothing, the_supply_is_what_it_is_told_to_be);
}
