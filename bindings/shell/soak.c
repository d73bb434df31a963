/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "findings.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { COMPANIONS_MAX = 8, WORD_MAX = 64 };

/* A car that stood, as the command line tells it. */
struct car {
  struct ohm_measurement measured; /* of it the meter and the check */
  ohm_reading reading;
  ohm_reference air;
  bool has_air;
  ohm_soak soak;
  ohm_history *history;
  ohm_companion companions[COMPANIONS_MAX];
};

static int refuse_hours(const char *option, const char *text, const char *advice) {
  return ohm_refuse(OHM_EXIT_DATA, "%s: \"%s\" is no count of hours: %s", option, text, advice);
}

/* A number of hours, an h behind it or not. */
static bool is_hours(const char *text, size_t length, double *hours) {
  if (length > 0 && text[length - 1] == 'h')
    length--;
  return ohm_number_read(text, length, hours) == OHM_OK && 0 < *hours && *hours <= OHM_SOAK_MOST_H;
}

static int read_hours(const char *text, struct car *car) {
  if (!text || is_hours(text, strlen(text), &car->soak.after_h))
    return OHM_EXIT_DONE;
  return refuse_hours("--hours", text, "write a number above 0 and up to 1000, such as 7 or 7h");
}

static int read_tau(const char *text, ohm_soak *soak) {
  const char *dash = text ? strchr(text, '-') : NULL;
  if (!text)
    return OHM_EXIT_DONE;
  if (dash && is_hours(text, (size_t)(dash - text), &soak->tau_low_h) &&
      is_hours(dash + 1, strlen(dash + 1), &soak->tau_high_h) &&
      soak->tau_low_h <= soak->tau_high_h)
    return OHM_EXIT_DONE;
  return refuse_hours("--tau", text, "write the least and the greatest, such as 1h-4h");
}

static int read_stop(const char *text, ohm_soak *soak) {
  ohm_reference stop;
  ohm_error error;
  if (!text)
    return OHM_EXIT_DONE;
  if (ohm_reference_read(text, &stop, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "--from: %s", error.message);
  if (stop.kind != OHM_REFERENCE_THERMOMETER)
    return ohm_refuse(OHM_EXIT_DATA, "--from: \"%s\" is no temperature: write it as 92C or 92C+-3",
                      text);
  soak->stop_c = stop.t_c;
  soak->stop_limit_k = stop.limit_k;
  soak->start = stop.accuracy;
  return OHM_EXIT_DONE;
}

static int read_allow(const char *text, double *allow_k) {
  if (!text)
    return OHM_EXIT_DONE;
  size_t length = strlen(text);
  if (length > 0 && (text[length - 1] == 'C' || text[length - 1] == 'K'))
    length--;
  if (ohm_number_read(text, length, allow_k) == OHM_OK && 0 < *allow_k && *allow_k <= 100)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "--allow: \"%s\" is no difference: write degrees above 0 and up to 100, such "
                    "as 9 or 9C",
                    text);
}

