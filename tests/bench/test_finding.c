/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

#include "../../lib/bench/finding.h"

/* ---- the list of fields ---- */

START_TEST(every_field_has_a_name_a_meaning_and_a_kind)
{
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert_str_ne(ohm_field_name(i), "");
    ck_assert_str_ne(ohm_field_meaning(i), "");
    ck_assert_int_ge(ohm_field_kind_of(i), OHM_KIND_NUMBER);
    ck_assert_int_le(ohm_field_kind_of(i), OHM_KIND_LIST);
    for (int j = 0; j < i; j++)
      ck_assert_str_ne(ohm_field_name(i), ohm_field_name(j));
  }
}
END_TEST

START_TEST(the_fields_are_those_of_the_header_in_its_order)
{
  int at = 0;
#define CHECK_FIELD(constant, name, kind, meaning)                                                 \
  ck_assert_int_eq(OHM_FIELD_##constant, at);                                                      \
  ck_assert_str_eq(ohm_field_name(at), #name);                                                     \
  ck_assert_int_eq(ohm_field_kind_of(at), OHM_KIND_##kind);                                        \
  ck_assert_str_eq(ohm_field_meaning(at++), meaning);
  OHM_FIELDS(CHECK_FIELD)
#undef CHECK_FIELD
  ck_assert_int_eq(at, OC_FIELDS);
}
END_TEST

static const int no_field[] = {-1, OC_FIELDS, 1000000, -2147483647 - 1, 2147483647};

START_TEST(a_field_that_is_none_has_nothing)
{
  ohm_finding finding;
  oc_finding_clear(&finding);
  for (size_t i = 0; i < sizeof no_field / sizeof no_field[0]; i++) {
    ck_assert_ptr_null(ohm_field_name(no_field[i]));
    ck_assert_ptr_null(ohm_field_meaning(no_field[i]));
    ck_assert_int_eq(ohm_field_kind_of(no_field[i]), -1);
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
  memset(&finding, 0x55, sizeof finding);
  oc_finding_clear(&finding);
  check_all_absent(&finding);
}
END_TEST

START_TEST(every_field_of_no_finding_is_absent)
{ check_all_absent(NULL); }
END_TEST

/* ---- what is kept ---- */

static ohm_finding filled(void) {
  ohm_finding finding;
  oc_finding_clear(&finding);
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
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_ABOUT, 0), "bath");
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
  ohm_finding finding;
  oc_finding_clear(&finding);
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
  const char *text = ohm_finding_text(&copy, OHM_FIELD_SENSOR, 0);
  ck_assert((const char *)&copy <= text && text < (const char *)(&copy + 1));
}
END_TEST

START_TEST(a_long_text_is_cut_between_characters)
{
  static const ohm_field texts[] = {OHM_FIELD_SENSOR, OHM_FIELD_SOURCE, OHM_FIELD_READ};
  for (size_t field = 0; field < 3; field++)
    for (size_t shift = 0; shift < 3; shift++) {
      char text[1000] = "xx";
      for (size_t at = shift; at + 3 < sizeof text; at += 3)
        strcpy(text + at, "\xE2\x84\xA6");
      ohm_finding finding = filled();
      oc_finding_set_text(&finding, texts[field], text);
      const char *kept = ohm_finding_text(&finding, (int)texts[field], 0);
      size_t length = strlen(kept);
      ck_assert_uint_lt(length, sizeof text - 1);
      ck_assert_str_eq(kept + length - 3, "...");
      ck_assert_uint_eq((length - 3 - shift) % 3, 0);
      ck_assert_int_eq(memcmp(kept, text, length - 3), 0);
      CHECK_NEAR(ohm_finding_number(&finding, OHM_FIELD_R_OHM), 2310, 0);
    }
}
END_TEST

START_TEST(a_text_that_just_fits_is_whole)
{
  char text[1000];
  memset(text, 'x', sizeof text);
  text[sizeof text - 1] = '\0';
  ohm_finding finding = filled();
  oc_finding_set_text(&finding, OHM_FIELD_SENSOR, text);
  size_t longest = strlen(ohm_finding_text(&finding, OHM_FIELD_SENSOR, 0));
  text[longest] = '\0';
  oc_finding_set_text(&finding, OHM_FIELD_SENSOR, text);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_SENSOR, 0), text);
}
END_TEST

/* ---- storage that nothing filled in ---- */

static unsigned next_random(unsigned *state) {
  *state = *state * 1664525u + 1013904223u;
  return *state >> 16;
}

static void read_all_of(const ohm_finding *finding) {
  for (int i = 0; i < OC_FIELDS; i++) {
    ohm_finding_number(finding, i);
    for (size_t index = 0; index < 20; index++) {
      const char *text = ohm_finding_text(finding, i, index);
      if (text)
        ck_assert_uint_lt(strlen(text), sizeof *finding);
    }
  }
  ck_assert_int_ge(ohm_finding_verdict(finding), OHM_WITHIN);
  ck_assert_int_le(ohm_finding_verdict(finding), OHM_UNDECIDED);
  ck_assert_int_ge(oc_finding_reason(finding), OHM_REASON_CONFORMS);
  ck_assert_int_le(oc_finding_reason(finding), OHM_REASON_SHORTED);
  ck_assert_int_le(ohm_finding_job(finding), OHM_UNDECIDED);
}

START_TEST(asking_storage_that_was_never_filled_does_no_harm)
{
  ohm_finding finding;
  unsigned state = 1;
  for (int byte = 0; byte < 256; byte++) {
    memset(&finding, byte, sizeof finding);
    read_all_of(&finding);
  }
  for (int round = 0; round < 2000; round++) {
    for (size_t i = 0; i < sizeof finding; i++)
      ((unsigned char *)&finding)[i] = (unsigned char)next_random(&state);
    read_all_of(&finding);
  }
}
END_TEST

/* As C makes it, or as a caller clears it: every field absent, no report. */
START_TEST(a_zeroed_or_random_finding_is_absent_everywhere)
{
  static const int bytes[] = {0x00, 0x55, 0xFF};
  for (size_t i = 0; i < sizeof bytes / sizeof bytes[0]; i++) {
    ohm_finding finding;
    memset(&finding, bytes[i], sizeof finding);
    for (int field = 0; field < OC_FIELDS; field++) {
      ck_assert(isnan(ohm_finding_number(&finding, field)));
      ck_assert_ptr_null(ohm_finding_text(&finding, field, 0));
    }
    ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_UNDECIDED);
    ck_assert_int_eq(ohm_finding_job(&finding), OHM_UNDECIDED);
    ck_assert_uint_eq(oc_report_print(&finding, NULL, 0), 0);
    ck_assert_uint_eq(oc_report_print_budget(&finding, NULL, 0), 0);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "finding", every_field_has_a_name_a_meaning_and_a_kind,
      the_fields_are_those_of_the_header_in_its_order, a_field_that_is_none_has_nothing,
      every_field_of_a_cleared_finding_is_absent, every_field_of_no_finding_is_absent,
      what_was_filled_in_is_read_by_field, a_field_is_read_by_its_kind_alone,
      a_list_holds_each_entry_once_and_ends_with_null, every_assumption_has_a_sentence_of_its_own,
      a_copy_is_independent, a_long_text_is_cut_between_characters, a_text_that_just_fits_is_whole,
      asking_storage_that_was_never_filled_does_no_harm,
      a_zeroed_or_random_finding_is_absent_everywhere);
}
