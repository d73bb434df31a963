/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- volts that are lost ---- */

static const struct oc_wired_words lost_volts = {"lost-{}",
                                                 "Volts lost from {1} to {2}",
                                                 "{1} to {2}, from behind, all plugged in",
                                                 OC_ASKED_SO,
                                                 "fan",
                                                 "meter",
                                                 "4",
                                                 "V",
                                                 "1%+0.01",
                                                 OC_SAY_FAN_STARTS,
                                                 OC_SAY_PRACTICE};
static const struct oc_wired_words lost_hot = {"lost-{}",
                                               "Volts lost from {1} to {2}",
                                               "{1} to {2}, from behind, all plugged in",
                                               "engine idling, hot",
                                               "fan",
                                               "meter",
                                               "4",
                                               "V",
                                               "1%+0.01",
                                               OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
                                               OC_SAY_PRACTICE};
static const struct oc_wired_words post_volts = {
    "post-volts",
    "Volts at the battery posts with the fan asked for",
    "battery post to battery post",
    OC_ASKED_SO,
    "fan",
    "meter",
    "3",
    "V",
    "1%+0.02",
    OC_SAY_FAN_STARTS,
    OC_SAY_PRACTICE};

/* With all that belongs to it: the clips of a fuse, the socket of a contact, the pins of a switch;
 * false of what belongs to another. */
static bool ends_of(const struct oc_wired_maker *maker, size_t at, size_t *from, size_t *to) {
  const struct oc_thing *thing = oc_wired_thing(maker, at);
  *from = thing->from;
  *to = thing->to;
  if (thing->kind == OC_THING_FUSE)
    *from = oc_wired_thing(maker, at - 1)->from;
  else if (thing->kind == OC_THING_SWITCH) {
    *from = oc_wired_pin(maker, at, 0)->from;
    *to = oc_wired_pin(maker, at, 1)->from;
  } else if (thing->kind == OC_THING_CONTACT || thing->kind == OC_THING_REST) {
    *from = oc_wired_thing(maker, oc_wired_cavity(maker, thing->of, ".30"))->from;
    *to = oc_wired_thing(maker, oc_wired_cavity(maker, thing->of,
                                                thing->kind == OC_THING_REST ? ".87a" : ".87"))
              ->from;
  } else {
    return thing->kind == OC_THING_CONDUCTOR && OC_ROLE_WIRE <= thing->role &&
           thing->role <= OC_ROLE_GROUND;
  }
  return true;
}

void oc_wired_add_lost(struct oc_wired_maker *maker, size_t at) {
  char high[40];
  size_t from;
  size_t to;
  if (!ends_of(maker, at, &from, &to))
    return;
  struct oc_look look = {.kind = OC_LOOK_VOLTS, .setup = oc_wired_asked(maker)};
  /* What is bridged loses nothing. */
  bool by_heat = (look.setup.unplugged & oc_set_of(at)) != 0;
  if (by_heat)
    look.setup = (struct oc_setup){.asked = OC_WAY_HOT, .key = true};
  look.at = look.setup.across_count;
  oc_wired_put(&look.setup, oc_wired_meter(from, to));
  struct oc_drive_result sound;
  oc_drive_begin(maker->drive, maker->wiring, &look.setup);
  size_t chain = maker->drive->chains.chain_of[at];
  if (!oc_drive_run(maker->drive, (struct oc_failures){0, NULL, 0}, &sound) ||
      !(fabs(sound.chain_a[chain]) > OC_CARRIES_A))
    return;
  if (sound.volts[from] < sound.volts[to]) {
    size_t kept = from;
    from = to;
    to = kept;
    look.setup.across[look.at] = oc_wired_meter(from, to);
  }
  double lost_v = sound.volts[from] - sound.volts[to];
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, at)->name,
                                     .first = oc_wired_point(maker, from),
                                     .second = oc_wired_point(maker, to)};
  const struct oc_wired_extras extras = {
      .high = oc_wired_figure(high, sizeof high, 2 * OC_CAR_SPREAD * lost_v + OC_LOST_V)};
  look.limits = (struct oc_limits){NAN, oc_wired_judged(high)};
  oc_wired_add(maker, by_heat ? &lost_hot : &lost_volts, &gaps, &extras, &look);
}

