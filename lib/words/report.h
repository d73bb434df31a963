/* SPDX-License-Identifier: MIT */
/* The screens of the rooms that answer. */
#ifndef OC_REPORT_H
#define OC_REPORT_H

#include "page.h"

/** Lines about a finding of the room of that name. */
void oc_report_bath(struct oc_page *page);
void oc_report_pin(struct oc_page *page);
void oc_report_substitute(struct oc_page *page);
void oc_report_loom(struct oc_page *page);
void oc_report_fanpoint(struct oc_page *page);

/** Likewise, below a substitute that has said the cautions. */
void oc_report_second_substitute(struct oc_page *page);

/** The uncertainty of a finding of a bath by cause, to be worked out again by hand. */
void oc_report_budget(struct oc_page *page);

/** Lines about what identify came to. */
void oc_report_identify(struct oc_page *page);

/** The line of a pair of pins, or the lines about what all of them came to. */
void oc_report_pins(struct oc_page *page);

/** The line of an explanation, or the lines about what explain came to. */
void oc_report_explain(struct oc_page *page);

/** Lines about a finding of a soak. */
void oc_report_soak(struct oc_page *page);

/** Lines about which part of a circuit is at fault. */
void oc_report_isolation(struct oc_page *page);

#endif
