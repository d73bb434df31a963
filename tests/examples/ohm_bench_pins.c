/* SPDX-License-Identifier: MIT */
/*
 * The sensor of a rice harvester has two pins and its body, and feeds a
 * module and a gauge. Every pair was read at 50 C: which is whose?
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "# at: 50C\n1-body=810\n2-body=210.0\n1-2=1.02k\n";
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *a = ohm_sensor_built_in_load("ntc-2k46-20c", &error);
  ohm_sensor *b =
      a ? ohm_sensor_built_in_load("ntc-210r-50c", &error) : NULL;
  ohm_bench *bench = b ? ohm_bench_new(&error) : NULL;
  if (bench && ohm_bench_compare(bench, a, &error) == OHM_OK &&
      ohm_bench_compare(bench, b, &error) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_pins(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_READINGS);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *it =
        ohm_answer_member(answer, OHM_GROUP_READINGS, i);
    printf("%s: %s\n", ohm_finding_text(it, OHM_FIELD_PAIR, 0),
           ohm_finding_text(it, OHM_FIELD_ROLE, 0));
  }
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(b);
  ohm_sensor_free(a);
  return error.status;
}

/*
 * It prints:
 *
 *     1-body: module
 *     2-body: gauge
 *     1-2: both
 */
