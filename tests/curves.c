/* SPDX-License-Identifier: MIT */
#include "curves.h"

#include <float.h>
#include <string.h>

double t_of(const ohm_curve *curve, double r_ohm) {
  double t_c = 0;
  ck_assert_int_eq(ohm_curve_temperature(curve, r_ohm, &t_c), OHM_OK);
  return t_c;
}

double r_of(const ohm_curve *curve, double t_c) {
  double r_ohm = 0;
  ck_assert_int_eq(ohm_curve_resistance(curve, t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

double alpha_of(const ohm_curve *curve, double t_c) {
  double alpha_per_k = 0;
  ck_assert_int_eq(ohm_curve_alpha(curve, t_c, &alpha_per_k), OHM_OK);
  return alpha_per_k;
}

struct range range_of(const ohm_curve *curve) {
  struct range range;
  ck_assert_int_eq(
      ohm_curve_range(curve, &range.low_c, &range.high_c, &range.at_low_ohm, &range.at_high_ohm),
      OHM_OK);
  return range;
}

const double special[SPECIALS] = {NAN,          INFINITY, -INFINITY, 0,    -0.0,
                                  DBL_TRUE_MIN, DBL_MAX,  -1,        1e-3, -273.15};

/* The four-term forms are those of a 10 kohm element of B25/85 = 3977 K; silicon is of
 * a round alpha and beta, once straight and once bent down. */
const char *const model_files[MODEL_FILES] = {
    "# model: beta\n# r0_ohm: 10000\n# t0_c: 25\n# beta_k: 3977\n# range: -55 to 150 C\n",
    "# model: steinhart-hart\n# a: 1.129241e-3\n# b: 2.341077e-4\n# c: 8.775468e-8\n"
    "# range: -60 to 200 C\n",
    "# model: four-term\n# r_ref_ohm: 10000\n# a1: 3.354016e-3\n# b1: 2.56985e-4\n"
    "# c1: 2.620131e-6\n# d1: 6.383091e-8\n# range: -40 to 150 C\n",
    "# model: four-term-of-temperature\n# r_ref_ohm: 10000\n# a: -14.6337\n# b: 4791.842\n"
    "# c: -115334\n# d: -3730535\n# range: -40 to 150 C\n",
    "# model: platinum\n# r0_ohm: 100\n# range: -200 to 850 C\n",
    "# model: platinum\n# r0_ohm: 1000\n# range: -200 to -10 C\n",
    "# model: silicon\n# r25_ohm: 1000\n# alpha_per_k: 0.0079\n# beta_per_k2: 0.000019\n"
    "# range: -50 to 150 C\n",
    "# model: silicon\n# r25_ohm: 2000\n# alpha_per_k: 0.0079\n# beta_per_k2: 0\n"
    "# range: -50 to 150 C\n",
    "# model: silicon\n# r25_ohm: 2000\n# alpha_per_k: 0.0079\n# beta_per_k2: -0.00003\n"
    "# range: -50 to 150 C\n",
};

ohm_sensor *sensor_without_notes(const char *text) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "model", &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  return sensor;
}
