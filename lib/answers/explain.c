/* SPDX-License-Identifier: MIT */
/* What readings say of a sensor that may be faulty: every shape of fault is asked how large it
 * would have to be, and whether the readings would then go together. */
#include "explain.h"

#include "request.h"

#include <stdlib.h>
#include <string.h>

#include "../arithmetic/distribution.h"
#include "../model/fault_size.h"
#include "told.h"
#include "../bench/finding.h"
#include "../model/next_reading.h"
#include "../model/start.h"
#include "../evidence/meter.h"

/* Too large for a stack. */
struct trial {
  const ohm_sensor *sensor;
  const ohm_sensor *const *others;
  size_t other_count;
  struct oc_ask ask;
  struct oc_measurement measurement; /* of the hottest reading */
  struct oc_evidence evidence;
  struct oc_evidence tried; /* of other readings, or of another sensor */
  double p_healthy;
  ohm_finding *explanations;    /* by ohm_explanation */
  double size[OC_EXPLANATIONS]; /* of those that have one, and how well it is known */
  double u_size[OC_EXPLANATIONS];
  struct oc_starts start[OC_EXPLANATIONS]; /* of the fan, where has_start */
  bool has_start[OC_EXPLANATIONS];
  const ohm_sensor *other;
};

static void set(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double get(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

static bool fits(const struct trial *trial, ohm_explanation explanation) {
  return get(&trial->explanations[explanation], OHM_FIELD_P_FIT) >= 1 - trial->evidence.level;
}

/* ---- the fan ---- */

static double finite_or_absent(double x) {
  return isfinite(x) ? x : NAN;
}

static const struct oc_fault sound = {OC_FAULT_DRIFT, 0};

static bool moves_fan(const struct trial *trial, const struct oc_evidence *part) {
  return oc_curve_falls(trial->evidence.curve) && oc_curve_falls(part->curve);
}

static void tell_late(struct trial *trial, ohm_explanation explanation,
                      const struct oc_evidence *part, const struct oc_fault *fault) {
  if (!moves_fan(trial, part))
    return;
  double fan_c = trial->measurement.fan_c;
  double start_c = oc_start_of_part(trial->evidence.curve, fan_c, part, fault, 0);
  set(&trial->explanations[explanation], OHM_FIELD_FAULT_LATE_K, finite_or_absent(start_c - fan_c));
}

static void may_start(struct trial *trial, ohm_explanation explanation,
                      const struct oc_evidence *part, enum oc_fault_shape shape, double low,
                      double high) {
  if (!moves_fan(trial, part))
    return;
  struct oc_starts *known = &trial->start[explanation];
  bool first = !trial->has_start[explanation];
  struct oc_starts start =
      oc_starts_of_part(trial->evidence.curve, trial->measurement.fan_c, part, shape, low, high);
  known->low_c = first ? start.low_c : fmin(known->low_c, start.low_c);
  known->high_c = first ? start.high_c : fmax(known->high_c, start.high_c);
  trial->has_start[explanation] = true;
}

/* An end that is absent is always, or never. */
static void tell_start(ohm_finding *finding, struct oc_starts start) {
  set(finding, OHM_FIELD_START_LOW_C, finite_or_absent(fmin(start.low_c, OC_NEVER_C)));
  set(finding, OHM_FIELD_START_HIGH_C, finite_or_absent(fmax(start.high_c, OC_COLDEST_START_C)));
}

/* ---- faults that have a size ---- */

static const struct {
  ohm_explanation explanation;
  enum oc_fault_shape shape;
} sized[] = {{OHM_EXPLANATION_SERIES, OC_FAULT_SERIES},
             {OHM_EXPLANATION_LEAKAGE, OC_FAULT_LEAKAGE},
             {OHM_EXPLANATION_DRIFT, OC_FAULT_DRIFT},
             {OHM_EXPLANATION_BETA_DRIFT, OC_FAULT_BETA}};

enum { SIZED = sizeof sized / sizeof sized[0] };

/* Beta about 25 C: the steepness of the curve there. */
static double beta_k(const ohm_curve *curve) {
  static const double t_c = OC_BETA_T0_C;
  double low_ohm = oc_curve_resistance_beyond(curve, t_c + 1);
  double high_ohm = oc_curve_resistance_beyond(curve, t_c - 1);
  return log(high_ohm / low_ohm) / (1 / oc_kelvin(t_c - 1) - 1 / oc_kelvin(t_c + 1));
}

static void tell_ohms(ohm_finding *finding, double size, double low, double high) {
  set(finding, OHM_FIELD_FAULT_OHM, finite_or_absent(size));
  set(finding, OHM_FIELD_FAULT_LOW_OHM, finite_or_absent(low));
  set(finding, OHM_FIELD_FAULT_HIGH_OHM, finite_or_absent(high));
}

static void tell_percent(ohm_finding *finding, double size, double low, double high) {
  set(finding, OHM_FIELD_FAULT_PERCENT, 100 * size);
  set(finding, OHM_FIELD_FAULT_LOW_PERCENT, 100 * low);
  set(finding, OHM_FIELD_FAULT_HIGH_PERCENT, 100 * high);
}

static void tell_size(ohm_finding *finding, const struct trial *trial, enum oc_fault_shape shape,
                      const struct oc_fault_estimate *estimate) {
  double size = fmax(0, estimate->size);
  double low = fmax(0, estimate->low);
  double high = fmax(0, estimate->high);
  if (shape == OC_FAULT_SERIES) {
    tell_ohms(finding, size, low, high);
  } else if (shape == OC_FAULT_LEAKAGE) {
    tell_ohms(finding, 1 / size, 1 / high, 1 / low);
  } else if (shape == OC_FAULT_DRIFT) {
    tell_percent(finding, expm1(estimate->size), expm1(estimate->low), expm1(estimate->high));
  } else {
    double whole = beta_k(trial->evidence.curve);
    tell_percent(finding, estimate->size / whole, estimate->low / whole, estimate->high / whole);
  }
}

/* Probability that readings go no better with a fault of the best size. One reading
 * goes with any shape that can be so large. */
static double fit_of(const struct trial *trial, enum oc_fault_shape shape,
                     const struct oc_fault_estimate *estimate) {
  if (oc_fault_is_one_sided(shape) && !(estimate->size > 0))
    return trial->p_healthy;
  if (shape == OC_FAULT_BETA &&
      fabs(estimate->size) > OC_MOST_BETA_SHARE * beta_k(trial->evidence.curve))
    return 0;
  if (shape == OC_FAULT_DRIFT && fabs(estimate->size) > log(OC_MOST_DRIFT_FACTOR))
    return 0;
  size_t count = trial->evidence.count;
  return count == 1 ? 1 : oc_chi_square_above(estimate->chi_square, (double)count - 1);
}

static void try_sized(struct trial *trial, ohm_explanation explanation, enum oc_fault_shape shape) {
  struct oc_fault_estimate estimate;
  ohm_finding *finding = &trial->explanations[explanation];
  if (!oc_fault_estimate(&trial->evidence, shape, trial->evidence.level, &estimate))
    return;
  struct oc_fault fault = {shape, estimate.size};
  if (oc_fault_is_one_sided(shape))
    fault.size = fmax(0, fault.size);
  tell_size(finding, trial, shape, &estimate);
  trial->u_size[explanation] = estimate.u;
  trial->size[explanation] = fault.size;
  set(finding, OHM_FIELD_P_CHANCE, estimate.p_chance);
  set(finding, OHM_FIELD_P_FIT, fit_of(trial, shape, &estimate));
  double least = oc_fault_is_one_sided(shape) ? 0 : -INFINITY;
  tell_late(trial, explanation, &trial->evidence, &fault);
  may_start(trial, explanation, &trial->evidence, shape, fmax(least, estimate.low),
            fmax(least, estimate.high));
}

/* ---- faults that have none ---- */

/* A good sensor with a module's pull-up across it. */
static void try_plug_on(struct trial *trial) {
  const ohm_finding *leakage = &trial->explanations[OHM_EXPLANATION_LEAKAGE];
  ohm_finding *finding = &trial->explanations[OHM_EXPLANATION_PLUG_ON];
  ohm_place place = trial->measurement.place;
  double low_ohm = get(leakage, OHM_FIELD_FAULT_LOW_OHM);
  double high_ohm = get(leakage, OHM_FIELD_FAULT_HIGH_OHM);
  bool may_be = place == OHM_PLACE_NOT_TOLD || place == OHM_PLACE_PLUG_ON;
  bool like_one = low_ohm <= OC_GREATEST_PULL_UP_OHM && !(high_ohm < OC_LEAST_PULL_UP_OHM) &&
                  get(leakage, OHM_FIELD_P_CHANCE) < 1 - trial->evidence.level;
  set(finding, OHM_FIELD_P_FIT, may_be && like_one ? get(leakage, OHM_FIELD_P_FIT) : 0);
  tell_ohms(finding, get(leakage, OHM_FIELD_FAULT_OHM), low_ohm, high_ohm);
}

/* An instrument's sender asks for no fan. */
static bool asks_for_fan(const ohm_sensor *sensor) {
  return strcmp(ohm_sensor_kind(sensor), "gauge") != 0;
}

/* Of the sensors that fit, the likeliest; any of them may be what starts the fan. */
static void try_other_parts(struct trial *trial) {
  ohm_finding *finding = &trial->explanations[OHM_EXPLANATION_OTHER_PART];
  double best = -INFINITY;
  set(finding, OHM_FIELD_P_FIT, 0);
  for (size_t i = 0; i < trial->other_count; i++) {
    const ohm_sensor *other = trial->others[i];
    struct oc_evidence *evidence = &trial->tried;
    if (strcmp(ohm_sensor_name(other), ohm_sensor_name(trial->sensor)) == 0 ||
        oc_ask_gather(evidence, other, &trial->ask) != OHM_OK || !evidence->covered)
      continue;
    double log_likelihood = oc_evidence_log_likelihood(evidence, NULL);
    double p_fit = oc_evidence_fit(evidence);
    if (p_fit < 1 - evidence->level)
      continue;
    if (asks_for_fan(other))
      may_start(trial, OHM_EXPLANATION_OTHER_PART, evidence, sound.shape, 0, 0);
    if (!(log_likelihood > best))
      continue;
    best = log_likelihood;
    trial->other = other;
    if (asks_for_fan(other))
      tell_late(trial, OHM_EXPLANATION_OTHER_PART, evidence, &sound);
    set(finding, OHM_FIELD_P_FIT, p_fit);
  }
  if (!trial->other)
    return;
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(trial->other));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(trial->other));
  oc_finding_add_entry(finding, OHM_FIELD_SENSOR_KIND, ohm_sensor_kind(trial->other));
}

