/* SPDX-License-Identifier: MIT */
/* Which sensor readings were taken of. */
#ifndef OC_IDENTIFY_H
#define OC_IDENTIFY_H

#include "../model/measurement.h"

/**
 * Which sensor it is. Each is as probable as any other beforehand; what is not known
 * is drawn over: where in its band this one part lies (the same in every reading; 5 %
 * where nothing says), the errors of the meter, the leads and one thermometer, alike in
 * all readings, and what each bath errs by on its own. A part is taken to follow its
 * curve to 0.5 % at any one temperature (common practice).
 *
 * "within"     reason "one" when a single sensor leads, "alike" when no reading
 *              from 0 C to 100 C by such instruments tells apart
 *              those that lead
 * "undecided"  "several": separating_c says where a further reading tells them apart;
 *              "missing_k", or what a display without a number says
 * "outside"    "none": the readings go with no sensor that was compared
 *
 * A sensor leads when p_fit is at least 1 - level and none that fits is ten times as
 * probable. What was identified by readings is not checked by the same readings.
 *
 * In      sensors  sensor_count of them, none NULL
 *         readings, references   count of each, 1 to 16
 *         meter    NULL for all assumed
 *         check    NULL for all defaults; its band has to be NULL
 * Out     candidates  sensor_count of them, the likeliest first; every field of those that
 *                  were not compared is absent, of all when a display shows no number
 *         finding  what they come to
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a count is
 *         0, a band is named, or a member is NaN, infinite, of the wrong sign or no such
 *         constant; OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of
 *         its range; OHM_TOO_LARGE count is above 16.
 * Source  Bayes' theorem with equal priors; factor of ten: Jeffreys, Theory of Probability,
 *         3rd ed., appendix B ("strong"). p_fit: Rosenblatt, Ann. Math. Stat. 23 (1952)
 *         470-472.
 */
ohm_status oc_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                       const oc_reading *readings, const oc_reference *references, size_t count,
                       const oc_meter *meter, const oc_check *check, ohm_finding *candidates,
                       ohm_finding *finding);

#endif
