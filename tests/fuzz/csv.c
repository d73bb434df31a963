/* SPDX-License-Identifier: MIT */
/* Any bytes as rows: each call goes on, and every cell lies where its column says. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/ground/csv.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(bool truth) {
  if (!truth)
    abort();
}

/* Where a cell without quotes lies, and none of what sets cells apart is in it. */
static void check_bare(const struct oc_csv_cell *cell, const char *line) {
  require(cell->text == line + cell->column - 1);
  for (size_t i = 0; i < cell->length; i++)
    require(!memchr(",\r\n\"", cell->text[i], 4));
  if (cell->length > 0)
    require(!memchr(" \t", cell->text[0], 2) && !memchr(" \t", cell->text[cell->length - 1], 2));
}

static void check_quoted(const struct oc_csv *csv, const struct oc_csv_cell *cell) {
  size_t first = (size_t)(cell->text - csv->unquoted);
  require(first <= OC_CSV_ROW_MAX && cell->length <= OC_CSV_ROW_MAX - first);
}

static bool is_unquoted(const struct oc_csv *csv, const char *text) {
  uintptr_t at = (uintptr_t)text;
  uintptr_t first = (uintptr_t)csv->unquoted;
  return first <= at && at <= first + OC_CSV_ROW_MAX;
}

static void check_row(const struct oc_csv *csv, enum oc_csv_kind kind, const char *line) {
  require(kind != OC_CSV_COMMENT || csv->count == 1);
  require(kind != OC_CSV_ROW || oc_inside(1, (double)csv->count, OC_CSV_CELLS_MAX));
  require(kind != OC_CSV_FAULT || (csv->fault && csv->fault[0] && csv->count == 0));
  for (size_t i = 0; i < csv->count; i++) {
    const struct oc_csv_cell *cell = &csv->cells[i];
    bool one_line = csv->next_line == csv->line + 1;
    require(cell->column >= 1);
    if (is_unquoted(csv, cell->text))
      check_quoted(csv, cell);
    else if (one_line && kind == OC_CSV_ROW)
      check_bare(cell, line);
    require(i == 0 || !one_line || csv->cells[i - 1].column < cell->column);
  }
}

static bool is_line_end(char c) {
  return c == '\n' || c == '\r';
}

static const char *past_blanks(const char *at, const char *end) {
  while (at < end && (*at == ' ' || *at == '\t'))
    at++;
  return at;
}

/* Empty lines are skipped before a row; the row's own line begins after them. */
static const char *line_of(const char *from, const struct oc_csv *csv) {
  const char *end = csv->next;
  for (;;) {
    const char *at = past_blanks(from, end);
    if (at == end || !is_line_end(*at))
      return from;
    from = at + 1;
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  static struct oc_csv csv;
  const char *text = (const char *)data;
  oc_csv_begin(&csv, text, size);
  int line = 0;
  for (;;) {
    const char *before = csv.next;
    enum oc_csv_kind kind = oc_csv_next(&csv);
    if (kind == OC_CSV_END)
      break;
    require(before < csv.next && csv.next <= csv.end && line < csv.line);
    line = csv.line;
    check_row(&csv, kind, line_of(before, &csv));
  }
  require(oc_csv_next(&csv) == OC_CSV_END && csv.next == csv.end);
  return 0;
}
