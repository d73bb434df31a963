/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* The ways of asking that a maker has to state first are facts of the circuit. */
static const char *fact_of(const struct oc_wired_maker *maker, unsigned way) {
  if ((maker->wiring->unsure_ways & way) == 0)
    return NULL;
  return way == OC_WAY_AC ? "ac-runs-fan" : way == OC_WAY_UNPLUGGED ? "open-sensor-runs-fan" : NULL;
}

/* ---- a fan, asked for ---- */

static const struct oc_wired_words starts = {"starts-{}",
                                             "{} starts by itself when the engine is hot: good",
                                             "{}",
                                             "engine idling, hot",
                                             "fan",
                                             "eyes",
                                             "1",
                                             "",
                                             "",
                                             OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
                                             OC_SAY_PRACTICE};
static const struct oc_wired_words fast = {
    "fast-{}",
    "{} runs fast when the engine is hotter than for its low speed: good",
    "{}",
    "engine idling, hotter still, never up to red",
    "fan",
    "eyes",
    "5",
    "",
    "",
    OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
    OC_SAY_PRACTICE};
static const struct oc_wired_words by_ac = {
    "ac-{}",
    "A/C on, coldest: {} runs: good",
    "A/C switch",
    "engine idling, cold or warm",
    "fan",
    "ac",
    "2",
    "",
    "",
    OC_SAY_FAN_STARTS OC_SAY_AIR,
    "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection"};
static const struct oc_wired_words by_unplugging = {
    "unplugged-{}",
    "Sensor unplugged, key on: {} runs: good",
    "plug of the sensor",
    "engine cold, key off while unplugging",
    "fan",
    "hands",
    "3",
    "",
    "",
    "Unplugging this sensor is itself a start command. " OC_SAY_FAN_STARTS,
    "Mercury Tracer workshop manual, 1997, cooling initial inspection"};
static const struct oc_wired_words by_command = {
    "commanded-{}",
    "{} commanded by the module's self-test or a scan tool: it runs: good",
    "scan tool: active test of the fan; self-test as the handbook says",
    "engine cold, key on",
    "fan",
    "active-scan",
    "3",
    "",
    "",
    OC_SAY_FAN_STARTS,
    OC_SAY_PRACTICE};
static const struct oc_wired_words at_rest = {"rest-{}",
                                              "{} stands still, nothing asks for it: good",
                                              "{}",
                                              "engine cold, key on",
                                              "fan",
                                              "eyes",
                                              "1",
                                              "",
                                              "",
                                              OC_SAY_FAN_STARTS,
                                              OC_SAY_PRACTICE};

void oc_wired_add_asked(struct oc_wired_maker *maker, size_t motor) {
  static const struct {
    const struct oc_wired_words *words;
    unsigned way;
    unsigned asked;
  } ways[] = {{&starts, OC_WAY_HOT, OC_WAY_HOT},
              {&fast, OC_WAY_HIGH, OC_WAY_HOT | OC_WAY_HIGH},
              {&by_ac, OC_WAY_AC, OC_WAY_AC},
              {&by_unplugging, OC_WAY_UNPLUGGED, OC_WAY_UNPLUGGED},
              {&by_command, OC_WAY_COMMANDED, OC_WAY_COMMANDED}};
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, motor)->name};
  const struct oc_wiring *wiring = maker->wiring;
  unsigned all = oc_wiring_ways(wiring);
  for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
    const struct oc_look look = {
        .kind = OC_LOOK_FAN, .at = motor, .setup = {.asked = ways[i].asked, .key = true}};
    const struct oc_wired_extras extras = {.role = ways[i].way == OC_WAY_HOT ? "symptom" : "",
                                           .only_if = fact_of(maker, ways[i].way)};
    if ((all & ways[i].way) != 0 && oc_wired_turns(maker, &look.setup, motor))
      oc_wired_add(maker, ways[i].words, &gaps, &extras, &look);
  }
  const struct oc_look still = {.kind = OC_LOOK_STILL, .at = motor, .setup = {.key = true}};
  oc_wired_add(maker, &at_rest, &gaps, &(struct oc_wired_extras){0}, &still);
}

/* ---- a fan, at its plug ---- */

static const struct oc_wired_words direct = {
    "direct-{}",
    "{} fed straight from the battery: it runs: good",
    "its own two pins, plug off",
    "key off, blades free by hand first",
    "fan",
    "leads",
    "8",
    "",
    "",
    OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD "Two-wire brush motors only.",
    "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection"};
static const struct oc_wired_words plug_bulb = {
    "plug-bulb-{}",
    "A 55 W bulb across the terminals of its plug is bright: good",
    "{1} to {2}, plug off",
    OC_ASKED_SO,
    "bulb",
    "bulb",
    "6",
    "",
    "",
    OC_SAY_BULB_LEAD,
    OC_SAY_PRACTICE};
static const struct oc_wired_words plus_bulb = {"plus-bulb-{}",
                                                "A 55 W bulb is bright: good",
                                                "{1} to battery -, plug off",
                                                OC_ASKED_SO,
                                                "bulb",
                                                "bulb",
                                                "5",
                                                "",
                                                "",
                                                OC_SAY_BULB_LEAD,
                                                OC_SAY_PRACTICE};
