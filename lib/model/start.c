/* SPDX-License-Identifier: MIT */
#include "start.h"

#include "../curves/curve.h"
#include "hidden.h"

/* Where the curve has a resistance; INFINITY for never up to OC_NEVER_C. */
static double temperature_of(const ohm_curve *curve, double r_ohm) {
  double low_c = OC_COLDEST_START_C;
  double high_c = OC_NEVER_C;
  if (oc_curve_resistance_beyond(curve, high_c) > r_ohm)
    return INFINITY;
  if (oc_curve_resistance_beyond(curve, low_c) < r_ohm)
    return -INFINITY;
  for (int i = 0; i < 60; i++) {
    double middle_c = low_c + (high_c - low_c) / 2;
    if (oc_curve_resistance_beyond(curve, middle_c) > r_ohm)
      low_c = middle_c;
    else
      high_c = middle_c;
  }
  return high_c;
}

double oc_start_behind(const ohm_curve *curve, double fan_c, double series_ohm, double factor) {
  return temperature_of(curve, oc_curve_resistance_beyond(curve, fan_c) / factor - series_ohm);
}

double oc_start_of_other(const ohm_curve *curve, double fan_c, const ohm_curve *other,
                         double factor) {
  return temperature_of(other, oc_curve_resistance_beyond(curve, fan_c) / factor);
}

double oc_start_across(const ohm_curve *curve, double fan_c, double leakage_s) {
  double left_s = 1 / oc_curve_resistance_beyond(curve, fan_c) - leakage_s;
  return left_s > 0 ? temperature_of(curve, 1 / left_s) : -INFINITY;
}

static struct oc_starts between(double a_c, double b_c) {
  return (struct oc_starts){fmin(a_c, b_c), fmax(a_c, b_c)};
}

struct oc_starts oc_starts_of_fault(const ohm_curve *curve, double fan_c, enum oc_fault_shape shape,
                                    double low, double high) {
  struct oc_fault least = {shape, low};
  struct oc_fault most = {shape, high};
  return between(fan_c + oc_fault_late_by(curve, &least, fan_c),
                 fan_c + oc_fault_late_by(curve, &most, fan_c));
}

struct oc_starts oc_starts_of_part(const ohm_curve *curve, double fan_c,
                                   const struct oc_evidence *part) {
  const struct oc_evidence_reading *hottest = &part->readings[0];
  for (size_t i = 1; i < part->count; i++)
    if (part->readings[i].at_c > hottest->at_c)
      hottest = &part->readings[i];
  return between(oc_start_of_other(curve, fan_c, part->curve, exp(hottest->down)),
                 oc_start_of_other(curve, fan_c, part->curve, exp(hottest->up)));
}
