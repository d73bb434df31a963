/* SPDX-License-Identifier: MIT */
/* When a fan starts whose module does not see what the sensor has. */
#ifndef OC_FAN_START_H
#define OC_FAN_START_H

#include "fault.h"
#include "likelihood.h"

/**
 * The true temperature at which a fan starts whose module sees series_ohm more than the
 * sensor has, factor times that. The curve has to fall.
 *
 * Return  degrees Celsius; INFINITY for never up to OC_NEVER_C, -INFINITY for always
 */
double oc_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor);

/** The same with a leakage across the sensor, siemens. */
double oc_start_across(const ohm_curve *curve, double fan_c, double leakage_s);

/**
 * The same of the part that readings were taken of, behind a fault, in the place of the sensor
 * that the module's curve is of; it need not be of that curve. It goes through the hottest
 * reading: where in its band it lies there, it lies elsewhere. Both curves have to fall.
 *
 * In      fault  of what was read there no more than nearly all is taken for it
 *         off    of that reading, in standard uncertainties
 * Return  as oc_start_behind()
 */
double oc_start_of_part(const ohm_curve *curve, double fan_c, const struct oc_evidence *part,
                        const struct oc_fault *fault, double off);

/** From when to when a fan starts, degrees Celsius; -INFINITY for always, INFINITY for
 *  never. */
struct oc_starts {
  double low_c;
  double high_c;
};

/** With a fault between two sizes, the reading off by up to two standard uncertainties. */
struct oc_starts oc_starts_of_part(const ohm_curve *curve, double fan_c,
                                   const struct oc_evidence *part, enum oc_fault_shape shape,
                                   double low, double high);

#endif
