/* SPDX-License-Identifier: MIT */
/*
 * Cars with and without ohms in the plug. Truths are drawn, ohmmeter, voltmeter and module
 * err within what was declared of them, and what the findings say is held against the
 * truths: that the cold check names what it could not see, that the ohms between lie
 * within their stated uncertainty as often as stated, that a sound car is accused no
 * oftener than that allows, and that two resistors in the sensor's place find them too.
 */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/bath.h"
#include "../../lib/answers/loom.h"
#include "../../lib/answers/signal_path.h"
#include "../share.h"

enum { DRAWS = 40000 };

static const double LEVEL = 0.95;
/* Four standard deviations of a rate of 1 in 20 over DRAWS draws. */
static const double SCATTER = 0.0044;

/* Both, as far as a share of the draws is made. */
static int draws;
static double scatter;

static uint64_t state = 20261125;
static int failures;

static const ohm_sensor *sensor;
static const ohm_curve *curve;

/* ---- a car ---- */

/* Errors as they are declared, each rectangular; other members as assumed. */
static const double METER_PERCENT = 1;
static const double METER_COUNTS = 2;
static const double LEAD_OHM = 0.4;
static const double LEAD_LIMIT_OHM = 0.1;
static const double VOLT_LIMIT = 0.006;
static const double SUPPLY_LIMIT_VOLT = 0.02;
static const double PULL_UP_PERCENT = 1;
static const double MODULE_LIMIT_K = 1;
static const double MOVED_LIMIT_K = 0.5;
static const double PULL_UP_OHM = 1000;

static void must(ohm_status status) {
  if (status == OHM_OK)
    return;
  fprintf(stderr, "%s\n", ohm_status_text((int)status));
  exit(2);
}

static double resistance(double t_c) {
  double r_ohm;
  must(ohm_curve_resistance(curve, t_c, &r_ohm));
  return r_ohm;
}

static double temperature(double r_ohm) {
  double t_c;
  must(ohm_curve_temperature(curve, r_ohm, &t_c));
  return t_c;
}

static double rectangular(double limit) {
  return draw_rectangular(&state, limit);
}

/* What a meter with so many counts shows of a value. */
static oc_reading shown(double r_ohm) {
  oc_reading reading = OC_READING_INIT;
  double count_ohm = r_ohm < 200 ? 0.1 : r_ohm < 2000 ? 1 : 10;
  double limit_ohm = METER_PERCENT / 100 * r_ohm + METER_COUNTS * count_ohm;
  double lead_ohm = LEAD_OHM + rectangular(LEAD_LIMIT_OHM);
  reading.r_ohm = r_ohm + lead_ohm + rectangular(limit_ohm);
  reading.resolution_ohm = count_ohm;
  return reading;
}

static oc_meter declared_meter(void) {
  oc_meter meter = OC_METER_INIT;
  meter.accuracy = OC_STATED;
  meter.percent = METER_PERCENT;
  meter.counts = METER_COUNTS;
  meter.leads = OC_STATED;
  meter.lead_ohm = LEAD_OHM;
  meter.lead_limit_ohm = LEAD_LIMIT_OHM;
  return meter;
}

static oc_module declared_module(void) {
  oc_module module = OC_MODULE_INIT;
  module.pull_up_ohm = PULL_UP_OHM;
  module.pull_up_accuracy = OC_STATED;
  module.pull_up_percent = PULL_UP_PERCENT;
  module.supply_volt = 5;
  module.supply_accuracy = OC_STATED;
  module.supply_limit_volt = SUPPLY_LIMIT_VOLT;
  return module;
}

/* Degrees that a module shows of a resistance. */
static oc_reported reported_of(double r_ohm) {
  oc_reported reported = OC_REPORTED_INIT;
  int rounding = draw_share(&state) < 0.5 ? OC_ROUNDED : OC_TRUNCATED;
  must(ohm_reported_of(temperature(r_ohm) + rectangular(MODULE_LIMIT_K), rounding == OC_TRUNCATED,
                       &reported.t_c));
  reported.rounding = rounding;
  reported.accuracy = OC_STATED;
  reported.limit_k = MODULE_LIMIT_K;
  reported.moves = OC_MOVES;
  return reported;
}

