/* SPDX-License-Identifier: MIT */
#include "curve.h"

#include <float.h>
#include <stdlib.h>
#include <string.h>

#include "status.h"

static const double HOTTEST_C = 1000;
/* ln of the largest and least resistances looked for: well inside a double. */
static const double LN_R_MAX = 690;

/* ---- building ---- */

static ohm_curve *curve_new(enum ohm_model model, size_t pieces, ohm_error *error) {
  ohm_curve *curve = calloc(1, sizeof *curve);
  struct ohm_ntc_knot *knots = malloc((pieces + 1) * sizeof *knots);
  struct ohm_ntc_piece *piece = malloc(pieces * sizeof *piece);
  if (!curve || !knots || !piece) {
    free(curve);
    free(knots);
    free(piece);
    ohm_fail_memory(error);
    return NULL;
  }
  curve->model = model;
  curve->ntc = (struct ohm_ntc){pieces, knots, piece};
  return curve;
}

void ohm_curve_free(ohm_curve *curve) {
  if (!curve)
    return;
  free(curve->ntc.knots);
  free(curve->ntc.pieces);
  free(curve);
}

static bool is_temperature(double t_c) {
  return OHM_ZERO_C < t_c && t_c <= HOTTEST_C;
}

static bool range_is_good(double low_c, double high_c, ohm_error *error) {
  if (is_temperature(low_c) && is_temperature(high_c) && low_c < high_c)
    return true;
  char low[OHM_NUMBER_SIZE];
  char high[OHM_NUMBER_SIZE];
  ohm_number_print(low_c, low, sizeof low);
  ohm_number_print(high_c, high, sizeof high);
  ohm_fail(error, OHM_BAD_ARGUMENT, "the range is ", low, " to ", high,
           " C; give a lower and a higher temperature above -273.15 C and up to 1000 C",
           (const char *)NULL);
  return false;
}

static ohm_status fail_number(ohm_error *error, const char *what, double value,
                              const char *allowed) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  return ohm_fail(error, OHM_BAD_ARGUMENT, what, " is ", digits, "; it must be ", allowed,
                  (const char *)NULL);
}

/* Where 1/T rises with ln R, as far as a resistance can be. For Steinhart-Hart with
 * coefficients of opposite sign that is one side of a turn. */
static bool rising_stretch(const struct ohm_ntc_piece *piece, double *from, double *to) {
  double b = piece->c[1];
  double c = piece->c[3];
  *from = -LN_R_MAX;
  *to = LN_R_MAX;
  if (b > 0 && c >= 0)
    return true;
  if (b > 0) {
    *to = fmin(sqrt(b / (-3 * c)), LN_R_MAX);
    *from = -*to;
    return true;
  }
  if (c > 0) {
    *from = sqrt(-b / (3 * c));
    return *from < *to;
  }
  return false;
}

