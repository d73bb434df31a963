/* SPDX-License-Identifier: MIT */
/* A sensor at a known temperature: against what its maker allows, and for the fan. */
#include "bath.h"

#include "told.h"

#include "../ground/text.h"

/* ---- telling what was measured ---- */

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

void oc_bath_tell_temperature(ohm_finding *finding, const struct oc_measurement *measurement) {
  struct oc_spread spread = oc_spread_of(&measurement->bath);
  oc_finding_set_reference(finding, (ohm_reference_kind)measurement->reference->kind);
  tell(finding, OHM_FIELD_AT_C, measurement->bath.value);
  tell(finding, OHM_FIELD_U_AT_C, oc_budget_u(&measurement->bath));
  tell(finding, OHM_FIELD_EXPANDED_AT_K, oc_spread_expanded(&spread, measurement->level));
  tell(finding, OHM_FIELD_REFERENCE_LIMIT_K,
       oc_budget_limit(&measurement->bath, OC_CAUSE_REFERENCE_LIMIT));
  tell(finding, OHM_FIELD_REFERENCE_U_K,
       oc_budget_normal(&measurement->bath, OC_CAUSE_REFERENCE_NOISE));
  if (measurement->element.value > measurement->bath.value) {
    tell(finding, OHM_FIELD_HEATING_K, measurement->element.value - measurement->bath.value);
    tell(finding, OHM_FIELD_HEATING_LIMIT_K,
         oc_budget_limit(&measurement->element, OC_CAUSE_HEATING));
  }
}

/* ---- telling what is allowed ---- */

enum { OTHERS_MAX = 16 };

struct other_band {
  const char *name;
  struct oc_band band;
};

/* Keep a band that says something here, the tightest first. */
static size_t keep_other(struct other_band *others, size_t count,
                         const struct oc_measurement *measurement, const char *name,
                         const struct oc_tolerance *tolerance) {
  double at_c = measurement->bath.value;
  if (count == OTHERS_MAX || oc_tolerance_covers(measurement->curve, tolerance, at_c) != OHM_OK)
    return count;
  struct other_band other = {name, oc_tolerance_band(measurement->curve, tolerance, at_c)};
  double width = other.band.high_ohm / other.band.low_ohm;
  size_t at = count;
  for (; at > 0 && others[at - 1].band.high_ohm / others[at - 1].band.low_ohm > width; at--)
    others[at] = others[at - 1];
  others[at] = other;
  return count + 1;
}

static void tell_other(ohm_finding *finding, const struct other_band *other) {
  char entry[160];
  char low[OHM_NUMBER_SIZE];
  char high[OHM_NUMBER_SIZE];
  ohm_resistance_print(other->band.low_ohm, 4, low, sizeof low);
  ohm_resistance_print(other->band.high_ohm, 4, high, sizeof high);
  struct oc_text out = oc_text_begin(entry, sizeof entry);
  oc_text_add(&out, low);
  oc_text_add(&out, " to ");
  oc_text_add(&out, high);
  oc_text_add(&out, " (");
  oc_text_add(&out, other->name);
  oc_text_add(&out, ")");
  if (out.length < sizeof entry)
    oc_finding_add_entry(finding, OHM_FIELD_OTHER_BANDS, entry);
}

static void tell_bands(ohm_finding *finding, const struct oc_measurement *measurement) {
  const ohm_sensor *sensor = measurement->sensor;
  struct other_band others[OTHERS_MAX];
  size_t count = 0;
  if (measurement->band) {
    oc_finding_set_text(finding, OHM_FIELD_BAND, measurement->band->name);
    oc_finding_set_text(finding, OHM_FIELD_BAND_SOURCE,
                        measurement->band->source ? measurement->band->source : "");
    count = keep_other(others, count, measurement, "the table's own", &sensor->tolerance);
  }
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct oc_tolerance other = oc_tolerance_of_maker(&sensor->bands[i]);
    if (&sensor->bands[i] != measurement->band)
      count = keep_other(others, count, measurement, sensor->bands[i].name, &other);
  }
  for (size_t i = 0; i < count; i++)
    tell_other(finding, &others[i]);
}

