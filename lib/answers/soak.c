/* SPDX-License-Identifier: MIT */
/*
 * A sensor of a car that stood, against the air. At one time constant everything that is
 * not known adds: what the reading is off by has the distribution of a budget, and its
 * probabilities are means of that over the time constant.
 */
#include "soak.h"

#include "../arithmetic/odd.h"
#include "request.h"

#include <string.h>

#include "companions.h"
#include "../evidence/history.h"
#include "told.h"

/* ---- what was asked ---- */

static bool is_soak(const oc_soak_told *soak) {
  return isfinite(soak->after_h) && soak->after_h >= 0 &&
         oc_inside(OC_ASSUMED, soak->start, OC_EXACT) &&
         (isfinite(soak->stop_c) || (isnan(soak->stop_c) && soak->start == OC_ASSUMED)) &&
         isfinite(soak->stop_limit_k) && soak->stop_limit_k >= 0 && isfinite(soak->tau_low_h) &&
         soak->tau_low_h >= 0 && isfinite(soak->tau_high_h) && soak->tau_high_h >= 0 &&
         isfinite(soak->allow_k) && soak->allow_k >= 0;
}

static bool is_thermometer(const oc_reference *air) {
  return air->kind == OHM_REFERENCE_THERMOMETER && oc_inside(OC_ASSUMED, air->accuracy, OC_EXACT) &&
         isfinite(air->t_c) && oc_inside(0, air->limit_k, OC_HOTTEST_C) &&
         oc_inside(0, air->u_k, OC_HOTTEST_C);
}

static ohm_status take_air(struct oc_soak *soak, const oc_reference *air,
                           const ohm_history *history) {
  struct oc_lag *lag = &soak->lag;
  if (!air && !history)
    return OHM_NULL_ARGUMENT;
  if (air && !is_thermometer(air))
    return OHM_BAD_ARGUMENT;
  if (!history && !(OC_ZERO_C < air->t_c && air->t_c <= OC_HOTTEST_C))
    return OHM_OUT_OF_RANGE;
  soak->one_h[0] = 0;
  soak->one_c[0] = history ? 0 : air->t_c;
  lag->air = history ? oc_history_air(history) : (struct oc_air){1, soak->one_h, soak->one_c};
  bool assumed = !air || air->accuracy == OC_ASSUMED;
  lag->air_limit_k = assumed                      ? OC_ASSUMED_THERMOMETER_LIMIT_K
                     : air->accuracy == OC_STATED ? air->limit_k
                                                  : 0;
  lag->air_u_k = !assumed && air->accuracy == OC_STATED ? air->u_k : 0;
  return OHM_OK;
}

/* From the stop, or from the first that is known of the air, to the reading. */
static ohm_status take_times(struct oc_soak *soak, const oc_soak_told *told) {
  struct oc_lag *lag = &soak->lag;
  double last_h = lag->air.after_h[lag->air.count - 1];
  lag->to_h = told->after_h > 0 ? told->after_h : last_h;
  lag->from_h = told->history ? fmax(0, lag->air.after_h[0]) : 0;
  bool reaches = !told->history || told->extend || lag->to_h <= last_h;
  return 0 < lag->to_h && lag->to_h <= OHM_SOAK_MOST_H && lag->from_h <= lag->to_h && reaches
             ? OHM_OK
             : OHM_OUT_OF_RANGE;
}

static struct oc_start stop_of(const oc_soak_told *told) {
  if (told->start == OC_STATED)
    return (struct oc_start){told->stop_c, told->stop_limit_k};
  if (told->start == OC_EXACT)
    return (struct oc_start){told->stop_c, 0};
  return isnan(told->stop_c) ? (struct oc_start){OC_ASSUMED_STOP_C, OC_ASSUMED_STOP_LIMIT_K}
                             : (struct oc_start){told->stop_c, OC_ASSUMED_STOP_TOLD_LIMIT_K};
}

