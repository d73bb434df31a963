/* SPDX-License-Identifier: MIT */
/* A thermistor that nobody compared. */
#ifndef OC_ANY_THERMISTOR_H
#define OC_ANY_THERMISTOR_H

#include "likelihood.h"

/**
 * Logarithm of the probability density of the readings' logarithms when they are of any
 * thermistor at all: ln R = ln R25 + B (1/T - 1/T25), every R25 from 50 ohm to 500 k equally
 * probable by its logarithm, every B from OC_FLATTEST_BETA_K to OC_STEEPEST_BETA_K. The errors
 * of the readings are those of the evidence, all of them taken as normal.
 */
double oc_any_thermistor_log_likelihood(const struct oc_evidence *evidence);

#endif
