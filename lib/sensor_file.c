/* SPDX-License-Identifier: MIT */
/*
 * A sensor file: lines of "# key: value", then for a table a header row and rows.
 * What makes a sensor unusable is an error; what costs one row or one optional line
 * is a note, and the rest goes on.
 */
#include <stdlib.h>
#include <string.h>

#include "csv.h"
#include "file.h"
#include "number.h"
#include "sensor.h"
#include "status.h"
#include "tolerance.h"
#include "words.h"

enum { NOTES_MAX = 100 };

enum number_key { R0, T0, BETA, A, B, C, DISSIPATION, NUMBER_KEYS };

static const char *const number_names[NUMBER_KEYS] = {
    "r0_ohm", "t0_c", "beta_k", "a", "b", "c", "dissipation_mw_per_k"};

static const char *const known_keys[] = {"name",
                                         "description",
                                         "source",
                                         "kind",
                                         "model",
                                         "tolerance",
                                         "range",
                                         "r0_ohm",
                                         "t0_c",
                                         "beta_k",
                                         "dissipation_mw_per_k"};

enum column { TEMP, MIN, NOMINAL, MAX, FLAG, BAND, COLUMNS };

static const char *const column_names[COLUMNS] = {"temp_c",    "r_min_ohm", "r_nom_ohm",
                                                  "r_max_ohm", "flag",      "band"};

struct draft_row {
  struct ohm_row row;
  size_t band; /* 0 for the sensor's own, else the band's place and 1 */
  int line;
};

/* A sensor being read. */
struct draft {
  const char *place; /* what sentences call the text */
  ohm_error *error;
  ohm_status status; /* of the first fault that cannot be passed over */
  ohm_sensor *sensor;
  enum ohm_model model;
  double numbers[NUMBER_KEYS];
  double low_c;
  double high_c;
  struct ohm_tolerance tolerance; /* of the tolerance line */
  bool has_header;
  int columns[COLUMNS]; /* place of a column in a row; -1 when absent */
  struct draft_row *rows;
  size_t row_count;
  size_t row_room;
  size_t further_notes;
};

/* ---- faults and notes ---- */

static bool going(const struct draft *draft) {
  return draft->status == OHM_OK;
}

static void out_of_memory(struct draft *draft) {
  draft->status = ohm_fail_memory(draft->error);
}

static bool is_control(char byte) {
  return ((unsigned char)byte < 0x20 && byte != '\t') || byte == 0x7F;
}

/* A text stands on a screen and, printed, in one line of a file: no control byte
 * stays in it. */
static char *copy_text(const char *text, size_t length) {
  char *copy = malloc(length + 1);
  if (copy) {
    for (size_t i = 0; i < length; i++)
      copy[i] = is_control(text[i]) ? '?' : text[i];
    copy[length] = '\0';
  }
  return copy;
}

/* Keep a sentence with its place; the error's message serves as the buffer. */
static void note(struct draft *draft, const ohm_error *sentence) {
  ohm_sensor *sensor = draft->sensor;
  if (sensor->note_count >= NOTES_MAX) {
    draft->further_notes++;
    return;
  }
  char **notes = realloc(sensor->notes, (sensor->note_count + 1) * sizeof *notes);
  if (notes)
    sensor->notes = notes;
  char *copy = notes ? copy_text(sentence->message, strlen(sentence->message)) : NULL;
  if (copy)
    sensor->notes[sensor->note_count++] = copy;
  else
    out_of_memory(draft);
}

static void note_at(struct draft *draft, int line, int column, const char *what,
                    const char *advice) {
  ohm_error sentence;
  ohm_fail_at(&sentence, OHM_BAD_SYNTAX, draft->place, line, column, what, advice,
              (const char *)NULL);
  note(draft, &sentence);
}

/* "<what> is "<found>"": what was found, for a sentence. */
static const char *found(char *buffer, size_t size, const char *what,
                         const struct ohm_csv_cell *cell) {
  struct ohm_text text = ohm_text_begin(buffer, size);
  ohm_text_add(&text, what);
  ohm_text_add(&text, " is \"");
  ohm_text_add_quoted(&text, cell->text, cell->length);
  ohm_text_add(&text, "\"");
  return buffer;
}

/* ---- lines of "# key: value" ---- */

static void trim(struct ohm_csv_cell *cell) {
  while (cell->length > 0 && (cell->text[0] == ' ' || cell->text[0] == '\t')) {
    cell->text++;
    cell->length--;
    cell->column++;
  }
  while (cell->length > 0 &&
         (cell->text[cell->length - 1] == ' ' || cell->text[cell->length - 1] == '\t'))
    cell->length--;
}