static ohm_status take_start(struct oc_soak *soak, const oc_soak_told *told) {
  struct oc_lag *lag = &soak->lag;
  struct oc_start stop = stop_of(told);
  lag->tau = oc_span_or(told->tau_low_h, told->tau_high_h, OHM_SOAKED_COOLANT);
  if (!(OC_ZERO_C < stop.c && stop.c <= OC_HOTTEST_C) || stop.limit_k > OC_HOTTEST_C ||
      !oc_span_is_usable(&lag->tau))
    return OHM_OUT_OF_RANGE;
  lag->start = lag->from_h > 0 ? oc_lag_start_between(lag, stop.c, stop.limit_k) : stop;
  return OHM_OK;
}

static ohm_status take_soak(struct oc_soak *soak, const oc_reference *air,
                            const oc_soak_told *told) {
  if (!is_soak(told))
    return OHM_BAD_ARGUMENT;
  if (told->allow_k > OC_MOST_LIMIT_K)
    return OHM_OUT_OF_RANGE;
  soak->allow_k = told->allow_k == 0 ? OC_ASSUMED_SOAK_ALLOW_K : told->allow_k;
  soak->undisturbed = told->undisturbed != 0;
  ohm_status status = take_air(soak, air, told->history);
  if (status == OHM_OK)
    status = take_times(soak, told);
  if (status == OHM_OK)
    status = take_start(soak, told);
  return status == OHM_OK ? oc_companions_take(told) : status;
}

/* ---- telling what was expected ---- */

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

static double coldest_air(const struct oc_lag *lag) {
  double coldest_c = fmin(oc_air_at(&lag->air, lag->from_h), oc_air_at(&lag->air, lag->to_h));
  for (size_t i = 0; i < lag->air.count; i++)
    if (oc_inside(lag->from_h, lag->air.after_h[i], lag->to_h))
      coldest_c = fmin(coldest_c, lag->air.t_c[i]);
  return coldest_c - lag->air_limit_k;
}

static void tell_expected(ohm_finding *finding, struct oc_soak *soak) {
  struct oc_lag *lag = &soak->lag;
  double level = soak->measurement.level;
  struct oc_budget nothing = oc_budget_of(0);
  struct oc_off_summary coolant = oc_off_summary_of(lag, &nothing);
  tell(finding, OHM_FIELD_AT_C, -coolant.mean_k);
  tell(finding, OHM_FIELD_U_AT_C, coolant.u_k);
  tell(finding, OHM_FIELD_EXPECTED_OHM,
       oc_curve_resistance_beyond(soak->measurement.curve, -coolant.mean_k));
  tell(finding, OHM_FIELD_COOLANT_LOW_C, -oc_off_quantile(lag, &nothing, (1 + level) / 2));
  tell(finding, OHM_FIELD_COOLANT_HIGH_C, -oc_off_quantile(lag, &nothing, (1 - level) / 2));
}

static void tell_told(ohm_finding *finding, const struct oc_soak *soak, const oc_soak_told *told) {
  const struct oc_lag *lag = &soak->lag;
  tell(finding, OHM_FIELD_AFTER_H, lag->to_h);
  tell(finding, OHM_FIELD_STOP_C, stop_of(told).c);
  tell(finding, OHM_FIELD_STOP_LIMIT_K, stop_of(told).limit_k);
  tell(finding, OHM_FIELD_TAU_LOW_H, lag->tau.low_h);
  tell(finding, OHM_FIELD_TAU_HIGH_H, lag->tau.high_h);
  tell(finding, OHM_FIELD_AIR_C, oc_air_at(&lag->air, lag->to_h));
  tell(finding, OHM_FIELD_AIR_LIMIT_K, lag->air_limit_k);
  tell(finding, OHM_FIELD_COLDEST_C, coldest_air(lag));
  tell(finding, OHM_FIELD_ALLOW_K, soak->allow_k);
}

static bool assumes_companions(const oc_soak_told *told) {
  for (size_t i = 0; i < told->companion_count; i++)
    if (isnan(told->companions[i].limit_k))
      return true;
  return false;
}

