/* SPDX-License-Identifier: MIT */
#include "../../lib/evidence/module.h"
#include "../support.h"

#include <string.h>

static const double specials[] = {NAN, INFINITY, -INFINITY, 1e300, -1e300, -1};
enum { SPECIALS = sizeof specials / sizeof specials[0] };

/* ---- notations ---- */

START_TEST(a_pull_up_is_read_with_what_it_is_within)
{
  static const struct {
    const char *text;
    double cold_ohm, hot_ohm, changeover_c, percent;
  } all[] = {{"1k", 1000, 0, 0, 0},
             {"2.74k+-1%", 2740, 0, 0, 1},
             {"1k00", 1000, 0, 0, 0},
             {"10k,1k@50C", 10000, 1000, 50, 0},
             {"4k,348@40C+-2%", 4000, 348, 40, 2},
             {"20k, 952 @ 185F", 20000, 952, 85, 0},
             {"1000 ohm \xC2\xB1 0.5 %", 1000, 0, 0, 0.5}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    oc_module module = OC_MODULE_INIT;
    ohm_error error;
    PROVOKES(oc_pull_up_read, OHM_OK, oc_pull_up_read(all[i].text, &module, &error));
    CHECK_NEAR(module.pull_up_ohm, all[i].cold_ohm, 1e-9);
    CHECK_NEAR(module.hot_pull_up_ohm, all[i].hot_ohm, 1e-9);
    CHECK_NEAR(module.changeover_c, all[i].changeover_c, 1e-9);
    CHECK_NEAR(module.pull_up_percent, all[i].percent, 1e-9);
    ck_assert_int_eq(module.pull_up_accuracy, all[i].percent > 0 ? OC_STATED : OC_ASSUMED);
    ck_assert_int_eq(error.status, OHM_OK);
  }
}
END_TEST

START_TEST(a_second_notation_replaces_the_first_and_leaves_the_supply)
{
  oc_module module = OC_MODULE_INIT;
  ck_assert_int_eq(oc_pull_up_read("10k,1k@50C+-1%", &module, NULL), OHM_OK);
  ck_assert_int_eq(oc_supply_read("5.02V+-10mV", &module, NULL), OHM_OK);
  ck_assert_int_eq(oc_pull_up_read("1k", &module, NULL), OHM_OK);
  ck_assert(module.hot_pull_up_ohm == 0 && module.pull_up_accuracy == OC_ASSUMED);
  CHECK_NEAR(module.supply_volt, 5.02, 1e-12);
  CHECK_NEAR(module.supply_limit_volt, 0.01, 1e-12);
}
END_TEST

static void check_refused(ohm_status status, const ohm_error *error, const char *text) {
  ck_assert_int_eq(error->status, (int)status);
  ck_assert_msg(strstr(error->message, "; write ") != NULL, "%s", error->message);
  ck_assert_msg(strstr(error->message, text) != NULL, "%s", error->message);
}

START_TEST(what_is_no_pull_up_is_refused_and_nothing_changes)
{
  static const char *const junk[] = {"",          "k",     "1k,",  "10k,1k",
                                     "10k,1k@50", "1k+-1", "1k x", "1k@50C"};
  static const char *const beyond[] = {"0",         "0.5",     "20M",        "1k,10k@50C",
                                       "1k,1k@50C", "1k+-60%", "10k,1k@900C"};
  ohm_error error;
  oc_module module = OC_MODULE_INIT;
  const oc_module before = module;
  for (size_t i = 0; i < sizeof junk / sizeof junk[0]; i++) {
    PROVOKES(oc_pull_up_read, OHM_BAD_SYNTAX, oc_pull_up_read(junk[i], &module, &error));
    check_refused(OHM_BAD_SYNTAX, &error, junk[i]);
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    PROVOKES(oc_pull_up_read, OHM_OUT_OF_RANGE, oc_pull_up_read(beyond[i], &module, &error));
    check_refused(OHM_OUT_OF_RANGE, &error, beyond[i]);
  }
  ck_assert(memcmp(&module, &before, sizeof module) == 0);
  PROVOKES(oc_pull_up_read, OHM_NULL_ARGUMENT, oc_pull_up_read(NULL, &module, &error));
  ck_assert_int_eq(oc_pull_up_read("1k", NULL, &error), OHM_NULL_ARGUMENT);
}
END_TEST