static bool is_word(const struct ohm_csv_cell *cell, const char *word) {
  return cell->length == strlen(word) && memcmp(cell->text, word, cell->length) == 0;
}

static void take_text(struct draft *draft, char **text, const struct ohm_csv_cell *value,
                      int line) {
  char what[80];
  if (value->length == 0)
    return;
  if (*text) {
    note_at(draft, line, value->column,
            found(what, sizeof what, "a second line of this key", value),
            "; the first one counts, leave one out");
    return;
  }
  *text = copy_text(value->text, value->length);
  if (!*text)
    out_of_memory(draft);
}

static void take_number(struct draft *draft, enum number_key key, const struct ohm_csv_cell *value,
                        int line) {
  char what[100];
  double number;
  bool is_number = ohm_number_read(value->text, value->length, &number) == OHM_OK;
  if (is_number && (key != DISSIPATION || number > 0))
    draft->numbers[key] = number;
  else if (key == DISSIPATION)
    note_at(draft, line, value->column, found(what, sizeof what, number_names[key], value),
            "; write a number above 0, such as 1.5 (left out)");
  else
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column,
                    found(what, sizeof what, number_names[key], value),
                    "; write a plain number, such as 3950 or 2.341077e-4", (const char *)NULL);
}

static void take_model(struct draft *draft, const struct ohm_csv_cell *value, int line) {
  char what[80];
  if (is_word(value, "points"))
    draft->model = OHM_MODEL_POINTS;
  else if (is_word(value, "beta"))
    draft->model = OHM_MODEL_BETA;
  else if (is_word(value, "steinhart-hart"))
    draft->model = OHM_MODEL_STEINHART_HART;
  else
    draft->status = ohm_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column,
                                found(what, sizeof what, "model", value),
                                "; it may be points, beta or steinhart-hart", (const char *)NULL);
}

static void take_tolerance(struct draft *draft, const struct ohm_csv_cell *value, int line) {
  char what[80];
  if (ohm_tolerance_scan(value->text, value->length, &draft->tolerance) != OHM_OK)
    note_at(draft, line, value->column, found(what, sizeof what, "tolerance", value),
            "; write \"5 %\", \"1 % at 25 C, beta 0.75 %\", \"0.5 K\" or \"0.3 K + 0.005 |t|\" "
            "(left out)");
}

/* "-40 to 125 C", "-40 C to 125 C" */
static ohm_status range_scan(const char *text, size_t length, double *low_c, double *high_c) {
  struct ohm_words words = {text, length};
  double low;
  double high;
  if (!ohm_words_number(&words, &low))
    return OHM_BAD_SYNTAX;
  ohm_words_take(&words, "C");
  if (!ohm_words_take(&words, "to") || !ohm_words_number(&words, &high) ||
      !ohm_words_take(&words, "C") || words.length > 0)
    return OHM_BAD_SYNTAX;
  *low_c = low;
  *high_c = high;
  return OHM_OK;
}

static void take_range(struct draft *draft, const struct ohm_csv_cell *value, int line) {
  char what[80];
  if (range_scan(value->text, value->length, &draft->low_c, &draft->high_c) != OHM_OK)
    draft->status = ohm_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column,
                                found(what, sizeof what, "range", value),
                                "; write it as -40 to 125 C", (const char *)NULL);
}

/* ---- makers' bands ---- */

/* The place of a band and 1, a new one for a new name; 0 without a name. */
static size_t band_of(struct draft *draft, const struct ohm_csv_cell *name) {
  ohm_sensor *sensor = draft->sensor;
  if (name->length == 0)
    return 0;
  for (size_t i = 0; i < sensor->band_count; i++)
    if (is_word(name, sensor->bands[i].name))
      return i + 1;
  struct ohm_maker_band *bands = realloc(sensor->bands, (sensor->band_count + 1) * sizeof *bands);
  if (bands)
    sensor->bands = bands;
  char *copy = bands ? copy_text(name->text, name->length) : NULL;
  if (!copy) {
    out_of_memory(draft);
    return 0;
  }
  bands[sensor->band_count] = (struct ohm_maker_band){.name = copy};
  return ++sensor->band_count;
}

