/* SPDX-License-Identifier: MIT */
#include "printed.h"

#include <stdlib.h>
#include <string.h>

#include "../curves/curve.h"
#include "../ground/list.h"
#include "../ground/number.h"

static const char *const names[OC_PRINTED_COLUMNS] = {
    "r_min_ohm", "r_nom_ohm", "r_max_ohm", "v_signal", "v_signal_hot",
    "temp_c",    "temp_f",    "flag",      "band",     "as_printed"};

const char *oc_printed_column_name(enum oc_printed_column column) {
  return names[column];
}

void oc_printed_free(struct oc_printed *printed) {
  free(printed->rows);
  *printed = (struct oc_printed){.supply_v = OC_ASSUMED_SUPPLY_VOLT};
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

static struct oc_printed_row row_of(const struct oc_table_file *file) {
  struct oc_printed_row row = {.line = file->csv.line,
                               .t_c = NAN,
                               .celsius = {NAN, NAN, 0},
                               .fahrenheit = {NAN, NAN, 0},
                               .band = band_of(oc_table_file_cell(file, OC_PRINTED_BAND)),
                               .flagged = oc_printed_is_suspect(file)};
  const struct oc_csv_cell *temp = oc_table_file_cell(file, OC_PRINTED_TEMP);
  ohm_number_read(temp->text, temp->length, &row.t_c);
  row.column = temp->column;
  copy_text(row.text, temp);
  for (size_t i = 0; i < OC_PRINTED_FIGURES; i++)
    row.figures[i] = figure_of(oc_table_file_cell(file, i));
  const struct oc_csv_cell *degrees = oc_table_file_cell(file, OC_PRINTED_TEMP_F);
  size_t used;
  double t_f;
  double quantum;
  if (oc_number_scan(degrees->text, degrees->length, &used, &t_f, &quantum) == OHM_OK &&
      used == degrees->length)
    row.fahrenheit = (struct oc_printed_degrees){t_f, quantum / 2, degrees->column};
  take_as_printed(&row, oc_table_file_cell(file, OC_PRINTED_AS_PRINTED));
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

static void take_row(struct oc_printed *printed, struct oc_table_file *file) {
  struct oc_printed_row row = row_of(file);
  fill_celsius(&row);
  if (!(OC_ZERO_C < row.t_c && row.t_c <= OC_HOTTEST_C))
    return;
  if (printed->count == OC_POINTS_MAX) {
    oc_table_file_fail(file, OHM_TOO_LARGE, "more than 4096 rows", NULL, ": leave some out");
    return;
  }
  struct oc_printed_row *rows =
      oc_list_grow(printed->rows, printed->count, &printed->room, sizeof *rows);
  if (!rows) {
    oc_complaints_fail_memory(file->complaints);
    return;
  }
  printed->rows = rows;
  rows[printed->count++] = row;
}

void oc_printed_take_header(struct oc_table_file *file) {
  oc_table_file_take_header(file, names, OC_PRINTED_COLUMNS);
  const int *at = file->columns;
  bool has_ohms =
      at[OC_PRINTED_NOMINAL] >= 0 || (at[OC_PRINTED_MIN] >= 0 && at[OC_PRINTED_MAX] >= 0);
  if (at[OC_PRINTED_TEMP] < 0 || !has_ohms)
    oc_table_file_fail(file, OHM_BAD_SYNTAX, "the header row lacks a column", NULL,
                       ": it needs temp_c, and r_nom_ohm or both r_min_ohm and r_max_ohm");
}

bool oc_printed_is_suspect(const struct oc_table_file *file) {
  return oc_csv_is(oc_table_file_cell(file, OC_PRINTED_FLAG), "suspect");
}

/* "# supply_v: 5" */
static void take_supply(struct oc_printed *printed, const struct oc_csv_cell *value) {
  double supply_v;
  if (ohm_number_read(value->text, value->length, &supply_v) == OHM_OK &&
      oc_inside(0.1, supply_v, 1000))
    printed->supply_v = supply_v;
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

ohm_status oc_printed_parse(const struct oc_table_text *text, struct oc_printed *printed,
                            ohm_error *error) {
  static const char *const words[] = {"supply_v"};
  static const struct oc_keys keys = {1, words, NULL};
  struct oc_complaints complaints = {.place = text->place, .error = error};
  struct oc_table_file file;
  *printed = (struct oc_printed){.supply_v = OC_ASSUMED_SUPPLY_VOLT};
  oc_table_file_begin(&file, &keys, text, &complaints);
  for (enum oc_part part; (part = oc_table_file_next(&file)) != OC_PART_END;)
    if (part == OC_PART_KEY)
      take_supply(printed, &file.value);
    else if (part == OC_PART_ROW && file.has_header)
      take_row(printed, &file);
    else if (part == OC_PART_ROW)
      oc_printed_take_header(&file);
  for (int column = 0; column < OC_PRINTED_FIGURES; column++)
    settle_halves(printed, column);
  return complaints.status;
}
