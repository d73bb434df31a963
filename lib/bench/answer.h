/* SPDX-License-Identifier: MIT */
/* What a verb says: filled in by the answers, then never changed. */
#ifndef OC_ANSWER_H
#define OC_ANSWER_H

#include "finding.h"

enum { OC_GROUPS = OHM_GROUP_RESISTORS + 1 };

struct oc_group {
  size_t count;
  ohm_finding *members;
};

struct ohm_answer {
  struct oc_arena arena;
  ohm_finding whole;
  struct oc_group groups[OC_GROUPS];
};

/** An answer to fill in, or NULL with the error filled in. */
ohm_answer *oc_answer_new(ohm_error *error);

/** Findings of a group, count of them and every field absent; NULL without memory. */
ohm_finding *oc_answer_group(ohm_answer *answer, ohm_group group, size_t count);

/** The answer when its verb succeeded and no memory was lacking; else it is given back,
 *  and NULL returned with the error filled in (that of status stands there already). */
ohm_answer *oc_answer_done(ohm_answer *answer, ohm_status status, ohm_error *error);

#endif
