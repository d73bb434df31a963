/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/estimate.h"

#include <float.h>

#include "../support.h"

START_TEST(a_value_without_causes_is_exact)
{
  struct oc_budget budget = oc_budget_of(2310);
  CHECK_NEAR(budget.value, 2310, 0);
  ck_assert_uint_eq(budget.count, 0);
  CHECK_NEAR(oc_budget_u(&budget), 0, 0);
}
END_TEST

START_TEST(a_normal_cause_is_kept_as_it_is)
{
  struct oc_budget budget = oc_budget_of(0);
  oc_budget_add_normal(&budget, OC_CAUSE_REFERENCE_NOISE, 0.25);
  ck_assert_uint_eq(budget.count, 1);
  ck_assert_int_eq((int)budget.causes[0].name, OC_CAUSE_REFERENCE_NOISE);
  ck_assert_int_eq((int)budget.causes[0].shape, OC_NORMAL);
  CHECK_NEAR(budget.causes[0].u, 0.25, 0);
  CHECK_NEAR(oc_budget_u(&budget), 0.25, 0);
}
END_TEST

START_TEST(a_limit_is_rectangular_with_u_of_limit_over_root_3)
{
  for (double limit = 1e-300; limit < 1e300; limit *= 977) {
    struct oc_budget budget = oc_budget_of(0);
    oc_budget_add_limit(&budget, OC_CAUSE_LEADS, limit);
    ck_assert_uint_eq(budget.count, 1);
    ck_assert_int_eq((int)budget.causes[0].shape, OC_RECTANGULAR);
    CHECK_NEAR(oc_budget_u(&budget), limit / sqrt(3), 2 * DBL_EPSILON * limit);
    CHECK_NEAR(oc_cause_limit(&budget.causes[0]), limit, 2 * DBL_EPSILON * limit);
  }
}
END_TEST

START_TEST(a_cause_of_0_is_left_out)
{
  struct oc_budget budget = oc_budget_of(1);
  oc_budget_add_normal(&budget, OC_CAUSE_METER, 0);
  oc_budget_add_limit(&budget, OC_CAUSE_METER, 0);
  oc_budget_add_limit(&budget, OC_CAUSE_METER, -0.0);
  ck_assert_uint_eq(budget.count, 0);
}
END_TEST

START_TEST(causes_combine_as_the_root_of_their_squares)
{
  struct oc_budget budget = oc_budget_of(100);
  oc_budget_add_normal(&budget, OC_CAUSE_METER, 3);
  oc_budget_add_normal(&budget, OC_CAUSE_LEADS, 4);
  oc_budget_add_limit(&budget, OC_CAUSE_REFERENCE_LIMIT, 12 * sqrt(3));
  CHECK_NEAR(oc_budget_u(&budget), 13, 4 * DBL_EPSILON * 13);
}
END_TEST

START_TEST(the_combined_u_does_not_depend_on_the_order)
{
  static const double u[4] = {1e-9, 0.7, 1e3, 12.5};
  struct oc_budget up = oc_budget_of(0);
  struct oc_budget down = oc_budget_of(0);
  for (int i = 0; i < 4; i++) {
    oc_budget_add_normal(&up, OC_CAUSE_METER, u[i]);
    oc_budget_add_normal(&down, OC_CAUSE_METER, u[3 - i]);
  }
  CHECK_NEAR(oc_budget_u(&up), oc_budget_u(&down), 4 * DBL_EPSILON * 1e3);
}
END_TEST

START_TEST(causes_so_large_or_small_that_squares_leave_the_doubles_combine)
{
  for (int i = 0; i < 2; i++) {
    double unit = i == 0 ? 1e300 : 1e-300;
    struct oc_budget budget = oc_budget_of(0);
    oc_budget_add_normal(&budget, OC_CAUSE_METER, 3 * unit);
    oc_budget_add_normal(&budget, OC_CAUSE_LEADS, 4 * unit);
    CHECK_NEAR(oc_budget_u(&budget) / unit, 5, 1e-14);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("estimate", a_value_without_causes_is_exact, a_normal_cause_is_kept_as_it_is,
                   a_limit_is_rectangular_with_u_of_limit_over_root_3, a_cause_of_0_is_left_out,
                   causes_combine_as_the_root_of_their_squares,
                   the_combined_u_does_not_depend_on_the_order,
                   causes_so_large_or_small_that_squares_leave_the_doubles_combine);
}
