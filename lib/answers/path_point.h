/* SPDX-License-Identifier: MIT */
/* What each measurement along the way from the sensor to the gauge means in ohm. */
#ifndef OC_PATH_POINT_H
#define OC_PATH_POINT_H

#include "../arithmetic/decision.h"
#include "../bench/finding.h"
#include "../evidence/meter.h"
#include "../evidence/module.h"
#include "../sensors/sensor.h"

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
ohm_status oc_strictness_of(const ohm_pin *pin, struct oc_strictness *strictness);

/** Ohm that a kelvin is worth at a resistance; beyond the range of the curve, as at its
 *  nearer end. */
double oc_per_kelvin(const ohm_curve *curve, double r_ohm);

/**
 * The resistance that a reported temperature means, by cause.
 *
 * Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE the curve does not reach it.
 */
ohm_status oc_reported_ohms(const ohm_curve *curve, const ohm_reported *reported,
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
  ohm_display display;
  ohm_moves moves;
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

/** Take all that is not NULL. Status  those of ohm_pin_check(). */
ohm_status oc_path_take(struct oc_path *path, const ohm_sensor *sensor, const ohm_module *module,
                        const ohm_reading *reading, const ohm_meter *meter, const ohm_volts *volts,
                        const ohm_reported *reported, const ohm_reference *reference,
                        const ohm_pin *pin);

/** Whether the module sees no circuit. */
bool oc_path_is_open(const struct oc_path *path);

/** Whether it sees a short. */
bool oc_path_is_shorted(const struct oc_path *path);

#endif
