/* SPDX-License-Identifier: MIT */
/* What the air did while the car stood. */
#ifndef OHM_HISTORY_H
#define OHM_HISTORY_H

#include "cooling.h"

struct ohm_history {
  size_t count;
  double *after_h; /**< rising */
  double *t_c;
};

struct ohm_air ohm_history_air(const ohm_history *history);

#endif
