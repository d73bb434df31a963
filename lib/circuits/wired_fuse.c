/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- a fuse ---- */

static const struct oc_wired_words fuse_look = {
    .name = "look-{}",
    .what = "{} out: wire whole, and 0 ohm across it: good",
    .points = "its two blades",
    .condition = "key off",
    .load = "none",
    .tool = "meter",
    .minutes = "2",
    .caution = "Key off. " OC_SAY_NO_LARGER,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words fuse_holds = {
    .name = "holds-{}",
    .what = "A new {} of the same rating, fans plugged in and asked for: it holds: good",
    .points = "holder of {}",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "hands",
    .minutes = "3",
    .caution = OC_SAY_NO_LARGER OC_SAY_FAN_STARTS,
    .source = "GM Epica workshop manual, 2006, circuit diagnosis: a fuse that opens when the fan "
              "is turned on suspects the motor",
};
static const struct oc_wired_words fuse_holds_bare = {
    .name = "holds-bare-{}",
    .what = "Another new {} of the same rating, fans unplugged, asked for: it holds: good",
    .points = "holder of {}",
    .condition = OC_SAY_ASKED,
    .load = "none",
    .tool = "hands",
    .minutes = "3",
    .caution = OC_SAY_NO_LARGER OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};

/* "NAME=bad" of a test of a fuse. */
static const char *when_bad(char *cell, size_t size, const struct oc_wired_words *words,
                            const struct oc_wired_gaps *gaps) {
  struct oc_text text = oc_text_begin(cell, size);
  oc_wired_fill(&text, words->name, gaps);
  oc_text_add(&text, "=bad");
  return cell;
}

void oc_wired_add_of_fuse(struct oc_wired_maker *maker, size_t fuse) {
  char needs[2 * OC_WIRING_NAME];
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, fuse)->name};
  const struct oc_look look = {.kind = OC_LOOK_FUSE, .at = fuse};
  struct oc_wired_extras extras = {0};
  const struct oc_setup at_rest = {.key = false};
  struct oc_setup setup = oc_wired_asked(maker);
  oc_wired_add(maker, &fuse_look, &gaps, &extras, &at_rest, &look);
  setup.spare = oc_set_of(fuse);
  extras.needs = when_bad(needs, sizeof needs, &fuse_look, &gaps);
  oc_wired_add(maker, &fuse_holds, &gaps, &extras, &setup, &look);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->kind == OC_THING_MOTOR)
      setup.unplugged |= oc_wired_plugged(maker, i);
  extras.needs = when_bad(needs, sizeof needs, &fuse_holds, &gaps);
  oc_wired_add(maker, &fuse_holds_bare, &gaps, &extras, &setup, &look);
}

/* ---- a switch ---- */

static const struct oc_wired_words bridged = {
    .name = "bridge-{}",
    .what = "The plug of {} bridged by a fused jumper, key on: {2} runs: good",
    .points = "the two terminals of its plug",
    .condition = "engine cold, key off while unplugging",
    .load = "fan",
    .tool = "jumper",
    .minutes = "4",
    .caution = OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD
    "Its wire as thick as the fan's where it carries the fan. ",
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words switch_hot = {
    .name = "hot-{}",
    .what = "{} hot: next to 0 ohm; open from closed, not what it carries",
    .points = "its own pins, plug off",
    .condition = "engine-heat just seen, key off",
    .load = "none",
    .tool = "meter",
    .minutes = "4",
    .unit = "ohm",
    .error = "1%+0.5",
    .caution = OC_SAY_HOT_ENGINE OC_SAY_FAN_STARTS,
    .source = "Honda CRX workshop manual, page 16-68: closes at 88.5 to 91.5 C",
};

static const struct oc_wired_words switch_lit = {
    .name = "lit-{}",
    .what = "{} in hot water, a 55 W bulb through it bright: good",
    .points = "battery +, {}, bulb, battery -",
    .condition = "switch out, its thread in water as hot as it should close",
    .load = "bulb",
    .tool = "bulb leads thermometer",
    .minutes = "30",
    .caution = "Cold engine: drain below it first. Hot water scalds. " OC_SAY_BULB_LEAD,
    .source = "Audi 100 repair text, 1980s: lights at 93 to 98 C",
};

void oc_wired_add_of_switch(struct oc_wired_maker *maker, size_t at) {
  const struct oc_thing *thing = oc_wired_thing(maker, at);
  const struct oc_wired_gaps gaps = {.subject = thing->name};
  struct oc_setup bridge = {.key = true, .unplugged = oc_wired_plugged(maker, at)};
  struct oc_setup in_water = {.asked = thing->asked & ~(unsigned)OC_WAY_AC,
                              .unplugged = oc_wired_plugged(maker, at) & ~oc_set_of(at)};
  oc_wired_put(&bridge,
               oc_wired_lead(oc_wired_pin(maker, at, 0)->from, oc_wired_pin(maker, at, 1)->from));
  oc_wired_add_for_motors(maker, &bridged, thing->name, NULL, &bridge);
  struct oc_setup hot = in_water;
  oc_wired_put(&hot, oc_wired_ohmmeter(thing->from, thing->to));
  oc_wired_add(maker, &switch_hot, &gaps,
               &(struct oc_wired_extras){.high = "5", .needs = "engine-heat=good"}, &hot,
               &(struct oc_look){.kind = OC_LOOK_OHMS, .limits = {NAN, 5}});
  oc_wired_put(&in_water, oc_wired_lead(OC_POINT_PLUS, thing->from));
  oc_wired_put(&in_water, oc_wired_bulb(thing->to, OC_POINT_MINUS));
  oc_wired_add(maker, &switch_lit, &gaps, &(struct oc_wired_extras){0}, &in_water,
               &(struct oc_look){.kind = OC_LOOK_BULB, .at = 1});
}
