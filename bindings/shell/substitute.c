/* SPDX-License-Identifier: MIT */
#include <string.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "sensors.h"

/* TEMP is --aim TEMP. */
static int find(const struct shell_arguments *arguments, ohm_bench *bench) {
  ohm_error error;
  if (arguments->count > 1 &&
      ohm_bench_set(bench, OHM_SETTING_AIM_C, arguments->operands[1], &error) != OHM_OK)
    return shell_bench_refuse(bench, &error);
  return shell_answers_ask(arguments, bench, ohm_bench_substitute);
}

static int loom(const struct shell_arguments *arguments, ohm_bench *bench) {
  int status = shell_bench_read_ohms(bench, arguments, 1);
  return status == SHELL_EXIT_DONE ? shell_answers_ask(arguments, bench, ohm_bench_loom) : status;
}

int shell_substitute_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  bool fitted = arguments->count > 1 && strchr(arguments->operands[1], '@');
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = fitted || arguments->count > 2 ? loom(arguments, bench) : find(arguments, bench);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
