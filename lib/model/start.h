/* SPDX-License-Identifier: MIT */
/* When a fan starts whose module does not see what the sensor has. */
#ifndef OC_START_H
#define OC_START_H

#include "fault.h"
#include "likelihood.h"

/**
 * The true temperature at which a fan starts whose module sees series_ohm more than the
 * sensor has, factor times that. The curve has to fall.
 *
 * Return  degrees Celsius; INFINITY for never up to OC_NEVER_C, -INFINITY for always
 */
double oc_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor);

/** The same of another part, with factor times its nominal resistance, in the place of the
 *  sensor that the module's curve is of. Both curves have to fall. */
double oc_start_of_other(const ohm_curve *curve, double fan_c, const ohm_curve *other,
                         double factor);

/** The same with a leakage across the sensor, siemens. */
double oc_start_across(const ohm_curve *curve, double fan_c, double leakage_s);

/** From when to when a fan starts, degrees Celsius; -INFINITY for always, INFINITY for
 *  never. */
struct oc_starts {
  double low_c;
  double high_c;
};

/** With a fault between two sizes. */
struct oc_starts oc_starts_of_fault(const ohm_curve *curve, double fan_c, enum oc_fault_shape shape,
                                    double low, double high);

/** With a good part, the one that readings were taken of: anywhere in the band that is
 *  allowed where it was hottest. */
struct oc_starts oc_starts_of_part(const ohm_curve *curve, double fan_c,
                                   const struct oc_evidence *part);

#endif
