/* SPDX-License-Identifier: MIT */
/*
 * A sensor file: lines of "# key: value", then for a table a header row and rows.
 * What makes a sensor unusable is a fault; what costs one row or one optional line
 * is a note, and the rest goes on.
 */
#include <string.h>

#include "audit.h"
#include "printed.h"
#include "sensor_build.h"
#include "../ground/number.h"
#include "../ground/words.h"

struct reader {
  struct oc_table_file file;
  struct oc_sensor_build build;
};

typedef void take(struct reader *reader, const struct oc_csv_cell *value);

enum { NAME_IS_SIZE = 40 };

/* "r_nom_ohm is " */
static const char *name_is(char *buffer, const char *name) {
  struct oc_text text = oc_text_begin(buffer, NAME_IS_SIZE);
  oc_text_add(&text, name);
  oc_text_add(&text, " is ");
  return buffer;
}

/* ---- lines of "# key: value" ---- */

static void take_dissipation(struct reader *reader, const struct oc_csv_cell *value) {
  double number;
  if (ohm_number_read(value->text, value->length, &number) == OHM_OK && number > 0)
    reader->build.numbers[OC_KEY_DISSIPATION] = number;
  else
    oc_table_file_note(&reader->file, "dissipation_mw_per_k is ", value,
                       "; write a number above 0, such as 1.5 (left out)");
}

static void take_parameter(struct reader *reader, const struct oc_csv_cell *value) {
  char what[NAME_IS_SIZE];
  double number;
  if (ohm_number_read(value->text, value->length, &number) == OHM_OK)
    reader->build.numbers[reader->file.key] = number;
  else
    oc_table_file_fail(&reader->file, OHM_BAD_SYNTAX,
                       name_is(what, oc_sensor_keys[reader->file.key]), value,
                       "; write a plain number, such as 3950 or 2.341077e-4");
}

static void take_model(struct reader *reader, const struct oc_csv_cell *value) {
  char allowed[160];
  struct oc_text advice = oc_text_begin(allowed, sizeof allowed);
  oc_text_add(&advice, "; it may be ");
  for (int model = 0; model < OC_MODELS; model++) {
    const char *name = oc_model_form((enum oc_model)model)->name;
    if (oc_csv_is(value, name)) {
      reader->build.model = (enum oc_model)model;
      return;
    }
    oc_text_add(&advice, model == 0 ? "" : model + 1 < OC_MODELS ? ", " : " or ");
    oc_text_add(&advice, name);
  }
  oc_table_file_fail(&reader->file, OHM_BAD_SYNTAX, "model is ", value, allowed);
}

static void take_tolerance(struct reader *reader, const struct oc_csv_cell *value) {
  if (oc_tolerance_scan(value->text, value->length, &reader->build.tolerance) != OHM_OK)
    oc_table_file_note(
        &reader->file, "tolerance is ", value,
        "; write \"5 %\", \"1 % at 25 C, beta 0.75 %\", \"0.5 K\" or \"0.3 K + 0.005 |t|\" "
        "(left out)");
}

static void take_covariance(struct reader *reader, const struct oc_csv_cell *value) {
  if (oc_triangle_scan(value->text, value->length, &reader->build.covariance))
    reader->build.covariance_line = reader->file.csv.line;
  else
    oc_table_file_note(&reader->file, "covariance is ", value,
                       "; write plain numbers, apart by spaces (left out)");
}

static void take_degrees(struct reader *reader, const struct oc_csv_cell *value) {
  double degrees;
  if (ohm_number_read(value->text, value->length, &degrees) == OHM_OK && degrees >= 1)
    reader->build.degrees = degrees;
  else
    oc_table_file_note(&reader->file, "degrees_of_freedom is ", value,
                       "; write a number from 1 on (left out)");
}

/* "-40 to 125 C", "-40 C to 125 C" */
static bool scan_range(const struct oc_csv_cell *value, double *low_c, double *high_c) {
  struct oc_words words = {value->text, value->length};
  if (!oc_words_number(&words, low_c))
    return false;
  oc_words_take(&words, "C");
  return oc_words_take(&words, "to") && oc_words_number(&words, high_c) &&
         oc_words_take(&words, "C") && words.length == 0;
}

static void take_range(struct reader *reader, const struct oc_csv_cell *value) {
  if (!scan_range(value, &reader->build.low_c, &reader->build.high_c))
    oc_table_file_fail(&reader->file, OHM_BAD_SYNTAX, "range is ", value,
                       "; write it as -40 to 125 C");
}

/* "# band kawasaki-z750: Kawasaki Z750 service manual, page 16-76" */
static void take_band(struct reader *reader, const struct oc_csv_cell *name) {
  struct oc_sensor_build *build = &reader->build;
  size_t band = oc_sensor_build_band(build, name->text, name->length);
  if (band > 0)
    oc_table_file_take_text(&reader->file, &build->sensor->bands[band - 1].source);
}

static void take_line(struct reader *reader) {
  static take *const takes[OC_SENSOR_KEYS] = {
      [OC_KEY_MODEL] = take_model,     [OC_KEY_TOLERANCE] = take_tolerance,
      [OC_KEY_RANGE] = take_range,     [OC_KEY_COVARIANCE] = take_covariance,
      [OC_KEY_DEGREES] = take_degrees, [OC_KEY_DISSIPATION] = take_dissipation};
  ohm_sensor *sensor = reader->build.sensor;
  char **const texts[] = {[OC_KEY_NAME] = &sensor->name,
                          [OC_KEY_DESCRIPTION] = &sensor->description,
                          [OC_KEY_SOURCE] = &sensor->source,
                          [OC_KEY_KIND] = &sensor->kind};
  size_t key = reader->file.key;
  if (key < sizeof texts / sizeof texts[0])
    oc_table_file_take_text(&reader->file, texts[key]);
  else if (key == OC_SENSOR_KEYS)
    take_band(reader, &reader->file.name);
  else if (takes[key])
    takes[key](reader, &reader->file.value);
  else
    take_parameter(reader, &reader->file.value);
}

