/* SPDX-License-Identifier: MIT */
#include "../../lib/curves/curve.h"

#include <float.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../curves.h"

/* ---- building ---- */

static ohm_curve *built(ohm_curve *curve, const ohm_error *error) {
  if (!curve)
    ck_abort_msg("%s", error->message);
  ck_assert_int_eq(error->status, OHM_OK);
  return curve;
}

enum { STEP = sizeof(double) };

static ohm_curve *beta(double r0_ohm, double t0_c, double beta_k, double low_c, double high_c) {
  ohm_error error;
  return built(ohm_curve_beta_new(r0_ohm, t0_c, beta_k, low_c, high_c, &error), &error);
}

static ohm_curve *steinhart_hart(double a, double b, double c, double low_c, double high_c) {
  ohm_error error;
  return built(ohm_curve_steinhart_hart_new(a, b, c, low_c, high_c, &error), &error);
}

static ohm_curve *points(const double *t_c, const double *r_ohm, size_t count) {
  ohm_error error;
  return built(ohm_curve_points_new(t_c, r_ohm, count, &error), &error);
}

/* ---- the curves that every property is held against ---- */

static const double c_small[] = {1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12, 1e-13, 1e-14, 1e-16, 0};
enum { C_COUNT = sizeof c_small / sizeof c_small[0], BETAS = 4, TABLES = 4, MANY = 4096 };
enum { CURVES = BETAS + C_COUNT + TABLES };

/* Constants of the form a thermistor data sheet prints; C is varied. */
static const double A = 1.129241e-3;
static const double B = 2.341077e-4;

static ohm_curve *many_points(void) {
  static double t_c[MANY];
  static double r_ohm[MANY];
  for (int i = 0; i < MANY; i++) {
    t_c[i] = -80 + 0.1 * i;
    r_ohm[i] = 1e4 * exp(3500 / (t_c[i] + 273.15) - 3500 / 298.15 + 1e-3 * sin(0.05 * i));
  }
  return points(t_c, r_ohm, MANY);
}

static const double even_c[] = {-40, -20, 0, 20, 40, 60, 80, 100};
static const double even_ohm[] = {45000, 15040, 5790, 2450, 1150, 584, 318, 184};

static ohm_curve *table(int which) {
  static const double uneven_c[] = {-40, -39, 0, 1, 90, 150};
  static const double uneven_ohm[] = {1e6, 9.3e5, 5e4, 4.9e4, 900, 20};
  static const double abrupt_ohm[] = {1e6, 999999, 1000, 999, 998.5, 1e-2, 0.00999, 1e-6};
  if (which == 0)
    return points(even_c, even_ohm, 8);
  if (which == 1)
    return points(uneven_c, uneven_ohm, 6);
  if (which == 2)
    return points(even_c, abrupt_ohm, 8);
  return many_points();
}

static ohm_curve *curve_number(int i) {
  static const double betas[BETAS][5] = {{10000, 25, 3950, -55, 300},
                                         {37300, 20, 4100, -40, 150},
                                         {1e-3, 500, 100, -200, 1000},
                                         {1e9, 20, 100000, 0, 100}};
  if (i < BETAS)
    return beta(betas[i][0], betas[i][1], betas[i][2], betas[i][3], betas[i][4]);
  i -= BETAS;
  return i < C_COUNT ? steinhart_hart(A, B, c_small[i], -60, 200) : table(i - C_COUNT);
}

/* One of the curves above, or that of a model file or of a built-in sensor. */
struct subject {
  const ohm_curve *curve;
  ohm_curve *own;
  ohm_sensor *sensor;
};

static struct subject subject_number(int i) {
  struct subject subject = {NULL, NULL, NULL};
  if (i < CURVES) {
    subject.curve = subject.own = curve_number(i);
    return subject;
  }
  i -= CURVES;
  subject.sensor =
      i < MODEL_FILES
          ? sensor_without_notes(model_files[i])
          : ohm_sensor_built_in_load(ohm_sensor_built_in_name((size_t)(i - MODEL_FILES)), NULL);
  ck_assert_ptr_nonnull(subject.sensor);
  subject.curve = ohm_sensor_curve(subject.sensor);
  return subject;
}

