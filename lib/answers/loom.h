/* SPDX-License-Identifier: MIT */
/* Plug and wires by two resistors in place of the sensor. */
#ifndef OC_LOOM_H
#define OC_LOOM_H

#include "path_point.h"

/**
 * Resistance of plug and wires from two resistors fitted in place of the sensor and what
 * the module reported with each: R(t) = k (r + s) for both, so that what the module
 * multiplies by, k, is told apart from what is in series, s. Linear in the uncertainties.
 *
 * Verdict  "within": s is at most what makes the fan late by limit_k, with its uncertainty;
 *          "outside": it is more; else "undecided".
 *
 * In      readings  two, of the resistors, by an ohmmeter
 *         reported  two, what the module showed with them
 *         meter, pin   NULL for all assumed
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE a display without a
 *         number, or degrees the curve does not reach; OHM_BAD_DEFINITION the two are
 *         too near to each other to tell anything: one is to be half of the other at
 *         most.
 * Source  JCGM 100:2008, clause 5.1.
 */
ohm_status oc_loom_check(const ohm_sensor *sensor, const oc_reading readings[2],
                         const oc_meter *meter, const oc_reported reported[2], const oc_pin *pin,
                         ohm_finding *finding);

#endif
