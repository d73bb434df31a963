/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

#include "../../lib/evidence/reference.h"

/* ---- a temperature with its unit ---- */

START_TEST(every_unit_of_temperature_is_read)
{
  static const struct {
    const char *text;
    double t_c;
  } notations[] = {{"21.5C", 21.5},
                   {"-10C", -10},
                   {"70F", (70.0 - 32) * 5 / 9},
                   {"294.7K", 294.7 - 273.15},
                   {"21.5 C", 21.5},
                   {"21.5\xC2\xB0"
                    "C",
                    21.5},
                   {"32F", 0},
                   {"-40F", -40},
                   {"1000C", 1000},
                   {"1e2C", 100},
                   {" 5c ", 5}};
  for (size_t i = 0; i < sizeof notations / sizeof notations[0]; i++) {
    double t_c;
    ohm_error error;
    PROVOKES(ohm_temperature_read, OHM_OK, ohm_temperature_read(notations[i].text, &t_c, &error));
    ck_assert_int_eq(error.status, OHM_OK);
    CHECK_NEAR(t_c, notations[i].t_c, 1e-12);
  }
}
END_TEST

static const char *temperature_sentence(const char *text, ohm_status status) {
  static ohm_error error;
  double t_c = 1;
  ck_assert_msg(ohm_temperature_read(text, &t_c, &error) == status, "\"%s\"", text);
  ck_assert(isnan(t_c));
  ck_assert_int_eq(error.status, status);
  return error.message;
}

START_TEST(a_temperature_without_a_unit_is_refused_with_its_sentence)
{
  ck_assert_str_eq(temperature_sentence("21.5", OHM_BAD_SYNTAX),
                   "\"21.5\" has no unit; write C, F or K after the number, such as 21.5C");
  ck_assert_ptr_nonnull(strstr(temperature_sentence("-10 ", OHM_BAD_SYNTAX), "has no unit"));
}
END_TEST

START_TEST(what_is_no_temperature_is_refused_with_the_notations)
{
  static char long_text[100000];
  memset(long_text, '1', sizeof long_text - 2);
  long_text[sizeof long_text - 2] = 'x';
  double t_c = 1;
  PROVOKES(ohm_temperature_read, OHM_BAD_SYNTAX, ohm_temperature_read("warm", &t_c, NULL));
  const char *wrong[] = {"",
                         "C",
                         "21.5X",
                         "21.5CC",
                         "21.5C x",
                         "21,5C",
                         "nanC",
                         "infC",
                         "21.5C+-1",
                         "ice",
                         "\xC2\xB0"
                         "C",
                         long_text};
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
    ck_assert_ptr_nonnull(
        strstr(temperature_sentence(wrong[i], OHM_BAD_SYNTAX), "write it as 21.5C"));
}
END_TEST

START_TEST(a_temperature_no_sensor_has_is_out_of_range)
{
  double t_c = 1;
  PROVOKES(ohm_temperature_read, OHM_OUT_OF_RANGE, ohm_temperature_read("-300C", &t_c, NULL));
  static const char *const beyond[] = {"-273.15C", "0K", "-1K", "1000.1C", "1e300F", "-1e300C"};
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++)
    ck_assert_ptr_nonnull(
        strstr(temperature_sentence(beyond[i], OHM_OUT_OF_RANGE), "above -273.15C"));
}
END_TEST

START_TEST(a_temperature_needs_a_text_and_an_output)
{
  double t_c = 1;
  PROVOKES(ohm_temperature_read, OHM_NULL_ARGUMENT, ohm_temperature_read(NULL, &t_c, NULL));
  ck_assert(isnan(t_c));
  PROVOKES(ohm_temperature_read, OHM_NULL_ARGUMENT, ohm_temperature_read("1C", NULL, NULL));
}
END_TEST

/* ---- a reference ---- */

