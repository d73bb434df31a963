/* SPDX-License-Identifier: MIT */
#include "scene.h"

#include <stdio.h>

/* ---- the test current ---- */

/* Flat, so that the element is what is written whatever the temperature. */
static ohm_sensor *dissipating(double r0_ohm, double mw_per_k) {
  char text[300];
  snprintf(text, sizeof text,
           "# tolerance: 5 %%\n# range: -40 to 150 C\n# model: beta\n# r0_ohm: %g\n# t0_c: 20\n"
           "# beta_k: 3500\n# dissipation_mw_per_k: %g\n",
           r0_ohm, mw_per_k);
  return sensor_of(text);
}

/* P/delta, worked out by hand: I^2 R is 0.09216 mW and 1.8432 mW. The currents are
 * those a bench meter's manual prints for its 20 kohm and 2 kohm ranges. */
START_TEST(a_known_current_warms_the_element_by_its_power_over_dissipation)
{
  static const struct {
    double current_ma;
    double r_ohm;
    double mw_per_k;
    double heating_k;
  } examples[] = {
      {0.096, 10e3, 1.5, 0.06144}, {0.096, 10e3, 7, 0.09216 / 7}, {0.960, 2e3, 1.5, 1.2288}};
  for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++) {
    ohm_sensor *sensor = dissipating(examples[i].r_ohm, examples[i].mw_per_k);
    struct scene scene = scene_exact(examples[i].r_ohm, 20);
    scene.meter.current_ma = examples[i].current_ma;
    ohm_finding finding = scene_judged(sensor, &scene);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_HEATING_K), examples[i].heating_k, 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), 20, 0);
    ohm_sensor_free(sensor);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("question", a_known_current_warms_the_element_by_its_power_over_dissipation);
}
