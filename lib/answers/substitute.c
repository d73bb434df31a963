/* SPDX-License-Identifier: MIT */
/* Ordinary resistors in the place of the sensor. */
#include "substitute.h"

#include "request.h"

#include <string.h>

#include "../bench/finding.h"
#include "../model/hidden.h"
#include "../evidence/module.h"
#include "../arithmetic/preferred.h"
#include "../sensors/sensor.h"

static const double GREATEST_PERCENT = 50;

/* ---- what was asked ---- */

struct wanted {
  const ohm_curve *curve;
  struct oc_input input;
  double aim_c;
  double aim_ohm;
  double fan_c;
  double share; /* tolerance of a resistor */
  bool tolerance_assumed;
  bool is_e96;
  bool fan_assumed;
  bool from_drawer;
  bool cuts;
  size_t count;
  double values_ohm[OC_PREFERRED_MAX]; /* rising */
};

static ohm_status take_drawer(struct wanted *wanted, const oc_substitute *substitute) {
  if (!substitute->drawer_ohm)
    return OHM_NULL_ARGUMENT;
  if (substitute->drawer_count > OC_DRAWER_MAX)
    return OHM_TOO_LARGE;
  for (size_t i = 0; i < substitute->drawer_count; i++) {
    double value_ohm = substitute->drawer_ohm[i];
    if (!(0 < value_ohm && value_ohm <= OC_GREATEST_OHM))
      return OHM_BAD_ARGUMENT;
    size_t at = wanted->count++;
    for (; at > 0 && wanted->values_ohm[at - 1] > value_ohm; at--)
      wanted->values_ohm[at] = wanted->values_ohm[at - 1];
    wanted->values_ohm[at] = value_ohm;
  }
  wanted->from_drawer = true;
  return OHM_OK;
}

static bool is_substitute(const oc_substitute *substitute) {
  return isfinite(substitute->aim_c) && isfinite(substitute->fan_c) &&
         isfinite(substitute->tolerance_percent) &&
         oc_inside(OHM_SERIES_E12, substitute->series, OHM_SERIES_E96);
}

static ohm_status take_values(struct wanted *wanted, const oc_substitute *substitute) {
  wanted->is_e96 = substitute->drawer_count == 0 && substitute->series == OHM_SERIES_E96;
  wanted->tolerance_assumed = substitute->tolerance_percent == 0;
  double assumed_percent =
      wanted->is_e96 ? OC_ASSUMED_RESISTOR_E96_PERCENT : OC_ASSUMED_RESISTOR_PERCENT;
  wanted->share =
      (wanted->tolerance_assumed ? assumed_percent : substitute->tolerance_percent) / 100;
  if (substitute->drawer_count > 0)
    return take_drawer(wanted, substitute);
  wanted->count = oc_preferred_all((ohm_series)substitute->series, wanted->values_ohm);
  return OHM_OK;
}

static ohm_status take(struct wanted *wanted, const oc_module *module,
                       const oc_substitute *substitute) {
  static const oc_substitute all_default = OC_SUBSTITUTE_INIT;
  substitute = substitute ? substitute : &all_default;
  if (!is_substitute(substitute))
    return OHM_BAD_ARGUMENT;
  wanted->cuts = substitute->cuts;
  wanted->fan_assumed = substitute->fan_c == 0;
  wanted->fan_c = wanted->fan_assumed ? OC_ASSUMED_FAN_C : substitute->fan_c;
  wanted->aim_c = substitute->aim_c == 0 ? wanted->fan_c + OC_ASSUMED_AIM_K : substitute->aim_c;
  if (!(0 < wanted->fan_c && wanted->fan_c < OC_NEVER_C) ||
      !(0 <= substitute->tolerance_percent && substitute->tolerance_percent < GREATEST_PERCENT))
    return OHM_OUT_OF_RANGE;
  ohm_status status = oc_input_of(module, &wanted->input);
  if (status == OHM_OK)
    status = take_values(wanted, substitute);
  if (status == OHM_OK)
    status = ohm_curve_resistance(wanted->curve, wanted->aim_c, &wanted->aim_ohm);
  if (status == OHM_OK && wanted->input.divider.hot_pull_up_ohm > 0)
    wanted->input.divider.changeover_ohm =
        oc_curve_resistance_beyond(wanted->curve, wanted->input.changeover_c);
  return status;
}

/* ---- looking for it ---- */

struct choice {
  ohm_joined joined;
  double first_ohm;
  double second_ohm;
  double r_ohm;
};

static double off_by(const struct wanted *wanted, double r_ohm) {
  return fabs(log(r_ohm / wanted->aim_ohm));
}

static void take_nearer(const struct wanted *wanted, struct choice *best,
                        const struct choice *other) {
  if (best->r_ohm == 0 || off_by(wanted, other->r_ohm) < off_by(wanted, best->r_ohm))
    *best = *other;
}

static struct choice best_single(const struct wanted *wanted) {
  double r_ohm = oc_preferred_of(wanted->values_ohm, wanted->count, wanted->aim_ohm);
  return (struct choice){OHM_JOINED_NOT, r_ohm, NAN, r_ohm};
}