START_TEST(a_supply_is_read_and_refused_likewise)
{
  static const char *const junk[] = {"", "V", "5W", "5V+-", "5 V 5"};
  static const char *const beyond[] = {"0", "0.4V", "31V", "-5V", "5V+-2.5V", "5V+--1V"};
  ohm_error error;
  oc_module module = OC_MODULE_INIT;
  PROVOKES(oc_supply_read, OHM_OK, oc_supply_read("5", &module, &error));
  ck_assert(module.supply_volt == 5 && module.supply_accuracy == OC_ASSUMED);
  const oc_module before = module;
  for (size_t i = 0; i < sizeof junk / sizeof junk[0]; i++) {
    PROVOKES(oc_supply_read, OHM_BAD_SYNTAX, oc_supply_read(junk[i], &module, &error));
    check_refused(OHM_BAD_SYNTAX, &error, junk[i]);
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    PROVOKES(oc_supply_read, OHM_OUT_OF_RANGE, oc_supply_read(beyond[i], &module, &error));
    check_refused(OHM_OUT_OF_RANGE, &error, beyond[i]);
  }
  ck_assert(memcmp(&module, &before, sizeof module) == 0);
  PROVOKES(oc_supply_read, OHM_NULL_ARGUMENT, oc_supply_read(NULL, &module, &error));
}
END_TEST

START_TEST(volts_are_read_with_what_their_last_digit_is_worth)
{
  static const struct {
    const char *text;
    double v_volt, resolution_volt, limit_volt;
  } all[] = {{"0.97", 0.97, 0.01, 0},       {"0.970 V", 0.97, 0.001, 0},
             {"970mV", 0.97, 0.001, 0},     {"0.97V+-20mV", 0.97, 0.01, 0.02},
             {"4.9+-0.05", 4.9, 0.1, 0.05}, {"0", 0, 1, 0}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    oc_volts volts;
    PROVOKES(oc_volts_read, OHM_OK, oc_volts_read(all[i].text, &volts, NULL));
    CHECK_NEAR(volts.v_volt, all[i].v_volt, 1e-12);
    CHECK_NEAR(volts.resolution_volt, all[i].resolution_volt, 1e-12);
    CHECK_NEAR(volts.limit_volt, all[i].limit_volt, 1e-12);
    ck_assert_int_eq(volts.accuracy, all[i].limit_volt > 0 ? OC_STATED : OC_ASSUMED);
    ck_assert_int_eq(volts.negative, OHM_NEGATIVE_NOT_TOLD);
  }
}
END_TEST

START_TEST(what_is_no_reading_of_a_voltmeter_is_refused)
{
  static const char *const junk[] = {"", "V", "0.97A", "0.97+-", "0,97"};
  static const char *const beyond[] = {"-0.1", "31", "0.97+-40"};
  ohm_error error;
  oc_volts volts;
  for (size_t i = 0; i < sizeof junk / sizeof junk[0]; i++) {
    PROVOKES(oc_volts_read, OHM_BAD_SYNTAX, oc_volts_read(junk[i], &volts, &error));
    check_refused(OHM_BAD_SYNTAX, &error, junk[i]);
    ck_assert(isnan(volts.v_volt));
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    PROVOKES(oc_volts_read, OHM_OUT_OF_RANGE, oc_volts_read(beyond[i], &volts, &error));
    check_refused(OHM_OUT_OF_RANGE, &error, beyond[i]);
    ck_assert(isnan(volts.v_volt));
  }
  PROVOKES(oc_volts_read, OHM_NULL_ARGUMENT, oc_volts_read("1", NULL, &error));
}
END_TEST

