/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static ohm_history *parsed(const char *text) {
  ohm_error error;
  ohm_history *history = ohm_history_parse(text, strlen(text), "log", &error);
  if (!history)
    ck_abort_msg("%s", error.message);
  return history;
}

static void check_point(const ohm_history *history, size_t index, double after_h, double t_c) {
  double got_h, got_c;
  PROVOKES(ohm_history_point, OHM_OK, ohm_history_point(history, index, &got_h, &got_c));
  CHECK_NEAR(got_h, after_h, 1e-8);
  CHECK_NEAR(got_c, t_c, 1e-12);
}

static ohm_status status_of(const char *text, const char *part) {
  ohm_error error;
  ohm_history *history = ohm_history_parse(text, strlen(text), "log", &error);
  ck_assert_ptr_null(history);
  ck_assert_msg(strstr(error.message, part) != NULL, "no \"%s\" in: %s", part, error.message);
  return (ohm_status)error.status;
}

/* ---- what a logger writes ---- */

START_TEST(hours_after_the_stop_are_read)
{
  ohm_history *history = parsed("# a logger\nhours,temp_c\n0,21.5\n1.5,18\n7,9\n");
  ck_assert_uint_eq(ohm_history_count(history), 3);
  check_point(history, 0, 0, 21.5);
  check_point(history, 2, 7, 9);
  ohm_history_free(history);
}
END_TEST

START_TEST(minutes_and_fahrenheit_are_read_in_any_order_of_columns)
{
  ohm_history *history = parsed("humidity,temp_f,minutes\n40,50,0\n41,41,90\n");
  check_point(history, 0, 0, 10);
  check_point(history, 1, 1.5, 5);
  ohm_history_free(history);
}
END_TEST

START_TEST(times_of_a_clock_count_from_the_first_row_and_pass_midnight)
{
  ohm_history *history = parsed("time,temp_c\n22:30,9\n23:30:30,8\n00:30,7\n6:30,5\n23:00,4\n");
  check_point(history, 0, 0, 9);
  check_point(history, 1, 1 + 30 / 3600.0, 8);
  check_point(history, 2, 2, 7);
  check_point(history, 3, 8, 5);
  check_point(history, 4, 24.5, 4);
  ohm_history_free(history);
}
END_TEST

START_TEST(times_of_a_clock_count_from_the_stop_that_was_told)
{
  ohm_history *history = parsed("# stopped: 21:00\ntime,temp_c\n20:00,9\n22:00,8\n");
  check_point(history, 0, -1, 9);
  check_point(history, 1, 1, 8);
  ohm_history_free(history);
  history = parsed("# stopped: 23:30\ntime,temp_c\n00:30,9\n02:00,8\n");
  check_point(history, 0, 1, 9);
  ohm_history_free(history);
  history = parsed("# stopped: 01:00\ntime,temp_c\n23:00,9\n02:00,8\n");
  check_point(history, 0, -2, 9);
  check_point(history, 1, 1, 8);
  ohm_history_free(history);
}
END_TEST

START_TEST(dates_are_counted_over_months_and_leap_years)
{
  ohm_history *history = parsed("time,temp_c\n2024-02-28 23:00,1\n2024-03-01T01:00,2\n");
  check_point(history, 1, 26, 2);
  ohm_history_free(history);
  history = parsed("# stopped: 2023-12-31 23:00\ntime,temp_c\n2024-01-01 01:00,1\n");
  check_point(history, 0, 2, 1);
  ohm_history_free(history);
  history = parsed("# stopped: 22:00\ntime,temp_c\n2023-03-01 01:00,1\n2023-03-01 02:00,1\n");
  check_point(history, 0, 3, 1);
  ohm_history_free(history);
}
END_TEST

START_TEST(a_history_is_made_of_arrays_too)
{
  static const double after_h[] = {-1, 2};
  static const double t_c[] = {20, 10};
  ohm_history *history = ohm_history_new(after_h, t_c, 2, NULL);
  check_point(history, 0, -1, 20);
  check_point(history, 1, 2, 10);
  ohm_history_free(history);
}
END_TEST

START_TEST(a_file_is_read_like_its_text)
{
  char *path = source_path("tests/sensors/ntc-2k45-at-20c-toyota-yaris-2007.csv");
  ohm_error error;
  ck_assert_ptr_null(ohm_history_load(path, &error));
  PROVOKES(ohm_history_load, OHM_BAD_SYNTAX, error.status);
  free(path);
  path = source_path("tests/fuzz/corpus/history/clock");
  ohm_history *history = ohm_history_load(path, &error);
  ck_assert_msg(history != NULL, "%s", error.message);
  ck_assert_uint_gt(ohm_history_count(history), 2);
  ohm_history_free(history);
  free(path);
}
END_TEST

/* ---- what it refuses, and where ---- */

