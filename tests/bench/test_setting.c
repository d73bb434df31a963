/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <math.h>
#include <string.h>

#include "../../lib/bench/setting.h"

static const int no_setting = 9999;

START_TEST(every_setting_is_found_by_its_name)
{
  for (size_t i = 0; i < ohm_setting_count(); i++) {
    int setting = ohm_setting_at(i);
    ck_assert_int_gt(setting, 0);
    ck_assert_int_eq(ohm_setting_named(ohm_setting_name(setting)), setting);
  }
  ck_assert_int_eq(ohm_setting_at(ohm_setting_count()), 0);
}
END_TEST

START_TEST(no_number_stands_for_two_settings)
{
  for (size_t i = 0; i < ohm_setting_count(); i++)
    for (size_t j = 0; j < i; j++)
      ck_assert_int_ne(ohm_setting_at(i), ohm_setting_at(j));
}
END_TEST

START_TEST(a_name_is_found_in_capitals_and_with_hyphens_too)
{
  ck_assert_int_eq(ohm_setting_named("Fan-C"), OHM_SETTING_FAN_C);
  ck_assert_int_eq(ohm_setting_named("fan"), 0);
  ck_assert_int_eq(ohm_setting_named("fan_cc"), 0);
  ck_assert_int_eq(ohm_setting_named(""), 0);
  ck_assert_int_eq(ohm_setting_named(NULL), 0);
}
END_TEST

START_TEST(every_example_can_be_read)
{
  for (size_t i = 0; i < ohm_setting_count(); i++) {
    ohm_error error;
    double number;
    int setting = ohm_setting_at(i);
    ohm_status status = oc_setting_read(setting, ohm_setting_example(setting), &number, &error);
    ck_assert_msg(status == OHM_OK, "%s: %s", ohm_setting_name(setting), error.message);
  }
}
END_TEST

START_TEST(every_setting_says_what_it_is_and_which_verb_looks_at_it)
{
  for (size_t i = 0; i < ohm_setting_count(); i++) {
    char allowed[200];
    int setting = ohm_setting_at(i);
    int verbs = 0;
    for (int verb = 0; verb <= OHM_VERB_EXPECT; verb++)
      verbs += ohm_setting_is_of(setting, (ohm_verb)verb);
    ck_assert_int_gt(verbs, 0);
    ck_assert_int_gt(ohm_setting_kind_of(setting), 0);
    ck_assert_ptr_nonnull(ohm_setting_meaning(setting));
    ck_assert_ptr_nonnull(ohm_setting_default(setting));
    ck_assert_uint_gt(ohm_setting_allowed(setting, allowed, sizeof allowed), 0);
  }
}
END_TEST

START_TEST(the_name_of_a_verb_inside_another_word_is_not_that_verb)
{
  ck_assert_int_eq(ohm_setting_is_of(OHM_SETTING_PULL_UP, OHM_VERB_SIGNAL), 1);
  ck_assert_int_eq(ohm_setting_is_of(OHM_SETTING_PULL_UP, OHM_VERB_PINS), 0);
  ck_assert_int_eq(ohm_setting_is_of(no_setting, OHM_VERB_CHECK), 0);
  ck_assert_int_eq(ohm_setting_is_of(OHM_SETTING_PULL_UP, (ohm_verb)no_setting), 0);
}
END_TEST

START_TEST(what_is_no_setting_has_nothing)
{
  double number;
  ck_assert_ptr_null(ohm_setting_name(no_setting));
  ck_assert_ptr_null(ohm_setting_default(no_setting));
  ck_assert_ptr_null(ohm_setting_example(no_setting));
  ck_assert_ptr_null(ohm_setting_meaning(no_setting));
  ck_assert_int_eq(ohm_setting_kind_of(no_setting), 0);
  ck_assert_uint_eq(ohm_setting_allowed(no_setting, NULL, 0), 0);
  ck_assert_int_eq(oc_setting_read(no_setting, "1", &number, NULL), OHM_NOT_FOUND);
}
END_TEST

START_TEST(what_is_allowed_is_a_phrase_with_units)
{
  char allowed[80];
  ohm_setting_allowed(OHM_SETTING_FAN_C, allowed, sizeof allowed);
  ck_assert_str_eq(allowed, "above 0C and below 130C");
  ohm_setting_allowed(OHM_SETTING_LIMIT_K, allowed, sizeof allowed);
  ck_assert_str_eq(allowed, "above 0C up to 100C");
  ohm_setting_allowed(OHM_SETTING_PLACE, allowed, sizeof allowed);
  ck_assert_str_eq(allowed, "sensor, plug_on, module");
}
END_TEST

