/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/decision.h"

#include <float.h>
#include <stdlib.h>

#include "../convolution.h"
#include "../support.h"

/* ---- asking the library ---- */

static struct oc_spread spread_at(double value, const struct parts *parts) {
  struct oc_budget budget = oc_budget_of(value);
  oc_budget_add_normal(&budget, OC_CAUSE_METER, parts->sigma);
  for (int i = 0; i < parts->count; i++)
    oc_budget_add_limit(&budget, OC_CAUSE_METER, parts->half[i]);
  return oc_spread_of(&budget);
}

static double reach_of(const struct parts *parts) {
  double reach = 6 * parts->sigma;
  for (int i = 0; i < parts->count; i++)
    reach += parts->half[i];
  return reach;
}

static double worst_miss(const struct parts *parts, int steps) {
  struct oc_spread spread = spread_at(0, parts);
  double worst = 0;
  double reach = 1.05 * reach_of(parts);
  for (int i = -steps; i <= steps; i++) {
    double z = reach * i / steps;
    worst = fmax(worst, fabs(oc_spread_below(&spread, z) - convolution_below(parts, z)));
  }
  /* Around the edges, where narrow parts show. */
  long double at[CONVOLUTION_KINKS];
  int n = convolution_kinks(parts, parts->count, at);
  double least = parts->sigma > 0 ? parts->sigma : parts->half[parts->count - 1];
  for (int i = 0; i < n; i++)
    for (int j = -4; j <= 4; j++) {
      double z = (double)at[i] + 0.5 * j * least;
      worst = fmax(worst, fabs(oc_spread_below(&spread, z) - convolution_below(parts, z)));
    }
  return worst;
}

static void check_miss(const struct parts *parts, int steps, double most) {
  double worst = worst_miss(parts, steps);
  if (!(worst <= most))
    ck_abort_msg("sigma %g, %d rectangles %g %g %g %g: worst miss %.3g, not %.3g", parts->sigma,
                 parts->count, parts->half[0], parts->half[1], parts->half[2], parts->half[3],
                 worst, most);
}

/* ---- the distribution ---- */

START_TEST(a_normal_part_alone_is_the_normal_distribution)
{
  struct oc_spread spread = spread_at(5, &(struct parts){2, 0, {0}});
  for (double x = -13; x <= 25; x += 0.01)
    CHECK_NEAR(oc_spread_below(&spread, x), 0.5 * erfc((5 - x) / 2 / sqrt(2)), 1e-15);
}
END_TEST

START_TEST(one_rectangle_and_a_normal_part_sum_exactly)
{
  for (double ratio = 1e-12; ratio < 1e12; ratio *= 1.7)
    check_miss(&(struct parts){ratio, 1, {1}}, 40, 1e-10);
}
END_TEST

START_TEST(rectangles_alone_sum_exactly)
{
  check_miss(&(struct parts){0, 1, {3}}, 100, 1e-14);
  check_miss(&(struct parts){0, 2, {3, 3}}, 100, 1e-14);
  check_miss(&(struct parts){0, 3, {3, 2, 1}}, 50, 1e-13);
  check_miss(&(struct parts){0, 4, {3, 2, 1, 0.5}}, 10, 1e-12);
}
END_TEST

START_TEST(a_narrow_rectangle_on_a_wide_one_sums_exactly)
{
  for (double narrow = 1e-12; narrow <= 1; narrow *= 1.9)
    check_miss(&(struct parts){0, 2, {1, narrow}}, 40, 1e-9);
  for (double narrow = 1e-4; narrow <= 1; narrow *= 1.9)
    check_miss(&(struct parts){0, 2, {1, narrow}}, 40, 1e-11);
}
END_TEST

START_TEST(two_rectangles_and_a_normal_part_sum_exactly)
{
  for (double narrow = 1e-6; narrow <= 1; narrow *= 7)
    for (double sigma = 1e-8; sigma < 100; sigma *= 11)
      check_miss(&(struct parts){sigma, 2, {1, narrow}}, 8, 1e-9);
}
END_TEST

