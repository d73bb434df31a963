/* SPDX-License-Identifier: MIT */
/*
 * How often an explanation is right. A sensor is drawn from its band, follows its curve
 * no closer than is declared, is given a fault, and is read with a meter, leads and a
 * thermometer that err as declared: the size that was given lies in the interval stated
 * for it as often as stated, and a healthy sensor is called faulty no more often.
 */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

#include "../../lib/model/fault_size.h"
#include "../../lib/model/next_reading.h"
#include "../../lib/sensors/sensor.h"
#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/explain.h"
#include "../share.h"

enum { DRAWS = 400, HEALTHY_DRAWS = 1500 };

static const double LEVEL = 0.95;
static const double SCATTER = 0.005; /* as declared in the header */

/* Everything assumed, and a test current that warms nothing. */
static oc_meter meter = OC_METER_INIT;

static uint64_t state = 20261125;
static int failures;

/* ---- a reading of a faulty sensor ---- */

enum { RANGES = 12 };

/* Whether the ranges of the meter err each its own way, or alike. */
static bool apart;

/* What errs alike in all readings of one draw. */
struct common {
  double place;         /* in the band, -1 to 1 */
  double meter[RANGES]; /* each -1 to 1 of its limit */
  double leads;
  double thermometer;
};

static struct common draw_common(void) {
  struct common common = {.place = draw_rectangular(&state, 1),
                          .leads = draw_rectangular(&state, 1),
                          .thermometer = draw_rectangular(&state, 1)};
  for (int i = 0; i < RANGES; i++)
    common.meter[i] = i > 0 && !apart ? common.meter[0] : draw_rectangular(&state, 1);
  return common;
}

/* The sensor's half-band is the one it is judged by at the temperature shown. */
static double true_ohm(const ohm_sensor *sensor, const struct oc_fault *fault,
                       const struct common *common, const oc_reading *reading,
                       const oc_reference *reference, double t_c) {
  struct oc_evidence evidence;
  struct oc_ask ask = {reading, reference, 1, &meter, NULL};
  oc_ask_gather(&evidence, sensor, &ask);
  const struct oc_evidence_reading *shown = &evidence.readings[0];
  double log_element = log(oc_curve_resistance_beyond(ohm_sensor_curve(sensor), t_c)) +
                       common->place * (common->place > 0 ? shown->up : -shown->down);
  return exp(oc_fault_log(fault, log_element + draw_normal(&state, SCATTER), t_c));
}

/* The thermometer shows t_c; the truth lies about it. The meter's limit is one of what it
 * shows: near enough to one of what it is shown. */
static void read_one(const ohm_sensor *sensor, const struct oc_fault *fault,
                     const struct common *common, double t_c, oc_reading *reading,
                     oc_reference *reference) {
  *reading = (oc_reading)OC_READING_INIT;
  *reference = (oc_reference)OC_REFERENCE_INIT;
  reference->t_c = t_c;
  reading->r_ohm = 1000;
  double r_ohm = true_ohm(sensor, fault, common, reading, reference,
                          t_c + common->thermometer * OC_ASSUMED_THERMOMETER_LIMIT_K);
  reading->r_ohm = r_ohm + OC_ASSUMED_LEAD_OHM + common->leads * OC_ASSUMED_LEAD_LIMIT_OHM;
  reading->resolution_ohm = pow(10, floor(log10(reading->r_ohm / 2)) - 2);
  double limit_ohm;
  oc_meter_limit(&meter, reading, &limit_ohm);
  int range = (int)lround(log10(reading->resolution_ohm)) + 3;
  reading->r_ohm += common->meter[range] * limit_ohm;
}

/* ---- sizes ---- */

/* The meter's rectangular error is counted as a normal one of the same uncertainty, so
 * that where it is all there is an interval covers more often than it says: never less. */

struct given {
  const char *name;
  struct oc_fault fault;
};

static void check_rate(const char *sensor, const char *what, const char *where, int right, int all,
                       double least, double most) {
  double rate = (double)right / all;
  /* Four standard deviations of the draw. */
  double scatter = 4 * sqrt(LEVEL * (1 - LEVEL) / all);
  bool bad = !(least - scatter <= rate && rate <= most + scatter);
  printf("%s %-14s %-16s %-12s %5.1f %%\n", bad ? "MISSED" : "ok    ", sensor, what, where,
         100 * rate);
  failures += bad;
}

