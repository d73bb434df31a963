/* SPDX-License-Identifier: MIT */
/* Each test that was made on a circuit, by its finding. */
#include "../support.h"

#include <string.h>

static ohm_circuit *circuit;
static ohm_answer *answer;

static void ask(const char *const *outcomes, size_t count) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  if (!circuit)
    circuit = ohm_circuit_built_in_load("radiator-switch", NULL);
  ohm_bench_use_circuit(bench, circuit);
  for (size_t i = 0; i < count; i++)
    ck_assert_msg(ohm_bench_read(bench, outcomes[i], NULL, &error) == OHM_OK, "%s", error.message);
  ohm_answer_free(answer);
  answer = ohm_bench_isolate(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  ohm_bench_free(bench);
}

#define ASK(...)                                                                                   \
  ask((const char *const[]){__VA_ARGS__},                                                          \
      sizeof(const char *const[]){__VA_ARGS__} / sizeof(const char *))

static size_t tests_told(void) {
  return ohm_answer_count(answer, OHM_GROUP_TESTS);
}

static const ohm_finding *told(size_t index) {
  return ohm_answer_member(answer, OHM_GROUP_TESTS, index);
}

static bool lists(const ohm_finding *finding, ohm_field field, const char *link) {
  const char *text;
  for (size_t i = 0; (text = ohm_finding_text(finding, (int)field, i)) != NULL; i++)
    if (strcmp(text, link) == 0)
      return true;
  return false;
}

START_TEST(each_test_made_is_told_in_its_order)
{
  static const char *const names[] = {"starts", "coolant-level", "standing"};
  ASK("starts=bad", "coolant-level=good", "standing=good");
  ck_assert_uint_eq(tests_told(), 3);
  for (size_t i = 0; i < 3; i++) {
    ck_assert_str_eq(ohm_finding_text(told(i), OHM_FIELD_TEST, 0), names[i]);
    ck_assert_int_eq(ohm_finding_verdict(told(i)), i == 0 ? OHM_OUTSIDE : OHM_WITHIN);
  }
}
END_TEST

START_TEST(a_good_test_tells_what_it_clears_and_a_bad_one_whom_it_accuses)
{
  ASK("starts=bad", "standing=good", "coolant-level=good", "fuse-look=bad");
  ck_assert(lists(told(2), OHM_FIELD_CLEARED, "coolant"));
  ck_assert_ptr_null(ohm_finding_text(told(2), OHM_FIELD_SUSPECTS, 0));
  ck_assert(lists(told(3), OHM_FIELD_SUSPECTS, "fuse"));
  ck_assert_ptr_null(ohm_finding_text(told(3), OHM_FIELD_CLEARED, 0));
}
END_TEST

START_TEST(of_a_test_made_twice_the_last_outcome_is_told)
{
  ASK("starts=bad", "standing=bad", "coolant-level=good", "standing=good");
  ck_assert_uint_eq(tests_told(), 3);
  ck_assert_str_eq(ohm_finding_text(told(2), OHM_FIELD_TEST, 0), "standing");
  ck_assert_int_eq(ohm_finding_verdict(told(2)), OHM_WITHIN);
}
END_TEST

START_TEST(a_test_that_a_renewal_opened_again_is_not_told)
{
  ASK("starts=bad", "fuse-look=bad", "fuse=renewed");
  ck_assert_uint_eq(tests_told(), 0);
}
END_TEST

START_TEST(a_skipped_test_is_undecided)
{
  ASK("starts=skip");
  ck_assert_uint_eq(tests_told(), 1);
  ck_assert_int_eq(ohm_finding_verdict(told(0)), OHM_UNDECIDED);
}
END_TEST

START_TEST(a_test_by_a_number_tells_what_was_read)
{
  ASK("starts=bad", "battery-volts=12.4");
  ck_assert(isnan(ohm_finding_number(told(0), OHM_FIELD_MEASURED)));
  CHECK_NEAR(ohm_finding_number(told(1), OHM_FIELD_MEASURED), 12.4, 1e-12);
}
END_TEST

START_TEST(the_outcome_is_a_word)
{
  ASK("starts=bad", "coolant-level=good", "fuse-look=skip", "battery-volts=11");
  static const ohm_outcome outcomes[] = {OHM_OUTCOME_BAD, OHM_OUTCOME_GOOD, OHM_OUTCOME_SKIPPED,
                                         OHM_OUTCOME_UNSURE};
  for (size_t i = 0; i < 4; i++)
    ck_assert_int_eq(ohm_finding_word(told(i), OHM_FIELD_OUTCOME), (int)outcomes[i]);
  ck_assert_str_eq(ohm_finding_text(told(2), OHM_FIELD_OUTCOME, 0), "skipped");
}
END_TEST

START_TEST(without_a_test_there_is_none)
{
  ASK("fan=98C");
  ck_assert_uint_eq(tests_told(), 0);
  ck_assert_ptr_null(told(0));
}
END_TEST

int main(void) {
  return RUN_TESTS("isolate", each_test_made_is_told_in_its_order,
                   a_good_test_tells_what_it_clears_and_a_bad_one_whom_it_accuses,
                   of_a_test_made_twice_the_last_outcome_is_told,
                   a_test_that_a_renewal_opened_again_is_not_told, a_skipped_test_is_undecided,
                   a_test_by_a_number_tells_what_was_read, the_outcome_is_a_word,
                   without_a_test_there_is_none);
}
