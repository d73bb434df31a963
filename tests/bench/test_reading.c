/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <math.h>
#include <string.h>

#include "../../lib/bench/reading.h"

static struct oc_bench_reading read_well(const char *text) {
  struct oc_bench_reading reading;
  ohm_error error;
  ck_assert_msg(oc_bench_reading_read(text, &reading, &error) == OHM_OK, "%s: %s", text,
                error.message);
  return reading;
}

static const char *refused(const char *text, ohm_status expected) {
  static ohm_error error;
  struct oc_bench_reading reading;
  ck_assert_msg(oc_bench_reading_read(text, &reading, &error) == expected, "%s: %d %s", text,
                error.status, error.message);
  ck_assert_int_eq(error.status, expected);
  return error.message;
}

START_TEST(ohms_stand_alone_or_before_their_temperature)
{
  struct oc_bench_reading reading = read_well("2.31k");
  ck_assert_int_eq(reading.kind, OC_READING_OHMS);
  ck_assert(!reading.has_at);
  CHECK_NEAR(reading.ohms.r_ohm, 2310, 1e-9);
  CHECK_NEAR(reading.ohms.resolution_ohm, 10, 1e-9);
  reading = read_well("2.31k@21.5C+-1");
  ck_assert(reading.has_at);
  CHECK_NEAR(reading.at.t_c, 21.5, 0);
  CHECK_NEAR(reading.at.limit_k, 1, 0);
}
END_TEST

START_TEST(an_at_sign_may_stand_in_either_part)
{
  struct oc_bench_reading reading = read_well("OL@20k@boil@1200m");
  ck_assert_int_eq(reading.ohms.display, OC_DISPLAY_OVER);
  CHECK_NEAR(reading.ohms.range_ohm, 20e3, 0);
  ck_assert_int_eq(reading.at.kind, OHM_REFERENCE_BOIL_ALTITUDE);
  ck_assert(!read_well("OL@20k").has_at);
}
END_TEST

START_TEST(a_place_stands_behind_a_comma)
{
  ck_assert_int_eq(read_well("2.31k@21.5C,sensor").place, OHM_PLACE_SENSOR);
  ck_assert_int_eq(read_well("2.31k, plug-on").place, OHM_PLACE_PLUG_ON);
  ck_assert_int_eq(read_well("480,module").place, OHM_PLACE_MODULE);
  ck_assert_int_eq(read_well("480").place, OHM_PLACE_NOT_TOLD);
}
END_TEST

START_TEST(a_comma_for_a_point_is_no_place)
{ ck_assert_ptr_nonnull(strstr(refused("2,31k@21.5C", OHM_BAD_SYNTAX), "2.31k")); }
END_TEST

START_TEST(volts_carry_their_unit_and_the_place_of_the_negative_lead)
{
  struct oc_bench_reading reading = read_well("0.97V,body");
  ck_assert_int_eq(reading.kind, OC_READING_VOLTS);
  ck_assert_int_eq(reading.volts.negative, OHM_NEGATIVE_BODY);
  CHECK_NEAR(reading.volts.v_volt, 0.97, 0);
  CHECK_NEAR(read_well("970mV").volts.v_volt, 0.97, 1e-12);
  CHECK_NEAR(read_well("0.97V+-0.02").volts.limit_volt, 0.02, 1e-12);
  refused("0.97V,module", OHM_BAD_SYNTAX);
  refused("31V", OHM_OUT_OF_RANGE);
}
END_TEST

START_TEST(degrees_alone_are_what_the_module_reports)
{
  struct oc_bench_reading reading = read_well("91C");
  ck_assert_int_eq(reading.kind, OC_READING_REPORTED);
  CHECK_NEAR(reading.reported.t_c, 91, 0);
  CHECK_NEAR(read_well("-4F").reported.t_c, -20, 1e-12);
  refused("400C", OHM_OUT_OF_RANGE);
  refused("91C,sensor", OHM_BAD_SYNTAX);
}
END_TEST

