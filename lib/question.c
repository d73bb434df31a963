/* SPDX-License-Identifier: MIT */
/* A check before it is answered. */
#include "question.h"

#include "finding.h"
#include "reference.h"

static const double DEFAULT_LEVEL = 0.95;
/* How far a dissipation factor differs from sensor to sensor; common practice. */
static const double DISSIPATION_SPREAD = 0.2;

/* ---- what was asked ---- */

static bool is_check(const ohm_check *check) {
  return check->size >= sizeof *check && isfinite(check->level) &&
         isfinite(check->tolerance_percent) && isfinite(check->fan_c) && isfinite(check->limit_k) &&
         ohm_inside(OHM_PLACE_NOT_TOLD, check->place, OHM_PLACE_MODULE);
}

static ohm_status take_check(struct ohm_question *question, const ohm_check *check) {
  if (!is_check(check))
    return OHM_BAD_ARGUMENT;
  question->level = check->level == 0 ? DEFAULT_LEVEL : check->level;
  question->fan_assumed = check->fan_c == 0;
  question->fan_c = question->fan_assumed ? OHM_ASSUMED_FAN_C : check->fan_c;
  question->limit_assumed = check->limit_k == 0;
  question->limit_k = question->limit_assumed ? OHM_ASSUMED_FAN_LIMIT_K : check->limit_k;
  question->place = (ohm_place)check->place;
  bool good = 0.5 < question->level && question->level < 1 && 0 < question->fan_c &&
              question->fan_c < OHM_NEVER_C && 0 < question->limit_k && question->limit_k <= 100;
  return good ? OHM_OK : OHM_OUT_OF_RANGE;
}

static ohm_status choose_at(struct ohm_question *question, const ohm_check *check, double t_c) {
  if (check->tolerance_percent == 0)
    return ohm_sensor_choose(question->sensor, check->band, t_c, &question->tolerance,
                             &question->band);
  question->tolerance =
      (struct ohm_tolerance){.kind = OHM_TOLERANCE_PERCENT, .percent = check->tolerance_percent};
  return ohm_tolerance_covers(question->curve, &question->tolerance, t_c);
}

/* A bath that may as well be at the last printed temperature, 100.07 C for 100 C, is
 * judged there. */
static ohm_status take_tolerance(struct ohm_question *question, const ohm_check *check) {
  double t_c = question->bath.value;
  double u_k = ohm_budget_u(&question->bath);
  if (check->tolerance_percent != 0 &&
      !(0 < check->tolerance_percent && check->tolerance_percent < 100))
    return OHM_OUT_OF_RANGE;
  question->covered = choose_at(question, check, t_c);
  if (question->covered == OHM_OUT_OF_RANGE)
    question->covered = choose_at(question, check, t_c - u_k);
  if (question->covered == OHM_OUT_OF_RANGE)
    question->covered = choose_at(question, check, t_c + u_k);
  return question->covered == OHM_BAD_ARGUMENT ? OHM_NOT_FOUND : OHM_OK;
}

/* Largest test current of an ohmmeter on the range of a resistance, common practice. */
static double greatest_current_ma(double r_ohm) {
  return r_ohm < 2e3   ? OHM_ASSUMED_CURRENT_MA
         : r_ohm < 2e4 ? OHM_ASSUMED_CURRENT_MA / 10
                       : OHM_ASSUMED_CURRENT_MA / 100;
}

/* The element is warmer than its bath by P/delta; where the current is not known, by
 * anything from nothing up to that of the greatest. */
static void heat(struct ohm_question *question) {
  double dissipation = ohm_sensor_dissipation_mw_per_k(question->sensor);
  double stated_ma = question->meter ? question->meter->current_ma : 0;
  if (!question->has_number || isnan(dissipation))
    return;
  question->current_assumed = stated_ma == 0;
  double r_ohm = question->read.value;
  double ma = question->current_assumed ? greatest_current_ma(r_ohm) : stated_ma;
  double full_k = ma * ma * 1e-3 * r_ohm / dissipation;
  double shift_k = question->current_assumed ? full_k / 2 : full_k;
  double limit_k = question->current_assumed ? full_k / 2 : DISSIPATION_SPREAD * full_k;
  question->element.value += shift_k;
  ohm_budget_add_limit(&question->element, OHM_CAUSE_HEATING, limit_k);
}

ohm_status ohm_question_ask(struct ohm_question *question, const ohm_sensor *sensor,
                            const ohm_reading *reading, const ohm_meter *meter,
                            const ohm_reference *reference, const ohm_check *check) {
  static const ohm_check all_default = OHM_CHECK_INIT;
  check = check ? check : &all_default;
  *question = (struct ohm_question){.sensor = sensor,
                                    .curve = sensor->curve,
                                    .reading = reading,
                                    .meter = meter,
                                    .reference = reference};
  ohm_status status = take_check(question, check);
  if (status == OHM_OK)
    status = ohm_reference_budget(reference, &question->bath, &question->bath_assumed);
  if (status == OHM_OK)
    status = take_tolerance(question, check);
  if (status != OHM_OK)
    return status;
  status = ohm_meter_budget(meter, reading, &question->read, &question->meter_assumed);
  question->has_number = status == OHM_OK;
  question->element = question->bath;
  heat(question);
  return status == OHM_OUT_OF_RANGE ? OHM_OK : status;
}

