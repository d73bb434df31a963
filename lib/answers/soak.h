/* SPDX-License-Identifier: MIT */
/* A coolant sensor of a car that stood. */
#ifndef OC_SOAK_H
#define OC_SOAK_H

#include "companions.h"

/**
 * Judge a coolant sensor of a car that stood, by the air. The coolant lags behind the air
 * with a time constant that may be any in its range alike; the start and one common
 * error of the air are rectangular, the noise of its points is normal, each its own. A
 * history that begins after the stop leaves the start anywhere from its first air up
 * to the stop. The verdict:
 *
 * Within     it is off by no more than allow_k, with a probability of the level.
 * Outside    it reads colder than the coolant can be, reason "high" (of an NTC
 *            element); or, when undisturbed, warmer, reason "low".
 * Undecided  else. Warmer is undecided, reason "warm", while sun, a block heater, a
 *            garage or a move may explain it; nothing explains colder.
 *
 * Companions are held against each other with the error of the air eliminated:
 * "consistent", or one is "odd", or they "disagree" and nobody can say which one is off.
 * One is odd when the others agree without it and do not without any other; of two,
 * none is; and none that is warm unless undisturbed.
 *
 * In      air     t_c unless there is a history; limit_k is the common error, u_k the noise;
 *                 a thermometer. May be NULL with a history: assumed
 *         meter, check  as oc_bath_check(); of check the level, the place and the fan count
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is
 *         NaN, infinite, of the wrong sign or no such constant; OHM_OUT_OF_RANGE a member is
 *         out of its range, or the history does not reach the reading;
 *         OHM_NOT_FOUND the sensor has no band of that name; OHM_TOO_LARGE companions.
 * Source  chi-square: Pearson, Philos. Mag. 50 (1900) 157-175. The time constant is
 *         inferred: no measured one was found in print.
 */
ohm_status oc_soak_check(const ohm_sensor *sensor, const oc_reading *reading, const oc_meter *meter,
                         const oc_reference *air, const oc_soak_told *soak, const oc_check *check,
                         ohm_finding *finding);

#endif
