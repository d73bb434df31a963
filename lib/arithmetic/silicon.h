/* SPDX-License-Identifier: MIT */
/* Silicon spreading-resistance element: R = R25 (1 + alpha D + beta D^2), D = t - 25 C. */
#ifndef OC_SILICON_H
#define OC_SILICON_H

#include "../ground/internal.h"

struct oc_silicon {
  double alpha_per_k;
  double beta_per_k2;
};

/** R/R25 at a temperature, and its slope per kelvin. */
double oc_silicon_ratio(const struct oc_silicon *silicon, double t_c);
double oc_silicon_slope(const struct oc_silicon *silicon, double t_c);

/** The temperature of a ratio, on the branch that rises through 25 C. */
double oc_silicon_temperature_c(const struct oc_silicon *silicon, double ratio);

#endif