START_TEST(three_rectangles_and_a_normal_part_sum_exactly)
{
  check_miss(&(struct parts){0.02, 3, {1, 0.3, 0.1}}, 6, 1e-12);
  check_miss(&(struct parts){1, 3, {1, 0.3, 0.1}}, 6, 1e-12);
}
END_TEST

START_TEST(more_rectangles_than_four_keep_the_variance)
{
  struct oc_budget budget = oc_budget_of(0);
  static const double half[6] = {1, 5, 2, 4, 3, 0.5};
  for (int i = 0; i < 6; i++)
    oc_budget_add_limit(&budget, OC_CAUSE_METER, half[i]);
  struct oc_spread spread = oc_spread_of(&budget);
  ck_assert_uint_eq(spread.count, 4);
  double variance = spread.sigma * spread.sigma;
  for (int i = 0; i < 4; i++) {
    CHECK_NEAR(spread.half[i], 5 - i, 1e-14);
    variance += spread.half[i] * spread.half[i] / 3;
  }
  CHECK_NEAR(sqrt(variance), oc_budget_u(&budget), 1e-14);
}
END_TEST

START_TEST(the_distribution_does_not_jump_where_a_rectangle_becomes_a_normal_part)
{
  for (double half = 0.009; half < 0.012; half += 1e-5)
    for (double z = -3; z <= 3; z += 0.25) {
      struct oc_spread a = spread_at(0, &(struct parts){1, 1, {half}});
      struct oc_spread b = spread_at(0, &(struct parts){1, 1, {half + 1e-7}});
      CHECK_NEAR(oc_spread_below(&a, z), oc_spread_below(&b, z), 2e-9);
    }
}
END_TEST

/* Summed as rectangles, three a millionth as wide as a fourth lost every digit. */
START_TEST(narrow_rectangles_beside_a_wide_one_sum_to_3e_7)
{
  for (int count = 2; count <= OC_RECTANGLES_MAX; count++)
    for (double half = 1e-1; half > 1e-9; half /= 2) {
      struct parts parts = {0, count, {1, half, half, half}};
      struct oc_spread spread = spread_at(0, &parts);
      for (int i = -30; i <= 30; i++) {
        double at_edge = -1 + count * half * i / 30;
        CHECK_NEAR(oc_spread_below(&spread, at_edge), convolution_below(&parts, at_edge), 3e-7);
        CHECK_NEAR(oc_spread_below(&spread, i / 40.0), convolution_below(&parts, i / 40.0), 3e-7);
      }
    }
}
END_TEST

static const struct parts samples[] = {
    {1, 0, {0}},         {0, 1, {1}},           {0.3, 1, {1}},        {1e-5, 1, {1}},
    {0, 2, {1, 1}},      {0, 2, {400, 0.2}},    {0.01, 2, {2, 0.5}},  {5, 2, {3, 1}},
    {0, 3, {1, 1, 0.1}}, {0.2, 3, {1, 0.5, 1}}, {0, 4, {4, 3, 2, 1}},
};
enum { SAMPLES = sizeof samples / sizeof samples[0] };

START_TEST(the_distribution_is_symmetric)
{
  struct oc_spread spread = spread_at(0, &samples[_i]);
  double reach = reach_of(&samples[_i]);
  CHECK_NEAR(oc_spread_below(&spread, 0), 0.5, 1e-12);
  for (double z = reach / 300; z <= 1.5 * reach; z += reach / 300)
    CHECK_NEAR(oc_spread_below(&spread, z) + oc_spread_below(&spread, -z), 1, DBL_EPSILON);
}
END_TEST

