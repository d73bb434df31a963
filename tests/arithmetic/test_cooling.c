/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/cooling.h"

static double cooled(double start_c, double air_c, double tau_h, double after_h) {
  double t_c = NAN;
  PROVOKES(ohm_cooling_temperature, OHM_OK,
           ohm_cooling_temperature(start_c, air_c, tau_h, after_h, &t_c));
  return t_c;
}

/* ---- in air that never changes ---- */

START_TEST(after_one_time_constant_37_percent_of_the_difference_are_left)
{
  CHECK_NEAR(cooled(90, 10, 2, 2), 10 + 80 * 0.36787944117144233, 1e-12);
  CHECK_NEAR(cooled(90, 10, 2, 0), 90, 0);
  CHECK_NEAR(cooled(-20, 10, 2, 2), 10 - 30 * 0.36787944117144233, 1e-12);
}
END_TEST

START_TEST(hours_and_time_constant_are_the_inverses)
{
  for (double tau_h = 0.2; tau_h < 50; tau_h *= 1.7)
    for (double share = 0.05; share < 3; share *= 2) {
      double t_c = cooled(90, -5, tau_h, share * tau_h);
      double got;
      PROVOKES(ohm_cooling_hours, OHM_OK, ohm_cooling_hours(90, -5, tau_h, t_c, &got));
      CHECK_NEAR(got, share * tau_h, 1e-10 * tau_h);
      PROVOKES(ohm_cooling_tau, OHM_OK, ohm_cooling_tau(90, -5, t_c, share * tau_h, &got));
      CHECK_NEAR(got, tau_h, 1e-9 * tau_h);
    }
}
END_TEST

START_TEST(what_cools_only_ever_falls_and_stays_above_the_air)
{
  double before_c = 90;
  for (double after_h = 0.5; after_h < 100; after_h += 0.5) {
    double t_c = cooled(90, 9, 3, after_h);
    ck_assert(t_c <= before_c && t_c >= 9);
    before_c = t_c;
  }
}
END_TEST