static void subject_free(struct subject *subject) {
  ohm_curve_free(subject->own);
  ohm_sensor_free(subject->sensor);
}

enum { GRID = 2000 };

static double grid_c(const struct range *range, int i) {
  return i == GRID ? range->high_c : range->low_c + (range->high_c - range->low_c) * i / GRID;
}

START_TEST(a_temperature_comes_back_from_its_resistance)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  for (int i = 0; i <= GRID; i++) {
    double t_c = grid_c(&range, i);
    double r_ohm = r_of(curve, t_c);
    double grain_k = t_c + 273.15 + (1 + fabs(log(r_ohm))) / fabs(alpha_of(curve, t_c));
    CHECK_NEAR(t_of(curve, r_ohm), t_c, 16 * DBL_EPSILON * grain_k);
  }
  subject_free(&subject);
}
END_TEST

START_TEST(a_resistance_comes_back_from_its_temperature)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  double least_ohm = fmin(range.at_low_ohm, range.at_high_ohm);
  double greatest_ohm = fmax(range.at_low_ohm, range.at_high_ohm);
  for (int i = 0; i <= GRID; i++) {
    double r_ohm = least_ohm * pow(greatest_ohm / least_ohm, (double)i / GRID);
    r_ohm = fmin(fmax(r_ohm, least_ohm), greatest_ohm);
    double t_c = t_of(curve, r_ohm);
    double grain = 1 + fabs(alpha_of(curve, t_c)) * (t_c + 273.15) + fabs(log(r_ohm));
    CHECK_NEAR(r_of(curve, t_c) / r_ohm, 1, 16 * DBL_EPSILON * grain);
  }
  subject_free(&subject);
}
END_TEST

START_TEST(resistance_goes_strictly_one_way)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  double way = range.at_high_ohm > range.at_low_ohm ? 1 : -1;
  double before_ohm = -way * INFINITY;
  double before_c = -INFINITY;
  for (int i = 0; i <= GRID; i++) {
    double r_ohm = r_of(curve, grid_c(&range, i));
    double t_c = t_of(curve, r_ohm);
    ck_assert(way * r_ohm > way * before_ohm && t_c > before_c && way * alpha_of(curve, t_c) > 0);
    before_ohm = r_ohm;
    before_c = t_c;
  }
  ck_assert(oc_curve_falls(curve) == (way < 0));
  subject_free(&subject);
}
END_TEST

START_TEST(the_ends_convert_exactly_and_nothing_beyond_does)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  CHECK_NEAR(r_of(curve, range.low_c), range.at_low_ohm, 0);
  CHECK_NEAR(r_of(curve, range.high_c), range.at_high_ohm, 0);
  CHECK_NEAR(t_of(curve, range.at_low_ohm), range.low_c, 0);
  CHECK_NEAR(t_of(curve, range.at_high_ohm), range.high_c, 0);
  double beyond_c[2] = {nextafter(range.low_c, -300), nextafter(range.high_c, 2000)};
  double beyond_ohm[2] = {nextafter(fmax(range.at_low_ohm, range.at_high_ohm), INFINITY),
                          nextafter(fmin(range.at_low_ohm, range.at_high_ohm), 0)};
  size_t failed;
  ohm_curve_resistances(curve, beyond_c, STEP, beyond_c, STEP, 2, &failed);
  ck_assert_uint_eq(failed, 2);
  ohm_curve_temperatures(curve, beyond_ohm, STEP, beyond_ohm, STEP, 2, &failed);
  ck_assert_uint_eq(failed, 2);
  subject_free(&subject);
}
END_TEST

