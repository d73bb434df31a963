/* SPDX-License-Identifier: MIT */
/* The current through a blade fuse, from the millivolts over it. */
#ifndef OC_FUSE_H
#define OC_FUSE_H

#include "../ground/internal.h"

/**
 * In      name    type and rating as one word, "ATO30"; length bytes
 *         mv      millivolts over it
 * Return  amperes; NaN for a type or rating that is not in the table, beyond what the
 *         rating carries, or for no number
 */
double oc_fuse_amperes(const char *name, size_t length, double mv);

#endif
