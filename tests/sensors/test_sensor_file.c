/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "../../lib/sensors/sensor_build.h"
#include "../rows.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* ---- what a mistake is answered with ---- */

static ohm_sensor *parsed(const char *text) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "a", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  ck_assert_int_eq(error.status, OHM_OK);
  return sensor;
}

static size_t row_count(const ohm_sensor *sensor) {
  static char text[200000];
  ck_assert_uint_lt(ohm_sensor_print(sensor, text, sizeof text), sizeof text);
  size_t count = 0;
  for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
    count += strchr("-0123456789", *line) != NULL;
  return count;
}

struct mistake {
  const char *text;
  int line;
  int column;
  ohm_status status;
  const char *message; /* whole */
};

static void check_refused(const struct mistake *mistakes, size_t count) {
  for (size_t i = 0; i < count; i++) {
    const struct mistake *mistake = &mistakes[i];
    ohm_error error;
    ck_assert_ptr_null(ohm_sensor_parse(mistake->text, strlen(mistake->text), "a", &error));
    ck_assert_str_eq(error.message, mistake->message);
    ck_assert_int_eq(error.status, mistake->status);
    ck_assert_int_eq(error.line, mistake->line);
    ck_assert_int_eq(error.column, mistake->column);
    ck_assert_ptr_null(ohm_sensor_parse(mistake->text, strlen(mistake->text), "a", NULL));
  }
}

#define CHECK_REFUSED(...)                                                                         \
  check_refused((const struct mistake[]){__VA_ARGS__},                                             \
                sizeof(const struct mistake[]){__VA_ARGS__} / sizeof(struct mistake))

#define LACKS                                                                                      \
  "the header row lacks a column: it needs temp_c, and r_nom_ohm or both r_min_ohm and r_max_ohm"

START_TEST(a_header_that_lacks_a_column_is_told_with_its_line)
{
  CHECK_REFUSED({"r_nom_ohm\n1\n", 1, 0, OHM_BAD_SYNTAX, "a, line 1: " LACKS},
                {"# name: x\n\ntemp_c,r_min_ohm\n", 3, 0, OHM_BAD_SYNTAX, "a, line 3: " LACKS},
                {"temp_c,r_max_ohm\n1,2\n", 1, 0, OHM_BAD_SYNTAX, "a, line 1: " LACKS},
                {"25,10000\n50,3000\n", 1, 0, OHM_BAD_SYNTAX, "a, line 1: " LACKS},
                {"temp_C,r_nom_ohm\n1,2\n", 1, 0, OHM_BAD_SYNTAX, "a, line 1: " LACKS});
}
END_TEST

START_TEST(too_few_rows_are_told)
{
  CHECK_REFUSED({"", 0, 0, OHM_BAD_DEFINITION,
                 "a: no usable row; a curve needs at least two rows that can be believed"},
                {"temp_c,r_nom_ohm\n", 0, 0, OHM_BAD_DEFINITION,
                 "a: no usable row; a curve needs at least two rows that can be believed"},
                {"temp_c,r_nom_ohm\n25,10000\n", 0, 0, OHM_BAD_DEFINITION,
                 "a: only one usable row; a curve needs at least two rows that can be believed"},
                {"temp_c,r_nom_ohm\n25,10000\n25,9000\n", 0, 0, OHM_BAD_DEFINITION,
                 "a: only one usable row; a curve needs at least two rows that can be believed"});
}
END_TEST

START_TEST(a_curve_that_turns_names_both_rows)
{
  CHECK_REFUSED({"temp_c,r_nom_ohm\n0,30000\n25,10000\n50,11000\n", 4, 0, OHM_BAD_DEFINITION,
                 "a, line 4: the curve turns: 11.00 k at 50 C is not below 10.00 k at 25 C; "
                 "resistance must fall as temperature rises, look both rows up again"},
                {"temp_c,r_nom_ohm\n50,10000\n25,10000\n", 2, 0, OHM_BAD_DEFINITION,
                 "a, line 2: the curve turns: 10.00 k at 50 C is not below 10.00 k at 25 C; "
                 "resistance must fall as temperature rises, look both rows up again"});
}
END_TEST