/* Shops have a second one of each value, a drawer may not. */
static struct choice best_pair(const struct wanted *wanted) {
  struct choice best = {OHM_JOINED_NOT, NAN, NAN, 0};
  for (size_t i = 0; i < wanted->count; i++)
    for (size_t j = i + wanted->from_drawer; j < wanted->count; j++) {
      double a_ohm = wanted->values_ohm[j];
      double b_ohm = wanted->values_ohm[i];
      struct choice in_series = {OHM_JOINED_SERIES, a_ohm, b_ohm, a_ohm + b_ohm};
      struct choice across = {OHM_JOINED_PARALLEL, a_ohm, b_ohm, 1 / (1 / a_ohm + 1 / b_ohm)};
      take_nearer(wanted, &best, &in_series);
      take_nearer(wanted, &best, &across);
    }
  return best;
}

/* ---- what the module makes of it ---- */

struct seen {
  double t_c;
  double low_c;
  double high_c;
  double v; /* NaN when the pull-up is not known */
  int open; /* of the least, the nominal and the greatest resistance */
  int shorted;
};

/* Past either end of the curve: as that end. */
static double seen_at(const ohm_curve *curve, double r_ohm) {
  double low_c;
  double high_c;
  double at_low_ohm;
  double at_high_ohm;
  double t_c;
  ohm_curve_range(curve, &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  if (ohm_curve_temperature(curve, r_ohm, &t_c) == OHM_OK)
    return t_c;
  return (r_ohm > at_low_ohm) == (at_low_ohm > at_high_ohm) ? low_c : high_c;
}

static double volts_at(const struct wanted *wanted, double r_ohm) {
  const struct oc_divider *divider = &wanted->input.divider;
  return divider->pull_up_ohm > 0
             ? oc_divided(divider->supply_v, oc_divider_pull_up(divider, r_ohm), r_ohm)
             : NAN;
}

static struct seen see(const struct wanted *wanted, double r_ohm) {
  const double each_ohm[] = {r_ohm * (1 - wanted->share), r_ohm, r_ohm * (1 + wanted->share)};
  struct seen seen = {.low_c = INFINITY, .high_c = -INFINITY};
  for (size_t i = 0; i < 3; i++) {
    double t_c = seen_at(wanted->curve, each_ohm[i]);
    double v = volts_at(wanted, each_ohm[i]);
    seen.low_c = fmin(seen.low_c, t_c);
    seen.high_c = fmax(seen.high_c, t_c);
    seen.open += isnan(v) ? t_c <= OC_OPEN_C : v >= wanted->input.open_v;
    seen.shorted += isnan(v) ? t_c >= OC_SHORTED_C : v <= wanted->input.short_v;
  }
  seen.t_c = seen_at(wanted->curve, r_ohm);
  seen.v = volts_at(wanted, r_ohm);
  return seen;
}

/* The most that one of them turns into heat. */
static double power_mw(const struct wanted *wanted, const struct choice *choice) {
  const struct oc_divider *divider = &wanted->input.divider;
  double pull_up_ohm =
      divider->pull_up_ohm > 0 ? oc_divider_pull_up(divider, choice->r_ohm) : OC_LEAST_PULL_UP_OHM;
  double current_a = divider->supply_v / (pull_up_ohm + choice->r_ohm);
  double all_w = current_a * current_a * choice->r_ohm;
  double share = 1;
  if (choice->joined == OHM_JOINED_SERIES)
    share = fmax(choice->first_ohm, choice->second_ohm) / choice->r_ohm;
  if (choice->joined == OHM_JOINED_PARALLEL)
    share = choice->r_ohm / fmin(choice->first_ohm, choice->second_ohm);
  return 1e3 * all_w * share;
}

static void judge(ohm_finding *finding, const struct wanted *wanted, const struct seen *seen) {
  if (seen->open > 0)
    oc_finding_set_verdict(finding, seen->open == 3 ? OHM_OUTSIDE : OHM_UNDECIDED, OHM_REASON_OPEN);
  else if (seen->shorted > 0)
    oc_finding_set_verdict(finding, seen->shorted == 3 ? OHM_OUTSIDE : OHM_UNDECIDED,
                           OHM_REASON_SHORTED);
  else if (seen->high_c < wanted->fan_c)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_COLD);
  else if (seen->low_c < wanted->fan_c)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_COLD);
  else
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
}

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static void answer(ohm_finding *finding, const ohm_sensor *sensor, const struct wanted *wanted,
                   const struct choice *choice) {
  struct seen seen = see(wanted, choice->r_ohm);
  double shown_c;
  ohm_reported_of(seen.t_c, wanted->cuts, &shown_c);
  oc_finding_set_about(finding, OHM_VERB_SUBSTITUTE);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  oc_finding_set_joined(finding, choice->joined);
  tell(finding, OHM_FIELD_FAN_C, wanted->fan_c);
  tell(finding, OHM_FIELD_AIM_C, wanted->aim_c);
  tell(finding, OHM_FIELD_FIRST_OHM, choice->first_ohm);
  tell(finding, OHM_FIELD_SECOND_OHM, choice->second_ohm);
  tell(finding, OHM_FIELD_TOLERANCE_PERCENT, 100 * wanted->share);
  tell(finding, OHM_FIELD_R_OHM, choice->r_ohm);
  tell(finding, OHM_FIELD_T_C, seen.t_c);
  tell(finding, OHM_FIELD_SEEN_LOW_C, seen.low_c);
  tell(finding, OHM_FIELD_SEEN_HIGH_C, seen.high_c);
  tell(finding, OHM_FIELD_SHOWN_C, shown_c);
  tell(finding, OHM_FIELD_V_VOLT, seen.v);
  tell(finding, OHM_FIELD_SUPPLY_VOLT, wanted->input.divider.supply_v);
  tell(finding, OHM_FIELD_POWER_MW, power_mw(wanted, choice));
  judge(finding, wanted, &seen);
  if (wanted->input.divider.pull_up_ohm > 0)
    tell(finding, OHM_FIELD_PULL_UP_OHM, oc_divider_pull_up(&wanted->input.divider, choice->r_ohm));
  else
    oc_finding_assume(finding, OC_ASSUME_NO_MODULE);
  if (wanted->tolerance_assumed)
    oc_finding_assume(finding, wanted->is_e96 ? OC_ASSUME_RESISTORS_E96 : OC_ASSUME_RESISTORS);
  if (wanted->fan_assumed)
    oc_finding_assume(finding, OC_ASSUME_FAN);
}

