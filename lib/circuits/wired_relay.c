/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- a relay ---- */

static const struct oc_wired_words jumped = {
    "jump-{}",
    "Fused jumper from 30 to 87 of {}: {2} runs: good",
    "socket of {}, 30 to 87",
    "relay out",
    "fan",
    "jumper",
    "4",
    "",
    "",
    OC_SAY_RELAY_OUT OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD,
    "GMC Yukon service manual, 1997, auxiliary fan does not operate"};
static const struct oc_wired_words clicks = {
    "click-{}",
    "{} clicks under a finger: good; it says nothing of the contact",
    "{}",
    OC_ASKED_SO,
    "none",
    "hands",
    "2",
    "",
    "",
    OC_SAY_FAN_STARTS,
    OC_SAY_PRACTICE};
static const struct oc_wired_words spare = {"spare-{}",
                                            "An identical relay in place of {}: {2} runs: good",
                                            "socket of {}",
                                            OC_ASKED_SO,
                                            "fan",
                                            "relay",
                                            "3",
                                            "",
                                            "",
                                            OC_SAY_RELAY_OUT OC_SAY_FAN_STARTS,
                                            OC_SAY_PRACTICE};
static const struct oc_wired_words on_bench = {
    "bench-{}",
    "{} in the hand, 12 V on its coil: a 55 W bulb through 30 and 87 is bright: good",
    "its own pins",
    "relay out, on the bench",
    "bulb",
    "bulb leads",
    "8",
    "",
    "",
    OC_SAY_RELAY_OUT OC_SAY_BULB_LEAD,
    OC_SAY_PRACTICE};
static const struct oc_wired_words coil_ohms = {
    "coil-{}",
    "Ohms of the coil of {}",
    "its 85 to 86; with a diode inside, both ways round",
    "relay out",
    "none",
    "meter",
    "4",
    "ohm",
    "1%+0.5",
    OC_SAY_RELAY_OUT,
    "Daewoo Lacetti workshop manual, 2009, cooling fan always on: 70 to 110 ohm"};

static void add_jumps(struct oc_wired_maker *maker, size_t relay, oc_set motors) {
  size_t feed = oc_wired_cavity(maker, relay, ".30");
  size_t make = oc_wired_cavity(maker, relay, ".87");
  if (feed == OC_WIRING_THINGS || make == OC_WIRING_THINGS)
    return;
  struct oc_setup setup = {.unplugged = oc_wired_relay_out(maker, relay), .key = true};
  oc_wired_put(&setup,
               oc_wired_lead(oc_wired_thing(maker, feed)->from, oc_wired_thing(maker, make)->from));
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    if (!(motors & oc_set_of(i)) || !oc_wired_turns(maker, &setup, i))
      continue;
    const struct oc_wired_gaps gaps = {
        .subject = maker->wiring->relays[relay],
        .other = oc_set_size(motors) > 1 ? oc_wired_thing(maker, i)->name : NULL,
        .second = oc_wired_thing(maker, i)->name};
    const struct oc_look look = {.kind = OC_LOOK_FAN, .at = i, .setup = setup};
    oc_wired_add(maker, &jumped, &gaps, &(struct oc_wired_extras){0}, &look);
  }
}

static void add_spares(struct oc_wired_maker *maker, size_t relay, oc_set motors) {
  struct oc_setup setup = oc_wired_asked(maker);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_is_of_relay(oc_wired_thing(maker, i), relay) &&
        oc_wired_thing(maker, i)->role != OC_ROLE_SOCKET)
      setup.spare |= oc_set_of(i);
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    if (!(motors & oc_set_of(i)) || !oc_wired_turns(maker, &setup, i))
      continue;
    const struct oc_wired_gaps gaps = {
        .subject = maker->wiring->relays[relay],
        .other = oc_set_size(motors) > 1 ? oc_wired_thing(maker, i)->name : NULL,
        .second = oc_wired_thing(maker, i)->name};
    const struct oc_look look = {.kind = OC_LOOK_FAN, .at = i, .setup = setup};
    oc_wired_add(maker, &spare, &gaps, &(struct oc_wired_extras){0}, &look);
  }
}

static void add_in_hand(struct oc_wired_maker *maker, size_t relay,
                        const struct oc_wired_gaps *gaps) {
  size_t coil_1 = oc_wired_cavity(maker, relay, ".85");
  size_t coil_2 = oc_wired_cavity(maker, relay, ".86");
  size_t feed = oc_wired_cavity(maker, relay, ".30");
  size_t make = oc_wired_cavity(maker, relay, ".87");
  char low[40];
  char high[40];
  if (coil_1 == OC_WIRING_THINGS || coil_2 == OC_WIRING_THINGS)
    return;
  size_t coil_from = oc_wired_thing(maker, coil_1)->to;
  size_t coil_to = oc_wired_thing(maker, coil_2)->to;
  struct oc_setup out = {.unplugged = 0};
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->role == OC_ROLE_SOCKET && oc_wired_thing(maker, i)->of == relay)
      out.unplugged |= oc_set_of(i);
  struct oc_look look = {.kind = OC_LOOK_OHMS, .setup = out};
  oc_wired_put(&look.setup,
               (struct oc_across){.plus = coil_from, .minus = coil_to, .ohm = 1000, .volts = 1});
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    const struct oc_thing *thing = oc_wired_thing(maker, i);
    if (thing->kind != OC_THING_COIL || thing->of != relay)
      continue;
    const struct oc_wired_extras extras = {
        .low = oc_wired_figure(low, sizeof low, (1 - OC_COIL_SPREAD) * thing->value),
        .high = oc_wired_figure(high, sizeof high, (1 + OC_COIL_SPREAD) * thing->value)};
    look.limits.low = oc_wired_judged(low);
    look.limits.high = oc_wired_judged(high);
    oc_wired_add(maker, &coil_ohms, gaps, &extras, &look);
  }
  if (feed == OC_WIRING_THINGS || make == OC_WIRING_THINGS)
    return;
  look = (struct oc_look){.kind = OC_LOOK_BULB, .at = 3, .setup = out};
  oc_wired_put(&look.setup, oc_wired_lead(OC_POINT_PLUS, coil_from));
  oc_wired_put(&look.setup, oc_wired_lead(coil_to, OC_POINT_MINUS));
  oc_wired_put(&look.setup, oc_wired_lead(OC_POINT_PLUS, oc_wired_thing(maker, feed)->to));
  oc_wired_put(&look.setup, oc_wired_bulb(oc_wired_thing(maker, make)->to, OC_POINT_MINUS));
  oc_wired_add(maker, &on_bench, gaps, &(struct oc_wired_extras){0}, &look);
}

