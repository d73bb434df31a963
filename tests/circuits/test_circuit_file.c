/* SPDX-License-Identifier: MIT */
#include "../../lib/circuits/circuit.h"

#include "../support.h"

#include <stdlib.h>
#include <string.h>

#define LINKS                                                                                      \
  "link,kind,drawing,part,action,renew,odds,standing\n"                                            \
  "fuse,power,F1,fuse,buy,same rating,0.1,common practice\n"                                       \
  "motor,motor,M1,fan,buy,as sold,,\n"                                                             \
  "unit,electronics,N1,unit,buy,last,,\n"                                                          \
  "coil,control,85 to 86,relay,buy,same number,,\n"                                                \
  "battery,battery,G1,battery,repair,charge it,,\n"
#define HEADER                                                                                     \
  "test,role,what,points,condition,load,tool,minutes,unit,low,high,error,clears,accuses,only_if,"  \
  "needs,feeds,amperes,caution,source\n"
#define STARTS "starts,symptom,it starts,fan,hot,fan,eyes,1,,,,,*,*,,,,,mind it,common practice\n"

static ohm_circuit *parsed(const char *text, ohm_error *error) {
  return ohm_circuit_parse(text, strlen(text), "mine", error);
}

/* A circuit with one more test, which is left out, and a note that holds words. */
static void check_left_out(const char *row, const char *words) {
  char text[4096] = "# fact told: somebody says so\n" LINKS HEADER STARTS;
  strcat(text, row);
  ohm_error error;
  ohm_circuit *circuit = parsed(text, &error);
  ck_assert_msg(circuit != NULL, "%s: %s", row, error.message);
  ck_assert_msg(ohm_circuit_test_count(circuit) == 1, "%s", row);
  ck_assert_uint_ge(ohm_circuit_note_count(circuit), 1);
  const char *note = ohm_circuit_note(circuit, 0);
  ck_assert_msg(strstr(note, words) != NULL && strstr(note, "mine, line 10: ") == note, "%s: %s",
                row, note);
  ohm_circuit_free(circuit);
}

static void check_refused(const char *text, ohm_status status, const char *words) {
  ohm_error error;
  ck_assert_ptr_null(parsed(text, &error));
  ck_assert_msg(error.status == (int)status, "%s: %s", ohm_status_name(error.status),
                error.message);
  ck_assert_msg(strstr(error.message, words) != NULL, "%s", error.message);
}

