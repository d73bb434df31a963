/* SPDX-License-Identifier: MIT */
/* What every verb takes from a bench, and what it says when it is not there. */
#include "../support.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

typedef ohm_answer *verb_function(const ohm_bench *bench, ohm_error *error);

static ohm_sensor *sensor;
static ohm_error last;

/* "-" begins the name of a setting, whose value follows. */
static ohm_bench *bench_with(const char *words) {
  char copy[400];
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  snprintf(copy, sizeof copy, "%s", words);
  for (char *word = strtok(copy, " "); word; word = strtok(NULL, " ")) {
    if (word[0] == '-' && !strchr(word, '='))
      ck_assert_msg(ohm_bench_set(bench, ohm_setting_named(word + 1), strtok(NULL, " "), &error) ==
                        OHM_OK,
                    "%s", error.message);
    else
      ck_assert_msg(ohm_bench_read(bench, word, NULL, &error) == OHM_OK, "%s", error.message);
  }
  return bench;
}

/* The status of a verb that is asked of a bench with a sensor and one to compare with. */
static int status_of(verb_function *verb, const char *words) {
  ohm_bench *bench = bench_with(words);
  if (!sensor)
    sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench_use_sensor(bench, sensor);
  ohm_bench_compare(bench, sensor, NULL);
  ohm_answer *answer = verb(bench, &last);
  ck_assert(answer ? last.status == OHM_OK : strlen(last.message) > 10);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  return last.status;
}

static int bare_status(verb_function *verb) {
  ohm_bench *bench = bench_with("2.31k@21.5C");
  ohm_answer *answer = verb(bench, &last);
  ck_assert_ptr_null(answer);
  ohm_bench_free(bench);
  return last.status;
}

static int null_status(verb_function *verb) {
  ck_assert_ptr_null(verb(NULL, &last));
  return last.status;
}

static void says(const char *part) {
  ck_assert_msg(strstr(last.message, part) != NULL, "no \"%s\" in: %s", part, last.message);
}

START_TEST(no_bench_is_told_by_every_verb)
{
  PROVOKES(ohm_bench_check, OHM_NULL_ARGUMENT, null_status(ohm_bench_check));
  PROVOKES(ohm_bench_expect, OHM_NULL_ARGUMENT, null_status(ohm_bench_expect));
  PROVOKES(ohm_bench_identify, OHM_NULL_ARGUMENT, null_status(ohm_bench_identify));
  PROVOKES(ohm_bench_pins, OHM_NULL_ARGUMENT, null_status(ohm_bench_pins));
  PROVOKES(ohm_bench_explain, OHM_NULL_ARGUMENT, null_status(ohm_bench_explain));
  PROVOKES(ohm_bench_soak, OHM_NULL_ARGUMENT, null_status(ohm_bench_soak));
  PROVOKES(ohm_bench_signal, OHM_NULL_ARGUMENT, null_status(ohm_bench_signal));
  PROVOKES(ohm_bench_substitute, OHM_NULL_ARGUMENT, null_status(ohm_bench_substitute));
  PROVOKES(ohm_bench_loom, OHM_NULL_ARGUMENT, null_status(ohm_bench_loom));
  PROVOKES(ohm_bench_fanpoint, OHM_NULL_ARGUMENT, null_status(ohm_bench_fanpoint));
  PROVOKES(ohm_bench_isolate, OHM_NULL_ARGUMENT, null_status(ohm_bench_isolate));
  PROVOKES(ohm_bench_measure, OHM_NULL_ARGUMENT, null_status(ohm_bench_measure));
}
END_TEST

