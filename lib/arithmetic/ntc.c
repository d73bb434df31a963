/* SPDX-License-Identifier: MIT */
#include "ntc.h"

#include <float.h>

struct oc_ntc_knot oc_ntc_knot_at(double t_c, double r_ohm) {
  return (struct oc_ntc_knot){r_ohm, t_c, log(r_ohm), 1 / oc_kelvin(t_c)};
}

/* ---- one piece ---- */

double oc_ntc_piece_y(const struct oc_ntc_piece *piece, double ln_r) {
  double d = ln_r - piece->origin;
  const double *c = piece->c;
  return c[0] + d * (c[1] + d * (c[2] + d * c[3]));
}

double oc_ntc_piece_slope(const struct oc_ntc_piece *piece, double ln_r) {
  double d = ln_r - piece->origin;
  const double *c = piece->c;
  return c[1] + d * (2 * c[2] + d * 3 * c[3]);
}

double oc_ntc_piece_solve(const struct oc_ntc_piece *piece, double from, double to, double y) {
  double low = from;
  double high = to;
  double x = low + (high - low) / 2;
  /* Newton closes in about six steps; where a step leaves the bracket it is halved
   * instead, so that at most one bit a step is certain. */
  for (int step = 0; step < 100; step++) {
    double miss = oc_ntc_piece_y(piece, x) - y;
    if (miss == 0)
      return x;
    if (miss < 0)
      low = x;
    else
      high = x;
    double next = x - miss / oc_ntc_piece_slope(piece, x);
    if (!(low < next && next < high))
      next = low + (high - low) / 2;
    if (fabs(next - x) <= DBL_EPSILON / 2 * fabs(x) || next == low || next == high)
      return next;
    x = next;
  }
  return x;
}

/* Each term of the slope meets at most seven roundings, those of d among them, of half a
 * DBL_EPSILON each. */
static double slope_round_off(const struct oc_ntc_piece *piece, double ln_r) {
  double d = fabs(ln_r - piece->origin);
  const double *c = piece->c;
  return 4 * DBL_EPSILON * (fabs(c[1]) + d * (2 * fabs(c[2]) + d * 3 * fabs(c[3])));
}

static bool rises_at(const struct oc_ntc_piece *piece, double ln_r) {
  return oc_ntc_piece_slope(piece, ln_r) > slope_round_off(piece, ln_r);
}

bool oc_ntc_piece_rises(const struct oc_ntc_piece *piece, double from, double to,
                        double *turn_ln_r) {
  /* The slope is a parabola: c1 + 2 c2 d + 3 c3 d^2. It is least at an end or, where it
   * opens upwards, at its vertex. */
  double a = 3 * piece->c[3];
  double half_b = piece->c[2];
  double c = piece->c[1];
  const double places[3] = {from, piece->origin - half_b / a, to};
  *turn_ln_r = INFINITY;
  for (int i = 0; i < 3 && isinf(*turn_ln_r); i++)
    if (oc_inside(from, places[i], to) && !rises_at(piece, places[i]))
      *turn_ln_r = places[i];
  if (isinf(*turn_ln_r))
    return true;
  double d_from = from - piece->origin;
  double d_to = to - piece->origin;
  double discriminant = half_b * half_b - a * c;
  double first = INFINITY;
  if (discriminant >= 0 && (a != 0 || half_b != 0)) {
    double q = -(half_b + copysign(sqrt(discriminant), half_b));
    double roots[2] = {a != 0 ? q / a : INFINITY, q != 0 ? c / q : INFINITY};
    for (int i = 0; i < 2; i++)
      if (oc_inside(d_from, roots[i], d_to) && roots[i] < first)
        first = roots[i];
  }
  if (!isinf(first))
    *turn_ln_r = piece->origin + first;
  return false;
}

/* ---- pieces through knots ---- */

/* A piece with end slopes m0 and m1 and chord slope s rises steadily when both lie
 * between 0 and 3 s (Fritsch and Carlson). Keeping away from those ends by these
 * factors keeps the slope inside a piece at a quarter of the least chord of it and its
 * neighbours or above, hence alpha finite. */
static const double SLOPE_FLOOR = 0.25;
static const double SLOPE_CEILING = 2.5;

static double chord(const struct oc_ntc_knot *a, const struct oc_ntc_knot *b) {
  return (b->y - a->y) / (b->ln_r - a->ln_r);
}

static double limited(double slope, double least_chord) {
  return fmin(fmax(slope, SLOPE_FLOOR * least_chord), SLOPE_CEILING * least_chord);
}

/* Slope at knot i of the parabola through it and its neighbours; at an end, through
 * the end and its two. */
