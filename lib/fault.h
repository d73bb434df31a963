/* SPDX-License-Identifier: MIT */
/* What a fault makes of a sensor's resistance. */
#ifndef OHM_FAULT_H
#define OHM_FAULT_H

#include "curve.h"

/** A fault that has a size. */
enum ohm_fault_shape {
  OHM_FAULT_SERIES,  /**< ohm, adds */
  OHM_FAULT_LEAKAGE, /**< siemens, shunts */
  OHM_FAULT_DRIFT,   /**< logarithm of a factor on the resistance */
  OHM_FAULT_BETA,    /**< kelvin, added to beta about 25 C */
  OHM_FAULT_SHAPES
};

/** A size of 0 is no fault, whatever its shape. */
struct ohm_fault {
  enum ohm_fault_shape shape;
  double size;
};

/** Logarithm of the resistance that a sound element of a temperature shows behind the
 *  fault. NaN when the size leaves no resistance. */
double ohm_fault_log(const struct ohm_fault *fault, double log_element, double t_c);

/** The size that makes of a sound element what was seen; infinite where the shape does
 *  nothing, as beta at 25 C. */
double ohm_fault_size(enum ohm_fault_shape shape, double log_element, double log_seen, double t_c);

/** Up to here a fan that has not started is said never to. */
#define OHM_NEVER_C 130.0

/** Resistance that a module sees at a temperature; falls as it rises. */
typedef double (*ohm_resistance_at)(const void *context, double t_c);

/** How late a fan starts that waits for the resistance start_ohm, set for fan_c, kelvin.
 *  INFINITY for never, -INFINITY for always. */
double ohm_fault_lateness(ohm_resistance_at resistance, const void *context, double start_ohm,
                          double fan_c);

/** The same for a nominal sensor with a fault. */
double ohm_fault_late_by(const ohm_curve *curve, const struct ohm_fault *fault, double fan_c);

#endif
