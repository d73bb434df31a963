/* SPDX-License-Identifier: MIT */
/*
 * A sensor of a car that stood, against the air. At one time constant everything that is
 * not known adds: what the reading is off by has the distribution of a budget, and its
 * probabilities are means of that over the time constant.
 */
#include <string.h>

#include "bath.h"
#include "history.h"
#include "odd.h"

static const double HOTTEST_C = 1000;
static const double MOST_ALLOWED_K = 100;
/* Waiting longer than this is no advice. */
static const double PATIENCE_H = 72;
static const double SHORTED_OHM = 5;
/* Pull-ups printed for control modules lie between these; see tests/refs/sensor.psv. */
static const double LEAST_PULL_UP_OHM = 350;
static const double GREATEST_PULL_UP_OHM = 20e3;

/* ---- what was asked ---- */

struct span {
  double low_h;
  double high_h;
};

/* A start of which only the limits are known. */
struct start {
  double c;
  double limit_k;
};

enum { MEMORY = 512 };

/* Following the air takes long when there are many points, and the means come back to the
 * same time constants. */
struct memory {
  double tau_h[MEMORY];
  struct ohm_cooled cooled[MEMORY];
};

struct lag {
  struct ohm_air air;
  struct start start;
  struct span tau;
  double from_h;
  double to_h;
  double air_limit_k;
  double air_u_k;
  struct memory memory;
};

struct soak {
  struct ohm_question question;
  double one_h[1]; /* the points of air that never changed */
  double one_c[1];
  struct lag lag; /* of the coolant */
  double allow_k;
  bool undisturbed;
  struct ohm_budget shown; /* temperature the reading means, by cause */
};

static bool is_span(const struct span *span) {
  return 0 < span->low_h && span->low_h <= span->high_h && span->high_h <= OHM_SOAK_MOST_H;
}

static struct span span_or(double low_h, double high_h, enum ohm_soaked kind) {
  static const struct span assumed[] = {
      [OHM_SOAKED_COOLANT] = {OHM_ASSUMED_COOLANT_TAU_LOW_H, OHM_ASSUMED_COOLANT_TAU_HIGH_H},
      [OHM_SOAKED_INTAKE] = {OHM_ASSUMED_INTAKE_TAU_LOW_H, OHM_ASSUMED_INTAKE_TAU_HIGH_H},
      [OHM_SOAKED_OIL] = {OHM_ASSUMED_OIL_TAU_LOW_H, OHM_ASSUMED_OIL_TAU_HIGH_H},
      [OHM_SOAKED_AMBIENT] = {OHM_ASSUMED_AMBIENT_TAU_LOW_H, OHM_ASSUMED_AMBIENT_TAU_HIGH_H}};
  return low_h == 0 && high_h == 0 ? assumed[kind] : (struct span){low_h, high_h};
}

static bool is_soak(const ohm_soak *soak) {
  return soak->size >= sizeof *soak && isfinite(soak->after_h) && soak->after_h >= 0 &&
         ohm_inside(OHM_ASSUMED, soak->start, OHM_EXACT) && isfinite(soak->stop_c) &&
         isfinite(soak->stop_limit_k) && soak->stop_limit_k >= 0 && isfinite(soak->tau_low_h) &&
         soak->tau_low_h >= 0 && isfinite(soak->tau_high_h) && soak->tau_high_h >= 0 &&
         isfinite(soak->allow_k) && soak->allow_k >= 0;
}

static bool is_companion(const ohm_companion *companion) {
  return companion->size >= sizeof *companion &&
         ohm_inside(OHM_SOAKED_COOLANT, companion->kind, OHM_SOAKED_AMBIENT) &&
         isfinite(companion->t_c) && isfinite(companion->limit_k) && companion->limit_k >= 0 &&
         isfinite(companion->tau_low_h) && companion->tau_low_h >= 0 &&
         isfinite(companion->tau_high_h) && companion->tau_high_h >= 0;
}

