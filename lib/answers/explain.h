/* SPDX-License-Identifier: MIT */
/* What is wrong with a sensor. */
#ifndef OC_EXPLAIN_H
#define OC_EXPLAIN_H

#include "../model/measurement.h"

/**
 * What is wrong with a sensor that was measured. Every kind of fault is asked how large
 * it would have to be, everything else drawn over as by oc_identify(), and whether the
 * readings would then go together.
 *
 * "within"     "conforms": the readings go with a healthy sensor, and no fault goes
 *              markedly better with them
 * "outside"    not with a healthy one: "one" fault explains them, "several" do, "none"
 *              does; "open", "shorted"
 * "undecided"  "several": healthy or a fault; "plug_on", "missing_k", "over_range",
 *              "lone_one": a question to be answered first
 *
 * A fault with a size explains as many readings as one, whatever they are: one reading
 * never ranks them. separating_c says where a further one tells most of them.
 *
 * In      others   other_count sensors that it may be instead; NULL when 0
 *         readings, references   count of each, 1 to 16
 *         meter    NULL for all assumed
 *         check    NULL for all defaults
 * Out     explanations  OC_EXPLANATIONS of them, in the order of ohm_explanation
 *         finding  what they come to; with the figures of the only one that leads
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT count is 0,
 *         or a member is NaN, infinite, of the wrong sign or no such constant;
 *         OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of its range,
 *         or the curve does not reach a temperature; OHM_NOT_FOUND the sensor has no band
 *         of that name; OHM_TOO_LARGE count is above 16; OHM_NO_MEMORY.
 * Source  a size that cannot be negative: Chernoff, Ann. Math. Stat. 25 (1954) 573-578.
 */
ohm_status oc_explain(const ohm_sensor *sensor, const ohm_sensor *const *others, size_t other_count,
                      const oc_reading *readings, const oc_reference *references, size_t count,
                      const oc_meter *meter, const oc_check *check, ohm_finding *explanations,
                      ohm_finding *finding);

#endif