static void tell_assumed(ohm_finding *finding, const struct oc_soak *soak, const oc_soak_told *told,
                         const oc_reference *air) {
  const struct oc_lag *lag = &soak->lag;
  const struct {
    bool taken;
    enum oc_assumption assumption;
  } all[] = {
      {!air || air->accuracy == OC_ASSUMED, OC_ASSUME_AIR},
      {told->history && lag->to_h > lag->air.after_h[lag->air.count - 1], OC_ASSUME_AIR_STAYS},
      {told->start == OC_ASSUMED && isnan(told->stop_c), OC_ASSUME_STOP},
      {told->start == OC_ASSUMED && !isnan(told->stop_c), OC_ASSUME_STOP_LIMIT},
      {lag->from_h > 0, OC_ASSUME_START},
      {told->tau_low_h == 0 && told->tau_high_h == 0, OC_ASSUME_TAU},
      {told->allow_k == 0, OC_ASSUME_ALLOW},
      {!soak->undisturbed, OC_ASSUME_STILL},
      {assumes_companions(told), OC_ASSUME_COMPANIONS},
  };
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      oc_finding_assume(finding, all[i].assumption);
}

/* ---- the verdict ---- */

/* The temperature a reading means, its causes through the slope there. A resistance past
 * an end of the curve counts as that end: it is at the least so cold, or so hot. */
static bool take_shown(struct oc_soak *soak) {
  const struct oc_measurement *measurement = &soak->measurement;
  double low_c, high_c, t_c, alpha_per_k;
  ohm_curve_range(measurement->curve, &low_c, &high_c, NULL, NULL);
  bool inside = ohm_curve_temperature(measurement->curve, measurement->read.value, &t_c) == OHM_OK;
  if (!inside) {
    bool above = measurement->read.value > oc_curve_resistance_beyond(measurement->curve, low_c);
    t_c = above == oc_curve_falls(measurement->curve) ? low_c : high_c;
  }
  ohm_curve_alpha(measurement->curve, t_c, &alpha_per_k);
  double ohm_per_k = fabs(alpha_per_k) * oc_curve_resistance_beyond(measurement->curve, t_c);
  double heating_k = measurement->element.value - measurement->bath.value;
  soak->shown = oc_budget_of(t_c - heating_k);
  for (size_t i = 0; i < measurement->read.count; i++)
    oc_budget_add_limit(&soak->shown, measurement->read.causes[i].name,
                        oc_cause_limit(&measurement->read.causes[i]) / ohm_per_k);
  for (size_t i = 0; i < measurement->element.count; i++)
    if (measurement->element.causes[i].name == OC_CAUSE_HEATING)
      oc_budget_add_limit(&soak->shown, OC_CAUSE_HEATING,
                          oc_cause_limit(&measurement->element.causes[i]));
  return inside;
}

/* Whether a pull-up in parallel makes the coolant's own resistance that of the reading. */
static bool fits_plug_on(const struct oc_soak *soak, double coolant_c) {
  double sound_ohm = oc_curve_resistance_beyond(soak->measurement.curve, coolant_c);
  double across_s = 1 / soak->measurement.read.value - 1 / sound_ohm;
  return oc_inside(1 / OC_GREATEST_PULL_UP_OHM, across_s, 1 / OC_LEAST_PULL_UP_OHM);
}

static void set_warm(ohm_finding *finding, const struct oc_soak *soak) {
  ohm_place place = soak->measurement.place;
  bool plug_may_be_on = place == OHM_PLACE_NOT_TOLD || place == OHM_PLACE_PLUG_ON;
  if (!soak->undisturbed)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_WARM);
  else if (plug_may_be_on && fits_plug_on(soak, ohm_finding_number(finding, OHM_FIELD_AT_C)))
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else
    oc_finding_set_verdict(finding, OHM_OUTSIDE,
                           oc_curve_falls(soak->measurement.curve) ? OHM_REASON_LOW
                                                                   : OHM_REASON_HIGH);
}

struct sides {
  double cold;
  double warm;
};

/* Probabilities of what it shows being further from the coolant than is allowed. */
static struct sides sides_of(struct oc_soak *soak) {
  struct oc_off off = {&soak->lag, &soak->shown, -soak->allow_k, soak->allow_k};
  double outside[OC_MEANS_MAX];
  oc_cooling_mean(soak->lag.tau.low_h, soak->lag.tau.high_h, oc_off_outside, &off, 2, outside);
  double cold = fmin(fmax(outside[0], 0), 1);
  return (struct sides){cold, fmin(fmax(outside[1], 0), 1 - cold)};
}