void oc_bath_tell_allowed(ohm_finding *finding, const struct oc_measurement *measurement) {
  double at_c = measurement->bath.value;
  double low_c;
  double high_c;
  double alpha_per_k = NAN;
  ohm_curve_range(measurement->curve, &low_c, &high_c, NULL, NULL);
  if (measurement->covered == OHM_OK || oc_inside(low_c, at_c, high_c)) {
    double nominal_ohm = oc_curve_resistance_beyond(measurement->curve, at_c);
    ohm_curve_alpha(measurement->curve, fmin(fmax(at_c, low_c), high_c), &alpha_per_k);
    tell(finding, OHM_FIELD_EXPECTED_OHM, nominal_ohm);
    tell(finding, OHM_FIELD_ALPHA_PER_K, alpha_per_k);
    if (measurement->has_number)
      tell(finding, OHM_FIELD_U_COMBINED_OHM,
           hypot(oc_budget_u(&measurement->read),
                 nominal_ohm * alpha_per_k * oc_budget_u(&measurement->element)));
  }
  if (measurement->covered != OHM_OK)
    return;
  struct oc_band band = oc_tolerance_band(measurement->curve, &measurement->tolerance, at_c);
  tell(finding, OHM_FIELD_LOW_OHM, band.low_ohm);
  tell(finding, OHM_FIELD_HIGH_OHM, band.high_ohm);
  tell(finding, OHM_FIELD_TOLERANCE_PERCENT,
       50 * (band.high_ohm - band.low_ohm) / band.nominal_ohm);
  if (measurement->has_number) {
    struct oc_acceptance acceptance = oc_measurement_acceptance(measurement);
    tell(finding, OHM_FIELD_ACCEPT_LOW_OHM, acceptance.low_ohm);
    tell(finding, OHM_FIELD_ACCEPT_HIGH_OHM, acceptance.high_ohm);
    tell(finding, OHM_FIELD_NEEDED_K, acceptance.needed_k);
    tell(finding, OHM_FIELD_CM,
         (band.high_ohm - band.low_ohm) /
             (4 * ohm_finding_number(finding, OHM_FIELD_U_COMBINED_OHM)));
  }
  tell_bands(finding, measurement);
}

/* ---- deciding on the part ---- */

static void limits_at(const void *context, double t_c, double *low, double *high) {
  const struct oc_measurement *measurement = context;
  struct oc_band band = oc_tolerance_band(measurement->curve, &measurement->tolerance, t_c);
  *low = band.low_ohm;
  *high = band.high_ohm;
}

enum { BREAKS_MAX = 64 };

/* Temperatures of rows, where the limits between them bend. */
static size_t row_breaks(const struct oc_measurement *measurement, double *breaks) {
  const struct oc_tolerance *tolerance = &measurement->tolerance;
  double near_k = 10 * oc_budget_u(&measurement->element);
  size_t count = 0;
  for (size_t i = 0; i < tolerance->row_count && count < BREAKS_MAX; i++)
    if (fabs(tolerance->rows[i].t_c - measurement->element.value) <= near_k)
      breaks[count++] = tolerance->rows[i].t_c;
  return count;
}

/* A good sensor with a module's pull-up across it reads this low. Just below the limit
 * it is no question: there a pull-up would need a sensor at its upper limit. */
static bool fits_plug_on(const struct oc_measurement *measurement) {
  struct oc_band band =
      oc_tolerance_band(measurement->curve, &measurement->tolerance, measurement->element.value);
  if (measurement->read.value > OC_PLUG_ON_SHARE * band.low_ohm)
    return false;
  double most_s = 1 / measurement->read.value - 1 / band.high_ohm;
  double least_s = 1 / measurement->read.value - 1 / band.low_ohm;
  return most_s >= 1 / OC_GREATEST_PULL_UP_OHM && least_s <= 1 / OC_LEAST_PULL_UP_OHM;
}

/* With the plug on, the pull-up can only have lowered what was read. */
static void set_low(ohm_finding *finding, const struct oc_measurement *measurement) {
  bool plug_may_be_on =
      measurement->place == OHM_PLACE_NOT_TOLD || measurement->place == OHM_PLACE_PLUG_ON;
  if (measurement->read.value < OC_SHORTED_OHM &&
      measurement->read.value < OC_SHORTED_SHARE * ohm_finding_number(finding, OHM_FIELD_LOW_OHM))
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SHORTED);
  else if (plug_may_be_on && fits_plug_on(measurement))
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_LOW);
}

static ohm_conformance conformance(const struct oc_measurement *measurement) {
  double breaks[BREAKS_MAX];
  size_t count = row_breaks(measurement, breaks);
  struct oc_spread read = oc_spread_of(&measurement->read);
  struct oc_spread at = oc_spread_of(&measurement->element);
  return oc_conformance_over(&read, &at, limits_at, measurement, breaks, count);
}

/* A maker, or the table itself, by whose limits a reading is not beyond; NULL when it is by
 * those of all. Whoever named one band is not told of others. */
static const char *allowed_by(const struct oc_measurement *measurement, bool high) {
  const char *name;
  struct oc_measurement by = *measurement;
  for (size_t i = 0; !measurement->band_told && oc_measurement_band(&by, i, &name); i++) {
    ohm_conformance p = conformance(&by);
    if ((high ? p.p_high : p.p_low) < measurement->level)
      return name;
  }
  return NULL;
}

static bool is_allowed_by_another(ohm_finding *finding, const struct oc_measurement *measurement,
                                  bool high) {
  const char *name = allowed_by(measurement, high);
  if (!name)
    return false;
  oc_finding_set_text(finding, OHM_FIELD_ALLOWED_BY, name);
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_ANOTHER_BAND);
  return true;
}

