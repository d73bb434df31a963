/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/bench/finding.h"
#include "../../lib/answers/bath.h"

/* ---- a finding for every reason ---- */

static ohm_finding judged(const char *sensor_name, const char *reading_text, const char *at,
                          double tolerance_percent) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_built_in_load(sensor_name, &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  oc_reading reading;
  oc_reference reference;
  ck_assert_int_eq(oc_reading_read(reading_text, &reading, NULL), OHM_OK);
  ck_assert_int_eq(oc_reference_read(at, &reference, NULL), OHM_OK);
  oc_check check = OC_CHECK_INIT;
  check.tolerance_percent = tolerance_percent;
  ohm_finding finding = finding_new();
  ck_assert_int_eq(oc_bath_check(sensor, &reading, NULL, &reference, &check, &finding), OHM_OK);
  ohm_sensor_free(sensor);
  return finding;
}

static const struct {
  const char *sensor;
  const char *reading;
  const char *at;
  double tolerance_percent;
  const char *reason;
  const char *verdict;
} usual[] = {
    {"ntc-2k45-20c", "2.45k", "20C+-0.1", 10, "conforms", "GOOD"},
    {"ntc-2k45-20c", "244.6", "90C+-0.1", 10, "conforms", "GOOD"},
    {"ntc-2k45-20c", "1.5k", "20C", 0, "plug_on", "CANNOT TELL YET: is the plug off?"},
    {"ntc-2k45-20c", "150.0", "20C", 0, "low", "BAD: too few ohms"},
    {"ntc-2k45-20c", "0.4", "20C", 0, "shorted", "BAD: shorted"},
    {"ntc-2k45-20c", "2.31", "20C", 0, "missing_k", "CANNOT TELL YET: did you mean 2.31 k?"},
    {"ntc-2k45-20c", "1", "20C", 0, "lone_one", "CANNOT TELL YET: a 1 alone"},
    {"ntc-2k45-20c", "3.5k", "20C", 0, "high", "BAD: too many ohms"},
    {"ntc-2k45-20c", "open", "20C", 0, "open", "BAD: open"},
    {"ntc-2k45-20c", "OL", "20C", 0, "over_range", "CANNOT TELL YET"},
    {"ntc-10k-25c", "10k", "25C", 0, "no_tolerance", "CANNOT TELL YET"},
    {"ntc-2k45-20c", "90", "130C", 0, "outside_band", "CANNOT TELL YET"},
    {"ntc-2k45-20c", "2.15k", "20C", 0, "uncertain", "CANNOT TELL YET"},
    {"ntc-2k45-20c", "5.8k", "ice", 5, "uncertain", "CANNOT TELL YET"},
};
enum { USUAL = sizeof usual / sizeof usual[0] };

static ohm_finding usual_finding(int i) {
  return judged(usual[i].sensor, usual[i].reading, usual[i].at, usual[i].tolerance_percent);
}

/* ---- form ---- */

static void check_lines(const char *text, size_t most) {
  size_t lines = 0;
  while (*text) {
    size_t length = strcspn(text, "\n");
    size_t columns = 0;
    for (size_t i = 0; i < length; i++)
      columns += ((unsigned char)text[i] & 0xC0) != 0x80;
    ck_assert_msg(columns <= 80, "%.*s", (int)length, text);
    ck_assert_msg(length > 0 && text[length - 1] != ' ', "%.*s", (int)length, text);
    ck_assert_int_eq(text[length], '\n');
    text += length + 1;
    lines++;
  }
  ck_assert_uint_le(lines, most);
}

static bool wraps(const char *text, const char *label) {
  const char *line = strstr(text, label);
  const char *next = line ? strchr(line + 1, '\n') : NULL;
  return next && next[1] == ' ';
}

/* Two lists that wrap, for the fan and of what was assumed, take one more. */
START_TEST(a_usual_report_has_at_most_12_lines_of_80_columns)
{
  ohm_finding finding = usual_finding(_i);
  const char *text = report_of(&finding);
  bool long_lists = wraps(text, "\nFor the fan ") && wraps(text, "\nAssumed ");
  check_lines(text, long_lists ? 13 : 12);
}
END_TEST

START_TEST(a_report_says_the_verdict_of_its_reason)
{
  ohm_finding finding = usual_finding(_i);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REASON, 0), usual[_i].reason);
  char line[64] = "\nVERDICT     ";
  strcat(line, usual[_i].verdict);
  check_has(report_of(&finding), line);
}
END_TEST

