/* SPDX-License-Identifier: MIT */
/*
 * Held against sums over a fine grid of all that is not known, with the densities of the
 * textbook, and against readings drawn by the errors that were declared.
 */
#include "../draw.h"
#include "../scene.h"

#include <stdlib.h>

#include "../../lib/model/likelihood.h"

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";
static const char untold[] = "# range: -40 to 150 C\n# model: beta\n"
                             "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

enum { MOST = 16, GRID = 300 };

static const double SCATTER = 0.005; /* of the header */
static const double METER_PERCENT = 1;
static const double LEAD_LIMIT_OHM = 4;
static const double LIMIT_K = 1.5;
static const double NOISE_K = 0.1;

/* ---- the bench ---- */

struct bench {
  size_t count;
  oc_reading readings[MOST + 1];
  oc_reference references[MOST + 1];
  oc_meter meter;
};

static double log_nominal(double t_c) {
  return log(2450) + 3500 * (1 / (t_c + 273.15) - 1 / 293.15);
}

/* Readings at off times nominal, by instruments with every kind of error. */
static struct bench bench_of(size_t count, const double *t_c, const double *off) {
  struct bench bench = {.count = count, .meter = OC_METER_INIT};
  bench.meter.accuracy = OC_STATED;
  bench.meter.percent = METER_PERCENT;
  bench.meter.resolution_ohm = 1e-6;
  bench.meter.leads = OC_STATED;
  bench.meter.lead_limit_ohm = LEAD_LIMIT_OHM;
  for (size_t i = 0; i < count; i++) {
    struct scene scene = scene_exact(off[i] * exp(log_nominal(t_c[i])), t_c[i]);
    scene.reference.accuracy = OC_STATED;
    scene.reference.limit_k = LIMIT_K;
    scene.reference.u_k = NOISE_K;
    bench.readings[i] = scene.reading;
    bench.references[i] = scene.reference;
  }
  return bench;
}

static struct oc_evidence gathered(const ohm_sensor *sensor, const struct bench *bench) {
  struct oc_evidence evidence;
  ck_assert_int_eq(oc_evidence_gather(&evidence, sensor, bench->readings, bench->references,
                                      bench->count, &bench->meter, NULL),
                   OHM_OK);
  return evidence;
}

/* ---- the slow way, for one reading and for two ---- */

/* One of the readings at one case of what is not known. */
struct row {
  double off; /* what was read less what is expected, logarithms */
  double u_meter;
  double u_leads;
  double u_own;
};

static struct row row_at(const struct bench *bench, size_t i, double error, double band) {
  double t_c = bench->references[i].t_c;
  double r_ohm = bench->readings[i].r_ohm;
  double alpha_per_k = 3500 / pow(t_c + 273.15, 2);
  return (struct row){log(r_ohm) - log_nominal(t_c + error * LIMIT_K) - band,
                      METER_PERCENT / 100 / sqrt(3), LEAD_LIMIT_OHM / sqrt(3) / r_ohm,
                      hypot(SCATTER, alpha_per_k * NOISE_K)};
}

/* Density of the first reading, density and probability below of the second given the
 * first, summed over the grid. Of one reading alone the second is left out. */
struct slow {
  double density;
  double below_first;
  double density_of_first;
  double below_second;
};

static double below(double x) {
  return erfc(-x / sqrt(2)) / 2;
}

static double bell(double x) {
  return exp(-x * x / 2) / sqrt(2 * acos(-1));
}

