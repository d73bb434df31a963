/* SPDX-License-Identifier: MIT */
#include "any_thermistor.h"

enum { BETA_PANELS = 8 };

/* ln(500 kohm / 50 ohm) */
static const double LOG_RANGE = 9.2103403719761836;

/* How far a kelvin of the thermometer moves a logarithm. */
static double per_kelvin(const struct oc_evidence_reading *reading) {
  double t_k = oc_kelvin(reading->at_c);
  return (OC_FLATTEST_BETA_K + OC_STEEPEST_BETA_K) / 2 / (t_k * t_k);
}

static bool factor_errors(struct oc_gaussian *errors, const struct oc_evidence *evidence) {
  errors->count = evidence->count;
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *a = &evidence->readings[i];
    double a_k = per_kelvin(a) * a->thermometer_k / sqrt(3);
    for (size_t j = 0; j <= i; j++) {
      const struct oc_evidence_reading *b = &evidence->readings[j];
      double b_k = per_kelvin(b) * b->thermometer_k / sqrt(3);
      errors->factor[i][j] = oc_evidence_shared(a, b) + a_k * b_k;
    }
    errors->factor[i][i] += a->u_own * a->u_own + a->u_display * a->u_display;
  }
  return oc_gaussian_factor(errors);
}

static double product(const double *a, const double *b, size_t count) {
  double sum = 0;
  for (size_t i = 0; i < count; i++)
    sum += a[i] * b[i];
  return sum;
}

/* At one beta, every R25 drawn over. */
static double log_at_beta(const struct oc_evidence *evidence, const struct oc_gaussian *errors,
                          const double *ones, double beta_k) {
  double off[OC_EVIDENCE_MAX];
  for (size_t i = 0; i < evidence->count; i++)
    off[i] = evidence->readings[i].log_ohm -
             beta_k * (1 / oc_kelvin(evidence->readings[i].at_c) - 1 / oc_kelvin(OC_BETA_T0_C));
  oc_gaussian_whiten(errors, off, off);
  double length = product(ones, ones, evidence->count);
  double along = product(off, ones, evidence->count);
  double across = fmax(0, product(off, off, evidence->count) - along * along / length);
  return -across / 2 + OC_LOG_ROOT_TWO_PI - log(length) / 2 - log(LOG_RANGE);
}

double oc_any_thermistor_log_likelihood(const struct oc_evidence *evidence) {
  enum { NODES = BETA_PANELS * OC_PANEL_NODES };
  struct oc_gaussian errors;
  double ones[OC_EVIDENCE_MAX];
  double beta_k[NODES];
  double weight[NODES];
  double log_here[NODES];
  double greatest = -INFINITY;
  double sum = 0;
  if (evidence->count == 0 || !factor_errors(&errors, evidence))
    return -INFINITY;
  for (size_t i = 0; i < evidence->count; i++)
    ones[i] = 1;
  oc_gaussian_whiten(&errors, ones, ones);
  oc_quadrature_fill(OC_FLATTEST_BETA_K, OC_STEEPEST_BETA_K, BETA_PANELS, beta_k, weight);
  for (size_t k = 0; k < NODES; k++) {
    log_here[k] = log_at_beta(evidence, &errors, ones, beta_k[k]);
    greatest = fmax(greatest, log_here[k]);
  }
  for (size_t k = 0; k < NODES; k++)
    sum += weight[k] / (OC_STEEPEST_BETA_K - OC_FLATTEST_BETA_K) * exp(log_here[k] - greatest);
  return greatest + log(sum) + oc_gaussian_log_peak(&errors);
}
