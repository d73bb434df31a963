/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ohm_answer *answer_of(const char *sensor_name, const char *reading) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_built_in_load(sensor_name, &error);
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, sensor);
  ck_assert_int_eq(ohm_bench_read(bench, reading, NULL, &error), OHM_OK);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return answer;
}

START_TEST(an_answer_outlives_the_bench_and_the_sensor)
{
  ohm_answer *answer = answer_of("ntc-2k45-20c", "2.31k@21.5C");
  const ohm_finding *finding = ohm_answer_finding(answer);
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_SENSOR, 0), "ntc-2k45-20c");
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_READ, 0), "2.31 k");
  ck_assert_uint_gt(strlen(ohm_finding_text(finding, OHM_FIELD_BAND_SOURCE, 0)), 0);
  ohm_answer_free(answer);
}
END_TEST

START_TEST(a_text_is_as_long_as_it_is)
{
  enum { LENGTH = 9000 };
  ohm_error error;
  char *text = malloc(LENGTH + 200);
  strcpy(text, "# source: ");
  size_t start = strlen(text);
  memset(text + start, 'x', LENGTH);
  strcpy(text + start + LENGTH, "\n# model: beta\n# r0_ohm: 2500\n# t0_c: 20\n# beta_k: 3500\n"
                                "# range: -40 to 140 C\n");
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "long", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, sensor);
  ohm_bench_read(bench, "2.5k@20C", NULL, &error);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  const char *source = ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_SOURCE, 0);
  ck_assert_uint_eq(strlen(source), strlen(ohm_sensor_source(sensor)));
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  free(text);
}
END_TEST

START_TEST(groups_that_are_not_there_are_empty)
{
  ohm_answer *answer = answer_of("ntc-2k45-20c", "2.31k@21.5C");
  ck_assert_uint_eq(ohm_answer_count(answer, OHM_GROUP_READINGS), 1);
  ck_assert_ptr_nonnull(ohm_answer_member(answer, OHM_GROUP_READINGS, 0));
  ck_assert_ptr_null(ohm_answer_member(answer, OHM_GROUP_READINGS, 1));
  ck_assert_uint_eq(ohm_answer_count(answer, OHM_GROUP_CANDIDATES), 0);
  ck_assert_uint_eq(ohm_answer_count(answer, 0), 0);
  ck_assert_uint_eq(ohm_answer_count(answer, -3), 0);
  ck_assert_uint_eq(ohm_answer_count(answer, 999), 0);
  ck_assert_ptr_null(ohm_answer_member(answer, 999, 0));
  ohm_answer_free(answer);
}
END_TEST

START_TEST(no_answer_has_nothing)
{
  ck_assert_ptr_null(ohm_answer_finding(NULL));
  ck_assert_uint_eq(ohm_answer_count(NULL, OHM_GROUP_READINGS), 0);
  ck_assert_uint_eq(ohm_answer_print_report(NULL, NULL, 0), 0);
  ck_assert_uint_eq(ohm_answer_print_budget(NULL, NULL, 0), 0);
  ck_assert_uint_eq(ohm_finding_print_report(NULL, NULL, 0), 0);
  ck_assert(isnan(ohm_finding_number(NULL, OHM_FIELD_R_OHM)));
  ck_assert_ptr_null(ohm_finding_text(NULL, OHM_FIELD_READ, 0));
  ck_assert_int_eq(ohm_finding_word(NULL, OHM_FIELD_VERDICT), -1);
  ck_assert_int_eq(ohm_finding_verdict(NULL), OHM_UNDECIDED);
  ohm_answer_free(NULL);
}
END_TEST

START_TEST(a_field_of_a_later_library_is_absent)
{
  ohm_answer *answer = answer_of("ntc-2k45-20c", "2.31k@21.5C");
  const ohm_finding *finding = ohm_answer_finding(answer);
  static const int strange[] = {-1, 0, 9999};
  for (size_t i = 0; i < sizeof strange / sizeof strange[0]; i++) {
    ck_assert(isnan(ohm_finding_number(finding, strange[i])));
    ck_assert_ptr_null(ohm_finding_text(finding, strange[i], 0));
    ck_assert_int_eq(ohm_finding_word(finding, strange[i]), -1);
    ck_assert_ptr_null(ohm_field_name(strange[i]));
    ck_assert_ptr_null(ohm_field_meaning(strange[i]));
    ck_assert_int_eq(ohm_field_kind_of(strange[i]), 0);
  }
  ohm_answer_free(answer);
}
END_TEST

START_TEST(every_field_is_found_by_its_name_and_has_one_kind)
{
  for (size_t i = 0; i < ohm_field_count(); i++) {
    int field = ohm_field_at(i);
    ck_assert_int_eq(ohm_field_named(ohm_field_name(field)), field);
    ck_assert_int_gt(ohm_field_kind_of(field), 0);
    ck_assert_ptr_nonnull(ohm_field_meaning(field));
  }
  ck_assert_int_eq(ohm_field_at(ohm_field_count()), 0);
  ck_assert_int_eq(ohm_field_named("nothing"), 0);
  ck_assert_int_eq(ohm_field_named(NULL), 0);
}
END_TEST

START_TEST(a_word_is_its_number_and_its_text)
{
  ohm_answer *answer = answer_of("ntc-2k45-20c", "9.9k@21.5C,sensor");
  const ohm_finding *finding = ohm_answer_finding(answer);
  ck_assert_int_eq(ohm_finding_word(finding, OHM_FIELD_REASON), OHM_REASON_HIGH);
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_REASON, 0), "high");
  ck_assert_int_eq(ohm_finding_word(finding, OHM_FIELD_R_OHM), -1);
  ck_assert(isnan(ohm_finding_number(finding, OHM_FIELD_REASON)));
  ohm_answer_free(answer);
}
END_TEST

int main(void) {
  return RUN_TESTS("answer", an_answer_outlives_the_bench_and_the_sensor,
                   a_text_is_as_long_as_it_is, groups_that_are_not_there_are_empty,
                   no_answer_has_nothing, a_field_of_a_later_library_is_absent,
                   every_field_is_found_by_its_name_and_has_one_kind,
                   a_word_is_its_number_and_its_text);
}
