/* SPDX-License-Identifier: MIT */
/* What every room includes first. */
#ifndef OC_INTERNAL_H
#define OC_INTERNAL_H

#if defined(__FAST_MATH__) || (defined(__FINITE_MATH_ONLY__) && __FINITE_MATH_ONLY__)
#error "ohmcurve tells bad values apart by NaN: build it without -ffast-math"
#endif

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "../../include/ohmcurve.h"
#include "trade.h"

/** Degrees Celsius at 0 K, exact by definition of the Celsius scale. */
#define OC_ZERO_C (-273.15)

/** No temperature anywhere is above this. */
#define OC_HOTTEST_C 1000.0

/** No resistance is above this. */
#define OC_GREATEST_OHM 1e12

static inline double oc_kelvin(double t_c) {
  return t_c - OC_ZERO_C;
}

static inline double oc_celsius(double t_k) {
  return t_k + OC_ZERO_C;
}

/** NaN is never inside. */
static inline bool oc_inside(double low, double x, double high) {
  return low <= x && x <= high;
}

#endif