static ohm_status fail_turn(ohm_error *error, double turn_c) {
  char text[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(turn_c, 1, text, sizeof text);
  return ohm_fail(error, OHM_BAD_DEFINITION, "the curve turns at ", text,
                  " C, inside its range: resistance must fall steadily as temperature rises; "
                  "check the coefficients or narrow the range",
                  (const char *)NULL);
}

/* One piece from low_c to high_c, its ends found on the rising stretch. */
static ohm_curve *single_piece(enum ohm_model model, struct ohm_ntc_piece piece, double low_c,
                               double high_c, ohm_error *error) {
  double from;
  double to;
  if (!rising_stretch(&piece, &from, &to)) {
    ohm_fail(error, OHM_BAD_DEFINITION, "with these coefficients resistance rises with ",
             "temperature everywhere: check their signs and order", (const char *)NULL);
    return NULL;
  }
  double y_hot = 1 / ohm_kelvin(high_c);
  double y_cold = 1 / ohm_kelvin(low_c);
  double y_from = ohm_ntc_piece_y(&piece, from);
  double y_to = ohm_ntc_piece_y(&piece, to);
  if (!(y_from < y_hot && y_cold < y_to)) {
    bool hot_is_met = y_from < y_hot;
    bool turns = hot_is_met ? to < LN_R_MAX : from > -LN_R_MAX;
    double y_turn = hot_is_met ? y_to : y_from;
    if (turns && ohm_inside(y_hot, y_turn, y_cold))
      fail_turn(error, ohm_celsius(1 / y_turn));
    else
      ohm_fail(error, OHM_BAD_DEFINITION, "the curve does not reach its range with any ",
               "resistance a number can hold: check the coefficients and the range",
               (const char *)NULL);
    return NULL;
  }
  double ln_hot = ohm_ntc_piece_solve(&piece, from, to, y_hot);
  double ln_cold = ohm_ntc_piece_solve(&piece, from, to, y_cold);
  if (!(exp(ln_hot) < exp(ln_cold))) {
    ohm_fail(error, OHM_BAD_DEFINITION, "with these coefficients resistance does not change over ",
             "the range: check the coefficients and the range", (const char *)NULL);
    return NULL;
  }
  ohm_curve *curve = curve_new(model, 1, error);
  if (!curve)
    return NULL;
  curve->ntc.pieces[0] = piece;
  curve->ntc.knots[0] = (struct ohm_ntc_knot){exp(ln_hot), high_c, ln_hot, y_hot};
  curve->ntc.knots[1] = (struct ohm_ntc_knot){exp(ln_cold), low_c, ln_cold, y_cold};
  return curve;
}

ohm_curve *ohm_curve_beta_new(double r0_ohm, double t0_c, double beta_k, double low_c,
                              double high_c, ohm_error *error) {
  ohm_error_clear(error);
  if (!(r0_ohm > 0 && r0_ohm <= DBL_MAX)) {
    fail_number(error, "r0_ohm", r0_ohm, "a finite resistance above 0");
    return NULL;
  }
  if (!is_temperature(t0_c)) {
    fail_number(error, "t0_c", t0_c, "above -273.15 and at most 1000 (degrees Celsius)");
    return NULL;
  }
  if (!ohm_inside(100, beta_k, 100000)) {
    fail_number(error, "beta_k", beta_k, "from 100 to 100000 (kelvin)");
    return NULL;
  }
  if (!range_is_good(low_c, high_c, error))
    return NULL;
  /* 1/T = 1/T0 + ln(R/R0)/B */
  struct ohm_ntc_piece piece = {log(r0_ohm), {1 / ohm_kelvin(t0_c), 1 / beta_k, 0, 0}};
  ohm_curve *curve = single_piece(OHM_MODEL_BETA, piece, low_c, high_c, error);
  if (curve) {
    double given[3] = {r0_ohm, t0_c, beta_k};
    memcpy(curve->parameters, given, sizeof given);
  }
  return curve;
}

ohm_curve *ohm_curve_steinhart_hart_new(double a, double b, double c, double low_c, double high_c,
                                        ohm_error *error) {
  ohm_error_clear(error);
  double given[3] = {a, b, c};
  static const char *const names[3] = {"a", "b", "c"};
  for (int i = 0; i < 3; i++)
    if (!isfinite(given[i])) {
      fail_number(error, names[i], given[i], "a finite number");
      return NULL;
    }
  if (!range_is_good(low_c, high_c, error))
    return NULL;
  /* 1/T = A + B ln R + C (ln R)^3, Steinhart and Hart 1968 */
  struct ohm_ntc_piece piece = {0, {a, b, 0, c}};
  ohm_curve *curve = single_piece(OHM_MODEL_STEINHART_HART, piece, low_c, high_c, error);
  if (curve)
    memcpy(curve->parameters, given, sizeof given);
  return curve;
}

static ohm_status fail_point(ohm_error *error, const char *what, size_t index, double t_c,
                             double r_ohm, const char *allowed) {
  char place[OHM_NUMBER_SIZE];
  char t_text[OHM_NUMBER_SIZE];
  char r_text[OHM_NUMBER_SIZE];
  ohm_number_print((double)index + 1, place, sizeof place);
  ohm_number_print(t_c, t_text, sizeof t_text);
  ohm_number_print(r_ohm, r_text, sizeof r_text);
  return ohm_fail(error, OHM_BAD_DEFINITION, what, " at point ", place, " (", t_text, " C, ",
                  r_text, " ohm): ", allowed, (const char *)NULL);
}

static ohm_status check_points(const double *t_c, const double *r_ohm, size_t count,
                               ohm_error *error) {
  for (size_t i = 0; i < count; i++)
    if (!(is_temperature(t_c[i]) && r_ohm[i] > 0 && r_ohm[i] <= DBL_MAX)) {
      fail_point(error, "a number is unusable", i, t_c[i], r_ohm[i],
                 "temperatures must lie above -273.15 C and up to 1000 C, resistances above 0");
      if (error)
        error->status = OHM_BAD_ARGUMENT;
      return OHM_BAD_ARGUMENT;
    }
  for (size_t i = 1; i < count; i++) {
    if (!(t_c[i - 1] < t_c[i]))
      return fail_point(error, "temperature does not rise", i, t_c[i], r_ohm[i],
                        "give the points in rising temperature, each once");
    if (!(r_ohm[i - 1] > r_ohm[i]))
      return fail_point(error, "the curve turns", i, t_c[i], r_ohm[i],
                        "resistance must fall steadily as temperature rises");
  }
  return OHM_OK;
}

/* Two neighbours may differ as doubles and yet not in 1/T or ln R, or by so few of the
 * last digits of ln R that no slope is left between them. */
static ohm_status check_knots(const struct ohm_ntc *ntc, ohm_error *error) {
  for (size_t i = 0; i < ntc->count; i++) {
    const struct ohm_ntc_knot *knot = &ntc->knots[i];
    double grain = DBL_EPSILON * fmax(1, fabs(knot[0].ln_r));
    double turn;
    if (!(knot[0].ln_r + 8 * grain < knot[1].ln_r && knot[0].y < knot[1].y &&
          ohm_ntc_piece_rises(&ntc->pieces[i], knot[0].ln_r, knot[1].ln_r, &turn)))
      return fail_point(error, "the points lie too close", ntc->count - i, knot->t_c, knot->r_ohm,
                        "leave out one of it and its neighbour");
  }
  return OHM_OK;
}

ohm_curve *ohm_curve_points_new(const double *t_c, const double *r_ohm, size_t count,
                                ohm_error *error) {
  ohm_error_clear(error);
  if (!t_c || !r_ohm) {
    ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  if (count < 2) {
    ohm_fail(error, OHM_BAD_DEFINITION, "a curve needs at least two points", (const char *)NULL);
    return NULL;
  }
  if (count > OHM_POINTS_MAX) {
    ohm_fail(error, OHM_TOO_LARGE, "a curve takes at most 4096 points: leave some out",
             (const char *)NULL);
    return NULL;
  }
  if (check_points(t_c, r_ohm, count, error) != OHM_OK)
    return NULL;
  ohm_curve *curve = curve_new(OHM_MODEL_POINTS, count - 1, error);
  if (!curve)
    return NULL;
  for (size_t i = 0; i < count; i++)
    curve->ntc.knots[i] = ohm_ntc_knot_at(t_c[count - 1 - i], r_ohm[count - 1 - i]);
  ohm_ntc_join(&curve->ntc);
  if (check_knots(&curve->ntc, error) != OHM_OK) {
    ohm_curve_free(curve);
    return NULL;
  }
  return curve;
}

/* ---- asking ---- */

static const struct ohm_ntc_knot *hot_end(const ohm_curve *curve) {
  return &curve->ntc.knots[0];
}

static const struct ohm_ntc_knot *cold_end(const ohm_curve *curve) {
  return &curve->ntc.knots[curve->ntc.count];
}

static ohm_status temperature(const ohm_curve *curve, double r_ohm, double *t_c) {
  *t_c = NAN;
  if (!(r_ohm > 0))
    return OHM_BAD_ARGUMENT;
  if (!ohm_inside(hot_end(curve)->r_ohm, r_ohm, cold_end(curve)->r_ohm))
    return OHM_OUT_OF_RANGE;
  *t_c = ohm_ntc_temperature_c(&curve->ntc, r_ohm);
  return OHM_OK;
}

static ohm_status in_range(const ohm_curve *curve, double t_c) {
  if (!(t_c > OHM_ZERO_C))
    return OHM_BAD_ARGUMENT;
  return ohm_inside(cold_end(curve)->t_c, t_c, hot_end(curve)->t_c) ? OHM_OK : OHM_OUT_OF_RANGE;
}

static ohm_status resistance(const ohm_curve *curve, double t_c, double *r_ohm) {
  ohm_status status = in_range(curve, t_c);
  *r_ohm = status == OHM_OK ? ohm_ntc_resistance_ohm(&curve->ntc, t_c) : NAN;
  return status;
}

ohm_status ohm_curve_temperature(const ohm_curve *curve, double r_ohm, double *t_c) {
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = NAN;
  return curve ? temperature(curve, r_ohm, t_c) : OHM_NULL_ARGUMENT;
}

ohm_status ohm_curve_resistance(const ohm_curve *curve, double t_c, double *r_ohm) {
  if (!r_ohm)
    return OHM_NULL_ARGUMENT;
  *r_ohm = NAN;
  return curve ? resistance(curve, t_c, r_ohm) : OHM_NULL_ARGUMENT;
}

ohm_status ohm_curve_alpha(const ohm_curve *curve, double t_c, double *alpha_per_k) {
  if (!alpha_per_k)
    return OHM_NULL_ARGUMENT;
  *alpha_per_k = NAN;
  if (!curve)
    return OHM_NULL_ARGUMENT;
  ohm_status status = in_range(curve, t_c);
  if (status == OHM_OK)
    *alpha_per_k = ohm_ntc_alpha_per_k(&curve->ntc, t_c);
  return status;
}

static void give(double *output, double value) {
  if (output)
    *output = value;
}

ohm_status ohm_curve_range(const ohm_curve *curve, double *low_c, double *high_c,
                           double *at_low_ohm, double *at_high_ohm) {
  give(low_c, curve ? cold_end(curve)->t_c : NAN);
  give(high_c, curve ? hot_end(curve)->t_c : NAN);
  give(at_low_ohm, curve ? cold_end(curve)->r_ohm : NAN);
  give(at_high_ohm, curve ? hot_end(curve)->r_ohm : NAN);
  return curve ? OHM_OK : OHM_NULL_ARGUMENT;
}

typedef ohm_status (*conversion)(const ohm_curve *curve, double from, double *to);

static ohm_status convert_all(const ohm_curve *curve, conversion convert, const double *from,
                              double *to, size_t count, size_t *failed) {
  bool usable = curve && ((from && to) || count == 0);
  size_t bad = 0;
  for (size_t i = 0; to && i < count; i++) {
    if (!usable)
      to[i] = NAN;
    bad += !usable || convert(curve, from[i], &to[i]) != OHM_OK;
  }
  if (failed)
    *failed = bad;
  return usable ? OHM_OK : OHM_NULL_ARGUMENT;
}

ohm_status ohm_curve_temperatures(const ohm_curve *curve, const double *r_ohm, double *t_c,
                                  size_t count, size_t *failed) {
  return convert_all(curve, temperature, r_ohm, t_c, count, failed);
}

ohm_status ohm_curve_resistances(const ohm_curve *curve, const double *t_c, double *r_ohm,
                                 size_t count, size_t *failed) {
  return convert_all(curve, resistance, t_c, r_ohm, count, failed);
}

/* ---- beyond the ends ---- */

static double end_slope(const ohm_curve *curve, bool hot) {
  size_t piece = hot ? 0 : curve->ntc.count - 1;
  double ln_r = hot ? hot_end(curve)->ln_r : cold_end(curve)->ln_r;
  return ohm_ntc_piece_slope(&curve->ntc.pieces[piece], ln_r);
}

double ohm_curve_resistance_beyond(const ohm_curve *curve, double t_c) {
  if (in_range(curve, t_c) == OHM_OK)
    return ohm_ntc_resistance_ohm(&curve->ntc, t_c);
  if (t_c <= OHM_ZERO_C)
    return INFINITY;
  bool hot = t_c > hot_end(curve)->t_c;
  const struct ohm_ntc_knot *end = hot ? hot_end(curve) : cold_end(curve);
  double dy = 1 / ohm_kelvin(t_c) - end->y;
  return end->r_ohm * exp(dy / end_slope(curve, hot));
}