/* All readings a thousand times as much, or as little. */
static void try_range(struct trial *trial, double factor) {
  ohm_finding *finding = &trial->explanations[OHM_EXPLANATION_WRONG_RANGE];
  struct oc_next_reading scaled;
  oc_next_reading_plan(&scaled, &trial->ask, 0);
  scaled.ask.count = trial->ask.count;
  for (size_t i = 0; i < trial->ask.count; i++) {
    scaled.readings[i].r_ohm *= factor;
    scaled.readings[i].resolution_ohm *= factor;
    scaled.readings[i].zeros_ohm *= factor;
  }
  if (oc_ask_gather(&trial->tried, trial->sensor, &scaled.ask) != OHM_OK || trial->tried.count == 0)
    return;
  double p_fit = oc_evidence_fit(&trial->tried);
  if (!(p_fit >= get(finding, OHM_FIELD_P_FIT)))
    return;
  set(finding, OHM_FIELD_P_FIT, p_fit);
  set(finding, OHM_FIELD_SUGGESTED_OHM, scaled.readings[0].r_ohm);
}

static void try_ends(struct trial *trial) {
  bool open = false;
  bool shorted = false;
  for (size_t i = 0; i < trial->ask.count; i++) {
    const oc_reading *reading = &trial->ask.readings[i];
    struct oc_budget budget;
    open = open || reading->display == OC_DISPLAY_OPEN;
    if (oc_meter_budget(trial->ask.meter, reading, &budget, NULL) != OHM_OK)
      continue;
    double nominal_ohm =
        oc_curve_resistance_beyond(trial->evidence.curve, trial->measurement.bath.value);
    shorted = shorted || budget.value < fmin(OC_SHORTED_OHM, OC_SHORTED_SHARE * nominal_ohm);
  }
  set(&trial->explanations[OHM_EXPLANATION_OPEN], OHM_FIELD_P_FIT, open);
  set(&trial->explanations[OHM_EXPLANATION_SHORT], OHM_FIELD_P_FIT, shorted);
}

