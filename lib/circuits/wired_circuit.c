/* SPDX-License-Identifier: MIT */
#include "wired_circuit.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/text.h"
#include "wired_link.h"
#include "wired_tests.h"

/* ---- what can fail ---- */

struct work {
  struct oc_drive drive;
  struct oc_failings failings;
  bool carries[OC_WIRING_THINGS];
};

static bool keep_failings(struct ohm_circuit *circuit, const struct oc_failings *failings) {
  circuit->failings = calloc(failings->count + 1, sizeof *circuit->failings);
  if (!circuit->failings)
    return false;
  circuit->failing_count = failings->count;
  for (size_t i = 0; i < failings->count; i++) {
    const struct oc_failure *failure = &failings->failure[i];
    bool is_ohm = failure->mode == OC_FAILURE_RESISTS;
    circuit->failings[i] = (struct oc_failing){(unsigned char)failure->thing, failings->matters[i],
                                               is_ohm ? failure->size : NAN,
                                               failure->size == INFINITY ? OC_OPEN_SHARE : 1};
  }
  return true;
}

/* Whether each thing carries a fan's current in some way of asking. */
static void find_carries(const struct oc_wiring *wiring, struct oc_drive *drive, bool *carries) {
  unsigned all = oc_wiring_ways(wiring);
  memset(carries, 0, OC_WIRING_THINGS * sizeof *carries);
  for (unsigned way = 1; way != 0 && way <= all; way <<= 1) {
    const struct oc_setup setup = {.asked = way, .key = true};
    struct oc_drive_result sound;
    if (!(all & way) || !oc_drive_sound(drive, wiring, &setup, &sound))
      continue;
    for (size_t i = 0; i < wiring->thing_count; i++) {
      size_t chain = drive->chains.chain_of[i];
      carries[i] |= chain < OC_WIRING_THINGS && fabs(sound.chain_a[chain]) > OC_CARRIES_A;
    }
  }
}

/* ---- tests ---- */

static bool add_tests(struct ohm_circuit *circuit, struct work *work) {
  const struct oc_wiring *wiring = &circuit->wired->wiring;
  struct oc_wired_maker *maker = calloc(1, sizeof *maker);
  if (!maker)
    return false;
  *maker = (struct oc_wired_maker){.circuit = circuit,
                                   .wiring = wiring,
                                   .drive = &work->drive,
                                   .failings = &work->failings,
                                   .room = circuit->test_count};
  oc_wired_find_askings(maker);
  for (size_t i = 0; i < maker->asking_count; i++)
    oc_failings_blow(&work->failings, &work->drive, wiring, &maker->askings[i].setup);
  oc_set motors = oc_wired_things(wiring, OC_THING_MOTOR);
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (motors & oc_set_of(i))
      oc_wired_add_asked(maker, i);
  oc_wired_add_cooling(maker);
  for (size_t i = 0; i < wiring->thing_count; i++) {
    const struct oc_thing *thing = &wiring->things[i];
    if (thing->kind == OC_THING_FUSE)
      oc_wired_add_of_fuse(maker, i);
    else if (thing->kind == OC_THING_SWITCH)
      oc_wired_add_of_switch(maker, i);
    else if (thing->kind == OC_THING_OUTPUT)
      oc_wired_add_pull(maker, i);
    else if (thing->kind == OC_THING_CHAFE)
      oc_wired_add_rub(maker, i);
    else if (thing->role == OC_ROLE_SENSOR)
      oc_wired_add_of_sensor(maker, i);
  }
  for (size_t i = 0; i < wiring->relay_count; i++) {
    oc_wired_add_of_relay(maker, i);
    oc_wired_add_coil_volts(maker, i);
  }
  oc_wired_add_post_volts(maker);
  for (size_t i = 0; i < wiring->thing_count; i++)
    oc_wired_add_lost(maker, i);
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (motors & oc_set_of(i)) {
      oc_wired_add_blade_look(maker, i);
      oc_wired_add_by_hand(maker, i);
      oc_wired_add_at_plug(maker, i);
    }
  oc_wired_add_at_points(maker);
  oc_wired_work_out(maker);
  bool whole = !maker->failed;
  free(maker);
  return whole;
}

/* ---- together ---- */

static bool give_facts(struct ohm_circuit *circuit) {
  unsigned ways = circuit->wired->wiring.unsure_ways;
  static const struct {
    unsigned way;
    const char *name;
    const char *text;
  } facts[] = {
      {OC_WAY_UNPLUGGED, "open-sensor-runs-fan",
       "The maker says that this module runs the fan with the sensor unplugged."},
      {OC_WAY_AC, "ac-runs-fan", "The maker says that this fan runs whenever the A/C is on."}};
  for (size_t i = 0; i < sizeof facts / sizeof facts[0]; i++) {
    size_t length = strlen(facts[i].name);
    if (!(ways & facts[i].way) || circuit->fact_count == OC_CIRCUIT_FACTS ||
        oc_circuit_fact(circuit, facts[i].name, length) != OC_NO_PLACE)
      continue;
    struct oc_fact fact = {oc_text_new(facts[i].name, length),
                           oc_text_new(facts[i].text, strlen(facts[i].text))};
    circuit->facts[circuit->fact_count++] = fact;
    if (!fact.name || !fact.text)
      return false;
  }
  return true;
}

static void expand(struct ohm_circuit *circuit, struct work *work,
                   struct oc_complaints *complaints) {
  const struct oc_wiring *wiring = &circuit->wired->wiring;
  if (!oc_failings_list(&work->failings, &work->drive, wiring, oc_wiring_ways(wiring))) {
    oc_complaints_fail(complaints, OHM_BAD_DEFINITION, (struct oc_spot){0},
                       "no currents can be worked out for this wiring",
                       "; look for an ohm or an ampere that is far from any other");
    return;
  }
  find_carries(wiring, &work->drive, work->carries);
  if (!(give_facts(circuit) && oc_wired_links_add(circuit, work->carries) &&
        keep_failings(circuit, &work->failings) && add_tests(circuit, work)))
    oc_complaints_fail_memory(complaints);
}

void oc_wired_circuit_make(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  struct work *work = malloc(sizeof *work);
  if (work)
    expand(circuit, work, complaints);
  else
    oc_complaints_fail_memory(complaints);
  free(work);
}
