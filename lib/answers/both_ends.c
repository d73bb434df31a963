/* SPDX-License-Identifier: MIT */
#include "both_ends.h"

#include "../model/part.h"

/* Ohms between the two ends, and what makes them uncertain. */
struct between {
  struct oc_budget ohm;
  double late_by_ohm;
};

/* The curve of a part between two temperatures: its places in the band may be worth more at one
 * than at the other. Where limits are printed for one of them alone, by what is assumed. */
static void add_band(struct between *between, const struct oc_measurement *sensor,
                     const struct oc_measurement *module, double expected_ohm) {
  double at_sensor[2];
  double at_module[2];
  bool printed = sensor->covered == OHM_OK && module->covered == OHM_OK;
  if (!printed) {
    bool elsewhere = sensor->covered == OHM_OUT_OF_RANGE || module->covered == OHM_OUT_OF_RANGE;
    bool apart = sensor->bath.value != module->bath.value;
    if (elsewhere && apart)
      oc_budget_add_limit(&between->ohm, OC_CAUSE_BAND,
                          OC_ASSUMED_TOLERANCE_PERCENT / 100 * expected_ohm);
    return;
  }
  oc_part_worth(sensor->curve, &sensor->tolerance, sensor->bath.value, at_sensor);
  oc_part_worth(module->curve, &module->tolerance, module->bath.value, at_module);
  double apart = fabs(at_module[0] - at_sensor[0]) + fabs(at_module[1] - at_sensor[1]);
  oc_budget_add_limit(&between->ohm, OC_CAUSE_BAND, apart * expected_ohm);
}

/* On one range percent errs alike in both, and counts each its own way; on two ranges all of it
 * does. */
static void add_meter(struct between *between, const struct oc_measurement *sensor,
                      const struct oc_measurement *module, double share) {
  struct oc_meter_parts one = oc_meter_parts(sensor->meter, sensor->reading);
  struct oc_meter_parts other = oc_meter_parts(module->meter, module->reading);
  bool alike =
      one.count_ohm == other.count_ohm || (sensor->meter && sensor->meter->ranges_alike == 1);
  double percent_ohm = share * one.percent_ohm;
  if (alike)
    oc_budget_add_limit(&between->ohm, OC_CAUSE_METER, fabs(other.percent_ohm - percent_ohm));
  oc_budget_add_limit(&between->ohm, OC_CAUSE_DISPLAY,
                      other.counts_ohm + (alike ? 0 : other.percent_ohm));
  oc_budget_add_limit(&between->ohm, OC_CAUSE_DEGREE,
                      share * one.counts_ohm + (alike ? 0 : percent_ohm));
  oc_budget_add_limit(&between->ohm, OC_CAUSE_LEADS,
                      fabs(1 - share) * oc_budget_limit(&sensor->read, OC_CAUSE_LEADS));
}

/* A thermometer that is told to be good to another limit is another one. */
static bool is_one_bath(const oc_reference *a, const oc_reference *b) {
  bool thermometers = a->kind == OHM_REFERENCE_THERMOMETER &&
                      b->kind == OHM_REFERENCE_THERMOMETER && a->accuracy == b->accuracy &&
                      a->limit_k == b->limit_k;
  return thermometers || (a->kind == b->kind && a->t_c == b->t_c);
}

static double alpha_at(const struct oc_measurement *measurement) {
  double alpha_per_k = 0;
  ohm_curve_alpha(measurement->curve, measurement->bath.value, &alpha_per_k);
  return isnan(alpha_per_k) ? 0 : alpha_per_k;
}

static void add_temperature(struct between *between, const struct oc_measurement *sensor,
                            const struct oc_measurement *module, double expected_ohm,
                            double moved_k) {
  double sensor_k = oc_budget_limit(&sensor->bath, OC_CAUSE_REFERENCE_LIMIT);
  double module_k = oc_budget_limit(&module->bath, OC_CAUSE_REFERENCE_LIMIT);
  double apart_k = fabs(module->bath.value - sensor->bath.value);
  double at_sensor = alpha_at(sensor) * expected_ohm;
  double at_module = alpha_at(module) * expected_ohm;
  if (is_one_bath(sensor->reference, module->reference)) {
    oc_budget_add_limit(&between->ohm, OC_CAUSE_REFERENCE_LIMIT,
                        fabs(at_module - at_sensor) * fmax(sensor_k, module_k));
  } else {
    oc_budget_add_limit(&between->ohm, OC_CAUSE_REFERENCE_LIMIT, fabs(at_sensor) * sensor_k);
    oc_budget_add_limit(&between->ohm, OC_CAUSE_REFERENCE_LIMIT, fabs(at_module) * module_k);
  }
  oc_budget_add_limit(&between->ohm, OC_CAUSE_MOVED, fabs(at_module) * moved_k);
  if (apart_k == 0)
    return;
  /* Each its own: of the thermometer, and of the part about its curve. */
  double noise_ohm = hypot(at_sensor * oc_budget_normal(&sensor->bath, OC_CAUSE_REFERENCE_NOISE),
                           at_module * oc_budget_normal(&module->bath, OC_CAUSE_REFERENCE_NOISE));
  double scatter_ohm = OC_SCATTER * fmin(1, apart_k / OC_ELSEWHERE_K) * sqrt(2) * expected_ohm;
  oc_budget_add_normal(&between->ohm, OC_CAUSE_REFERENCE_NOISE, hypot(noise_ohm, scatter_ohm));
}

