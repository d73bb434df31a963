/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <locale.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "../../lib/ground/number.h"

static double read_ok(const char *text) {
  double value;
  ck_assert_msg(ohm_number_read(text, strlen(text), &value) == OHM_OK, "\"%s\" is refused", text);
  return value;
}

static const char *printed(double value) {
  static char text[OHM_NUMBER_SIZE];
  size_t length = ohm_number_print(value, text, sizeof text);
  ck_assert_uint_eq(length, strlen(text));
  return text;
}

static const char *fixed(double value, int decimals) {
  static char text[400];
  ohm_number_print_fixed(value, decimals, text, sizeof text);
  return text;
}

static const char *resistance(double r_ohm, int digits) {
  static char text[400];
  ohm_resistance_print(r_ohm, digits, text, sizeof text);
  return text;
}

/* Values of every size, the same each time: the golden ratio steps through the
 * significands, the exponents go in turn. */
static double sample(int i) {
  double fraction = 0.6180339887498949 * i;
  return ldexp(1 + fraction - floor(fraction), i % 2098 - 1074);
}

enum { SAMPLES = 20000 };

START_TEST(a_number_of_the_bench_is_read)
{
  ck_assert(read_ok("2310") == 2310.0);
  ck_assert(read_ok("-0.5") == -0.5);
  ck_assert(read_ok(".5") == 0.5);
  ck_assert(read_ok("5.") == 5.0);
  ck_assert(read_ok("+21.5") == 21.5);
  ck_assert(read_ok("1e-3") == 0.001);
  ck_assert(read_ok("1E3") == 1000.0);
  ck_assert(read_ok("0000000000000000000000000012") == 12.0);
}
END_TEST

START_TEST(halfway_goes_to_even_and_a_hair_above_goes_up)
{
  ck_assert(read_ok("9007199254740993") == 9007199254740992.0);
  ck_assert(read_ok("9007199254740995") == 9007199254740996.0);
  ck_assert(read_ok("9007199254740993.0000000000000000000000000000000000001") ==
            9007199254740994.0);
}
END_TEST

START_TEST(a_digit_after_a_thousand_zeros_still_counts)
{
  char text[1200];
  int length = sprintf(text, "9007199254740993.");
  memset(text + length, '0', 1000);
  text[length + 1000] = '\0';
  ck_assert(read_ok(text) == 9007199254740992.0);
  strcpy(text + length + 1000, "1");
  ck_assert(read_ok(text) == 9007199254740994.0);
}
END_TEST

START_TEST(the_ends_of_the_doubles_are_read)
{
  ck_assert(read_ok("1.7976931348623157e308") == 0x1.fffffffffffffp1023);
  ck_assert(read_ok("1.7976931348623158e308") == 0x1.fffffffffffffp1023);
  ck_assert(read_ok("5e-324") == 0x1p-1074);
  ck_assert(read_ok("2.4703282292062328e-324") == 0x1p-1074);
  ck_assert(read_ok("2.4703282292062327e-324") == 0.0);
  ck_assert(read_ok("2.2250738585072011e-308") == 0x0.fffffffffffffp-1022);
}
END_TEST

START_TEST(too_small_becomes_zero_of_its_sign)
{
  ck_assert(read_ok("1e-999999999999999999999999") == 0.0);
  ck_assert(signbit(read_ok("-1e-400")));
  ck_assert(read_ok("0e999999999999999999999999") == 0.0);
}
END_TEST

START_TEST(too_large_is_out_of_range)
{
  double value = 1;
  PROVOKES(ohm_number_read, OHM_OUT_OF_RANGE,
           ohm_number_read("1.7976931348623159e308", 22, &value));
  ck_assert(isnan(value));
  PROVOKES(ohm_number_read, OHM_OUT_OF_RANGE,
           ohm_number_read("1e99999999999999999999", 22, &value));
}
END_TEST

