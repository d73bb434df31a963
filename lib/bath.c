/* SPDX-License-Identifier: MIT */
/* A sensor at a known temperature: against what its maker allows, and for the fan. */
#include "bath.h"

#include "text.h"

/* Pull-ups printed for control modules lie between these; see tests/refs/sensor.psv. */
static const double LEAST_PULL_UP_OHM = 350;
static const double GREATEST_PULL_UP_OHM = 20e3;
static const double PLUG_ON_PART = 0.97;
/* A bare number that means this far from the bath is doubted... */
static const double DOUBTED_K = 50;
/* ...when a thousand times as much comes as near as this. */
static const double NEAR_K = 15;
static const double SHORTED_OHM = 5;
static const double LEAST_SHOWN_OHM = 1e-3;

/* ---- telling what was measured ---- */

static void tell(ohm_finding *finding, ohm_field field, double value) {
  ohm_finding_set_number(finding, field, value);
}

static double finite_or_absent(double x) {
  return isfinite(x) ? x : NAN;
}

static double causes_limit(const struct ohm_budget *budget, enum ohm_cause_name name) {
  for (size_t i = 0; i < budget->count; i++)
    if (budget->causes[i].name == name && budget->causes[i].shape == OHM_RECTANGULAR)
      return ohm_cause_limit(&budget->causes[i]);
  return 0;
}

static void tell_resistance(ohm_finding *finding, const struct ohm_question *question) {
  struct ohm_spread spread = ohm_spread_of(&question->read);
  double r_ohm = question->read.value;
  double u_ohm = ohm_budget_u(&question->read);
  double expanded_ohm = ohm_spread_expanded(&spread, question->level);
  tell(finding, OHM_FIELD_R_OHM, r_ohm);
  tell(finding, OHM_FIELD_U_R_OHM, u_ohm);
  tell(finding, OHM_FIELD_EXPANDED_R_OHM, expanded_ohm);
  tell(finding, OHM_FIELD_METER_LIMIT_OHM, causes_limit(&question->read, OHM_CAUSE_METER));
  tell(finding, OHM_FIELD_LEAD_OHM, question->reading->r_ohm - r_ohm);
  tell(finding, OHM_FIELD_LEAD_LIMIT_OHM, causes_limit(&question->read, OHM_CAUSE_LEADS));
  double t_c;
  double alpha_per_k;
  if (ohm_curve_temperature(question->curve, r_ohm, &t_c) != OHM_OK ||
      ohm_curve_alpha(question->curve, t_c, &alpha_per_k) != OHM_OK)
    return;
  double ohm_per_k = fabs(alpha_per_k) * r_ohm;
  tell(finding, OHM_FIELD_T_C, t_c);
  tell(finding, OHM_FIELD_U_T_C, u_ohm / ohm_per_k);
  tell(finding, OHM_FIELD_EXPANDED_T_K, expanded_ohm / ohm_per_k);
}

static double noise_u(const struct ohm_budget *budget) {
  for (size_t i = 0; i < budget->count; i++)
    if (budget->causes[i].name == OHM_CAUSE_REFERENCE_NOISE)
      return budget->causes[i].u;
  return 0;
}

static void tell_temperature(ohm_finding *finding, const struct ohm_question *question) {
  struct ohm_spread spread = ohm_spread_of(&question->bath);
  tell(finding, OHM_FIELD_AT_C, question->bath.value);
  tell(finding, OHM_FIELD_U_AT_C, ohm_budget_u(&question->bath));
  tell(finding, OHM_FIELD_EXPANDED_AT_K, ohm_spread_expanded(&spread, question->level));
  tell(finding, OHM_FIELD_REFERENCE_LIMIT_K,
       causes_limit(&question->bath, OHM_CAUSE_REFERENCE_LIMIT));
  tell(finding, OHM_FIELD_REFERENCE_U_K, noise_u(&question->bath));
  if (question->element.value > question->bath.value) {
    tell(finding, OHM_FIELD_HEATING_K, question->element.value - question->bath.value);
    tell(finding, OHM_FIELD_HEATING_LIMIT_K, causes_limit(&question->element, OHM_CAUSE_HEATING));
  }
}