static ohm_status take_companions(const ohm_soak *soak) {
  if (soak->companion_count > 0 && !soak->companions)
    return OHM_NULL_ARGUMENT;
  if (soak->companion_count >= OHM_ODD_MAX)
    return OHM_TOO_LARGE;
  for (size_t i = 0; i < soak->companion_count; i++) {
    const ohm_companion *companion = &soak->companions[i];
    if (!is_companion(companion))
      return OHM_BAD_ARGUMENT;
    struct span tau =
        span_or(companion->tau_low_h, companion->tau_high_h, (enum ohm_soaked)companion->kind);
    if (!(OHM_ZERO_C < companion->t_c && companion->t_c <= HOTTEST_C) ||
        companion->limit_k > HOTTEST_C || !is_span(&tau))
      return OHM_OUT_OF_RANGE;
  }
  return OHM_OK;
}

static bool is_thermometer(const ohm_reference *air) {
  return air->size >= sizeof *air && air->kind == OHM_REFERENCE_THERMOMETER &&
         ohm_inside(OHM_ASSUMED, air->accuracy, OHM_EXACT) && isfinite(air->t_c) &&
         ohm_inside(0, air->limit_k, HOTTEST_C) && ohm_inside(0, air->u_k, HOTTEST_C);
}

static ohm_status take_air(struct soak *soak, const ohm_reference *air,
                           const ohm_history *history) {
  struct lag *lag = &soak->lag;
  if (!air && !history)
    return OHM_NULL_ARGUMENT;
  if (air && !is_thermometer(air))
    return OHM_BAD_ARGUMENT;
  if (!history && !(OHM_ZERO_C < air->t_c && air->t_c <= HOTTEST_C))
    return OHM_OUT_OF_RANGE;
  soak->one_h[0] = 0;
  soak->one_c[0] = history ? 0 : air->t_c;
  lag->air = history ? ohm_history_air(history) : (struct ohm_air){1, soak->one_h, soak->one_c};
  bool assumed = !air || air->accuracy == OHM_ASSUMED;
  lag->air_limit_k = assumed                       ? OHM_ASSUMED_THERMOMETER_LIMIT_K
                     : air->accuracy == OHM_STATED ? air->limit_k
                                                   : 0;
  lag->air_u_k = !assumed && air->accuracy == OHM_STATED ? air->u_k : 0;
  return OHM_OK;
}

/* From the stop, or from the first that is known of the air, to the reading. */
static ohm_status take_times(struct soak *soak, const ohm_soak *told) {
  struct lag *lag = &soak->lag;
  double last_h = lag->air.after_h[lag->air.count - 1];
  lag->to_h = told->after_h > 0 ? told->after_h : last_h;
  lag->from_h = told->history ? fmax(0, lag->air.after_h[0]) : 0;
  bool reaches = !told->history || told->extend || lag->to_h <= last_h;
  return 0 < lag->to_h && lag->to_h <= OHM_SOAK_MOST_H && lag->from_h <= lag->to_h && reaches
             ? OHM_OK
             : OHM_OUT_OF_RANGE;
}

/* A history that begins after the stop leaves the start anywhere from its air to the stop. */
static struct start start_between(const struct lag *lag, double stop_c, double stop_limit_k) {
  double air_c = ohm_air_at(&lag->air, lag->from_h);
  double one_c = air_c - lag->air_limit_k;
  double other_c = stop_c + stop_limit_k;
  if (stop_c < air_c) {
    one_c = stop_c - stop_limit_k;
    other_c = air_c + lag->air_limit_k;
  }
  return (struct start){(one_c + other_c) / 2, fabs(other_c - one_c) / 2};
}

