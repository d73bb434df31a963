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

START_TEST(no_circuit_at_the_module_is_bad_wires)
{
  ohm_error error;
  char report[4000];
  ohm_answer *answer = ASK(&error, "325.0@80C,sensor", "open@80C,module");
  ohm_answer_print_report(answer, report, sizeof report);
  ck_assert(strstr(report, "no circuit at the module's end") != NULL);
  check_wires(answer, OHM_OUTSIDE);
}
END_TEST

START_TEST(of_repeats_at_one_end_the_last_counts)
{
  ohm_error error;
  ohm_answer *answer = ASK(&error, "150.0@100C,sensor", "188.0@100C,sensor", "188.0@100C,sensor",
                           "189.0@100C,module");
  CHECK_NEAR(number(answer, OHM_FIELD_BETWEEN_OHM), 1, 0.1);
  check_wires(answer, OHM_WITHIN);
}
END_TEST

/* ---- against sums by hand ---- */

static double expanded_of(const char *part, const char *record) {
  ohm_error error;
  ohm_sensor *own = ohm_sensor_parse(part, strlen(part), "own", &error);
  ck_assert_msg(own != NULL, "%s", error.message);
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, own);
  ck_assert_int_eq(ohm_bench_read_record(bench, record, strlen(record), &error), OHM_OK);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  double expanded_ohm = number(answer, OHM_FIELD_EXPANDED_BETWEEN_OHM);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(own);
  return expanded_ohm;
}

#define FLAT "# range: -40 to 150 C\n# model: beta\n# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n"

/* By convolution of the rectangles and the normal part: 7.604 ohm; two references, each with an
 * error of its own. */
START_TEST(two_references_err_each_its_own_way)
{
  CHECK_NEAR(expanded_of("# tolerance: 5 %\n" FLAT, "# meter: 0.3%+1x0.1\n# moved_k: 0C\n"
                                                    "5872@ice,sensor\n205.0@boil,module\n"),
             7.604, 0.02);
}
END_TEST

/* On either side of the temperature that a beta turns about: b ln(R1/R2), not what the half-widths
 * differ by. By 400 000 draws 184.8 ohm. */
START_TEST(a_beta_that_is_off_moves_both_ends_of_the_curve_apart)
{
  CHECK_NEAR(expanded_of("# tolerance: 1 % at 25 C, beta 3 %\n# range: -40 to 150 C\n"
                         "# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# beta_k: 3900\n",
                         "# meter: 0.1%+1x0.1\n# leads: exact\n# moved_k: 0.1C\n"
                         "32017@0C+-0.1,sensor\n2629.6@60C+-0.1,module\n"),
             184.8, 0.3);
}
END_TEST

START_TEST(what_each_temperature_errs_by_alone_is_counted_at_both)
{
  const char *sure = "# meter: 0.3%+1x0.1\n# moved_k: 0C\n"
                     "5872@ice,sensor\n192.0@boil,module\n";
  const char *noisy = "# meter: 0.3%+1x0.1\n# moved_k: 0C\n# u_at_k: 3C\n"
                      "5872@ice,sensor\n192.0@boil,module\n";
  const char *part = "# tolerance: 5 %\n" FLAT;
  ck_assert(expanded_of(part, noisy) > expanded_of(part, sure) + 40);
}
END_TEST

/* Half a percent each, 342 ohm, 1.96 of the root of two. */
START_TEST(a_part_without_a_tolerance_follows_its_curve_no_closer_than_any)
{
  CHECK_NEAR(expanded_of(FLAT, "# meter: exact\n# leads: exact\n# moved_k: 0C\n"
                               "2005@25C+-0.0001,sensor\n342@80C+-0.0001,module\n"),
             1.96 * 0.005 * sqrt(2) * 323, 0.2);
}
END_TEST

START_TEST(a_meter_known_to_err_alike_on_its_ranges_leaves_less_open)
{
  const char *part = "# tolerance: 5 %\n" FLAT;
  ck_assert(expanded_of(part, "# meter: 0.8%+3@2000\n# leads: exact\n# moved_k: 0C\n"
                              "# ranges_alike: yes\n1987@25C,sensor\n2.03k@25C,module\n") <
            0.8 * expanded_of(part, "# meter: 0.8%+3@2000\n# leads: exact\n# moved_k: 0C\n"
                                    "1987@25C,sensor\n2.03k@25C,module\n"));
}
END_TEST

int main(void) {
  return RUN_TESTS("both ends", a_few_ohms_hot_are_good_wires_and_forty_are_bad,
                   what_is_too_small_to_tell_cold_is_said_with_its_uncertainty,
                   fewer_ohms_at_the_module_are_no_good_wires, the_part_is_judged_at_its_own_pins,
                   readings_at_two_ends_are_never_still_moving, other_pairs_of_places_are_refused,
                   the_ohms_lie_in_what_is_said_of_them_as_often_as_said,
                   no_circuit_at_the_module_is_bad_wires, of_repeats_at_one_end_the_last_counts,
                   two_references_err_each_its_own_way,
                   a_beta_that_is_off_moves_both_ends_of_the_curve_apart,
                   what_each_temperature_errs_by_alone_is_counted_at_both,
                   a_part_without_a_tolerance_follows_its_curve_no_closer_than_any,
                   a_meter_known_to_err_alike_on_its_ranges_leaves_less_open);
}
