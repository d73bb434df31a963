/* SPDX-License-Identifier: MIT */
#include "circuit.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/number.h"

/* ---- words and places ---- */

bool oc_circuit_is(const char *text, size_t length, const char *word) {
  return strlen(word) == length && memcmp(text, word, length) == 0;
}

bool oc_circuit_word(const char **text, const char **word, size_t *length) {
  *text += strspn(*text, " ");
  *word = *text;
  *length = strcspn(*text, " ");
  *text += *length;
  return *length > 0;
}

size_t oc_circuit_link(const struct ohm_circuit *circuit, const char *name, size_t length) {
  for (size_t i = 0; i < circuit->link_count; i++)
    if (oc_circuit_is(name, length, circuit->links[i].cells[OHM_LINK_LINK]))
      return i;
  return OC_NO_PLACE;
}

size_t oc_circuit_test(const struct ohm_circuit *circuit, const char *name, size_t length) {
  for (size_t i = 0; i < circuit->test_count; i++)
    if (oc_circuit_is(name, length, circuit->tests[i].cells[OHM_TEST_TEST]))
      return i;
  return OC_NO_PLACE;
}

size_t oc_circuit_fact(const struct ohm_circuit *circuit, const char *name, size_t length) {
  for (size_t i = 0; i < circuit->fact_count; i++)
    if (oc_circuit_is(name, length, circuit->facts[i].name))
      return i;
  return OC_NO_PLACE;
}

oc_set oc_circuit_part(const struct ohm_circuit *circuit, size_t link) {
  oc_set part = 0;
  for (size_t i = 0; i < circuit->link_count; i++)
    if (strcmp(circuit->links[i].cells[OHM_LINK_PART], circuit->links[link].cells[OHM_LINK_PART]) ==
        0)
      part |= oc_set_of(i);
  return part;
}

bool oc_circuit_uses(const struct oc_test *test, const char *tool, size_t length) {
  const char *tools = test->cells[OHM_TEST_TOOL];
  const char *word;
  size_t word_length;
  while (oc_circuit_word(&tools, &word, &word_length))
    if (word_length == length && memcmp(word, tool, length) == 0)
      return true;
  return false;
}

bool oc_circuit_has_tool(const struct ohm_circuit *circuit, const char *tool, size_t length) {
  for (size_t i = 0; i < circuit->test_count; i++)
    if (oc_circuit_uses(&circuit->tests[i], tool, length))
      return true;
  return false;
}

/* ---- asking ---- */

const char *const oc_wiring_columns[OC_WIRING_COLUMNS] = {
    "link", "kind", "from", "to", "value", "by", "part", "action", "renew", "odds", "standing"};

const char *const oc_link_columns[OHM_LINK_COLUMN_COUNT] = {
#define NAME(constant, name, meaning) #name,
    OHM_LINK_COLUMNS(NAME)};

const char *const oc_test_columns[OHM_TEST_COLUMN_COUNT] = {OHM_TEST_COLUMNS(NAME)
#undef NAME
};

static bool is_place(int column, int count) {
  return 0 <= column && column < count;
}

const char *ohm_link_column_name(int column) {
  return is_place(column, OHM_LINK_COLUMN_COUNT) ? oc_link_columns[column] : NULL;
}

const char *ohm_test_column_name(int column) {
  return is_place(column, OHM_TEST_COLUMN_COUNT) ? oc_test_columns[column] : NULL;
}

const char *ohm_circuit_name(const ohm_circuit *circuit) {
  return circuit ? circuit->name : NULL;
}

static const char *text_or_empty(const char *text) {
  return text ? text : "";
}

const char *ohm_circuit_description(const ohm_circuit *circuit) {
  return text_or_empty(circuit ? circuit->description : NULL);
}

const char *ohm_circuit_source(const ohm_circuit *circuit) {
  return text_or_empty(circuit ? circuit->source : NULL);
}

size_t ohm_circuit_link_count(const ohm_circuit *circuit) {
  return circuit ? circuit->link_count : 0;
}

const char *ohm_circuit_link_text(const ohm_circuit *circuit, size_t index, int column) {
  if (!circuit || index >= circuit->link_count || !ohm_link_column_name(column))
    return NULL;
  return circuit->links[index].cells[column];
}

size_t ohm_circuit_test_count(const ohm_circuit *circuit) {
  return circuit ? circuit->test_count : 0;
}

const char *ohm_circuit_test_text(const ohm_circuit *circuit, size_t index, int column) {
  if (!circuit || index >= circuit->test_count || !ohm_test_column_name(column))
    return NULL;
  return circuit->tests[index].cells[column];
}

size_t ohm_circuit_note_count(const ohm_circuit *circuit) {
  return circuit ? circuit->notes.count : 0;
}

const char *ohm_circuit_note(const ohm_circuit *circuit, size_t index) {
  return circuit ? oc_notes_at(&circuit->notes, index) : NULL;
}

/* ---- outcomes ---- */

static bool is_number(const struct oc_test *test) {
  return OC_UNIT_VOLT <= test->unit && test->unit <= OC_UNIT_DROP;
}

