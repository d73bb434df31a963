/* SPDX-License-Identifier: MIT */
/* Readings at the sensor's own pins and at the module's end on one bench. */
#include "../support.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "../draw.h"

static ohm_sensor *sensor;

static ohm_answer *ask(const char *const *readings, size_t count, ohm_error *error) {
  ohm_bench *bench = ohm_bench_new(error);
  if (!sensor)
    sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench_use_sensor(bench, sensor);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3@2000", error), OHM_OK);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4", error), OHM_OK);
  for (size_t i = 0; i < count; i++)
    ck_assert_int_eq(ohm_bench_read(bench, readings[i], NULL, error), OHM_OK);
  ohm_answer *answer = ohm_bench_check(bench, error);
  ohm_bench_free(bench);
  return answer;
}

static double number(const ohm_answer *answer, ohm_field field) {
  return ohm_finding_number(ohm_answer_finding(answer), (int)field);
}

#define ASK(error, ...)                                                                            \
  ask((const char *const[]){__VA_ARGS__},                                                          \
      sizeof(const char *const[]){__VA_ARGS__} / sizeof(const char *), error)

static void check_wires(ohm_answer *answer, ohm_verdict verdict) {
  ck_assert_ptr_nonnull(answer);
  ck_assert_int_eq(ohm_finding_word(ohm_answer_finding(answer), OHM_FIELD_WIRES), (int)verdict);
  ohm_answer_free(answer);
}

START_TEST(a_few_ohms_hot_are_good_wires_and_forty_are_bad)
{
  ohm_error error;
  check_wires(ASK(&error, "191.0@boil,sensor", "193.0@boil,module"), OHM_WITHIN);
  check_wires(ASK(&error, "275.0@88C,sensor", "313.0@88C,module"), OHM_OUTSIDE);
}
END_TEST

START_TEST(what_is_too_small_to_tell_cold_is_said_with_its_uncertainty)
{
  ohm_error error;
  ohm_answer *answer = ASK(&error, "2.31k@21C,sensor", "2.37k@21C,module");
  CHECK_NEAR(number(answer, OHM_FIELD_BETWEEN_OHM), 60, 1);
  ck_assert_double_gt(number(answer, OHM_FIELD_EXPANDED_BETWEEN_OHM), 60);
  check_wires(answer, OHM_UNDECIDED);
}
END_TEST

START_TEST(fewer_ohms_at_the_module_are_no_good_wires)
{
  ohm_error error;
  char report[4000];
  ohm_answer *answer = ASK(&error, "191.0@boil,sensor", "150.0@boil,module");
  ohm_answer_print_report(answer, report, sizeof report);
  ck_assert(strstr(report, "is its plug off?") != NULL);
  check_wires(answer, OHM_UNDECIDED);
}
END_TEST

START_TEST(the_part_is_judged_at_its_own_pins)
{
  ohm_error error;
  ohm_answer *answer = ASK(&error, "313.0@88C,module", "262.0@88C,sensor");
  ck_assert_str_eq(ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_PLACE, 0), "sensor");
  CHECK_NEAR(number(answer, OHM_FIELD_R_OHM), 261.6, 0.1);
  ck_assert_uint_eq(ohm_answer_count(answer, OHM_GROUP_READINGS), 2);
  CHECK_NEAR(ohm_finding_number(ohm_answer_member(answer, OHM_GROUP_READINGS, 0), OHM_FIELD_R_OHM),
             312.6, 0.1);
  ohm_answer_free(answer);
}
END_TEST

START_TEST(readings_at_two_ends_are_never_still_moving)
{
  ohm_error error;
  ohm_answer *answer = ASK(&error, "262.0@88C,sensor", "290.0@88C,module");
  ck_assert_str_ne(ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_REASON, 0), "moving");
  ohm_answer_free(answer);
}
END_TEST

START_TEST(other_pairs_of_places_are_refused)
{
  ohm_error error;
  ck_assert_ptr_null(ASK(&error, "262.0@88C,sensor", "290.0@88C,plug_on"));
  ck_assert(strstr(error.message, "different places") != NULL);
  ck_assert_ptr_null(ASK(&error, "262.0@88C", "290.0@88C,module"));
}
END_TEST

/* Cars of which all is known: a part off its curve and anywhere in its band, one thermometer, one
 * meter, a sensor that moved a little between the two. */
START_TEST(the_ohms_lie_in_what_is_said_of_them_as_often_as_said)
{
  uint64_t state = 20261127;
  int held = 0;
  enum { CARS = 300 };
  for (int i = 0; i < CARS; i++) {
    double wires_ohm = draw_between(&state, 0, 80);
    double shown_c = draw_between(&state, 20, 95);
    double t_c = shown_c + draw_rectangular(&state, 2);
    double gain = 1 + draw_rectangular(&state, 0.008);
    double at_ohm;
    double later_ohm;
    if (!sensor)
      sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
    ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &at_ohm);
    ohm_curve_resistance(ohm_sensor_curve(sensor), t_c + draw_rectangular(&state, 1), &later_ohm);
    double part = exp(draw_rectangular(&state, 0.05));
    double step = at_ohm < 200 ? 0.1 : at_ohm < 2000 ? 1 : 10;
    char first[60];
    char second[60];
    snprintf(first, sizeof first, "%.1fohm@%.1fC,sensor",
             round((at_ohm * part * gain + 0.4 + draw_rectangular(&state, 3 * step)) / step) * step,
             shown_c);
    snprintf(
        second, sizeof second, "%.1fohm@%.1fC,module",
        round(((later_ohm * part + wires_ohm) * gain + 0.4 + draw_rectangular(&state, 3 * step)) /
              step) *
            step,
        shown_c);
    ohm_error error;
    ohm_answer *answer = ASK(&error, first, second);
    ck_assert_msg(answer != NULL, "%s", error.message);
    held += fabs(number(answer, OHM_FIELD_BETWEEN_OHM) - wires_ohm) <=
            number(answer, OHM_FIELD_EXPANDED_BETWEEN_OHM);
    ohm_answer_free(answer);
  }
  ck_assert_int_ge(held, CARS * 92 / 100);
}
END_TEST

int main(void) {
  return RUN_TESTS("both ends", a_few_ohms_hot_are_good_wires_and_forty_are_bad,
                   what_is_too_small_to_tell_cold_is_said_with_its_uncertainty,
                   fewer_ohms_at_the_module_are_no_good_wires, the_part_is_judged_at_its_own_pins,
                   readings_at_two_ends_are_never_still_moving, other_pairs_of_places_are_refused,
                   the_ohms_lie_in_what_is_said_of_them_as_often_as_said);
}
