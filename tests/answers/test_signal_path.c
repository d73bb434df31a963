/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include <string.h>

#include "../../lib/curves/curve.h"
#include "../../lib/model/fan_start.h"
#include "../../lib/answers/signal_path.h"

/* A car without any error of measurement; what a test spoils is seen alone. */
struct car {
  oc_module module;
  oc_reading reading;
  oc_meter meter;
  oc_volts volts;
  oc_reported reported;
  oc_reference reference;
  oc_pin pin;
  bool by_ohms, by_volts, by_report, by_thermometer;
};

static ohm_sensor *sensor;

static void set_up(void) {
  sensor = sensor_built_in("ntc-2k45-20c");
}

static void tear_down(void) {
  ohm_sensor_free(sensor);
}

static double nominal(double t_c) {
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

static double degrees(double r_ohm) {
  double t_c;
  ck_assert_int_eq(ohm_curve_temperature(ohm_sensor_curve(sensor), r_ohm, &t_c), OHM_OK);
  return t_c;
}

static struct car exact_car(double sensor_ohm, double pin_ohm, double gauge_c) {
  struct car car = {OC_MODULE_INIT,
                    OC_READING_INIT,
                    OC_METER_INIT,
                    OC_VOLTS_INIT,
                    OC_REPORTED_INIT,
                    OC_REFERENCE_INIT,
                    OC_PIN_INIT,
                    true,
                    true,
                    true,
                    false};
  car.module.pull_up_ohm = 1000;
  car.module.pull_up_accuracy = car.module.supply_accuracy = OC_EXACT;
  car.reading.r_ohm = sensor_ohm;
  car.meter.accuracy = car.meter.leads = OC_EXACT;
  ck_assert_int_eq(ohm_divider_volts(pin_ohm, 1000, 5, &car.volts.v_volt), OHM_OK);
  car.volts.accuracy = OC_EXACT;
  car.volts.negative = OHM_NEGATIVE_PIN;
  car.reported.t_c = gauge_c - 0.25; /* a degree cut or rounded is taken in its middle */
  car.reported.accuracy = OC_EXACT;
  car.reported.moves = OC_MOVES;
  car.pin.moved = OC_EXACT;
  return car;
}

static ohm_status ask(const struct car *car, ohm_finding *finding) {
  return oc_pin_check(sensor, &car->module, car->by_ohms ? &car->reading : NULL, &car->meter,
                      car->by_volts ? &car->volts : NULL, car->by_report ? &car->reported : NULL,
                      car->by_thermometer ? &car->reference : NULL, &car->pin, finding);
}

static ohm_finding found(const struct car *car) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_pin_check, OHM_OK, ask(car, &finding));
  return finding;
}

/* As a person types it, all else assumed; NULL for what was not taken. */
static ohm_finding told(const char *pull_up, const char *ohms, const char *volts,
                        const char *degrees_text, const char *at, ohm_negative negative) {
  struct car car = {OC_MODULE_INIT,   OC_READING_INIT,      OC_METER_INIT, OC_VOLTS_INIT,
                    OC_REPORTED_INIT, OC_REFERENCE_INIT,    OC_PIN_INIT,   ohms != NULL,
                    volts != NULL,    degrees_text != NULL, at != NULL};
  ck_assert(!pull_up || oc_pull_up_read(pull_up, &car.module, NULL) == OHM_OK);
  ck_assert(!ohms || oc_reading_read(ohms, &car.reading, NULL) == OHM_OK);
  ck_assert(!volts || oc_volts_read(volts, &car.volts, NULL) == OHM_OK);
  ck_assert(!degrees_text || oc_reported_read(degrees_text, &car.reported, NULL) == OHM_OK);
  ck_assert(!at || oc_reference_read(at, &car.reference, NULL) == OHM_OK);
  car.volts.negative = (int)negative;
  return found(&car);
}

/* ---- where they part ---- */

