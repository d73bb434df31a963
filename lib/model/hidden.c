/* SPDX-License-Identifier: MIT */
/*
 * Three shapes of fault can stand behind a reading R at T: resistance in series (adds),
 * leakage across (shunts), drift (multiplies). The first two hide behind a sensor at
 * the limit of its band: the largest series resistance is the level-quantile of
 * R - low(T), the largest leakage conductance that of 1/R - 1/high(T). A drift does not
 * hide, it is measured: its quantiles are those of R/nominal(T).
 */
#include "hidden.h"

/* Limits and nominal at each node of the temperature. */
struct nodes {
  struct oc_nodes at;
  struct oc_band band[OC_NODES_MAX];
};

/* A sensor with a fault. */
enum element { AT_LOW, AT_NOMINAL, AT_HIGH };

struct faulty {
  enum element element;
  double factor;
  double series_ohm;
  double leakage_s; /* siemens */
};

/* ---- the fan ---- */

/* A faulty sensor, looked at from the fan. */
struct seen {
  const struct oc_exposure *exposure;
  const struct faulty *faulty;
};

static double resistance(const void *context, double t_c) {
  const struct seen *seen = context;
  const struct faulty *faulty = seen->faulty;
  struct oc_band band = oc_tolerance_band(seen->exposure->curve, seen->exposure->tolerance, t_c);
  double element_ohm = faulty->element == AT_LOW    ? band.low_ohm
                       : faulty->element == AT_HIGH ? band.high_ohm
                                                    : band.nominal_ohm;
  double r_ohm = element_ohm * faulty->factor + faulty->series_ohm;
  return 1 / (1 / r_ohm + faulty->leakage_s);
}

/* How late the fan starts: the module sees the nominal resistance of fan_c at another
 * temperature. */
static double lateness(const struct oc_exposure *exposure, const struct faulty *faulty) {
  struct seen seen = {exposure, faulty};
  return oc_fault_lateness(resistance, &seen,
                           oc_curve_resistance_beyond(exposure->curve, exposure->fan_c),
                           exposure->fan_c);
}

static double late_by_series(const struct oc_exposure *exposure, enum element element,
                             double series_ohm) {
  struct faulty faulty = {element, 1, series_ohm, 0};
  return lateness(exposure, &faulty);
}

double oc_hidden_late_by(const struct oc_exposure *exposure, double series_ohm) {
  return late_by_series(exposure, AT_NOMINAL, series_ohm);
}

static double early_by_leakage(const struct oc_exposure *exposure, enum element element,
                               double leakage_s) {
  struct faulty faulty = {element, 1, 0, leakage_s};
  return -lateness(exposure, &faulty);
}

static double late_by_drift(const struct oc_exposure *exposure, double factor) {
  struct faulty faulty = {AT_NOMINAL, factor, 0, 0};
  return lateness(exposure, &faulty);
}

/* ---- the quantiles ---- */

static double edge_above_low(const void *context, size_t node, double q) {
  const struct nodes *nodes = context;
  return nodes->band[node].low_ohm + q;
}

static double edge_of_ratio(const void *context, size_t node, double q) {
  const struct nodes *nodes = context;
  return nodes->band[node].nominal_ohm * q;
}

/* Of the mirrored resistance: 1/R - 1/high <= q is -R <= -1/(q + 1/high). */
static double edge_leak_high(const void *context, size_t node, double q) {
  const struct nodes *nodes = context;
  return -1 / (q + 1 / nodes->band[node].high_ohm);
}

static double series_quantile(const struct oc_exposure *exposure, const struct nodes *nodes,
                              oc_edge_at edge, double p) {
  double most_ohm = 2 * exposure->read.value + 1;
  return oc_quantile_over(&exposure->read, &nodes->at, edge, nodes, 0, most_ohm, p);
}

static double leakage_quantile(const struct oc_exposure *exposure, const struct nodes *nodes,
                               oc_edge_at edge, double p) {
  struct oc_spread mirrored = exposure->read;
  mirrored.value = -mirrored.value;
  double most_s = 2 / fmax(exposure->read.value, 1e-3);
  return oc_quantile_over(&mirrored, &nodes->at, edge, nodes, 0, most_s, p);
}

static double ratio_quantile(const struct oc_exposure *exposure, const struct nodes *nodes,
                             double p) {
  struct oc_band band = nodes->band[0];
  double most = 4 * exposure->read.value / band.nominal_ohm + 4;
  return oc_quantile_over(&exposure->read, &nodes->at, edge_of_ratio, nodes, 1e-6, most, p);
}

/* ---- what is late or early for certain ---- */

/* Whatever stands there, ohms in series, a leakage, a drift or any thermistor of usual beta:
 * from the reading on, what the module sees falls no steeper than the steepest beta, and
 * rises nowhere. */
