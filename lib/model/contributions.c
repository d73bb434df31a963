/* SPDX-License-Identifier: MIT */
#include "contributions.h"

/* A range is known by what its last digit is worth. */
static int range_of(double count_ohm) {
  return count_ohm > 0 ? (int)lround(log10(count_ohm)) : 0;
}

/* A curve that was left goes on as it ended. */
static double slope_at(const ohm_curve *curve, double t_c) {
  double low_c;
  double high_c;
  double alpha_per_k = 0;
  ohm_curve_range(curve, &low_c, &high_c, NULL, NULL);
  ohm_curve_alpha(curve, fmin(fmax(t_c, low_c), high_c), &alpha_per_k);
  return alpha_per_k;
}

static void take_element(struct oc_contributions *by, const struct oc_measurement *measurement) {
  bool common = oc_reference_is_one_thermometer(measurement->reference->kind);
  by->at_c = measurement->element.value;
  double alpha_per_k = slope_at(measurement->curve, by->at_c);
  for (size_t i = 0; i < measurement->element.count; i++) {
    const struct oc_cause *cause = &measurement->element.causes[i];
    if (common && cause->name == OC_CAUSE_REFERENCE_LIMIT)
      by->thermometer_k = oc_cause_limit(cause);
    else
      by->u_bath = hypot(by->u_bath, alpha_per_k * cause->u);
  }
}

struct oc_contributions oc_contributions_of(const struct oc_measurement *measurement) {
  double r_ohm = measurement->read.value;
  struct oc_meter_parts meter = oc_meter_parts(measurement->meter, measurement->reading);
  struct oc_contributions by = {.log_ohm = log(r_ohm),
                                .meter = meter.percent_ohm / r_ohm,
                                .range = range_of(meter.count_ohm),
                                .leads =
                                    oc_budget_limit(&measurement->read, OC_CAUSE_LEADS) / r_ohm,
                                .u_counts = oc_meter_own_u(&meter) / r_ohm};
  take_element(&by, measurement);
  return by;
}
