/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { RECORD_SIZE = 4000 };

static ohm_bench *bench_new(void) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  ck_assert_ptr_nonnull(bench);
  return bench;
}

static void read_well(ohm_bench *bench, const char *text) {
  ohm_error error;
  ck_assert_msg(ohm_bench_read(bench, text, NULL, &error) == OHM_OK, "%s", error.message);
}

static void set_well(ohm_bench *bench, int setting, const char *text) {
  ohm_error error;
  ck_assert_msg(ohm_bench_set(bench, setting, text, &error) == OHM_OK, "%s", error.message);
}

static const char *record_of(const ohm_bench *bench) {
  static char record[RECORD_SIZE];
  ck_assert_uint_lt(ohm_bench_print(bench, record, sizeof record), sizeof record);
  return record;
}

static ohm_bench *filled(void) {
  ohm_bench *bench = bench_new();
  set_well(bench, OHM_SETTING_FAN_C, "98C");
  set_well(bench, OHM_SETTING_METER, "0.8%+3@2000");
  read_well(bench, "2.31k@21.5C,sensor");
  read_well(bench, "0.97V,pin");
  read_well(bench, "1-2=480");
  read_well(bench, "fuse-look=good");
  return bench;
}

START_TEST(what_is_not_set_is_not_there)
{
  ohm_bench *bench = bench_new();
  for (size_t i = 0; i < ohm_setting_count(); i++)
    ck_assert_ptr_null(ohm_bench_setting(bench, ohm_setting_at(i)));
  ck_assert_uint_eq(ohm_bench_count(bench), 0);
  ck_assert_ptr_null(ohm_bench_reading(bench, 0));
  ck_assert_str_eq(record_of(bench), "");
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_setting_is_kept_as_it_was_written_and_can_be_unset)
{
  ohm_bench *bench = bench_new();
  set_well(bench, OHM_SETTING_FAN_C, "208F");
  ck_assert_str_eq(ohm_bench_setting(bench, OHM_SETTING_FAN_C), "208F");
  set_well(bench, OHM_SETTING_FAN_C, NULL);
  ck_assert_ptr_null(ohm_bench_setting(bench, OHM_SETTING_FAN_C));
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_setting_takes_its_number)
{
  ohm_bench *bench = bench_new();
  ohm_error error;
  ck_assert_int_eq(ohm_bench_set_number(bench, OHM_SETTING_FAN_C, 98, &error), OHM_OK);
  ck_assert_str_eq(ohm_bench_setting(bench, OHM_SETTING_FAN_C), "98C");
  ck_assert_int_eq(ohm_bench_set_number(bench, OHM_SETTING_PLACE, OHM_PLACE_MODULE, &error),
                   OHM_OK);
  ck_assert_str_eq(ohm_bench_setting(bench, OHM_SETTING_PLACE), "module");
  ck_assert_int_eq(ohm_bench_set_number(bench, OHM_SETTING_STOP, 0, &error), OHM_OK);
  ck_assert_str_eq(ohm_bench_setting(bench, OHM_SETTING_STOP), "0C");
  ohm_bench_free(bench);
}
END_TEST

START_TEST(after_a_mistake_the_bench_is_as_it_was)
{
  static const char *const bad[] = {"2.31k@hot", "", "1-1=5", "2.31k,here", "400C", "99V"};
  ohm_bench *bench = filled();
  char before[RECORD_SIZE];
  ohm_error error;
  strcpy(before, record_of(bench));
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
    ck_assert_int_ne(ohm_bench_read(bench, bad[i], NULL, &error), OHM_OK);
  for (size_t i = 0; i < ohm_setting_count(); i++)
    if (ohm_setting_kind_of(ohm_setting_at(i)) != OHM_SETTING_KIND_TEXT)
      ck_assert_int_ne(ohm_bench_set(bench, ohm_setting_at(i), "?", &error), OHM_OK);
  ck_assert_int_ne(ohm_bench_read_record(bench, "2.31k\nx\n", 8, &error), OHM_OK);
  ck_assert_str_eq(record_of(bench), before);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_record_read_back_is_equal)
{
  ohm_bench *bench = filled();
  ohm_bench *back = bench_new();
  char record[RECORD_SIZE];
  ohm_error error;
  ck_assert_int_eq(ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, 1e3 / 3, 20.1, NULL, &error),
                   OHM_OK);
  ck_assert_int_eq(ohm_bench_read_number(bench, OHM_QUANTITY_VOLTS, 0.1 + 0.2, NAN, NULL, &error),
                   OHM_OK);
  ck_assert_int_eq(ohm_bench_read_number(bench, OHM_QUANTITY_REPORTED, 91, NAN, NULL, &error),
                   OHM_OK);
  strcpy(record, record_of(bench));
  ck_assert_int_eq(ohm_bench_read_record(back, record, strlen(record), &error), OHM_OK);
  ck_assert_str_eq(record_of(back), record);
  ohm_bench_free(bench);
  ohm_bench_free(back);
}
END_TEST