/* "# band kawasaki-z750: Kawasaki Z750 service manual, page 16-76" */
static void take_band(struct draft *draft, struct ohm_csv_cell name,
                      const struct ohm_csv_cell *value, int line) {
  size_t band = band_of(draft, &name);
  if (band > 0)
    take_text(draft, &draft->sensor->bands[band - 1].source, value, line);
}

/* A key that is nearly a known one is a slip; any other is somebody's remark. */
static void look_at_unknown(struct draft *draft, const struct ohm_csv_cell *key, int line) {
  char word[24];
  char what[120];
  if (key->length >= sizeof word || key->length < 4)
    return;
  memcpy(word, key->text, key->length);
  word[key->length] = '\0';
  const char *meant = ohm_nearest(word, known_keys, sizeof known_keys / sizeof known_keys[0]);
  if (!meant || strcmp(meant, word) == 0)
    return;
  struct ohm_text text = ohm_text_begin(what, sizeof what);
  ohm_text_add(&text, "the key \"");
  ohm_text_add_quoted(&text, key->text, key->length);
  ohm_text_add(&text, "\" is not known and left out; was ");
  ohm_text_add(&text, meant);
  note_at(draft, line, key->column, what, " meant?");
}

static void take_line(struct draft *draft, const struct ohm_csv_cell *comment, int line) {
  const char *colon = memchr(comment->text, ':', comment->length);
  if (!colon)
    return;
  size_t before = (size_t)(colon - comment->text);
  struct ohm_csv_cell key = {comment->text, before, comment->column};
  struct ohm_csv_cell value = {colon + 1, comment->length - before - 1,
                               comment->column + (int)before + 1};
  trim(&key);
  trim(&value);
  ohm_sensor *sensor = draft->sensor;
  if (is_word(&key, "name")) {
    take_text(draft, &sensor->name, &value, line);
  } else if (is_word(&key, "description")) {
    take_text(draft, &sensor->description, &value, line);
  } else if (is_word(&key, "source")) {
    take_text(draft, &sensor->source, &value, line);
  } else if (is_word(&key, "kind")) {
    take_text(draft, &sensor->kind, &value, line);
  } else if (is_word(&key, "model")) {
    take_model(draft, &value, line);
  } else if (is_word(&key, "tolerance")) {
    take_tolerance(draft, &value, line);
  } else if (is_word(&key, "range")) {
    take_range(draft, &value, line);
  } else if (key.length > 5 && memcmp(key.text, "band ", 5) == 0) {
    struct ohm_csv_cell name = {key.text + 5, key.length - 5, key.column + 5};
    trim(&name);
    take_band(draft, name, &value, line);
  } else {
    for (int i = 0; i < NUMBER_KEYS; i++)
      if (is_word(&key, number_names[i])) {
        take_number(draft, (enum number_key)i, &value, line);
        return;
      }
    look_at_unknown(draft, &key, line);
  }
}

/* ---- header and rows ---- */

static void take_header(struct draft *draft, const struct ohm_csv *csv) {
  draft->has_header = true;
  for (size_t i = 0; i < csv->count; i++)
    for (int column = 0; column < COLUMNS; column++)
      if (is_word(&csv->cells[i], column_names[column]) && draft->columns[column] < 0)
        draft->columns[column] = (int)i;
  const int *at = draft->columns;
  if (at[TEMP] < 0 || (at[NOMINAL] < 0 && (at[MIN] < 0 || at[MAX] < 0)))
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, csv->line, 0,
                    "the header row lacks a column: it needs temp_c, and r_nom_ohm or both "
                    "r_min_ohm and r_max_ohm",
                    (const char *)NULL);
}

static const struct ohm_csv_cell *cell_of(const struct draft *draft, const struct ohm_csv *csv,
                                          enum column column) {
  static const struct ohm_csv_cell blank = {"", 0, 0};
  int at = draft->columns[column];
  return at >= 0 && (size_t)at < csv->count ? &csv->cells[at] : &blank;
}

/* One number of a row; NaN when blank. False, with a note, when it is no number. */
static bool take_cell(struct draft *draft, const struct ohm_csv *csv, enum column column,
                      double *number) {
  const struct ohm_csv_cell *cell = cell_of(draft, csv, column);
  *number = NAN;
  if (cell->length == 0)
    return true;
  bool is_number = ohm_number_read(cell->text, cell->length, number) == OHM_OK;
  bool allowed = column == TEMP ? OHM_ZERO_C < *number && *number <= 1000 : *number > 0;
  if (is_number && allowed)
    return true;
  char what[100];
  note_at(draft, csv->line, cell->column, found(what, sizeof what, column_names[column], cell),
          column == TEMP ? "; write degrees Celsius above -273.15 and up to 1000 as a plain "
                           "number (row left out)"
                         : "; write ohms above 0 as a plain number, such as 2450 (row left out)");
  return false;
}

