/* SPDX-License-Identifier: MIT */
#include "../../lib/sensors/misprint.h"
#include "../support.h"

#include <string.h>

static void check_slip(const char *given, double meant, enum oc_misprint_kind kind,
                       const char *text) {
  struct oc_misprint slip = oc_misprint_undo(given, meant * 0.995, meant, meant * 1.005);
  ck_assert_msg(slip.kind == kind, "%s is slip %d", given, slip.kind);
  ck_assert_str_eq(slip.text, text);
}

START_TEST(a_misplaced_point_is_moved_back)
{
  check_slip("245", 2450, OC_MISPRINT_POINT, "2450");
  check_slip("16.25", 1.625, OC_MISPRINT_POINT, "1.625");
  check_slip("2.45", 2450, OC_MISPRINT_POINT, "2450");
}
END_TEST

START_TEST(exchanged_digits_are_exchanged_back)
{
  check_slip("16250", 16520, OC_MISPRINT_EXCHANGE, "16520");
  check_slip("5.23", 52.3, OC_MISPRINT_POINT, "52.3");
  check_slip("52.31", 53.21, OC_MISPRINT_EXCHANGE, "53.21");
}
END_TEST

/* ILX Lightwave LDT-5525 manual, table A.1: 5331 at 40 C, where 5231 is meant. */
START_TEST(one_digit_is_put_right)
{ check_slip("5331", 5230.7, OC_MISPRINT_DIGIT, "5231"); }
END_TEST

START_TEST(a_lost_digit_is_put_in_and_an_added_one_left_out)
{
  check_slip("1234", 12534, OC_MISPRINT_LOST, "12534");
  check_slip("12634", 1234, OC_MISPRINT_ADDED, "1234");
}
END_TEST

START_TEST(the_nearest_of_the_likeliest_kind_is_taken)
{
  struct oc_misprint slip = oc_misprint_undo("2999", 2000, 2420, 2600);
  ck_assert_int_eq(slip.kind, OC_MISPRINT_DIGIT);
  ck_assert_str_eq(slip.text, "2399");
}
END_TEST

START_TEST(nothing_is_suggested_when_no_slip_leads_there)
{
  check_slip("4000", 2711, OC_MISPRINT_NONE, "");
  check_slip("4e3", 400, OC_MISPRINT_NONE, "");
  check_slip("", 400, OC_MISPRINT_NONE, "");
  check_slip("123456789012345678901234", 400, OC_MISPRINT_NONE, "");
  ck_assert_int_eq(oc_misprint_undo("245", NAN, NAN, NAN).kind, OC_MISPRINT_NONE);
}
END_TEST

START_TEST(every_slip_has_words)
{
  for (int kind = OC_MISPRINT_POINT; kind < OC_MISPRINT_NONE; kind++)
    ck_assert_uint_gt(strlen(oc_misprint_words((enum oc_misprint_kind)kind)), 0);
  ck_assert_str_eq(oc_misprint_words(OC_MISPRINT_NONE), "");
}
END_TEST

int main(void) {
  return RUN_TESTS("slip", a_misplaced_point_is_moved_back, exchanged_digits_are_exchanged_back,
                   one_digit_is_put_right, a_lost_digit_is_put_in_and_an_added_one_left_out,
                   the_nearest_of_the_likeliest_kind_is_taken,
                   nothing_is_suggested_when_no_slip_leads_there, every_slip_has_words);
}
