/* SPDX-License-Identifier: MIT */
/* The comparer is tested first: every other test leans on it. */
#include "support.h"

#include <float.h>

START_TEST(equal_values_are_near_at_tolerance_zero)
{
  ck_assert(is_near(2310.0, 2310.0, 0.0));
  ck_assert(is_near(0.0, -0.0, 0.0));
  ck_assert(is_near(-DBL_MAX, -DBL_MAX, 0.0));
}
END_TEST

START_TEST(neighbours_differ_at_tolerance_zero)
{
  ck_assert(!is_near(1.0, nextafter(1.0, 2.0), 0.0));
  ck_assert(!is_near(0.0, DBL_TRUE_MIN, 0.0));
}
END_TEST

START_TEST(the_tolerance_itself_is_included)
{
  ck_assert(is_near(1.5, 1.0, 0.5));
  ck_assert(is_near(1.0, 1.5, 0.5));
  ck_assert(!is_near(1.5, 1.0, nextafter(0.5, 0.0)));
}
END_TEST

START_TEST(nan_is_near_nothing)
{
  ck_assert(!is_near(NAN, 1.0, 1.0));
  ck_assert(!is_near(1.0, NAN, 1.0));
  ck_assert(!is_near(NAN, NAN, 1.0));
  ck_assert(!is_near(NAN, NAN, INFINITY));
}
END_TEST

START_TEST(infinities_are_near_nothing)
{
  ck_assert(!is_near(INFINITY, INFINITY, 0.0));
  ck_assert(!is_near(INFINITY, 1.0, INFINITY));
  ck_assert(!is_near(1.0, -INFINITY, INFINITY));
}
END_TEST

START_TEST(a_tolerance_that_is_none_is_refused)
{
  ck_assert(!is_near(1.0, 1.0, NAN));
  ck_assert(!is_near(1.0, 1.0, -1e-300));
  ck_assert(!is_near(1.0, 1.0, -INFINITY));
  ck_assert(!is_near(1.0, 1.0, INFINITY));
}
END_TEST

START_TEST(a_difference_that_overflows_is_not_near)
{ ck_assert(!is_near(DBL_MAX, -DBL_MAX, DBL_MAX)); }
END_TEST

int main(void) {
  return RUN_TESTS("near", equal_values_are_near_at_tolerance_zero,
                   neighbours_differ_at_tolerance_zero, the_tolerance_itself_is_included,
                   nan_is_near_nothing, infinities_are_near_nothing,
                   a_tolerance_that_is_none_is_refused, a_difference_that_overflows_is_not_near);
}
