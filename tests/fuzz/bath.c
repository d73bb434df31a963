/* SPDX-License-Identifier: MIT */
/*
 * Checks from bytes: any reading, meter, reference and strictness a caller could hand
 * over, against the built-in sensors.
 */
#include "bytes.h"
#include "../../lib/answers/bath.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { READINGS_MAX = 4 };

/* What an earlier call left in them must not be taken for what this one found. */
static void stale_findings(ohm_finding *findings) {
  oc_reading reading = OC_READING_INIT;
  oc_reference reference = OC_REFERENCE_INIT;
  reading.display = OC_DISPLAY_OPEN;
  for (size_t i = 0; i < READINGS_MAX; i++)
    oc_bath_check(sensor_at(0), &reading, NULL, &reference, NULL, &findings[i]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  struct bytes bytes = {data, size};
  unsigned first = take(&bytes);
  const ohm_sensor *sensor = sensor_at(first / 16 % ohm_sensor_built_in_count());
  size_t count = first % 4 + 1;
  char name[NAME_SIZE] = "";
  oc_meter meter = take_meter(&bytes);
  oc_check check = take_check(&bytes, sensor, name);
  const oc_meter *meter_told = first & 4 ? &meter : NULL;
  const oc_check *check_told = first & 8 ? &check : NULL;
  oc_reading readings[READINGS_MAX];
  oc_reference references[READINGS_MAX];
  ohm_finding findings[READINGS_MAX];
  findings_begin(findings, READINGS_MAX);
  for (size_t i = 0; i < count; i++) {
    readings[i] = take_reading(&bytes);
    references[i] = take_reference(&bytes);
  }
  stale_findings(findings);
  ohm_finding finding = finding_new();
  ohm_status status =
      oc_bath_check(sensor, &readings[0], meter_told, &references[0], check_told, &finding);
  require(is_status(status), "a status is one of those named");
  if (status == OHM_OK)
    require_finding(&finding, 0);
  else
    require_nothing(&finding);
  status = oc_bath_check_several(sensor, readings, references, count, meter_told, check_told,
                                 findings, &finding);
  require(is_status(status), "a status is one of those named");
  for (size_t i = 0; i < count; i++)
    if (status == OHM_OK)
      require_finding(&findings[i], 0);
    else
      require_nothing(&findings[i]);
  if (status == OHM_OK)
    require_finding(&finding, 1);
  else
    require_nothing(&finding);
  findings_free();
  return 0;
}
