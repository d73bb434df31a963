/* SPDX-License-Identifier: MIT */
/*
 * Before the sensor of a cement mixer is measured at the temperature of
 * the shed: what should the meter show, and is a glass thermometer good
 * enough to tell?
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_set(bench, OHM_SETTING_AT, "17C+-1", &error) == OHM_OK &&
      ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3@2000", &error) ==
          OHM_OK)
    answer = ohm_bench_expect(bench, &error);
  const ohm_finding *finding = ohm_answer_finding(answer);
  if (finding)
    printf("%.0f ohm; from %.0f to %.0f it is good\n",
           ohm_finding_number(finding, OHM_FIELD_EXPECTED_OHM),
           ohm_finding_number(finding, OHM_FIELD_ACCEPT_LOW_OHM),
           ohm_finding_number(finding, OHM_FIELD_ACCEPT_HIGH_OHM));
  else
    fprintf(stderr, "%s\n", error.message);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return error.status;
}

/*
 * It prints:
 *
 *     2768 ohm; from 2441 to 3150 it is good
 */