void ohm_bath_tell_display(ohm_finding *finding, const ohm_reading *reading) {
  char text[OHM_NUMBER_SIZE];
  struct ohm_text out = ohm_text_begin(text, sizeof text);
  if (reading->display == OHM_DISPLAY_OPEN) {
    ohm_text_add(&out, "open");
  } else if (reading->display == OHM_DISPLAY_ONE) {
    ohm_text_add(&out, "a lone 1");
  } else if (reading->display == OHM_DISPLAY_OVER) {
    ohm_text_add(&out, "over range");
    if (reading->range_ohm > 0) {
      char range[OHM_NUMBER_SIZE];
      ohm_resistance_print(reading->range_ohm, 1, range, sizeof range);
      ohm_text_add(&out, " on ");
      ohm_text_add(&out, range);
      tell(finding, OHM_FIELD_RANGE_OHM, reading->range_ohm);
    }
  } else if (reading->r_ohm < LEAST_SHOWN_OHM) {
    ohm_text_add(&out, "0 ohm");
  } else {
    double digits = 4;
    if (reading->resolution_ohm > 0 && reading->r_ohm >= reading->resolution_ohm)
      digits = floor(log10(reading->r_ohm / reading->resolution_ohm) + 1e-9) + 1;
    ohm_resistance_print(reading->r_ohm, (int)fmin(fmax(digits, 1), 9), text, sizeof text);
  }
  ohm_finding_set_text(finding, OHM_FIELD_READ, text);
}

/* ---- telling what is allowed ---- */

enum { OTHERS_MAX = 16 };

struct other_band {
  const char *name;
  struct ohm_band band;
};

/* Keep a band that says something here, the tightest first. */
static size_t keep_other(struct other_band *others, size_t count,
                         const struct ohm_question *question, const char *name,
                         const struct ohm_tolerance *tolerance) {
  double at_c = question->bath.value;
  if (count == OTHERS_MAX || ohm_tolerance_covers(question->curve, tolerance, at_c) != OHM_OK)
    return count;
  struct other_band other = {name, ohm_tolerance_band(question->curve, tolerance, at_c)};
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
  struct ohm_text out = ohm_text_begin(entry, sizeof entry);
  ohm_text_add(&out, low);
  ohm_text_add(&out, " to ");
  ohm_text_add(&out, high);
  ohm_text_add(&out, " (");
  ohm_text_add(&out, other->name);
  ohm_text_add(&out, ")");
  if (out.length < sizeof entry)
    ohm_finding_add_entry(finding, OHM_FIELD_OTHER_BANDS, entry);
}

static void tell_bands(ohm_finding *finding, const struct ohm_question *question) {
  const ohm_sensor *sensor = question->sensor;
  struct other_band others[OTHERS_MAX];
  size_t count = 0;
  if (question->band) {
    ohm_finding_set_text(finding, OHM_FIELD_BAND, question->band->name);
    ohm_finding_set_text(finding, OHM_FIELD_BAND_SOURCE,
                         question->band->source ? question->band->source : "");
    count = keep_other(others, count, question, "the table's own", &sensor->tolerance);
  }
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct ohm_tolerance other = ohm_tolerance_of_maker(&sensor->bands[i]);
    if (&sensor->bands[i] != question->band)
      count = keep_other(others, count, question, sensor->bands[i].name, &other);
  }
  for (size_t i = 0; i < count; i++)
    tell_other(finding, &others[i]);
}

static void tell_allowed(ohm_finding *finding, const struct ohm_question *question) {
  double at_c = question->bath.value;
  double low_c;
  double high_c;
  double alpha_per_k = NAN;
  ohm_curve_range(question->curve, &low_c, &high_c, NULL, NULL);
  if (question->covered == OHM_OK || ohm_inside(low_c, at_c, high_c)) {
    double nominal_ohm = ohm_curve_resistance_beyond(question->curve, at_c);
    ohm_curve_alpha(question->curve, fmin(fmax(at_c, low_c), high_c), &alpha_per_k);
    tell(finding, OHM_FIELD_EXPECTED_OHM, nominal_ohm);
    tell(finding, OHM_FIELD_ALPHA_PER_K, alpha_per_k);
    if (question->has_number)
      tell(finding, OHM_FIELD_U_COMBINED_OHM,
           hypot(ohm_budget_u(&question->read),
                 nominal_ohm * alpha_per_k * ohm_budget_u(&question->element)));
  }
  if (question->covered != OHM_OK)
    return;
  struct ohm_band band = ohm_tolerance_band(question->curve, &question->tolerance, at_c);
  tell(finding, OHM_FIELD_LOW_OHM, band.low_ohm);
  tell(finding, OHM_FIELD_HIGH_OHM, band.high_ohm);
  tell(finding, OHM_FIELD_TOLERANCE_PERCENT,
       50 * (band.high_ohm - band.low_ohm) / band.nominal_ohm);
  if (question->has_number) {
    struct ohm_acceptance acceptance = ohm_question_acceptance(question);
    tell(finding, OHM_FIELD_ACCEPT_LOW_OHM, acceptance.low_ohm);
    tell(finding, OHM_FIELD_ACCEPT_HIGH_OHM, acceptance.high_ohm);
    tell(finding, OHM_FIELD_NEEDED_K, acceptance.needed_k);
    tell(finding, OHM_FIELD_CM,
         finite_or_absent((band.high_ohm - band.low_ohm) /
                          (4 * ohm_finding_number(finding, OHM_FIELD_U_COMBINED_OHM))));
  }
  tell_bands(finding, question);
}