static void leave_out(struct draft *draft, const struct ohm_csv *csv, const char *why) {
  note_at(draft, csv->line, 0, "row left out: ", why);
}

static void keep_row(struct draft *draft, const struct ohm_row *row, size_t band, int line) {
  if (draft->row_count == OHM_POINTS_MAX) {
    draft->status = ohm_fail_at(draft->error, OHM_TOO_LARGE, draft->place, line, 0,
                                "more than 4096 rows: leave some out", (const char *)NULL);
    return;
  }
  if (draft->row_count == draft->row_room) {
    size_t room = draft->row_room ? 2 * draft->row_room : 32;
    struct draft_row *rows = realloc(draft->rows, room * sizeof *rows);
    if (!rows) {
      out_of_memory(draft);
      return;
    }
    draft->rows = rows;
    draft->row_room = room;
  }
  draft->rows[draft->row_count++] = (struct draft_row){*row, band, line};
}

/* Why a row cannot be used; NULL when it can. */
static const char *fault_of_row(const struct ohm_row *row, bool of_band) {
  if (isnan(row->t_c))
    return "it has no temperature in temp_c";
  if (isnan(row->min_ohm) != isnan(row->max_ohm))
    return "it has one limit; give both r_min_ohm and r_max_ohm, or neither";
  if (of_band && isnan(row->min_ohm))
    return "it names a band and has no limits";
  if (isnan(row->nominal_ohm) && isnan(row->min_ohm))
    return "it has no resistance";
  if (row->min_ohm > row->max_ohm)
    return "r_min_ohm is above r_max_ohm; exchange them";
  if (row->nominal_ohm < row->min_ohm || row->nominal_ohm > row->max_ohm)
    return "r_nom_ohm lies outside r_min_ohm to r_max_ohm; look it up again";
  return NULL;
}

static void take_row(struct draft *draft, const struct ohm_csv *csv) {
  struct ohm_row row;
  if (is_word(cell_of(draft, csv, FLAG), "suspect")) {
    leave_out(draft, csv, "it is flagged suspect");
    return;
  }
  if (!take_cell(draft, csv, TEMP, &row.t_c) || !take_cell(draft, csv, MIN, &row.min_ohm) ||
      !take_cell(draft, csv, NOMINAL, &row.nominal_ohm) ||
      !take_cell(draft, csv, MAX, &row.max_ohm))
    return;
  const struct ohm_csv_cell *name = cell_of(draft, csv, BAND);
  const char *fault = fault_of_row(&row, name->length > 0);
  size_t band = fault ? 0 : band_of(draft, name);
  if (fault)
    leave_out(draft, csv, fault);
  else if (going(draft))
    keep_row(draft, &row, band, csv->line);
}

static void read_lines(struct draft *draft, const char *text, size_t length) {
  struct ohm_csv csv;
  ohm_csv_begin(&csv, text, length);
  while (going(draft)) {
    switch (ohm_csv_next(&csv)) {
    case OHM_CSV_END:
      return;
    case OHM_CSV_COMMENT:
      take_line(draft, &csv.cells[0], csv.line);
      break;
    case OHM_CSV_FAULT:
      note_at(draft, csv.line, csv.column, csv.fault, " (row left out)");
      break;
    case OHM_CSV_ROW:
      if (draft->has_header)
        take_row(draft, &csv);
      else
        take_header(draft, &csv);
      break;
    }
  }
}

/* ---- from draft to sensor ---- */

static int by_band_and_temperature(const void *left, const void *right) {
  const struct draft_row *a = left;
  const struct draft_row *b = right;
  if (a->band != b->band)
    return a->band < b->band ? -1 : 1;
  if (a->row.t_c != b->row.t_c)
    return a->row.t_c < b->row.t_c ? -1 : 1;
  return a->line < b->line ? -1 : 1;
}

static void sort_rows(struct draft *draft) {
  if (draft->row_count == 0)
    return;
  qsort(draft->rows, draft->row_count, sizeof *draft->rows, by_band_and_temperature);
  size_t kept = 1;
  for (size_t i = 1; i < draft->row_count; i++) {
    const struct draft_row *row = &draft->rows[i];
    const struct draft_row *before = &draft->rows[kept - 1];
    if (row->band == before->band && row->row.t_c == before->row.t_c)
      note_at(draft, row->line, 0, "row left out: ", "its temperature stands in an earlier row");
    else
      draft->rows[kept++] = *row;
  }
  draft->row_count = kept;
}

