/* SPDX-License-Identifier: MIT */
#include "../support.h"

/* ---- pressure ---- */

/* The standard atmosphere in words: 288.15 K at sea level, falling 6.5 K for every
 * geopotential kilometre, carried by the weight of the air above. Integrated here, so
 * that the closed form is not held against itself. */
static double integrated_hpa(double altitude_m) {
  static const int STEPS = 20000;
  double log_ratio = 0;
  double top_m = 6356766 * altitude_m / (6356766 + altitude_m);
  for (int i = 0; i < STEPS; i++) {
    double height_m = top_m * (i + 0.5) / STEPS;
    log_ratio -= 9.80665 / (287.05287 * (288.15 - 0.0065 * height_m)) * top_m / STEPS;
  }
  return 1013.25 * exp(log_ratio);
}

START_TEST(pressure_is_the_weight_of_the_air_above)
{
  for (double altitude_m = -430; altitude_m <= 11000; altitude_m += 127) {
    double pressure_hpa;
    PROVOKES(ohm_water_pressure, OHM_OK, ohm_water_pressure(altitude_m, &pressure_hpa));
    CHECK_NEAR(pressure_hpa, integrated_hpa(altitude_m), 1e-6);
  }
}
END_TEST

START_TEST(pressure_falls_with_altitude)
{
  double before_hpa = INFINITY;
  for (double altitude_m = -430; altitude_m <= 11000; altitude_m += 1) {
    double pressure_hpa;
    ck_assert_int_eq(ohm_water_pressure(altitude_m, &pressure_hpa), OHM_OK);
    ck_assert(pressure_hpa < before_hpa);
    before_hpa = pressure_hpa;
  }
}
END_TEST

START_TEST(no_altitude_beyond_the_troposphere_has_a_pressure)
{
  static const double beyond_m[] = {-430.001, 11000.001, 1e300, INFINITY, -INFINITY};
  for (size_t i = 0; i < sizeof beyond_m / sizeof beyond_m[0]; i++) {
    double pressure_hpa = 1;
    PROVOKES(ohm_water_pressure, OHM_OUT_OF_RANGE, ohm_water_pressure(beyond_m[i], &pressure_hpa));
    ck_assert(isnan(pressure_hpa));
  }
}
END_TEST

START_TEST(a_pressure_needs_an_altitude_that_is_a_number_and_an_output)
{
  double pressure_hpa = 1;
  PROVOKES(ohm_water_pressure, OHM_BAD_ARGUMENT, ohm_water_pressure(NAN, &pressure_hpa));
  ck_assert(isnan(pressure_hpa));
  PROVOKES(ohm_water_pressure, OHM_NULL_ARGUMENT, ohm_water_pressure(0, NULL));
}
END_TEST

/* ---- boiling ---- */

/* Equation 30 of IAPWS R7-97(2012), the same line the other way: pressure from
 * temperature. Both are roots of one biquadratic, equation 29, written out here with the
 * coefficients of table 34. */
static double residual(double pressure_mpa, double t_k) {
  static const double n[] = {0,
                             0.11670521452767e4,
                             -0.72421316703206e6,
                             -0.17073846940092e2,
                             0.12020824702470e5,
                             -0.32325550322333e7,
                             0.14915108613530e2,
                             -0.48232657361591e4,
                             0.40511340542057e6,
                             -0.23855557567849,
                             0.65017534844798e3};
  double beta = pow(pressure_mpa, 0.25);
  double theta = t_k + n[9] / (t_k - n[10]);
  return beta * beta * theta * theta + n[1] * beta * beta * theta + n[2] * beta * beta +
         n[3] * beta * theta * theta + n[4] * beta * theta + n[5] * beta + n[6] * theta * theta +
         n[7] * theta + n[8];
}

START_TEST(boiling_is_a_root_of_the_saturation_line)
{
  for (double pressure_hpa = 6.12; pressure_hpa <= 220000; pressure_hpa *= 1.01) {
    double t_c;
    PROVOKES(ohm_water_boiling, OHM_OK, ohm_water_boiling(pressure_hpa, &t_c));
    double t_k = t_c + 273.15;
    double slope =
        (residual(pressure_hpa / 1e4, t_k + 1e-3) - residual(pressure_hpa / 1e4, t_k - 1e-3)) /
        2e-3;
    CHECK_NEAR(residual(pressure_hpa / 1e4, t_k) / slope, 0, 1e-7);
  }
}
END_TEST

START_TEST(boiling_rises_with_pressure)
{
  double before_c = -INFINITY;
  for (double pressure_hpa = 500; pressure_hpa <= 1100; pressure_hpa += 0.25) {
    double t_c;
    ck_assert_int_eq(ohm_water_boiling(pressure_hpa, &t_c), OHM_OK);
    ck_assert(t_c > before_c);
    before_c = t_c;
  }
}
END_TEST

START_TEST(no_pressure_beyond_the_line_boils)
{
  static const double beyond_hpa[] = {6.11, 220001, 0, -1, 1e300, INFINITY, -INFINITY};
  for (size_t i = 0; i < sizeof beyond_hpa / sizeof beyond_hpa[0]; i++) {
    double t_c = 1;
    PROVOKES(ohm_water_boiling, OHM_OUT_OF_RANGE, ohm_water_boiling(beyond_hpa[i], &t_c));
    ck_assert(isnan(t_c));
  }
}
END_TEST

START_TEST(boiling_needs_a_pressure_that_is_a_number_and_an_output)
{
  double t_c = 1;
  PROVOKES(ohm_water_boiling, OHM_BAD_ARGUMENT, ohm_water_boiling(NAN, &t_c));
  ck_assert(isnan(t_c));
  PROVOKES(ohm_water_boiling, OHM_NULL_ARGUMENT, ohm_water_boiling(1013.25, NULL));
}
END_TEST

int main(void) {
  return RUN_TESTS("water", pressure_is_the_weight_of_the_air_above, pressure_falls_with_altitude,
                   no_altitude_beyond_the_troposphere_has_a_pressure,
                   a_pressure_needs_an_altitude_that_is_a_number_and_an_output,
                   boiling_is_a_root_of_the_saturation_line, boiling_rises_with_pressure,
                   no_pressure_beyond_the_line_boils,
                   boiling_needs_a_pressure_that_is_a_number_and_an_output);
}
