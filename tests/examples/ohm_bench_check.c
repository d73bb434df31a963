/* SPDX-License-Identifier: MIT */
/*
 * The coolant sensor of a forklift lies on the bench and was read in ice
 * and in boiling water: one verdict on both, and what each bath allows.
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read(bench, "5.71k@ice,sensor", NULL, &error) ==
          OHM_OK &&
      ohm_bench_read(bench, "191@boil,sensor", NULL, &error) == OHM_OK)
    answer = ohm_bench_check(bench, &error);
  const ohm_finding *whole = ohm_answer_finding(answer);
  if (whole)
    printf("part %s, for the fan %s\n",
           ohm_finding_text(whole, OHM_FIELD_VERDICT, 0),
           ohm_finding_text(whole, OHM_FIELD_JOB, 0));
  else
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_READINGS);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *one =
        ohm_answer_member(answer, OHM_GROUP_READINGS, i);
    printf("%s: %.0f to %.0f ohm are allowed\n",
           ohm_bench_reading(bench, i),
           ohm_finding_number(one, OHM_FIELD_LOW_OHM),
           ohm_finding_number(one, OHM_FIELD_HIGH_OHM));
  }
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return error.status;
}

/*
 * It prints:
 *
 *     part within, for the fan within
 *     5.71k@ice,sensor: 4563 to 7005 ohm are allowed
 *     191@boil,sensor: 182 to 202 ohm are allowed
 */
