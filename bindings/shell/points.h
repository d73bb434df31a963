/* SPDX-License-Identifier: MIT */
/* The points of fit: OHMS@TEMP, each with its limit behind +- or without. */
#ifndef OHM_POINTS_H
#define OHM_POINTS_H

#include <ohmcurve.h>

#include "arguments.h"

/* One more than a fit takes, so that the library can say that they are too many. */
enum { OHM_POINTS_ROOM = 4097 };

struct ohm_points {
  size_t count;
  ohm_fit_point list[OHM_POINTS_ROOM];
};

/** Read the operands, or standard input when there are none. Returns the exit status:
 *  OHM_EXIT_DATA after saying which could not be read, the others are kept. */
int ohm_points_read(const struct ohm_arguments *arguments, struct ohm_points *points);

#endif
