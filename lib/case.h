/* SPDX-License-Identifier: MIT */
/* A circuit with all that was seen on it, and what follows for certain. */
#ifndef OHM_CASE_H
#define OHM_CASE_H

#include "record.h"

/** What stands of a test. */
struct ohm_view {
  enum ohm_seen seen;
  double number;
  double amperes;
};

struct ohm_case {
  const struct ohm_circuit *circuit;
  double fan_c;
  struct ohm_view tests[OHM_CIRCUIT_TESTS];
  bool stated[OHM_CIRCUIT_FACTS];
  const struct ohm_record *record;
  ohm_set renewed;
  ohm_set cleared;
  size_t conflict_count;
  ohm_set conflicts[OHM_CIRCUIT_TESTS];
  ohm_set contradicted; /* what a contradicting test accuses */
  ohm_set faulty;       /* parts of which a conflict leaves nothing else */
  bool is_contradictory;
  bool off_balance[OHM_CIRCUIT_BALANCES];
};

void ohm_case_begin(struct ohm_case *it, const struct ohm_circuit *circuit,
                    const struct ohm_record *record);

/** Links of which one is at fault when the test is bad; none when that tells nothing. */
ohm_set ohm_case_accused(const struct ohm_case *it, size_t test);

/** Whether a test is bad and accuses: a symptom only once the fan was really asked for. */
bool ohm_case_counts(const struct ohm_case *it, size_t test);

/** Whether what is at fault for certain explains every bad test. */
bool ohm_case_is_explained(const struct ohm_case *it);

/** Odds that a link is at fault, before the conflicts are looked at. */
double ohm_case_odds(const struct ohm_case *it, size_t link);

#endif
