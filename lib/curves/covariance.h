/* SPDX-License-Identifier: MIT */
/* How uncertain the parameters of a fitted curve are, together. */
#ifndef OC_COVARIANCE_H
#define OC_COVARIANCE_H

#include "curve.h"
#include "../ground/text.h"

/** Of a model's parameters in the order of its keys; a parameter that was chosen and not
 *  fitted has zeros. */
struct oc_covariance {
  double degrees; /**< of freedom; INFINITY when the points' uncertainties were known;
                       0 when there is no covariance */
  double of[OC_PARAMETERS_MAX][OC_PARAMETERS_MAX];
};

/** The lower triangle by rows: what a file holds. */
enum { OC_TRIANGLE_MAX = OC_PARAMETERS_MAX * (OC_PARAMETERS_MAX + 1) / 2 };

struct oc_triangle {
  size_t count;
  double at[OC_TRIANGLE_MAX];
};

/** Numbers apart by spaces; false when something else is between, or too many. */
bool oc_triangle_scan(const char *text, size_t length, struct oc_triangle *triangle);

/** False when there are not as many numbers as the model needs, or they are no
 *  covariance: a variance below 0, a correlation beyond 1. */
bool oc_covariance_of(const struct oc_triangle *triangle, enum oc_model model, double degrees,
                      struct oc_covariance *covariance);

/** Append the numbers as a file holds them. */
void oc_covariance_add(struct oc_text *text, const struct oc_covariance *covariance,
                       enum oc_model model);

double oc_covariance_correlation(const struct oc_covariance *covariance, size_t i, size_t j);

/** Standard uncertainty, kelvin, of the temperature a curve gives for a resistance. */
double oc_covariance_u_k(const struct oc_covariance *covariance, const ohm_curve *curve,
                         double r_ohm, double t_c);

#endif
