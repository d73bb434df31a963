/* SPDX-License-Identifier: MIT */
#include "estimate.h"

static const double SQRT_3 = 1.7320508075688772;

struct ohm_budget ohm_budget_of(double value) {
  struct ohm_budget budget = {.value = value};
  return budget;
}

static void add(struct ohm_budget *budget, struct ohm_cause cause) {
  if (cause.u > 0 && budget->count < OHM_CAUSES_MAX)
    budget->causes[budget->count++] = cause;
}

void ohm_budget_add_normal(struct ohm_budget *budget, enum ohm_cause_name name, double u) {
  add(budget, (struct ohm_cause){name, OHM_NORMAL, u});
}

void ohm_budget_add_limit(struct ohm_budget *budget, enum ohm_cause_name name, double limit) {
  add(budget, (struct ohm_cause){name, OHM_RECTANGULAR, limit / SQRT_3});
}

double ohm_cause_limit(const struct ohm_cause *cause) {
  return cause->u * SQRT_3;
}

double ohm_budget_u(const struct ohm_budget *budget) {
  double u = 0;
  for (size_t i = 0; i < budget->count; i++)
    u = hypot(u, budget->causes[i].u);
  return u;
}
