/* SPDX-License-Identifier: MIT */
/* A check by the public header, from the words a person types to the report. */
#include <ohmcurve.h>

int main(void) {
  char report[2000];
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_sensor(bench, sensor);
  ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3", NULL);
  ohm_bench_read(bench, "2.31k@21.5C", NULL, NULL);
  ohm_answer *answer = ohm_bench_check(bench, NULL);
  size_t length = ohm_finding_print_report(ohm_answer_finding(answer), report, sizeof report);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return length == 0;
}
