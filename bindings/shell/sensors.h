/* SPDX-License-Identifier: MIT */
/* The sensor a person named. */
#ifndef OHM_SENSORS_H
#define OHM_SENSORS_H

#include <ohmcurve.h>

/**
 * Find a sensor in the catalogue, or read it from its file; notes are said.
 *
 * Return  the sensor, for ohm_sensor_free(); NULL with the exit status after
 *         saying why.
 */
ohm_sensor *ohm_sensor_named(const char *name, int *status);

/** Say that place and what together lie outside of the curve, how far that reaches,
 *  and the advice. Returns OHM_EXIT_DATA. */
int ohm_refuse_outside(const ohm_sensor *sensor, const char *place, const char *what,
                       const char *advice);

#endif
