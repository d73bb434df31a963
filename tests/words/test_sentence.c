/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include "../../lib/bench/finding.h"
#include "../../lib/words/sentence.h"

/* What a brace of that form says of a number. */
static const char *said(const char *form, double value) {
  static char buffer[80];
  const ohm_field field = OHM_FIELD_LATE_K;
  struct oc_text out = oc_text_begin(buffer, sizeof buffer);
  ohm_finding finding = finding_new();
  oc_finding_set_number(&finding, field, value);
  oc_sentence_add(&out, &finding, form, &field);
  return buffer;
}

START_TEST(a_resistance_has_three_digits_unless_told_otherwise)
{
  ck_assert_str_eq(said("{ohm}", 2312.4), "2.31 k");
  ck_assert_str_eq(said("{2 ohm}", 2312.4), "2.3 k");
  ck_assert_str_eq(said("{4 ohm}", 2312.4), "2.312 k");
}
END_TEST

START_TEST(a_difference_has_no_sign_and_a_tenth_when_it_is_small)
{
  ck_assert_str_eq(said("{K}", -0.64), "0.6 C");
  ck_assert_str_eq(said("{K}", 11.4), "11 C");
  ck_assert_str_eq(said("{+K}", -3), "0.0 C");
}
END_TEST

START_TEST(a_fan_is_late_or_early_or_stays_off)
{
  ck_assert_str_eq(said("{late}", 11.4), "11 C late");
  ck_assert_str_eq(said("{late}", -11.4), "11 C early");
  ck_assert_str_eq(said("{early}", 11.4), "11 C early");
  ck_assert_str_eq(said("{late}", NAN), "off up to 130 C");
}
END_TEST

START_TEST(give_or_take_is_never_less_than_half)
{
  ck_assert_str_eq(said("{+-}", 0.51), ", give or take 0.6");
  ck_assert_str_eq(said("{+-}", 1.2), ", give or take 1.5");
  ck_assert_str_eq(said("{+-}", 2), ", give or take 2");
  ck_assert_str_eq(said("{+-}", 31), ", give or take 40");
}
END_TEST

START_TEST(nearly_certain_is_said_to_be_no_more_than_that)
{
  ck_assert_str_eq(said("{in 100}", 0.98), "98 in 100");
  ck_assert_str_eq(said("{in 100}", 0.9999), "more than 99 in 100");
  ck_assert_str_eq(said("{of 100}", 0.999), "99.9");
}
END_TEST

START_TEST(other_numbers_are_said_with_their_unit_or_alone)
{
  ck_assert_str_eq(said("{C}", 21.46), "21.5 C");
  ck_assert_str_eq(said("{C}", -10), "-10.0 C");
  ck_assert_str_eq(said("{h}", 14.02), "14 h");
  ck_assert_str_eq(said("{.2} V", 0.966), "0.97 V");
  ck_assert_str_eq(said("{} tests", 8), "8 tests");
}
END_TEST

START_TEST(what_rounds_to_zero_has_no_minus)
{
  ck_assert_str_eq(said("{C}", -0.04), "0.0 C");
  ck_assert_str_eq(said("{.0}", -0.4), "0");
}
END_TEST

START_TEST(what_is_absent_is_said_as_told)
{
  ck_assert_str_eq(said("at {C|no temperature}", NAN), "at no temperature");
  ck_assert_str_eq(said("at {C|no temperature}", 20), "at 20.0 C");
  ck_assert_str_eq(said("20.0 C{+-|}", NAN), "20.0 C");
}
END_TEST

START_TEST(each_brace_takes_the_next_field)
{
  char buffer[80];
  struct oc_text out = oc_text_begin(buffer, sizeof buffer);
  ohm_finding finding = typed("ntc-2k45-20c", "2.31k", "21.5C", OHM_PLACE_SENSOR);
  oc_sentence_add(&out, &finding, "{text} at {C}",
                  (const ohm_field[]){OHM_FIELD_READ, OHM_FIELD_AT_C});
  ck_assert_str_eq(buffer, "2.31 k at 21.5 C");
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "sentence", a_resistance_has_three_digits_unless_told_otherwise,
      a_difference_has_no_sign_and_a_tenth_when_it_is_small, a_fan_is_late_or_early_or_stays_off,
      give_or_take_is_never_less_than_half, nearly_certain_is_said_to_be_no_more_than_that,
      other_numbers_are_said_with_their_unit_or_alone, what_rounds_to_zero_has_no_minus,
      what_is_absent_is_said_as_told, each_brace_takes_the_next_field);
}
