/* SPDX-License-Identifier: MIT */
/* A circuit file: lines of "# key: value", a table of links, a table of tests. */
#include <stdlib.h>
#include <string.h>

#include "circuit_draft.h"
#include "../sensors/draft.h"
#include "../ground/file.h"
#include "../ground/number.h"
#include "../ground/status.h"

enum { CELLS_MAX = 1800, COLUMNS_MAX = OHM_TEST_COLUMN_COUNT };

static const double fan_unless_told_c = OHM_ASSUMED_FAN_C;
static const double most_unless_told_a = 30;

enum table { NO_TABLE, LINKS, TESTS };

struct reader {
  struct oc_circuit_draft *draft;
  enum table table;
  int columns[COLUMNS_MAX]; /* place of a column in a row; -1 when absent */
  size_t link_room;
  size_t test_room;
};

static bool is_word(const struct oc_csv_cell *cell, const char *word) {
  return oc_circuit_is(cell->text, cell->length, word);
}

static void out_of_memory(struct oc_circuit_draft *draft) {
  draft->status = oc_fail_memory(draft->error);
}

/* ---- lines of "# key: value" ---- */

static void trim(struct oc_csv_cell *cell) {
  while (cell->length > 0 && (cell->text[0] == ' ' || cell->text[0] == '\t')) {
    cell->text++;
    cell->length--;
    cell->column++;
  }
  while (cell->length > 0 &&
         (cell->text[cell->length - 1] == ' ' || cell->text[cell->length - 1] == '\t'))
    cell->length--;
}

static void take_text(struct reader *reader, char **text, const struct oc_csv_cell *value,
                      int line) {
  if (value->length == 0)
    return;
  if (*text) {
    oc_circuit_draft_note(reader->draft, line, value->column, "a second line of this key is ",
                          value->text, value->length, "; the first one counts, leave one out");
    return;
  }
  *text = oc_draft_copy(value->text, value->length);
  if (!*text)
    out_of_memory(reader->draft);
}

static void take_number(struct reader *reader, double *number, double most,
                        const struct oc_csv_cell *value, int line) {
  double told;
  if (ohm_number_read(value->text, value->length, &told) == OHM_OK && 0 < told && told < most)
    *number = told;
  else
    oc_circuit_draft_note(reader->draft, line, value->column, "the number is ", value->text,
                          value->length,
                          most < 200 ? "; write degrees above 0 and below 130 (left out)"
                                     : "; write amperes above 0 and below 1000 (left out)");
}

static void take_fact(struct reader *reader, const struct oc_csv_cell *name,
                      const struct oc_csv_cell *value, int line) {
  struct ohm_circuit *circuit = reader->draft->circuit;
  bool is_short = 0 < name->length && name->length <= 40;
  for (size_t i = 0; i < name->length && is_short; i++)
    is_short = ('a' <= name->text[i] && name->text[i] <= 'z') || name->text[i] == '-';
  if (!is_short || value->length == 0 || circuit->fact_count == OC_CIRCUIT_FACTS ||
      oc_circuit_fact(circuit, name->text, name->length) != OC_NO_PLACE) {
    oc_circuit_draft_note(reader->draft, line, name->column, "the fact is ", name->text,
                          name->length,
                          "; write up to 16 lines \"# fact NAME: sentence\", each with a name of "
                          "its own in a-z and - (left out)");
    return;
  }
  struct oc_fact fact = {oc_draft_copy(name->text, name->length),
                         oc_draft_copy(value->text, value->length)};
  if (fact.name && fact.text) {
    circuit->facts[circuit->fact_count++] = fact;
    return;
  }
  free(fact.name);
  free(fact.text);
  out_of_memory(reader->draft);
}

static void take_balance(struct reader *reader, const struct oc_csv_cell *value, int line) {
  struct ohm_circuit *circuit = reader->draft->circuit;
  if (circuit->balance_count == OC_CIRCUIT_BALANCES) {
    oc_circuit_draft_note(reader->draft, line, value->column, "the balance is ", value->text,
                          value->length, "; there are 8 already (left out)");
    return;
  }
  char *text = oc_draft_copy(value->text, value->length);
  if (text)
    circuit->balances[circuit->balance_count++] = (struct oc_balance){.text = text};
  else
    out_of_memory(reader->draft);
}

/* A key that is nearly a known one is a slip; any other is somebody's remark. */
static void look_at_unknown(struct reader *reader, const struct oc_csv_cell *key, int line) {
  static const char *const known[] = {"name",  "description", "source",
                                      "fan_c", "most_a",      "balance"};
  char word[24];
  if (key->length >= sizeof word || key->length < 4)
    return;
  memcpy(word, key->text, key->length);
  word[key->length] = '\0';
  if (ohm_nearest(word, known, sizeof known / sizeof known[0]))
    oc_circuit_draft_note(reader->draft, line, key->column, "the key ", key->text, key->length,
                          " is not known and left out; it may be name, description, source, "
                          "fan_c, most_a, balance or fact");
}

