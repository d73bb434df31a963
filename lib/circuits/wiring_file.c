/* SPDX-License-Identifier: MIT */
#include "wiring_file.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/number.h"

/* ---- words ---- */

enum word {
  BATTERY,
  WIRE,
  SPLICE,
  STRAP,
  RAIL,
  GROUND,
  FUSE,
  RELAY,
  OUTPUT,
  SWITCH,
  RESISTOR,
  MOTOR,
  SENSOR,
  WORDS
};

static const struct {
  const char *word;
  enum oc_thing_kind kind;
  enum oc_thing_role role;
  bool needs; /* a value */
} kinds[WORDS] = {
    [BATTERY] = {"battery", OC_THING_BATTERY, OC_ROLE_NONE, false},
    [WIRE] = {"wire", OC_THING_CONDUCTOR, OC_ROLE_WIRE, false},
    [SPLICE] = {"splice", OC_THING_CONDUCTOR, OC_ROLE_SPLICE, false},
    [STRAP] = {"strap", OC_THING_CONDUCTOR, OC_ROLE_STRAP, false},
    [RAIL] = {"rail", OC_THING_CONDUCTOR, OC_ROLE_RAIL, false},
    [GROUND] = {"ground", OC_THING_CONDUCTOR, OC_ROLE_GROUND, false},
    [FUSE] = {"fuse", OC_THING_FUSE, OC_ROLE_NONE, true},
    [RELAY] = {"relay", OC_THING_COIL, OC_ROLE_NONE, false},
    [OUTPUT] = {"output", OC_THING_OUTPUT, OC_ROLE_NONE, false},
    [SWITCH] = {"switch", OC_THING_SWITCH, OC_ROLE_NONE, false},
    [RESISTOR] = {"resistor", OC_THING_RESISTOR, OC_ROLE_NONE, true},
    [MOTOR] = {"motor", OC_THING_MOTOR, OC_ROLE_NONE, true},
    [SENSOR] = {"sensor", OC_THING_ASKER, OC_ROLE_SENSOR, false},
};

/* Where no value is written. */
static double usual_of(enum word word) {
  return word == BATTERY ? OC_BATTERY_AT_REST_V : word == RELAY ? OC_RELAY_COIL_OHM : 0;
}

static void fail(struct oc_wiring_file *reader, ohm_status status, const char *what,
                 const struct oc_csv_cell *cell, const char *advice) {
  oc_table_file_fail(reader->file, status, what, cell, advice);
}

static void fail_room(struct oc_wiring_file *reader) {
  fail(reader, OHM_TOO_LARGE, "more than 64 things with the terminals of relays and motors", NULL,
       ": take together what lies one behind the other");
}

static bool goes_on(const struct oc_wiring_file *reader) {
  return oc_goes_on(reader->file->complaints);
}

static const struct oc_csv_cell *cell_of(const struct oc_wiring_file *reader,
                                         enum oc_wiring_column column) {
  return oc_table_file_cell(reader->file, column);
}

/* ---- cells ---- */

static enum word take_kind(struct oc_wiring_file *reader) {
  const struct oc_csv_cell *cell = cell_of(reader, OC_WIRING_KIND);
  for (int i = 0; i < WORDS; i++)
    if (oc_csv_is(cell, kinds[i].word))
      return (enum word)i;
  fail(reader, OHM_BAD_SYNTAX, "the kind is ", cell,
       "; write battery, wire, splice, strap, rail, ground, fuse, relay, output, switch, "
       "resistor, motor or sensor");
  return WORDS;
}