START_TEST(what_is_no_number_or_more_is_refused)
{
  static const char *const texts[] = {"",    " ",   "-",     "+-1", ".",    "e5",
                                      "1e",  "1e+", "1 ",    " 1",  "1,5",  "0x10",
                                      "inf", "nan", "1.2.3", "--1", "1e5.", "1k"};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    double value = 1;
    PROVOKES(ohm_number_read, OHM_BAD_SYNTAX, ohm_number_read(texts[i], strlen(texts[i]), &value));
    ck_assert(isnan(value));
  }
}
END_TEST

START_TEST(reading_without_text_or_output_is_refused)
{
  double value = 1;
  PROVOKES(ohm_number_read, OHM_NULL_ARGUMENT, ohm_number_read(NULL, 1, &value));
  ck_assert(isnan(value));
  PROVOKES(ohm_number_read, OHM_NULL_ARGUMENT, ohm_number_read("1", 1, NULL));
}
END_TEST

START_TEST(no_byte_after_the_length_is_read)
{
  double value;
  ck_assert_int_eq(ohm_number_read("12345", 2, &value), OHM_OK);
  ck_assert(value == 12.0);
  ck_assert_int_eq(ohm_number_read("1e5", 1, &value), OHM_OK);
  ck_assert(value == 1.0);
}
END_TEST

START_TEST(everyday_numbers_are_printed_plainly)
{
  ck_assert_str_eq(printed(2310), "2310");
  ck_assert_str_eq(printed(21.5), "21.5");
  ck_assert_str_eq(printed(-0.1), "-0.1");
  ck_assert_str_eq(printed(0.00033), "0.00033");
  ck_assert_str_eq(printed(0), "0");
  ck_assert_str_eq(printed(-0.0), "-0");
  ck_assert_str_eq(printed(0.1 + 0.2), "0.30000000000000004");
}
END_TEST

START_TEST(an_exponent_is_written_outside_1e_5_to_1e17)
{
  ck_assert_str_eq(printed(1e-5), "0.00001");
  ck_assert_str_eq(printed(9.9e-6), "9.9e-6");
  ck_assert_str_eq(printed(1e-7), "1e-7");
  ck_assert_str_eq(printed(99999999999999984.0), "99999999999999980");
  ck_assert_str_eq(printed(1e17), "1e17");
  ck_assert_str_eq(printed(-1.5e300), "-1.5e300");
}
END_TEST

START_TEST(a_tie_between_two_shortest_goes_to_even)
{ ck_assert_str_eq(printed(524288.00048828125), "524288.0004882812"); }
END_TEST

/* Below a power of two the doubles lie closer, so the nearest of 16 digits, ending
 * in 1, reads as the double below. */
START_TEST(a_power_of_two_keeps_to_its_own_side)
{ ck_assert_str_eq(printed(0x1p-44), "5.684341886080802e-14"); }
END_TEST

START_TEST(what_is_not_finite_is_named)
{
  ck_assert_str_eq(printed(NAN), "nan");
  ck_assert_str_eq(printed(INFINITY), "inf");
  ck_assert_str_eq(printed(-INFINITY), "-inf");
  ck_assert_str_eq(fixed(NAN, 2), "nan");
  ck_assert_str_eq(resistance(-INFINITY, 3), "-inf");
}
END_TEST

START_TEST(every_number_printed_reads_back_equal)
{
  for (int i = 0; i < SAMPLES; i++) {
    double value = sample(i);
    ck_assert_msg(read_ok(printed(value)) == value, "%a", value);
    ck_assert_msg(read_ok(printed(-value)) == -value, "%a", -value);
  }
}
END_TEST

START_TEST(a_text_is_cut_to_the_buffer_and_its_length_told)
{
  char text[4] = "***";
  ck_assert_uint_eq(ohm_number_print(123456, text, 4), 6);
  ck_assert_str_eq(text, "123");
  ck_assert_uint_eq(ohm_number_print_fixed(1.5, 2, text, 1), 4);
  ck_assert_str_eq(text, "");
  ck_assert_uint_eq(ohm_resistance_print(187, 3, NULL, 0), 7);
}
END_TEST

