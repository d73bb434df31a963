/* SPDX-License-Identifier: MIT */
#include "mechanic.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "draw.h"

enum { NAME_MAX = 80 };

/* ---- what is said ---- */

void mechanic_say(struct mechanic *world, const char *format, ...) {
  va_list values;
  va_start(values, format);
  int length =
      vsnprintf(world->record + world->length, MECHANIC_RECORD - world->length, format, values);
  va_end(values);
  world->length += (size_t)length;
  if (world->length >= MECHANIC_RECORD)
    abort();
}

static void say_whether(struct mechanic *world, const char *test, bool good) {
  mechanic_say(world, "%s=%s\n", test, good ? "good" : "bad");
}

static void say_volts(struct mechanic *world, const char *test, double volt) {
  mechanic_say(world, "%s=%.3f\n", test, volt * (1 + world->person.meter_off));
}

/* ---- hands ---- */

static struct car_part *part_of(struct mechanic *world, const char *name, const char *end) {
  char whole[NAME_MAX];
  snprintf(whole, sizeof whole, "%s%s", name, end);
  struct car_part *part = car_find(&world->car, whole);
  if (!part) {
    printf("the car has no %s\n", whole);
    exit(1);
  }
  return part;
}

static int point_of(struct mechanic *world, const char *name, const char *end) {
  return part_of(world, name, end)->from;
}

/* A thing with the terminals it is plugged into. */
static void pull(struct car *car, const char *owner) {
  for (int i = 0; i < car->part_count; i++) {
    struct car_part *part = &car->parts[i];
    if (strcmp(part->owner, owner) == 0 && part->kind != CAR_BLADE && part->kind != CAR_RUB)
      part->out = true;
  }
}

static void pull_kind(struct car *car, enum car_kind kind) {
  for (int i = 0; i < car->part_count; i++)
    if (car->parts[i].kind == kind)
      pull(car, car->parts[i].name);
}

/* Only the terminals, of a relay in the hand or a plug. */
static void pull_terminals(struct car *car, const char *owner) {
  for (int i = 0; i < car->part_count; i++)
    if (strcmp(car->parts[i].owner, owner) == 0 && car->parts[i].kind == CAR_JOINS)
      car->parts[i].out = true;
}

static int lead(struct mechanic *world, int from, int to) {
  return car_across(&world->car, from, to, 0.02, 0);
}

static void bridge(struct mechanic *world, const char *name, const char *from, const char *to) {
  pull(&world->car, name);
  lead(world, point_of(world, name, from), point_of(world, name, to));
}

/* As the condition of the test has it, in a way that holds for this car; false when none does. */
static bool ask(struct mechanic *world) {
  struct car *car = &world->car;
  const char *condition = world->condition;
  const char *plug = strstr(condition, "plug of ");
  unsigned ways = 0;
  car->key = true;
  if (plug && strstr(condition, " bridged")) {
    char name[CAR_NAME];
    snprintf(name, sizeof name, "%.*s", (int)strcspn(plug + 8, " "), plug + 8);
    bridge(world, name, ".1", ".2");
    return true;
  }
  for (int i = 0; i < car->part_count; i++)
    if (car->parts[i].kind == CAR_OUTPUT || car->parts[i].kind == CAR_SWITCH)
      ways |= car->parts[i].closes;
  ways &= car->ways & ~(unsigned)(CAR_HOT | CAR_HIGH);
  if (strncmp(condition, "commanded", 9) == 0)
    ways &= CAR_COMMANDED;
  else if (strncmp(condition, "A/C", 3) == 0)
    ways &= CAR_AC;
  else if (strncmp(condition, "sensor unplugged", 16) == 0)
    ways &= CAR_UNPLUGGED;
  else if (strncmp(condition, "engine idling", 13) == 0)
    ways = strstr(condition, "hotter") ? CAR_HOT | CAR_HIGH : CAR_HOT;
  car->running = (ways & (CAR_AC | CAR_HOT)) && !(ways & CAR_COMMANDED);
  car->asked = ways;
  return ways != 0;
}

/* ---- eyes ---- */

static void heal(struct car *car) {
  for (int i = 0; i < car->part_count; i++) {
    struct car_part *part = &car->parts[i];
    part->more_ohm = part->drag_a = part->lacks_v = part->rub_ohm = 0;
    part->never = part->silent = part->blown = part->closed = false;
    part->speed = part->heat = 0;
  }
}