static bool is_name(const struct oc_csv_cell *cell) {
  static const char letters[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
  bool is = 0 < cell->length && cell->length <= OC_WIRING_NAME - 10 &&
            memchr(letters, cell->text[0], sizeof letters - 1) != NULL;
  for (size_t i = 0; is && i < cell->length; i++)
    is = memchr(letters, cell->text[i], sizeof letters - 1) ||
         memchr("0123456789-_", cell->text[i], 12);
  return is;
}

static bool take_name(struct oc_wiring_file *reader, char *name) {
  const struct oc_csv_cell *cell = cell_of(reader, OC_WIRING_LINK);
  if (!is_name(cell)) {
    fail(reader, OHM_BAD_SYNTAX, "the name is ", cell,
         "; write up to 14 of a-z, A-Z, 0-9, - and _, a letter first");
    return false;
  }
  memcpy(name, cell->text, cell->length);
  name[cell->length] = '\0';
  bool taken = oc_wiring_find(&reader->wired->wiring, name) < OC_WIRING_THINGS;
  for (size_t i = 0; i < reader->wired->row_count; i++)
    taken = taken || strcmp(reader->wired->rows[i].cells[OC_WIRING_LINK], name) == 0;
  if (taken)
    fail(reader, OHM_BAD_DEFINITION, "there is a link ", cell, " already; give each its own name");
  return !taken;
}

static size_t take_point(struct oc_wiring_file *reader, enum oc_wiring_column column) {
  const struct oc_csv_cell *cell = cell_of(reader, column);
  size_t point = cell->length > 0 && cell->length <= OC_WIRING_NAME - 2
                     ? oc_wiring_point(&reader->wired->wiring, cell->text, cell->length)
                     : OC_WIRING_POINTS;
  if (point == OC_WIRING_POINTS)
    fail(reader, cell->length == 0 ? OHM_BAD_SYNTAX : OHM_TOO_LARGE, "the point is ", cell,
         "; write a word of up to 22 bytes, and no more than 90 of them");
  return point;
}

static double take_value(struct oc_wiring_file *reader, enum word word) {
  const struct oc_csv_cell *cell = cell_of(reader, OC_WIRING_VALUE);
  double value;
  if (cell->length == 0 && !kinds[word].needs)
    return usual_of(word);
  if (ohm_number_read(cell->text, cell->length, &value) == OHM_OK && 0 < value && value < 1e6)
    return value;
  fail(reader, OHM_BAD_SYNTAX, "the value is ", cell,
       "; write volts of a battery, amperes of a fuse or motor, ohms of a relay's coil or a "
       "resistor, above 0");
  return NAN;
}

/* One of the ways, "cold" which undoes heat, or a way with ? behind it; false when it is none. */
static bool take_way(struct oc_wiring_file *reader, struct oc_thing *thing, const char *word,
                     size_t length) {
  bool maybe = length > 0 && word[length - 1] == '?';
  size_t bare = maybe ? length - 1 : length;
  if (thing->kind == OC_THING_SWITCH && oc_circuit_is(word, length, "cold")) {
    thing->opens |= OC_WAY_HOT | OC_WAY_HIGH;
    return true;
  }
  for (unsigned i = 0; i < OC_WAYS; i++)
    if (oc_circuit_is(word, bare, oc_way_words[i])) {
      thing->asked |= 1u << i;
      reader->wired->wiring.unsure_ways |= maybe ? 1u << i : 0;
      return true;
    }
  return false;
}

/* Words apart by spaces. */
static void take_ways(struct oc_wiring_file *reader, struct oc_thing *thing) {
  const struct oc_csv_cell *cell = cell_of(reader, OC_WIRING_BY);
  for (size_t at = 0; at < cell->length;) {
    size_t length = 0;
    while (at + length < cell->length && cell->text[at + length] != ' ')
      length++;
    if (length > 0 && !take_way(reader, thing, cell->text + at, length)) {
      thing->asked = thing->opens = 0;
      break;
    }
    at += length + 1;
  }
  if (thing->asked == 0 && thing->opens == 0)
    fail(reader, OHM_BAD_SYNTAX, "what closes it is ", cell,
         "; write hot, high, ac, unplugged or commanded, with spaces between");
}

/* ---- rows ---- */

static void add_chafe(struct oc_wiring_file *reader, size_t wire) {
  size_t to = take_point(reader, OC_WIRING_BY);
  if (goes_on(reader) && !oc_wiring_add_chafe(&reader->wired->wiring, wire, to))
    fail_room(reader);
}

static struct oc_thing *add_between(struct oc_wiring *wiring, const char *name, enum word word,
                                    size_t from, size_t to, double value) {
  if (word == FUSE)
    return oc_wiring_add_fuse(wiring, name, from, to, value);
  if (word == MOTOR || word == SWITCH)
    return oc_wiring_add_plugged(wiring, name, kinds[word].kind, from, to, value);
  struct oc_thing *thing = oc_wiring_add(wiring, name, kinds[word].kind, from, to, value);
  if (thing)
    thing->role = kinds[word].role;
  return thing;
}

static void take_by(struct oc_wiring_file *reader, enum word word, struct oc_thing *thing) {
  const struct oc_csv_cell *by = cell_of(reader, OC_WIRING_BY);
  if (word == OUTPUT || word == SWITCH)
    take_ways(reader, thing);
  else if (word == FUSE && oc_csv_is(by, "key"))
    thing->key = true;
  else if (WIRE <= word && word <= GROUND && by->length > 0)
    add_chafe(reader, (size_t)(thing - reader->wired->wiring.things));
  else if (by->length > 0)
    fail(reader, OHM_BAD_SYNTAX, "by says ", by,
         "; write it of a wire that can rub through, of a fuse that the key feeds, of an output or "
         "a switch");
}

static void add_thing(struct oc_wiring_file *reader, const char *name, enum word word) {
  size_t from = take_point(reader, OC_WIRING_FROM);
  size_t to = goes_on(reader) ? take_point(reader, OC_WIRING_TO) : OC_WIRING_POINTS;
  double value = goes_on(reader) ? take_value(reader, word) : NAN;
  if (!goes_on(reader))
    return;
  struct oc_thing *thing = add_between(&reader->wired->wiring, name, word, from, to, value);
  if (thing)
    take_by(reader, word, thing);
  else
    fail_room(reader);
}

static void keep_relay(struct oc_wiring_file *reader) {
  if (reader->relay_count == OC_WIRING_RELAYS) {
    fail(reader, OHM_TOO_LARGE, "more than 8 relays", NULL, ": leave out those of no fan");
    return;
  }
  reader->relays[reader->relay_count].row = reader->wired->wiring.row;
  reader->relays[reader->relay_count++].coil_ohm = take_value(reader, RELAY);
}

static bool keep_row(struct oc_wiring_file *reader) {
  struct oc_wiring_row *row = &reader->wired->rows[reader->wired->row_count];
  bool whole = true;
  row->line = reader->file->csv.line;
  for (int i = 0; i < OC_WIRING_COLUMNS; i++) {
    const struct oc_csv_cell *cell = cell_of(reader, (enum oc_wiring_column)i);
    row->cells[i] = oc_text_new(cell->text, cell->length);
    whole = whole && row->cells[i];
  }
  reader->wired->wiring.row = reader->wired->row_count++;
  if (!whole)
    oc_complaints_fail_memory(reader->file->complaints);
  return whole;
}

void oc_wiring_file_take_row(struct oc_wiring_file *reader) {
  char name[OC_WIRING_NAME];
  enum word word = take_kind(reader);
  if (word == WORDS || !take_name(reader, name))
    return;
  if (reader->wired->row_count == OC_WIRING_ROWS)
    fail_room(reader);
  else if (!keep_row(reader))
    return;
  else if (word == RELAY)
    keep_relay(reader);
  else if (word != SENSOR)
    add_thing(reader, name, word);
  else if (!oc_wiring_add_sensor(&reader->wired->wiring, name))
    fail_room(reader);
}

/* ---- the whole ---- */

bool oc_wiring_file_is(const struct oc_csv *csv) {
  for (size_t i = 0; i < csv->count; i++)
    if (oc_csv_is(&csv->cells[i], oc_wiring_columns[OC_WIRING_FROM]))
      return true;
  return false;
}

bool oc_wiring_file_begin(struct oc_wiring_file *reader, struct oc_table_file *file,
                          struct ohm_circuit *circuit) {
  *reader = (struct oc_wiring_file){.file = file};
  reader->wired = circuit->wired = calloc(1, sizeof *reader->wired);
  if (!reader->wired)
    return false;
  oc_wiring_begin(&reader->wired->wiring);
  oc_table_file_take_header(file, oc_wiring_columns, OC_WIRING_COLUMNS);
  return true;
}

static bool has_kind(const struct oc_wiring *wiring, enum oc_thing_kind kind) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == kind)
      return true;
  return false;
}