/* ---- rows ---- */

static void leave_out(struct reader *reader, const char *why) {
  oc_table_file_note(&reader->file, "row left out: ", NULL, why);
}

/* One number of a row; NaN when blank. False, with a note, when it is no number. */
static bool take_cell(struct reader *reader, enum oc_printed_column column, double *number) {
  const struct oc_csv_cell *cell = oc_table_file_cell(&reader->file, column);
  bool is_temp = column == OC_PRINTED_TEMP;
  *number = NAN;
  if (cell->length == 0)
    return true;
  bool is_number = ohm_number_read(cell->text, cell->length, number) == OHM_OK;
  bool allowed = is_temp ? OC_ZERO_C < *number && *number <= OC_HOTTEST_C : *number > 0;
  if (is_number && allowed)
    return true;
  char what[NAME_IS_SIZE];
  oc_table_file_note(&reader->file, name_is(what, oc_printed_column_name(column)), cell,
                     is_temp
                         ? "; write degrees Celsius above -273.15 and up to 1000 as a plain "
                           "number (row left out)"
                         : "; write ohms above 0 as a plain number, such as 2450 (row left out)");
  return false;
}

/* A band's name stands bare in a cell, and before the colon of its own line. */
static bool is_band_name(const struct oc_csv_cell *name) {
  for (size_t i = 0; i < name->length; i++) {
    bool at_end = i == 0 || i + 1 == name->length;
    if (strchr(at_end ? ",:\" \t" : ",:\"", name->text[i]))
      return false;
  }
  return true;
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

static void take_row(struct reader *reader) {
  struct oc_sensor_build *build = &reader->build;
  ohm_sensor_row row;
  if (oc_printed_is_suspect(&reader->file)) {
    leave_out(reader, "it is flagged suspect");
    return;
  }
  if (!take_cell(reader, OC_PRINTED_TEMP, &row.t_c) ||
      !take_cell(reader, OC_PRINTED_MIN, &row.min_ohm) ||
      !take_cell(reader, OC_PRINTED_NOMINAL, &row.nominal_ohm) ||
      !take_cell(reader, OC_PRINTED_MAX, &row.max_ohm))
    return;
  const struct oc_csv_cell *name = oc_table_file_cell(&reader->file, OC_PRINTED_BAND);
  const char *fault = fault_of_row(&row, name);
  size_t band = fault ? 0 : oc_sensor_build_band(build, name->text, name->length);
  if (fault)
    leave_out(reader, fault);
  else if (oc_goes_on(build->complaints) && band == 0 && name->length > 0)
    leave_out(reader, "a sensor has at most 64 bands");
  else if (oc_goes_on(build->complaints))
    oc_sensor_build_keep_row(build, &row, band, reader->file.csv.line);
}

/* ---- the whole ---- */

static void read_parts(struct reader *reader) {
  for (enum oc_part part; (part = oc_table_file_next(&reader->file)) != OC_PART_END;)
    if (part == OC_PART_KEY)
      take_line(reader);
    else if (part == OC_PART_FAULT)
      oc_table_file_note(&reader->file, reader->file.csv.fault, NULL, " (row left out)");
    else if (reader->file.has_header)
      take_row(reader);
    else
      oc_printed_take_header(&reader->file);
  reader->build.has_rows = reader->file.has_header;
}

/* What looks like a misprint is noted, never left out or put right. */
static void note_misprints(struct oc_complaints *complaints, const struct oc_table_text *text) {
  ohm_error error;
  ohm_audit *audit = ohm_audit_parse(text->bytes, text->length, text->place, &error);
  if (!audit && error.status == OHM_NO_MEMORY)
    oc_complaints_fail_memory(complaints);
  for (size_t i = 0; i < ohm_audit_count(audit) && oc_goes_on(complaints); i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(audit, i);
    if (oc_audit_is_news(audit, i))
      oc_complaints_note(complaints,
                         (struct oc_spot){.line = suspect->line, .column = suspect->column},
                         oc_audit_clause(audit, i), "");
  }
  ohm_audit_free(audit);
}

static void *parse(const struct oc_table_text *text, ohm_error *error) {
  static const struct oc_keys keys = {OC_SENSOR_KEYS, oc_sensor_keys, "band"};
  struct oc_complaints complaints = {.place = text->place, .error = error};
  struct reader reader = {.build = oc_sensor_build_begin(&complaints)};
  oc_table_file_begin(&reader.file, &keys, text, &complaints);
  read_parts(&reader);
  if (oc_goes_on(&complaints) && reader.build.has_rows)
    note_misprints(&complaints, text);
  return oc_sensor_build_finish(&reader.build, text->name);
}

ohm_sensor *ohm_sensor_parse(const char *text, size_t length, const char *name, ohm_error *error) {
  return oc_table_file_parse(text, length, name, parse, error);
}

ohm_sensor *ohm_sensor_load(const char *path, ohm_error *error) {
  return oc_table_file_load(path, parse, error);
}
