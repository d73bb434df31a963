/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

#include "../../lib/ground/words.h"

static struct oc_words words_of(const char *text) {
  return (struct oc_words){text, strlen(text)};
}

START_TEST(a_word_is_taken_with_the_spaces_around_it)
{
  struct oc_words words = words_of(" \tkohm \t2");
  ck_assert(oc_words_take(&words, "kohm"));
  ck_assert_uint_eq(words.length, 1);
  ck_assert_str_eq(words.text, "2");
}
END_TEST

START_TEST(what_is_not_there_takes_no_byte_but_spaces)
{
  struct oc_words words = words_of(" koh");
  double value;
  ck_assert(!oc_words_take(&words, "kohm"));
  ck_assert(!oc_words_number(&words, &value));
  ck_assert(!oc_words_take_plus_minus(&words));
  ck_assert_str_eq(words.text, "koh");
  ck_assert_uint_eq(words.length, 3);
}
END_TEST

START_TEST(a_number_is_taken_up_to_its_last_digit)
{
  struct oc_words words = words_of("21.5C");
  double value;
  ck_assert(oc_words_number(&words, &value));
  CHECK_NEAR(value, 21.5, 0);
  ck_assert_str_eq(words.text, "C");
}
END_TEST

START_TEST(plus_minus_is_the_sign_or_its_two_letters)
{
  struct oc_words sign = words_of("\xC2\xB1 1");
  struct oc_words letters = words_of("+-1");
  struct oc_words minus_plus = words_of("-+1");
  ck_assert(oc_words_take_plus_minus(&sign));
  ck_assert_str_eq(sign.text, "1");
  ck_assert(oc_words_take_plus_minus(&letters));
  ck_assert_str_eq(letters.text, "1");
  ck_assert(!oc_words_take_plus_minus(&minus_plus));
}
END_TEST

/* In memory of its own size, so that a checker of memory sees a read past it. */
START_TEST(nothing_is_read_past_the_length)
{
  static const char text[] = "  25\xC2\xB1";
  for (size_t length = 0; length < sizeof text; length++) {
    char *exact = malloc(length > 0 ? length : 1);
    memcpy(exact, text, length);
    struct oc_words words = {exact, length};
    double value;
    bool number = oc_words_number(&words, &value);
    ck_assert_int_eq(number, length >= 3);
    ck_assert_int_eq(oc_words_take_plus_minus(&words), length == 6);
    oc_words_take(&words, "longer than what is left");
    free(exact);
  }
}
END_TEST

START_TEST(a_nul_byte_is_no_end_and_no_space)
{
  struct oc_words words = {"\0k", 2};
  ck_assert(!oc_words_take(&words, "k"));
  ck_assert_uint_eq(words.length, 2);
}
END_TEST

START_TEST(a_failure_quotes_what_was_given)
{
  ohm_error error;
  ck_assert_int_eq(oc_words_fail(&error, OHM_BAD_SYNTAX, "2\n", " is no x; ", "write 1"),
                   OHM_BAD_SYNTAX);
  ck_assert_str_eq(error.message, "\"2?\" is no x; write 1");
  ck_assert_int_eq(error.line, 0);
}
END_TEST

START_TEST(a_failure_quotes_a_very_long_text_in_part)
{
  static char text[100000];
  memset(text, '9', sizeof text - 1);
  ohm_error error;
  oc_words_fail(&error, OHM_BAD_SYNTAX, text, " is no x; ", "write 1");
  ck_assert_ptr_nonnull(strstr(error.message, "9...\" is no x; write 1"));
}
END_TEST

int main(void) {
  return RUN_TESTS("words", a_word_is_taken_with_the_spaces_around_it,
                   what_is_not_there_takes_no_byte_but_spaces,
                   a_number_is_taken_up_to_its_last_digit,
                   plus_minus_is_the_sign_or_its_two_letters, nothing_is_read_past_the_length,
                   a_nul_byte_is_no_end_and_no_space, a_failure_quotes_what_was_given,
                   a_failure_quotes_a_very_long_text_in_part);
}
