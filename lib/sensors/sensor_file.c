/* SPDX-License-Identifier: MIT */
/*
 * A sensor file: lines of "# key: value", then for a table a header row and rows.
 * What makes a sensor unusable is an error; what costs one row or one optional line
 * is a note, and the rest goes on.
 */
#include <stdlib.h>
#include <string.h>

#include "audit.h"
#include "draft.h"
#include "../ground/file.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "tolerance.h"
#include "../ground/words.h"

static const char *const known_keys[] = {
    "name",      "description", "source",      "kind",        "model",
    "tolerance", "range",       "r0_ohm",      "t0_c",        "beta_k",
    "r_ref_ohm", "r25_ohm",     "alpha_per_k", "beta_per_k2", "dissipation_mw_per_k"};

enum column { TEMP, MIN, NOMINAL, MAX, FLAG, BAND, COLUMNS };

static const char *const column_names[COLUMNS] = {"temp_c",    "r_min_ohm", "r_nom_ohm",
                                                  "r_max_ohm", "flag",      "band"};

/* "<what> is "<found>"": what was found, for a sentence. */
static const char *found(char *buffer, size_t size, const char *what,
                         const struct oc_csv_cell *cell) {
  struct oc_text text = oc_text_begin(buffer, size);
  oc_text_add(&text, what);
  oc_text_add(&text, " is \"");
  oc_text_add_quoted(&text, cell->text, cell->length);
  oc_text_add(&text, "\"");
  return buffer;
}

static bool is_word(const struct oc_csv_cell *cell, const char *word) {
  return cell->length == strlen(word) && memcmp(cell->text, word, cell->length) == 0;
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

static void take_text(struct oc_draft *draft, char **text, const struct oc_csv_cell *value,
                      int line) {
  char what[80];
  if (value->length == 0)
    return;
  if (*text) {
    oc_draft_note(draft, line, value->column,
                  found(what, sizeof what, "a second line of this key", value),
                  "; the first one counts, leave one out");
    return;
  }
  *text = oc_draft_copy(value->text, value->length);
  if (!*text)
    oc_draft_out_of_memory(draft);
}

static void take_number(struct oc_draft *draft, size_t key, const struct oc_csv_cell *value,
                        int line) {
  char what[100];
  double number;
  bool dissipation = key == 0;
  bool is_number = ohm_number_read(value->text, value->length, &number) == OHM_OK;
  found(what, sizeof what, oc_draft_key(key), value);
  if (is_number && (!dissipation || number > 0))
    draft->numbers[key] = number;
  else if (dissipation)
    oc_draft_note(draft, line, value->column, what,
                  "; write a number above 0, such as 1.5 (left out)");
  else
    draft->status =
        oc_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column, what,
                   "; write a plain number, such as 3950 or 2.341077e-4", (const char *)NULL);
}

static void take_model(struct oc_draft *draft, const struct oc_csv_cell *value, int line) {
  char what[80];
  char allowed[160];
  struct oc_text names = oc_text_begin(allowed, sizeof allowed);
  for (int model = 0; model < OC_MODELS; model++) {
    const char *name = oc_model_form((enum oc_model)model)->name;
    if (is_word(value, name)) {
      draft->model = (enum oc_model)model;
      return;
    }
    oc_text_add(&names, model == 0 ? "" : model + 1 < OC_MODELS ? ", " : " or ");
    oc_text_add(&names, name);
  }
  draft->status = oc_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column,
                             found(what, sizeof what, "model", value), "; it may be ", allowed,
                             (const char *)NULL);
}

static void take_tolerance(struct oc_draft *draft, const struct oc_csv_cell *value, int line) {
  char what[80];
  if (oc_tolerance_scan(value->text, value->length, &draft->tolerance) != OHM_OK)
    oc_draft_note(
        draft, line, value->column, found(what, sizeof what, "tolerance", value),
        "; write \"5 %\", \"1 % at 25 C, beta 0.75 %\", \"0.5 K\" or \"0.3 K + 0.005 |t|\" "
        "(left out)");
}

