/* SPDX-License-Identifier: MIT */
#include "../ground/internal.h"

/* IAPWS R7-97(2012), table 34: coefficients of the saturation line. */
static const double n[11] = {0,
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

ohm_status ohm_water_boiling(double pressure_hpa, double *t_c) {
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = NAN;
  if (isnan(pressure_hpa))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(6.12, pressure_hpa, 220000))
    return OHM_OUT_OF_RANGE;
  /* Equations 29b and 31; the pressure there is in megapascal. */
  double beta = sqrt(sqrt(pressure_hpa / 10000));
  double e = beta * beta + n[3] * beta + n[6];
  double f = n[1] * beta * beta + n[4] * beta + n[7];
  double g = n[2] * beta * beta + n[5] * beta + n[8];
  double d = 2 * g / (-f - sqrt(f * f - 4 * e * g));
  double sum = n[10] + d;
  *t_c = oc_celsius((sum - sqrt(sum * sum - 4 * (n[9] + n[10] * d))) / 2);
  return OHM_OK;
}

ohm_status ohm_water_pressure(double altitude_m, double *pressure_hpa) {
  /* ISO 2533:1975, clause 2: constants at mean sea level and the radius of the earth. */
  static const double T0_K = 288.15;
  static const double P0_HPA = 1013.25;
  static const double LAPSE_K_PER_M = 0.0065;
  static const double EARTH_M = 6356766;
  static const double EXPONENT = 9.80665 / (287.05287 * 0.0065);
  if (!pressure_hpa)
    return OHM_NULL_ARGUMENT;
  *pressure_hpa = NAN;
  if (isnan(altitude_m))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(-430, altitude_m, 11000))
    return OHM_OUT_OF_RANGE;
  double geopotential_m = EARTH_M * altitude_m / (EARTH_M + altitude_m);
  *pressure_hpa = P0_HPA * pow(1 - LAPSE_K_PER_M * geopotential_m / T0_K, EXPONENT);
  return OHM_OK;
}
