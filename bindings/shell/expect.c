/* SPDX-License-Identifier: MIT */
#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "sensors.h"

int shell_expect_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = shell_answers_ask(arguments, bench, ohm_bench_expect);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  /* Nothing was measured, and what was asked for is told. */
  return status == (int)OHM_UNDECIDED ? SHELL_EXIT_DONE : status;
}