START_TEST(degrees_are_read_in_either_unit)
{
  static const struct {
    const char *text;
    double t_c, resolution_k, limit_k;
  } all[] = {
      {"91C", 91, 0, 0},    {"-40C", -40, 0, 0},          {"212F", 100, 5.0 / 9, 0},
      {"91C+-2", 91, 0, 2}, {"212F+-9", 100, 5.0 / 9, 5}, {"91 \xC2\xB0\x43 +- 3.6F", 91, 0, 2}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    oc_reported reported;
    PROVOKES(oc_reported_read, OHM_OK, oc_reported_read(all[i].text, &reported, NULL));
    CHECK_NEAR(reported.t_c, all[i].t_c, 1e-12);
    CHECK_NEAR(reported.resolution_k, all[i].resolution_k, 1e-12);
    CHECK_NEAR(reported.limit_k, all[i].limit_k, 1e-12);
    ck_assert_int_eq(reported.accuracy, all[i].limit_k > 0 ? OC_STATED : OC_ASSUMED);
  }
}
END_TEST

START_TEST(what_no_module_reports_is_refused)
{
  static const char *const junk[] = {"", "C", "91K", "91C+-", "91", "91+-2"};
  static const char *const beyond[] = {"-61C", "301C", "91C+-21", "91C+--1"};
  ohm_error error;
  oc_reported reported;
  for (size_t i = 0; i < sizeof junk / sizeof junk[0]; i++) {
    PROVOKES(oc_reported_read, OHM_BAD_SYNTAX, oc_reported_read(junk[i], &reported, &error));
    check_refused(OHM_BAD_SYNTAX, &error, junk[i]);
    ck_assert(isnan(reported.t_c));
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    PROVOKES(oc_reported_read, OHM_OUT_OF_RANGE, oc_reported_read(beyond[i], &reported, &error));
    check_refused(OHM_OUT_OF_RANGE, &error, beyond[i]);
    ck_assert(isnan(reported.t_c));
  }
  PROVOKES(oc_reported_read, OHM_NULL_ARGUMENT, oc_reported_read("91C", NULL, &error));
}
END_TEST

/* ---- what a module reports ---- */

START_TEST(a_report_is_whole_degrees_of_one_byte)
{
  double shown_c;
  for (double t_c = -60; t_c <= 260; t_c += 0.1) {
    PROVOKES(ohm_reported_of, OHM_OK, ohm_reported_of(t_c, 0, &shown_c));
    ck_assert(shown_c == floor(shown_c) && oc_inside(-40, shown_c, 215));
    ck_assert(!oc_inside(-40, t_c, 215) || fabs(shown_c - t_c) <= 0.5);
    ck_assert_int_eq(ohm_reported_of(t_c, 1, &shown_c), OHM_OK);
    ck_assert(!oc_inside(-40, t_c, 215) || (shown_c <= t_c && t_c < shown_c + 1));
  }
  PROVOKES(ohm_reported_of, OHM_BAD_ARGUMENT, ohm_reported_of(NAN, 0, &shown_c));
  ck_assert(isnan(shown_c));
  PROVOKES(ohm_reported_of, OHM_OUT_OF_RANGE, ohm_reported_of(-273.15, 0, &shown_c));
  ck_assert_int_eq(ohm_reported_of(INFINITY, 0, &shown_c), OHM_OUT_OF_RANGE);
  ck_assert(isnan(shown_c));
  PROVOKES(ohm_reported_of, OHM_NULL_ARGUMENT, ohm_reported_of(20, 0, NULL));
}
END_TEST

