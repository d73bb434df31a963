/* SPDX-License-Identifier: MIT */
/*
 * A garage of cars that are unlike their file. Each circuit built in that is a wiring is followed
 * test by test on cars of their own (car.h): their fans draw more or less, their joints have more
 * or fewer ohms, and another person looks at bulb and fan. The car decides which faults matter.
 *
 * Fails when a sound part is condemned, when it is closed with a fan below three quarters of its
 * speed, or when fewer than nine in ten cases end with the right part.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/answers/isolation.h"
#include "../draw.h"
#include "../findings.h"
#include "../mechanic.h"
#include "../share.h"

enum { STEPS_MAX = 120, NAME_MAX = 80, TEXT_MAX = 65536, DRAWS = 6 };

static const double least_right = 0.9;

/* ---- faults ---- */

static double by_decades(uint64_t *draws, double low, double high) {
  return low * pow(high / low, draw_share(draws));
}

static void fail_battery(struct car_part *part, uint64_t *draws) {
  if (draw_share(draws) < 0.5)
    part->lacks_v = draw_between(draws, 2, 9);
  else
    part->more_ohm = by_decades(draws, 0.1, 2);
}

static void fail_motor(struct car_part *part, uint64_t *draws) {
  double chance = draw_share(draws);
  if (chance < 0.25)
    part->more_ohm = INFINITY;
  else if (chance < 0.5)
    part->more_ohm = by_decades(draws, 0.1, 5);
  else
    part->drag_a = chance < 0.75 ? INFINITY : part->value * draw_between(draws, 0.3, 1.5);
}

static void fail_part(struct car *car, struct car_part *part) {
  uint64_t *draws = &car->draws;
  double chance = draw_share(draws);
  char owner[CAR_NAME];
  switch (part->kind) {
  case CAR_BATTERY:
    fail_battery(part, draws);
    break;
  case CAR_JOINS:
    part->more_ohm = chance < 0.35 ? INFINITY : by_decades(draws, 0.03, 20);
    break;
  case CAR_FUSE:
  case CAR_COIL:
  case CAR_RESISTOR:
    part->more_ohm = INFINITY;
    break;
  case CAR_MAKES:
  case CAR_RESTS:
  case CAR_SWITCH:
    part->never = chance < 0.5;
    part->more_ohm = part->never ? 0 : by_decades(draws, 0.05, 20);
    break;
  case CAR_OUTPUT:
    part->never = true;
    break;
  case CAR_MOTOR:
    fail_motor(part, draws);
    break;
  case CAR_BLADE:
    snprintf(owner, sizeof owner, "%s", part->owner);
    part->drag_a =
        chance < 0.5 ? INFINITY : car_find(car, owner)->value * draw_between(draws, 0.3, 1.5);
    break;
  case CAR_RUB:
    part->rub_ohm = by_decades(draws, 0.005, 0.2);
    break;
  case CAR_ASKER:
    part->silent = true;
    break;
  }
}

static bool is_pin_of_motor(struct car *car, const struct car_part *part) {
  const struct car_part *owner = car_find(car, part->owner);
  return part->kind == CAR_JOINS && owner && owner->kind == CAR_MOTOR;
}

/* By heat a fan stays below three quarters of its speed, or a fuse blows. A motor, with the pins
 * that are mated with it, that is slow by itself and looks well to its owner brings no car here:
 * no lead reaches behind them. */
static bool does_matter(struct mechanic *world) {
  struct car *car = &world->car;
  double sound[CAR_PARTS] = {0};
  bool matters = false;
  bool is_seen = false;
  bool is_motor = false;
  car_put_right(car);
  car->key = car->running = true;
  car->asked = CAR_HOT;
  for (int i = 0; i < car->part_count; i++)
    if (car->parts[i].kind == CAR_MOTOR)
      sound[i] = mechanic_sound_speed(world, car->parts[i].name);
  car_run(car);
  for (int i = 0; i < car->part_count; i++) {
    const struct car_part *part = &car->parts[i];
    bool is_asked = part->kind == CAR_MOTOR && sound[i] > 0.1;
    matters |= part->blown || (is_asked && fabs(part->speed) < 0.75 * sound[i]);
    is_seen |= is_asked && fabs(part->speed) < world->person.fan_runs_at * sound[i];
    is_motor |= part->drag_a > 0 ||
                ((part->kind == CAR_MOTOR || is_pin_of_motor(car, part)) && part->more_ohm > 0);
  }
  return matters && (is_seen || !is_motor);
}

/* ---- a case ---- */

struct tally {
  int cases;
  int right;
  int wrong;
  int open;
  int closed;
  double tests;
};

static const char *part_named(const ohm_circuit *circuit, const char *link) {
  return circuit->links[oc_circuit_link(circuit, link, strlen(link))].cells[OHM_LINK_PART];
}