static void take_covariance(struct oc_draft *draft, const struct oc_csv_cell *value, int line) {
  char what[80];
  if (oc_triangle_scan(value->text, value->length, &draft->covariance))
    draft->covariance_line = line;
  else
    oc_draft_note(draft, line, value->column, found(what, sizeof what, "covariance", value),
                  "; write plain numbers, apart by spaces (left out)");
}

static void take_degrees(struct oc_draft *draft, const struct oc_csv_cell *value, int line) {
  char what[100];
  double degrees;
  if (ohm_number_read(value->text, value->length, &degrees) == OHM_OK && degrees >= 1)
    draft->degrees = degrees;
  else
    oc_draft_note(draft, line, value->column, found(what, sizeof what, "degrees_of_freedom", value),
                  "; write a number from 1 on (left out)");
}

/* "-40 to 125 C", "-40 C to 125 C" */
static ohm_status range_scan(const char *text, size_t length, double *low_c, double *high_c) {
  struct oc_words words = {text, length};
  double low;
  double high;
  if (!oc_words_number(&words, &low))
    return OHM_BAD_SYNTAX;
  oc_words_take(&words, "C");
  if (!oc_words_take(&words, "to") || !oc_words_number(&words, &high) ||
      !oc_words_take(&words, "C") || words.length > 0)
    return OHM_BAD_SYNTAX;
  *low_c = low;
  *high_c = high;
  return OHM_OK;
}

static void take_range(struct oc_draft *draft, const struct oc_csv_cell *value, int line) {
  char what[80];
  if (range_scan(value->text, value->length, &draft->low_c, &draft->high_c) != OHM_OK)
    draft->status = oc_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, line, value->column,
                               found(what, sizeof what, "range", value),
                               "; write it as -40 to 125 C", (const char *)NULL);
}

/* ---- makers' bands ---- */

/* "# band kawasaki-z750: Kawasaki Z750 service manual, page 16-76" */
static void take_band(struct oc_draft *draft, struct oc_csv_cell name,
                      const struct oc_csv_cell *value, int line) {
  size_t band = oc_draft_band(draft, name.text, name.length);
  if (band > 0)
    take_text(draft, &draft->sensor->bands[band - 1].source, value, line);
}

/* A key that is nearly a known one is a slip; any other is somebody's remark. */
static void look_at_unknown(struct oc_draft *draft, const struct oc_csv_cell *key, int line) {
  char word[24];
  char what[120];
  if (key->length >= sizeof word || key->length < 4)
    return;
  memcpy(word, key->text, key->length);
  word[key->length] = '\0';
  const char *meant = ohm_nearest(word, known_keys, sizeof known_keys / sizeof known_keys[0]);
  if (!meant || strcmp(meant, word) == 0)
    return;
  struct oc_text text = oc_text_begin(what, sizeof what);
  oc_text_add(&text, "the key \"");
  oc_text_add_quoted(&text, key->text, key->length);
  oc_text_add(&text, "\" is not known and left out; was ");
  oc_text_add(&text, meant);
  oc_draft_note(draft, line, key->column, what, " meant?");
}

static void take_line(struct oc_draft *draft, const struct oc_csv_cell *comment, int line) {
  const char *colon = memchr(comment->text, ':', comment->length);
  if (!colon)
    return;
  size_t before = (size_t)(colon - comment->text);
  struct oc_csv_cell key = {comment->text, before, comment->column};
  struct oc_csv_cell value = {colon + 1, comment->length - before - 1,
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
  } else if (is_word(&key, "covariance")) {
    take_covariance(draft, &value, line);
  } else if (is_word(&key, "degrees_of_freedom")) {
    take_degrees(draft, &value, line);
  } else if (key.length > 5 && memcmp(key.text, "band ", 5) == 0) {
    struct oc_csv_cell name = {key.text + 5, key.length - 5, key.column + 5};
    trim(&name);
    take_band(draft, name, &value, line);
  } else {
    for (size_t i = 0; oc_draft_key(i); i++)
      if (is_word(&key, oc_draft_key(i))) {
        take_number(draft, i, &value, line);
        return;
      }
    look_at_unknown(draft, &key, line);
  }
}

