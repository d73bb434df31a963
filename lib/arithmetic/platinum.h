/* SPDX-License-Identifier: MIT */
/* Platinum resistance by IEC 60751: the Callendar-Van Dusen equation. */
#ifndef OC_PLATINUM_H
#define OC_PLATINUM_H

#include "../ground/internal.h"

#define OC_PLATINUM_LOW_C  (-200.0)
#define OC_PLATINUM_HIGH_C 850.0

/** R/R0 at a temperature from -200 to 850 degrees Celsius, and its slope per kelvin. */
double oc_platinum_ratio(double t_c);
double oc_platinum_slope(double t_c);

/** The temperature of a ratio between those of -200 and 850 degrees Celsius. */
double oc_platinum_temperature_c(double ratio);

#endif
