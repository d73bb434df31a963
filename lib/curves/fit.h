/* SPDX-License-Identifier: MIT */
/* What a fit holds. */
#ifndef OC_FIT_H
#define OC_FIT_H

#include "covariance.h"
#include "../arithmetic/least_squares.h"

struct ohm_fit {
  enum oc_model model;
  int basis; /**< an ohm_fit_basis */
  size_t count;
  double *residual_k; /**< count of them, in the order of the points */
  size_t degrees;
  double chi_square; /**< NaN unless the uncertainties are known and degrees > 0 */
  double scatter_k;  /**< NaN unless they are not known and degrees > 0 */
  double misfit_k;   /**< NaN where chi_square is */
  double r_ref_ohm;  /**< of the four-term form */
  /* 1/T in x = (ln R - middle) / half, each within -1 to 1 for the points. */
  double middle;
  double half;
  double low_ohm; /**< of the points */
  double high_ohm;
  struct oc_least_squares core;
  double scale; /**< of the core's unit variance: 1, or scatter_k; NaN for no interval */
  struct oc_ntc_piece piece;
  double parameters[OC_PARAMETERS_MAX];
  struct oc_covariance covariance; /**< degrees 0 for no interval */
  ohm_curve *curve;
};

/** The functions of the model at a ln R, as many as core has columns. */
void oc_fit_basis_at(const struct ohm_fit *fit, double ln_r, double *basis);

/** piece, parameters and covariance from middle, half, core and scale. */
void oc_fit_form(struct ohm_fit *fit);

#endif
