/* SPDX-License-Identifier: MIT */
/* A reading with everything that makes it uncertain. */
#ifndef OC_METER_H
#define OC_METER_H

#include "../arithmetic/estimate.h"
#include "../ground/words.h"

/** Take a resistance, 2310, 2.31k, 2k31 or 2.31 kohm, and what one in its last digit is
 *  worth. Takes nothing whole unless it answers true. */
bool oc_words_resistance(struct oc_words *words, double *r_ohm, double *quantum_ohm);

/** What was taken for granted about a meter. */
struct oc_meter_assumed {
  bool accuracy;
  bool resolution;
  bool zeros; /**< zeros at the end of a bare number may be rounding */
  bool leads;
};

/**
 * Resistance at the probes' tips by cause. meter may be NULL.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  may be NULL
 * Status  those of ohm_meter_estimate().
 */
ohm_status oc_meter_budget(const ohm_meter *meter, const ohm_reading *reading,
                           struct oc_budget *budget, struct oc_meter_assumed *assumed);

#endif
