/* SPDX-License-Identifier: MIT */
/* Building a curve of each model; one that is not monotone over its range is refused. */
#include <float.h>
#include <stdlib.h>
#include <string.h>

#include "curve.h"
#include "../arithmetic/platinum.h"
#include "../arithmetic/silicon.h"
#include "../ground/status.h"

/* ln of the largest and least resistances looked for: well inside a double. */
static const double LN_R_MAX = 690;
/* What round-off may take of a temperature in kelvin, or of a resistance. */
static const double ROUND_OFF_MAX = 1e-9;

/* ---- building ---- */

static ohm_curve *curve_new(enum oc_model model, size_t pieces, ohm_error *error) {
  ohm_curve *curve = calloc(1, sizeof *curve);
  struct oc_ntc_knot *knots = pieces > 0 ? malloc((pieces + 1) * sizeof *knots) : NULL;
  struct oc_ntc_piece *piece = pieces > 0 ? malloc(pieces * sizeof *piece) : NULL;
  if (!curve || (pieces > 0 && (!knots || !piece))) {
    free(curve);
    free(knots);
    free(piece);
    oc_fail_memory(error);
    return NULL;
  }
  curve->model = model;
  curve->ntc = (struct oc_ntc){pieces, knots, piece, false};
  return curve;
}

/* The ends of an NTC curve are its outer knots. */
static void take_ends(ohm_curve *curve) {
  const struct oc_ntc_knot *hot = &curve->ntc.knots[0];
  const struct oc_ntc_knot *cold = &curve->ntc.knots[curve->ntc.count];
  curve->hot = (struct oc_end){hot->t_c, hot->r_ohm};
  curve->cold = (struct oc_end){cold->t_c, cold->r_ohm};
}

static ohm_curve *with_parameters(ohm_curve *curve, const double *parameters, size_t count) {
  if (curve)
    memcpy(curve->parameters, parameters, count * sizeof *parameters);
  return curve;
}

static bool is_temperature(double t_c) {
  return OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C;
}

static bool range_is_good(double low_c, double high_c, ohm_error *error) {
  if (is_temperature(low_c) && is_temperature(high_c) && low_c < high_c)
    return true;
  char low[OHM_NUMBER_SIZE];
  char high[OHM_NUMBER_SIZE];
  ohm_number_print(low_c, low, sizeof low);
  ohm_number_print(high_c, high, sizeof high);
  oc_fail(error, OHM_BAD_ARGUMENT, "the range is ", low, " to ", high,
          " C; give a lower and a higher temperature above -273.15 C and up to 1000 C",
          (const char *)NULL);
  return false;
}

static ohm_status fail_number(ohm_error *error, const char *what, double value,
                              const char *allowed) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  return oc_fail(error, OHM_BAD_ARGUMENT, what, " is ", digits, "; it must be ", allowed,
                 (const char *)NULL);
}

/* Roots of the slope c1 + 2 c2 d + 3 c3 d^2, the lesser first; NaN when there are none.
 * A slope that is a straight line has one, twice. */
static void slope_roots(const double *c, double *first, double *second) {
  double a = 3 * c[3];
  double discriminant = c[2] * c[2] - a * c[1];
  *first = *second = NAN;
  if (a == 0) {
    if (c[2] != 0)
      *first = *second = -c[1] / (2 * c[2]);
    return;
  }
  if (discriminant < 0)
    return;
  double q = -(c[2] + copysign(sqrt(discriminant), c[2]));
  double one = q / a;
  double other = q != 0 ? c[1] / q : 0;
  *first = fmin(one, other);
  *second = fmax(one, other);
}

/* Where 1/T rises with ln R, as far as a resistance can be; where it does so on both
 * sides of a fall, the side of the origin, else that of the greater resistances. */
static bool rising_stretch(const struct oc_ntc_piece *piece, double *from, double *to) {
  double first;
  double second;
  slope_roots(piece->c, &first, &second);
  double low = -LN_R_MAX - piece->origin;
  double high = LN_R_MAX - piece->origin;
  if (isnan(first)) {
    if (!(piece->c[1] > 0))
      return false;
  } else if (piece->c[3] < 0) {
    low = fmax(low, first);
    high = fmin(high, second);
  } else if (piece->c[3] > 0 ? first > 0 : piece->c[2] < 0) {
    high = fmin(high, first);
  } else {
    low = fmax(low, second);
  }
  *from = low + piece->origin;
  *to = high + piece->origin;
  return *from < *to;
}

