/* SPDX-License-Identifier: MIT */
#include "wiring_file.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/number.h"

/* ---- columns and words ---- */

enum column { LINK, KIND, FROM, TO, VALUE, BY, COLUMNS };

static const char *const column_names[COLUMNS] = {"link", "kind", "from", "to", "value", "by"};

enum word {
  BATTERY,
  FIRST_CONDUCTOR,
  WIRE = FIRST_CONDUCTOR,
  SPLICE,
  STRAP,
  RAIL,
  GROUND,
  LAST_CONDUCTOR = GROUND,
  FUSE,
  RELAY,
  OUTPUT,
  SWITCH,
  RESISTOR,
  MOTOR,
  WORDS
};

static const char *const kind_words[WORDS] = {"battery", "wire",   "splice",   "strap",
                                              "rail",    "ground", "fuse",     "relay",
                                              "output",  "switch", "resistor", "motor"};

static const enum oc_thing_kind kinds[WORDS] = {
    [BATTERY] = OC_THING_BATTERY,   [WIRE] = OC_THING_CONDUCTOR, [SPLICE] = OC_THING_CONDUCTOR,
    [STRAP] = OC_THING_CONDUCTOR,   [RAIL] = OC_THING_CONDUCTOR, [GROUND] = OC_THING_CONDUCTOR,
    [FUSE] = OC_THING_FUSE,         [OUTPUT] = OC_THING_OUTPUT,  [SWITCH] = OC_THING_SWITCH,
    [RESISTOR] = OC_THING_RESISTOR, [MOTOR] = OC_THING_MOTOR};

/* What is usual where nothing is written; 0: it has to be. */
static const double usual[WORDS] = {[BATTERY] = OC_BATTERY_AT_REST_V, [RELAY] = OC_RELAY_COIL_OHM};

static const char *const ways[] = {"hot", "high", "ac", "unplugged", "commanded"};

enum { WAYS = sizeof ways / sizeof ways[0] };

struct reader {
  struct oc_table_file file;
  struct oc_complaints complaints;
  struct oc_wiring *wiring;
  size_t relays; /* whose points are not all known yet */
  struct {
    char name[OC_WIRING_NAME];
    double coil_ohm;
  } relay[OC_WIRING_RELAYS];
};

static void fail(struct reader *reader, ohm_status status, const char *what,
                 const struct oc_csv_cell *cell, const char *advice) {
  oc_table_file_fail(&reader->file, status, what, cell, advice);
}

static bool goes_on(const struct reader *reader) {
  return oc_goes_on(&reader->complaints);
}

static const struct oc_csv_cell *cell_of(const struct reader *reader, enum column column) {
  return oc_table_file_cell(&reader->file, column);
}

/* ---- cells ---- */

static enum word take_kind(struct reader *reader) {
  const struct oc_csv_cell *cell = cell_of(reader, KIND);
  for (int i = 0; i < WORDS; i++)
    if (oc_csv_is(cell, kind_words[i]))
      return (enum word)i;
  fail(reader, OHM_BAD_SYNTAX, "the kind is ", cell,
       "; write battery, wire, splice, strap, rail, ground, fuse, relay, output, switch, resistor "
       "or motor");
  return WORDS;
}

static bool take_name(struct reader *reader, char *name) {
  const struct oc_csv_cell *cell = cell_of(reader, LINK);
  if (cell->length == 0 || cell->length > OC_WIRING_NAME - 10) {
    fail(reader, OHM_BAD_SYNTAX, "the name is ", cell, "; write one of up to 14 bytes");
    return false;
  }
  memcpy(name, cell->text, cell->length);
  name[cell->length] = '\0';
  if (oc_wiring_find(reader->wiring, name) < OC_WIRING_THINGS) {
    fail(reader, OHM_BAD_DEFINITION, "there is a link ", cell, " already; give each its own name");
    return false;
  }
  return true;
}

static size_t take_point(struct reader *reader, enum column column) {
  const struct oc_csv_cell *cell = cell_of(reader, column);
  size_t point = cell->length > 0 && cell->length <= OC_WIRING_NAME - 2
                     ? oc_wiring_point(reader->wiring, cell->text, cell->length)
                     : OC_WIRING_POINTS;
  if (point == OC_WIRING_POINTS)
    fail(reader, cell->length == 0 ? OHM_BAD_SYNTAX : OHM_TOO_LARGE, "the point is ", cell,
         "; write a word of up to 22 bytes, and no more than 90 of them");
  return point;
}

static double take_value(struct reader *reader, enum word word) {
  const struct oc_csv_cell *cell = cell_of(reader, VALUE);
  double value = usual[word];
  bool needed = word == FUSE || word == RESISTOR || word == MOTOR;
  if (cell->length == 0 && !needed)
    return value;
  if (ohm_number_read(cell->text, cell->length, &value) == OHM_OK && 0 < value && value < 1e6)
    return value;
  fail(reader, OHM_BAD_SYNTAX, "the value is ", cell,
       "; write volts of a battery, amperes of a fuse or motor, ohms of a relay's coil or a "
       "resistor, above 0");
  return NAN;
}

/* Words apart by spaces. */
static unsigned take_ways(struct reader *reader) {
  const struct oc_csv_cell *cell = cell_of(reader, BY);
  unsigned asked = 0;
  for (size_t at = 0; at < cell->length;) {
    size_t length = 0;
    unsigned way = 0;
    while (at + length < cell->length && cell->text[at + length] != ' ')
      length++;
    for (unsigned i = 0; i < WAYS; i++)
      if (strlen(ways[i]) == length && memcmp(ways[i], cell->text + at, length) == 0)
        way = 1u << i;
    if (length > 0 && way == 0)
      break;
    asked |= way;
    at += length + 1;
    if (at >= cell->length && asked != 0)
      return asked;
  }
  fail(reader, OHM_BAD_SYNTAX, "what closes it is ", cell,
       "; write hot, high, ac, unplugged or commanded, with spaces between");
  return 0;
}

