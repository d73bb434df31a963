/* SPDX-License-Identifier: MIT */
/* Printed tables as sensors: what loads, and that the printed limits are obeyed. */
#include "../rows.h"
#include "../findings.h"
#include "../../lib/answers/bath.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TABLE, OUTCOME, USABLE, LOW_C, HIGH_C, NOTES, PHRASE, TABLE_CELLS };

static struct row tables[ROWS_MAX];
static size_t table_count;
static struct row rows[ROWS_MAX];
static size_t row_count;

static ohm_sensor *load(const char *table, size_t length, ohm_error *error) {
  char name[128];
  snprintf(name, sizeof name, "tests/sensors/%.*s.csv", (int)length, table);
  char *path = source_path(name);
  ohm_sensor *sensor = ohm_sensor_load(path, error);
  free(path);
  return sensor;
}

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  ck_assert_ptr_nonnull(text);
  ck_assert_uint_eq(ohm_sensor_print(sensor, text, size), size - 1);
  return text;
}

static ohm_sensor *parsed(const char *text) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "rows", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  return sensor;
}

/* Lines of a printed sensor that are neither "# key: value" nor the header row. */
static size_t rows_of(const ohm_sensor *sensor) {
  char *text = printed(sensor);
  size_t count = 0;
  for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
    count += strchr("-0123456789", *line) != NULL;
  free(text);
  return count;
}

static void check_loaded(const struct row *table, const ohm_sensor *sensor) {
  double low_c;
  double high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  CHECK_NEAR(low_c, row_number(table, LOW_C), 1e-9);
  CHECK_NEAR(high_c, row_number(table, HIGH_C), 1e-9);
  CHECK_NEAR((double)rows_of(sensor), row_number(table, USABLE), 0);
  for (size_t i = 0; i < ohm_sensor_note_count(sensor); i++)
    ck_assert_msg(strstr(ohm_sensor_note(sensor, i), table->cell[PHRASE]), "%s: %s",
                  table->cell[TABLE], ohm_sensor_note(sensor, i));
  CHECK_NEAR((double)ohm_sensor_note_count(sensor), row_number(table, NOTES), 0);
}

