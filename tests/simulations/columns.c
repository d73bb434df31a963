/* SPDX-License-Identifier: MIT */
/*
 * A garage in which every fault is known: each circuit built in that lists its links, with
 * every single fault and every pair of faults, is isolated test by test, the meters off by as much
 * as they may be. A world says nothing it could not say: a test is bad when a link it clears is at
 * fault, good when none it accuses is, and either when only one of the others is.
 *
 * Fails when a faulty link is cleared, a sound part condemned, a contradiction seen, when
 * it does not end with the fan starting, or takes more tests than the printed order.
 */
#include <math.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/circuits/circuit.h"
#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/isolation.h"
#include "../share.h"

enum { RECORD_MAX = 16384, STEPS_MAX = 200, ORDER_MAX = 48 };

/* ---- chance ---- */

static uint64_t draws;

static double chance(void) {
  return draw_share(&draws);
}

static double between(double low, double high) {
  return draw_between(&draws, low, high);
}

/* ---- a world ---- */

struct world {
  const ohm_circuit *circuit;
  oc_set faults;
  double amperes;
  double lost_volt[2]; /* on the feed and on the ground side */
  char record[RECORD_MAX];
  size_t length;
};

static oc_set links_of_kind(const ohm_circuit *circuit, enum oc_link_kind kind) {
  oc_set links = 0;
  for (size_t i = 0; i < circuit->link_count; i++)
    if (circuit->links[i].kind == kind)
      links |= oc_set_of(i);
  return links;
}

static const char *name_of(const ohm_circuit *circuit, size_t test) {
  return circuit->tests[test].cells[OHM_TEST_TEST];
}

/* Whether a test comes out good; by chance where the world leaves it open. */
static bool is_good(const struct world *world, size_t index) {
  const struct oc_test *test = &world->circuit->tests[index];
  oc_set cooling = world->faults & links_of_kind(world->circuit, OHM_LINK_COOLING);
  if (test->clears & world->faults || (test->role == OC_ROLE_SYMPTOM && cooling))
    return false;
  if (test->accuses && !(test->accuses & world->faults))
    return true;
  /* Heat where the fan is commanded from lacks only when the coolant does not carry it. */
  if (test->role == OC_ROLE_CONDITION && !test->accuses)
    return !cooling || chance() < 0.5;
  return chance() < 0.5;
}

/* A true value on the right side of the limits, and what the instrument makes of it. */
static double reading(struct world *world, const struct oc_test *test, bool good) {
  double fan_c = world->circuit->fan_c;
  double low = oc_test_limit_at(test->low, fan_c);
  double high = oc_test_limit_at(test->high, fan_c);
  double value;
  if (test->unit == OC_UNIT_DROP && good)
    value = between(0, high) * world->amperes;
  else if (test->unit == OC_UNIT_DROP)
    value = between(3, 6);
  else if (good)
    value = between(isnan(low) ? 0 : low, isnan(high) ? 1.08 * low : high);
  else if (isnan(high) || (!isnan(low) && chance() < 0.5))
    value = between(0, low);
  else
    value = between(high, 3 * high);
  double error = test->error_percent / 100 * fabs(value) + test->error;
  return fmax(0, value + between(-1, 1) * error);
}

static void add(struct world *world, const char *format, ...) __attribute__((format(printf, 2, 3)));

static void add(struct world *world, const char *format, ...) {
  va_list values;
  va_start(values, format);
  int length = vsnprintf(world->record + world->length, RECORD_MAX - world->length, format, values);
  va_end(values);
  world->length += (size_t)length;
  if (world->length >= RECORD_MAX)
    abort();
}

/* Volts that belong together are read as such: what is left to the fan is what the feed
 * and the ground leave of the battery. */
static bool is_left_over(const struct world *world, size_t index) {
  for (size_t i = 0; i < world->circuit->balance_count; i++)
    for (size_t k = 0; k < world->circuit->balances[i].part_count; k++)
      if (world->circuit->balances[i].parts[k] == index &&
          world->circuit->tests[index].unit == OC_UNIT_VOLT)
        return true;
  return false;
}

static void make_test(struct world *world, size_t index) {
  const struct oc_test *test = &world->circuit->tests[index];
  bool good = is_good(world, index);
  const char *name = name_of(world->circuit, index);
  switch (test->unit) {
  case OC_UNIT_WORD:
    add(world, "%s=%s\n", name, good ? "good" : "bad");
    break;
  case OC_UNIT_FINDING_SENSOR:
  case OC_UNIT_FINDING_MODULE:
    add(world, "%s=%s\n", name, good ? "within" : "outside");
    break;
  case OC_UNIT_FUSE:
    add(world, "%s=%.1fmV\n", name, good ? between(5, 20) : between(0, 0.2));
    break;
  case OC_UNIT_AMPERE:
    world->amperes = good ? between(5, 11) : between(0, 2);
    add(world, "%s=%.2f\n", name, world->amperes * (1 + 0.02 * between(-1, 1)));
    break;
  default:
    if (is_left_over(world, index))
      add(world, "%s=%s\n", name, good ? "good" : "bad");
    else
      add(world, "%s=%.4f\n", name, reading(world, test, good));
  }
}