static void check_reference(const char *text, int kind, double t_c, int accuracy, double limit_k) {
  oc_reference reference;
  memset(&reference, 0x55, sizeof reference);
  ohm_error error;
  ck_assert_msg(oc_reference_read(text, &reference, &error) == OHM_OK, "%s", error.message);
  ck_assert_int_eq(reference.kind, kind);
  ck_assert_int_eq(reference.accuracy, accuracy);
  CHECK_NEAR(reference.t_c, t_c, 1e-12);
  CHECK_NEAR(reference.limit_k, limit_k, 1e-15);
  CHECK_NEAR(reference.u_k, 0, 0);
}

START_TEST(every_notation_of_a_reference_is_read)
{
  PROVOKES(oc_reference_read, OHM_OK, oc_reference_read("ice", &(oc_reference){0}, NULL));
  check_reference("21.5C", OHM_REFERENCE_THERMOMETER, 21.5, OC_ASSUMED, 0);
  check_reference("ice", OHM_REFERENCE_ICE, 0, OC_ASSUMED, 0);
  check_reference("21.5C+-1", OHM_REFERENCE_THERMOMETER, 21.5, OC_STATED, 1);
  check_reference("21.5C \xC2\xB1 1", OHM_REFERENCE_THERMOMETER, 21.5, OC_STATED, 1);
  check_reference("21.5C+-1C", OHM_REFERENCE_THERMOMETER, 21.5, OC_STATED, 1);
  check_reference("294.7K+-0.5", OHM_REFERENCE_THERMOMETER, 294.7 - 273.15, OC_STATED, 0.5);
  check_reference("ice+-0.1", OHM_REFERENCE_ICE, 0, OC_STATED, 0.1);
  check_reference("21.5C+-0", OHM_REFERENCE_THERMOMETER, 21.5, OC_STATED, 0);
}
END_TEST

START_TEST(boiling_water_and_infrared_are_read)
{
  check_reference("boil", OHM_REFERENCE_BOIL, 0, OC_ASSUMED, 0);
  check_reference("boil+-0.3", OHM_REFERENCE_BOIL, 0, OC_STATED, 0.3);
  check_reference("boil@1200m", OHM_REFERENCE_BOIL_ALTITUDE, 0, OC_ASSUMED, 0);
  check_reference("boil@870hPa", OHM_REFERENCE_BOIL_PRESSURE, 0, OC_ASSUMED, 0);
  check_reference("boil@870hPa+-0.1", OHM_REFERENCE_BOIL_PRESSURE, 0, OC_STATED, 0.1);
  check_reference("infrared@80C", OHM_REFERENCE_INFRARED, 80, OC_ASSUMED, 0);
  check_reference("infrared@176F+-1.8", OHM_REFERENCE_INFRARED, 80, OC_STATED, 1);
  oc_reference reference;
  ck_assert_int_eq(oc_reference_read("boil@1200m", &reference, NULL), OHM_OK);
  CHECK_NEAR(reference.altitude_m, 1200, 0);
  ck_assert_int_eq(oc_reference_read("boil@4000ft", &reference, NULL), OHM_OK);
  CHECK_NEAR(reference.altitude_m, 4000 * 0.3048, 1e-9);
  ck_assert_int_eq(oc_reference_read("boil@870hPa", &reference, NULL), OHM_OK);
  CHECK_NEAR(reference.pressure_hpa, 870, 0);
}
END_TEST

START_TEST(a_pressure_with_an_altitude_is_refused_with_the_reason)
{
  static const char *const both[] = {"boil@1200m,870hPa", "boil@1013hPa,1200m"};
  for (size_t i = 0; i < 2; i++) {
    oc_reference reference;
    ohm_error error;
    PROVOKES(oc_reference_read, OHM_BAD_SYNTAX, oc_reference_read(both[i], &reference, &error));
    ck_assert_ptr_nonnull(strstr(error.message, "reduced to sea level"));
    ck_assert_ptr_nonnull(strstr(error.message, "give the altitude alone"));
  }
}
END_TEST

