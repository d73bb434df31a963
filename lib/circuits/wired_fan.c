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

static const struct oc_wired_words starts = {
    .name = "starts-{}",
    .what = "{} starts by itself when the engine is hot: good",
    .points = "{}",
    .condition = "engine idling, hot",
    .load = "fan",
    .tool = "eyes",
    .minutes = "1",
    .caution = OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words fast = {
    .name = "fast-{}",
    .what = "{} runs fast when the engine is hotter than for its low speed: good",
    .points = "{}",
    .condition = "engine idling, hotter still, never up to red",
    .load = "fan",
    .tool = "eyes",
    .minutes = "5",
    .caution = OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words by_ac = {
    .name = "ac-{}",
    .what = "A/C on, coldest: {} runs: good",
    .points = "A/C switch",
    .condition = "engine idling, cold or warm",
    .load = "fan",
    .tool = "ac",
    .minutes = "2",
    .caution = OC_SAY_FAN_STARTS OC_SAY_AIR,
    .source = "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection",
};
static const struct oc_wired_words by_unplugging = {
    .name = "unplugged-{}",
    .what = "Sensor unplugged, key on: {} runs: good",
    .points = "plug of the sensor",
    .condition = "engine cold, key off while unplugging",
    .load = "fan",
    .tool = "hands",
    .minutes = "3",
    .caution = "Unplugging this sensor is itself a start command. " OC_SAY_FAN_STARTS,
    .source = "Mercury Tracer workshop manual, 1997, cooling initial inspection",
};
static const struct oc_wired_words by_command = {
    .name = "commanded-{}",
    .what = "{} commanded by the module's self-test or a scan tool: it runs: good",
    .points = "scan tool: active test of the fan; self-test as the handbook says",
    .condition = "engine cold, key on",
    .load = "fan",
    .tool = "active-scan",
    .minutes = "3",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words at_rest = {
    .name = "rest-{}",
    .what = "{} stands still, nothing asks for it: good",
    .points = "{}",
    .condition = "engine cold, key on",
    .load = "fan",
    .tool = "eyes",
    .minutes = "1",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};

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
  const struct oc_look runs = {.kind = OC_LOOK_FAN, .at = motor};
  const struct oc_look still = {.kind = OC_LOOK_STILL, .at = motor};
  const struct oc_setup at_key = {.key = true};
  for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
    const struct oc_setup setup = {.asked = ways[i].asked, .key = true};
    const struct oc_wired_extras extras = {.role = ways[i].way == OC_WAY_HOT ? "symptom" : "",
                                           .only_if = fact_of(maker, ways[i].way)};
    if ((oc_wiring_ways(maker->wiring) & ways[i].way) != 0 && oc_wired_turns(maker, &setup, motor))
      oc_wired_add(maker, ways[i].words, &gaps, &extras, &setup, &runs);
  }
  oc_wired_add(maker, &at_rest, &gaps, &(struct oc_wired_extras){0}, &at_key, &still);
}

/* ---- a fan, at its plug ---- */

static const struct oc_wired_words direct = {
    .name = "direct-{}",
    .what = "{} fed straight from the battery: it runs: good",
    .points = "its own two pins, plug off",
    .condition = "key off, blades free by hand first",
    .load = "fan",
    .tool = "leads",
    .minutes = "8",
    .caution = OC_SAY_FAN_STARTS OC_SAY_FUSED_LEAD "Two-wire brush motors only.",
    .source = "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection",
};
static const struct oc_wired_words plug_bulb = {
    .name = "plug-bulb-{}",
    .what = "A 55 W bulb across the terminals of its plug is bright: good",
    .points = "{1} to {2}, plug off",
    .condition = OC_SAY_ASKED,
    .load = "bulb",
    .tool = "bulb",
    .minutes = "6",
    .caution = OC_SAY_BULB_LEAD,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words plus_bulb = {
    .name = "plus-bulb-{}",
    .what = "A 55 W bulb is bright: good",
    .points = "{1} to battery -, plug off",
    .condition = OC_SAY_ASKED,
    .load = "bulb",
    .tool = "bulb",
    .minutes = "5",
    .caution = OC_SAY_BULB_LEAD,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words minus_bulb = {
    .name = "minus-bulb-{}",
    .what = "A 55 W bulb is bright: good",
    .points = "battery + to {2}, plug off",
    .condition = "key off",
    .load = "bulb",
    .tool = "bulb",
    .minutes = "4",
    .caution = OC_SAY_BULB_LEAD,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words plug_volts = {
    .name = "volts-{}",
    .what = "Volts across the terminals of its plug, never to the body",
    .points = "{1} to {2}, from behind, plugged in",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "meter",
    .minutes = "4",
    .unit = "V",
    .error = "1%+0.02",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words low_volts = {
    .name = "low-volts-{}",
    .what = "Volts across the terminals of its plug at low speed, never to the body",
    .points = "{1} to {2}, from behind, plugged in",
    .condition = "engine idling, hot",
    .load = "fan",
    .tool = "meter",
    .minutes = "4",
    .unit = "V",
    .error = "1%+0.02",
    .caution = OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE OC_SAY_AIR,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words amperes = {
    .name = "amps-{}",
    .what = "Amperes of the running fan by a DC clamp",
    .points = "clamp around one wire of {}",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "clamp",
    .minutes = "4",
    .unit = "A",
    .error = "3%+0.3",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words feed_drop = {
    .name = "feed-drop-{}",
    .what = "Volts lost on the feed side",
    .points = "battery + post to {1}",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "meter",
    .minutes = "5",
    .unit = "V/A",
    .error = "1%+0.003",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words ground_drop = {
    .name = "ground-drop-{}",
    .what = "Volts lost on the ground side",
    .points = "{2} to battery - post",
    .condition = OC_SAY_ASKED,
    .load = "fan",
    .tool = "meter",
    .minutes = "5",
    .unit = "V/A",
    .error = "1%+0.003",
    .caution = OC_SAY_FAN_STARTS,
    .source = OC_SAY_PRACTICE,
};

/* Volts lost for each ampere of a sound fan, NaN when it does not run. */
static double sound_drop(struct oc_wired_maker *maker, const struct oc_setup *setup,
                         const struct oc_look *look) {
  struct oc_drive_result sound;
  if (!oc_drive_sound(maker->drive, maker->wiring, setup, &sound) ||
      !(sound.motor_a[look->motor] > 0))
    return NAN;
  return (sound.volts[look->plus] - sound.volts[look->minus]) / sound.motor_a[look->motor];
}

static void add_drop(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                     const struct oc_wired_gaps *gaps, size_t motor, size_t plus, size_t minus) {
  char high[40];
  char amps[2 * OC_WIRING_NAME];
  const struct oc_setup setup = oc_wired_asked(maker);
  struct oc_look look = {.kind = OC_LOOK_DROP, .motor = motor, .plus = plus, .minus = minus};
  double sound_ohm = sound_drop(maker, &setup, &look);
  if (!(sound_ohm > 0))
    return;
  struct oc_text text = oc_text_begin(amps, sizeof amps);
  oc_wired_fill(&text, amperes.name, gaps);
  const struct oc_wired_extras extras = {
      .high = oc_wired_figure(high, sizeof high, 2 * sound_ohm + OC_DROP_OHM), .amperes = amps};
  look.limits = (struct oc_limits){NAN, oc_wired_judged(high)};
  oc_wired_add(maker, words, gaps, &extras, &setup, &look);
}

static double speed_of(struct oc_wired_maker *maker, const struct oc_setup *setup, size_t motor,
                       struct oc_drive_result *sound) {
  return oc_drive_sound(maker->drive, maker->wiring, setup, sound) ? fabs(sound->motor_speed[motor])
                                                                   : 0;
}

/* A fan that heat runs slowly at first is proved at that speed too. */
static void add_low_volts(struct oc_wired_maker *maker, size_t motor,
                          const struct oc_wired_gaps *gaps) {
  char low[40];
  struct oc_drive_result sound;
  const struct oc_setup by_heat = {.asked = OC_WAY_HOT, .key = true};
  size_t plus = oc_wired_pin(maker, motor, 0)->from;
  size_t minus = oc_wired_pin(maker, motor, 1)->from;
  double full = speed_of(maker, &maker->askings[0].setup, motor, &sound);
  double slow = speed_of(maker, &by_heat, motor, &sound);
  if (!(OC_EYE_FAN_TURNS < slow && slow < OC_EYE_FAN_GOOD * full))
    return;
  double sound_v = sound.volts[plus] - sound.volts[minus];
  const struct oc_wired_extras extras = {
      .role = "proof", .low = oc_wired_figure(low, sizeof low, OC_LOW_VOLTS_SHARE * sound_v)};
  oc_wired_add(maker, &low_volts, gaps, &extras, &by_heat,
               &(struct oc_look){.kind = OC_LOOK_VOLTS,
                                 .plus = plus,
                                 .minus = minus,
                                 .limits = {oc_wired_judged(low), NAN}});
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
  double running_a = oc_wired_thing(maker, motor)->value;
  const struct oc_setup setup = oc_wired_asked(maker);
  const struct oc_wired_extras spread = {
      .low = oc_wired_figure(low, sizeof low, OC_RUNNING_LEAST * running_a),
      .high = oc_wired_figure(high, sizeof high, OC_RUNNING_MOST * running_a)};
  const struct oc_wired_extras proof = {.role = "proof", .low = "10.5", .amperes = amps};
  oc_wired_add(maker, &amperes, gaps, &spread, &setup,
               &(struct oc_look){.kind = OC_LOOK_AMPERES,
                                 .at = motor,
                                 .limits = {oc_wired_judged(low), oc_wired_judged(high)}});
  oc_wired_add(maker, &plug_volts, gaps, &proof, &setup,
               &(struct oc_look){
                   .kind = OC_LOOK_VOLTS, .plus = plus, .minus = minus, .limits = {10.5, NAN}});
  add_low_volts(maker, motor, gaps);
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
  struct oc_setup fed = {.unplugged = oc_wired_plugged(maker, motor) & ~oc_set_of(motor)};
  oc_wired_put(&fed, oc_wired_lead(OC_POINT_PLUS, thing->from));
  oc_wired_put(&fed, oc_wired_lead(thing->to, OC_POINT_MINUS));
  oc_wired_add(maker, &direct, &gaps, &(struct oc_wired_extras){.feeds = thing->name}, &fed,
               &(struct oc_look){.kind = OC_LOOK_FAN, .at = motor});
  const struct {
    const struct oc_wired_words *words;
    size_t plus;
    size_t minus;
    bool asked;
  } bulbs[] = {{&plug_bulb, plus, minus, true},
               {&plus_bulb, plus, OC_POINT_MINUS, true},
               {&minus_bulb, OC_POINT_PLUS, minus, false}};
  for (size_t i = 0; i < sizeof bulbs / sizeof bulbs[0]; i++) {
    struct oc_setup setup = bulbs[i].asked ? oc_wired_asked(maker) : (struct oc_setup){0};
    setup.unplugged |= oc_wired_plugged(maker, motor);
    const struct oc_look look = {.kind = OC_LOOK_BULB, .at = setup.across_count};
    oc_wired_put(&setup, oc_wired_bulb(bulbs[i].plus, bulbs[i].minus));
    oc_wired_add(maker, bulbs[i].words, &gaps, &(struct oc_wired_extras){0}, &setup, &look);
  }
  add_numbers(maker, motor, &gaps);
}

/* ---- a blade, by hand ---- */

static const struct oc_wired_words by_hand = {
    .name = "turn-{}",
    .what = "Blade of {} turned by hand: free all round, no rub and no grind: good",
    .points = "{}",
    .condition = "engine cold, plug of {} off",
    .load = "none",
    .tool = "hands",
    .minutes = "2",
    .caution = "Plug off first: it may start by itself. ",
    .source = "Ford Explorer workshop manual, 2015, variable speed fan pinpoint test",
};

static const struct oc_wired_words blade_look = {
    .name = "blade-{}",
    .what = "Blade of {}: nothing blocks it, no ice, no twig, not bent, no rub at the shroud: good",
    .points = "blade and shroud of {}",
    .condition = "key off, plug of {} off",
    .load = "none",
    .tool = "eyes",
    .minutes = "1",
    .caution = "Plug off first: it may start by itself. ",
    .source = "Acura RL workshop manual, 2009, P0480: look for ice and debris",
};

static bool is_blade_of(const struct oc_wired_maker *maker, size_t at, size_t motor) {
  return oc_wired_thing(maker, at)->kind == OC_THING_BLADE &&
         oc_wired_thing(maker, at)->of == motor;
}

static oc_outcomes see_blade(const struct oc_wired_maker *maker, const struct oc_failure *failure,
                             size_t motor) {
  return is_blade_of(maker, failure->thing, motor) ? OC_OUTCOME_BAD : OC_OUTCOME_GOOD;
}

/* Only what is stuck or drags hard is felt. */
static oc_outcomes feel_blade(const struct oc_wired_maker *maker, const struct oc_failure *failure,
                              size_t motor) {
  bool is_its = failure->thing == motor || is_blade_of(maker, failure->thing, motor);
  if (!is_its || failure->mode != OC_FAILURE_DRAGS)
    return OC_OUTCOME_GOOD;
  return failure->size == INFINITY ? OC_OUTCOME_BAD : OC_OUTCOME_ANY;
}

void oc_wired_add_blade_look(struct oc_wired_maker *maker, size_t motor) {
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, motor)->name};
  oc_wired_add_plain(maker, &blade_look, &gaps, see_blade, motor);
}

void oc_wired_add_by_hand(struct oc_wired_maker *maker, size_t motor) {
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, motor)->name};
  oc_wired_add_plain(maker, &by_hand, &gaps, feel_blade, motor);
}
