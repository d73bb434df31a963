/* SPDX-License-Identifier: MIT */
/* A circuit file: lines of "# key: value", a table of links, a table of tests. */
#include <stdlib.h>
#include <string.h>

#include "circuit_cells.h"
#include "wired_circuit.h"
#include "wiring_file.h"
#include "../ground/list.h"
#include "../ground/number.h"
#include "../ground/table_file.h"

enum { CELLS_MAX = 1800 };

enum key { NAME, DESCRIPTION, SOURCE, FAN, MOST, BALANCE, FACT };

static const char *const words[FACT] = {"name",  "description", "source",
                                        "fan_c", "most_a",      "balance"};

enum table { LINKS, TESTS, WIRING };

struct reader {
  struct oc_table_file file;
  struct oc_complaints complaints;
  struct ohm_circuit *circuit;
  struct oc_wiring_file wiring;
  enum table table;
  size_t link_room;
  size_t test_room;
};

/* ---- lines of "# key: value" ---- */

static void take_number(struct reader *reader, double *number, double most, const char *advice) {
  const struct oc_csv_cell *value = &reader->file.value;
  double told;
  if (ohm_number_read(value->text, value->length, &told) == OHM_OK && 0 < told && told < most)
    *number = told;
  else
    oc_table_file_note(&reader->file, "the number is ", value, advice);
}

static bool is_fact_name(const struct oc_csv_cell *name) {
  bool is = 0 < name->length && name->length <= 40;
  for (size_t i = 0; i < name->length && is; i++)
    is = ('a' <= name->text[i] && name->text[i] <= 'z') || name->text[i] == '-';
  return is;
}

static void take_fact(struct reader *reader) {
  struct ohm_circuit *circuit = reader->circuit;
  const struct oc_csv_cell *name = &reader->file.name;
  const struct oc_csv_cell *value = &reader->file.value;
  if (!is_fact_name(name) || value->length == 0 || circuit->fact_count == OC_CIRCUIT_FACTS ||
      oc_circuit_fact(circuit, name->text, name->length) != OC_NO_PLACE) {
    oc_table_file_note(&reader->file, "the fact is ", name,
                       "; write up to 16 lines \"# fact NAME: sentence\", each with a name of "
                       "its own in a-z and - (left out)");
    return;
  }
  struct oc_fact fact = {oc_text_new(name->text, name->length),
                         oc_text_new(value->text, value->length)};
  if (fact.name && fact.text) {
    circuit->facts[circuit->fact_count++] = fact;
    return;
  }
  free(fact.name);
  free(fact.text);
  oc_complaints_fail_memory(&reader->complaints);
}

static void take_balance(struct reader *reader) {
  struct ohm_circuit *circuit = reader->circuit;
  const struct oc_csv_cell *value = &reader->file.value;
  if (circuit->balance_count == OC_CIRCUIT_BALANCES) {
    oc_table_file_note(&reader->file, "the balance is ", value, "; there are 8 already (left out)");
    return;
  }
  char *text = oc_text_new(value->text, value->length);
  if (text)
    circuit->balances[circuit->balance_count++] = (struct oc_balance){.text = text};
  else
    oc_complaints_fail_memory(&reader->complaints);
}

static void take_line(struct reader *reader) {
  struct ohm_circuit *circuit = reader->circuit;
  char **const texts[] = {&circuit->name, &circuit->description, &circuit->source};
  size_t key = reader->file.key;
  if (key <= SOURCE)
    oc_table_file_take_text(&reader->file, texts[key]);
  else if (key == FAN)
    take_number(reader, &circuit->fan_c, OC_NEVER_C,
                "; write degrees above 0 and below 130 (left out)");
  else if (key == MOST)
    take_number(reader, &circuit->most_a, 1000,
                "; write amperes above 0 and below 1000 (left out)");
  else if (key == BALANCE)
    take_balance(reader);
  else
    take_fact(reader);
}

/* ---- header rows and rows ---- */

static void take_header(struct reader *reader, enum table table, const char *const *names,
                        size_t count) {
  reader->table = table;
  oc_table_file_take_header(&reader->file, names, count);
}

/* Every cell a text of its own, "" where blank or absent. */
static bool copy_cells(struct reader *reader, char **cells, size_t count) {
  bool whole = true;
  for (size_t column = 0; column < count; column++) {
    const struct oc_csv_cell *cell = oc_table_file_cell(&reader->file, column);
    cells[column] = oc_text_new(cell->text, cell->length);
    whole = whole && cells[column];
  }
  if (whole)
    return true;
  for (size_t column = 0; column < count; column++)
    free(cells[column]);
  return false;
}

static bool add_link(struct reader *reader) {
  struct ohm_circuit *circuit = reader->circuit;
  struct oc_link link = {.line = reader->file.csv.line, .odds = NAN};
  struct oc_link *links =
      oc_list_grow(circuit->links, circuit->link_count, &reader->link_room, sizeof link);
  if (!links)
    return false;
  circuit->links = links;
  if (!copy_cells(reader, link.cells, OHM_LINK_COLUMN_COUNT))
    return false;
  links[circuit->link_count++] = link;
  return true;
}