/* ---- all of them ---- */

static void try_all(struct trial *trial) {
  trial->p_healthy = oc_evidence_fit(&trial->evidence);
  set(&trial->explanations[OHM_EXPLANATION_HEALTHY], OHM_FIELD_P_FIT, trial->p_healthy);
  for (size_t i = 0; i < SIZED; i++)
    try_sized(trial, sized[i].explanation, sized[i].shape);
  try_plug_on(trial);
  try_other_parts(trial);
  try_range(trial, 1000);
  try_range(trial, 0.001);
  static const ohm_explanation good[] = {OHM_EXPLANATION_HEALTHY, OHM_EXPLANATION_PLUG_ON,
                                         OHM_EXPLANATION_WRONG_RANGE};
  for (size_t i = 0; i < sizeof good / sizeof good[0]; i++)
    may_start(trial, good[i], &trial->evidence, sound.shape, 0, 0);
}

/* What explains the readings: health when they go with it; else every shape that they go
 * with. A shape that holds a healthy sensor as size 0 is kept beside health only when
 * chance would seldom make one look so. */
static size_t find_leading(struct trial *trial) {
  bool healthy = fits(trial, OHM_EXPLANATION_HEALTHY);
  size_t leading = 0;
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    ohm_finding *finding = &trial->explanations[i];
    double p_chance = get(finding, OHM_FIELD_P_CHANCE);
    bool leads = fits(trial, (ohm_explanation)i);
    if (healthy && i != OHM_EXPLANATION_HEALTHY)
      leads = leads && p_chance < 1 - trial->evidence.level;
    set(finding, OHM_FIELD_LEADING, leads);
    leading += leads;
  }
  return leading;
}

