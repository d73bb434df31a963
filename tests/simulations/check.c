/* SPDX-License-Identifier: MIT */
/*
 * How often a finding is right. Truths are drawn, readings are made from them by the
 * errors that were declared, and what the findings say is held against the truths:
 * intervals that claim 95 in 100, verdicts on a sensor exactly on a limit, faults said
 * to be the largest that could hide. A thermometer shows one temperature and the true
 * one is drawn about it, which is what a flat prior means.
 */
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/bath.h"
#include "../share.h"

/* Steps from one end of what is read to the other. Findings are kept by step, and what
 * they say is smooth between two of them, so that as many draws as wanted cost a few
 * hundred checks. */
enum { DRAWS = 40000, STEPS = 100, STEPS_OF_TWO = 32, KEPT_MAX = 1 << 13 };

static const double LEVEL = 0.95;
/* Four standard deviations of a rate of 1 in 20 over DRAWS draws. */
static const double SCATTER = 0.0044;

static int failures;

/* ---- drawing ---- */

static uint64_t state = 20260625;

static double rectangular(double limit) {
  return draw_rectangular(&state, limit);
}

static double normal(double u) {
  return draw_normal(&state, u);
}

/* ---- what is declared ---- */

struct part {
  const char *sensor;
  double t_c; /* shown by the thermometer */
  double tolerance_percent;
  double dissipation_mw_per_k;
};

/* One cause is many times as large as the others. */
struct errors {
  const char *name;
  double meter_percent;
  double lead_percent; /* limit of the leads, of the nominal resistance */
  double limit_k;
  double u_k;
  double current_ma; /* of an element of 2.5 kohm; that of others gives the same heat */
};

static const struct part parts[] = {{"ntc-10k-25c", 25, 5, 0},
                                    {"ntc-2k45-20c", 30, 0, 0},
                                    {"ntc-2k45-20c", 85, 0, 0},
                                    {"ntc-37k-20c", 30, 0, 0},
                                    {"ntc-3k5-20c", 50, 0, 0}};
static const struct part heated = {"ntc-2k45-20c", 30, 0, 1.5};

static const struct errors all_errors[] = {{"meter", 2, 0.02, 0.01, 0.002, 0},
                                           {"leads", 0.02, 2, 0.01, 0.002, 0},
                                           {"thermometer limit", 0.02, 0.02, 0.5, 0.002, 0},
                                           {"thermometer noise", 0.02, 0.02, 0.01, 0.3, 0},
                                           {"mixture", 0.8, 0.5, 0.3, 0.1, 0}};
static const struct errors warm = {"test current", 0.02, 0.02, 0.01, 0.002, 1};

/* What a finding says that is held against the truth. */
struct said {
  bool known;
  ohm_conformance p;
  double r_ohm;
  double expanded_r_ohm;
  double t_c;
  double expanded_t_k;
  double at_c;
  double expanded_at_k;
  double series_ohm;
  double leakage_s; /* of the smallest leakage that could hide, as conductance */
};

/* One part on the bench with one set of errors. */
struct bench {
  const struct part *part;
  const struct errors *errors;
  ohm_sensor *sensor;
  oc_meter meter;
  oc_reference reference;
  oc_check check;
  double nominal_ohm;
  double heating_k;
  double heating_limit_k;
  double step_ohm;
  double reach_ohm; /* largest error of a reading, thermometer and all */
  struct said kept[KEPT_MAX];
};

static void must(ohm_status status) {
  if (status == OHM_OK)
    return;
  fprintf(stderr, "%s\n", ohm_status_text((int)status));
  exit(2);
}

/* A built-in sensor; with a dissipation factor when there is one, which none has. */
static ohm_sensor *load(const struct part *part) {
  char text[1 << 14];
  ohm_sensor *sensor = ohm_sensor_built_in_load(part->sensor, NULL);
  if (part->dissipation_mw_per_k == 0)
    return sensor;
  int head =
      snprintf(text, sizeof text, "# dissipation_mw_per_k: %g\n", part->dissipation_mw_per_k);
  size_t length = ohm_sensor_print(sensor, text + head, sizeof text - (size_t)head);
  ohm_sensor_free(sensor);
  ohm_error error;
  sensor = ohm_sensor_parse(text, (size_t)head + length, "heated", &error);
  if (!sensor)
    fprintf(stderr, "%s\n", error.message);
  return sensor;
}

