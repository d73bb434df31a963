/* SPDX-License-Identifier: MIT */
#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "sensors.h"
#include "shelf.h"

static int explain(const struct shell_arguments *arguments, ohm_bench *bench) {
  struct shell_shelf shelf;
  int status = shell_shelf_load(&shelf, arguments);
  if (status == SHELL_EXIT_DONE)
    status = shell_shelf_compare(&shelf, bench);
  if (status == SHELL_EXIT_DONE)
    status = shell_answers_ask(arguments, bench, ohm_bench_explain);
  shell_shelf_free(&shelf);
  return status;
}

int shell_explain_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = shell_bench_read_ohms(bench, arguments, 1);
  if (status == SHELL_EXIT_DONE)
    status = explain(arguments, bench);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