START_TEST(a_missing_sensor_or_circuit_is_told)
{
  PROVOKES(ohm_bench_check, OHM_NOT_FOUND, bare_status(ohm_bench_check));
  says("check needs a sensor");
  PROVOKES(ohm_bench_identify, OHM_NOT_FOUND, bare_status(ohm_bench_identify));
  says("compare");
  PROVOKES(ohm_bench_pins, OHM_NOT_FOUND, bare_status(ohm_bench_pins));
  PROVOKES(ohm_bench_explain, OHM_NOT_FOUND, bare_status(ohm_bench_explain));
  PROVOKES(ohm_bench_soak, OHM_NOT_FOUND, bare_status(ohm_bench_soak));
  PROVOKES(ohm_bench_signal, OHM_NOT_FOUND, bare_status(ohm_bench_signal));
  PROVOKES(ohm_bench_substitute, OHM_NOT_FOUND, bare_status(ohm_bench_substitute));
  PROVOKES(ohm_bench_loom, OHM_NOT_FOUND, bare_status(ohm_bench_loom));
  PROVOKES(ohm_bench_fanpoint, OHM_NOT_FOUND, bare_status(ohm_bench_fanpoint));
  PROVOKES(ohm_bench_isolate, OHM_NOT_FOUND, bare_status(ohm_bench_isolate));
  says("circuit");
}
END_TEST

START_TEST(a_missing_reading_is_told_with_an_example)
{
  ck_assert_int_eq(status_of(ohm_bench_check, "0.97V"), OHM_NOT_FOUND);
  says("2.31k@21.5C");
  PROVOKES(ohm_bench_measure, OHM_NOT_FOUND, status_of(ohm_bench_measure, "91C"));
  ck_assert_int_eq(status_of(ohm_bench_pins, "2.31k@21.5C"), OHM_NOT_FOUND);
  says("1-2=2.31k");
  ck_assert_int_eq(status_of(ohm_bench_signal, ""), OHM_NOT_FOUND);
  says("0.97V");
  ck_assert_int_eq(status_of(ohm_bench_loom, "179.4@93C"), OHM_NOT_FOUND);
  says("179.4@93C");
}
END_TEST

START_TEST(a_missing_temperature_is_told_with_the_reading)
{
  ck_assert_int_eq(status_of(ohm_bench_check, "2.31k"), OHM_NOT_FOUND);
  says("2.31k is missing");
  ck_assert_int_eq(status_of(ohm_bench_check, "2.31k -at 21.5C"), OHM_OK);
  ck_assert_int_eq(status_of(ohm_bench_pins, "1-2=480"), OHM_NOT_FOUND);
  ck_assert_int_eq(status_of(ohm_bench_soak, "3.9k -after_h 7"), OHM_NOT_FOUND);
  says("air");
  ck_assert_int_eq(status_of(ohm_bench_soak, "3.9k -air 9C"), OHM_NOT_FOUND);
  says("after_h");
}
END_TEST

START_TEST(readings_at_different_places_are_refused)
{
  PROVOKES(ohm_bench_check, OHM_BAD_ARGUMENT,
           status_of(ohm_bench_check, "2.31k@21.5C,sensor 330@80C,plug_on"));
  says("different places");
  PROVOKES(ohm_bench_explain, OHM_BAD_ARGUMENT,
           status_of(ohm_bench_explain, "2.31k@21.5C,sensor 330@80C,plug_on"));
  PROVOKES(ohm_bench_identify, OHM_BAD_ARGUMENT,
           status_of(ohm_bench_identify, "2.31k@21.5C,sensor 330@80C"));
  ck_assert_int_eq(status_of(ohm_bench_check, "2.31k@21.5C,sensor 330@80C -place sensor"), OHM_OK);
}
END_TEST

START_TEST(settings_that_exclude_each_other_are_refused_by_the_verb)
{
  ck_assert_int_eq(status_of(ohm_bench_check, "2.31k@21.5C -band audi-g62 -tolerance_percent 5%"),
                   OHM_BAD_ARGUMENT);
  says("band and tolerance_percent");
  PROVOKES(ohm_bench_substitute, OHM_BAD_ARGUMENT,
           status_of(ohm_bench_substitute, "-series E24 -drawer 100,220"));
  says("series and drawer");
  PROVOKES(ohm_bench_fanpoint, OHM_BAD_ARGUMENT, status_of(ohm_bench_fanpoint, "-off_c 98C"));
  says("off_c");
}
END_TEST