START_TEST(a_sound_way_agrees_at_every_temperature)
{
  for (double t_c = -10; t_c <= 110; t_c += 5) {
    struct car car = exact_car(nominal(t_c), nominal(t_c), t_c);
    ohm_finding finding = found(&car);
    check_verdict(&finding, OHM_WITHIN, "conforms");
    CHECK_NEAR(number_in(&finding, OHM_FIELD_BETWEEN_OHM), 0, 1e-6 * nominal(t_c));
    CHECK_NEAR(number_in(&finding, OHM_FIELD_R_OHM), nominal(t_c), 1e-9 * nominal(t_c));
    CHECK_NEAR(number_in(&finding, OHM_FIELD_T_C), t_c, 1e-6);
  }
}
END_TEST

START_TEST(ohms_in_the_plug_are_found_and_told_from_the_rest)
{
  for (double series_ohm = 5; series_ohm <= 150; series_ohm += 5) {
    double t_c = 95;
    double seen_ohm = nominal(t_c) + series_ohm;
    struct car car = exact_car(nominal(t_c), seen_ohm, degrees(seen_ohm));
    ohm_finding finding = found(&car);
    check_verdict(&finding, OHM_OUTSIDE, "series");
    CHECK_NEAR(number_in(&finding, OHM_FIELD_BETWEEN_OHM), series_ohm, 1e-9 * seen_ohm);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_PARTED_K), degrees(seen_ohm) - t_c, 1e-6);
    ck_assert(isnan(number_in(&finding, OHM_FIELD_SHUNT_OHM)));
  }
}
END_TEST

START_TEST(a_path_across_the_sensor_is_found_and_told_from_the_rest)
{
  for (double leak_ohm = 500; leak_ohm <= 5000; leak_ohm += 500) {
    double t_c = 80;
    double seen_ohm = 1 / (1 / nominal(t_c) + 1 / leak_ohm);
    struct car car = exact_car(nominal(t_c), seen_ohm, degrees(seen_ohm));
    ohm_finding finding = found(&car);
    check_verdict(&finding, OHM_OUTSIDE, "leakage");
    CHECK_NEAR(number_in(&finding, OHM_FIELD_SHUNT_OHM), leak_ohm, 1e-6 * leak_ohm);
    ck_assert(number_in(&finding, OHM_FIELD_PARTED_K) > 0);
  }
}
END_TEST

START_TEST(volts_alone_that_are_off_are_a_ground_or_a_pull_up)
{
  static const struct {
    ohm_negative negative;
    ohm_verdict verdict;
    const char *reason;
  } all[] = {{OHM_NEGATIVE_NOT_TOLD, OHM_UNDECIDED, "ground"},
             {OHM_NEGATIVE_BODY, OHM_OUTSIDE, "ground"},
             {OHM_NEGATIVE_PIN, OHM_OUTSIDE, "pull_up"},
             {OHM_NEGATIVE_SENSOR, OHM_OUTSIDE, "pull_up"}};
  for (size_t i = 0; i < 4; i++) {
    struct car car = exact_car(nominal(95), nominal(95), 95);
    double right_volt = car.volts.v_volt;
    car.volts.v_volt += 0.2;
    car.volts.negative = (int)all[i].negative;
    ohm_finding finding = found(&car);
    check_verdict(&finding, all[i].verdict, all[i].reason);
    double fits_ohm = number_in(&finding, OHM_FIELD_FITS_PULL_UP_OHM);
    CHECK_NEAR(5 * nominal(95) / (fits_ohm + nominal(95)), right_volt + 0.2, 1e-9);
    if (strcmp(all[i].reason, "ground") == 0)
      CHECK_NEAR(number_in(&finding, OHM_FIELD_OFFSET_VOLT), 0.2, 1e-9);
    check_job(&finding, OHM_WITHIN, "conforms"); /* sensor and gauge agree */
  }
}
END_TEST

