/* SPDX-License-Identifier: MIT */
#include "trial.h"

#include <string.h>

#include "../arithmetic/distribution.h"
#include "../model/fault_size.h"
#include "../evidence/meter.h"

static void set(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double get(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

bool oc_trial_fits(const struct oc_trial *trial, ohm_explanation explanation) {
  return get(&trial->explanations[explanation], OHM_FIELD_P_FIT) >= 1 - trial->evidence.level;
}

/* ---- the fan ---- */

static const struct oc_fault sound = {OC_FAULT_DRIFT, 0};

static bool moves_fan(const struct oc_trial *trial, const struct oc_evidence *part) {
  return oc_curve_falls(trial->evidence.curve) && oc_curve_falls(part->curve);
}

static void tell_late(struct oc_trial *trial, ohm_explanation explanation,
                      const struct oc_evidence *part, const struct oc_fault *fault) {
  if (!moves_fan(trial, part))
    return;
  double fan_c = trial->measurement.fan_c;
  double start_c = oc_start_of_part(trial->evidence.curve, fan_c, part, fault, 0);
  set(&trial->explanations[explanation], OHM_FIELD_FAULT_LATE_K, start_c - fan_c);
}

/* Only of what explains the readings is it asked. */
static void may_start(struct oc_trial *trial, ohm_explanation explanation,
                      const struct oc_evidence *part, enum oc_fault_shape shape, double low,
                      double high) {
  if (!moves_fan(trial, part) || !oc_trial_fits(trial, explanation))
    return;
  struct oc_starts *known = &trial->start[explanation];
  bool first = !trial->has_start[explanation];
  struct oc_starts start =
      oc_starts_of_part(trial->evidence.curve, trial->measurement.fan_c, part, shape, low, high);
  known->low_c = first ? start.low_c : fmin(known->low_c, start.low_c);
  known->high_c = first ? start.high_c : fmax(known->high_c, start.high_c);
  trial->has_start[explanation] = true;
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
  set(finding, OHM_FIELD_FAULT_OHM, size);
  set(finding, OHM_FIELD_FAULT_LOW_OHM, low);
  set(finding, OHM_FIELD_FAULT_HIGH_OHM, high);
}

static void tell_percent(ohm_finding *finding, double size, double low, double high) {
  set(finding, OHM_FIELD_FAULT_PERCENT, 100 * size);
  set(finding, OHM_FIELD_FAULT_LOW_PERCENT, 100 * low);
  set(finding, OHM_FIELD_FAULT_HIGH_PERCENT, 100 * high);
}

static void tell_size(ohm_finding *finding, const struct oc_trial *trial, enum oc_fault_shape shape,
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
static double fit_of(const struct oc_trial *trial, enum oc_fault_shape shape,
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

static void try_sized(struct oc_trial *trial, ohm_explanation explanation,
                      enum oc_fault_shape shape) {
  struct oc_fault_estimate estimate;
  ohm_finding *finding = &trial->explanations[explanation];
  if (!oc_fault_estimate(&trial->evidence, shape, trial->evidence.level, &estimate))
    return;
  struct oc_fault fault = {shape, estimate.size};
  if (oc_fault_is_one_sided(shape))
    fault.size = fmax(0, fault.size);
  tell_size(finding, trial, shape, &estimate);
  trial->fault[explanation] = fault;
  trial->u_size[explanation] = estimate.u;
  trial->has_size[explanation] = true;
  set(finding, OHM_FIELD_P_CHANCE, estimate.p_chance);
  set(finding, OHM_FIELD_P_FIT, fit_of(trial, shape, &estimate));
  double least = oc_fault_is_one_sided(shape) ? 0 : -INFINITY;
  tell_late(trial, explanation, &trial->evidence, &fault);
  may_start(trial, explanation, &trial->evidence, shape, fmax(least, estimate.low),
            fmax(least, estimate.high));
}

/* ---- faults that have none ---- */

/* A good sensor with a module's pull-up across it. */
static void try_plug_on(struct oc_trial *trial) {
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

/* As a logarithm of likelihood, behind one that fits: none that fits lies so far back, by the
 * width of its band a hundredth, by how it fits a tenth. */
static const double HOPELESS = 12;

/* An instrument's sender asks for no fan. */
static bool asks_for_fan(const ohm_sensor *sensor) {
  return strcmp(ohm_sensor_kind(sensor), "gauge") != 0;
}

/* Of the sensors that fit, the likeliest; any of them may be what starts the fan. */
static void try_other_parts(struct oc_trial *trial) {
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
    if (!(log_likelihood > best - HOPELESS))
      continue;
    double p_fit = oc_evidence_fit(evidence);
    if (p_fit < 1 - evidence->level)
      continue;
    if (log_likelihood > best) {
      best = log_likelihood;
      trial->other = other;
      set(finding, OHM_FIELD_P_FIT, p_fit);
      set(finding, OHM_FIELD_FAULT_LATE_K, NAN);
      if (asks_for_fan(other))
        tell_late(trial, OHM_EXPLANATION_OTHER_PART, evidence, &sound);
    }
    if (asks_for_fan(other))
      may_start(trial, OHM_EXPLANATION_OTHER_PART, evidence, sound.shape, 0, 0);
  }
  if (!trial->other)
    return;
  if (!asks_for_fan(trial->other))
    trial->has_start[OHM_EXPLANATION_OTHER_PART] = false;
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(trial->other));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(trial->other));
  oc_finding_add_entry(finding, OHM_FIELD_SENSOR_KIND, ohm_sensor_kind(trial->other));
}

/* How well a healthy sensor goes with other readings than were told. */
static double fit_as(struct oc_trial *trial, const struct oc_ask *ask) {
  for (size_t i = 0; i < ask->count; i++)
    if (ask->readings[i].display == OC_DISPLAY_VALUE && ask->readings[i].r_ohm < OC_SHORTED_OHM)
      return 0;
  if (oc_ask_gather(&trial->tried, trial->sensor, ask) != OHM_OK || trial->tried.count == 0 ||
      !trial->tried.covered)
    return 0;
  return oc_evidence_fit(&trial->tried);
}

/* All readings a thousand times as much, or as little. */
static void try_range(struct oc_trial *trial, double factor) {
  ohm_finding *finding = &trial->explanations[OHM_EXPLANATION_WRONG_RANGE];
  struct oc_next_reading scaled;
  oc_next_reading_plan(&scaled, &trial->ask, 0);
  scaled.ask.count = trial->ask.count;
  for (size_t i = 0; i < trial->ask.count; i++) {
    scaled.readings[i].r_ohm *= factor;
    scaled.readings[i].resolution_ohm *= factor;
    scaled.readings[i].zeros_ohm *= factor;
  }
  double p_fit = fit_as(trial, &scaled.ask);
  if (!(p_fit >= get(finding, OHM_FIELD_P_FIT)))
    return;
  set(finding, OHM_FIELD_P_FIT, p_fit);
  set(finding, OHM_FIELD_SUGGESTED_OHM, scaled.readings[0].r_ohm);
  if (p_fit > 0)
    may_start(trial, OHM_EXPLANATION_WRONG_RANGE, &trial->tried, sound.shape, 0, 0);
}

/* As many degrees on a thermometer that was set to Fahrenheit; no bath is colder than ice. */
static void try_fahrenheit(struct oc_trial *trial) {
  ohm_finding *finding = &trial->explanations[OHM_EXPLANATION_FAHRENHEIT];
  struct oc_next_reading converted;
  oc_next_reading_plan(&converted, &trial->ask, 0);
  converted.ask.count = trial->ask.count;
  const oc_reference *read = NULL;
  for (size_t i = 0; i < trial->ask.count; i++) {
    oc_reference *reference = &converted.references[i];
    if (!oc_reference_is_one_thermometer(reference->kind) || reference->not_celsius)
      continue;
    reference->t_c = (reference->t_c - 32) / 1.8;
    read = read ? read : reference;
  }
  double p_fit = read && read->t_c >= 0 ? fit_as(trial, &converted.ask) : 0;
  if (!(p_fit > 0))
    return;
  set(finding, OHM_FIELD_P_FIT, p_fit);
  set(finding, OHM_FIELD_AT_C, read->t_c);
  may_start(trial, OHM_EXPLANATION_FAHRENHEIT, &trial->tried, sound.shape, 0, 0);
}

void oc_trial_ends(struct oc_trial *trial) {
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

void oc_trial_all(struct oc_trial *trial) {
  trial->p_healthy = oc_evidence_fit(&trial->evidence);
  set(&trial->explanations[OHM_EXPLANATION_HEALTHY], OHM_FIELD_P_FIT, trial->p_healthy);
  for (size_t i = 0; i < SIZED; i++)
    try_sized(trial, sized[i].explanation, sized[i].shape);
  try_plug_on(trial);
  try_other_parts(trial);
  try_range(trial, 1000);
  try_range(trial, 0.001);
  try_fahrenheit(trial);
  may_start(trial, OHM_EXPLANATION_HEALTHY, &trial->evidence, sound.shape, 0, 0);
}

bool oc_trial_misses_k(struct oc_trial *trial) {
  try_range(trial, 1000);
  return trial->ask.readings[0].bare && oc_trial_fits(trial, OHM_EXPLANATION_WRONG_RANGE);
}