void oc_wired_add_post_volts(struct oc_wired_maker *maker) {
  struct oc_look look = {
      .kind = OC_LOOK_VOLTS, .limits = {11, NAN}, .setup = oc_wired_asked(maker)};
  look.at = look.setup.across_count;
  oc_wired_put(&look.setup, oc_wired_meter(OC_POINT_PLUS, OC_POINT_MINUS));
  oc_wired_add(maker, &post_volts, &(struct oc_wired_gaps){0},
               &(struct oc_wired_extras){.low = "11"}, &look);
}

/* ---- a bulb anywhere ---- */

static const struct oc_wired_words from_here = {
    "from-{}",
    "A 55 W bulb is bright: good",
    "{} to battery -",
    "{1}",
    "bulb",
    "bulb",
    "3",
    "",
    "",
    OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD OC_SAY_MODULE_WIRES,
    OC_SAY_PRACTICE};
static const struct oc_wired_words to_here = {"to-{}",
                                              "A 55 W bulb is bright: good",
                                              "battery + to {}",
                                              "{1}",
                                              "bulb",
                                              "bulb",
                                              "3",
                                              "",
                                              "",
                                              OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD OC_SAY_MODULE_WIRES,
                                              OC_SAY_PRACTICE};

/* Whether a module's output can be reached from a point through what only joins. */
static bool reaches_output(const struct oc_wired_maker *maker, size_t point) {
  bool reached[OC_WIRING_POINTS] = {false};
  reached[point] = true;
  for (bool more = true; more;) {
    more = false;
    for (size_t i = 0; i < maker->wiring->thing_count; i++) {
      const struct oc_thing *thing = oc_wired_thing(maker, i);
      bool at = reached[thing->from] || reached[thing->to];
      if (thing->kind == OC_THING_OUTPUT && at)
        return true;
      if (thing->kind == OC_THING_CONDUCTOR && thing->from > OC_POINT_PLUS &&
          thing->to > OC_POINT_PLUS && reached[thing->from] != reached[thing->to]) {
        reached[thing->from] = reached[thing->to] = true;
        more = true;
      }
    }
  }
  return false;
}

/* In  only_from  whether a bulb to plus is put there too */
static void add_bulbs(struct oc_wired_maker *maker, size_t point, const char *condition,
                      oc_set unplugged, bool to_too) {
  const struct oc_wired_gaps gaps = {.subject = oc_wired_point(maker, point), .first = condition};
  if (point <= OC_POINT_PLUS || reaches_output(maker, point))
    return;
  struct oc_look look = {.kind = OC_LOOK_BULB, .setup = {.key = true, .unplugged = unplugged}};
  oc_wired_put(&look.setup, oc_wired_bulb(point, OC_POINT_MINUS));
  oc_wired_add(maker, &from_here, &gaps, &(struct oc_wired_extras){0}, &look);
  if (!to_too)
    return;
  look = (struct oc_look){.kind = OC_LOOK_BULB, .setup = {.unplugged = unplugged}};
  oc_wired_put(&look.setup, oc_wired_bulb(OC_POINT_PLUS, point));
  oc_wired_add(maker, &to_here, &gaps, &(struct oc_wired_extras){0}, &look);
}

void oc_wired_add_at_points(struct oc_wired_maker *maker) {
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    const struct oc_thing *thing = oc_wired_thing(maker, i);
    const char *end = strrchr(thing->name, '.');
    bool is_coil = thing->role == OC_ROLE_SOCKET && strncmp(end, ".8", 2) == 0 && end[2] != '7';
    if (thing->role == OC_ROLE_SOCKET)
      add_bulbs(maker, thing->from, "relay out, key on", oc_wired_relay_out(maker, thing->of),
                !is_coil);
    else if (thing->kind == OC_THING_FUSE) {
      add_bulbs(maker, thing->to, "fuse in, key on", 0, false);
      add_bulbs(maker, oc_wired_thing(maker, i - 1)->from, "fuse out, key on", oc_set_of(i), false);
    } else if (thing->role == OC_ROLE_GROUND && thing->from > OC_POINT_PLUS)
      add_bulbs(maker, thing->from, "key off", 0, true);
  }
}