START_TEST(a_gauge_alone_that_is_off_is_the_curve_of_the_module)
{
  struct car car = exact_car(nominal(95), nominal(95), 85.5);
  ohm_finding finding = found(&car);
  check_verdict(&finding, OHM_OUTSIDE, "curve");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_PARTED_K), -9.5, 1e-3);
  double factor = nominal(85.5) / nominal(95);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_START_C), degrees(nominal(97) / factor), 1e-3);
}
END_TEST

START_TEST(three_that_all_differ_are_more_than_one_fault)
{
  struct car car = exact_car(nominal(95), nominal(88), 75);
  ohm_finding finding = found(&car);
  check_verdict(&finding, OHM_OUTSIDE, "between");
  check_has(report_of(&finding), "no two agree");
}
END_TEST

START_TEST(any_two_say_what_they_can)
{
  static const struct {
    bool ohms, volts, report;
    ohm_negative negative;
    ohm_verdict verdict;
    const char *reason;
  } all[] = {{true, true, false, OHM_NEGATIVE_PIN, OHM_OUTSIDE, "series"},
             {true, true, false, OHM_NEGATIVE_SENSOR, OHM_OUTSIDE, "series"},
             {true, true, false, OHM_NEGATIVE_BODY, OHM_UNDECIDED, "ground"},
             {true, true, false, OHM_NEGATIVE_NOT_TOLD, OHM_UNDECIDED, "ground"},
             {true, false, true, OHM_NEGATIVE_PIN, OHM_OUTSIDE, "between"},
             {false, true, true, OHM_NEGATIVE_PIN, OHM_OUTSIDE, "curve"},
             {false, true, true, OHM_NEGATIVE_BODY, OHM_UNDECIDED, "ground"},
             {true, false, false, OHM_NEGATIVE_PIN, OHM_UNDECIDED, "alone"},
             {false, true, false, OHM_NEGATIVE_PIN, OHM_UNDECIDED, "alone"},
             {false, false, true, OHM_NEGATIVE_PIN, OHM_UNDECIDED, "alone"}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    bool path_of_two = all[i].ohms;
    struct car car = exact_car(nominal(95), nominal(88), path_of_two ? 88 : 75);
    car.by_ohms = all[i].ohms;
    car.by_volts = all[i].volts;
    car.by_report = all[i].report;
    car.volts.negative = (int)all[i].negative;
    ohm_finding finding = found(&car);
    check_verdict(&finding, all[i].verdict, all[i].reason);
  }
}
END_TEST

