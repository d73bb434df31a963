/* SPDX-License-Identifier: MIT */
/* Screens of several findings: each of them, then what they come to. */
#ifndef OC_SCREEN_H
#define OC_SCREEN_H

#include "../bench/answer.h"
#include "../ground/text.h"

/** Of a check: the table of its readings when there are several, then all together. */
void oc_screen_readings(struct oc_text *out, const ohm_finding *whole,
                        const struct oc_group *readings);

/** What to put behind that: the doubt of each reading by cause. */
void oc_screen_budgets(struct oc_text *out, const struct oc_group *readings);

/** Of identify: the table of those that lead and the next few, if any were compared, then
 *  what they come to. */
void oc_screen_candidates(struct oc_text *out, const ohm_finding *whole,
                          const struct oc_group *candidates);

/** Of pairs of pins: a line each, then what they come to. */
void oc_screen_pairs(struct oc_text *out, const ohm_finding *whole, const struct oc_group *pairs);

/** Of explain: a line of each that leads, then what they come to. */
void oc_screen_explanations(struct oc_text *out, const ohm_finding *whole,
                            const struct oc_group *explanations);

/** Of substitute: one resistor, then two if there are two; the cautions once. */
void oc_screen_substitutes(struct oc_text *out, const struct oc_group *resistors);

#endif
