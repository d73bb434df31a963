/* SPDX-License-Identifier: MIT */
/* What to expect where the fan starts and stops. */
#ifndef OC_FANPOINT_H
#define OC_FANPOINT_H

#include "../bench/finding.h"
#include "../evidence/module.h"

/**
 * What to expect where the fan starts and stops: ohms and volts, what a kelvin is worth
 * there, and how far a hidden series resistance moves both. The verdict is undecided, reason
 * "alone", for nothing was measured.
 *
 * In      on_c, off_c   where it starts and stops, off_c < on_c; off_c NaN when not known
 *         module  NULL, or without a pull-up: no volts
 *         hidden_ohm   0 to 1e6
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
ohm_status oc_fanpoint_find(const ohm_sensor *sensor, double on_c, double off_c,
                            const oc_module *module, double hidden_ohm, ohm_finding *finding);

#endif