START_TEST(a_sensor_that_lies_is_named_when_the_way_is_sound)
{
  ohm_finding finding = told("1k", "240", "0.97", "91C", "100C+-1", OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  check_has(report_of(&finding), "the sensor itself has too many ohms");
  finding = told("1k", "187", "0.79", "100C", "100C+-1", OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  finding = told("1k", NULL, "0.97", "91C", "100C+-1", OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "between");
  check_has(report_of(&finding), "sensor, plug or wire");
  finding = told(NULL, "150", NULL, NULL, "100C+-1", OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  finding = told(NULL, "open", NULL, NULL, NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "open");
}
END_TEST

START_TEST(a_report_that_cannot_be_believed_is_questioned_first)
{
  ohm_finding finding = told("1k", "187", "0.79", "80C", NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_UNDECIDED, "stand_in");
  finding = told("1k", "320.0", "1.21", "80C", NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_WITHIN, "conforms"); /* 80 C that is true is no question */
  struct car car = exact_car(nominal(95), nominal(95), 80.25);
  car.reported.moves = OC_MOVES;
  finding = found(&car);
  check_verdict(&finding, OHM_OUTSIDE, "curve");
  car = exact_car(nominal(95), nominal(95), 95);
  car.reported.moves = OC_NEVER_MOVES;
  finding = found(&car);
  check_verdict(&finding, OHM_UNDECIDED, "stuck");
  ck_assert(!ohm_finding_text(&finding, OHM_FIELD_JOB, 0));
}
END_TEST

START_TEST(a_circuit_that_the_module_does_not_believe_is_told)
{
  ohm_finding finding = told("1k", "187", "4.95", "-40C", NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "open");
  check_has(report_of(&finding), "sees no circuit: plug or wire");
  finding = told("1k", NULL, "4.95", NULL, NULL, OHM_NEGATIVE_PIN);
  check_has(report_of(&finding), "sees no circuit: sensor, plug or wire");
  finding = told("1k", NULL, "0.02", NULL, NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_OUTSIDE, "shorted");
  struct car car = exact_car(nominal(95), nominal(95), 95);
  car.volts.v_volt = 4.85;
  car.module.open_volt = 4.8;
  finding = found(&car);
  check_verdict(&finding, OHM_OUTSIDE, "open");
  car.volts.v_volt = 0.2;
  car.module.short_volt = 0.25;
  finding = found(&car);
  check_verdict(&finding, OHM_OUTSIDE, "shorted");
}
END_TEST

/* ---- two pull-ups ---- */

START_TEST(volts_of_two_pull_ups_are_a_question_until_the_range_is_known)
{
  static const char dual[] = "4k,348@40C";
  ohm_finding finding = told(dual, NULL, "2.00", NULL, NULL, OHM_NEGATIVE_PIN);
  check_verdict(&finding, OHM_UNDECIDED, "range");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_R_OHM), 4000 * 2.0 / 3, 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_OTHER_R_OHM), 348 * 2.0 / 3, 1e-9);
  finding = told(dual, "232", "2.00", NULL, NULL, OHM_NEGATIVE_PIN);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_PULL_UP_OHM), 348, 1e-9);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  finding = told(dual, NULL, "2.00", "18C", NULL, OHM_NEGATIVE_PIN);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_PULL_UP_OHM), 4000, 1e-9);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  finding = told(dual, NULL, "0.30", NULL, NULL, OHM_NEGATIVE_PIN);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_PULL_UP_OHM), 348, 1e-9);
  check_verdict(&finding, OHM_UNDECIDED, "alone");
}
END_TEST

START_TEST(a_range_that_was_told_is_taken)
{
  for (int range = OC_RANGE_COLD; range <= OC_RANGE_HOT; range++) {
    struct car car = exact_car(nominal(95), nominal(95), 95);
    ck_assert_int_eq(oc_pull_up_read("4k,348@40C", &car.module, NULL), OHM_OK);
    car.volts.v_volt = 2;
    car.module.range = range;
    car.by_ohms = car.by_report = false;
    ohm_finding finding = found(&car);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_PULL_UP_OHM), range == OC_RANGE_HOT ? 348 : 4000,
               1e-9);
  }
}
END_TEST

/* ---- the fan ---- */

START_TEST(what_is_in_series_makes_the_fan_late_as_the_curve_says)
{
  double before_c = 97;
  for (double series_ohm = 5; series_ohm <= 100; series_ohm += 5) {
    double seen_ohm = nominal(95) + series_ohm;
    struct car car = exact_car(nominal(95), seen_ohm, degrees(seen_ohm));
    ohm_finding finding = found(&car);
    double start_c = number_in(&finding, OHM_FIELD_START_C);
    double wanted_ohm = nominal(97) - series_ohm;
    if (wanted_ohm > oc_curve_resistance_beyond(ohm_sensor_curve(sensor), 130)) {
      CHECK_NEAR(oc_curve_resistance_beyond(ohm_sensor_curve(sensor), start_c), wanted_ohm,
                 1e-6 * wanted_ohm);
      ck_assert(start_c > before_c);
      before_c = start_c;
    } else {
      ck_assert(isnan(start_c));
    }
    check_job(&finding, start_c - 97 <= 5 ? OHM_WITHIN : OHM_OUTSIDE,
              start_c - 97 <= 5 ? "conforms" : "late");
  }
}
END_TEST