START_TEST(lines_stand_in_the_order_of_the_bench)
{
  static const char *const labels[] = {"CAUTION ",   "\nYou read ", "\nIt really is ",
                                       "\nAllowed ", "\nVERDICT ",  "\nNext "};
  ohm_finding finding = usual_finding(_i);
  const char *text = report_of(&finding);
  ck_assert_int_eq(strncmp(text, labels[0], strlen(labels[0])), 0);
  const char *before = text;
  for (size_t i = 1; i < sizeof labels / sizeof labels[0]; i++) {
    const char *at = strstr(text, labels[i]);
    ck_assert_msg(at != NULL && at > before, "%s in\n%s", labels[i], text);
    before = at;
  }
}
END_TEST

static bool has_word(const char *text, const char *word) {
  size_t length = strlen(word);
  for (; *text; text++) {
    size_t i = 0;
    while (i < length && tolower((unsigned char)text[i]) == word[i])
      i++;
    if (i == length)
      return true;
  }
  return false;
}

START_TEST(a_report_uses_no_word_of_statistics)
{
  static const char *const words[] = {"probability",  "standard", "uncertain", "level",
                                      "distribution", "interval", "sigma",     "confidence"};
  ohm_finding finding = usual_finding(_i);
  const char *text = report_of(&finding);
  for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
    ck_assert_msg(!has_word(text, words[i]), "\"%s\" in\n%s", words[i], text);
}
END_TEST

START_TEST(a_cut_report_is_the_beginning_of_the_whole)
{
  ohm_finding finding = usual_finding(_i);
  const char *whole = report_of(&finding);
  size_t length = strlen(whole);
  ck_assert_uint_eq(ohm_finding_print_report(&finding, NULL, 0), length);
  for (size_t size = 1; size <= length + 1; size += 7) {
    char *part = malloc(size);
    ck_assert_uint_eq(ohm_finding_print_report(&finding, part, size), length);
    ck_assert_uint_eq(strlen(part), size - 1);
    ck_assert_int_eq(memcmp(part, whole, size - 1), 0);
    free(part);
  }
}
END_TEST

START_TEST(the_same_finding_gives_the_same_text)
{
  ohm_finding finding = usual_finding(_i);
  ohm_finding copy = usual_finding(_i);
  char first[8000];
  strcpy(first, report_of(&finding));
  ck_assert_str_eq(first, report_of(&copy));
}
END_TEST

START_TEST(assumptions_are_told_when_there_are_any)
{
  ohm_finding finding = usual_finding(_i);
  ck_assert_ptr_nonnull(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0));
  check_has(report_of(&finding), "\nAssumed ");
}
END_TEST

/* ---- content ---- */

START_TEST(no_finding_has_no_report)
{
  char buffer[4] = "abc";
  ck_assert_uint_eq(ohm_finding_print_report(NULL, buffer, sizeof buffer), 0);
  ck_assert_str_eq(buffer, "");
  ck_assert_uint_eq(ohm_finding_print_report(NULL, NULL, 0), 0);
}
END_TEST

START_TEST(a_finding_that_failed_has_no_report)
{
  ohm_finding finding = finding_new();
  ck_assert_uint_eq(ohm_finding_print_report(&finding, NULL, 0), 0);
}
END_TEST

START_TEST(open_and_shorted_warn_of_a_fan_switch)
{
  static const char *const shown[] = {"open", "0", "0.4"};
  for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
    ohm_finding finding = judged("ntc-2k45-20c", shown[i], "20C", 0);
    check_has(report_of(&finding), "a radiator fan switch? OL cold and 0 hot is good.");
  }
}
END_TEST

START_TEST(hot_coolant_is_cautioned_of_at_once)
{
  ohm_finding cold = judged("ntc-2k45-20c", "2.45k", "20C", 0);
  ohm_finding hot = judged("ntc-2k45-20c", "322", "80C", 0);
  ck_assert_ptr_null(strstr(report_of(&cold), "scalds"));
  const char *text = report_of(&hot);
  check_has(text, "scalds");
  ck_assert(strstr(text, "scalds") < strstr(text, "You read"));
}
END_TEST

START_TEST(a_good_cold_sensor_is_not_cleared_for_the_fan)
{
  ohm_finding finding = judged("ntc-2k45-20c", "2.45k", "20C+-0.1", 10);
  check_has(report_of(&finding), "NOT ANSWERED");
}
END_TEST

