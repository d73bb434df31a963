/* SPDX-License-Identifier: MIT */
#include "wired_test.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/list.h"
#include "../ground/number.h"
#include "../ground/text.h"

/* ---- words ---- */

void oc_wired_fill(struct oc_text *text, const char *with, const struct oc_wired_gaps *gaps) {
  for (; *with; with++) {
    size_t skip = 0;
    const char *in = NULL;
    if (strncmp(with, "{}", 2) == 0) {
      in = gaps->subject;
      skip = 1;
    } else if (strncmp(with, "{1}", 3) == 0 || strncmp(with, "{2}", 3) == 0) {
      in = with[1] == '1' ? gaps->first : gaps->second;
      skip = 2;
    }
    if (in)
      oc_text_add(text, in);
    else
      oc_text_add_bytes(text, with, 1);
    with += skip;
  }
}

/* ---- adding one ---- */

enum { CELL_MAX = 1200 };

static void set_cell(struct oc_wired_maker *maker, struct oc_test *test, ohm_test_column column,
                     const char *text) {
  size_t length = text ? strlen(text) : 0;
  while (length > 0 && text[length - 1] == ' ')
    length--;
  test->cells[column] = oc_text_new(text ? text : "", length);
  maker->failed |= !test->cells[column];
}

static void fill_cell(struct oc_wired_maker *maker, struct oc_test *test, ohm_test_column column,
                      const char *with, const struct oc_wired_gaps *gaps) {
  char buffer[CELL_MAX];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  oc_wired_fill(&text, with ? with : "", gaps);
  if (column == OHM_TEST_TEST && gaps->other) {
    oc_text_add(&text, "-");
    oc_text_add(&text, gaps->other);
  }
  set_cell(maker, test, column, buffer);
}

static void list_links(struct oc_wired_maker *maker, struct oc_test *test, ohm_test_column column,
                       oc_set links) {
  char buffer[OC_WIRING_THINGS * (OC_WIRING_NAME + 1)];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (links & oc_set_of(i)) {
      oc_text_add(&text, maker->wiring->things[i].name);
      oc_text_add(&text, " ");
    }
  set_cell(maker, test, column, buffer);
}

static struct oc_test *append(struct oc_wired_maker *maker) {
  struct ohm_circuit *circuit = maker->circuit;
  if (circuit->test_count == OC_CIRCUIT_TESTS)
    return NULL;
  struct oc_test *tests =
      oc_list_grow(circuit->tests, circuit->test_count, &maker->room, sizeof *tests);
  if (!tests) {
    maker->failed = true;
    return NULL;
  }
  circuit->tests = tests;
  struct oc_test *test = &tests[circuit->test_count++];
  *test = (struct oc_test){
      .is_usual = true, .only_if = OC_NO_PLACE, .amperes = {OC_NO_PLACE, OC_NO_PLACE}};
  return test;
}

struct oc_test *oc_wired_add_words(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                                   const struct oc_wired_gaps *gaps,
                                   const struct oc_wired_extras *extras) {
  struct oc_test *test = append(maker);
  if (!test)
    return NULL;
  const struct {
    ohm_test_column column;
    const char *with;
  } cells[] = {
      {OHM_TEST_TEST, words->name},           {OHM_TEST_ROLE, extras->role},
      {OHM_TEST_WHAT, words->what},           {OHM_TEST_POINTS, words->points},
      {OHM_TEST_CONDITION, words->condition}, {OHM_TEST_LOAD, words->load},
      {OHM_TEST_TOOL, words->tool},           {OHM_TEST_MINUTES, words->minutes},
      {OHM_TEST_UNIT, words->unit},           {OHM_TEST_LOW, extras->low},
      {OHM_TEST_HIGH, extras->high},          {OHM_TEST_ERROR, words->error},
      {OHM_TEST_CLEARS, extras->clears},      {OHM_TEST_ACCUSES, extras->accuses},
      {OHM_TEST_ONLY_IF, extras->only_if},    {OHM_TEST_NEEDS, extras->needs},
      {OHM_TEST_FEEDS, extras->feeds},        {OHM_TEST_AMPERES, extras->amperes},
      {OHM_TEST_CAUTION, words->caution},     {OHM_TEST_SOURCE, words->source},
  };
  _Static_assert(sizeof cells / sizeof cells[0] == OHM_TEST_COLUMN_COUNT, "a cell is missing");
  for (size_t i = 0; i < sizeof cells / sizeof cells[0]; i++)
    fill_cell(maker, test, cells[i].column, cells[i].with, gaps);
  return test;
}

