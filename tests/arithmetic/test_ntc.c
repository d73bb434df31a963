/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/ntc.h"

#include <float.h>
#include <stdlib.h>

#include "../support.h"

/* What the limiter promises: inside a piece the slope never falls under this part of
 * the least chord of it and its neighbours. */
static const double SLOPE_LEAST = 0.2499;

/* ---- one piece ---- */

START_TEST(a_knot_holds_its_point_and_both_coordinates)
{
  struct oc_ntc_knot knot = oc_ntc_knot_at(25, 10000);
  CHECK_NEAR(knot.t_c, 25, 0);
  CHECK_NEAR(knot.r_ohm, 10000, 0);
  CHECK_NEAR(knot.ln_r, log(10000), 0);
  CHECK_NEAR(knot.y * 298.15, 1, DBL_EPSILON);
}
END_TEST

START_TEST(a_piece_is_its_cubic_about_the_origin)
{
  struct oc_ntc_piece piece = {2, {1, 3, -0.5, 0.25}};
  CHECK_NEAR(oc_ntc_piece_y(&piece, 2), 1, 0);
  CHECK_NEAR(oc_ntc_piece_slope(&piece, 2), 3, 0);
  CHECK_NEAR(oc_ntc_piece_y(&piece, 6), 1 + 12 - 8 + 16, 0);
  CHECK_NEAR(oc_ntc_piece_slope(&piece, 6), 3 - 4 + 12, 0);
}
END_TEST

START_TEST(solving_a_piece_comes_back_to_round_off)
{
  static const struct oc_ntc_piece pieces[] = {
      {9.2, {1 / 298.15, 1 / 3950.0, 0, 0}},
      {0, {1.129241e-3, 2.341077e-4, 0, 8.775468e-8}},
      {3, {1, 1, 0.4, 0.1}},
      {0, {0, 0, 0, 1}},
      {0, {0, 1e-6, 0, 1}},
      {-600, {5, 1e3, 0, 0}},
  };
  for (size_t p = 0; p < sizeof pieces / sizeof pieces[0]; p++)
    for (double x = -20; x <= 20; x += 0.0371) {
      double y = oc_ntc_piece_y(&pieces[p], x);
      double got = oc_ntc_piece_solve(&pieces[p], -25, 25, y);
      double slope = oc_ntc_piece_slope(&pieces[p], x);
      double d = fabs(x - pieces[p].origin);
      const double *c = pieces[p].c;
      double terms = fabs(c[0]) + d * (fabs(c[1]) + d * (fabs(c[2]) + d * fabs(c[3])));
      CHECK_NEAR(got, x, 8 * DBL_EPSILON * (fabs(x) + 1 + terms / slope));
    }
}
END_TEST

START_TEST(solving_stays_between_the_ends)
{
  struct oc_ntc_piece piece = {0, {0, 1, 0, 1}};
  for (double y = -20; y <= 20; y += 0.1) {
    double x = oc_ntc_piece_solve(&piece, -2, 2, y);
    ck_assert(-2 <= x && x <= 2);
  }
}
END_TEST

static void check_turn(struct oc_ntc_piece piece, double from, double to, double turn) {
  double got = NAN;
  ck_assert(!oc_ntc_piece_rises(&piece, from, to, &got));
  CHECK_NEAR(got, turn, 1e-12);
}

START_TEST(a_piece_that_turns_is_told_with_its_first_turn)
{
  /* slope (d - 1) (d - 3) = 3 - 4 d + d^2 */
  struct oc_ntc_piece two = {10, {0, 3, -2, 1.0 / 3}};
  double turn;
  ck_assert(oc_ntc_piece_rises(&two, 9, 10.9, &turn));
  check_turn(two, 9, 20, 11);
  check_turn(two, 11.5, 20, 13);
  ck_assert(oc_ntc_piece_rises(&two, 13.1, 20, &turn));
  /* slope 1 - d */
  struct oc_ntc_piece parabola = {0, {0, 1, -0.5, 0}};
  ck_assert(oc_ntc_piece_rises(&parabola, -5, 0.99, &turn));
  check_turn(parabola, -5, 5, 1);
  struct oc_ntc_piece falling = {0, {0, -1, 0, 0}};
  check_turn(falling, 0, 1, 0);
}
END_TEST

START_TEST(a_line_and_a_cubic_without_turn_rise)
{
  double turn;
  ck_assert(oc_ntc_piece_rises(&(struct oc_ntc_piece){0, {0, 1, 0, 0}}, -9, 9, &turn));
  ck_assert(oc_ntc_piece_rises(&(struct oc_ntc_piece){0, {0, 1, 0.5, 1}}, -9, 9, &turn));
}
END_TEST

/* ---- pieces through knots ---- */

enum { KNOTS_MAX = 40 };
static struct oc_ntc_knot knots[KNOTS_MAX];
static struct oc_ntc_piece pieces[KNOTS_MAX];

/* Knots in rising resistance from steps of ln R and chord slopes. */
static struct oc_ntc join(const double *steps, const double *chords, size_t count) {
  double ln_r = 3;
  double y = 1 / 400.0;
  for (size_t i = 0; i <= count; i++) {
    knots[i] = oc_ntc_knot_at(oc_celsius(1 / y), exp(ln_r));
    if (i < count) {
      ln_r += steps[i];
      y += steps[i] * chords[i];
    }
  }
  struct oc_ntc ntc = {count, knots, pieces, false};
  oc_ntc_join(&ntc);
  return ntc;
}

