/* SPDX-License-Identifier: MIT */
#include "csv.h"

#include <string.h>

void oc_csv_begin(struct oc_csv *csv, const char *text, size_t length) {
  static const char mark[] = "\xEF\xBB\xBF";
  bool marked = length >= 3 && memcmp(text, mark, 3) == 0;
  csv->next = marked ? text + 3 : text;
  csv->end = length > 0 ? text + length : text;
  csv->line = 0;
  csv->column = 0;
  csv->next_line = 1;
  csv->count = 0;
  csv->fault = NULL;
}

/* Where the reading of a row stands. */
struct place {
  const char *at;
  const char *line_start;
  const char *row_start;
  size_t unquoted; /* bytes of it in use */
};

static bool is_blank(char c) {
  return c == ' ' || c == '\t';
}

static bool is_line_end(char c) {
  return c == '\n' || c == '\r';
}

static bool at_cell_end(const struct oc_csv *csv, const char *at) {
  return at == csv->end || *at == ',' || is_line_end(*at);
}

static const char *past_blanks(const struct oc_csv *csv, const char *at) {
  while (at < csv->end && is_blank(*at))
    at++;
  return at;
}

static const char *past_line(const struct oc_csv *csv, const char *at) {
  while (at < csv->end && !is_line_end(*at))
    at++;
  return at;
}

/* Past LF, CR LF or CR. */
static const char *past_line_end(const struct oc_csv *csv, const char *at) {
  if (at < csv->end && *at == '\r')
    return at + 1 < csv->end && at[1] == '\n' ? at + 2 : at + 1;
  return at < csv->end ? at + 1 : at;
}

static int column_of(const struct place *place, const char *at) {
  return (int)(at - place->line_start) + 1;
}

/* The next row begins on the line after the one of the fault. */
static enum oc_csv_kind fail(struct oc_csv *csv, int line, int column, const char *at,
                             const char *fault) {
  csv->line = line;
  csv->column = column;
  csv->count = 0;
  csv->fault = fault;
  csv->next = past_line_end(csv, past_line(csv, at));
  csv->next_line = line + 1;
  return OC_CSV_FAULT;
}

static enum oc_csv_kind fail_at(struct oc_csv *csv, const struct place *place, const char *fault) {
  return fail(csv, csv->next_line, column_of(place, place->at), place->at, fault);
}

static void keep_cell(struct oc_csv *csv, const char *text, size_t length, int column) {
  csv->cells[csv->count++] = (struct oc_csv_cell){text, length, column};
}

/* A cell without quotes, less the blanks at its end. */
static enum oc_csv_kind take_bare(struct oc_csv *csv, struct place *place) {
  const char *first = place->at;
  for (; !at_cell_end(csv, place->at); place->at++)
    if (*place->at == '"')
      return fail_at(csv, place,
                     "a quote inside a cell that does not begin with one: put the "
                     "whole cell in quotes and write the quote twice");
  const char *last = place->at;
  while (last > first && is_blank(last[-1]))
    last--;
  keep_cell(csv, first, (size_t)(last - first), column_of(place, first));
  return OC_CSV_ROW;
}

static bool row_is_long(const struct place *place) {
  return place->at - place->row_start >= OC_CSV_ROW_MAX;
}

static const char *const row_too_long =
    "a row of more than 4096 bytes: split it, or close its last quote";

/* Count the line that ends inside a quoted cell. */
static void pass_line_end(struct oc_csv *csv, struct place *place) {
  bool ends = *place->at == '\n' || place->at + 1 == csv->end || place->at[1] != '\n';
  place->at++;
  if (ends) {
    csv->next_line++;
    place->line_start = place->at;
  }
}

/* Copy a quoted cell, its quotes undoubled, up to the quote that closes it. */
static bool copy_quoted(struct oc_csv *csv, struct place *place) {
  while (place->at < csv->end && !row_is_long(place)) {
    if (*place->at == '"') {
      if (place->at + 1 == csv->end || place->at[1] != '"')
        return true;
      place->at++;
    }
    csv->unquoted[place->unquoted++] = *place->at;
    if (is_line_end(*place->at))
      pass_line_end(csv, place);
    else
      place->at++;
  }
  return false;
}

static enum oc_csv_kind take_quoted(struct oc_csv *csv, struct place *place) {
  const char *quote = place->at++;
  int line = csv->next_line;
  int column = column_of(place, quote);
  size_t first = place->unquoted;
  if (!copy_quoted(csv, place))
    return fail(csv, line, column, quote,
                place->at < csv->end ? row_too_long
                                     : "a quote that is never closed: close it, or leave it out");
  keep_cell(csv, csv->unquoted + first, place->unquoted - first, column + 1);
  place->at = past_blanks(csv, place->at + 1);
  if (!at_cell_end(csv, place->at))
    return fail_at(csv, place,
                   "text after the quote that closes a cell: put a comma between, or "
                   "write a quote that belongs to the cell twice");
  return OC_CSV_ROW;
}

static enum oc_csv_kind take_cell(struct oc_csv *csv, struct place *place) {
  place->at = past_blanks(csv, place->at);
  if (csv->count == OC_CSV_CELLS_MAX)
    return fail_at(csv, place, "a row of more than 64 cells: leave out what is not needed");
  bool quoted = place->at < csv->end && *place->at == '"';
  enum oc_csv_kind kind = quoted ? take_quoted(csv, place) : take_bare(csv, place);
  if (kind == OC_CSV_ROW && place->at - place->row_start > OC_CSV_ROW_MAX)
    return fail(csv, csv->line, 1, place->row_start, row_too_long);
  return kind;
}

static enum oc_csv_kind take_row(struct oc_csv *csv) {
  struct place place = {csv->next, csv->next, csv->next, 0};
  for (;;) {
    enum oc_csv_kind kind = take_cell(csv, &place);
    if (kind != OC_CSV_ROW)
      return kind;
    if (place.at == csv->end || *place.at != ',')
      break;
    place.at++;
  }
  csv->next = past_line_end(csv, place.at);
  csv->next_line++;
  return OC_CSV_ROW;
}

static enum oc_csv_kind take_comment(struct oc_csv *csv) {
  const char *first = past_blanks(csv, csv->next + 1);
  const char *end = past_line(csv, first);
  const char *last = end;
  while (last > first && is_blank(last[-1]))
    last--;
  keep_cell(csv, first, (size_t)(last - first), (int)(first - csv->next) + 1);
  csv->next = past_line_end(csv, end);
  csv->next_line++;
  return OC_CSV_COMMENT;
}

static void skip_empty_lines(struct oc_csv *csv) {
  for (;;) {
    const char *at = past_blanks(csv, csv->next);
    if (at == csv->end)
      csv->next = at;
    if (at == csv->end || !is_line_end(*at))
      return;
    csv->next = past_line_end(csv, at);
    csv->next_line++;
  }
}

enum oc_csv_kind oc_csv_next(struct oc_csv *csv) {
  skip_empty_lines(csv);
  csv->line = csv->next_line;
  csv->column = 0;
  csv->count = 0;
  csv->fault = NULL;
  if (csv->next == csv->end)
    return OC_CSV_END;
  return *csv->next == '#' ? take_comment(csv) : take_row(csv);
}

bool oc_csv_is(const struct oc_csv_cell *cell, const char *word) {
  return cell->length == strlen(word) && memcmp(cell->text, word, cell->length) == 0;
}
