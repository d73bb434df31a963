/* SPDX-License-Identifier: MIT */
/* What readings say of a sensor that may be faulty: every shape of fault is asked how large it
 * would have to be, and whether the readings would then go together. */
#include "explain.h"

#include "request.h"
#include "told.h"
#include "trial.h"

#include <stdlib.h>

static void set(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double get(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

/* An end that is absent is always, or never. */
static void tell_start(ohm_finding *finding, struct oc_starts start) {
  set(finding, OHM_FIELD_START_LOW_C, fmin(start.low_c, OC_NEVER_C));
  set(finding, OHM_FIELD_START_HIGH_C, fmax(start.high_c, OC_COLDEST_START_C));
}

/* What explains the readings: health when they go with it; else every shape that they go
 * with. A shape that holds a healthy sensor as size 0 is kept beside health only when
 * chance would seldom make one look so. */
static size_t find_leading(struct oc_trial *trial) {
  bool healthy = oc_trial_fits(trial, OHM_EXPLANATION_HEALTHY);
  size_t leading = 0;
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    ohm_finding *finding = &trial->explanations[i];
    double p_chance = get(finding, OHM_FIELD_P_CHANCE);
    bool leads = oc_trial_fits(trial, (ohm_explanation)i);
    if (healthy && i != OHM_EXPLANATION_HEALTHY)
      leads = leads && p_chance < 1 - trial->evidence.level;
    set(finding, OHM_FIELD_LEADING, leads);
    leading += leads;
  }
  return leading;
}

static bool leads(const struct oc_trial *trial, int explanation) {
  return get(&trial->explanations[explanation], OHM_FIELD_LEADING) == 1;
}

/* ---- the reading that would tell them apart ---- */

static struct oc_forecast foretell(const struct oc_trial *trial, int explanation, double t_c) {
  static const struct oc_forecast none = {NAN, NAN};
  struct oc_next_reading further;
  oc_next_reading_plan(&further, &trial->ask, t_c);
  if (explanation == OHM_EXPLANATION_OTHER_PART)
    return oc_next_reading_foretell(&further, trial->other, NULL, 0);
  if (trial->has_size[explanation])
    return oc_next_reading_foretell(&further, trial->sensor, &trial->fault[explanation],
                                    trial->u_size[explanation]);
  return explanation == OHM_EXPLANATION_HEALTHY
             ? oc_next_reading_foretell(&further, trial->sensor, NULL, 0)
             : none;
}

struct forecasts {
  struct oc_forecast each[OC_EXPLANATIONS];
};

/* How far the leading explanations lie apart, pair by pair. */
static double apart(const struct oc_trial *trial, const struct forecasts *forecasts) {
  double sum = 0;
  for (int i = 0; i < OC_EXPLANATIONS; i++)
    for (int j = 0; j < i; j++) {
      if (!leads(trial, i) || !leads(trial, j))
        continue;
      const struct oc_forecast *a = &forecasts->each[i];
      const struct oc_forecast *b = &forecasts->each[j];
      double sigmas = fabs(a->log_ohm - b->log_ohm) / hypot(a->u, b->u);
      if (sigmas >= OC_TELLS_APART)
        sum += fmin(sigmas, OC_WELL_APART);
    }
  return sum;
}

static bool is_elsewhere(const struct oc_trial *trial, double t_c) {
  for (size_t i = 0; i < trial->evidence.count; i++)
    if (fabs(trial->evidence.readings[i].at_c - t_c) < OC_ELSEWHERE_K)
      return false;
  return true;
}

static void find_separating(struct oc_trial *trial, ohm_finding *finding) {
  double most = 0;
  double at_c = NAN;
  struct forecasts best;
  for (int at = 0; at < OC_AT_HAND; at++) {
    struct forecasts here;
    if (!is_elsewhere(trial, oc_at_hand_c[at]))
      continue;
    for (int i = 0; i < OC_EXPLANATIONS; i++)
      if (leads(trial, i))
        here.each[i] = foretell(trial, i, oc_at_hand_c[at]);
    double sum = apart(trial, &here);
    if (sum > most) {
      most = sum;
      at_c = oc_at_hand_c[at];
      best = here;
    }
  }
  if (isnan(at_c))
    return;
  set(finding, OHM_FIELD_SEPARATING_C, at_c);
  for (int i = 0; i < OC_EXPLANATIONS; i++)
    if (leads(trial, i)) {
      set(&trial->explanations[i], OHM_FIELD_SEPARATING_C, at_c);
      set(&trial->explanations[i], OHM_FIELD_SEPARATING_OHM, exp(best.each[i].log_ohm));
    }
}

/* ---- what they come to ---- */

/* As they stand where one reading goes with all alike, else the best fit first. */
static void add_leading(const struct oc_trial *trial, ohm_finding *finding) {
  bool told[OC_EXPLANATIONS] = {false};
  for (;;) {
    int next = OC_EXPLANATIONS;
    for (int i = 0; i < OC_EXPLANATIONS; i++) {
      bool better =
          next == OC_EXPLANATIONS ||
          (trial->evidence.count > 1 && get(&trial->explanations[i], OHM_FIELD_P_FIT) >
                                            get(&trial->explanations[next], OHM_FIELD_P_FIT));
      if (leads(trial, i) && !told[i] && better)
        next = i;
    }
    if (next == OC_EXPLANATIONS)
      return;
    told[next] = true;
    oc_finding_add_entry(finding, OHM_FIELD_CANDIDATES,
                         ohm_finding_text(&trial->explanations[next], OHM_FIELD_EXPLANATION, 0));
  }
}

/* Nothing is said of the fan unless all that leads says something, and was read so near to where
 * it starts that two faults at once, or a beta that is another part's, move it little. */
static void tell_starts(struct oc_trial *trial, ohm_finding *finding) {
  struct oc_starts whole = {INFINITY, -INFINITY};
  bool known = true;
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    const struct oc_starts *start = &trial->start[i];
    if (trial->has_start[i])
      tell_start(&trial->explanations[i], *start);
    if (!leads(trial, i))
      continue;
    known = known && trial->has_start[i];
    whole = (struct oc_starts){fmin(whole.low_c, start->low_c), fmax(whole.high_c, start->high_c)};
  }
  double hottest_c = trial->evidence.readings[trial->evidence.hottest].at_c;
  bool near = hottest_c >= trial->measurement.fan_c - OC_ASSUMED_FAN_LIMIT_K / OC_MOST_BETA_SHARE;
  if (known && near && whole.low_c <= whole.high_c)
    tell_start(finding, whole);
}