static struct start stop_of(const ohm_soak *told) {
  if (told->start == OHM_STATED)
    return (struct start){told->stop_c, told->stop_limit_k};
  if (told->start == OHM_EXACT)
    return (struct start){told->stop_c, 0};
  return told->stop_c == 0 ? (struct start){OHM_ASSUMED_STOP_C, OHM_ASSUMED_STOP_LIMIT_K}
                           : (struct start){told->stop_c, OHM_ASSUMED_STOP_TOLD_LIMIT_K};
}

static ohm_status take_start(struct soak *soak, const ohm_soak *told) {
  struct lag *lag = &soak->lag;
  struct start stop = stop_of(told);
  lag->tau = span_or(told->tau_low_h, told->tau_high_h, OHM_SOAKED_COOLANT);
  if (!(OHM_ZERO_C < stop.c && stop.c <= HOTTEST_C) || stop.limit_k > HOTTEST_C ||
      !is_span(&lag->tau))
    return OHM_OUT_OF_RANGE;
  lag->start = lag->from_h > 0 ? start_between(lag, stop.c, stop.limit_k) : stop;
  return OHM_OK;
}

static ohm_status take_soak(struct soak *soak, const ohm_reference *air, const ohm_soak *told) {
  if (!is_soak(told))
    return OHM_BAD_ARGUMENT;
  if (told->allow_k > MOST_ALLOWED_K)
    return OHM_OUT_OF_RANGE;
  soak->allow_k = told->allow_k == 0 ? OHM_ASSUMED_SOAK_ALLOW_K : told->allow_k;
  soak->undisturbed = told->undisturbed != 0;
  ohm_status status = take_air(soak, air, told->history);
  if (status == OHM_OK)
    status = take_times(soak, told);
  if (status == OHM_OK)
    status = take_start(soak, told);
  return status == OHM_OK ? take_companions(told) : status;
}

/* ---- where the coolant has come to ---- */

static struct ohm_cooled follow(struct lag *lag, double tau_h) {
  unsigned long long bits;
  memcpy(&bits, &tau_h, sizeof bits);
  size_t slot = (size_t)(bits * 0x9E3779B97F4A7C15u >> 55);
  struct memory *memory = &lag->memory;
  if (memory->tau_h[slot] != tau_h) {
    memory->tau_h[slot] = tau_h;
    memory->cooled[slot] =
        ohm_cooling_follow(&lag->air, lag->start.c, lag->from_h, lag->to_h, tau_h);
  }
  return memory->cooled[slot];
}

static void forget(struct lag *lag) {
  memset(lag->memory.tau_h, 0, sizeof lag->memory.tau_h);
}

/* At one time constant; tau is above 0, so that an empty memory is never met. */
static struct ohm_budget come_to(struct lag *lag, double tau_h) {
  struct ohm_cooled cooled = follow(lag, tau_h);
  struct ohm_budget budget = ohm_budget_of(cooled.t_c);
  ohm_budget_add_limit(&budget, OHM_CAUSE_START, lag->start.limit_k * cooled.start_share);
  ohm_budget_add_limit(&budget, OHM_CAUSE_REFERENCE_LIMIT,
                       lag->air_limit_k * (1 - cooled.start_share));
  ohm_budget_add_normal(&budget, OHM_CAUSE_REFERENCE_NOISE, lag->air_u_k * cooled.noise_share);
  return budget;
}

/* A temperature shown, less what the coolant has come to. */
struct off {
  struct lag *lag;
  const struct ohm_budget *shown;
  double low_k;
  double high_k;
};

static struct ohm_budget off_at(const struct off *off, double tau_h) {
  struct ohm_budget budget = come_to(off->lag, tau_h);
  budget.value = off->shown->value - budget.value;
  for (size_t i = 0; i < off->shown->count; i++) {
    const struct ohm_cause *cause = &off->shown->causes[i];
    if (cause->shape == OHM_NORMAL)
      ohm_budget_add_normal(&budget, cause->name, cause->u);
    else
      ohm_budget_add_limit(&budget, cause->name, ohm_cause_limit(cause));
  }
  return budget;
}

