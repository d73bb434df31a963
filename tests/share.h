/* SPDX-License-Identifier: MIT */
/*
 * How much of a simulation is made: all of it, or the share that OHM_SIMULATE_SHARE says,
 * the same each time. What is left of the draws scatters more, and a limit gives way by
 * that; what is left of the cases is held as closely as ever.
 */
#ifndef OHM_TESTS_SHARE_H
#define OHM_TESTS_SHARE_H

#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../include/ohmcurve.h"
#include "draw.h"

static inline double share(void) {
  const char *text = getenv("OHM_SIMULATE_SHARE");
  double made = 1;
  if (!text || (ohm_number_read(text, strlen(text), &made) == OHM_OK && 0 < made && made <= 1))
    return made;
  fprintf(stderr,
          "OHM_SIMULATE_SHARE is \"%s\"; it is a number above 0, up to 1: give 0.1, or unset it.\n",
          text);
  exit(2);
}

static inline int share_of(size_t all) {
  return (int)ceil(share() * (double)all);
}

/* Whether the case of this number is one of those made. */
static inline bool share_has(uint64_t number) {
  return share() == 1 || draw_share(&number) < share();
}

/* What a limit on a rate gives way by: four standard deviations over the draws that are
 * made, less those over all of them. */
static inline double share_scatter(double rate, double made) {
  return 4 * sqrt(rate * (1 - rate) / made) * (1 - sqrt(share()));
}

#endif
