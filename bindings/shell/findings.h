/* SPDX-License-Identifier: MIT */
/* Findings on standard output. */
#ifndef OHM_FINDINGS_H
#define OHM_FINDINGS_H

#include <ohmcurve.h>

/** One line of JSON: every field that is not absent. */
void ohm_findings_write_json(const ohm_finding *finding);

/** The report, as the library words it. Returns the exit status, 0 when written. */
int ohm_findings_write_report(const ohm_finding *finding);

/** What each cause adds, as the library lays it out. Returns the exit status likewise. */
int ohm_findings_write_budget(const ohm_finding *finding);

/** The readings of count findings: read, at, means. */
void ohm_findings_write_readings(const ohm_finding *findings, size_t count);

/** The verdict in a few words, and what was read in degrees, for a cell of a table. */
const char *ohm_findings_verdict(const ohm_finding *finding);
void ohm_findings_print_degrees(const ohm_finding *finding, int field, char *cell);

#endif
