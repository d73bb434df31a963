/* SPDX-License-Identifier: MIT */
/* What a curve holds, for the rooms that print it or look past its ends. */
#ifndef OHM_CURVE_H
#define OHM_CURVE_H

#include "ntc.h"

enum ohm_model { OHM_MODEL_BETA, OHM_MODEL_STEINHART_HART, OHM_MODEL_POINTS };

enum { OHM_POINTS_MAX = 4096 };

struct ohm_curve {
  enum ohm_model model;
  double parameters[3]; /**< as given: r0, t0, beta, or a, b, c; unused for points */
  struct ohm_ntc ntc;
};

/** Resistance at any temperature: outside the range, along the tangent (a beta) of
 *  the nearer end; INFINITY at absolute zero and below. */
double ohm_curve_resistance_beyond(const ohm_curve *curve, double t_c);

#endif