START_TEST(ice_is_named_as_the_bath)
{
  ohm_finding finding = judged("ntc-2k45-20c", "5.79k", "ice", 10);
  check_has(report_of(&finding), "ice bath");
}
END_TEST

/* ---- the meter's face and the place ---- */

static void check_says(const char *reading, const char *at, ohm_place place, const char *part) {
  ohm_finding finding = typed("ntc-2k45-20c", reading, at, place);
  check_has(report_of(&finding), part);
}

START_TEST(over_range_is_told_from_open_and_sends_one_range_up)
{
  static const char *const shown[] = {"OL", "0L", "OL@2k", ">2k"};
  for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
    check_says(shown[i], "20C", OHM_PLACE_SENSOR,
               "CANNOT TELL YET: the meter ran out of range; that is not yet open");
    check_says(shown[i], "20C", OHM_PLACE_SENSOR,
               "one range up; over range on the highest is open: then type open");
  }
  check_says("OL@2k", "20C", OHM_PLACE_SENSOR, "You read    over range on 2 k");
}
END_TEST

START_TEST(over_a_range_above_the_limit_is_bad)
{
  check_says("OL@20k", "20C", OHM_PLACE_SENSOR,
             "BAD: more than 20.0 k where 2.90 k is the most allowed");
  check_says(">20k", "20C", OHM_PLACE_SENSOR,
             "BAD: more than 20.0 k where 2.90 k is the most allowed");
}
END_TEST

START_TEST(what_a_display_may_mean_is_asked)
{
  check_says("1", "20C", OHM_PLACE_SENSOR, "a 1 alone at the left of the display is over range");
  check_says("1", "20C", OHM_PLACE_SENSOR, "go one range up; if it was 1 ohm, type 1.0");
  check_says("2.31", "20C", OHM_PLACE_SENSOR, "did you mean 2.31 k? A dial at k shows it without");
  check_says("2.31", "20C", OHM_PLACE_SENSOR, "type the reading with its k, or with ohm behind it");
  check_says("2300", "20C", OHM_PLACE_SENSOR, "end zeros are rounding (190ohm, 10.00k if shown)");
}
END_TEST

START_TEST(a_plug_that_may_be_on_is_asked_for)
{
  check_says("1.500k", "20C", OHM_PLACE_NOT_TOLD,
             "is the plug off? With it on, a good one reads so");
  check_says("2.45k", "20C", OHM_PLACE_PLUG_ON, "with the plug on, the module is measured too");
  check_says("2.45k", "20C", OHM_PLACE_PLUG_ON, "key off, plug off, and at the sensor's own pins");
  check_says("1.500k", "20C", OHM_PLACE_SENSOR, "BAD: too few ohms");
  check_says("1.500k", "20C", OHM_PLACE_MODULE, "BAD: too few ohms");
}
END_TEST

START_TEST(each_place_says_what_was_not_tested)
{
  check_says("2.45k", "20C", OHM_PLACE_SENSOR, "2.45 k, plug off, at the sensor's own pins");
  check_says("2.45k", "20C", OHM_PLACE_SENSOR,
             "Not tested  plug, wires, module: you measured the sensor alone");
  check_says("2.45k", "20C", OHM_PLACE_PLUG_ON, "2.45 k, with the plug on");
  check_says("2.45k", "20C", OHM_PLACE_PLUG_ON,
             "Not tested  the sensor alone: the module is in parallel with it");
  check_says("2.45k", "20C", OHM_PLACE_MODULE, "2.45 k, at the module's end of the wires");
  check_says("2.45k", "20C", OHM_PLACE_MODULE, "Not tested  the module and its own pins");
  check_says("2.45k", "20C", OHM_PLACE_NOT_TOLD, "2.45 k, you did not say where");
  check_says("2.45k", "20C", OHM_PLACE_NOT_TOLD,
             "Not tested  if at the sensor: plug, wires, module; if at the module: module");
}
END_TEST