START_TEST(a_header_row_without_times_or_temperatures_is_refused)
{
  PROVOKES(ohm_history_parse, OHM_BAD_SYNTAX,
           status_of("when,temp_c\n1,2\n", "no column of times"));
  status_of("hours,t\n1,2\n", "no column of temperatures");
  status_of("hours,minutes,temp_c\n1,2,3\n", "twice");
  status_of("hours,temp_f,temp_c\n1,2,3\n", "twice");
}
END_TEST

START_TEST(a_cell_that_cannot_be_read_is_named_with_its_place)
{
  ohm_error error;
  static const char text[] = "hours,temp_c\n0,10\n1,cold\n";
  ck_assert_ptr_null(ohm_history_parse(text, sizeof text - 1, "log", &error));
  ck_assert_int_eq(error.line, 3);
  ck_assert_int_eq(error.column, 3);
  ck_assert_ptr_nonnull(strstr(error.message, "\"cold\""));
  status_of("hours,temp_c\nnoon,10\n", "is no count of hours");
  status_of("hours,temp_c\n1\n", "shorter than the header row");
  status_of("hours,temp_c\n1,\"2\n", "never closed");
  status_of("time,temp_c\n25:00,10\n", "is no time of a clock");
  status_of("time,temp_c\n12:60,10\n", "is no time of a clock");
  status_of("time,temp_c\n2024-13-01 12:00,10\n", "is no time of a clock");
  status_of("time,temp_c\n2024-1-01 12:00,10\n", "is no time of a clock");
  status_of("time,temp_c\n12:00x,10\n", "is no time of a clock");
  status_of("time,temp_c\n12:00,10\n2024-01-01 12:00,10\n", "unlike the rows before");
  status_of("# stopped: noon\ntime,temp_c\n12:00,10\n", "is no time of a clock");
}
END_TEST

START_TEST(times_that_do_not_rise_are_refused)
{
  PROVOKES(ohm_history_parse, OHM_BAD_DEFINITION,
           status_of("hours,temp_c\n1,10\n1,9\n", "not after the row before"));
  status_of("time,temp_c\n2024-01-01 12:00,9\n2024-01-01 11:00,9\n", "not after the row before");
  status_of("", "no row");
  status_of("hours,temp_c\n", "no row");
}
END_TEST

START_TEST(what_lies_outside_is_refused)
{
  PROVOKES(ohm_history_parse, OHM_OUT_OF_RANGE,
           status_of("hours,temp_c\n1,-274\n", "is no temperature"));
  status_of("hours,temp_c\n1,1001\n", "is no temperature");
  status_of("hours,temp_c\n1001,10\n", "further from the stop");
  status_of("time,temp_c\n2024-01-01 12:00,9\n2025-01-01 11:00,9\n", "further from the stop");
}
END_TEST

START_TEST(more_rows_than_4096_are_refused)
{
  size_t room = 100000, length = 0;
  char *text = malloc(room);
  ck_assert_ptr_nonnull(text);
  length += (size_t)snprintf(text, room, "minutes,temp_c\n");
  for (int i = 0; i < 4097; i++)
    length += (size_t)snprintf(text + length, room - length, "%d,10\n", i);
  PROVOKES(ohm_history_parse, OHM_TOO_LARGE, status_of(text, "4096"));
  free(text);
  ohm_error error;
  ck_assert_ptr_null(ohm_history_parse("", (size_t)1 << 25, "log", &error));
  ck_assert_int_eq(error.status, OHM_TOO_LARGE);
}
END_TEST

START_TEST(arrays_that_cannot_be_used_are_refused)
{
  double after_h[] = {0, 1, 2};
  double t_c[] = {10, 10, 10};
  ohm_error error;
  ck_assert_ptr_null(ohm_history_new(NULL, t_c, 3, &error));
  PROVOKES(ohm_history_new, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_history_new(after_h, NULL, 3, &error));
  ck_assert_ptr_null(ohm_history_new(after_h, t_c, 0, &error));
  PROVOKES(ohm_history_new, OHM_BAD_DEFINITION, error.status);
  ck_assert_ptr_null(ohm_history_new(after_h, t_c, 4097, &error));
  PROVOKES(ohm_history_new, OHM_TOO_LARGE, error.status);
  static const double special[] = {NAN, INFINITY, -INFINITY, -1001, 1001};
  for (size_t i = 0; i < 5; i++) {
    after_h[1] = special[i];
    ck_assert_ptr_null(ohm_history_new(after_h, t_c, 3, &error));
    PROVOKES(ohm_history_new, OHM_BAD_ARGUMENT, error.status);
    after_h[1] = 1;
    t_c[1] = special[i];
    ck_assert_ptr_null(ohm_history_new(after_h, t_c, 3, &error));
    ck_assert_int_eq(error.status, OHM_BAD_ARGUMENT);
    t_c[1] = 10;
  }
  after_h[1] = 0;
  ck_assert_ptr_null(ohm_history_new(after_h, t_c, 3, &error));
  ck_assert_int_eq(error.status, OHM_BAD_DEFINITION);
}
END_TEST