START_TEST(two_pins_before_an_equals_sign_are_a_pair)
{
  struct oc_bench_reading reading = read_well("1-2=480");
  ck_assert_int_eq(reading.kind, OC_READING_PAIR);
  CHECK_NEAR(reading.pair.reading.r_ohm, 480, 0);
  ck_assert_int_eq(read_well("B-body=OL").pair.to, OC_TERMINAL_BODY);
  refused("1-1=480", OHM_BAD_SYNTAX);
  refused("1-2=x", OHM_BAD_SYNTAX);
}
END_TEST

START_TEST(another_sensor_of_the_car_shows_degrees)
{
  struct oc_bench_reading reading = read_well("intake=10.5C");
  ck_assert_int_eq(reading.kind, OC_READING_COMPANION);
  ck_assert_int_eq(reading.companion, OHM_SOAKED_INTAKE);
  CHECK_NEAR(reading.at.t_c, 10.5, 0);
  refused("intake=ice", OHM_BAD_SYNTAX);
}
END_TEST

START_TEST(any_other_name_is_an_outcome_of_a_circuit)
{
  ck_assert_int_eq(read_well("fuse-look=good").kind, OC_READING_OUTCOME);
  ck_assert_int_eq(read_well("fuse-mv=12mV@ATO30").kind, OC_READING_OUTCOME);
  ck_assert_int_eq(read_well("oil=renewed").kind, OC_READING_OUTCOME);
  refused("fuse look=good", OHM_BAD_SYNTAX);
  refused("fuse-look=", OHM_BAD_SYNTAX);
}
END_TEST

START_TEST(a_number_behind_an_equals_sign_has_every_digit)
{
  struct oc_bench_reading reading = read_well("=2300@20C");
  CHECK_NEAR(reading.ohms.r_ohm, 2300, 0);
  ck_assert(reading.ohms.resolution_ohm == 0);
  ck_assert(reading.ohms.zeros_ohm == 0);
  ck_assert(!reading.ohms.bare);
  ck_assert(read_well("2300@20C").ohms.bare);
  ck_assert(read_well("=0.97V").volts.resolution_volt == 0);
}
END_TEST

START_TEST(what_is_no_reading_gets_a_sentence)
{
  static const char *const bad[] = {"",  "@21.5C", "2.31k@", "2.31k@hot",      "2.31k@21.5", "k",
                                    "=", ",",      "2.31k,", "2.31k,here",     "ice",        "boil",
                                    "V", "-5",     "1e400",  "2.31k@21.5C@20C"};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    struct oc_bench_reading reading;
    ohm_error error;
    ohm_status status = oc_bench_reading_read(bad[i], &reading, &error);
    ck_assert_msg(status == OHM_BAD_SYNTAX || status == OHM_OUT_OF_RANGE, "\"%s\"", bad[i]);
    ck_assert_uint_gt(strlen(error.message), 10);
  }
}
END_TEST

START_TEST(a_reading_too_long_to_be_one_is_refused)
{
  char text[400];
  memset(text, '1', sizeof text - 1);
  text[sizeof text - 1] = '\0';
  ck_assert_ptr_nonnull(strstr(refused(text, OHM_BAD_SYNTAX), "too long"));
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "reading", ohms_stand_alone_or_before_their_temperature, an_at_sign_may_stand_in_either_part,
      a_place_stands_behind_a_comma, a_comma_for_a_point_is_no_place,
      volts_carry_their_unit_and_the_place_of_the_negative_lead,
      degrees_alone_are_what_the_module_reports, two_pins_before_an_equals_sign_are_a_pair,
      another_sensor_of_the_car_shows_degrees, any_other_name_is_an_outcome_of_a_circuit,
      a_number_behind_an_equals_sign_has_every_digit, what_is_no_reading_gets_a_sentence,
      a_reading_too_long_to_be_one_is_refused);
}
