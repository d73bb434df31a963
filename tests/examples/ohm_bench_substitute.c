/* SPDX-License-Identifier: MIT */
/*
 * There are four resistors in a drawer. The module of a log loader is to
 * see 105 C: how near does one of them come, and how near do two?
 */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

int main(void) {
  const char *text = "# drawer: 100,220,330,1k\n# aim_c: 105C\n";
  ohm_error error = {0};
  ohm_answer *answer = NULL;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_bench *bench = sensor ? ohm_bench_new(&error) : NULL;
  if (ohm_bench_use_sensor(bench, sensor) == OHM_OK &&
      ohm_bench_read_record(bench, text, strlen(text), &error) == OHM_OK)
    answer = ohm_bench_substitute(bench, &error);
  if (!answer)
    fprintf(stderr, "%s\n", error.message);
  size_t count = ohm_answer_count(answer, OHM_GROUP_RESISTORS);
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *it =
        ohm_answer_member(answer, OHM_GROUP_RESISTORS, i);
    printf("%s, %.0f C: %.0f ohm",
           ohm_finding_text(it, OHM_FIELD_JOINED, 0),
           ohm_finding_number(it, OHM_FIELD_SHOWN_C),
           ohm_finding_number(it, OHM_FIELD_FIRST_OHM));
    if (ohm_finding_word(it, OHM_FIELD_JOINED) != OHM_JOINED_NOT)
      printf(", %.0f ohm", ohm_finding_number(it, OHM_FIELD_SECOND_OHM));
    puts("");
  }
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return error.status;
}

/*
 * It prints:
 *
 *     single, 94 C: 220 ohm
 *     parallel, 102 C: 1000 ohm, 220 ohm
 */
