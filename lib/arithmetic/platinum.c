/* SPDX-License-Identifier: MIT */
#include "platinum.h"

#include <float.h>

/* IEC 60751: R = R0 (1 + A t + B t^2) from 0 C up, below it + C (t - 100) t^3. */
static const double A = 3.9083e-3;
static const double B = -5.775e-7;
static const double C = -4.183e-12;

double oc_platinum_ratio(double t_c) {
  double ratio = 1 + t_c * (A + B * t_c);
  return t_c < 0 ? ratio + C * (t_c - 100) * t_c * t_c * t_c : ratio;
}

double oc_platinum_slope(double t_c) {
  double slope = A + 2 * B * t_c;
  return t_c < 0 ? slope + C * t_c * t_c * (4 * t_c - 300) : slope;
}

double oc_platinum_temperature_c(double ratio) {
  /* The root of the quadratic, in the form without cancellation near 0 C. */
  double rest = ratio - 1;
  double t_c = 2 * rest / (A + sqrt(A * A + 4 * B * rest));
  if (t_c >= 0)
    return t_c;
  /* Below 0 C it starts within 3 K of the quartic's, which is nearly straight. */
  for (int step = 0; step < 20; step++) {
    double change = (oc_platinum_ratio(t_c) - ratio) / oc_platinum_slope(t_c);
    t_c -= change;
    if (fabs(change) <= 4 * DBL_EPSILON * fabs(t_c))
      break;
  }
  return t_c;
}