START_TEST(a_record_may_hold_remarks_blank_lines_and_ends_of_any_kind)
{
  static const char record[] = "# the blue car\r\n\r\n# fan_c: 98C\r\n  2.31k@21.5C  \r\n"
                               "# of the setting: nothing\nfuse=renewed";
  ohm_bench *bench = bench_new();
  ohm_error error;
  ck_assert_msg(ohm_bench_read_record(bench, record, sizeof record - 1, &error) == OHM_OK, "%s",
                error.message);
  ck_assert_str_eq(record_of(bench), "# fan_c: 98C\n2.31k@21.5C\nfuse=renewed\n");
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_mistake_in_a_record_names_its_line)
{
  static const char record[] = "2.31k@21.5C\n\n# fan_c: 980C\n";
  ohm_bench *bench = bench_new();
  ohm_error error;
  ck_assert_int_eq(ohm_bench_read_record(bench, record, sizeof record - 1, &error),
                   OHM_OUT_OF_RANGE);
  ck_assert_int_eq(error.line, 3);
  ck_assert_ptr_nonnull(strstr(error.message, "fan_c"));
  ck_assert_uint_eq(ohm_bench_count(bench), 0);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(what_is_forgotten_makes_room_for_what_came_after)
{
  ohm_bench *bench = filled();
  size_t index = 99;
  ohm_error error;
  ck_assert_int_eq(ohm_bench_forget(bench, 1), OHM_OK);
  ck_assert_uint_eq(ohm_bench_count(bench), 3);
  ck_assert_str_eq(ohm_bench_reading(bench, 1), "1-2=480");
  ck_assert_int_eq(ohm_bench_read(bench, "91C", &index, &error), OHM_OK);
  ck_assert_uint_eq(index, 3);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_copy_stands_apart)
{
  ohm_error error;
  ohm_bench *bench = filled();
  ohm_bench *copy = ohm_bench_copy_new(bench, &error);
  char before[RECORD_SIZE];
  ck_assert_ptr_nonnull(copy);
  strcpy(before, record_of(bench));
  ck_assert_str_eq(record_of(copy), before);
  read_well(copy, "91C");
  set_well(copy, OHM_SETTING_FAN_C, NULL);
  ck_assert_str_eq(record_of(bench), before);
  ohm_bench_clear(bench);
  ck_assert_uint_eq(ohm_bench_count(copy), 5);
  ohm_bench_free(bench);
  ohm_bench_free(copy);
}
END_TEST

START_TEST(a_cleared_bench_is_a_new_one)
{
  ohm_bench *bench = filled();
  ohm_bench_clear(bench);
  ck_assert_str_eq(record_of(bench), "");
  read_well(bench, "2.31k");
  ck_assert_uint_eq(ohm_bench_count(bench), 1);
  ohm_bench_free(bench);
  ohm_bench_clear(NULL);
  ohm_bench_free(NULL);
}
END_TEST

START_TEST(an_outcome_is_held_against_the_circuit_in_use)
{
  ohm_error error;
  ohm_bench *bench = bench_new();
  ohm_circuit *circuit = ohm_circuit_built_in_load("radiator-switch", &error);
  ck_assert_int_eq(ohm_bench_use_circuit(bench, circuit), OHM_OK);
  read_well(bench, "starts=bad");
  ck_assert_int_eq(ohm_bench_read(bench, "starst=bad", NULL, &error), OHM_NOT_FOUND);
  ck_assert_ptr_nonnull(strstr(error.message, "starts"));
  ck_assert_int_eq(ohm_bench_read(bench, "starts=perhaps", NULL, &error), OHM_BAD_SYNTAX);
  ck_assert_uint_eq(ohm_bench_count(bench), 1);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(what_is_not_given_or_cannot_be_used_says_so)
{
  ohm_bench *bench = bench_new();
  ohm_error error;
  PROVOKES(ohm_bench_copy_new, OHM_NULL_ARGUMENT, (ohm_bench_copy_new(NULL, &error), error.status));
  PROVOKES(ohm_bench_set, OHM_NULL_ARGUMENT, ohm_bench_set(NULL, OHM_SETTING_FAN_C, "1C", &error));
  PROVOKES(ohm_bench_set, OHM_NOT_FOUND, ohm_bench_set(bench, 9999, "1", &error));
  PROVOKES(ohm_bench_set, OHM_NOT_FOUND, ohm_bench_set(bench, -1, NULL, &error));
  PROVOKES(ohm_bench_set, OHM_BAD_SYNTAX, ohm_bench_set(bench, OHM_SETTING_FAN_C, "97", &error));
  PROVOKES(ohm_bench_set, OHM_OUT_OF_RANGE, ohm_bench_set(bench, OHM_SETTING_FAN_C, "0C", &error));
  PROVOKES(ohm_bench_set_number, OHM_NULL_ARGUMENT,
           ohm_bench_set_number(NULL, OHM_SETTING_FAN_C, 1, &error));
  PROVOKES(ohm_bench_set_number, OHM_NOT_FOUND, ohm_bench_set_number(bench, 0, 1, &error));
  PROVOKES(ohm_bench_set_number, OHM_BAD_ARGUMENT,
           ohm_bench_set_number(bench, OHM_SETTING_FAN_C, NAN, &error));
  PROVOKES(ohm_bench_set_number, OHM_BAD_ARGUMENT,
           ohm_bench_set_number(bench, OHM_SETTING_METER, 1, &error));
  PROVOKES(ohm_bench_set_number, OHM_OUT_OF_RANGE,
           ohm_bench_set_number(bench, OHM_SETTING_PLACE, 17, &error));
  PROVOKES(ohm_bench_use_sensor, OHM_NULL_ARGUMENT, ohm_bench_use_sensor(NULL, NULL));
  PROVOKES(ohm_bench_use_history, OHM_NULL_ARGUMENT, ohm_bench_use_history(NULL, NULL));
  PROVOKES(ohm_bench_use_circuit, OHM_NULL_ARGUMENT, ohm_bench_use_circuit(NULL, NULL));
  PROVOKES(ohm_bench_compare, OHM_NULL_ARGUMENT, ohm_bench_compare(bench, NULL, &error));
  PROVOKES(ohm_bench_read, OHM_NULL_ARGUMENT, ohm_bench_read(bench, NULL, NULL, &error));
  PROVOKES(ohm_bench_read, OHM_BAD_SYNTAX, ohm_bench_read(bench, "x", NULL, &error));
  PROVOKES(ohm_bench_read, OHM_OUT_OF_RANGE, ohm_bench_read(bench, "99V", NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_NULL_ARGUMENT,
           ohm_bench_read_number(NULL, OHM_QUANTITY_OHMS, 1, NAN, NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_BAD_ARGUMENT,
           ohm_bench_read_number(bench, 0, 1, NAN, NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_BAD_ARGUMENT,
           ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, INFINITY, NAN, NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_OUT_OF_RANGE,
           ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, -1, NAN, NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_OUT_OF_RANGE,
           ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, 1, -300, NULL, &error));
  PROVOKES(ohm_bench_forget, OHM_NULL_ARGUMENT, ohm_bench_forget(NULL, 0));
  PROVOKES(ohm_bench_forget, OHM_NOT_FOUND, ohm_bench_forget(bench, 0));
  ck_assert_ptr_null(ohm_bench_setting(NULL, OHM_SETTING_FAN_C));
  ck_assert_uint_eq(ohm_bench_count(NULL), 0);
  ck_assert_uint_eq(ohm_bench_print(NULL, NULL, 0), 0);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_full_bench_takes_no_more)
{
  ohm_bench *bench = bench_new();
  ohm_error error;
  for (int i = 0; i < 512; i++)
    read_well(bench, "2.31k");
  PROVOKES(ohm_bench_read, OHM_TOO_LARGE, ohm_bench_read(bench, "2.31k", NULL, &error));
  PROVOKES(ohm_bench_read_number, OHM_TOO_LARGE,
           ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, 1, NAN, NULL, &error));
  ck_assert_uint_eq(ohm_bench_count(bench), 512);
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  for (int i = 0; i < 4096; i++)
    ck_assert_int_eq(ohm_bench_compare(bench, sensor, &error), OHM_OK);
  PROVOKES(ohm_bench_compare, OHM_TOO_LARGE, ohm_bench_compare(bench, sensor, &error));
  ohm_sensor_free(sensor);
  ohm_bench_free(bench);
}
END_TEST

static ohm_status record_status(ohm_bench *bench, const char *record) {
  ohm_error error;
  return ohm_bench_read_record(bench, record, record ? strlen(record) : 1, &error);
}

START_TEST(a_record_fails_as_its_lines_do)
{
  enum { LINES = 513 };
  char lines[2 * LINES + 1];
  ohm_error error;
  ohm_bench *bench = bench_new();
  ohm_circuit *circuit = ohm_circuit_built_in_load("radiator-switch", &error);
  ohm_bench_use_circuit(bench, circuit);
  for (int i = 0; i < LINES; i++)
    memcpy(lines + 2 * i, "5\n", 3);
  PROVOKES(ohm_bench_read_record, OHM_NULL_ARGUMENT, record_status(bench, NULL));
  PROVOKES(ohm_bench_read_record, OHM_BAD_SYNTAX, record_status(bench, "x"));
  PROVOKES(ohm_bench_read_record, OHM_OUT_OF_RANGE, record_status(bench, "99V"));
  PROVOKES(ohm_bench_read_record, OHM_NOT_FOUND, record_status(bench, "nothing=good"));
  PROVOKES(ohm_bench_read_record, OHM_TOO_LARGE, record_status(bench, lines));
  ck_assert_int_eq(ohm_bench_read_record(bench, "5\0005", 3, &error), OHM_BAD_SYNTAX);
  ck_assert_uint_eq(ohm_bench_count(bench), 0);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(a_circuits_names_are_looked_for)
{
  ohm_error error;
  ohm_bench *bench = bench_new();
  ohm_circuit *circuit = ohm_circuit_built_in_load("radiator-switch", &error);
  ohm_bench_use_circuit(bench, circuit);
  PROVOKES(ohm_bench_read, OHM_NOT_FOUND, ohm_bench_read(bench, "nothing=good", NULL, &error));
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(a_number_reads_as_the_same_number)
{
  static const double numbers[] = {0, 0.1, 187, 2300, 1e-7, 123456.789, 1e12};
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
    ohm_bench *bench = bench_new();
    ohm_error error;
    double back = NAN;
    ck_assert_int_eq(ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, numbers[i], NAN, NULL, &error),
                     OHM_OK);
    const char *text = ohm_bench_reading(bench, 0);
    ck_assert_int_eq(text[0], '=');
    ck_assert_int_eq(ohm_number_read(text + 1, strlen(text + 1), &back), OHM_OK);
    ck_assert(back == numbers[i]);
    ohm_bench_free(bench);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "bench", what_is_not_set_is_not_there, a_setting_is_kept_as_it_was_written_and_can_be_unset,
      a_setting_takes_its_number, after_a_mistake_the_bench_is_as_it_was,
      a_record_read_back_is_equal, a_record_may_hold_remarks_blank_lines_and_ends_of_any_kind,
      a_mistake_in_a_record_names_its_line, what_is_forgotten_makes_room_for_what_came_after,
      a_copy_stands_apart, a_cleared_bench_is_a_new_one,
      an_outcome_is_held_against_the_circuit_in_use, what_is_not_given_or_cannot_be_used_says_so,
      a_full_bench_takes_no_more, a_record_fails_as_its_lines_do, a_circuits_names_are_looked_for,
      a_number_reads_as_the_same_number);
}