void ohm_bath_tell_reading(ohm_finding *finding, const struct ohm_question *question) {
  ohm_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(question->sensor));
  ohm_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(question->sensor));
  tell(finding, OHM_FIELD_LEVEL, question->level);
  tell(finding, OHM_FIELD_READINGS, 1);
  ohm_bath_tell_display(finding, question->reading);
  ohm_question_tell_place(question, finding);
  ohm_question_tell_assumed(question, finding);
  if (question->has_number)
    tell_resistance(finding, question);
}

/* ---- deciding on the part ---- */

static void limits_at(const void *context, double t_c, double *low, double *high) {
  const struct ohm_question *question = context;
  struct ohm_band band = ohm_tolerance_band(question->curve, &question->tolerance, t_c);
  *low = band.low_ohm;
  *high = band.high_ohm;
}

enum { BREAKS_MAX = 64 };

/* Temperatures of rows, where the limits between them bend. */
static size_t row_breaks(const struct ohm_question *question, double *breaks) {
  const struct ohm_tolerance *tolerance = &question->tolerance;
  double near_k = 10 * ohm_budget_u(&question->element);
  size_t count = 0;
  for (size_t i = 0; i < tolerance->row_count && count < BREAKS_MAX; i++)
    if (fabs(tolerance->rows[i].t_c - question->element.value) <= near_k)
      breaks[count++] = tolerance->rows[i].t_c;
  return count;
}

/* A good sensor with a module's pull-up across it reads this low. Just below the limit
 * it is no question: there a pull-up would need a sensor at its upper limit. */
static bool fits_plug_on(const struct ohm_question *question) {
  struct ohm_band band =
      ohm_tolerance_band(question->curve, &question->tolerance, question->element.value);
  if (question->read.value > PLUG_ON_PART * band.low_ohm)
    return false;
  double most_s = 1 / question->read.value - 1 / band.high_ohm;
  double least_s = 1 / question->read.value - 1 / band.low_ohm;
  return most_s >= 1 / GREATEST_PULL_UP_OHM && least_s <= 1 / LEAST_PULL_UP_OHM;
}

/* With the plug on, the pull-up can only have lowered what was read. */
static void set_low(ohm_finding *finding, const struct ohm_question *question) {
  bool plug_may_be_on =
      question->place == OHM_PLACE_NOT_TOLD || question->place == OHM_PLACE_PLUG_ON;
  if (question->read.value < SHORTED_OHM &&
      question->read.value < ohm_finding_number(finding, OHM_FIELD_LOW_OHM) / 10)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SHORTED);
  else if (plug_may_be_on && fits_plug_on(question))
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_LOW);
}

static void decide(ohm_finding *finding, const struct ohm_question *question) {
  double breaks[BREAKS_MAX];
  size_t count = row_breaks(question, breaks);
  struct ohm_spread read = ohm_spread_of(&question->read);
  struct ohm_spread at = ohm_spread_of(&question->element);
  ohm_conformance p = ohm_conformance_over(&read, &at, limits_at, question, breaks, count);
  tell(finding, OHM_FIELD_P_LOW, p.p_low);
  tell(finding, OHM_FIELD_P_WITHIN, p.p_within);
  tell(finding, OHM_FIELD_P_HIGH, p.p_high);
  if (p.p_high >= question->level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  else if (p.p_low >= question->level)
    set_low(finding, question);
  else if (p.p_within >= question->level && question->place == OHM_PLACE_PLUG_ON)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else if (p.p_within >= question->level)
    ohm_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* Over range on a known range is more than that range. */
static void decide_over(ohm_finding *finding, const struct ohm_question *question) {
  ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OVER_RANGE);
  if (!(question->reading->range_ohm > 0) || question->covered != OHM_OK)
    return;
  struct ohm_spread at = ohm_spread_of(&question->element);
  struct ohm_spread range = {.value = question->reading->range_ohm};
  ohm_conformance p = ohm_conformance_over(&range, &at, limits_at, question, NULL, 0);
  if (p.p_high < question->level)
    return;
  tell(finding, OHM_FIELD_P_HIGH, p.p_high);
  ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
}

bool ohm_bath_misses_k(const struct ohm_question *question) {
  double bath_c = question->bath.value;
  double bare_c;
  double thousandfold_c;
  if (!question->has_number || !question->reading->bare)
    return false;
  bool fits = ohm_curve_temperature(question->curve, question->read.value, &bare_c) == OHM_OK &&
              fabs(bare_c - bath_c) <= DOUBTED_K;
  return !fits &&
         ohm_curve_temperature(question->curve, 1000 * question->reading->r_ohm, &thousandfold_c) ==
             OHM_OK &&
         fabs(thousandfold_c - bath_c) <= NEAR_K + ohm_budget_u(&question->bath);
}

static void judge(ohm_finding *finding, const struct ohm_question *question) {
  switch (question->reading->display) {
  case OHM_DISPLAY_OPEN:
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_OPEN);
    return;
  case OHM_DISPLAY_OVER:
    decide_over(finding, question);
    return;
  case OHM_DISPLAY_ONE:
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_LONE_ONE);
    return;
  default:
    break;
  }
  if (ohm_bath_misses_k(question)) {
    tell(finding, OHM_FIELD_SUGGESTED_OHM, 1000 * question->reading->r_ohm);
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
  } else if (question->covered == OHM_NOT_FOUND) {
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_NO_TOLERANCE);
  } else if (question->covered != OHM_OK) {
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OUTSIDE_BAND);
  } else {
    decide(finding, question);
  }
}