START_TEST(fixed_decimals_are_rounded_on_the_exact_value)
{
  ck_assert_str_eq(fixed(21.5, 2), "21.50");
  ck_assert_str_eq(fixed(0.125, 2), "0.12");
  ck_assert_str_eq(fixed(0.375, 2), "0.38");
  ck_assert_str_eq(fixed(1.005, 2), "1.00");
  ck_assert_str_eq(fixed(0.5, 0), "0");
  ck_assert_str_eq(fixed(1.5, 0), "2");
  ck_assert_str_eq(fixed(99.999, 2), "100.00");
  ck_assert_str_eq(fixed(-0.001, 2), "-0.00");
  ck_assert_str_eq(fixed(0, 3), "0.000");
  ck_assert_str_eq(fixed(0.1, 20), "0.10000000000000000555");
}
END_TEST

START_TEST(fixed_decimals_outside_0_to_20_take_the_nearer_end)
{
  ck_assert_str_eq(fixed(2.25, -1), "2");
  ck_assert_str_eq(fixed(0.5, 21), "0.50000000000000000000");
}
END_TEST

START_TEST(a_resistance_is_said_as_at_a_bench)
{
  ck_assert_str_eq(resistance(187, 3), "187 ohm");
  ck_assert_str_eq(resistance(2310, 3), "2.31 k");
  ck_assert_str_eq(resistance(1.2e6, 2), "1.2 M");
  ck_assert_str_eq(resistance(0.47, 2), "0.47 ohm");
  ck_assert_str_eq(resistance(1.5e9, 2), "1500 M");
  ck_assert_str_eq(resistance(-47, 2), "-47 ohm");
  ck_assert_str_eq(resistance(0, 3), "0.00 ohm");
}
END_TEST

START_TEST(the_unit_is_chosen_after_rounding)
{
  ck_assert_str_eq(resistance(999.96, 4), "1.000 k");
  ck_assert_str_eq(resistance(999.94, 4), "999.9 ohm");
  ck_assert_str_eq(resistance(999999, 3), "1.00 M");
}
END_TEST

START_TEST(fewer_digits_than_the_whole_part_are_filled_with_zeros)
{
  ck_assert_str_eq(resistance(187, 2), "190 ohm");
  ck_assert_str_eq(resistance(23456, 1), "20 k");
}
END_TEST

START_TEST(digits_outside_1_to_17_take_the_nearer_end)
{
  ck_assert_str_eq(resistance(23, 0), "20 ohm");
  ck_assert_str_eq(resistance(0.5, 18), "0.50000000000000000 ohm");
}
END_TEST

struct scan {
  const char *text;
  ohm_status status;
  size_t used;
  double value, quantum;
};

typedef ohm_status scanner(const char *, size_t, size_t *, double *, double *);

static void check_scans(scanner *scan, const struct scan *rows, size_t count) {
  for (const struct scan *row = rows; row < rows + count; row++) {
    size_t used;
    double value, quantum;
    ohm_status status = scan(row->text, strlen(row->text), &used, &value, &quantum);
    ck_assert_msg(status == row->status && used == row->used, "\"%s\": status %d, used %zu",
                  row->text, (int)status, used);
    if (status == OHM_OK)
      ck_assert_msg(value == row->value && quantum == row->quantum, "\"%s\": %.17g, %.17g",
                    row->text, value, quantum);
    else
      ck_assert(isnan(value) && isnan(quantum));
  }
}