/* Round-off of ln R over the step, and what alpha changes within it. */
START_TEST(alpha_is_the_central_difference_of_ln_r)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  const double step = 1e-3;
  for (int i = 7; i < GRID; i += 10) {
    double t_c = grid_c(&range, i);
    double alpha = alpha_of(curve, t_c);
    double slope = (log(r_of(curve, t_c + step)) - log(r_of(curve, t_c - step))) / (2 * step);
    double grain =
        4 * DBL_EPSILON * (fabs(log(r_of(curve, t_c))) + fabs(alpha) * (t_c + 274) + 1) / step;
    double bend = fabs(alpha_of(curve, t_c + step) - alpha_of(curve, t_c - step));
    CHECK_NEAR(slope, alpha, bend + 1e-6 * fabs(alpha) + grain);
  }
  subject_free(&subject);
}
END_TEST

/* An NTC element goes on as a beta, straight in 1/T; others as a straight line in T. */
START_TEST(beyond_its_ends_a_curve_goes_on_along_its_tangent)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  double ends_c[2] = {range.low_c, range.high_c};
  for (int i = 0; i < 2; i++) {
    double end_k = ends_c[i] + 273.15;
    double alpha = alpha_of(curve, ends_c[i]);
    double beyond_c = ends_c[i] + (i == 0 ? -3 : 3);
    double ratio = oc_curve_resistance_beyond(curve, beyond_c) / r_of(curve, ends_c[i]);
    double want = alpha < 0 ? exp(alpha * end_k * (1 - end_k / (beyond_c + 273.15)))
                            : 1 + alpha * (beyond_c - ends_c[i]);
    CHECK_NEAR(ratio, want, 1e-12 * want);
  }
  double inside_c = (range.low_c + range.high_c) / 2;
  CHECK_NEAR(oc_curve_resistance_beyond(curve, inside_c), r_of(curve, inside_c), 0);
  double zero_ohm = oc_curve_resistance_beyond(curve, -273.15);
  ck_assert(oc_curve_falls(curve) ? isinf(zero_ohm) : 0 <= zero_ohm && zero_ohm < INFINITY);
  subject_free(&subject);
}
END_TEST

static void check_given(ohm_status status, const double *value) {
  ck_assert(status == OHM_OK ? isfinite(*value) : isnan(*value));
}

START_TEST(every_special_number_is_converted_or_gives_nan)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  for (int i = 0; i < SPECIALS; i++) {
    double t_c = 1, r_ohm = 1, alpha_per_k = 1;
    check_given(ohm_curve_temperature(curve, special[i], &t_c), &t_c);
    check_given(ohm_curve_resistance(curve, special[i], &r_ohm), &r_ohm);
    check_given(ohm_curve_alpha(curve, special[i], &alpha_per_k), &alpha_per_k);
  }
  subject_free(&subject);
}
END_TEST

typedef ohm_status (*single)(const ohm_curve *, double, double *);
typedef ohm_status (*array)(const ohm_curve *, const double *, size_t, double *, size_t, size_t,
                            size_t *);

enum { COUNT = 400 };

/* Converts values in place, and leaves the results of an array there. */
static void check_array(const ohm_curve *curve, single convert, array convert_all, double *values) {
  double apart[COUNT];
  double expected[COUNT];
  size_t failed = 99;
  size_t bad = 0;
  for (int i = 0; i < COUNT; i++)
    bad += convert(curve, values[i], &expected[i]) != OHM_OK;
  ck_assert_int_eq(convert_all(curve, values, STEP, apart, STEP, COUNT, &failed), OHM_OK);
  ck_assert_uint_eq(failed, bad);
  ck_assert_int_eq(convert_all(curve, values, STEP, values, STEP, COUNT, NULL), OHM_OK);
  ck_assert_mem_eq(apart, expected, sizeof apart);
  ck_assert_mem_eq(values, expected, sizeof apart);
  ck_assert_uint_gt(bad, 0);
}