START_TEST(a_temperature_it_never_has_has_no_hours)
{
  double got = 0;
  PROVOKES(ohm_cooling_hours, OHM_OUT_OF_RANGE, ohm_cooling_hours(90, 10, 2, 10, &got));
  ck_assert(isnan(got));
  ck_assert_int_eq(ohm_cooling_hours(90, 10, 2, 95, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_hours(90, 10, 2, 90, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_hours(90, 90, 2, 90, &got), OHM_OUT_OF_RANGE);
  PROVOKES(ohm_cooling_tau, OHM_OUT_OF_RANGE, ohm_cooling_tau(90, 10, 5, 2, &got));
  ck_assert(isnan(got));
}
END_TEST

START_TEST(every_special_double_is_refused_at_every_argument)
{
  static const double special[] = {NAN, INFINITY, -INFINITY};
  for (int at = 0; at < 4; at++)
    for (size_t i = 0; i < sizeof special / sizeof special[0]; i++) {
      double x[] = {90, 10, 2, 50};
      double got = 0;
      x[at] = special[i];
      PROVOKES(ohm_cooling_temperature, OHM_BAD_ARGUMENT,
               ohm_cooling_temperature(x[0], x[1], x[2], x[3], &got));
      ck_assert(isnan(got));
      PROVOKES(ohm_cooling_hours, OHM_BAD_ARGUMENT,
               ohm_cooling_hours(x[0], x[1], x[2], x[3], &got));
      ck_assert(isnan(got));
      PROVOKES(ohm_cooling_tau, OHM_BAD_ARGUMENT, ohm_cooling_tau(x[0], x[1], x[3], x[2], &got));
      ck_assert(isnan(got));
    }
}
END_TEST

START_TEST(what_lies_outside_its_range_is_refused)
{
  double got;
  PROVOKES(ohm_cooling_temperature, OHM_OUT_OF_RANGE, ohm_cooling_temperature(90, 10, 0, 2, &got));
  ck_assert_int_eq(ohm_cooling_temperature(90, 10, -1, 2, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_temperature(90, 10, 1001, 2, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_temperature(90, 10, 1, -2, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_temperature(1001, 10, 1, 2, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_temperature(90, -273.15, 1, 2, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_hours(90, 10, 0, 50, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_tau(90, 10, 50, 0, &got), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_cooling_tau(90, 10, 1001, 1, &got), OHM_OUT_OF_RANGE);
  PROVOKES(ohm_cooling_temperature, OHM_NULL_ARGUMENT, ohm_cooling_temperature(90, 10, 1, 2, NULL));
  PROVOKES(ohm_cooling_hours, OHM_NULL_ARGUMENT, ohm_cooling_hours(90, 10, 1, 50, NULL));
  PROVOKES(ohm_cooling_tau, OHM_NULL_ARGUMENT, ohm_cooling_tau(90, 10, 50, 1, NULL));
}
END_TEST

/* ---- along air that changes ---- */

static const double at_h[] = {0, 1, 1.25, 4, 9, 9.001, 14};
static const double at_c[] = {22, 18, 25, 9, -3, 4, 4};
static const struct oc_air changing = {7, at_h, at_c};

/* Gauss-Legendre with 10 points on 64 parts of every span, in long double: points and
 * weights of Abramowitz and Stegun, table 25.4. */
static double by_quadrature(const struct oc_air *air, double start_c, double from_h, double to_h,
                            double tau_h) {
  static const long double x[] = {0.148874338981631210885L, 0.433395394129247190799L,
                                  0.679409568299024406234L, 0.865063366688984510732L,
                                  0.973906528517171720078L};
  static const long double w[] = {0.295524224714752870174L, 0.269266719309996355091L,
                                  0.219086362515982043996L, 0.149451349150580593146L,
                                  0.066671344308688137594L};
  enum { PARTS = 64 };
  long double sum = start_c * expl(-((long double)to_h - from_h) / tau_h);
  double a_h = from_h;
  for (size_t i = 0; i <= air->count; i++) {
    double b_h = i < air->count ? fmin(fmax(air->after_h[i], from_h), to_h) : to_h;
    for (int part = 0; part < PARTS && b_h > a_h; part++) {
      long double half = ((long double)b_h - a_h) / PARTS / 2;
      long double middle = a_h + (2 * part + 1) * half;
      for (int k = 0; k < 10; k++) {
        long double s = middle + (k % 2 ? -half : half) * x[k / 2];
        sum += half * w[k / 2] * oc_air_at(air, (double)s) * expl(-(to_h - s) / tau_h) / tau_h;
      }
    }
    a_h = fmax(a_h, b_h);
  }
  return (double)sum;
}

START_TEST(the_exact_integral_is_that_of_a_quadrature)
{
  for (double tau_h = 0.05; tau_h < 200; tau_h *= 1.37)
    for (double from_h = 0; from_h < 3; from_h += 0.7)
      for (double to_h = from_h; to_h < 16; to_h += 1.3) {
        struct oc_cooled got = oc_cooling_follow(&changing, 88, from_h, to_h, tau_h);
        CHECK_NEAR(got.t_c, by_quadrature(&changing, 88, from_h, to_h, tau_h), 1e-9);
        CHECK_NEAR(got.start_share, exp(-(to_h - from_h) / tau_h), 1e-12);
      }
}
END_TEST

START_TEST(air_is_straight_between_points_and_held_beyond)
{
  CHECK_NEAR(oc_air_at(&changing, -5), 22, 0);
  CHECK_NEAR(oc_air_at(&changing, 0.5), 20, 1e-12);
  CHECK_NEAR(oc_air_at(&changing, 4), 9, 1e-12);
  CHECK_NEAR(oc_air_at(&changing, 6.5), 3, 1e-12);
  CHECK_NEAR(oc_air_at(&changing, 99), 4, 0);
}
END_TEST

START_TEST(air_cut_in_pieces_is_the_same_air)
{
  double half_h[27], half_c[27];
  size_t count = 0;
  for (size_t i = 0; i < 7; i++) {
    half_h[count] = at_h[i];
    half_c[count++] = at_c[i];
    if (i == 6)
      break;
    for (int k = 1; k < 4; k++) {
      half_h[count] = at_h[i] + (at_h[i + 1] - at_h[i]) * k / 4;
      half_c[count] = at_c[i] + (at_c[i + 1] - at_c[i]) * k / 4;
      count++;
    }
  }
  struct oc_air pieces = {count, half_h, half_c};
  for (double tau_h = 0.1; tau_h < 50; tau_h *= 2)
    CHECK_NEAR(oc_cooling_follow(&pieces, 90, 0.3, 13, tau_h).t_c,
               oc_cooling_follow(&changing, 90, 0.3, 13, tau_h).t_c, 1e-11);
}
END_TEST

START_TEST(an_error_common_to_the_air_moves_it_by_all_but_the_share_of_the_start)
{
  double moved_c[7];
  for (size_t i = 0; i < 7; i++)
    moved_c[i] = at_c[i] + 1;
  struct oc_air moved = {7, at_h, moved_c};
  struct oc_cooled was = oc_cooling_follow(&changing, 90, 0, 12, 3);
  CHECK_NEAR(oc_cooling_follow(&moved, 90, 0, 12, 3).t_c - was.t_c, 1 - was.start_share, 1e-12);
  CHECK_NEAR(oc_cooling_follow(&changing, 91, 0, 12, 3).t_c - was.t_c, was.start_share, 1e-12);
}
END_TEST

START_TEST(noise_of_the_points_adds_by_squares)
{
  for (double to_h = 9; to_h <= 17; to_h += 4) {
    double squares = 0;
    struct oc_cooled was = oc_cooling_follow(&changing, 90, 0, to_h, 3);
    for (size_t i = 0; i < 7 && (at_h[i] <= to_h || to_h > 14); i++) {
      double moved_c[7];
      for (size_t k = 0; k < 7; k++)
        moved_c[k] = at_c[k] + (k == i);
      struct oc_air moved = {7, at_h, moved_c};
      squares += pow(oc_cooling_follow(&moved, 90, 0, to_h, 3).t_c - was.t_c, 2);
    }
    /* A soak that ends between two points counts its end as one of its own. */
    CHECK_NEAR(was.noise_share, sqrt(squares), to_h == 13 ? 0.2 : 1e-12);
  }
}
END_TEST

/* ---- over the time constant ---- */

static void powers(const void *context, double tau_h, double *values) {
  (void)context;
  values[0] = tau_h;
  values[1] = exp(-7 / tau_h);
  values[2] = tau_h < 1.7;
}

START_TEST(a_mean_over_the_time_constant_is_the_integral)
{
  double got[OC_MEANS_MAX];
  oc_cooling_mean(1, 4, powers, NULL, 3, got);
  CHECK_NEAR(got[0], 2.5, 1e-12);
  /* 40 digits, by an independent quadrature */
  CHECK_NEAR(got[1], 0.069523823908342270, 1e-7);
  CHECK_NEAR(got[2], 0.7 / 3, 1e-6);
  oc_cooling_mean(2, 2, powers, NULL, 3, got);
  CHECK_NEAR(got[1], exp(-3.5), 0);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "cooling", after_one_time_constant_37_percent_of_the_difference_are_left,
      hours_and_time_constant_are_the_inverses, what_cools_only_ever_falls_and_stays_above_the_air,
      a_temperature_it_never_has_has_no_hours, every_special_double_is_refused_at_every_argument,
      what_lies_outside_its_range_is_refused, the_exact_integral_is_that_of_a_quadrature,
      air_is_straight_between_points_and_held_beyond, air_cut_in_pieces_is_the_same_air,
      an_error_common_to_the_air_moves_it_by_all_but_the_share_of_the_start,
      noise_of_the_points_adds_by_squares, a_mean_over_the_time_constant_is_the_integral);
}