START_TEST(a_bad_model_range_or_number_is_told_with_its_column)
{
  CHECK_REFUSED(
      {"# model: alpha\n", 1, 10, OHM_BAD_SYNTAX,
       "a, line 1, column 10: model is \"alpha\"; it may be points, beta, "
       "steinhart-hart, four-term, four-term-of-temperature, platinum or silicon"},
      {"# name: x\n#  range:  -40..125\n", 2, 12, OHM_BAD_SYNTAX,
       "a, line 2, column 12: range is \"-40..125\"; write it as -40 to 125 C"},
      {"# range: -40 to 125\n", 1, 10, OHM_BAD_SYNTAX,
       "a, line 1, column 10: range is \"-40 to 125\"; write it as -40 to 125 C"},
      {"# beta_k: 3950 K\n", 1, 11, OHM_BAD_SYNTAX,
       "a, line 1, column 11: beta_k is \"3950 K\"; write a plain number, such as 3950 or "
       "2.341077e-4"},
      {"# a:\n", 1, 5, OHM_BAD_SYNTAX,
       "a, line 1, column 5: a is \"\"; write a plain number, such as 3950 or 2.341077e-4"});
}
END_TEST

START_TEST(a_parameter_that_a_model_needs_is_named)
{
  CHECK_REFUSED(
      {"# model: beta\n", 0, 0, OHM_BAD_DEFINITION, "a: model beta needs a line \"# r0_ohm: ...\""},
      {"# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# range: 0 to 1 C\n", 0, 0, OHM_BAD_DEFINITION,
       "a: model beta needs a line \"# beta_k: ...\""},
      {"# model: steinhart-hart\n# a: 1e-3\n# b: 2e-4\n", 0, 0, OHM_BAD_DEFINITION,
       "a: model steinhart-hart needs a line \"# c: ...\""},
      {"# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# beta_k: 3950\n", 0, 0, OHM_BAD_DEFINITION,
       "a: model beta needs a line \"# range: -40 to 125 C\""});
}
END_TEST

#define BETA "# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# beta_k: 3950\n# range: -40 to 125 C\n"

START_TEST(a_model_with_rows_is_refused)
{
  CHECK_REFUSED({BETA "temp_c,r_nom_ohm\n25,10000\n", 0, 0, OHM_BAD_DEFINITION,
                 "a: model beta has no rows; leave them out or take out the model line"});
}
END_TEST

START_TEST(a_model_that_makes_no_curve_is_refused_with_its_reason)
{
  static const char text[] = "# model: beta\n# r0_ohm: -1\n# t0_c: 25\n# beta_k: 3950\n"
                             "# range: -40 to 125 C\n";
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_parse(text, strlen(text), "a", &error));
  ck_assert_str_eq(error.message, "a: r0_ohm is -1; it must be a finite resistance above 0");
}
END_TEST

/* ---- notes ---- */

/* One note for a table with one mistake; two good rows follow it. */
struct noted {
  const char *text;
  const char *note; /* whole */
};

static void check_noted(const struct noted *noted, size_t count) {
  for (size_t i = 0; i < count; i++) {
    ohm_sensor *sensor = parsed(noted[i].text);
    ck_assert_uint_eq(ohm_sensor_note_count(sensor), 1);
    ck_assert_str_eq(ohm_sensor_note(sensor, 0), noted[i].note);
    ck_assert_ptr_null(ohm_sensor_note(sensor, 1));
    ck_assert_uint_eq(row_count(sensor), 2);
    ohm_sensor_free(sensor);
  }
}

#define CHECK_NOTED(...)                                                                           \
  check_noted((const struct noted[]){__VA_ARGS__},                                                 \
              sizeof(const struct noted[]){__VA_ARGS__} / sizeof(struct noted))

