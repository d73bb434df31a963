/* SPDX-License-Identifier: MIT */
/* Filling in a finding. */
#ifndef OHM_FINDING_H
#define OHM_FINDING_H

#include "internal.h"

/** What can be taken for granted; each has its sentence in finding.c. */
enum ohm_assumption {
  OHM_ASSUME_ACCURACY,
  OHM_ASSUME_RESOLUTION,
  OHM_ASSUME_LEADS,
  OHM_ASSUME_THERMOMETER,
  OHM_ASSUME_ICE,
  OHM_ASSUMPTIONS
};

/** Every field absent. */
void ohm_finding_clear(ohm_finding *finding);

void ohm_finding_set_number(ohm_finding *finding, ohm_field field, double value);

/** One of sensor, source, read. What does not fit is cut, with "..." at the end. */
void ohm_finding_set_text(ohm_finding *finding, ohm_field field, const char *text);

void ohm_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason);

void ohm_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind);

void ohm_finding_assume(ohm_finding *finding, enum ohm_assumption assumption);

ohm_reason ohm_finding_reason(const ohm_finding *finding);

#endif
