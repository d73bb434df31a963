/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/bath.h"

#include <stdio.h>
#include <string.h>

/* ---- the test current ---- */

/* Flat, so that the element is what is written whatever the temperature. */
static ohm_sensor *dissipating(double r0_ohm, double mw_per_k) {
  char text[300];
  snprintf(text, sizeof text,
           "# tolerance: 5 %%\n# range: -40 to 150 C\n# model: beta\n# r0_ohm: %g\n# t0_c: 20\n"
           "# beta_k: 3500\n# dissipation_mw_per_k: %g\n",
           r0_ohm, mw_per_k);
  return sensor_of(text);
}

/* P/delta, worked out by hand: I^2 R is 0.09216 mW and 1.8432 mW. The currents are
 * those a bench meter's manual prints for its 20 kohm and 2 kohm ranges. */
START_TEST(a_known_current_warms_the_element_by_its_power_over_dissipation)
{
  static const struct {
    double current_ma;
    double r_ohm;
    double mw_per_k;
    double heating_k;
  } examples[] = {
      {0.096, 10e3, 1.5, 0.06144}, {0.096, 10e3, 7, 0.09216 / 7}, {0.960, 2e3, 1.5, 1.2288}};
  for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++) {
    ohm_sensor *sensor = dissipating(examples[i].r_ohm, examples[i].mw_per_k);
    struct scene scene = scene_exact(examples[i].r_ohm, 20);
    scene.meter.current_ma = examples[i].current_ma;
    ohm_finding finding = scene_judged(sensor, &scene);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_HEATING_K), examples[i].heating_k, 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), 20, 0);
    ck_assert_ptr_null(strstr(report_of(&finding), "test current"));
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* From nothing up to that of the greatest current: the middle, give or take as much. */
START_TEST(an_unknown_current_warms_by_half_of_the_greatest_and_as_much_either_way)
{
  static const struct {
    double r_ohm;
    double greatest_ma;
  } ranges[] = {{1000, 1}, {10e3, 0.1}, {100e3, 0.01}};
  for (size_t i = 0; i < sizeof ranges / sizeof ranges[0]; i++) {
    ohm_sensor *sensor = dissipating(ranges[i].r_ohm, 1.5);
    struct scene scene = scene_exact(ranges[i].r_ohm, 20);
    ohm_finding finding = scene_judged(sensor, &scene);
    double most_k = ranges[i].greatest_ma * ranges[i].greatest_ma * 1e-3 * ranges[i].r_ohm / 1.5;
    CHECK_NEAR(number_in(&finding, OHM_FIELD_HEATING_K), most_k / 2, 1e-12);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_HEATING_LIMIT_K), most_k / 2, 1e-12);
    ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0), "test current 1 mA at most");
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* 1.2288 K at 4.07 %/K: what would be 5 % low in the bath is inside for the element. */
START_TEST(the_element_is_warmer_than_its_bath)
{
  ohm_sensor *sensor = dissipating(2000, 1.5);
  struct scene scene = scene_exact(0.93 * 2000, 20);
  ohm_finding cold = scene_judged(sensor, &scene);
  scene.meter.current_ma = 0.96;
  ohm_finding warm = scene_judged(sensor, &scene);
  ck_assert(number_in(&warm, OHM_FIELD_P_LOW) < number_in(&cold, OHM_FIELD_P_LOW));
  check_verdict(&warm, OHM_WITHIN, "conforms");
  scene.reading.r_ohm = 1.03 * 2000;
  warm = scene_judged(sensor, &scene);
  check_verdict(&warm, OHM_OUTSIDE, "high");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(without_a_dissipation_nothing_is_warmed)
{
  ohm_finding finding = typed("ntc-2k45-20c", "2.45k", "20C", OHM_PLACE_SENSOR);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_HEATING_K)));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_HEATING_LIMIT_K)));
}
END_TEST

/* ---- which readings would pass ---- */

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

static struct scene rough(double r_ohm, double t_c, double limit_k) {
  struct scene scene = scene_exact(r_ohm, t_c);
  scene.meter.accuracy = OC_STATED;
  scene.meter.percent = 0.5;
  scene.meter.resolution_ohm = 0.01;
  scene.meter.leads = OC_STATED;
  scene.meter.lead_ohm = 0.3;
  scene.meter.lead_limit_ohm = 0.1;
  scene.reference.accuracy = OC_STATED;
  scene.reference.limit_k = limit_k;
  return scene;
}

static ohm_finding reading_of(const ohm_sensor *sensor, struct scene scene, double tip_ohm) {
  scene.reading.r_ohm = tip_ohm + scene.meter.lead_ohm;
  return scene_judged(sensor, &scene);
}

