/* SPDX-License-Identifier: MIT */
/* What was measured and how to judge it, as the command line tells it. */
#ifndef OHM_MEASUREMENT_H
#define OHM_MEASUREMENT_H

#include <ohmcurve.h>

#include "arguments.h"

enum { OHM_MEASUREMENT_MAX = 16 };

struct ohm_measurement {
  size_t count;
  ohm_reading readings[OHM_MEASUREMENT_MAX];
  ohm_reference references[OHM_MEASUREMENT_MAX]; /**< each of its reading */
  ohm_meter meter;
  ohm_check check;
};

/** Read the operands, those after the sensor where there is one, and the options of check, all but
 * the name of the band for its own sake. Returns the exit status, after saying what is wrong. */
int ohm_measurement_read(const struct ohm_arguments *arguments,
                         struct ohm_measurement *measurement);

/** Read one option's value. Each returns the exit status, after saying what is wrong. */
int ohm_measurement_read_level(const char *text, double *level);
int ohm_measurement_read_fan(const char *text, double *fan_c);
int ohm_measurement_read_limit(const char *text, double *limit_k);

/** Read the options about the ohmmeter, which the verb need not have. */
int ohm_measurement_read_meter(const struct ohm_arguments *arguments, ohm_meter *read);

/** Read the options of meter and check alone. */
int ohm_measurement_read_how(const struct ohm_arguments *arguments,
                             struct ohm_measurement *measurement);

/** Read the operands alone. The temperature of --at is that of every reading that
 *  carries none. Operands are cut at their @. */
int ohm_measurement_read_readings(const struct ohm_arguments *arguments,
                                  struct ohm_measurement *measurement);

#endif
