/* SPDX-License-Identifier: MIT */
#include "shelf.h"

#include <stdlib.h>

#include "bench.h"
#include "screen.h"
#include "sensors.h"

void shell_shelf_free(struct shell_shelf *shelf) {
  for (size_t i = 0; i < shelf->count; i++)
    ohm_sensor_free(shelf->sensors[i]);
  free(shelf->sensors);
}

int shell_shelf_load(struct shell_shelf *shelf, const struct shell_arguments *arguments) {
  size_t built_in = ohm_sensor_built_in_count();
  size_t all = built_in + arguments->repeated_count;
  int status = SHELL_EXIT_DONE;
  *shelf = (struct shell_shelf){.sensors = calloc(all, sizeof *shelf->sensors)};
  if (!shelf->sensors)
    return shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  for (size_t i = 0; i < all; i++) {
    const char *name =
        i < built_in ? ohm_sensor_built_in_name(i) : arguments->repeated[i - built_in];
    ohm_sensor *sensor = shell_sensor_named(name, &status);
    if (!sensor)
      return status;
    shelf->sensors[shelf->count++] = sensor;
  }
  return status;
}

int shell_shelf_compare(const struct shell_shelf *shelf, ohm_bench *bench) {
  ohm_error error;
  for (size_t i = 0; i < shelf->count; i++)
    if (ohm_bench_compare(bench, shelf->sensors[i], &error) != OHM_OK)
      return shell_bench_refuse(bench, &error);
  return SHELL_EXIT_DONE;
}