static const struct oc_wired_words minus_bulb = {"minus-bulb-{}",
                                                 "A 55 W bulb is bright: good",
                                                 "battery + to {2}, plug off",
                                                 "key off",
                                                 "bulb",
                                                 "bulb",
                                                 "4",
                                                 "",
                                                 "",
                                                 OC_SAY_BULB_LEAD,
                                                 OC_SAY_PRACTICE};
static const struct oc_wired_words plug_volts = {
    "volts-{}",
    "Volts across the terminals of its plug, never to the body",
    "{1} to {2}, from behind, plugged in",
    OC_ASKED_SO,
    "fan",
    "meter",
    "4",
    "V",
    "1%+0.02",
    OC_SAY_FAN_STARTS,
    OC_SAY_PRACTICE};
static const struct oc_wired_words amperes = {"amps-{}",
                                              "Amperes of the running fan by a DC clamp",
                                              "clamp around one wire of {}",
                                              OC_ASKED_SO,
                                              "fan",
                                              "clamp",
                                              "4",
                                              "A",
                                              "3%+0.3",
                                              OC_SAY_FAN_STARTS,
                                              OC_SAY_PRACTICE};
static const struct oc_wired_words feed_drop = {"feed-drop-{}",
                                                "Volts lost on the feed side",
                                                "battery + post to {1}",
                                                OC_ASKED_SO,
                                                "fan",
                                                "meter",
                                                "5",
                                                "V/A",
                                                "1%+0.003",
                                                OC_SAY_FAN_STARTS,
                                                OC_SAY_PRACTICE};
static const struct oc_wired_words ground_drop = {"ground-drop-{}",
                                                  "Volts lost on the ground side",
                                                  "{2} to battery - post",
                                                  OC_ASKED_SO,
                                                  "fan",
                                                  "meter",
                                                  "5",
                                                  "V/A",
                                                  "1%+0.003",
                                                  OC_SAY_FAN_STARTS,
                                                  OC_SAY_PRACTICE};

/* Volts lost for each ampere of a sound fan, NaN when it does not run. */
static double sound_drop(struct oc_wired_maker *maker, const struct oc_look *look) {
  struct oc_drive_result sound;
  oc_drive_begin(maker->drive, maker->wiring, &look->setup);
  if (!oc_drive_run(maker->drive, (struct oc_failures){0, NULL, 0}, &sound) ||
      !(sound.motor_a[look->motor] > 0))
    return NAN;
  const struct oc_across *across = &look->setup.across[look->at];
  return (sound.volts[across->plus] - sound.volts[across->minus]) / sound.motor_a[look->motor];
}

static void add_drop(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                     const struct oc_wired_gaps *gaps, size_t motor, size_t plus, size_t minus) {
  char high[40];
  char amps[2 * OC_WIRING_NAME];
  struct oc_look look = {
      .kind = OC_LOOK_DROP, .motor = motor, .limits = {NAN, NAN}, .setup = oc_wired_asked(maker)};
  look.at = look.setup.across_count;
  oc_wired_put(&look.setup, oc_wired_meter(plus, minus));
  double sound_ohm = sound_drop(maker, &look);
  if (!(sound_ohm > 0))
    return;
  struct oc_text text = oc_text_begin(amps, sizeof amps);
  oc_wired_fill(&text, amperes.name, gaps);
  const struct oc_wired_extras extras = {
      .high = oc_wired_figure(high, sizeof high, 2 * sound_ohm + OC_DROP_OHM), .amperes = amps};
  look.limits.high = oc_wired_judged(high);
  oc_wired_add(maker, words, gaps, &extras, &look);
}

static void add_numbers(struct oc_wired_maker *maker, size_t motor,
                        const struct oc_wired_gaps *gaps) {
  char low[40];
  char high[40];
  char amps[2 * OC_WIRING_NAME];
  struct oc_text text = oc_text_begin(amps, sizeof amps);
  oc_wired_fill(&text, amperes.name, gaps);
  size_t plus = oc_wired_pin(maker, motor, 0)->from;
  size_t minus = oc_wired_pin(maker, motor, 1)->from;
  struct oc_look look = {.kind = OC_LOOK_AMPERES, .at = motor, .setup = oc_wired_asked(maker)};
  double running_a = oc_wired_thing(maker, motor)->value;
  struct oc_wired_extras extras = {
      .low = oc_wired_figure(low, sizeof low, OC_RUNNING_LEAST * running_a),
      .high = oc_wired_figure(high, sizeof high, OC_RUNNING_MOST * running_a)};
  look.limits.low = oc_wired_judged(low);
  look.limits.high = oc_wired_judged(high);
  oc_wired_add(maker, &amperes, gaps, &extras, &look);
  look = (struct oc_look){
      .kind = OC_LOOK_VOLTS, .limits = {10.5, NAN}, .setup = oc_wired_asked(maker)};
  look.at = look.setup.across_count;
  oc_wired_put(&look.setup, oc_wired_meter(plus, minus));
  oc_wired_add(maker, &plug_volts, gaps, &(struct oc_wired_extras){.role = "proof", .low = "10.5", .amperes = amps},
               &look);
  add_drop(maker, &feed_drop, gaps, motor, OC_POINT_PLUS, plus);
  add_drop(maker, &ground_drop, gaps, motor, minus, OC_POINT_MINUS);
}