/* Probabilities of lying below the lower and above the upper. */
static void outside_both(const void *context, double tau_h, double *values) {
  const struct off *off = context;
  struct ohm_budget budget = off_at(off, tau_h);
  struct ohm_spread spread = ohm_spread_of(&budget);
  values[0] = ohm_spread_below(&spread, off->low_k);
  spread.value = -spread.value;
  values[1] = ohm_spread_below(&spread, -off->high_k);
}

/* Mean and variance about a guess, so that large squares do not cancel. */
struct moments {
  struct off off;
  double guess_k;
};

static void moments_at(const void *context, double tau_h, double *values) {
  const struct moments *moments = context;
  struct ohm_budget budget = off_at(&moments->off, tau_h);
  struct ohm_cooled cooled = follow(moments->off.lag, tau_h);
  double from_k = budget.value - moments->guess_k;
  double u_k = ohm_budget_u(&budget);
  values[0] = from_k;
  values[1] = from_k * from_k + u_k * u_k;
  values[2] = cooled.start_share;
  values[3] = cooled.start_share * cooled.start_share;
}

struct summary {
  double mean_k;
  double u_k;
  double start_share;
  double start_square;
};

static struct summary summary_of(struct lag *lag, const struct ohm_budget *shown) {
  struct moments moments = {{lag, shown, 0, 0}, 0};
  double means[OHM_MEANS_MAX];
  moments.guess_k = off_at(&moments.off, lag->tau.low_h).value;
  ohm_cooling_mean(lag->tau.low_h, lag->tau.high_h, moments_at, &moments, 4, means);
  return (struct summary){moments.guess_k + means[0], sqrt(fmax(0, means[1] - means[0] * means[0])),
                          means[2], means[3]};
}

static double off_below(struct off *off, double x_k) {
  double means[OHM_MEANS_MAX];
  off->low_k = off->high_k = x_k;
  ohm_cooling_mean(off->lag->tau.low_h, off->lag->tau.high_h, outside_both, off, 2, means);
  return means[0];
}

/* The p-quantile of what is off. */
static double off_quantile(struct lag *lag, const struct ohm_budget *shown, double p) {
  struct off off = {lag, shown, 0, 0};
  struct summary summary = summary_of(lag, shown);
  double reach_k = 2 * summary.u_k + 1e-6;
  double low_k = summary.mean_k - reach_k;
  double high_k = summary.mean_k + reach_k;
  for (; off_below(&off, low_k) > p && reach_k < 1e6; low_k -= reach_k)
    reach_k *= 2;
  for (; off_below(&off, high_k) < p && reach_k < 1e6; high_k += reach_k)
    reach_k *= 2;
  while (high_k - low_k > 1e-7 * fmax(1, summary.u_k)) {
    double middle_k = low_k + (high_k - low_k) / 2;
    if (off_below(&off, middle_k) < p)
      low_k = middle_k;
    else
      high_k = middle_k;
  }
  return low_k + (high_k - low_k) / 2;
}

/* ---- telling what was expected ---- */

static void tell(ohm_finding *finding, ohm_field field, double value) {
  ohm_finding_set_number(finding, field, value);
}

static double coldest_air(const struct lag *lag) {
  double coldest_c = fmin(ohm_air_at(&lag->air, lag->from_h), ohm_air_at(&lag->air, lag->to_h));
  for (size_t i = 0; i < lag->air.count; i++)
    if (ohm_inside(lag->from_h, lag->air.after_h[i], lag->to_h))
      coldest_c = fmin(coldest_c, lag->air.t_c[i]);
  return coldest_c - lag->air_limit_k;
}

