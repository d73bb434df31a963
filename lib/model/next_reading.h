/* SPDX-License-Identifier: MIT */
/* Readings that were taken, and one that has yet to be. */
#ifndef OC_NEXT_READING_H
#define OC_NEXT_READING_H

#include "likelihood.h"

enum { OC_ASK_MAX = OC_EVIDENCE_MAX - 1 };

/** What is asked of one sensor after the other. */
struct oc_ask {
  const oc_reading *readings;
  const oc_reference *references;
  size_t count;
  const oc_meter *meter; /**< may be NULL */
  const oc_check *check; /**< may be NULL */
};

/** Status  those of oc_evidence_gather(). */
ohm_status oc_ask_gather(struct oc_evidence *evidence, const ohm_sensor *sensor,
                         const struct oc_ask *ask);

/** What was asked, with one reading more. */
struct oc_next_reading {
  struct oc_ask ask;
  oc_reading readings[OC_EVIDENCE_MAX];
  oc_reference references[OC_EVIDENCE_MAX];
};

enum { OC_AT_HAND = 11 };

/** Temperatures from ice to boiling at which a person can take one, degrees Celsius. */
extern const double oc_at_hand_c[OC_AT_HAND];

/** A reading at t_c by the thermometer of the first; by an assumed one where that is worse,
 *  or another instrument. */
void oc_next_reading_plan(struct oc_next_reading *further, const struct oc_ask *ask, double t_c);

/** What a sensor with a fault would read there, by what it has read; NaN where its curve
 *  does not reach. fault may be NULL; its size is known to u_size. */
struct oc_forecast oc_next_reading_foretell(struct oc_next_reading *further,
                                            const ohm_sensor *sensor, const struct oc_fault *fault,
                                            double u_size);

#endif
