/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

#include "../../lib/ground/number.h"
#include "../../lib/ground/status.h"

static bool ends_with(const char *text, const char *end) {
  size_t length = strlen(text);
  size_t tail = strlen(end);
  return length >= tail && strcmp(text + length - tail, end) == 0;
}

START_TEST(every_status_has_a_name_of_its_own)
{
  ck_assert_str_eq(ohm_status_name(OHM_OK), "ok");
  ck_assert_str_eq(ohm_status_name(OHM_OUT_OF_RANGE), "out_of_range");
  for (int a = OHM_OK; a <= OHM_NO_MEMORY; a++)
    for (int b = OHM_OK; b < a; b++)
      ck_assert_str_ne(ohm_status_name(a), ohm_status_name(b));
}
END_TEST

START_TEST(every_failure_has_a_sentence_of_its_own_that_says_what_to_do)
{
  for (int a = OHM_NULL_ARGUMENT; a <= OHM_NO_MEMORY; a++) {
    ck_assert_ptr_nonnull(strstr(ohm_status_text(a), ": "));
    for (int b = OHM_OK; b < a; b++)
      ck_assert_str_ne(ohm_status_text(a), ohm_status_text(b));
  }
}
END_TEST

START_TEST(a_value_that_is_no_status_is_unknown_and_the_sentence_says_so)
{
  static const int no_status[] = {-1, OHM_NO_MEMORY + 1, 1000000, -2147483647 - 1, 2147483647};
  for (size_t i = 0; i < sizeof no_status / sizeof no_status[0]; i++) {
    ck_assert_str_eq(ohm_status_name(no_status[i]), "unknown");
    ck_assert_ptr_nonnull(strstr(ohm_status_text(no_status[i]), "no status"));
  }
}
END_TEST

START_TEST(the_running_version_is_that_of_the_header)
{ ck_assert_str_eq(ohm_version(), OHM_VERSION); }
END_TEST

START_TEST(a_text_counts_what_does_not_fit_and_stays_ended)
{
  for (size_t size = 0; size < 12; size++) {
    char buffer[12];
    memset(buffer, '#', sizeof buffer);
    struct oc_text text = oc_text_begin(buffer, size);
    oc_text_add(&text, "abcd");
    oc_text_add_count(&text, 0);
    oc_text_add_number(&text, 2.5);
    ck_assert_uint_eq(text.length, 8);
    if (size > 0) {
      size_t kept = size - 1 < 8 ? size - 1 : 8;
      ck_assert_uint_eq(strlen(buffer), kept);
      ck_assert_int_eq(memcmp(buffer, "abcd02.5", kept), 0);
    }
    for (size_t i = size; i < sizeof buffer; i++)
      ck_assert_int_eq(buffer[i], '#');
  }
}
END_TEST

START_TEST(a_count_is_written_to_its_last_digit)
{
  char buffer[32];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  oc_text_add_count(&text, (size_t)4294967295u);
  ck_assert_str_eq(buffer, "4294967295");
  text = oc_text_begin(buffer, sizeof buffer);
  oc_text_add_count(&text, (size_t)-1);
  ck_assert_uint_eq(text.length, strlen(buffer));
}
END_TEST

static const char *quoted(const char *bytes, size_t count) {
  static char buffer[64];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  oc_text_add_quoted(&text, bytes, count);
  return buffer;
}

START_TEST(what_is_quoted_carries_no_control_byte)
{
  ck_assert_str_eq(quoted("a\0b\033[2J\n\x7F", 9), "a?b?[2J??");
  ck_assert_str_eq(quoted("", 0), "");
}
END_TEST

START_TEST(what_is_quoted_is_cut_after_40_bytes_between_characters)
{
  static const char forty[] = "0123456789012345678901234567890123456789";
  char longer[64];
  ck_assert_str_eq(quoted(forty, 40), forty);
  strcpy(longer, forty);
  strcpy(longer + 40, "x");
  ck_assert_str_eq(quoted(longer, 41), "0123456789012345678901234567890123456789...");
  strcpy(longer + 38, "\xE2\x84\xA6");
  ck_assert_str_eq(quoted(longer, 41), "01234567890123456789012345678901234567...");
}
END_TEST