/* ---- header and rows ---- */

struct table {
  struct oc_draft *draft;
  int columns[COLUMNS]; /* place of a column in a row; -1 when absent */
};

static void take_header(struct table *table, const struct oc_csv *csv) {
  struct oc_draft *draft = table->draft;
  draft->has_rows = true;
  for (size_t i = 0; i < csv->count; i++)
    for (int column = 0; column < COLUMNS; column++)
      if (is_word(&csv->cells[i], column_names[column]) && table->columns[column] < 0)
        table->columns[column] = (int)i;
  const int *at = table->columns;
  if (at[TEMP] < 0 || (at[NOMINAL] < 0 && (at[MIN] < 0 || at[MAX] < 0)))
    draft->status =
        oc_fail_at(draft->error, OHM_BAD_SYNTAX, draft->place, csv->line, 0,
                   "the header row lacks a column: it needs temp_c, and r_nom_ohm or both "
                   "r_min_ohm and r_max_ohm",
                   (const char *)NULL);
}

static const struct oc_csv_cell *cell_of(const struct table *table, const struct oc_csv *csv,
                                         enum column column) {
  static const struct oc_csv_cell blank = {"", 0, 0};
  int at = table->columns[column];
  return at >= 0 && (size_t)at < csv->count ? &csv->cells[at] : &blank;
}

/* One number of a row; NaN when blank. False, with a note, when it is no number. */
static bool take_cell(struct table *table, const struct oc_csv *csv, enum column column,
                      double *number) {
  const struct oc_csv_cell *cell = cell_of(table, csv, column);
  *number = NAN;
  if (cell->length == 0)
    return true;
  bool is_number = ohm_number_read(cell->text, cell->length, number) == OHM_OK;
  bool allowed = column == TEMP ? OC_ZERO_C < *number && *number <= 1000 : *number > 0;
  if (is_number && allowed)
    return true;
  char what[100];
  oc_draft_note(
      table->draft, csv->line, cell->column, found(what, sizeof what, column_names[column], cell),
      column == TEMP ? "; write degrees Celsius above -273.15 and up to 1000 as a plain "
                       "number (row left out)"
                     : "; write ohms above 0 as a plain number, such as 2450 (row left out)");
  return false;
}

static void leave_out(struct table *table, const struct oc_csv *csv, const char *why) {
  oc_draft_note(table->draft, csv->line, 0, "row left out: ", why);
}

/* A band's name stands bare in a cell, and before the colon of its own line. */
static bool is_band_name(const struct oc_csv_cell *name) {
  struct oc_csv_cell trimmed = *name;
  trim(&trimmed);
  bool bare = trimmed.length == name->length;
  for (size_t i = 0; i < name->length; i++)
    bare = bare && !strchr(",:\"", name->text[i]);
  return bare;
}

/* Why a row cannot be used; NULL when it can. */
static const char *fault_of_row(const ohm_sensor_row *row, const struct oc_csv_cell *band) {
  if (isnan(row->t_c))
    return "it has no temperature in temp_c";
  if (isnan(row->min_ohm) != isnan(row->max_ohm))
    return "it has one limit; give both r_min_ohm and r_max_ohm, or neither";
  if (band->length > 0 && isnan(row->min_ohm))
    return "it names a band and has no limits";
  if (!is_band_name(band))
    return "the name of its band has a comma, a colon, a quote, or a blank at an end; take it out";
  if (isnan(row->nominal_ohm) && isnan(row->min_ohm))
    return "it has no resistance";
  if (row->min_ohm > row->max_ohm)
    return "r_min_ohm is above r_max_ohm; exchange them";
  if (row->nominal_ohm < row->min_ohm || row->nominal_ohm > row->max_ohm)
    return "r_nom_ohm lies outside r_min_ohm to r_max_ohm; look it up again";
  return NULL;
}

