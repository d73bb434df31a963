/* SPDX-License-Identifier: MIT */
/* What is expected is held against what a check then says. */
#include "../scene.h"

#include <stdio.h>
#include <string.h>

static ohm_sensor *sensor;
static ohm_error error;

static ohm_answer *asked(ohm_answer *(*verb)(const ohm_bench *, ohm_error *), const char *record) {
  error = (ohm_error){0};
  ohm_bench *bench = ohm_bench_new(&error);
  ck_assert_int_eq(ohm_bench_use_sensor(bench, sensor), OHM_OK);
  ck_assert_int_eq(ohm_bench_read_record(bench, record, strlen(record), &error), OHM_OK);
  ohm_answer *answer = verb(bench, &error);
  ohm_bench_free(bench);
  return answer;
}

static double told(const char *record, ohm_field field) {
  ohm_answer *answer = asked(ohm_bench_expect, record);
  ck_assert_msg(answer != NULL, "%s", error.message);
  double number = ohm_finding_number(ohm_answer_finding(answer), (int)field);
  ohm_answer_free(answer);
  return number;
}

static bool passes(const char *settings, double display_ohm) {
  char record[300];
  snprintf(record, sizeof record, "%s\n%.9gohm\n", settings, display_ohm);
  ohm_answer *answer = asked(ohm_bench_check, record);
  ck_assert_msg(answer != NULL, "%s", error.message);
  bool good = ohm_finding_verdict(ohm_answer_finding(answer)) == OHM_WITHIN;
  ohm_answer_free(answer);
  return good;
}

/* The counts of a display are those of the middle. */
START_TEST(displays_between_the_two_pass_a_check_and_those_beyond_do_not)
{
  static const char *const benches[] = {
      "# at: 21.5C\n# meter: 0.8%+3x10\n# leads: exact\n# place: sensor",
      "# at: ice\n# meter: 0.5%+2x10\n# leads: 0.4\n# place: sensor",
      "# at: 97C+-0.3\n# meter: 0.8%+3x0.1\n# leads: 20+-0.2\n# place: sensor",
      "# at: 20C+-0.5\n# meter: 0.5%+1x0.1\n# leads: exact\n# tolerance_percent: 40%",
      "# at: 20C+-1\n# meter: 1%+3x1\n# leads: exact\n# tolerance_percent: 80%",
      "# at: 85C+-0.5\n# meter: 0.8%+3x0.1\n# leads: exact\n# place: sensor",
      "# at: boil\n# meter: 0.8%+1x0.1\n# leads: exact\n# level: 0.9\n# place: sensor"};
  sensor = sensor_built_in("ntc-2k45-20c");
  for (size_t i = 0; i < sizeof benches / sizeof benches[0]; i++) {
    double low_ohm = told(benches[i], OHM_FIELD_ACCEPT_LOW_OHM);
    double high_ohm = told(benches[i], OHM_FIELD_ACCEPT_HIGH_OHM);
    double lead_ohm = told(benches[i], OHM_FIELD_LEAD_OHM);
    ck_assert(low_ohm < high_ohm);
    ck_assert(passes(benches[i], 1.0005 * low_ohm + lead_ohm));
    ck_assert(passes(benches[i], 0.9995 * high_ohm + lead_ohm));
    ck_assert(!passes(benches[i], 0.9995 * low_ohm + lead_ohm));
    ck_assert(!passes(benches[i], 1.0005 * high_ohm + lead_ohm));
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(nominal_and_limits_are_those_of_the_sensor)
{
  double low_ohm, nominal_ohm, high_ohm;
  sensor = sensor_of("# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                     "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n");
  for (double t_c = -20; t_c <= 120; t_c += 35) {
    char record[40];
    snprintf(record, sizeof record, "# at: %.0fC", t_c);
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low_ohm, &nominal_ohm, &high_ohm), OHM_OK);
    CHECK_NEAR(told(record, OHM_FIELD_LOW_OHM), low_ohm, 1e-9 * low_ohm);
    CHECK_NEAR(told(record, OHM_FIELD_EXPECTED_OHM), nominal_ohm, 1e-9 * nominal_ohm);
    CHECK_NEAR(told(record, OHM_FIELD_HIGH_OHM), high_ohm, 1e-9 * high_ohm);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_thermometer_that_is_too_coarse_is_told_how_good_it_has_to_be)
{
  sensor = sensor_built_in("ntc-2k45-20c");
  const char *coarse = "# at: 95C+-3\n# u_at_k: 0.1C\n# tolerance_percent: 2%\n# meter: exact\n"
                       "# leads: exact";
  ck_assert(isnan(told(coarse, OHM_FIELD_ACCEPT_LOW_OHM)));
  double needed_k = told(coarse, OHM_FIELD_NEEDED_K);
  for (int over = 0; over < 2; over++) {
    char record[200];
    snprintf(record, sizeof record,
             "# at: 95C+-%.4f\n# u_at_k: 0.1C\n# tolerance_percent: 2%%\n# meter: exact\n"
             "# leads: exact",
             needed_k * (over ? 1.01 : 0.99));
    ck_assert_int_eq(isnan(told(record, OHM_FIELD_ACCEPT_LOW_OHM)), over);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(what_is_missing_or_beyond_the_curve_is_a_sentence)
{
  sensor = sensor_built_in("ntc-2k45-20c");
  ck_assert_ptr_null(asked(ohm_bench_expect, ""));
  PROVOKES(ohm_bench_expect, OHM_NOT_FOUND, error.status);
  ck_assert_ptr_nonnull(strstr(error.message, "set at, such as 21.5C"));
  ck_assert_ptr_null(asked(ohm_bench_expect, "# at: 200C"));
  PROVOKES(ohm_bench_expect, OHM_OUT_OF_RANGE, error.status);
  ck_assert_ptr_nonnull(strstr(error.message, "200.0 C, lies outside"));
  ck_assert_ptr_null(
      asked(ohm_bench_expect, "# at: 20C\n# band: kia-optima-2020\n# tolerance_percent: 5%"));
  PROVOKES(ohm_bench_expect, OHM_BAD_ARGUMENT, error.status);
  PROVOKES(ohm_bench_expect, OHM_NULL_ARGUMENT, (ohm_bench_expect(NULL, &error), error.status));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_screen_says_what_passes)
{
  char screen[2000];
  sensor = sensor_built_in("ntc-2k45-20c");
  ohm_answer *answer = asked(ohm_bench_expect, "# at: 21.5C");
  ohm_answer_print_report(answer, screen, sizeof screen);
  check_has(screen, "Should read 2.307 k");
  check_has(screen, "Passes      a display of 2.134 k to 2.515 k");
  ck_assert_str_eq(ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_REASON, 0), "alone");
  ohm_answer_free(answer);
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("expect", displays_between_the_two_pass_a_check_and_those_beyond_do_not,
                   nominal_and_limits_are_those_of_the_sensor,
                   a_thermometer_that_is_too_coarse_is_told_how_good_it_has_to_be,
                   what_is_missing_or_beyond_the_curve_is_a_sentence, the_screen_says_what_passes);
}
