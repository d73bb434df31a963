/* SPDX-License-Identifier: MIT */
/* What a fault makes of a sensor's resistance. */
#ifndef OC_FAULT_H
#define OC_FAULT_H

#include "../curves/curve.h"

/** A fault that has a size. */
enum oc_fault_shape {
  OC_FAULT_SERIES,  /**< ohm, adds */
  OC_FAULT_LEAKAGE, /**< siemens, shunts */
  OC_FAULT_DRIFT,   /**< logarithm of a factor on the resistance */
  OC_FAULT_BETA,    /**< kelvin, added to beta about 25 C */
  OC_FAULT_SHAPES
};

/** Beta is told about here, as is everyone's. */
#define OC_BETA_T0_C 25.0

/** A size of 0 is no fault, whatever its shape. */
struct oc_fault {
  enum oc_fault_shape shape;
  double size;
};

/** Logarithm of the resistance that a sound element of a temperature shows behind the
 *  fault. NaN when the size leaves no resistance. */
double oc_fault_log(const struct oc_fault *fault, double log_element, double t_c);

/** The other way round: the sound element behind what was seen. NaN when none can be there. */
double oc_fault_element(const struct oc_fault *fault, double log_seen, double t_c);

/** The size that makes of a sound element what was seen; infinite where the shape does
 *  nothing, as beta at 25 C. */
double oc_fault_size(enum oc_fault_shape shape, double log_element, double log_seen, double t_c);

/** Derivative of oc_fault_log() by the size. */
double oc_fault_slope(const struct oc_fault *fault, double log_element, double t_c);

/** Down to here a start is looked for; colder is always. */
#define OC_COLDEST_START_C (-60.0)

/** Resistance that a module sees at a temperature; falls as it rises. */
typedef double (*oc_resistance_at)(const void *context, double t_c);

/** How late a fan starts that waits for the resistance start_ohm, set for fan_c, kelvin.
 *  INFINITY for never, -INFINITY for always. */
double oc_fault_lateness(oc_resistance_at resistance, const void *context, double start_ohm,
                         double fan_c);

#endif
