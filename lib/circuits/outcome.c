/* SPDX-License-Identifier: MIT */
#include "outcome.h"

/* Shares of a limit at which one outcome goes over into the next. */
static const double below[] = {0.05, 0.3, 0.6};
static const double above[] = {3, 10};

enum { BELOW = 1 + sizeof below / sizeof below[0], ABOVE = 1 + sizeof above / sizeof above[0] };

_Static_assert(BELOW + 1 + ABOVE == OC_OUTCOMES, "an outcome is a bit");

static int place_of(struct oc_limits limits, double number) {
  int within = isnan(limits.low) ? 0 : BELOW;
  int place = 0;
  if (number < limits.low) {
    while (place + 1 < BELOW && !(number < below[place] * limits.low))
      place++;
    return place;
  }
  if (!(number > limits.high))
    return within;
  while (place + 1 < ABOVE && !(number < above[place] * limits.high))
    place++;
  return within + 1 + place;
}

static oc_outcomes from_to(int first, int last) {
  return (oc_outcomes)((2u << last) - (1u << first));
}

oc_outcomes oc_outcome_within(struct oc_limits limits) {
  int within = isnan(limits.low) ? 0 : BELOW;
  return from_to(within, within);
}

oc_outcomes oc_outcome_numbers(struct oc_limits limits) {
  int within = isnan(limits.low) ? 0 : BELOW;
  return from_to(0, isnan(limits.high) ? within : within + ABOVE);
}

oc_outcomes oc_outcome_range(struct oc_limits limits, double from, double to) {
  return from_to(place_of(limits, from), place_of(limits, to));
}