static void tell_expected(ohm_finding *finding, struct soak *soak) {
  struct lag *lag = &soak->lag;
  double level = soak->question.level;
  struct ohm_budget nothing = ohm_budget_of(0);
  struct summary coolant = summary_of(lag, &nothing);
  tell(finding, OHM_FIELD_AT_C, -coolant.mean_k);
  tell(finding, OHM_FIELD_U_AT_C, coolant.u_k);
  tell(finding, OHM_FIELD_EXPECTED_OHM,
       ohm_curve_resistance_beyond(soak->question.curve, -coolant.mean_k));
  tell(finding, OHM_FIELD_COOLANT_LOW_C, -off_quantile(lag, &nothing, (1 + level) / 2));
  tell(finding, OHM_FIELD_COOLANT_HIGH_C, -off_quantile(lag, &nothing, (1 - level) / 2));
}

static void tell_told(ohm_finding *finding, const struct soak *soak, const ohm_soak *told) {
  const struct lag *lag = &soak->lag;
  tell(finding, OHM_FIELD_AFTER_H, lag->to_h);
  tell(finding, OHM_FIELD_STOP_C, stop_of(told).c);
  tell(finding, OHM_FIELD_STOP_LIMIT_K, stop_of(told).limit_k);
  tell(finding, OHM_FIELD_TAU_LOW_H, lag->tau.low_h);
  tell(finding, OHM_FIELD_TAU_HIGH_H, lag->tau.high_h);
  tell(finding, OHM_FIELD_AIR_C, ohm_air_at(&lag->air, lag->to_h));
  tell(finding, OHM_FIELD_AIR_LIMIT_K, lag->air_limit_k);
  tell(finding, OHM_FIELD_COLDEST_C, coldest_air(lag));
  tell(finding, OHM_FIELD_ALLOW_K, soak->allow_k);
}

static bool assumes_companions(const ohm_soak *told) {
  for (size_t i = 0; i < told->companion_count; i++)
    if (told->companions[i].limit_k == 0)
      return true;
  return false;
}

static void tell_assumed(ohm_finding *finding, const struct soak *soak, const ohm_soak *told,
                         const ohm_reference *air) {
  const struct lag *lag = &soak->lag;
  const struct {
    bool taken;
    enum ohm_assumption assumption;
  } all[] = {
      {!air || air->accuracy == OHM_ASSUMED, OHM_ASSUME_AIR},
      {told->history && lag->to_h > lag->air.after_h[lag->air.count - 1], OHM_ASSUME_AIR_STAYS},
      {told->start == OHM_ASSUMED && told->stop_c == 0, OHM_ASSUME_STOP},
      {told->start == OHM_ASSUMED && told->stop_c != 0, OHM_ASSUME_STOP_LIMIT},
      {lag->from_h > 0, OHM_ASSUME_START},
      {told->tau_low_h == 0 && told->tau_high_h == 0, OHM_ASSUME_TAU},
      {told->allow_k == 0, OHM_ASSUME_ALLOW},
      {!soak->undisturbed, OHM_ASSUME_STILL},
      {assumes_companions(told), OHM_ASSUME_COMPANIONS},
  };
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      ohm_finding_assume(finding, all[i].assumption);
}

/* ---- the verdict ---- */

/* The temperature a reading means, its causes through the slope there. A resistance past
 * an end of the curve counts as that end: it is at the least so cold, or so hot. */
static bool take_shown(struct soak *soak) {
  const struct ohm_question *question = &soak->question;
  double low_c, high_c, t_c, alpha_per_k;
  ohm_curve_range(question->curve, &low_c, &high_c, NULL, NULL);
  bool inside = ohm_curve_temperature(question->curve, question->read.value, &t_c) == OHM_OK;
  if (!inside) {
    bool above = question->read.value > ohm_curve_resistance_beyond(question->curve, low_c);
    t_c = above == ohm_curve_falls(question->curve) ? low_c : high_c;
  }
  ohm_curve_alpha(question->curve, t_c, &alpha_per_k);
  double ohm_per_k = fabs(alpha_per_k) * ohm_curve_resistance_beyond(question->curve, t_c);
  double heating_k = question->element.value - question->bath.value;
  soak->shown = ohm_budget_of(t_c - heating_k);
  for (size_t i = 0; i < question->read.count; i++)
    ohm_budget_add_limit(&soak->shown, question->read.causes[i].name,
                         ohm_cause_limit(&question->read.causes[i]) / ohm_per_k);
  for (size_t i = 0; i < question->element.count; i++)
    if (question->element.causes[i].name == OHM_CAUSE_HEATING)
      ohm_budget_add_limit(&soak->shown, OHM_CAUSE_HEATING,
                           ohm_cause_limit(&question->element.causes[i]));
  return inside;
}