START_TEST(a_whole_file_is_understood)
{
  ohm_error error;
  ohm_circuit *circuit = parsed(
      "# name: shed\n# description: a fan in a shed\n# source: drawn by hand\n# fan_c: 92.5\n"
      "# most_a: 12\n# fact told: somebody says so\n"
      "# balance: posts = drop + across\n" LINKS HEADER STARTS
      "posts,,volts,,,fan,meter,2,V,11,,1%+0.02,battery,battery,,,,,,common practice\n"
      "across,,volts,,,fan,meter,2,V,10.5,,1%+0.02,,fuse,,,,,,common practice\n"
      "clamp,,amperes,,,fan,clip,2,A,3,,3%+0.3,motor,fuse motor,,,,,,common practice\n"
      "drop,,volts,,,fan,meter,2,V/A,,0.02,1%+0.003,fuse,fuse,,clamp=good,,clamp,,cp\n"
      "heat,condition,degrees,,,none,probe,5,C,fan,fan+9,4,,,,,,,,cp\n"
      "off,,runs,,,fan,hands,2,,,,,fuse motor,fuse motor,told,fuse=renewed,,,,cp\n"
      "direct,,runs,,,fan,leads,8,,,,,motor,motor,,told=yes,motor,,,cp\n",
      &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  ck_assert_msg(ohm_circuit_note_count(circuit) == 0, "%s", ohm_circuit_note(circuit, 0));
  ck_assert_str_eq(ohm_circuit_name(circuit), "shed");
  CHECK_NEAR(circuit->fan_c, 92.5, 0);
  CHECK_NEAR(circuit->most_a, 12, 0);
  CHECK_NEAR(circuit->links[0].odds, 0.1, 0);
  ck_assert(isnan(circuit->links[1].odds));
  ck_assert_uint_eq(circuit->tests[0].clears, 31);
  ck_assert_uint_eq(circuit->balances[0].part_count, 2);
  ck_assert_uint_eq(circuit->balances[0].whole, 1);
  ck_assert_uint_eq(circuit->balances[0].parts[0], 4);
  ck_assert_uint_eq(circuit->tests[4].amperes[0], 3);
  CHECK_NEAR(circuit->tests[4].error_percent, 1, 0);
  CHECK_NEAR(circuit->tests[4].error, 0.003, 0);
  ck_assert(circuit->tests[5].low.over_fan);
  CHECK_NEAR(oc_test_limit_at(circuit->tests[5].high, 92.5), 101.5, 0);
  ck_assert_uint_eq(circuit->tests[6].only_if, 0);
  ck_assert_uint_eq(circuit->tests[7].only_if, OC_NO_PLACE);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(a_test_that_cannot_be_used_is_left_out_with_a_note)
{
  check_left_out("2nd,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "test is \"2nd\"");
  check_left_out("fan,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "not fan or circuit");
  check_left_out("look,first,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "role is \"first\"");
  check_left_out("look,,look,,,heavy,eyes,1,,,,,,fuse,,,,,,cp\n", "load is \"heavy\"");
  check_left_out("look,,look,,,none,eyes,1,W,,,,,fuse,,,,,,cp\n", "unit is \"W\"");
  check_left_out("look,,,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "say what is done");
  check_left_out("look,,look,,,none,eyes,soon,,,,,,fuse,,,,,,cp\n", "minutes is \"soon\"");
  check_left_out("look,,look,,,none,eyes,0,,,,,,fuse,,,,,,cp\n", "above 0 and up to 600");
  check_left_out("look,,look,,,none,eyes,1,V,low,,1,,fuse,,,,,,cp\n", "low is \"low\"");
  check_left_out("look,,look,,,none,eyes,1,V,,fan+x,1,,fuse,,,,,,cp\n", "high is \"fan+x\"");
  check_left_out("look,,look,,,none,eyes,1,V,,,1,,fuse,,,,,,cp\n", "to be judged by");
  check_left_out("look,,look,,,none,eyes,1,V,9,8,1,,fuse,,,,,,cp\n", "exchange them");
  check_left_out("look,,look,,,none,eyes,1,V,9,,,,fuse,,,,,,cp\n", "may err by");
  check_left_out("look,,look,,,none,eyes,1,V,9,,1%,,fuse,,,,,,cp\n", "error is \"1%\"");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,,,,,,\n", "or common practice");
  check_left_out("look,,look,,,fan,eyes,1,,,,,fuze,fuse,,,,,,cp\n", "clears is \"fuze\"");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse fan,,,,,,cp\n", "accuses is \"fuse fan\"");
  check_left_out("look,,look,,,fan,eyes,1,,,,,fuse motor,fuse,,,,,,cp\n", "would not show");
  check_left_out("look,symptom,look,,,none,eyes,1,,,,,,,,,,,,cp\n", "a symptom");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,said,,,,,cp\n", "only_if is \"said\"");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,,,,starts,,cp\n", "unit is A or mV-fuse");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,,starts,,,,cp\n", "needs is \"starts\"");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,,starts=fair,,,,cp\n", "NAME=good");
  check_left_out("look,,look,,,none,eyes,1,,,,,,fuse,,starts=renewed,,,,cp\n", "NAME=good");
  check_left_out("starts,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "called so already");
  check_left_out("fuse,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "called so already");
  check_left_out("told,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "called so already");
  check_left_out("eyes,,look,,,none,eyes,1,,,,,,fuse,,,,,,cp\n", "called so already");
}
END_TEST

START_TEST(what_the_trade_does_not_allow_is_left_out)
{
  check_left_out("look,,look,,,none,lamp,1,,,,,fuse,fuse,,,,,,cp\n", "without load");
  check_left_out("look,,look,,,lights,lamp,1,,,,,motor,motor,,,,,,cp\n", "without load");
  check_left_out("look,,look,,,none,meter,1,V,11,,1,battery,battery,,,,,,cp\n", "without load");
  check_left_out("feed,,runs,,,fan,leads,1,,,,,unit,unit,,,unit,,,cp\n", "never electronics");
  check_left_out("feed,,runs,,,fan,leads,1,,,,,coil,coil,,,coil,,,cp\n", "never electronics");
}
END_TEST

START_TEST(a_test_that_leans_on_one_left_out_is_left_out_too)
{
  check_left_out("a,,look,,,none,eyes,0,,,,,,fuse,,,,,,cp\n"
                 "b,,look,,,none,eyes,1,,,,,,fuse,,a=good,,,,cp\n",
                 "minutes is \"0\"");
}
END_TEST

START_TEST(what_makes_a_circuit_unusable_is_an_error_with_its_place)
{
  check_refused("", OHM_BAD_DEFINITION, "role symptom");
  check_refused(LINKS HEADER, OHM_BAD_DEFINITION, "role symptom");
  check_refused("fuse,power\n", OHM_BAD_SYNTAX,
                "mine, line 1, column 1: the first row begins with");
  check_refused("link,kind,part,action\n7fuse,power,fuse,buy\n", OHM_BAD_DEFINITION,
                "mine, line 2: no link can be called \"7fuse\"");
  check_refused("link,kind,part,action\na,power,a,buy\na,power,b,buy\n", OHM_BAD_DEFINITION,
                "line 3: there are two links called \"a\"");
  check_refused("link,kind,part,action\na,soft,a,buy\n", OHM_BAD_SYNTAX, "kind is \"soft\"");
  check_refused("link,kind,part,action\na,power,,buy\n", OHM_BAD_DEFINITION, "no part");
  check_refused("link,kind,part,action\na,power,a,sell\n", OHM_BAD_SYNTAX, "action is \"sell\"");
  check_refused("link,kind\n\"a,power\n", OHM_BAD_SYNTAX, "a quote that is never closed");
}
END_TEST

START_TEST(a_slip_in_an_optional_line_is_a_note)
{
  ohm_error error;
  ohm_circuit *circuit = parsed("# nane: shed\n# fan_c: 400\n# most_a: many\n# name: a\n# name: b\n"
                                "# fact Told: x\n# balance: starts\n"
                                "# whatever: this is a remark\n"
                                "link,kind,part,action,odds\nfuse,power,fuse,buy,2\n" HEADER STARTS,
                                &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  static const char *const words[] = {
      "the key \"nane\"",     "below 130",      "below 1000",           "the first one counts",
      "the fact is \"Told\"", "odds are \"2\"", "balance is \"starts\""};
  ck_assert_uint_eq(ohm_circuit_note_count(circuit), sizeof words / sizeof words[0]);
  for (size_t i = 0; i < ohm_circuit_note_count(circuit); i++)
    ck_assert_msg(strstr(ohm_circuit_note(circuit, i), words[i]) != NULL, "%s",
                  ohm_circuit_note(circuit, i));
  CHECK_NEAR(circuit->fan_c, OC_ASSUMED_FAN_C, 0);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(what_needs_quotes_gets_them_when_printed)
{
  static const char row[] =
      "odd,,\"say \"\"good\"\", or not\",\" a \",#1,none,eyes,1,,,,,,fuse,,,,,,cp\n";
  char text[2048] = LINKS HEADER STARTS;
  char again[4096];
  strcat(text, row);
  ohm_circuit *circuit = parsed(text, NULL);
  ck_assert_str_eq(ohm_circuit_test_text(circuit, 1, OHM_TEST_WHAT), "say \"good\", or not");
  ck_assert_uint_lt(ohm_circuit_print(circuit, again, sizeof again), sizeof again);
  ohm_circuit *second = parsed(again, NULL);
  for (int column = 0; column < OHM_TEST_COLUMN_COUNT; column++)
    ck_assert_str_eq(ohm_circuit_test_text(circuit, 1, column),
                     ohm_circuit_test_text(second, 1, column));
  ohm_circuit_free(second);
  ohm_circuit_free(circuit);
}
END_TEST

static char *many(const char *head, const char *row, int count, size_t *length) {
  char *text = malloc(strlen(head) + (size_t)count * (strlen(row) + 8) + 1);
  char *end = text + strlen(strcpy(text, head));
  for (int i = 0; i < count; i++) {
    *end++ = 'n';
    end += ohm_number_print(i, end, OHM_NUMBER_SIZE);
    end += strlen(strcpy(end, row));
  }
  *length = (size_t)(end - text);
  return text;
}

START_TEST(what_is_too_much_is_refused)
{
  ohm_error error;
  size_t length;
  char *text = many("link,kind,part,action\n", ",power,p,buy\n", 65, &length);
  PROVOKES(ohm_circuit_parse, OHM_TOO_LARGE,
           (ohm_circuit_parse(text, length, "t", &error), error.status));
  ck_assert_ptr_nonnull(strstr(error.message, "more than 64 links"));
  free(text);
  text = many(LINKS HEADER, ",,w,,,none,eyes,1,,,,,,,,,,,,cp\n", 257, &length);
  ck_assert_ptr_null(ohm_circuit_parse(text, length, "t", &error));
  ck_assert_ptr_nonnull(strstr(error.message, "more than 256 tests"));
  free(text);
  ck_assert_ptr_null(ohm_circuit_parse("", 17 * 1024 * 1024, "t", &error));
  ck_assert_int_eq(error.status, OHM_TOO_LARGE);
  char row[2100] = "link,drawing\nfuse,";
  memset(row + strlen(row), 'x', 1800);
  check_refused(row, OHM_TOO_LARGE, "more than 1800 bytes");
}
END_TEST

START_TEST(at_most_a_hundred_notes_are_kept)
{
  size_t length;
  char *text = many(LINKS HEADER STARTS, ",,w,,,none,eyes,0,,,,,,,,,,,,cp\n", 150, &length);
  ohm_circuit *circuit = ohm_circuit_parse(text, length, "t", NULL);
  ck_assert_uint_eq(ohm_circuit_note_count(circuit), 100);
  ck_assert_str_eq(ohm_circuit_note(circuit, 99), "t: and 51 more of the kind");
  ohm_circuit_free(circuit);
  free(text);
}
END_TEST

START_TEST(statuses_are_those_the_header_names)
{
  ohm_error error;
  PROVOKES(ohm_circuit_parse, OHM_NULL_ARGUMENT,
           (ohm_circuit_parse(NULL, 0, "t", &error), error.status));
  PROVOKES(ohm_circuit_parse, OHM_NULL_ARGUMENT,
           (ohm_circuit_parse("", 0, NULL, &error), error.status));
  PROVOKES(ohm_circuit_parse, OHM_BAD_SYNTAX, (parsed("a\n", &error), error.status));
  PROVOKES(ohm_circuit_parse, OHM_BAD_DEFINITION, (parsed("", &error), error.status));
  PROVOKES(ohm_circuit_load, OHM_NULL_ARGUMENT, (ohm_circuit_load(NULL, &error), error.status));
  PROVOKES(ohm_circuit_load, OHM_CANNOT_OPEN,
           (ohm_circuit_load("/no/such/circuit.csv", &error), error.status));
  char *readme = source_path("README.md");
  PROVOKES(ohm_circuit_load, OHM_BAD_SYNTAX, (ohm_circuit_load(readme, &error), error.status));
  free(readme);
  char *sensor = source_path("tests/fuzz/corpus/circuit_file/no-symptom");
  PROVOKES(ohm_circuit_load, OHM_BAD_DEFINITION, (ohm_circuit_load(sensor, &error), error.status));
  free(sensor);
  char *large = source_path("tests/fuzz/corpus/circuit_file/too-many");
  PROVOKES(ohm_circuit_load, OHM_TOO_LARGE, (ohm_circuit_load(large, &error), error.status));
  free(large);
}
END_TEST

START_TEST(a_file_gives_its_name_when_it_says_none)
{
  char *path = source_path("tests/fuzz/corpus/circuit_file/nameless.csv");
  ohm_error error;
  ohm_circuit *circuit = ohm_circuit_load(path, &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  ck_assert_str_eq(ohm_circuit_name(circuit), "nameless");
  ohm_circuit_free(circuit);
  free(path);
}
END_TEST

int main(void) {
  return RUN_TESTS("circuit_file", a_whole_file_is_understood,
                   a_test_that_cannot_be_used_is_left_out_with_a_note,
                   what_the_trade_does_not_allow_is_left_out,
                   a_test_that_leans_on_one_left_out_is_left_out_too,
                   what_makes_a_circuit_unusable_is_an_error_with_its_place,
                   a_slip_in_an_optional_line_is_a_note, what_needs_quotes_gets_them_when_printed,
                   what_is_too_much_is_refused, at_most_a_hundred_notes_are_kept,
                   statuses_are_those_the_header_names, a_file_gives_its_name_when_it_says_none);
}