static void decide(ohm_finding *finding, const struct oc_measurement *measurement) {
  ohm_conformance p = conformance(measurement);
  tell(finding, OHM_FIELD_P_LOW, p.p_low);
  tell(finding, OHM_FIELD_P_WITHIN, p.p_within);
  tell(finding, OHM_FIELD_P_HIGH, p.p_high);
  bool high = p.p_high >= measurement->level;
  bool low = p.p_low >= measurement->level;
  if ((high || low) && is_allowed_by_another(finding, measurement, high))
    return;
  if (high)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  else if (low)
    set_low(finding, measurement);
  else if (p.p_within >= measurement->level && measurement->place == OHM_PLACE_PLUG_ON)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else if (p.p_within >= measurement->level)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* Over range on a known range is more than that range. */
static void decide_over(ohm_finding *finding, const struct oc_measurement *measurement) {
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OVER_RANGE);
  if (!(measurement->reading->range_ohm > 0) || measurement->covered != OHM_OK)
    return;
  struct oc_spread at = oc_spread_of(&measurement->element);
  struct oc_spread range = {.value = measurement->reading->range_ohm};
  ohm_conformance p = oc_conformance_over(&range, &at, limits_at, measurement, NULL, 0);
  if (p.p_high < measurement->level)
    return;
  tell(finding, OHM_FIELD_P_HIGH, p.p_high);
  oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
}

static void judge(ohm_finding *finding, const struct oc_measurement *measurement) {
  switch (measurement->reading->display) {
  case OC_DISPLAY_OPEN:
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_OPEN);
    return;
  case OC_DISPLAY_OVER:
    decide_over(finding, measurement);
    return;
  case OC_DISPLAY_ONE:
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_LONE_ONE);
    return;
  default:
    break;
  }
  if (oc_measurement_misses_k(measurement)) {
    tell(finding, OHM_FIELD_SUGGESTED_OHM, 1000 * measurement->reading->r_ohm);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
  } else if (measurement->covered != OHM_OK && oc_measurement_is_shorted(measurement)) {
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SHORTED);
  } else if (measurement->covered == OHM_NOT_FOUND) {
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_NO_TOLERANCE);
  } else if (measurement->covered != OHM_OK) {
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OUTSIDE_BAND);
  } else {
    decide(finding, measurement);
  }
}

/* ---- deciding on the job ---- */

static void judge_job(ohm_finding *finding, const struct oc_measurement *measurement) {
  tell(finding, OHM_FIELD_FAN_C, measurement->fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, measurement->limit_k);
  ohm_reason reason = oc_finding_reason(finding);
  bool speaks = oc_curve_falls(measurement->curve) && measurement->has_number &&
                measurement->read.value > 0 && reason != OHM_REASON_MISSING_K &&
                reason != OHM_REASON_PLUG_ON && reason != OHM_REASON_SHORTED;
  if (!speaks)
    return;
  struct oc_tolerance tolerance;
  struct oc_exposure exposure;
  oc_measurement_expose(measurement, &tolerance, &exposure);
  struct oc_hidden hidden = oc_hidden_behind(&exposure);
  oc_finding_set_job(finding, hidden.job, hidden.reason);
  tell(finding, OHM_FIELD_SERIES_OHM, hidden.series_ohm);
  tell(finding, OHM_FIELD_SERIES_LATE_K, hidden.series_late_k);
  tell(finding, OHM_FIELD_SERIES_SOUND_LATE_K, hidden.series_sound_late_k);
  tell(finding, OHM_FIELD_LEAKAGE_OHM, hidden.leakage_ohm);
  tell(finding, OHM_FIELD_LEAKAGE_EARLY_K, hidden.leakage_early_k);
  tell(finding, OHM_FIELD_LEAKAGE_SOUND_EARLY_K, hidden.leakage_sound_early_k);
  tell(finding, OHM_FIELD_FIFTY_LATE_K, hidden.fifty_late_k);
  tell(finding, OHM_FIELD_LATE_K, hidden.late_k);
  tell(finding, OHM_FIELD_EARLY_K, hidden.early_k);
  if (measurement->tolerance.kind == OC_TOLERANCE_NONE)
    oc_finding_assume(finding, OC_ASSUME_TOLERANCE);
  else if (oc_tolerance_covers(measurement->curve, &tolerance, measurement->fan_c) != OHM_OK)
    oc_finding_assume(finding, OC_ASSUME_BEYOND);
}

ohm_status oc_bath_check(const ohm_sensor *sensor, const oc_reading *reading, const oc_meter *meter,
                         const oc_reference *reference, const oc_check *check,
                         ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (!sensor || !reading || !reference || !finding)
    return OHM_NULL_ARGUMENT;
  struct oc_measurement measurement;
  ohm_status status = oc_measurement_ask(&measurement, sensor, reading, meter, reference, check);
  if (status != OHM_OK)
    return status;
  oc_finding_set_about(finding, OHM_VERB_CHECK);
  oc_told_reading(finding, &measurement);
  oc_bath_tell_temperature(finding, &measurement);
  oc_bath_tell_allowed(finding, &measurement);
  judge(finding, &measurement);
  judge_job(finding, &measurement);
  return OHM_OK;
}
