/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "sensors.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "options.h"
#include "screen.h"

const char shell_sensor_unknown[] = "unknown";

static bool is_built_in(const char *name) {
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++)
    if (strcmp(ohm_sensor_built_in_name(i), name) == 0)
      return true;
  return false;
}

static bool is_file(const char *name) {
  size_t length = strlen(name);
  bool ends_in_csv = length > 4 && strcmp(name + length - 4, ".csv") == 0;
  return strchr(name, '/') || ends_in_csv || access(name, F_OK) == 0;
}

static int refuse_name(const char *name) {
  const char *near = ohm_sensor_built_in_nearest(name);
  if (near)
    return shell_refuse(SHELL_EXIT_MISSING,
                        "no sensor is called %s; did you mean %s? 'ohmcurve parts' lists them",
                        name, near);
  return shell_refuse(SHELL_EXIT_MISSING,
                      "no sensor is called \"%s\", and no file either: 'ohmcurve parts' lists the "
                      "sensors built in",
                      name);
}

/* The description of a built-in sensor, written after its name. */
static void write_match(size_t index) {
  ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(index), NULL);
  fprintf(stderr, "  %-16s%s\n", ohm_sensor_built_in_name(index),
          sensor ? ohm_sensor_description(sensor) : "");
  ohm_sensor_free(sensor);
}

static int refuse_matches(const char *words, const size_t *matches, size_t count) {
  int status = shell_refuse(SHELL_EXIT_MISSING,
                            "%zu sensors fit \"%s\": write the name of one of them, or more words",
                            count, words);
  for (size_t i = 0; i < count; i++)
    write_match(matches[i]);
  return status;
}

static ohm_sensor *take_match(size_t index, int *status) {
  char text[512];
  ohm_sensor *sensor = shell_sensor_named(ohm_sensor_built_in_name(index), status);
  if (!sensor)
    return NULL;
  snprintf(text, sizeof text, "%s (%s); one reading near 20 C tells whether it is this family",
           ohm_sensor_name(sensor), ohm_sensor_description(sensor));
  shell_remark("taken", text);
  return sensor;
}

static ohm_sensor *sensor_by_words(const char *words, int *status) {
  size_t count = ohm_sensor_built_in_matches(words, NULL, 0);
  if (count == 0) {
    *status = refuse_name(words);
    return NULL;
  }
  size_t *matches = calloc(count, sizeof *matches);
  if (!matches) {
    *status = shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
    return NULL;
  }
  ohm_sensor_built_in_matches(words, matches, count);
  ohm_sensor *sensor = NULL;
  if (count == 1)
    sensor = take_match(matches[0], status);
  else
    *status = refuse_matches(words, matches, count);
  free(matches);
  return sensor;
}

ohm_sensor *shell_sensor_named(const char *name, int *status) {
  bool built_in = is_built_in(name);
  if (strcmp(name, shell_sensor_unknown) == 0) {
    *status =
        shell_refuse(SHELL_EXIT_MISSING, "unknown is a sensor for check alone: write which one "
                                         "it is, 'ohmcurve parts' lists them");
    return NULL;
  }
  if (!built_in && !is_file(name))
    return sensor_by_words(name, status);
  ohm_error error;
  ohm_sensor *sensor =
      built_in ? ohm_sensor_built_in_load(name, &error) : ohm_sensor_load(name, &error);
  if (!sensor) {
    *status = shell_refuse_load(&error, "");
    return NULL;
  }
  for (size_t i = 0; i < ohm_sensor_note_count(sensor); i++)
    shell_remark("note", ohm_sensor_note(sensor, i));
  return sensor;
}

/* In the digits it takes to name the end of a curve and nothing beyond it. */
static void print_end(double r_ohm, char text[SHELL_CELL_SIZE]) {
  enum { FEWEST = 4, MOST = 9 };
  for (int digits = FEWEST; digits <= MOST; digits++) {
    double shown_ohm;
    ohm_resistance_print(r_ohm, digits, text, SHELL_CELL_SIZE);
    if (ohm_resistance_read(text, &shown_ohm, NULL) == OHM_OK &&
        fabs(shown_ohm - r_ohm) <= 1e-7 * r_ohm)
      return;
  }
}

int shell_refuse_outside(const ohm_sensor *sensor, const char *place, const char *what,
                         const char *advice) {
  double low_c, high_c, at_low_ohm, at_high_ohm;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  char low[OHM_NUMBER_SIZE], high[OHM_NUMBER_SIZE];
  char at_low[SHELL_CELL_SIZE], at_high[SHELL_CELL_SIZE];
  ohm_number_print(low_c, low, sizeof low);
  ohm_number_print(high_c, high, sizeof high);
  print_end(at_low_ohm, at_low);
  print_end(at_high_ohm, at_high);
  return shell_refuse(SHELL_EXIT_DATA,
                      "%s%s is outside of the curve: %s reaches from %s C (%s) to %s C (%s)%s",
                      place, what, ohm_sensor_name(sensor), low, at_low, high, at_high, advice);
}