static double slope_at(const struct oc_ntc_knot *knots, size_t last, size_t i) {
  if (last == 1)
    return chord(&knots[0], &knots[1]);
  size_t left = i == 0 ? 0 : i == last ? last - 2 : i - 1;
  double s0 = chord(&knots[left], &knots[left + 1]);
  double s1 = chord(&knots[left + 1], &knots[left + 2]);
  double h0 = knots[left + 1].ln_r - knots[left].ln_r;
  double h1 = knots[left + 2].ln_r - knots[left + 1].ln_r;
  double bend = (s1 - s0) / (h0 + h1);
  if (i == 0)
    return limited(s0 - bend * h0, s0);
  if (i == last)
    return limited(s1 + bend * h1, s1);
  return limited(s0 + bend * h0, fmin(s0, s1));
}

void oc_ntc_join(struct oc_ntc *ntc) {
  const struct oc_ntc_knot *knots = ntc->knots;
  for (size_t i = 0; i < ntc->count; i++) {
    double h = knots[i + 1].ln_r - knots[i].ln_r;
    double s = chord(&knots[i], &knots[i + 1]);
    double m0 = slope_at(knots, ntc->count, i);
    double m1 = slope_at(knots, ntc->count, i + 1);
    ntc->pieces[i] = (struct oc_ntc_piece){
        knots[i].ln_r, {knots[i].y, m0, (3 * s - 2 * m0 - m1) / h, (m0 + m1 - 2 * s) / (h * h)}};
  }
}

/* ---- all pieces ---- */

static double between(double low, double x, double high) {
  return x < low ? low : x > high ? high : x;
}

static size_t piece_of_resistance(const struct oc_ntc *ntc, double r_ohm) {
  size_t low = 0;
  size_t high = ntc->count;
  while (high - low > 1) {
    size_t middle = low + (high - low) / 2;
    if (ntc->knots[middle].r_ohm <= r_ohm)
      low = middle;
    else
      high = middle;
  }
  return low;
}

static size_t piece_of_temperature(const struct oc_ntc *ntc, double t_c) {
  size_t low = 0;
  size_t high = ntc->count;
  while (high - low > 1) {
    size_t middle = low + (high - low) / 2;
    if (ntc->knots[middle].t_c >= t_c)
      low = middle;
    else
      high = middle;
  }
  return low;
}

double oc_ntc_temperature_c(const struct oc_ntc *ntc, double r_ohm) {
  size_t i = piece_of_resistance(ntc, r_ohm);
  const struct oc_ntc_knot *knot = &ntc->knots[i];
  if (r_ohm == knot[0].r_ohm)
    return knot[0].t_c;
  if (r_ohm == knot[1].r_ohm)
    return knot[1].t_c;
  double ln_r = log(r_ohm);
  const struct oc_ntc_piece *piece = &ntc->pieces[i];
  double y = ntc->of_temperature ? oc_ntc_piece_solve(piece, knot[0].y, knot[1].y, ln_r)
                                 : oc_ntc_piece_y(piece, ln_r);
  return between(knot[1].t_c, oc_celsius(1 / y), knot[0].t_c);
}

static double ln_r_at(const struct oc_ntc *ntc, size_t i, double t_c) {
  const struct oc_ntc_piece *piece = &ntc->pieces[i];
  double y = 1 / oc_kelvin(t_c);
  if (ntc->of_temperature)
    return oc_ntc_piece_y(piece, y);
  return oc_ntc_piece_solve(piece, ntc->knots[i].ln_r, ntc->knots[i + 1].ln_r, y);
}

double oc_ntc_resistance_ohm(const struct oc_ntc *ntc, double t_c) {
  size_t i = piece_of_temperature(ntc, t_c);
  const struct oc_ntc_knot *knot = &ntc->knots[i];
  if (t_c == knot[0].t_c)
    return knot[0].r_ohm;
  if (t_c == knot[1].t_c)
    return knot[1].r_ohm;
  return between(knot[0].r_ohm, exp(ln_r_at(ntc, i, t_c)), knot[1].r_ohm);
}

/* d(ln R)/d(1/T) of a piece. */
static double steepness(const struct oc_ntc *ntc, size_t i, double y, double ln_r) {
  const struct oc_ntc_piece *piece = &ntc->pieces[i];
  return ntc->of_temperature ? oc_ntc_piece_slope(piece, y) : 1 / oc_ntc_piece_slope(piece, ln_r);
}

double oc_ntc_alpha_per_k(const struct oc_ntc *ntc, double t_c) {
  size_t i = piece_of_temperature(ntc, t_c);
  double t_k = oc_kelvin(t_c);
  double ln_r = ntc->of_temperature ? 0 : ln_r_at(ntc, i, t_c);
  return -steepness(ntc, i, 1 / t_k, ln_r) / (t_k * t_k);
}

double oc_ntc_end_slope(const struct oc_ntc *ntc, bool hot) {
  const struct oc_ntc_knot *end = &ntc->knots[hot ? 0 : ntc->count];
  return 1 / steepness(ntc, hot ? 0 : ntc->count - 1, end->y, end->ln_r);
}
