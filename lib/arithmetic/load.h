/* SPDX-License-Identifier: MIT */
/* What takes current in a fan circuit: the amperes of so many volts. The functions are oc_load of
 * network.h. */
#ifndef OC_LOAD_H
#define OC_LOAD_H

#include "network.h"

/**
 * A brush motor with a blade, in air: the torque goes with the amperes and with the square of the
 * speed, so the speed goes with the root of the amperes, and
 *
 *     V = Ra I + E0 n,  I = Id + I0 n^2,  E0 = 12 V - Ra I0 of a sound one
 *
 * n is the speed over that at 12 V, I0 the amperes there, Ra what winding and brushes have. A
 * blade or bearing that drags takes Id before it turns at all.
 * Source  fan law and back-voltage, textbook; all of it.
 */
struct oc_motor {
  double running_a; /**< I0, at 12 V */
  double winding_ohm;
  double drag_a; /**< INFINITY: it is stuck */
};

/** A sound one of so many amperes at 12 V: at standstill it takes 5.3 times that (a fan maker on
 *  starting current, trade article, November 2022: 15 A running, up to 80 A at the start). */
struct oc_motor oc_motor_of(double running_a);

/** In  context  a struct oc_motor; fed the wrong way round it turns backwards and takes as much */
double oc_motor_amperes(const void *context, double volts, double *slope_s);

/** Its speed over that at 12 V; negative backwards. */
double oc_motor_speed(const struct oc_motor *motor, double volts);

/**
 * A filament bulb, by its watts at 12 V: the amperes go with the volts to the power of 0.55, and
 * cold it has a 13th of its ohms (both common practice, no source).
 *
 * In      context  a double, watts
 */
double oc_bulb_amperes(const void *context, double volts, double *slope_s);

/** A resistance.  In  context  a double, ohm; INFINITY takes nothing */
double oc_resistance_amperes(const void *context, double volts, double *slope_s);

#endif
