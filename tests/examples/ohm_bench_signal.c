/* SPDX-License-Identifier: MIT */
/*
 * The module of a fish lorry sees more ohms than its sensor has: what are
 * they, how many, and when does the fan start?
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "# pull_up: 1k\n187,sensor\n0.97V,pin\n91C\n";
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_signal(bench, &error);
  const ohm_finding *finding = ohm_answer_finding(answer);
  if (finding)
    printf("%s: %.0f ohm, give or take %.0f\n"
           "fan at %.0f C, no later than %.0f C\n",
           ohm_finding_text(finding, OHM_FIELD_REASON, 0),
           ohm_finding_number(finding, OHM_FIELD_BETWEEN_OHM),
           ohm_finding_number(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM),
           ohm_finding_number(finding, OHM_FIELD_START_C),
           ohm_finding_number(finding, OHM_FIELD_START_HIGH_C));
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
 *     series: 54 ohm, give or take 15
 *     fan at 109 C, no later than 113 C
 */
