/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "sensors.h"

/* ---- other sensors of the car ---- */

static bool is_soaked(const char *name) {
#define WORD(number, constant, word, meaning) #word,
  static const char *const names[] = {OHM_SOAKED_SENSORS(WORD)};
#undef WORD
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    if (strcmp(name, names[i]) == 0)
      return true;
  return false;
}

/* The bench takes any name, for a circuit may have a test of it: here it is a sensor's. */
static int read_other(ohm_bench *bench, const char *operand) {
  char name[SHELL_CELL_SIZE], shown[SHELL_CELL_SIZE];
  size_t length = strcspn(operand, "=");
  double t_c;
  ohm_error error;
  snprintf(name, sizeof name, "%.*s", (int)(length < sizeof name ? length : 0), operand);
  if (!operand[length] || !is_soaked(name))
    return shell_refuse(SHELL_EXIT_DATA,
                        "\"%s\" is no other sensor of the car: write coolant, intake, oil or "
                        "ambient and what it shows, such as intake=10.5C",
                        operand);
  const char *value = operand + length + 1;
  snprintf(shown, sizeof shown, "%.*s", (int)strcspn(value, "+\xC2"), value);
  if (ohm_temperature_read(shown, &t_c, &error) != OHM_OK)
    return shell_refuse(SHELL_EXIT_DATA, "%s: %s", name, error.message);
  return shell_bench_read(bench, operand);
}

static int read_operands(ohm_bench *bench, const struct shell_arguments *arguments) {
  struct shell_arguments first = *arguments;
  first.count = 2;
  int status = shell_bench_read_ohms(bench, &first, 1);
  for (size_t i = 2; i < arguments->count && status == SHELL_EXIT_DONE; i++)
    status = read_other(bench, arguments->operands[i]);
  return status;
}

/* ---- the verb ---- */

static int soak(const struct shell_arguments *arguments, ohm_bench *bench) {
  const char *path = arguments->values[SHELL_OPTION_HISTORY];
  ohm_error error;
  ohm_history *history = path ? ohm_history_load(path, &error) : NULL;
  if (path && !history)
    return shell_refuse_load(&error, "");
  ohm_bench_use_history(bench, history);
  int status = shell_answers_ask(arguments, bench, ohm_bench_soak);
  ohm_bench_use_history(bench, NULL);
  ohm_history_free(history);
  return status;
}

int shell_soak_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = read_operands(bench, arguments);
  if (status == SHELL_EXIT_DONE)
    status = soak(arguments, bench);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
