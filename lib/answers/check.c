/* SPDX-License-Identifier: MIT */
/* Is a sensor at known temperatures what its maker allows; and what lies between it and the
 * module, where both ends were read. */
#include "both_ends.h"
#include "bath.h"

/* The readings at one end, in their order; where each stands among all. */
struct end {
  size_t count;
  oc_reading readings[OC_REQUEST_READINGS_MAX];
  oc_reference references[OC_REQUEST_READINGS_MAX];
  size_t at[OC_REQUEST_READINGS_MAX];
};

static void take_end(struct end *end, const struct oc_request *ask, ohm_place place) {
  end->count = 0;
  for (size_t i = 0; i < ask->count; i++)
    if (ask->places[i] == place) {
      end->readings[end->count] = ask->readings[i];
      end->references[end->count] = ask->references[i];
      end->at[end->count++] = i;
    }
}

/* Those of one end, judged together; each finding goes to the place of its reading. */
static ohm_status judge_end(const struct oc_request *ask, ohm_place place, ohm_finding *each,
                            ohm_finding *whole) {
  struct end end;
  ohm_finding own[OC_REQUEST_READINGS_MAX];
  oc_check check = ask->check;
  check.place = (int)place;
  take_end(&end, ask, place);
  for (size_t i = 0; i < end.count; i++)
    own[i] = oc_finding_in(whole->arena);
  ohm_status status = oc_bath_check_several(ask->bench->sensor, end.readings, end.references,
                                            end.count, &ask->meter, &check, own, whole);
  for (size_t i = 0; status == OHM_OK && i < end.count; i++)
    each[end.at[i]] = own[i];
  return status;
}

/* The sensor is judged at its own pins; the wires by what is between. */
static ohm_status judge_both_ends(const struct oc_request *ask, ohm_finding *each,
                                  ohm_finding *whole) {
  ohm_finding module = oc_finding_in(whole->arena);
  ohm_status status = judge_end(ask, OHM_PLACE_MODULE, each, &module);
  if (status == OHM_OK)
    status = judge_end(ask, OHM_PLACE_SENSOR, each, whole);
  if (status != OHM_OK)
    return status;
  double moved_k = oc_request_number(ask, OHM_SETTING_MOVED_K, NAN);
  oc_both_ends_tell(whole, ask, ask->bench->sensor,
                    isnan(moved_k) ? OC_ASSUMED_MOVED_LIMIT_K : moved_k);
  oc_finding_set_untested(whole, OC_UNTESTED_AT_MODULE);
  if (isnan(moved_k))
    oc_finding_assume(whole, OC_ASSUME_MOVED);
  return OHM_OK;
}

static bool has_both_ends(const struct oc_request *ask) {
  for (size_t i = 1; i < ask->count; i++)
    if (ask->places[i] != ask->places[0])
      return true;
  return false;
}

static ohm_status judge(const struct oc_request *ask, ohm_finding *each, ohm_finding *whole) {
  if (has_both_ends(ask))
    return judge_both_ends(ask, each, whole);
  return oc_bath_check_several(ask->bench->sensor, ask->readings, ask->references, ask->count,
                               &ask->meter, &ask->check, each, whole);
}

ohm_answer *ohm_bench_check(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_part(&ask, bench, "check", error);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each = answer ? oc_answer_group(answer, OHM_GROUP_READINGS, ask.count) : NULL;
  if (each)
    status = oc_request_told(&ask, judge(&ask, each, &answer->whole));
  return oc_answer_done(answer, status, error);
}
