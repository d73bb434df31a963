/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

#include "../../lib/bench/finding.h"
#include "../findings.h"

/* ---- the list of fields ---- */

START_TEST(every_field_has_a_name_a_meaning_and_a_kind)
{
  for (int i = 1; i < OC_FIELDS; i++) {
    ck_assert_str_ne(ohm_field_name(i), "");
    ck_assert_str_ne(ohm_field_meaning(i), "");
    ck_assert_int_ge(ohm_field_kind_of(i), OHM_KIND_NUMBER);
    ck_assert_int_le(ohm_field_kind_of(i), OHM_KIND_LIST);
    for (int j = 1; j < i; j++)
      ck_assert_str_ne(ohm_field_name(i), ohm_field_name(j));
  }
}
END_TEST

START_TEST(the_fields_are_those_of_the_header_by_their_numbers)
{
#define CHECK_FIELD(number, constant, name, kind, meaning)                                         \
  ck_assert_int_eq(OHM_FIELD_##constant, number);                                                  \
  ck_assert_str_eq(ohm_field_name(number), #name);                                                 \
  ck_assert_int_eq(ohm_field_kind_of(number), OHM_KIND_##kind);                                    \
  ck_assert_str_eq(ohm_field_meaning(number), meaning);
  OHM_FIELDS(CHECK_FIELD)
#undef CHECK_FIELD
}
END_TEST

static const int no_field[] = {-1, 0, OC_FIELDS, 1000000, -2147483647 - 1, 2147483647};

START_TEST(a_field_that_is_none_has_nothing)
{
  ohm_finding finding = finding_new();
  for (size_t i = 0; i < sizeof no_field / sizeof no_field[0]; i++) {
    ck_assert_ptr_null(ohm_field_name(no_field[i]));
    ck_assert_ptr_null(ohm_field_meaning(no_field[i]));
    ck_assert_int_eq(ohm_field_kind_of(no_field[i]), 0);
    ck_assert(isnan(ohm_finding_number(&finding, no_field[i])));
    ck_assert_ptr_null(ohm_finding_text(&finding, no_field[i], 0));
  }
}
END_TEST

/* ---- absence ---- */

static void check_all_absent(const ohm_finding *finding) {
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert(isnan(ohm_finding_number(finding, i)));
    for (size_t index = 0; index < 3; index++)
      ck_assert_ptr_null(ohm_finding_text(finding, i, index));
  }
  ck_assert_int_eq(ohm_finding_verdict(finding), OHM_UNDECIDED);
}

START_TEST(every_field_of_a_cleared_finding_is_absent)
{
  ohm_finding finding;
  findings_stale(&finding, 1);
  oc_finding_clear(&finding);
  check_all_absent(&finding);
}
END_TEST

START_TEST(every_field_of_no_finding_is_absent)
{ check_all_absent(NULL); }
END_TEST

/* ---- what is kept ---- */

static ohm_finding filled(void) {
  ohm_finding finding = finding_new();
  oc_finding_set_verdict(&finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  oc_finding_set_about(&finding, OHM_VERB_CHECK);
  oc_finding_set_number(&finding, OHM_FIELD_R_OHM, 2310);
  oc_finding_set_text(&finding, OHM_FIELD_SENSOR, "ntc-2k45-20c");
  oc_finding_set_reference(&finding, OHM_REFERENCE_ICE);
  oc_finding_assume(&finding, OC_ASSUME_LEADS);
  oc_finding_assume(&finding, OC_ASSUME_ICE);
  oc_finding_assume(&finding, OC_ASSUME_LEADS);
  return finding;
}

START_TEST(what_was_filled_in_is_read_by_field)
{
  ohm_finding finding = filled();
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_OUTSIDE);
  ck_assert_int_eq(oc_finding_reason(&finding), OHM_REASON_HIGH);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_VERDICT, 0), "outside");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REASON, 0), "high");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_ABOUT, 0), "check");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_SENSOR, 0), "ntc-2k45-20c");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REFERENCE, 0), "ice");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_VERSION, 0), ohm_version());
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_TABLES_VERSION, 0), ohm_tables_version());
  CHECK_NEAR(ohm_finding_number(&finding, OHM_FIELD_R_OHM), 2310, 0);
}
END_TEST

