/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- a relay ---- */

static const struct oc_wired_words jumped = {
    .name = "jump-{}",
    .what = "Fused jumper from 30 to 87 of {}: {2} runs: good",
    .points = "socket of {}, 30 to 87",
    .condition = "relay out",
    .load = "fan",
    .tool = "jumper",
    .minutes = "4",
    .caution = OC_SAY_RELAY_OUT OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD,
    .source = "GMC Yukon service manual, 1997, auxiliary fan does not operate",
};
static const struct oc_wired_words clicks = {
    .name = "click-{}",
    .what = "{} clicks under a finger: good; it says nothing of the contact",
    .points = "{}",
    .condition = OC_SAY_ASKED,
    .load = "none",
    .tool = "hands",
    .minutes = "2",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words spare = {
    .name = "spare-{}",
    .what = "An identical relay in place of {}: {2} runs: good",
    .points = "socket of {}",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "relay",
    .minutes = "3",
    .caution = OC_SAY_RELAY_OUT OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words on_bench = {
    .name = "bench-{}",
    .what = "{} in the hand, 12 V on its coil: a 55 W bulb through 30 and 87 is bright: good",
    .points = "its own pins",
    .condition = "relay out, on the bench",
    .load = "bulb",
    .tool = "bulb leads",
    .minutes = "8",
    .caution = OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words at_rest = {
    .name = "bench-rest-{}",
    .what = "{} in the hand, coil not fed: a 55 W bulb through 30 and 87a is bright: good",
    .points = "its own pins",
    .condition = "relay out, on the bench",
    .load = "bulb",
    .tool = "bulb leads",
    .minutes = "6",
    .caution = OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words coil_ohms = {
    .name = "coil-{}",
    .what = "Ohms of the coil of {}",
    .points = "its 85 to 86; with a diode inside, both ways round",
    .condition = "relay out",
    .load = "none",
    .tool = "meter",
    .minutes = "4",
    .unit = "ohm",
    .error = "1%+0.5",
    .caution = OC_SAY_RELAY_OUT,
    .source = "Daewoo Lacetti workshop manual, 2009, cooling fan always on: 70 to 110 ohm",
};

static void add_jumps(struct oc_wired_maker *maker, size_t relay) {
  size_t feed = oc_wired_cavity(maker, relay, ".30");
  size_t make = oc_wired_cavity(maker, relay, ".87");
  struct oc_setup setup = {.unplugged = oc_wired_relay_out(maker, relay), .key = true};
  if (feed == OC_WIRING_THINGS || make == OC_WIRING_THINGS)
    return;
  oc_wired_put(&setup,
               oc_wired_lead(oc_wired_thing(maker, feed)->from, oc_wired_thing(maker, make)->from));
  oc_wired_add_for_motors(maker, &jumped, maker->wiring->relays[relay], NULL, &setup);
}

static void add_spares(struct oc_wired_maker *maker, size_t relay) {
  struct oc_setup setup = oc_wired_asked(maker);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_is_of_relay(oc_wired_thing(maker, i), relay) &&
        oc_wired_thing(maker, i)->role != OC_ROLE_SOCKET)
      setup.spare |= oc_set_of(i);
  oc_wired_add_for_motors(maker, &spare, maker->wiring->relays[relay], NULL, &setup);
}

/* Out of its socket. */
static struct oc_setup in_hand(const struct oc_wired_maker *maker, size_t relay) {
  struct oc_setup setup = {.unplugged = 0};
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->role == OC_ROLE_SOCKET && oc_wired_thing(maker, i)->of == relay)
      setup.unplugged |= oc_set_of(i);
  return setup;
}

static void add_coil_ohms(struct oc_wired_maker *maker, const struct oc_thing *coil,
                          const struct oc_wired_gaps *gaps) {
  char low[40];
  char high[40];
  const struct oc_wired_extras extras = {
      .low = oc_wired_figure(low, sizeof low, (1 - OC_COIL_SPREAD) * coil->value),
      .high = oc_wired_figure(high, sizeof high, (1 + OC_COIL_SPREAD) * coil->value)};
  struct oc_setup setup = in_hand(maker, coil->of);
  oc_wired_put(&setup, oc_wired_ohmmeter(coil->from, coil->to));
  oc_wired_add(maker, &coil_ohms, gaps, &extras, &setup,
               &(struct oc_look){.kind = OC_LOOK_OHMS,
                                 .limits = {oc_wired_judged(low), oc_wired_judged(high)}});
}

/* With 12 V on its coil, a bulb through its contact. */
static void add_bench(struct oc_wired_maker *maker, const struct oc_thing *coil,
                      const struct oc_wired_gaps *gaps) {
  size_t feed = oc_wired_cavity(maker, coil->of, ".30");
  size_t make = oc_wired_cavity(maker, coil->of, ".87");
  struct oc_setup setup = in_hand(maker, coil->of);
  if (feed == OC_WIRING_THINGS || make == OC_WIRING_THINGS)
    return;
  oc_wired_put(&setup, oc_wired_lead(OC_POINT_PLUS, coil->from));
  oc_wired_put(&setup, oc_wired_lead(coil->to, OC_POINT_MINUS));
  oc_wired_put(&setup, oc_wired_lead(OC_POINT_PLUS, oc_wired_thing(maker, feed)->to));
  oc_wired_put(&setup, oc_wired_bulb(oc_wired_thing(maker, make)->to, OC_POINT_MINUS));
  oc_wired_add(maker, &on_bench, gaps, &(struct oc_wired_extras){0}, &setup,
               &(struct oc_look){.kind = OC_LOOK_BULB, .at = 3});
}

static void add_bench_at_rest(struct oc_wired_maker *maker, size_t relay,
                              const struct oc_wired_gaps *gaps) {
  size_t feed = oc_wired_cavity(maker, relay, ".30");
  size_t rest = oc_wired_cavity(maker, relay, ".87a");
  struct oc_setup setup = in_hand(maker, relay);
  if (feed == OC_WIRING_THINGS || rest == OC_WIRING_THINGS)
    return;
  oc_wired_put(&setup, oc_wired_lead(OC_POINT_PLUS, oc_wired_thing(maker, feed)->to));
  oc_wired_put(&setup, oc_wired_bulb(oc_wired_thing(maker, rest)->to, OC_POINT_MINUS));
  oc_wired_add(maker, &at_rest, gaps, &(struct oc_wired_extras){0}, &setup,
               &(struct oc_look){.kind = OC_LOOK_BULB, .at = 1});
}

void oc_wired_add_of_relay(struct oc_wired_maker *maker, size_t relay) {
  const struct oc_wired_gaps gaps = {.subject = maker->wiring->relays[relay]};
  const struct oc_setup asked = oc_wired_asked(maker);
  add_jumps(maker, relay);
  oc_wired_add(maker, &clicks, &gaps, &(struct oc_wired_extras){0}, &asked,
               &(struct oc_look){.kind = OC_LOOK_CLICK, .at = relay});
  add_spares(maker, relay);
  add_bench_at_rest(maker, relay, &gaps);
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    const struct oc_thing *thing = oc_wired_thing(maker, i);
    if (thing->kind != OC_THING_COIL || thing->of != relay)
      continue;
    add_coil_ohms(maker, thing, &gaps);
    add_bench(maker, thing, &gaps);
  }
}

/* ---- the side that asks ---- */

static const struct oc_wired_words pulled = {
    .name = "pull-{}",
    .what = "{1} grounded by a fused lead, module unplugged, key on: {2} runs: good",
    .points = "plug of the module, pin of {1}",
    .condition = "relay in; key off while unplugging",
    .load = "fan",
    .tool = "jumper",
    .minutes = "6",
    .caution = OC_SAY_FAN_STARTS
    "Find the pin in the drawing first: a lead on another pin ruins the module. ",
    .source = "GMC Yukon service manual, 1997, auxiliary fan does not operate",
};
static const struct oc_wired_words coil_volts = {
    .name = "coil-volts-{}",
    .what = "Volts between 85 and 86 in the socket of {}",
    .points = "socket of {}, 85 to 86",
    .condition = OC_SAY_ASKED,
    .load = "none",
    .tool = "meter",
    .minutes = "4",
    .unit = "V",
    .error = "1%+0.02",
    .caution = OC_SAY_RELAY_OUT,
    .source = "Subaru Legacy workshop manual, 2000, P0480: more than 10 V",
};

static const struct oc_wired_words coil_lamp = {
    .name = "coil-lamp-{}",
    .what = "A 2 W lamp between 85 and 86 in the socket of {} is bright: good",
    .points = "socket of {}, 85 to 86",
    .condition = OC_SAY_ASKED,
    .load = "none",
    .tool = "lamp",
    .minutes = "4",
    .caution = OC_SAY_RELAY_OUT "2 W at the most: no more current than the coil takes. ",
    .source = OC_SAY_PRACTICE,
};

void oc_wired_add_pull(struct oc_wired_maker *maker, size_t output) {
  const struct oc_thing *thing = oc_wired_thing(maker, output);
  struct oc_setup setup = {.key = true,
                           .unplugged = oc_wired_things(maker->wiring, OC_THING_OUTPUT)};
  if (thing->from == OC_POINT_PLUS || thing->to != OC_POINT_MINUS)
    return;
  oc_wired_put(&setup, oc_wired_lead(thing->from, OC_POINT_MINUS));
  oc_wired_add_for_motors(maker, &pulled, thing->name, oc_wired_point(maker, thing->from), &setup);
}

void oc_wired_add_coil_volts(struct oc_wired_maker *maker, size_t relay) {
  size_t first = oc_wired_cavity(maker, relay, ".85");
  size_t second = oc_wired_cavity(maker, relay, ".86");
  if (first == OC_WIRING_THINGS || second == OC_WIRING_THINGS)
    return;
  size_t ends[] = {oc_wired_thing(maker, first)->from, oc_wired_thing(maker, second)->from};
  const struct oc_wired_gaps gaps = {.subject = maker->wiring->relays[relay]};
  struct oc_setup setup = oc_wired_asked(maker);
  setup.unplugged |= oc_wired_relay_out(maker, relay);
  /* One of the two ways round is the right one. */
  for (int i = 0; i < 2; i++)
    oc_wired_add(
        maker, &coil_volts, &gaps, &(struct oc_wired_extras){.low = "9"}, &setup,
        &(struct oc_look){
            .kind = OC_LOOK_VOLTS, .plus = ends[i], .minus = ends[1 - i], .limits = {9, NAN}});
  const struct oc_look look = {.kind = OC_LOOK_BULB, .at = setup.across_count};
  oc_wired_put(&setup, (struct oc_across){.plus = ends[0], .minus = ends[1], .watt = OC_LAMP_WATT});
  oc_wired_add(maker, &coil_lamp, &gaps, &(struct oc_wired_extras){0}, &setup, &look);
}
