/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "sensors.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>
#include <unistd.h>

#include "options.h"
#include "screen.h"

static bool is_built_in(const char *name) {
  for (size_t i = 0; i < ohm_catalogue_count(); i++)
    if (strcmp(ohm_catalogue_name(i), name) == 0)
      return true;
  return false;
}

static bool is_file(const char *name) {
  size_t length = strlen(name);
  bool ends_in_csv = length > 4 && strcmp(name + length - 4, ".csv") == 0;
  return strchr(name, '/') || ends_in_csv || access(name, F_OK) == 0;
}

static int refuse_name(const char *name) {
  const char *near = ohm_catalogue_nearest(name);
  if (near)
    return ohm_refuse(OHM_EXIT_MISSING,
                      "no sensor is called %s; did you mean %s? 'ohmcurve parts' lists them", name,
                      near);
  return ohm_refuse(OHM_EXIT_MISSING,
                    "no sensor is called \"%s\", and no file either: 'ohmcurve parts' lists the "
                    "sensors built in",
                    name);
}

static int exit_for(int status) {
  switch (status) {
  case OHM_CANNOT_OPEN:
  case OHM_NOT_FOUND:
    return OHM_EXIT_MISSING;
  case OHM_NO_MEMORY:
    return OHM_EXIT_MEMORY;
  default:
    return OHM_EXIT_DATA;
  }
}

ohm_sensor *ohm_sensor_named(const char *name, int *status) {
  bool built_in = is_built_in(name);
  if (!built_in && !is_file(name)) {
    *status = refuse_name(name);
    return NULL;
  }
  ohm_error error;
  ohm_sensor *sensor = built_in ? ohm_catalogue_load(name, &error) : ohm_sensor_load(name, &error);
  if (!sensor) {
    *status = ohm_refuse(exit_for(error.status), "%s", error.message);
    return NULL;
  }
  for (size_t i = 0; i < ohm_sensor_note_count(sensor); i++)
    ohm_remark(ohm_sensor_note(sensor, i));
  return sensor;
}

/* In the digits it takes to name the end of a curve and nothing beyond it. */
static void print_end(double r_ohm, char text[OHM_CELL_SIZE]) {
  enum { FEWEST = 4, MOST = 9 };
  for (int digits = FEWEST; digits <= MOST; digits++) {
    ohm_reading reading = OHM_READING_INIT;
    ohm_resistance_print(r_ohm, digits, text, OHM_CELL_SIZE);
    if (ohm_reading_read(text, &reading, NULL) == OHM_OK &&
        fabs(reading.r_ohm - r_ohm) <= 1e-7 * r_ohm)
      return;
  }
}

int ohm_refuse_outside(const ohm_sensor *sensor, const char *place, const char *what,
                       const char *advice) {
  double low_c, high_c, at_low_ohm, at_high_ohm;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  char low[OHM_NUMBER_SIZE], high[OHM_NUMBER_SIZE];
  char at_low[OHM_CELL_SIZE], at_high[OHM_CELL_SIZE];
  ohm_number_print(low_c, low, sizeof low);
  ohm_number_print(high_c, high, sizeof high);
  print_end(at_low_ohm, at_low);
  print_end(at_high_ohm, at_high);
  return ohm_refuse(OHM_EXIT_DATA,
                    "%s%s is outside of the curve: %s reaches from %s C (%s) to %s C (%s)%s", place,
                    what, ohm_sensor_name(sensor), low, at_low, high, at_high, advice);
}
