/* SPDX-License-Identifier: MIT */
#include "failure.h"

/* Sizes are common practice, no source: open, which is all that befalls a fuse, a coil or a
 * resistor, then from what is hardly felt on, closest where a fan goes from well to badly. */
static const double resists_ohm[] = {INFINITY, 0.05, 0.1, 0.15, 0.2, 0.3, 0.45, 0.7,
                                     1,        2,    5,   50,   500, 5e3, 5e4};
static const double rubs_ohm[] = {0.02, 1};
static const double lacks_v[] = {1.5, 3, 6, 10};
static const double drags[] = {0.3, 0.6, 1, INFINITY}; /* of the running amperes */

enum {
  RESISTS = sizeof resists_ohm / sizeof resists_ohm[0],
  RUBS = sizeof rubs_ohm / sizeof rubs_ohm[0],
  LACKS = sizeof lacks_v / sizeof lacks_v[0],
  DRAGS = sizeof drags / sizeof drags[0]
};

_Static_assert(RESISTS + DRAGS <= OC_FAILURES_OF_ONE, "no room for every way a motor fails");

static void add(struct oc_failure **way, enum oc_failure_mode mode, double size) {
  (*way)->mode = mode;
  (*way)->size = size;
  (*way)++;
}

static void add_resists(struct oc_failure **way) {
  for (size_t i = 0; i < RESISTS; i++)
    add(way, OC_FAILURE_RESISTS, resists_ohm[i]);
}

static void add_drags(struct oc_failure **way, double running_a) {
  for (size_t i = 0; i < DRAGS; i++)
    add(way, OC_FAILURE_DRAGS, drags[i] * running_a);
}

/* What loses more ways than it need is not known from outside: each is a way to fail. */
static void add_silent(struct oc_failure **way, const struct oc_thing *thing) {
  (*way)->ways = thing->asked;
  add(way, OC_FAILURE_SILENT, 0);
  if (thing->opens != 0) {
    (*way)->ways = thing->asked | thing->opens;
    add(way, OC_FAILURE_SILENT, 0);
  }
}

size_t oc_failure_ways(const struct oc_wiring *wiring, size_t at, struct oc_failure *ways) {
  const struct oc_thing *thing = &wiring->things[at];
  struct oc_failure *way = ways;
  for (size_t i = 0; i < OC_FAILURES_OF_ONE; i++)
    ways[i] = (struct oc_failure){.thing = at};
  switch (thing->kind) {
  case OC_THING_FUSE:
  case OC_THING_COIL:
  case OC_THING_RESISTOR:
    add(&way, OC_FAILURE_RESISTS, INFINITY);
    break;
  case OC_THING_CHAFE:
    for (size_t i = 0; i < RUBS; i++)
      add(&way, OC_FAILURE_RUBS, rubs_ohm[i]);
    break;
  case OC_THING_BLADE:
    add_drags(&way, thing->value);
    break;
  case OC_THING_ASKER:
    add_silent(&way, thing);
    break;
  case OC_THING_MOTOR:
    add_resists(&way);
    add_drags(&way, thing->value);
    break;
  case OC_THING_CONTACT:
  case OC_THING_REST:
  case OC_THING_OUTPUT:
  case OC_THING_SWITCH:
    add_resists(&way);
    add(&way, OC_FAILURE_CLOSED, 0);
    add(&way, OC_FAILURE_NEVER, 0);
    break;
  case OC_THING_BATTERY:
    add_resists(&way);
    for (size_t i = 0; i < LACKS; i++)
      add(&way, OC_FAILURE_FLAT, lacks_v[i]);
    break;
  default:
    add_resists(&way);
  }
  return (size_t)(way - ways);
}
