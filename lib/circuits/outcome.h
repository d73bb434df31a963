/* SPDX-License-Identifier: MIT */
/*
 * How a test can come out, a bit each. Of what an eye, an ear or a hand tells: nothing, partly, as
 * it should, or more than it should: a fan that stands still, is slow, runs, runs too fast; a bulb
 * that is dark, dim, bright. Of a number: how far below or above its limits it lies. A set of them
 * is what may be seen, for between any two lies what nobody can tell apart.
 */
#ifndef OC_OUTCOME_H
#define OC_OUTCOME_H

#include "../ground/internal.h"

typedef unsigned char oc_outcomes;

enum {
  OC_OUTCOME_NOTHING = 1,
  OC_OUTCOME_PARTLY = 2,
  OC_OUTCOME_GOOD = 4,
  OC_OUTCOME_MUCH = 8,
  OC_OUTCOME_BAD = OC_OUTCOME_NOTHING | OC_OUTCOME_PARTLY | OC_OUTCOME_MUCH,
  OC_OUTCOME_ANY = OC_OUTCOME_BAD | OC_OUTCOME_GOOD,
  OC_OUTCOMES = 8
};

/** Limits of a number, NaN where there is none. */
struct oc_limits {
  double low;
  double high;
};

/** The one outcome that lies within. */
oc_outcomes oc_outcome_within(struct oc_limits limits);

/** All that a number can have. */
oc_outcomes oc_outcome_numbers(struct oc_limits limits);

/** Those of the numbers from one to another. */
oc_outcomes oc_outcome_range(struct oc_limits limits, double from, double to);

#endif
