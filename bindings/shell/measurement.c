/* SPDX-License-Identifier: MIT */
#include "measurement.h"

#include <string.h>

#include "screen.h"

/* The library's own ranges of what is read here; it has no notations for them. */
static const double fan_most_c = 130;
static const double limit_most_k = 100;
static const double current_most_ma = 1000;

struct unit {
  const char *name;
  double factor;
};

static bool ends_in(const char *text, size_t length, const char *end) {
  size_t end_length = strlen(end);
  return length >= end_length && memcmp(text + length - end_length, end, end_length) == 0;
}

/* A number and one of the units, which end at one without a name. */
static bool read_amount(const char *text, const struct unit *units, double *value) {
  for (; units->name; units++) {
    size_t length = strlen(text);
    if (!ends_in(text, length, units->name))
      continue;
    length -= strlen(units->name);
    while (length > 0 && text[length - 1] == ' ')
      length--;
    if (ohm_number_read(text, length, value) != OHM_OK)
      return false;
    *value *= units->factor;
    return true;
  }
  return false;
}

int ohm_measurement_read_level(const char *text, double *level) {
  if (ohm_number_read(text, strlen(text), level) == OHM_OK && 0.5 < *level && *level < 1)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is no level: write a number above 0.5 and below 1, such as 0.95", text);
}

static int read_place(const char *text, int *place) {
  static const char *const names[] = {"sensor", "plug-on", "module"};
  static const int places[] = {OHM_PLACE_SENSOR, OHM_PLACE_PLUG_ON, OHM_PLACE_MODULE};
  for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
    if (strcmp(text, names[i]) == 0) {
      *place = places[i];
      return OHM_EXIT_DONE;
    }
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is no place of the probes: write sensor, plug-on or module", text);
}

int ohm_measurement_read_fan(const char *text, double *fan_c) {
  ohm_error error;
  if (ohm_temperature_read(text, fan_c, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "--fan: %s", error.message);
  if (0 < *fan_c && *fan_c < fan_most_c)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "no fan starts at %s: write a temperature above 0C and below 130C, such as 97C",
                    text);
}

int ohm_measurement_read_limit(const char *text, double *limit_k) {
  static const struct unit units[] = {{"K", 1}, {"C", 1}, {"", 1}, {NULL, 0}};
  if (read_amount(text, units, limit_k) && 0 < *limit_k && *limit_k <= limit_most_k)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is no limit: write by how many degrees the fan may be late or early, "
                    "above 0 and up to 100, such as 5 or 5K",
                    text);
}

static int read_current(const char *text, double *current_ma) {
  /* Two characters are typed for micro. */
  static const struct unit units[] = {
      {"mA", 1},  {"uA", 1e-3}, {"\xC2\xB5\x41", 1e-3}, {"\xCE\xBC\x41", 1e-3},
      {"A", 1e3}, {NULL, 0}};
  if (read_amount(text, units, current_ma) && 0 < *current_ma && *current_ma <= current_most_ma)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is no test current: write it with its unit, above 0 and up to 1A, such "
                    "as 1mA or 100uA",
                    text);
}

int ohm_measurement_read_meter(const struct ohm_arguments *arguments, ohm_meter *read) {
  const char *meter = arguments->values[OHM_OPTION_METER];
  const char *leads = arguments->values[OHM_OPTION_LEADS];
  const char *current = arguments->values[OHM_OPTION_CURRENT];
  ohm_error error;
  if ((meter && ohm_meter_read(meter, read, &error)) ||
      (leads && ohm_leads_read(leads, read, &error)))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  return current ? read_current(current, &read->current_ma) : OHM_EXIT_DONE;
}

static int read_check(const struct ohm_arguments *arguments, ohm_check *check) {
  const char *const *values = arguments->values;
  ohm_error error;
  int status = OHM_EXIT_DONE;
  check->band = values[OHM_OPTION_BAND];
  if (check->band && values[OHM_OPTION_TOLERANCE])
    return ohm_refuse(OHM_EXIT_USAGE,
                      "--band and --tolerance both say what is allowed: write one of them");
  if (values[OHM_OPTION_TOLERANCE] &&
      ohm_tolerance_read(values[OHM_OPTION_TOLERANCE], &check->tolerance_percent, &error))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (values[OHM_OPTION_LEVEL])
    status = ohm_measurement_read_level(values[OHM_OPTION_LEVEL], &check->level);
  if (values[OHM_OPTION_PLACE] && status == OHM_EXIT_DONE)
    status = read_place(values[OHM_OPTION_PLACE], &check->place);
  if (values[OHM_OPTION_FAN] && status == OHM_EXIT_DONE)
    status = ohm_measurement_read_fan(values[OHM_OPTION_FAN], &check->fan_c);
  if (values[OHM_OPTION_LIMIT] && status == OHM_EXIT_DONE)
    status = ohm_measurement_read_limit(values[OHM_OPTION_LIMIT], &check->limit_k);
  return status;
}

static int read_how(const struct ohm_arguments *arguments, struct ohm_measurement *measurement) {
  int status = ohm_measurement_read_meter(arguments, &measurement->meter);
  return status == OHM_EXIT_DONE ? read_check(arguments, &measurement->check) : status;
}

int ohm_measurement_read_how(const struct ohm_arguments *arguments,
                             struct ohm_measurement *measurement) {
  *measurement = (struct ohm_measurement){.meter = OHM_METER_INIT, .check = OHM_CHECK_INIT};
  return read_how(arguments, measurement);
}

int ohm_measurement_read(const struct ohm_arguments *arguments,
                         struct ohm_measurement *measurement) {
  *measurement = (struct ohm_measurement){.meter = OHM_METER_INIT, .check = OHM_CHECK_INIT};
  int status = ohm_measurement_read_readings(arguments, measurement);
  return status == OHM_EXIT_DONE ? read_how(arguments, measurement) : status;
}
