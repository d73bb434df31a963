/* SPDX-License-Identifier: MIT */
/* Preferred values of resistors. */
#ifndef OC_PREFERRED_H
#define OC_PREFERRED_H

#include "../ground/internal.h"

/* What shops carry, common practice. */
#define OC_LEAST_PREFERRED_OHM    1.0
#define OC_GREATEST_PREFERRED_OHM 1e7

enum { OC_PREFERRED_MAX = 7 * 96 + 1 };

/** All values of a series from the least to the greatest; how many. */
size_t oc_preferred_all(ohm_series series, double values_ohm[OC_PREFERRED_MAX]);

/** The nearest of some rising values by ratio; of two as near, the smaller. */
double oc_preferred_of(const double *values_ohm, size_t count, double r_ohm);

#endif
