/* SPDX-License-Identifier: MIT */
/* What several sensors of a car that stood say of each other. */
#ifndef OC_COMPANIONS_H
#define OC_COMPANIONS_H

#include "../bench/finding.h"
#include "../model/lag.h"
#include "../model/measurement.h"

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

/** Status  those of ohm_soak_check() that companions are a reason for. */
ohm_status oc_companions_take(const ohm_soak *soak);

/** Whether they agree, and which one is odd. */
void oc_companions_tell(ohm_finding *finding, const struct oc_soak *soak, const ohm_soak *told);

#endif
