/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <math.h>
#include <string.h>

static ohm_answer *measured(const char *reading, const char *meter) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  ck_assert_msg(ohm_bench_read(bench, reading, NULL, &error) == OHM_OK, "%s", error.message);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_METER, meter, &error), OHM_OK);
  ck_assert_int_eq(ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4+-0.1", &error), OHM_OK);
  ohm_answer *answer = ohm_bench_measure(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  ohm_bench_free(bench);
  return answer;
}

START_TEST(leads_are_taken_off_and_every_cause_is_counted)
{
  ohm_answer *answer = measured("187.4", "0.8%+3");
  const ohm_finding *finding = ohm_answer_finding(answer);
  double limit_ohm = 0.008 * 187.4 + 3 * 0.1;
  CHECK_NEAR(ohm_finding_number(finding, OHM_FIELD_R_OHM), 187.0, 1e-9);
  CHECK_NEAR(ohm_finding_number(finding, OHM_FIELD_METER_LIMIT_OHM), limit_ohm, 1e-9);
  /* JCGM 100:2008, 4.3.7 and 5.1.2: two rectangular causes. */
  CHECK_NEAR(ohm_finding_number(finding, OHM_FIELD_U_R_OHM), hypot(limit_ohm, 0.1) / sqrt(3), 1e-9);
  ck_assert_int_eq(ohm_finding_word(finding, OHM_FIELD_ABOUT), OHM_VERB_MEASURE);
  ohm_answer_free(answer);
}
END_TEST

START_TEST(a_display_without_a_number_has_no_resistance)
{
  ohm_answer *answer = measured("OL@20k", "0.8%+3");
  const ohm_finding *finding = ohm_answer_finding(answer);
  ck_assert(isnan(ohm_finding_number(finding, OHM_FIELD_R_OHM)));
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_READ, 0), "over range on 20 k");
  ohm_answer_free(answer);
}
END_TEST

START_TEST(the_report_says_what_was_read_and_what_it_means)
{
  char text[800];
  ohm_answer *answer = measured("2.31k", "0.8%+3");
  ohm_answer_print_report(answer, text, sizeof text);
  ck_assert_ptr_nonnull(strstr(text, "You read    2.31 k\n"));
  ck_assert_ptr_nonnull(strstr(text, "give or take"));
  ck_assert_ptr_null(strstr(text, "sensor"));
  ohm_answer_free(answer);
}
END_TEST

int main(void) {
  return RUN_TESTS("measure", leads_are_taken_off_and_every_cause_is_counted,
                   a_display_without_a_number_has_no_resistance,
                   the_report_says_what_was_read_and_what_it_means);
}
