/* SPDX-License-Identifier: MIT */
#include "support.h"

#include <stdlib.h>
#include <string.h>

START_TEST(names_stand_in_order_and_end_with_null)
{
  size_t count = ohm_catalogue_count();
  ck_assert_uint_gt(count, 0);
  for (size_t i = 1; i < count; i++)
    ck_assert_int_lt(strcmp(ohm_catalogue_name(i - 1), ohm_catalogue_name(i)), 0);
  ck_assert_ptr_null(ohm_catalogue_name(count));
  ck_assert_ptr_null(ohm_catalogue_name((size_t)-1));
}
END_TEST

START_TEST(every_built_in_sensor_loads_under_its_name_without_a_note)
{
  for (size_t i = 0; i < ohm_catalogue_count(); i++) {
    ohm_error error;
    ohm_sensor *sensor = ohm_catalogue_load(ohm_catalogue_name(i), &error);
    ck_assert_msg(sensor != NULL, "%s", error.message);
    ck_assert_int_eq(error.status, OHM_OK);
    ck_assert_str_eq(ohm_sensor_name(sensor), ohm_catalogue_name(i));
    ck_assert_msg(ohm_sensor_note_count(sensor) == 0, "%s", ohm_sensor_note(sensor, 0));
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(every_built_in_sensor_says_what_it_is_and_where_it_was_printed)
{
  for (size_t i = 0; i < ohm_catalogue_count(); i++) {
    ohm_sensor *sensor = ohm_catalogue_load(ohm_catalogue_name(i), NULL);
    ck_assert_str_ne(ohm_sensor_description(sensor), "");
    ck_assert_str_ne(ohm_sensor_source(sensor), "");
    ck_assert_str_ne(ohm_sensor_kind(sensor), "");
    ohm_sensor_free(sensor);
  }
}
END_TEST

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  ck_assert_ptr_nonnull(text);
  ck_assert_uint_eq(ohm_sensor_print(sensor, text, size), size - 1);
  return text;
}

static void check_same(double a, double b) {
  ck_assert((isnan(a) && isnan(b)) || (a <= b && b <= a));
}

static void check_equal(const ohm_sensor *sensor, const ohm_sensor *again) {
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
      check_same(a[j], b[j]);
  }
}

START_TEST(every_built_in_sensor_printed_reads_back_equal)
{
  for (size_t i = 0; i < ohm_catalogue_count(); i++) {
    ohm_sensor *sensor = ohm_catalogue_load(ohm_catalogue_name(i), NULL);
    char *text = printed(sensor);
    ohm_sensor *again = ohm_sensor_parse(text, strlen(text), "again", NULL);
    ck_assert_ptr_nonnull(again);
    char *text_again = printed(again);
    ck_assert_str_eq(text, text_again);
    check_equal(sensor, again);
    free(text_again);
    free(text);
    ohm_sensor_free(again);
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(a_slip_of_the_pen_is_near_its_name)
{
  ck_assert_str_eq(ohm_catalogue_nearest("NTC-2K45-20C"), "ntc-2k45-20c");
  ck_assert_str_eq(ohm_catalogue_nearest("ntc-2k54-20c"), "ntc-2k45-20c");
  for (size_t i = 0; i < ohm_catalogue_count(); i++)
    ck_assert_str_eq(ohm_catalogue_nearest(ohm_catalogue_name(i)), ohm_catalogue_name(i));
}
END_TEST

START_TEST(what_is_like_no_name_has_none_near)
{
  ck_assert_ptr_null(ohm_catalogue_nearest(NULL));
  ck_assert_ptr_null(ohm_catalogue_nearest(""));
  ck_assert_ptr_null(ohm_catalogue_nearest("thermostat housing"));
}
END_TEST

START_TEST(an_unknown_name_is_offered_the_nearest)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_catalogue_load("ntc-2k45-20", &error));
  PROVOKES(ohm_catalogue_load, OHM_NOT_FOUND, error.status);
  ck_assert_str_eq(error.message, "no sensor is called ntc-2k45-20; did you mean ntc-2k45-20c?");
}
END_TEST

START_TEST(a_name_like_none_is_sent_to_the_list)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_catalogue_load("thermostat\nhousing", &error));
  ck_assert_int_eq(error.status, OHM_NOT_FOUND);
  ck_assert_str_eq(error.message,
                   "no sensor is called thermostat?housing; look in the list of sensors");
  ck_assert_ptr_null(ohm_catalogue_load("thermostat", NULL));
}
END_TEST

START_TEST(a_very_long_name_is_quoted_in_part)
{
  static char name[100000];
  memset(name, 'n', sizeof name - 1);
  ohm_error error;
  ck_assert_ptr_null(ohm_catalogue_load(name, &error));
  ck_assert_int_eq(error.status, OHM_NOT_FOUND);
  ck_assert_uint_lt(strlen(error.message), 150);
}
END_TEST

START_TEST(no_name_is_no_sensor)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_catalogue_load(NULL, &error));
  PROVOKES(ohm_catalogue_load, OHM_NULL_ARGUMENT, error.status);
}
END_TEST

START_TEST(the_tables_have_a_version)
{ ck_assert_str_ne(ohm_tables_version(), ""); }
END_TEST

int main(void) {
  return RUN_TESTS("catalogue", names_stand_in_order_and_end_with_null,
                   every_built_in_sensor_loads_under_its_name_without_a_note,
                   every_built_in_sensor_says_what_it_is_and_where_it_was_printed,
                   every_built_in_sensor_printed_reads_back_equal,
                   a_slip_of_the_pen_is_near_its_name, what_is_like_no_name_has_none_near,
                   an_unknown_name_is_offered_the_nearest, a_name_like_none_is_sent_to_the_list,
                   a_very_long_name_is_quoted_in_part, no_name_is_no_sensor,
                   the_tables_have_a_version);
}