/* Of the same car, set up in the same way, with nothing wrong. */
double mechanic_sound_speed(const struct mechanic *world, const char *motor) {
  struct car *sound = malloc(sizeof *sound);
  if (!sound)
    abort();
  *sound = world->car;
  heal(sound);
  car_run(sound);
  double speed = fabs(car_find(sound, motor)->speed);
  free(sound);
  return speed;
}

static void watch_fan(struct mechanic *world, const char *test, const char *motor) {
  double sound = mechanic_sound_speed(world, motor);
  car_run(&world->car);
  double share = fabs(car_find(&world->car, motor)->speed) / sound;
  const struct mechanic_person *person = &world->person;
  mechanic_say(world, "%s=%s\n", test,
               share > 1 / person->fan_runs_at ? "fast"
               : share >= person->fan_runs_at  ? "runs"
               : share > person->fan_still_at  ? "slow"
                                               : "still");
}

static void watch_bulb(struct mechanic *world, const char *test, int plus, int minus, double watt) {
  int bulb = car_across(&world->car, plus, minus, 0, watt);
  car_run(&world->car);
  double volt = fabs(world->car.extras[bulb].volt);
  mechanic_say(world, "%s=%s\n", test,
               volt >= world->person.bulb_bright_v ? "bright"
               : volt > world->person.bulb_dark_v  ? "dim"
                                                   : "dark");
}

static void read_between(struct mechanic *world, const char *test, int plus, int minus) {
  car_run(&world->car);
  say_volts(world, test, world->car.volt[plus] - world->car.volt[minus]);
}

/* "R" or "R-fan": what the test is done to, and the motor it is about. */
static const char *motor_of(struct car *car, char *subject) {
  const char *only = NULL;
  size_t all = strlen(subject);
  for (int i = 0; i < car->part_count; i++) {
    const char *name = car->parts[i].name;
    size_t length = strlen(name);
    if (car->parts[i].kind != CAR_MOTOR)
      continue;
    only = name;
    if (all > length + 1 && subject[all - length - 1] == '-' &&
        strcmp(subject + all - length, name) == 0) {
      subject[all - length - 1] = '\0';
      return name;
    }
  }
  return only;
}

static bool is_silent(struct mechanic *world, const char *name, const char *end) {
  return part_of(world, name, end)->silent;
}

static bool is_cold(struct mechanic *world) {
  return is_silent(world, "coolant", "") || is_silent(world, "thermostat", "") ||
         is_silent(world, "pump", "");
}

/* ---- the tests ---- */

/* Each returns false when it cannot be made on this car. */
typedef bool test_of(struct mechanic *world, const char *test, const char *of);

static bool starts(struct mechanic *world, const char *test, const char *of) {
  world->car.key = world->car.running = true;
  world->car.asked = CAR_HOT;
  watch_fan(world, test, of);
  return true;
}

static bool fast(struct mechanic *world, const char *test, const char *of) {
  world->car.key = world->car.running = true;
  world->car.asked = CAR_HOT | CAR_HIGH;
  watch_fan(world, test, of);
  return true;
}

static bool by_ac(struct mechanic *world, const char *test, const char *of) {
  world->car.key = world->car.running = true;
  world->car.asked = CAR_AC;
  watch_fan(world, test, of);
  return true;
}

static bool unplugged(struct mechanic *world, const char *test, const char *of) {
  world->car.key = true;
  world->car.asked = CAR_UNPLUGGED;
  watch_fan(world, test, of);
  return true;
}

static bool commanded(struct mechanic *world, const char *test, const char *of) {
  world->car.key = true;
  world->car.asked = CAR_COMMANDED;
  watch_fan(world, test, of);
  return true;
}

static bool at_rest(struct mechanic *world, const char *test, const char *of) {
  world->car.key = true;
  car_run(&world->car);
  say_whether(world, test, fabs(car_find(&world->car, of)->speed) < 0.05);
  return true;
}

static bool fuse_look(struct mechanic *world, const char *test, const char *of) {
  const struct car_part *fuse = car_find(&world->car, of);
  say_whether(world, test, !fuse->blown && fuse->more_ohm < 1);
  return true;
}

static bool fuse_holds(struct mechanic *world, const char *test, const char *of) {
  struct car_part *fuse = car_find(&world->car, of);
  if (!ask(world))
    return false;
  if (strncmp(test, "holds-bare-", 11) == 0)
    pull_kind(&world->car, CAR_MOTOR);
  fuse->blown = false;
  fuse->more_ohm = 0;
  car_run(&world->car);
  say_whether(world, test, !fuse->blown);
  return true;
}

