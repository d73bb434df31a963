/* SPDX-License-Identifier: MIT */
/* One fan, one relay and a module, for the tests of everything that drives a wiring. */
#ifndef OHM_TESTS_ONE_FAN_H
#define OHM_TESTS_ONE_FAN_H

#include "../support.h"

#include <string.h>

#include "../../lib/circuits/wiring.h"

enum way { HOT = 1, AC = 2 };

static inline size_t point_of(struct oc_wiring *wiring, const char *name) {
  return oc_wiring_point(wiring, name, strlen(name));
}

static inline struct oc_thing *join(struct oc_wiring *wiring, const char *name,
                                    enum oc_thing_kind kind, const char *from, const char *to,
                                    double value) {
  struct oc_thing *thing =
      oc_wiring_add(wiring, name, kind, point_of(wiring, from), point_of(wiring, to), value);
  ck_assert_ptr_nonnull(thing);
  return thing;
}

/* Rail, 30 A fuse, relay, 15 A fan, ground point, strap; the coil is fed with the key on and
 * pulled to ground by the module. */
static inline void one_fan(struct oc_wiring *wiring) {
  join(wiring, "battery", OC_THING_BATTERY, "+", "-", 12.6);
  join(wiring, "strap", OC_THING_CONDUCTOR, "body", "-", 0);
  join(wiring, "rail", OC_THING_CONDUCTOR, "+", "rail", 0);
  join(wiring, "fuse", OC_THING_FUSE, "rail", "fuse.out", 30);
  join(wiring, "feed", OC_THING_CONDUCTOR, "fuse.out", "R.30", 0);
  join(wiring, "wire", OC_THING_CONDUCTOR, "R.87", "fan.plus", 0);
  join(wiring, "chafe", OC_THING_CHAFE, "fan.plus", "body", 0);
  ck_assert_ptr_nonnull(oc_wiring_add_plugged(wiring, "fan", OC_THING_MOTOR,
                                              point_of(wiring, "fan.plus"),
                                              point_of(wiring, "fan.minus"), 15));
  join(wiring, "ground", OC_THING_CONDUCTOR, "fan.minus", "G1", 0);
  join(wiring, "point", OC_THING_CONDUCTOR, "G1", "body", 0);
  join(wiring, "key-fuse", OC_THING_FUSE, "+", "key.out", 10)->key = true;
  join(wiring, "coil-feed", OC_THING_CONDUCTOR, "key.out", "R.85", 0);
  join(wiring, "control", OC_THING_CONDUCTOR, "R.86", "module", 0);
  join(wiring, "output", OC_THING_OUTPUT, "module", "-", 0)->asked = HOT | AC;
  ck_assert(oc_wiring_add_relay(wiring, "R", 90));
}

#endif