START_TEST(the_distribution_never_falls_and_goes_from_0_to_1)
{
  struct oc_spread spread = spread_at(0, &samples[_i]);
  double reach = 1.5 * reach_of(&samples[_i]);
  double before = 0;
  for (int i = -1000; i <= 1000; i++) {
    double p = oc_spread_below(&spread, reach * i / 1000);
    ck_assert(0 <= p && p <= 1);
    ck_assert_msg(p >= before - 1e-12, "falls by %g", before - p);
    before = p;
  }
  CHECK_NEAR(oc_spread_below(&spread, -INFINITY), 0, 0);
  CHECK_NEAR(oc_spread_below(&spread, INFINITY), 1, 0);
}
END_TEST

START_TEST(the_unit_of_the_quantity_does_not_matter)
{
  static const double units[] = {1e-100, 1e-12, 1e-3, 1e6, 1e60};
  struct parts one = samples[_i];
  struct oc_spread spread = spread_at(0, &one);
  for (size_t u = 0; u < sizeof units / sizeof units[0]; u++) {
    struct parts scaled = one;
    scaled.sigma *= units[u];
    for (int i = 0; i < one.count; i++)
      scaled.half[i] *= units[u];
    struct oc_spread other = spread_at(0, &scaled);
    double reach = reach_of(&one);
    for (double z = -reach; z <= reach; z += reach / 50)
      CHECK_NEAR(oc_spread_below(&other, z * units[u]), oc_spread_below(&spread, z), 1e-11);
  }
}
END_TEST

/* ---- expanded uncertainty ---- */

START_TEST(a_normal_part_expands_at_95_percent_by_1_96)
{
  struct oc_spread spread = spread_at(7, &(struct parts){2, 0, {0}});
  CHECK_NEAR(oc_spread_expanded(&spread, 0.95), 2 * 1.9599639845400542, 1e-12);
}
END_TEST

START_TEST(a_rectangle_expands_to_its_share)
{
  struct oc_spread spread = spread_at(7, &(struct parts){0, 1, {4}});
  CHECK_NEAR(oc_spread_expanded(&spread, 0.95), 3.8, 1e-12);
  CHECK_NEAR(oc_spread_expanded(&spread, 0.5), 2, 1e-12);
}
END_TEST

START_TEST(a_triangle_expands_by_a_root)
{
  struct oc_spread spread = spread_at(0, &(struct parts){0, 2, {0.5, 0.5}});
  CHECK_NEAR(oc_spread_expanded(&spread, 0.95), 1 - sqrt(0.05), 1e-12);
}
END_TEST

START_TEST(an_exact_value_expands_to_nothing)
{
  struct oc_spread spread = spread_at(3, &(struct parts){0, 0, {0}});
  CHECK_NEAR(oc_spread_expanded(&spread, 0.95), 0, 0);
}
END_TEST

START_TEST(the_expanded_interval_holds_its_probability)
{
  struct oc_spread spread = spread_at(0, &samples[_i]);
  for (double p = 0.01; p < 1; p += 0.0099) {
    double half = oc_spread_expanded(&spread, p);
    CHECK_NEAR(oc_spread_below(&spread, half) - oc_spread_below(&spread, -half), p, 1e-11);
  }
}
END_TEST

/* ---- over an uncertain condition ---- */

/* Limits that fall or rise with the condition: intercept + slope (t - 20), or
 * intercept exp(slope (t - 20)). */
struct line {
  double low;
  double high;
  double slope;
  bool exponential;
};

static void limits_of(const void *context, double condition, double *low, double *high) {
  const struct line *line = context;
  double dt = condition - 20;
  *low = line->exponential ? line->low * exp(line->slope * dt) : line->low + line->slope * dt;
  *high = line->exponential ? line->high * exp(line->slope * dt) : line->high + line->slope * dt;
}

static void check_sum(const ohm_conformance *p) {
  ck_assert(0 <= p->p_low && p->p_low <= 1 && 0 <= p->p_high && p->p_high <= 1);
  ck_assert(0 <= p->p_within);
  CHECK_NEAR(p->p_low + p->p_within + p->p_high, 1, 4 * DBL_EPSILON);
}