/* ---- what must hold ---- */

static int failures;

static void complain(const struct world *world, const char *what) {
  if (failures++ < 5)
    printf("%s: %s; faults %llx, after:\n%s", ohm_circuit_name(world->circuit), what,
           (unsigned long long)world->faults, world->record);
}

static oc_set links_in(const struct world *world, const ohm_finding *finding, ohm_field field) {
  oc_set links = 0;
  const char *name;
  for (size_t i = 0; (name = ohm_finding_text(finding, (int)field, i)); i++)
    links |= oc_set_of(oc_circuit_link(world->circuit, name, strlen(name)));
  return links;
}

static bool state_is(const ohm_finding *finding, const char *word) {
  return strcmp(ohm_finding_text(finding, OHM_FIELD_STATE, 0), word) == 0;
}

static void judge(struct world *world, ohm_finding *finding) {
  ohm_error error;
  if (oc_isolation_judge(world->circuit, world->record, world->length, finding, &error) != OHM_OK) {
    complain(world, error.message);
    exit(1);
  }
  if (links_in(world, finding, OHM_FIELD_CLEARED) & world->faults)
    complain(world, "a faulty link was cleared");
  oc_set faulty = links_in(world, finding, OHM_FIELD_FAULTY);
  for (size_t i = 0; i < world->circuit->link_count; i++)
    if (faulty & oc_set_of(i) && !(oc_circuit_part(world->circuit, i) & world->faults))
      complain(world, "a sound part was condemned");
  if (state_is(finding, "contradiction"))
    complain(world, "a contradiction without cause");
}

/* What is condemned is renewed; the bill is kept. */
static void renew(struct world *world, oc_set faulty, oc_set *renewed) {
  for (size_t i = 0; i < world->circuit->link_count; i++)
    if (faulty & oc_set_of(i)) {
      oc_set part = oc_circuit_part(world->circuit, i);
      add(world, "%s=renewed\n", world->circuit->links[i].cells[OHM_LINK_LINK]);
      world->faults &= ~part;
      *renewed |= part;
      faulty &= ~part;
    }
}

/* ---- the printed order ---- */

/* General Motors: Yukon, 1997, auxiliary fan does not operate; before it coolant, fuse and
 * A/C as Mercury Tracer, 1997, and Toyota, 2010s, have them, the motor as Toyota, 2010s;
 * last what needs the module. For a fan switch: Honda, trade order: motor, then the switch
 * bridged. For a fan module: VW Touareg, 2010. */
static const char *const orders[][ORDER_MAX] = {
    {"dropping-resistor",
     "fuse-look",
     "ask-ac",
     "ask-unplugged",
     "direct",
     "lamp-30",
     "lamp-85",
     "jump",
     "control-ohms",
     "ground-control",
     "coil-ohms",
     "contact-ohms",
     "resistor-ohms",
     "module-heat",
     "sensor-pins",
     "sensor-end",
     "lit",
     "ground-lead",
     "swap",
     "click",
     NULL},
    {"module-relays", "fuse-look",    "ask-ac",      "ask-unplugged", "direct",
     "lamp-30",       "lamp-85",      "jump",        "control-ohms",  "ground-control",
     "coil-ohms",     "contact-ohms", "module-heat", "sensor-pins",   "sensor-end",
     "lit",           "ground-lead",  "swap",        "click",         NULL},
    {"pulse-width", "fuse-look", "supply-lamp", "key-volts", "ground-lamp", "ask-ac",
     "ask-unplugged", "command-ohms", "command-pulses", "lit", "module-heat", "sensor-pins",
     "sensor-end", "ground-lead", NULL},
    {"radiator-switch", "fuse-look", "direct", "bridge", "switch-hot", "lamp-30", "lamp-85", "jump",
     "coil-ohms", "contact-ohms", "control-ohms", "lit", "ground-lead", "swap", "click", NULL},
    {"series-parallel",
     "fuse-look",
     "ask-ac",
     "ask-unplugged",
     "direct",
     "lamp-30",
     "lamp-85",
     "jump",
     "control-ohms",
     "ground-control",
     "coil-ohms",
     "contact-ohms",
     "rest-ohms",
     "changeover-ohms",
     "module-heat",
     "sensor-pins",
     "sensor-end",
     "bridged",
     "lit",
     "ground-lead",
     "swap",
     "click",
     NULL},
};

static const char *const *order_of(const ohm_circuit *circuit) {
  for (size_t i = 0; i < sizeof orders / sizeof orders[0]; i++)
    if (strcmp(orders[i][0], ohm_circuit_name(circuit)) == 0)
      return orders[i] + 1;
  return NULL;
}

