/* SPDX-License-Identifier: MIT */
#include "../../lib/evidence/record.h"

#include "../support.h"

#include <string.h>

static ohm_circuit *circuit;
static struct oc_record record;
static ohm_error error;

static ohm_status reading(const char *text) {
  if (!circuit)
    circuit = ohm_circuit_built_in_load("radiator-switch", NULL);
  return oc_record_read(circuit, text, strlen(text), &record, &error);
}

static const struct oc_record_entry *only(const char *text) {
  ck_assert_msg(reading(text) == OHM_OK, "%s", error.message);
  ck_assert_uint_eq(record.count, 1);
  return &record.entries[0];
}

static void check_refused(const char *text, ohm_status status, const char *words) {
  check_status(status, (int)reading(text), text, __FILE__, __LINE__);
  ck_assert_msg(strstr(error.message, words) != NULL, "%s", error.message);
}

START_TEST(words_numbers_and_units_are_read)
{
  ck_assert_int_eq(only("fuse-look=good")->seen, OC_SEEN_GOOD);
  ck_assert_int_eq(only(" fuse-look = bad \r\n")->seen, OC_SEEN_BAD);
  ck_assert_int_eq(only("fuse-look=skip")->seen, OC_SEEN_SKIPPED);
  ck_assert_int_eq(only("switch=renewed")->seen, OC_SEEN_RENEWED);
  ck_assert_int_eq(only("ac-runs-fan=yes")->seen, OC_SEEN_YES);
  ck_assert_int_eq(only("ac-runs-fan=no")->seen, OC_SEEN_NOTHING);
  ck_assert_int_eq(only("clamp=none")->seen, OC_SEEN_NONE);
  ck_assert_int_eq(only("clamp=yes")->seen, OC_SEEN_YES);
  CHECK_NEAR(only("battery-volts=12.4")->number, 12.4, 0);
  CHECK_NEAR(only("battery-volts=12.4V")->number, 12.4, 0);
  CHECK_NEAR(only("battery-volts=12.4 V")->number, 12.4, 0);
  CHECK_NEAR(only("engine-heat=101C")->number, 101, 0);
  CHECK_NEAR(only("amps=8.2A")->number, 8.2, 0);
  CHECK_NEAR(only("feed-drop=0.21V")->number, 0.21, 0);
  CHECK_NEAR(only("coil-ohms=85ohm")->number, 85, 0);
  ck_assert(isinf(only("coil-ohms=open")->number));
  ck_assert(isinf(only("coil-ohms=OL")->number));
}
END_TEST

START_TEST(millivolts_over_a_fuse_become_amperes_only_for_a_known_one)
{
  CHECK_NEAR(only("fuse-mv=12mV")->number, 12, 0);
  ck_assert(isnan(record.entries[0].amperes));
  ck_assert(only("fuse-mv=12mV@ATO30")->amperes > 5);
  ck_assert(isnan(only("fuse-mv=12mV@GLASS30")->amperes));
}
END_TEST

START_TEST(blank_lines_and_remarks_say_nothing)
{
  ck_assert_int_eq(reading("# a record\n\ncircuit=radiator-switch\n  \nfuse-look=good\n"), OHM_OK);
  ck_assert_uint_eq(record.count, 1);
  ck_assert_int_eq(reading(""), OHM_OK);
  ck_assert_uint_eq(record.count, 0);
}
END_TEST

START_TEST(where_the_fan_starts_may_be_told)
{
  ck_assert_int_eq(reading("fan=102C\n"), OHM_OK);
  CHECK_NEAR(record.fan_c, 102, 0);
  ck_assert_int_eq(reading("starts=bad\n"), OHM_OK);
  CHECK_NEAR(record.fan_c, 97, 0);
}
END_TEST

