/* SPDX-License-Identifier: MIT */
/* When a fan starts whose module does not see what the sensor has. */
#ifndef OHM_START_H
#define OHM_START_H

#include "internal.h"

/**
 * The true temperature at which a fan starts whose module sees series_ohm more than the
 * sensor has, factor times that. The curve has to fall.
 *
 * Return  degrees Celsius; INFINITY for never up to OHM_NEVER_C, -INFINITY for always
 */
double ohm_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor);

/** The same with a leakage across the sensor, siemens. */
double ohm_start_across(const ohm_curve *curve, double fan_c, double leakage_s);

#endif
