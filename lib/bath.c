/* SPDX-License-Identifier: MIT */
/* A sensor at a known temperature, against what its maker allows there. */
#include "decision.h"
#include "finding.h"
#include "meter.h"
#include "reference.h"
#include "tolerance.h"

static const double DEFAULT_LEVEL = 0.95;

/* Everything one check is made of. */
struct question {
  const ohm_sensor *sensor;
  struct ohm_tolerance tolerance;
  double level;
  struct ohm_budget at;   /* temperature */
  struct ohm_budget read; /* resistance; only when the display showed a number */
};

static void limits_at(const void *context, double t_c, double *low, double *high) {
  const struct question *question = context;
  struct ohm_band band = ohm_tolerance_band(question->sensor, &question->tolerance, t_c);
  *low = band.low_ohm;
  *high = band.high_ohm;
}

enum { BREAKS_MAX = 64 };

/* Temperatures of rows, where the limits between them bend. */
static size_t row_breaks(const struct question *question, double *breaks) {
  const ohm_sensor *sensor = question->sensor;
  double near_k = 10 * ohm_budget_u(&question->at);
  size_t count = 0;
  if (question->tolerance.kind != OHM_TOLERANCE_ROWS)
    return 0;
  for (size_t i = 0; i < sensor->row_count && count < BREAKS_MAX; i++)
    if (fabs(sensor->rows[i].t_c - question->at.value) <= near_k)
      breaks[count++] = sensor->rows[i].t_c;
  return count;
}

static ohm_status ask(struct question *question, const ohm_sensor *sensor, const ohm_check *check) {
  static const ohm_check all_default = OHM_CHECK_INIT;
  check = check ? check : &all_default;
  if (check->size < sizeof *check || isnan(check->level) || isnan(check->tolerance_percent))
    return OHM_BAD_ARGUMENT;
  question->sensor = sensor;
  question->level = check->level == 0 ? DEFAULT_LEVEL : check->level;
  if (!(0.5 < question->level && question->level < 1))
    return OHM_OUT_OF_RANGE;
  question->tolerance = sensor->tolerance;
  if (check->tolerance_percent != 0) {
    if (!(0 < check->tolerance_percent && check->tolerance_percent < 100))
      return OHM_OUT_OF_RANGE;
    question->tolerance =
        (struct ohm_tolerance){.kind = OHM_TOLERANCE_PERCENT, .percent = check->tolerance_percent};
  }
  return OHM_OK;
}

/* ---- telling ---- */

static void tell_reading(ohm_finding *finding, const struct question *question) {
  struct ohm_spread spread = ohm_spread_of(&question->read);
  double r_ohm = question->read.value;
  double u_ohm = ohm_budget_u(&question->read);
  double expanded_ohm = ohm_spread_expanded(&spread, question->level);
  ohm_finding_set_number(finding, OHM_FIELD_R_OHM, r_ohm);
  ohm_finding_set_number(finding, OHM_FIELD_U_R_OHM, u_ohm);
  ohm_finding_set_number(finding, OHM_FIELD_EXPANDED_R_OHM, expanded_ohm);
  double t_c;
  double alpha_per_k;
  if (ohm_curve_temperature(question->sensor->curve, r_ohm, &t_c) != OHM_OK ||
      ohm_curve_alpha(question->sensor->curve, t_c, &alpha_per_k) != OHM_OK)
    return;
  double ohm_per_k = fabs(alpha_per_k) * r_ohm;
  ohm_finding_set_number(finding, OHM_FIELD_T_C, t_c);
  ohm_finding_set_number(finding, OHM_FIELD_U_T_C, u_ohm / ohm_per_k);
  ohm_finding_set_number(finding, OHM_FIELD_EXPANDED_T_K, expanded_ohm / ohm_per_k);
}

static void tell_temperature(ohm_finding *finding, const struct question *question) {
  struct ohm_spread spread = ohm_spread_of(&question->at);
  ohm_finding_set_number(finding, OHM_FIELD_AT_C, question->at.value);
  ohm_finding_set_number(finding, OHM_FIELD_U_AT_C, ohm_budget_u(&question->at));
  ohm_finding_set_number(finding, OHM_FIELD_EXPANDED_AT_K,
                         ohm_spread_expanded(&spread, question->level));
}

static void tell_allowed(ohm_finding *finding, const struct question *question,
                         ohm_status covered) {
  double at_c = question->at.value;
  double nominal_ohm;
  if (ohm_curve_resistance(question->sensor->curve, at_c, &nominal_ohm) == OHM_OK)
    ohm_finding_set_number(finding, OHM_FIELD_EXPECTED_OHM, nominal_ohm);
  if (covered != OHM_OK)
    return;
  struct ohm_band band = ohm_tolerance_band(question->sensor, &question->tolerance, at_c);
  ohm_finding_set_number(finding, OHM_FIELD_LOW_OHM, band.low_ohm);
  ohm_finding_set_number(finding, OHM_FIELD_HIGH_OHM, band.high_ohm);
  ohm_finding_set_number(finding, OHM_FIELD_TOLERANCE_PERCENT,
                         50 * (band.high_ohm - band.low_ohm) / band.nominal_ohm);
}

