/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- a fuse ---- */

static const struct oc_wired_words fuse_look = {"look-{}",
                                                "{} out: wire whole, and 0 ohm across it: good",
                                                "its two blades",
                                                "key off",
                                                "none",
                                                "meter",
                                                "2",
                                                "",
                                                "",
                                                "Key off. " OC_SAY_NO_LARGER,
                                                OC_SAY_PRACTICE};
static const struct oc_wired_words fuse_holds = {
    "holds-{}",
    "A new {} of the same rating, fans plugged in and asked for: it holds: good",
    "holder of {}",
    OC_ASKED_SO,
    "fan",
    "hands",
    "3",
    "",
    "",
    OC_SAY_NO_LARGER OC_SAY_FAN_STARTS,
    "GM Epica workshop manual, 2006, circuit diagnosis: a fuse that opens when the fan is turned "
    "on "
    "suspects the motor"};
static const struct oc_wired_words fuse_holds_bare = {
    "holds-bare-{}",
    "Another new {} of the same rating, fans unplugged, asked for: it holds: good",
    "holder of {}",
    OC_ASKED_SO,
    "none",
    "hands",
    "3",
    "",
    "",
    OC_SAY_NO_LARGER OC_SAY_FAN_STARTS,
    OC_SAY_PRACTICE};

void oc_wired_add_of_fuse(struct oc_wired_maker *maker, size_t fuse, oc_set motors) {
  char needs[2 * OC_WIRING_NAME];
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, fuse)->name};
  struct oc_look look = {.kind = OC_LOOK_FUSE, .at = fuse, .setup = oc_wired_asked(maker)};
  oc_wired_add(maker, &fuse_look, &gaps, &(struct oc_wired_extras){0}, &look);
  struct oc_text text = oc_text_begin(needs, sizeof needs);
  oc_wired_fill(&text, fuse_look.name, &gaps);
  oc_text_add(&text, "=bad");
  look.setup.spare = oc_set_of(fuse);
  oc_wired_add(maker, &fuse_holds, &gaps, &(struct oc_wired_extras){.needs = needs}, &look);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (motors & oc_set_of(i))
      look.setup.unplugged |= oc_wired_plugged(maker, i);
  text = oc_text_begin(needs, sizeof needs);
  oc_wired_fill(&text, fuse_holds.name, &gaps);
  oc_text_add(&text, "=bad");
  oc_wired_add(maker, &fuse_holds_bare, &gaps, &(struct oc_wired_extras){.needs = needs}, &look);
}

/* ---- a switch ---- */

static const struct oc_wired_words bridged = {
    "bridge-{}",
    "The plug of {} bridged by a fused jumper, key on: {2} runs: good",
    "the two terminals of its plug",
    "engine cold, key off while unplugging",
    "fan",
    "jumper",
    "4",
    "",
    "",
    OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD "Its wire as thick as the fan's where it carries the fan. ",
    OC_SAY_PRACTICE};
static const struct oc_wired_words switch_hot = {
    "hot-{}",
    "{} hot: next to 0 ohm; open from closed, not what it carries",
    "its own pins, plug off",
    "engine-heat just seen, key off",
    "none",
    "meter",
    "4",
    "ohm",
    "1%+0.5",
    OC_SAY_HOT_ENGINE OC_SAY_FAN_STARTS,
    "Honda CRX workshop manual, page 16-68: closes at 88.5 to 91.5 C"};

void oc_wired_add_of_switch(struct oc_wired_maker *maker, size_t at, oc_set motors) {
  const struct oc_thing *thing = oc_wired_thing(maker, at);
  struct oc_setup setup = {.key = true, .unplugged = oc_wired_plugged(maker, at)};
  oc_wired_put(&setup,
               oc_wired_lead(oc_wired_pin(maker, at, 0)->from, oc_wired_pin(maker, at, 1)->from));
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    if (!(motors & oc_set_of(i)) || !oc_wired_turns(maker, &setup, i))
      continue;
    const struct oc_wired_gaps gaps = {
        .subject = thing->name,
        .other = oc_set_size(motors) > 1 ? oc_wired_thing(maker, i)->name : NULL,
        .second = oc_wired_thing(maker, i)->name};
    const struct oc_look look = {.kind = OC_LOOK_FAN, .at = i, .setup = setup};
    oc_wired_add(maker, &bridged, &gaps, &(struct oc_wired_extras){0}, &look);
  }
  if ((thing->asked & OC_WAY_HOT) == 0)
    return;
  const struct oc_wired_gaps gaps = {.subject = thing->name};
  struct oc_look look = {
      .kind = OC_LOOK_OHMS,
      .limits = {NAN, 5},
      .setup = {.asked = OC_WAY_HOT, .unplugged = oc_wired_plugged(maker, at) & ~oc_set_of(at)}};
  oc_wired_put(&look.setup, (struct oc_across){
                                .plus = thing->from, .minus = thing->to, .ohm = 1000, .volts = 1});
  oc_wired_add(maker, &switch_hot, &gaps,
               &(struct oc_wired_extras){.high = "5", .needs = "engine-heat=good"}, &look);
}
