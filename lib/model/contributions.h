/* SPDX-License-Identifier: MIT */
/*
 * How a reading comes about, for every answer that takes several: what its logarithm errs by,
 * each cause by what it has in common with other readings. The model is written out at
 * ohm_bench_check().
 */
#ifndef OC_CONTRIBUTIONS_H
#define OC_CONTRIBUTIONS_H

#include "measurement.h"

/** Of the logarithm of the resistance at the probes' tips. */
struct oc_contributions {
  double log_ohm;
  double at_c;          /**< of the element */
  double meter;         /**< limit of the meter's percent: one error for readings of one range */
  int range;            /**< which of them */
  double leads;         /**< limit: one error for all */
  double thermometer_k; /**< limit: one error for all beside a thermometer; else 0 */
  double u_counts;      /**< standard, its own: of the meter beside its percent */
  double u_bath;        /**< standard, its own: of the temperature, by the slope of the curve */
};

/** Of a reading that shows a number above 0. */
struct oc_contributions oc_contributions_of(const struct oc_measurement *measurement);

#endif