static ohm_status fail_turn(ohm_error *error, double turn_c) {
  char text[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(turn_c, 1, text, sizeof text);
  return oc_fail(error, OHM_BAD_DEFINITION, "the curve turns at ", text,
                 " C, inside its range: resistance must go one way as temperature rises; "
                 "check the coefficients or narrow the range",
                 (const char *)NULL);
}

/* Terms that nearly cancel leave little but their round-off. Each meets at most nine
 * roundings, those of d among them, of half a DBL_EPSILON each; their sizes are greatest
 * at an end. */
static double round_off(const struct oc_ntc_piece *piece, double from, double to) {
  double d = fmax(fabs(from - piece->origin), fabs(to - piece->origin));
  const double *c = piece->c;
  return 5 * DBL_EPSILON * (fabs(c[0]) + d * (fabs(c[1]) + d * (fabs(c[2]) + d * fabs(c[3]))));
}

static ohm_status fail_cancelled(ohm_error *error) {
  return oc_fail(error, OHM_BAD_DEFINITION, "the terms of these coefficients cancel each other ",
                 "and leave fewer than nine digits: check the coefficients", (const char *)NULL);
}

/* One piece from low_c to high_c, its ends found on the rising stretch. */
static ohm_curve *single_piece(enum oc_model model, struct oc_ntc_piece piece, double low_c,
                               double high_c, ohm_error *error) {
  double from;
  double to;
  if (!rising_stretch(&piece, &from, &to)) {
    oc_fail(error, OHM_BAD_DEFINITION, "with these coefficients resistance rises with ",
            "temperature everywhere: check their signs and order", (const char *)NULL);
    return NULL;
  }
  double y_hot = 1 / oc_kelvin(high_c);
  double y_cold = 1 / oc_kelvin(low_c);
  double y_from = oc_ntc_piece_y(&piece, from);
  double y_to = oc_ntc_piece_y(&piece, to);
  if (!(y_from < y_hot && y_cold < y_to)) {
    bool hot_is_met = y_from < y_hot;
    bool turns = hot_is_met ? to < LN_R_MAX : from > -LN_R_MAX;
    double y_turn = hot_is_met ? y_to : y_from;
    if (turns && oc_inside(y_hot, y_turn, y_cold))
      fail_turn(error, oc_celsius(1 / y_turn));
    else
      oc_fail(error, OHM_BAD_DEFINITION, "the curve does not reach its range with any ",
              "resistance a number can hold: check the coefficients and the range",
              (const char *)NULL);
    return NULL;
  }
  double ln_hot = oc_ntc_piece_solve(&piece, from, to, y_hot);
  double ln_cold = oc_ntc_piece_solve(&piece, from, to, y_cold);
  if (!(round_off(&piece, ln_hot, ln_cold) <= ROUND_OFF_MAX * y_hot)) {
    fail_cancelled(error);
    return NULL;
  }
  double turn;
  if (!oc_ntc_piece_rises(&piece, ln_hot, ln_cold, &turn)) {
    fail_turn(error, oc_celsius(1 / oc_ntc_piece_y(&piece, turn)));
    return NULL;
  }
  if (!(exp(ln_hot) < exp(ln_cold))) {
    oc_fail(error, OHM_BAD_DEFINITION, "with these coefficients resistance does not change over ",
            "the range: check the coefficients and the range", (const char *)NULL);
    return NULL;
  }
  ohm_curve *curve = curve_new(model, 1, error);
  if (!curve)
    return NULL;
  curve->ntc.pieces[0] = piece;
  curve->ntc.knots[0] = (struct oc_ntc_knot){exp(ln_hot), high_c, ln_hot, y_hot};
  curve->ntc.knots[1] = (struct oc_ntc_knot){exp(ln_cold), low_c, ln_cold, y_cold};
  take_ends(curve);
  return curve;
}

ohm_curve *ohm_curve_beta_new(double r0_ohm, double t0_c, double beta_k, double low_c,
                              double high_c, ohm_error *error) {
  oc_error_clear(error);
  if (!(r0_ohm > 0 && r0_ohm <= DBL_MAX)) {
    fail_number(error, "r0_ohm", r0_ohm, "a finite resistance above 0");
    return NULL;
  }
  if (!is_temperature(t0_c)) {
    fail_number(error, "t0_c", t0_c, "above -273.15 and at most 1000 (degrees Celsius)");
    return NULL;
  }
  if (!oc_inside(100, beta_k, 100000)) {
    fail_number(error, "beta_k", beta_k, "from 100 to 100000 (kelvin)");
    return NULL;
  }
  if (!range_is_good(low_c, high_c, error))
    return NULL;
  /* 1/T = 1/T0 + ln(R/R0)/B */
  struct oc_ntc_piece piece = {log(r0_ohm), {1 / oc_kelvin(t0_c), 1 / beta_k, 0, 0}};
  double given[3] = {r0_ohm, t0_c, beta_k};
  return with_parameters(single_piece(OC_MODEL_BETA, piece, low_c, high_c, error), given, 3);
}

static bool are_finite(const double *values, const char *const *names, size_t count,
                       ohm_error *error) {
  for (size_t i = 0; i < count; i++)
    if (!isfinite(values[i])) {
      fail_number(error, names[i], values[i], "a finite number");
      return false;
    }
  return true;
}

ohm_curve *ohm_curve_steinhart_hart_new(double a, double b, double c, double low_c, double high_c,
                                        ohm_error *error) {
  double given[3] = {a, b, c};
  oc_error_clear(error);
  if (!are_finite(given, oc_model_form(OC_MODEL_STEINHART_HART)->keys, 3, error) ||
      !range_is_good(low_c, high_c, error))
    return NULL;
  /* 1/T = A + B ln R + C (ln R)^3, Steinhart and Hart 1968 */
  struct oc_ntc_piece piece = {0, {a, b, 0, c}};
  return with_parameters(single_piece(OC_MODEL_STEINHART_HART, piece, low_c, high_c, error), given,
                         3);
}

static bool is_resistance(double r_ohm, const char *name, ohm_error *error) {
  if (0 < r_ohm && r_ohm <= DBL_MAX)
    return true;
  fail_number(error, name, r_ohm, "a finite resistance above 0");
  return false;
}

ohm_curve *ohm_curve_four_term_new(double r_ref_ohm, double a1, double b1, double c1, double d1,
                                   double low_c, double high_c, ohm_error *error) {
  double given[5] = {r_ref_ohm, a1, b1, c1, d1};
  oc_error_clear(error);
  if (!is_resistance(r_ref_ohm, "r_ref_ohm", error) ||
      !are_finite(given, oc_model_form(OC_MODEL_FOUR_TERM)->keys, 5, error) ||
      !range_is_good(low_c, high_c, error))
    return NULL;
  /* 1/T = A1 + B1 L + C1 L^2 + D1 L^3 with L = ln(R/Rref) */
  struct oc_ntc_piece piece = {log(r_ref_ohm), {a1, b1, c1, d1}};
  return with_parameters(single_piece(OC_MODEL_FOUR_TERM, piece, low_c, high_c, error), given, 5);
}

ohm_curve *ohm_curve_four_term_of_temperature_new(double r_ref_ohm, double a, double b, double c,
                                                  double d, double low_c, double high_c,
                                                  ohm_error *error) {
  static const enum oc_model model = OC_MODEL_FOUR_TERM_OF_TEMPERATURE;
  double given[5] = {r_ref_ohm, a, b, c, d};
  oc_error_clear(error);
  if (!is_resistance(r_ref_ohm, "r_ref_ohm", error) ||
      !are_finite(given, oc_model_form(model)->keys, 5, error) ||
      !range_is_good(low_c, high_c, error))
    return NULL;
  /* ln(R/Rref) = A + B/T + C/T^2 + D/T^3 */
  struct oc_ntc_piece piece = {0, {a + log(r_ref_ohm), b, c, d}};
  double y_hot = 1 / oc_kelvin(high_c);
  double y_cold = 1 / oc_kelvin(low_c);
  double y_turn;
  if (!oc_ntc_piece_rises(&piece, y_hot, y_cold, &y_turn)) {
    fail_turn(error, oc_celsius(1 / y_turn));
    return NULL;
  }
  double ln_hot = oc_ntc_piece_y(&piece, y_hot);
  double ln_cold = oc_ntc_piece_y(&piece, y_cold);
  if (!(-LN_R_MAX < ln_hot && exp(ln_hot) < exp(ln_cold) && ln_cold < LN_R_MAX)) {
    oc_fail(error, OHM_BAD_DEFINITION, "the resistances of the range are none a number can ",
            "hold: check the coefficients and the range", (const char *)NULL);
    return NULL;
  }
  if (!(round_off(&piece, y_hot, y_cold) <= ROUND_OFF_MAX)) {
    fail_cancelled(error);
    return NULL;
  }
  ohm_curve *curve = curve_new(model, 1, error);
  if (!curve)
    return NULL;
  curve->ntc.of_temperature = true;
  curve->ntc.pieces[0] = piece;
  curve->ntc.knots[0] = (struct oc_ntc_knot){exp(ln_hot), high_c, ln_hot, y_hot};
  curve->ntc.knots[1] = (struct oc_ntc_knot){exp(ln_cold), low_c, ln_cold, y_cold};
  take_ends(curve);
  return with_parameters(curve, given, 5);
}

ohm_curve *ohm_curve_platinum_new(double r0_ohm, double low_c, double high_c, ohm_error *error) {
  oc_error_clear(error);
  if (!is_resistance(r0_ohm, "r0_ohm", error))
    return NULL;
  if (!(OC_PLATINUM_LOW_C <= low_c && low_c < high_c && high_c <= OC_PLATINUM_HIGH_C)) {
    oc_fail(error, OHM_BAD_ARGUMENT, "the range of platinum lies within -200 to 850 C; ",
            "give a lower and a higher temperature of it", (const char *)NULL);
    return NULL;
  }
  double hot_ohm = r0_ohm * oc_platinum_ratio(high_c);
  double cold_ohm = r0_ohm * oc_platinum_ratio(low_c);
  if (!(0 < cold_ohm && cold_ohm < hot_ohm && hot_ohm <= DBL_MAX)) {
    fail_number(error, "r0_ohm", r0_ohm, "a resistance that stays a number over the range");
    return NULL;
  }
  ohm_curve *curve = curve_new(OC_MODEL_PLATINUM, 0, error);
  if (!curve)
    return NULL;
  curve->cold = (struct oc_end){low_c, cold_ohm};
  curve->hot = (struct oc_end){high_c, hot_ohm};
  return with_parameters(curve, &r0_ohm, 1);
}

ohm_curve *ohm_curve_silicon_new(double r25_ohm, double alpha_per_k, double beta_per_k2,
                                 double low_c, double high_c, ohm_error *error) {
  double given[3] = {r25_ohm, alpha_per_k, beta_per_k2};
  const struct oc_silicon silicon = {alpha_per_k, beta_per_k2};
  oc_error_clear(error);
  if (!is_resistance(r25_ohm, "r25_ohm", error) ||
      !are_finite(given, oc_model_form(OC_MODEL_SILICON)->keys, 3, error) ||
      !range_is_good(low_c, high_c, error))
    return NULL;
  bool rises = oc_silicon_slope(&silicon, low_c) > 0 && oc_silicon_slope(&silicon, high_c) > 0;
  double turn_c = 25 - alpha_per_k / (2 * beta_per_k2);
  if (!rises && oc_inside(low_c, turn_c, high_c)) {
    fail_turn(error, turn_c);
    return NULL;
  }
  double cold_ohm = r25_ohm * oc_silicon_ratio(&silicon, low_c);
  double hot_ohm = r25_ohm * oc_silicon_ratio(&silicon, high_c);
  if (!rises || !(0 < cold_ohm && cold_ohm < hot_ohm && hot_ohm <= DBL_MAX)) {
    oc_fail(error, OHM_BAD_DEFINITION, "with these coefficients resistance does not rise from ",
            "above 0 over the range: check the coefficients or narrow the range",
            (const char *)NULL);
    return NULL;
  }
  ohm_curve *curve = curve_new(OC_MODEL_SILICON, 0, error);
  if (!curve)
    return NULL;
  curve->cold = (struct oc_end){low_c, cold_ohm};
  curve->hot = (struct oc_end){high_c, hot_ohm};
  return with_parameters(curve, given, 3);
}

static ohm_status fail_point(ohm_error *error, const char *what, size_t index, double t_c,
                             double r_ohm, const char *allowed) {
  char place[OHM_NUMBER_SIZE];
  char t_text[OHM_NUMBER_SIZE];
  char r_text[OHM_NUMBER_SIZE];
  ohm_number_print((double)index + 1, place, sizeof place);
  ohm_number_print(t_c, t_text, sizeof t_text);
  ohm_number_print(r_ohm, r_text, sizeof r_text);
  return oc_fail(error, OHM_BAD_DEFINITION, what, " at point ", place, " (", t_text, " C, ", r_text,
                 " ohm): ", allowed, (const char *)NULL);
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
static ohm_status check_knots(const struct oc_ntc *ntc, ohm_error *error) {
  for (size_t i = 0; i < ntc->count; i++) {
    const struct oc_ntc_knot *knot = &ntc->knots[i];
    double grain = DBL_EPSILON * fmax(1, fabs(knot[0].ln_r));
    double turn;
    if (!(knot[0].ln_r + 64 * grain < knot[1].ln_r && knot[0].y < knot[1].y &&
          oc_ntc_piece_rises(&ntc->pieces[i], knot[0].ln_r, knot[1].ln_r, &turn)))
      return fail_point(error, "the points lie too close", ntc->count - i, knot->t_c, knot->r_ohm,
                        "leave out one of it and its neighbour");
  }
  return OHM_OK;
}

ohm_curve *ohm_curve_points_new(const double *t_c, const double *r_ohm, size_t count,
                                ohm_error *error) {
  oc_error_clear(error);
  if (!t_c || !r_ohm) {
    oc_fail_null(error);
    return NULL;
  }
  if (count < 2) {
    oc_fail(error, OHM_BAD_DEFINITION, "a curve needs at least two points", (const char *)NULL);
    return NULL;
  }
  if (count > OC_POINTS_MAX) {
    oc_fail(error, OHM_TOO_LARGE, "a curve takes at most 4096 points: leave some out",
            (const char *)NULL);
    return NULL;
  }
  if (check_points(t_c, r_ohm, count, error) != OHM_OK)
    return NULL;
  ohm_curve *curve = curve_new(OC_MODEL_POINTS, count - 1, error);
  if (!curve)
    return NULL;
  for (size_t i = 0; i < count; i++)
    curve->ntc.knots[i] = oc_ntc_knot_at(t_c[count - 1 - i], r_ohm[count - 1 - i]);
  oc_ntc_join(&curve->ntc);
  if (check_knots(&curve->ntc, error) != OHM_OK) {
    ohm_curve_free(curve);
    return NULL;
  }
  take_ends(curve);
  return curve;
}

/* ---- by name ---- */

static const struct oc_model_form forms[OC_MODELS] = {
    [OC_MODEL_POINTS] = {"points", 0, {NULL}},
    [OC_MODEL_BETA] = {"beta", 3, {"r0_ohm", "t0_c", "beta_k"}},
    [OC_MODEL_STEINHART_HART] = {"steinhart-hart", 3, {"a", "b", "c"}},
    [OC_MODEL_FOUR_TERM] = {"four-term", 5, {"r_ref_ohm", "a1", "b1", "c1", "d1"}},
    [OC_MODEL_FOUR_TERM_OF_TEMPERATURE] = {"four-term-of-temperature",
                                           5,
                                           {"r_ref_ohm", "a", "b", "c", "d"}},
    [OC_MODEL_PLATINUM] = {"platinum", 1, {"r0_ohm"}},
    [OC_MODEL_SILICON] = {"silicon", 3, {"r25_ohm", "alpha_per_k", "beta_per_k2"}},
};

const struct oc_model_form *oc_model_form(enum oc_model model) {
  return &forms[model];
}

ohm_curve *oc_curve_of_model(enum oc_model model, const double *p, double low_c, double high_c,
                             ohm_error *error) {
  switch (model) {
  case OC_MODEL_BETA:
    return ohm_curve_beta_new(p[0], p[1], p[2], low_c, high_c, error);
  case OC_MODEL_STEINHART_HART:
    return ohm_curve_steinhart_hart_new(p[0], p[1], p[2], low_c, high_c, error);
  case OC_MODEL_FOUR_TERM:
    return ohm_curve_four_term_new(p[0], p[1], p[2], p[3], p[4], low_c, high_c, error);
  case OC_MODEL_FOUR_TERM_OF_TEMPERATURE:
    return ohm_curve_four_term_of_temperature_new(p[0], p[1], p[2], p[3], p[4], low_c, high_c,
                                                  error);
  case OC_MODEL_PLATINUM:
    return ohm_curve_platinum_new(p[0], low_c, high_c, error);
  case OC_MODEL_SILICON:
    return ohm_curve_silicon_new(p[0], p[1], p[2], low_c, high_c, error);
  default:
    oc_fail(error, OHM_BAD_ARGUMENT, "points are no parameters", (const char *)NULL);
    return NULL;
  }
}
