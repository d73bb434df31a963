/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "findings.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

/* What was found on one sensor. */
struct answer {
  ohm_finding each[OHM_MEASUREMENT_MAX];
  ohm_finding together;
};

static int judge(const ohm_sensor *sensor, const struct ohm_measurement *all,
                 struct answer *answer) {
  ohm_status status =
      ohm_bath_check_several(sensor, all->readings, all->references, all->count, &all->meter,
                             &all->check, answer->each, &answer->together);
  return status == OHM_OK ? OHM_EXIT_DONE
                          : ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}

/* ---- a sensor that was named ---- */

static void write_json(const struct answer *answer, size_t count) {
  for (size_t i = 0; count > 1 && i < count; i++)
    ohm_findings_write_json(&answer->each[i]);
  ohm_findings_write_json(&answer->together);
}

static int write_budgets(const struct answer *answer, size_t count) {
  int status = OHM_EXIT_DONE;
  for (size_t i = 0; i < count && status == OHM_EXIT_DONE; i++) {
    char at[OHM_CELL_SIZE];
    ohm_findings_print_degrees(&answer->each[i], OHM_FIELD_AT_C, at);
    if (count > 1)
      printf("\n%s at %s, by itself\n", ohm_finding_text(&answer->each[i], OHM_FIELD_READ, 0), at);
    else
      putchar('\n');
    status = ohm_findings_write_budget(&answer->each[i]);
  }
  return status;
}

static int write_screen(const struct answer *answer, size_t count, bool budget) {
  if (count > 1) {
    ohm_findings_write_readings(answer->each, count);
    putchar('\n');
  }
  int status = ohm_findings_write_report(&answer->together);
  return budget && status == OHM_EXIT_DONE ? write_budgets(answer, count) : status;
}

static int check_named(const struct ohm_arguments *arguments, const ohm_sensor *sensor,
                       const struct ohm_measurement *all) {
  struct answer answer;
  int status = all->check.band ? ohm_sensor_need_band(sensor, all->check.band) : OHM_EXIT_DONE;
  if (status == OHM_EXIT_DONE)
    status = judge(sensor, all, &answer);
  if (status != OHM_EXIT_DONE)
    return status;
  if (arguments->values[OHM_OPTION_JSON])
    write_json(&answer, all->count);
  else
    status = write_screen(&answer, all->count, arguments->values[OHM_OPTION_BUDGET] != NULL);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&answer.together) : status;
}

/* ---- every sensor built in ---- */

enum { NAME_WIDTH = 23, VERDICT_WIDTH = 38 };

static void write_line(const char *name, const struct answer *answer, size_t count) {
  const char *verdict = ohm_findings_verdict(&answer->together);
  printf("%-*s%-*s", NAME_WIDTH, name, VERDICT_WIDTH, verdict);
  for (size_t i = 0; i < count; i++) {
    char means[OHM_CELL_SIZE];
    ohm_findings_print_degrees(&answer->each[i], OHM_FIELD_T_C, means);
    printf("%s%s", i == 0 ? "" : ", ", means);
  }
  putchar('\n');
}

static int check_each(const struct ohm_measurement *all, bool as_json) {
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    struct answer answer;
    int status = OHM_EXIT_DONE;
    ohm_sensor *sensor = ohm_sensor_named(ohm_sensor_built_in_name(i), &status);
    if (sensor)
      status = judge(sensor, all, &answer);
    ohm_sensor_free(sensor);
    if (status != OHM_EXIT_DONE)
      return status;
    if (as_json)
      ohm_findings_write_json(&answer.together);
    else
      write_line(ohm_sensor_built_in_name(i), &answer, all->count);
  }
  return OHM_EXIT_DONE;
}

static int check_unknown(const struct ohm_arguments *arguments, const struct ohm_measurement *all) {
  bool as_json = arguments->values[OHM_OPTION_JSON] != NULL;
  if (arguments->values[OHM_OPTION_BUDGET] || all->check.band)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "%s is about one sensor, and unknown is every one: leave it out, or write "
                      "which sensor it is",
                      all->check.band ? "--band" : "--budget");
  if (!as_json)
    printf("%-*s%-*s%s\n", NAME_WIDTH, "if it is", VERDICT_WIDTH, "it would be", "and it read");
  int status = check_each(all, as_json);
  if (status != OHM_EXIT_DONE)
    return status;
  if (!as_json) {
    putchar('\n');
    ohm_screen_wrap(0, all->count > 1
                           ? "A sensor known only by these readings cannot be checked by the same "
                             "readings. 'ohmcurve identify' says which go with them."
                           : "A sensor known only by this reading cannot be checked by the same "
                             "reading. 'ohmcurve identify' says which go with it, and what "
                             "tells them apart.");
  }
  return (int)OHM_UNDECIDED;
}

int ohm_check_run(const struct ohm_arguments *arguments) {
  struct ohm_measurement all;
  int status = OHM_EXIT_DONE;
  bool unknown = strcmp(arguments->operands[0], ohm_sensor_unknown) == 0;
  ohm_sensor *sensor = unknown ? NULL : ohm_sensor_named(arguments->operands[0], &status);
  if (status == OHM_EXIT_DONE)
    status = ohm_measurement_read(arguments, &all);
  if (status == OHM_EXIT_DONE)
    status = unknown ? check_unknown(arguments, &all) : check_named(arguments, sensor, &all);
  ohm_sensor_free(sensor);
  return status;
}
