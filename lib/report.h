/* SPDX-License-Identifier: MIT */
/* The screens of the rooms that answer. */
#ifndef OHM_REPORT_H
#define OHM_REPORT_H

#include "text.h"

/** Lines about a finding of the bath. */
void ohm_report_bath(struct ohm_text *out, const ohm_finding *finding);

#endif
