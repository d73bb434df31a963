/* SPDX-License-Identifier: MIT */
#include "gaussian.h"

#include "cholesky.h"

/* Beyond here erfc() comes near the least doubles and the first terms of its asymptotic
 * series (Abramowitz and Stegun, 26.2.12) are good to 1e-9. */
static const double FAR = 30;

double oc_normal_below(double x) {
  return 0.5 * erfc(-x * OC_SQRT_HALF);
}

static double log_above(double x) {
  if (x < FAR)
    return log(0.5 * erfc(x * OC_SQRT_HALF));
  double s = 1 / (x * x);
  return -x * x / 2 - OC_LOG_ROOT_TWO_PI - log(x) + log1p(-s + 3 * s * s - 15 * s * s * s);
}

double oc_normal_log_between(double low, double high) {
  if (low < 0 && high > 0)
    return log1p(-0.5 * (erfc(-low * OC_SQRT_HALF) + erfc(high * OC_SQRT_HALF)));
  double near = fmin(fabs(low), fabs(high));
  double far = fmax(fabs(low), fabs(high));
  double nearer = log_above(near);
  return nearer + log(-expm1(log_above(far) - nearer));
}

/* By halving, then Newton: the density is never small beside the probability's error. */
double oc_normal_quantile(double p) {
  if (!oc_inside(0, p, 1))
    return NAN;
  if (p == 0 || p == 1)
    return p == 0 ? -INFINITY : INFINITY;
  if (p > 0.5)
    return -oc_normal_quantile(1 - p);
  double low = -40;
  double high = 0;
  for (int i = 0; i < 12; i++) {
    double middle = low + (high - low) / 2;
    if (oc_normal_below(middle) < p)
      low = middle;
    else
      high = middle;
  }
  double x = high;
  for (int i = 0; i < 4; i++)
    x += (log(p) - log_above(-x)) * exp(log_above(-x) + x * x / 2 + OC_LOG_ROOT_TWO_PI);
  return x;
}

bool oc_gaussian_factor(struct oc_gaussian *gaussian) {
  return oc_cholesky_factor(gaussian->factor[0], gaussian->count, OC_GAUSSIAN_MAX);
}

void oc_gaussian_whiten(const struct oc_gaussian *gaussian, const double *deviation,
                        double *white) {
  oc_cholesky_solve_lower(gaussian->factor[0], gaussian->count, OC_GAUSSIAN_MAX, deviation, white);
}

double oc_gaussian_log_peak(const struct oc_gaussian *gaussian) {
  double log_peak = 0;
  for (size_t i = 0; i < gaussian->count; i++)
    log_peak -= OC_LOG_ROOT_TWO_PI + log(gaussian->factor[i][i]);
  return log_peak;
}
