/* SPDX-License-Identifier: MIT */
/*
 * The chains of a wiring: things one behind the other, which all carry one current. What is done
 * to one of a chain shows elsewhere as if it were done to any other.
 */
#ifndef OC_CHAIN_H
#define OC_CHAIN_H

#include "wiring.h"

struct oc_chain {
  size_t from; /**< points it joins; the same twice for a ring, which carries nothing */
  size_t to;
  size_t first; /**< of its things, in their order along it */
  size_t count;
};

struct oc_chains {
  size_t count;
  struct oc_chain chain[OC_WIRING_THINGS];
  size_t thing[OC_WIRING_THINGS];    /**< chain by chain */
  size_t chain_of[OC_WIRING_THINGS]; /**< of each thing; OC_WIRING_THINGS of battery and motor,
                                          which are in none */
  bool meets[OC_WIRING_POINTS];      /**< whether chains end at a point */
};

/**
 * Find them.
 *
 * In      meets  points that have to be an end because something is put there; may be NULL
 */
void oc_chains_find(struct oc_chains *chains, const struct oc_wiring *wiring, const bool *meets);

/** The point at the other end of a thing. */
size_t oc_chain_beyond(const struct oc_thing *thing, size_t point);

#endif