void oc_wired_add_of_relay(struct oc_wired_maker *maker, size_t relay, oc_set motors) {
  const struct oc_wired_gaps gaps = {.subject = maker->wiring->relays[relay]};
  const struct oc_look look = {.kind = OC_LOOK_CLICK, .at = relay, .setup = oc_wired_asked(maker)};
  add_jumps(maker, relay, motors);
  oc_wired_add(maker, &clicks, &gaps, &(struct oc_wired_extras){0}, &look);
  add_spares(maker, relay, motors);
  add_in_hand(maker, relay, &gaps);
}

/* ---- the side that asks ---- */

static const struct oc_wired_words pulled = {
    "pull-{}",
    "{1} grounded by a fused lead, module unplugged, key on: {2} runs: good",
    "plug of the module, pin of {1}",
    "relay in; key off while unplugging",
    "fan",
    "jumper",
    "6",
    "",
    "",
    OC_SAY_FAN_STARTS "Find the pin in the drawing first: a lead on another pin ruins the module. ",
    "GMC Yukon service manual, 1997, auxiliary fan does not operate"};
static const struct oc_wired_words coil_volts = {
    "coil-volts-{}",
    "Volts between 85 and 86 in the socket of {}",
    "socket of {}, 85 to 86",
    OC_ASKED_SO,
    "none",
    "meter",
    "4",
    "V",
    "1%+0.02",
    OC_SAY_RELAY_OUT,
    "Subaru Legacy workshop manual, 2000, P0480: more than 10 V"};

static const struct oc_wired_words coil_lamp = {
    "coil-lamp-{}",
    "A 2 W lamp between 85 and 86 in the socket of {} is bright: good",
    "socket of {}, 85 to 86",
    OC_ASKED_SO,
    "none",
    "lamp",
    "4",
    "",
    "",
    OC_SAY_RELAY_OUT "2 W at the most: no more current than the coil takes. ",
    OC_SAY_PRACTICE};

void oc_wired_add_pull(struct oc_wired_maker *maker, size_t output, oc_set motors) {
  const struct oc_thing *thing = oc_wired_thing(maker, output);
  if (thing->from == OC_POINT_PLUS || thing->to != OC_POINT_MINUS)
    return;
  struct oc_setup setup = {.key = true,
                           .unplugged = oc_wired_things(maker->wiring, OC_THING_OUTPUT)};
  oc_wired_put(&setup, oc_wired_lead(thing->from, OC_POINT_MINUS));
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    if (!(motors & oc_set_of(i)) || !oc_wired_turns(maker, &setup, i))
      continue;
    const struct oc_wired_gaps gaps = {
        .subject = thing->name,
        .other = oc_set_size(motors) > 1 ? oc_wired_thing(maker, i)->name : NULL,
        .first = oc_wired_point(maker, thing->from),
        .second = oc_wired_thing(maker, i)->name};
    const struct oc_look look = {.kind = OC_LOOK_FAN, .at = i, .setup = setup};
    oc_wired_add(maker, &pulled, &gaps, &(struct oc_wired_extras){0}, &look);
  }
}

void oc_wired_add_coil_volts(struct oc_wired_maker *maker, size_t relay) {
  size_t first = oc_wired_cavity(maker, relay, ".85");
  size_t second = oc_wired_cavity(maker, relay, ".86");
  if (first == OC_WIRING_THINGS || second == OC_WIRING_THINGS)
    return;
  size_t from = oc_wired_thing(maker, first)->from;
  size_t to = oc_wired_thing(maker, second)->from;
  struct oc_look look = {.kind = OC_LOOK_VOLTS, .limits = {9, NAN}, .setup = oc_wired_asked(maker)};
  look.setup.unplugged |= oc_wired_relay_out(maker, relay);
  look.at = look.setup.across_count;
  oc_wired_put(&look.setup, oc_wired_meter(from, to));
  const struct oc_wired_gaps gaps = {.subject = maker->wiring->relays[relay]};
  oc_wired_add(maker, &coil_volts, &gaps, &(struct oc_wired_extras){.low = "9"}, &look);
  look.setup.across[look.at] = oc_wired_meter(to, from);
  oc_wired_add(maker, &coil_volts, &gaps, &(struct oc_wired_extras){.low = "9"}, &look);
  look.kind = OC_LOOK_BULB;
  look.setup.across[look.at] = (struct oc_across){.plus = from, .minus = to, .watt = OC_LAMP_WATT};
  oc_wired_add(maker, &coil_lamp, &gaps, &(struct oc_wired_extras){0}, &look);
}
