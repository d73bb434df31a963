/* SPDX-License-Identifier: MIT */
/* The points of fit: OHMS@TEMP, each with its limit behind +- or without. */
#ifndef SHELL_POINTS_H
#define SHELL_POINTS_H

#include <ohmcurve.h>

#include "arguments.h"

/* One more than a fit takes, so that the library can say that they are too many. */
enum { SHELL_POINTS_ROOM = 4097 };

struct shell_points {
  size_t count;
  ohm_fit_point list[SHELL_POINTS_ROOM];
};

/** Read one point; place begins the sentence of what is wrong. Returns the exit status. */
int shell_point_read(const char *place, const char *given, ohm_fit_point *point);

/** Read the operands, or standard input when there are none. Returns the exit status:
 *  SHELL_EXIT_DATA after saying which could not be read, the others are kept. */
int shell_points_read(const struct shell_arguments *arguments, struct shell_points *points);

#endif