static bool jumped(struct mechanic *world, const char *test, const char *of) {
  char relay[NAME_MAX];
  snprintf(relay, sizeof relay, "%s", of);
  const char *motor = motor_of(&world->car, relay);
  world->car.key = true;
  bridge(world, relay, ".30", ".87");
  watch_fan(world, test, motor);
  return true;
}

static bool bridged(struct mechanic *world, const char *test, const char *of) {
  char name[NAME_MAX];
  snprintf(name, sizeof name, "%s", of);
  const char *motor = motor_of(&world->car, name);
  world->car.key = true;
  bridge(world, name, ".1", ".2");
  watch_fan(world, test, motor);
  return true;
}

static bool clicks(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  car_run(&world->car);
  say_whether(world, test, part_of(world, of, ".contact")->closed);
  return true;
}

static bool spare(struct mechanic *world, const char *test, const char *of) {
  char relay[NAME_MAX];
  snprintf(relay, sizeof relay, "%s", of);
  const char *motor = motor_of(&world->car, relay);
  if (!ask(world))
    return false;
  for (int i = 0; i < world->car.part_count; i++)
    if (strcmp(world->car.parts[i].owner, relay) == 0 && world->car.parts[i].kind != CAR_JOINS)
      world->car.parts[i].spare = true;
  watch_fan(world, test, motor);
  return true;
}

static bool on_bench(struct mechanic *world, const char *test, const char *of) {
  pull_terminals(&world->car, of);
  lead(world, 1, part_of(world, of, ".85")->to);
  lead(world, part_of(world, of, ".86")->to, 0);
  lead(world, 1, part_of(world, of, ".30")->to);
  watch_bulb(world, test, part_of(world, of, ".87")->to, 0, 55);
  return true;
}

static bool bench_at_rest(struct mechanic *world, const char *test, const char *of) {
  pull_terminals(&world->car, of);
  lead(world, 1, part_of(world, of, ".30")->to);
  watch_bulb(world, test, part_of(world, of, ".87a")->to, 0, 55);
  return true;
}

static bool coil_ohms(struct mechanic *world, const char *test, const char *of) {
  const struct car_part *coil = part_of(world, of, ".coil");
  if (isinf(coil->more_ohm))
    mechanic_say(world, "%s=open\n", test);
  else
    mechanic_say(world, "%s=%.1f\n", test, coil->ohm + coil->more_ohm);
  return true;
}

static bool coil_lamp(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  pull(&world->car, of);
  watch_bulb(world, test, point_of(world, of, ".85"), point_of(world, of, ".86"), 2);
  return true;
}

/* Whoever holds the leads crossed turns them. */
static bool coil_volts(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  pull(&world->car, of);
  int meter =
      car_across(&world->car, point_of(world, of, ".85"), point_of(world, of, ".86"), 1e7, 0);
  car_run(&world->car);
  say_volts(world, test, fabs(world->car.extras[meter].volt));
  return true;
}

static bool pulled(struct mechanic *world, const char *test, const char *of) {
  char output[NAME_MAX];
  snprintf(output, sizeof output, "%s", of);
  const char *motor = motor_of(&world->car, output);
  world->car.key = true;
  pull_kind(&world->car, CAR_OUTPUT);
  lead(world, point_of(world, output, ""), 0);
  watch_fan(world, test, motor);
  return true;
}

static bool blade(struct mechanic *world, const char *test, const char *of) {
  say_whether(world, test, part_of(world, of, ".blade")->drag_a == 0);
  return true;
}

static bool by_hand(struct mechanic *world, const char *test, const char *of) {
  const struct car_part *motor = part_of(world, of, "");
  double drag_a = motor->drag_a + part_of(world, of, ".blade")->drag_a;
  say_whether(world, test, drag_a < draw_between(&world->car.draws, 0.3, 3) * motor->value);
  return true;
}

static bool direct(struct mechanic *world, const char *test, const char *of) {
  pull_terminals(&world->car, of);
  lead(world, 1, part_of(world, of, "")->from);
  lead(world, part_of(world, of, "")->to, 0);
  watch_fan(world, test, of);
  return true;
}

static bool plug_bulb(struct mechanic *world, const char *test, const char *of) {
  bool to_minus = strncmp(test, "plus-bulb-", 10) == 0;
  if (!ask(world))
    return false;
  pull(&world->car, of);
  watch_bulb(world, test, point_of(world, of, ".1"), to_minus ? 0 : point_of(world, of, ".2"), 55);
  return true;
}

