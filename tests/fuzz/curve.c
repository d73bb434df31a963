/* SPDX-License-Identifier: MIT */
/*
 * Curves from bytes: the first byte chooses the model, the next ones are doubles as
 * they lie in memory. What can be built must convert both ways, fall steadily and
 * come back.
 */
#include <float.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

enum { MODEL_BETA, MODEL_STEINHART_HART, MODEL_POINTS };
enum { NUMBERS_MAX = 64, GRID = 200 };

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int condition, const char *what, const ohm_curve *curve, double at) {
  if (condition)
    return;
  double low_c;
  double high_c;
  double at_low_ohm;
  double at_high_ohm;
  ohm_curve_range(curve, &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  fprintf(stderr, "%s at %.17g; range %.17g to %.17g C, %.17g to %.17g ohm\n", what, at, low_c,
          high_c, at_low_ohm, at_high_ohm);
  abort();
}

static ohm_curve *build(int model, const double *x, size_t count, ohm_error *error) {
  if (model == MODEL_BETA && count >= 5)
    return ohm_curve_beta_new(x[0], x[1], x[2], x[3], x[4], error);
  if (model == MODEL_STEINHART_HART && count >= 5)
    return ohm_curve_steinhart_hart_new(x[0], x[1], x[2], x[3], x[4], error);
  return model == MODEL_POINTS ? ohm_curve_points_new(x, x + count / 2, count / 2, error) : NULL;
}

/* x are the coefficients of a Steinhart-Hart curve, whose terms may be larger than
 * their sum, so that digits are lost. */
static void check_temperature(const ohm_curve *curve, bool coefficients, const double *x,
                              double t_c) {
  double r_ohm = NAN;
  double alpha_per_k = NAN;
  double back_c = NAN;
  require(ohm_curve_resistance(curve, t_c, &r_ohm) == OHM_OK && r_ohm > 0 && isfinite(r_ohm),
          "no resistance", curve, t_c);
  require(ohm_curve_alpha(curve, t_c, &alpha_per_k) == OHM_OK && isfinite(alpha_per_k) &&
              alpha_per_k < 0,
          "no alpha", curve, t_c);
  require(ohm_curve_temperature(curve, r_ohm, &back_c) == OHM_OK && isfinite(back_c),
          "no temperature", curve, r_ohm);
  double t_k = t_c + 273.15;
  double ln_r = log(r_ohm);
  double terms =
      coefficients ? t_k * (fabs(x[0]) + fabs(x[1] * ln_r) + fabs(x[2] * pow(ln_r, 3))) : 1;
  double grain = fmax(DBL_EPSILON, DBL_TRUE_MIN / r_ohm) + DBL_EPSILON * (1 + fabs(ln_r));
  double grain_k = DBL_EPSILON * (273.15 + t_k * (1 + terms));
  /* Near in temperature, or the same resistance again: where points nearly coincide
   * the slope changes within the last digits of a resistance. */
  double again_ohm = NAN;
  ohm_curve_resistance(curve, back_c, &again_ohm);
  int near = fabs(back_c - t_c) <= 16 * (grain_k + grain / fabs(alpha_per_k)) ||
             fabs(again_ohm - r_ohm) <= 16 * r_ohm * (grain + grain_k * fabs(alpha_per_k));
  require(near, "does not come back", curve, t_c);
}

static void check(const ohm_curve *curve, bool coefficients, const double *x) {
  double low_c;
  double high_c;
  double before_ohm;
  double last_ohm;
  ohm_curve_range(curve, &low_c, &high_c, &before_ohm, &last_ohm);
  require(low_c < high_c && before_ohm > last_ohm && last_ohm > 0 && isfinite(before_ohm),
          "no range", curve, low_c);
  for (int i = 0; i <= GRID; i++) {
    double t_c = i == GRID ? high_c : low_c + (high_c - low_c) * i / GRID;
    double r_ohm;
    check_temperature(curve, coefficients, x, t_c);
    ohm_curve_resistance(curve, t_c, &r_ohm);
    require(r_ohm <= before_ohm, "rises", curve, t_c);
    before_ohm = r_ohm;
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  double x[NUMBERS_MAX];
  if (size < 1)
    return 0;
  size_t count = (size - 1) / sizeof x[0];
  count = count < NUMBERS_MAX ? count : NUMBERS_MAX;
  memcpy(x, data + 1, count * sizeof x[0]);
  ohm_error error;
  ohm_curve *curve = build(data[0] % 3, x, count, &error);
  if (curve)
    check(curve, data[0] % 3 == MODEL_STEINHART_HART, x);
  ohm_curve_free(curve);
  return 0;
}