#define HEADER "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n"
#define TWO    "25,9500,10000,10500\n50,3300,3600,3900\n"
#define OHMS   "; write ohms above 0 as a plain number, such as 2450 (row left out)"
#define DEGREES                                                                                    \
  "; write degrees Celsius above -273.15 and up to 1000 as a plain number (row left out)"

START_TEST(a_bad_cell_costs_its_row_and_is_noted_with_its_place)
{
  CHECK_NOTED(
      {HEADER "x,,30000,\n" TWO, "a, line 2, column 1: temp_c is \"x\"" DEGREES},
      {HEADER "-300,,30000,\n" TWO, "a, line 2, column 1: temp_c is \"-300\"" DEGREES},
      {HEADER TWO "1001,,30000,\n", "a, line 4, column 1: temp_c is \"1001\"" DEGREES},
      {HEADER "0,,2.31k,\n" TWO, "a, line 2, column 4: r_nom_ohm is \"2.31k\"" OHMS},
      {HEADER "0, 29000 ,0,31000\n" TWO, "a, line 2, column 11: r_nom_ohm is \"0\"" OHMS},
      {HEADER "0,-1,30000,31000\n" TWO, "a, line 2, column 3: r_min_ohm is \"-1\"" OHMS},
      {HEADER "0,29000,30000,1e999\n" TWO, "a, line 2, column 15: r_max_ohm is \"1e999\"" OHMS});
}
END_TEST

START_TEST(a_row_that_cannot_be_used_is_noted_with_its_reason)
{
  CHECK_NOTED(
      {HEADER ",29000,30000,31000\n" TWO,
       "a, line 2: row left out: it has no temperature in temp_c"},
      {HEADER "0,29000,30000,\n" TWO, "a, line 2: row left out: it has one limit; give both "
                                      "r_min_ohm and r_max_ohm, or neither"},
      {HEADER "0,,30000,31000\n" TWO, "a, line 2: row left out: it has one limit; give both "
                                      "r_min_ohm and r_max_ohm, or neither"},
      {HEADER "0,,,\n" TWO, "a, line 2: row left out: it has no resistance"},
      {HEADER "0\n" TWO, "a, line 2: row left out: it has no resistance"},
      {HEADER "0,31000,30000,29000\n" TWO,
       "a, line 2: row left out: r_min_ohm is above r_max_ohm; exchange them"},
      {HEADER "0,29000,28000,31000\n" TWO, "a, line 2: row left out: r_nom_ohm lies outside "
                                           "r_min_ohm to r_max_ohm; look it up again"},
      {HEADER "0,29000,32000,31000\n" TWO, "a, line 2: row left out: r_nom_ohm lies outside "
                                           "r_min_ohm to r_max_ohm; look it up again"},
      {HEADER TWO "25.0,,10001,\n",
       "a, line 4: row left out: its temperature stands in an earlier row"},
      {"temp_c,r_nom_ohm,flag\n0,1,suspect\n25,10000,ok\n50,3600,\n",
       "a, line 2: row left out: it is flagged suspect"},
      {HEADER TWO "0,\"30000\n",
       "a, line 4, column 3: a quote that is never closed: close it, or leave it out (row left "
       "out)"});
}
END_TEST

START_TEST(a_line_that_cannot_be_used_is_noted_and_left_out)
{
  CHECK_NOTED(
      {"# tolerance: some\n" HEADER TWO,
       "a, line 1, column 14: tolerance is \"some\"; write \"5 %\", \"1 % at 25 C, beta 0.75 %\", "
       "\"0.5 K\" or \"0.3 K + 0.005 |t|\" (left out)"},
      {"# dissipation_mw_per_k: much\n" HEADER TWO, "a, line 1, column 25: dissipation_mw_per_k is "
                                                    "\"much\"; write a number above 0, such as 1.5 "
                                                    "(left out)"},
      {"# dissipation_mw_per_k: -1.5\n" HEADER TWO, "a, line 1, column 25: dissipation_mw_per_k is "
                                                    "\"-1.5\"; write a number above 0, such as 1.5 "
                                                    "(left out)"},
      {"# tolerence: 5 %\n" HEADER TWO, "a, line 1, column 3: the key \"tolerence\" is not known "
                                        "and left out; was tolerance meant?"},
      {"# Name: x\n" HEADER TWO,
       "a, line 1, column 3: the key \"Name\" is not known and left out; was name meant?"},
      {"# name: x\n# name: y\n" HEADER TWO,
       "a, line 2, column 9: a second line of this key is \"y\"; the first one counts, leave one "
       "out"});
}
END_TEST