static void decide(ohm_finding *finding, struct oc_soak *soak, bool inside_curve) {
  bool falls = oc_curve_falls(soak->measurement.curve);
  double level = soak->measurement.level;
  struct sides p = sides_of(soak);
  double p_within = 1 - p.cold - p.warm;
  tell(finding, OHM_FIELD_P_COLD, p.cold);
  tell(finding, OHM_FIELD_P_WARM, p.warm);
  tell(finding, falls ? OHM_FIELD_P_HIGH : OHM_FIELD_P_LOW, p.cold);
  tell(finding, falls ? OHM_FIELD_P_LOW : OHM_FIELD_P_HIGH, p.warm);
  tell(finding, OHM_FIELD_P_WITHIN, p_within);
  if (soak->measurement.place == OHM_PLACE_PLUG_ON)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else if (p.cold >= level)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, falls ? OHM_REASON_HIGH : OHM_REASON_LOW);
  else if (p.warm >= level)
    set_warm(finding, soak);
  else if (!inside_curve)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OUTSIDE_BAND);
  else if (p_within >= level)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* ---- how long it should stand ---- */

/* Whether a sensor that reads in the middle of what is left would pass. */
static bool decides(struct oc_soak *soak) {
  double level = soak->measurement.level;
  double low_k = oc_off_quantile(&soak->lag, &soak->shown, (1 - level) / 2);
  double high_k = oc_off_quantile(&soak->lag, &soak->shown, (1 + level) / 2);
  return (high_k - low_k) / 2 <= soak->allow_k;
}

/* Whether what it shows would. */
static bool passes(struct oc_soak *soak) {
  struct sides p = sides_of(soak);
  return 1 - p.cold - p.warm >= soak->measurement.level;
}

static bool true_at(struct oc_soak *soak, bool (*is_true)(struct oc_soak *soak), double to_h) {
  double now_h = soak->lag.to_h;
  soak->lag.to_h = to_h;
  oc_lag_forget(&soak->lag);
  bool answer = is_true(soak);
  soak->lag.to_h = now_h;
  oc_lag_forget(&soak->lag);
  return answer;
}

/* From when on, the air as it is now; NAN: not while anyone waits. */
static double hours_until(struct oc_soak *soak, bool (*is_true)(struct oc_soak *soak)) {
  double early_h = soak->lag.to_h;
  double enough_h = fmax(early_h, OC_PATIENCE_H);
  if (is_true(soak))
    return early_h;
  if (!true_at(soak, is_true, enough_h))
    return NAN;
  while (enough_h - early_h > 0.05) {
    double middle_h = early_h + (enough_h - early_h) / 2;
    if (true_at(soak, is_true, middle_h))
      enough_h = middle_h;
    else
      early_h = middle_h;
  }
  return enough_h;
}

/* ---- what a soak cannot see ---- */

/* A cold sensor seems to be what ohms in series make of a sound one. */
static void tell_missed(ohm_finding *finding, struct oc_soak *soak) {
  const struct oc_measurement *measurement = &soak->measurement;
  double level = measurement->level;
  double missed_k = fmax(0, -oc_off_quantile(&soak->lag, &soak->shown, 1 - level));
  tell(finding, OHM_FIELD_MISSED_COLD_K, missed_k);
  if (!oc_curve_falls(measurement->curve))
    return;
  struct oc_tolerance tolerance;
  struct oc_exposure exposure;
  oc_measurement_expose(measurement, &tolerance, &exposure);
  double shown_c = soak->shown.value;
  double series_ohm = oc_curve_resistance_beyond(measurement->curve, shown_c) -
                      oc_curve_resistance_beyond(measurement->curve, shown_c + missed_k);
  double late_k = oc_hidden_late_by(&exposure, series_ohm);
  double fifty_late_k = oc_hidden_late_by(&exposure, OC_ASSUMED_HIDDEN_OHM);
  tell(finding, OHM_FIELD_SERIES_OHM, series_ohm);
  tell(finding, OHM_FIELD_SERIES_SOUND_LATE_K, isfinite(late_k) ? late_k : NAN);
  tell(finding, OHM_FIELD_FIFTY_LATE_K, isfinite(fifty_late_k) ? fifty_late_k : NAN);
  oc_finding_set_job(finding, OHM_UNDECIDED,
                     late_k <= measurement->limit_k ? OHM_JOB_UNCERTAIN : OHM_JOB_HIDDEN);
}