/* The only explanation that leads, with its figures. */
static void copy_only(const struct oc_trial *trial, ohm_finding *finding) {
  static const ohm_field fields[] = {
      OHM_FIELD_FAULT_OHM,     OHM_FIELD_FAULT_LOW_OHM,     OHM_FIELD_FAULT_HIGH_OHM,
      OHM_FIELD_FAULT_PERCENT, OHM_FIELD_FAULT_LOW_PERCENT, OHM_FIELD_FAULT_HIGH_PERCENT,
      OHM_FIELD_P_FIT,         OHM_FIELD_P_CHANCE,          OHM_FIELD_FAULT_LATE_K,
      OHM_FIELD_SUGGESTED_OHM};
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    if (!leads(trial, i))
      continue;
    oc_finding_set_explanation(finding, (ohm_explanation)i);
    for (size_t f = 0; f < sizeof fields / sizeof fields[0]; f++)
      set(finding, fields[f], get(&trial->explanations[i], fields[f]));
  }
}

static void ask_for_k(struct oc_trial *trial, ohm_finding *finding) {
  set(finding, OHM_FIELD_SUGGESTED_OHM,
      get(&trial->explanations[OHM_EXPLANATION_WRONG_RANGE], OHM_FIELD_SUGGESTED_OHM));
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
}

static void conclude(struct oc_trial *trial, ohm_finding *finding) {
  size_t leading = find_leading(trial);
  add_leading(trial, finding);
  tell_starts(trial, finding);
  if (trial->other)
    oc_finding_add_entry(finding, OHM_FIELD_SENSOR_KIND, ohm_sensor_kind(trial->other));
  if (leading == 1)
    copy_only(trial, finding);
  else
    find_separating(trial, finding);
  if (leads(trial, OHM_EXPLANATION_WRONG_RANGE) && trial->ask.readings[0].bare) {
    ask_for_k(trial, finding);
  } else if (leads(trial, OHM_EXPLANATION_HEALTHY)) {
    oc_finding_set_verdict(finding, leading == 1 ? OHM_WITHIN : OHM_UNDECIDED,
                           leading == 1 ? OHM_REASON_CONFORMS : OHM_REASON_SEVERAL);
  } else if (leads(trial, OHM_EXPLANATION_PLUG_ON)) {
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  } else if (leads(trial, OHM_EXPLANATION_FAHRENHEIT)) {
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_FAHRENHEIT);
  } else {
    oc_finding_set_verdict(finding, OHM_OUTSIDE,
                           leading == 0   ? OHM_REASON_NONE
                           : leading == 1 ? OHM_REASON_ONE
                                          : OHM_REASON_SEVERAL);
  }
}

