/* SPDX-License-Identifier: MIT */
/* Readings that were taken, and one that has yet to be. */
#ifndef OHM_FURTHER_H
#define OHM_FURTHER_H

#include "likelihood.h"

enum { OHM_ASK_MAX = OHM_EVIDENCE_MAX - 1 };

/** What is asked of one sensor after the other. */
struct ohm_ask {
  const ohm_reading *readings;
  const ohm_reference *references;
  size_t count;
  const ohm_meter *meter; /**< may be NULL */
  const ohm_check *check; /**< may be NULL */
};

/** Status  those of ohm_evidence_gather(). */
ohm_status ohm_ask_gather(struct ohm_evidence *evidence, const ohm_sensor *sensor,
                          const struct ohm_ask *ask);

/** What was asked, with one reading more. */
struct ohm_further {
  struct ohm_ask ask;
  ohm_reading readings[OHM_EVIDENCE_MAX];
  ohm_reference references[OHM_EVIDENCE_MAX];
};

enum { OHM_AT_HAND = 11 };

/** Temperatures from ice to boiling at which a person can take one, degrees Celsius. */
extern const double ohm_at_hand_c[OHM_AT_HAND];

/** A reading at t_c by the thermometer of the first; by an assumed one where that is worse,
 *  or another instrument. */
void ohm_further_plan(struct ohm_further *further, const struct ohm_ask *ask, double t_c);

/** What a sensor with a fault would read there, by what it has read; NaN where its curve
 *  does not reach. fault may be NULL; its size is known to u_size. */
struct ohm_forecast ohm_further_foretell(struct ohm_further *further, const ohm_sensor *sensor,
                                         const struct ohm_fault *fault, double u_size);

#endif
