/* SPDX-License-Identifier: MIT */
/*
 * How often an identification is right. A sensor is drawn out of the catalogue, a part of
 * it somewhere in its band, and readings of it by meter, leads and thermometers that err as
 * was declared. Held against the truth: of the sensors said to be so probable as many are
 * the one; a good one's p_fit is uniform; the one leads as often as the level leaves open;
 * of sensors left out of the catalogue it is said that none of these is it, as far as none
 * of those left is electrically near.
 */
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/identify.h"
#include "../share.h"

enum { SENSORS_MAX = 64, READINGS_MAX = 3, DRAWS = 2000, LEFT_OUT_DRAWS = 40, BINS = 10 };

static int failures;
static ohm_sensor *catalogue[SENSORS_MAX];
static size_t catalogue_count;

/* ---- drawing ---- */

static uint64_t state = 20260912;

static double rectangular(double limit) {
  return draw_rectangular(&state, limit);
}

/* ---- one bench ---- */

/* What a person measures: at which temperatures, with what. */
struct set_up {
  const char *name;
  size_t count;
  double t_c[READINGS_MAX];
  double percent; /* of the meter */
  double lead_limit_ohm;
  double limit_k; /* of the thermometer, the same in all readings */
};

static const struct set_up set_ups[] = {
    {"20 C, thermometer 2 C", 1, {20}, 1, 0.2, 2},
    {"80 C, thermometer 2 C", 1, {80}, 1, 0.2, 2},
    {"20 and 80 C, thermometer 2 C", 2, {20, 80}, 1, 0.2, 2},
    {"20 and 80 C, thermometer 0.5 C", 2, {20, 80}, 0.5, 0.1, 0.5},
    {"20, 50 and 80 C, thermometer 1 C", 3, {20, 50, 80}, 0.8, 0.2, 1},
};

struct bench {
  const struct set_up *set_up;
  oc_meter meter;
  oc_reading readings[READINGS_MAX];
  oc_reference references[READINGS_MAX];
};

struct answer {
  size_t count;
  ohm_finding candidates[SENSORS_MAX];
  ohm_finding finding;
};

static double number(const ohm_finding *finding, int field) {
  return ohm_finding_number(finding, field);
}

static bool reaches(const ohm_sensor *sensor, const struct set_up *set_up) {
  double low_c, high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  for (size_t i = 0; i < set_up->count; i++)
    if (!(low_c <= set_up->t_c[i] - set_up->limit_k && set_up->t_c[i] + set_up->limit_k <= high_c))
      return false;
  return true;
}

/* Its resistance at a place in its band, -1 to 1; 5 % where nothing is printed. The band of
 * the temperature that is shown, as the header has it. */
static double part_ohm(const ohm_sensor *sensor, double place, double shown_c, double t_c) {
  double low_ohm, nominal_ohm, high_ohm, r_ohm;
  ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm);
  ohm_curve_resistance(ohm_sensor_curve(sensor), shown_c, &nominal_ohm);
  if (ohm_sensor_band(sensor, shown_c, &low_ohm, NULL, &high_ohm) != OHM_OK) {
    low_ohm = nominal_ohm * (1 - OC_ASSUMED_TOLERANCE_PERCENT / 100);
    high_ohm = nominal_ohm * (1 + OC_ASSUMED_TOLERANCE_PERCENT / 100);
  }
  double end_ohm = place < 0 ? low_ohm : high_ohm;
  return r_ohm * pow(end_ohm / nominal_ohm, fabs(place));
}