START_TEST(the_first_of_two_lines_counts)
{
  ohm_sensor *sensor = parsed("# name: x\n# name: y\n" HEADER TWO);
  ck_assert_str_eq(ohm_sensor_name(sensor), "x");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(notes_carry_no_control_byte)
{
  ohm_sensor *sensor = parsed("# to\033erance: 5 %\n# tolerance: \033[2J\n" HEADER TWO "0,,\a,\n");
  ck_assert_uint_ge(ohm_sensor_note_count(sensor), 2);
  for (size_t i = 0; i < ohm_sensor_note_count(sensor); i++)
    for (const char *at = ohm_sensor_note(sensor, i); *at; at++)
      ck_assert_int_ge((unsigned char)*at, ' ');
  ohm_sensor_free(sensor);
}
END_TEST

static ohm_sensor *with_mistakes(size_t count) {
  static char text[20000];
  strcpy(text, HEADER TWO);
  for (size_t i = 0; i < count; i++)
    strcat(text, "0,,,\n");
  return parsed(text);
}

START_TEST(notes_end_at_100_and_the_last_counts_the_rest)
{
  ohm_sensor *sensor = with_mistakes(100);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 100);
  ck_assert_str_eq(ohm_sensor_note(sensor, 99), "a, line 103: row left out: it has no resistance");
  ohm_sensor_free(sensor);
  sensor = with_mistakes(105);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 100);
  ck_assert_str_eq(ohm_sensor_note(sensor, 98), "a, line 102: row left out: it has no resistance");
  ck_assert_str_eq(ohm_sensor_note(sensor, 99), "a: and 6 more of the kind");
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- what is no mistake ---- */

START_TEST(every_parameter_of_a_model_has_a_key)
{
  struct oc_sensor_build build;
  for (int model = 0; model < OC_MODELS; model++) {
    const struct oc_model_form *form = oc_model_form((enum oc_model)model);
    for (size_t i = 0; i < form->count; i++)
      ck_assert_msg(oc_sensor_build_number(&build, form->keys[i]) != NULL, "%s of %s",
                    form->keys[i], form->name);
  }
}
END_TEST

static void check_same_rows(const char *text) {
  ohm_sensor *sensor = parsed(text);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  char printed[400];
  ohm_sensor_print(sensor, printed, sizeof printed);
  ck_assert_str_eq(printed, "# name: a\n" HEADER TWO);
  ohm_sensor_free(sensor);
}

START_TEST(the_form_of_a_text_makes_no_difference)
{
  check_same_rows(HEADER TWO);
  check_same_rows("\xEF\xBB\xBF" HEADER TWO);
  check_same_rows("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\r\n25,9500,10000,10500\r\n"
                  "50,3300,3600,3900\r\n");
  check_same_rows("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\r25,9500,10000,10500\r"
                  "50,3300,3600,3900");
  check_same_rows("\"temp_c\",\"r_min_ohm\",\"r_nom_ohm\",\"r_max_ohm\"\n"
                  "\"25\",\"9500\",\"10000\",\"10500\"\n50, 3300 ,3.6e3,\t3900\n");
  check_same_rows("r_max_ohm,note,temp_c,r_nom_ohm,r_min_ohm\n10500,\"a, b\",25,10000,9500\n"
                  "3900,,50,3600,3300\n");
  check_same_rows(HEADER "25,9500,10000,10500,more,cells\n50,3300,3600,3900\n");
  check_same_rows(HEADER "50,3300,3600,3900\n25,9500,10000,10500\n");
  check_same_rows("# a remark\n# family: x\n#\n\n" HEADER "25,9500,10000,10500\n\n# one more\n"
                  "50,3300,3600,3900\n");
}
END_TEST

