/* SPDX-License-Identifier: MIT */
/* What each measurement along the way from the sensor to the gauge means in ohm. */
#ifndef OC_PATH_POINT_H
#define OC_PATH_POINT_H

#include "request.h"
#include "../arithmetic/decision.h"
#include "../bench/finding.h"
#include "../evidence/meter.h"
#include "../evidence/module.h"
#include "../sensors/sensor.h"

/** How to judge the module's side of the wire. */
typedef struct oc_pin {
  double level;         /**< 0.5 < level < 1; 0: 0.95 */
  double fan_c;         /**< the fan is to start here; 0: OC_ASSUMED_FAN_C */
  double limit_k;       /**< and may be late or early by this; 0: OC_ASSUMED_FAN_LIMIT_K */
  int moved;            /**< an oc_standing, of the next */
  double moved_limit_k; /**< between the readings the sensor moved by this at most, up to 20 */
} oc_pin;

#define OC_PIN_INIT                                                                                \
  { 0.0, 0.0, 0.0, OC_ASSUMED, 0.0 }

/** What the settings of a bench say of it. */
oc_pin oc_request_pin(const struct oc_request *ask);

/** How strictly to judge, all that was not told filled in. */
struct oc_strictness {
  double level;
  double fan_c;
  double limit_k;
  double moved_limit_k;
  bool fan_assumed;
  bool limit_assumed;
  bool moved_assumed;
};

/** Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE. pin may be NULL. */
ohm_status oc_strictness_of(const oc_pin *pin, struct oc_strictness *strictness);

/** Ohm that a kelvin is worth at a resistance; beyond the range of the curve, as at its
 *  nearer end. */
double oc_per_kelvin(const ohm_curve *curve, double r_ohm);

/**
 * The resistance that a reported temperature means, by cause.
 *
 * Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE the curve does not reach it.
 */
ohm_status oc_reported_ohms(const ohm_curve *curve, const oc_reported *reported,
                            struct oc_budget *r_ohm, bool *assumed);

/** A resistance that something means; not given when it was not taken or means none. */
struct oc_path_point {
  bool given;
  struct oc_budget r_ohm;
};

/** The way from a sensor to what its module reports. */
struct oc_path {
  const ohm_sensor *sensor;
  const ohm_curve *curve;
  struct oc_input input;
  struct oc_strictness strict;
  struct oc_budget volts;
  bool has_volts;
  double pull_up_ohm; /**< in use */
  size_t solutions;   /**< of the volts; 2 when the range is open */
  double other_ohm;   /**< the second of them */
  double other_pull_up_ohm;
  ohm_negative negative;
  oc_display display;
  oc_moves moves;
  double shown_c; /**< NaN when nothing was reported */
  struct oc_path_point at_sensor;
  struct oc_path_point at_pin;
  struct oc_path_point at_gauge;
  struct oc_path_point by_thermometer;
  ohm_finding bath; /**< the sensor by thermometer, when judged */
  bool judged;
  struct oc_meter_assumed meter_assumed;
  bool volts_assumed;
  bool reported_assumed;
  bool rounding_assumed;
  bool reference_assumed;
  ohm_reference_kind reference_kind;
};

/** Take all that is not NULL. Status  those of oc_pin_check(). */
ohm_status oc_path_take(struct oc_path *path, const ohm_sensor *sensor, const oc_module *module,
                        const oc_reading *reading, const oc_meter *meter, const oc_volts *volts,
                        const oc_reported *reported, const oc_reference *reference,
                        const oc_pin *pin, struct oc_arena *arena);

/** Whether the module sees no circuit. */
bool oc_path_is_open(const struct oc_path *path);

/** Whether it sees a short. */
bool oc_path_is_shorted(const struct oc_path *path);

#endif
