/* SPDX-License-Identifier: MIT */
/* What a maker allows: its notation, and the limits it makes. */
#ifndef OHM_TOLERANCE_H
#define OHM_TOLERANCE_H

#include "sensor.h"
#include "status.h"

/** Limits and nominal at a temperature. */
struct ohm_band {
  double low_ohm;
  double nominal_ohm;
  double high_ohm;
};

/** Whether a tolerance says anything at a temperature: OHM_OK, OHM_NOT_FOUND,
 *  OHM_OUT_OF_RANGE, as ohm_sensor_band(). */
ohm_status ohm_tolerance_covers(const ohm_curve *curve, const struct ohm_tolerance *tolerance,
                                double t_c);

/** The band by a tolerance. Just outside what is covered the nominal follows the
 *  curve's end tangent and the relative half-widths are held: only for the spread of
 *  a temperature that is itself covered, and for what could hide. */
struct ohm_band ohm_tolerance_band(const ohm_curve *curve, const struct ohm_tolerance *tolerance,
                                   double t_c);

/** The tolerance of a maker's band. */
struct ohm_tolerance ohm_tolerance_of_maker(const struct ohm_maker_band *band);

/**
 * Which of a sensor's tolerances to judge by at a temperature: the named band, or of
 * its own and all bands that say something there the widest.
 *
 * In      name     NULL for the widest
 * Out     chosen   the tolerance; when nothing covers t_c but some say something
 *                  elsewhere, one of those
 *         band     the chosen band; NULL for the sensor's own tolerance
 * Status  as ohm_tolerance_covers(); OHM_BAD_ARGUMENT no band has that name.
 */
ohm_status ohm_tolerance_choose(const ohm_sensor *sensor, const char *name, double t_c,
                                struct ohm_tolerance *chosen, const struct ohm_maker_band **band);

/**
 * Read a tolerance as a sensor file states it: "5 %", "1 % at 25 C, beta 0.75 %",
 * "0.5 K", "0.3 K + 0.005 |t|" (t in degrees Celsius), or "class AA", "class A",
 * "class B", "class C" of IEC 60751, which are of that last form.
 *
 * Out     tolerance  unchanged unless OHM_OK
 * Status  OHM_OK; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE a part is negative, nothing is
 *         allowed at all, or 100 % and more.
 */
ohm_status ohm_tolerance_scan(const char *text, size_t length, struct ohm_tolerance *tolerance);

/** Append a tolerance in that notation; not for one of rows. */
void ohm_tolerance_add(struct ohm_text *text, const struct ohm_tolerance *tolerance);

#endif
