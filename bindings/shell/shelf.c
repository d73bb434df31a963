/* SPDX-License-Identifier: MIT */
#include "shelf.h"

#include <stdlib.h>

#include "options.h"
#include "screen.h"

void ohm_shelf_free(struct ohm_shelf *shelf) {
  for (size_t i = 0; i < shelf->count; i++)
    ohm_sensor_free((ohm_sensor *)shelf->sensors[i]);
  free(shelf->sensors);
}

int ohm_shelf_load(struct ohm_shelf *shelf) {
  size_t all = ohm_sensor_built_in_count();
  *shelf = (struct ohm_shelf){.sensors = malloc(all * sizeof *shelf->sensors)};
  while (shelf->sensors && shelf->count < all) {
    const ohm_sensor *sensor =
        ohm_sensor_built_in_load(ohm_sensor_built_in_name(shelf->count), NULL);
    if (!sensor)
      break;
    shelf->sensors[shelf->count++] = sensor;
  }
  if (shelf->count == all)
    return OHM_EXIT_DONE;
  ohm_shelf_free(shelf);
  return ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
}
