/* SPDX-License-Identifier: MIT */
/* What a fit answers. */
#include <string.h>

#include "../arithmetic/distribution.h"
#include "fit.h"
#include "../ground/status.h"

static const ohm_estimate NOTHING = {NAN, NAN};

const ohm_curve *ohm_fit_curve(const ohm_fit *fit) {
  return fit ? fit->curve : NULL;
}

/* ---- parameters ---- */

const char *ohm_fit_parameter_name(const ohm_fit *fit, size_t index) {
  return fit && index < oc_model_form(fit->model)->count ? oc_model_form(fit->model)->keys[index]
                                                         : NULL;
}

static bool has_interval(const ohm_fit *fit) {
  return fit->basis != OHM_FIT_NO_INTERVAL;
}

ohm_status ohm_fit_parameter(const ohm_fit *fit, size_t index, ohm_estimate *parameter) {
  if (!parameter)
    return OHM_NULL_ARGUMENT;
  *parameter = NOTHING;
  if (!fit)
    return OHM_NULL_ARGUMENT;
  if (!ohm_fit_parameter_name(fit, index))
    return OHM_NOT_FOUND;
  parameter->value = fit->parameters[index];
  parameter->u = has_interval(fit) ? sqrt(fit->covariance.of[index][index]) : NAN;
  return OHM_OK;
}

ohm_status ohm_fit_covariance(const ohm_fit *fit, size_t first, size_t second, double *covariance,
                              double *correlation) {
  if (covariance)
    *covariance = NAN;
  if (correlation)
    *correlation = NAN;
  if (!fit)
    return OHM_NULL_ARGUMENT;
  if (!ohm_fit_parameter_name(fit, first) || !ohm_fit_parameter_name(fit, second) ||
      !has_interval(fit))
    return OHM_NOT_FOUND;
  if (covariance)
    *covariance = fit->covariance.of[first][second];
  if (correlation)
    *correlation = oc_covariance_correlation(&fit->covariance, first, second);
  return OHM_OK;
}

/* ---- how good it is ---- */

int ohm_fit_basis_of(const ohm_fit *fit) {
  return fit ? fit->basis : OHM_FIT_NO_INTERVAL;
}

const char *ohm_fit_basis_text(int basis) {
  switch (basis) {
  case OHM_FIT_KNOWN:
    return "intervals rest on the uncertainties given for the points";
  case OHM_FIT_SCATTER:
    return "intervals rest on the scatter of the points about the fit; whatever errs alike in "
           "all of them is not in it";
  default:
    return "no interval: there are only as many points as coefficients, and their "
           "uncertainties are not known; give more points, or their uncertainties";
  }
}

size_t ohm_fit_degrees(const ohm_fit *fit) {
  return fit ? fit->degrees : 0;
}

double ohm_fit_residual_k(const ohm_fit *fit, size_t index) {
  return fit && index < fit->count ? fit->residual_k[index] : NAN;
}

double ohm_fit_scatter_k(const ohm_fit *fit) {
  return fit ? fit->scatter_k : NAN;
}

double ohm_fit_misfit_k(const ohm_fit *fit) {
  return fit ? fit->misfit_k : NAN;
}

ohm_status ohm_fit_chi_square(const ohm_fit *fit, double *chi_square, double *probability) {
  double value = fit ? fit->chi_square : NAN;
  if (chi_square)
    *chi_square = value;
  if (probability)
    *probability = isnan(value) ? NAN : oc_chi_square_above(value, (double)fit->degrees);
  if (!fit)
    return OHM_NULL_ARGUMENT;
  return isnan(value) ? OHM_NOT_FOUND : OHM_OK;
}

/* ---- temperature ---- */

static double u_at(const ohm_fit *fit, double ln_r) {
  double basis[OC_COLUMNS_MAX];
  oc_fit_basis_at(fit, ln_r, basis);
  return fit->scale * oc_least_squares_u(&fit->core, basis);
}

/* A fitted end may miss the resistance of the outer point, which is inside all the same. */
static ohm_status value_at(const ohm_fit *fit, double r_ohm, double *t_c) {
  ohm_status status = ohm_curve_temperature(fit->curve, r_ohm, t_c);
  if (status != OHM_OUT_OF_RANGE || !oc_inside(fit->low_ohm, r_ohm, fit->high_ohm))
    return status;
  *t_c = oc_celsius(1 / oc_ntc_piece_y(&fit->piece, log(r_ohm)));
  return OHM_OK;
}

ohm_status ohm_fit_temperature(const ohm_fit *fit, double r_ohm, double level, ohm_estimate *t_c,
                               double *expanded_k) {
  if (expanded_k)
    *expanded_k = NAN;
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = NOTHING;
  if (!fit)
    return OHM_NULL_ARGUMENT;
  if (!(0 < level && level < 1))
    return isnan(level) ? OHM_BAD_ARGUMENT : OHM_OUT_OF_RANGE;
  ohm_status status = value_at(fit, r_ohm, &t_c->value);
  if (status != OHM_OK)
    return status;
  if (!has_interval(fit))
    return OHM_NOT_FOUND;
  double t_k = oc_kelvin(t_c->value);
  t_c->u = t_k * t_k * u_at(fit, log(r_ohm));
  if (expanded_k)
    *expanded_k = t_c->u * oc_student_factor(level, fit->covariance.degrees);
  return OHM_OK;
}
