/* SPDX-License-Identifier: MIT */
/* How uncertain the parameters of a fitted curve are, together. */
#ifndef OHM_COVARIANCE_H
#define OHM_COVARIANCE_H

#include "curve.h"
#include "text.h"

/** Of a model's parameters in the order of its keys; a parameter that was chosen and not
 *  fitted has zeros. */
struct ohm_covariance {
  double degrees; /**< of freedom; INFINITY when the points' uncertainties were known;
                       0 when there is no covariance */
  double of[OHM_PARAMETERS_MAX][OHM_PARAMETERS_MAX];
};

/** The lower triangle by rows: what a file holds. */
enum { OHM_TRIANGLE_MAX = OHM_PARAMETERS_MAX * (OHM_PARAMETERS_MAX + 1) / 2 };

struct ohm_triangle {
  size_t count;
  double at[OHM_TRIANGLE_MAX];
};

/** Numbers apart by spaces; false when something else is between, or too many. */
bool ohm_triangle_scan(const char *text, size_t length, struct ohm_triangle *triangle);

/** False when there are not as many numbers as the model needs, or they are no
 *  covariance: a variance below 0, a correlation beyond 1. */
bool ohm_covariance_of(const struct ohm_triangle *triangle, enum ohm_model model, double degrees,
                       struct ohm_covariance *covariance);

/** Append the numbers as a file holds them. */
void ohm_covariance_add(struct ohm_text *text, const struct ohm_covariance *covariance,
                        enum ohm_model model);

double ohm_covariance_correlation(const struct ohm_covariance *covariance, size_t i, size_t j);

/** Standard uncertainty, kelvin, of the temperature a curve gives for a resistance. */
double ohm_covariance_u_k(const struct ohm_covariance *covariance, const ohm_curve *curve,
                          double r_ohm, double t_c);

#endif
