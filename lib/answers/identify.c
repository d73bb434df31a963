/* SPDX-License-Identifier: MIT */
/* Which sensor readings were taken of. */
#include "identify.h"

#include "request.h"

#include <string.h>

#include "told.h"
#include "../bench/finding.h"
#include "../model/any_thermistor.h"
#include "../model/next_reading.h"
#include "../evidence/meter.h"

struct separation {
  double t_c;
  double sigmas; /* how far apart two forecasts are */
  double r_ohm;  /* what each would read */
  double other_ohm;
};

static bool has_temperature(const ohm_sensor *sensor, double t_c) {
  double low_c;
  double high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  return oc_inside(low_c, t_c, high_c);
}

/* Where a further reading tells two sensors apart best, at one of these temperatures. */
static struct separation separate(const ohm_sensor *a, const ohm_sensor *b,
                                  const struct oc_ask *ask, const bool *allowed) {
  struct separation best = {NAN, 0, NAN, NAN};
  struct separation at_room = best;
  for (size_t i = 0; i < OC_AT_HAND; i++) {
    struct oc_next_reading further;
    if (!allowed[i])
      continue;
    oc_next_reading_plan(&further, ask, oc_at_hand_c[i]);
    struct oc_forecast of_a = oc_next_reading_foretell(&further, a, NULL, 0);
    struct oc_forecast of_b = oc_next_reading_foretell(&further, b, NULL, 0);
    double sigmas = fabs(of_a.log_ohm - of_b.log_ohm) / hypot(of_a.u, of_b.u);
    struct separation here = {oc_at_hand_c[i], sigmas, exp(of_a.log_ohm), exp(of_b.log_ohm)};
    if (here.t_c == OC_ROOM_C)
      at_room = here;
    if (sigmas > best.sigmas)
      best = here;
  }
  return at_room.sigmas >= OC_NEARLY_SHARE * best.sigmas ? at_room : best;
}

/* ---- what the readings showed ---- */

/* A display without a number, or one of nothing: it identifies nothing. */
static bool shows_no_number(const struct oc_ask *ask, ohm_reason *reason) {
  static const ohm_reason of_display[] = {[OC_DISPLAY_VALUE] = OHM_REASON_SHORTED,
                                          [OC_DISPLAY_OVER] = OHM_REASON_OVER_RANGE,
                                          [OC_DISPLAY_OPEN] = OHM_REASON_OPEN,
                                          [OC_DISPLAY_ONE] = OHM_REASON_LONE_ONE};
  for (size_t i = 0; i < ask->count; i++) {
    const oc_reading *reading = &ask->readings[i];
    struct oc_budget budget;
    bool number = oc_meter_budget(ask->meter, reading, &budget, NULL) == OHM_OK;
    if (number && budget.value > 0)
      continue;
    *reason = of_display[reading->display];
    return true;
  }
  return false;
}

static bool is_closed(const struct oc_ask *ask, size_t at) {
  struct oc_budget budget;
  return oc_meter_budget(ask->meter, &ask->readings[at], &budget, NULL) == OHM_OK &&
         budget.value < OC_SHORTED_OHM;
}

static bool is_open(const oc_reading *reading) {
  return reading->display == OC_DISPLAY_OPEN || reading->display == OC_DISPLAY_OVER;
}

/* Open in every cold reading and closed in every hotter one, and both were seen. */
static bool is_fan_switch(const struct oc_ask *ask) {
  double hottest_open_c = -INFINITY;
  double coldest_closed_c = INFINITY;
  for (size_t i = 0; i < ask->count; i++) {
    struct oc_budget at;
    bool assumed;
    if (oc_reference_budget(&ask->references[i], &at, &assumed) != OHM_OK)
      return false;
    if (is_open(&ask->readings[i]))
      hottest_open_c = fmax(hottest_open_c, at.value);
    else if (is_closed(ask, i))
      coldest_closed_c = fmin(coldest_closed_c, at.value);
    else
      return false;
  }
  return isfinite(hottest_open_c) && hottest_open_c < coldest_closed_c &&
         isfinite(coldest_closed_c);
}

/* ---- the sensors, each by itself ---- */

