/* SPDX-License-Identifier: MIT */
/* A sensor at known temperatures. */
#ifndef OC_BATH_H
#define OC_BATH_H

#include "../model/measurement.h"

/**
 * Judge a sensor that lies at a known temperature: a bath, a room, the open air.
 * Two verdicts.
 *
 * Part   is it inside what its maker allows? "within" when p_within reaches the
 *        level, "outside" when p_low or p_high does, else "undecided"; over the errors
 *        of reading and temperature together. A temperature beyond the last printed row
 *        by less than its own standard uncertainty is judged there.
 * Job    is it good enough for the fan, with all that could still hide? The largest
 *        series resistance that could hide is the level-quantile of
 *        max(0, R - low(T)), the smallest leakage that of max(0, 1/R - 1/high(T)); a
 *        sensor at that limit with that fault is what the fan is started by.
 *        "within" when neither that nor plain drift makes it late or early by more
 *        than limit_k, "outside" when the least of them does, else "undecided".
 *
 * In      meter   NULL for all assumed
 *         check   NULL for all defaults
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a
 *         member is NaN, infinite, of the wrong sign or no such constant;
 *         OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of its
 *         range; OHM_NOT_FOUND the sensor has no band of that name.
 * Source  JCGM 106:2012, clause 7; JCGM 100:2008, clauses 4.3.7 and 5.1.
 */
ohm_status oc_bath_check(const ohm_sensor *sensor, const oc_reading *reading, const oc_meter *meter,
                         const oc_reference *reference, const oc_check *check,
                         ohm_finding *finding);

/**
 * Judge a sensor by several readings, in the order they were taken. Readings in a row
 * with equal references are repeats: the last one counts, unless it still differs
 * from the one before by more than a count. At several temperatures the sensor
 * has to be inside everywhere at once: the meter, the leads and one thermometer err
 * alike in all readings, every other bath on its own. Then p_low and p_high are the probabilities
 * that any reading lies low, or high, and need not add up to 1 with p_within.
 *
 * In      readings, references   count of each, 1 to 16
 * Out     findings  count of them, each of its reading alone
 *         finding   of all together; the fields of one temperature are those of the
 *                   reading that says most about the fan
 * Status  those of oc_bath_check(); OHM_BAD_ARGUMENT count is 0; OHM_TOO_LARGE count
 *         is above 16.
 */
ohm_status oc_bath_check_several(const ohm_sensor *sensor, const oc_reading *readings,
                                 const oc_reference *references, size_t count,
                                 const oc_meter *meter, const oc_check *check,
                                 ohm_finding *findings, ohm_finding *finding);

#endif