static int read_air(const struct ohm_arguments *arguments, struct car *car) {
  const char *air = arguments->values[OHM_OPTION_AIR];
  const char *path = arguments->values[OHM_OPTION_HISTORY];
  ohm_error error;
  car->has_air = air != NULL;
  if (air && ohm_reference_read(air, &car->air, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "--air: %s", error.message);
  if (air && car->air.kind != OHM_REFERENCE_THERMOMETER)
    return ohm_refuse(OHM_EXIT_DATA, "--air: \"%s\" is no air: write it as 9C or 9C+-2", air);
  if (!air && !path)
    return ohm_refuse(OHM_EXIT_USAGE, "--air is missing: write what the air was, such as --air "
                                      "9C+-2, or a file of it with --history");
  if (!path && !arguments->values[OHM_OPTION_HOURS])
    return ohm_refuse(OHM_EXIT_USAGE, "--hours is missing: write how long it stood, such as "
                                      "--hours 7");
  if (!path)
    return OHM_EXIT_DONE;
  car->history = ohm_history_load(path, &error);
  car->soak.history = car->history;
  if (car->history)
    return OHM_EXIT_DONE;
  return ohm_refuse(error.status == OHM_CANNOT_OPEN ? OHM_EXIT_MISSING
                    : error.status == OHM_NO_MEMORY ? OHM_EXIT_MEMORY
                                                    : OHM_EXIT_DATA,
                    "%s", error.message);
}

/* "intake=10.5C" */
static int read_companion(const char *text, ohm_companion *companion) {
  static const char *const kinds[] = {"coolant", "intake", "oil", "ambient"};
  const char *equals = strchr(text, '=');
  size_t length = equals ? (size_t)(equals - text) : strlen(text);
  ohm_reference shown;
  ohm_error error;
  companion->kind = -1;
  for (int kind = 0; kind < 4; kind++)
    if (strlen(kinds[kind]) == length && memcmp(text, kinds[kind], length) == 0)
      companion->kind = kind;
  if (!equals || companion->kind < 0)
    return ohm_refuse(
        OHM_EXIT_DATA,
        "--with: \"%s\" is no other sensor: write coolant, intake, oil or ambient and "
        "what it shows, such as intake=10.5C,ambient=9C",
        text);
  if (ohm_reference_read(equals + 1, &shown, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "--with: %s", error.message);
  if (shown.kind != OHM_REFERENCE_THERMOMETER)
    return ohm_refuse(OHM_EXIT_DATA, "--with: \"%s\" is no temperature: write it as intake=10.5C",
                      text);
  companion->t_c = shown.t_c;
  companion->limit_k = shown.limit_k;
  return OHM_EXIT_DONE;
}

static int read_companions(const char *list, struct car *car) {
  car->soak.companions = car->companions;
  while (list && *list) {
    char word[WORD_MAX];
    size_t length = strcspn(list, ",");
    if (length >= sizeof word || car->soak.companion_count == COMPANIONS_MAX)
      return ohm_refuse(OHM_EXIT_DATA,
                        "--with: that is too much: write %d sensors at most, such "
                        "as intake=10.5C,ambient=9C",
                        COMPANIONS_MAX);
    memcpy(word, list, length);
    word[length] = '\0';
    ohm_companion *companion = &car->companions[car->soak.companion_count++];
    *companion = (ohm_companion)OHM_COMPANION_INIT;
    int status = read_companion(word, companion);
    if (status != OHM_EXIT_DONE)
      return status;
    list += length + (list[length] == ',');
  }
  return OHM_EXIT_DONE;
}

static int read_car(const struct ohm_arguments *arguments, struct car *car) {
  const char *const *values = arguments->values;
  ohm_error error;
  car->soak.extend = values[OHM_OPTION_EXTEND] != NULL;
  car->soak.undisturbed = values[OHM_OPTION_UNDISTURBED] != NULL;
  if (ohm_reading_read(arguments->operands[1], &car->reading, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  int status = ohm_measurement_read_how(arguments, &car->measured);
  if (status == OHM_EXIT_DONE)
    status = read_hours(values[OHM_OPTION_HOURS], car);
  if (status == OHM_EXIT_DONE)
    status = read_tau(values[OHM_OPTION_TAU], &car->soak);
  if (status == OHM_EXIT_DONE)
    status = read_stop(values[OHM_OPTION_FROM], &car->soak);
  if (status == OHM_EXIT_DONE)
    status = read_allow(values[OHM_OPTION_ALLOW], &car->soak.allow_k);
  if (status == OHM_EXIT_DONE)
    status = read_companions(values[OHM_OPTION_WITH], car);
  return status == OHM_EXIT_DONE ? read_air(arguments, car) : status;
}

static int refuse_soak(ohm_status status, const struct car *car) {
  double last_h = 0;
  if (car->history)
    ohm_history_point(car->history, ohm_history_count(car->history) - 1, &last_h, NULL);
  if (status == OHM_OUT_OF_RANGE && car->history && !car->soak.extend && car->soak.after_h > last_h)
    return ohm_refuse(OHM_EXIT_DATA,
                      "the history ends %.1f h after the stop and the reading is of %.1f h: read "
                      "earlier, or write --extend when the air stayed as it was",
                      last_h, car->soak.after_h);
  return ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}

static int judge(const struct ohm_arguments *arguments, const ohm_sensor *sensor,
                 const struct car *car) {
  ohm_finding finding;
  ohm_status done =
      ohm_soak_check(sensor, &car->reading, &car->measured.meter, car->has_air ? &car->air : NULL,
                     &car->soak, &car->measured.check, &finding);
  int status = OHM_EXIT_DONE;
  if (done != OHM_OK)
    return refuse_soak(done, car);
  if (arguments->values[OHM_OPTION_JSON])
    ohm_findings_write_json(&finding);
  else
    status = ohm_findings_write_report(&finding);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&finding) : status;
}

int ohm_soak_run(const struct ohm_arguments *arguments) {
  struct car car = {.soak = OHM_SOAK_INIT};
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (status == OHM_EXIT_DONE)
    status = read_car(arguments, &car);
  if (status == OHM_EXIT_DONE)
    status = judge(arguments, sensor, &car);
  ohm_history_free(car.history);
  ohm_sensor_free(sensor);
  return status;
}