START_TEST(what_cannot_be_read_is_told_with_its_line_and_what_to_write)
{
  check_refused("\n\nstarts", OHM_BAD_SYNTAX, "record, line 3: the line is \"starts\"; write NAME");
  check_refused("starts=maybe", OHM_BAD_SYNTAX, "write good, bad or skip");
  check_refused("battery-volts=low", OHM_BAD_SYNTAX, "write volts as in 12.4");
  check_refused("amps=", OHM_BAD_SYNTAX, "write amperes as in 8.2");
  check_refused("coil-ohms=x", OHM_BAD_SYNTAX, "write ohms as in 85");
  check_refused("engine-heat=hot", OHM_BAD_SYNTAX, "write degrees Celsius");
  check_refused("feed-drop=good", OHM_BAD_SYNTAX, "only the current makes them good or bad");
  check_refused("fuse-mv=-1mV", OHM_BAD_SYNTAX, "write millivolts");
  check_refused("fuse=bad", OHM_BAD_SYNTAX, "of a link write renewed");
  check_refused("ac-runs-fan=good", OHM_BAD_SYNTAX, "of a fact write yes or no");
  check_refused("clamp=good", OHM_BAD_SYNTAX, "of a tool write none or yes");
  check_refused("fan=300C", OHM_BAD_SYNTAX, "above 0C and below 130C");
  check_refused("fuse-lok=good", OHM_NOT_FOUND, "did you mean fuse-look?");
  check_refused("gearbox=good", OHM_NOT_FOUND, "look in the list");
  check_refused("circuit=shed", OHM_BAD_DEFINITION, "of the circuit \"shed\"");
}
END_TEST

START_TEST(a_record_has_an_end)
{
  static char text[OC_RECORD_MAX * 16 + 32];
  text[0] = '\0';
  for (int i = 0; i < OC_RECORD_MAX; i++)
    strcat(text, "starts=bad\n");
  ck_assert_int_eq(reading(text), OHM_OK);
  strcat(text, "starts=bad\n");
  check_refused(text, OHM_TOO_LARGE, "512 lines");
}
END_TEST

/* ---- judging ---- */

static enum oc_seen judged(const char *test, double number, double amperes, double u_amperes) {
  reading("");
  size_t index = oc_circuit_test(circuit, test, strlen(test));
  ck_assert_uint_lt(index, circuit->test_count);
  return oc_record_judge(circuit, &circuit->tests[index], number, 97, amperes, u_amperes);
}

START_TEST(the_error_of_the_instrument_stands_between_good_and_bad)
{
  ck_assert_int_eq(judged("battery-volts", 11.5, NAN, NAN), OC_SEEN_GOOD);
  ck_assert_int_eq(judged("battery-volts", 11.05, NAN, NAN), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("battery-volts", 10.5, NAN, NAN), OC_SEEN_BAD);
  ck_assert_int_eq(judged("coil-ohms", INFINITY, NAN, NAN), OC_SEEN_BAD);
  ck_assert_int_eq(judged("engine-heat", 97, NAN, NAN), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("engine-heat", 102, NAN, NAN), OC_SEEN_GOOD);
}
END_TEST

/* 0.5 V at 20 A is the limit: 0.025 ohm. */
START_TEST(a_volt_drop_is_judged_by_the_ampere)
{
  ck_assert_int_eq(judged("feed-drop", 0.2, 10, 0.6), OC_SEEN_GOOD);
  ck_assert_int_eq(judged("feed-drop", 0.2, 4, 0.4), OC_SEEN_BAD);
  ck_assert_int_eq(judged("feed-drop", 0.25, 10, 0.6), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("feed-drop", 0.0, 0.2, 0.3), OC_SEEN_UNSURE);
}
END_TEST

START_TEST(without_the_current_a_volt_drop_condemns_but_never_clears)
{
  ck_assert_int_eq(judged("feed-drop", 0.001, NAN, NAN), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("feed-drop", 0.7, NAN, NAN), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("feed-drop", 1.0, NAN, NAN), OC_SEEN_BAD);
}
END_TEST

START_TEST(millivolts_over_a_fuse_tell_drawing_from_not_drawing)
{
  ck_assert_int_eq(judged("fuse-mv", 4, NAN, NAN), OC_SEEN_GOOD);
  ck_assert_int_eq(judged("fuse-mv", 0.5, NAN, NAN), OC_SEEN_UNSURE);
  ck_assert_int_eq(judged("fuse-mv", 0, NAN, NAN), OC_SEEN_BAD);
}
END_TEST

int main(void) {
  return RUN_TESTS("record", words_numbers_and_units_are_read,
                   millivolts_over_a_fuse_become_amperes_only_for_a_known_one,
                   blank_lines_and_remarks_say_nothing, where_the_fan_starts_may_be_told,
                   what_cannot_be_read_is_told_with_its_line_and_what_to_write, a_record_has_an_end,
                   the_error_of_the_instrument_stands_between_good_and_bad,
                   a_volt_drop_is_judged_by_the_ampere,
                   without_the_current_a_volt_drop_condemns_but_never_clears,
                   millivolts_over_a_fuse_tell_drawing_from_not_drawing);
}