START_TEST(a_setting_of_another_verb_is_passed_over)
{
  ck_assert_int_eq(status_of(ohm_bench_identify, "2.31k@21.5C -band none -tolerance_percent 5%"),
                   OHM_OK);
}
END_TEST

START_TEST(a_band_that_the_sensor_has_not_is_told_with_those_it_has)
{
  ck_assert_int_eq(status_of(ohm_bench_check, "2.31k@21.5C -band audi"), OHM_NOT_FOUND);
  says("audi-g62");
}
END_TEST

START_TEST(more_than_can_be_taken_together_is_told)
{
  char many[400] = "";
  for (int i = 0; i < 17; i++)
    strcat(many, "2.31k@21.5C ");
  PROVOKES(ohm_bench_check, OHM_TOO_LARGE, status_of(ohm_bench_check, many));
  PROVOKES(ohm_bench_identify, OHM_TOO_LARGE, status_of(ohm_bench_identify, many));
  PROVOKES(ohm_bench_explain, OHM_TOO_LARGE, status_of(ohm_bench_explain, many));
  PROVOKES(ohm_bench_measure, OHM_TOO_LARGE, status_of(ohm_bench_measure, many));
  PROVOKES(ohm_bench_soak, OHM_TOO_LARGE, status_of(ohm_bench_soak, many));
  PROVOKES(ohm_bench_soak, OHM_BAD_ARGUMENT,
           status_of(ohm_bench_soak, "3.9k 3.8k -air 9C -after_h 7"));
  PROVOKES(ohm_bench_signal, OHM_BAD_ARGUMENT, status_of(ohm_bench_signal, "187 188 91C"));
  PROVOKES(ohm_bench_pins, OHM_BAD_ARGUMENT, status_of(ohm_bench_pins, "1-2=480 2-1=480 -at 20C"));
  says("pins 2 and 1");
}
END_TEST

START_TEST(too_many_pairs_or_companions_are_told)
{
  char pairs[400] = "-at 20C ";
  char companions[400] = "3.9k -air 9C -after_h 7 ";
  for (int i = 0; i < 17; i++)
    snprintf(pairs + strlen(pairs), sizeof pairs - strlen(pairs), "%c-%c=5k ", '1' + i / 8,
             'A' + i % 8);
  for (int i = 0; i < 9; i++)
    strcat(companions, "intake=10C ");
  PROVOKES(ohm_bench_pins, OHM_TOO_LARGE, status_of(ohm_bench_pins, pairs));
  PROVOKES(ohm_bench_soak, OHM_TOO_LARGE, status_of(ohm_bench_soak, companions));
}
END_TEST

START_TEST(where_the_curve_does_not_reach_both_are_told)
{
  PROVOKES(ohm_bench_explain, OHM_OUT_OF_RANGE, status_of(ohm_bench_explain, "100@300C"));
  says("300.0 C");
  says("reaches from");
  PROVOKES(ohm_bench_substitute, OHM_OUT_OF_RANGE, status_of(ohm_bench_substitute, "-aim_c 250C"));
  PROVOKES(ohm_bench_loom, OHM_OUT_OF_RANGE, status_of(ohm_bench_loom, "179.4@93C 998@290C"));
  PROVOKES(ohm_bench_signal, OHM_OUT_OF_RANGE, status_of(ohm_bench_signal, "187@300C 91C"));
}
END_TEST

static ohm_sensor *short_sensor(void) {
  static const char text[] = "# model: beta\n# r0_ohm: 2500\n# t0_c: 20\n# beta_k: 3500\n"
                             "# range: -20 to 60 C\n";
  return ohm_sensor_parse(text, sizeof text - 1, "short", NULL);
}

START_TEST(a_fan_above_the_curve_is_told)
{
  ohm_bench *bench = bench_with("");
  ohm_sensor *own = short_sensor();
  ohm_bench_use_sensor(bench, own);
  ck_assert_ptr_null(ohm_bench_fanpoint(bench, &last));
  PROVOKES(ohm_bench_fanpoint, OHM_OUT_OF_RANGE, last.status);
  says("where the fan starts");
  ohm_bench_free(bench);
  ohm_sensor_free(own);
}
END_TEST

