/* SPDX-License-Identifier: MIT */
/* Preferred values of resistors. */
#ifndef OHM_PREFERRED_H
#define OHM_PREFERRED_H

#include "internal.h"

/* What shops carry, common practice. */
#define OHM_LEAST_PREFERRED_OHM    1.0
#define OHM_GREATEST_PREFERRED_OHM 1e7

enum { OHM_PREFERRED_MAX = 7 * 96 + 1 };

/** All values of a series from the least to the greatest; how many. */
size_t ohm_preferred_all(ohm_series series, double values_ohm[OHM_PREFERRED_MAX]);

/** The nearest of some rising values by ratio; of two as near, the smaller. */
double ohm_preferred_of(const double *values_ohm, size_t count, double r_ohm);

#endif
