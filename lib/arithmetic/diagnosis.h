/* SPDX-License-Identifier: MIT */
/* Which parts are at fault, from what they could not have done had they been sound;
 * knows nothing of what the parts are. De Kleer and Williams, "Diagnosing multiple
 * faults", Artificial Intelligence 32 (1987) 97-130. */
#ifndef OC_DIAGNOSIS_H
#define OC_DIAGNOSIS_H

#include <stdint.h>

#include "../ground/internal.h"

/** A set of parts, a bit each. */
typedef uint64_t oc_set;

enum { OC_DIAGNOSIS_PARTS = 64, OC_DIAGNOSIS_MOST = 4, OC_DIAGNOSIS_ROOM = 1024 };

/** Minimal fault sets, small before large. */
struct oc_diagnosis {
  size_t count;
  bool complete; /**< false when there are more than found room */
  oc_set sets[OC_DIAGNOSIS_ROOM];
};

static inline oc_set oc_set_of(size_t part) {
  return (oc_set)1 << part;
}

size_t oc_set_size(oc_set set);

/**
 * The minimal sets of faulty parts that explain every conflict: sets with a part of
 * each conflict, and no smaller one inside. A conflict is a set of parts that cannot all
 * be sound. All single faults and all double ones; sets of up to four parts, as far as one
 * part more than the smallest explanation has. Without conflicts it is the empty set alone, with an
 * empty conflict there is none.
 */
void oc_diagnosis_find(const oc_set *conflicts, size_t count, struct oc_diagnosis *diagnosis);

/**
 * How probable each set is, from the odds of each part to be faulty; the sum is 1.
 *
 * In      odds  > 0, of each part; NULL when nothing is known of them: then a part is as
 *               likely as any other, and a set a hundred times less so than one with a
 *               part less
 */
void oc_diagnosis_weigh(const struct oc_diagnosis *diagnosis, const double *odds, double *weights);

/**
 * What a test is expected to tell, in bits: by how much the entropy over the groups is
 * expected to fall. Of several outcomes that a set leaves open each counts alike.
 *
 * In      weights    of count sets, their sum 1
 *         groups     sets with an equal value stand together and need not be told
 *                    apart; NULL: all do
 *         predicted  outcomes of the test that each set leaves open, a bit each, one at least
 */
double oc_diagnosis_information(const double *weights, const oc_set *groups,
                                const unsigned *predicted, size_t count);

#endif
