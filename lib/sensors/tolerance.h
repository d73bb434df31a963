/* SPDX-License-Identifier: MIT */
/* What a maker allows: its notation, and the limits it makes. */
#ifndef OC_TOLERANCE_H
#define OC_TOLERANCE_H

#include "../curves/curve.h"
#include "../ground/text.h"

enum oc_tolerance_kind {
  OC_TOLERANCE_NONE,
  OC_TOLERANCE_PERCENT, /**< of resistance, everywhere */
  OC_TOLERANCE_BETA,    /**< of resistance at one temperature, and of beta */
  OC_TOLERANCE_KELVIN,  /**< of temperature: fixed, and growing with |t| in C */
  OC_TOLERANCE_ROWS     /**< least and greatest resistance at printed rows */
};

struct oc_tolerance {
  enum oc_tolerance_kind kind;
  double percent;             /**< OC_TOLERANCE_PERCENT and _BETA */
  double at_c;                /**< OC_TOLERANCE_BETA */
  double beta_percent;        /**< OC_TOLERANCE_BETA */
  double kelvin;              /**< OC_TOLERANCE_KELVIN */
  double kelvin_per_c;        /**< OC_TOLERANCE_KELVIN, times |t| */
  const ohm_sensor_row *rows; /**< OC_TOLERANCE_ROWS: some with limits, rising */
  size_t row_count;
};

/** The limits one maker printed for a curve that several use. */
struct oc_maker_band {
  char *name;
  char *source;
  size_t row_count;
  ohm_sensor_row *rows; /**< in rising temperature, with limits, no nominal */
};

/** The nominal of a row: as printed, else the geometric middle of its limits. */
double oc_row_nominal(const ohm_sensor_row *row);

bool oc_row_has_limits(const ohm_sensor_row *row);

/** Limits and nominal at a temperature. */
struct oc_band {
  double low_ohm;
  double nominal_ohm;
  double high_ohm;
};

/** Whether a tolerance says anything at a temperature: OHM_OK, OHM_NOT_FOUND,
 *  OHM_OUT_OF_RANGE, as ohm_sensor_band(). */
ohm_status oc_tolerance_covers(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                               double t_c);

/** The band by a tolerance. Just outside what is covered the nominal follows the
 *  curve's end tangent and the relative half-widths are held: only for the spread of
 *  a temperature that is itself covered, and for what could hide. */
struct oc_band oc_tolerance_band(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                                 double t_c);

/** The tolerance of a maker's band. */
struct oc_tolerance oc_tolerance_of_maker(const struct oc_maker_band *band);

/**
 * Read a tolerance as a sensor file states it: "5 %", "1 % at 25 C, beta 0.75 %",
 * "0.5 K", "0.3 K + 0.005 |t|" (t in degrees Celsius), or "class AA", "class A",
 * "class B", "class C" of IEC 60751, which are of that last form.
 *
 * Out     tolerance  unchanged unless OHM_OK
 * Status  OHM_OK; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE a part is negative, nothing is
 *         allowed at all, or 100 % and more.
 */
ohm_status oc_tolerance_scan(const char *text, size_t length, struct oc_tolerance *tolerance);

/** Append a tolerance in that notation; not for one of rows. */
void oc_tolerance_add(struct oc_text *text, const struct oc_tolerance *tolerance);

#endif
