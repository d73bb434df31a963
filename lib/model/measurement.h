/* SPDX-License-Identifier: MIT */
/* One check, asked: every part looked at, taken for granted where not told. */
#ifndef OC_MEASUREMENT_H
#define OC_MEASUREMENT_H

#include "../arithmetic/decision.h"
#include "hidden.h"
#include "../evidence/meter.h"
#include "../evidence/reference.h"
#include "../sensors/sensor.h"

/** How strictly to decide. */
typedef struct oc_check {
  double level;             /**< 0.5 < level < 1; 0: 0.95 */
  double tolerance_percent; /**< instead of the sensor's own; 0: the sensor's own */
  const char *band;         /**< a maker's band to judge by; NULL: the widest */
  int place;                /**< an ohm_place */
  double fan_c;             /**< the fan is to start here; 0: OC_ASSUMED_FAN_C */
  double limit_k;           /**< and may be late or early by this; 0:
                                 OC_ASSUMED_FAN_LIMIT_K */
} oc_check;

/** Largest limit in kelvin that can be asked for. */
#define OC_MOST_LIMIT_K 100.0

#define OC_CHECK_INIT                                                                              \
  { 0.0, 0.0, NULL, OHM_PLACE_NOT_TOLD, 0.0, 0.0 }

struct oc_measurement {
  const ohm_sensor *sensor;
  const ohm_curve *curve;
  const oc_reading *reading;
  const oc_meter *meter; /**< may be NULL */
  const oc_reference *reference;
  double level;
  double fan_c;
  double limit_k;
  ohm_place place;
  struct oc_tolerance tolerance; /**< to judge the part by */
  const struct oc_maker_band *band;
  bool band_told;           /**< that one alone is to be judged by */
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

/** Status  those of oc_bath_check(). */
ohm_status oc_measurement_ask(struct oc_measurement *measurement, const ohm_sensor *sensor,
                              const oc_reading *reading, const oc_meter *meter,
                              const oc_reference *reference, const oc_check *check);

/** Judge by the next of the bands there are at this temperature: the table's own limits, then
 *  each maker's.  In  by  changed to judge by it.  Return  false past the last. */
bool oc_measurement_band(struct oc_measurement *by, size_t index, const char **name);

/** Whether a thousand times as much was probably read: "2.31" on a dial at 20k is 2.31 k. */
bool oc_measurement_misses_k(const struct oc_measurement *measurement);

/** Whether a number that was read is next to nothing beside the nominal one there. */
bool oc_measurement_is_shorted(const struct oc_measurement *measurement);

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