START_TEST(a_path_across_makes_the_fan_early)
{
  double seen_ohm = 1 / (1 / nominal(95) + 1 / 400.0);
  struct car car = exact_car(nominal(95), seen_ohm, degrees(seen_ohm));
  ohm_finding finding = found(&car);
  CHECK_NEAR(1 / nominal(97),
             1 / oc_curve_resistance_beyond(ohm_sensor_curve(sensor),
                                            number_in(&finding, OHM_FIELD_START_C)) +
                 1 / 400.0,
             1e-8);
  check_job(&finding, OHM_OUTSIDE, "early");
}
END_TEST

START_TEST(what_is_uncertain_widens_what_the_fan_may_do)
{
  double before_k = -1;
  for (double percent = 0; percent <= 10; percent += 1) {
    struct car car = exact_car(nominal(95), nominal(95), 95);
    car.by_report = false;
    car.module.pull_up_accuracy = OC_STATED;
    car.module.pull_up_percent = percent;
    ohm_finding finding = found(&car);
    double late_k = number_in(&finding, OHM_FIELD_LATE_K);
    ck_assert(late_k > before_k);
    before_k = late_k;
    /* One rectangular limit: 95 of 100 lie within 0.95 of it, and below 0.9 of it. */
    double limit_ohm = percent / 100 * nominal(95);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_EXPANDED_BETWEEN_OHM), 0.95 * limit_ohm,
               1e-6 * nominal(95));
    CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM), 0.9 * limit_ohm, 1e-6 * nominal(95));
    CHECK_NEAR(number_in(&finding, OHM_FIELD_U_BETWEEN_OHM), limit_ohm / sqrt(3),
               1e-6 * nominal(95));
  }
}
END_TEST

/* dR of a small change of each, by doing it. */
START_TEST(limits_are_carried_through_the_divider)
{
  double r_ohm = nominal(95);
  double v_volt = 5 * r_ohm / (1000 + r_ohm);
  struct car car = exact_car(r_ohm, r_ohm, 95);
  car.by_report = car.by_ohms = false;
  car.volts.accuracy = OC_STATED;
  car.volts.limit_volt = 0.001;
  ohm_finding finding = found(&car);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_R_OHM) * sqrt(3),
             1000 * (v_volt + 0.001) / (5 - v_volt - 0.001) - r_ohm, 0.001);
  car.volts.accuracy = OC_EXACT;
  car.module.supply_accuracy = OC_STATED;
  car.module.supply_limit_volt = 0.001;
  finding = found(&car);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_R_OHM) * sqrt(3),
             1000 * v_volt / (4.999 - v_volt) - r_ohm, 0.001);
}
END_TEST

/* ---- a start behind and across ---- */

START_TEST(nothing_in_the_way_starts_the_fan_where_it_is_set)
{
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  for (double fan_c = 50; fan_c < 130; fan_c += 7) {
    CHECK_NEAR(oc_start_behind(curve, fan_c, 0, 1), fan_c, 1e-9);
    CHECK_NEAR(oc_start_across(curve, fan_c, 0), fan_c, 1e-9);
  }
  ck_assert(oc_start_behind(curve, 97, 1e6, 1) == INFINITY);
  ck_assert(oc_start_across(curve, 97, 1) == -INFINITY);
}
END_TEST

/* ---- what was asked ---- */

