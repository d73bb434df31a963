/* SPDX-License-Identifier: MIT */
#include <string.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "sensors.h"
#include "shelf.h"

/* ---- a sensor that nobody knows ---- */

/* What it is comes before whether it is good. */
static int check_unknown(const struct shell_arguments *arguments, ohm_bench *bench) {
  bool band = ohm_bench_setting(bench, OHM_SETTING_BAND) != NULL;
  if (arguments->values[SHELL_OPTION_BUDGET] || band)
    return shell_refuse(SHELL_EXIT_USAGE,
                        "%s is about one sensor, and unknown is every one: leave it out, or write "
                        "which sensor it is",
                        band ? "--band" : "--budget");
  struct shell_shelf shelf;
  int status = shell_shelf_load(&shelf, arguments);
  if (status == SHELL_EXIT_DONE)
    status = shell_shelf_compare(&shelf, bench);
  if (status == SHELL_EXIT_DONE)
    status = shell_answers_ask(arguments, bench, ohm_bench_identify);
  shell_shelf_free(&shelf);
  return status;
}

/* ---- the verb ---- */

static int check(const struct shell_arguments *arguments, const ohm_sensor *sensor) {
  int status = SHELL_EXIT_DONE;
  ohm_bench *bench = shell_bench_new(arguments, &status);
  if (bench)
    status = shell_bench_read_ohms(bench, arguments, 1);
  ohm_bench_use_sensor(bench, sensor);
  if (status == SHELL_EXIT_DONE)
    status = sensor ? shell_answers_ask(arguments, bench, ohm_bench_check)
                    : check_unknown(arguments, bench);
  ohm_bench_free(bench);
  return status;
}

int shell_check_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  if (strcmp(arguments->operands[0], shell_sensor_unknown) == 0)
    return check(arguments, NULL);
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  if (sensor)
    status = check(arguments, sensor);
  ohm_sensor_free(sensor);
  return status;
}
