/* SPDX-License-Identifier: MIT */
/* What the air did while the car stood. */
#ifndef OC_HISTORY_H
#define OC_HISTORY_H

#include "../arithmetic/cooling.h"

struct ohm_history {
  size_t count;
  double *after_h; /**< rising */
  double *t_c;
};

struct oc_air oc_history_air(const ohm_history *history);

#endif
