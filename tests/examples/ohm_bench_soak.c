/* SPDX-License-Identifier: MIT */
/*
 * A road sweeper stood in the open for seven hours. What has its coolant
 * come to, and after how many hours would a sound sensor pass?
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "# air: 9C+-2\n# after_h: 7\n3.90k\nintake=10.5C\n";
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_soak(bench, &error);
  const ohm_finding *finding = ohm_answer_finding(answer);
  if (finding)
    printf("sensor %.1f C, coolant %.1f to %.1f C\n"
           "%s after 7 h, to be asked again after %.1f h\n",
           ohm_finding_number(finding, OHM_FIELD_T_C),
           ohm_finding_number(finding, OHM_FIELD_COOLANT_LOW_C),
           ohm_finding_number(finding, OHM_FIELD_COOLANT_HIGH_C),
           ohm_finding_text(finding, OHM_FIELD_VERDICT, 0),
           ohm_finding_number(finding, OHM_FIELD_DECIDABLE_H));
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
 *     sensor 8.9 C, coolant 7.9 to 23.6 C
 *     undecided after 7 h, to be asked again after 8.3 h
 */