/* Whether a pull-up in parallel makes the coolant's own resistance that of the reading. */
static bool fits_plug_on(const struct soak *soak, double coolant_c) {
  double sound_ohm = ohm_curve_resistance_beyond(soak->question.curve, coolant_c);
  double across_s = 1 / soak->question.read.value - 1 / sound_ohm;
  return ohm_inside(1 / GREATEST_PULL_UP_OHM, across_s, 1 / LEAST_PULL_UP_OHM);
}

static void set_warm(ohm_finding *finding, const struct soak *soak) {
  ohm_place place = soak->question.place;
  bool plug_may_be_on = place == OHM_PLACE_NOT_TOLD || place == OHM_PLACE_PLUG_ON;
  if (!soak->undisturbed)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_WARM);
  else if (plug_may_be_on && fits_plug_on(soak, ohm_finding_number(finding, OHM_FIELD_AT_C)))
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else
    ohm_finding_set_verdict(finding, OHM_OUTSIDE,
                            ohm_curve_falls(soak->question.curve) ? OHM_REASON_LOW
                                                                  : OHM_REASON_HIGH);
}

static void decide(ohm_finding *finding, struct soak *soak, bool inside_curve) {
  bool falls = ohm_curve_falls(soak->question.curve);
  double level = soak->question.level;
  struct off off = {&soak->lag, &soak->shown, -soak->allow_k, soak->allow_k};
  double outside[OHM_MEANS_MAX];
  ohm_cooling_mean(soak->lag.tau.low_h, soak->lag.tau.high_h, outside_both, &off, 2, outside);
  double p_cold = fmin(fmax(outside[0], 0), 1);
  double p_warm = fmin(fmax(outside[1], 0), 1 - p_cold);
  double p_within = 1 - p_cold - p_warm;
  tell(finding, OHM_FIELD_P_COLD, p_cold);
  tell(finding, OHM_FIELD_P_WARM, p_warm);
  tell(finding, falls ? OHM_FIELD_P_HIGH : OHM_FIELD_P_LOW, p_cold);
  tell(finding, falls ? OHM_FIELD_P_LOW : OHM_FIELD_P_HIGH, p_warm);
  tell(finding, OHM_FIELD_P_WITHIN, p_within);
  if (soak->question.place == OHM_PLACE_PLUG_ON)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_PLUG_ON);
  else if (p_cold >= level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, falls ? OHM_REASON_HIGH : OHM_REASON_LOW);
  else if (p_warm >= level)
    set_warm(finding, soak);
  else if (!inside_curve)
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OUTSIDE_BAND);
  else if (p_within >= level)
    ohm_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* Whether a sensor that reads in the middle of what is left would pass. */
static bool decides(struct lag *lag, const struct ohm_budget *shown, double level, double allow_k) {
  double low_k = off_quantile(lag, shown, (1 - level) / 2);
  double high_k = off_quantile(lag, shown, (1 + level) / 2);
  return (high_k - low_k) / 2 <= allow_k;
}