START_TEST(nothing_of_the_wrong_kind_is_checked)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1, 1e300};
  ohm_finding finding = finding_new();
  struct car car = exact_car(187, 187, 100);
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    double *const members[] = {&car.pin.level,          &car.pin.fan_c,    &car.pin.limit_k,
                               &car.pin.moved_limit_k,  &car.volts.v_volt, &car.reported.limit_k,
                               &car.module.pull_up_ohm, &car.reading.r_ohm};
    for (size_t k = 0; k < sizeof members / sizeof members[0]; k++) {
      double kept = *members[k];
      *members[k] = bad[i];
      car.pin.moved = OC_STATED;
      ohm_status status = ask(&car, &finding);
      ck_assert_msg(status == OHM_BAD_ARGUMENT || status == OHM_OUT_OF_RANGE, "%zu %g", k, bad[i]);
      ck_assert(!ohm_finding_text(&finding, OHM_FIELD_ABOUT, 0));
      *members[k] = kept;
    }
  }
  car = exact_car(187, 187, 100);
  car.pin.level = 0.4;
  PROVOKES(oc_pin_check, OHM_OUT_OF_RANGE, ask(&car, &finding));
  car.pin.level = 0;
  car.module.pull_up_ohm = 0;
  PROVOKES(oc_pin_check, OHM_BAD_ARGUMENT, ask(&car, &finding));
  car.by_volts = false;
  ck_assert_int_eq(ask(&car, &finding), OHM_OK);
  car.by_ohms = car.by_report = false;
  PROVOKES(oc_pin_check, OHM_NULL_ARGUMENT, ask(&car, &finding));
  ck_assert_int_eq(oc_pin_check(NULL, NULL, &car.reading, NULL, NULL, NULL, NULL, NULL, &finding),
                   OHM_NULL_ARGUMENT);
  ck_assert_int_eq(oc_pin_check(sensor, NULL, &car.reading, NULL, NULL, NULL, NULL, NULL, NULL),
                   OHM_NULL_ARGUMENT);
}
END_TEST

START_TEST(degrees_beyond_the_curve_are_told_and_compared_with_nothing)
{
  ohm_finding finding = told("1k", "187", "0.79", "200C", NULL, OHM_NEGATIVE_PIN);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_REPORTED_C), 200, 0);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_REPORTED_OHM)));
  check_has(report_of(&finding), "beyond this sensor");
}
END_TEST

START_TEST(a_sensor_that_rises_is_compared_and_says_nothing_of_a_fan)
{
  ohm_sensor *platinum = sensor_built_in("pt1000-b");
  struct car car = exact_car(1385, 1385, 99.75);
  ohm_finding finding = finding_new();
  ck_assert_int_eq(oc_pin_check(platinum, &car.module, &car.reading, &car.meter, &car.volts, NULL,
                                NULL, &car.pin, &finding),
                   OHM_OK);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  ck_assert(!ohm_finding_text(&finding, OHM_FIELD_JOB, 0));
  ohm_sensor_free(platinum);
}
END_TEST

/* ---- the screen ---- */

static void check_screen(const ohm_finding *finding) {
  const char *text = report_of(finding);
  static const char *const statistics[] = {"nan",      "probab", "sigma", "uncertain",
                                           "quantile", "level",  "null"};
  for (size_t i = 0; i < sizeof statistics / sizeof statistics[0]; i++)
    check_has_not(text, statistics[i]);
  size_t lines = 0;
  for (const char *line = text; *line; line = strchr(line, '\n') + 1) {
    ck_assert_msg(strcspn(line, "\n") <= 80, "%s", line);
    lines++;
  }
  ck_assert_msg(lines <= 16, "%s", text);
  ck_assert_msg(strncmp(text, "CAUTION ", 8) == 0, "%s", text);
  ck_assert_uint_eq(ohm_finding_print_budget(finding, NULL, 0), 0);
}

