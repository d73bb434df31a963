/* SPDX-License-Identifier: MIT */
/* What may be at fault in a circuit, after all that was seen on it, and how probably. */
#ifndef OC_CANDIDATES_H
#define OC_CANDIDATES_H

#include "../arithmetic/diagnosis.h"
#include "deduction.h"

struct oc_candidate {
  oc_set set;
  oc_set parts;   /* what would be renewed */
  size_t failing; /* of a link that would be alone; else OC_NO_PLACE */
  double weight;
};

enum { OC_CANDIDATES = OC_DIAGNOSIS_ROOM + OC_FAILINGS_MAX };

struct oc_candidates {
  struct oc_diagnosis diagnosis;
  double of_sets[OC_DIAGNOSIS_ROOM];
  size_t count;
  struct oc_candidate each[OC_CANDIDATES]; /* those that renew the same stand together */
  double weights[OC_CANDIDATES];
  oc_set parts[OC_CANDIDATES];
  unsigned outcomes[OC_CANDIDATES];
  oc_set any; /* every link in one of the sets */
};

void oc_candidates_find(const struct oc_deduction *it, struct oc_candidates *candidates);

/** What a test is expected to tell, in bits. */
double oc_candidates_bits(const struct oc_deduction *it, struct oc_candidates *candidates,
                          size_t test);

/** Of a wiring whose ways to fail are known: the links of a part that is as good as certain, or
 * that is probable enough when no test is left; else none. */
oc_set oc_candidates_condemned(const struct oc_deduction *it,
                               const struct oc_candidates *candidates, bool is_test_left);

#endif