static void add_row(struct slow *slow, const struct bench *bench, double error, double band,
                    double weight) {
  struct row a = row_at(bench, 0, error, band);
  double u_a = hypot(hypot(a.u_meter, a.u_leads), a.u_own);
  double first = weight * bell(a.off / u_a) / u_a;
  slow->below_first += weight * below(a.off / u_a);
  slow->density_of_first += first;
  slow->density += bench->count == 1 ? first : 0;
  if (bench->count == 1)
    return;
  struct row b = row_at(bench, 1, error, band);
  double u_b = hypot(hypot(b.u_meter, b.u_leads), b.u_own);
  double common = a.u_meter * b.u_meter + a.u_leads * b.u_leads;
  double left = b.off - common / (u_a * u_a) * a.off;
  double u_left = sqrt(u_b * u_b - common * common / (u_a * u_a));
  slow->density += first * bell(left / u_left) / u_left;
  slow->below_second += first * below(left / u_left);
}

static struct slow slowly(const struct bench *bench) {
  struct slow slow = {0};
  for (int i = 0; i < GRID; i++)
    for (int j = 0; j < GRID; j++) {
      double error = 2 * (i + 0.5) / GRID - 1;
      double place = (j + 0.5) / GRID;
      double weight = 0.5 / GRID / GRID;
      add_row(&slow, bench, error, place * log(1.05), weight);
      add_row(&slow, bench, error, place * log(0.95), weight);
    }
  return slow;
}

static double square_of_score(double probability) {
  double low = -9;
  double high = 9;
  for (int i = 0; i < 60; i++) {
    double middle = (low + high) / 2;
    if (below(middle) < probability)
      low = middle;
    else
      high = middle;
  }
  return low * low;
}

static const double t_c[] = {20, 80};
static const double offs[][2] = {{1, 1},       {1.03, 0.98}, {0.95, 0.95}, {1.08, 1.09},
                                 {0.93, 1.06}, {1.12, 1},    {0.8, 0.82}};

/* The coarser the grid beside the slope of the density, the further out the worse. */
static void check_sum(const struct oc_evidence *evidence, const struct bench *bench, double tol) {
  double want = log(slowly(bench).density);
  CHECK_NEAR(oc_evidence_log_likelihood(evidence, NULL), want, tol + 3e-4 * fabs(want));
}