void oc_wired_add_at_plug(struct oc_wired_maker *maker, size_t motor) {
  const struct oc_thing *thing = oc_wired_thing(maker, motor);
  size_t plus = oc_wired_pin(maker, motor, 0)->from;
  size_t minus = oc_wired_pin(maker, motor, 1)->from;
  const struct oc_wired_gaps gaps = {.subject = thing->name,
                                     .first = oc_wired_point(maker, plus),
                                     .second = oc_wired_point(maker, minus)};
  struct oc_look look = {
      .kind = OC_LOOK_FAN, .at = motor, .setup = {.unplugged = oc_wired_plugged(maker, motor)}};
  look.setup.unplugged &= ~oc_set_of(motor);
  oc_wired_put(&look.setup, oc_wired_lead(OC_POINT_PLUS, thing->from));
  oc_wired_put(&look.setup, oc_wired_lead(thing->to, OC_POINT_MINUS));
  oc_wired_add(maker, &direct, &gaps, &(struct oc_wired_extras){.feeds = thing->name}, &look);
  const struct {
    const struct oc_wired_words *words;
    size_t plus;
    size_t minus;
    bool asked;
  } bulbs[] = {{&plug_bulb, plus, minus, true},
               {&plus_bulb, plus, OC_POINT_MINUS, true},
               {&minus_bulb, OC_POINT_PLUS, minus, false}};
  for (size_t i = 0; i < sizeof bulbs / sizeof bulbs[0]; i++) {
    look = (struct oc_look){.kind = OC_LOOK_BULB};
    if (bulbs[i].asked)
      look.setup = oc_wired_asked(maker);
    look.setup.unplugged |= oc_wired_plugged(maker, motor);
    look.at = look.setup.across_count;
    oc_wired_put(&look.setup, oc_wired_bulb(bulbs[i].plus, bulbs[i].minus));
    oc_wired_add(maker, bulbs[i].words, &gaps, &(struct oc_wired_extras){0}, &look);
  }
  add_numbers(maker, motor, &gaps);
}

/* ---- a blade, by hand ---- */

static const struct oc_wired_words by_hand = {
    "turn-{}",
    "Blade of {} turned by hand: free all round, no rub and no grind: good",
    "{}",
    "engine cold, plug of {} off",
    "none",
    "hands",
    "2",
    "",
    "",
    "Plug off first: it may start by itself. ",
    "Ford Explorer workshop manual, 2015, variable "
    "speed fan pinpoint test"};

static const struct oc_wired_words blade_look = {
    "blade-{}",
    "Blade of {}: nothing blocks it, no ice, no twig, not bent, no rub at the shroud: good",
    "blade and shroud of {}",
    "key off, plug of {} off",
    "none",
    "eyes",
    "1",
    "",
    "",
    "Plug off first: it may start by itself. ",
    "Acura RL workshop manual, 2009, P0480: look for ice and debris"};

static bool is_blade_of(const struct oc_wired_maker *maker, size_t at, size_t motor) {
  return oc_wired_thing(maker, at)->kind == OC_THING_BLADE &&
         oc_wired_thing(maker, at)->of == motor;
}

void oc_wired_add_blade_look(struct oc_wired_maker *maker, size_t motor) {
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, motor)->name};
  maker->meaning.useful = true;
  maker->meaning.good = OC_OUTCOME_GOOD;
  for (size_t i = 0; i < maker->failings->count; i++)
    maker->meaning.foretold[i] = is_blade_of(maker, maker->failings->failure[i].thing, motor)
                                     ? OC_OUTCOME_BAD
                                     : OC_OUTCOME_GOOD;
  oc_wired_add_meant(maker, &blade_look, &gaps, &(struct oc_wired_extras){0});
}

/* Only what is stuck or drags hard is felt. */
void oc_wired_add_by_hand(struct oc_wired_maker *maker, size_t motor) {
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, motor)->name};
  maker->meaning.useful = true;
  maker->meaning.good = OC_OUTCOME_GOOD;
  for (size_t i = 0; i < maker->failings->count; i++) {
    const struct oc_failure *failure = &maker->failings->failure[i];
    bool is_its = failure->thing == motor || is_blade_of(maker, failure->thing, motor);
    maker->meaning.foretold[i] = !is_its || failure->mode != OC_FAILURE_DRAGS ? OC_OUTCOME_GOOD
                                 : failure->size == INFINITY                  ? OC_OUTCOME_BAD
                                                                              : OC_OUTCOME_ANY;
  }
  oc_wired_add_meant(maker, &by_hand, &gaps, &(struct oc_wired_extras){0});
}