START_TEST(nothing_is_asked_of_no_history)
{
  double after_h = 0, t_c = 0;
  ohm_error error;
  PROVOKES(ohm_history_point, OHM_NULL_ARGUMENT, ohm_history_point(NULL, 0, &after_h, &t_c));
  ck_assert(isnan(after_h) && isnan(t_c));
  ck_assert_uint_eq(ohm_history_count(NULL), 0);
  ohm_history_free(NULL);
  ck_assert_ptr_null(ohm_history_parse(NULL, 0, "log", &error));
  PROVOKES(ohm_history_parse, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_history_parse("", 0, NULL, NULL));
  ck_assert_ptr_null(ohm_history_load(NULL, &error));
  PROVOKES(ohm_history_load, OHM_NULL_ARGUMENT, error.status);
  ck_assert_ptr_null(ohm_history_load("no-such-file", &error));
  PROVOKES(ohm_history_load, OHM_CANNOT_OPEN, error.status);
}
END_TEST

/* The statuses of a text, asked of a file that holds it. */
static int status_of_file(const char *text, size_t repeats) {
  ohm_error error;
  const char *path = "tests/test_history.csv";
  FILE *file = fopen(path, "wb");
  ck_assert_ptr_nonnull(file);
  fputs(text, file);
  for (size_t i = 0; i < repeats; i++)
    fprintf(file, "%zu,10\n", i);
  fclose(file);
  ck_assert_ptr_null(ohm_history_load(path, &error));
  remove(path);
  return error.status;
}

START_TEST(a_file_is_refused_like_its_text)
{
  PROVOKES(ohm_history_load, OHM_OUT_OF_RANGE, status_of_file("hours,temp_c\n1,-300\n", 0));
  PROVOKES(ohm_history_load, OHM_BAD_DEFINITION, status_of_file("hours,temp_c\n", 0));
  PROVOKES(ohm_history_load, OHM_TOO_LARGE, status_of_file("minutes,temp_c\n", 5000));
}
END_TEST

/* ---- cooling in it ---- */

START_TEST(cooling_in_a_history_lags_behind_it)
{
  ohm_history *history = parsed("hours,temp_c\n-2,30\n2,10\n8,10\n");
  double t_c;
  /* Straight from 20 to 10 in 2 h, then still: by hand. */
  double at_two = 10 + 5 * 2 + (90 - 20 - 5 * 2) * exp(-1);
  PROVOKES(ohm_history_cooling, OHM_OK, ohm_history_cooling(history, 90, 2, 8, &t_c));
  CHECK_NEAR(t_c, 10 + (at_two - 10) * exp(-3), 1e-12);
  PROVOKES(ohm_history_cooling, OHM_OUT_OF_RANGE, ohm_history_cooling(history, 90, 2, 8.1, &t_c));
  ck_assert(isnan(t_c));
  ck_assert_int_eq(ohm_history_cooling(history, 90, 2, -1, &t_c), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_history_cooling(history, 90, 0, 8, &t_c), OHM_OUT_OF_RANGE);
  ck_assert_int_eq(ohm_history_cooling(history, 1001, 2, 8, &t_c), OHM_OUT_OF_RANGE);
  static const double special[] = {NAN, INFINITY, -INFINITY};
  for (size_t i = 0; i < 3; i++) {
    PROVOKES(ohm_history_cooling, OHM_BAD_ARGUMENT,
             ohm_history_cooling(history, special[i], 2, 8, &t_c));
    ck_assert_int_eq(ohm_history_cooling(history, 90, special[i], 8, &t_c), OHM_BAD_ARGUMENT);
    ck_assert_int_eq(ohm_history_cooling(history, 90, 2, special[i], &t_c), OHM_BAD_ARGUMENT);
  }
  PROVOKES(ohm_history_cooling, OHM_NULL_ARGUMENT, ohm_history_cooling(NULL, 90, 2, 8, &t_c));
  ck_assert_int_eq(ohm_history_cooling(history, 90, 2, 8, NULL), OHM_NULL_ARGUMENT);
  double after_h;
  PROVOKES(ohm_history_point, OHM_NOT_FOUND, ohm_history_point(history, 3, &after_h, NULL));
  ck_assert(isnan(after_h));
  ohm_history_free(history);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "history", hours_after_the_stop_are_read,
      minutes_and_fahrenheit_are_read_in_any_order_of_columns,
      times_of_a_clock_count_from_the_first_row_and_pass_midnight,
      times_of_a_clock_count_from_the_stop_that_was_told,
      dates_are_counted_over_months_and_leap_years, a_history_is_made_of_arrays_too,
      a_file_is_read_like_its_text, a_header_row_without_times_or_temperatures_is_refused,
      a_cell_that_cannot_be_read_is_named_with_its_place, times_that_do_not_rise_are_refused,
      what_lies_outside_is_refused, more_rows_than_4096_are_refused,
      arrays_that_cannot_be_used_are_refused, nothing_is_asked_of_no_history,
      a_file_is_refused_like_its_text, cooling_in_a_history_lags_behind_it);
}