static double decidable_h(struct soak *soak) {
  struct lag *lag = &soak->lag;
  double level = soak->question.level;
  double now_h = lag->to_h;
  double enough_h = fmax(now_h, PATIENCE_H);
  double early_h = now_h;
  if (decides(lag, &soak->shown, level, soak->allow_k))
    return now_h;
  lag->to_h = enough_h;
  forget(lag);
  bool ever = decides(lag, &soak->shown, level, soak->allow_k);
  while (ever && enough_h - early_h > 0.05) {
    lag->to_h = early_h + (enough_h - early_h) / 2;
    forget(lag);
    if (decides(lag, &soak->shown, level, soak->allow_k))
      enough_h = lag->to_h;
    else
      early_h = lag->to_h;
  }
  lag->to_h = now_h;
  forget(lag);
  return ever ? enough_h : NAN;
}

/* ---- what a soak cannot see ---- */

/* A cold sensor seems to be what ohms in series make of a sound one. */
static void tell_missed(ohm_finding *finding, struct soak *soak) {
  const struct ohm_question *question = &soak->question;
  double level = question->level;
  double missed_k = fmax(0, -off_quantile(&soak->lag, &soak->shown, 1 - level));
  tell(finding, OHM_FIELD_MISSED_COLD_K, missed_k);
  if (!ohm_curve_falls(question->curve))
    return;
  struct ohm_tolerance tolerance;
  struct ohm_exposure exposure;
  ohm_question_expose(question, &tolerance, &exposure);
  double shown_c = soak->shown.value;
  double series_ohm = ohm_curve_resistance_beyond(question->curve, shown_c) -
                      ohm_curve_resistance_beyond(question->curve, shown_c + missed_k);
  double late_k = ohm_hidden_late_by(&exposure, series_ohm);
  double fifty_late_k = ohm_hidden_late_by(&exposure, 50);
  tell(finding, OHM_FIELD_SERIES_OHM, series_ohm);
  tell(finding, OHM_FIELD_SERIES_SOUND_LATE_K, isfinite(late_k) ? late_k : NAN);
  tell(finding, OHM_FIELD_FIFTY_LATE_K, isfinite(fifty_late_k) ? fifty_late_k : NAN);
  ohm_finding_set_job(finding, OHM_UNDECIDED,
                      late_k <= question->limit_k ? OHM_JOB_UNCERTAIN : OHM_JOB_HIDDEN);
}

static void judge(ohm_finding *finding, struct soak *soak) {
  const struct ohm_question *question = &soak->question;
  switch (question->reading->display) {
  case OHM_DISPLAY_OPEN:
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_OPEN);
    return;
  case OHM_DISPLAY_OVER:
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_OVER_RANGE);
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
  } else if (question->read.value < SHORTED_OHM &&
             question->read.value < ohm_finding_number(finding, OHM_FIELD_EXPECTED_OHM) / 10) {
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_SHORTED);
  } else {
    bool inside_curve = take_shown(soak);
    decide(finding, soak, inside_curve);
    tell(finding, OHM_FIELD_DECIDABLE_H, decidable_h(soak));
    if (inside_curve && question->place != OHM_PLACE_PLUG_ON)
      tell_missed(finding, soak);
  }
}

/* ---- several sensors ---- */

/* The start is one error for coolant and oil; what breathes the air began anywhere
 * between it and the coolant. */
static bool starts_as_coolant(int kind) {
  return kind == OHM_SOAKED_COOLANT || kind == OHM_SOAKED_OIL;
}

static struct ohm_member member_of(struct lag *lag, const struct ohm_budget *shown, int kind) {
  double start_u_k = lag->start.limit_k / sqrt(3);
  double air_limit_k = lag->air_limit_k;
  lag->air_limit_k = 0; /* eliminated */
  forget(lag);
  struct summary summary = summary_of(lag, shown);
  lag->air_limit_k = air_limit_k;
  bool common = starts_as_coolant(kind);
  double common_k = common ? start_u_k * summary.start_share : 0;
  return (struct ohm_member){summary.mean_k,
                             sqrt(fmax(0, summary.u_k * summary.u_k - common_k * common_k)),
                             1 - summary.start_share, common_k};
}

