/* SPDX-License-Identifier: MIT */
/* The screens of the rooms that answer. */
#ifndef OHM_REPORT_H
#define OHM_REPORT_H

#include "text.h"

/** "You read", "That means": of any room that was given a reading. */
void ohm_report_reading(struct ohm_text *out, const ohm_finding *finding);

/** "VERDICT" and "Next" where the reading or the bath decides. */
void ohm_report_verdict(struct ohm_text *out, const ohm_finding *finding);
void ohm_report_next(struct ohm_text *out, const ohm_finding *finding);

/** A label and the entries of a list; no line when there is none. */
void ohm_report_list(struct ohm_text *out, const ohm_finding *finding, const char *label,
                     ohm_field field);

/** Lines about a finding of the room of that name. */
void ohm_report_bath(struct ohm_text *out, const ohm_finding *finding);
void ohm_report_pin(struct ohm_text *out, const ohm_finding *finding);
void ohm_report_substitute(struct ohm_text *out, const ohm_finding *finding);
void ohm_report_loom(struct ohm_text *out, const ohm_finding *finding);
void ohm_report_fanpoint(struct ohm_text *out, const ohm_finding *finding);

/** Lines about what identify came to. */
void ohm_report_identify(struct ohm_text *out, const ohm_finding *finding);

/** The line of a pair of pins, or the lines about what all of them came to. */
void ohm_report_pins(struct ohm_text *out, const ohm_finding *finding);

/** The line of an explanation, or the lines about what explain came to. */
void ohm_report_explain(struct ohm_text *out, const ohm_finding *finding);

/** Lines about a finding of a soak. */
void ohm_report_soak(struct ohm_text *out, const ohm_finding *finding);

/** Lines about which part of a circuit is at fault. */
void ohm_report_isolation(struct ohm_text *out, const ohm_finding *finding);

#endif