static double edge_of_start(const struct oc_exposure *exposure, double at_c, double start_c,
                            bool late) {
  double doubt = oc_hidden_beyond_k(exposure) * OC_STEEPEST_BETA_K /
                 (oc_kelvin(exposure->fan_c) * oc_kelvin(exposure->fan_c));
  double start_ohm = oc_curve_resistance_beyond(exposure->curve, exposure->fan_c);
  double way = 1 / oc_kelvin(at_c) - 1 / oc_kelvin(start_c);
  double steepest = exp(OC_STEEPEST_BETA_K * (late ? fmax(0, way) : fmin(0, way)));
  return start_ohm * steepest * exp(late ? doubt : -doubt);
}

/* Read further below the fan's temperature, parts that read alike, but whose beta differs by
 * such a share, start it further apart than the usual limit. */
static bool speaks_for_fan(const struct oc_exposure *exposure, double beta_share) {
  return exposure->at.value >= exposure->fan_c - OC_ASSUMED_FAN_LIMIT_K / beta_share;
}

static bool is_certainly(const struct oc_exposure *exposure, const struct nodes *nodes, bool late) {
  double start_c = exposure->fan_c + (late ? exposure->limit_k : -exposure->limit_k);
  double p = 0;
  if (!speaks_for_fan(exposure, OC_STEEPEST_BETA_K / OC_FLATTEST_BETA_K - 1))
    return false;
  for (size_t i = 0; i < nodes->at.count; i++) {
    double edge_ohm = edge_of_start(exposure, nodes->at.condition[i], start_c, late);
    double below = oc_spread_below(&exposure->read, edge_ohm);
    p += nodes->at.weight[i] * (late ? 1 - below : below);
  }
  return p >= exposure->level;
}

double oc_hidden_beyond_k(const struct oc_exposure *exposure) {
  double low_c;
  double high_c;
  ohm_curve_range(exposure->curve, &low_c, &high_c, NULL, NULL);
  return OC_BEYOND_SHARE * fmax(0, fmax(exposure->fan_c - high_c, low_c - exposure->fan_c));
}

/* ---- together ---- */

static void judge(struct oc_hidden *hidden, const struct oc_exposure *exposure,
                  const struct nodes *nodes, double drift_late_k, double drift_early_k) {
  double limit_k = exposure->limit_k;
  hidden->job = OHM_UNDECIDED;
  hidden->reason = OHM_JOB_UNCERTAIN;
  if (hidden->late_k <= limit_k && hidden->early_k <= limit_k) {
    bool speaks = speaks_for_fan(exposure, OC_MOST_BETA_SHARE);
    hidden->job = speaks ? OHM_WITHIN : OHM_UNDECIDED;
    hidden->reason = speaks ? OHM_JOB_CONFORMS : OHM_JOB_COLD;
  } else if (is_certainly(exposure, nodes, true)) {
    hidden->job = OHM_OUTSIDE;
    hidden->reason = OHM_JOB_LATE;
  } else if (is_certainly(exposure, nodes, false)) {
    hidden->job = OHM_OUTSIDE;
    hidden->reason = OHM_JOB_EARLY;
  } else if (drift_late_k <= limit_k && drift_early_k <= limit_k) {
    hidden->reason = OHM_JOB_HIDDEN;
  }
}

struct oc_hidden oc_hidden_behind(const struct oc_exposure *exposure) {
  struct nodes nodes;
  oc_nodes_of(&exposure->at, &nodes.at);
  for (size_t i = 0; i < nodes.at.count; i++)
    nodes.band[i] = oc_tolerance_band(exposure->curve, exposure->tolerance, nodes.at.condition[i]);
  double level = exposure->level;
  double beyond_k = oc_hidden_beyond_k(exposure);
  double series_ohm = series_quantile(exposure, &nodes, edge_above_low, level);
  double leakage_s = leakage_quantile(exposure, &nodes, edge_leak_high, level);
  double drift_late_k = late_by_drift(exposure, ratio_quantile(exposure, &nodes, level));
  double drift_early_k = -late_by_drift(exposure, ratio_quantile(exposure, &nodes, 1 - level));
  struct oc_hidden hidden = {.series_ohm = series_ohm,
                             .leakage_ohm = leakage_s > 0 ? 1 / leakage_s : INFINITY,
                             .series_late_k = late_by_series(exposure, AT_LOW, series_ohm),
                             .series_sound_late_k = oc_hidden_late_by(exposure, series_ohm),
                             .leakage_early_k = early_by_leakage(exposure, AT_HIGH, leakage_s),
                             .leakage_sound_early_k =
                                 early_by_leakage(exposure, AT_NOMINAL, leakage_s),
                             .fifty_late_k = oc_hidden_late_by(exposure, OC_ASSUMED_HIDDEN_OHM)};
  hidden.late_k = fmax(hidden.series_late_k, drift_late_k) + beyond_k;
  hidden.early_k = fmax(hidden.leakage_early_k, drift_early_k) + beyond_k;
  judge(&hidden, exposure, &nodes, drift_late_k, drift_early_k);
  return hidden;
}