static oc_reading shown(double r_ohm) {
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = r_ohm;
  return reading;
}

static double number(const ohm_finding *finding, int field) {
  return ohm_finding_number(finding, field);
}

static void set_up(struct bench *bench, const struct part *part, const struct errors *errors) {
  memset(bench, 0, sizeof *bench);
  bench->part = part;
  bench->errors = errors;
  bench->sensor = load(part);
  if (!bench->sensor)
    exit(2);
  const ohm_curve *curve = ohm_sensor_curve(bench->sensor);
  double alpha_per_k;
  must(ohm_curve_resistance(curve, part->t_c, &bench->nominal_ohm));
  must(ohm_curve_alpha(curve, part->t_c, &alpha_per_k));
  double nominal_ohm = bench->nominal_ohm;
  bench->meter = (oc_meter)OC_METER_INIT;
  bench->meter.accuracy = OC_STATED;
  bench->meter.percent = errors->meter_percent;
  bench->meter.leads = OC_STATED;
  bench->meter.lead_limit_ohm = errors->lead_percent / 100 * nominal_ohm;
  bench->meter.lead_ohm = 1.5 * bench->meter.lead_limit_ohm;
  bench->meter.current_ma = errors->current_ma;
  bench->meter.resolution_ohm = nominal_ohm / 1e6;
  bench->reference = (oc_reference)OC_REFERENCE_INIT;
  bench->reference.t_c = part->t_c;
  bench->reference.accuracy = OC_STATED;
  bench->reference.limit_k = errors->limit_k;
  bench->reference.u_k = errors->u_k;
  bench->check = (oc_check)OC_CHECK_INIT;
  bench->check.level = LEVEL;
  bench->check.tolerance_percent = part->tolerance_percent;
  bench->check.place = OHM_PLACE_SENSOR;
  oc_reading reading = shown(nominal_ohm + bench->meter.lead_ohm);
  ohm_finding finding = finding_new();
  must(oc_bath_check(bench->sensor, &reading, &bench->meter, &bench->reference, &bench->check,
                     &finding));
  if (part->dissipation_mw_per_k > 0) {
    bench->heating_k = number(&finding, OHM_FIELD_HEATING_K);
    bench->heating_limit_k = number(&finding, OHM_FIELD_HEATING_LIMIT_K);
  }
  findings_free();
  double reach_k = errors->limit_k + 4 * errors->u_k + bench->heating_limit_k;
  bench->reach_ohm = (errors->meter_percent + errors->lead_percent) / 100 * nominal_ohm +
                     fabs(alpha_per_k) * nominal_ohm * reach_k;
  bench->step_ohm = 2 * bench->reach_ohm / STEPS;
  bench->meter.resolution_ohm = bench->step_ohm;
}

/* ---- one truth, one reading ---- */

struct truth {
  double bath_c;
  double heating_k; /* of an element of the nominal resistance */
};

static struct truth draw_truth(const struct bench *bench) {
  const struct errors *errors = bench->errors;
  return (struct truth){bench->part->t_c - rectangular(errors->limit_k) - normal(errors->u_k),
                        bench->heating_k + rectangular(bench->heating_limit_k)};
}

/* The limit is a percentage of the reading and a constant: reading = r + u (percent
 * reading + constant). */
static double read_by(const struct bench *bench, double r_ohm) {
  const oc_meter *meter = &bench->meter;
  double at_probes_ohm = r_ohm + meter->lead_ohm + rectangular(meter->lead_limit_ohm);
  double u = rectangular(1);
  return (at_probes_ohm + u * bench->step_ohm / 2) / (1 - u * meter->percent / 100);
}

/* The verdict by the probabilities, as the header has it; what is outside by the band judged by
 * may be inside another's. */
static ohm_verdict verdict_by(const ohm_conformance *p) {
  if (p->p_high >= LEVEL || p->p_low >= LEVEL)
    return OHM_OUTSIDE;
  return p->p_within >= LEVEL ? OHM_WITHIN : OHM_UNDECIDED;
}

static ohm_conformance conformance(const ohm_finding *finding) {
  ohm_conformance p = {number(finding, OHM_FIELD_P_LOW), number(finding, OHM_FIELD_P_WITHIN),
                       number(finding, OHM_FIELD_P_HIGH)};
  const char *reason = ohm_finding_text(finding, OHM_FIELD_REASON, 0);
  bool another_band = reason && strcmp(reason, "another_band") == 0;
  ohm_verdict verdict = another_band ? OHM_OUTSIDE : ohm_finding_verdict(finding);
  if (verdict_by(&p) != verdict) {
    fprintf(stderr, "the verdict is not that of the probabilities\n");
    exit(2);
  }
  return p;
}