START_TEST(a_field_is_read_by_its_kind_alone)
{
  ohm_finding finding = filled();
  for (int i = 0; i < OC_FIELDS; i++) {
    if (ohm_field_kind_of(i) != OHM_KIND_NUMBER)
      ck_assert(isnan(ohm_finding_number(&finding, i)));
    else
      ck_assert_ptr_null(ohm_finding_text(&finding, i, 0));
    if (ohm_field_kind_of(i) == OHM_KIND_TEXT)
      ck_assert_ptr_null(ohm_finding_text(&finding, i, 1));
  }
}
END_TEST

START_TEST(a_list_holds_each_entry_once_and_ends_with_null)
{
  ohm_finding finding = filled();
  ck_assert_ptr_nonnull(strstr(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0), "leads"));
  ck_assert_ptr_nonnull(strstr(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 1), "ice"));
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 2));
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, (size_t)-1));
}
END_TEST

START_TEST(every_assumption_has_a_sentence_of_its_own)
{
  ohm_finding finding = finding_new();
  for (int i = 0; i < OC_ASSUMPTIONS; i++)
    oc_finding_assume(&finding, (enum oc_assumption)i);
  for (size_t i = 0; i < OC_ASSUMPTIONS; i++)
    for (size_t j = 0; j < i; j++)
      ck_assert_str_ne(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, i),
                       ohm_finding_text(&finding, OHM_FIELD_ASSUMED, j));
}
END_TEST

START_TEST(a_copy_is_independent)
{
  ohm_finding first = filled();
  ohm_finding copy = first;
  oc_finding_clear(&first);
  check_all_absent(&first);
  ck_assert_str_eq(ohm_finding_text(&copy, OHM_FIELD_SENSOR, 0), "ntc-2k45-20c");
}
END_TEST

START_TEST(a_text_of_any_length_is_kept_whole)
{
  char text[100000];
  memset(text, 'x', sizeof text);
  text[sizeof text - 1] = '\0';
  ohm_finding finding = filled();
  oc_finding_set_text(&finding, OHM_FIELD_SENSOR, text);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_SENSOR, 0), text);
}
END_TEST

START_TEST(entries_of_a_list_are_read_in_the_order_they_were_added)
{
  static const char *const names[] = {"fuse", "relay", "motor"};
  ohm_finding finding = finding_new();
  for (size_t i = 0; i < 3; i++) {
    oc_finding_add_entry(&finding, OHM_FIELD_CLEARED, names[i]);
    oc_finding_add_entry(&finding, OHM_FIELD_SUSPECTS, "");
  }
  for (size_t i = 0; i < 3; i++)
    ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_CLEARED, i), names[i]);
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_CLEARED, 3));
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_SUSPECTS, 0));
}
END_TEST

START_TEST(an_absent_finding_has_no_report)
{
  ohm_finding finding = finding_new();
  ck_assert_uint_eq(ohm_finding_print_report(&finding, NULL, 0), 0);
  ck_assert_uint_eq(ohm_finding_print_budget(&finding, NULL, 0), 0);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "finding", every_field_has_a_name_a_meaning_and_a_kind,
      the_fields_are_those_of_the_header_by_their_numbers, a_field_that_is_none_has_nothing,
      every_field_of_a_cleared_finding_is_absent, every_field_of_no_finding_is_absent,
      what_was_filled_in_is_read_by_field, a_field_is_read_by_its_kind_alone,
      a_list_holds_each_entry_once_and_ends_with_null, every_assumption_has_a_sentence_of_its_own,
      a_copy_is_independent, a_text_of_any_length_is_kept_whole,
      entries_of_a_list_are_read_in_the_order_they_were_added, an_absent_finding_has_no_report);
}
