/* SPDX-License-Identifier: MIT */
/*
 * Ohms at the sensor, volts at the pin, degrees reported and a thermometer each mean a
 * resistance. Which of them agree says where the way from the sensor to the gauge parts.
 */
#include "signal_path.h"

#include "request.h"

#include "../model/fan_start.h"
#include "path_point.h"

/* Measurements without any error still differ by what arithmetic leaves. */
static const double ROUND_OFF = 1e-9;

/* ---- where they part ---- */

/* What the second means less what the first means. */
struct gap {
  bool given;
  bool parts;
  struct oc_spread ohm;
  double expanded_ohm;
};

static struct gap gap_of(const struct oc_path *path, const struct oc_path_point *first,
                         const struct oc_path_point *second, bool may_have_moved, double doubt) {
  struct gap gap = {.given = first->given && second->given};
  if (!gap.given)
    return gap;
  struct oc_budget difference = second->r_ohm;
  difference.value -= first->r_ohm.value;
  for (size_t i = 0; i < first->r_ohm.count; i++) {
    const struct oc_cause *cause = &first->r_ohm.causes[i];
    if (cause->shape == OC_NORMAL)
      oc_budget_add_normal(&difference, cause->name, cause->u);
    else
      oc_budget_add_limit(&difference, cause->name, oc_cause_limit(cause));
  }
  if (may_have_moved)
    oc_budget_add_limit(&difference, OC_CAUSE_MOVED,
                        path->strict.moved_limit_k *
                            oc_per_kelvin(path->curve, first->r_ohm.value));
  gap.ohm = oc_spread_of(&difference);
  gap.expanded_ohm = oc_spread_expanded(&gap.ohm, path->strict.level);
  double apart_ohm = oc_spread_expanded(&gap.ohm, 1 - doubt);
  gap.parts = fabs(gap.ohm.value) > apart_ohm + ROUND_OFF * first->r_ohm.value;
  return gap;
}

struct parting {
  struct oc_path_point source; /* ohms at the sensor, else what the thermometer means */
  bool by_ohms;
  struct gap to_pin;
  struct gap to_gauge;
  struct gap pin_to_gauge;
  struct gap told; /* of the two above the one that speaks of the wires */
  ohm_verdict verdict;
  ohm_reason reason;
};

static void decide(struct parting *parting, ohm_verdict verdict, ohm_reason reason) {
  parting->verdict = verdict;
  parting->reason = reason;
}

static bool negative_at_wire(const struct oc_path *path) {
  return path->negative == OHM_NEGATIVE_PIN || path->negative == OHM_NEGATIVE_SENSOR;
}

static void blame_wire(struct parting *parting) {
  if (!parting->by_ohms)
    decide(parting, OHM_OUTSIDE, OHM_REASON_BETWEEN);
  else
    decide(parting, OHM_OUTSIDE,
           parting->to_pin.ohm.value > 0 ? OHM_REASON_SERIES : OHM_REASON_LEAKAGE);
}

/* The volts alone are off. */
static void blame_volts(const struct oc_path *path, struct parting *parting) {
  if (negative_at_wire(path))
    decide(parting, OHM_OUTSIDE, OHM_REASON_PULL_UP);
  else
    decide(parting, path->negative == OHM_NEGATIVE_BODY ? OHM_OUTSIDE : OHM_UNDECIDED,
           OHM_REASON_GROUND);
}