START_TEST(a_history_that_ends_too_early_is_told)
{
  static const double after_h[] = {0, 3};
  static const double t_c[] = {12, 9};
  ohm_history *history = ohm_history_new(after_h, t_c, 2, NULL);
  ohm_bench *bench = bench_with("3.9k -after_h 7");
  ohm_sensor *own = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench_use_sensor(bench, own);
  ohm_bench_use_history(bench, history);
  ck_assert_ptr_null(ohm_bench_soak(bench, &last));
  PROVOKES(ohm_bench_soak, OHM_OUT_OF_RANGE, last.status);
  says("3.00 h");
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_EXTEND, "yes", &last), OHM_OK);
  ohm_answer *answer = ohm_bench_soak(bench, &last);
  ck_assert_ptr_nonnull(answer);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_history_free(history);
  ohm_sensor_free(own);
}
END_TEST

START_TEST(two_resistors_too_near_are_told)
{
  PROVOKES(ohm_bench_loom, OHM_BAD_DEFINITION, status_of(ohm_bench_loom, "179.4@93C 180@93C"));
  says("half");
}
END_TEST

static int circuit_status(const char *words) {
  ohm_bench *bench = bench_with(words);
  ohm_circuit *circuit = ohm_circuit_built_in_load("radiator-switch", NULL);
  ohm_bench_use_circuit(bench, circuit);
  ohm_answer *answer = ohm_bench_isolate(bench, &last);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
  return last.status;
}

START_TEST(a_record_that_does_not_go_with_the_circuit_is_told)
{
  ck_assert_int_eq(circuit_status("starts=bad -fan_c 95C"), OHM_OK);
  PROVOKES(ohm_bench_isolate, OHM_NOT_FOUND, circuit_status("nothing=bad"));
  PROVOKES(ohm_bench_isolate, OHM_BAD_SYNTAX, circuit_status("starts=perhaps"));
  PROVOKES(ohm_bench_isolate, OHM_BAD_DEFINITION, circuit_status("circuit=another"));
}
END_TEST

START_TEST(unset_is_not_zero_degrees)
{
  ohm_error error;
  ohm_bench *bench = bench_with("3.9k -air 9C -after_h 7");
  ohm_sensor *own = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench_use_sensor(bench, own);
  ohm_answer *unset = ohm_bench_soak(bench, &error);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_STOP, "0C", &error), OHM_OK);
  ohm_answer *zero = ohm_bench_soak(bench, &error);
  CHECK_NEAR(ohm_finding_number(ohm_answer_finding(unset), OHM_FIELD_STOP_C), 90, 0);
  CHECK_NEAR(ohm_finding_number(ohm_answer_finding(zero), OHM_FIELD_STOP_C), 0, 0);
  ohm_answer_free(unset);
  ohm_answer_free(zero);
  ohm_bench_free(bench);
  ohm_sensor_free(own);
}
END_TEST

int main(void) {
  return RUN_TESTS("request", no_bench_is_told_by_every_verb, a_missing_sensor_or_circuit_is_told,
                   a_missing_reading_is_told_with_an_example,
                   a_missing_temperature_is_told_with_the_reading,
                   readings_at_different_places_are_refused,
                   settings_that_exclude_each_other_are_refused_by_the_verb,
                   a_setting_of_another_verb_is_passed_over,
                   a_band_that_the_sensor_has_not_is_told_with_those_it_has,
                   more_than_can_be_taken_together_is_told, too_many_pairs_or_companions_are_told,
                   where_the_curve_does_not_reach_both_are_told, a_fan_above_the_curve_is_told,
                   a_history_that_ends_too_early_is_told, two_resistors_too_near_are_told,
                   a_record_that_does_not_go_with_the_circuit_is_told, unset_is_not_zero_degrees);
}