static double chord_of(const struct oc_ntc *ntc, size_t i) {
  return (ntc->knots[i + 1].y - ntc->knots[i].y) / (ntc->knots[i + 1].ln_r - ntc->knots[i].ln_r);
}

static double least_chord(const struct oc_ntc *ntc, size_t i) {
  double before = chord_of(ntc, i > 0 ? i - 1 : i);
  double after = chord_of(ntc, i + 1 < ntc->count ? i + 1 : i);
  return fmin(fmin(before, after), chord_of(ntc, i));
}

static void check_joined(const struct oc_ntc *ntc) {
  for (size_t i = 0; i < ntc->count; i++) {
    const struct oc_ntc_piece *piece = &ntc->pieces[i];
    double from = ntc->knots[i].ln_r;
    double to = ntc->knots[i + 1].ln_r;
    double turn;
    ck_assert(oc_ntc_piece_rises(piece, from, to, &turn));
    CHECK_NEAR(oc_ntc_piece_y(piece, from), ntc->knots[i].y, 0);
    CHECK_NEAR(oc_ntc_piece_y(piece, to), ntc->knots[i + 1].y, 1e-14 * ntc->knots[i + 1].y);
    double chord = least_chord(ntc, i);
    double least = chord_of(ntc, i);
    for (int k = 0; k <= 50; k++)
      least = fmin(least, oc_ntc_piece_slope(piece, from + (to - from) * k / 50));
    ck_assert_msg(least >= SLOPE_LEAST * chord, "slope falls to %g of a chord", least / chord);
    if (i > 0)
      CHECK_NEAR(oc_ntc_piece_slope(piece, from) / oc_ntc_piece_slope(&ntc->pieces[i - 1], from), 1,
                 1e-9);
  }
}

START_TEST(pieces_meet_in_value_and_slope_and_rise)
{
  static const double steps[] = {0.5, 0.4, 0.7, 0.6, 0.5};
  static const double chords[] = {3e-4, 2.8e-4, 2.6e-4, 2.5e-4, 2.3e-4};
  struct oc_ntc ntc = join(steps, chords, 5);
  check_joined(&ntc);
}
END_TEST

START_TEST(abrupt_changes_of_slope_stay_rising_with_a_floor)
{
  unsigned seed = 12345;
  for (int trial = 0; trial < 2000; trial++) {
    double steps[12];
    double chords[12];
    for (int i = 0; i < 12; i++) {
      seed = seed * 1664525u + 1013904223u;
      steps[i] = 0.01 * pow(10, 2.0 * (seed >> 8) / (1 << 24));
      seed = seed * 1664525u + 1013904223u;
      chords[i] = 1e-5 * pow(10, 2.0 * (seed >> 8) / (1 << 24));
    }
    struct oc_ntc ntc = join(steps, chords, 12);
    check_joined(&ntc);
  }
}
END_TEST

START_TEST(an_even_parabola_is_met_exactly)
{
  /* y of the second degree in ln R: three-point slopes are its own slopes. */
  size_t count = 8;
  for (size_t i = 0; i <= count; i++) {
    double x = 3 + 0.5 * (double)i + 0.05 * (double)(i * i);
    double y = 2e-3 + 3e-4 * x - 4e-6 * x * x;
    knots[i] = (struct oc_ntc_knot){exp(x), oc_celsius(1 / y), x, y};
  }
  struct oc_ntc ntc = {count, knots, pieces, false};
  oc_ntc_join(&ntc);
  for (size_t i = 0; i < count; i++)
    for (int k = 0; k <= 10; k++) {
      double x = knots[i].ln_r + (knots[i + 1].ln_r - knots[i].ln_r) * k / 10;
      CHECK_NEAR(oc_ntc_piece_y(&pieces[i], x), 2e-3 + 3e-4 * x - 4e-6 * x * x, 1e-17);
    }
}
END_TEST

START_TEST(two_knots_are_a_straight_line)
{
  double step = 1.7;
  double chord = 2.5e-4;
  struct oc_ntc ntc = join(&step, &chord, 1);
  CHECK_NEAR(ntc.pieces[0].c[2], 0, 1e-18);
  CHECK_NEAR(ntc.pieces[0].c[3], 0, 1e-18);
}
END_TEST

START_TEST(every_knot_converts_to_itself)
{
  static const double steps[] = {0.5, 0.01, 0.7, 0.06, 0.5};
  static const double chords[] = {3e-4, 8e-4, 1e-4, 2.5e-4, 2.3e-4};
  struct oc_ntc ntc = join(steps, chords, 5);
  for (size_t i = 0; i <= ntc.count; i++) {
    CHECK_NEAR(oc_ntc_temperature_c(&ntc, knots[i].r_ohm), knots[i].t_c, 0);
    CHECK_NEAR(oc_ntc_resistance_ohm(&ntc, knots[i].t_c), knots[i].r_ohm, 0);
    double alpha = oc_ntc_alpha_per_k(&ntc, knots[i].t_c);
    ck_assert(isfinite(alpha) && alpha < 0);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("ntc", a_knot_holds_its_point_and_both_coordinates,
                   a_piece_is_its_cubic_about_the_origin, solving_a_piece_comes_back_to_round_off,
                   solving_stays_between_the_ends, a_piece_that_turns_is_told_with_its_first_turn,
                   a_line_and_a_cubic_without_turn_rise, pieces_meet_in_value_and_slope_and_rise,
                   abrupt_changes_of_slope_stay_rising_with_a_floor,
                   an_even_parabola_is_met_exactly, two_knots_are_a_straight_line,
                   every_knot_converts_to_itself);
}