/* Where limits are straight the condition is one more error of the quantity, so
 * that the whole answer is one sum of normal and rectangular parts. */
static void check_straight(const struct parts *quantity, const struct parts *condition,
                           double slope) {
  struct parts sum = *quantity;
  sum.sigma = hypot(quantity->sigma, slope * condition->sigma);
  for (int i = 0; i < condition->count; i++)
    sum.half[sum.count++] = fabs(slope) * condition->half[i];
  struct oc_spread at = spread_at(20, condition);
  double reach = reach_of(&sum);
  for (int i = -4; i <= 4; i++) {
    double value = 0.3 * reach * i;
    struct oc_spread spread = spread_at(value, quantity);
    struct line line = {-reach / 3, reach / 2, slope, false};
    ohm_conformance p = oc_conformance_over(&spread, &at, limits_of, &line, NULL, 0);
    check_sum(&p);
    double low = convolution_below(&sum, line.low - value);
    double high = convolution_below(&sum, value - line.high);
    if (!(fabs(p.p_low - low) <= 1e-9 && fabs(p.p_high - high) <= 1e-9))
      ck_abort_msg("quantity %g %g %g, condition %g %g, slope %g: low misses %.3g, high %.3g",
                   quantity->sigma, quantity->half[0], quantity->half[1], condition->sigma,
                   condition->half[0], slope, p.p_low - low, p.p_high - high);
  }
}

static const struct parts quantities[] = {
    {0, 0, {0}},    {1, 0, {0}},    {0, 1, {2}},       {1e-5, 1, {2}},
    {0.03, 1, {2}}, {0, 2, {2, 2}}, {0, 2, {2, 1e-3}}, {0.02, 2, {2, 0.3}},
};
static const struct parts conditions[] = {
    {0, 1, {2}}, {0.5, 0, {0}}, {1e-4, 1, {2}}, {1e-2, 1, {2}}, {0.5, 1, {2}},
};
enum {
  QUANTITIES = sizeof quantities / sizeof quantities[0],
  CONDITIONS = sizeof conditions / sizeof conditions[0]
};

START_TEST(straight_limits_make_the_condition_one_more_error)
{
  static const double slopes[] = {-1e-6, -1e-3, -0.1, -1, -30, -1e4, 0.5};
  const struct parts *quantity = &quantities[_i];
  for (int c = 0; c < CONDITIONS; c++)
    for (size_t s = 0; s < sizeof slopes / sizeof slopes[0]; s++)
      check_straight(quantity, &conditions[c], slopes[s]);
}
END_TEST

START_TEST(level_limits_make_the_condition_irrelevant)
{
  for (int c = 0; c < CONDITIONS; c++) {
    struct oc_spread at = spread_at(20, &conditions[c]);
    struct oc_spread spread = spread_at(10, &quantities[_i]);
    struct line line = {9, 11.5, 0, false};
    ohm_conformance p = oc_conformance_over(&spread, &at, limits_of, &line, NULL, 0);
    CHECK_NEAR(p.p_low, oc_spread_below(&spread, 9), 1e-11);
    CHECK_NEAR(p.p_high, 1 - oc_spread_below(&spread, 11.5), 1e-11);
  }
}
END_TEST

START_TEST(an_exact_quantity_under_curved_limits_is_a_share_of_the_condition)
{
  static const double slopes[] = {-1e-4, -0.04, -0.5, -5};
  struct oc_spread spread = spread_at(2450, &(struct parts){0, 0, {0}});
  for (size_t s = 0; s < sizeof slopes / sizeof slopes[0]; s++)
    for (int c = 0; c < CONDITIONS; c++) {
      struct oc_spread at = spread_at(20.3, &conditions[c]);
      struct line line = {2400, 2500, slopes[s], true};
      ohm_conformance p = oc_conformance_over(&spread, &at, limits_of, &line, NULL, 0);
      /* Too low at conditions colder than where the lower limit is met. */
      double low_at = 20 + log(2450 / line.low) / slopes[s];
      double high_at = 20 + log(2450 / line.high) / slopes[s];
      CHECK_NEAR(p.p_low, convolution_below(&conditions[c], low_at - 20.3), 1e-9);
      CHECK_NEAR(p.p_high, 1 - convolution_below(&conditions[c], high_at - 20.3), 1e-9);
    }
}
END_TEST

