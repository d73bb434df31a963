/* SPDX-License-Identifier: MIT */
/* What a thing of a wiring is to a circuit: a link, with the part that is bought or repaired for
 * it, what that involves, and how often it is the one; as its kind has them, or as its row says. */
#ifndef OC_WIRED_LINK_H
#define OC_WIRED_LINK_H

#include "circuit.h"

/**
 * Add a link for each thing of the wiring, in their order.
 *
 * In      carries  whether a thing carries a fan's current
 * Return  false when there is no memory
 */
bool oc_wired_links_add(struct ohm_circuit *circuit, const bool *carries);

#endif
