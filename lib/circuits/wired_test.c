/* SPDX-License-Identifier: MIT */
#include "wired_test.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/list.h"
#include "../ground/number.h"
#include "../ground/text.h"

/* ---- words ---- */

/* What a gap stands for; NULL when it is none. */
static const char *in_gap(const char *at, const struct oc_wired_gaps *gaps, size_t *length) {
  const struct {
    const char *gap;
    const char *text;
  } all[] = {
      {"{}", gaps->subject}, {"{1}", gaps->first}, {"{2}", gaps->second}, {"{a}", gaps->asked}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    *length = strlen(all[i].gap);
    if (strncmp(at, all[i].gap, *length) == 0 && all[i].text)
      return all[i].text;
  }
  return NULL;
}

void oc_wired_fill(struct oc_text *text, const char *with, const struct oc_wired_gaps *gaps) {
  size_t length;
  while (*with) {
    const char *in = in_gap(with, gaps, &length);
    if (in) {
      oc_text_add(text, in);
      with += length;
    } else {
      oc_text_add_bytes(text, with++, 1);
    }
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

static void list_set(struct oc_wired_maker *maker, struct oc_test *test, ohm_test_column column,
                     oc_set links) {
  char buffer[OC_WIRING_THINGS * (OC_WIRING_NAME + 1)];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (links & oc_set_of(i)) {
      oc_text_add(&text, maker->wiring->things[i].name);
      oc_text_add(&text, " ");
    }
  free(test->cells[column]);
  set_cell(maker, test, column, buffer);
}

static void list_links(struct oc_wired_maker *maker, struct oc_test *test,
                       const struct oc_meaning *meaning) {
  list_set(maker, test, OHM_TEST_CLEARS, oc_meaning_clears(meaning, maker->failings));
  list_set(maker, test, OHM_TEST_ACCUSES, oc_meaning_accuses(meaning, maker->failings));
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
  struct oc_wired_gaps filled = *gaps;
  struct oc_test *test = append(maker);
  if (!test)
    return NULL;
  if (!filled.asked)
    filled.asked = maker->askings[0].said;
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
    fill_cell(maker, test, cells[i].column, cells[i].with, &filled);
  return test;
}

static void add_foretold(struct oc_wired_maker *maker, struct oc_test *test) {
  if (!test || maker->failed)
    return;
  test->foretold = malloc(maker->failings->count + 1);
  maker->failed |= !test->foretold;
}

void oc_wired_add_plain(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                        const struct oc_wired_gaps *gaps, oc_wired_sight *sight, size_t at) {
  struct oc_test *test = oc_wired_add_words(maker, words, gaps, &(struct oc_wired_extras){0});
  struct oc_meaning meaning = {.useful = true, .good = OC_OUTCOME_GOOD};
  add_foretold(maker, test);
  if (!test || maker->failed)
    return;
  for (size_t i = 0; i < maker->failings->count; i++)
    test->foretold[i] = sight(maker, &maker->failings->failure[i], at);
  meaning.foretold = test->foretold;
  list_links(maker, test, &meaning);
}

void oc_wired_add(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                  const struct oc_wired_gaps *gaps, const struct oc_wired_extras *extras,
                  const struct oc_setup *setup, const struct oc_look *look) {
  struct oc_test *test = oc_wired_add_words(maker, words, gaps, extras);
  size_t at = maker->circuit->test_count - 1;
  add_foretold(maker, test);
  if (!test || maker->failed)
    return;
  maker->setups[at] = *setup;
  maker->looks[at] = *look;
  maker->is_open[at] = true;
}

/* ---- working them out ---- */

static bool is_same_setup(const struct oc_setup *a, const struct oc_setup *b) {
  bool same = a->asked == b->asked && a->key == b->key && a->unplugged == b->unplugged &&
              a->spare == b->spare && a->across_count == b->across_count;
  for (size_t i = 0; same && i < a->across_count; i++)
    same = a->across[i].plus == b->across[i].plus && a->across[i].minus == b->across[i].minus &&
           a->across[i].watt == b->across[i].watt && a->across[i].ohm == b->across[i].ohm &&
           a->across[i].volts == b->across[i].volts;
  return same;
}

/* All that are made with the car set up as it is for the first. */
static void work_out_group(struct oc_wired_maker *maker, struct oc_meaning_room *room, size_t first,
                           bool *useful) {
  struct oc_look looks[OC_LOOKS_MAX] = {{.kind = OC_LOOK_FAN}};
  struct oc_meaning meanings[OC_LOOKS_MAX];
  size_t places[OC_LOOKS_MAX];
  size_t count = 0;
  struct ohm_circuit *circuit = maker->circuit;
  for (size_t i = first; i < circuit->test_count && count < OC_LOOKS_MAX; i++) {
    if (!maker->is_open[i] || !is_same_setup(&maker->setups[i], &maker->setups[first]))
      continue;
    maker->is_open[i] = false;
    looks[count] = maker->looks[i];
    meanings[count] = (struct oc_meaning){.foretold = circuit->tests[i].foretold};
    places[count++] = i;
  }
  bool solved = oc_meaning_find(room, maker->drive, maker->wiring, maker->failings,
                                &maker->setups[first], looks, count, meanings);
  for (size_t i = 0; i < count; i++) {
    useful[places[i]] = solved && oc_meaning_accuses(&meanings[i], maker->failings) != 0;
    if (useful[places[i]])
      list_links(maker, &circuit->tests[places[i]], &meanings[i]);
  }
}

/* Whether a test that stays tells the same by the same tools. */
static bool is_told(const struct oc_wired_maker *maker, size_t stay, const struct oc_test *test) {
  for (size_t i = 0; i < stay; i++) {
    const struct oc_test *other = &maker->circuit->tests[i];
    if (other->foretold && test->foretold &&
        memcmp(other->foretold, test->foretold, maker->failings->count) == 0 &&
        strcmp(other->cells[OHM_TEST_TOOL], test->cells[OHM_TEST_TOOL]) == 0 &&
        strcmp(other->cells[OHM_TEST_NEEDS], test->cells[OHM_TEST_NEEDS]) == 0 &&
        other->cells[OHM_TEST_ROLE][0] == '\0' && test->cells[OHM_TEST_ROLE][0] == '\0')
      return true;
  }
  return false;
}

static void keep_useful(struct oc_wired_maker *maker, const bool *useful) {
  struct ohm_circuit *circuit = maker->circuit;
  size_t stay = 0;
  for (size_t i = 0; i < circuit->test_count; i++) {
    struct oc_test *test = &circuit->tests[i];
    if (!useful[i] || is_told(maker, stay, test))
      oc_test_free(test);
    else
      circuit->tests[stay++] = *test;
  }
  circuit->test_count = stay;
}

void oc_wired_work_out(struct oc_wired_maker *maker) {
  struct oc_meaning_room *room = malloc(sizeof *room);
  bool useful[OC_CIRCUIT_TESTS];
  maker->failed |= !room;
  for (size_t i = 0; i < maker->circuit->test_count; i++)
    useful[i] = true;
  for (size_t i = 0; i < maker->circuit->test_count && !maker->failed; i++)
    if (maker->is_open[i])
      work_out_group(maker, room, i, useful);
  free(room);
  if (!maker->failed)
    keep_useful(maker, useful);
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

static struct oc_wired_asking *add_asking(struct oc_wired_maker *maker, unsigned asked,
                                          const char *said) {
  if (maker->asking_count == OC_ASKINGS)
    return NULL;
  struct oc_wired_asking *asking = &maker->askings[maker->asking_count++];
  struct oc_text text = oc_text_begin(asking->said, sizeof asking->said);
  asking->setup = (struct oc_setup){.asked = asked, .key = true};
  oc_text_add(&text, said);
  return asking;
}

static void add_bridging(struct oc_wired_maker *maker, size_t at) {
  char said[100];
  struct oc_text text = oc_text_begin(said, sizeof said);
  oc_text_add(&text, "plug of ");
  oc_text_add(&text, oc_wired_thing(maker, at)->name);
  oc_text_add(&text, " bridged by a fused jumper, key on");
  struct oc_wired_asking *asking = add_asking(maker, 0, said);
  if (!asking)
    return;
  asking->setup.unplugged = oc_wired_plugged(maker, at);
  oc_wired_put(&asking->setup,
               oc_wired_lead(oc_wired_pin(maker, at, 0)->from, oc_wired_pin(maker, at, 1)->from));
}

static double speed_of_all(struct oc_wired_maker *maker, const struct oc_setup *setup) {
  struct oc_drive_result sound;
  double speed = 0;
  if (!oc_drive_sound(maker->drive, maker->wiring, setup, &sound))
    return 0;
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    speed += fabs(sound.motor_speed[i]);
  return speed;
}

static void put_fastest_first(struct oc_wired_maker *maker) {
  size_t fastest = 0;
  double most = speed_of_all(maker, &maker->askings[0].setup);
  for (size_t i = 1; i < maker->asking_count; i++) {
    double speed = speed_of_all(maker, &maker->askings[i].setup);
    if (speed > most + OC_EYE_FAN_TURNS) {
      most = speed;
      fastest = i;
    }
  }
  const struct oc_wired_asking first = maker->askings[fastest];
  maker->askings[fastest] = maker->askings[0];
  maker->askings[0] = first;
}

void oc_wired_find_askings(struct oc_wired_maker *maker) {
  static const struct {
    unsigned way;
    const char *said;
  } each[] = {{OC_WAY_COMMANDED, "commanded by self-test or scan tool, key on"},
              {OC_WAY_AC, "A/C on, engine idling"},
              {OC_WAY_UNPLUGGED, "sensor unplugged, key on"}};
  unsigned ways = oc_wiring_ways(maker->wiring);
  unsigned cold = ways & ~(unsigned)(OC_WAY_HOT | OC_WAY_HIGH);
  maker->asking_count = 0;
  if (cold != 0)
    add_asking(maker, cold,
               "asked for in a way that holds for this car: self-test, scan tool, A/C, sensor "
               "unplugged");
  for (size_t i = 0; i < sizeof each / sizeof each[0]; i++)
    if ((cold & each[i].way) != 0)
      add_asking(maker, each[i].way, each[i].said);
  for (size_t i = 0; i < maker->wiring->thing_count; i++)
    if (oc_wired_thing(maker, i)->kind == OC_THING_SWITCH)
      add_bridging(maker, i);
  add_asking(maker, OC_WAY_HOT, "engine idling, hot");
  if ((ways & OC_WAY_HIGH) != 0)
    add_asking(maker, OC_WAY_HOT | OC_WAY_HIGH, "engine idling, hotter still, never up to red");
  put_fastest_first(maker);
}

struct oc_setup oc_wired_asked(const struct oc_wired_maker *maker) {
  return maker->askings[0].setup;
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

struct oc_across oc_wired_ohmmeter(size_t plus, size_t minus) {
  return (struct oc_across){.plus = plus, .minus = minus, .ohm = 1000, .volts = 1};
}

/* Whether a motor turns in a sound wiring that is set up so. */
bool oc_wired_turns(struct oc_wired_maker *maker, const struct oc_setup *setup, size_t motor) {
  struct oc_drive_result sound;
  return oc_drive_sound(maker->drive, maker->wiring, setup, &sound) &&
         sound.motor_speed[motor] > OC_EYE_FAN_TURNS;
}

const char *oc_wired_point(const struct oc_wired_maker *maker, size_t point) {
  return maker->wiring->points[point];
}

void oc_wired_add_for_motors(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                             const char *subject, const char *first, const struct oc_setup *setup) {
  oc_set motors = oc_wired_things(maker->wiring, OC_THING_MOTOR);
  for (size_t i = 0; i < maker->wiring->thing_count; i++) {
    if (!(motors & oc_set_of(i)) || !oc_wired_turns(maker, setup, i))
      continue;
    const char *name = oc_wired_thing(maker, i)->name;
    const struct oc_wired_gaps gaps = {.subject = subject,
                                       .other = oc_set_size(motors) > 1 ? name : NULL,
                                       .first = first,
                                       .second = name};
    const struct oc_look look = {.kind = OC_LOOK_FAN, .at = i};
    oc_wired_add(maker, words, &gaps, &(struct oc_wired_extras){0}, setup, &look);
  }
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
