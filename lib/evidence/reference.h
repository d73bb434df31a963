/* SPDX-License-Identifier: MIT */
/* How warm the sensor really is, with what makes that uncertain. */
#ifndef OC_REFERENCE_H
#define OC_REFERENCE_H

#include "../arithmetic/estimate.h"

/**
 * Temperature in degrees Celsius by cause.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  whether the limit was taken for granted
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is NaN, infinite,
 *         negative where it may not be, or no such constant; OHM_OUT_OF_RANGE below
 *         absolute zero or above 1000 C.
 */
ohm_status oc_reference_budget(const ohm_reference *reference, struct oc_budget *budget,
                               bool *assumed);

#endif
