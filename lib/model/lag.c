/* SPDX-License-Identifier: MIT */
#include "lag.h"

#include <string.h>

bool oc_span_is_usable(const struct oc_span *span) {
  return 0 < span->low_h && span->low_h <= span->high_h && span->high_h <= OHM_SOAK_MOST_H;
}

struct oc_span oc_span_or(double low_h, double high_h, enum ohm_soaked kind) {
  static const struct oc_span assumed[] = {
      [OHM_SOAKED_COOLANT] = {OC_ASSUMED_COOLANT_TAU_LOW_H, OC_ASSUMED_COOLANT_TAU_HIGH_H},
      [OHM_SOAKED_INTAKE] = {OC_ASSUMED_INTAKE_TAU_LOW_H, OC_ASSUMED_INTAKE_TAU_HIGH_H},
      [OHM_SOAKED_OIL] = {OC_ASSUMED_OIL_TAU_LOW_H, OC_ASSUMED_OIL_TAU_HIGH_H},
      [OHM_SOAKED_AMBIENT] = {OC_ASSUMED_AMBIENT_TAU_LOW_H, OC_ASSUMED_AMBIENT_TAU_HIGH_H}};
  return low_h == 0 && high_h == 0 ? assumed[kind] : (struct oc_span){low_h, high_h};
}

struct oc_start oc_lag_start_between(const struct oc_lag *lag, double stop_c, double stop_limit_k) {
  double air_c = oc_air_at(&lag->air, lag->from_h);
  double one_c = air_c - lag->air_limit_k;
  double other_c = stop_c + stop_limit_k;
  if (stop_c < air_c) {
    one_c = stop_c - stop_limit_k;
    other_c = air_c + lag->air_limit_k;
  }
  return (struct oc_start){(one_c + other_c) / 2, fabs(other_c - one_c) / 2};
}

static struct oc_cooled follow(struct oc_lag *lag, double tau_h) {
  unsigned long long bits;
  memcpy(&bits, &tau_h, sizeof bits);
  size_t slot = (size_t)(bits * 0x9E3779B97F4A7C15u >> 55);
  struct oc_lag_memory *memory = &lag->memory;
  if (memory->tau_h[slot] != tau_h) {
    memory->tau_h[slot] = tau_h;
    memory->cooled[slot] =
        oc_cooling_follow(&lag->air, lag->start.c, lag->from_h, lag->to_h, tau_h);
  }
  return memory->cooled[slot];
}

void oc_lag_forget(struct oc_lag *lag) {
  memset(lag->memory.tau_h, 0, sizeof lag->memory.tau_h);
}

/* At one time constant; tau is above 0, so that an empty memory is never met. */
static struct oc_budget come_to(struct oc_lag *lag, double tau_h) {
  struct oc_cooled cooled = follow(lag, tau_h);
  struct oc_budget budget = oc_budget_of(cooled.t_c);
  oc_budget_add_limit(&budget, OC_CAUSE_START, lag->start.limit_k * cooled.start_share);
  oc_budget_add_limit(&budget, OC_CAUSE_REFERENCE_LIMIT,
                      lag->air_limit_k * (1 - cooled.start_share));
  oc_budget_add_normal(&budget, OC_CAUSE_REFERENCE_NOISE, lag->air_u_k * cooled.noise_share);
  return budget;
}

static struct oc_budget off_at(const struct oc_off *off, double tau_h) {
  struct oc_budget budget = come_to(off->lag, tau_h);
  budget.value = off->shown->value - budget.value;
  for (size_t i = 0; i < off->shown->count; i++) {
    const struct oc_cause *cause = &off->shown->causes[i];
    if (cause->shape == OC_NORMAL)
      oc_budget_add_normal(&budget, cause->name, cause->u);
    else
      oc_budget_add_limit(&budget, cause->name, oc_cause_limit(cause));
  }
  return budget;
}

void oc_off_outside(const void *context, double tau_h, double *values) {
  const struct oc_off *off = context;
  struct oc_budget budget = off_at(off, tau_h);
  struct oc_spread spread = oc_spread_of(&budget);
  values[0] = oc_spread_below(&spread, off->low_k);
  spread.value = -spread.value;
  values[1] = oc_spread_below(&spread, -off->high_k);
}

/* Mean and variance about a guess, so that large squares do not cancel. */
struct moments {
  struct oc_off off;
  double guess_k;
};

static void moments_at(const void *context, double tau_h, double *values) {
  const struct moments *moments = context;
  struct oc_budget budget = off_at(&moments->off, tau_h);
  struct oc_cooled cooled = follow(moments->off.lag, tau_h);
  double from_k = budget.value - moments->guess_k;
  double u_k = oc_budget_u(&budget);
  values[0] = from_k;
  values[1] = from_k * from_k + u_k * u_k;
  values[2] = cooled.start_share;
  values[3] = cooled.start_share * cooled.start_share;
}

struct oc_off_summary oc_off_summary_of(struct oc_lag *lag, const struct oc_budget *shown) {
  struct moments moments = {{lag, shown, 0, 0}, 0};
  double means[OC_MEANS_MAX];
  moments.guess_k = off_at(&moments.off, lag->tau.low_h).value;
  oc_cooling_mean(lag->tau.low_h, lag->tau.high_h, moments_at, &moments, 4, means);
  return (struct oc_off_summary){moments.guess_k + means[0],
                                 sqrt(fmax(0, means[1] - means[0] * means[0])), means[2], means[3]};
}

static double off_below(struct oc_off *off, double x_k) {
  double means[OC_MEANS_MAX];
  off->low_k = off->high_k = x_k;
  oc_cooling_mean(off->lag->tau.low_h, off->lag->tau.high_h, oc_off_outside, off, 2, means);
  return means[0];
}

double oc_off_quantile(struct oc_lag *lag, const struct oc_budget *shown, double p) {
  struct oc_off off = {lag, shown, 0, 0};
  struct oc_off_summary summary = oc_off_summary_of(lag, shown);
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
