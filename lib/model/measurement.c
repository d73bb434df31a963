/* SPDX-License-Identifier: MIT */
/* A check before it is answered. */
#include "measurement.h"

#include "../evidence/reference.h"

/* ---- what was asked ---- */

static bool is_check(const oc_check *check) {
  return isfinite(check->level) && isfinite(check->tolerance_percent) && isfinite(check->fan_c) &&
         isfinite(check->limit_k) && oc_inside(OHM_PLACE_NOT_TOLD, check->place, OHM_PLACE_MODULE);
}

static ohm_status take_check(struct oc_measurement *measurement, const oc_check *check) {
  if (!is_check(check))
    return OHM_BAD_ARGUMENT;
  measurement->level = check->level == 0 ? OC_ASSUMED_LEVEL : check->level;
  measurement->fan_assumed = check->fan_c == 0;
  measurement->fan_c = measurement->fan_assumed ? OC_ASSUMED_FAN_C : check->fan_c;
  measurement->limit_assumed = check->limit_k == 0;
  measurement->limit_k = measurement->limit_assumed ? OC_ASSUMED_FAN_LIMIT_K : check->limit_k;
  measurement->place = (ohm_place)check->place;
  measurement->band_told = check->band || check->tolerance_percent != 0;
  bool good = 0.5 < measurement->level && measurement->level < 1 && 0 < measurement->fan_c &&
              measurement->fan_c < OC_NEVER_C && 0 < measurement->limit_k &&
              measurement->limit_k <= OC_MOST_LIMIT_K;
  return good ? OHM_OK : OHM_OUT_OF_RANGE;
}

static ohm_status choose_at(struct oc_measurement *measurement, const oc_check *check, double t_c) {
  if (check->tolerance_percent == 0)
    return oc_sensor_choose(measurement->sensor, check->band, t_c, &measurement->tolerance,
                            &measurement->band);
  measurement->tolerance =
      (struct oc_tolerance){.kind = OC_TOLERANCE_PERCENT, .percent = check->tolerance_percent};
  return oc_tolerance_covers(measurement->curve, &measurement->tolerance, t_c);
}

/* A bath that may as well be at the last printed temperature, 100.07 C for 100 C, is
 * judged there. */
static ohm_status take_tolerance(struct oc_measurement *measurement, const oc_check *check) {
  double t_c = measurement->bath.value;
  double u_k = oc_budget_u(&measurement->bath);
  if (check->tolerance_percent != 0 &&
      !(0 < check->tolerance_percent && check->tolerance_percent < 100))
    return OHM_OUT_OF_RANGE;
  measurement->covered = choose_at(measurement, check, t_c);
  if (measurement->covered == OHM_OUT_OF_RANGE)
    measurement->covered = choose_at(measurement, check, t_c - u_k);
  if (measurement->covered == OHM_OUT_OF_RANGE)
    measurement->covered = choose_at(measurement, check, t_c + u_k);
  return measurement->covered == OHM_BAD_ARGUMENT ? OHM_NOT_FOUND : OHM_OK;
}

bool oc_measurement_band(struct oc_measurement *by, size_t index, const char **name) {
  const ohm_sensor *sensor = by->sensor;
  double at_c = by->bath.value;
  for (size_t i = 0; i <= sensor->band_count; i++) {
    by->band = i > 0 ? &sensor->bands[i - 1] : NULL;
    by->tolerance = by->band ? oc_tolerance_of_maker(by->band) : sensor->tolerance;
    *name = by->band ? by->band->name : "the table's own";
    if (oc_tolerance_covers(by->curve, &by->tolerance, at_c) == OHM_OK && index-- == 0)
      return true;
  }
  return false;
}

/* Largest test current of an ohmmeter on the range of a resistance, common practice. */
static double greatest_current_ma(double r_ohm) {
  return r_ohm < OC_FULL_CURRENT_OHM        ? OC_ASSUMED_CURRENT_MA
         : r_ohm < 10 * OC_FULL_CURRENT_OHM ? OC_ASSUMED_CURRENT_MA / 10
                                            : OC_ASSUMED_CURRENT_MA / 100;
}