/* Return  whether it shows a temperature, to be held against those of others. */
static bool judge(ohm_finding *finding, struct oc_soak *soak) {
  const struct oc_measurement *measurement = &soak->measurement;
  switch (measurement->reading->display) {
  case OC_DISPLAY_OPEN:
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_OPEN);
    return false;
  case OC_DISPLAY_OVER:
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OVER_RANGE);
    return false;
  case OC_DISPLAY_ONE:
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_LONE_ONE);
    return false;
  default:
    break;
  }
  if (oc_measurement_misses_k(measurement)) {
    tell(finding, OHM_FIELD_SUGGESTED_OHM, 1000 * measurement->reading->r_ohm);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MISSING_K);
  } else if (oc_measurement_is_shorted(measurement)) {
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SHORTED);
  } else {
    bool inside_curve = take_shown(soak);
    decide(finding, soak, inside_curve);
    bool plug_on = measurement->place == OHM_PLACE_PLUG_ON;
    tell(finding, OHM_FIELD_DECIDABLE_H, hours_until(soak, decides));
    if (!inside_curve || plug_on)
      return false;
    tell(finding, OHM_FIELD_PASSES_H, hours_until(soak, passes));
    tell_missed(finding, soak);
    return true;
  }
  return false;
}

/* ---- together ---- */

ohm_status oc_soak_check(const ohm_sensor *sensor, const oc_reading *reading, const oc_meter *meter,
                         const oc_reference *air, const oc_soak_told *told, const oc_check *check,
                         ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (!sensor || !reading || !told || !finding)
    return OHM_NULL_ARGUMENT;
  struct oc_soak soak;
  memset(&soak, 0, sizeof soak);
  ohm_status status = take_soak(&soak, air, told);
  if (status != OHM_OK)
    return status;
  struct oc_budget nothing = oc_budget_of(0);
  oc_reference coolant = OC_REFERENCE_INIT;
  coolant.accuracy = OC_EXACT;
  coolant.t_c = -oc_off_summary_of(&soak.lag, &nothing).mean_k;
  status = oc_measurement_ask(&soak.measurement, sensor, reading, meter, &coolant, check);
  if (status != OHM_OK)
    return status;
  oc_finding_set_about(finding, OHM_VERB_SOAK);
  oc_told_reading(finding, &soak.measurement);
  tell_told(finding, &soak, told);
  tell_assumed(finding, &soak, told, air);
  tell(finding, OHM_FIELD_FAN_C, soak.measurement.fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, soak.measurement.limit_k);
  tell_expected(finding, &soak);
  bool shows = judge(finding, &soak);
  if (told->companion_count > 0 && shows)
    oc_companions_tell(finding, &soak, told);
  return OHM_OK;
}

/* ---- the verb ---- */

static ohm_status take_companion(oc_soak_told *told, oc_companion *companions,
                                 const struct oc_bench_reading *reading, ohm_error *error) {
  if (told->companion_count == OC_ODD_MAX - 1)
    return oc_fail(error, OHM_TOO_LARGE,
                   "more than 8 other sensors of the car: leave out those far ", "from the engine",
                   (const char *)NULL);
  oc_companion companion = OC_COMPANION_INIT;
  companion.kind = (int)reading->companion;
  companion.t_c = reading->at.t_c;
  companion.limit_k = reading->at.accuracy == OC_ASSUMED ? NAN : reading->at.limit_k;
  companions[told->companion_count++] = companion;
  return OHM_OK;
}

static ohm_status ask_companions(const struct oc_request *ask, oc_soak_told *told,
                                 oc_companion *companions) {
  ohm_status status = OHM_OK;
  told->companions = companions;
  for (size_t i = 0; status == OHM_OK && i < ask->bench->count; i++)
    if (ask->bench->lines[i].reading.kind == OC_READING_COMPANION)
      status = take_companion(told, companions, &ask->bench->lines[i].reading, ask->error);
  return status;
}