START_TEST(arrays_are_the_single_conversions_in_place_too)
{
  struct subject subject = subject_number(_i);
  const ohm_curve *curve = subject.curve;
  struct range range = range_of(curve);
  double values[COUNT];
  for (int i = 0; i < COUNT; i++) {
    double part = (i + 2.5) / COUNT;
    values[i] = range.at_high_ohm * pow(range.at_low_ohm / range.at_high_ohm, part);
    if (i % 10 == 0)
      values[i] = special[i / 10 % SPECIALS];
  }
  check_array(curve, ohm_curve_temperature, ohm_curve_temperatures, values);
  check_array(curve, ohm_curve_resistance, ohm_curve_resistances, values);
  subject_free(&subject);
}
END_TEST

START_TEST(columns_of_structs_are_converted_where_they_stand)
{
  struct row {
    double t_c;
    char name[STEP];
    double r_ohm;
  };
  struct row rows[] = {{20, "cold", 0}, {200, "never", 0}, {80, "hot", 0}};
  ohm_curve *curve = beta(10000, 25, 3950, -40, 125);
  size_t failed;
  ck_assert_int_eq(ohm_curve_resistances(curve, &rows[0].t_c, sizeof rows[0], &rows[0].r_ohm,
                                         sizeof rows[0], 3, &failed),
                   OHM_OK);
  ck_assert_uint_eq(failed, 1);
  CHECK_NEAR(rows[0].r_ohm, r_of(curve, 20), 0);
  ck_assert(isnan(rows[1].r_ohm));
  CHECK_NEAR(rows[2].r_ohm, r_of(curve, 80), 0);
  ck_assert_str_eq(rows[1].name, "never");
  ohm_curve_free(curve);
}
END_TEST

START_TEST(a_stride_below_a_double_is_refused)
{
  ohm_curve *curve = beta(10000, 25, 3950, -40, 125);
  double values[2] = {20, 30};
  PROVOKES(ohm_curve_resistances, OHM_BAD_ARGUMENT,
           ohm_curve_resistances(curve, values, STEP - 1, values, STEP, 2, NULL));
  PROVOKES(ohm_curve_temperatures, OHM_BAD_ARGUMENT,
           ohm_curve_temperatures(curve, values, STEP, values, 0, 2, NULL));
  CHECK_NEAR(values[0], 20, 0);
  ohm_curve_free(curve);
}
END_TEST

/* ---- closed forms, in long double ---- */

START_TEST(beta_agrees_with_its_closed_form)
{
  for (double beta_k = 100; beta_k <= 100000; beta_k *= 2.3) {
    ohm_curve *curve = beta(2450, 20, beta_k, 0, 150);
    for (double t_c = 0; t_c <= 150; t_c += 0.37) {
      long double y = 1 / ((long double)t_c + 273.15L) - 1 / 293.15L;
      double r_ohm = (double)(2450 * expl((long double)beta_k * y));
      double alpha = beta_k / (t_c + 273.15) / (t_c + 273.15);
      double grain = 1 + fabs(log(r_ohm)) + alpha * (t_c + 273.15);
      CHECK_NEAR(r_of(curve, t_c) / r_ohm, 1, 4 * DBL_EPSILON * grain);
      CHECK_NEAR(alpha_of(curve, t_c), -alpha, 8 * DBL_EPSILON * alpha);
    }
    ohm_curve_free(curve);
  }
}
END_TEST

/* x^3 + p x = q has the root 2 sqrt(p/3) sinh(asinh(3 q / (2 p) sqrt(3/p)) / 3), which
 * keeps its digits as C, and with it 1/p and 1/q, goes to 0. */
static double steinhart_hart_ohm(double c, double t_c) {
  long double y_a = 1 / ((long double)t_c + 273.15L) - (long double)A;
  if (c == 0)
    return (double)expl(y_a / (long double)B);
  long double p = (long double)B / (long double)c;
  long double q = y_a / (long double)c;
  return (double)expl(2 * sqrtl(p / 3) * sinhl(asinhl(3 * q / (2 * p) * sqrtl(3 / p)) / 3));
}