/* The same by midpoints of equal probability: rectangles alone, no cleverness. */
static void check_brute(double half, double condition_half, double slope) {
  enum { GRID = 200000 };
  struct line line = {2300, 2600, slope, true};
  double value = 2380;
  long double low = 0;
  long double high = 0;
  for (int i = 0; i < GRID; i++) {
    double least;
    double most;
    limits_of(&line, 20.2 + condition_half * ((2 * i + 1.0) / GRID - 1), &least, &most);
    low += (long double)fmin(fmax((least - value + half) / (2 * half), 0), 1);
    high += (long double)fmin(fmax((value + half - most) / (2 * half), 0), 1);
  }
  struct oc_spread spread = spread_at(value, &(struct parts){0, 1, {half}});
  struct oc_spread at = spread_at(20.2, &(struct parts){0, 1, {condition_half}});
  ohm_conformance p = oc_conformance_over(&spread, &at, limits_of, &line, NULL, 0);
  check_sum(&p);
  CHECK_NEAR(p.p_low, (double)(low / GRID), 1e-9);
  CHECK_NEAR(p.p_high, (double)(high / GRID), 1e-9);
}

START_TEST(curved_limits_agree_with_a_fine_grid)
{
  check_brute(30, 1, -0.04);
  check_brute(300, 0.5, -0.04);
  check_brute(30, 0.01, -0.04);
  check_brute(100, 2, -0.5);
}
END_TEST

static void bent_limits(const void *context, double condition, double *low, double *high) {
  (void)context;
  *low = condition < 20.5 ? 100 - (condition - 20.5) * 10 : 100 - (condition - 20.5);
  *high = INFINITY;
}

START_TEST(a_bend_in_the_limits_that_is_named_is_met)
{
  static const double bend[] = {20.5};
  /* Limit from 115 down to 99.5 over the condition: uniform on each side of 100. */
  struct oc_spread at = spread_at(20, &(struct parts){0, 1, {1}});
  struct oc_spread spread = spread_at(100, &(struct parts){0, 1, {20}});
  ohm_conformance p = oc_conformance_over(&spread, &at, bent_limits, NULL, bend, 1);
  double want = 0.75 * (0.5 + 7.5 / 40) + 0.25 * (0.5 - 0.25 / 40);
  CHECK_NEAR(p.p_low, want, 1e-11);
  CHECK_NEAR(p.p_high, 0, 0);
}
END_TEST

static void counting_limits(const void *context, double condition, double *low, double *high) {
  static const struct line line = {995, 1010, -3, false};
  long *const *asked = context;
  ++**asked;
  limits_of(&line, condition, low, high);
}

START_TEST(round_off_does_not_send_every_branch_to_full_depth)
{
  long count = 0;
  long *asked = &count;
  struct oc_spread at = spread_at(20, &(struct parts){1e-3, 1, {2}});
  for (double narrow = 1e-10; narrow < 1; narrow *= 3) {
    struct oc_spread spread = spread_at(1000, &(struct parts){0, 2, {5, narrow}});
    count = 0;
    oc_conformance_over(&spread, &at, counting_limits, &asked, NULL, 0);
    ck_assert_int_lt(count, 20000);
  }
}
END_TEST

/* ---- the public face ---- */