/* The hours of a history and of the reading do not go together. */
static ohm_status refuse_hours(const struct oc_request *ask, const char *what, double log_h,
                               double read_h, int decimals, const char *advice) {
  char logged[OHM_NUMBER_SIZE];
  char asked[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(log_h, decimals, logged, sizeof logged);
  ohm_number_print_fixed(read_h, decimals, asked, sizeof asked);
  return oc_fail(ask->error, OHM_OUT_OF_RANGE, what, logged,
                 " h after the stop and the reading is of ", asked, advice, (const char *)NULL);
}

static ohm_status ask_hours(const struct oc_request *ask, const oc_soak_told *told) {
  double first_h;
  double last_h;
  const ohm_history *history = told->history;
  if (!history)
    return told->after_h > 0
               ? OHM_OK
               : oc_fail(ask->error, OHM_NOT_FOUND,
                         "how long the car stood is missing: set after_h, ",
                         "such as 7h, or use a history of the air", (const char *)NULL);
  ohm_history_point(history, 0, &first_h, NULL);
  ohm_history_point(history, ohm_history_count(history) - 1, &last_h, NULL);
  double read_h = told->after_h > 0 ? told->after_h : last_h;
  if (read_h < first_h || !(read_h > 0))
    return refuse_hours(ask, "the history begins ", first_h, read_h, 2,
                        " h: set after_h to when the sensor was read, in hours after the stop, as "
                        "those of the history are");
  if (told->extend || read_h <= last_h)
    return OHM_OK;
  return refuse_hours(ask, "the history ends ", last_h, read_h, 2,
                      " h: read earlier, or set extend when the air stayed as it was");
}

static ohm_status ask_told(const struct oc_request *ask, oc_soak_told *told) {
  const char *stop = ask->bench->settings[OHM_SETTING_STOP];
  const char *tau = ask->bench->settings[OHM_SETTING_TAU];
  oc_reference stopped;
  struct oc_span span;
  told->history = ask->bench->history;
  told->after_h = oc_request_number(ask, OHM_SETTING_AFTER_H, 0);
  told->extend = oc_request_number(ask, OHM_SETTING_EXTEND, 0) != 0;
  told->undisturbed = oc_request_number(ask, OHM_SETTING_UNDISTURBED, 0) != 0;
  told->allow_k = oc_request_number(ask, OHM_SETTING_ALLOW_K, 0);
  if (stop && oc_notation_thermometer(stop, &stopped, NULL) == OHM_OK) {
    told->stop_c = stopped.t_c;
    told->stop_limit_k = stopped.limit_k;
    told->start = stopped.accuracy;
  }
  if (tau && oc_notation_tau(tau, &span, NULL) == OHM_OK) {
    told->tau_low_h = span.low_h;
    told->tau_high_h = span.high_h;
  }
  return ask_hours(ask, told);
}

/* The air by the setting; NULL with a history alone. */
static const oc_reference *ask_air(const struct oc_request *ask, oc_reference *air) {
  const char *text = ask->bench->settings[OHM_SETTING_AIR];
  double u_k = oc_request_number(ask, OHM_SETTING_U_AIR_K, 0);
  if (!text && u_k == 0)
    return NULL;
  *air = (oc_reference)OC_REFERENCE_INIT;
  if (text)
    oc_notation_thermometer(text, air, NULL);
  air->u_k = u_k;
  return air;
}

static ohm_status ask_all(struct oc_request *ask, const ohm_bench *bench, ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "soak", error);
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK)
    status = oc_request_alone(ask);
  if (status == OHM_OK && !bench->settings[OHM_SETTING_AIR] && !bench->history)
    status = oc_fail(error, OHM_NOT_FOUND, "the air is missing: set air, such as 9C+-2, or use a ",
                     "history of it", (const char *)NULL);
  ask->check.tolerance_percent = 0;
  return status;
}

ohm_answer *ohm_bench_soak(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  oc_soak_told told = OC_SOAK_TOLD_INIT;
  oc_companion companions[OC_ODD_MAX];
  oc_reference air;
  ohm_status status = ask_all(&ask, bench, error);
  if (status == OHM_OK)
    status = ask_told(&ask, &told);
  if (status == OHM_OK)
    status = ask_companions(&ask, &told, companions);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  if (answer)
    status = oc_request_told(&ask,
                             oc_soak_check(bench->sensor, &ask.readings[0], &ask.meter,
                                           ask_air(&ask, &air), &told, &ask.check, &answer->whole));
  return oc_answer_done(answer, status, error);
}