static void decide_by_three(const struct oc_path *path, struct parting *parting) {
  bool pin = parting->to_pin.parts;
  bool gauge = parting->to_gauge.parts;
  if (!parting->pin_to_gauge.parts && pin)
    blame_wire(parting);
  else if (!parting->pin_to_gauge.parts && gauge)
    decide(parting, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
  else if (!parting->pin_to_gauge.parts)
    decide(parting, OHM_WITHIN, OHM_REASON_CONFORMS);
  else if (gauge && !pin)
    decide(parting, OHM_OUTSIDE, OHM_REASON_CURVE);
  else if (pin && !gauge)
    blame_volts(path, parting);
  else
    decide(parting, OHM_OUTSIDE, OHM_REASON_BETWEEN);
}

static void decide_by_two(const struct oc_path *path, struct parting *parting) {
  if (parting->to_pin.given && parting->to_pin.parts) {
    if (parting->by_ohms && !negative_at_wire(path))
      decide(parting, OHM_UNDECIDED, OHM_REASON_GROUND);
    else
      blame_wire(parting);
  } else if (parting->to_gauge.given && parting->to_gauge.parts) {
    decide(parting, OHM_OUTSIDE, OHM_REASON_BETWEEN);
  } else if (parting->pin_to_gauge.given && parting->pin_to_gauge.parts) {
    if (negative_at_wire(path))
      decide(parting, OHM_OUTSIDE, OHM_REASON_CURVE);
    else
      decide(parting, OHM_UNDECIDED, OHM_REASON_GROUND);
  } else if (parting->to_pin.given || parting->to_gauge.given || parting->pin_to_gauge.given) {
    decide(parting, OHM_WITHIN, OHM_REASON_CONFORMS);
  } else {
    decide(parting, OHM_UNDECIDED, OHM_REASON_ALONE);
  }
}

static bool questions_report(const struct oc_path *path, const struct parting *parting) {
  bool disagrees = parting->to_gauge.parts || parting->pin_to_gauge.parts;
  return disagrees && path->moves != OC_MOVES && oc_reported_stands_in(path->shown_c);
}

/* What has to be asked, or is plain, before anything is compared. */
static bool decide_first(const struct oc_path *path, struct parting *parting) {
  if (path->display == OC_DISPLAY_OPEN)
    decide(parting, OHM_OUTSIDE, OHM_REASON_OPEN);
  else if (path->display != OC_DISPLAY_VALUE)
    decide(parting, OHM_UNDECIDED,
           path->display == OC_DISPLAY_ONE ? OHM_REASON_LONE_ONE : OHM_REASON_OVER_RANGE);
  else if (oc_path_is_open(path))
    decide(parting, OHM_OUTSIDE, OHM_REASON_OPEN);
  else if (oc_path_is_shorted(path))
    decide(parting, OHM_OUTSIDE, OHM_REASON_SHORTED);
  else if (path->moves == OC_NEVER_MOVES)
    decide(parting, OHM_UNDECIDED, OHM_REASON_STUCK);
  else if (questions_report(path, parting))
    decide(parting, OHM_UNDECIDED, OHM_REASON_STAND_IN);
  else if (path->has_volts && !path->at_pin.given)
    decide(parting, OHM_UNDECIDED, OHM_REASON_RANGE);
  else
    return false;
  return true;
}

/* A way without a fault may still begin at a sensor that lies. */
static void decide_sensor(const struct oc_path *path, struct parting *parting) {
  if (path->judged && ohm_finding_verdict(&path->bath) == OHM_OUTSIDE &&
      (parting->reason == OHM_REASON_CONFORMS || parting->reason == OHM_REASON_ALONE))
    decide(parting, OHM_OUTSIDE, oc_finding_reason(&path->bath));
  else if (path->judged && parting->reason == OHM_REASON_ALONE)
    decide(parting, ohm_finding_verdict(&path->bath), oc_finding_reason(&path->bath));
}

static void part(const struct oc_path *path, struct parting *parting) {
  parting->by_ohms = path->at_sensor.given;
  parting->source = parting->by_ohms ? path->at_sensor : path->by_thermometer;
  /* Three make three comparisons, which share the doubt that one would have alone. */
  bool three = parting->source.given && path->at_pin.given && path->at_gauge.given;
  double doubt = (1 - path->strict.level) / (three ? 3 : 1);
  parting->to_pin = gap_of(path, &parting->source, &path->at_pin, true, doubt);
  parting->to_gauge = gap_of(path, &parting->source, &path->at_gauge, true, doubt);
  parting->pin_to_gauge = gap_of(path, &path->at_pin, &path->at_gauge, false, doubt);
  if (decide_first(path, parting))
    return;
  if (parting->to_pin.given && parting->to_gauge.given)
    decide_by_three(path, parting);
  else
    decide_by_two(path, parting);
  decide_sensor(path, parting);
}

/* ---- the fan ---- */

static double start_of(const struct oc_path *path, const struct parting *parting, double more_ohm) {
  double fan_c = path->strict.fan_c;
  double source_ohm = parting->source.r_ohm.value;
  if (parting->reason == OHM_REASON_CURVE)
    return source_ohm + more_ohm > 0
               ? oc_start_behind(path->curve, fan_c, 0, (source_ohm + more_ohm) / source_ohm)
               : -INFINITY;
  if (more_ohm >= 0)
    return oc_start_behind(path->curve, fan_c, more_ohm, 1);
  return source_ohm + more_ohm > 0
             ? oc_start_across(path->curve, fan_c, 1 / (source_ohm + more_ohm) - 1 / source_ohm)
             : -INFINITY;
}

static bool speaks_for_fan(const struct oc_path *path, const struct parting *parting) {
  switch (parting->reason) {
  case OHM_REASON_OPEN:
  case OHM_REASON_SHORTED:
  case OHM_REASON_STUCK:
  case OHM_REASON_STAND_IN:
  case OHM_REASON_RANGE:
  case OHM_REASON_LONE_ONE:
  case OHM_REASON_OVER_RANGE:
    return false;
  default:
    return parting->told.given && oc_curve_falls(path->curve);
  }
}

static void judge_fan(ohm_finding *finding, const struct oc_path *path,
                      const struct parting *parting) {
  const struct oc_strictness *strict = &path->strict;
  double most_ohm = oc_spread_quantile(&parting->told.ohm, strict->level);
  double least_ohm = oc_spread_quantile(&parting->told.ohm, 1 - strict->level);
  double source_ohm = parting->source.r_ohm.value;
  double start_c = start_of(path, parting, parting->told.ohm.value);
  double late_k = start_of(path, parting, most_ohm) - strict->fan_c;
  double early_k = strict->fan_c - start_of(path, parting, least_ohm);
  oc_finding_set_number(finding, OHM_FIELD_START_C, start_c);
  oc_finding_set_number(finding, OHM_FIELD_START_HIGH_C, strict->fan_c + late_k);
  oc_finding_set_number(finding, OHM_FIELD_START_LOW_C, strict->fan_c - early_k);
  oc_finding_set_number(finding, OHM_FIELD_LATE_K, late_k);
  oc_finding_set_number(finding, OHM_FIELD_EARLY_K, early_k);
  oc_finding_set_number(finding, OHM_FIELD_SERIES_OHM, fmax(0, most_ohm));
  if (least_ohm < 0 && source_ohm + least_ohm > 0)
    oc_finding_set_number(finding, OHM_FIELD_LEAKAGE_OHM,
                          1 / (1 / (source_ohm + least_ohm) - 1 / source_ohm));
  /* Volts from a ground that was not told may be all that is off. */
  if (parting->reason == OHM_REASON_GROUND && !parting->to_gauge.given)
    oc_finding_set_job(finding, OHM_UNDECIDED, OHM_JOB_UNCERTAIN);
  else if (late_k <= strict->limit_k && early_k <= strict->limit_k)
    oc_finding_set_job(finding, OHM_WITHIN, OHM_JOB_CONFORMS);
  else if (-early_k > strict->limit_k)
    oc_finding_set_job(finding, OHM_OUTSIDE, OHM_JOB_LATE);
  else if (-late_k > strict->limit_k)
    oc_finding_set_job(finding, OHM_OUTSIDE, OHM_JOB_EARLY);
  else if (fabs(start_c - strict->fan_c) <= strict->limit_k)
    oc_finding_set_job(finding, OHM_UNDECIDED, OHM_JOB_HIDDEN);
  else
    oc_finding_set_job(finding, OHM_UNDECIDED, OHM_JOB_UNCERTAIN);
}

/* ---- telling ---- */

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double temperature_or_absent(const ohm_curve *curve, double r_ohm) {
  double t_c = NAN;
  ohm_curve_temperature(curve, r_ohm, &t_c);
  return t_c;
}

static void tell_pin(ohm_finding *finding, const struct oc_path *path) {
  const struct oc_budget *seen = &path->at_pin.r_ohm;
  tell(finding, OHM_FIELD_V_VOLT, path->volts.value);
  tell(finding, OHM_FIELD_SUPPLY_VOLT, path->input.divider.supply_v);
  oc_finding_set_negative(finding, path->negative);
  if (path->solutions == 0)
    return;
  double t_c = temperature_or_absent(path->curve, seen->value);
  double slope = oc_per_kelvin(path->curve, seen->value);
  struct oc_spread spread = oc_spread_of(seen);
  double expanded_ohm = oc_spread_expanded(&spread, path->strict.level);
  tell(finding, OHM_FIELD_PULL_UP_OHM, path->pull_up_ohm);
  tell(finding, OHM_FIELD_R_OHM, seen->value);
  tell(finding, OHM_FIELD_U_R_OHM, oc_budget_u(seen));
  tell(finding, OHM_FIELD_EXPANDED_R_OHM, expanded_ohm);
  tell(finding, OHM_FIELD_T_C, t_c);
  if (!isnan(t_c)) {
    tell(finding, OHM_FIELD_U_T_C, oc_budget_u(seen) / slope);
    tell(finding, OHM_FIELD_EXPANDED_T_K, expanded_ohm / slope);
  }
  if (path->solutions == OC_RANGES_MAX) {
    tell(finding, OHM_FIELD_OTHER_PULL_UP_OHM, path->other_pull_up_ohm);
    tell(finding, OHM_FIELD_OTHER_R_OHM, path->other_ohm);
    tell(finding, OHM_FIELD_OTHER_T_C, temperature_or_absent(path->curve, path->other_ohm));
  }
}

static void tell_sensor(ohm_finding *finding, const struct oc_path *path) {
  static const ohm_field judged[] = {
      OHM_FIELD_AT_C,     OHM_FIELD_EXPANDED_AT_K, OHM_FIELD_EXPECTED_OHM, OHM_FIELD_LOW_OHM,
      OHM_FIELD_HIGH_OHM, OHM_FIELD_P_LOW,         OHM_FIELD_P_WITHIN,     OHM_FIELD_P_HIGH};
  if (path->at_sensor.given) {
    struct oc_spread spread = oc_spread_of(&path->at_sensor.r_ohm);
    oc_finding_set_place(finding, OHM_PLACE_SENSOR);
    tell(finding, OHM_FIELD_SENSOR_OHM, path->at_sensor.r_ohm.value);
    tell(finding, OHM_FIELD_EXPANDED_SENSOR_OHM, oc_spread_expanded(&spread, path->strict.level));
    tell(finding, OHM_FIELD_SENSOR_C,
         temperature_or_absent(path->curve, path->at_sensor.r_ohm.value));
  }
  for (size_t i = 0; path->judged && i < sizeof judged / sizeof judged[0]; i++)
    tell(finding, judged[i], ohm_finding_number(&path->bath, (int)judged[i]));
  if (!path->judged && path->by_thermometer.given)
    tell(finding, OHM_FIELD_AT_C,
         temperature_or_absent(path->curve, path->by_thermometer.r_ohm.value));
}

/* What would explain a gap, each by itself. */
static void tell_gap(ohm_finding *finding, const struct oc_path *path,
                     const struct parting *parting) {
  const struct gap *gap = &parting->told;
  double source_ohm = parting->source.r_ohm.value;
  double more_ohm = gap->ohm.value;
  if (!gap->given)
    return;
  struct oc_spread spread = gap->ohm;
  tell(finding, OHM_FIELD_BETWEEN_OHM, more_ohm);
  tell(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM, gap->expanded_ohm);
  double variance = spread.sigma * spread.sigma;
  for (size_t i = 0; i < spread.count; i++)
    variance += spread.half[i] * spread.half[i] / 3;
  tell(finding, OHM_FIELD_U_BETWEEN_OHM, sqrt(variance));
  tell(finding, OHM_FIELD_PARTED_K,
       temperature_or_absent(path->curve, source_ohm + more_ohm) -
           temperature_or_absent(path->curve, source_ohm));
  if (more_ohm < 0 && source_ohm + more_ohm > 0)
    tell(finding, OHM_FIELD_SHUNT_OHM, 1 / (1 / (source_ohm + more_ohm) - 1 / source_ohm));
}

static void tell_volts_off(ohm_finding *finding, const struct oc_path *path,
                           const struct parting *parting) {
  const struct oc_divider *divider = &path->input.divider;
  const struct oc_path_point *right = parting->source.given ? &parting->source : &path->at_gauge;
  if (!path->at_pin.given || !right->given)
    return;
  if (parting->reason == OHM_REASON_GROUND)
    tell(finding, OHM_FIELD_OFFSET_VOLT,
         path->volts.value - oc_divided(divider->supply_v, path->pull_up_ohm, right->r_ohm.value));
  if (parting->reason == OHM_REASON_PULL_UP || parting->reason == OHM_REASON_GROUND)
    tell(finding, OHM_FIELD_FITS_PULL_UP_OHM,
         oc_above(divider->supply_v, path->volts.value, right->r_ohm.value));
}

static void tell_assumed(ohm_finding *finding, const struct oc_path *path,
                         const struct parting *parting) {
  static const enum oc_assumption of_reference[] = {
      [OHM_REFERENCE_THERMOMETER] = OC_ASSUME_THERMOMETER,
      [OHM_REFERENCE_ICE] = OC_ASSUME_ICE,
      [OHM_REFERENCE_BOIL] = OC_ASSUME_BOIL,
      [OHM_REFERENCE_BOIL_ALTITUDE] = OC_ASSUME_BOIL_ALTITUDE,
      [OHM_REFERENCE_BOIL_PRESSURE] = OC_ASSUME_BOIL_PRESSURE,
      [OHM_REFERENCE_INFRARED] = OC_ASSUME_INFRARED,
  };
  bool compared = parting->told.given;
  const struct {
    bool taken;
    enum oc_assumption assumption;
  } all[] = {
      {path->at_sensor.given && path->meter_assumed.accuracy, OC_ASSUME_ACCURACY},
      {path->at_sensor.given && path->meter_assumed.resolution, OC_ASSUME_RESOLUTION},
      {path->at_sensor.given && path->meter_assumed.zeros, OC_ASSUME_ZEROS},
      {path->at_sensor.given && path->meter_assumed.leads, OC_ASSUME_LEADS},
      {path->by_thermometer.given && path->reference_assumed, of_reference[path->reference_kind]},
      {path->has_volts && path->volts_assumed, OC_ASSUME_VOLTS},
      {path->has_volts && path->input.supply_assumed, OC_ASSUME_SUPPLY},
      {path->has_volts && path->input.pull_up_assumed, OC_ASSUME_PULL_UP},
      {path->at_gauge.given && path->reported_assumed, OC_ASSUME_REPORTED},
      {path->at_gauge.given && path->rounding_assumed, OC_ASSUME_ROUNDING},
      {compared && path->strict.moved_assumed, OC_ASSUME_MOVED},
      {path->strict.fan_assumed, OC_ASSUME_FAN},
      {path->strict.limit_assumed, OC_ASSUME_LIMIT},
  };
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      oc_finding_assume(finding, all[i].assumption);
}

static void tell_untested(ohm_finding *finding, const struct oc_path *path,
                          const struct parting *parting) {
  if (!path->by_thermometer.given && path->at_sensor.given)
    oc_finding_leave_untested(finding, OC_UNTESTED_SENSOR_ITSELF);
  if (!parting->source.given)
    oc_finding_leave_untested(finding, OC_UNTESTED_BEFORE_PIN);
  if (parting->reason == OHM_REASON_SERIES || parting->reason == OHM_REASON_LEAKAGE)
    oc_finding_leave_untested(finding, OC_UNTESTED_PULL_UP_ITSELF);
}

/* ---- together ---- */

ohm_status oc_pin_check(const ohm_sensor *sensor, const oc_module *module,
                        const oc_reading *reading, const oc_meter *meter, const oc_volts *volts,
                        const oc_reported *reported, const oc_reference *reference,
                        const oc_pin *pin, ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (!sensor || !finding || (!reading && !volts && !reported && !reference))
    return OHM_NULL_ARGUMENT;
  struct oc_path path;
  ohm_status status = oc_path_take(&path, sensor, module, reading, meter, volts, reported,
                                   reference, pin, finding->arena);
  if (status != OHM_OK)
    return status;
  struct parting parting = {.verdict = OHM_UNDECIDED};
  part(&path, &parting);
  bool by_gauge = parting.reason == OHM_REASON_GROUND || parting.reason == OHM_REASON_PULL_UP ||
                  parting.reason == OHM_REASON_CURVE;
  parting.told = (by_gauge && parting.to_gauge.given) || !parting.to_pin.given ? parting.to_gauge
                                                                               : parting.to_pin;
  oc_finding_set_about(finding, OHM_VERB_SIGNAL);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  tell(finding, OHM_FIELD_LEVEL, path.strict.level);
  tell(finding, OHM_FIELD_FAN_C, path.strict.fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, path.strict.limit_k);
  tell(finding, OHM_FIELD_REPORTED_C, path.shown_c);
  if (path.at_gauge.given)
    tell(finding, OHM_FIELD_REPORTED_OHM, path.at_gauge.r_ohm.value);
  if (path.has_volts)
    tell_pin(finding, &path);
  tell_sensor(finding, &path);
  oc_finding_set_verdict(finding, parting.verdict, parting.reason);
  tell_gap(finding, &path, &parting);
  tell_volts_off(finding, &path, &parting);
  tell_assumed(finding, &path, &parting);
  tell_untested(finding, &path, &parting);
  if (speaks_for_fan(&path, &parting))
    judge_fan(finding, &path, &parting);
  return OHM_OK;
}

/* ---- the verb ---- */

/* One of each kind at most. */
static ohm_status ask_one(const struct oc_request *ask, enum oc_reading_kind kind, const char *what,
                          const struct oc_bench_reading **reading) {
  if (oc_request_kind(ask, kind, reading) <= 1)
    return OHM_OK;
  return oc_fail(ask->error, OHM_BAD_ARGUMENT, "signal takes one reading of ", what,
                 ", and several lie on the bench: forget the others", (const char *)NULL);
}

struct taken {
  const struct oc_bench_reading *ohms;
  const struct oc_bench_reading *volts;
  const struct oc_bench_reading *reported;
};

static ohm_status ask_taken(const struct oc_request *ask, struct taken *taken) {
  ohm_status status = ask_one(ask, OC_READING_OHMS, "ohms", &taken->ohms);
  if (status == OHM_OK)
    status = ask_one(ask, OC_READING_VOLTS, "volts", &taken->volts);
  if (status == OHM_OK)
    status = ask_one(ask, OC_READING_REPORTED, "degrees reported", &taken->reported);
  if (status != OHM_OK)
    return status;
  if (!taken->ohms && !taken->volts && !taken->reported)
    return oc_fail(ask->error, OHM_NOT_FOUND,
                   "nothing was taken: put down two or three of ohms at ",
                   "the sensor, volts at the pin and degrees reported, such as 187, 0.97V and 91C",
                   (const char *)NULL);
  if (taken->volts && !ask->bench->settings[OHM_SETTING_PULL_UP])
    return oc_fail(ask->error, OHM_NOT_FOUND,
                   "volts need pull_up, the resistor in the module: set ",
                   "it to the value of the car's wiring papers, such as 1k", (const char *)NULL);
  return OHM_OK;
}

static ohm_status ask_all(struct oc_request *ask, struct taken *taken, const ohm_bench *bench,
                          ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "signal", error);
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK)
    status = ask_taken(ask, taken);
  return status;
}