/* ---- deciding on the job ---- */

static void judge_job(ohm_finding *finding, const struct ohm_question *question) {
  tell(finding, OHM_FIELD_FAN_C, question->fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, question->limit_k);
  ohm_reason reason = ohm_finding_reason(finding);
  bool speaks = ohm_curve_falls(question->curve) && question->has_number &&
                question->read.value > 0 && reason != OHM_REASON_MISSING_K &&
                reason != OHM_REASON_PLUG_ON && reason != OHM_REASON_SHORTED;
  if (!speaks)
    return;
  struct ohm_tolerance tolerance;
  struct ohm_exposure exposure;
  ohm_question_expose(question, &tolerance, &exposure);
  struct ohm_hidden hidden = ohm_hidden_behind(&exposure);
  ohm_finding_set_job(finding, hidden.job, hidden.reason);
  tell(finding, OHM_FIELD_SERIES_OHM, hidden.series_ohm);
  tell(finding, OHM_FIELD_SERIES_LATE_K, finite_or_absent(hidden.series_late_k));
  tell(finding, OHM_FIELD_SERIES_SOUND_LATE_K, finite_or_absent(hidden.series_sound_late_k));
  tell(finding, OHM_FIELD_LEAKAGE_OHM, finite_or_absent(hidden.leakage_ohm));
  tell(finding, OHM_FIELD_LEAKAGE_EARLY_K, finite_or_absent(hidden.leakage_early_k));
  tell(finding, OHM_FIELD_LEAKAGE_SOUND_EARLY_K, finite_or_absent(hidden.leakage_sound_early_k));
  tell(finding, OHM_FIELD_FIFTY_LATE_K, finite_or_absent(hidden.fifty_late_k));
  tell(finding, OHM_FIELD_LATE_K, finite_or_absent(hidden.late_k));
  tell(finding, OHM_FIELD_EARLY_K, finite_or_absent(hidden.early_k));
  if (question->tolerance.kind == OHM_TOLERANCE_NONE)
    ohm_finding_assume(finding, OHM_ASSUME_TOLERANCE);
  else if (ohm_tolerance_covers(question->curve, &tolerance, question->fan_c) != OHM_OK)
    ohm_finding_assume(finding, OHM_ASSUME_BEYOND);
}

ohm_status ohm_bath_check(const ohm_sensor *sensor, const ohm_reading *reading,
                          const ohm_meter *meter, const ohm_reference *reference,
                          const ohm_check *check, ohm_finding *finding) {
  if (finding)
    ohm_finding_clear(finding);
  if (!sensor || !reading || !reference || !finding)
    return OHM_NULL_ARGUMENT;
  struct ohm_question question;
  ohm_status status = ohm_question_ask(&question, sensor, reading, meter, reference, check);
  if (status != OHM_OK)
    return status;
  ohm_finding_set_about(finding, OHM_ABOUT_BATH);
  ohm_finding_set_reference(finding, (ohm_reference_kind)reference->kind);
  ohm_bath_tell_reading(finding, &question);
  tell_temperature(finding, &question);
  tell_allowed(finding, &question);
  judge(finding, &question);
  judge_job(finding, &question);
  return OHM_OK;
}