START_TEST(a_scan_takes_the_longest_number_and_the_worth_of_its_last_digit)
{
  static const struct scan rows[] = {
      {"2.31", OHM_OK, 4, 2.31, 0.01},
      {"0.02", OHM_OK, 4, 0.02, 0.01},
      {"2310", OHM_OK, 4, 2310, 1},
      {"2.31e3", OHM_OK, 6, 2310, 10},
      {"2.31 kohm", OHM_OK, 4, 2.31, 0.01},
      {"1e", OHM_OK, 1, 1, 1},
      {"1e+x", OHM_OK, 1, 1, 1},
      {"0.4+-0.1", OHM_OK, 3, 0.4, 0.1},
      {"-.50x", OHM_OK, 4, -0.5, 0.01},
      {"1e400", OHM_OUT_OF_RANGE, 5, 0, 0},
      {"0e400", OHM_OUT_OF_RANGE, 5, 0, 0},
      {"ohm", OHM_BAD_SYNTAX, 0, 0, 0},
      {"", OHM_BAD_SYNTAX, 0, 0, 0},
  };
  check_scans(oc_number_scan, rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(a_letter_code_stands_for_the_point_and_a_power)
{
  static const struct scan rows[] = {
      {"2k31", OHM_OK, 4, 2310, 10},     {"4K7", OHM_OK, 3, 4700, 100},
      {"0R47", OHM_OK, 4, 0.47, 0.01},   {"R47", OHM_OK, 3, 0.47, 0.01},
      {"1M", OHM_OK, 2, 1e6, 1e6},       {"22R", OHM_OK, 3, 22, 1},
      {"5L60", OHM_OK, 4, 0.0056, 1e-5}, {"1G0 x", OHM_OK, 3, 1e9, 1e8},
      {"k", OHM_BAD_SYNTAX, 0, 0, 0},    {"2.31k", OHM_BAD_SYNTAX, 0, 0, 0},
      {"2310", OHM_BAD_SYNTAX, 0, 0, 0}, {"-2k3", OHM_BAD_SYNTAX, 0, 0, 0},
      {"2m3", OHM_BAD_SYNTAX, 0, 0, 0},
  };
  check_scans(oc_rkm_scan, rows, sizeof rows / sizeof rows[0]);
}
END_TEST

/* A locale that is installed and writes a comma; false when there is none. */
static bool set_comma_locale(void) {
  static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8",  "de_DE",       "fr_FR.UTF-8",
                                      "fr_FR",       "nl_NL.UTF-8", "es_ES.UTF-8", "it_IT.UTF-8",
                                      "pt_BR.UTF-8", "sv_SE.UTF-8", "pl_PL.UTF-8", "ru_RU.UTF-8"};
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    if (setlocale(LC_ALL, names[i]) && strcmp(localeconv()->decimal_point, ",") == 0)
      return true;
  return false;
}

START_TEST(a_locale_with_a_decimal_comma_changes_nothing)
{
  if (!set_comma_locale()) {
    printf("skipped: a_locale_with_a_decimal_comma_changes_nothing, none is installed\n");
    return;
  }
  ck_assert_str_eq(fixed(21.5, 2), "21.50");
  ck_assert_str_eq(resistance(2310, 3), "2.31 k");
  for (int i = 0; i < SAMPLES; i++) {
    double value = sample(i);
    ck_assert(strchr(printed(value), ',') == NULL);
    ck_assert(read_ok(printed(value)) == value);
  }
  double value;
  ck_assert_int_eq(ohm_number_read("1,5", 3, &value), OHM_BAD_SYNTAX);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "number", a_number_of_the_bench_is_read, halfway_goes_to_even_and_a_hair_above_goes_up,
      a_digit_after_a_thousand_zeros_still_counts, the_ends_of_the_doubles_are_read,
      too_small_becomes_zero_of_its_sign, too_large_is_out_of_range,
      what_is_no_number_or_more_is_refused, reading_without_text_or_output_is_refused,
      no_byte_after_the_length_is_read, everyday_numbers_are_printed_plainly,
      an_exponent_is_written_outside_1e_5_to_1e17, a_tie_between_two_shortest_goes_to_even,
      a_power_of_two_keeps_to_its_own_side, what_is_not_finite_is_named,
      every_number_printed_reads_back_equal, a_text_is_cut_to_the_buffer_and_its_length_told,
      fixed_decimals_are_rounded_on_the_exact_value,
      fixed_decimals_outside_0_to_20_take_the_nearer_end, a_resistance_is_said_as_at_a_bench,
      the_unit_is_chosen_after_rounding, fewer_digits_than_the_whole_part_are_filled_with_zeros,
      digits_outside_1_to_17_take_the_nearer_end,
      a_scan_takes_the_longest_number_and_the_worth_of_its_last_digit,
      a_letter_code_stands_for_the_point_and_a_power,
      a_locale_with_a_decimal_comma_changes_nothing);
}
