/* SPDX-License-Identifier: MIT */
/* Is a sensor at known temperatures what its maker allows. */
#include "request.h"
#include "bath.h"

ohm_answer *ohm_bench_check(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_part(&ask, bench, "check", error);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each = answer ? oc_answer_group(answer, OHM_GROUP_READINGS, ask.count) : NULL;
  if (each)
    status = oc_request_told(&ask, oc_bath_check_several(bench->sensor, ask.readings,
                                                         ask.references, ask.count, &ask.meter,
                                                         &ask.check, each, &answer->whole));
  return oc_answer_done(answer, status, error);
}