static struct ohm_member member_of_companion(const struct soak *soak, const ohm_companion *told,
                                             struct lag *lag) {
  double limit_k = told->limit_k == 0 ? OHM_ASSUMED_THERMOMETER_LIMIT_K : told->limit_k;
  struct ohm_budget shown = ohm_budget_of(told->t_c);
  ohm_budget_add_limit(&shown, OHM_CAUSE_REFERENCE_LIMIT, limit_k);
  *lag = soak->lag;
  lag->tau = span_or(told->tau_low_h, told->tau_high_h, (enum ohm_soaked)told->kind);
  if (!starts_as_coolant(told->kind))
    lag->start = start_between(lag, soak->lag.start.c, soak->lag.start.limit_k);
  return member_of(lag, &shown, told->kind);
}

static void tell_agreement(ohm_finding *finding, struct soak *soak, const ohm_soak *told) {
  struct ohm_member members[OHM_ODD_MAX];
  struct lag lag = soak->lag;
  size_t count = told->companion_count + 1;
  members[0] = member_of(&lag, &soak->shown, OHM_SOAKED_COOLANT);
  for (size_t i = 1; i < count; i++)
    members[i] = member_of_companion(soak, &told->companions[i - 1], &lag);
  struct ohm_odd odd = ohm_odd_of(members, count, soak->question.level);
  tell(finding, OHM_FIELD_P_AGREE, odd.probability);
  bool innocent = odd.odd >= 0 && odd.off_k > 0 && !soak->undisturbed;
  if (odd.agree) {
    ohm_finding_set_agreement(finding, OHM_CONSISTENT);
  } else if (odd.odd < 0 || innocent) {
    ohm_finding_set_agreement(finding, OHM_DISAGREE);
  } else {
    ohm_finding_set_agreement(finding, OHM_ODD_ONE);
    ohm_finding_set_odd(finding, odd.odd == 0 ? OHM_SOAKED_COOLANT
                                              : (ohm_soaked)told->companions[odd.odd - 1].kind);
    tell(finding, OHM_FIELD_ODD_OFF_K, odd.off_k);
  }
}

/* ---- together ---- */

static bool has_temperature(const ohm_finding *finding) {
  return !isnan(ohm_finding_number(finding, OHM_FIELD_MISSED_COLD_K));
}

ohm_status ohm_soak_check(const ohm_sensor *sensor, const ohm_reading *reading,
                          const ohm_meter *meter, const ohm_reference *air, const ohm_soak *told,
                          const ohm_check *check, ohm_finding *finding) {
  if (finding)
    ohm_finding_clear(finding);
  if (!sensor || !reading || !told || !finding)
    return OHM_NULL_ARGUMENT;
  struct soak soak;
  memset(&soak, 0, sizeof soak);
  ohm_status status = take_soak(&soak, air, told);
  if (status != OHM_OK)
    return status;
  struct ohm_budget nothing = ohm_budget_of(0);
  ohm_reference coolant = OHM_REFERENCE_INIT;
  coolant.accuracy = OHM_EXACT;
  coolant.t_c = -summary_of(&soak.lag, &nothing).mean_k;
  status = ohm_question_ask(&soak.question, sensor, reading, meter, &coolant, check);
  if (status != OHM_OK)
    return status;
  ohm_finding_set_about(finding, OHM_ABOUT_SOAK);
  ohm_bath_tell_reading(finding, &soak.question);
  tell_told(finding, &soak, told);
  tell_assumed(finding, &soak, told, air);
  tell(finding, OHM_FIELD_FAN_C, soak.question.fan_c);
  tell(finding, OHM_FIELD_LIMIT_K, soak.question.limit_k);
  tell_expected(finding, &soak);
  judge(finding, &soak);
  if (told->companion_count > 0 && has_temperature(finding))
    tell_agreement(finding, &soak, told);
  return OHM_OK;
}