START_TEST(what_was_reported_lies_within_what_its_whole_degree_leaves_open)
{
  for (int rounding = OC_ROUNDED; rounding <= OC_TRUNCATED; rounding++)
    for (double t_c = -39.9; t_c < 214; t_c += 0.37)
      for (int told = 0; told < 2; told++) {
        oc_reported reported = OC_REPORTED_INIT;
        reported.accuracy = OC_EXACT;
        reported.rounding = told ? rounding : OC_ROUNDING_NOT_TOLD;
        ohm_reported_of(t_c, rounding == OC_TRUNCATED, &reported.t_c);
        struct oc_budget budget;
        bool assumed;
        ck_assert_int_eq(oc_reported_budget(&reported, &budget, &assumed), OHM_OK);
        ck_assert(!assumed && budget.count == 1);
        double limit_k = oc_cause_limit(&budget.causes[0]);
        ck_assert(fabs(budget.value - t_c) <= limit_k + 1e-9);
        CHECK_NEAR(limit_k, told ? 0.5 : 0.75, 1e-9);
      }
}
END_TEST

START_TEST(only_whole_values_that_makers_print_stand_in)
{
  ck_assert(oc_reported_stands_in(80) && oc_reported_stands_in(-40) && oc_reported_stands_in(140));
  ck_assert(!oc_reported_stands_in(91) && !oc_reported_stands_in(81) &&
            !oc_reported_stands_in(NAN));
}
END_TEST

/* ---- the input ---- */

START_TEST(what_was_not_told_of_an_input_is_filled_in)
{
  struct oc_input input;
  ck_assert_int_eq(oc_input_of(NULL, &input), OHM_OK);
  CHECK_NEAR(input.divider.supply_v, 5, 0);
  CHECK_NEAR(input.supply_limit_v, 0.1, 1e-12);
  CHECK_NEAR(input.open_v, 4.9, 1e-12);
  CHECK_NEAR(input.short_v, 0.1, 1e-12);
  ck_assert(input.divider.pull_up_ohm == 0 && input.supply_assumed && input.pull_up_assumed);
  oc_module module = OC_MODULE_INIT;
  module.supply_volt = 12;
  module.supply_accuracy = OC_EXACT;
  module.pull_up_accuracy = OC_STATED;
  module.pull_up_percent = 3;
  ck_assert_int_eq(oc_input_of(&module, &input), OHM_OK);
  ck_assert(input.supply_limit_v == 0 && !input.supply_assumed && !input.pull_up_assumed);
  CHECK_NEAR(input.pull_up_share, 0.03, 1e-12);
  CHECK_NEAR(input.open_v, 0.98 * 12, 1e-12);
}
END_TEST

/* Every double of a module, spoilt in turn. */
static double *member(oc_module *module, size_t i) {
  double *const all[] = {&module->pull_up_ohm,  &module->hot_pull_up_ohm,
                         &module->changeover_c, &module->pull_up_percent,
                         &module->supply_volt,  &module->supply_limit_volt,
                         &module->open_volt,    &module->short_volt};
  return i < sizeof all / sizeof all[0] ? all[i] : NULL;
}

START_TEST(no_module_of_the_wrong_kind_is_taken)
{
  struct oc_input input;
  for (size_t i = 0; i < 8; i++)
    for (size_t s = 0; s < SPECIALS; s++) {
      oc_module module = OC_MODULE_INIT;
      ck_assert_int_eq(oc_pull_up_read("10k,1k@50C+-1%", &module, NULL), OHM_OK);
      ck_assert_int_eq(oc_supply_read("5V+-0.1", &module, NULL), OHM_OK);
      *member(&module, i) = specials[s];
      ohm_status status = oc_input_of(&module, &input);
      ck_assert(isfinite(specials[s]) ? i == 2 || status == OHM_OUT_OF_RANGE
                                      : status == OHM_BAD_ARGUMENT);
    }
  oc_module module = OC_MODULE_INIT;
  module.range = 3;
  ck_assert_int_eq(oc_input_of(&module, &input), OHM_BAD_ARGUMENT);
  module = (oc_module)OC_MODULE_INIT;
  module.supply_accuracy = -1;
  ck_assert_int_eq(oc_input_of(&module, &input), OHM_BAD_ARGUMENT);
  module = (oc_module)OC_MODULE_INIT;
  module.hot_pull_up_ohm = 100;
  ck_assert_int_eq(oc_input_of(&module, &input), OHM_OUT_OF_RANGE);
}
END_TEST

