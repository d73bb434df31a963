/* SPDX-License-Identifier: MIT */
#include "fan_start.h"

#include "../curves/curve.h"

static double nominal(const void *context, double t_c) {
  const ohm_curve *curve = context;
  return oc_curve_resistance_beyond(curve, t_c);
}

/* Where the curve has a resistance; INFINITY for never up to OC_NEVER_C. */
static double temperature_of(const ohm_curve *curve, double r_ohm) {
  return oc_fault_lateness(nominal, curve, r_ohm, 0);
}

double oc_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor) {
  return temperature_of(curve, oc_curve_resistance_beyond(curve, fan_c) / factor - series_ohm);
}

double oc_start_across(const ohm_curve *curve, double fan_c, double leakage_s) {
  double left_s = 1 / oc_curve_resistance_beyond(curve, fan_c) - leakage_s;
  return left_s > 0 ? temperature_of(curve, 1 / left_s) : -INFINITY;
}

/* ---- the part that was read ---- */

struct standing {
  const struct oc_evidence *part;
  const struct oc_fault *fault;
  double place;
};

static double share_of(const struct oc_band *band, double place) {
  return place < 0 ? log(band->nominal_ohm / band->low_ohm)
                   : log(band->high_ohm / band->nominal_ohm);
}

static double resistance(const void *context, double t_c) {
  const struct standing *standing = context;
  struct oc_band band = oc_tolerance_band(standing->part->curve, &standing->part->tolerance, t_c);
  double log_element = log(band.nominal_ohm) + standing->place * share_of(&band, standing->place);
  return exp(oc_fault_log(standing->fault, log_element, t_c));
}

static double u_of(const struct oc_evidence *part, const struct oc_evidence_reading *reading) {
  double beside_c = reading->at_c + reading->thermometer_k;
  double swing = log(oc_curve_resistance_beyond(part->curve, beside_c)) - reading->log_nominal;
  double square = reading->u_own * reading->u_own + reading->u_display * reading->u_display +
                  reading->u_meter * reading->u_meter + reading->u_leads * reading->u_leads +
                  swing * swing / 3;
  return sqrt(square);
}

/* A series resistance takes nearly all of what was seen, or a leakage all of its conductance. */
static double most_of(enum oc_fault_shape shape, double log_seen) {
  static const double nearly = 1 - 1e-9;
  return shape == OC_FAULT_SERIES    ? nearly * exp(log_seen)
         : shape == OC_FAULT_LEAKAGE ? nearly * exp(-log_seen)
                                     : INFINITY;
}

double oc_start_of_part(const ohm_curve *curve, double fan_c, const struct oc_evidence *part,
                        const struct oc_fault *fault, double off) {
  const struct oc_evidence_reading *hottest = &part->readings[part->hottest];
  double log_seen = hottest->log_ohm + off * u_of(part, hottest);
  struct oc_fault held = {fault->shape, fmin(fault->size, most_of(fault->shape, log_seen))};
  double away = oc_fault_element(&held, log_seen, hottest->at_c) - hottest->log_nominal;
  struct oc_band band = oc_tolerance_band(part->curve, &part->tolerance, hottest->at_c);
  struct standing standing = {part, &held, away / share_of(&band, away)};
  return fan_c +
         oc_fault_lateness(resistance, &standing, oc_curve_resistance_beyond(curve, fan_c), fan_c);
}

struct oc_starts oc_starts_of_part(const ohm_curve *curve, double fan_c,
                                   const struct oc_evidence *part, enum oc_fault_shape shape,
                                   double low, double high) {
  static const double off[] = {-2, 2};
  struct oc_starts starts = {INFINITY, -INFINITY};
  for (int i = low == high ? 2 : 0; i < 4; i++) {
    struct oc_fault fault = {shape, i / 2 ? high : low};
    double start_c = oc_start_of_part(curve, fan_c, part, &fault, off[i % 2]);
    starts.low_c = fmin(starts.low_c, start_c);
    starts.high_c = fmax(starts.high_c, start_c);
  }
  return starts;
}