static void take_line(struct reader *reader, const struct oc_csv_cell *comment, int line) {
  struct ohm_circuit *circuit = reader->draft->circuit;
  const char *colon = memchr(comment->text, ':', comment->length);
  if (!colon)
    return;
  size_t before = (size_t)(colon - comment->text);
  struct oc_csv_cell key = {comment->text, before, comment->column};
  struct oc_csv_cell value = {colon + 1, comment->length - before - 1,
                              comment->column + (int)before + 1};
  trim(&key);
  trim(&value);
  if (is_word(&key, "name")) {
    take_text(reader, &circuit->name, &value, line);
  } else if (is_word(&key, "description")) {
    take_text(reader, &circuit->description, &value, line);
  } else if (is_word(&key, "source")) {
    take_text(reader, &circuit->source, &value, line);
  } else if (is_word(&key, "fan_c")) {
    take_number(reader, &circuit->fan_c, 130, &value, line);
  } else if (is_word(&key, "most_a")) {
    take_number(reader, &circuit->most_a, 1000, &value, line);
  } else if (is_word(&key, "balance")) {
    take_balance(reader, &value, line);
  } else if (key.length > 5 && memcmp(key.text, "fact ", 5) == 0) {
    struct oc_csv_cell name = {key.text + 5, key.length - 5, key.column + 5};
    trim(&name);
    take_fact(reader, &name, &value, line);
  } else {
    look_at_unknown(reader, &key, line);
  }
}

/* ---- header rows and rows ---- */

typedef const char *column_name(int column);

static void take_header(struct reader *reader, const struct oc_csv *csv, enum table table,
                        column_name *name_of) {
  reader->table = table;
  for (int column = 0; column < COLUMNS_MAX; column++)
    reader->columns[column] = -1;
  for (size_t i = 0; i < csv->count; i++)
    for (int column = 0; name_of(column); column++)
      if (is_word(&csv->cells[i], name_of(column)) && reader->columns[column] < 0)
        reader->columns[column] = (int)i;
}

/* Every cell a text of its own, "" where blank or absent. */
static bool copy_cells(struct reader *reader, const struct oc_csv *csv, char **cells, int count) {
  bool whole = true;
  for (int column = 0; column < count; column++) {
    int at = reader->columns[column];
    bool has = at >= 0 && (size_t)at < csv->count;
    cells[column] = oc_draft_copy(has ? csv->cells[at].text : "", has ? csv->cells[at].length : 0);
    whole = whole && cells[column];
  }
  if (whole)
    return true;
  for (int column = 0; column < count; column++)
    free(cells[column]);
  out_of_memory(reader->draft);
  return false;
}

/* Room for one more in a growing array; the array as it was when there is no memory. */
static void *grown(struct reader *reader, void *rows, size_t count, size_t *room, size_t size) {
  if (count < *room)
    return rows;
  size_t wanted = *room ? 2 * *room : 16;
  void *more = realloc(rows, wanted * size);
  if (!more) {
    out_of_memory(reader->draft);
    return rows;
  }
  *room = wanted;
  return more;
}

static void take_link(struct reader *reader, const struct oc_csv *csv) {
  struct oc_circuit_draft *draft = reader->draft;
  struct ohm_circuit *circuit = draft->circuit;
  struct oc_link link = {.odds = NAN};
  if (circuit->link_count == OC_DIAGNOSIS_PARTS) {
    oc_circuit_draft_fail(draft, OHM_TOO_LARGE, csv->line, 0, "more than 64 links", NULL, 0,
                          ": take together what is renewed together");
    return;
  }
  circuit->links =
      grown(reader, circuit->links, circuit->link_count, &reader->link_room, sizeof link);
  if (!oc_circuit_draft_goes_on(draft) ||
      !copy_cells(reader, csv, link.cells, OHM_LINK_COLUMN_COUNT))
    return;
  draft->link_lines[circuit->link_count] = csv->line;
  circuit->links[circuit->link_count++] = link;
}

static void take_test(struct reader *reader, const struct oc_csv *csv) {
  struct oc_circuit_draft *draft = reader->draft;
  struct ohm_circuit *circuit = draft->circuit;
  struct oc_test test = {.only_if = OC_NO_PLACE, .amperes = {OC_NO_PLACE, OC_NO_PLACE}};
  if (circuit->test_count == OC_CIRCUIT_TESTS) {
    oc_circuit_draft_fail(draft, OHM_TOO_LARGE, csv->line, 0, "more than 256 tests", NULL, 0,
                          ": leave some out");
    return;
  }
  circuit->tests =
      grown(reader, circuit->tests, circuit->test_count, &reader->test_room, sizeof test);
  if (!oc_circuit_draft_goes_on(draft) ||
      !copy_cells(reader, csv, test.cells, OHM_TEST_COLUMN_COUNT))
    return;
  draft->test_lines[circuit->test_count] = csv->line;
  circuit->tests[circuit->test_count++] = test;
}