START_TEST(an_exact_value_on_a_limit_counts_half)
{
  ohm_conformance p;
  ck_assert_int_eq(ohm_conformance_of(5, 0, 0, 5, 9, &p), OHM_OK);
  CHECK_NEAR(p.p_low, 0.5, 0);
  CHECK_NEAR(p.p_within, 0.5, 0);
  CHECK_NEAR(p.p_high, 0, 0);
  ck_assert_int_eq(ohm_conformance_of(0.3, 0, 0, 0.1, 0.3, &p), OHM_OK);
  CHECK_NEAR(p.p_high, 0.5, 0);
  ck_assert_int_eq(ohm_conformance_of(5, 0, 0, 5, 5, &p), OHM_OK);
  CHECK_NEAR(p.p_low, 0.5, 0);
  CHECK_NEAR(p.p_high, 0.5, 0);
}
END_TEST

START_TEST(limits_of_no_end_are_never_missed)
{
  ohm_conformance p;
  ck_assert_int_eq(ohm_conformance_of(5, 1, 1, -INFINITY, INFINITY, &p), OHM_OK);
  CHECK_NEAR(p.p_low, 0, 0);
  CHECK_NEAR(p.p_within, 1, 0);
  CHECK_NEAR(p.p_high, 0, 0);
  ck_assert_int_eq(ohm_conformance_of(5, 1, 0, -INFINITY, 5, &p), OHM_OK);
  CHECK_NEAR(p.p_low, 0, 0);
  CHECK_NEAR(p.p_high, 0.5, 1e-16);
}
END_TEST

START_TEST(conformance_mirrors)
{
  for (double value = -3; value <= 3; value += 0.37) {
    ohm_conformance p;
    ohm_conformance q;
    ohm_conformance_of(value, 0.3, 0.8, -1, 2, &p);
    ohm_conformance_of(-value, 0.3, 0.8, -2, 1, &q);
    check_sum(&p);
    CHECK_NEAR(p.p_low, q.p_high, 1e-15);
    CHECK_NEAR(p.p_high, q.p_low, 1e-15);
  }
}
END_TEST

START_TEST(a_small_probability_keeps_its_digits)
{
  ohm_conformance p;
  ohm_conformance_of(0, 1, 0, -INFINITY, 6, &p);
  CHECK_NEAR(p.p_high, 0.5 * erfc(6 / sqrt(2)), 1e-22);
  ohm_conformance_of(0, 1, 0, -6, INFINITY, &p);
  CHECK_NEAR(p.p_low, 0.5 * erfc(6 / sqrt(2)), 1e-22);
}
END_TEST

START_TEST(arguments_that_are_no_measurement_are_refused)
{
  static const double bad[][5] = {
      {NAN, 1, 1, 0, 1},
      {INFINITY, 1, 1, 0, 1},
      {-INFINITY, 1, 1, 0, 1},
      {0, NAN, 1, 0, 1},
      {0, -1, 1, 0, 1},
      {0, INFINITY, 1, 0, 1},
      {0, 1, NAN, 0, 1},
      {0, 1, -1, 0, 1},
      {0, 1, INFINITY, 0, 1},
      {0, 1, 1, NAN, 1},
      {0, 1, 1, 0, NAN},
      {0, 1, 1, 2, 1},
      {0, 1, 1, INFINITY, INFINITY},
      {0, 1, 1, -INFINITY, -INFINITY},
  };
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    ohm_conformance p = {1, 1, 1};
    const double *b = bad[i];
    PROVOKES(ohm_conformance_of, OHM_BAD_ARGUMENT,
             ohm_conformance_of(b[0], b[1], b[2], b[3], b[4], &p));
    ck_assert(isnan(p.p_low) && isnan(p.p_within) && isnan(p.p_high));
  }
  PROVOKES(ohm_conformance_of, OHM_NULL_ARGUMENT, ohm_conformance_of(0, 1, 1, 0, 1, NULL));
}
END_TEST

