/* SPDX-License-Identifier: MIT */
/* A circuit with all that was seen on it, and what follows for certain. */
#ifndef OC_DEDUCTION_H
#define OC_DEDUCTION_H

#include "../evidence/record.h"

/** What stands of a test. */
struct oc_view {
  enum oc_seen seen;
  oc_outcomes shown; /**< what that may stand for; 0 when nothing was seen */
  double number;
  double amperes;
};

struct oc_deduction {
  const struct ohm_circuit *circuit;
  double fan_c;
  struct oc_view tests[OC_CIRCUIT_TESTS];
  bool stated[OC_CIRCUIT_FACTS];
  const struct oc_record *record;
  oc_set renewed;
  oc_set cleared;
  bool possible[OC_FAILINGS_MAX]; /**< failings of the circuit that no good test rules out */
  bool alone[OC_FAILINGS_MAX];    /**< those that go with all that was seen, and need no other */
  size_t conflict_count;
  oc_set conflicts[OC_CIRCUIT_TESTS];
  oc_set contradicted; /* what a contradicting test accuses */
  oc_set faulty;       /* parts of which a conflict leaves nothing else */
  bool is_contradictory;
  bool off_balance[OC_CIRCUIT_BALANCES];
};

void oc_deduction_begin(struct oc_deduction *it, const struct ohm_circuit *circuit,
                        const struct oc_record *record);

/** Links of which one may be at fault when the test is bad; none when that tells nothing. */
oc_set oc_deduction_accused(const struct oc_deduction *it, size_t test);

/** Those of them that still could be, by a failing that no good test rules out. */
oc_set oc_deduction_blamed(const struct oc_deduction *it, size_t test);

/** Whether no tool of the test is said not to be had; the last word on each tool counts. */
bool oc_deduction_has_tools(const struct oc_deduction *it, size_t test);

/** Whether a test is bad and accuses: a symptom only once the fan was really asked for. */
bool oc_deduction_counts(const struct oc_deduction *it, size_t test);

/** Whether what is at fault for certain explains every bad test. */
bool oc_deduction_is_explained(const struct oc_deduction *it);

/** Odds that a link is at fault, before the conflicts are looked at. */
double oc_deduction_odds(const struct oc_deduction *it, size_t link);

#endif
