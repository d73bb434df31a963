/* SPDX-License-Identifier: MIT */
/* What a fit gave, on standard output. */
#ifndef SHELL_FITTED_H
#define SHELL_FITTED_H

#include <stddef.h>

#include <ohmcurve.h>

#include "points.h"

/** A resistance that was asked for, and the temperature of the fit there. */
struct shell_answered {
  double r_ohm;
  ohm_estimate t_c;
  double expanded_k;
};

struct shell_fitted {
  const ohm_fit *fit;
  const char *model; /**< as it is written behind --model */
  const struct shell_points *points;
  const struct shell_answered *answers;
  size_t answer_count;
};

/** For a person. */
void shell_fitted_write_screen(const struct shell_fitted *fitted);

/** One line of JSON. */
void shell_fitted_write_json(const struct shell_fitted *fitted);

#endif
