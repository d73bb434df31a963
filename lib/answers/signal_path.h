/* SPDX-License-Identifier: MIT */
/* Where the way from a sensor to what its module reports parts. */
#ifndef OC_SIGNAL_PATH_H
#define OC_SIGNAL_PATH_H

#include "path_point.h"

/**
 * Say where the way from the sensor to what the module reports parts, from any of: ohms
 * at the sensor's own pins (plug off, key off), volts at the module's pin (plug on, key
 * on), degrees the module reports, and what a thermometer says. All at about the same
 * temperature.
 *
 * Each is turned into the resistance it means; two part when they differ by more than
 * their expanded uncertainty at the level, rectangular limits carried through the slopes;
 * of three, each pair is allowed a third of the doubt.
 * What module and volts agree on against the sensor is plug or wire: more ohms are in
 * series, fewer a leakage. Where sensor and module agree against the volts, these
 * were read from another ground, or the pull-up is another. Where sensor and volts agree
 * against the module, its curve is. With ohms and thermometer the sensor is judged as by
 * oc_bath_check(). A value that never moves, or is a known substitute that
 * disagrees, is questioned first. r_ohm and t_c are as seen from the volts.
 *
 * Verdict  "within" they agree; "outside" they part; "undecided" it cannot be told.
 * Job      what parts them, as the same ohms in series or across (or as the same factor,
 *          of a curve), moves the start of the fan: "within" when that is limit_k at
 *          most whatever it could be at the level.
 *
 * In      module    how its input is made; NULL for all assumed, without volts
 *         reading, volts, reported, reference   NULL for what was not taken
 *         meter, pin   NULL for all assumed
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT no sensor, no finding, or nothing was
 *         taken; OHM_BAD_ARGUMENT a member is NaN, infinite, of the wrong sign or no such
 *         constant, or volts come without a pull-up; OHM_OUT_OF_RANGE.
 * Source  JCGM 100:2008, clauses 4.3.7, 5.1 and 6.2.
 */
ohm_status oc_pin_check(const ohm_sensor *sensor, const oc_module *module,
                        const oc_reading *reading, const oc_meter *meter, const oc_volts *volts,
                        const oc_reported *reported, const oc_reference *reference,
                        const oc_pin *pin, ohm_finding *finding);

#endif