static bool add_test(struct reader *reader) {
  struct ohm_circuit *circuit = reader->circuit;
  struct oc_test test = {
      .line = reader->file.csv.line, .only_if = OC_NO_PLACE, .amperes = {OC_NO_PLACE, OC_NO_PLACE}};
  struct oc_test *tests =
      oc_list_grow(circuit->tests, circuit->test_count, &reader->test_room, sizeof test);
  if (!tests)
    return false;
  circuit->tests = tests;
  if (!copy_cells(reader, test.cells, OHM_TEST_COLUMN_COUNT))
    return false;
  tests[circuit->test_count++] = test;
  return true;
}

static size_t length_of(const struct oc_csv *csv) {
  size_t length = 0;
  for (size_t i = 0; i < csv->count; i++)
    length += csv->cells[i].length;
  return length;
}

static void take_cells(struct reader *reader) {
  const struct ohm_circuit *circuit = reader->circuit;
  bool is_link = reader->table == LINKS;
  if (length_of(&reader->file.csv) > CELLS_MAX)
    oc_table_file_fail(&reader->file, OHM_TOO_LARGE, "a row of more than 1800 bytes", NULL,
                       ": shorten its sentences");
  else if (is_link && circuit->link_count == OC_DIAGNOSIS_PARTS)
    oc_table_file_fail(&reader->file, OHM_TOO_LARGE, "more than 64 links", NULL,
                       ": take together what is renewed together");
  else if (!is_link && circuit->test_count == OC_CIRCUIT_TESTS)
    oc_table_file_fail(&reader->file, OHM_TOO_LARGE, "more than 256 tests", NULL,
                       ": leave some out");
  else if (!(is_link ? add_link(reader) : add_test(reader)))
    oc_complaints_fail_memory(&reader->complaints);
}

static void take_wiring(struct reader *reader) {
  if (reader->circuit->wired || reader->circuit->link_count > 0) {
    oc_table_file_fail(&reader->file, OHM_BAD_DEFINITION, "a second table of links", NULL,
                       ": write all rows below one header");
    return;
  }
  reader->table = WIRING;
  if (!oc_wiring_file_begin(&reader->wiring, &reader->file, reader->circuit))
    oc_complaints_fail_memory(&reader->complaints);
}

static void take_row(struct reader *reader) {
  const struct oc_csv_cell *first = &reader->file.csv.cells[0];
  if (oc_csv_is(first, "link") && (reader->circuit->wired || oc_wiring_file_is(&reader->file.csv)))
    take_wiring(reader);
  else if (reader->file.has_header && reader->table == WIRING && !oc_csv_is(first, "test"))
    oc_wiring_file_take_row(&reader->wiring);
  else if (oc_csv_is(first, "link"))
    take_header(reader, LINKS, oc_link_columns, OHM_LINK_COLUMN_COUNT);
  else if (oc_csv_is(first, "test"))
    take_header(reader, TESTS, oc_test_columns, OHM_TEST_COLUMN_COUNT);
  else if (reader->file.has_header)
    take_cells(reader);
  else
    oc_table_file_fail(&reader->file, OHM_BAD_SYNTAX, "the first row begins with ", first,
                       "; a header row comes first, and begins with link or test");
}

/* ---- the whole ---- */

static void read_parts(struct reader *reader) {
  for (enum oc_part part; (part = oc_table_file_next(&reader->file)) != OC_PART_END;)
    if (part == OC_PART_KEY)
      take_line(reader);
    else if (part == OC_PART_ROW)
      take_row(reader);
    else
      /* The row may have been a link. */
      oc_table_file_fail(&reader->file, OHM_BAD_SYNTAX, reader->file.csv.fault, NULL, "");
}

/* ---- together ---- */

static void give_name(struct reader *reader, const char *name) {
  struct ohm_circuit *circuit = reader->circuit;
  if (!circuit->name)
    circuit->name = oc_text_new(name, strlen(name));
  if (!circuit->name)
    oc_complaints_fail_memory(&reader->complaints);
}

static void *parse(const struct oc_table_text *text, ohm_error *error) {
  static const struct oc_keys keys = {FACT, words, "fact"};
  struct reader reader = {.complaints = {.place = text->place, .error = error},
                          .circuit = calloc(1, sizeof(struct ohm_circuit))};
  struct ohm_circuit *circuit = reader.circuit;
  if (!circuit) {
    oc_complaints_fail_memory(&reader.complaints);
    return NULL;
  }
  circuit->fan_c = OC_ASSUMED_FAN_C;
  circuit->most_a = OC_ASSUMED_MOST_A;
  reader.complaints.notes = &circuit->notes;
  oc_table_file_begin(&reader.file, &keys, text, &reader.complaints);
  read_parts(&reader);
  if (circuit->wired && oc_goes_on(&reader.complaints))
    oc_wiring_file_end(&reader.wiring);
  if (circuit->wired && oc_goes_on(&reader.complaints))
    oc_wired_circuit_make(circuit, &reader.complaints);
  if (oc_goes_on(&reader.complaints))
    oc_circuit_cells_understand(circuit, &reader.complaints);
  if (oc_goes_on(&reader.complaints))
    give_name(&reader, text->name);
  if (oc_goes_on(&reader.complaints))
    oc_complaints_end(&reader.complaints);
  if (oc_goes_on(&reader.complaints))
    return circuit;
  ohm_circuit_free(circuit);
  return NULL;
}

ohm_circuit *ohm_circuit_parse(const char *text, size_t length, const char *name,
                               ohm_error *error) {
  return oc_table_file_parse(text, length, name, parse, error);
}

ohm_circuit *ohm_circuit_load(const char *path, ohm_error *error) {
  return oc_table_file_load(path, parse, error);
}
