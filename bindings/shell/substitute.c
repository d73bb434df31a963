/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "findings.h"
#include "input.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { DRAWER_MAX = 64, VALUE_SIZE = 40, FITTED = 2 };

static int write_finding(const ohm_finding *finding, bool as_json) {
  if (!as_json)
    return ohm_findings_write_report(finding);
  ohm_findings_write_json(finding);
  return OHM_EXIT_DONE;
}

/* ---- which resistor ---- */

static int read_drawer(const char *text, double *values_ohm, size_t *count) {
  while (*text) {
    char value[VALUE_SIZE];
    size_t length = strcspn(text, ",");
    ohm_reading reading;
    ohm_error error;
    if (*count == DRAWER_MAX)
      return ohm_refuse(OHM_EXIT_DATA, "a drawer of more than %d values: write those that are near",
                        DRAWER_MAX);
    snprintf(value, sizeof value, "%.*s", (int)(length < sizeof value ? length : sizeof value - 1),
             text);
    if (length >= sizeof value || ohm_reading_read(value, &reading, &error) != OHM_OK ||
        !(reading.r_ohm > 0))
      return ohm_refuse(OHM_EXIT_DATA,
                        "\"%s\" is no resistor of a drawer: write values with commas between, such "
                        "as 100,220,330,1k",
                        value);
    values_ohm[(*count)++] = reading.r_ohm;
    text += length + (text[length] == ',');
  }
  return OHM_EXIT_DONE;
}