START_TEST(each_reference_is_named_with_what_was_assumed_of_it)
{
  static const struct {
    const char *at;
    const char *named;
    const char *assumed;
  } kinds[] = {{"20C", "(your thermometer)", "thermometer +-2C"},
               {"ice", "(your ice bath)", "ice bath +-0.5C"},
               {"boil", "(boiling near sea level)", "sea level +-1C"},
               {"boil@1200m", "96.1 C, give or take 0.4 (boiling at your altitude)",
                "boiling at this altitude +-0.4C"},
               {"boil@870hPa", "95.9 C, give or take 0.2 (boiling at your pressure)",
                "boiling at this pressure +-0.2C"},
               {"infrared@80C", "(infrared, of the surface it sees)", "infrared +-4C"}};
  for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
    ohm_finding finding = typed("ntc-2k45-20c", "300 ohm", kinds[i].at, OHM_PLACE_SENSOR);
    check_has(report_of(&finding), kinds[i].named);
    bool found = false;
    const char *entry;
    for (size_t j = 0; (entry = ohm_finding_text(&finding, OHM_FIELD_ASSUMED, j)); j++)
      found = found || strcmp(entry, kinds[i].assumed) == 0;
    ck_assert_msg(found, "%s is not said to be assumed", kinds[i].assumed);
  }
}
END_TEST

START_TEST(a_measurement_that_no_reading_could_pass_says_so_and_what_would_do)
{
  check_says("2.450k", "20C+-6", OHM_PLACE_SENSOR, "too coarse for any to pass");
  check_says("2.450k", "20C+-6", OHM_PLACE_SENSOR, "know the temperature to 4.");
}
END_TEST

START_TEST(the_widest_makers_band_is_named_and_the_tightest_beside_it)
{
  check_says("2.45k", "20C", OHM_PLACE_SENSOR,
             "2.100 k to 2.900 k here (16.3 %, by saab-9-3-2002)");
  check_says("2.45k", "20C", OHM_PLACE_SENSOR,
             "By others   the tightest 2.320 k to 2.590 k (toyota-yaris-2007); 6 more");
}
END_TEST

START_TEST(the_fan_is_answered_hot_and_not_cold)
{
  check_says("2.45k", "20C", OHM_PLACE_SENSOR, "For the fan NOT ANSWERED: ");
  check_says("2.45k", "20C", OHM_PLACE_SENSOR, "fan 11 C late");
  check_says("2.45k", "20C", OHM_PLACE_SENSOR, "Next        hot: boiling water, or 85 C and up");
  check_says("188.1", "boil", OHM_PLACE_SENSOR, "For the fan GOOD: set for 97.0 C");
  check_says("188.1", "boil", OHM_PLACE_SENSOR, "the same reading at the module's end, hot");
}
END_TEST

/* ---- what is odd ---- */

START_TEST(readings_of_any_size_fit_their_lines)
{
  static const char *const readings[] = {"0", "0.001", "0R47", "1", "123456789", "1e12", "1e-300"};
  static const char *const temperatures[] = {"-273.1C", "-40C+-1000", "0C+-0", "1000C",
                                             "ice+-0.001"};
  for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++)
    for (size_t j = 0; j < sizeof temperatures / sizeof temperatures[0]; j++) {
      ohm_finding finding = judged("ntc-2k45-20c", readings[i], temperatures[j], 5);
      const char *text = report_of(&finding);
      check_lines(text, 14);
      ck_assert_msg(!has_word(text, "nan") && !has_word(text, " inf"), "%s", text);
    }
}
END_TEST

int main(void) {
  int usual_ones = RUN_TESTS_FOR_EACH(
      "usual reports", USUAL, a_usual_report_has_at_most_12_lines_of_80_columns,
      a_report_says_the_verdict_of_its_reason, lines_stand_in_the_order_of_the_bench,
      a_report_uses_no_word_of_statistics, a_cut_report_is_the_beginning_of_the_whole,
      the_same_finding_gives_the_same_text, assumptions_are_told_when_there_are_any);
  int others = RUN_TESTS("report", no_finding_has_no_report, a_finding_that_failed_has_no_report,
                         open_and_shorted_warn_of_a_fan_switch, hot_coolant_is_cautioned_of_at_once,
                         a_good_cold_sensor_is_not_cleared_for_the_fan, ice_is_named_as_the_bath,
                         readings_of_any_size_fit_their_lines);
  int faces =
      RUN_TESTS("what a person is told", over_range_is_told_from_open_and_sends_one_range_up,
                over_a_range_above_the_limit_is_bad, what_a_display_may_mean_is_asked,
                a_plug_that_may_be_on_is_asked_for, each_place_says_what_was_not_tested,
                each_reference_is_named_with_what_was_assumed_of_it,
                a_measurement_that_no_reading_could_pass_says_so_and_what_would_do,
                the_widest_makers_band_is_named_and_the_tightest_beside_it,
                the_fan_is_answered_hot_and_not_cold);
  return usual_ones | others | faces;
}
