/* SPDX-License-Identifier: MIT */
#include "estimate.h"

static const double SQRT_3 = 1.7320508075688772;

struct oc_budget oc_budget_of(double value) {
  struct oc_budget budget = {.value = value};
  return budget;
}

static void add(struct oc_budget *budget, struct oc_cause cause) {
  if (cause.u > 0 && budget->count < OC_CAUSES_MAX)
    budget->causes[budget->count++] = cause;
}

void oc_budget_add_normal(struct oc_budget *budget, enum oc_cause_name name, double u) {
  add(budget, (struct oc_cause){name, OC_NORMAL, u});
}

void oc_budget_add_limit(struct oc_budget *budget, enum oc_cause_name name, double limit) {
  add(budget, (struct oc_cause){name, OC_RECTANGULAR, limit / SQRT_3});
}

double oc_cause_limit(const struct oc_cause *cause) {
  return cause->u * SQRT_3;
}

double oc_budget_u(const struct oc_budget *budget) {
  double u = 0;
  for (size_t i = 0; i < budget->count; i++)
    u = hypot(u, budget->causes[i].u);
  return u;
}

double oc_budget_normal(const struct oc_budget *budget, enum oc_cause_name name) {
  for (size_t i = 0; i < budget->count; i++)
    if (budget->causes[i].name == name && budget->causes[i].shape == OC_NORMAL)
      return budget->causes[i].u;
  return 0;
}

double oc_budget_limit(const struct oc_budget *budget, enum oc_cause_name name) {
  for (size_t i = 0; i < budget->count; i++)
    if (budget->causes[i].name == name && budget->causes[i].shape == OC_RECTANGULAR)
      return oc_cause_limit(&budget->causes[i]);
  return 0;
}
