/* SPDX-License-Identifier: MIT */
/* The verb, from the readings on a bench to the answer. */
#include "../support.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/answers/bath.h"
#include "../../lib/bench/answer.h"

static ohm_sensor *sensor;

static ohm_bench *bench_with(const char *const *readings, size_t count) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  if (!sensor)
    sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench_use_sensor(bench, sensor);
  for (size_t i = 0; i < count; i++)
    ck_assert_msg(ohm_bench_read(bench, readings[i], NULL, &error) == OHM_OK, "%s", error.message);
  return bench;
}

static ohm_answer *checked(const ohm_bench *bench) {
  ohm_error error;
  ohm_answer *answer = ohm_bench_check(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  return answer;
}

START_TEST(a_check_takes_fifteen_lines)
{
  ohm_error error;
  ohm_sensor *own = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, own);
  if (ohm_bench_read(bench, "2.31k@21.5C,sensor", NULL, &error) != OHM_OK)
    ck_abort_msg("%s", error.message);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  if (!answer)
    ck_abort_msg("%s", error.message);
  ck_assert_str_eq(ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_VERDICT, 0), "within");
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(own);
}
END_TEST

START_TEST(a_bench_says_what_the_room_below_says)
{
  static const char *const readings[] = {"2.31k@21.5C,sensor"};
  ohm_bench *bench = bench_with(readings, 1);
  ohm_answer *answer = checked(bench);
  struct oc_arena arena = {0};
  ohm_finding finding = oc_finding_in(&arena);
  oc_reading reading;
  oc_reference reference;
  oc_check check = OC_CHECK_INIT;
  check.place = OHM_PLACE_SENSOR;
  ck_assert_int_eq(oc_reading_read("2.31k", &reading, NULL), OHM_OK);
  ck_assert_int_eq(oc_reference_read("21.5C", &reference, NULL), OHM_OK);
  ck_assert_int_eq(oc_bath_check(sensor, &reading, NULL, &reference, &check, &finding), OHM_OK);
  for (size_t i = 0; i < ohm_field_count(); i++) {
    int field = ohm_field_at(i);
    double here = ohm_finding_number(ohm_answer_finding(answer), field);
    double there = ohm_finding_number(&finding, field);
    ck_assert_msg((isnan(here) && isnan(there)) || here == there, "%s", ohm_field_name(field));
  }
  oc_arena_free(&arena);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(several_readings_have_a_finding_each_in_their_order)
{
  static const char *const readings[] = {"2.31k@21.5C", "330@80C"};
  ohm_bench *bench = bench_with(readings, 2);
  ohm_answer *answer = checked(bench);
  ck_assert_uint_eq(ohm_answer_count(answer, OHM_GROUP_READINGS), 2);
  CHECK_NEAR(ohm_finding_number(ohm_answer_member(answer, OHM_GROUP_READINGS, 1), OHM_FIELD_AT_C),
             80, 0);
  CHECK_NEAR(ohm_finding_number(ohm_answer_finding(answer), OHM_FIELD_READINGS), 2, 0);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(every_setting_of_a_check_is_looked_at)
{
  static const char *const readings[] = {"2.61k@21.5C"};
  static const struct {
    int setting;
    const char *text;
    int field;
    double number;
  } settings[] = {
      {OHM_SETTING_LEVEL, "0.9", OHM_FIELD_LEVEL, 0.9},
      {OHM_SETTING_FAN_C, "92C", OHM_FIELD_FAN_C, 92},
      {OHM_SETTING_LIMIT_K, "3", OHM_FIELD_LIMIT_K, 3},
      {OHM_SETTING_TOLERANCE_PERCENT, "2%", OHM_FIELD_TOLERANCE_PERCENT, 2},
      {OHM_SETTING_LEADS, "0.7+-0.1", OHM_FIELD_LEAD_OHM, 0.7},
      {OHM_SETTING_METER, "1%+0", OHM_FIELD_METER_LIMIT_OHM, 26.1 + 10 / 2.0},
      {OHM_SETTING_U_AT_K, "0.25", OHM_FIELD_REFERENCE_U_K, 0.25},
  };
  for (size_t i = 0; i < sizeof settings / sizeof settings[0]; i++) {
    ohm_error error;
    ohm_bench *bench = bench_with(readings, 1);
    ck_assert_int_eq(ohm_bench_set(bench, settings[i].setting, settings[i].text, &error), OHM_OK);
    ohm_answer *answer = checked(bench);
    CHECK_NEAR(ohm_finding_number(ohm_answer_finding(answer), settings[i].field),
               settings[i].number, 1e-9);
    ohm_answer_free(answer);
    ohm_bench_free(bench);
  }
}
END_TEST

START_TEST(a_band_and_a_place_are_looked_at)
{
  static const char *const readings[] = {"2.31k@21.5C"};
  ohm_error error;
  ohm_bench *bench = bench_with(readings, 1);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_BAND, "toyota-yaris-2007", &error), OHM_OK);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_PLACE, "module", &error), OHM_OK);
  ohm_answer *answer = checked(bench);
  const ohm_finding *finding = ohm_answer_finding(answer);
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_BAND, 0), "toyota-yaris-2007");
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_PLACE, 0), "module");
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}
END_TEST

START_TEST(a_loop_over_numbers_needs_no_text)
{
  ohm_error error;
  ohm_bench *bench = bench_with(NULL, 0);
  size_t index;
  for (int i = 0; i < 20; i++) {
    double r_ohm;
    ohm_curve_resistance(ohm_sensor_curve(sensor), 20 + i, &r_ohm);
    ck_assert_int_eq(ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, r_ohm, 20 + i, &index, &error),
                     OHM_OK);
    ohm_answer *answer = checked(bench);
    CHECK_NEAR(ohm_finding_number(ohm_answer_finding(answer), OHM_FIELD_AT_C), 20 + i, 0);
    ck_assert_int_eq(ohm_finding_verdict(ohm_answer_finding(answer)), OHM_WITHIN);
    ohm_answer_free(answer);
    ck_assert_int_eq(ohm_bench_forget(bench, index), OHM_OK);
  }
  ohm_bench_free(bench);
}
END_TEST

START_TEST(the_budget_is_of_a_check)
{
  static const char *const readings[] = {"2.31k@21.5C"};
  ohm_bench *bench = bench_with(readings, 1);
  ohm_answer *answer = checked(bench);
  char text[4000];
  ck_assert_uint_gt(ohm_answer_print_budget(answer, text, sizeof text), 100);
  ck_assert_ptr_nonnull(strstr(text, "p(within)"));
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}
END_TEST

int main(void) {
  return RUN_TESTS("check", a_check_takes_fifteen_lines, a_bench_says_what_the_room_below_says,
                   several_readings_have_a_finding_each_in_their_order,
                   every_setting_of_a_check_is_looked_at, a_band_and_a_place_are_looked_at,
                   a_loop_over_numbers_needs_no_text, the_budget_is_of_a_check);
}