/* Whether a test before the last tells the same by the same tools. */
static bool is_told(const struct oc_wired_maker *maker) {
  const struct ohm_circuit *circuit = maker->circuit;
  const struct oc_test *last = &circuit->tests[circuit->test_count - 1];
  for (size_t i = 0; i + 1 < circuit->test_count; i++) {
    const struct oc_test *test = &circuit->tests[i];
    if (test->foretold && memcmp(test->foretold, last->foretold, maker->failings->count) == 0 &&
        strcmp(test->cells[OHM_TEST_TOOL], last->cells[OHM_TEST_TOOL]) == 0 &&
        strcmp(test->cells[OHM_TEST_NEEDS], last->cells[OHM_TEST_NEEDS]) == 0 &&
        test->cells[OHM_TEST_ROLE][0] == '\0' && last->cells[OHM_TEST_ROLE][0] == '\0')
      return true;
  }
  return false;
}

/* Add a test that was worked out, unless it tells nothing, or nothing new. */
void oc_wired_add_meant(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                        const struct oc_wired_gaps *gaps, const struct oc_wired_extras *extras) {
  size_t count = maker->failings->count;
  oc_set accuses = oc_meaning_accuses(&maker->meaning, maker->failings);
  if (maker->failed || !maker->meaning.useful || accuses == 0)
    return;
  struct oc_test *test = oc_wired_add_words(maker, words, gaps, extras);
  if (!test || maker->failed)
    return;
  test->foretold = malloc(count + 1);
  if (!test->foretold) {
    maker->failed = true;
    return;
  }
  memcpy(test->foretold, maker->meaning.foretold, count);
  free(test->cells[OHM_TEST_CLEARS]);
  free(test->cells[OHM_TEST_ACCUSES]);
  list_links(maker, test, OHM_TEST_CLEARS, oc_meaning_clears(&maker->meaning, maker->failings));
  list_links(maker, test, OHM_TEST_ACCUSES, accuses);
  if (is_told(maker)) {
    oc_test_free(test);
    maker->circuit->test_count--;
  }
}

void oc_wired_add(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                  const struct oc_wired_gaps *gaps, const struct oc_wired_extras *extras,
                  const struct oc_look *look) {
  if (!maker->failed &&
      oc_meaning_find(maker->drive, maker->wiring, maker->failings, look, &maker->meaning))
    oc_wired_add_meant(maker, words, gaps, extras);
}

/* ---- the wiring, asked ---- */

const struct oc_thing *oc_wired_thing(const struct oc_wired_maker *maker, size_t at) {
  return &maker->wiring->things[at];
}

oc_set oc_wired_things(const struct oc_wiring *wiring, enum oc_thing_kind kind) {
  oc_set things = 0;
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == kind)
      things |= oc_set_of(i);
  return things;
}

/* A thing in its plug, with its pins: pulled. */
oc_set oc_wired_plugged(const struct oc_wired_maker *maker, size_t at) {
  oc_set out = oc_set_of(at);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->role == OC_ROLE_PIN && oc_wired_thing(maker, i)->of == at)
      out |= oc_set_of(i);
  return out;
}