/* ---- rows ---- */

static void add_chafe(struct reader *reader, const char *name, size_t from) {
  size_t to = take_point(reader, BY);
  char chafe[OC_WIRING_NAME];
  strcpy(chafe, name);
  strcat(chafe, ".chafe");
  if (goes_on(reader) && !oc_wiring_add(reader->wiring, chafe, OC_THING_CHAFE, from, to, 0))
    fail(reader, OHM_TOO_LARGE, "more than 64 things with the terminals of relays and motors", NULL,
         "");
}

static void add_thing(struct reader *reader, const char *name, enum word word) {
  struct oc_wiring *wiring = reader->wiring;
  size_t from = take_point(reader, FROM);
  size_t to = goes_on(reader) ? take_point(reader, TO) : OC_WIRING_POINTS;
  double value = goes_on(reader) ? take_value(reader, word) : NAN;
  if (!goes_on(reader))
    return;
  struct oc_thing *thing = NULL;
  bool whole = word == MOTOR
                   ? oc_wiring_add_motor(wiring, name, from, to, value)
                   : (thing = oc_wiring_add(wiring, name, kinds[word], from, to, value)) != NULL;
  const struct oc_csv_cell *by = cell_of(reader, BY);
  if (!whole)
    fail(reader, OHM_TOO_LARGE, "more than 64 things with the terminals of relays and motors", NULL,
         "");
  else if (word == OUTPUT || word == SWITCH)
    thing->asked = take_ways(reader);
  else if (word == FUSE && oc_csv_is(by, "key"))
    thing->key = true;
  else if (FIRST_CONDUCTOR <= word && word <= LAST_CONDUCTOR && by->length > 0)
    add_chafe(reader, name, to);
  else if (by->length > 0)
    fail(reader, OHM_BAD_SYNTAX, "by says ", by,
         "; write it of a wire that can rub through, of a fuse that the key feeds, of an output or "
         "a switch");
}

static void keep_relay(struct reader *reader, const char *name) {
  if (reader->relays == OC_WIRING_RELAYS) {
    fail(reader, OHM_TOO_LARGE, "more than 8 relays", NULL, "");
    return;
  }
  strcpy(reader->relay[reader->relays].name, name);
  reader->relay[reader->relays++].coil_ohm = take_value(reader, RELAY);
}

static void take_cells(struct reader *reader) {
  char name[OC_WIRING_NAME];
  enum word word = take_kind(reader);
  if (word == WORDS || !take_name(reader, name))
    return;
  if (word == RELAY)
    keep_relay(reader, name);
  else
    add_thing(reader, name, word);
}

static void take_row(struct reader *reader) {
  const struct oc_csv_cell *first = &reader->file.csv.cells[0];
  if (!reader->file.has_header && oc_csv_is(first, "link"))
    oc_table_file_take_header(&reader->file, column_names, COLUMNS);
  else if (reader->file.has_header)
    take_cells(reader);
  else
    fail(reader, OHM_BAD_SYNTAX, "the first row begins with ", first,
         "; a header row comes first: link,kind,from,to,value,by");
}

/* ---- the whole ---- */

static void add_relays(struct reader *reader) {
  for (size_t i = 0; goes_on(reader) && i < reader->relays; i++)
    if (!oc_wiring_add_relay(reader->wiring, reader->relay[i].name, reader->relay[i].coil_ohm))
      oc_complaints_fail(&reader->complaints, OHM_TOO_LARGE, (struct oc_spot){0},
                         "more than 64 things with the terminals of relays and motors", "");
}

static void require_battery(struct reader *reader) {
  for (size_t i = 0; i < reader->wiring->thing_count; i++)
    if (reader->wiring->things[i].kind == OC_THING_BATTERY)
      return;
  oc_complaints_fail(&reader->complaints, OHM_BAD_DEFINITION, (struct oc_spot){0},
                     "there is no battery", "; write battery,battery,+,-,,");
}

static void *parse(const struct oc_table_text *text, ohm_error *error) {
  static const struct oc_keys none = {0, NULL, NULL};
  struct reader reader = {.complaints = {.place = text->place, .error = error},
                          .wiring = malloc(sizeof(struct oc_wiring))};
  if (!reader.wiring) {
    oc_complaints_fail_memory(&reader.complaints);
    return NULL;
  }
  oc_wiring_begin(reader.wiring);
  oc_table_file_begin(&reader.file, &none, text, &reader.complaints);
  for (enum oc_part part; (part = oc_table_file_next(&reader.file)) != OC_PART_END;)
    if (part == OC_PART_ROW)
      take_row(&reader);
    else if (part == OC_PART_FAULT)
      fail(&reader, OHM_BAD_SYNTAX, reader.file.csv.fault, NULL, "");
  add_relays(&reader);
  if (goes_on(&reader))
    require_battery(&reader);
  if (goes_on(&reader))
    return reader.wiring;
  free(reader.wiring);
  return NULL;
}

struct oc_wiring *oc_wiring_file_parse(const char *text, size_t length, const char *name,
                                       ohm_error *error) {
  return oc_table_file_parse(text, length, name, parse, error);
}