ohm_answer *ohm_bench_signal(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  struct taken taken;
  oc_reference own;
  if (ask_all(&ask, &taken, bench, error) != OHM_OK)
    return NULL;
  oc_module module = oc_request_module(&ask);
  oc_pin pin = oc_request_pin(&ask);
  oc_volts volts = OC_VOLTS_INIT;
  oc_reported reported = OC_REPORTED_INIT;
  if (taken.volts)
    volts = oc_request_volts(&ask, taken.volts);
  if (taken.reported)
    reported = oc_request_reported(&ask, &taken.reported->reported);
  const oc_reference *at =
      taken.ohms && taken.ohms->has_at ? &taken.ohms->at : oc_request_at(&ask, &own);
  ohm_answer *answer = oc_answer_new(error);
  ohm_status status = OHM_OK;
  if (answer)
    status = oc_pin_check(bench->sensor, &module, taken.ohms ? &taken.ohms->ohms : NULL, &ask.meter,
                          taken.volts ? &volts : NULL, taken.reported ? &reported : NULL, at, &pin,
                          &answer->whole);
  if (status == OHM_OUT_OF_RANGE && at)
    status = oc_request_refuse_reach(&ask, "the temperature of the sensor", at->t_c);
  return oc_answer_done(answer, oc_request_told(&ask, status), error);
}
