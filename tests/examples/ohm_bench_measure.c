/* SPDX-License-Identifier: MIT */
/*
 * Nothing is known of the sensor of a pottery kiln. The same resistance,
 * read on two ranges of one meter, is not known equally well.
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_bench *bench = ohm_bench_new(&error);
  if (bench &&
      ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3", &error) ==
          OHM_OK &&
      ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4", &error) == OHM_OK &&
      ohm_bench_read(bench, "0.11k", NULL, &error) == OHM_OK &&
      ohm_bench_read(bench, "109.7", NULL, &error) == OHM_OK)
    answer = ohm_bench_measure(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_READINGS);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *one =
        ohm_answer_member(answer, OHM_GROUP_READINGS, i);
    printf("%s: %.1f ohm, give or take %.1f\n",
           ohm_bench_reading(bench, i),
           ohm_finding_number(one, OHM_FIELD_R_OHM),
           ohm_finding_number(one, OHM_FIELD_EXPANDED_R_OHM));
  }
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  return error.status;
}

/*
 * It prints:
 *
 *     0.11k: 109.6 ohm, give or take 29.3
 *     109.7: 109.3 ohm, give or take 1.1
 */
