/* SPDX-License-Identifier: MIT */
#include "divider.h"

double oc_divider_pull_up(const struct oc_divider *divider, double r_ohm) {
  bool hot = divider->hot_pull_up_ohm > 0 && r_ohm < divider->changeover_ohm;
  return hot ? divider->hot_pull_up_ohm : divider->pull_up_ohm;
}

size_t oc_divider_solve(const struct oc_divider *divider, double v, double r_ohm[OC_RANGES_MAX],
                        double pull_up_ohm[OC_RANGES_MAX]) {
  if (!(0 < v && v < divider->supply_v))
    return 0;
  double cold_ohm = oc_below(divider->supply_v, divider->pull_up_ohm, v);
  double hot_ohm = oc_below(divider->supply_v, divider->hot_pull_up_ohm, v);
  bool two = divider->hot_pull_up_ohm > 0;
  size_t count = 0;
  if (!two || cold_ohm * OC_PAST_CHANGEOVER >= divider->changeover_ohm) {
    r_ohm[count] = cold_ohm;
    pull_up_ohm[count++] = divider->pull_up_ohm;
  }
  if (two && hot_ohm <= divider->changeover_ohm * OC_PAST_CHANGEOVER) {
    r_ohm[count] = hot_ohm;
    pull_up_ohm[count++] = divider->hot_pull_up_ohm;
  }
  return count;
}

static bool is_positive(double x) {
  return 0 < x && x <= OC_GREATEST_OHM;
}

ohm_status ohm_divider_volts(double r_ohm, double pull_up_ohm, double supply_volt, double *v_volt) {
  if (!v_volt)
    return OHM_NULL_ARGUMENT;
  *v_volt = NAN;
  if (!oc_inside(0, r_ohm, OC_GREATEST_OHM) || !is_positive(pull_up_ohm) ||
      !is_positive(supply_volt))
    return OHM_BAD_ARGUMENT;
  *v_volt = oc_divided(supply_volt, pull_up_ohm, r_ohm);
  return OHM_OK;
}

ohm_status ohm_divider_resistance(double v_volt, double pull_up_ohm, double supply_volt,
                                  double *r_ohm) {
  if (!r_ohm)
    return OHM_NULL_ARGUMENT;
  *r_ohm = NAN;
  if (isnan(v_volt) || !is_positive(pull_up_ohm) || !is_positive(supply_volt))
    return OHM_BAD_ARGUMENT;
  if (!(0 <= v_volt && v_volt < supply_volt))
    return OHM_OUT_OF_RANGE;
  *r_ohm = oc_below(supply_volt, pull_up_ohm, v_volt);
  return OHM_OK;
}
