/* SPDX-License-Identifier: MIT */
/* The screens of the rooms that answer. */
#ifndef OC_REPORT_H
#define OC_REPORT_H

#include "../ground/text.h"

/** "You read", "That means": of any room that was given a reading. */
void oc_report_reading(struct oc_text *out, const ohm_finding *finding);

/** "VERDICT" and "Next" where the reading or the bath decides. */
void oc_report_verdict(struct oc_text *out, const ohm_finding *finding);
void oc_report_next(struct oc_text *out, const ohm_finding *finding);

/** A label and the entries of a list; no line when there is none. */
void oc_report_list(struct oc_text *out, const ohm_finding *finding, const char *label,
                    ohm_field field);

/** Lines about a finding of the room of that name. */
void oc_report_bath(struct oc_text *out, const ohm_finding *finding);
void oc_report_pin(struct oc_text *out, const ohm_finding *finding);
void oc_report_substitute(struct oc_text *out, const ohm_finding *finding);
void oc_report_loom(struct oc_text *out, const ohm_finding *finding);
void oc_report_fanpoint(struct oc_text *out, const ohm_finding *finding);

/** Lines about what identify came to. */
void oc_report_identify(struct oc_text *out, const ohm_finding *finding);

/** The line of a pair of pins, or the lines about what all of them came to. */
void oc_report_pins(struct oc_text *out, const ohm_finding *finding);

/** The line of an explanation, or the lines about what explain came to. */
void oc_report_explain(struct oc_text *out, const ohm_finding *finding);

/** Lines about a finding of a soak. */
void oc_report_soak(struct oc_text *out, const ohm_finding *finding);

/** Lines about which part of a circuit is at fault. */
void oc_report_isolation(struct oc_text *out, const ohm_finding *finding);

#endif