static bool find_between(struct between *between, const struct oc_measurement *sensor,
                         const struct oc_measurement *module, double moved_k) {
  if (!sensor->has_number || !module->has_number || !(sensor->read.value > 0))
    return false;
  double share = oc_curve_resistance_beyond(module->curve, module->bath.value) /
                 oc_curve_resistance_beyond(sensor->curve, sensor->bath.value);
  double expected_ohm = share * sensor->read.value;
  between->ohm = oc_budget_of(module->read.value - expected_ohm);
  add_band(between, sensor, module, expected_ohm);
  add_meter(between, sensor, module, share);
  add_temperature(between, sensor, module, expected_ohm, moved_k);
  return isfinite(between->ohm.value) && isfinite(oc_budget_u(&between->ohm));
}

/* ---- what it does to the fan ---- */

static double late_by(const struct oc_measurement *measurement, double series_ohm) {
  struct oc_tolerance tolerance;
  struct oc_exposure exposure;
  oc_measurement_expose(measurement, &tolerance, &exposure);
  return oc_hidden_late_by(&exposure, fmax(0, series_ohm));
}

static void tell(ohm_finding *finding, const struct between *between,
                 const struct oc_measurement *module) {
  struct oc_spread spread = oc_spread_of(&between->ohm);
  double expanded_ohm = oc_spread_expanded(&spread, module->level);
  double most_k = late_by(module, between->ohm.value + expanded_ohm);
  double least_k = late_by(module, between->ohm.value - expanded_ohm);
  oc_finding_set_number(finding, OHM_FIELD_BETWEEN_OHM, between->ohm.value);
  oc_finding_set_number(finding, OHM_FIELD_U_BETWEEN_OHM, oc_budget_u(&between->ohm));
  oc_finding_set_number(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM, expanded_ohm);
  oc_finding_set_number(finding, OHM_FIELD_BETWEEN_LATE_K, late_by(module, between->ohm.value));
  oc_finding_set_number(finding, OHM_FIELD_BETWEEN_MOST_LATE_K, most_k);
  bool less = between->ohm.value + expanded_ohm < 0;
  oc_finding_set_number(finding, OHM_FIELD_WIRES,
                        less                        ? OHM_UNDECIDED
                        : most_k <= module->limit_k ? OHM_WITHIN
                        : least_k > module->limit_k ? OHM_OUTSIDE
                                                    : OHM_UNDECIDED);
}

static bool ask_at(struct oc_measurement *measurement, const struct oc_request *ask,
                   const ohm_sensor *sensor, size_t at) {
  return oc_measurement_ask(measurement, sensor, &ask->readings[at], &ask->meter,
                            &ask->references[at], &ask->check) == OHM_OK;
}

/* Of readings in a row in one bath the last counts. */
static bool is_repeated(const struct oc_request *ask, size_t at) {
  for (size_t i = at + 1; i < ask->count; i++)
    if (ask->places[i] == ask->places[at])
      return oc_reference_is_same(&ask->references[at], &ask->references[i]);
  return false;
}

/* Of the ends the sensor's is a number. */
static bool is_broken(const struct oc_request *ask) {
  bool broken = false;
  bool whole = false;
  for (size_t i = 0; i < ask->count; i++) {
    if (is_repeated(ask, i))
      continue;
    int display = ask->readings[i].display;
    broken = broken || (ask->places[i] == OHM_PLACE_MODULE && display == OC_DISPLAY_OPEN);
    whole = whole || (ask->places[i] == OHM_PLACE_SENSOR && display == OC_DISPLAY_VALUE);
  }
  return broken && whole;
}

void oc_both_ends_tell(ohm_finding *finding, const struct oc_request *ask, const ohm_sensor *sensor,
                       double moved_k) {
  double surest_ohm = INFINITY;
  if (is_broken(ask)) {
    oc_finding_set_number(finding, OHM_FIELD_WIRES, OHM_OUTSIDE);
    return;
  }
  for (size_t i = 0; i < ask->count; i++)
    for (size_t k = 0; k < ask->count; k++) {
      struct oc_measurement at_sensor;
      struct oc_measurement at_module;
      struct between between = {0};
      bool ends = ask->places[i] == OHM_PLACE_SENSOR && ask->places[k] == OHM_PLACE_MODULE;
      if (!ends || is_repeated(ask, i) || is_repeated(ask, k) ||
          !ask_at(&at_sensor, ask, sensor, i) || !ask_at(&at_module, ask, sensor, k) ||
          !find_between(&between, &at_sensor, &at_module, moved_k) ||
          !(oc_budget_u(&between.ohm) < surest_ohm))
        continue;
      surest_ohm = oc_budget_u(&between.ohm);
      tell(finding, &between, &at_module);
    }
}