static double between(double a, double b, double part) {
  return a + part * (b - a);
}

static ohm_conformance conformance_between(ohm_conformance a, ohm_conformance b, double part) {
  return (ohm_conformance){between(a.p_low, b.p_low, part), between(a.p_within, b.p_within, part),
                           between(a.p_high, b.p_high, part)};
}

/* What is said of a reading of so many steps. */
static const struct said *said_of(struct bench *bench, double count) {
  long at = (long)count - (long)(bench->nominal_ohm / bench->step_ohm) + KEPT_MAX / 2;
  if (at < 0 || at >= KEPT_MAX) {
    fprintf(stderr, "a reading of %g ohm is too far from %g ohm\n", count * bench->step_ohm,
            bench->nominal_ohm);
    exit(2);
  }
  struct said *said = &bench->kept[at];
  if (said->known)
    return said;
  oc_reading reading = shown(count * bench->step_ohm);
  ohm_finding finding = finding_new();
  must(oc_bath_check(bench->sensor, &reading, &bench->meter, &bench->reference, &bench->check,
                     &finding));
  double leakage_ohm = number(&finding, OHM_FIELD_LEAKAGE_OHM);
  *said = (struct said){.known = true,
                        .p = conformance(&finding),
                        .r_ohm = number(&finding, OHM_FIELD_R_OHM),
                        .expanded_r_ohm = number(&finding, OHM_FIELD_EXPANDED_R_OHM),
                        .t_c = number(&finding, OHM_FIELD_T_C),
                        .expanded_t_k = number(&finding, OHM_FIELD_EXPANDED_T_K),
                        .at_c = number(&finding, OHM_FIELD_AT_C),
                        .expanded_at_k = number(&finding, OHM_FIELD_EXPANDED_AT_K),
                        .series_ohm = number(&finding, OHM_FIELD_SERIES_OHM),
                        .leakage_s = isnan(leakage_ohm) ? 0 : 1 / leakage_ohm};
  findings_free();
  return said;
}

/* What would be said of any reading: probabilities and faults. */
static struct said said_between(struct bench *bench, double reading_ohm) {
  double count = floor(reading_ohm / bench->step_ohm);
  double part = reading_ohm / bench->step_ohm - count;
  const struct said *a = said_of(bench, count);
  const struct said *b = said_of(bench, count + 1);
  struct said said = *a;
  said.p = conformance_between(a->p, b->p, part);
  said.series_ohm = between(a->series_ohm, b->series_ohm, part);
  said.leakage_s = between(a->leakage_s, b->leakage_s, part);
  return said;
}

enum where { AT_LOW, AT_NOMINAL, AT_HIGH, BELOW, ABOVE, PLACES };

static double element_at(const struct bench *bench, enum where where, double t_c) {
  double ohm[PLACES];
  if (bench->part->tolerance_percent > 0) {
    must(ohm_curve_resistance(ohm_sensor_curve(bench->sensor), t_c, &ohm[AT_NOMINAL]));
    ohm[AT_LOW] = ohm[AT_NOMINAL] * (1 - bench->part->tolerance_percent / 100);
    ohm[AT_HIGH] = ohm[AT_NOMINAL] * (1 + bench->part->tolerance_percent / 100);
  } else {
    must(ohm_sensor_band(bench->sensor, t_c, &ohm[AT_LOW], &ohm[AT_NOMINAL], &ohm[AT_HIGH]));
  }
  /* A half half-band beyond. */
  ohm[BELOW] = ohm[AT_LOW] - (ohm[AT_HIGH] - ohm[AT_LOW]) / 4;
  ohm[ABOVE] = ohm[AT_HIGH] + (ohm[AT_HIGH] - ohm[AT_LOW]) / 4;
  return ohm[where];
}

/* The same in a bath: warmed by the current as its resistance lets it. */
static double element(const struct bench *bench, enum where where, const struct truth *truth) {
  double r_ohm = element_at(bench, where, truth->bath_c);
  for (int i = 0; i < 4 && truth->heating_k > 0; i++)
    r_ohm = element_at(bench, where, truth->bath_c + truth->heating_k * r_ohm / bench->nominal_ohm);
  return r_ohm;
}

