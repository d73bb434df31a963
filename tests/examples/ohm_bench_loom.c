/* SPDX-License-Identifier: MIT */
/*
 * Two resistors stood in for the sensor of a beet lifter, and its module
 * reported 93 C and 42 C: how many ohms are in plug and wires?
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read(bench, "179.4@93C", NULL, &error) == OHM_OK &&
      ohm_bench_read(bench, "998@42C", NULL, &error) == OHM_OK)
    answer = ohm_bench_loom(bench, &error);
  const ohm_finding *finding = ohm_answer_finding(answer);
  if (finding)
    printf("%.0f ohm, give or take %.0f\n"
           "set for %.0f C, the fan starts at %.0f C\n",
           ohm_finding_number(finding, OHM_FIELD_BETWEEN_OHM),
           ohm_finding_number(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM),
           ohm_finding_number(finding, OHM_FIELD_FAN_C),
           ohm_finding_number(finding, OHM_FIELD_START_C));
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
 *     41 ohm, give or take 18
 *     set for 97 C, the fan starts at 106 C
 */