START_TEST(every_special_number_gives_probabilities_or_nan)
{
  static const double special[] = {NAN,    INFINITY, -INFINITY, 0,        -0.0, DBL_TRUE_MIN,
                                   1e-300, 1e300,    DBL_MAX,   -DBL_MAX, -1,   1};
  enum { COUNT = sizeof special / sizeof special[0] };
  for (int i = 0; i < COUNT * COUNT * COUNT * COUNT * COUNT; i++) {
    double x[5];
    for (int j = 0, rest = i; j < 5; j++, rest /= COUNT)
      x[j] = special[rest % COUNT];
    ohm_conformance p;
    if (ohm_conformance_of(x[0], x[1], x[2], x[3], x[4], &p) == OHM_OK) {
      if (!(fabs(p.p_low + p.p_within + p.p_high - 1) <= 1e-15 && p.p_low >= 0 && p.p_within >= 0 &&
            p.p_high >= 0))
        ck_abort_msg("value %g, u %g, limit %g, low %g, high %g: %g %g %g", x[0], x[1], x[2], x[3],
                     x[4], p.p_low, p.p_within, p.p_high);
    } else
      ck_assert(isnan(p.p_low) && isnan(p.p_within) && isnan(p.p_high));
  }
}
END_TEST

START_TEST(errors_at_the_ends_of_the_doubles_are_shared_out_rightly)
{
  ohm_conformance p;
  ohm_conformance_of(0, 0, DBL_MAX, -1, 1, &p);
  CHECK_NEAR(p.p_low, 0.5, 1e-12);
  CHECK_NEAR(p.p_high, 0.5, 1e-12);
  ohm_conformance_of(0, DBL_MAX, 0, -1, 1, &p);
  CHECK_NEAR(p.p_low, 0.5, 1e-12);
  CHECK_NEAR(p.p_high, 0.5, 1e-12);
  ohm_conformance_of(0, 1e-300, 1e-300, -1e-300, INFINITY, &p);
  double smallest = p.p_low;
  ohm_conformance_of(0, 1, 1, -1, INFINITY, &p);
  CHECK_NEAR(smallest, p.p_low, 1e-12);
}
END_TEST

int main(void) {
  convolution_begin();
  int one = RUN_TESTS(
      "decision", a_normal_part_alone_is_the_normal_distribution,
      one_rectangle_and_a_normal_part_sum_exactly, rectangles_alone_sum_exactly,
      a_narrow_rectangle_on_a_wide_one_sums_exactly, two_rectangles_and_a_normal_part_sum_exactly,
      three_rectangles_and_a_normal_part_sum_exactly, more_rectangles_than_four_keep_the_variance,
      the_distribution_does_not_jump_where_a_rectangle_becomes_a_normal_part,
      narrow_rectangles_beside_a_wide_one_sum_to_3e_7, a_normal_part_expands_at_95_percent_by_1_96,
      a_rectangle_expands_to_its_share, a_triangle_expands_by_a_root,
      an_exact_value_expands_to_nothing,
      an_exact_quantity_under_curved_limits_is_a_share_of_the_condition,
      curved_limits_agree_with_a_fine_grid, a_bend_in_the_limits_that_is_named_is_met,
      round_off_does_not_send_every_branch_to_full_depth, an_exact_value_on_a_limit_counts_half,
      limits_of_no_end_are_never_missed, conformance_mirrors, a_small_probability_keeps_its_digits,
      arguments_that_are_no_measurement_are_refused,
      every_special_number_gives_probabilities_or_nan,
      errors_at_the_ends_of_the_doubles_are_shared_out_rightly);
  int spreads = RUN_TESTS_FOR_EACH("decision, each spread", SAMPLES, the_distribution_is_symmetric,
                                   the_distribution_never_falls_and_goes_from_0_to_1,
                                   the_unit_of_the_quantity_does_not_matter,
                                   the_expanded_interval_holds_its_probability);
  int over = RUN_TESTS_FOR_EACH("decision, each quantity", QUANTITIES,
                                straight_limits_make_the_condition_one_more_error,
                                level_limits_make_the_condition_irrelevant);
  return one == EXIT_SUCCESS && spreads == EXIT_SUCCESS && over == EXIT_SUCCESS ? EXIT_SUCCESS
                                                                                : EXIT_FAILURE;
}
