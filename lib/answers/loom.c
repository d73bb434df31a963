/* SPDX-License-Identifier: MIT */
/*
 * Two resistors in the place of the sensor: the module sees Q1 = k (r1 + s) and
 * Q2 = k (r2 + s), so k = (Q1 - Q2)/(r1 - r2) and s = Q1/k - r1.
 */
#include "loom.h"

#include "request.h"

#include "../model/fan_start.h"
#include "path_point.h"

static const double NEAREST_RATIO = 0.5;

struct loom {
  const ohm_curve *curve;
  struct oc_strictness strict;
  struct oc_budget fitted[2];   /* r */
  struct oc_budget reported[2]; /* Q */
  struct oc_meter_assumed meter_assumed;
  bool reported_assumed;
  bool rounding_assumed;
  struct oc_budget series;
  struct oc_budget factor;
};

static ohm_status take(struct loom *loom, const oc_reading *readings, const oc_meter *meter,
                       const oc_reported *reported) {
  for (size_t i = 0; i < 2; i++) {
    bool assumed;
    ohm_status status =
        oc_meter_budget(meter, &readings[i], &loom->fitted[i], &loom->meter_assumed);
    if (status == OHM_OK)
      status = oc_reported_ohms(loom->curve, &reported[i], &loom->reported[i], &assumed);
    if (status != OHM_OK)
      return status;
    loom->reported_assumed |= assumed;
    loom->rounding_assumed |= reported[i].rounding == OC_ROUNDING_NOT_TOLD;
  }
  double least_ohm = fmin(loom->fitted[0].value, loom->fitted[1].value);
  double most_ohm = fmax(loom->fitted[0].value, loom->fitted[1].value);
  return least_ohm > 0 && least_ohm <= NEAREST_RATIO * most_ohm ? OHM_OK : OHM_BAD_DEFINITION;
}

/* The leads err alike in both readings. What else errs alike is counted as if it did
 * not, which is never too little here: s moves against each of two by about as much. */
static void add_causes(struct oc_budget *to, const struct oc_budget *from, double slope) {
  for (size_t i = 0; i < from->count; i++)
    if (from->causes[i].name != OC_CAUSE_LEADS)
      oc_budget_add_limit(to, from->causes[i].name, fabs(slope) * oc_cause_limit(&from->causes[i]));
}

static double lead_limit(const struct oc_budget *r_ohm) {
  for (size_t i = 0; i < r_ohm->count; i++)
    if (r_ohm->causes[i].name == OC_CAUSE_LEADS)
      return oc_cause_limit(&r_ohm->causes[i]);
  return 0;
}

/* Whether the two reports differ the way the resistors do. */
static bool solve(struct loom *loom) {
  double r1 = loom->fitted[0].value;
  double r2 = loom->fitted[1].value;
  double q1 = loom->reported[0].value;
  double q2 = loom->reported[1].value;
  double dr = r1 - r2;
  double dq = q1 - q2;
  if (!(dq / dr > 0))
    return false;
  loom->factor = oc_budget_of(dq / dr);
  loom->series = oc_budget_of(q1 * dr / dq - r1);
  add_causes(&loom->series, &loom->reported[0], dr * q2 / (dq * dq));
  add_causes(&loom->series, &loom->reported[1], dr * q1 / (dq * dq));
  add_causes(&loom->series, &loom->fitted[0], q2 / dq);
  add_causes(&loom->series, &loom->fitted[1], q1 / dq);
  oc_budget_add_limit(&loom->series, OC_CAUSE_LEADS, lead_limit(&loom->fitted[0]));
  add_causes(&loom->factor, &loom->reported[0], 1 / dr);
  add_causes(&loom->factor, &loom->reported[1], 1 / dr);
  add_causes(&loom->factor, &loom->fitted[0], dq / (dr * dr));
  add_causes(&loom->factor, &loom->fitted[1], dq / (dr * dr));
  return true;
}

static double late_by(const struct loom *loom, double series_ohm) {
  return oc_start_behind(loom->curve, loom->strict.fan_c, series_ohm, 1) - loom->strict.fan_c;
}

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static void judge(ohm_finding *finding, const struct loom *loom, const struct oc_spread *series) {
  double limit_k = loom->strict.limit_k;
  double most_ohm = oc_spread_quantile(series, loom->strict.level);
  double least_ohm = oc_spread_quantile(series, 1 - loom->strict.level);
  double late_k = late_by(loom, fmax(0, most_ohm));
  double least_late_k = late_by(loom, fmax(0, least_ohm));
  tell(finding, OHM_FIELD_SERIES_OHM, fmax(0, most_ohm));
  tell(finding, OHM_FIELD_LATE_K, late_k);
  tell(finding, OHM_FIELD_START_C, loom->strict.fan_c + late_by(loom, fmax(0, series->value)));
  tell(finding, OHM_FIELD_START_LOW_C, loom->strict.fan_c + least_late_k);
  tell(finding, OHM_FIELD_START_HIGH_C, loom->strict.fan_c + late_k);
  if (most_ohm < 0)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_BETWEEN);
  else if (late_k <= limit_k)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else if (least_late_k > limit_k)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SERIES);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

static void tell_solution(ohm_finding *finding, const struct loom *loom) {
  struct oc_spread series = oc_spread_of(&loom->series);
  struct oc_spread factor = oc_spread_of(&loom->factor);
  tell(finding, OHM_FIELD_BETWEEN_OHM, loom->series.value);
  tell(finding, OHM_FIELD_U_BETWEEN_OHM, oc_budget_u(&loom->series));
  tell(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM, oc_spread_expanded(&series, loom->strict.level));
  tell(finding, OHM_FIELD_FACTOR, loom->factor.value);
  tell(finding, OHM_FIELD_EXPANDED_FACTOR, oc_spread_expanded(&factor, loom->strict.level));
  judge(finding, loom, &series);
}

