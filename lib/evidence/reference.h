/* SPDX-License-Identifier: MIT */
/* How warm the sensor really is, with what makes that uncertain. */
#ifndef OC_REFERENCE_H
#define OC_REFERENCE_H

#include "../arithmetic/estimate.h"

/** The temperature of the sensor and how well it is known. */
typedef struct oc_reference {
  int kind;            /**< an ohm_reference_kind */
  double t_c;          /**< degrees Celsius; ignored for ice and boiling water */
  int accuracy;        /**< an oc_standing, of the next two */
  double limit_k;      /**< within this: rectangular, kelvin, up to 1000 */
  double u_k;          /**< standard uncertainty of a further normal part, kelvin, up to 1000 */
  double altitude_m;   /**< above sea level, -430 to 5000 */
  double pressure_hpa; /**< where you stand, not reduced to sea level, 500 to 1100 */
  bool not_celsius;    /**< it was told in another unit */
} oc_reference;

#define OC_REFERENCE_INIT                                                                          \
  { OHM_REFERENCE_THERMOMETER, 0.0, OC_ASSUMED, 0.0, 0.0, 0.0, 0.0, false }

/**
 * Read a reference: 21.5C, 70F, 294.7K, ice, boil, boil@1200m, boil@870hPa,
 * infrared@80C; each may end in +-1 (or with a plus-minus sign), a limit in the same
 * unit. A temperature without a unit is refused, and so is a pressure given with an
 * altitude: such a one was reduced to sea level.
 *
 * Out     reference  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below
 *         absolute zero or above 1000 degrees C, altitude or pressure out of range.
 */
ohm_status oc_reference_read(const char *text, oc_reference *reference, ohm_error *error);

/**
 * Read a tolerance as percent of resistance: 5%.
 *
 * Out     percent  NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE not above 0
 *         and below 100.
 */
ohm_status oc_tolerance_read(const char *text, double *percent, ohm_error *error);

/**
 * Temperature in degrees Celsius by cause.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  whether the limit was taken for granted
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is NaN, infinite,
 *         negative where it may not be, or no such constant; OHM_OUT_OF_RANGE below
 *         absolute zero or above 1000 C.
 */
ohm_status oc_reference_budget(const oc_reference *reference, struct oc_budget *budget,
                               bool *assumed);

/** Whether two readings were taken in one bath: the second repeats the first. */
static inline bool oc_reference_is_same(const oc_reference *a, const oc_reference *b) {
  return a->kind == b->kind && a->t_c == b->t_c && a->altitude_m == b->altitude_m &&
         a->pressure_hpa == b->pressure_hpa;
}

/** Whether one instrument says how warm it is, and so errs alike in all its readings. */
static inline bool oc_reference_is_one_thermometer(int kind) {
  return kind == OHM_REFERENCE_THERMOMETER || kind == OHM_REFERENCE_INFRARED;
}

#endif
