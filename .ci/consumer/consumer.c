/* SPDX-License-Identifier: MIT */
/* A program outside the tree: C11 and C++11, against an installed copy. */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

static int failures;

static void expect(int holds, const char *sentence) {
  if (!holds) {
    printf("consumer: not true: %s\n", sentence);
    failures++;
  }
}

static void judge(const ohm_sensor *sensor) {
  ohm_error error;
  char text[2000];
  ohm_bench *bench = ohm_bench_new(&error);

  expect(bench != NULL, "there is a bench");
  expect(ohm_bench_use_sensor(bench, sensor) == OHM_OK, "the sensor is used");
  expect(ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3", &error) == OHM_OK,
         "0.8%+3 is an accuracy");
  expect(ohm_bench_read(bench, "2.31k@21.5C+-0.5", NULL, &error) == OHM_OK,
         "2.31k at 21.5 C is a reading");
  ohm_answer *answer = ohm_bench_check(bench, &error);
  ohm_bench_free(bench);
  expect(answer != NULL, "the check is done, and outlives its bench");
  const ohm_finding *finding = ohm_answer_finding(answer);
  expect(ohm_finding_verdict(finding) == OHM_WITHIN, "2.31k at 21.5 C is within");
  expect(ohm_finding_job(finding) == OHM_UNDECIDED, "cold, the fan is not answered");
  expect(ohm_answer_print_report(answer, text, sizeof text) < sizeof text, "the report fits");
  fputs(text, stdout);
  ohm_answer_free(answer);
}

int main(void) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);

  expect(strcmp(ohm_version(), OHM_VERSION) == 0, "library and header are of one version");
  expect(sensor != NULL, "the sensor is built in");
  if (sensor)
    judge(sensor);
  ohm_sensor_free(sensor);

  expect(ohm_sensor_built_in_load("ntc-2k45-20", &error) == NULL, "a wrong name is refused");
  expect(error.status == OHM_NOT_FOUND, "a wrong name is not found");
  puts(error.message);
  return failures != 0;
}