START_TEST(bytes_that_are_no_characters_are_quoted_without_end)
{
  char stray[60];
  memset(stray, '\x80', sizeof stray);
  ck_assert_str_eq(quoted(stray, sizeof stray), "...");
}
END_TEST

START_TEST(a_failure_fills_in_every_member)
{
  ohm_error error;
  memset(&error, 0x55, sizeof error);
  ck_assert_int_eq(oc_fail(&error, OHM_NOT_FOUND, "no ", "such", (const char *)NULL),
                   OHM_NOT_FOUND);
  ck_assert_int_eq(error.status, OHM_NOT_FOUND);
  ck_assert_int_eq(error.line, 0);
  ck_assert_int_eq(error.column, 0);
  ck_assert_str_eq(error.message, "no such");
}
END_TEST

START_TEST(a_place_is_told_as_far_as_it_is_known)
{
  ohm_error error;
  oc_fail_at(&error, OHM_BAD_SYNTAX, "a.csv", 3, 5, "bad", (const char *)NULL);
  ck_assert_str_eq(error.message, "a.csv, line 3, column 5: bad");
  ck_assert_int_eq(error.line, 3);
  ck_assert_int_eq(error.column, 5);
  oc_fail_at(&error, OHM_BAD_SYNTAX, "a.csv", 3, 0, "bad", (const char *)NULL);
  ck_assert_str_eq(error.message, "a.csv, line 3: bad");
  oc_fail_at(&error, OHM_BAD_SYNTAX, "a.csv", 0, 0, "bad", (const char *)NULL);
  ck_assert_str_eq(error.message, "a.csv: bad");
}
END_TEST

START_TEST(a_failure_without_an_error_is_only_its_status)
{
  ck_assert_int_eq(oc_fail(NULL, OHM_TOO_LARGE, "x", (const char *)NULL), OHM_TOO_LARGE);
  ck_assert_int_eq(oc_fail_at(NULL, OHM_TOO_LARGE, "x", 1, 1, "x", (const char *)NULL),
                   OHM_TOO_LARGE);
  ck_assert_int_eq(oc_fail_memory(NULL), OHM_NO_MEMORY);
  oc_error_clear(NULL);
}
END_TEST

/* A character of three bytes stands across each place where the cut may fall. */
START_TEST(a_message_too_long_is_cut_between_characters)
{
  for (size_t before = 480; before < 500; before++) {
    char name[600] = "";
    memset(name, 'n', before);
    for (size_t at = before; at + 3 < sizeof name; at += 3)
      strcpy(name + at, "\xE2\x84\xA6");
    ohm_error error;
    oc_fail_at(&error, OHM_BAD_SYNTAX, name, 1, 1, "bad", (const char *)NULL);
    size_t length = strlen(error.message);
    ck_assert_uint_lt(length, sizeof error.message);
    ck_assert(ends_with(error.message, "..."));
    size_t characters = 0;
    for (size_t i = before; i < length - 3; i++)
      characters += ((unsigned char)error.message[i] & 0xC0) != 0x80;
    if (length - 3 > before)
      ck_assert_uint_eq(length - 3 - before, 3 * characters);
    ck_assert_uint_ge(length, sizeof error.message - 4);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "status", every_status_has_a_name_of_its_own,
      every_failure_has_a_sentence_of_its_own_that_says_what_to_do,
      a_value_that_is_no_status_is_unknown_and_the_sentence_says_so,
      the_running_version_is_that_of_the_header, a_text_counts_what_does_not_fit_and_stays_ended,
      a_count_is_written_to_its_last_digit, what_is_quoted_carries_no_control_byte,
      what_is_quoted_is_cut_after_40_bytes_between_characters,
      bytes_that_are_no_characters_are_quoted_without_end, a_failure_fills_in_every_member,
      a_place_is_told_as_far_as_it_is_known, a_failure_without_an_error_is_only_its_status,
      a_message_too_long_is_cut_between_characters);
}