START_TEST(no_boiling_is_read_where_none_is)
{
  static const char *const wrong[] = {"boil@",       "boil@1200", "boil@m",    "boiled",
                                      "boil@1200m,", "infrared",  "infrared@", "infrared@80"};
  static const char *const beyond[] = {"boil@-431m", "boil@5001m", "boil@499hPa", "boil@1101hPa",
                                       "infrared@1001C"};
  oc_reference reference;
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
    ck_assert_int_eq(oc_reference_read(wrong[i], &reference, NULL), OHM_BAD_SYNTAX);
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++)
    ck_assert_int_eq(oc_reference_read(beyond[i], &reference, NULL), OHM_OUT_OF_RANGE);
}
END_TEST

START_TEST(a_limit_is_in_the_unit_of_its_temperature_unless_it_has_its_own)
{
  check_reference("68F+-1.8", OHM_REFERENCE_THERMOMETER, 20, OC_STATED, 1);
  check_reference("68F+-1K", OHM_REFERENCE_THERMOMETER, 20, OC_STATED, 1);
  check_reference("20C+-1.8F", OHM_REFERENCE_THERMOMETER, 20, OC_STATED, 1);
}
END_TEST

START_TEST(what_is_no_reference_is_refused_with_nan)
{
  static const char *const wrong[] = {"",        "21.5",        "21.5+-1", "warm",  "21.5C+-",
                                      "21.5C+1", "21.5C+-x",    "iced",    "21,5C", "ice 1",
                                      "+-1",     "21.5C+-1+-1", "21.5C-+1"};
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    oc_reference reference = OC_REFERENCE_INIT;
    ohm_error error;
    PROVOKES(oc_reference_read, OHM_BAD_SYNTAX, oc_reference_read(wrong[i], &reference, &error));
    ck_assert(isnan(reference.t_c));
    ck_assert_ptr_nonnull(strstr(error.message, "21.5C"));
  }
}
END_TEST

START_TEST(a_reference_without_a_unit_is_told_so_with_or_without_a_limit)
{
  oc_reference reference;
  ohm_error error;
  oc_reference_read("21.5", &reference, &error);
  ck_assert_ptr_nonnull(strstr(error.message, "has no unit; write C, F or K"));
  oc_reference_read("21.5+-1", &reference, &error);
  ck_assert_ptr_nonnull(strstr(error.message, "has no unit; write C, F or K"));
}
END_TEST

START_TEST(a_reference_beyond_its_range_is_refused_with_nan)
{
  static const char *const beyond[] = {"-274C", "1001C", "0K", "20C+--1", "20C+-1001", "ice+--1"};
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    oc_reference reference = OC_REFERENCE_INIT;
    ohm_error error;
    PROVOKES(oc_reference_read, OHM_OUT_OF_RANGE, oc_reference_read(beyond[i], &reference, &error));
    ck_assert(isnan(reference.t_c));
    ck_assert_ptr_nonnull(strstr(error.message, "; write "));
  }
}
END_TEST

START_TEST(a_reference_needs_a_text_and_an_output)
{
  oc_reference reference;
  PROVOKES(oc_reference_read, OHM_NULL_ARGUMENT, oc_reference_read(NULL, &reference, NULL));
  PROVOKES(oc_reference_read, OHM_NULL_ARGUMENT, oc_reference_read("ice", NULL, NULL));
}
END_TEST

/* ---- by cause ---- */

static struct oc_budget budget_of(const oc_reference *reference, bool want_assumed) {
  struct oc_budget budget;
  bool assumed = !want_assumed;
  ck_assert_int_eq(oc_reference_budget(reference, &budget, &assumed), OHM_OK);
  ck_assert_int_eq(assumed, want_assumed);
  return budget;
}

START_TEST(a_limit_that_is_not_told_is_assumed_by_its_kind)
{
  oc_reference reference = OC_REFERENCE_INIT;
  reference.t_c = 21.5;
  struct oc_budget thermometer = budget_of(&reference, true);
  CHECK_NEAR(thermometer.value, 21.5, 0);
  CHECK_NEAR(oc_budget_u(&thermometer), OC_ASSUMED_THERMOMETER_LIMIT_K / sqrt(3), 1e-15);
  reference.kind = OHM_REFERENCE_ICE;
  struct oc_budget ice = budget_of(&reference, true);
  CHECK_NEAR(ice.value, 0, 0);
  CHECK_NEAR(oc_budget_u(&ice), OC_ASSUMED_ICE_LIMIT_K / sqrt(3), 1e-15);
}
END_TEST

