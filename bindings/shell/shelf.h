/* SPDX-License-Identifier: MIT */
/* Sensors to compare with. */
#ifndef SHELL_SHELF_H
#define SHELL_SHELF_H

#include <ohmcurve.h>

#include "arguments.h"

struct shell_shelf {
  ohm_sensor **sensors;
  size_t count;
};

/** Load every sensor built in, then each of --sensor. Returns 0, or the exit status after
 *  saying why; there is something to free either way. */
int shell_shelf_load(struct shell_shelf *shelf, const struct shell_arguments *arguments);

/** Compare with all of them; the shelf has to outlive the bench. Returns the exit status. */
int shell_shelf_compare(const struct shell_shelf *shelf, ohm_bench *bench);

void shell_shelf_free(struct shell_shelf *shelf);

#endif