/* ---- what is claimed ---- */

static void claim(const struct bench *bench, const char *what, double rate, double low,
                  double high) {
  bool good = low <= rate && rate <= high;
  failures += !good;
  printf("%-6s %-13s %3.0f C  %-18s %-43s %6.2f %%\n", good ? "ok" : "MISSED", bench->part->sensor,
         bench->part->t_c, bench->errors->name, what, 100 * rate);
}

/* A resistance that a reading may have come from: as the thermometer, by what is shown. */
static double behind(const struct bench *bench, double reading_ohm) {
  const oc_meter *meter = &bench->meter;
  double limit_ohm = meter->percent / 100 * reading_ohm + bench->step_ohm / 2;
  return reading_ohm - rectangular(limit_ohm) - meter->lead_ohm -
         rectangular(meter->lead_limit_ohm);
}

static void claim_coverage(struct bench *bench) {
  long r = 0;
  long t = 0;
  long at = 0;
  for (int i = 0; i < DRAWS; i++) {
    struct truth truth = draw_truth(bench);
    double steps = nearbyint(bench->nominal_ohm / bench->step_ohm + rectangular(STEPS / 4));
    double r_ohm = behind(bench, steps * bench->step_ohm);
    double t_c;
    must(ohm_curve_temperature(ohm_sensor_curve(bench->sensor), r_ohm, &t_c));
    const struct said *said = said_of(bench, steps);
    r += fabs(r_ohm - said->r_ohm) <= said->expanded_r_ohm;
    t += fabs(t_c - said->t_c) <= said->expanded_t_k;
    at += fabs(truth.bath_c - said->at_c) <= said->expanded_at_k;
  }
  claim(bench, "interval of resistance, 94 to 96", (double)r / DRAWS, 0.94, 0.96);
  claim(bench, "interval of temperature, 94 to 96", (double)t / DRAWS, 0.94, 0.96);
  claim(bench, "interval of the bath, 94 to 96", (double)at / DRAWS, 0.94, 0.96);
}

/* A part exactly on a limit is called within as often as the level leaves open, and
 * outside no more often, since the same probability decides on either side. */
static void claim_verdict(struct bench *bench, enum where where) {
  long within = 0;
  long outside = 0;
  for (int i = 0; i < DRAWS; i++) {
    struct truth truth = draw_truth(bench);
    double r_ohm = element(bench, where, &truth);
    struct said said = said_between(bench, read_by(bench, r_ohm));
    within += verdict_by(&said.p) == OHM_WITHIN;
    outside += verdict_by(&said.p) == OHM_OUTSIDE;
  }
  const char *side = where == AT_LOW ? "low" : "high";
  char what[64];
  double most = 1 - LEVEL + SCATTER;
  snprintf(what, sizeof what, "at the %s limit called within, up to 5", side);
  claim(bench, what, (double)within / DRAWS, 0, most);
  snprintf(what, sizeof what, "at the %s limit called outside, up to 5", side);
  claim(bench, what, (double)outside / DRAWS, 0, most);
}

static void claim_series(struct bench *bench, enum where where) {
  double series_ohm = 2 * bench->reach_ohm;
  long more = 0;
  for (int i = 0; i < DRAWS; i++) {
    struct truth truth = draw_truth(bench);
    double r_ohm = element(bench, where, &truth) + series_ohm;
    more += said_between(bench, read_by(bench, r_ohm)).series_ohm < series_ohm;
  }
  claim(bench,
        where == AT_LOW ? "more in series hides, at the low limit, to 5"
                        : "more in series hides, nominal, to 5",
        (double)more / DRAWS, 0, 1 - LEVEL + SCATTER);
}

static void claim_leakage(struct bench *bench, enum where where) {
  double high_ohm = element_at(bench, AT_HIGH, bench->part->t_c);
  double leakage_ohm = high_ohm * (high_ohm / (2 * bench->reach_ohm) - 1);
  long less = 0;
  for (int i = 0; i < DRAWS; i++) {
    struct truth truth = draw_truth(bench);
    double r_ohm = 1 / (1 / element(bench, where, &truth) + 1 / leakage_ohm);
    less += said_between(bench, read_by(bench, r_ohm)).leakage_s < 1 / leakage_ohm;
  }
  claim(bench,
        where == AT_HIGH ? "less leakage hides, at the high limit, to 5"
                         : "less leakage hides, nominal, to 5",
        (double)less / DRAWS, 0, 1 - LEVEL + SCATTER);
}