static void draw(struct bench *bench, const ohm_sensor *sensor, const struct set_up *set_up) {
  static const oc_meter meter = OC_METER_INIT;
  static const oc_reading reading = OC_READING_INIT;
  static const oc_reference reference = OC_REFERENCE_INIT;
  double place = rectangular(1);
  double gain = rectangular(set_up->percent / 100);
  double lead_ohm = rectangular(set_up->lead_limit_ohm);
  double error_k = rectangular(set_up->limit_k);
  bench->set_up = set_up;
  bench->meter = meter;
  bench->meter.accuracy = OC_STATED;
  bench->meter.percent = set_up->percent;
  bench->meter.leads = OC_STATED;
  bench->meter.lead_limit_ohm = set_up->lead_limit_ohm;
  bench->meter.current_ma = 1e-3; /* warms nothing */
  for (size_t i = 0; i < set_up->count; i++) {
    double r_ohm = part_ohm(sensor, place, set_up->t_c[i], set_up->t_c[i] + error_k);
    bench->readings[i] = reading;
    bench->readings[i].r_ohm = (r_ohm * exp(draw_normal(&state, 0.005)) + lead_ohm) / (1 - gain);
    bench->readings[i].resolution_ohm = 1e-3;
    bench->references[i] = reference;
    bench->references[i].t_c = set_up->t_c[i];
    bench->references[i].accuracy = OC_STATED;
    bench->references[i].limit_k = set_up->limit_k;
  }
}

static void identify(const struct bench *bench, const ohm_sensor *const *sensors, size_t count,
                     struct answer *answer) {
  findings_free(); /* those of the answer before */
  answer->count = count;
  answer->finding = finding_new();
  findings_begin(answer->candidates, count);
  ohm_status status =
      oc_identify(sensors, count, bench->readings, bench->references, bench->set_up->count,
                  &bench->meter, NULL, answer->candidates, &answer->finding);
  if (status == OHM_OK)
    return;
  fprintf(stderr, "%s\n", ohm_status_text((int)status));
  exit(2);
}

/* ---- what is claimed ---- */

/* Within four standard deviations of a count of so many draws. */
static void claim(const char *where, const char *what, double share_right, double claimed,
                  double draws, double variance) {
  double scatter = 4 * sqrt(fmax(variance, claimed * (1 - claimed) / draws / 100) / draws);
  bool good = fabs(share_right - claimed) <= scatter + 1e-12;
  failures += !good;
  printf("%-6s %-33s %-32s %5.1f of %5.1f +- %.1f %%\n", good ? "ok" : "MISSED", where, what,
         100 * share_right, 100 * claimed, 100 * scatter);
}

/* Pairs of sensor and reading, by the probability claimed. */
struct bins {
  double claimed[BINS];
  double right[BINS];
  double variance[BINS];
  double count[BINS];
};

static void count_candidates(struct bins *bins, const struct answer *answer, size_t truth) {
  for (size_t i = 0; i < answer->count; i++) {
    double p = number(&answer->candidates[i], OHM_FIELD_P_SENSOR);
    if (isnan(p) || p < 1e-6)
      continue;
    int bin = (int)fmin(p * BINS, BINS - 1);
    bins->claimed[bin] += p;
    bins->variance[bin] += p * (1 - p);
    bins->count[bin]++;
    bins->right[bin] += number(&answer->candidates[i], OHM_FIELD_SENSOR_INDEX) == (double)truth;
  }
}

/* How surprising the truth was by what was claimed, less what was to be expected of it:
 * in units of its standard deviation one number for all sensors and draws. */
struct surprise {
  double sum;
  double variance;
};

static void count_surprise(struct surprise *surprise, const struct answer *answer, size_t truth) {
  double mean = 0;
  double square = 0;
  double here = 0;
  for (size_t i = 0; i < answer->count; i++) {
    double p = number(&answer->candidates[i], OHM_FIELD_P_SENSOR);
    double bits = p > 0 ? -log2(p) : 0;
    mean += p > 0 ? p * bits : 0;
    square += p > 0 ? p * bits * bits : 0;
    if (number(&answer->candidates[i], OHM_FIELD_SENSOR_INDEX) == (double)truth)
      here = p > 0 ? bits : INFINITY;
  }
  surprise->sum += here - mean;
  surprise->variance += square - mean * mean;
}