START_TEST(steinhart_hart_agrees_with_its_closed_forms_as_c_shrinks)
{
  for (int i = 0; i < C_COUNT; i++) {
    ohm_curve *curve = steinhart_hart(A, B, c_small[i], -60, 200);
    for (double t_c = -60; t_c <= 200; t_c += 0.37) {
      double r_ohm = steinhart_hart_ohm(c_small[i], t_c);
      double alpha = fabs(alpha_of(curve, t_c));
      double grain = 1 + fabs(log(r_ohm)) + alpha * (t_c + 273.15);
      CHECK_NEAR(r_of(curve, t_c) / r_ohm, 1, 4 * DBL_EPSILON * grain);
      long double x = logl((long double)r_of(curve, t_c));
      long double y = (long double)A + x * ((long double)B + x * x * (long double)c_small[i]);
      CHECK_NEAR(t_of(curve, r_of(curve, t_c)), (double)(1 / y - 273.15L),
                 4 * DBL_EPSILON * (t_c + 274 + grain / alpha));
    }
    ohm_curve_free(curve);
  }
}
END_TEST

/* ---- points ---- */

START_TEST(points_convert_exactly_both_ways)
{
  static const double t_c[] = {-40, -12.3, 0, 20, 20.1, 97.77, 130};
  static const double r_ohm[] = {48140, 10344.4, 5790, 2450, 2441, 199.9, 93};
  ohm_curve *curve = points(t_c, r_ohm, 7);
  for (int i = 0; i < 7; i++) {
    CHECK_NEAR(r_of(curve, t_c[i]), r_ohm[i], 0);
    CHECK_NEAR(t_of(curve, r_ohm[i]), t_c[i], 0);
  }
  ohm_curve_free(curve);
}
END_TEST

START_TEST(two_points_are_a_beta)
{
  static const double t_c[] = {20, 80};
  static const double r_ohm[] = {2450, 318};
  double beta_k = log(2450.0 / 318) / (1 / 293.15 - 1 / 353.15);
  ohm_curve *pair = points(t_c, r_ohm, 2);
  ohm_curve *model = beta(2450, 20, beta_k, 20, 80);
  for (double at_c = 20.5; at_c < 80; at_c += 0.5) {
    CHECK_NEAR(r_of(pair, at_c), r_of(model, at_c), 1e-12 * r_of(model, at_c));
    CHECK_NEAR(alpha_of(pair, at_c), alpha_of(model, at_c), 1e-14);
  }
  ohm_curve_free(pair);
  ohm_curve_free(model);
}
END_TEST

START_TEST(the_unit_of_resistance_does_not_move_a_temperature)
{
  static const double units[] = {1e-3, 7, 1e3, 1e100, 1e-100};
  ohm_curve *curve = table(0);
  for (int u = 0; u < 5; u++) {
    double scaled_ohm[8];
    for (int i = 0; i < 8; i++)
      scaled_ohm[i] = even_ohm[i] * units[u];
    ohm_curve *scaled = points(even_c, scaled_ohm, 8);
    for (double r = 185; r < 45000; r *= 1.01)
      CHECK_NEAR(t_of(scaled, r * units[u]), t_of(curve, r), 1e-11);
    ohm_curve_free(scaled);
  }
  ohm_curve_free(curve);
}
END_TEST

/* The clean table of 10 K steps. */
enum { ROWS = 18 };
static double row_c[ROWS];
static double row_ohm[ROWS];

static void read_rows(void) {
  char *path = source_path("tests/sensors/ntc-2k45-at-20c-mazda-bt50-2021.csv");
  FILE *file = fopen(path, "r");
  char line[512];
  int count = 0;
  ck_assert_ptr_nonnull(file);
  while (fgets(line, sizeof line, file) && count < ROWS)
    if (sscanf(line, "%lf,,%lf,", &row_c[count], &row_ohm[count]) == 2)
      count++;
  fclose(file);
  free(path);
  ck_assert_int_eq(count, ROWS);
}

/* Error in kelvin at one row that the others foretell. */
static double foretold_k(int left_out) {
  double t_c[ROWS];
  double r_ohm[ROWS];
  size_t count = 0;
  for (int i = 0; i < ROWS; i++)
    if (i != left_out) {
      t_c[count] = row_c[i];
      r_ohm[count++] = row_ohm[i];
    }
  ohm_curve *curve = points(t_c, r_ohm, count);
  double off_k = t_of(curve, row_ohm[left_out]) - row_c[left_out];
  ohm_curve_free(curve);
  return off_k;
}