static void claim_all(const struct part *part, const struct errors *errors) {
  static struct bench bench;
  set_up(&bench, part, errors);
  claim_coverage(&bench);
  claim_verdict(&bench, AT_LOW);
  claim_verdict(&bench, AT_HIGH);
  claim_series(&bench, AT_LOW);
  claim_series(&bench, AT_NOMINAL);
  claim_leakage(&bench, AT_HIGH);
  claim_leakage(&bench, AT_NOMINAL);
  ohm_sensor_free(bench.sensor);
}

/* Where one rectangle is all there is, 95 in 100 of it is what is said: 0.95 a, not
 * 1.96 a / sqrt 3. */
static void claim_rectangle(void) {
  static const struct errors alone = {"meter alone", 2, 0, 0.5, 0, 0};
  static struct bench bench;
  set_up(&bench, &parts[1], &alone);
  const struct said *said = said_of(&bench, nearbyint(bench.nominal_ohm / bench.step_ohm));
  oc_reading reading = shown(said->r_ohm);
  double limit_ohm;
  must(oc_meter_limit(&bench.meter, &reading, &limit_ohm));
  claim(&bench, "interval over the limit, resistance, 95", said->expanded_r_ohm / limit_ohm,
        0.95 - 1e-9, 0.95 + 1e-9);
  claim(&bench, "interval over the limit, bath, 95", said->expanded_at_k / alone.limit_k,
        0.95 - 1e-9, 0.95 + 1e-9);
  ohm_sensor_free(bench.sensor);
}

/* ---- two temperatures ---- */

/* Two benches that differ in temperature alone, with one meter, one pair of leads and
 * one thermometer. */
struct two {
  struct bench bench[2];
  oc_meter meter;
  int count;
  struct {
    bool known;
    long counts[2];
    ohm_conformance p;
  } kept[KEPT_MAX]; /* by hash of both counts */
};

static ohm_conformance said_of_two(struct two *two, const long counts[2]) {
  size_t at = (size_t)(counts[0] * 1009 + counts[1]) % KEPT_MAX;
  while (two->kept[at].known &&
         (two->kept[at].counts[0] != counts[0] || two->kept[at].counts[1] != counts[1]))
    at = (at + 1) % KEPT_MAX;
  if (two->kept[at].known)
    return two->kept[at].p;
  if (two->count++ == KEPT_MAX - 1) {
    fprintf(stderr, "more pairs of readings than %d\n", KEPT_MAX);
    exit(2);
  }
  oc_reading readings[2];
  oc_reference references[2];
  ohm_finding findings[2];
  ohm_finding finding = finding_new();
  findings_begin(findings, 2);
  for (int i = 0; i < 2; i++) {
    readings[i] = shown((double)counts[i] * two->bench[i].step_ohm);
    readings[i].resolution_ohm = two->bench[i].step_ohm;
    references[i] = two->bench[i].reference;
  }
  must(oc_bath_check_several(two->bench[0].sensor, readings, references, 2, &two->meter,
                             &two->bench[0].check, findings, &finding));
  two->kept[at].known = true;
  two->kept[at].counts[0] = counts[0];
  two->kept[at].counts[1] = counts[1];
  two->kept[at].p = conformance(&finding);
  findings_free();
  return two->kept[at].p;
}

static ohm_conformance said_between_two(struct two *two, const double steps[2]) {
  long counts[2] = {(long)floor(steps[0]), (long)floor(steps[1])};
  ohm_conformance p[2];
  for (int i = 0; i < 2; i++) {
    const long here[2] = {counts[0] + i, counts[1]};
    const long beyond[2] = {counts[0] + i, counts[1] + 1};
    p[i] = conformance_between(said_of_two(two, here), said_of_two(two, beyond),
                               steps[1] - (double)counts[1]);
  }
  return conformance_between(p[0], p[1], steps[0] - (double)counts[0]);
}

/* The meter's percentage, the leads and the thermometer's limit are drawn once, the
 * counts and the thermometer's noise for each reading. */
