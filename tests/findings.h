/* SPDX-License-Identifier: MIT */
/* Findings to fill in; the texts of all of them live in one arena. */
#ifndef OHM_TESTS_FINDINGS_H
#define OHM_TESTS_FINDINGS_H

#include "../lib/bench/answer.h"

static struct oc_arena findings_arena;

static inline ohm_finding finding_new(void) {
  return oc_finding_in(&findings_arena);
}

static inline void findings_begin(ohm_finding *findings, size_t count) {
  for (size_t i = 0; i < count; i++)
    findings[i] = finding_new();
}

/** Findings that an earlier call filled in. */
static inline void findings_stale(ohm_finding *findings, size_t count) {
  findings_begin(findings, count);
  for (size_t i = 0; i < count; i++) {
    oc_finding_set_about(&findings[i], OHM_VERB_SOAK);
    oc_finding_set_verdict(&findings[i], OHM_OUTSIDE, OHM_REASON_HIGH);
    oc_finding_set_number(&findings[i], OHM_FIELD_R_OHM, 1);
    oc_finding_set_text(&findings[i], OHM_FIELD_SENSOR, "stale");
  }
}

/** Give the texts of all findings back. */
static inline void findings_free(void) {
  oc_arena_free(&findings_arena);
}

#endif
