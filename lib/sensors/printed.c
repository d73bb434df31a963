/* SPDX-License-Identifier: MIT */
#include "printed.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/csv.h"
#include "../curves/curve.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/words.h"

enum { OTHERS = OC_PRINTED_COLUMNS, TEMP = OTHERS, TEMP_F, FLAG, BAND, AS_PRINTED, ALL };

static const char *const names[ALL] = {"r_min_ohm",    "r_nom_ohm", "r_max_ohm", "v_signal",
                                       "v_signal_hot", "temp_c",    "temp_f",    "flag",
                                       "band",         "as_printed"};

struct reader {
  struct oc_printed *printed;
  const char *place;
  ohm_error *error;
  bool has_header;
  int at[ALL]; /* place of a column in a row; -1 when absent */
};

const char *oc_printed_column_name(enum oc_printed_column column) {
  return names[column];
}

void oc_printed_free(struct oc_printed *printed) {
  free(printed->rows);
  *printed = (struct oc_printed){.supply_v = OC_ASSUMED_SUPPLY_VOLT};
}

static bool is_word(const struct oc_csv_cell *cell, const char *word) {
  return cell->length == strlen(word) && memcmp(cell->text, word, cell->length) == 0;
}

static const struct oc_csv_cell *cell_of(const struct reader *reader, const struct oc_csv *csv,
                                         int column) {
  static const struct oc_csv_cell blank = {"", 0, 0};
  int at = reader->at[column];
  return at >= 0 && (size_t)at < csv->count ? &csv->cells[at] : &blank;
}

/* ---- digits ---- */

/* Zeros at the end of a whole number may stand for digits that were not printed. */
static double quantum_of(const char *text, size_t length, double scanned) {
  if (memchr(text, '.', length) || memchr(text, 'e', length) || memchr(text, 'E', length))
    return scanned;
  for (size_t end = length; end > 1 && text[end - 1] == '0'; end--)
    scanned *= 10;
  return scanned;
}

static void copy_text(char *copy, const struct oc_csv_cell *cell) {
  size_t length = cell->length < OC_PRINTED_TEXT ? cell->length : 0;
  memcpy(copy, cell->text, length);
  copy[length] = '\0';
}

static struct oc_printed_figure figure_of(const struct oc_csv_cell *cell) {
  struct oc_printed_figure figure = {NAN, NAN, NAN, false, cell->column, ""};
  size_t used;
  double quantum;
  if (oc_number_scan(cell->text, cell->length, &used, &figure.value, &quantum) != OHM_OK ||
      used != cell->length || !(figure.value > 0)) {
    figure.value = NAN;
    return figure;
  }
  figure.read_half = quantum_of(cell->text, used, quantum) / 2;
  copy_text(figure.text, cell);
  return figure;
}

/* ---- as printed ---- */

static bool is_same(double a, double b) {
  return fabs(a - b) <= 1e-9 * fabs(b);
}

/* "6.0 k" says of 6000 that its second zero was not printed. */
static void refine(struct oc_printed_figure *figures, double value, double quantum) {
  for (int i = 0; i < OC_PRINTED_VOLTS; i++)
    for (int kilo = 1; kilo <= 1000; kilo *= 1000)
      if (is_same(value * kilo, figures[i].value)) {
        figures[i].read_half = quantum * kilo / 2;
        figures[i].is_known = true;
      }
}

static void take_degrees(struct oc_printed_row *row, const char *rest, size_t length, double value,
                         double half, int column) {
  while (length > 0 && *rest == ' ') {
    rest++;
    length--;
  }
  if (length == 0 || (length > 1 && rest[1] != ' ' && rest[1] != ')' && rest[1] != ';'))
    return;
  struct oc_printed_degrees *degrees = *rest == 'F'   ? &row->fahrenheit
                                       : *rest == 'C' ? &row->celsius
                                                      : NULL;
  if (degrees && isnan(degrees->t))
    *degrees = (struct oc_printed_degrees){value, half, column};
}

static void take_as_printed(struct oc_printed_row *row, const struct oc_csv_cell *cell) {
  for (size_t i = 0; i < cell->length;) {
    size_t used;
    double value;
    double quantum;
    const char *text = cell->text + i;
    if (oc_number_scan(text, cell->length - i, &used, &value, &quantum) != OHM_OK) {
      i++;
      continue;
    }
    take_degrees(row, text + used, cell->length - i - used, value, quantum / 2,
                 cell->column + (int)i);
    if (memchr(text, '.', used))
      refine(row->figures, value, quantum);
    i += used;
  }
}

/* ---- rows ---- */

/* A number for a name, FNV-1a; 0 for none. */
static uint64_t band_of(const struct oc_csv_cell *cell) {
  uint64_t hash = 14695981039346656037u;
  for (size_t i = 0; i < cell->length; i++)
    hash = (hash ^ (unsigned char)cell->text[i]) * 1099511628211u;
  return cell->length > 0 ? hash : 0;
}

static bool grow(struct oc_printed *printed) {
  if (printed->count < printed->room)
    return true;
  size_t room = printed->room ? 2 * printed->room : 32;
  struct oc_printed_row *rows = realloc(printed->rows, room * sizeof *rows);
  if (!rows)
    return false;
  printed->rows = rows;
  printed->room = room;
  return true;
}