static ohm_verdict draw_two(struct two *two, const enum where where[2]) {
  double gain = rectangular(two->meter.percent / 100);
  double lead_ohm = two->meter.lead_ohm + rectangular(two->meter.lead_limit_ohm);
  double thermometer_k = rectangular(two->bench[0].errors->limit_k);
  double steps[2];
  for (int i = 0; i < 2; i++) {
    const struct bench *bench = &two->bench[i];
    double t_c = bench->part->t_c - thermometer_k - normal(bench->errors->u_k);
    double own_ohm = rectangular(two->meter.counts * bench->step_ohm);
    double reading_ohm = (element_at(bench, where[i], t_c) + lead_ohm + own_ohm) / (1 - gain);
    steps[i] = reading_ohm / bench->step_ohm;
  }
  ohm_conformance p = said_between_two(two, steps);
  return verdict_by(&p);
}

static void claim_two(struct two *two, enum where first, enum where second, const char *what,
                      double most_within, double most_outside) {
  const enum where where[2] = {first, second};
  long within = 0;
  long outside = 0;
  for (int i = 0; i < DRAWS; i++) {
    ohm_verdict verdict = draw_two(two, where);
    within += verdict == OHM_WITHIN;
    outside += verdict == OHM_OUTSIDE;
  }
  char claimed[64];
  snprintf(claimed, sizeof claimed, "%s, called within, to %.0f", what, 100 * most_within);
  claim(&two->bench[1], claimed, (double)within / DRAWS, 0, most_within + SCATTER);
  snprintf(claimed, sizeof claimed, "%s, called outside, to %.0f", what, 100 * most_outside);
  claim(&two->bench[1], claimed, (double)outside / DRAWS, 0, most_outside + SCATTER);
}

/* A part on the same limit at both temperatures is called outside more often: it is so
 * when either reading may be low, and of two probabilities that are anywhere between 0
 * and 1 the chance that (1 - p) (1 - q) is at most 0.05 is 0.05 (1 + ln 20), 20 in 100.
 * The more the readings err alike the nearer it comes to 5. One that lies elsewhere in its
 * band hot than cold is not the part that several readings are taken to be of: the reading in
 * the middle speaks for it on the limit, too; out by half a half-band it is not called good. */
static void claim_pairs(void) {
  const double one = 1 - LEVEL;
  const double both = one * (1 - log(one));
  const struct {
    enum where cool, hot;
    const char *what;
    double most_within, most_outside;
  } lines[] = {{AT_LOW, AT_NOMINAL, "cool at its low limit", both, one},
               {AT_NOMINAL, AT_LOW, "hot at its low limit", both, one},
               {AT_HIGH, AT_NOMINAL, "cool at its high limit", both, one},
               {AT_NOMINAL, AT_HIGH, "hot at its high limit", both, one},
               {BELOW, AT_NOMINAL, "cool a quarter of the band too low", 0.01, 1},
               {AT_NOMINAL, BELOW, "hot a quarter of the band too low", 0.01, 1},
               {ABOVE, AT_NOMINAL, "cool a quarter of the band too high", 0.01, 1},
               {AT_NOMINAL, ABOVE, "hot a quarter of the band too high", 0.01, 1},
               {AT_LOW, AT_LOW, "both low limits", one, both},
               {AT_HIGH, AT_HIGH, "both high limits", one, both}};
  const size_t count = sizeof lines / sizeof lines[0];
  static const struct errors errors = {"two temperatures", 1, 0.1, 0.5, 0.05, 0};
  static struct two two;
  for (int i = 0; i < 2; i++) {
    set_up(&two.bench[i], &parts[1 + i], &errors);
    two.bench[i].step_ohm *= (double)STEPS / STEPS_OF_TWO;
  }
  two.meter = two.bench[1].meter;
  two.meter.resolution_ohm = 0;
  two.meter.counts = 3;
  for (size_t i = count - (size_t)share_of(count); i < count; i++)
    claim_two(&two, lines[i].cool, lines[i].hot, lines[i].what, lines[i].most_within,
              lines[i].most_outside);
  for (int i = 0; i < 2; i++)
    ohm_sensor_free(two.bench[i].sensor);
}

/* A share of it meets all parts and all errors alike. */
static void claim_each(void) {
  const size_t count = sizeof all_errors / sizeof all_errors[0];
  for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
    for (size_t j = 0; j < count; j++)
      if ((i + j) % count < (size_t)share_of(count))
        claim_all(&parts[i], &all_errors[j]);
}

int main(void) {
  claim_each();
  claim_all(&heated, &warm);
  claim_rectangle();
  claim_pairs();
  printf("%d draws a line; %d missed\n", DRAWS, failures);
  return failures > 0;
}
