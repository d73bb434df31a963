/* SPDX-License-Identifier: MIT */
/* What readings say of a resistance, with no sensor. */
#include "request.h"
#include "told.h"

static ohm_status tell(const struct oc_request *ask, const oc_reading *reading,
                       ohm_finding *finding) {
  struct oc_budget budget;
  struct oc_meter_assumed assumed = {0};
  ohm_status status = oc_meter_budget(&ask->meter, reading, &budget, &assumed);
  oc_finding_set_about(finding, OHM_VERB_MEASURE);
  oc_told_display(finding, reading);
  oc_told_meter(finding, &assumed);
  double level = oc_request_number(ask, OHM_SETTING_LEVEL, OC_ASSUMED_LEVEL);
  oc_finding_set_number(finding, OHM_FIELD_LEVEL, level);
  if (status == OHM_OK)
    oc_told_resistance(finding, reading, &budget, level);
  return status == OHM_OUT_OF_RANGE ? OHM_OK : status;
}

ohm_answer *ohm_bench_measure(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_begin(&ask, bench, "measure", error);
  if (status == OHM_OK)
    status = oc_request_ohms(&ask);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each = answer ? oc_answer_group(answer, OHM_GROUP_READINGS, ask.count) : NULL;
  for (size_t i = 0; each && status == OHM_OK && i < ask.count; i++)
    status = oc_request_told(&ask, tell(&ask, &ask.readings[i], &each[i]));
  if (each && status == OHM_OK)
    answer->whole = each[ask.count - 1];
  return oc_answer_done(answer, status, error);
}