static bool state_is(const ohm_finding *finding, const char *word) {
  return strcmp(ohm_finding_text(finding, OHM_FIELD_STATE, 0), word) == 0;
}

/* Test by test to the end: a verdict, or no test left. */
static void follow(struct mechanic *world, ohm_finding *finding) {
  ohm_error error;
  for (int step = 0; step < STEPS_MAX; step++) {
    findings_free();
    *finding = finding_new();
    if (oc_isolation_judge(world->circuit, world->record, world->length, finding, &error) !=
        OHM_OK) {
      printf("%s\n%s", error.message, world->record);
      exit(1);
    }
    const char *next = ohm_finding_text(finding, OHM_FIELD_NEXT, 0);
    if (!next || state_is(finding, "contradiction"))
      return;
    char test[NAME_MAX];
    snprintf(test, sizeof test, "%s", next);
    mechanic_make(world, test);
  }
}

static void judge(const struct mechanic *world, const ohm_finding *finding, const char *name,
                  struct tally *tally) {
  const char *link;
  bool right = state_is(finding, "found");
  tally->cases++;
  tally->tests += ohm_finding_number(finding, OHM_FIELD_TESTS);
  for (size_t i = 0; right && (link = ohm_finding_text(finding, OHM_FIELD_FAULTY, i)); i++)
    right = strcmp(part_named(world->circuit, link), part_named(world->circuit, name)) == 0;
  tally->right += right;
  if (right)
    return;
  bool wrong = state_is(finding, "found");
  bool closed = state_is(finding, "closed");
  tally->wrong += wrong;
  tally->closed += closed;
  tally->open += !wrong && !closed;
  if (wrong || closed || getenv("OHM_SIMULATE_TALK"))
    printf("%s, at fault is %s: %s %s after\n%s", ohm_circuit_name(world->circuit), name,
           ohm_finding_text(finding, OHM_FIELD_STATE, 0),
           wrong ? ohm_finding_text(finding, OHM_FIELD_FAULTY, 0) : "", world->record);
}

static void play(const ohm_circuit *circuit, const char *text, const char *name, uint64_t seed,
                 struct tally *tally) {
  static struct mechanic world;
  ohm_finding finding = finding_new();
  world = (struct mechanic){.circuit = circuit};
  car_build(&world.car, text, seed);
  uint64_t *draws = &world.car.draws;
  world.person = (struct mechanic_person){
      draw_between(draws, 0.62, 0.88),    draw_between(draws, 0.03, 0.12),
      draw_between(draws, 8.2, 9.8),      draw_between(draws, 0.9, 2.7),
      draw_between(draws, -0.008, 0.008), draw_between(draws, -0.025, 0.025)};
  fail_part(&world.car, car_find(&world.car, name));
  if (!does_matter(&world))
    return;
  if (world.car.unsure_ways & CAR_AC & world.car.ways)
    mechanic_say(&world, "ac-runs-fan=yes\n");
  if (world.car.unsure_ways & CAR_UNPLUGGED & world.car.ways)
    mechanic_say(&world, "open-sensor-runs-fan=yes\n");
  follow(&world, &finding);
  judge(&world, &finding, name, tally);
  findings_free();
}

static bool run(const ohm_circuit *circuit) {
  static char text[TEXT_MAX];
  static struct car names;
  struct tally tally = {0};
  if (ohm_circuit_print(circuit, text, sizeof text) >= sizeof text)
    abort();
  car_build(&names, text, 1);
  for (int i = 0; i < names.part_count; i++)
    for (int k = 0; k < DRAWS; k++) {
      uint64_t seed = (uint64_t)(1000 * i + k + 1);
      if (share_has(seed))
        play(circuit, text, names.parts[i].name, seed, &tally);
    }
  double cases = fmax(1, tally.cases);
  printf("%-18s %4d cases, right part %3.0f %%, wrong part %d, left open %3.0f %%, nothing to buy "
         "%d, %4.1f tests\n",
         ohm_circuit_name(circuit), tally.cases, 100 * tally.right / cases, tally.wrong,
         100 * tally.open / cases, tally.closed, tally.tests / cases);
  return tally.wrong == 0 && tally.closed == 0 &&
         tally.right >= (least_right - share_scatter(1 - least_right, cases)) * cases;
}

int main(int count, char **paths) {
  bool good = true;
  for (int i = 1; i < count; i++) {
    ohm_error error;
    ohm_circuit *circuit = ohm_circuit_load(paths[i], &error);
    if (!circuit) {
      printf("%s\n", error.message);
      return 2;
    }
    good = run(circuit) && good;
    ohm_circuit_free(circuit);
  }
  for (size_t i = 0; count == 1 && i < ohm_circuit_built_in_count(); i++) {
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), NULL);
    if (!circuit)
      return 2;
    if (circuit->wired)
      good = run(circuit) && good;
    ohm_circuit_free(circuit);
  }
  return good ? 0 : 1;
}