/* Boiling is that of the pressure, and a little warmer below the surface. */
START_TEST(boiling_is_that_of_the_pressure_and_the_depth)
{
  oc_reference reference = OC_REFERENCE_INIT;
  double t_c;
  double pressure_hpa;
  reference.kind = OHM_REFERENCE_BOIL;
  struct oc_budget sea = budget_of(&reference, true);
  ohm_water_boiling(1013.25, &t_c);
  CHECK_NEAR(sea.value, t_c + OC_ASSUMED_BOIL_DEPTH_K, 1e-12);
  CHECK_NEAR(oc_budget_u(&sea), OC_ASSUMED_BOIL_LIMIT_K / sqrt(3), 1e-15);
  reference.kind = OHM_REFERENCE_BOIL_ALTITUDE;
  reference.altitude_m = 1200;
  struct oc_budget high = budget_of(&reference, true);
  ohm_water_pressure(1200, &pressure_hpa);
  ohm_water_boiling(pressure_hpa, &t_c);
  CHECK_NEAR(high.value, t_c + OC_ASSUMED_BOIL_DEPTH_K, 1e-12);
  CHECK_NEAR(oc_budget_u(&high), OC_ASSUMED_BOIL_ALTITUDE_LIMIT_K / sqrt(3), 1e-15);
  reference.kind = OHM_REFERENCE_BOIL_PRESSURE;
  reference.pressure_hpa = 870;
  struct oc_budget pressed = budget_of(&reference, true);
  ohm_water_boiling(870, &t_c);
  CHECK_NEAR(pressed.value, t_c + OC_ASSUMED_BOIL_DEPTH_K, 1e-12);
  CHECK_NEAR(oc_budget_u(&pressed), OC_ASSUMED_BOIL_PRESSURE_LIMIT_K / sqrt(3), 1e-15);
  reference.kind = OHM_REFERENCE_INFRARED;
  reference.t_c = 80;
  struct oc_budget seen = budget_of(&reference, true);
  CHECK_NEAR(seen.value, 80, 0);
  CHECK_NEAR(oc_budget_u(&seen), OC_ASSUMED_INFRARED_LIMIT_K / sqrt(3), 1e-15);
}
END_TEST

START_TEST(what_is_stated_counts_and_zero_is_zero)
{
  oc_reference reference = OC_REFERENCE_INIT;
  reference.accuracy = OC_STATED;
  struct oc_budget certain = budget_of(&reference, false);
  CHECK_NEAR(oc_budget_u(&certain), 0, 0);
  reference.limit_k = 3;
  reference.u_k = 1;
  struct oc_budget both = budget_of(&reference, false);
  CHECK_NEAR(oc_budget_u(&both), 2, 1e-15);
  reference.accuracy = OC_EXACT;
  struct oc_budget exact = budget_of(&reference, false);
  CHECK_NEAR(oc_budget_u(&exact), 0, 0);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "reference", every_unit_of_temperature_is_read,
      a_temperature_without_a_unit_is_refused_with_its_sentence,
      what_is_no_temperature_is_refused_with_the_notations,
      a_temperature_no_sensor_has_is_out_of_range, a_temperature_needs_a_text_and_an_output,
      every_notation_of_a_reference_is_read, boiling_water_and_infrared_are_read,
      a_pressure_with_an_altitude_is_refused_with_the_reason, no_boiling_is_read_where_none_is,
      boiling_is_that_of_the_pressure_and_the_depth,
      a_limit_is_in_the_unit_of_its_temperature_unless_it_has_its_own,
      what_is_no_reference_is_refused_with_nan,
      a_reference_without_a_unit_is_told_so_with_or_without_a_limit,
      a_reference_beyond_its_range_is_refused_with_nan, a_reference_needs_a_text_and_an_output,
      a_limit_that_is_not_told_is_assumed_by_its_kind, what_is_stated_counts_and_zero_is_zero);
}
