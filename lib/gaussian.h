/* SPDX-License-Identifier: MIT */
/* The normal distribution: of one quantity, and of a few together. */
#ifndef OHM_GAUSSIAN_H
#define OHM_GAUSSIAN_H

#include "internal.h"

enum { OHM_GAUSSIAN_MAX = 17 };

/** Probability below x of the standard normal distribution. */
double ohm_normal_below(double x);

/** Logarithm of the probability between low and high, low <= high, however far out. */
double ohm_normal_log_between(double low, double high);

/** x with ohm_normal_below(x) equal to p; infinite at 0 and 1. */
double ohm_normal_quantile(double p);

/** A covariance, then its lower triangular factor: covariance = factor factor^T. */
struct ohm_gaussian {
  size_t count;
  double factor[OHM_GAUSSIAN_MAX][OHM_GAUSSIAN_MAX];
};

/** Factor the covariance that lies in the lower triangle of factor.
 *  Return  false when it is not positive definite. */
bool ohm_gaussian_factor(struct ohm_gaussian *gaussian);

/** Deviations as independent ones of unit variance, in order: each given those before
 *  it. In place is allowed. */
void ohm_gaussian_whiten(const struct ohm_gaussian *gaussian, const double *deviation,
                         double *white);

/** Logarithm of the density at no deviation. */
double ohm_gaussian_log_peak(const struct ohm_gaussian *gaussian);

#endif