/* The ends of an interval: which of them are allowed. */
START_TEST(an_end_is_allowed_where_the_list_says_so)
{
  static const struct {
    int setting;
    const char *text;
    ohm_status status;
  } ends[] = {
      {OHM_SETTING_LEVEL, "0.5", OHM_OUT_OF_RANGE},
      {OHM_SETTING_LEVEL, "0.51", OHM_OK},
      {OHM_SETTING_LEVEL, "1", OHM_OUT_OF_RANGE},
      {OHM_SETTING_FAN_C, "0C", OHM_OUT_OF_RANGE},
      {OHM_SETTING_FAN_C, "130C", OHM_OUT_OF_RANGE},
      {OHM_SETTING_FAN_C, "129.9C", OHM_OK},
      {OHM_SETTING_LIMIT_K, "0", OHM_OUT_OF_RANGE},
      {OHM_SETTING_LIMIT_K, "100", OHM_OK},
      {OHM_SETTING_LIMIT_K, "101", OHM_OUT_OF_RANGE},
      {OHM_SETTING_MOVED_K, "0", OHM_OK},
      {OHM_SETTING_MOVED_K, "20", OHM_OK},
      {OHM_SETTING_MOVED_K, "21", OHM_OUT_OF_RANGE},
      {OHM_SETTING_HIDDEN_OHM, "0", OHM_OK},
      {OHM_SETTING_HIDDEN_OHM, "1M", OHM_OK},
      {OHM_SETTING_HIDDEN_OHM, "1.01M", OHM_OUT_OF_RANGE},
  };
  for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
    double number;
    ck_assert_msg(oc_setting_read(ends[i].setting, ends[i].text, &number, NULL) == ends[i].status,
                  "%s of %s", ends[i].text, ohm_setting_name(ends[i].setting));
  }
}
END_TEST

START_TEST(units_are_brought_to_that_of_the_name)
{
  static const struct {
    int setting;
    const char *text;
    double number;
  } units[] = {
      {OHM_SETTING_FAN_C, "206.6F", 97},
      {OHM_SETTING_LIMIT_K, "9F", 5},
      {OHM_SETTING_LIMIT_K, "5K", 5},
      {OHM_SETTING_CURRENT_MA, "100uA", 0.1},
      {OHM_SETTING_CURRENT_MA, "1A", 1000},
      {OHM_SETTING_AFTER_H, "7h", 7},
      {OHM_SETTING_OPEN_VOLT, "4900mV", 4.9},
      {OHM_SETTING_HIDDEN_OHM, "1.2k", 1200},
      {OHM_SETTING_UNDISTURBED, "yes", 1},
      {OHM_SETTING_UNDISTURBED, "no", 0},
      {OHM_SETTING_PLACE, "plug-on", OHM_PLACE_PLUG_ON},
      {OHM_SETTING_NEGATIVE, "BODY", OHM_NEGATIVE_BODY},
  };
  for (size_t i = 0; i < sizeof units / sizeof units[0]; i++) {
    double number = NAN;
    ck_assert_int_eq(oc_setting_read(units[i].setting, units[i].text, &number, NULL), OHM_OK);
    CHECK_NEAR(number, units[i].number, 1e-12 * fabs(units[i].number));
  }
}
END_TEST

START_TEST(a_mistake_says_what_was_given_what_is_allowed_and_an_example)
{
  ohm_error error;
  double number;
  ck_assert_int_eq(oc_setting_read(OHM_SETTING_FAN_C, "500C", &number, &error), OHM_OUT_OF_RANGE);
  ck_assert_str_eq(error.message,
                   "fan_c: \"500C\" cannot be used: write above 0C and below 130C, such as 97C");
  ck_assert(isnan(number));
  ck_assert_int_eq(oc_setting_read(OHM_SETTING_PLACE, "plug", &number, &error), OHM_BAD_SYNTAX);
  ck_assert_ptr_nonnull(strstr(error.message, "sensor, plug_on, module"));
}
END_TEST

START_TEST(a_number_written_in_its_notation_reads_back)
{
  static const struct {
    int setting;
    double number;
  } numbers[] = {{OHM_SETTING_FAN_C, 96.7},
                 {OHM_SETTING_LIMIT_K, 1.0 / 3},
                 {OHM_SETTING_CURRENT_MA, 0.1},
                 {OHM_SETTING_TOLERANCE_PERCENT, 2.5},
                 {OHM_SETTING_AFTER_H, 7.25},
                 {OHM_SETTING_HIDDEN_OHM, 47},
                 {OHM_SETTING_LEVEL, 0.99},
                 {OHM_SETTING_OPEN_VOLT, 4.9},
                 {OHM_SETTING_UNDISTURBED, 1},
                 {OHM_SETTING_EXTEND, 0},
                 {OHM_SETTING_PLACE, OHM_PLACE_MODULE}};
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
    char text[OC_SETTING_TEXT_SIZE];
    double number = NAN;
    ck_assert_int_eq(oc_setting_print(numbers[i].setting, numbers[i].number, text, NULL), OHM_OK);
    ck_assert_int_eq(oc_setting_read(numbers[i].setting, text, &number, NULL), OHM_OK);
    ck_assert(number == numbers[i].number);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("setting", every_setting_is_found_by_its_name, no_number_stands_for_two_settings,
                   a_name_is_found_in_capitals_and_with_hyphens_too, every_example_can_be_read,
                   every_setting_says_what_it_is_and_which_verb_looks_at_it,
                   the_name_of_a_verb_inside_another_word_is_not_that_verb,
                   what_is_no_setting_has_nothing, what_is_allowed_is_a_phrase_with_units,
                   an_end_is_allowed_where_the_list_says_so, units_are_brought_to_that_of_the_name,
                   a_mistake_says_what_was_given_what_is_allowed_and_an_example,
                   a_number_written_in_its_notation_reads_back);
}
