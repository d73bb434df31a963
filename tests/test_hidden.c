/* SPDX-License-Identifier: MIT */
#include "scene.h"

#include "../lib/hidden.h"

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

static ohm_finding exact(const ohm_sensor *sensor, double r_ohm, double t_c) {
  struct scene scene = scene_exact(r_ohm, t_c);
  return scene_judged(sensor, &scene);
}

static double nominal(const ohm_sensor *sensor, double t_c) {
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

/* ---- the largest fault that could hide ---- */

START_TEST(an_exact_reading_hides_its_distance_from_the_limits)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = -30; t_c <= 120; t_c += 10)
    for (double part = 0.97; part <= 1.031; part += 0.01) {
      double r_ohm = nominal(sensor, t_c) * part;
      ohm_finding finding = exact(sensor, r_ohm, t_c);
      double low_ohm = 0.95 * nominal(sensor, t_c);
      double high_ohm = 1.05 * nominal(sensor, t_c);
      CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM), r_ohm - low_ohm, 1e-6 * r_ohm);
      double leakage_s = 1 / number_in(&finding, OHM_FIELD_LEAKAGE_OHM);
      CHECK_NEAR(leakage_s, 1 / r_ohm - 1 / high_ohm, 1e-6 / r_ohm);
    }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("hidden", an_exact_reading_hides_its_distance_from_the_limits);
}