START_TEST(a_flag_other_than_suspect_is_no_mistake)
{
  ohm_sensor *sensor = parsed("temp_c,r_nom_ohm,flag\n0,30000,measured\n25,10000,ok\n50,3600,\n");
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  ck_assert_uint_eq(row_count(sensor), 3);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(nothing_is_read_past_the_length)
{
  static const char text[] = HEADER TWO;
  for (size_t length = 0; length <= sizeof text - 1; length++) {
    char *exact = malloc(length > 0 ? length : 1);
    memcpy(exact, text, length);
    ohm_sensor_free(ohm_sensor_parse(exact, length, "a", NULL));
    free(exact);
  }
}
END_TEST

/* ---- statuses ---- */

START_TEST(a_text_and_a_name_are_required)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_parse(NULL, 0, "a", &error));
  PROVOKES(ohm_sensor_parse, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_sensor_parse("", 0, NULL, &error));
  PROVOKES(ohm_sensor_parse, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_sensor_load(NULL, &error));
  PROVOKES(ohm_sensor_load, OHM_NULL_ARGUMENT, error.status);
}
END_TEST

/* A falling curve of that many rows. */
static char *long_table(size_t count) {
  size_t size = 64 + count * 40;
  char *text = malloc(size);
  int at = snprintf(text, size, "temp_c,r_nom_ohm\n");
  for (size_t i = 0; i < count; i++)
    at += snprintf(text + at, size - (size_t)at, "%.3f,%.2f\n", 0.05 * (double)i,
                   10000 - 2 * (double)i);
  return text;
}

START_TEST(a_table_may_have_4096_rows_and_no_more)
{
  char *text = long_table(4096);
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "a", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  ohm_sensor_free(sensor);
  free(text);
  text = long_table(4097);
  ck_assert_ptr_null(ohm_sensor_parse(text, strlen(text), "a", &error));
  PROVOKES(ohm_sensor_parse, OHM_TOO_LARGE, error.status);
  ck_assert_str_eq(error.message, "a, line 4098: more than 4096 rows: leave some out");
  free(text);
}
END_TEST

START_TEST(a_text_of_more_than_16_mib_is_refused)
{
  size_t length = 16u * 1024 * 1024;
  char *text = calloc(length + 1, 1);
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_parse(text, length + 1, "a", &error));
  ck_assert_int_eq(error.status, OHM_TOO_LARGE);
  ck_assert_ptr_null(ohm_sensor_parse(text, length, "a", &error));
  ck_assert_int_ne(error.status, OHM_TOO_LARGE);
  free(text);
}
END_TEST

/* ---- files ---- */

static void write_file(const char *name, const char *text) {
  FILE *file = fopen(name, "wb");
  ck_assert_ptr_nonnull(file);
  ck_assert_int_ge(fputs(text, file), 0);
  ck_assert_int_eq(fclose(file), 0);
}

static void check_load(const char *path, ohm_status status) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_load(path, &error);
  PROVOKES(ohm_sensor_load, status, error.status);
  ck_assert((sensor != NULL) == (status == OHM_OK));
  if (status != OHM_OK)
    ck_assert_int_eq(strncmp(error.message, path, strlen(path)), 0);
  ohm_sensor_free(sensor);
}