/* The element is warmer than its bath by P/delta; where the current is not known, by
 * anything from nothing up to that of the greatest. */
static void heat(struct oc_measurement *measurement) {
  double dissipation = ohm_sensor_dissipation_mw_per_k(measurement->sensor);
  double stated_ma = measurement->meter ? measurement->meter->current_ma : 0;
  if (!measurement->has_number || isnan(dissipation))
    return;
  measurement->current_assumed = stated_ma == 0;
  double r_ohm = measurement->read.value;
  double ma = measurement->current_assumed ? greatest_current_ma(r_ohm) : stated_ma;
  double full_k = ma * ma * 1e-3 * r_ohm / dissipation;
  double shift_k = measurement->current_assumed ? full_k / 2 : full_k;
  double limit_k = measurement->current_assumed ? full_k / 2 : OC_DISSIPATION_SPREAD * full_k;
  measurement->element.value += shift_k;
  oc_budget_add_limit(&measurement->element, OC_CAUSE_HEATING, limit_k);
}

ohm_status oc_measurement_ask(struct oc_measurement *measurement, const ohm_sensor *sensor,
                              const oc_reading *reading, const oc_meter *meter,
                              const oc_reference *reference, const oc_check *check) {
  static const oc_check all_default = OC_CHECK_INIT;
  check = check ? check : &all_default;
  *measurement = (struct oc_measurement){.sensor = sensor,
                                         .curve = sensor->curve,
                                         .reading = reading,
                                         .meter = meter,
                                         .reference = reference};
  ohm_status status = take_check(measurement, check);
  if (status == OHM_OK)
    status = oc_reference_budget(reference, &measurement->bath, &measurement->bath_assumed);
  if (status == OHM_OK)
    status = take_tolerance(measurement, check);
  if (status != OHM_OK)
    return status;
  status = oc_meter_budget(meter, reading, &measurement->read, &measurement->meter_assumed);
  measurement->has_number = status == OHM_OK;
  measurement->element = measurement->bath;
  heat(measurement);
  return status == OHM_OUT_OF_RANGE ? OHM_OK : status;
}

bool oc_measurement_misses_k(const struct oc_measurement *measurement) {
  double bath_c = measurement->bath.value;
  double bare_c;
  double thousandfold_c;
  if (!measurement->has_number || !measurement->reading->bare)
    return false;
  bool fits =
      ohm_curve_temperature(measurement->curve, measurement->read.value, &bare_c) == OHM_OK &&
      fabs(bare_c - bath_c) <= OC_DOUBTED_K;
  return !fits &&
         ohm_curve_temperature(measurement->curve, 1000 * measurement->reading->r_ohm,
                               &thousandfold_c) == OHM_OK &&
         fabs(thousandfold_c - bath_c) <= OC_NEAR_K + oc_budget_u(&measurement->bath);
}

/* ---- what could hide ---- */

bool oc_measurement_is_shorted(const struct oc_measurement *measurement) {
  double nominal_ohm = oc_curve_resistance_beyond(measurement->curve, measurement->bath.value);
  return measurement->read.value < fmin(OC_SHORTED_OHM, OC_SHORTED_SHARE * nominal_ohm);
}

void oc_measurement_expose(const struct oc_measurement *measurement, struct oc_tolerance *tolerance,
                           struct oc_exposure *exposure) {
  *tolerance = measurement->tolerance;
  if (tolerance->kind == OC_TOLERANCE_NONE)
    *tolerance = (struct oc_tolerance){.kind = OC_TOLERANCE_PERCENT,
                                       .percent = OC_ASSUMED_TOLERANCE_PERCENT};
  *exposure = (struct oc_exposure){.curve = measurement->curve,
                                   .tolerance = tolerance,
                                   .read = oc_spread_of(&measurement->read),
                                   .at = oc_spread_of(&measurement->element),
                                   .level = measurement->level,
                                   .fan_c = measurement->fan_c,
                                   .limit_k = measurement->limit_k};
}

/* ---- which readings would pass ---- */

struct passing {
  const struct oc_measurement *measurement;
  struct oc_nodes at;
  struct oc_band band[OC_NODES_MAX];
};

