/* SPDX-License-Identifier: MIT */
/* The normal distribution: of one quantity, and of a few together. */
#ifndef OC_GAUSSIAN_H
#define OC_GAUSSIAN_H

#include "../ground/internal.h"

enum { OC_GAUSSIAN_MAX = 17 };

#define OC_SQRT_HALF       0.70710678118654752
#define OC_LOG_ROOT_TWO_PI 0.91893853320467274

/** Probability below x of the standard normal distribution. */
double oc_normal_below(double x);

/** Logarithm of the probability between low and high, low <= high, however far out. */
double oc_normal_log_between(double low, double high);

/** x with oc_normal_below(x) equal to p; infinite at 0 and 1. */
double oc_normal_quantile(double p);

/** A covariance, then its lower triangular factor: covariance = factor factor^T. */
struct oc_gaussian {
  size_t count;
  double factor[OC_GAUSSIAN_MAX][OC_GAUSSIAN_MAX];
};

/** Factor the covariance that lies in the lower triangle of factor.
 *  Return  false when it is not positive definite. */
bool oc_gaussian_factor(struct oc_gaussian *gaussian);

/** Deviations as independent ones of unit variance, in order: each given those before
 *  it. In place is allowed. */
void oc_gaussian_whiten(const struct oc_gaussian *gaussian, const double *deviation, double *white);

/** Logarithm of the density at no deviation. */
double oc_gaussian_log_peak(const struct oc_gaussian *gaussian);

#endif