START_TEST(one_bad_file_of_a_folder_does_not_lose_the_others)
{
  char folder[] = "test_sensor_file.XXXXXX";
  ck_assert_ptr_nonnull(mkdtemp(folder));
  ck_assert_int_eq(chdir(folder), 0);
  char *large = long_table(4097);
  write_file("first.csv", HEADER TWO);
  write_file("header.csv", "t,r\n1,2\n");
  write_file("turn.csv", "temp_c,r_nom_ohm\n0,1\n1,2\n");
  write_file("large.csv", large);
  write_file("last.csv", BETA);
  check_load("first.csv", OHM_OK);
  ck_assert_ptr_null(ohm_sensor_load("header.csv", NULL));
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_load("header.csv", &error));
  PROVOKES(ohm_sensor_load, OHM_BAD_SYNTAX, error.status);
  ck_assert_ptr_null(ohm_sensor_load("turn.csv", &error));
  PROVOKES(ohm_sensor_load, OHM_BAD_DEFINITION, error.status);
  ck_assert_ptr_null(ohm_sensor_load("large.csv", &error));
  PROVOKES(ohm_sensor_load, OHM_TOO_LARGE, error.status);
  ck_assert_ptr_null(ohm_sensor_load("none.csv", &error));
  PROVOKES(ohm_sensor_load, OHM_CANNOT_OPEN, error.status);
  check_load("last.csv", OHM_OK);
  free(large);
  static const char *const names[] = {"first.csv", "header.csv", "turn.csv", "large.csv",
                                      "last.csv"};
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    ck_assert_int_eq(remove(names[i]), 0);
  ck_assert_int_eq(chdir(".."), 0);
  ck_assert_int_eq(rmdir(folder), 0);
}
END_TEST

START_TEST(bad_syntax_and_bad_definition_come_from_a_text_too)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_parse("t\n", 2, "a", &error));
  PROVOKES(ohm_sensor_parse, OHM_BAD_SYNTAX, error.status);
  ck_assert_ptr_null(ohm_sensor_parse("", 0, "a", &error));
  PROVOKES(ohm_sensor_parse, OHM_BAD_DEFINITION, error.status);
}
END_TEST

START_TEST(a_file_names_its_sensor_unless_it_says_so_itself)
{
  char *path = source_path("tests/sensors/ntc-2k46-at-20c-kawasaki-z750.csv");
  ohm_sensor *sensor = ohm_sensor_load(path, NULL);
  ck_assert_str_eq(ohm_sensor_name(sensor), "ntc-2k46-at-20c-kawasaki-z750");
  ohm_sensor_free(sensor);
  free(path);
  path = source_path("tables/ntc-2k45-20c.csv");
  sensor = ohm_sensor_load(path, NULL);
  ck_assert_str_eq(ohm_sensor_name(sensor), "ntc-2k45-20c");
  ohm_sensor_free(sensor);
  free(path);
}
END_TEST

/* ---- printed and read again ---- */

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  ck_assert_uint_eq(ohm_sensor_print(sensor, text, size), size - 1);
  return text;
}

/* The sensor is given back. */
static void check_reads_back(ohm_sensor *sensor) {
  ohm_error error;
  char *first = printed(sensor);
  ohm_sensor *again = ohm_sensor_parse(first, strlen(first), "another", &error);
  ck_assert_msg(again != NULL, "%s\n%s", error.message, first);
  char *second = printed(again);
  ck_assert_str_eq(first, second);
  ck_assert_uint_le(ohm_sensor_note_count(again), ohm_sensor_note_count(sensor));
  ck_assert_str_eq(ohm_sensor_name(sensor), ohm_sensor_name(again));
  double low_c;
  double high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  for (int i = -10; i <= 1010; i++) {
    double t_c = low_c + (high_c - low_c) * i / 1000;
    double a[3];
    double b[3];
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &a[0], &a[1], &a[2]),
                     ohm_sensor_band(again, t_c, &b[0], &b[1], &b[2]));
    for (int j = 0; j < 3; j++)
      ck_assert((isnan(a[j]) && isnan(b[j])) || (a[j] <= b[j] && b[j] <= a[j]));
  }
  free(second);
  free(first);
  ohm_sensor_free(again);
  ohm_sensor_free(sensor);
}

static void check_round_trip(const char *text, size_t length, const char *name) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, length, name, &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  check_reads_back(sensor);
}

