/* SPDX-License-Identifier: MIT */
#include "scene.h"
#include "../lib/answers/bath.h"

#include <string.h>

struct scene scene_exact(double r_ohm, double t_c) {
  struct scene scene = {OC_READING_INIT, OC_METER_INIT, OC_REFERENCE_INIT, OC_CHECK_INIT};
  scene.reading.r_ohm = r_ohm;
  scene.meter.accuracy = OC_EXACT;
  scene.meter.leads = OC_EXACT;
  scene.reference.t_c = t_c;
  scene.reference.accuracy = OC_EXACT;
  scene.check.place = OHM_PLACE_SENSOR;
  scene.check.fan_c = OC_ASSUMED_FAN_C;
  scene.check.limit_k = OC_ASSUMED_FAN_LIMIT_K;
  return scene;
}

struct scene scene_typed(const char *reading, const char *reference) {
  struct scene scene = {OC_READING_INIT, OC_METER_INIT, OC_REFERENCE_INIT, OC_CHECK_INIT};
  ohm_error error;
  ck_assert_msg(oc_reading_read(reading, &scene.reading, &error) == OHM_OK, "%s", error.message);
  ck_assert_msg(oc_reference_read(reference, &scene.reference, &error) == OHM_OK, "%s",
                error.message);
  return scene;
}

ohm_sensor *sensor_of(const char *text) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "ntc", &error);
  if (!sensor)
    ck_abort_msg("%s", error.message);
  return sensor;
}

ohm_sensor *sensor_built_in(const char *name) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_built_in_load(name, &error);
  if (!sensor)
    ck_abort_msg("%s", error.message);
  return sensor;
}

ohm_finding scene_judged(const ohm_sensor *sensor, const struct scene *scene) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check, OHM_OK,
           oc_bath_check(sensor, &scene->reading, &scene->meter, &scene->reference, &scene->check,
                         &finding));
  return finding;
}

ohm_finding typed(const char *sensor_name, const char *reading, const char *reference,
                  ohm_place place) {
  ohm_sensor *sensor = sensor_built_in(sensor_name);
  struct scene scene = scene_typed(reading, reference);
  scene.check.place = (int)place;
  ohm_finding finding = scene_judged(sensor, &scene);
  ohm_sensor_free(sensor);
  return finding;
}

double number_in(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

void check_verdict(const ohm_finding *finding, ohm_verdict verdict, const char *reason) {
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_REASON, 0), reason);
  ck_assert_int_eq(ohm_finding_verdict(finding), verdict);
}

void check_job(const ohm_finding *finding, ohm_verdict job, const char *reason) {
  ck_assert_str_eq(ohm_finding_text(finding, OHM_FIELD_JOB_REASON, 0), reason);
  ck_assert_int_eq(ohm_finding_job(finding), job);
}

const char *report_of(const ohm_finding *finding) {
  static char text[8000];
  ck_assert_uint_lt(ohm_finding_print_report(finding, text, sizeof text), sizeof text);
  return text;
}

const char *budget_of(const ohm_finding *finding) {
  static char text[8000];
  ck_assert_uint_lt(ohm_finding_print_budget(finding, text, sizeof text), sizeof text);
  return text;
}

void check_has(const char *text, const char *part) {
  ck_assert_msg(strstr(text, part) != NULL, "no \"%s\" in:\n%s", part, text);
}

void check_has_not(const char *text, const char *part) {
  ck_assert_msg(strstr(text, part) == NULL, "\"%s\" in:\n%s", part, text);
}
