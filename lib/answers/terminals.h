/* SPDX-License-Identifier: MIT */
/* Which pins of a body are which element. */
#ifndef OC_TERMINALS_H
#define OC_TERMINALS_H

#include "../evidence/pair.h"
#include "../model/measurement.h"

/**
 * Which pins of a body with several are the module's element, and which the gauge's. A
 * pair that reads as much as two others on the way between its ends is across both. An
 * element is identified as by oc_identify(), with sensors for modules and for gauges.
 * What reads the same to the body and to battery negative is grounded through its thread;
 * what reads more to battery negative tells the resistance of that ground.
 *
 * "within"     "one" element is the module's
 * "undecided"  "several": more than one element could be; "over_range", "lone_one": a
 *              display is to be read again first
 * "outside"    "none" goes with a module's sensor; "open" there is no circuit at all
 *
 * In      sensors  sensor_count of them, none NULL
 *         pairs    count of them, 1 to 16; no two of the same terminals
 *         reference  the temperature of all
 *         meter    NULL for all assumed
 *         check    NULL for all defaults; its band has to be NULL
 * Out     findings  count of them, one a pair
 *         candidates  sensor_count of them, used up
 *         finding  what they come to
 * Status  those of oc_identify(); OHM_OUT_OF_RANGE also a terminal that is none;
 *         OHM_BAD_ARGUMENT also a pair that is there twice.
 * Source  bodies with a gauge's and a module's element: Audi A4 1997, coolant sensor G62
 *         (four pins); Kawasaki Z750 service manual, 16-76 (three, gauge to body).
 */
ohm_status oc_pins_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                            const oc_pair *pairs, size_t count, const oc_reference *reference,
                            const oc_meter *meter, const oc_check *check, ohm_finding *findings,
                            ohm_finding *candidates, ohm_finding *finding);

#endif
