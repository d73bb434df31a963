/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/model/lag.h"

static const double at_stop_h[1] = {0};
static const double air_c[1] = {10};

static struct oc_lag lag;

static void begin(double start_c, double start_limit_k) {
  lag = (struct oc_lag){
      .air = {1, at_stop_h, air_c}, .start = {start_c, start_limit_k}, .to_h = 5, .tau = {1, 4}};
}

static struct oc_budget shown(double t_c, double limit_k, int causes) {
  struct oc_budget budget = oc_budget_of(t_c);
  for (int i = 0; i < causes; i++)
    oc_budget_add_limit(&budget, (enum oc_cause_name)i, limit_k);
  return budget;
}

/* Round-off of narrow errors beside a wide one once sent the mean to its full depth. */
START_TEST(narrow_errors_beside_a_wide_start_neither_matter_nor_take_long)
{
  begin(90, 100);
  struct oc_budget exact = oc_budget_of(20);
  double alone_k = oc_off_quantile(&lag, &exact, 0.975);
  for (double limit_k = 1e-3; limit_k > 1e-9; limit_k /= 10) {
    struct oc_budget narrow = shown(20, limit_k, 3);
    CHECK_NEAR(oc_off_quantile(&lag, &narrow, 0.975), alone_k, 2 * limit_k + 1e-4);
  }
}
END_TEST

START_TEST(the_quantiles_hold_their_probability_and_rise)
{
  begin(90, 8);
  struct oc_budget budget = shown(20, 0.5, 2);
  double before_k = -INFINITY;
  for (double p = 0.01; p < 1; p += 0.049) {
    double at_k = oc_off_quantile(&lag, &budget, p);
    ck_assert_double_gt(at_k, before_k);
    before_k = at_k;
  }
}
END_TEST

START_TEST(a_start_at_the_air_stays_there)
{
  begin(10, 0);
  struct oc_budget exact = oc_budget_of(12);
  struct oc_off_summary off = oc_off_summary_of(&lag, &exact);
  CHECK_NEAR(off.mean_k, 2, 1e-9);
  CHECK_NEAR(off.u_k, 0, 1e-6);
}
END_TEST

int main(void) {
  return RUN_TESTS("lag", narrow_errors_beside_a_wide_start_neither_matter_nor_take_long,
                   the_quantiles_hold_their_probability_and_rise, a_start_at_the_air_stays_there);
}
