/* SPDX-License-Identifier: MIT */
/* One check from the words a person types to its own screen, none of the other answers:
 * what it links is what make room-sizes bounds. */
#include "../lib/words/report.h"

int main(void) {
  char screen[2000];
  struct oc_text out = oc_text_begin(screen, sizeof screen);
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  ohm_bench *bench = ohm_bench_new(NULL);
  int failed = ohm_bench_use_sensor(bench, sensor) != OHM_OK ||
               ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3", NULL) != OHM_OK ||
               ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4", NULL) != OHM_OK ||
               ohm_bench_read(bench, "2.31k@21.5C", NULL, NULL) != OHM_OK;
  ohm_answer *answer = failed ? NULL : ohm_bench_check(bench, NULL);
  if (answer)
    oc_report_bath(&out, ohm_answer_finding(answer));
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return failed || out.length == 0 || out.length >= sizeof screen;
}