bool oc_wired_is_of_relay(const struct oc_thing *thing, size_t relay) {
  bool is = thing->kind == OC_THING_CONTACT || thing->kind == OC_THING_REST ||
            thing->kind == OC_THING_COIL || thing->role == OC_ROLE_SOCKET;
  return is && thing->of == relay;
}

oc_set oc_wired_relay_out(const struct oc_wired_maker *maker, size_t relay) {
  oc_set out = 0;
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_is_of_relay(oc_wired_thing(maker, i), relay))
      out |= oc_set_of(i);
  return out;
}

/* The terminal of a relay's cavity; OC_WIRING_THINGS when it is not wired. */
size_t oc_wired_cavity(const struct oc_wired_maker *maker, size_t relay, const char *end) {
  char name[2 * OC_WIRING_NAME];
  struct oc_text text = oc_text_begin(name, sizeof name);
  oc_text_add(&text, maker->wiring->relays[relay]);
  oc_text_add(&text, end);
  return oc_wiring_find(maker->wiring, name);
}

/* Pins of a thing: 0 towards from, 1 towards to. They come before it. */
const struct oc_thing *oc_wired_pin(const struct oc_wired_maker *maker, size_t at, int which) {
  return oc_wired_thing(maker, at - 2 + (size_t)which);
}

/* Asked in every way but by heat; where there is none, by bridging what closes with heat. */
struct oc_setup oc_wired_asked(const struct oc_wired_maker *maker) {
  unsigned ways = oc_wiring_ways(maker->wiring);
  struct oc_setup setup = {.asked = ways & ~(unsigned)(OC_WAY_HOT | OC_WAY_HIGH), .key = true};
  for (size_t i = 0; setup.asked == 0 && i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->kind == OC_THING_SWITCH && setup.across_count == 0) {
      setup.unplugged = oc_wired_plugged(maker, i);
      setup.across[setup.across_count++] =
          (struct oc_across){.plus = oc_wired_pin(maker, i, 0)->from,
                             .minus = oc_wired_pin(maker, i, 1)->from,
                             .ohm = OC_JUMPER_OHM};
    }
  return setup;
}

void oc_wired_put(struct oc_setup *setup, struct oc_across across) {
  if (setup->across_count < OC_SETUP_ACROSS)
    setup->across[setup->across_count++] = across;
}

struct oc_across oc_wired_bulb(size_t plus, size_t minus) {
  return (struct oc_across){.plus = plus, .minus = minus, .watt = OC_BULB_WATT};
}

struct oc_across oc_wired_lead(size_t plus, size_t minus) {
  return (struct oc_across){.plus = plus, .minus = minus, .ohm = OC_JUMPER_OHM};
}

struct oc_across oc_wired_meter(size_t plus, size_t minus) {
  return (struct oc_across){.plus = plus, .minus = minus, .ohm = OC_VOLTMETER_OHM};
}

/* Whether a motor turns in a sound wiring that is set up so. */
bool oc_wired_turns(struct oc_wired_maker *maker, const struct oc_setup *setup, size_t motor) {
  struct oc_drive_result sound;
  oc_drive_begin(maker->drive, maker->wiring, setup);
  return oc_drive_run(maker->drive, (struct oc_failures){0, NULL, 0}, &sound) &&
         sound.motor_speed[motor] > OC_EYE_FAN_TURNS;
}

const char *oc_wired_point(const struct oc_wired_maker *maker, size_t point) {
  return maker->wiring->points[point];
}

/* ---- figures ---- */

/* A figure as a cell, to two digits. */
const char *oc_wired_figure(char *cell, size_t size, double number) {
  double step = pow(10, floor(log10(number)) - 1);
  struct oc_text text = oc_text_begin(cell, size);
  oc_text_add_number(&text, round(number / step) * step);
  return cell;
}

double oc_wired_judged(const char *cell) {
  double number = NAN;
  ohm_number_read(cell, strlen(cell), &number);
  return number;
}