START_TEST(every_reading_that_would_pass_passes_and_none_beyond)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = 0; t_c <= 100; t_c += 25)
    for (double limit_k = 0; limit_k <= 0.75; limit_k += 0.25) {
      double r_ohm;
      ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
      struct scene scene = rough(1.02 * r_ohm, t_c, limit_k);
      ohm_finding finding = scene_judged(sensor, &scene);
      double low_ohm = number_in(&finding, OHM_FIELD_ACCEPT_LOW_OHM);
      double high_ohm = number_in(&finding, OHM_FIELD_ACCEPT_HIGH_OHM);
      ck_assert(number_in(&finding, OHM_FIELD_LOW_OHM) < low_ohm && low_ohm < high_ohm &&
                high_ohm < number_in(&finding, OHM_FIELD_HIGH_OHM));
      ck_assert(isnan(number_in(&finding, OHM_FIELD_NEEDED_K)));
      double width_ohm = high_ohm - low_ohm;
      /* The nodes of the temperature move an edge by up to 1 % of the width. */
      for (double part = 0.01; part <= 0.991; part += 0.07) {
        ohm_finding inside = reading_of(sensor, scene, low_ohm + part * width_ohm);
        check_verdict(&inside, OHM_WITHIN, "conforms");
      }
      ohm_finding below = reading_of(sensor, scene, low_ohm - 0.01 * width_ohm);
      ohm_finding above = reading_of(sensor, scene, high_ohm + 0.01 * width_ohm);
      ck_assert_int_ne(ohm_finding_verdict(&below), OHM_WITHIN);
      ck_assert_int_ne(ohm_finding_verdict(&above), OHM_WITHIN);
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(where_no_reading_would_pass_the_thermometer_that_would_do_is_told)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = 0; t_c <= 100; t_c += 25) {
    double r_ohm;
    ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
    struct scene scene = rough(r_ohm, t_c, 3);
    ohm_finding finding = scene_judged(sensor, &scene);
    ck_assert(isnan(number_in(&finding, OHM_FIELD_ACCEPT_LOW_OHM)));
    ck_assert(isnan(number_in(&finding, OHM_FIELD_ACCEPT_HIGH_OHM)));
    double needed_k = number_in(&finding, OHM_FIELD_NEEDED_K);
    ck_assert(0 < needed_k && needed_k < 3);
    scene.reference.limit_k = 0.97 * needed_k;
    finding = scene_judged(sensor, &scene);
    ck_assert(number_in(&finding, OHM_FIELD_ACCEPT_LOW_OHM) <=
              number_in(&finding, OHM_FIELD_ACCEPT_HIGH_OHM));
    scene.reference.limit_k = 1.05 * needed_k;
    finding = scene_judged(sensor, &scene);
    ck_assert(isnan(number_in(&finding, OHM_FIELD_ACCEPT_LOW_OHM)));
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(where_the_meter_alone_is_too_coarse_no_thermometer_helps)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = rough(2450, 20, 1);
  scene.meter.percent = 8;
  ohm_finding finding = scene_judged(sensor, &scene);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_ACCEPT_LOW_OHM)));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_NEEDED_K)));
  ohm_sensor_free(sensor);
}
END_TEST

/* By hand: allowed 10 % of 2450 = 245 ohm; the meter 0.5 % of 2450.3 and half of 0.01,
 * 12.2565 ohm, leads 0.1; thermometer 0.5 K at alpha = 3500/293.15^2 = 4.0727 %/K. */
START_TEST(cm_is_the_allowed_width_over_four_standard_uncertainties)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = rough(2450.3, 20, 0.5);
  ohm_finding finding = scene_judged(sensor, &scene);
  double meter = 12.2565 / sqrt(3);
  double leads = 0.1 / sqrt(3);
  double bath = 2450 * 3500 / (293.15 * 293.15) * 0.5 / sqrt(3);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_COMBINED_OHM),
             sqrt(meter * meter + leads * leads + bath * bath), 1e-6);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_CM),
             245 / (4 * sqrt(meter * meter + leads * leads + bath * bath)), 1e-8);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- what is out of its range ---- */

START_TEST(a_fan_or_a_limit_that_is_none_is_refused)
{
  static const struct {
    double fan_c;
    double limit_k;
    ohm_status status;
  } wrong[] = {{-1, 5, OHM_OUT_OF_RANGE},  {130, 5, OHM_OUT_OF_RANGE},
               {97, -1, OHM_OUT_OF_RANGE}, {97, 100.1, OHM_OUT_OF_RANGE},
               {NAN, 5, OHM_BAD_ARGUMENT}, {97, INFINITY, OHM_BAD_ARGUMENT}};
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    struct scene scene = scene_exact(2450, 20);
    scene.check.fan_c = wrong[i].fan_c;
    scene.check.limit_k = wrong[i].limit_k;
    ohm_finding finding = finding_new();
    ck_assert_int_eq(oc_bath_check(sensor, &scene.reading, &scene.meter, &scene.reference,
                                   &scene.check, &finding),
                     wrong[i].status);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("question", a_known_current_warms_the_element_by_its_power_over_dissipation,
                   an_unknown_current_warms_by_half_of_the_greatest_and_as_much_either_way,
                   the_element_is_warmer_than_its_bath, without_a_dissipation_nothing_is_warmed,
                   every_reading_that_would_pass_passes_and_none_beyond,
                   where_no_reading_would_pass_the_thermometer_that_would_do_is_told,
                   where_the_meter_alone_is_too_coarse_no_thermometer_helps,
                   cm_is_the_allowed_width_over_four_standard_uncertainties,
                   a_fan_or_a_limit_that_is_none_is_refused);
}