static bool leads(const struct trial *trial, int explanation) {
  return get(&trial->explanations[explanation], OHM_FIELD_LEADING) == 1;
}

/* ---- the reading that would tell them apart ---- */

static struct oc_forecast foretell(const struct trial *trial, int explanation, double t_c) {
  static const struct oc_forecast none = {NAN, NAN};
  struct oc_next_reading further;
  oc_next_reading_plan(&further, &trial->ask, t_c);
  if (explanation == OHM_EXPLANATION_OTHER_PART)
    return oc_next_reading_foretell(&further, trial->other, NULL, 0);
  for (size_t i = 0; i < SIZED; i++)
    if ((int)sized[i].explanation == explanation) {
      struct oc_fault fault = {sized[i].shape, trial->size[explanation]};
      return oc_next_reading_foretell(&further, trial->sensor, &fault, trial->u_size[explanation]);
    }
  return explanation == OHM_EXPLANATION_HEALTHY
             ? oc_next_reading_foretell(&further, trial->sensor, NULL, 0)
             : none;
}

struct forecasts {
  struct oc_forecast each[OC_EXPLANATIONS];
};

/* How far the leading explanations lie apart, pair by pair. */
static double apart(const struct trial *trial, const struct forecasts *forecasts) {
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

static bool is_elsewhere(const struct trial *trial, double t_c) {
  for (size_t i = 0; i < trial->evidence.count; i++)
    if (fabs(trial->evidence.readings[i].at_c - t_c) < OC_ELSEWHERE_K)
      return false;
  return true;
}

static void find_separating(struct trial *trial, ohm_finding *finding) {
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
      set(&trial->explanations[i], OHM_FIELD_SEPARATING_OHM,
          finite_or_absent(exp(best.each[i].log_ohm)));
    }
}

/* ---- what they come to ---- */

/* As they stand where one reading goes with all alike, else the best fit first. */
static void add_leading(const struct trial *trial, ohm_finding *finding) {
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

/* Nothing is said of the fan unless all that leads says something. */
static void tell_starts(struct trial *trial, ohm_finding *finding) {
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
  if (known && whole.low_c <= whole.high_c)
    tell_start(finding, whole);
}

/* The only explanation that leads, with its figures. */
static void copy_only(const struct trial *trial, ohm_finding *finding) {
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

static void conclude(struct trial *trial, ohm_finding *finding) {
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
    set(finding, OHM_FIELD_SUGGESTED_OHM,
        get(&trial->explanations[OHM_EXPLANATION_WRONG_RANGE], OHM_FIELD_SUGGESTED_OHM));
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
  } else if (leads(trial, OHM_EXPLANATION_HEALTHY)) {
    oc_finding_set_verdict(finding, leading == 1 ? OHM_WITHIN : OHM_UNDECIDED,
                           leading == 1 ? OHM_REASON_CONFORMS : OHM_REASON_SEVERAL);
  } else if (leads(trial, OHM_EXPLANATION_PLUG_ON)) {
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  } else {
    oc_finding_set_verdict(finding, OHM_OUTSIDE,
                           leading == 0   ? OHM_REASON_NONE
                           : leading == 1 ? OHM_REASON_ONE
                                          : OHM_REASON_SEVERAL);
  }
}

/* A short is what 2.31 looks like when its k was left out. */
static bool misses_k(struct trial *trial) {
  try_range(trial, 1000);
  return trial->ask.readings[0].bare && fits(trial, OHM_EXPLANATION_WRONG_RANGE);
}

/* Displays that are not numbers. */
static bool conclude_ends(struct trial *trial, ohm_finding *finding) {
  static const ohm_reason of_display[] = {
      [OC_DISPLAY_OVER] = OHM_REASON_OVER_RANGE, [OC_DISPLAY_ONE] = OHM_REASON_LONE_ONE};
  try_ends(trial);
  for (int end = OHM_EXPLANATION_OPEN; end <= OHM_EXPLANATION_SHORT; end++) {
    if (!fits(trial, (ohm_explanation)end) || (end == OHM_EXPLANATION_SHORT && misses_k(trial)))
      continue;
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

static ohm_status ask_all(struct trial *trial, ohm_finding *finding) {
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

static ohm_status answer(struct trial *trial, ohm_finding *finding) {
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
  try_all(trial);
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
  struct trial *trial = calloc(1, sizeof *trial);
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
