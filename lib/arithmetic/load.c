/* SPDX-License-Identifier: MIT */
#include "load.h"

static const double RATED_V = 12;
static const double START_RATIO = 80 / 15.0;
static const double BACK_V = 12 - 12 / (80 / 15.0);
static const double BULB_POWER = 0.55;
static const double BULB_COLD_SHARE = 1 / 13.0;

struct oc_motor oc_motor_of(double running_a) {
  return (struct oc_motor){.running_a = running_a,
                           .winding_ohm = RATED_V / (START_RATIO * running_a)};
}

/* ---- the motor ---- */

/* Forwards, from standstill on: Ra (Id + I0 n^2) + E0 n = V. */
static double forward_speed(const struct oc_motor *motor, double volts) {
  double left_v = volts - motor->winding_ohm * motor->drag_a;
  if (!(left_v > 0))
    return 0;
  double square = motor->winding_ohm * motor->running_a;
  /* The root that does not cancel. */
  return 2 * left_v / (BACK_V + sqrt(BACK_V * BACK_V + 4 * square * left_v));
}

double oc_motor_speed(const struct oc_motor *motor, double volts) {
  return volts < 0 ? -forward_speed(motor, -volts) : forward_speed(motor, volts);
}

double oc_motor_amperes(const void *context, double volts, double *slope_s) {
  const struct oc_motor *motor = context;
  double size_v = fabs(volts);
  double speed = forward_speed(motor, size_v);
  if (speed == 0) {
    *slope_s = 1 / motor->winding_ohm;
    return volts / motor->winding_ohm;
  }
  double rise = 2 * motor->running_a * speed;
  *slope_s = rise / (motor->winding_ohm * rise + BACK_V);
  double ampere = motor->drag_a + motor->running_a * speed * speed;
  return volts < 0 ? -ampere : ampere;
}

/* ---- bulb and resistance ---- */

double oc_bulb_amperes(const void *context, double volts, double *slope_s) {
  double watt = *(const double *)context;
  double rated_a = watt / RATED_V;
  double cold_s = rated_a / RATED_V / BULB_COLD_SHARE;
  double share = fabs(volts) / RATED_V;
  double lit_a = rated_a * pow(share, BULB_POWER);
  if (lit_a >= cold_s * fabs(volts)) {
    *slope_s = cold_s;
    return cold_s * volts;
  }
  *slope_s = BULB_POWER * lit_a / fabs(volts);
  return volts < 0 ? -lit_a : lit_a;
}

double oc_resistance_amperes(const void *context, double volts, double *slope_s) {
  double ohm = *(const double *)context;
  *slope_s = 1 / ohm;
  return volts / ohm;
}