static struct oc_printed_row row_of(const struct reader *reader, const struct oc_csv *csv) {
  struct oc_printed_row row = {.line = csv->line,
                               .t_c = NAN,
                               .celsius = {NAN, NAN, 0},
                               .fahrenheit = {NAN, NAN, 0},
                               .band = band_of(cell_of(reader, csv, BAND)),
                               .flagged = is_word(cell_of(reader, csv, FLAG), "suspect")};
  const struct oc_csv_cell *temp = cell_of(reader, csv, TEMP);
  ohm_number_read(temp->text, temp->length, &row.t_c);
  row.column = temp->column;
  copy_text(row.text, temp);
  for (int i = 0; i < OC_PRINTED_COLUMNS; i++)
    row.figures[i] = figure_of(cell_of(reader, csv, i));
  const struct oc_csv_cell *degrees = cell_of(reader, csv, TEMP_F);
  size_t used;
  double t_f;
  double quantum;
  if (oc_number_scan(degrees->text, degrees->length, &used, &t_f, &quantum) == OHM_OK &&
      used == degrees->length)
    row.fahrenheit = (struct oc_printed_degrees){t_f, quantum / 2, degrees->column};
  take_as_printed(&row, cell_of(reader, csv, AS_PRINTED));
  return row;
}

/* What t_c itself was printed to, when nothing beside it says. */
static void fill_celsius(struct oc_printed_row *row) {
  size_t used;
  double quantum;
  if (isnan(row->celsius.t) &&
      oc_number_scan(row->text, strlen(row->text), &used, &row->celsius.t, &quantum) == OHM_OK) {
    row->celsius.half = quantum / 2;
    row->celsius.column = row->column;
  }
}

static ohm_status take_row(struct reader *reader, const struct oc_csv *csv) {
  struct oc_printed *printed = reader->printed;
  struct oc_printed_row row = row_of(reader, csv);
  fill_celsius(&row);
  if (!(OC_ZERO_C < row.t_c && row.t_c <= 1000))
    return OHM_OK;
  if (printed->count == OC_POINTS_MAX)
    return oc_fail_at(reader->error, OHM_TOO_LARGE, reader->place, csv->line, 0,
                      "more than 4096 rows: leave some out", (const char *)NULL);
  if (!grow(printed))
    return oc_fail_memory(reader->error);
  printed->rows[printed->count++] = row;
  return OHM_OK;
}

static ohm_status take_header(struct reader *reader, const struct oc_csv *csv) {
  reader->has_header = true;
  for (size_t i = 0; i < csv->count; i++)
    for (int column = 0; column < ALL; column++)
      if (is_word(&csv->cells[i], names[column]) && reader->at[column] < 0)
        reader->at[column] = (int)i;
  const int *at = reader->at;
  if (at[TEMP] >= 0 &&
      (at[OC_PRINTED_NOMINAL] >= 0 || (at[OC_PRINTED_MIN] >= 0 && at[OC_PRINTED_MAX] >= 0)))
    return OHM_OK;
  return oc_fail_at(reader->error, OHM_BAD_SYNTAX, reader->place, csv->line, 0,
                    "the header row lacks a column: it needs temp_c, and r_nom_ohm or both "
                    "r_min_ohm and r_max_ohm",
                    (const char *)NULL);
}

/* "# supply_v: 5" */
static void take_comment(struct reader *reader, const struct oc_csv_cell *comment) {
  struct oc_words words = {comment->text, comment->length};
  double supply_v;
  if (oc_words_take(&words, "supply_v:") && oc_words_number(&words, &supply_v) &&
      words.length == 0 && oc_inside(0.1, supply_v, 1000))
    reader->printed->supply_v = supply_v;
}

/* ---- what a figure was rounded to ---- */

/* A zero at the end is a digit when a figure beside it has one in its place. */
static double half_beside(const struct oc_printed *printed, size_t i, int column) {
  double half = 0;
  for (size_t j = i > 0 ? i - 1 : i; j <= i + 1 && j < printed->count; j++)
    if (j != i && !isnan(printed->rows[j].figures[column].value))
      half = fmax(half, printed->rows[j].figures[column].read_half);
  return half > 0 ? half : INFINITY;
}

static void settle_halves(struct oc_printed *printed, int column) {
  for (size_t i = 0; i < printed->count; i++) {
    struct oc_printed_figure *figure = &printed->rows[i].figures[column];
    size_t length = strlen(figure->text);
    bool ends_in_zero = length > 1 && figure->text[length - 1] == '0' && !strchr(figure->text, '.');
    figure->half = ends_in_zero && !figure->is_known
                       ? fmin(figure->read_half, half_beside(printed, i, column))
                       : figure->read_half;
  }
}

ohm_status oc_printed_parse(const char *text, size_t length, const char *place,
                            struct oc_printed *printed, ohm_error *error) {
  struct oc_csv csv;
  struct reader reader = {.printed = printed, .place = place, .error = error};
  *printed = (struct oc_printed){.supply_v = OC_ASSUMED_SUPPLY_VOLT};
  for (int i = 0; i < ALL; i++)
    reader.at[i] = -1;
  oc_csv_begin(&csv, text, length);
  ohm_status status = OHM_OK;
  for (enum oc_csv_kind kind = oc_csv_next(&csv); kind != OC_CSV_END && status == OHM_OK;
       kind = oc_csv_next(&csv)) {
    if (kind == OC_CSV_COMMENT)
      take_comment(&reader, &csv.cells[0]);
    else if (kind == OC_CSV_ROW)
      status = reader.has_header ? take_row(&reader, &csv) : take_header(&reader, &csv);
  }
  for (int column = 0; column < OC_PRINTED_COLUMNS; column++)
    settle_halves(printed, column);
  return status;
}
