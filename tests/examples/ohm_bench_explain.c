/* SPDX-License-Identifier: MIT */
/*
 * The sensor of a snow groomer reads right when cold, and too much when
 * hot: what may be wrong, and what would each make of the fan?
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read(bench, "2.35k@21.5C", NULL, &error) == OHM_OK &&
      ohm_bench_read(bench, "313@88C", NULL, &error) == OHM_OK)
    answer = ohm_bench_explain(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_EXPLANATIONS);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *it =
        ohm_answer_member(answer, OHM_GROUP_EXPLANATIONS, i);
    if (ohm_finding_number(it, OHM_FIELD_LEADING) == 1)
      printf("%s: makes the fan %.0f K late\n",
             ohm_finding_text(it, OHM_FIELD_EXPLANATION, 0),
             ohm_finding_number(it, OHM_FIELD_FAULT_LATE_K));
  }
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return error.status;
}

/*
 * It prints:
 *
 *     series: makes the fan 12 K late
 *     beta: makes the fan 9 K late
 */