START_TEST(the_likelihood_of_one_reading_is_the_sum_over_the_grid)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof offs / sizeof offs[0]; i++) {
    struct bench bench = bench_of(1, t_c, offs[i]);
    struct oc_evidence evidence = gathered(sensor, &bench);
    check_sum(&evidence, &bench, 2e-3);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_likelihood_of_two_readings_is_the_sum_over_the_grid)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof offs / sizeof offs[0]; i++) {
    struct bench bench = bench_of(2, t_c, offs[i]);
    struct oc_evidence evidence = gathered(sensor, &bench);
    check_sum(&evidence, &bench, 5e-3);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Chi-square of one degree is two-sided, of two exp(-chi-square / 2). */
START_TEST(the_fit_is_the_probability_by_the_grid)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof offs / sizeof offs[0]; i++) {
    struct bench one = bench_of(1, t_c, offs[i]);
    struct slow slow = slowly(&one);
    struct oc_evidence evidence = gathered(sensor, &one);
    CHECK_NEAR(oc_evidence_fit(&evidence), 2 * fmin(slow.below_first, 1 - slow.below_first), 1e-3);
    struct bench two = bench_of(2, t_c, offs[i]);
    slow = slowly(&two);
    evidence = gathered(sensor, &two);
    double chi_square = square_of_score(slow.below_first) +
                        square_of_score(slow.below_second / slow.density_of_first);
    CHECK_NEAR(oc_evidence_fit(&evidence), exp(-chi_square / 2), 2e-3);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- drawn readings ---- */

static uint64_t state;

static double share(void) {
  return draw_share(&state);
}

static double normal(void) {
  return draw_normal(&state, 1);
}

/* Each error drawn as the head of the room says: once for all readings, or for each. */
static struct bench drawn(size_t count, const double *at_c) {
  double off[MOST];
  double meter = METER_PERCENT / 100 / sqrt(3) * normal();
  double lead_ohm = LEAD_LIMIT_OHM / sqrt(3) * normal();
  double error_k = LIMIT_K * (2 * share() - 1);
  double band = share() * (share() < 0.5 ? log(1.05) : log(0.95));
  for (size_t i = 0; i < count; i++) {
    double noise_k = NOISE_K * normal();
    double log_ohm = log_nominal(at_c[i] + error_k + noise_k) + band + SCATTER * normal();
    double r_ohm = exp(log_ohm + meter);
    off[i] = (r_ohm + lead_ohm) / exp(log_nominal(at_c[i]));
  }
  return bench_of(count, at_c, off);
}

static int by_size(const void *a, const void *b) {
  double x = *(const double *)a;
  double y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Kolmogorov's distance to the uniform distribution, times the root of the count: above
 * 1.95 once in 1000. */
static double distance(double *p, size_t count) {
  double most = 0;
  qsort(p, count, sizeof *p, by_size);
  for (size_t i = 0; i < count; i++)
    most =
        fmax(most, fmax(p[i] - (double)i / (double)count, (double)(i + 1) / (double)count - p[i]));
  return most * sqrt((double)count);
}

START_TEST(the_fit_of_a_good_sensor_is_uniform)
{
  enum { DRAWS = 600 };
  static const double at_c[] = {20, 50, 80, 21, 90};
  static double p[DRAWS];
  ohm_sensor *sensor = sensor_of(flat);
  state = 20260912;
  for (size_t count = 1; count <= 5; count += 2) {
    for (size_t i = 0; i < DRAWS; i++) {
      struct bench bench = drawn(count, at_c);
      struct oc_evidence evidence = gathered(sensor, &bench);
      p[i] = oc_evidence_fit(&evidence);
    }
    ck_assert_msg(distance(p, DRAWS) < 1.95, "%zu readings: %g", count, distance(p, DRAWS));
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- with a fault ---- */

START_TEST(drift_is_as_the_readings_moved_back)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double moved[] = {1.05 * 1.01, 1.05 * 0.99};
  static const double back[] = {1.01, 0.99};
  struct bench bench = bench_of(2, t_c, moved);
  struct bench as_before = bench_of(2, t_c, back);
  /* As many ohms of the leads are less of the greater reading. */
  bench.meter.lead_limit_ohm = as_before.meter.lead_limit_ohm = 0;
  struct oc_evidence evidence = gathered(sensor, &bench);
  struct oc_evidence sound = gathered(sensor, &as_before);
  struct oc_fault drift = {OC_FAULT_DRIFT, log(1.05)};
  CHECK_NEAR(oc_evidence_log_likelihood(&evidence, &drift),
             oc_evidence_log_likelihood(&sound, NULL), 1e-9);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_true_size_of_a_fault_is_likelier_than_none)
{
  static const struct oc_fault faults[] = {{OC_FAULT_SERIES, 100},
                                           {OC_FAULT_LEAKAGE, 3e-4},
                                           {OC_FAULT_DRIFT, 0.2},
                                           {OC_FAULT_BETA, 400}};
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
    double off[2];
    for (int j = 0; j < 2; j++)
      off[j] = exp(oc_fault_log(&faults[i], log_nominal(t_c[j]), t_c[j]) - log_nominal(t_c[j]));
    struct bench bench = bench_of(2, t_c, off);
    struct oc_evidence evidence = gathered(sensor, &bench);
    ck_assert(oc_evidence_log_likelihood(&evidence, &faults[i]) >
              oc_evidence_log_likelihood(&evidence, NULL) + 3);
    ck_assert(oc_evidence_chi_square(&evidence, &faults[i]) < 0.1);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_fault_that_leaves_no_resistance_is_impossible)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct bench bench = bench_of(2, t_c, offs[0]);
  struct oc_evidence evidence = gathered(sensor, &bench);
  const struct oc_fault bad[] = {{OC_FAULT_SERIES, -1e4}, {OC_FAULT_LEAKAGE, -1}};
  for (int i = 0; i < 2; i++) {
    ck_assert(oc_evidence_log_likelihood(&evidence, &bad[i]) == -INFINITY);
    ck_assert(oc_evidence_chi_square(&evidence, &bad[i]) == INFINITY);
    ck_assert(isnan(oc_evidence_forecast(&evidence, &bad[i], 0).log_ohm));
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- every cause as normal ---- */

/* Variance and middle of one reading: errors, thermometer, and a place in the band that is
 * uniform over each half with even chances. */
static double variance_of(const struct bench *bench, double *middle) {
  struct row row = row_at(bench, 0, 0, 0);
  double swing = (row_at(bench, 0, -1, 0).off - row_at(bench, 0, 1, 0).off) / 2;
  double up = log(1.05);
  double down = log(0.95);
  *middle = (up + down) / 4;
  return row.u_meter * row.u_meter + row.u_leads * row.u_leads + row.u_own * row.u_own +
         swing * swing / 3 + (up * up + down * down) / 6 - *middle * *middle;
}

START_TEST(chi_square_of_one_reading_is_by_hand)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const struct oc_fault none = {OC_FAULT_DRIFT, 0};
  for (size_t i = 0; i < sizeof offs / sizeof offs[0]; i++) {
    struct bench bench = bench_of(1, t_c, offs[i]);
    struct oc_evidence evidence = gathered(sensor, &bench);
    double middle;
    double variance = variance_of(&bench, &middle);
    double off = log(offs[i][0]) - middle;
    CHECK_NEAR(oc_evidence_chi_square(&evidence, &none), off * off / variance, 1e-6);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_reading_is_foretold_by_those_before_it)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double same_c[] = {20, 20};
  static const double off[] = {1.04, 1};
  struct bench alone = bench_of(1, t_c, off);
  struct bench twice = bench_of(2, same_c, off);
  struct oc_evidence evidence = gathered(sensor, &alone);
  struct oc_forecast first = oc_evidence_forecast(&evidence, NULL, 0);
  double middle;
  CHECK_NEAR(first.u, sqrt(variance_of(&alone, &middle)), 1e-6);
  CHECK_NEAR(first.log_ohm, log_nominal(20) + middle, 1e-9);
  evidence = gathered(sensor, &twice);
  struct oc_forecast second = oc_evidence_forecast(&evidence, NULL, 0);
  ck_assert(second.u < first.u / 3);
  CHECK_NEAR(second.log_ohm, log_nominal(20) + log(1.04), 0.002);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_size_that_is_not_known_widens_what_is_foretold)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct bench bench = bench_of(1, t_c, offs[0]);
  struct oc_evidence evidence = gathered(sensor, &bench);
  struct oc_fault drift = {OC_FAULT_DRIFT, 0};
  double known = oc_evidence_forecast(&evidence, &drift, 0).u;
  double open = oc_evidence_forecast(&evidence, &drift, 0.1).u;
  CHECK_NEAR(open, hypot(known, 0.1), 1e-6);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- gathering ---- */

START_TEST(readings_without_a_number_are_left_out)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct bench bench = bench_of(2, t_c, offs[0]);
  bench.readings[0].display = OC_DISPLAY_OVER;
  CHECK_NEAR((double)gathered(sensor, &bench).count, 1, 0);
  bench.readings[1].r_ohm = 0;
  CHECK_NEAR((double)gathered(sensor, &bench).count, 0, 0);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_curve_covers_what_it_reaches)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double beyond_c[] = {20, 190};
  struct bench inside = bench_of(2, t_c, offs[0]);
  struct bench outside = bench_of(2, beyond_c, offs[0]);
  ck_assert(gathered(sensor, &inside).covered);
  ck_assert(!gathered(sensor, &outside).covered);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(without_a_tolerance_5_percent_are_taken)
{
  ohm_sensor *told = sensor_of(flat);
  ohm_sensor *not_told = sensor_of(untold);
  struct bench bench = bench_of(2, t_c, offs[1]);
  struct oc_evidence a = gathered(told, &bench);
  struct oc_evidence b = gathered(not_told, &bench);
  ck_assert(a.toleranced && !b.toleranced);
  CHECK_NEAR(oc_evidence_log_likelihood(&a, NULL), oc_evidence_log_likelihood(&b, NULL), 0);
  ohm_sensor_free(told);
  ohm_sensor_free(not_told);
}
END_TEST

/* Limits are printed for 25 C alone: elsewhere nothing says. */
START_TEST(limits_are_not_continued_beyond_their_rows)
{
  static const char one_row[] = "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n0,,5790,\n"
                                "25,1980,2000,2020\n80,,322,\n";
  static const double at_c[] = {25, 80};
  ohm_sensor *sensor = sensor_of(one_row);
  struct bench bench = bench_of(2, at_c, offs[0]);
  struct oc_evidence evidence = gathered(sensor, &bench);
  CHECK_NEAR(evidence.readings[0].up, log(1.01), 1e-9);
  CHECK_NEAR(evidence.readings[1].up, log(1.05), 1e-9);
  CHECK_NEAR(evidence.readings[1].down, log(0.95), 1e-9);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(exact_instruments_leave_the_scatter_and_the_band)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct bench bench = bench_of(2, t_c, offs[0]);
  bench.meter.accuracy = bench.meter.leads = OC_EXACT;
  bench.references[0].accuracy = bench.references[1].accuracy = OC_EXACT;
  struct oc_evidence evidence = gathered(sensor, &bench);
  ck_assert_uint_eq(evidence.nodes, 1);
  CHECK_NEAR(evidence.readings[1].u_own, SCATTER, 1e-15);
  CHECK_NEAR(evidence.readings[1].u_meter + evidence.readings[1].u_leads, 0, 0);
  ck_assert(oc_evidence_fit(&evidence) > 0.2);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(sixteen_readings_are_weighed)
{
  ohm_sensor *sensor = sensor_of(flat);
  double at_c[MOST];
  double off[MOST];
  for (int i = 0; i < MOST; i++) {
    at_c[i] = 5 * i;
    off[i] = 1.02;
  }
  struct bench bench = bench_of(MOST, at_c, off);
  struct oc_evidence evidence = gathered(sensor, &bench);
  ck_assert(isfinite(oc_evidence_log_likelihood(&evidence, NULL)));
  ck_assert(oc_evidence_fit(&evidence) > 0.5);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_bad_reading_is_refused)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    struct bench bench = bench_of(2, t_c, offs[0]);
    struct oc_evidence evidence;
    bench.readings[1].r_ohm = bad[i];
    ck_assert_int_eq(oc_evidence_gather(&evidence, sensor, bench.readings, bench.references, 2,
                                        &bench.meter, NULL),
                     OHM_BAD_ARGUMENT);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int sums = RUN_TESTS("likelihood by sums", the_likelihood_of_one_reading_is_the_sum_over_the_grid,
                       the_likelihood_of_two_readings_is_the_sum_over_the_grid,
                       the_fit_is_the_probability_by_the_grid, the_fit_of_a_good_sensor_is_uniform);
  int rest = RUN_TESTS(
      "likelihood", drift_is_as_the_readings_moved_back,
      the_true_size_of_a_fault_is_likelier_than_none,
      a_fault_that_leaves_no_resistance_is_impossible, chi_square_of_one_reading_is_by_hand,
      a_reading_is_foretold_by_those_before_it, a_size_that_is_not_known_widens_what_is_foretold,
      readings_without_a_number_are_left_out, a_curve_covers_what_it_reaches,
      without_a_tolerance_5_percent_are_taken, limits_are_not_continued_beyond_their_rows,
      exact_instruments_leave_the_scatter_and_the_band, sixteen_readings_are_weighed,
      a_bad_reading_is_refused);
  return sums | rest;
}
