/* SPDX-License-Identifier: MIT */
/* Short ways to ask a curve, and sensor files of every model. */
#ifndef OHM_TESTS_CURVES_H
#define OHM_TESTS_CURVES_H

#include "support.h"

/** Inside the range; the test fails outside. */
double t_of(const ohm_curve *curve, double r_ohm);
double r_of(const ohm_curve *curve, double t_c);
double alpha_of(const ohm_curve *curve, double t_c);

struct range {
  double low_c;
  double high_c;
  double at_low_ohm;
  double at_high_ohm;
};

struct range range_of(const ohm_curve *curve);

enum { SPECIALS = 10, MODEL_FILES = 9 };

extern const double special[SPECIALS];

/** Of each model but points. */
extern const char *const model_files[MODEL_FILES];

/** The sensor of a text that leaves no note. */
ohm_sensor *sensor_without_notes(const char *text);

#endif
