/* SPDX-License-Identifier: MIT */
/* Every explanation of a sensor's readings, tried on them. */
#ifndef OC_TRIAL_H
#define OC_TRIAL_H

#include "../bench/finding.h"
#include "../model/next_reading.h"
#include "../model/fan_start.h"

/** Too large for a stack. */
struct oc_trial {
  const ohm_sensor *sensor;
  const ohm_sensor *const *others;
  size_t other_count;
  struct oc_ask ask;
  struct oc_measurement measurement; /**< of the hottest reading */
  struct oc_evidence evidence;
  struct oc_evidence tried; /**< of other readings, or of another sensor */
  double p_healthy;
  ohm_finding *explanations;              /**< by ohm_explanation */
  struct oc_fault fault[OC_EXPLANATIONS]; /**< where has_size */
  double u_size[OC_EXPLANATIONS];
  bool has_size[OC_EXPLANATIONS];
  struct oc_starts start[OC_EXPLANATIONS]; /**< of the fan, where has_start */
  bool has_start[OC_EXPLANATIONS];
  const ohm_sensor *other; /**< of the sensors that fit the likeliest; NULL for none */
};

/** Of displays that are numbers: how well each fits, how large it is, what it does to the fan. */
void oc_trial_all(struct oc_trial *trial);

/** Whether a display says that it is open, or shorted. */
void oc_trial_ends(struct oc_trial *trial);

/** Whether a k left out explains all of them. */
bool oc_trial_misses_k(struct oc_trial *trial);

bool oc_trial_fits(const struct oc_trial *trial, ohm_explanation explanation);

#endif
