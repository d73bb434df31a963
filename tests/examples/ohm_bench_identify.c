/* SPDX-License-Identifier: MIT */
/*
 * A dairy has two kinds of sensor on the shelf, and one without a label.
 * It was read hot, which does not settle it: what would settle it?
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *a = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_sensor *b =
      a ? ohm_sensor_built_in_load("ntc-3k5-20c", &error) : NULL;
  ohm_bench *bench = b ? ohm_bench_new(&error) : NULL;
  if (bench && ohm_bench_compare(bench, a, &error) == OHM_OK &&
      ohm_bench_compare(bench, b, &error) == OHM_OK &&
      ohm_bench_read(bench, "330@80C", NULL, &error) == OHM_OK)
    answer = ohm_bench_identify(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_CANDIDATES);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *it =
        ohm_answer_member(answer, OHM_GROUP_CANDIDATES, i);
    printf("%s, p = %.2f: %.0f ohm at %.0f C\n",
           ohm_finding_text(it, OHM_FIELD_SENSOR, 0),
           ohm_finding_number(it, OHM_FIELD_P_SENSOR),
           ohm_finding_number(it, OHM_FIELD_SEPARATING_OHM),
           ohm_finding_number(it, OHM_FIELD_SEPARATING_C));
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
 *     ntc-3k5-20c, p = 0.65: 9256 ohm at 0 C
 *     ntc-2k45-20c, p = 0.35: 6092 ohm at 0 C
 */
