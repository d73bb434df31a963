/* SPDX-License-Identifier: MIT */
/* How large a fault is, by the readings. */
#ifndef OC_FAULT_SIZE_H
#define OC_FAULT_SIZE_H

#include "likelihood.h"

/** In the unit of the shape; see fault.h. A size that cannot be negative is estimated as
 *  though it could, so that its interval covers as often as it says, and is cut at 0 by
 *  who tells it. */
struct oc_fault_estimate {
  double size; /**< as likely to be more as to be less */
  double u;
  double low; /**< central interval at the level */
  double high;
  double p_chance;   /**< that a sound sensor looks at least so faulty; one-sided where the
                          size cannot be negative, half of all chance being on that side */
  double chi_square; /**< of the readings about the best size */
};

/** Whether a size of a shape cannot be negative. */
bool oc_fault_is_one_sided(enum oc_fault_shape shape);

/**
 * The size with everything else drawn over: its likelihood with a flat prior, the exact
 * interval for a quantity that shifts what is read.
 *
 * Return  false when the readings say nothing of such a size.
 */
bool oc_fault_estimate(const struct oc_evidence *evidence, enum oc_fault_shape shape, double level,
                       struct oc_fault_estimate *estimate);

#endif
