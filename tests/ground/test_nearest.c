/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

static const char *const words[] = {"sensor", "meter", "reference", "level", NULL, "SOURCE"};
enum { COUNT = sizeof words / sizeof words[0] };

static void check_nearest(const char *word, const char *want) {
  const char *got = ohm_nearest(word, words, COUNT);
  if (want)
    ck_assert_str_eq(got, want);
  else
    ck_assert_ptr_null(got);
}

START_TEST(one_slip_of_any_kind_is_near)
{
  check_nearest("sensoor", "sensor");
  check_nearest("senor", "sensor");
  check_nearest("sensar", "sensor");
  check_nearest("sesnor", "sensor");
}
END_TEST

START_TEST(case_does_not_count)
{
  check_nearest("METER", "meter");
  check_nearest("source", "SOURCE");
}
END_TEST

START_TEST(a_third_of_the_letters_may_differ_and_no_more)
{
  check_nearest("rafarance", "reference");
  check_nearest("rafaranca", NULL);
}
END_TEST

START_TEST(a_word_with_nothing_in_common_is_not_near)
{
  static const char *const letters[] = {"a"};
  ck_assert_ptr_null(ohm_nearest("b", letters, 1));
  ck_assert_ptr_null(ohm_nearest("", letters, 1));
  check_nearest("xyz", NULL);
}
END_TEST

START_TEST(of_two_as_near_the_first_is_taken)
{
  static const char *const pair[] = {"t_a", "t_c"};
  ck_assert_ptr_eq(ohm_nearest("t_b", pair, 2), pair[0]);
}
END_TEST

START_TEST(a_nearer_word_later_in_the_list_is_taken)
{
  static const char *const pair[] = {"tables", "table"};
  ck_assert_ptr_eq(ohm_nearest("table", pair, 2), pair[1]);
}
END_TEST

START_TEST(words_of_more_than_64_bytes_are_passed_over)
{
  char word[66];
  memset(word, 'a', 65);
  word[65] = '\0';
  const char *const list[] = {word, word + 1};
  ck_assert_ptr_null(ohm_nearest(word, list, 2));
  ck_assert_ptr_eq(ohm_nearest(word + 1, list, 2), word + 1);
}
END_TEST

START_TEST(a_null_gives_null)
{
  ck_assert_ptr_null(ohm_nearest(NULL, words, COUNT));
  ck_assert_ptr_null(ohm_nearest("meter", NULL, 1));
}
END_TEST

int main(void) {
  return RUN_TESTS("nearest", one_slip_of_any_kind_is_near, case_does_not_count,
                   a_third_of_the_letters_may_differ_and_no_more,
                   a_word_with_nothing_in_common_is_not_near, of_two_as_near_the_first_is_taken,
                   a_nearer_word_later_in_the_list_is_taken,
                   words_of_more_than_64_bytes_are_passed_over, a_null_gives_null);
}