START_TEST(a_printed_table_reads_back_with_the_same_curve_and_limits)
{
  enum { TABLE, OUTCOME, TABLE_CELLS = 7 };
  static struct row tables[ROWS_MAX];
  size_t count = rows_read("tests/sensors/expected.psv", TABLE_CELLS, tables, 0);
  ck_assert_uint_gt(count, 0);
  for (size_t i = 0; i < count; i++) {
    if (strcmp(tables[i].cell[OUTCOME], "loads") != 0)
      continue;
    char name[128];
    snprintf(name, sizeof name, "tests/sensors/%s.csv", tables[i].cell[TABLE]);
    char *path = source_path(name);
    ohm_sensor *sensor = ohm_sensor_load(path, NULL);
    ck_assert_msg(sensor != NULL, "%s", path);
    free(path);
    check_reads_back(sensor);
  }
}
END_TEST

START_TEST(a_sensor_printed_reads_back_equal_whatever_it_holds)
{
  static const char *const texts[] = {
      HEADER TWO,
      BETA,
      BETA "# tolerance: 1 % at 25 C, beta 0.75 %\n",
      "# tolerance: 0.3 K + 0.005 |t|\ntemp_c,r_nom_ohm\n0,30000\n50,3600\n",
      "# tolerance: 5 %\n" HEADER TWO,
      "# description: # name: x, \"quoted\", 21 \xC2\xB0"
      "C \xE2\x84\xA6\n" HEADER TWO,
      "# dissipation_mw_per_k: 0.1\n# kind: gauge\n# source: page 3\n" HEADER TWO,
      "# model: points\n" HEADER "-0,,30000.1,\n" TWO,
      "temp_c,r_min_ohm,r_max_ohm\n0.1,29000,31000\n33.3333333333333,7000,7000\n"};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    check_round_trip(texts[i], strlen(texts[i]), "a");
}
END_TEST

START_TEST(a_text_with_control_bytes_reads_back_equal)
{
  static const char text[] = "# description: \0x\n# source: a\0b\n# kind: \033[2J\n" HEADER TWO;
  check_round_trip(text, sizeof text - 1, "a");
  check_round_trip(HEADER TWO, strlen(HEADER TWO), "a\n# name: b");
}
END_TEST

START_TEST(a_sensor_that_is_printed_and_read_has_its_model)
{
  ohm_sensor *sensor = parsed(BETA);
  char *text = printed(sensor);
  ck_assert_str_eq(text, "# name: a\n" BETA);
  free(text);
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int mistakes = RUN_TESTS(
      "mistakes in a sensor file", a_header_that_lacks_a_column_is_told_with_its_line,
      too_few_rows_are_told, a_curve_that_turns_names_both_rows,
      a_bad_model_range_or_number_is_told_with_its_column, a_parameter_that_a_model_needs_is_named,
      a_model_with_rows_is_refused, a_model_that_makes_no_curve_is_refused_with_its_reason,
      a_bad_cell_costs_its_row_and_is_noted_with_its_place,
      a_row_that_cannot_be_used_is_noted_with_its_reason,
      a_line_that_cannot_be_used_is_noted_and_left_out, the_first_of_two_lines_counts,
      notes_carry_no_control_byte, notes_end_at_100_and_the_last_counts_the_rest);
  int files = RUN_TESTS(
      "sensor file", every_parameter_of_a_model_has_a_key, the_form_of_a_text_makes_no_difference,
      a_flag_other_than_suspect_is_no_mistake, nothing_is_read_past_the_length,
      a_text_and_a_name_are_required, a_table_may_have_4096_rows_and_no_more,
      a_text_of_more_than_16_mib_is_refused, one_bad_file_of_a_folder_does_not_lose_the_others,
      bad_syntax_and_bad_definition_come_from_a_text_too,
      a_file_names_its_sensor_unless_it_says_so_itself,
      a_sensor_printed_reads_back_equal_whatever_it_holds,
      a_printed_table_reads_back_with_the_same_curve_and_limits,
      a_text_with_control_bytes_reads_back_equal, a_sensor_that_is_printed_and_read_has_its_model);
  return mistakes | files;
}