oc_outcomes oc_test_good(const struct oc_test *test) {
  return is_number(test) ? oc_outcome_within(oc_test_limits(test, 0)) : OC_OUTCOME_GOOD;
}

oc_outcomes oc_test_any(const struct oc_test *test) {
  return is_number(test) ? oc_outcome_numbers(oc_test_limits(test, 0)) : OC_OUTCOME_ANY;
}

/* ---- giving back ---- */

static void free_texts(char **texts, size_t count) {
  for (size_t i = 0; i < count; i++)
    free(texts[i]);
}

void oc_test_free(struct oc_test *test) {
  free_texts(test->cells, OHM_TEST_COLUMN_COUNT);
  free(test->foretold);
}

void ohm_circuit_free(ohm_circuit *circuit) {
  if (!circuit)
    return;
  for (size_t i = 0; i < circuit->link_count; i++)
    free_texts(circuit->links[i].cells, OHM_LINK_COLUMN_COUNT);
  for (size_t i = 0; i < circuit->test_count; i++)
    oc_test_free(&circuit->tests[i]);
  for (size_t i = 0; i < circuit->fact_count; i++) {
    free(circuit->facts[i].name);
    free(circuit->facts[i].text);
  }
  for (size_t i = 0; i < circuit->balance_count; i++)
    free(circuit->balances[i].text);
  oc_notes_free(&circuit->notes);
  free(circuit->links);
  for (size_t i = 0; circuit->wired && i < circuit->wired->row_count; i++)
    free_texts(circuit->wired->rows[i].cells, OC_WIRING_COLUMNS);
  free(circuit->wired);
  free(circuit->tests);
  free(circuit->failings);
  free(circuit->name);
  free(circuit->description);
  free(circuit->source);
  free(circuit);
}

/* ---- printing ---- */

static void add_line(struct oc_text *out, const char *key, const char *name, const char *value) {
  if (!value)
    return;
  oc_text_add(out, "# ");
  oc_text_add(out, key);
  oc_text_add(out, name);
  oc_text_add(out, ": ");
  oc_text_add(out, value);
  oc_text_add(out, "\n");
}

static void add_number_line(struct oc_text *out, const char *key, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  add_line(out, key, "", digits);
}

/* In quotes when it would not be read back as it stands. */
static void add_cell(struct oc_text *out, const char *cell) {
  size_t length = strlen(cell);
  bool bare =
      !strpbrk(cell, ",\"\t#") && (length == 0 || (cell[0] != ' ' && cell[length - 1] != ' '));
  if (bare) {
    oc_text_add(out, cell);
    return;
  }
  oc_text_add(out, "\"");
  for (; *cell; cell++) {
    oc_text_add(out, *cell == '"' ? "\"" : "");
    oc_text_add_bytes(out, cell, 1);
  }
  oc_text_add(out, "\"");
}

static void add_row(struct oc_text *out, const char *const *cells, int count) {
  for (int i = 0; i < count; i++) {
    oc_text_add(out, i > 0 ? "," : "");
    add_cell(out, cells[i]);
  }
  oc_text_add(out, "\n");
}

static void add_links(struct oc_text *out, const struct ohm_circuit *circuit) {
  add_row(out, oc_link_columns, OHM_LINK_COLUMN_COUNT);
  for (size_t i = 0; i < circuit->link_count; i++)
    add_row(out, (const char *const *)circuit->links[i].cells, OHM_LINK_COLUMN_COUNT);
}

static void add_wiring(struct oc_text *out, const struct oc_wired *wired) {
  add_row(out, oc_wiring_columns, OC_WIRING_COLUMNS);
  for (size_t i = 0; i < wired->row_count; i++)
    add_row(out, (const char *const *)wired->rows[i].cells, OC_WIRING_COLUMNS);
}

/* Those that follow from the wiring follow from it again. */
static void add_tests(struct oc_text *out, const struct ohm_circuit *circuit) {
  bool any = !circuit->wired;
  for (size_t i = 0; i < circuit->test_count; i++)
    any = any || !circuit->tests[i].is_usual;
  if (any)
    add_row(out, oc_test_columns, OHM_TEST_COLUMN_COUNT);
  for (size_t i = 0; i < circuit->test_count; i++)
    if (!circuit->tests[i].is_usual)
      add_row(out, (const char *const *)circuit->tests[i].cells, OHM_TEST_COLUMN_COUNT);
}

size_t ohm_circuit_print(const ohm_circuit *circuit, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  if (!circuit)
    return 0;
  add_line(&out, "name", "", circuit->name);
  add_line(&out, "description", "", circuit->description);
  add_line(&out, "source", "", circuit->source);
  add_number_line(&out, "fan_c", circuit->fan_c);
  add_number_line(&out, "most_a", circuit->most_a);
  for (size_t i = 0; i < circuit->fact_count; i++)
    add_line(&out, "fact ", circuit->facts[i].name, circuit->facts[i].text);
  for (size_t i = 0; i < circuit->balance_count; i++)
    add_line(&out, "balance", "", circuit->balances[i].text);
  if (circuit->wired)
    add_wiring(&out, circuit->wired);
  else
    add_links(&out, circuit);
  add_tests(&out, circuit);
  return out.length;
}
