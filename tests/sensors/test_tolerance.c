/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/sensors/sensor.h"
#include "../../lib/sensors/tolerance.h"
#include "../../lib/evidence/reference.h"

static struct oc_tolerance scanned(const char *text) {
  struct oc_tolerance tolerance;
  ck_assert_int_eq(oc_tolerance_scan(text, strlen(text), &tolerance), OHM_OK);
  return tolerance;
}

/* Points of the worked example below, and a tolerance line. */
static ohm_sensor *sensor_with(const char *tolerance) {
  char text[256] = "# tolerance: ";
  strcat(text, tolerance);
  strcat(text, "\ntemp_c,r_nom_ohm\n-40,332100\n0,32560\n25,10000\n100,677.3\n");
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "ntc", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  return sensor;
}

/* ---- notation of a sensor file ---- */

START_TEST(every_notation_is_read_into_its_parts)
{
  struct oc_tolerance percent = scanned("5 %");
  ck_assert_int_eq(percent.kind, OC_TOLERANCE_PERCENT);
  CHECK_NEAR(percent.percent, 5, 0);
  struct oc_tolerance beta = scanned("1 % at 25 C, beta 0.75 %");
  ck_assert_int_eq(beta.kind, OC_TOLERANCE_BETA);
  CHECK_NEAR(beta.percent, 1, 0);
  CHECK_NEAR(beta.at_c, 25, 0);
  CHECK_NEAR(beta.beta_percent, 0.75, 0);
  struct oc_tolerance fixed = scanned("0.5 K");
  ck_assert_int_eq(fixed.kind, OC_TOLERANCE_KELVIN);
  CHECK_NEAR(fixed.kelvin, 0.5, 0);
  CHECK_NEAR(fixed.kelvin_per_c, 0, 0);
  struct oc_tolerance growing = scanned("0.3 K + 0.005 |t|");
  CHECK_NEAR(growing.kelvin, 0.3, 0);
  CHECK_NEAR(growing.kelvin_per_c, 0.005, 0);
}
END_TEST

START_TEST(spaces_are_free)
{
  CHECK_NEAR(scanned("5%").percent, 5, 0);
  CHECK_NEAR(scanned("1%at-25C,beta0.75%").at_c, -25, 0);
  CHECK_NEAR(scanned("0.3K+0.005|t|").kelvin_per_c, 0.005, 0);
}
END_TEST

static void check_refused(const char *text, ohm_status status) {
  struct oc_tolerance tolerance = {.kind = OC_TOLERANCE_KELVIN, .kelvin = 7};
  ck_assert_msg(oc_tolerance_scan(text, strlen(text), &tolerance) == status, "\"%s\"", text);
  ck_assert_int_eq(tolerance.kind, OC_TOLERANCE_KELVIN);
  CHECK_NEAR(tolerance.kelvin, 7, 0);
}

START_TEST(what_is_no_tolerance_is_refused_and_changes_nothing)
{
  static const char *const wrong[] = {"",
                                      "5",
                                      "%",
                                      "5 %%",
                                      "5 % at 25",
                                      "5 % at 25 C",
                                      "5 C",
                                      "five %",
                                      "5 % at 25 C beta 1 %",
                                      "5 % at 25 C, beta",
                                      "0.3 K + 0.005",
                                      "0.3 K +",
                                      "0.5 K x",
                                      "5 % at 25 C, beta 1 % x"};
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
    check_refused(wrong[i], OHM_BAD_SYNTAX);
}
END_TEST

START_TEST(what_no_maker_allows_is_out_of_range_and_changes_nothing)
{
  static const char *const beyond[] = {"0 %",
                                       "-5 %",
                                       "100 %",
                                       "0 K",
                                       "-1 K",
                                       "0.3 K + -1 |t|",
                                       "0 K + 0 |t|",
                                       "0 % at 25 C, beta 0 %",
                                       "1 % at 25 C, beta -1 %",
                                       "1 % at 25 C, beta 100 %",
                                       "1 % at -273.15 C, beta 1 %",
                                       "1 % at 1001 C, beta 1 %"};
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++)
    check_refused(beyond[i], OHM_OUT_OF_RANGE);
}
END_TEST

START_TEST(a_tolerance_printed_reads_back_equal)
{
  static const char *const texts[] = {"5 %", "1 % at 25 C, beta 0.75 %", "0.5 K",
                                      "0.3 K + 0.005 |t|", "0 K + 0.1 |t|"};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    char buffer[64];
    struct oc_text text = oc_text_begin(buffer, sizeof buffer);
    struct oc_tolerance tolerance = scanned(texts[i]);
    oc_tolerance_add(&text, &tolerance);
    ck_assert_str_eq(buffer, texts[i]);
  }
}
END_TEST