/* Rows of one band (0: the sensor's own) as an array of its own; they are sorted. */
static struct ohm_row *rows_of_band(struct draft *draft, size_t band, size_t *count) {
  size_t first = 0;
  while (first < draft->row_count && draft->rows[first].band < band)
    first++;
  size_t last = first;
  while (last < draft->row_count && draft->rows[last].band == band)
    last++;
  *count = last - first;
  struct ohm_row *rows = *count > 0 ? malloc(*count * sizeof *rows) : NULL;
  if (*count > 0 && !rows)
    out_of_memory(draft);
  for (size_t i = 0; i < *count && rows; i++)
    rows[i] = draft->rows[first + i].row;
  return rows;
}

/* A band without rows says nothing and is dropped. */
static void build_bands(struct draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  size_t kept = 0;
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct ohm_maker_band band = sensor->bands[i];
    band.rows = rows_of_band(draft, i + 1, &band.row_count);
    if (band.rows) {
      sensor->bands[kept++] = band;
    } else {
      ohm_error sentence;
      ohm_fail_at(&sentence, OHM_BAD_DEFINITION, draft->place, 0, 0, "band ", band.name,
                  " has no row and is left out", (const char *)NULL);
      note(draft, &sentence);
      free(band.name);
      free(band.source);
    }
  }
  sensor->band_count = kept;
}

static void fail_turn(struct draft *draft, const struct draft_row *before,
                      const struct draft_row *row) {
  char t_text[OHM_NUMBER_SIZE];
  char r_text[OHM_NUMBER_SIZE];
  char t_before[OHM_NUMBER_SIZE];
  char r_before[OHM_NUMBER_SIZE];
  ohm_number_print(row->row.t_c, t_text, sizeof t_text);
  ohm_number_print(before->row.t_c, t_before, sizeof t_before);
  ohm_resistance_print(ohm_row_nominal(&row->row), 4, r_text, sizeof r_text);
  ohm_resistance_print(ohm_row_nominal(&before->row), 4, r_before, sizeof r_before);
  draft->status = ohm_fail_at(
      draft->error, OHM_BAD_DEFINITION, draft->place, row->line, 0, "the curve turns: ", r_text,
      " at ", t_text, " C is not below ", r_before, " at ", t_before,
      " C; resistance must fall as temperature rises, look both rows up again", (const char *)NULL);
}

static void check_rows(struct draft *draft, size_t count) {
  if (count < 2) {
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0,
                    count == 0 ? "no usable row" : "only one usable row",
                    "; a curve needs at least two rows that can be believed", (const char *)NULL);
    return;
  }
  for (size_t i = 1; i < count && going(draft); i++)
    if (!(ohm_row_nominal(&draft->rows[i - 1].row) > ohm_row_nominal(&draft->rows[i].row)))
      fail_turn(draft, &draft->rows[i - 1], &draft->rows[i]);
}

static void keep_curve(struct draft *draft, ohm_curve *curve, const ohm_error *why) {
  draft->sensor->curve = curve;
  if (!curve)
    draft->status = ohm_fail_at(draft->error, (ohm_status)why->status, draft->place, 0, 0,
                                why->message, (const char *)NULL);
}

static void build_points(struct draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  sort_rows(draft);
  build_bands(draft);
  sensor->rows = rows_of_band(draft, 0, &sensor->row_count);
  size_t count = sensor->row_count;
  if (going(draft))
    check_rows(draft, count);
  if (!going(draft))
    return;
  double *values = malloc(2 * count * sizeof *values);
  if (!values) {
    out_of_memory(draft);
    return;
  }
  for (size_t i = 0; i < count; i++) {
    values[i] = sensor->rows[i].t_c;
    values[count + i] = ohm_row_nominal(&sensor->rows[i]);
    if (ohm_row_has_limits(&sensor->rows[i]))
      sensor->tolerance = (struct ohm_tolerance){
          .kind = OHM_TOLERANCE_ROWS, .rows = sensor->rows, .row_count = count};
  }
  ohm_error why;
  keep_curve(draft, ohm_curve_points_new(values, values + count, count, &why), &why);
  free(values);
}

