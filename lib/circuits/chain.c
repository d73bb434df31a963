/* SPDX-License-Identifier: MIT */
#include "chain.h"

#include <string.h>

size_t oc_chain_beyond(const struct oc_thing *thing, size_t point) {
  return thing->from == point ? thing->to : thing->from;
}

static bool is_in_chains(const struct oc_thing *thing) {
  return thing->kind != OC_THING_BATTERY && thing->kind < OC_THING_BLADE &&
         thing->kind != OC_THING_MOTOR;
}

/* A chain goes on where two of its things meet and nothing else does. */
static void find_ends(struct oc_chains *chains, const struct oc_wiring *wiring, const bool *meets) {
  size_t ends[OC_WIRING_POINTS] = {0};
  for (size_t i = 0; i < wiring->point_count; i++)
    chains->meets[i] = i == OC_POINT_MINUS || i == OC_POINT_PLUS || (meets && meets[i]);
  for (size_t i = 0; i < wiring->thing_count; i++) {
    const struct oc_thing *thing = &wiring->things[i];
    if (thing->kind >= OC_THING_BLADE)
      continue;
    ends[thing->from]++;
    ends[thing->to]++;
    if (!is_in_chains(thing))
      chains->meets[thing->from] = chains->meets[thing->to] = true;
  }
  for (size_t i = 0; i < wiring->point_count; i++)
    chains->meets[i] |= ends[i] != 2;
}

static size_t next_at(const struct oc_chains *chains, const struct oc_wiring *wiring,
                      size_t point) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (is_in_chains(&wiring->things[i]) &&
        (wiring->things[i].from == point || wiring->things[i].to == point) &&
        chains->chain_of[i] == OC_WIRING_THINGS)
      return i;
  return OC_WIRING_THINGS;
}

static void follow(struct oc_chains *chains, const struct oc_wiring *wiring, size_t from,
                   size_t thing, size_t *taken) {
  struct oc_chain *chain = &chains->chain[chains->count];
  *chain = (struct oc_chain){.from = from, .to = from, .first = *taken};
  while (thing < OC_WIRING_THINGS) {
    chains->chain_of[thing] = chains->count;
    chains->thing[(*taken)++] = thing;
    chain->count++;
    chain->to = oc_chain_beyond(&wiring->things[thing], chain->to);
    thing = chains->meets[chain->to] ? OC_WIRING_THINGS : next_at(chains, wiring, chain->to);
  }
  chains->count++;
}

void oc_chains_find(struct oc_chains *chains, const struct oc_wiring *wiring, const bool *meets) {
  size_t taken = 0;
  memset(chains, 0, sizeof *chains);
  find_ends(chains, wiring, meets);
  for (size_t i = 0; i < OC_WIRING_THINGS; i++)
    chains->chain_of[i] = OC_WIRING_THINGS;
  for (size_t i = 0; i < wiring->thing_count; i++) {
    const struct oc_thing *thing = &wiring->things[i];
    if (!is_in_chains(thing) || chains->chain_of[i] != OC_WIRING_THINGS)
      continue;
    if (chains->meets[thing->from])
      follow(chains, wiring, thing->from, i, &taken);
    else if (chains->meets[thing->to])
      follow(chains, wiring, thing->to, i, &taken);
  }
  /* What is left are rings. */
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (is_in_chains(&wiring->things[i]) && chains->chain_of[i] == OC_WIRING_THINGS)
      follow(chains, wiring, wiring->things[i].from, i, &taken);
}
