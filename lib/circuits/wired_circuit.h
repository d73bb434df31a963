/* SPDX-License-Identifier: MIT */
/* A circuit of a wiring: its links are what can fail in it, its tests those of the trade, and what
 * each tells is worked out. */
#ifndef OC_WIRED_CIRCUIT_H
#define OC_WIRED_CIRCUIT_H

#include "circuit.h"

/**
 * Give a circuit that holds a wiring links, tests and ways to fail.
 *
 * Status  OHM_BAD_DEFINITION no currents can be worked out; OHM_NO_MEMORY.
 */
void oc_wired_circuit_make(struct ohm_circuit *circuit, struct oc_complaints *complaints);

#endif