static bool was_made(const struct world *world, const char *name) {
  char line[64];
  snprintf(line, sizeof line, "%s=", name);
  const char *from = strstr(world->record, "renewed");
  for (const char *at = from ? from : world->record; (at = strstr(at, line)); at++)
    if (at == world->record || at[-1] == '\n')
      return true;
  return false;
}

/* Among the tests that are named by a step, with any ending, the first that was not made
 * and is about a suspect. */
static size_t printed_next(const struct world *world, oc_set suspects) {
  const char *const *order = order_of(world->circuit);
  for (; *order; order++)
    for (size_t i = 0; i < world->circuit->test_count; i++) {
      const char *name = name_of(world->circuit, i);
      size_t length = strlen(*order);
      bool named =
          strncmp(name, *order, length) == 0 && (name[length] == '\0' || name[length] == '-');
      const struct oc_test *test = &world->circuit->tests[i];
      if (named && (test->clears | test->accuses) & suspects && !was_made(world, name))
        return i;
    }
  return OC_NO_PLACE;
}

/* ---- one case, isolated ---- */

struct tally {
  size_t cases;
  double tests;
  double minutes;
};

enum { AS_ADVISED, AS_PRINTED };

/* The symptoms and conditions are asked alike; after that the printed order or advice. */
static size_t choose(const struct world *world, const ohm_finding *finding, int how) {
  const char *next = ohm_finding_text(finding, OHM_FIELD_NEXT, 0);
  size_t advised = next ? oc_circuit_test(world->circuit, next, strlen(next)) : OC_NO_PLACE;
  bool by_order = advised == OC_NO_PLACE ||
                  (world->circuit->tests[advised].role == OC_ROLE_ORDINARY && how == AS_PRINTED);
  size_t printed = by_order && how == AS_PRINTED
                       ? printed_next(world, links_in(world, finding, OHM_FIELD_SUSPECTS))
                       : OC_NO_PLACE;
  return printed == OC_NO_PLACE ? advised : printed;
}

static void isolate(const ohm_circuit *circuit, oc_set faults, uint64_t seed, int how,
                    struct tally *tally) {
  struct world world = {.circuit = circuit, .faults = faults};
  ohm_finding finding = finding_new();
  oc_set renewed = 0;
  draws = seed;
  for (size_t i = 0; i < circuit->fact_count; i++)
    if (chance() < 0.5)
      add(&world, "%s=yes\n", circuit->facts[i].name);
  judge(&world, &finding);
  for (int step = 0; !state_is(&finding, "closed"); step++) {
    if (step == STEPS_MAX) {
      complain(&world, "it does not end");
      return;
    }
    if (state_is(&finding, "found")) {
      renew(&world, links_in(&world, &finding, OHM_FIELD_FAULTY), &renewed);
    } else {
      size_t next = choose(&world, &finding, how);
      if (next == OC_NO_PLACE) {
        complain(&world, "no test is left and nothing is found");
        return;
      }
      make_test(&world, next);
    }
    judge(&world, &finding);
  }
  if (faults & ~renewed)
    complain(&world, "it closed with a fault left");
  tally->cases++;
  tally->tests += ohm_finding_number(&finding, OHM_FIELD_TESTS);
  tally->minutes += ohm_finding_number(&finding, OHM_FIELD_MINUTES);
  findings_free();
}

static uint64_t number_of(size_t one, size_t other) {
  return 1000 * (uint64_t)one + other + 1;
}

static void run(const ohm_circuit *circuit) {
  struct tally tallies[2][2] = {{{0, 0, 0}}};
  size_t n = circuit->link_count;
  bool has_order = order_of(circuit) != NULL;
  for (int how = 0; how <= (has_order ? AS_PRINTED : AS_ADVISED); how++)
    for (size_t one = 0; one < n; one++)
      for (size_t other = one; other < n; other++)
        if (one == other || share_has(number_of(one, other)))
          isolate(circuit, oc_set_of(one) | oc_set_of(other), number_of(one, other), how,
                  &tallies[how][one != other]);
  for (int pair = 0; pair < 2; pair++) {
    const struct tally *ours = &tallies[AS_ADVISED][pair];
    const struct tally *printed = &tallies[AS_PRINTED][pair];
    printf("%-18s %-7s %5zu cases  %5.1f tests %6.0f min", ohm_circuit_name(circuit),
           pair ? "pairs" : "singles", ours->cases, ours->tests / (double)ours->cases,
           ours->minutes / (double)ours->cases);
    if (!has_order) {
      printf("   no order printed\n");
      continue;
    }
    printf("   printed order %5.1f tests %6.0f min\n", printed->tests / (double)printed->cases,
           printed->minutes / (double)printed->cases);
    if (!(ours->tests <= printed->tests)) {
      printf("more tests than the printed order\n");
      failures++;
    }
  }
}

int main(void) {
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), NULL);
    if (!circuit)
      return 1;
    if (!circuit->wired)
      run(circuit);
    ohm_circuit_free(circuit);
  }
  printf("%d failures\n", failures);
  return failures > 0;
}