static void need_number(struct draft *draft, enum number_key key, const char *model) {
  if (going(draft) && isnan(draft->numbers[key]))
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0, "model ", model,
                    " needs a line \"# ", number_names[key], ": ...\"", (const char *)NULL);
}

static void build_model(struct draft *draft) {
  static const enum number_key needs[2][3] = {{R0, T0, BETA}, {A, B, C}};
  bool beta = draft->model == OHM_MODEL_BETA;
  const char *name = beta ? "beta" : "steinhart-hart";
  for (int i = 0; i < 3; i++)
    need_number(draft, needs[!beta][i], name);
  if (going(draft) && isnan(draft->low_c))
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0, "model ", name,
                    " needs a line \"# range: -40 to 125 C\"", (const char *)NULL);
  if (going(draft) && draft->has_header)
    draft->status =
        ohm_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0, "model ", name,
                    " has no rows; leave them out or take out the model line", (const char *)NULL);
  if (!going(draft))
    return;
  const double *n = draft->numbers;
  ohm_error why;
  keep_curve(
      draft,
      beta ? ohm_curve_beta_new(n[R0], n[T0], n[BETA], draft->low_c, draft->high_c, &why)
           : ohm_curve_steinhart_hart_new(n[A], n[B], n[C], draft->low_c, draft->high_c, &why),
      &why);
}

static void finish(struct draft *draft, const char *default_name) {
  ohm_sensor *sensor = draft->sensor;
  if (!sensor->name) {
    sensor->name = copy_text(default_name, strlen(default_name));
    if (!sensor->name)
      out_of_memory(draft);
  }
  if (sensor->tolerance.kind == OHM_TOLERANCE_NONE)
    sensor->tolerance = draft->tolerance;
  sensor->dissipation_mw_per_k = draft->numbers[DISSIPATION];
  if (draft->further_notes > 0 && going(draft)) {
    char count[OHM_NUMBER_SIZE];
    /* The last note gives its place to this one and is counted with the rest. */
    ohm_number_print((double)draft->further_notes + 1, count, sizeof count);
    ohm_error sentence;
    ohm_fail_at(&sentence, OHM_BAD_SYNTAX, draft->place, 0, 0, "and ", count, " more of the kind",
                (const char *)NULL);
    free(sensor->notes[NOTES_MAX - 1]);
    sensor->note_count--;
    note(draft, &sentence);
  }
}

static ohm_sensor *parse(const char *text, size_t length, const char *place,
                         const char *default_name, ohm_error *error) {
  ohm_error_clear(error);
  struct draft draft = {.place = place,
                        .error = error,
                        .sensor = calloc(1, sizeof(ohm_sensor)),
                        .model = OHM_MODEL_POINTS,
                        .low_c = NAN,
                        .high_c = NAN,
                        .columns = {-1, -1, -1, -1, -1, -1}};
  if (!draft.sensor) {
    ohm_fail_memory(error);
    return NULL;
  }
  for (int i = 0; i < NUMBER_KEYS; i++)
    draft.numbers[i] = NAN;
  read_lines(&draft, text, length);
  if (going(&draft) && draft.model != OHM_MODEL_POINTS)
    build_model(&draft);
  else if (going(&draft))
    build_points(&draft);
  finish(&draft, default_name);
  free(draft.rows);
  if (going(&draft))
    return draft.sensor;
  ohm_sensor_free(draft.sensor);
  return NULL;
}

ohm_sensor *ohm_sensor_parse(const char *text, size_t length, const char *name, ohm_error *error) {
  if (!text || !name) {
    ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  if (length > OHM_FILE_MAX) {
    ohm_fail(error, OHM_TOO_LARGE, ohm_status_text(OHM_TOO_LARGE), (const char *)NULL);
    return NULL;
  }
  return parse(text, length, name, name, error);
}

ohm_sensor *ohm_sensor_load(const char *path, ohm_error *error) {
  if (!path) {
    ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  size_t length;
  char *text = ohm_file_read(path, &length, error);
  if (!text)
    return NULL;
  const char *slash = strrchr(path, '/');
  const char *base = slash ? slash + 1 : path;
  size_t stem = strlen(base);
  if (stem > 4 && strcmp(base + stem - 4, ".csv") == 0)
    stem -= 4;
  char *name = copy_text(base, stem);
  ohm_sensor *sensor = NULL;
  if (name)
    sensor = parse(text, length, path, name, error);
  else
    ohm_fail_memory(error);
  free(name);
  free(text);
  return sensor;
}
