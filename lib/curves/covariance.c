/* SPDX-License-Identifier: MIT */
#include "covariance.h"

#include "../ground/number.h"
#include "../ground/words.h"

bool oc_triangle_scan(const char *text, size_t length, struct oc_triangle *triangle) {
  struct oc_words words = {text, length};
  double number;
  triangle->count = 0;
  while (oc_words_number(&words, &number)) {
    if (triangle->count == OC_TRIANGLE_MAX)
      return false;
    triangle->at[triangle->count++] = number;
  }
  oc_words_skip(&words);
  return words.length == 0;
}

double oc_covariance_correlation(const struct oc_covariance *covariance, size_t i, size_t j) {
  double scale = sqrt(covariance->of[i][i]) * sqrt(covariance->of[j][j]);
  return i == j ? 1 : scale > 0 ? covariance->of[i][j] / scale : 0;
}

/* Correlations of fitted coefficients come very near 1, and the digits in a file are
 * rounded. */
static const double CORRELATION_MAX = 1 + 1e-12;

static bool is_covariance(const struct oc_covariance *covariance, size_t count) {
  for (size_t i = 0; i < count; i++) {
    if (!(covariance->of[i][i] >= 0))
      return false;
    for (size_t j = 0; j < i; j++) {
      double bound = sqrt(covariance->of[i][i]) * sqrt(covariance->of[j][j]);
      if (!(fabs(covariance->of[i][j]) <= bound * CORRELATION_MAX))
        return false;
    }
  }
  return true;
}

bool oc_covariance_of(const struct oc_triangle *triangle, enum oc_model model, double degrees,
                      struct oc_covariance *covariance) {
  size_t count = oc_model_form(model)->count;
  *covariance = (struct oc_covariance){.degrees = degrees};
  if (count == 0 || triangle->count != count * (count + 1) / 2)
    return false;
  const double *next = triangle->at;
  for (size_t i = 0; i < count; i++)
    for (size_t j = 0; j <= i; j++)
      covariance->of[i][j] = covariance->of[j][i] = *next++;
  return is_covariance(covariance, count);
}

void oc_covariance_add(struct oc_text *text, const struct oc_covariance *covariance,
                       enum oc_model model) {
  for (size_t i = 0; i < oc_model_form(model)->count; i++)
    for (size_t j = 0; j <= i; j++) {
      oc_text_add(text, i > 0 ? " " : "");
      oc_text_add_number(text, covariance->of[i][j]);
    }
}

/* d(1/T) by each parameter, at a resistance. Parameters that were not fitted have no
 * covariance and so need none. */
static void slopes_by_parameter(const ohm_curve *curve, double r_ohm, double *slope) {
  const double *p = curve->parameters;
  double l = log(r_ohm);
  switch (curve->model) {
  case OC_MODEL_BETA:
    slope[0] = -1 / (p[0] * p[2]);
    slope[2] = -(l - log(p[0])) / (p[2] * p[2]);
    return;
  case OC_MODEL_STEINHART_HART:
    slope[0] = 1;
    slope[1] = l;
    slope[2] = l * l * l;
    return;
  case OC_MODEL_FOUR_TERM:
    l -= log(p[0]);
    slope[1] = 1;
    slope[2] = l;
    slope[3] = l * l;
    slope[4] = l * l * l;
    return;
  default:
    slope[0] = NAN;
  }
}

double oc_covariance_u_k(const struct oc_covariance *covariance, const ohm_curve *curve,
                         double r_ohm, double t_c) {
  double slope[OC_PARAMETERS_MAX] = {0};
  double variance = 0;
  slopes_by_parameter(curve, r_ohm, slope);
  for (size_t i = 0; i < OC_PARAMETERS_MAX; i++)
    for (size_t j = 0; j < OC_PARAMETERS_MAX; j++)
      variance += slope[i] * covariance->of[i][j] * slope[j];
  double t_k = oc_kelvin(t_c);
  return t_k * t_k * sqrt(fmax(variance, 0));
}