static void set(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double get(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

static void tell_sensor(ohm_finding *finding, const ohm_sensor *sensor) {
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  oc_finding_add_entry(finding, OHM_FIELD_SENSOR_KIND, ohm_sensor_kind(sensor));
}

/* As a logarithm of a likelihood; one that is not finite would be absent. */
static const double IMPOSSIBLE = -1e300;

/* Compare with one sensor; p_sensor holds the logarithm of its likelihood for now. */
static ohm_status compare(ohm_finding *candidate, const ohm_sensor *sensor,
                          const struct oc_ask *ask) {
  struct oc_evidence evidence;
  ohm_status status = oc_ask_gather(&evidence, sensor, ask);
  if (status != OHM_OK || !evidence.covered)
    return status;
  oc_finding_set_about(candidate, OHM_VERB_IDENTIFY);
  tell_sensor(candidate, sensor);
  set(candidate, OHM_FIELD_LEVEL, evidence.level);
  set(candidate, OHM_FIELD_READINGS, (double)evidence.count);
  set(candidate, OHM_FIELD_P_FIT, oc_evidence_fit(&evidence));
  set(candidate, OHM_FIELD_P_SENSOR, fmax(IMPOSSIBLE, oc_evidence_log_likelihood(&evidence, NULL)));
  if (evidence.count == 1) {
    set(candidate, OHM_FIELD_R_OHM, exp(evidence.readings[0].log_ohm));
    set(candidate, OHM_FIELD_AT_C, evidence.readings[0].at_c);
    set(candidate, OHM_FIELD_EXPECTED_OHM, exp(evidence.readings[0].log_nominal));
  }
  if (!evidence.toleranced)
    oc_finding_assume(candidate, OC_ASSUME_TOLERANCE);
  return OHM_OK;
}

/* The likeliest first; those that were not compared last. */
static bool goes_before(const ohm_finding *a, const ohm_finding *b) {
  double log_a = get(a, OHM_FIELD_P_SENSOR);
  double log_b = get(b, OHM_FIELD_P_SENSOR);
  return !isnan(log_a) && (isnan(log_b) || log_a > log_b);
}

static size_t compare_all(const ohm_sensor *const *sensors, size_t sensor_count,
                          const struct oc_ask *ask, ohm_finding *candidates, ohm_status *status) {
  size_t compared = 0;
  for (size_t i = 0; i < sensor_count && *status == OHM_OK; i++) {
    ohm_finding one = oc_finding_in(candidates->arena);
    *status = compare(&one, sensors[i], ask);
    if (oc_finding_about(&one) == OHM_VERB_IDENTIFY) {
      set(&one, OHM_FIELD_SENSOR_INDEX, (double)i);
      compared++;
    }
    size_t at = i;
    for (; at > 0 && goes_before(&one, &candidates[at - 1]); at--)
      candidates[at] = candidates[at - 1];
    candidates[at] = one;
  }
  return compared;
}

/* ---- together ---- */

/* Beside those compared stands any other thermistor. */
static double none_of_these(const ohm_finding *candidates, size_t compared, double log_none) {
  double greatest = fmax(log_none, get(&candidates[0], OHM_FIELD_P_SENSOR));
  double these = 0;
  if (greatest <= IMPOSSIBLE)
    return NAN;
  for (size_t i = 0; i < compared; i++)
    these += exp(get(&candidates[i], OHM_FIELD_P_SENSOR) - greatest) / (double)compared;
  double none = OC_NONE_SHARE * exp(log_none - greatest);
  return none / (none + (1 - OC_NONE_SHARE) * these);
}

/* What the errors of the readings are, no sensor says differently enough to matter. */
static double log_of_any(const ohm_sensor *sensor, const struct oc_ask *ask) {
  struct oc_evidence evidence;
  return oc_ask_gather(&evidence, sensor, ask) == OHM_OK
             ? oc_any_thermistor_log_likelihood(&evidence)
             : -INFINITY;
}

/* Turn likelihoods into probabilities, and say which lead. */
static size_t weigh(ohm_finding *candidates, size_t compared) {
  double level = get(&candidates[0], OHM_FIELD_LEVEL);
  double sum = 0;
  double greatest = get(&candidates[0], OHM_FIELD_P_SENSOR);
  double best_that_fits = -INFINITY;
  for (size_t i = 0; i < compared; i++) {
    double log_likelihood = get(&candidates[i], OHM_FIELD_P_SENSOR);
    sum += exp(log_likelihood - greatest);
    if (get(&candidates[i], OHM_FIELD_P_FIT) >= 1 - level)
      best_that_fits = fmax(best_that_fits, log_likelihood);
  }
  size_t leading = 0;
  for (size_t i = 0; i < compared; i++) {
    double log_likelihood = get(&candidates[i], OHM_FIELD_P_SENSOR);
    bool leads = get(&candidates[i], OHM_FIELD_P_FIT) >= 1 - level &&
                 log_likelihood >= best_that_fits - log(OC_MUCH_LIKELIER);
    set(&candidates[i], OHM_FIELD_LEADING, leads);
    set(&candidates[i], OHM_FIELD_P_SENSOR, exp(log_likelihood - greatest) / sum);
    leading += leads;
  }
  return leading;
}

static bool leads(const ohm_finding *candidate) {
  return get(candidate, OHM_FIELD_LEADING) == 1;
}

static const ohm_sensor *sensor_of(const ohm_finding *candidate, const ohm_sensor *const *sensors) {
  return sensors[(size_t)get(candidate, OHM_FIELD_SENSOR_INDEX)];
}

static const ohm_finding *first_leading(const ohm_finding *candidates) {
  while (!leads(candidates))
    candidates++;
  return candidates;
}

/* Which temperatures at hand every curve that leads has. */
static void find_common(const ohm_finding *candidates, size_t compared,
                        const ohm_sensor *const *sensors, bool *common) {
  for (size_t at = 0; at < OC_AT_HAND; at++) {
    common[at] = true;
    for (size_t i = 0; i < compared; i++)
      common[at] =
          common[at] && (!leads(&candidates[i]) ||
                         has_temperature(sensor_of(&candidates[i], sensors), oc_at_hand_c[at]));
  }
}

/* Where a reading tells one that leads from a likelier one that does, the likeliest such
 * pair; nowhere when it tells none. */
static struct separation separate_leading(const ohm_finding *candidates, size_t compared,
                                          const ohm_sensor *const *sensors,
                                          const struct oc_ask *ask) {
  bool common[OC_AT_HAND];
  find_common(candidates, compared, sensors, common);
  for (size_t other = 1; other < compared; other++)
    for (size_t one = 0; leads(&candidates[other]) && one < other; one++) {
      if (!leads(&candidates[one]))
        continue;
      struct separation separation = separate(sensor_of(&candidates[one], sensors),
                                              sensor_of(&candidates[other], sensors), ask, common);
      if (separation.sigmas >= OC_TELLS_APART)
        return separation;
    }
  return (struct separation){NAN, 0, NAN, NAN};
}

/* What each would read at the temperature that tells them apart. */
static void tell_separation(ohm_finding *candidates, size_t compared,
                            const ohm_sensor *const *sensors, const struct oc_ask *ask,
                            double t_c) {
  for (size_t i = 0; i < compared; i++) {
    struct oc_next_reading further;
    oc_next_reading_plan(&further, ask, t_c);
    struct oc_forecast forecast =
        oc_next_reading_foretell(&further, sensor_of(&candidates[i], sensors), NULL, 0);
    set(&candidates[i], OHM_FIELD_SEPARATING_C, t_c);
    set(&candidates[i], OHM_FIELD_SEPARATING_OHM, exp(forecast.log_ohm));
  }
}

/* ---- the fan, whichever it is ---- */

static size_t hottest(const struct oc_ask *ask, const ohm_sensor *sensor) {
  size_t found = 0;
  double hottest_c = -INFINITY;
  for (size_t i = 0; i < ask->count; i++) {
    struct oc_measurement measurement;
    if (oc_measurement_ask(&measurement, sensor, &ask->readings[i], ask->meter, &ask->references[i],
                           ask->check) == OHM_OK &&
        measurement.bath.value > hottest_c) {
      hottest_c = measurement.bath.value;
      found = i;
    }
  }
  return found;
}

static bool is_of_gauge(const ohm_sensor *sensor) {
  return strcmp(ohm_sensor_kind(sensor), "gauge") == 0;
}

/* A gauge's element asks for no fan. */
static bool asks_for_fan(const ohm_sensor *sensor) {
  return oc_curve_falls(ohm_sensor_curve(sensor)) && !is_of_gauge(sensor);
}

static void tell_fan(ohm_finding *candidate, const ohm_sensor *sensor, const struct oc_ask *ask) {
  struct oc_measurement measurement;
  struct oc_tolerance tolerance;
  struct oc_exposure exposure;
  size_t i = hottest(ask, sensor);
  if (oc_measurement_ask(&measurement, sensor, &ask->readings[i], ask->meter, &ask->references[i],
                         ask->check) != OHM_OK)
    return;
  oc_measurement_expose(&measurement, &tolerance, &exposure);
  struct oc_hidden hidden = oc_hidden_behind(&exposure);
  set(candidate, OHM_FIELD_FAN_C, measurement.fan_c);
  set(candidate, OHM_FIELD_LATE_K, hidden.late_k);
  set(candidate, OHM_FIELD_EARLY_K, hidden.early_k);
  set(candidate, OHM_FIELD_FIFTY_LATE_K, hidden.fifty_late_k);
  if (measurement.fan_assumed)
    oc_finding_assume(candidate, OC_ASSUME_FAN);
}

static double greater(double a, double b) {
  return isnan(a) || isnan(b) ? NAN : fmax(a, b);
}

/* Whichever of the leading it is; absent stays for a fan that never starts. */
static void bound_fan(ohm_finding *finding, const ohm_finding *candidate) {
  bool first = isnan(get(finding, OHM_FIELD_FAN_C));
  static const ohm_field fields[] = {OHM_FIELD_LATE_K, OHM_FIELD_EARLY_K, OHM_FIELD_FIFTY_LATE_K};
  for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
    double here = get(candidate, fields[i]);
    set(finding, fields[i], first ? here : greater(get(finding, fields[i]), here));
  }
  double fifty = get(candidate, OHM_FIELD_FIFTY_LATE_K);
  double least = get(finding, OHM_FIELD_FIFTY_LEAST_LATE_K);
  set(finding, OHM_FIELD_FIFTY_LEAST_LATE_K, first ? fifty : fmin(fifty, least));
  set(finding, OHM_FIELD_FAN_C, get(candidate, OHM_FIELD_FAN_C));
}

/* ---- what they come to ---- */

/* The level, and what was taken for granted; the same for every sensor. */
static void tell_question(ohm_finding *finding, const ohm_sensor *sensor,
                          const struct oc_ask *ask) {
  for (size_t i = 0; i < ask->count; i++) {
    struct oc_measurement measurement;
    if (oc_measurement_ask(&measurement, sensor, &ask->readings[i], ask->meter, &ask->references[i],
                           ask->check) != OHM_OK)
      continue;
    set(finding, OHM_FIELD_LEVEL, measurement.level);
    oc_told_assumed(&measurement, finding);
  }
}

static void tell_leading(ohm_finding *finding, ohm_finding *candidates, size_t compared,
                         const ohm_sensor *const *sensors, const struct oc_ask *ask) {
  double gauges = 0;
  for (size_t i = 0; i < compared; i++) {
    const ohm_sensor *sensor = sensor_of(&candidates[i], sensors);
    if (!leads(&candidates[i]))
      continue;
    gauges += is_of_gauge(sensor);
    oc_finding_add_entry(finding, OHM_FIELD_CANDIDATES, ohm_sensor_name(sensor));
    if (!asks_for_fan(sensor))
      continue;
    tell_fan(&candidates[i], sensor, ask);
    bound_fan(finding, &candidates[i]);
  }
  const ohm_finding *first = first_leading(candidates);
  set(finding, OHM_FIELD_GAUGES, gauges);
  tell_sensor(finding, sensor_of(first, sensors));
  set(finding, OHM_FIELD_SENSOR_INDEX, get(first, OHM_FIELD_SENSOR_INDEX));
  set(finding, OHM_FIELD_P_SENSOR, get(first, OHM_FIELD_P_SENSOR));
  set(finding, OHM_FIELD_P_FIT, get(first, OHM_FIELD_P_FIT));
  oc_finding_leave_untested(finding, OC_UNTESTED_IDENTIFIED);
}

/* A thousand times what a bare number says goes with some sensor. */
static double suggest_k(const ohm_sensor *const *sensors, size_t sensor_count,
                        const struct oc_ask *ask) {
  struct oc_next_reading further;
  oc_next_reading_plan(&further, ask, OC_ROOM_C);
  further.ask.count = ask->count;
  for (size_t i = 0; i < ask->count; i++) {
    if (!ask->readings[i].bare)
      return NAN;
    further.readings[i].r_ohm *= 1000;
    further.readings[i].resolution_ohm *= 1000;
  }
  for (size_t i = 0; i < sensor_count; i++) {
    struct oc_evidence evidence;
    if (oc_ask_gather(&evidence, sensors[i], &further.ask) == OHM_OK && evidence.covered &&
        oc_evidence_fit(&evidence) >= 1 - evidence.level)
      return further.readings[0].r_ohm;
  }
  return NAN;
}

static void conclude(ohm_finding *finding, ohm_finding *candidates, size_t compared,
                     const ohm_sensor *const *sensors, size_t sensor_count,
                     const struct oc_ask *ask) {
  if (compared > 0)
    set(finding, OHM_FIELD_P_NONE,
        none_of_these(candidates, compared, log_of_any(sensor_of(&candidates[0], sensors), ask)));
  size_t leading = compared > 0 ? weigh(candidates, compared) : 0;
  set(finding, OHM_FIELD_COMPARED, (double)compared);
  set(finding, OHM_FIELD_NOT_COMPARED, (double)(sensor_count - compared));
  if (leading == 0) {
    double suggested_ohm = suggest_k(sensors, sensor_count, ask);
    set(finding, OHM_FIELD_SUGGESTED_OHM, suggested_ohm);
    if (isnan(suggested_ohm))
      oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_NONE);
    else
      oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
    return;
  }
  tell_leading(finding, candidates, compared, sensors, ask);
  if (leading == 1) {
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_ONE);
    return;
  }
  struct separation separation = separate_leading(candidates, compared, sensors, ask);
  if (isnan(separation.t_c)) {
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_ALIKE);
    return;
  }
  tell_separation(candidates, compared, sensors, ask, separation.t_c);
  set(finding, OHM_FIELD_SEPARATING_C, separation.t_c);
  set(finding, OHM_FIELD_SEPARATING_OHM, separation.r_ohm);
  set(finding, OHM_FIELD_SEPARATING_OTHER_OHM, separation.other_ohm);
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_SEVERAL);
}

