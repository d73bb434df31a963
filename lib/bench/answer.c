/* SPDX-License-Identifier: MIT */
#include "answer.h"

#include <stdlib.h>

#include "../ground/status.h"

ohm_answer *oc_answer_new(ohm_error *error) {
  ohm_answer *answer = calloc(1, sizeof *answer);
  oc_error_clear(error);
  if (!answer) {
    oc_fail_memory(error);
    return NULL;
  }
  answer->whole = oc_finding_in(&answer->arena);
  return answer;
}

ohm_finding *oc_answer_group(ohm_answer *answer, ohm_group group, size_t count) {
  ohm_finding *members = oc_arena_allocate(&answer->arena, count * sizeof *members);
  if (!members)
    return NULL;
  for (size_t i = 0; i < count; i++)
    members[i] = oc_finding_in(&answer->arena);
  answer->groups[group] = (struct oc_group){count, members};
  return members;
}

ohm_answer *oc_answer_done(ohm_answer *answer, ohm_status status, ohm_error *error) {
  if (!answer)
    return NULL;
  if (status == OHM_OK && !answer->arena.failed)
    return answer;
  if (answer->arena.failed)
    oc_fail_memory(error);
  ohm_answer_free(answer);
  return NULL;
}

void ohm_answer_free(ohm_answer *answer) {
  if (answer)
    oc_arena_free(&answer->arena);
  free(answer);
}

const ohm_finding *ohm_answer_finding(const ohm_answer *answer) {
  return answer ? &answer->whole : NULL;
}

static const struct oc_group *group_of(const ohm_answer *answer, int group) {
  static const struct oc_group none = {0, NULL};
  return answer && 0 < group && group < OC_GROUPS ? &answer->groups[group] : &none;
}

size_t ohm_answer_count(const ohm_answer *answer, int group) {
  return group_of(answer, group)->count;
}

const ohm_finding *ohm_answer_member(const ohm_answer *answer, int group, size_t index) {
  const struct oc_group *found = group_of(answer, group);
  return index < found->count ? &found->members[index] : NULL;
}
