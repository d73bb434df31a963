/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- volts that are lost ---- */

static const struct oc_wired_words lost_volts = {
    .name = "lost-{}",
    .what = "Volts lost from {1} to {2}",
    .points = "{1} to {2}, from behind, all plugged in",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "meter",
    .minutes = "4",
    .unit = "V",
    .error = "1%+0.01",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words post_volts = {
    .name = "post-volts",
    .what = "Volts at the battery posts with the fan asked for",
    .points = "battery post to battery post",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "meter",
    .minutes = "3",
    .unit = "V",
    .error = "1%+0.02",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};

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
    return thing->kind == OC_THING_RESISTOR ||
           (thing->kind == OC_THING_CONDUCTOR && OC_ROLE_WIRE <= thing->role &&
            thing->role <= OC_ROLE_GROUND);
  }
  return true;
}

/* Asked in the first way in which it carries a fan's current. */
static const struct oc_wired_asking *asking_through(struct oc_wired_maker *maker, size_t at,
                                                    struct oc_drive_result *sound) {
  for (size_t i = 0; i < maker->asking_count; i++) {
    const struct oc_wired_asking *asking = &maker->askings[i];
    if (oc_drive_sound(maker->drive, maker->wiring, &asking->setup, sound) &&
        fabs(sound->chain_a[maker->drive->chains.chain_of[at]]) > OC_CARRIES_A)
      return asking;
  }
  return NULL;
}

/* A resistor loses volts as it should; open it loses all there are. */
static double most_lost(const struct oc_thing *thing, double lost_v) {
  return thing->kind == OC_THING_RESISTOR ? (lost_v + OC_BATTERY_AT_REST_V) / 2
                                          : 2 * OC_CAR_SPREAD * lost_v + OC_LOST_V;
}

void oc_wired_add_lost(struct oc_wired_maker *maker, size_t at) {
  char high[40];
  size_t from;
  size_t to;
  struct oc_drive_result sound;
  if (!ends_of(maker, at, &from, &to))
    return;
  const struct oc_wired_asking *asking = asking_through(maker, at, &sound);
  if (!asking)
    return;
  double lost_v = sound.volts[from] - sound.volts[to];
  size_t plus = lost_v < 0 ? to : from;
  size_t minus = lost_v < 0 ? from : to;
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, at)->name,
                                     .first = oc_wired_point(maker, plus),
                                     .second = oc_wired_point(maker, minus),
                                     .asked = asking->said};
  const struct oc_wired_extras extras = {
      .high =
          oc_wired_figure(high, sizeof high, most_lost(oc_wired_thing(maker, at), fabs(lost_v)))};
  oc_wired_add(maker, &lost_volts, &gaps, &extras, &asking->setup,
               &(struct oc_look){.kind = OC_LOOK_VOLTS,
                                 .plus = plus,
                                 .minus = minus,
                                 .limits = {NAN, oc_wired_judged(high)}});
}

void oc_wired_add_post_volts(struct oc_wired_maker *maker) {
  const struct oc_setup setup = oc_wired_asked(maker);
  oc_wired_add(maker, &post_volts, &(struct oc_wired_gaps){0},
               &(struct oc_wired_extras){.low = "11"}, &setup,
               &(struct oc_look){.kind = OC_LOOK_VOLTS,
                                 .plus = OC_POINT_PLUS,
                                 .minus = OC_POINT_MINUS,
                                 .limits = {11, NAN}});
}

/* ---- where a wire may rub ---- */

static const struct oc_wired_words rubs = {
    .name = "rub-{}",
    .what = "Ohms from {} to {2}: it has not rubbed through",
    .points = "{1} to {2}",
    .condition = "battery lead off; fans, relays, switches, fuses and module unplugged",
    .load = "none",
    .tool = "meter",
    .minutes = "8",
    .unit = "ohm",
    .error = "1%+0.5",
    .caution = "Battery ground lead off first. Look along it at mounts and shroud. ",
    .source =
        "Saturn bulletin 00-T-04, January 2000: the wires of the fan rub on the radiator mount",
};

