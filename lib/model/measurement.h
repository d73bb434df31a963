/* SPDX-License-Identifier: MIT */
/* One check, asked: every part looked at, taken for granted where not told. */
#ifndef OC_MEASUREMENT_H
#define OC_MEASUREMENT_H

#include "../arithmetic/decision.h"
#include "hidden.h"
#include "../evidence/meter.h"
#include "../sensors/sensor.h"

struct oc_measurement {
  const ohm_sensor *sensor;
  const ohm_curve *curve;
  const ohm_reading *reading;
  const ohm_meter *meter; /**< may be NULL */
  const ohm_reference *reference;
  double level;
  double fan_c;
  double limit_k;
  ohm_place place;
  struct oc_tolerance tolerance; /**< to judge the part by */
  const struct oc_maker_band *band;
  ohm_status covered;       /**< whether that says anything here, as ohm_sensor_band() */
  struct oc_budget bath;    /**< temperature of the bath */
  struct oc_budget element; /**< the same, warmed by the test current */
  bool has_number;
  struct oc_budget read; /**< resistance; when has_number */
  struct oc_meter_assumed meter_assumed;
  bool bath_assumed;
  bool current_assumed;
  bool fan_assumed;
  bool limit_assumed;
};

/** Status  those of ohm_bath_check(). */
ohm_status oc_measurement_ask(struct oc_measurement *measurement, const ohm_sensor *sensor,
                              const ohm_reading *reading, const ohm_meter *meter,
                              const ohm_reference *reference, const ohm_check *check);

/** Whether a thousand times as much was probably read: "2.31" on a dial at 20k is 2.31 k. */
bool oc_measurement_misses_k(const struct oc_measurement *measurement);

/** The tolerance to look for hidden faults with, and the fan. */
void oc_measurement_expose(const struct oc_measurement *measurement, struct oc_tolerance *tolerance,
                           struct oc_exposure *exposure);

/** Readings that would pass in this bath. */
struct oc_acceptance {
  double low_ohm; /**< NaN when none would */
  double high_ohm;
  double needed_k; /**< when none would, the limit of a thermometer with which some
                        would; NaN when even an exact one does not help */
};

struct oc_acceptance oc_measurement_acceptance(const struct oc_measurement *measurement);

#endif
