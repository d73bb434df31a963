/* SPDX-License-Identifier: MIT */
/* The screens of the rooms that answer. */
#ifndef OC_REPORT_H
#define OC_REPORT_H

#include "page.h"

/** Lines about a finding of a verb: oc_report_check() and so on; of identify, pins, explain about
 *  one of the group, or about what all of them come to. */
#define OC_LINES_OF(number, constant, verb, meaning) void oc_report_##verb(struct oc_page *page);
OHM_VERBS(OC_LINES_OF)
#undef OC_LINES_OF

/** Likewise, below a substitute that has said the cautions. */
void oc_report_second_substitute(struct oc_page *page);

/** The uncertainty of a finding of a bath by cause, to be worked out again by hand. */
void oc_report_budget(struct oc_page *page);

#endif