ohm_status oc_substitute_find(const ohm_sensor *sensor, const oc_module *module,
                              const oc_substitute *substitute, ohm_finding *single,
                              ohm_finding *pair) {
  if (single)
    oc_finding_clear(single);
  if (pair)
    oc_finding_clear(pair);
  if (!sensor || (!single && !pair))
    return OHM_NULL_ARGUMENT;
  struct wanted wanted = {.curve = sensor->curve};
  ohm_status status = take(&wanted, module, substitute);
  if (status != OHM_OK)
    return status;
  if (single) {
    struct choice choice = best_single(&wanted);
    answer(single, sensor, &wanted, &choice);
  }
  if (pair && !(wanted.from_drawer && wanted.count < 2)) {
    struct choice choice = best_pair(&wanted);
    answer(pair, sensor, &wanted, &choice);
  }
  return OHM_OK;
}

/* ---- the verb ---- */

static oc_substitute ask_request(const struct oc_request *ask, struct oc_drawer *drawer) {
  oc_substitute request = OC_SUBSTITUTE_INIT;
  const char *values = ask->bench->settings[OHM_SETTING_DRAWER];
  int series = oc_request_word(ask, OHM_SETTING_SERIES);
  request.aim_c = oc_request_number(ask, OHM_SETTING_AIM_C, 0);
  request.fan_c = oc_request_number(ask, OHM_SETTING_FAN_C, 0);
  request.tolerance_percent = oc_request_number(ask, OHM_SETTING_RESISTOR_PERCENT, 0);
  request.cuts = oc_request_word(ask, OHM_SETTING_ROUNDING) == OC_TRUNCATED;
  request.series = series > 0 ? OHM_SERIES_E12 + series - 1 : OHM_SERIES_E12;
  if (values && oc_notation_drawer(values, drawer, NULL) == OHM_OK) {
    request.drawer_ohm = drawer->r_ohm;
    request.drawer_count = drawer->count;
  }
  return request;
}

static ohm_status ask_all(struct oc_request *ask, const ohm_bench *bench, ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "substitute", error);
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK && bench->settings[OHM_SETTING_SERIES] &&
      bench->settings[OHM_SETTING_DRAWER])
    return oc_fail(error, OHM_BAD_ARGUMENT, "series and drawer both say what to choose from: set ",
                   "one of them", (const char *)NULL);
  return status;
}

ohm_answer *ohm_bench_substitute(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  struct oc_drawer drawer;
  ohm_status status = ask_all(&ask, bench, error);
  if (status != OHM_OK)
    return NULL;
  oc_module module = oc_request_module(&ask);
  oc_substitute request = ask_request(&ask, &drawer);
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each = answer ? oc_answer_group(answer, OHM_GROUP_RESISTORS, 2) : NULL;
  if (each)
    status = oc_substitute_find(bench->sensor, &module, &request, &each[0], &each[1]);
  if (each && status == OHM_OK && oc_finding_about(&each[1]) == OC_VERBS)
    answer->groups[OHM_GROUP_RESISTORS].count = 1;
  if (each && status == OHM_OK)
    answer->whole = each[0];
  if (status == OHM_OUT_OF_RANGE && request.aim_c > 0)
    status = oc_request_refuse_reach(&ask, "what the module is to see", request.aim_c);
  return oc_answer_done(answer, oc_request_told(&ask, status), error);
}
