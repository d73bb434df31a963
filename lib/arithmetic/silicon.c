/* SPDX-License-Identifier: MIT */
#include "silicon.h"

double oc_silicon_ratio(const struct oc_silicon *silicon, double t_c) {
  double d = t_c - 25;
  return 1 + d * (silicon->alpha_per_k + silicon->beta_per_k2 * d);
}

double oc_silicon_slope(const struct oc_silicon *silicon, double t_c) {
  return silicon->alpha_per_k + 2 * silicon->beta_per_k2 * (t_c - 25);
}

double oc_silicon_temperature_c(const struct oc_silicon *silicon, double ratio) {
  double a = silicon->alpha_per_k;
  double rest = ratio - 1;
  /* At the turn itself round-off may leave a little less than nothing. */
  double root = sqrt(fmax(0, a * a + 4 * silicon->beta_per_k2 * rest));
  return 25 + 2 * rest / (a + root);
}
