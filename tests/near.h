/* SPDX-License-Identifier: MIT */
/* The comparer: the one way in which tests call two numbers equal. */
#ifndef OHM_TESTS_NEAR_H
#define OHM_TESTS_NEAR_H

#include <math.h>
#include <stdbool.h>

/** True only when all three are finite, tol >= 0 and |got - want| <= tol. */
static inline bool is_near(double got, double want, double tol) {
  return isfinite(got) && isfinite(want) && isfinite(tol) && 0.0 <= tol && fabs(got - want) <= tol;
}

#endif
