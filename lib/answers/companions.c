/* SPDX-License-Identifier: MIT */
#include "companions.h"

#include "../arithmetic/odd.h"

static bool is_companion(const oc_companion *companion) {
  return oc_inside(OHM_SOAKED_COOLANT, companion->kind, OHM_SOAKED_AMBIENT) &&
         isfinite(companion->t_c) && !isinf(companion->limit_k) && !(companion->limit_k < 0) &&
         isfinite(companion->tau_low_h) && companion->tau_low_h >= 0 &&
         isfinite(companion->tau_high_h) && companion->tau_high_h >= 0;
}

ohm_status oc_companions_take(const oc_soak_told *soak) {
  if (soak->companion_count > 0 && !soak->companions)
    return OHM_NULL_ARGUMENT;
  if (soak->companion_count >= OC_ODD_MAX)
    return OHM_TOO_LARGE;
  for (size_t i = 0; i < soak->companion_count; i++) {
    const oc_companion *companion = &soak->companions[i];
    if (!is_companion(companion))
      return OHM_BAD_ARGUMENT;
    struct oc_span tau =
        oc_span_or(companion->tau_low_h, companion->tau_high_h, (enum ohm_soaked)companion->kind);
    if (!(OC_ZERO_C < companion->t_c && companion->t_c <= OC_HOTTEST_C) ||
        companion->limit_k > OC_HOTTEST_C || !oc_span_is_usable(&tau))
      return OHM_OUT_OF_RANGE;
  }
  return OHM_OK;
}

/* The start is one error for coolant and oil; what breathes the air began anywhere
 * between it and the coolant. */
static bool starts_as_coolant(int kind) {
  return kind == OHM_SOAKED_COOLANT || kind == OHM_SOAKED_OIL;
}

static struct oc_member member_of(struct oc_lag *lag, const struct oc_budget *shown, int kind) {
  double start_u_k = lag->start.limit_k / sqrt(3);
  double air_limit_k = lag->air_limit_k;
  lag->air_limit_k = 0; /* eliminated */
  oc_lag_forget(lag);
  struct oc_off_summary summary = oc_off_summary_of(lag, shown);
  lag->air_limit_k = air_limit_k;
  bool common = starts_as_coolant(kind);
  double common_k = common ? start_u_k * summary.start_share : 0;
  return (struct oc_member){summary.mean_k,
                            sqrt(fmax(0, summary.u_k * summary.u_k - common_k * common_k)),
                            1 - summary.start_share, common_k};
}

/* In the place of the coolant, whose start and time constants are put back. */
static struct oc_member member_of_companion(struct oc_lag *lag, const oc_companion *told) {
  double limit_k = isnan(told->limit_k) ? OC_ASSUMED_THERMOMETER_LIMIT_K : told->limit_k;
  struct oc_budget shown = oc_budget_of(told->t_c);
  oc_budget_add_limit(&shown, OC_CAUSE_REFERENCE_LIMIT, limit_k);
  struct oc_start start = lag->start;
  struct oc_span tau = lag->tau;
  lag->tau = oc_span_or(told->tau_low_h, told->tau_high_h, (enum ohm_soaked)told->kind);
  if (!starts_as_coolant(told->kind))
    lag->start = oc_lag_start_between(lag, start.c, start.limit_k);
  struct oc_member member = member_of(lag, &shown, told->kind);
  lag->start = start;
  lag->tau = tau;
  return member;
}

void oc_companions_tell(ohm_finding *finding, struct oc_soak *soak, const oc_soak_told *told) {
  struct oc_member members[OC_ODD_MAX];
  size_t count = told->companion_count + 1;
  members[0] = member_of(&soak->lag, &soak->shown, OHM_SOAKED_COOLANT);
  for (size_t i = 1; i < count; i++)
    members[i] = member_of_companion(&soak->lag, &told->companions[i - 1]);
  oc_lag_forget(&soak->lag);
  struct oc_odd odd = oc_odd_of(members, count, soak->measurement.level);
  oc_finding_set_number(finding, OHM_FIELD_P_AGREE, odd.probability);
  bool innocent = odd.odd >= 0 && odd.off_k > 0 && !soak->undisturbed;
  if (odd.agree) {
    oc_finding_set_agreement(finding, OHM_AGREEMENT_CONSISTENT);
  } else if (odd.odd < 0 || innocent) {
    oc_finding_set_agreement(finding, OHM_AGREEMENT_DISAGREE);
  } else {
    oc_finding_set_agreement(finding, OHM_AGREEMENT_ODD);
    oc_finding_set_odd(finding, odd.odd == 0 ? OHM_SOAKED_COOLANT
                                             : (ohm_soaked)told->companions[odd.odd - 1].kind);
    oc_finding_set_number(finding, OHM_FIELD_ODD_OFF_K, odd.off_k);
  }
}
