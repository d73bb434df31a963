/* SPDX-License-Identifier: MIT */
/* What a curve holds, for the rooms that print it or look past its ends. */
#ifndef OC_CURVE_H
#define OC_CURVE_H

#include "../arithmetic/ntc.h"

enum oc_model {
  OC_MODEL_POINTS,
  OC_MODEL_BETA,
  OC_MODEL_STEINHART_HART,
  OC_MODEL_FOUR_TERM,
  OC_MODEL_FOUR_TERM_OF_TEMPERATURE,
  OC_MODEL_PLATINUM,
  OC_MODEL_SILICON,
  OC_MODELS
};

enum { OC_POINTS_MAX = 4096, OC_PARAMETERS_MAX = 5 };

struct oc_end {
  double t_c;
  double r_ohm;
};

struct ohm_curve {
  enum oc_model model;
  double parameters[OC_PARAMETERS_MAX]; /**< as given, in the order of the model's keys */
  struct oc_end cold;
  struct oc_end hot;
  struct oc_ntc ntc; /**< of the NTC models */
};

/** How a sensor file writes a model. */
struct oc_model_form {
  const char *name;
  size_t count; /**< of its parameters; 0 for points */
  const char *keys[OC_PARAMETERS_MAX];
};

const struct oc_model_form *oc_model_form(enum oc_model model);

/** The curve of any model but points from its parameters in the order of the keys. */
ohm_curve *oc_curve_of_model(enum oc_model model, const double *parameters, double low_c,
                             double high_c, ohm_error *error);

/** Resistance at any temperature: outside the range, along the tangent of the nearer
 *  end (a beta for an NTC element); INFINITY at absolute zero and below. */
double oc_curve_resistance_beyond(const ohm_curve *curve, double t_c);

/** Whether resistance falls as temperature rises. */
bool oc_curve_falls(const ohm_curve *curve);

#endif
