/* SPDX-License-Identifier: MIT */
#include "fault.h"

double oc_fault_log(const struct oc_fault *fault, double log_element, double t_c) {
  double size = fault->size;
  switch (fault->shape) {
  case OC_FAULT_SERIES:
    return log_element + log1p(size * exp(-log_element));
  case OC_FAULT_LEAKAGE:
    return log_element - log1p(size * exp(log_element));
  case OC_FAULT_DRIFT:
    return log_element + size;
  default:
    return log_element + size * (1 / oc_kelvin(t_c) - 1 / oc_kelvin(OC_BETA_T0_C));
  }
}

double oc_fault_element(const struct oc_fault *fault, double log_seen, double t_c) {
  double size = fault->size;
  switch (fault->shape) {
  case OC_FAULT_SERIES:
    return log_seen + log1p(-size * exp(-log_seen));
  case OC_FAULT_LEAKAGE:
    return log_seen - log1p(-size * exp(log_seen));
  case OC_FAULT_DRIFT:
    return log_seen - size;
  default:
    return log_seen - size * (1 / oc_kelvin(t_c) - 1 / oc_kelvin(OC_BETA_T0_C));
  }
}

double oc_fault_size(enum oc_fault_shape shape, double log_element, double log_seen, double t_c) {
  double change = log_seen - log_element;
  switch (shape) {
  case OC_FAULT_SERIES:
    return exp(log_element) * expm1(change);
  case OC_FAULT_LEAKAGE:
    return exp(-log_element) * expm1(-change);
  case OC_FAULT_DRIFT:
    return change;
  default:
    return change / (1 / oc_kelvin(t_c) - 1 / oc_kelvin(OC_BETA_T0_C));
  }
}

double oc_fault_slope(const struct oc_fault *fault, double log_element, double t_c) {
  double element_ohm = exp(log_element);
  switch (fault->shape) {
  case OC_FAULT_SERIES:
    return 1 / (element_ohm + fault->size);
  case OC_FAULT_LEAKAGE:
    return -element_ohm / (1 + fault->size * element_ohm);
  case OC_FAULT_DRIFT:
    return 1;
  default:
    return 1 / oc_kelvin(t_c) - 1 / oc_kelvin(OC_BETA_T0_C);
  }
}

double oc_fault_lateness(oc_resistance_at resistance, const void *context, double start_ohm,
                         double fan_c) {
  double low_c = OC_COLDEST_START_C;
  double high_c = OC_NEVER_C;
  if (resistance(context, high_c) > start_ohm)
    return INFINITY;
  if (resistance(context, low_c) < start_ohm)
    return -INFINITY;
  for (int i = 0; i < 40; i++) {
    double middle_c = low_c + (high_c - low_c) / 2;
    if (resistance(context, middle_c) > start_ohm)
      low_c = middle_c;
    else
      high_c = middle_c;
  }
  return low_c + (high_c - low_c) / 2 - fan_c;
}
