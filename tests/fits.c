/* SPDX-License-Identifier: MIT */
#include "fits.h"

#include <stdint.h>

const ohm_fit_point mgh10[MGH10] = {
    {50, 34780, 0, 0}, {55, 28610, 0, 0}, {60, 23650, 0, 0}, {65, 19630, 0, 0},
    {70, 16370, 0, 0}, {75, 13720, 0, 0}, {80, 11540, 0, 0}, {85, 9744, 0, 0},
    {90, 8261, 0, 0},  {95, 7030, 0, 0},  {100, 6005, 0, 0}, {105, 5147, 0, 0},
    {110, 4427, 0, 0}, {115, 3820, 0, 0}, {120, 3307, 0, 0}, {125, 2872, 0, 0}};

const ohm_fit_point three_rows[3] = {{0, 32650, 0, 0}, {25, 10000, 0, 0}, {100, 680, 0, 0}};

const double abc[3] = {1.129241e-3, 2.341077e-4, 8.775468e-8};

ohm_fit *fit_or_fail(int model, const ohm_fit_point *points, size_t count) {
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  request.model = model;
  ohm_fit *fit = ohm_curve_fit(points, count, &request, &error);
  if (!fit)
    ck_abort_msg("%s", error.message);
  return fit;
}

double parameter(const ohm_fit *fit, size_t index) {
  ohm_estimate value;
  ck_assert_int_eq(ohm_fit_parameter(fit, index, &value), OHM_OK);
  return value.value;
}

double u_of_parameter(const ohm_fit *fit, size_t index) {
  ohm_estimate value;
  ck_assert_int_eq(ohm_fit_parameter(fit, index, &value), OHM_OK);
  return value.u;
}

double temperature(const ohm_fit *fit, double r_ohm) {
  double t_c = NAN;
  ohm_curve_temperature(ohm_fit_curve(fit), r_ohm, &t_c);
  return t_c;
}

double correlation(const ohm_fit *fit, size_t i, size_t j) {
  double r = NAN;
  ck_assert_int_eq(ohm_fit_covariance(fit, i, j, NULL, &r), OHM_OK);
  return r;
}

void check_relative(double got, double want, double part) {
  CHECK_NEAR(got, want, part * fabs(want));
}

/* Points of a Steinhart-Hart curve, evenly spread in temperature. */
static void spread_points(const ohm_curve *curve, double low_c, double high_c,
                          ohm_fit_point *points, size_t count) {
  for (size_t i = 0; i < count; i++) {
    double t_c = low_c + (high_c - low_c) * (double)i / (double)(count - 1);
    points[i] = (ohm_fit_point){t_c, NAN, 0, 0};
    ck_assert_int_eq(ohm_curve_resistance(curve, t_c, &points[i].r_ohm), OHM_OK);
  }
}

void spread(double c, double low_c, double high_c, ohm_fit_point *points, size_t count) {
  ohm_curve *curve = ohm_curve_steinhart_hart_new(abc[0], abc[1], c, low_c, high_c, NULL);
  spread_points(curve, low_c, high_c, points, count);
  ohm_curve_free(curve);
}

static uint64_t state;

void seed(unsigned long value) {
  state = value;
}

double uniform(void) {
  state = state * 6364136223846793005u + 1442695040888963407u;
  return ((double)(state >> 11) + 0.5) / 9007199254740992.0;
}

double normal(void) {
  return sqrt(-2 * log(uniform())) * cos(6.283185307179586 * uniform());
}