static void clear_all(ohm_finding *candidates, size_t count) {
  for (size_t i = 0; i < count; i++)
    oc_finding_clear(&candidates[i]);
}

static ohm_status begin(const ohm_sensor *const *sensors, size_t sensor_count,
                        const struct oc_ask *ask, ohm_finding *candidates, ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (candidates)
    clear_all(candidates, sensor_count);
  if (!sensors || !ask->readings || !ask->references || !candidates || !finding)
    return OHM_NULL_ARGUMENT;
  for (size_t i = 0; i < sensor_count; i++)
    if (!sensors[i])
      return OHM_NULL_ARGUMENT;
  if (sensor_count == 0 || ask->count == 0 || (ask->check && ask->check->band))
    return OHM_BAD_ARGUMENT;
  return ask->count > OC_ASK_MAX ? OHM_TOO_LARGE : OHM_OK;
}

ohm_status oc_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                       const oc_reading *readings, const oc_reference *references, size_t count,
                       const oc_meter *meter, const oc_check *check, ohm_finding *candidates,
                       ohm_finding *finding) {
  const struct oc_ask ask = {readings, references, count, meter, check};
  ohm_status status = begin(sensors, sensor_count, &ask, candidates, finding);
  if (status != OHM_OK)
    return status;
  size_t compared = compare_all(sensors, sensor_count, &ask, candidates, &status);
  if (status != OHM_OK) {
    clear_all(candidates, sensor_count);
    return status;
  }
  oc_finding_set_about(finding, OHM_VERB_IDENTIFY);
  set(finding, OHM_FIELD_READINGS, (double)count);
  tell_question(finding, sensors[0], &ask);
  ohm_reason reason;
  if (is_fan_switch(&ask)) {
    clear_all(candidates, sensor_count);
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_FAN_SWITCH);
  } else if (shows_no_number(&ask, &reason)) {
    clear_all(candidates, sensor_count);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, reason);
  } else {
    conclude(finding, candidates, compared, sensors, sensor_count, &ask);
  }
  return OHM_OK;
}

/* ---- the verb ---- */

static ohm_status ask_all(struct oc_request *ask, const ohm_bench *bench, ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "identify", error);
  if (status == OHM_OK)
    status = oc_request_compared(ask);
  if (status == OHM_OK)
    status = oc_request_readings(ask);
  return status;
}

/* Those whose curves do not reach come last, and have nothing to say. */
static void leave_out_not_compared(ohm_answer *answer) {
  struct oc_group *group = &answer->groups[OHM_GROUP_CANDIDATES];
  while (group->count > 0 && oc_finding_about(&group->members[group->count - 1]) == OC_VERBS)
    group->count--;
}

ohm_answer *ohm_bench_identify(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = ask_all(&ask, bench, error);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *candidates =
      answer ? oc_answer_group(answer, OHM_GROUP_CANDIDATES, bench->compared_count) : NULL;
  if (candidates)
    status = oc_request_told(&ask, oc_identify(bench->compared, bench->compared_count, ask.readings,
                                               ask.references, ask.count, &ask.meter, &ask.check,
                                               candidates, &answer->whole));
  if (candidates && status == OHM_OK)
    leave_out_not_compared(answer);
  return oc_answer_done(answer, status, error);
}
