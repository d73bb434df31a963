/* SPDX-License-Identifier: MIT */
#include "fault.h"

static const double COLDEST_START_C = -60;
static const double BETA_T0_C = 25;

double ohm_fault_log(const struct ohm_fault *fault, double log_element, double t_c) {
  double size = fault->size;
  switch (fault->shape) {
  case OHM_FAULT_SERIES:
    return log_element + log1p(size * exp(-log_element));
  case OHM_FAULT_LEAKAGE:
    return log_element - log1p(size * exp(log_element));
  case OHM_FAULT_DRIFT:
    return log_element + size;
  default:
    return log_element + size * (1 / ohm_kelvin(t_c) - 1 / ohm_kelvin(BETA_T0_C));
  }
}

double ohm_fault_size(enum ohm_fault_shape shape, double log_element, double log_seen, double t_c) {
  double change = log_seen - log_element;
  switch (shape) {
  case OHM_FAULT_SERIES:
    return exp(log_element) * expm1(change);
  case OHM_FAULT_LEAKAGE:
    return exp(-log_element) * expm1(-change);
  case OHM_FAULT_DRIFT:
    return change;
  default:
    return change / (1 / ohm_kelvin(t_c) - 1 / ohm_kelvin(BETA_T0_C));
  }
}

double ohm_fault_lateness(ohm_resistance_at resistance, const void *context, double start_ohm,
                          double fan_c) {
  double low_c = COLDEST_START_C;
  double high_c = OHM_NEVER_C;
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

struct faulty {
  const ohm_curve *curve;
  const struct ohm_fault *fault;
};

static double resistance(const void *context, double t_c) {
  const struct faulty *faulty = context;
  double log_element = log(ohm_curve_resistance_beyond(faulty->curve, t_c));
  return exp(ohm_fault_log(faulty->fault, log_element, t_c));
}

double ohm_fault_late_by(const ohm_curve *curve, const struct ohm_fault *fault, double fan_c) {
  struct faulty faulty = {curve, fault};
  return ohm_fault_lateness(resistance, &faulty, ohm_curve_resistance_beyond(curve, fan_c), fan_c);
}
