/* SPDX-License-Identifier: MIT */
#include "../support.h"
#include "../../lib/evidence/pair.h"

#include <string.h>

START_TEST(a_pair_is_two_pins_and_a_reading)
{
  static const struct {
    const char *text;
    int from;
    int to;
    double r_ohm;
  } rows[] = {{"1-2=2.31k", OC_TERMINAL_1, OC_TERMINAL_1 + 1, 2310},
              {" 4 - body = 480 ", OC_TERMINAL_1 + 3, OC_TERMINAL_BODY, 480},
              {"C-D=1k5", OC_TERMINAL_A + 2, OC_TERMINAL_A + 3, 1500},
              {"1-minus=60.5", OC_TERMINAL_1, OC_TERMINAL_MINUS, 60.5}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    oc_pair pair;
    PROVOKES(oc_pair_read, OHM_OK, oc_pair_read(rows[i].text, &pair, NULL));
    ck_assert_int_eq(pair.from, rows[i].from);
    ck_assert_int_eq(pair.to, rows[i].to);
    CHECK_NEAR(pair.reading.r_ohm, rows[i].r_ohm, 1e-9);
  }
}
END_TEST

START_TEST(what_is_no_pair_is_refused_with_how_to_write_it)
{
  static const char *const bad[] = {"",       "1",      "1-2",     "1-2=",   "0-1=5", "I-1=5",
                                    "1_2=5",  "2.31k",  "body=5",  "1-=5",   "-2=5",  "1-2=2,31k",
                                    "1-2 5k", "12-3=5", "1-2-3=5", "1-2=21C"};
  oc_pair pair;
  ohm_error error;
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    PROVOKES(oc_pair_read, OHM_BAD_SYNTAX, oc_pair_read(bad[i], &pair, &error));
    ck_assert(strlen(error.message) > 20);
    ck_assert_int_eq(pair.from, 0);
  }
  PROVOKES(oc_pair_read, OHM_BAD_SYNTAX, oc_pair_read("2-2=5", &pair, &error));
  ck_assert_ptr_nonnull(strstr(error.message, "one pin twice"));
  PROVOKES(oc_pair_read, OHM_OUT_OF_RANGE, oc_pair_read("1-2=1e13", &pair, &error));
  PROVOKES(oc_pair_read, OHM_NULL_ARGUMENT, oc_pair_read(NULL, &pair, &error));
  PROVOKES(oc_pair_read, OHM_NULL_ARGUMENT, oc_pair_read("1-2=5", NULL, &error));
}
END_TEST

START_TEST(only_two_terminals_are_meant_as_a_pair)
{
  ck_assert(oc_pair_is_meant("1-2") && oc_pair_is_meant("B-body") && oc_pair_is_meant("1-1"));
  static const char *const others[] = {"",     "1", "1-", "1-2-3", "fuse-look", "battery-volts",
                                       "1-2 x"};
  for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
    ck_assert(!oc_pair_is_meant(others[i]));
}
END_TEST

START_TEST(every_terminal_is_called_as_it_is_written)
{
  ck_assert_str_eq(oc_terminal_name(OC_TERMINAL_1), "1");
  ck_assert_str_eq(oc_terminal_name(OC_TERMINAL_A + 7), "H");
  ck_assert_str_eq(oc_terminal_name(OC_TERMINAL_BODY), "body");
  ck_assert_str_eq(oc_terminal_name(OC_TERMINAL_MINUS), "minus");
  ck_assert_ptr_null(oc_terminal_name(0));
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "pair", a_pair_is_two_pins_and_a_reading, what_is_no_pair_is_refused_with_how_to_write_it,
      only_two_terminals_are_meant_as_a_pair, every_terminal_is_called_as_it_is_written);
}
