/* SPDX-License-Identifier: MIT */
/* Which test of a circuit is to be made next. */
#ifndef OC_NEXT_TEST_H
#define OC_NEXT_TEST_H

#include "candidates.h"

/** Whether its tools are to be had, and what has to be seen before was. */
bool oc_next_test_can_be_made(const struct oc_deduction *it, size_t test);

/** What was too near to tell twice is so a third time. */
bool oc_next_test_was_made_twice(const struct oc_deduction *it, size_t test);

/**
 * Whether the fan starts, whether it was asked, then what tells most in a minute; what was too near
 * to tell once more when nothing else is left.
 *
 * Out     bits  it is expected to tell; NaN where that is not why it is made
 * Return  OC_NO_PLACE when none is left
 */
size_t oc_next_test(const struct oc_deduction *it, struct oc_candidates *candidates, double *bits);

#endif