/* Displays that are not numbers. */
static bool conclude_ends(struct oc_trial *trial, ohm_finding *finding) {
  static const ohm_reason of_display[] = {
      [OC_DISPLAY_OVER] = OHM_REASON_OVER_RANGE, [OC_DISPLAY_ONE] = OHM_REASON_LONE_ONE};
  oc_trial_ends(trial);
  for (int end = OHM_EXPLANATION_OPEN; end <= OHM_EXPLANATION_SHORT; end++) {
    if (!oc_trial_fits(trial, (ohm_explanation)end))
      continue;
    if (end == OHM_EXPLANATION_SHORT && oc_trial_misses_k(trial)) {
      set(&trial->explanations[OHM_EXPLANATION_WRONG_RANGE], OHM_FIELD_LEADING, 1);
      ask_for_k(trial, finding);
      return true;
    }
    set(&trial->explanations[end], OHM_FIELD_LEADING, 1);
    oc_finding_set_explanation(finding, (ohm_explanation)end);
    add_leading(trial, finding);
    oc_finding_set_verdict(finding, OHM_OUTSIDE,
                           end == OHM_EXPLANATION_OPEN ? OHM_REASON_OPEN : OHM_REASON_SHORTED);
    return true;
  }
  for (size_t i = 0; i < trial->ask.count; i++) {
    int display = trial->ask.readings[i].display;
    if (display != OC_DISPLAY_OVER && display != OC_DISPLAY_ONE)
      continue;
    oc_finding_set_verdict(finding, OHM_UNDECIDED, of_display[display]);
    return true;
  }
  return false;
}

static ohm_status ask_all(struct oc_trial *trial, ohm_finding *finding) {
  double hottest_c = -INFINITY;
  for (size_t i = 0; i < trial->ask.count; i++) {
    struct oc_measurement measurement;
    ohm_status status =
        oc_measurement_ask(&measurement, trial->sensor, &trial->ask.readings[i], trial->ask.meter,
                           &trial->ask.references[i], trial->ask.check);
    if (status != OHM_OK)
      return status;
    oc_told_assumed(&measurement, finding);
    if (measurement.bath.value > hottest_c)
      trial->measurement = measurement;
    hottest_c = fmax(hottest_c, measurement.bath.value);
  }
  return oc_ask_gather(&trial->evidence, trial->sensor, &trial->ask);
}

static ohm_status answer(struct oc_trial *trial, ohm_finding *finding) {
  ohm_status status = ask_all(trial, finding);
  if (status != OHM_OK)
    return status;
  if (!trial->evidence.covered)
    return OHM_OUT_OF_RANGE;
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    oc_finding_set_about(&trial->explanations[i], OHM_VERB_EXPLAIN);
    oc_finding_set_explanation(&trial->explanations[i], (ohm_explanation)i);
    set(&trial->explanations[i], OHM_FIELD_P_FIT, 0);
  }
  oc_finding_set_about(finding, OHM_VERB_EXPLAIN);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(trial->sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(trial->sensor));
  oc_told_place(&trial->measurement, finding);
  set(finding, OHM_FIELD_READINGS, (double)trial->ask.count);
  set(finding, OHM_FIELD_LEVEL, trial->measurement.level);
  set(finding, OHM_FIELD_FAN_C, trial->measurement.fan_c);
  set(finding, OHM_FIELD_LIMIT_K, trial->measurement.limit_k);
  set(finding, OHM_FIELD_AT_C, trial->measurement.bath.value);
  if (!trial->evidence.toleranced)
    oc_finding_assume(finding, OC_ASSUME_TOLERANCE);
  if (conclude_ends(trial, finding))
    return OHM_OK;
  oc_trial_all(trial);
  conclude(trial, finding);
  return OHM_OK;
}

ohm_status oc_explain(const ohm_sensor *sensor, const ohm_sensor *const *others, size_t other_count,
                      const oc_reading *readings, const oc_reference *references, size_t count,
                      const oc_meter *meter, const oc_check *check, ohm_finding *explanations,
                      ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  for (int i = 0; explanations && i < OC_EXPLANATIONS; i++)
    oc_finding_clear(&explanations[i]);
  if (!sensor || !readings || !references || !explanations || !finding || (!others && other_count))
    return OHM_NULL_ARGUMENT;
  for (size_t i = 0; i < other_count; i++)
    if (!others[i])
      return OHM_NULL_ARGUMENT;
  if (count == 0)
    return OHM_BAD_ARGUMENT;
  if (count > OC_ASK_MAX)
    return OHM_TOO_LARGE;
  struct oc_trial *trial = calloc(1, sizeof *trial);
  if (!trial)
    return OHM_NO_MEMORY;
  trial->sensor = sensor;
  trial->others = others;
  trial->other_count = other_count;
  trial->ask = (struct oc_ask){readings, references, count, meter, check};
  trial->explanations = explanations;
  ohm_status status = answer(trial, finding);
  free(trial);
  if (status == OHM_OK)
    return OHM_OK;
  oc_finding_clear(finding);
  for (int i = 0; i < OC_EXPLANATIONS; i++)
    oc_finding_clear(&explanations[i]);
  return status;
}

/* ---- the verb ---- */

ohm_answer *ohm_bench_explain(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_part(&ask, bench, "explain", error);
  if (status == OHM_OK)
    status = oc_request_reach(&ask);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each =
      answer ? oc_answer_group(answer, OHM_GROUP_EXPLANATIONS, OC_EXPLANATIONS) : NULL;
  if (each)
    status = oc_request_told(&ask, oc_explain(bench->sensor, bench->compared, bench->compared_count,
                                              ask.readings, ask.references, ask.count, &ask.meter,
                                              &ask.check, each, &answer->whole));
  return oc_answer_done(answer, status, error);
}