START_TEST(a_table_loads_or_is_refused_as_its_file_says)
{
  const struct row *table = &tables[_i];
  ohm_error error;
  ohm_sensor *sensor = load(table->cell[TABLE], strlen(table->cell[TABLE]), &error);
  if (strcmp(table->cell[OUTCOME], "loads") == 0) {
    ck_assert_msg(sensor != NULL, "%s", error.message);
    ck_assert_str_eq(ohm_sensor_name(sensor), table->cell[TABLE]);
    check_loaded(table, sensor);
  } else {
    ck_assert_str_eq(table->cell[OUTCOME], "refused");
    ck_assert_ptr_null(sensor);
    ck_assert_int_eq(error.status, OHM_BAD_DEFINITION);
    ck_assert_msg(strstr(error.message, table->cell[PHRASE]), "%s", error.message);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_table_printed_reads_back_as_an_equal_sensor)
{
  const struct row *table = &tables[_i];
  ohm_sensor *sensor = load(table->cell[TABLE], strlen(table->cell[TABLE]), NULL);
  if (!sensor)
    return;
  char *text = printed(sensor);
  ohm_sensor *again = parsed(text);
  char *text_again = printed(again);
  ck_assert_str_eq(text, text_again);
  ck_assert_uint_le(ohm_sensor_note_count(again), ohm_sensor_note_count(sensor));
  free(text_again);
  free(text);
  ohm_sensor_free(again);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- verdicts, one printed row at a time ---- */

/* By a meter, leads and a bath without any error. */
static ohm_finding judge(const ohm_sensor *sensor, double r_ohm, double t_c, double percent) {
  oc_meter meter = OC_METER_INIT;
  meter.accuracy = OC_EXACT;
  meter.leads = OC_STATED;
  oc_reference reference = OC_REFERENCE_INIT;
  reference.accuracy = OC_STATED;
  reference.t_c = t_c;
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = r_ohm;
  oc_check check = OC_CHECK_INIT;
  check.tolerance_percent = percent;
  ohm_finding finding = finding_new();
  ck_assert_int_eq(oc_bath_check(sensor, &reading, &meter, &reference, &check, &finding), OHM_OK);
  return finding;
}

static void expect(const struct row *row, const ohm_finding *finding, ohm_verdict verdict,
                   const char *reason) {
  const char *got = ohm_finding_text(finding, OHM_FIELD_REASON, 0);
  if (ohm_finding_verdict(finding) != verdict || !got || strcmp(got, reason) != 0)
    ck_abort_msg("%s:%d: %s, %s: %.17g ohm is %s, %s, not %s", row->file, row->line,
                 row->cell[SOURCE], row->cell[PLACE], ohm_finding_number(finding, OHM_FIELD_R_OHM),
                 ohm_finding_text(finding, OHM_FIELD_VERDICT, 0), got ? got : "(none)", reason);
}

/* What is printed at one temperature; the geometric middle when no nominal is. */
struct limits {
  double low_ohm;
  double middle_ohm;
  double high_ohm;
};

static bool is_figure(const struct row *row, const struct row *of, const char *quantity) {
  size_t own = 0;
  size_t other = 0;
  const char *a = row_input_text(row, "table", &own);
  const char *b = row_input_text(of, "table", &other);
  return own == other && memcmp(a, b, own) == 0 && strcmp(row->cell[QUANTITY], quantity) == 0 &&
         is_near(row_input(row, "t_c"), row_input(of, "t_c"), 0);
}

static double figure(const struct row *of, const char *quantity) {
  for (size_t i = 0; i < row_count; i++)
    if (is_figure(&rows[i], of, quantity))
      return row_number(&rows[i], EXPECTED);
  return NAN;
}

static struct limits limits_of(const struct row *row) {
  struct limits limits = {figure(row, "low_ohm"), figure(row, "nominal_ohm"),
                          figure(row, "high_ohm")};
  if (isnan(limits.middle_ohm))
    limits.middle_ohm = sqrt(limits.low_ohm * limits.high_ohm);
  return limits;
}

static void check_limits(const ohm_sensor *sensor, const struct row *row) {
  double t_c = row_input(row, "t_c");
  struct limits limits = limits_of(row);
  ohm_finding finding = judge(sensor, limits.middle_ohm, t_c, 0);
  expect(row, &finding, OHM_WITHIN, "conforms");
  finding = judge(sensor, limits.low_ohm, t_c, 0);
  expect(row, &finding, OHM_UNDECIDED, "uncertain");
  finding = judge(sensor, limits.high_ohm, t_c, 0);
  expect(row, &finding, OHM_UNDECIDED, "uncertain");
  finding = judge(sensor, limits.low_ohm * 0.98, t_c, 0);
  expect(row, &finding, OHM_OUTSIDE, "low");
  finding = judge(sensor, limits.high_ohm * 1.02, t_c, 0);
  expect(row, &finding, OHM_OUTSIDE, "high");
}

static bool has_limits(const struct row *row) {
  size_t length = 0;
  const char *table = row_input_text(row, "table", &length);
  for (size_t i = 0; i < row_count; i++) {
    size_t own = 0;
    const char *name = row_input_text(&rows[i], "table", &own);
    if (own == length && memcmp(name, table, own) == 0 &&
        strcmp(rows[i].cell[QUANTITY], "low_ohm") == 0)
      return true;
  }
  return false;
}

/* A sensor without any tolerance decides nothing until it is given one. */
static void check_nominal(const ohm_sensor *sensor, const struct row *row) {
  double t_c = row_input(row, "t_c");
  double nominal_ohm = row_number(row, EXPECTED);
  double got = NAN;
  ohm_curve_temperature(ohm_sensor_curve(sensor), nominal_ohm, &got);
  CHECK_NEAR(got, t_c, 1e-9);
  ohm_finding finding = judge(sensor, nominal_ohm, t_c, 0);
  expect(row, &finding, OHM_UNDECIDED, "no_tolerance");
  finding = judge(sensor, nominal_ohm * 1.04, t_c, 5);
  expect(row, &finding, OHM_WITHIN, "conforms");
  finding = judge(sensor, nominal_ohm * 1.06, t_c, 5);
  expect(row, &finding, OHM_OUTSIDE, "high");
}

static void check_verdicts(ohm_sensor *sensor, const struct row *row) {
  if (strcmp(row->cell[QUANTITY], "low_ohm") == 0)
    check_limits(sensor, row);
  else if (strcmp(row->cell[QUANTITY], "nominal_ohm") == 0 && !has_limits(row))
    check_nominal(sensor, row);
  ohm_sensor_free(sensor);
}

START_TEST(a_printed_row_is_obeyed_by_its_file)
{
  size_t length = 0;
  const char *table = row_input_text(&rows[_i], "table", &length);
  ohm_error error;
  ohm_sensor *sensor = load(table, length, &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  check_verdicts(sensor, &rows[_i]);
}
END_TEST

START_TEST(a_printed_row_is_obeyed_by_a_sensor_made_of_the_rows)
{
  size_t length = 0;
  const char *table = row_input_text(&rows[_i], "table", &length);
  char *text = rows_sensor_text(rows, row_count, table, length);
  check_verdicts(parsed(text), &rows[_i]);
  free(text);
}
END_TEST

int main(void) {
  table_count = rows_read("tests/sensors/expected.psv", TABLE_CELLS, tables, 0);
  row_count = rows_read("tests/refs/sensor.psv", ROW_CELLS, rows, 0);
  int loading =
      RUN_TESTS_FOR_EACH("tables", table_count, a_table_loads_or_is_refused_as_its_file_says,
                         a_table_printed_reads_back_as_an_equal_sensor);
  int verdicts = RUN_TESTS_FOR_EACH("printed rows", row_count, a_printed_row_is_obeyed_by_its_file,
                                    a_printed_row_is_obeyed_by_a_sensor_made_of_the_rows);
  return loading | verdicts;
}