static bool minus_bulb(struct mechanic *world, const char *test, const char *of) {
  pull(&world->car, of);
  watch_bulb(world, test, 1, point_of(world, of, ".2"), 55);
  return true;
}

static bool plug_volts(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  read_between(world, test, point_of(world, of, ".1"), point_of(world, of, ".2"));
  return true;
}

static bool amperes(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  car_run(&world->car);
  mechanic_say(world, "%s=%.2f\n", test,
               fabs(part_of(world, of, "")->ampere) * (1 + world->person.clamp_off));
  return true;
}

static bool feed_drop(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  read_between(world, test, 1, point_of(world, of, ".1"));
  return true;
}

static bool ground_drop(struct mechanic *world, const char *test, const char *of) {
  if (!ask(world))
    return false;
  read_between(world, test, point_of(world, of, ".2"), 0);
  return true;
}

static bool lost(struct mechanic *world, const char *test, const char *of) {
  const struct car_part *part = part_of(world, of, "");
  int from = part->from;
  int to = part->to;
  if (!ask(world))
    return false;
  if (part->kind == CAR_FUSE)
    from = point_of(world, of, ".clips");
  if (part->kind == CAR_SWITCH) {
    from = point_of(world, of, ".1");
    to = point_of(world, of, ".2");
  }
  if (part->kind == CAR_MAKES || part->kind == CAR_RESTS) {
    from = point_of(world, part->owner, ".30");
    to = point_of(world, part->owner, part->kind == CAR_MAKES ? ".87" : ".87a");
  }
  car_run(&world->car);
  say_volts(world, test, fabs(world->car.volt[from] - world->car.volt[to]));
  return true;
}

static bool post_volts(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  if (!ask(world))
    return false;
  read_between(world, test, 1, 0);
  return true;
}

/* What is plugged in at a point is out, as the condition says. */
static void free_point(struct mechanic *world, const char *point) {
  struct car *car = &world->car;
  for (int i = 0; i < car->part_count; i++) {
    struct car_part *part = &car->parts[i];
    if (part->kind != CAR_JOINS || strcmp(car->nodes[part->from], point) != 0)
      continue;
    bool is_cavity = strstr(world->condition, "relay out") && strcmp(part->name, point) == 0;
    const struct car_part *owner = car_find(car, part->owner);
    bool is_pin =
        strstr(world->condition, "plug of the switch off") && owner && owner->kind == CAR_SWITCH;
    bool is_clip = strstr(world->condition, "fuse out") && strstr(part->name, ".clips");
    if (is_cavity || is_pin)
      pull(car, part->owner);
    if (is_clip)
      car_find(car, part->owner)->out = true;
  }
}

static bool bulb_from(struct mechanic *world, const char *test, const char *of) {
  world->car.key = true;
  free_point(world, of);
  watch_bulb(world, test, car_node(&world->car, of), 0, 55);
  return true;
}

static bool bulb_to(struct mechanic *world, const char *test, const char *of) {
  free_point(world, of);
  watch_bulb(world, test, 1, car_node(&world->car, of), 55);
  return true;
}

static bool switch_hot(struct mechanic *world, const char *test, const char *of) {
  const struct car_part *part = part_of(world, of, "");
  if (part->never || isinf(part->more_ohm) || is_cold(world))
    mechanic_say(world, "%s=open\n", test);
  else
    mechanic_say(world, "%s=%.2f\n", test, part->ohm + part->more_ohm + 0.2);
  return true;
}

/* In a pot of its own, whatever the engine's coolant does. */
static bool switch_lit(struct mechanic *world, const char *test, const char *of) {
  struct car_part *part = part_of(world, of, "");
  bool silent[CAR_PARTS];
  for (int i = 0; i < world->car.part_count; i++) {
    silent[i] = world->car.parts[i].silent;
    world->car.parts[i].silent = false;
  }
  pull_terminals(&world->car, of);
  world->car.asked = part->closes & (CAR_HOT | CAR_HIGH);
  lead(world, 1, part->from);
  watch_bulb(world, test, part->to, 0, 55);
  for (int i = 0; i < world->car.part_count; i++)
    world->car.parts[i].silent = silent[i];
  return true;
}

static bool rubs(struct mechanic *world, const char *test, const char *of) {
  double ohm = part_of(world, of, ".chafe")->rub_ohm;
  if (ohm > 0)
    mechanic_say(world, "%s=%.2f\n", test, ohm + 0.2);
  else
    mechanic_say(world, "%s=open\n", test);
  return true;
}

