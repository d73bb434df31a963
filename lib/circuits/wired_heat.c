/* SPDX-License-Identifier: MIT */
#include "wired_tests.h"

#include <string.h>

#include "../ground/text.h"

/* ---- heat, and who tells it ---- */

static const struct oc_wired_words coolant_level = {
    "coolant-level",
    "Coolant at its mark, no air gurgling when a hose is squeezed: good",
    "expansion tank",
    "engine cold",
    "none",
    "eyes",
    "1",
    "",
    "",
    "Never open a hot system: wait an hour or until the hoses are cold.",
    "Mercury Tracer workshop manual, 1997, cooling initial inspection"};
static const struct oc_wired_words standing = {
    "standing",
    "Key on, car standing, idling, still air, no hose of water on the radiator: good",
    "car",
    "before judging any fan",
    "none",
    "eyes",
    "1",
    "",
    "",
    OC_SAY_AIR,
    OC_SAY_PRACTICE};
static const struct oc_wired_words battery_volts = {
    "battery-volts",
    "Volts at the battery posts, headlights on for two minutes",
    "battery post to battery post",
    "headlights on",
    "lights",
    "meter",
    "2",
    "V",
    "1%+0.02",
    "No spark near a battery that was just charged.",
    "Toyota workshop manual, 2010s, cooling fan on-vehicle inspection: 11 to 14 V"};
static const struct oc_wired_words hoses = {
    "hoses",
    "Both radiator hoses hot to the touch of a gloved hand: good",
    "upper and lower radiator hose",
    "engine hot",
    "none",
    "eyes",
    "2",
    "",
    "",
    OC_SAY_FAN_STARTS OC_SAY_HOT_ENGINE,
    OC_SAY_PRACTICE};
static const struct oc_wired_words engine_heat = {
    "engine-heat",
    "Degrees where the fan is asked for",
    "metal beside the coolant sensor or switch, infrared or probe",
    "idling until it stops rising, never up to red",
    "none",
    "thermometer",
    "10",
    "C",
    "4",
    OC_SAY_HOT_ENGINE OC_SAY_FAN_STARTS,
    "common practice, no source; infrared, give or take 4"};
static const struct oc_wired_words heater = {"heater",
                                             "Heater blows hot: good",
                                             "vents in the car, heater on full",
                                             "engine hot",
                                             "none",
                                             "eyes",
                                             "2",
                                             "",
                                             "",
                                             "",
                                             OC_SAY_PRACTICE};

void oc_wired_add_cooling(struct oc_wired_maker *maker) {
  const struct oc_wired_gaps none = {0};
  struct oc_look look = {
      .kind = OC_LOOK_VOLTS,
      .limits = {11, NAN},
      .setup = {.across_count = 1,
                .across = {
                    {.plus = OC_POINT_PLUS, .minus = OC_POINT_MINUS, .watt = OC_HEADLIGHTS_WATT}}}};
  oc_wired_add_words(
      maker, &coolant_level, &none,
      &(struct oc_wired_extras){.role = "condition", .clears = "coolant", .accuses = "coolant"});
  oc_wired_add_words(maker, &standing, &none, &(struct oc_wired_extras){.role = "condition"});
  oc_wired_add(maker, &battery_volts, &none,
               &(struct oc_wired_extras){.role = "condition", .low = "11"}, &look);
  oc_wired_add_words(maker, &hoses, &none,
                     &(struct oc_wired_extras){.role = "condition",
                                               .clears = "thermostat pump",
                                               .accuses = "thermostat pump coolant"});
  oc_wired_add_words(maker, &engine_heat, &none,
                     &(struct oc_wired_extras){.role = "condition", .low = "fan"});
  oc_wired_add_words(maker, &heater, &none,
                     &(struct oc_wired_extras){.clears = "pump", .accuses = "pump coolant"});
}

static const struct oc_wired_words module_heat = {"reads-{}",
                                                  "Degrees the module itself reports of {}",
                                                  "scan tool: coolant temperature",
                                                  "the moment after engine-heat",
                                                  "none",
                                                  "scan",
                                                  "3",
                                                  "C",
                                                  "1",
                                                  OC_SAY_HOT_ENGINE,
                                                  OC_SAY_PRACTICE};
static const struct oc_wired_words sensor_pins = {
    "pins-{}",
    "Judge {} hot: ohmcurve check, for the part and for the fan",
    "its own pins, plug off",
    "key off, thermometer beside it",
    "none",
    "meter thermometer",
    "15",
    "finding:sensor",
    "",
    "Key off: unplugging this sensor starts many fans. Hot coolant scalds.",
    "this library: a finding at the sensor"};
static const struct oc_wired_words sensor_end = {
    "end-{}",
    "Judge {}, plug and wires hot: ohmcurve check --place module",
    "the two wires at the module's end",
    "key off, module unplugged, sensor plugged in",
    "none",
    "meter thermometer",
    "25",
    "finding:module",
    "",
    "Ignition off before the module is unplugged. Hot coolant scalds.",
    "this library: a finding at the module's end"};
static const struct oc_wired_words sensor_wire_ohms = {
    "wires-{}",
    "Each wire of {} end to end below 1 ohm: good",
    "the sensor's plug to the module's plug",
    "both unplugged, key off",
    "none",
    "meter",
    "10",
    "",
    "",
    "Key off: unplugging this sensor starts many fans. Ignition off before the module is "
    "unplugged.",
    "Eagle Premier workshop manual, 1990, sensor wiring checks: 1 ohm at most"};

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