START_TEST(every_reason_has_its_sentence)
{
  static const struct {
    const char *pull_up, *ohms, *volts, *report, *at;
    ohm_negative negative;
    const char *reason, *says;
  } all[] = {
      {"1k", "187", "0.97", "91C", NULL, OHM_NEGATIVE_NOT_TOLD, "series", "BAD: 54 ohm"},
      {"1k", "320.0", "0.97", "91C", NULL, OHM_NEGATIVE_NOT_TOLD, "leakage", "BAD: a path of"},
      {"1k", "187", "0.97", "100C", NULL, OHM_NEGATIVE_NOT_TOLD, "ground",
       "where was the negative"},
      {"1k", "187", "0.97", "100C", NULL, OHM_NEGATIVE_BODY, "ground", "YOUR GROUND"},
      {"1k", "187", "0.97", "100C", NULL, OHM_NEGATIVE_PIN, "pull_up", "fit a pull-up of 776 ohm"},
      {"1k", "187", "0.79", "91C", NULL, OHM_NEGATIVE_PIN, "curve", "other degrees"},
      {NULL, "187", NULL, "91C", NULL, OHM_NEGATIVE_PIN, "between", "plug, wire or module"},
      {"1k", "187", "0.79", "80C", NULL, OHM_NEGATIVE_PIN, "stand_in", "80 C is what some"},
      {"4k,348@40C", NULL, "2", NULL, NULL, OHM_NEGATIVE_PIN, "range", "through 348 ohm"},
      {"1k", NULL, "0.97", NULL, NULL, OHM_NEGATIVE_PIN, "alone", "nothing to hold it against"},
      {"1k", NULL, "4.95", NULL, NULL, OHM_NEGATIVE_PIN, "open", "sees no circuit"},
      {"1k", NULL, "5.3", NULL, NULL, OHM_NEGATIVE_PIN, "open", "BAD: more volts than its supply"},
      {"1k", NULL, "0.05", NULL, NULL, OHM_NEGATIVE_PIN, "shorted", "sees a short"},
      {NULL, "0.3", NULL, NULL, "100C", OHM_NEGATIVE_PIN, "shorted", "sensor is shorted"},
      {NULL, "OL", NULL, "91C", NULL, OHM_NEGATIVE_PIN, "over_range", "ran out of range"},
      {NULL, "1", NULL, "91C", NULL, OHM_NEGATIVE_PIN, "lone_one", "ran out of range"},
      {"1k", "187", "0.79", "100C", NULL, OHM_NEGATIVE_PIN, "conforms", "GOOD: they agree"},
      {"1k", NULL, "0.97", "91C", NULL, OHM_NEGATIVE_PIN, "conforms", "what its volts say"},
  };
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    ohm_finding finding =
        told(all[i].pull_up, all[i].ohms, all[i].volts, all[i].report, all[i].at, all[i].negative);
    ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REASON, 0), all[i].reason);
    check_has(report_of(&finding), all[i].says);
    check_screen(&finding);
  }
}
END_TEST

START_TEST(the_cold_sensor_cannot_see_what_the_hot_one_does)
{
  ohm_finding cold = told("1k", "2.45k", "3.55", NULL, NULL, OHM_NEGATIVE_PIN);
  check_verdict(&cold, OHM_WITHIN, "conforms");
  ck_assert(number_in(&cold, OHM_FIELD_SERIES_OHM) > 50);
  check_job(&cold, OHM_UNDECIDED, "hidden");
  check_has(report_of(&cold), "could still hide in plug and wire");
  check_has(report_of(&cold), "engine hot");
}
END_TEST

int main(void) {
  set_up();
  int result = RUN_TESTS(
      "pin", a_sound_way_agrees_at_every_temperature,
      ohms_in_the_plug_are_found_and_told_from_the_rest,
      a_path_across_the_sensor_is_found_and_told_from_the_rest,
      volts_alone_that_are_off_are_a_ground_or_a_pull_up,
      a_gauge_alone_that_is_off_is_the_curve_of_the_module,
      three_that_all_differ_are_more_than_one_fault, any_two_say_what_they_can,
      a_sensor_that_lies_is_named_when_the_way_is_sound,
      a_report_that_cannot_be_believed_is_questioned_first,
      a_circuit_that_the_module_does_not_believe_is_told,
      volts_of_two_pull_ups_are_a_question_until_the_range_is_known, a_range_that_was_told_is_taken,
      what_is_in_series_makes_the_fan_late_as_the_curve_says, a_path_across_makes_the_fan_early,
      what_is_uncertain_widens_what_the_fan_may_do, limits_are_carried_through_the_divider,
      nothing_in_the_way_starts_the_fan_where_it_is_set, nothing_of_the_wrong_kind_is_checked,
      degrees_beyond_the_curve_are_told_and_compared_with_nothing,
      a_sensor_that_rises_is_compared_and_says_nothing_of_a_fan, every_reason_has_its_sentence,
      the_cold_sensor_cannot_see_what_the_hot_one_does);
  tear_down();
  return result;
}
