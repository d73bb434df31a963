/* SPDX-License-Identifier: MIT */
/* What a curve holds, for the rooms that print it or look past its ends. */
#ifndef OHM_CURVE_H
#define OHM_CURVE_H

#include "ntc.h"

enum ohm_model {
  OHM_MODEL_POINTS,
  OHM_MODEL_BETA,
  OHM_MODEL_STEINHART_HART,
  OHM_MODEL_FOUR_TERM,
  OHM_MODEL_FOUR_TERM_OF_TEMPERATURE,
  OHM_MODEL_PLATINUM,
  OHM_MODEL_SILICON,
  OHM_MODELS
};

enum { OHM_POINTS_MAX = 4096, OHM_PARAMETERS_MAX = 5 };

struct ohm_end {
  double t_c;
  double r_ohm;
};

struct ohm_curve {
  enum ohm_model model;
  double parameters[OHM_PARAMETERS_MAX]; /**< as given, in the order of the model's keys */
  struct ohm_end cold;
  struct ohm_end hot;
  struct ohm_ntc ntc; /**< of the NTC models */
};

/** How a sensor file writes a model. */
struct ohm_model_form {
  const char *name;
  size_t count; /**< of its parameters; 0 for points */
  const char *keys[OHM_PARAMETERS_MAX];
};

const struct ohm_model_form *ohm_model_form(enum ohm_model model);

/** The curve of any model but points from its parameters in the order of the keys. */
ohm_curve *ohm_curve_of_model(enum ohm_model model, const double *parameters, double low_c,
                              double high_c, ohm_error *error);

/** Resistance at any temperature: outside the range, along the tangent of the nearer
 *  end (a beta for an NTC element); INFINITY at absolute zero and below. */
double ohm_curve_resistance_beyond(const ohm_curve *curve, double t_c);

/** Whether resistance falls as temperature rises. */
bool ohm_curve_falls(const ohm_curve *curve);

#endif
