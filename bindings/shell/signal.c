/* SPDX-License-Identifier: MIT */
#include <string.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "sensors.h"

static int read_taken(ohm_bench *bench, const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = 1; i < arguments->count && status == SHELL_EXIT_DONE; i++) {
    const char *operand = arguments->operands[i];
    if (strchr(operand, '='))
      return shell_refuse(SHELL_EXIT_DATA,
                          "\"%s\" is nothing that signal looks at: write ohms, volts or degrees, "
                          "such as 187, 0.97V and 91C",
                          operand);
    status = shell_bench_read(bench, operand);
  }
  return status;
}

int shell_signal_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = read_taken(bench, arguments);
  if (status == SHELL_EXIT_DONE)
    status = shell_answers_ask(arguments, bench, ohm_bench_signal);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