/* The sensor is one of its kind: its curve times anything the maker allows. */
struct car {
  double r_ohm; /* of the sensor while ohms were read */
  double series_ohm;
  double seen_ohm; /* by the module while volts were */
};

static struct car car_at(double t_c, double series_ohm) {
  double factor = 1 + rectangular(0.03);
  double moved_k = rectangular(MOVED_LIMIT_K);
  struct car car = {factor * resistance(t_c), series_ohm,
                    factor * resistance(t_c + moved_k) + series_ohm};
  return car;
}

static ohm_finding judged(const struct car *car, bool by_volts, bool by_report) {
  oc_module module = declared_module();
  oc_meter meter = declared_meter();
  oc_reading reading = shown(car->r_ohm);
  oc_reported reported = reported_of(car->seen_ohm);
  oc_volts volts = OC_VOLTS_INIT;
  oc_pin pin = OC_PIN_INIT;
  double pull_up_ohm = PULL_UP_OHM * (1 + rectangular(PULL_UP_PERCENT / 100));
  double supply_volt = 5 + rectangular(SUPPLY_LIMIT_VOLT);
  must(ohm_divider_volts(car->seen_ohm, pull_up_ohm, supply_volt, &volts.v_volt));
  volts.v_volt += rectangular(VOLT_LIMIT);
  volts.accuracy = OC_STATED;
  volts.limit_volt = VOLT_LIMIT;
  volts.negative = OHM_NEGATIVE_PIN;
  pin.moved = OC_STATED;
  pin.moved_limit_k = MOVED_LIMIT_K;
  pin.level = LEVEL;
  ohm_finding finding = finding_new();
  must(oc_pin_check(sensor, &module, &reading, &meter, by_volts ? &volts : NULL,
                    by_report ? &reported : NULL, NULL, &pin, &finding));
  return finding;
}

static double number(const ohm_finding *finding, int field) {
  return ohm_finding_number(finding, field);
}

/* ---- how often ---- */

static void say(const char *what, double rate, double low, double high) {
  bool good = low <= rate && rate <= high;
  printf("%-58s %.4f  %s\n", what, rate, good ? "as it should" : "MISSED");
  failures += !good;
}

/* How often the truth lies within what is said, and how often the plug is named. */
static void hold_between(const char *what, double t_c, double series_ohm, bool by_volts,
                         bool by_report, double named_low, double named_high) {
  char line[96];
  size_t within = 0;
  size_t above = 0;
  size_t named = 0;
  for (int i = 0; i < draws; i++) {
    struct car car = car_at(t_c, series_ohm);
    ohm_finding finding = judged(&car, by_volts, by_report);
    double off_ohm = number(&finding, OHM_FIELD_BETWEEN_OHM) - series_ohm;
    within += fabs(off_ohm) <= number(&finding, OHM_FIELD_EXPANDED_BETWEEN_OHM);
    above += series_ohm > number(&finding, OHM_FIELD_SERIES_OHM);
    named += ohm_finding_verdict(&finding) == OHM_OUTSIDE;
    findings_free();
  }
  snprintf(line, sizeof line, "%s: ohms within what is said", what);
  say(line, (double)within / draws, LEVEL - scatter, LEVEL + scatter);
  snprintf(line, sizeof line, "%s: more than could hide", what);
  if (series_ohm > 0)
    say(line, (double)above / draws, 1 - LEVEL - scatter, 1 - LEVEL + scatter);
  snprintf(line, sizeof line, "%s: said to part", what);
  say(line, (double)named / draws, named_low, named_high);
}

/* A cold check at the sensor's own pins passes, names the plug as not tested, and says that
 * 50 ohm would make the fan late; cold volts say that 50 ohm could hide. */