void ohm_question_tell_assumed(const struct ohm_question *question, ohm_finding *finding) {
  static const enum ohm_assumption of_reference[] = {
      [OHM_REFERENCE_THERMOMETER] = OHM_ASSUME_THERMOMETER,
      [OHM_REFERENCE_ICE] = OHM_ASSUME_ICE,
      [OHM_REFERENCE_BOIL] = OHM_ASSUME_BOIL,
      [OHM_REFERENCE_BOIL_ALTITUDE] = OHM_ASSUME_BOIL_ALTITUDE,
      [OHM_REFERENCE_BOIL_PRESSURE] = OHM_ASSUME_BOIL_PRESSURE,
      [OHM_REFERENCE_INFRARED] = OHM_ASSUME_INFRARED,
  };
  const struct {
    bool taken;
    enum ohm_assumption assumption;
  } all[] = {
      {question->meter_assumed.accuracy, OHM_ASSUME_ACCURACY},
      {question->meter_assumed.resolution, OHM_ASSUME_RESOLUTION},
      {question->meter_assumed.zeros, OHM_ASSUME_ZEROS},
      {question->meter_assumed.leads, OHM_ASSUME_LEADS},
      {question->bath_assumed, of_reference[question->reference->kind]},
      {question->current_assumed, OHM_ASSUME_CURRENT},
      {question->fan_assumed, OHM_ASSUME_FAN},
      {question->limit_assumed, OHM_ASSUME_LIMIT},
  };
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      ohm_finding_assume(finding, all[i].assumption);
}

/* ---- what could hide ---- */

void ohm_question_expose(const struct ohm_question *question, struct ohm_tolerance *tolerance,
                         struct ohm_exposure *exposure) {
  *tolerance = question->tolerance;
  if (tolerance->kind == OHM_TOLERANCE_NONE)
    *tolerance = (struct ohm_tolerance){.kind = OHM_TOLERANCE_PERCENT,
                                        .percent = OHM_ASSUMED_TOLERANCE_PERCENT};
  *exposure = (struct ohm_exposure){.curve = question->curve,
                                    .tolerance = tolerance,
                                    .read = ohm_spread_of(&question->read),
                                    .at = ohm_spread_of(&question->element),
                                    .level = question->level,
                                    .fan_c = question->fan_c,
                                    .limit_k = question->limit_k};
}

/* ---- which readings would pass ---- */

struct passing {
  const struct ohm_question *question;
  struct ohm_nodes at;
  struct ohm_band band[OHM_NODES_MAX];
};

static void look(struct passing *passing, const struct ohm_question *question,
                 const struct ohm_budget *element) {
  passing->question = question;
  struct ohm_spread at = ohm_spread_of(element);
  ohm_nodes_of(&at, &passing->at);
  for (size_t i = 0; i < passing->at.count; i++)
    passing->band[i] =
        ohm_tolerance_band(question->curve, &question->tolerance, passing->at.condition[i]);
}

/* p_within of another reading by the same meter. */
static double within(const struct passing *passing, double r_ohm) {
  const struct ohm_question *question = passing->question;
  ohm_reading reading = *question->reading;
  reading.display = OHM_DISPLAY_VALUE;
  reading.r_ohm = r_ohm + question->reading->r_ohm - question->read.value;
  struct ohm_budget budget;
  if (!(reading.r_ohm >= 0) || ohm_meter_budget(question->meter, &reading, &budget, NULL) != OHM_OK)
    return 0;
  struct ohm_spread read = ohm_spread_of(&budget);
  double p = 0;
  for (size_t i = 0; i < passing->at.count; i++)
    p += passing->at.weight[i] * (ohm_spread_below(&read, passing->band[i].high_ohm) -
                                  ohm_spread_below(&read, passing->band[i].low_ohm));
  return p;
}

/* The reading most likely to pass: p_within has one hill between the limits. */
static double likeliest(const struct passing *passing) {
  struct ohm_band band = passing->band[passing->at.count / 2];
  double low = band.low_ohm;
  double high = band.high_ohm;
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

static double edge(const struct passing *passing, double passes, double fails, double level) {
  for (int i = 0; i < 26; i++) {
    double middle = passes + (fails - passes) / 2;
    if (within(passing, middle) >= level)
      passes = middle;
    else
      fails = middle;
  }
  return passes;
}

/* The limit of error of a thermometer with which the likeliest reading passes. */
static double needed(const struct ohm_question *question, struct passing *passing) {
  struct ohm_budget element = ohm_budget_of(question->element.value);
  look(passing, question, &element);
  if (within(passing, likeliest(passing)) < question->level)
    return NAN;
  double enough = 0;
  double too_much = 2 * ohm_budget_u(&question->element);
  for (int i = 0; i < 8; i++) {
    double middle = (enough + too_much) / 2;
    element.count = 0;
    ohm_budget_add_limit(&element, OHM_CAUSE_REFERENCE_LIMIT, middle);
    look(passing, question, &element);
    if (within(passing, likeliest(passing)) >= question->level)
      enough = middle;
    else
      too_much = middle;
  }
  return enough;
}

struct ohm_acceptance ohm_question_acceptance(const struct ohm_question *question) {
  struct ohm_acceptance acceptance = {NAN, NAN, NAN};
  struct passing passing;
  look(&passing, question, &question->element);
  double best = likeliest(&passing);
  if (within(&passing, best) >= question->level) {
    acceptance.low_ohm = edge(&passing, best, best / 2, question->level);
    acceptance.high_ohm = edge(&passing, best, best * 2, question->level);
  } else {
    acceptance.needed_k = needed(question, &passing);
  }
  return acceptance;
}
