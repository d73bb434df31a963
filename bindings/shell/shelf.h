/* SPDX-License-Identifier: MIT */
/* Every sensor built in, to compare with. */
#ifndef OHM_SHELF_H
#define OHM_SHELF_H

#include <ohmcurve.h>

struct ohm_shelf {
  const ohm_sensor **sensors;
  size_t count;
};

/** Load all. Returns 0, or the exit status after saying why; then there is nothing to
 *  free. */
int ohm_shelf_load(struct ohm_shelf *shelf);

void ohm_shelf_free(struct ohm_shelf *shelf);

#endif