static void take_row(struct table *table, const struct oc_csv *csv) {
  struct oc_draft *draft = table->draft;
  ohm_sensor_row row;
  if (is_word(cell_of(table, csv, FLAG), "suspect")) {
    leave_out(table, csv, "it is flagged suspect");
    return;
  }
  if (!take_cell(table, csv, TEMP, &row.t_c) || !take_cell(table, csv, MIN, &row.min_ohm) ||
      !take_cell(table, csv, NOMINAL, &row.nominal_ohm) ||
      !take_cell(table, csv, MAX, &row.max_ohm))
    return;
  const struct oc_csv_cell *name = cell_of(table, csv, BAND);
  const char *fault = fault_of_row(&row, name);
  size_t band = fault ? 0 : oc_draft_band(draft, name->text, name->length);
  if (fault)
    leave_out(table, csv, fault);
  else if (oc_draft_goes_on(draft) && band == 0 && name->length > 0)
    leave_out(table, csv, "a sensor has at most 64 bands");
  else if (oc_draft_goes_on(draft))
    oc_draft_keep_row(draft, &row, band, csv->line);
}

static void read_lines(struct oc_draft *draft, const char *text, size_t length) {
  struct table table = {draft, {-1, -1, -1, -1, -1, -1}};
  struct oc_csv csv;
  oc_csv_begin(&csv, text, length);
  while (oc_draft_goes_on(draft)) {
    switch (oc_csv_next(&csv)) {
    case OC_CSV_END:
      return;
    case OC_CSV_COMMENT:
      take_line(draft, &csv.cells[0], csv.line);
      break;
    case OC_CSV_FAULT:
      oc_draft_note(draft, csv.line, csv.column, csv.fault, " (row left out)");
      break;
    case OC_CSV_ROW:
      if (draft->has_rows)
        take_row(&table, &csv);
      else
        take_header(&table, &csv);
      break;
    }
  }
}

/* What looks like a misprint is noted, never left out or put right. */
static void note_misprints(struct oc_draft *draft, const char *text, size_t length) {
  ohm_error error;
  ohm_audit *audit = ohm_audit_parse(text, length, draft->place, &error);
  if (!audit && error.status == OHM_NO_MEMORY)
    oc_draft_out_of_memory(draft);
  for (size_t i = 0; i < ohm_audit_count(audit) && oc_draft_goes_on(draft); i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(audit, i);
    if (oc_audit_is_news(audit, i))
      oc_draft_note(draft, suspect->line, suspect->column, oc_audit_clause(audit, i), "");
  }
  ohm_audit_free(audit);
}

static ohm_sensor *parse(const char *text, size_t length, const char *place,
                         const char *default_name, ohm_error *error) {
  oc_error_clear(error);
  struct oc_draft draft = oc_draft_begin(place, error);
  if (oc_draft_goes_on(&draft))
    read_lines(&draft, text, length);
  if (oc_draft_goes_on(&draft) && draft.has_rows)
    note_misprints(&draft, text, length);
  return oc_draft_finish(&draft, default_name);
}

ohm_sensor *ohm_sensor_parse(const char *text, size_t length, const char *name, ohm_error *error) {
  if (!text || !name) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  if (length > OC_FILE_MAX) {
    oc_fail(error, OHM_TOO_LARGE, ohm_status_text(OHM_TOO_LARGE), (const char *)NULL);
    return NULL;
  }
  return parse(text, length, name, name, error);
}

ohm_sensor *ohm_sensor_load(const char *path, ohm_error *error) {
  if (!path) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  size_t length;
  char *text = oc_file_read(path, &length, error);
  if (!text)
    return NULL;
  const char *slash = strrchr(path, '/');
  const char *base = slash ? slash + 1 : path;
  size_t stem = strlen(base);
  if (stem > 4 && strcmp(base + stem - 4, ".csv") == 0)
    stem -= 4;
  char *name = oc_draft_copy(base, stem);
  ohm_sensor *sensor = NULL;
  if (name)
    sensor = parse(text, length, path, name, error);
  else
    oc_fail_memory(error);
  free(name);
  free(text);
  return sensor;
}