static int read_request(const struct ohm_arguments *arguments, ohm_substitute *substitute,
                        double *drawer_ohm) {
  static const char *const series[] = {"E12", "E24", "E96", NULL};
  const char *const *values = arguments->values;
  ohm_error error;
  int status = OHM_EXIT_DONE;
  if (values[OHM_OPTION_SERIES] && values[OHM_OPTION_DRAWER])
    return ohm_refuse(OHM_EXIT_USAGE, "--series and --drawer both say what to choose from: write "
                                      "one of them");
  if (arguments->count > 1 &&
      ohm_temperature_read(arguments->operands[1], &substitute->aim_c, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (arguments->count > 1 && substitute->aim_c == 0)
    return ohm_refuse(OHM_EXIT_DATA, "0C asks for no fan: write a temperature above it");
  if (values[OHM_OPTION_TOLERANCE] &&
      ohm_tolerance_read(values[OHM_OPTION_TOLERANCE], &substitute->tolerance_percent, &error))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (substitute->tolerance_percent >= 50)
    return ohm_refuse(OHM_EXIT_DATA, "\"%s\" is no tolerance of a resistor: write less than 50%%",
                      values[OHM_OPTION_TOLERANCE]);
  if (values[OHM_OPTION_FAN])
    status = ohm_measurement_read_fan(values[OHM_OPTION_FAN], &substitute->fan_c);
  if (values[OHM_OPTION_SERIES] && status == OHM_EXIT_DONE)
    status = ohm_input_read_word(values[OHM_OPTION_SERIES], series, "series of resistors",
                                 &substitute->series);
  if (values[OHM_OPTION_DRAWER] && status == OHM_EXIT_DONE)
    status = read_drawer(values[OHM_OPTION_DRAWER], drawer_ohm, &substitute->drawer_count);
  return status;
}

static int find(const struct ohm_arguments *arguments, const ohm_sensor *sensor) {
  double drawer_ohm[DRAWER_MAX];
  ohm_substitute substitute = OHM_SUBSTITUTE_INIT;
  ohm_module module = OHM_MODULE_INIT;
  ohm_finding single, pair;
  bool as_json = arguments->values[OHM_OPTION_JSON] != NULL;
  substitute.drawer_ohm = drawer_ohm;
  int status = read_request(arguments, &substitute, drawer_ohm);
  if (status == OHM_EXIT_DONE)
    status = ohm_input_read_module(arguments, &module);
  if (status != OHM_EXIT_DONE)
    return status;
  ohm_status found = ohm_substitute_find(sensor, &module, &substitute, &single, &pair);
  if (found != OHM_OK)
    return ohm_input_refuse(sensor, found, arguments->count > 1 ? arguments->operands[1] : "it",
                            arguments->count > 1 ? substitute.aim_c : NAN);
  status = write_finding(&single, as_json);
  if (ohm_finding_text(&pair, OHM_FIELD_ABOUT, 0) && status == OHM_EXIT_DONE) {
    if (!as_json)
      puts("\nOr two of them:\n");
    status = write_finding(&pair, as_json);
  }
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&single) : status;
}

/* ---- the loom, by two that were fitted ---- */

struct fitted {
  ohm_reading readings[FITTED];
  ohm_reported reported[FITTED];
  ohm_meter meter;
  ohm_pin pin;
};

static int read_fitted(const struct ohm_arguments *arguments, struct fitted *fitted) {
  for (size_t i = 0; i < FITTED; i++) {
    char *text = arguments->operands[1 + i];
    char *at = strrchr(text, '@');
    ohm_error error;
    if (!at)
      return ohm_refuse(OHM_EXIT_USAGE,
                        "\"%s\" lacks what the module reported with it: write it behind an @, as "
                        "179.4@93C",
                        text);
    *at = '\0';
    if (ohm_reading_read(text, &fitted->readings[i], &error) != OHM_OK)
      return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
    int status = ohm_input_read_reported(arguments, at + 1, &fitted->reported[i]);
    if (status != OHM_EXIT_DONE)
      return status;
  }
  int status = ohm_measurement_read_meter(arguments, &fitted->meter);
  return status == OHM_EXIT_DONE ? ohm_input_read_pin(arguments, &fitted->pin) : status;
}

static int refuse_loom(const ohm_sensor *sensor, ohm_status status, const struct fitted *fitted) {
  if (status == OHM_BAD_DEFINITION)
    return ohm_refuse(OHM_EXIT_DATA, "the two resistors are too near to each other: take one of "
                                     "half the other's ohms at most");
  for (size_t i = 0; i < FITTED; i++)
    if (fitted->readings[i].display != OHM_DISPLAY_VALUE)
      return ohm_refuse(OHM_EXIT_DATA, "a resistor needs a number: measure it on a higher range");
  double r_ohm;
  for (size_t i = 0; i < FITTED; i++)
    if (ohm_curve_resistance(ohm_sensor_curve(sensor), fitted->reported[i].t_c, &r_ohm))
      return ohm_input_refuse(sensor, status, "what the module reported", fitted->reported[i].t_c);
  return ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}

static int loom(const struct ohm_arguments *arguments, const ohm_sensor *sensor) {
  struct fitted fitted = {.meter = OHM_METER_INIT, .pin = OHM_PIN_INIT};
  ohm_finding finding;
  int status = read_fitted(arguments, &fitted);
  if (status != OHM_EXIT_DONE)
    return status;
  ohm_status found = ohm_loom_check(sensor, fitted.readings, &fitted.meter, fitted.reported,
                                    &fitted.pin, &finding);
  if (found != OHM_OK)
    return refuse_loom(sensor, found, &fitted);
  status = write_finding(&finding, arguments->values[OHM_OPTION_JSON] != NULL);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&finding) : status;
}

int ohm_substitute_run(const struct ohm_arguments *arguments) {
  int status = OHM_EXIT_DONE;
  bool one_fitted = arguments->count == 2 && strchr(arguments->operands[1], '@');
  if (one_fitted)
    return ohm_refuse(OHM_EXIT_USAGE, "one resistor tells the loom from nothing: write two of "
                                      "them, such as 179.4@93C 998@42C");
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (sensor)
    status = arguments->count == 1 + FITTED ? loom(arguments, sensor) : find(arguments, sensor);
  ohm_sensor_free(sensor);
  return status;
}