static void fail_whole(struct oc_wiring_file *reader, ohm_status status, const char *what,
                       const char *advice) {
  oc_complaints_fail(reader->file->complaints, status, (struct oc_spot){0}, what, advice);
}

void oc_wiring_file_end(struct oc_wiring_file *reader) {
  struct oc_wiring *wiring = &reader->wired->wiring;
  bool fits = true;
  for (size_t i = 0; fits && i < reader->relay_count; i++) {
    wiring->row = reader->relays[i].row;
    fits = oc_wiring_add_relay(wiring, reader->wired->rows[wiring->row].cells[OC_WIRING_LINK],
                               reader->relays[i].coil_ohm);
  }
  wiring->row = OC_WIRING_ROWS;
  if (!fits || !oc_wiring_add_cooling(wiring))
    fail_whole(reader, OHM_TOO_LARGE, "more than 64 things with the terminals of relays and motors",
               ": take together what lies one behind the other");
  else if (!has_kind(wiring, OC_THING_BATTERY))
    fail_whole(reader, OHM_BAD_DEFINITION, "there is no battery", "; write battery,battery,+,-,,");
  else if (!has_kind(wiring, OC_THING_MOTOR))
    fail_whole(reader, OHM_BAD_DEFINITION, "there is no motor",
               "; write the fan as fan,motor,FROM,TO,AMPERES,");
}