static void cover(const ohm_sensor *sensor, const struct given *given, const char *where,
                  const double *t_c, size_t count) {
  int right = 0;
  int all = 0;
  for (int draw = 0; draw < DRAWS; draw++) {
    oc_reading readings[2];
    oc_reference references[2];
    struct oc_evidence evidence;
    struct oc_fault_estimate estimate;
    struct common common = draw_common();
    for (size_t i = 0; i < count; i++)
      read_one(sensor, &given->fault, &common, t_c[i], &readings[i], &references[i]);
    struct oc_ask ask = {readings, references, count, &meter, NULL};
    if (oc_ask_gather(&evidence, sensor, &ask) != OHM_OK ||
        !oc_fault_estimate(&evidence, given->fault.shape, LEVEL, &estimate))
      continue;
    all++;
    right += estimate.low <= given->fault.size && given->fault.size <= estimate.high;
  }
  if (all < DRAWS)
    printf("       %d of %d had no estimate\n", DRAWS - all, DRAWS);
  check_rate(ohm_sensor_name(sensor), given->name, where, right, all, LEVEL, 1);
}

static void cover_all(const ohm_sensor *sensor) {
  const struct given all[] = {{"series 20 ohm", {OC_FAULT_SERIES, 20}},
                              {"series 50 ohm", {OC_FAULT_SERIES, 50}},
                              {"series 100 ohm", {OC_FAULT_SERIES, 100}},
                              {"series 500 ohm", {OC_FAULT_SERIES, 500}},
                              {"leakage 1 k", {OC_FAULT_LEAKAGE, 1e-3}},
                              {"leakage 10 k", {OC_FAULT_LEAKAGE, 1e-4}},
                              {"leakage 100 k", {OC_FAULT_LEAKAGE, 1e-5}},
                              {"drift +3 %", {OC_FAULT_DRIFT, 0.02955880224154443}},
                              {"drift -3 %", {OC_FAULT_DRIFT, -0.030459207484708574}}};
  static const struct {
    const char *where;
    double t_c[2];
    size_t count;
  } places[] = {{"cold", {2, 0}, 1},
                {"warm", {40, 0}, 1},
                {"hot", {85, 0}, 1},
                {"cold and hot", {20, 85}, 2}};
  static uint64_t number;
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    for (size_t j = 0; j < sizeof places / sizeof places[0]; j++)
      if (share_has(number++))
        cover(sensor, &all[i], places[j].where, places[j].t_c, places[j].count);
}

/* ---- health ---- */

static void call_healthy(const ohm_sensor *sensor, double cold_c, double hot_c) {
  static const struct oc_fault none = {OC_FAULT_DRIFT, 0};
  const int draws = share_of(HEALTHY_DRAWS);
  int accused = 0;
  int doubted = 0;
  for (int draw = 0; draw < draws; draw++) {
    oc_reading readings[2];
    oc_reference references[2];
    ohm_finding explanations[OC_EXPLANATIONS];
    ohm_finding finding = finding_new();
    findings_begin(explanations, OC_EXPLANATIONS);
    struct common common = draw_common();
    read_one(sensor, &none, &common, cold_c, &readings[0], &references[0]);
    read_one(sensor, &none, &common, hot_c, &readings[1], &references[1]);
    oc_explain(sensor, NULL, 0, readings, references, 2, &meter, NULL, explanations, &finding);
    accused += ohm_finding_verdict(&finding) == OHM_OUTSIDE;
    doubted += ohm_finding_verdict(&finding) != OHM_WITHIN;
    findings_free();
  }
  check_rate(ohm_sensor_name(sensor), "healthy", "accused", accused, draws, 0, 1 - LEVEL);
  printf("       %-14s %-16s %-12s %5.1f %%\n", ohm_sensor_name(sensor), "healthy", "doubted",
         100.0 * doubted / draws);
}

static void explain_family(const char *name) {
  ohm_sensor *sensor = ohm_sensor_built_in_load(name, NULL);
  if (!sensor)
    exit(EXIT_FAILURE);
  cover_all(sensor);
  call_healthy(sensor, 20, 85);
  ohm_sensor_free(sensor);
}

int main(void) {
  meter.current_ma = 1e-3;
  static const char *const families[] = {"ntc-2k45-20c", "ntc-3k5-20c", "ntc-37k-20c",
                                         "ntc-10k-25c-680r-100c"};
  for (int world = 0; world < 2; world++) {
    apart = world == 1;
    printf("the meter errs %s\n", apart ? "on each range its own way" : "alike on all ranges");
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++)
      explain_family(families[i]);
  }
  printf("%d draws a size, %d healthy; %d missed\n", DRAWS, share_of(HEALTHY_DRAWS), failures);
  return failures == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
