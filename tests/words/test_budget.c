/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include <string.h>

START_TEST(no_finding_has_no_budget)
{
  char buffer[4] = "abc";
  ck_assert_uint_eq(ohm_answer_print_budget(NULL, buffer, sizeof buffer), 0);
  ck_assert_str_eq(buffer, "");
  ohm_finding absent = finding_new();
  ck_assert_uint_eq(ohm_finding_print_budget(&absent, NULL, 0), 0);
}
END_TEST

static ohm_finding usual(void) {
  return typed("ntc-2k45-20c", "2.45k", "20C", OHM_PLACE_SENSOR);
}

START_TEST(every_cause_has_its_line_with_limit_shape_and_both_uncertainties)
{
  ohm_finding finding = usual();
  const char *text = budget_of(&finding);
  /* 1 % of 2450 and 3 counts of 10; divided by the root of 3. */
  check_has(text, "meter               54.500 ohm     rectangular  31.466 ohm     31.466 ohm\n");
  check_has(text, "leads               0.20000 ohm    rectangular  0.11547 ohm    0.11547 ohm\n");
  check_has(text, "reference, limit    2.0000 K       rectangular  1.1547 K       ");
  check_has_not(text, "reference, noise");
  check_has_not(text, "test current");
}
END_TEST

START_TEST(a_stated_noise_and_a_test_current_have_lines_of_their_own)
{
  ohm_sensor *sensor = sensor_of("# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                                 "# r0_ohm: 2000\n# t0_c: 20\n# beta_k: 3500\n"
                                 "# dissipation_mw_per_k: 1.5\n");
  struct scene scene = scene_exact(2000, 20);
  scene.reference.accuracy = OC_STATED;
  scene.reference.u_k = 0.25;
  scene.meter.current_ma = 0.96;
  ohm_finding finding = scene_judged(sensor, &scene);
  const char *text = budget_of(&finding);
  check_has(text, "reference, noise    -              normal       0.25000 K");
  check_has(text, "test current        0.24576 K      rectangular");
  check_has(text, "test current warms  1.2288 K");
  check_has_not(text, "meter  ");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_budget_works_out_to_the_finding)
{
  ohm_finding finding = usual();
  double u_bath_ohm = number_in(&finding, OHM_FIELD_U_AT_C) *
                      number_in(&finding, OHM_FIELD_EXPECTED_OHM) *
                      number_in(&finding, OHM_FIELD_ALPHA_PER_K);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_R_OHM),
             hypot(number_in(&finding, OHM_FIELD_METER_LIMIT_OHM),
                   number_in(&finding, OHM_FIELD_LEAD_LIMIT_OHM)) /
                 sqrt(3),
             1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_AT_C),
             number_in(&finding, OHM_FIELD_REFERENCE_LIMIT_K) / sqrt(3), 1e-12);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_COMBINED_OHM),
             hypot(number_in(&finding, OHM_FIELD_U_R_OHM), u_bath_ohm), 1e-9);
}
END_TEST

START_TEST(a_measurement_that_cannot_pass_says_so_and_what_would_do)
{
  ohm_finding finding = typed("ntc-2k45-20c", "2.450k", "20C+-6", OHM_PLACE_SENSOR);
  const char *text = budget_of(&finding);
  check_has(text, "no reading: wherever it fell, the part might be outside");
  check_has(text, "limit of the reference, with this meter");
}
END_TEST

START_TEST(a_cut_budget_is_the_beginning_of_the_whole)
{
  ohm_finding finding = usual();
  const char *whole = budget_of(&finding);
  size_t length = strlen(whole);
  for (size_t size = 1; size <= length + 1; size += 11) {
    char part[4000];
    ck_assert_uint_eq(ohm_finding_print_budget(&finding, part, size), length);
    ck_assert_uint_eq(strlen(part), size - 1);
    ck_assert_int_eq(memcmp(part, whole, size - 1), 0);
  }
}
END_TEST

START_TEST(a_budget_of_any_finding_has_no_number_that_is_none)
{
  static const char *const readings[] = {"open", "OL", "1", "0", "1e12", "2.45k", "2.31"};
  static const char *const at[] = {"20C", "-273.1C", "1000C", "ice+-0", "boil"};
  for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++)
    for (size_t j = 0; j < sizeof at / sizeof at[0]; j++) {
      ohm_finding finding = typed("ntc-2k45-20c", readings[i], at[j], OHM_PLACE_SENSOR);
      const char *text = budget_of(&finding);
      check_has_not(text, "nan");
      check_has_not(text, "inf ");
    }
}
END_TEST

int main(void) {
  return RUN_TESTS("budget", no_finding_has_no_budget,
                   every_cause_has_its_line_with_limit_shape_and_both_uncertainties,
                   a_stated_noise_and_a_test_current_have_lines_of_their_own,
                   the_budget_works_out_to_the_finding,
                   a_measurement_that_cannot_pass_says_so_and_what_would_do,
                   a_cut_budget_is_the_beginning_of_the_whole,
                   a_budget_of_any_finding_has_no_number_that_is_none);
}