static size_t length_of(const struct oc_csv *csv) {
  size_t length = 0;
  for (size_t i = 0; i < csv->count; i++)
    length += csv->cells[i].length;
  return length;
}

static void take_row(struct reader *reader, const struct oc_csv *csv) {
  struct oc_circuit_draft *draft = reader->draft;
  if (is_word(&csv->cells[0], "link"))
    take_header(reader, csv, LINKS, ohm_link_column_name);
  else if (is_word(&csv->cells[0], "test"))
    take_header(reader, csv, TESTS, ohm_test_column_name);
  else if (reader->table == NO_TABLE)
    oc_circuit_draft_fail(draft, OHM_BAD_SYNTAX, csv->line, csv->cells[0].column,
                          "the first row begins with ", csv->cells[0].text, csv->cells[0].length,
                          "; a header row comes first, and begins with link or test");
  else if (length_of(csv) > CELLS_MAX)
    oc_circuit_draft_fail(draft, OHM_TOO_LARGE, csv->line, 0, "a row of more than 1800 bytes", NULL,
                          0, ": shorten its sentences");
  else if (reader->table == LINKS)
    take_link(reader, csv);
  else
    take_test(reader, csv);
}

static void read_lines(struct reader *reader, const char *text, size_t length) {
  struct oc_csv csv;
  oc_csv_begin(&csv, text, length);
  while (oc_circuit_draft_goes_on(reader->draft)) {
    switch (oc_csv_next(&csv)) {
    case OC_CSV_END:
      return;
    case OC_CSV_COMMENT:
      take_line(reader, &csv.cells[0], csv.line);
      break;
    case OC_CSV_FAULT:
      /* The row may have been a link. */
      oc_circuit_draft_fail(reader->draft, OHM_BAD_SYNTAX, csv.line, csv.column, csv.fault, NULL, 0,
                            "");
      break;
    case OC_CSV_ROW:
      take_row(reader, &csv);
      break;
    }
  }
}

/* ---- from text to circuit ---- */

static ohm_circuit *parse(const char *text, size_t length, const char *place,
                          const char *default_name, ohm_error *error) {
  oc_error_clear(error);
  struct oc_circuit_draft draft = {
      .place = place, .error = error, .circuit = calloc(1, sizeof(struct ohm_circuit))};
  if (!draft.circuit) {
    oc_fail_memory(error);
    return NULL;
  }
  draft.circuit->fan_c = fan_unless_told_c;
  draft.circuit->most_a = most_unless_told_a;
  struct reader reader = {.draft = &draft};
  read_lines(&reader, text, length);
  if (oc_circuit_draft_goes_on(&draft))
    oc_circuit_draft_understand(&draft);
  if (oc_circuit_draft_goes_on(&draft) && !draft.circuit->name) {
    draft.circuit->name = oc_draft_copy(default_name, strlen(default_name));
    if (!draft.circuit->name)
      out_of_memory(&draft);
  }
  if (oc_circuit_draft_goes_on(&draft))
    return draft.circuit;
  ohm_circuit_free(draft.circuit);
  return NULL;
}

static bool refuses(const void *text, const void *name, size_t length, ohm_error *error) {
  ohm_status status = !text || !name         ? OHM_NULL_ARGUMENT
                      : length > OC_FILE_MAX ? OHM_TOO_LARGE
                                             : OHM_OK;
  if (status != OHM_OK)
    oc_fail(error, status, ohm_status_text((int)status), (const char *)NULL);
  return status != OHM_OK;
}

ohm_circuit *ohm_circuit_parse(const char *text, size_t length, const char *name,
                               ohm_error *error) {
  return refuses(text, name, length, error) ? NULL : parse(text, length, name, name, error);
}

ohm_circuit *ohm_circuit_load(const char *path, ohm_error *error) {
  size_t length;
  if (refuses(path, path, 0, error))
    return NULL;
  char *text = oc_file_read(path, &length, error);
  if (!text)
    return NULL;
  const char *slash = strrchr(path, '/');
  const char *base = slash ? slash + 1 : path;
  size_t stem = strlen(base);
  if (stem > 4 && strcmp(base + stem - 4, ".csv") == 0)
    stem -= 4;
  char *name = oc_draft_copy(base, stem);
  ohm_circuit *circuit = NULL;
  if (name)
    circuit = parse(text, length, path, name, error);
  else
    oc_fail_memory(error);
  free(name);
  free(text);
  return circuit;
}
