/* SPDX-License-Identifier: MIT */
/*
 * What a meter is to show where the fan of a pump engine starts, and what
 * 20 ohm in its plug would make of that, in sentences.
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "# fan_c: 95C\n# pull_up: 1k\n# hidden_ohm: 20\n";
  char report[1000];
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_fanpoint(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  else if (ohm_answer_print_report(answer, report, sizeof report) <
           sizeof report)
    fputs(report, stdout);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return error.status;
}

/*
 * It prints:
 *
 *     CAUTION     Hands, hair, sleeves clear: the fan may start, key off too.
 *     Starts at   95.0 C: 214.3 ohm, 0.882 V
 *     One degree  is worth 5.59 ohm, 19.0 mV where it starts
 *     Hidden      20 ohm in plug or wire: starts at a true 98.8 C
 */
