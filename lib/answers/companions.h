/* SPDX-License-Identifier: MIT */
/* What several sensors of a car that stood say of each other. */
#ifndef OC_COMPANIONS_H
#define OC_COMPANIONS_H

#include "../bench/finding.h"
#include "../model/lag.h"
#include "../model/measurement.h"

/** What another sensor of the car shows at the same time. */
typedef struct oc_companion {
  int kind;          /**< an ohm_soaked */
  double t_c;        /**< degrees Celsius, as reported */
  double limit_k;    /**< it is within this; NaN: OC_ASSUMED_THERMOMETER_LIMIT_K */
  double tau_low_h;  /**< its time constant, hours; both 0: assumed by its kind */
  double tau_high_h; /**< not below tau_low_h */
} oc_companion;

#define OC_COMPANION_INIT                                                                          \
  { OHM_SOAKED_INTAKE, 0.0, NAN, 0.0, 0.0 }

/** How the car stood. */
typedef struct oc_soak_told {
  double after_h;             /**< hours since the engine was stopped, up to OHM_SOAK_MOST_H; 0:
                                   up to the last point of the history */
  const ohm_history *history; /**< what the air did; NULL: it never changed */
  int extend;                 /**< not 0: past its last point the air stays as it was there */
  int start;                  /**< an oc_standing, of the next two */
  double stop_c;              /**< temperature of the coolant when the engine was stopped; NaN and
                                   assumed: OC_ASSUMED_STOP_C */
  double stop_limit_k;        /**< it was within this of stop_c, up to 1000; assumed:
                                   OC_ASSUMED_STOP_TOLD_LIMIT_K of a stop_c that was told */
  double tau_low_h;           /**< time constant of the coolant, hours; both 0: */
  double tau_high_h;          /**< OC_ASSUMED_COOLANT_TAU_LOW_H to ..._HIGH_H */
  int undisturbed;            /**< not 0: no sun, block heater, warm garage or move */
  double allow_k;             /**< how far the sensor may be off, up to 100; 0:
                                   OC_ASSUMED_SOAK_ALLOW_K */
  const oc_companion *companions; /**< other sensors of the car; NULL for none */
  size_t companion_count;         /**< up to 8 */
} oc_soak_told;

#define OC_SOAK_TOLD_INIT                                                                          \
  { 0.0, NULL, 0, OC_ASSUMED, NAN, 0.0, 0.0, 0.0, 0, 0.0, NULL, 0 }

/** A soak as it was asked about. */
struct oc_soak {
  struct oc_measurement measurement;
  double one_h[1]; /* the points of air that never changed */
  double one_c[1];
  struct oc_lag lag; /* of the coolant */
  double allow_k;
  bool undisturbed;
  struct oc_budget shown; /* temperature the reading means, by cause */
};

/** Status  those of oc_soak_check() that companions are a reason for. */
ohm_status oc_companions_take(const oc_soak_told *soak);

/** Whether they agree, and which one is odd. The lag is as before afterwards. */
void oc_companions_tell(ohm_finding *finding, struct oc_soak *soak, const oc_soak_told *told);

#endif
