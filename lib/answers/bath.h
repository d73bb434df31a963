/* SPDX-License-Identifier: MIT */
/* A sensor at known temperatures. */
#ifndef OC_BATH_H
#define OC_BATH_H

#include "../bench/finding.h"
#include "../model/measurement.h"

/**
 * Judge a sensor by one reading at a known temperature, as ohm_bench_check() says.
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
 * Judge a sensor by several readings, in the order they were taken, as ohm_bench_check()
 * says.
 *
 * In      readings, references   count of each, 1 to 16
 * Out     findings  count of them, each of its reading alone
 *         finding   of all together; the fields of one temperature are those of the
 *                   reading nearest to where the fan is to start
 * Status  those of oc_bath_check(); OHM_BAD_ARGUMENT count is 0; OHM_TOO_LARGE count
 *         is above 16; OHM_NO_MEMORY.
 */
ohm_status oc_bath_check_several(const ohm_sensor *sensor, const oc_reading *readings,
                                 const oc_reference *references, size_t count,
                                 const oc_meter *meter, const oc_check *check,
                                 ohm_finding *findings, ohm_finding *finding);

/** What a check is judged by: how warm it is; what is allowed there, by whom, and which readings
 *  would pass. */
void oc_bath_tell_temperature(ohm_finding *finding, const struct oc_measurement *measurement);
void oc_bath_tell_allowed(ohm_finding *finding, const struct oc_measurement *measurement);

#endif