/* ---- notation of a person ---- */

START_TEST(percent_of_resistance_is_read)
{
  double percent;
  PROVOKES(oc_tolerance_read, OHM_OK, oc_tolerance_read("5%", &percent, NULL));
  CHECK_NEAR(percent, 5, 0);
  ck_assert_int_eq(oc_tolerance_read(" 0.5 % ", &percent, NULL), OHM_OK);
  CHECK_NEAR(percent, 0.5, 0);
}
END_TEST

START_TEST(a_tolerance_that_fails_is_nan_with_a_sentence)
{
  static const char *const wrong[] = {"", "5", "5 K", "%", "5%%", "5% x"};
  static const char *const beyond[] = {"0%", "-5%", "100%", "1e300%"};
  ohm_error error;
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    double percent = 1;
    PROVOKES(oc_tolerance_read, OHM_BAD_SYNTAX, oc_tolerance_read(wrong[i], &percent, &error));
    ck_assert(isnan(percent));
    ck_assert_ptr_nonnull(strstr(error.message, "such as 5%"));
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    double percent = 1;
    PROVOKES(oc_tolerance_read, OHM_OUT_OF_RANGE, oc_tolerance_read(beyond[i], &percent, &error));
    ck_assert(isnan(percent));
    ck_assert_ptr_nonnull(strstr(error.message, "less than 100%"));
  }
}
END_TEST

START_TEST(a_tolerance_needs_a_text_and_an_output)
{
  double percent = 1;
  PROVOKES(oc_tolerance_read, OHM_NULL_ARGUMENT, oc_tolerance_read(NULL, &percent, NULL));
  ck_assert(isnan(percent));
  PROVOKES(oc_tolerance_read, OHM_NULL_ARGUMENT, oc_tolerance_read("5%", NULL, NULL));
}
END_TEST

/* ---- limits ---- */

START_TEST(percent_is_the_same_part_at_every_temperature)
{
  ohm_sensor *sensor = sensor_with("5 %");
  for (double t_c = -40; t_c <= 100; t_c += 7) {
    double low;
    double nominal;
    double high;
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, &nominal, &high), OHM_OK);
    CHECK_NEAR(low / nominal, 0.95, 1e-14);
    CHECK_NEAR(high / nominal, 1.05, 1e-14);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Published: Vishay BCcomponents, document 29049, worked example: 10 kohm, 0 C, 5 % of
 * R25, 0.89 % from 0.75 % of B, 5.08 %/K gives +-1.17 C; the product of the two parts
 * does, their sum would give 1.16. */
START_TEST(percent_of_beta_widens_by_the_product_of_the_parts)
{
  ohm_sensor *sensor = sensor_with("5 % at 25 C, beta 0.75 %");
  double low;
  double nominal;
  double high;
  ck_assert_int_eq(ohm_sensor_band(sensor, 0, &low, &nominal, &high), OHM_OK);
  CHECK_NEAR(nominal, 32560, 1e-9);
  CHECK_NEAR((high / nominal - 1) * 100 / 5.08, 1.17, 0.005);
  ck_assert_int_eq(ohm_sensor_band(sensor, 25, &low, &nominal, &high), OHM_OK);
  CHECK_NEAR(low, 9500, 1e-9);
  CHECK_NEAR(high, 10500, 1e-9);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(percent_of_beta_never_narrows_away_from_its_temperature)
{
  ohm_sensor *sensor = sensor_with("1 % at 25 C, beta 2 %");
  double before = INFINITY;
  for (double t_c = -40; t_c <= 100; t_c += 5) {
    double low;
    double high;
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, NULL, &high), OHM_OK);
    double width = log(high / low);
    ck_assert(t_c <= 25 ? width < before : width > before);
    before = width;
  }
  ohm_sensor_free(sensor);
}
END_TEST

static double celsius_of(const ohm_sensor *sensor, double r_ohm) {
  double t_c;
  ck_assert_int_eq(ohm_curve_temperature(ohm_sensor_curve(sensor), r_ohm, &t_c), OHM_OK);
  return t_c;
}