static void tell_assumed(ohm_finding *finding, const struct ohm_meter_assumed *meter,
                         bool temperature, int reference_kind) {
  if (meter->accuracy)
    ohm_finding_assume(finding, OHM_ASSUME_ACCURACY);
  if (meter->resolution)
    ohm_finding_assume(finding, OHM_ASSUME_RESOLUTION);
  if (meter->leads)
    ohm_finding_assume(finding, OHM_ASSUME_LEADS);
  if (temperature)
    ohm_finding_assume(finding, reference_kind == OHM_REFERENCE_ICE ? OHM_ASSUME_ICE
                                                                    : OHM_ASSUME_THERMOMETER);
}

/* The reading with the digits the display showed, as far as they are known. */
static void tell_display(ohm_finding *finding, const ohm_reading *reading) {
  char text[OHM_NUMBER_SIZE] = "over range";
  if (reading->display == OHM_DISPLAY_OPEN) {
    ohm_finding_set_text(finding, OHM_FIELD_READ, "open");
    return;
  }
  if (reading->display == OHM_DISPLAY_VALUE) {
    double digits = 4;
    if (reading->resolution_ohm > 0 && reading->r_ohm >= reading->resolution_ohm)
      digits = floor(log10(reading->r_ohm / reading->resolution_ohm) + 1e-9) + 1;
    ohm_resistance_print(reading->r_ohm, (int)fmin(fmax(digits, 1), 9), text, sizeof text);
  }
  ohm_finding_set_text(finding, OHM_FIELD_READ, text);
}

/* ---- deciding ---- */

static void decide(ohm_finding *finding, const struct question *question) {
  double breaks[BREAKS_MAX];
  size_t count = row_breaks(question, breaks);
  struct ohm_spread read = ohm_spread_of(&question->read);
  struct ohm_spread at = ohm_spread_of(&question->at);
  ohm_conformance p = ohm_conformance_over(&read, &at, limits_at, question, breaks, count);
  ohm_finding_set_number(finding, OHM_FIELD_P_LOW, p.p_low);
  ohm_finding_set_number(finding, OHM_FIELD_P_WITHIN, p.p_within);
  ohm_finding_set_number(finding, OHM_FIELD_P_HIGH, p.p_high);
  if (p.p_within >= question->level)
    ohm_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else if (p.p_low >= question->level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_LOW);
  else if (p.p_high >= question->level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  else
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

static void judge(ohm_finding *finding, const struct question *question, int display,
                  ohm_status covered) {
  if (display == OHM_DISPLAY_OPEN)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_OPEN);
  else if (display == OHM_DISPLAY_OVER)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OVER_RANGE);
  else if (covered == OHM_NOT_FOUND)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_NO_TOLERANCE);
  else if (covered != OHM_OK)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OUTSIDE_BAND);
  else
    decide(finding, question);
}

ohm_status ohm_bath_check(const ohm_sensor *sensor, const ohm_reading *reading,
                          const ohm_meter *meter, const ohm_reference *reference,
                          const ohm_check *check, ohm_finding *finding) {
  if (finding)
    ohm_finding_clear(finding);
  if (!sensor || !reading || !reference || !finding)
    return OHM_NULL_ARGUMENT;
  struct question question = {0};
  struct ohm_meter_assumed assumed = {false, false, false};
  bool temperature_assumed;
  ohm_status status = ask(&question, sensor, check);
  if (status == OHM_OK)
    status = ohm_reference_budget(reference, &question.at, &temperature_assumed);
  if (status != OHM_OK)
    return status;
  status = ohm_meter_budget(meter, reading, &question.read, &assumed);
  bool has_number = status == OHM_OK;
  if (!has_number && status != OHM_OUT_OF_RANGE)
    return status;
  ohm_status covered = ohm_tolerance_covers(sensor, &question.tolerance, question.at.value);
  ohm_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  ohm_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  ohm_finding_set_number(finding, OHM_FIELD_LEVEL, question.level);
  ohm_finding_set_reference(finding, (ohm_reference_kind)reference->kind);
  tell_display(finding, reading);
  tell_temperature(finding, &question);
  tell_allowed(finding, &question, covered);
  tell_assumed(finding, &assumed, temperature_assumed, reference->kind);
  if (has_number)
    tell_reading(finding, &question);
  judge(finding, &question, reading->display, covered);
  return OHM_OK;
}