static void tell_assumed(ohm_finding *finding, const struct loom *loom) {
  const struct {
    bool taken;
    enum oc_assumption assumption;
  } all[] = {{loom->meter_assumed.accuracy, OC_ASSUME_ACCURACY},
             {loom->meter_assumed.resolution, OC_ASSUME_RESOLUTION},
             {loom->meter_assumed.zeros, OC_ASSUME_ZEROS},
             {loom->meter_assumed.leads, OC_ASSUME_LEADS},
             {loom->reported_assumed, OC_ASSUME_REPORTED},
             {loom->rounding_assumed, OC_ASSUME_ROUNDING},
             {loom->strict.fan_assumed, OC_ASSUME_FAN},
             {loom->strict.limit_assumed, OC_ASSUME_LIMIT}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      oc_finding_assume(finding, all[i].assumption);
}

ohm_status oc_loom_check(const ohm_sensor *sensor, const oc_reading readings[2],
                         const oc_meter *meter, const oc_reported reported[2], const oc_pin *pin,
                         ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (!sensor || !readings || !reported || !finding)
    return OHM_NULL_ARGUMENT;
  struct loom loom = {.curve = sensor->curve};
  ohm_status status = oc_strictness_of(pin, &loom.strict);
  if (status == OHM_OK && !oc_curve_falls(loom.curve))
    status = OHM_OUT_OF_RANGE;
  if (status == OHM_OK)
    status = take(&loom, readings, meter, reported);
  if (status != OHM_OK)
    return status;
  oc_finding_set_about(finding, OHM_VERB_LOOM);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  tell(finding, OHM_FIELD_LEVEL, loom.strict.level);
  tell(finding, OHM_FIELD_FAN_C, loom.strict.fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, loom.strict.limit_k);
  tell(finding, OHM_FIELD_FIRST_OHM, loom.fitted[0].value);
  tell(finding, OHM_FIELD_SECOND_OHM, loom.fitted[1].value);
  tell_assumed(finding, &loom);
  if (solve(&loom))
    tell_solution(finding, &loom);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_STUCK);
  return OHM_OK;
}

/* ---- the verb ---- */

enum { FITTED = 2 };

struct fitted {
  oc_reading readings[FITTED];
  oc_reported reported[FITTED];
};

static ohm_status refuse_count(const struct oc_request *ask) {
  return oc_fail(ask->error, OHM_NOT_FOUND, "loom needs two resistors, each with what the module ",
                 "reported with it: put down two readings, such as 179.4@93C and 998@42C",
                 (const char *)NULL);
}

/* What stands behind the @ is what the module reported. */
static ohm_status take_fitted(const struct oc_request *ask, const struct oc_bench_line *line,
                              oc_reading *reading, oc_reported *reported) {
  oc_reported shown = OC_REPORTED_INIT;
  *reading = line->reading.ohms;
  if (!line->reading.has_at || line->reading.at.kind != OHM_REFERENCE_THERMOMETER)
    return refuse_count(ask);
  if (reading->display != OC_DISPLAY_VALUE)
    return oc_fail(ask->error, OHM_OUT_OF_RANGE, line->text,
                   ": a resistor needs a number: measure ", "it on a higher range",
                   (const char *)NULL);
  shown.t_c = line->reading.at.t_c;
  shown.accuracy = line->reading.at.accuracy;
  shown.limit_k = line->reading.at.limit_k;
  *reported = oc_request_reported(ask, &shown);
  double r_ohm;
  if (ohm_curve_resistance(ohm_sensor_curve(ask->bench->sensor), shown.t_c, &r_ohm) != OHM_OK)
    return oc_request_refuse_reach(ask, "what the module reported", shown.t_c);
  return OHM_OK;
}

static ohm_status ask_fitted(const struct oc_request *ask, struct fitted *fitted) {
  size_t count = 0;
  ohm_status status = OHM_OK;
  for (size_t i = 0; status == OHM_OK && i < ask->bench->count; i++) {
    const struct oc_bench_line *line = &ask->bench->lines[i];
    if (line->reading.kind != OC_READING_OHMS)
      continue;
    if (count == FITTED)
      return refuse_count(ask);
    status = take_fitted(ask, line, &fitted->readings[count], &fitted->reported[count]);
    count++;
  }
  return status == OHM_OK && count < FITTED ? refuse_count(ask) : status;
}

static ohm_status ask_all(struct oc_request *ask, struct fitted *fitted, const ohm_bench *bench,
                          ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "loom", error);
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK)
    status = ask_fitted(ask, fitted);
  return status;
}

ohm_answer *ohm_bench_loom(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  struct fitted fitted;
  ohm_status status = ask_all(&ask, &fitted, bench, error);
  if (status != OHM_OK)
    return NULL;
  oc_pin pin = oc_request_pin(&ask);
  ohm_answer *answer = oc_answer_new(error);
  if (answer)
    status = oc_loom_check(bench->sensor, fitted.readings, &ask.meter, fitted.reported, &pin,
                           &answer->whole);
  if (status == OHM_BAD_DEFINITION)
    oc_fail(error, status, "the two resistors are too near to each other: take one of half the ",
            "other's ohms at most", (const char *)NULL);
  return oc_answer_done(answer, oc_request_told(&ask, status), error);
}
