/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

static ohm_sensor *parsed(const char *text) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "given", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  return sensor;
}

/* Limits at -20, 20 and 80 only; at 80 no nominal. */
static const char table[] = "# name: ntc\n"
                            "# description: for tests\n"
                            "# source: invented\n"
                            "# kind: module\n"
                            "# dissipation_mw_per_k: 1.5\n"
                            "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n"
                            "-40,,48140,\n"
                            "-20,14130,15480,16830\n"
                            "0,,5790,\n"
                            "20,2310,2450,2590\n"
                            "80,309,,331\n"
                            "130,,93,\n";

static const char model[] = "# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# beta_k: 3950\n"
                            "# range: -40 to 125 C\n";

struct limits {
  double low;
  double nominal;
  double high;
};

static struct limits band(const ohm_sensor *sensor, double t_c) {
  struct limits limits;
  ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &limits.low, &limits.nominal, &limits.high),
                   OHM_OK);
  return limits;
}

/* ---- asking ---- */

START_TEST(a_sensor_tells_what_its_file_says)
{
  ohm_sensor *sensor = parsed(table);
  ck_assert_str_eq(ohm_sensor_name(sensor), "ntc");
  ck_assert_str_eq(ohm_sensor_description(sensor), "for tests");
  ck_assert_str_eq(ohm_sensor_source(sensor), "invented");
  ck_assert_str_eq(ohm_sensor_kind(sensor), "module");
  CHECK_NEAR(ohm_sensor_dissipation_mw_per_k(sensor), 1.5, 0);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  ck_assert_ptr_null(ohm_sensor_note(sensor, 0));
  ck_assert_ptr_nonnull(ohm_sensor_curve(sensor));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(what_a_file_does_not_say_is_empty_or_nan)
{
  ohm_sensor *sensor = parsed(model);
  ck_assert_str_eq(ohm_sensor_name(sensor), "given");
  ck_assert_str_eq(ohm_sensor_description(sensor), "");
  ck_assert_str_eq(ohm_sensor_source(sensor), "");
  ck_assert_str_eq(ohm_sensor_kind(sensor), "");
  ck_assert(isnan(ohm_sensor_dissipation_mw_per_k(sensor)));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(no_sensor_has_no_properties)
{
  char buffer[4] = "abc";
  ck_assert_ptr_null(ohm_sensor_curve(NULL));
  ck_assert_ptr_null(ohm_sensor_name(NULL));
  ck_assert_str_eq(ohm_sensor_description(NULL), "");
  ck_assert_str_eq(ohm_sensor_source(NULL), "");
  ck_assert_str_eq(ohm_sensor_kind(NULL), "");
  ck_assert(isnan(ohm_sensor_dissipation_mw_per_k(NULL)));
  ck_assert_uint_eq(ohm_sensor_note_count(NULL), 0);
  ck_assert_ptr_null(ohm_sensor_note(NULL, 0));
  ck_assert_uint_eq(ohm_sensor_print(NULL, buffer, sizeof buffer), 0);
  ck_assert_str_eq(buffer, "");
  ohm_sensor_free(NULL);
}
END_TEST

/* ---- limits ---- */

START_TEST(printed_limits_are_obeyed_to_the_last_digit)
{
  ohm_sensor *sensor = parsed(table);
  struct limits at_20 = band(sensor, 20);
  CHECK_NEAR(at_20.low, 2310, 0);
  CHECK_NEAR(at_20.nominal, 2450, 0);
  CHECK_NEAR(at_20.high, 2590, 0);
  struct limits at_80 = band(sensor, 80);
  CHECK_NEAR(at_80.low, 309, 0);
  CHECK_NEAR(at_80.high, 331, 0);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_nominal_of_a_row_without_one_is_the_geometric_middle)
{
  ohm_sensor *sensor = parsed(table);
  CHECK_NEAR(band(sensor, 80).nominal, sqrt(309.0 * 331.0), 1e-10);
  ohm_sensor_free(sensor);
}
END_TEST

/* How far from one row to the next in 1/T. */
static double part_of(double t_c, double from_c, double to_c) {
  double from = 1 / (from_c + 273.15);
  return (1 / (t_c + 273.15) - from) / (1 / (to_c + 273.15) - from);
}

static void check_between(const ohm_sensor *sensor, double from_c, double to_c) {
  struct limits from = band(sensor, from_c);
  struct limits to = band(sensor, to_c);
  for (double t_c = from_c + 0.5; t_c < to_c; t_c += 0.5) {
    double part = part_of(t_c, from_c, to_c);
    struct limits at = band(sensor, t_c);
    CHECK_NEAR(log(at.high / at.nominal),
               (1 - part) * log(from.high / from.nominal) + part * log(to.high / to.nominal),
               1e-13);
    CHECK_NEAR(log(at.nominal / at.low),
               (1 - part) * log(from.nominal / from.low) + part * log(to.nominal / to.low), 1e-13);
  }
}

/* The row at 0 C has no limits and is stepped over. */
START_TEST(relative_half_widths_run_linearly_in_reciprocal_kelvin)
{
  ohm_sensor *sensor = parsed(table);
  check_between(sensor, -20, 20);
  check_between(sensor, 20, 80);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(outside_the_printed_limits_the_nominal_is_given_alone)
{
  static const double outside_c[] = {-40, -20.001, 80.001, 130};
  ohm_sensor *sensor = parsed(table);
  for (size_t i = 0; i < sizeof outside_c / sizeof outside_c[0]; i++) {
    double low = 1;
    double nominal = -1;
    double high = 1;
    PROVOKES(ohm_sensor_band, OHM_OUT_OF_RANGE,
             ohm_sensor_band(sensor, outside_c[i], &low, &nominal, &high));
    ck_assert(isnan(low) && isnan(high));
    ck_assert(nominal > 0);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(outside_the_curve_nothing_is_given)
{
  static const double outside_c[] = {-40.001, 130.001, 2000, 1e300, INFINITY};
  ohm_sensor *sensor = parsed(table);
  for (size_t i = 0; i < sizeof outside_c / sizeof outside_c[0]; i++) {
    double low = 1;
    double nominal = 1;
    double high = 1;
    PROVOKES(ohm_sensor_band, OHM_OUT_OF_RANGE,
             ohm_sensor_band(sensor, outside_c[i], &low, &nominal, &high));
    ck_assert(isnan(low) && isnan(nominal) && isnan(high));
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(what_is_no_temperature_is_a_bad_argument)
{
  static const double bad_c[] = {NAN, -273.15, -300, -INFINITY};
  ohm_sensor *sensor = parsed(table);
  for (size_t i = 0; i < sizeof bad_c / sizeof bad_c[0]; i++) {
    double low = 1;
    double nominal = 1;
    double high = 1;
    PROVOKES(ohm_sensor_band, OHM_BAD_ARGUMENT,
             ohm_sensor_band(sensor, bad_c[i], &low, &nominal, &high));
    ck_assert(isnan(low) && isnan(nominal) && isnan(high));
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_sensor_without_tolerance_has_a_nominal_and_no_limits)
{
  ohm_sensor *sensor = parsed(model);
  double low = 1;
  double nominal = 1;
  double high = 1;
  PROVOKES(ohm_sensor_band, OHM_NOT_FOUND, ohm_sensor_band(sensor, 25, &low, &nominal, &high));
  ck_assert(isnan(low) && isnan(high));
  CHECK_NEAR(nominal, 10000, 1e-8);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(no_sensor_has_no_limits)
{
  double low = 1;
  double nominal = 1;
  double high = 1;
  PROVOKES(ohm_sensor_band, OHM_NULL_ARGUMENT, ohm_sensor_band(NULL, 20, &low, &nominal, &high));
  ck_assert(isnan(low) && isnan(nominal) && isnan(high));
}
END_TEST

START_TEST(any_limit_may_be_left_unasked)
{
  ohm_sensor *sensor = parsed(table);
  double high;
  PROVOKES(ohm_sensor_band, OHM_OK, ohm_sensor_band(sensor, 20, NULL, NULL, NULL));
  ck_assert_int_eq(ohm_sensor_band(sensor, 20, NULL, NULL, &high), OHM_OK);
  CHECK_NEAR(high, 2590, 0);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(limits_that_are_printed_count_before_a_tolerance_line)
{
  ohm_sensor *sensor = parsed("# tolerance: 50 %\ntemp_c,r_min_ohm,r_max_ohm\n"
                              "0,5700,5900\n50,800,820\n");
  CHECK_NEAR(band(sensor, 0).low, 5700, 0);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_row_with_limits_allows_its_own_temperature_only)
{
  ohm_sensor *sensor = parsed("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n0,,5790,\n"
                              "20,2310,2450,2590\n40,,1148,\n");
  CHECK_NEAR(band(sensor, 20).low, 2310, 0);
  PROVOKES(ohm_sensor_band, OHM_OUT_OF_RANGE,
           ohm_sensor_band(sensor, nextafter(20, 21), NULL, NULL, NULL));
  PROVOKES(ohm_sensor_band, OHM_OUT_OF_RANGE,
           ohm_sensor_band(sensor, nextafter(20, 19), NULL, NULL, NULL));
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- as text ---- */

START_TEST(a_buffer_that_is_too_small_holds_the_beginning)
{
  ohm_sensor *sensor = parsed(table);
  char whole[sizeof table + 100];
  size_t length = ohm_sensor_print(sensor, whole, sizeof whole);
  ck_assert_uint_eq(ohm_sensor_print(sensor, NULL, 0), length);
  for (size_t size = 1; size <= length + 1; size++) {
    char *part = malloc(size);
    ck_assert_uint_eq(ohm_sensor_print(sensor, part, size), length);
    ck_assert_uint_eq(strlen(part), size - 1);
    ck_assert_int_eq(memcmp(part, whole, size - 1), 0);
    free(part);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_table_is_printed_as_it_was_written)
{
  ohm_sensor *sensor = parsed(table);
  char text[sizeof table + 100];
  ohm_sensor_print(sensor, text, sizeof text);
  ck_assert_str_eq(text, table);
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "sensor", a_sensor_tells_what_its_file_says, what_a_file_does_not_say_is_empty_or_nan,
      no_sensor_has_no_properties, printed_limits_are_obeyed_to_the_last_digit,
      the_nominal_of_a_row_without_one_is_the_geometric_middle,
      relative_half_widths_run_linearly_in_reciprocal_kelvin,
      outside_the_printed_limits_the_nominal_is_given_alone, outside_the_curve_nothing_is_given,
      what_is_no_temperature_is_a_bad_argument,
      a_sensor_without_tolerance_has_a_nominal_and_no_limits, no_sensor_has_no_limits,
      any_limit_may_be_left_unasked, limits_that_are_printed_count_before_a_tolerance_line,
      one_row_with_limits_allows_its_own_temperature_only,
      a_buffer_that_is_too_small_holds_the_beginning, a_table_is_printed_as_it_was_written);
}
