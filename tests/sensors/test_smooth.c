/* SPDX-License-Identifier: MIT */
#include "../../lib/sensors/smooth.h"
#include "../support.h"

enum { MOST = 200 };

static struct oc_smooth rows[MOST];

/* A beta of 3950 K, printed to a digit of that share, every step kelvin from -40 C. */
static void fill(size_t count, double step, double digit) {
  for (size_t i = 0; i < count; i++) {
    double x = 1 / oc_kelvin(-40 + step * (double)i);
    double r = exp(3950 * (x - 1 / 298.15));
    rows[i] = (struct oc_smooth){.x = x, .y = log(r), .half = digit / 2};
  }
}

static size_t off_count(size_t count) {
  size_t off = 0;
  for (size_t i = 0; i < count; i++)
    off += rows[i].off;
  return off;
}

START_TEST(rows_of_a_curve_are_led_to_by_the_others)
{
  fill(18, 10, 0.001);
  oc_smooth_judge(rows, 18);
  ck_assert_uint_eq(off_count(18), 0);
  for (size_t i = 0; i < 18; i++)
    ck_assert(fabs(rows[i].led_y - rows[i].y) < rows[i].u_sound);
}
END_TEST

START_TEST(any_one_bad_row_is_found_alone_at_any_place)
{
  for (size_t count = 7; count <= 60; count += 7)
    for (size_t bad = 0; bad < count; bad++) {
      fill(count, 3, 0.001);
      rows[bad].y += bad % 2 ? 0.1 : -0.1;
      oc_smooth_judge(rows, count);
      ck_assert_msg(rows[bad].off && off_count(count) == 1, "row %zu of %zu", bad, count);
    }
}
END_TEST

START_TEST(two_bad_rows_do_not_hide_each_other)
{
  fill(18, 10, 0.001);
  rows[6].y += 0.1;
  rows[9].y += 0.1;
  oc_smooth_judge(rows, 18);
  ck_assert(rows[6].off && rows[9].off);
  ck_assert_uint_eq(off_count(18), 2);
}
END_TEST

START_TEST(a_row_within_its_rounding_is_not_off)
{
  fill(18, 10, 0.05);
  rows[6].y += 0.024;
  oc_smooth_judge(rows, 18);
  ck_assert_uint_eq(off_count(18), 0);
}
END_TEST

START_TEST(scatter_of_the_others_is_allowed_to_each)
{
  static const double scatter[] = {2, -1, -3, 1, 0, 3, -2, 1, -1, 2, -3, 0};
  fill(12, 10, 0.001);
  for (size_t i = 0; i < 12; i++)
    rows[i].y += 0.01 * scatter[i];
  oc_smooth_judge(rows, 12);
  ck_assert_uint_eq(off_count(12), 0);
}
END_TEST

START_TEST(an_end_row_is_allowed_more_than_an_inner_one)
{
  fill(12, 10, 0.001);
  oc_smooth_judge(rows, 12);
  ck_assert(rows[0].u_sound > 1.5 * rows[5].u_sound);
  ck_assert(rows[11].u_sound > 1.5 * rows[5].u_sound);
}
END_TEST

START_TEST(too_few_rows_are_not_judged)
{
  fill(OC_SMOOTH_MIN - 1, 20, 0.001);
  rows[2].y += 1;
  oc_smooth_judge(rows, OC_SMOOTH_MIN - 1);
  ck_assert_uint_eq(off_count(OC_SMOOTH_MIN - 1), 0);
  ck_assert(isnan(rows[2].led_y));
}
END_TEST

START_TEST(the_order_of_the_rows_does_not_matter)
{
  fill(40, 4, 0.001);
  rows[11].y += 0.05;
  for (size_t i = 0; i < 20; i++) {
    struct oc_smooth row = rows[i];
    rows[i] = rows[39 - i];
    rows[39 - i] = row;
  }
  oc_smooth_judge(rows, 40);
  ck_assert(rows[28].off);
  ck_assert_uint_eq(off_count(40), 1);
}
END_TEST

int main(void) {
  return RUN_TESTS("smooth", rows_of_a_curve_are_led_to_by_the_others,
                   any_one_bad_row_is_found_alone_at_any_place, two_bad_rows_do_not_hide_each_other,
                   a_row_within_its_rounding_is_not_off, scatter_of_the_others_is_allowed_to_each,
                   an_end_row_is_allowed_more_than_an_inner_one, too_few_rows_are_not_judged,
                   the_order_of_the_rows_does_not_matter);
}