START_TEST(a_row_left_out_of_a_clean_table_is_foretold)
{
  read_rows();
  for (int i = 1; i < ROWS - 1; i++)
    CHECK_NEAR(foretold_k(i), 0, 0.01);
}
END_TEST

/* ---- refusals ---- */

START_TEST(a_steinhart_hart_curve_that_turns_is_refused_and_told_where)
{
  ohm_error error;
  double turn = sqrt(2e-4 / 3e-6);
  double turn_c = 1 / (1e-3 + turn * (2e-4 - 1e-6 * turn * turn)) - 273.15;
  char text[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(turn_c, 1, text, sizeof text);
  ck_assert_ptr_null(ohm_curve_steinhart_hart_new(1e-3, 2e-4, -1e-6, 0, 300, &error));
  ck_assert_ptr_nonnull(strstr(error.message, text));
  ohm_curve_free(steinhart_hart(1e-3, 2e-4, -1e-6, turn_c + 0.1, 300));
  /* The next one turns outside its range. */
  ck_assert_ptr_null(ohm_curve_steinhart_hart_new(0.1, -1e-5, 1e-6, 0, 50, &error));
  ck_assert_ptr_null(strstr(error.message, "turns"));
}
END_TEST

START_TEST(a_resistance_no_double_can_hold_is_refused)
{
  ohm_error error;
  PROVOKES(ohm_curve_beta_new, OHM_BAD_DEFINITION,
           (ohm_curve_beta_new(1e4, 25, 1e5, -200, 100, &error), error.status));
  PROVOKES(ohm_curve_steinhart_hart_new, OHM_BAD_DEFINITION,
           (ohm_curve_steinhart_hart_new(1e-3, 1e-4, -1e-12, -271, 100, &error), error.status));
  PROVOKES(ohm_curve_steinhart_hart_new, OHM_BAD_DEFINITION,
           (ohm_curve_steinhart_hart_new(0, 0, 1e300, 0, 100, &error), error.status));
  PROVOKES(ohm_curve_steinhart_hart_new, OHM_BAD_DEFINITION,
           (ohm_curve_steinhart_hart_new(1e-3, -2e-4, -1e-7, 0, 100, &error), error.status));
}
END_TEST

START_TEST(points_that_do_not_rise_and_fall_are_refused_and_named)
{
  static const double t_c[] = {0, 10, 10};
  static const double r_ohm[] = {100, 50, 20};
  static const double rising_c[] = {0, 10, 20};
  static const double flat_ohm[] = {100, 50, 50};
  ohm_error error;
  PROVOKES(ohm_curve_points_new, OHM_BAD_DEFINITION,
           (ohm_curve_points_new(t_c, r_ohm, 3, &error), error.status));
  ck_assert_ptr_nonnull(strstr(error.message, "point 3"));
  PROVOKES(ohm_curve_points_new, OHM_BAD_DEFINITION,
           (ohm_curve_points_new(rising_c, flat_ohm, 3, &error), error.status));
  ck_assert_ptr_nonnull(strstr(error.message, "point 3"));
  PROVOKES(ohm_curve_points_new, OHM_BAD_DEFINITION,
           (ohm_curve_points_new(t_c, r_ohm, 1, &error), error.status));
  PROVOKES(ohm_curve_points_new, OHM_TOO_LARGE,
           (ohm_curve_points_new(t_c, r_ohm, MANY + 1, &error), error.status));
  PROVOKES(ohm_curve_points_new, OHM_NULL_ARGUMENT,
           (ohm_curve_points_new(NULL, r_ohm, 3, &error), error.status));
}
END_TEST

START_TEST(a_range_that_is_none_is_refused)
{
  static const double ranges[][2] = {{20, 20}, {30, 20}, {-273.15, 20}, {20, 1000.1}, {NAN, 20}};
  ohm_error error;
  for (int i = 0; i < 5; i++) {
    PROVOKES(ohm_curve_beta_new, OHM_BAD_ARGUMENT,
             (ohm_curve_beta_new(1e4, 25, 3950, ranges[i][0], ranges[i][1], &error), error.status));
    PROVOKES(
        ohm_curve_steinhart_hart_new, OHM_BAD_ARGUMENT,
        (ohm_curve_steinhart_hart_new(A, B, 0, ranges[i][0], ranges[i][1], &error), error.status));
  }
  static const double t_c[] = {-273.15, 20};
  static const double r_ohm[] = {100, 50};
  PROVOKES(ohm_curve_points_new, OHM_BAD_ARGUMENT,
           (ohm_curve_points_new(t_c, r_ohm, 2, &error), error.status));
}
END_TEST

static void check_built_or_told(ohm_curve *curve, const ohm_error *error) {
  if (curve) {
    struct range range = range_of(curve);
    ck_assert(isfinite(range.at_low_ohm) && range.at_low_ohm > range.at_high_ohm &&
              range.at_high_ohm > 0);
    double middle_c = range.low_c + (range.high_c - range.low_c) / 2;
    ck_assert(isfinite(alpha_of(curve, middle_c)) && isfinite(t_of(curve, r_of(curve, middle_c))));
    ck_assert_int_eq(error->status, OHM_OK);
  } else {
    ck_assert(error->status == OHM_BAD_ARGUMENT || error->status == OHM_BAD_DEFINITION);
    ck_assert_uint_gt(strlen(error->message), 20);
  }
  ohm_curve_free(curve);
}

START_TEST(every_special_number_makes_a_finite_curve_or_a_sentence)
{
  static const double likely[] = {10000, 25, 3950, -40, 125};
  enum { WAYS = SPECIALS + 1 };
  ohm_error error;
  for (int i = 0; i < WAYS * WAYS * WAYS * WAYS * WAYS; i++) {
    double x[5];
    for (int j = 0, rest = i; j < 5; j++, rest /= WAYS)
      x[j] = rest % WAYS < SPECIALS ? special[rest % WAYS] : likely[j];
    check_built_or_told(ohm_curve_beta_new(x[0], x[1], x[2], x[3], x[4], &error), &error);
    check_built_or_told(ohm_curve_steinhart_hart_new(x[0], x[1], x[2], x[3], x[4], &error), &error);
    if (i < WAYS * WAYS * WAYS * WAYS)
      check_built_or_told(ohm_curve_points_new(x, x + 2, 2, &error), &error);
  }
}
END_TEST

START_TEST(statuses_of_a_conversion_are_told_apart)
{
  ohm_curve *curve = beta(10000, 25, 3950, -40, 125);
  double out = 1;
  PROVOKES(ohm_curve_temperature, OHM_NULL_ARGUMENT, ohm_curve_temperature(NULL, 1e4, &out));
  ck_assert(isnan(out));
  PROVOKES(ohm_curve_temperature, OHM_NULL_ARGUMENT, ohm_curve_temperature(curve, 1e4, NULL));
  PROVOKES(ohm_curve_temperature, OHM_BAD_ARGUMENT, ohm_curve_temperature(curve, 0, &out));
  PROVOKES(ohm_curve_temperature, OHM_OUT_OF_RANGE, ohm_curve_temperature(curve, 1e9, &out));
  PROVOKES(ohm_curve_resistance, OHM_NULL_ARGUMENT, ohm_curve_resistance(NULL, 20, &out));
  PROVOKES(ohm_curve_resistance, OHM_NULL_ARGUMENT, ohm_curve_resistance(curve, 20, NULL));
  PROVOKES(ohm_curve_resistance, OHM_BAD_ARGUMENT, ohm_curve_resistance(curve, NAN, &out));
  PROVOKES(ohm_curve_resistance, OHM_BAD_ARGUMENT, ohm_curve_resistance(curve, -273.15, &out));
  PROVOKES(ohm_curve_resistance, OHM_OUT_OF_RANGE, ohm_curve_resistance(curve, 126, &out));
  PROVOKES(ohm_curve_alpha, OHM_NULL_ARGUMENT, ohm_curve_alpha(NULL, 20, &out));
  PROVOKES(ohm_curve_alpha, OHM_NULL_ARGUMENT, ohm_curve_alpha(curve, 20, NULL));
  PROVOKES(ohm_curve_alpha, OHM_BAD_ARGUMENT, ohm_curve_alpha(curve, NAN, &out));
  PROVOKES(ohm_curve_alpha, OHM_OUT_OF_RANGE, ohm_curve_alpha(curve, -41, &out));
  ck_assert(isnan(out));
  out = 1;
  PROVOKES(ohm_curve_range, OHM_NULL_ARGUMENT, ohm_curve_range(NULL, &out, NULL, NULL, NULL));
  ck_assert(isnan(out));
  ck_assert_int_eq(ohm_curve_range(curve, NULL, NULL, NULL, NULL), OHM_OK);
  ohm_curve_free(NULL);
  ohm_curve_free(curve);
}
END_TEST

START_TEST(arrays_without_a_curve_or_an_input_are_nan)
{
  ohm_curve *curve = beta(10000, 25, 3950, -40, 125);
  double in[2] = {20, 30};
  double out[2] = {1, 1};
  size_t failed = 9;
  PROVOKES(ohm_curve_temperatures, OHM_NULL_ARGUMENT,
           ohm_curve_temperatures(NULL, in, STEP, out, STEP, 2, &failed));
  ck_assert(isnan(out[0]) && isnan(out[1]) && failed == 2);
  out[1] = 1;
  PROVOKES(ohm_curve_resistances, OHM_NULL_ARGUMENT,
           ohm_curve_resistances(curve, NULL, STEP, out, STEP, 2, &failed));
  ck_assert(isnan(out[1]) && failed == 2);
  PROVOKES(ohm_curve_resistances, OHM_NULL_ARGUMENT,
           ohm_curve_resistances(curve, in, STEP, NULL, STEP, 2, &failed));
  ck_assert_int_eq(ohm_curve_resistances(curve, NULL, STEP, NULL, STEP, 0, &failed), OHM_OK);
  ck_assert_uint_eq(failed, 0);
  ohm_curve_free(curve);
}
END_TEST

int main(void) {
  int each = RUN_TESTS_FOR_EACH(
      "curve, each", CURVES + MODEL_FILES + ohm_sensor_built_in_count(),
      a_temperature_comes_back_from_its_resistance, a_resistance_comes_back_from_its_temperature,
      resistance_goes_strictly_one_way, the_ends_convert_exactly_and_nothing_beyond_does,
      alpha_is_the_central_difference_of_ln_r, beyond_its_ends_a_curve_goes_on_along_its_tangent,
      every_special_number_is_converted_or_gives_nan,
      arrays_are_the_single_conversions_in_place_too);
  int one = RUN_TESTS(
      "curve", beta_agrees_with_its_closed_form,
      steinhart_hart_agrees_with_its_closed_forms_as_c_shrinks, points_convert_exactly_both_ways,
      two_points_are_a_beta, the_unit_of_resistance_does_not_move_a_temperature,
      a_row_left_out_of_a_clean_table_is_foretold,
      a_steinhart_hart_curve_that_turns_is_refused_and_told_where,
      a_resistance_no_double_can_hold_is_refused,
      points_that_do_not_rise_and_fall_are_refused_and_named, a_range_that_is_none_is_refused,
      every_special_number_makes_a_finite_curve_or_a_sentence,
      statuses_of_a_conversion_are_told_apart, arrays_without_a_curve_or_an_input_are_nan,
      columns_of_structs_are_converted_where_they_stand, a_stride_below_a_double_is_refused);
  return each == EXIT_SUCCESS && one == EXIT_SUCCESS ? EXIT_SUCCESS : EXIT_FAILURE;
}
