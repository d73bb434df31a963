/* SPDX-License-Identifier: MIT */
/* The sensor a person named. */
#ifndef SHELL_SENSORS_H
#define SHELL_SENSORS_H

#include <ohmcurve.h>

/** Name of the sensor that nobody knows; of check alone. */
extern const char shell_sensor_unknown[];

/**
 * Find a sensor built in by its name, read it from its file, or find the only
 * one whose sources hold the given words, and say so; notes are said.
 *
 * Return  the sensor, for ohm_sensor_free(); NULL with the exit status after
 *         saying why.
 */
ohm_sensor *shell_sensor_named(const char *name, int *status);

/** Say that place and what together lie outside of the curve, how far that reaches,
 *  and the advice. Returns SHELL_EXIT_DATA. */
int shell_refuse_outside(const ohm_sensor *sensor, const char *place, const char *what,
                         const char *advice);

#endif