static void look(struct passing *passing, const struct oc_measurement *measurement,
                 const struct oc_budget *element) {
  passing->measurement = measurement;
  struct oc_spread at = oc_spread_of(element);
  oc_nodes_of(&at, &passing->at);
  for (size_t i = 0; i < passing->at.count; i++)
    passing->band[i] =
        oc_tolerance_band(measurement->curve, &measurement->tolerance, passing->at.condition[i]);
}

/* p_within of another reading by the same meter. */
static double within(const struct passing *passing, double r_ohm) {
  const struct oc_measurement *measurement = passing->measurement;
  oc_reading reading = *measurement->reading;
  reading.display = OC_DISPLAY_VALUE;
  reading.r_ohm = r_ohm + measurement->reading->r_ohm - measurement->read.value;
  struct oc_budget budget;
  if (!(reading.r_ohm >= 0) ||
      oc_meter_budget(measurement->meter, &reading, &budget, NULL) != OHM_OK)
    return 0;
  struct oc_spread read = oc_spread_of(&budget);
  double p = 0;
  for (size_t i = 0; i < passing->at.count; i++)
    p += passing->at.weight[i] * (oc_spread_below(&read, passing->band[i].high_ohm) -
                                  oc_spread_below(&read, passing->band[i].low_ohm));
  return p;
}

/* The reading most likely to pass: p_within has one hill between the limits, and where they lie
 * far apart a plain on top, with the middle on it. */
static double likeliest(const struct passing *passing) {
  struct oc_band band = passing->band[passing->at.count / 2];
  double low = band.low_ohm;
  double high = band.high_ohm;
  double middle = sqrt(low * high);
  if (within(passing, middle) >= passing->measurement->level)
    return middle;
  for (int i = 0; i < 12; i++) {
    double left = low + (high - low) / 3;
    double right = high - (high - low) / 3;
    if (within(passing, left) < within(passing, right))
      low = left;
    else
      high = right;
  }
  return low + (high - low) / 2;
}

/* Where it passes no more, on the way to where it does not. */
static double edge(const struct passing *passing, double passes, double fails) {
  for (int i = 0; i < 40 && fabs(fails - passes) > 1e-9 * passes; i++) {
    double middle = passes + (fails - passes) / 2;
    if (within(passing, middle) >= passing->measurement->level)
      passes = middle;
    else
      fails = middle;
  }
  return passes;
}

/* The limit of error of a thermometer with which the likeliest reading passes. */
static double needed(const struct oc_measurement *measurement, struct passing *passing) {
  struct oc_budget beside = oc_budget_of(measurement->element.value);
  for (size_t i = 0; i < measurement->element.count; i++)
    if (measurement->element.causes[i].name != OC_CAUSE_REFERENCE_LIMIT)
      beside.causes[beside.count++] = measurement->element.causes[i];
  look(passing, measurement, &beside);
  if (within(passing, likeliest(passing)) < measurement->level)
    return NAN;
  double enough = 0;
  double too_much = oc_budget_limit(&measurement->element, OC_CAUSE_REFERENCE_LIMIT);
  for (int i = 0; i < 10; i++) {
    double middle = (enough + too_much) / 2;
    struct oc_budget element = beside;
    oc_budget_add_limit(&element, OC_CAUSE_REFERENCE_LIMIT, middle);
    look(passing, measurement, &element);
    if (within(passing, likeliest(passing)) >= measurement->level)
      enough = middle;
    else
      too_much = middle;
  }
  return enough;
}

struct oc_acceptance oc_measurement_acceptance(const struct oc_measurement *measurement) {
  struct oc_acceptance acceptance = {NAN, NAN, NAN};
  struct passing passing;
  look(&passing, measurement, &measurement->element);
  double best = likeliest(&passing);
  if (within(&passing, best) >= measurement->level) {
    struct oc_band band = passing.band[passing.at.count / 2];
    acceptance.low_ohm = edge(&passing, best, 0.9 * band.low_ohm);
    acceptance.high_ohm = edge(&passing, best, 1.1 * band.high_ohm);
  } else {
    acceptance.needed_k = needed(measurement, &passing);
  }
  return acceptance;
}