START_TEST(kelvin_are_kelvin_on_the_curve_either_way)
{
  ohm_sensor *sensor = sensor_with("0.5 K");
  for (double t_c = -39; t_c <= 99; t_c += 6) {
    double low;
    double high;
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, NULL, &high), OHM_OK);
    CHECK_NEAR(celsius_of(sensor, low), t_c + 0.5, 1e-9);
    CHECK_NEAR(celsius_of(sensor, high), t_c - 0.5, 1e-9);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(growing_kelvin_grow_with_celsius_of_either_sign)
{
  ohm_sensor *sensor = sensor_with("0.3 K + 0.005 |t|");
  for (double t_c = -39; t_c <= 99; t_c += 6) {
    double half_k = 0.3 + 0.005 * fabs(t_c);
    double low;
    double high;
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, NULL, &high), OHM_OK);
    CHECK_NEAR(celsius_of(sensor, low), t_c + half_k, 1e-9);
    CHECK_NEAR(celsius_of(sensor, high), t_c - half_k, 1e-9);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(kelvin_reach_past_the_ends_of_the_curve)
{
  ohm_sensor *sensor = sensor_with("2 K");
  double low;
  double nominal;
  double high;
  ck_assert_int_eq(ohm_sensor_band(sensor, 100, &low, &nominal, &high), OHM_OK);
  ck_assert(0 < low && low < nominal && nominal < high);
  ck_assert_int_eq(ohm_sensor_band(sensor, -40, &low, &nominal, &high), OHM_OK);
  ck_assert(low < nominal && nominal < high && isfinite(high));
  ohm_sensor_free(sensor);
}
END_TEST

static void check_holds(const ohm_sensor *sensor, double t_c) {
  double low;
  double nominal;
  double high;
  ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, &nominal, &high), OHM_OK);
  ck_assert_msg(low <= nominal && nominal <= high, "%.17g to %.17g without %.17g at %.17g C", low,
                high, nominal, t_c);
}

/* Of these figures, some are not the square of their root in doubles. */
START_TEST(limits_of_one_figure_hold_the_nominal)
{
  for (int i = 0; i < 1000; i++) {
    char text[200];
    double r_ohm = 2000 + i / 10.0;
    snprintf(text, sizeof text, "temp_c,r_min_ohm,r_max_ohm\n20,%.1f,%.1f\n80,250.5,250.5\n", r_ohm,
             r_ohm);
    ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "ntc", NULL);
    check_holds(sensor, 20);
    check_holds(sensor, 50);
    check_holds(sensor, 80);
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* The three resistances differ by less than their last digits err. */
START_TEST(a_hair_of_a_kelvin_holds_the_nominal)
{
  ohm_sensor *sensor = sensor_with("1e-12 K");
  for (int i = 0; i <= 1400; i++)
    check_holds(sensor, -40 + i / 10.0);
  ohm_sensor_free(sensor);
}
END_TEST

/* A coarse thermometer may reach there; no reading of a resistance does. */
START_TEST(at_absolute_zero_and_below_limits_are_infinite)
{
  static const char *const notations[] = {"5 %", "5 % at 25 C, beta 1 %", "0.5 K",
                                          "0.3 K + 0.005 |t|"};
  for (size_t i = 0; i < sizeof notations / sizeof notations[0]; i++) {
    ohm_sensor *sensor = sensor_with(notations[i]);
    for (double t_c = -273.15; t_c > -2000; t_c -= 100) {
      struct oc_band band = oc_tolerance_band(sensor->curve, &sensor->tolerance, t_c - 20);
      ck_assert(isinf(band.low_ohm) && isinf(band.nominal_ohm) && isinf(band.high_ohm));
    }
    ohm_sensor_free(sensor);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "tolerance", every_notation_is_read_into_its_parts, spaces_are_free,
      what_is_no_tolerance_is_refused_and_changes_nothing,
      what_no_maker_allows_is_out_of_range_and_changes_nothing,
      a_tolerance_printed_reads_back_equal, percent_of_resistance_is_read,
      a_tolerance_that_fails_is_nan_with_a_sentence, a_tolerance_needs_a_text_and_an_output,
      percent_is_the_same_part_at_every_temperature,
      percent_of_beta_widens_by_the_product_of_the_parts,
      percent_of_beta_never_narrows_away_from_its_temperature,
      kelvin_are_kelvin_on_the_curve_either_way, growing_kelvin_grow_with_celsius_of_either_sign,
      kelvin_reach_past_the_ends_of_the_curve, limits_of_one_figure_hold_the_nominal,
      a_hair_of_a_kelvin_holds_the_nominal, at_absolute_zero_and_below_limits_are_infinite);
}
