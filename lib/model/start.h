/* SPDX-License-Identifier: MIT */
/* When a fan starts whose module does not see what the sensor has. */
#ifndef OC_START_H
#define OC_START_H

#include "../ground/internal.h"

/**
 * The true temperature at which a fan starts whose module sees series_ohm more than the
 * sensor has, factor times that. The curve has to fall.
 *
 * Return  degrees Celsius; INFINITY for never up to OC_NEVER_C, -INFINITY for always
 */
double oc_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor);

/** The same with a leakage across the sensor, siemens. */
double oc_start_across(const ohm_curve *curve, double fan_c, double leakage_s);

#endif
