/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

#include "json.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

struct measurement {
  ohm_reading reading;
  ohm_meter meter;
  ohm_reference reference;
  ohm_check check;
};

static int read_level(const char *text, double *level) {
  if (ohm_number_read(text, strlen(text), level) == OHM_OK && 0.5 < *level && *level < 1)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is no level: write a number above 0.5 and below 1, such as 0.95", text);
}

static int read_measurement(const struct ohm_arguments *arguments, struct measurement *all) {
  const char *const *values = arguments->values;
  const char *meter = values[OHM_OPTION_METER], *leads = values[OHM_OPTION_LEADS];
  const char *tolerance = values[OHM_OPTION_TOLERANCE], *level = values[OHM_OPTION_LEVEL];
  ohm_error error;
  if (ohm_reading_read(arguments->operands[1], &all->reading, &error) ||
      ohm_reference_read(values[OHM_OPTION_AT], &all->reference, &error) ||
      (meter && ohm_meter_read(meter, &all->meter, &error)) ||
      (leads && ohm_leads_read(leads, &all->meter, &error)) ||
      (tolerance && ohm_tolerance_read(tolerance, &all->check.tolerance_percent, &error)))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  return level ? read_level(level, &all->check.level) : OHM_EXIT_DONE;
}

static void write_list(struct ohm_json *json, const ohm_finding *finding, int field) {
  if (!ohm_finding_text(finding, field, 0))
    return;
  ohm_json_list_begin(json, ohm_field_name(field));
  const char *text;
  for (size_t i = 0; (text = ohm_finding_text(finding, field, i)) != NULL; i++)
    ohm_json_list_text(json, text);
  ohm_json_list_end(json);
}

static void write_json(const ohm_finding *finding) {
  struct ohm_json json;
  ohm_json_begin(&json);
  for (int field = 0; ohm_field_name(field); field++) {
    int kind = ohm_field_kind_of(field);
    if (kind == OHM_KIND_NUMBER)
      ohm_json_number(&json, ohm_field_name(field), ohm_finding_number(finding, field));
    else if (kind == OHM_KIND_TEXT)
      ohm_json_text(&json, ohm_field_name(field), ohm_finding_text(finding, field, 0));
    else
      write_list(&json, finding, field);
  }
  ohm_json_end(&json);
}

static int write_report(const ohm_finding *finding) {
  size_t size = ohm_report_print(finding, NULL, 0) + 1;
  char *report = malloc(size);
  if (!report)
    return ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  ohm_report_print(finding, report, size);
  fputs(report, stdout);
  free(report);
  return OHM_EXIT_DONE;
}

static int judge(const struct ohm_arguments *arguments, const ohm_sensor *sensor,
                 const struct measurement *all) {
  ohm_finding finding;
  ohm_status status =
      ohm_bath_check(sensor, &all->reading, &all->meter, &all->reference, &all->check, &finding);
  if (status != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
  if (arguments->values[OHM_OPTION_JSON])
    write_json(&finding);
  else if (write_report(&finding) != OHM_EXIT_DONE)
    return OHM_EXIT_MEMORY;
  return (int)ohm_finding_verdict(&finding);
}

int ohm_check_run(const struct ohm_arguments *arguments) {
  struct measurement all = {OHM_READING_INIT, OHM_METER_INIT, OHM_REFERENCE_INIT, OHM_CHECK_INIT};
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (!sensor)
    return status;
  status = read_measurement(arguments, &all);
  if (status == OHM_EXIT_DONE)
    status = judge(arguments, sensor, &all);
  ohm_sensor_free(sensor);
  return status;
}