static bool level(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  say_whether(world, test, !is_silent(world, "coolant", ""));
  return true;
}

static bool standing(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  say_whether(world, test, true);
  return true;
}

static bool battery_volts(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  int lights = car_across(&world->car, 1, 0, 0, 120);
  car_run(&world->car);
  say_volts(world, test, world->car.extras[lights].volt);
  return true;
}

static bool hoses(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  say_whether(world, test, !is_cold(world));
  return true;
}

static bool heater(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  say_whether(world, test, !is_silent(world, "pump", "") && !is_silent(world, "coolant", ""));
  return true;
}

static bool engine_heat(struct mechanic *world, const char *test, const char *of) {
  (void)of;
  double t_c = world->circuit->fan_c + (is_cold(world) ? -15 : 6);
  mechanic_say(world, "%s=%.1f\n", test, t_c + draw_between(&world->car.draws, -3, 3));
  return true;
}

static bool module_reads(struct mechanic *world, const char *test, const char *of) {
  bool wrong = is_silent(world, of, "") || is_silent(world, of, ".plug") ||
               is_silent(world, of, ".wires") || is_silent(world, of, ".reading");
  double t_c = world->circuit->fan_c + (wrong ? -27 : 6);
  mechanic_say(world, "%s=%.1f\n", test, t_c + draw_between(&world->car.draws, -1, 1));
  return true;
}

static bool sensor_pins(struct mechanic *world, const char *test, const char *of) {
  mechanic_say(world, "%s=%s\n", test, is_silent(world, of, "") ? "outside" : "within");
  return true;
}

static bool sensor_end(struct mechanic *world, const char *test, const char *of) {
  bool wrong =
      is_silent(world, of, "") || is_silent(world, of, ".plug") || is_silent(world, of, ".wires");
  mechanic_say(world, "%s=%s\n", test, wrong ? "outside" : "within");
  return true;
}

static bool sensor_wires(struct mechanic *world, const char *test, const char *of) {
  say_whether(world, test, !is_silent(world, of, ".wires"));
  return true;
}

/* A name that begins another stands behind it. */
static const struct {
  const char *begins;
  test_of *make;
} tests[] = {
    {"starts-", starts},
    {"fast-", fast},
    {"ac-", by_ac},
    {"unplugged-", unplugged},
    {"commanded-", commanded},
    {"rest-", at_rest},
    {"look-", fuse_look},
    {"holds-bare-", fuse_holds},
    {"holds-", fuse_holds},
    {"jump-", jumped},
    {"bridge-", bridged},
    {"click-", clicks},
    {"spare-", spare},
    {"bench-rest-", bench_at_rest},
    {"bench-", on_bench},
    {"coil-lamp-", coil_lamp},
    {"coil-volts-", coil_volts},
    {"coil-", coil_ohms},
    {"pull-", pulled},
    {"blade-", blade},
    {"turn-", by_hand},
    {"direct-", direct},
    {"plug-bulb-", plug_bulb},
    {"plus-bulb-", plug_bulb},
    {"minus-bulb-", minus_bulb},
    {"volts-", plug_volts},
    {"low-volts-", plug_volts},
    {"amps-", amperes},
    {"feed-drop-", feed_drop},
    {"ground-drop-", ground_drop},
    {"lost-", lost},
    {"post-volts", post_volts},
    {"from-", bulb_from},
    {"to-", bulb_to},
    {"hot-", switch_hot},
    {"lit-", switch_lit},
    {"rub-", rubs},
    {"coolant-level", level},
    {"standing", standing},
    {"battery-volts", battery_volts},
    {"hoses", hoses},
    {"heater", heater},
    {"engine-heat", engine_heat},
    {"reads-", module_reads},
    {"pins-", sensor_pins},
    {"end-", sensor_end},
    {"wires-", sensor_wires},
};

void mechanic_make(struct mechanic *world, const char *test) {
  size_t at = oc_circuit_test(world->circuit, test, strlen(test));
  world->condition = world->circuit->tests[at].cells[OHM_TEST_CONDITION];
  car_put_right(&world->car);
  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++) {
    size_t length = strlen(tests[i].begins);
    if (strncmp(test, tests[i].begins, length) != 0)
      continue;
    if (!tests[i].make(world, test, test + length))
      mechanic_say(world, "%s=skip\n", test);
    return;
  }
  printf("nobody here knows the test %s\n", test);
  exit(1);
}
