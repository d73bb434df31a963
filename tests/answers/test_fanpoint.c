/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/fanpoint.h"

static ohm_sensor *sensor;

static double nominal(double t_c) {
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

static oc_module through(const char *pull_up) {
  oc_module module = OC_MODULE_INIT;
  ck_assert_int_eq(oc_pull_up_read(pull_up, &module, NULL), OHM_OK);
  return module;
}

static ohm_finding found(double on_c, double off_c, const oc_module *module, double hidden_ohm) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_fanpoint_find, OHM_OK,
           oc_fanpoint_find(sensor, on_c, off_c, module, hidden_ohm, &finding));
  return finding;
}

START_TEST(points_are_those_of_curve_and_divider)
{
  oc_module module = through("1k");
  for (double on_c = 80; on_c <= 110; on_c += 5) {
    ohm_finding finding = found(on_c, on_c - 5, &module, 50);
    double on_volt;
    double off_volt;
    ohm_divider_volts(nominal(on_c), 1000, 5, &on_volt);
    ohm_divider_volts(nominal(on_c - 5), 1000, 5, &off_volt);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_ON_OHM), nominal(on_c), 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_OFF_OHM), nominal(on_c - 5), 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_ON_VOLT), on_volt, 1e-12);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_OFF_VOLT), off_volt, 1e-12);
  }
}
END_TEST

START_TEST(a_kelvin_is_worth_what_the_next_hundredth_says)
{
  oc_module module = through("1k");
  ohm_finding finding = found(98, 93, &module, 50);
  ohm_finding next = found(98.01, 93, &module, 50);
  ohm_finding last = found(97.99, 93, &module, 50);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_OHM_PER_K),
             (number_in(&next, OHM_FIELD_ON_OHM) - number_in(&last, OHM_FIELD_ON_OHM)) / 0.02,
             1e-3);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_VOLT_PER_K),
             (number_in(&next, OHM_FIELD_ON_VOLT) - number_in(&last, OHM_FIELD_ON_VOLT)) / 0.02,
             1e-5);
}
END_TEST

START_TEST(a_hidden_resistance_moves_start_and_stop)
{
  double before_c = 0;
  for (double hidden_ohm = 0; hidden_ohm <= 80; hidden_ohm += 10) {
    ohm_finding finding = found(98, 93, NULL, hidden_ohm);
    double start_c = number_in(&finding, OHM_FIELD_START_C);
    double stop_c = number_in(&finding, OHM_FIELD_FAN_STOP_C);
    CHECK_NEAR(nominal(start_c) + hidden_ohm, nominal(98), 1e-6);
    CHECK_NEAR(nominal(stop_c) + hidden_ohm, nominal(93), 1e-6);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_LATE_K), start_c - 98, 1e-9);
    ck_assert(start_c > before_c);
    before_c = start_c;
  }
  ohm_finding never = found(98, 93, NULL, 190);
  ck_assert(isnan(number_in(&never, OHM_FIELD_START_C)));
  ck_assert(isnan(number_in(&never, OHM_FIELD_FAN_STOP_C)));
  check_has(report_of(&never), "off up to a true 130 C");
}
END_TEST

START_TEST(what_is_not_known_is_absent)
{
  ohm_finding finding = found(98, NAN, NULL, 50);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_ON_VOLT)));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_OFF_C)));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_FAN_STOP_C)));
  check_verdict(&finding, OHM_UNDECIDED, "alone");
  check_has_not(report_of(&finding), "nan");
  check_has_not(report_of(&finding), "Stops");
  check_has_not(report_of(&finding), " V");
  ohm_sensor *platinum = sensor_built_in("pt1000-b");
  ck_assert_int_eq(oc_fanpoint_find(platinum, 98, 93, NULL, 50, &finding), OHM_OK);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_START_C)));
  ck_assert(number_in(&finding, OHM_FIELD_OHM_PER_K) > 0);
  check_has_not(report_of(&finding), "Hidden");
  ohm_sensor_free(platinum);
}
END_TEST

START_TEST(two_pull_ups_are_met_by_the_temperature)
{
  oc_module module = through("20k,952@85C");
  ohm_finding finding = found(98, 80, &module, 50);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_ON_VOLT), 5 * nominal(98) / (952 + nominal(98)), 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_OFF_VOLT), 5 * nominal(80) / (20000 + nominal(80)),
             1e-9);
}
END_TEST

START_TEST(no_fan_of_the_wrong_kind_has_points)
{
  static const double bad[] = {INFINITY, -INFINITY, -1, 0, 130, 1e300};
  ohm_finding finding = finding_new();
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    PROVOKES(oc_fanpoint_find, OHM_OUT_OF_RANGE,
             oc_fanpoint_find(sensor, bad[i], NAN, NULL, 50, &finding));
    ck_assert(!ohm_finding_text(&finding, OHM_FIELD_ABOUT, 0));
    ck_assert_int_eq(oc_fanpoint_find(sensor, 98, bad[i], NULL, 50, &finding), OHM_OUT_OF_RANGE);
    if (!(0 <= bad[i] && bad[i] <= 1e6))
      ck_assert_int_eq(oc_fanpoint_find(sensor, 98, 93, NULL, bad[i], &finding), OHM_OUT_OF_RANGE);
  }
  ck_assert_int_eq(oc_fanpoint_find(sensor, 98, 98, NULL, 50, &finding), OHM_OUT_OF_RANGE);
  PROVOKES(oc_fanpoint_find, OHM_BAD_ARGUMENT,
           oc_fanpoint_find(sensor, NAN, NAN, NULL, 50, &finding));
  ck_assert_int_eq(oc_fanpoint_find(sensor, 98, 93, NULL, NAN, &finding), OHM_BAD_ARGUMENT);
  PROVOKES(oc_fanpoint_find, OHM_NULL_ARGUMENT, oc_fanpoint_find(NULL, 98, 93, NULL, 50, &finding));
  ck_assert_int_eq(oc_fanpoint_find(sensor, 98, 93, NULL, 50, NULL), OHM_NULL_ARGUMENT);
}
END_TEST

int main(void) {
  sensor = sensor_built_in("ntc-2k45-20c");
  int result =
      RUN_TESTS("fanpoint", points_are_those_of_curve_and_divider,
                a_kelvin_is_worth_what_the_next_hundredth_says,
                a_hidden_resistance_moves_start_and_stop, what_is_not_known_is_absent,
                two_pull_ups_are_met_by_the_temperature, no_fan_of_the_wrong_kind_has_points);
  ohm_sensor_free(sensor);
  return result;
}
