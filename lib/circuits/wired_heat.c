/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- heat, and who tells it ---- */

static const struct oc_wired_words coolant_level = {
    .name = "coolant-level",
    .what = "Coolant at its mark, no air gurgling when a hose is squeezed: good",
    .points = "expansion tank",
    .condition = "engine cold",
    .load = "none",
    .tool = "eyes",
    .minutes = "1",
    .caution = "Never open a hot system: wait an hour or until the hoses are cold.",
    .source = "Mercury Tracer workshop manual, 1997, cooling initial inspection",
};
static const struct oc_wired_words standing = {
    .name = "standing",
    .what = "Key on, car standing, idling, still air, no hose of water on the radiator: good",
    .points = "car",
    .condition = "before judging any fan",
    .load = "none",
    .tool = "eyes",
    .minutes = "1",
    .caution = OC_SAY_AIR,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words battery_volts = {
    .name = "battery-volts",
    .what = "Volts at the battery posts, headlights on for two minutes",
    .points = "battery post to battery post",
    .condition = "headlights on",
    .load = "lights",
    .tool = "meter",
    .minutes = "2",
    .unit = "V",
    .error = "1%+0.02",
    .caution = "No spark near a battery that was just charged.",
    .source = "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection: 11 to 14 V",
};
static const struct oc_wired_words hoses = {
    .name = "hoses",
    .what = "Both radiator hoses hot to the touch of a gloved hand: good",
    .points = "upper and lower radiator hose",
    .condition = "engine hot",
    .load = "none",
    .tool = "eyes",
    .minutes = "2",
    .caution = OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words engine_heat = {
    .name = "engine-heat",
    .what = "Degrees where the fan is asked for",
    .points = "metal beside the coolant sensor or switch, infrared or probe",
    .condition = "idling until it stops rising, never up to red",
    .load = "none",
    .tool = "thermometer",
    .minutes = "10",
    .unit = "C",
    .error = "4",
    .caution = OC_SAY_HOT_ENGINE OC_SAY_FAN_STARTS,
    .source = "common practice, no source; infrared, give or take 4",
};
static const struct oc_wired_words heater = {
    .name = "heater",
    .what = "Heater blows hot: good",
    .points = "vents in the car, heater on full",
    .condition = "engine hot",
    .load = "none",
    .tool = "eyes",
    .minutes = "2",
    .source = OC_SAY_PRACTICE,
};

void oc_wired_add_cooling(struct oc_wired_maker *maker) {
  const struct oc_wired_gaps none = {0};
  const struct oc_look look = {
      .kind = OC_LOOK_VOLTS, .plus = OC_POINT_PLUS, .minus = OC_POINT_MINUS, .limits = {11, NAN}};
  struct oc_setup lights = {0};
  oc_wired_put(&lights, (struct oc_across){.plus = OC_POINT_PLUS,
                                           .minus = OC_POINT_MINUS,
                                           .watt = OC_HEADLIGHTS_WATT});
  oc_wired_add_words(
      maker, &coolant_level, &none,
      &(struct oc_wired_extras){.role = "condition", .clears = "coolant", .accuses = "coolant"});
  oc_wired_add_words(maker, &standing, &none, &(struct oc_wired_extras){.role = "condition"});
  oc_wired_add(maker, &battery_volts, &none,
               &(struct oc_wired_extras){.role = "condition", .low = "11"}, &lights, &look);
  oc_wired_add_words(maker, &hoses, &none,
                     &(struct oc_wired_extras){.role = "condition",
                                               .clears = "thermostat pump",
                                               .accuses = "thermostat pump coolant"});
  oc_wired_add_words(maker, &engine_heat, &none,
                     &(struct oc_wired_extras){.role = "condition", .low = "fan"});
  oc_wired_add_words(maker, &heater, &none,
                     &(struct oc_wired_extras){.clears = "pump", .accuses = "pump coolant"});
}

static const struct oc_wired_words module_heat = {
    .name = "reads-{}",
    .what = "Degrees the module itself reports of {}",
    .points = "scan tool: coolant temperature",
    .condition = "the moment after engine-heat",
    .load = "none",
    .tool = "scan",
    .minutes = "3",
    .unit = "C",
    .error = "1",
    .caution = OC_SAY_HOT_ENGINE,
    .source = OC_SAY_PRACTICE,
};
static const struct oc_wired_words sensor_pins = {
    .name = "pins-{}",
    .what = "Judge {} hot: ohmcurve check, for the part and for the fan",
    .points = "its own pins, plug off",
    .condition = "key off, thermometer beside it",
    .load = "none",
    .tool = "meter thermometer",
    .minutes = "15",
    .unit = "finding:sensor",
    .caution = "Key off: unplugging this sensor starts many fans. Hot coolant scalds.",
    .source = "this library: a finding at the sensor",
};
static const struct oc_wired_words sensor_end = {
    .name = "end-{}",
    .what = "Judge {}, plug and wires hot: ohmcurve check --place module",
    .points = "the two wires at the module's end",
    .condition = "key off, module unplugged, sensor plugged in",
    .load = "none",
    .tool = "meter thermometer",
    .minutes = "25",
    .unit = "finding:module",
    .caution = "Ignition off before the module is unplugged. Hot coolant scalds.",
    .source = "this library: a finding at the module's end",
};
static const struct oc_wired_words sensor_wire_ohms = {
    .name = "wires-{}",
    .what = "Each wire of {} end to end below 1 ohm: good",
    .points = "the sensor's plug to the module's plug",
    .condition = "both unplugged, key off",
    .load = "none",
    .tool = "meter",
    .minutes = "10",
    .caution = "Key off: unplugging this sensor starts many fans. Ignition off before the module "
               "is unplugged.",
    .source = "Eagle Premier workshop manual, 1990, sensor wiring checks: 1 ohm at most",
};

void oc_wired_add_of_sensor(struct oc_wired_maker *maker, size_t sensor) {
  static const struct {
    const struct oc_wired_words *words;
    int last; /* of the things that are cleared: sensor, plug, wires, reading */
    int first;
    const char *low;
    const char *needs;
  } tests[] = {{&module_heat, 3, 0, "fan", "engine-heat=good"},
               {&sensor_pins, 0, 0, NULL, NULL},
               {&sensor_end, 2, 0, NULL, NULL},
               {&sensor_wire_ohms, 2, 2, NULL, NULL}};
  const struct oc_wired_gaps gaps = {.subject = oc_wired_thing(maker, sensor)->name};
  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++) {
    char links[4 * (OC_WIRING_NAME + 1)];
    struct oc_text text = oc_text_begin(links, sizeof links);
    for (int k = tests[i].first; k <= tests[i].last; k++) {
      oc_text_add(&text, oc_wired_thing(maker, sensor + (size_t)k)->name);
      oc_text_add(&text, " ");
    }
    oc_wired_add_words(
        maker, tests[i].words, &gaps,
        &(struct oc_wired_extras){
            .clears = links, .accuses = links, .low = tests[i].low, .needs = tests[i].needs});
  }
}
