/* SPDX-License-Identifier: MIT */
/* What the cells of links and tests mean, and what the trade does not allow in them. */
#ifndef OC_CIRCUIT_CELLS_H
#define OC_CIRCUIT_CELLS_H

#include "circuit.h"

/** Understand the cells of every row; tests that cannot be used are left out. */
void oc_circuit_cells_understand(struct ohm_circuit *circuit, struct oc_complaints *complaints);

#endif