void oc_wired_add_rub(struct oc_wired_maker *maker, size_t chafe) {
  const struct oc_thing *thing = oc_wired_thing(maker, chafe);
  struct oc_setup setup = {.key = false};
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    enum oc_thing_kind kind = oc_wired_thing(maker, i)->kind;
    if (kind != OC_THING_CONDUCTOR && kind != OC_THING_CHAFE && kind != OC_THING_RESISTOR)
      setup.unplugged |= oc_set_of(i);
  }
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, thing->of)->name,
                                     .first = oc_wired_point(maker, thing->from),
                                     .second = oc_wired_point(maker, thing->to)};
  oc_wired_put(&setup, oc_wired_ohmmeter(thing->from, thing->to));
  oc_wired_add(maker, &rubs, &gaps, &(struct oc_wired_extras){.low = "1000"}, &setup,
               &(struct oc_look){.kind = OC_LOOK_OHMS, .limits = {1000, NAN}});
}

/* ---- a bulb anywhere ---- */

static const struct oc_wired_words bulb_from = {
    .name = "from-{}",
    .what = "A 55 W bulb is bright: good",
    .points = "{} to battery -",
    .condition = "{1}",
    .load = "bulb",
    .tool = "bulb",
    .minutes = "3",
    .caution = OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD OC_SAY_MODULE_WIRES,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words bulb_to = {
    .name = "to-{}",
    .what = "A 55 W bulb is bright: good",
    .points = "battery + to {}",
    .condition = "{1}",
    .load = "bulb",
    .tool = "bulb",
    .minutes = "3",
    .caution = OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD OC_SAY_MODULE_WIRES,
    .source = OC_SAY_PRACTICE,
};

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

static void add_bulb(struct oc_wired_maker *maker, const struct oc_wired_words *words, size_t point,
                     const char *condition, oc_set unplugged) {
  bool to_here = words == &bulb_to;
  const struct oc_wired_gaps gaps = {.subject = oc_wired_point(maker, point), .first = condition};
  struct oc_setup setup = {.key = !to_here, .unplugged = unplugged};
  if (point <= OC_POINT_PLUS || reaches_output(maker, point))
    return;
  oc_wired_put(&setup, to_here ? oc_wired_bulb(OC_POINT_PLUS, point)
                               : oc_wired_bulb(point, OC_POINT_MINUS));
  oc_wired_add(maker, words, &gaps, &(struct oc_wired_extras){0}, &setup,
               &(struct oc_look){.kind = OC_LOOK_BULB});
}

void oc_wired_add_at_points(struct oc_wired_maker *maker) {
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    const struct oc_thing *thing = oc_wired_thing(maker, i);
    const char *end = strrchr(thing->name, '.');
    bool is_coil = thing->role == OC_ROLE_SOCKET && strncmp(end, ".8", 2) == 0 && end[2] != '7';
    if (thing->role == OC_ROLE_SOCKET) {
      oc_set out = oc_wired_relay_out(maker, thing->of);
      add_bulb(maker, &bulb_from, thing->from, "relay out, key on", out);
      if (!is_coil)
        add_bulb(maker, &bulb_to, thing->from, "relay out", out);
    } else if (thing->kind == OC_THING_FUSE) {
      add_bulb(maker, &bulb_from, thing->to, "fuse in, key on", 0);
      add_bulb(maker, &bulb_from, oc_wired_thing(maker, i - 1)->from, "fuse out, key on",
               oc_set_of(i));
    } else if (thing->kind == OC_THING_SWITCH) {
      for (int pin = 0; pin < 2; pin++) {
        size_t point = oc_wired_pin(maker, i, pin)->from;
        add_bulb(maker, &bulb_from, point, "plug of the switch off, key on",
                 oc_wired_plugged(maker, i));
        add_bulb(maker, &bulb_to, point, "plug of the switch off", oc_wired_plugged(maker, i));
      }
    } else if (thing->role == OC_ROLE_GROUND) {
      add_bulb(maker, &bulb_to, thing->from, "key off", 0);
    }
  }
}
