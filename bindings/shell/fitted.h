/* SPDX-License-Identifier: MIT */
/* What a fit gave, on standard output. */
#ifndef OHM_FITTED_H
#define OHM_FITTED_H

#include <stddef.h>

#include <ohmcurve.h>

#include "points.h"

/** A resistance that was asked for, and the temperature of the fit there. */
struct ohm_answered {
  double r_ohm;
  ohm_estimate t_c;
  double expanded_k;
};

struct ohm_fitted {
  const ohm_fit *fit;
  const char *model; /**< as it is written behind --model */
  const struct ohm_points *points;
  const struct ohm_answered *answers;
  size_t answer_count;
};

/** For a person. */
void ohm_fitted_write_screen(const struct ohm_fitted *fitted);

/** One line of JSON. */
void ohm_fitted_write_json(const struct ohm_fitted *fitted);

#endif