static void hold_cold(void) {
  size_t passed = 0;
  size_t untested = 0;
  size_t late = 0;
  size_t could_hide = 0;
  for (int i = 0; i < draws; i++) {
    double t_c = draw_between(&state, 10, 25);
    struct car car = car_at(t_c, 50);
    oc_reading reading = shown(car.r_ohm);
    oc_meter meter = declared_meter();
    oc_reference reference = OC_REFERENCE_INIT;
    oc_check check = OC_CHECK_INIT;
    ohm_finding finding = finding_new();
    reference.t_c = t_c + rectangular(1);
    reference.accuracy = OC_STATED;
    reference.limit_k = 1;
    check.place = OHM_PLACE_SENSOR;
    must(oc_bath_check(sensor, &reading, &meter, &reference, &check, &finding));
    passed += ohm_finding_verdict(&finding) == OHM_WITHIN;
    const char *left = ohm_finding_text(&finding, OHM_FIELD_NOT_TESTED, 0);
    untested += left && left[0] == 'p'; /* "plug, wires, module: ..." */
    late += number(&finding, OHM_FIELD_FIFTY_LATE_K) > 10;
    finding = judged(&car, true, false);
    could_hide += number(&finding, OHM_FIELD_SERIES_OHM) >= 50;
    findings_free();
  }
  say("cold, at the sensor: good, as it is", (double)passed / draws, 0.99, 1);
  say("cold, at the sensor: plug and wires named as not tested", (double)untested / draws, 1, 1);
  say("cold, at the sensor: 50 ohm said to make the fan late", (double)late / draws, 1, 1);
  say("cold, by the volts: 50 ohm said to be able to hide", (double)could_hide / draws,
      LEVEL - scatter, 1);
}

/* Two resistors in the sensor's place. The module multiplies by what its pull-up is off. */
static void hold_loom(double series_ohm) {
  char line[96];
  size_t within = 0;
  size_t of_factor = 0;
  oc_meter meter = declared_meter();
  for (int i = 0; i < draws; i++) {
    double factor = 1 + rectangular(0.03);
    double lead_ohm = LEAD_OHM + rectangular(LEAD_LIMIT_OHM);
    double fitted_ohm[] = {draw_between(&state, 150, 200), draw_between(&state, 900, 1100)};
    oc_reading readings[2];
    oc_reported reported[2];
    for (size_t k = 0; k < 2; k++) {
      readings[k] = shown(fitted_ohm[k]);
      /* One pair of leads for both. */
      double limit_ohm =
          METER_PERCENT / 100 * fitted_ohm[k] + METER_COUNTS * readings[k].resolution_ohm;
      readings[k].r_ohm = fitted_ohm[k] + lead_ohm + rectangular(limit_ohm);
      reported[k] = reported_of(factor * (fitted_ohm[k] + series_ohm));
    }
    ohm_finding finding = finding_new();
    must(oc_loom_check(sensor, readings, &meter, reported, NULL, &finding));
    within += fabs(number(&finding, OHM_FIELD_BETWEEN_OHM) - series_ohm) <=
              number(&finding, OHM_FIELD_EXPANDED_BETWEEN_OHM);
    of_factor += fabs(number(&finding, OHM_FIELD_FACTOR) - factor) <=
                 number(&finding, OHM_FIELD_EXPANDED_FACTOR);
    findings_free();
  }
  snprintf(line, sizeof line, "two resistors, %g ohm: ohms within what is said", series_ohm);
  say(line, (double)within / draws, LEVEL - SCATTER - scatter, LEVEL + SCATTER + scatter);
  snprintf(line, sizeof line, "two resistors, %g ohm: factor within what is said", series_ohm);
  say(line, (double)of_factor / draws, LEVEL - SCATTER - scatter, LEVEL + SCATTER + scatter);
}

int main(void) {
  ohm_sensor *loaded = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  if (!loaded)
    return 2;
  sensor = loaded;
  curve = ohm_sensor_curve(sensor);
  draws = share_of(DRAWS);
  scatter = SCATTER + share_scatter(LEVEL, draws);
  hold_cold();
  hold_between("hot, 50 ohm, by the volts", 95, 50, true, false, 0.99, 1);
  hold_between("hot, 50 ohm, by volts and report", 95, 50, true, true, 0.99, 1);
  hold_between("hot, 50 ohm, by the report", 95, 50, false, true, 0.99, 1);
  hold_between("hot, sound, by the volts", 95, 0, true, false, 1 - LEVEL - scatter,
               1 - LEVEL + scatter);
  hold_between("hot, sound, by volts and report", 95, 0, true, true, 0, 1 - LEVEL + scatter);
  hold_between("hot, sound, by the report", 95, 0, false, true, 1 - LEVEL - scatter,
               1 - LEVEL + scatter);
  hold_loom(0);
  hold_loom(50);
  ohm_sensor_free(loaded);
  return failures > 0;
}
