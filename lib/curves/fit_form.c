/* SPDX-License-Identifier: MIT */
/* From the coefficients of a fit in a centred, scaled ln R to those of the printed form.
 * Each form is linear in the coefficients, so that the covariance goes the same way:
 * J (root root^T) J^T, JCGM 102:2011, 6.2.1.3; a beta is linear to first order. */
#include <string.h>

#include "fit.h"

static const double T0_C = 25;

/* What keeps the third function of Steinhart-Hart within -1 to 1. */
static double third_length(const struct ohm_fit *fit) {
  return 3 * fabs(fit->middle) + fit->half;
}

/* With L = m + d, L^3 = m^3 + 3 m^2 d + d^2 (3 m + d): its last part with 1 and d spans
 * what 1, L and L^3 do, without their likeness far from L = 0. */
void oc_fit_basis_at(const struct ohm_fit *fit, double ln_r, double *basis) {
  double x = (ln_r - fit->middle) / fit->half;
  basis[0] = 1;
  basis[1] = x;
  if (fit->model == OC_MODEL_STEINHART_HART) {
    basis[2] = x * x * (3 * fit->middle + x * fit->half) / third_length(fit);
  } else if (fit->model == OC_MODEL_FOUR_TERM) {
    basis[2] = x * x;
    basis[3] = x * x * x;
  }
}

typedef double jacobian[OC_PARAMETERS_MAX][OC_COLUMNS_MAX];

static void form_beta(struct ohm_fit *fit, jacobian j) {
  const double *q = fit->core.coefficient;
  double beta_k = fit->half / q[1];
  double from_t0 = 1 / oc_kelvin(T0_C) - q[0];
  double r0_ohm = exp(fit->middle + from_t0 * beta_k);
  double parameters[] = {r0_ohm, T0_C, beta_k};
  memcpy(fit->parameters, parameters, sizeof parameters);
  fit->piece = (struct oc_ntc_piece){fit->middle, {q[0], 1 / beta_k, 0, 0}};
  j[0][0] = -r0_ohm * beta_k;
  j[0][1] = -r0_ohm * from_t0 * beta_k / q[1];
  j[2][1] = -beta_k / q[1];
}

static void form_steinhart_hart(struct ohm_fit *fit, jacobian j) {
  const double *q = fit->core.coefficient;
  double m = fit->middle;
  double slope = q[1] / fit->half;
  double to_c = 1 / (fit->half * fit->half * third_length(fit));
  double c = q[2] * to_c;
  double parameters[] = {q[0] - m * slope + 2 * m * m * m * c, slope - 3 * m * m * c, c};
  memcpy(fit->parameters, parameters, sizeof parameters);
  fit->piece = (struct oc_ntc_piece){m, {q[0], slope, 3 * m * c, c}};
  j[0][0] = 1;
  j[0][1] = -m / fit->half;
  j[0][2] = 2 * m * m * m * to_c;
  j[1][1] = 1 / fit->half;
  j[1][2] = -3 * m * m * to_c;
  j[2][2] = to_c;
}

static void form_four_term(struct ohm_fit *fit, jacobian j) {
  const double *q = fit->core.coefficient;
  double e = fit->middle - log(fit->r_ref_ohm);
  double unit[4] = {1, 1 / fit->half, 1 / (fit->half * fit->half),
                    1 / (fit->half * fit->half * fit->half)};
  /* (L - e)^k in powers of L */
  const double power[4][4] = {
      {1, -e, e * e, -e * e * e}, {0, 1, -2 * e, 3 * e * e}, {0, 0, 1, -3 * e}, {0, 0, 0, 1}};
  fit->parameters[0] = fit->r_ref_ohm;
  fit->piece.origin = fit->middle;
  for (size_t i = 0; i < 4; i++) {
    fit->piece.c[i] = q[i] * unit[i];
    fit->parameters[i + 1] = 0;
    for (size_t k = i; k < 4; k++) {
      j[i + 1][k] = power[i][k] * unit[k];
      fit->parameters[i + 1] += j[i + 1][k] * q[k];
    }
  }
}

/* (J root) (J root)^T, which is symmetric and never negative. */
static void transform(struct ohm_fit *fit, jacobian j) {
  jacobian root = {{0}};
  size_t columns = fit->core.columns;
  for (size_t i = 0; i < OC_PARAMETERS_MAX; i++)
    for (size_t k = 0; k < columns; k++)
      for (size_t l = 0; l <= k; l++)
        root[i][k] += fit->scale * j[i][l] * fit->core.root[l][k];
  for (size_t i = 0; i < OC_PARAMETERS_MAX; i++)
    for (size_t k = 0; k < OC_PARAMETERS_MAX; k++) {
      fit->covariance.of[i][k] = 0;
      for (size_t l = 0; l < columns; l++)
        fit->covariance.of[i][k] += root[i][l] * root[k][l];
    }
}

void oc_fit_form(struct ohm_fit *fit) {
  jacobian j = {{0}};
  if (fit->model == OC_MODEL_BETA)
    form_beta(fit, j);
  else if (fit->model == OC_MODEL_STEINHART_HART)
    form_steinhart_hart(fit, j);
  else
    form_four_term(fit, j);
  transform(fit, j);
}