static void claim_surprise(const struct surprise *surprise, const char *where) {
  double score = surprise->sum / sqrt(surprise->variance);
  bool good = fabs(score) <= 3;
  failures += !good;
  printf("%-6s %-33s %-32s %5.2f, up to 3\n", good ? "ok" : "MISSED", where,
         "the truth surprises as claimed", score);
}

static void claim_bins(const struct bins *bins, const char *where) {
  for (int i = 0; i < BINS; i++) {
    char what[64];
    double n = bins->count[i];
    if (n < 30)
      continue;
    snprintf(what, sizeof what, "is it, claimed %d to %d in 100", 100 / BINS * i,
             100 / BINS * (i + 1));
    claim(where, what, bins->right[i] / n, bins->claimed[i] / n, n, bins->variance[i] / n);
  }
}

static int by_size(const void *a, const void *b) {
  double x = *(const double *)a;
  double y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Kolmogorov's distance to the uniform distribution; 1.95 is exceeded once in 1000. */
static void claim_uniform(double *p, size_t count, const char *where) {
  double most = 0;
  qsort(p, count, sizeof *p, by_size);
  for (size_t i = 0; i < count; i++)
    most =
        fmax(most, fmax(p[i] - (double)i / (double)count, (double)(i + 1) / (double)count - p[i]));
  double distance = most * sqrt((double)count);
  bool good = distance < 1.95;
  failures += !good;
  printf("%-6s %-33s %-32s %5.2f, up to 1.95\n", good ? "ok" : "MISSED", where,
         "p_fit of the one is uniform", distance);
}

/* ---- confusions ---- */

static double said[SENSORS_MAX][SENSORS_MAX + 1]; /* the truth, and the first that leads */
static double drawn[SENSORS_MAX];

static void count_confusion(const struct answer *answer, size_t truth) {
  const char *name = ohm_finding_text(&answer->finding, OHM_FIELD_SENSOR, 0);
  size_t first = SENSORS_MAX;
  for (size_t i = 0; name && i < catalogue_count; i++)
    if (strcmp(name, ohm_sensor_name(catalogue[i])) == 0)
      first = i;
  said[truth][first]++;
  drawn[truth]++;
}

static void print_confusions(void) {
  printf("\nOf 100 readings of each, what came first, all set-ups together (5 and more):\n");
  for (size_t i = 0; i < catalogue_count; i++) {
    if (drawn[i] == 0)
      continue;
    printf("%-22s %3.0f", ohm_sensor_name(catalogue[i]), 100 * said[i][i] / drawn[i]);
    for (size_t j = 0; j < catalogue_count; j++)
      if (j != i && said[i][j] >= 0.05 * drawn[i])
        printf(", %s %.0f", ohm_sensor_name(catalogue[j]), 100 * said[i][j] / drawn[i]);
    if (said[i][SENSORS_MAX] >= 0.05 * drawn[i])
      printf(", none %.0f", 100 * said[i][SENSORS_MAX] / drawn[i]);
    putchar('\n');
  }
}

/* ---- the whole catalogue ---- */

static void claim_set_up(const struct set_up *set_up) {
  static struct answer answer;
  static double p_fit[DRAWS];
  struct bins bins;
  memset(&bins, 0, sizeof bins);
  struct surprise surprise = {0, 0};
  double leads = 0;
  size_t count = 0;
  const ohm_sensor *sensors[SENSORS_MAX];
  size_t reaching = 0;
  size_t place[SENSORS_MAX];
  for (size_t i = 0; i < catalogue_count; i++)
    if (reaches(catalogue[i], set_up)) {
      place[reaching] = i;
      sensors[reaching++] = catalogue[i];
    }
  for (; count < (size_t)share_of(DRAWS); count++) {
    struct bench bench;
    size_t truth = draw_below(&state, reaching);
    draw(&bench, sensors[truth], set_up);
    identify(&bench, sensors, reaching, &answer);
    count_candidates(&bins, &answer, truth);
    count_surprise(&surprise, &answer, truth);
    count_confusion(&answer, place[truth]);
    for (size_t i = 0; i < reaching; i++)
      if (number(&answer.candidates[i], OHM_FIELD_SENSOR_INDEX) == (double)truth) {
        p_fit[count] = number(&answer.candidates[i], OHM_FIELD_P_FIT);
        leads += number(&answer.candidates[i], OHM_FIELD_LEADING);
      }
  }
  claim_bins(&bins, set_up->name);
  claim_surprise(&surprise, set_up->name);
  claim_uniform(p_fit, count, set_up->name);
  printf("       %-33s the one is among those that lead %5.1f %%, of %zu sensors\n", set_up->name,
         100 * leads / (double)count, reaching);
}

/* ---- left out of the catalogue ---- */

/* Whether a part of one sensor may as well be one of another: at every temperature their
 * bands meet, widened by what the instruments leave open. */
static bool is_near(const ohm_sensor *a, const ohm_sensor *b, const struct set_up *set_up) {
  for (size_t i = 0; i < set_up->count; i++) {
    double t_c = set_up->t_c[i];
    double alpha_per_k;
    if (ohm_curve_alpha(ohm_sensor_curve(a), t_c, &alpha_per_k) != OHM_OK)
      return false;
    double slack = 2 * set_up->percent / 100 + 0.02 + 2 * fabs(alpha_per_k) * set_up->limit_k;
    if (part_ohm(a, -1, t_c, t_c) > part_ohm(b, 1, t_c, t_c) * (1 + slack) ||
        part_ohm(b, -1, t_c, t_c) > part_ohm(a, 1, t_c, t_c) * (1 + slack))
      return false;
  }
  return true;
}

static void leave_out(size_t truth, const struct set_up *set_up, double *none, double *alone,
                      double *near_one) {
  static struct answer answer;
  const ohm_sensor *sensors[SENSORS_MAX];
  size_t count = 0;
  bool near = false;
  for (size_t i = 0; i < catalogue_count; i++)
    if (i != truth && reaches(catalogue[i], set_up)) {
      sensors[count++] = catalogue[i];
      near = near || is_near(catalogue[truth], catalogue[i], set_up);
    }
  for (int i = 0; i < share_of(LEFT_OUT_DRAWS); i++) {
    struct bench bench;
    draw(&bench, catalogue[truth], set_up);
    identify(&bench, sensors, count, &answer);
    bool said_none = strcmp(ohm_finding_text(&answer.finding, OHM_FIELD_REASON, 0), "none") == 0;
    *(near ? near_one : alone) += 1;
    none[near] += said_none;
  }
}

static void claim_none(const struct set_up *set_up) {
  double none[2] = {0, 0};
  double alone = 0;
  double near_one = 0;
  for (size_t i = 0; i < catalogue_count; i++)
    if (reaches(catalogue[i], set_up))
      leave_out(i, set_up, none, &alone, &near_one);
  bool good = alone == 0 || none[0] / alone >= 0.99 - share_scatter(0.99, alone);
  failures += !good;
  if (alone > 0)
    printf("%-6s %-33s left out, none near: none %5.1f %% of %.0f, from 99\n",
           good ? "ok" : "MISSED", set_up->name, 100 * none[0] / alone, alone);
  if (near_one > 0)
    printf("       %-33s left out, one near: none %5.1f %% of %.0f, else that one\n", set_up->name,
           100 * none[1] / near_one, near_one);
}

int main(void) {
  catalogue_count = ohm_sensor_built_in_count();
  for (size_t i = 0; i < catalogue_count; i++)
    if (!(catalogue[i] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL)))
      return 2;
  size_t count = sizeof set_ups / sizeof set_ups[0];
  for (size_t i = 0; i < count; i++)
    claim_set_up(&set_ups[i]);
  print_confusions();
  putchar('\n');
  for (size_t i = 0; i < count; i++)
    claim_none(&set_ups[i]);
  printf("%d draws a set-up; %d missed\n", share_of(DRAWS), failures);
  for (size_t i = 0; i < catalogue_count; i++)
    ohm_sensor_free(catalogue[i]);
  return failures > 0;
}