START_TEST(volts_and_degrees_of_the_wrong_kind_are_refused)
{
  struct oc_budget budget;
  bool assumed;
  for (size_t s = 0; s < SPECIALS; s++) {
    ohm_status wanted = isfinite(specials[s]) ? OHM_OUT_OF_RANGE : OHM_BAD_ARGUMENT;
    for (size_t i = 0; i < 3; i++) {
      oc_volts volts = OC_VOLTS_INIT;
      double *const of_volts[] = {&volts.v_volt, &volts.resolution_volt, &volts.limit_volt};
      *of_volts[i] = specials[s];
      ck_assert_int_eq(oc_volts_budget(&volts, &budget, &assumed), wanted);
      oc_reported reported = OC_REPORTED_INIT;
      double *const of_reported[] = {&reported.t_c, &reported.resolution_k, &reported.limit_k};
      *of_reported[i] = specials[s];
      ohm_status status = oc_reported_budget(&reported, &budget, &assumed);
      ck_assert(status == wanted || (i == 0 && specials[s] == -1 && status == OHM_OK));
    }
  }
  oc_volts volts = OC_VOLTS_INIT;
  volts.negative = 4;
  ck_assert_int_eq(oc_volts_budget(&volts, &budget, &assumed), OHM_BAD_ARGUMENT);
  oc_reported reported = OC_REPORTED_INIT;
  reported.moves = 3;
  ck_assert_int_eq(oc_reported_budget(&reported, &budget, &assumed), OHM_BAD_ARGUMENT);
}
END_TEST

START_TEST(a_voltmeter_is_assumed_unless_its_limit_is_told)
{
  oc_volts volts = OC_VOLTS_INIT;
  struct oc_budget budget;
  bool assumed;
  volts.v_volt = 0.97;
  volts.resolution_volt = 0.01;
  ck_assert_int_eq(oc_volts_budget(&volts, &budget, &assumed), OHM_OK);
  ck_assert(assumed);
  CHECK_NEAR(oc_cause_limit(&budget.causes[0]), 0.0297, 1e-12);
  volts.accuracy = OC_STATED;
  volts.limit_volt = 0.001;
  ck_assert_int_eq(oc_volts_budget(&volts, &budget, &assumed), OHM_OK);
  ck_assert(!assumed);
  CHECK_NEAR(oc_cause_limit(&budget.causes[0]), 0.005, 1e-12); /* half of the last digit */
  volts.accuracy = OC_EXACT;
  ck_assert_int_eq(oc_volts_budget(&volts, &budget, &assumed), OHM_OK);
  ck_assert_uint_eq(budget.count, 0);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "module", a_pull_up_is_read_with_what_it_is_within,
      a_second_notation_replaces_the_first_and_leaves_the_supply,
      what_is_no_pull_up_is_refused_and_nothing_changes, a_supply_is_read_and_refused_likewise,
      volts_are_read_with_what_their_last_digit_is_worth,
      what_is_no_reading_of_a_voltmeter_is_refused, degrees_are_read_in_either_unit,
      what_no_module_reports_is_refused, a_report_is_whole_degrees_of_one_byte,
      what_was_reported_lies_within_what_its_whole_degree_leaves_open,
      only_whole_values_that_makers_print_stand_in, what_was_not_told_of_an_input_is_filled_in,
      no_module_of_the_wrong_kind_is_taken, volts_and_degrees_of_the_wrong_kind_are_refused,
      a_voltmeter_is_assumed_unless_its_limit_is_told);
}
