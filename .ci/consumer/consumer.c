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
  ohm_reading reading = OHM_READING_INIT;
  ohm_meter meter = OHM_METER_INIT;
  ohm_reference reference = OHM_REFERENCE_INIT;
  ohm_finding finding;
  ohm_error error;
  char text[2000];

  expect(ohm_reading_read("2.31k", &reading, &error) == OHM_OK, "2.31k is a reading");
  expect(ohm_meter_read("0.8%+3", &meter, &error) == OHM_OK, "0.8%+3 is an accuracy");
  expect(ohm_reference_read("21.5C+-0.5", &reference, &error) == OHM_OK, "21.5C is a reference");
  expect(ohm_bath_check(sensor, &reading, &meter, &reference, NULL, &finding) == OHM_OK,
         "the check is done");
  expect(ohm_finding_verdict(&finding) == OHM_WITHIN, "2.31k at 21.5 C is within");
  expect(ohm_finding_job(&finding) == OHM_UNDECIDED, "cold, the fan is not answered");
  expect(ohm_report_print(&finding, text, sizeof text) < sizeof text, "the report fits");
  fputs(text, stdout);
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
