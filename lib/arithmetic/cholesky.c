/* SPDX-License-Identifier: MIT */
#include "cholesky.h"

bool oc_cholesky_factor(double *at, size_t count, size_t stride) {
  for (size_t i = 0; i < count; i++) {
    double *row = at + i * stride;
    for (size_t j = 0; j <= i; j++) {
      const double *above = at + j * stride;
      double sum = row[j];
      for (size_t k = 0; k < j; k++)
        sum -= row[k] * above[k];
      if (j < i)
        row[j] = sum / above[j];
      else if (sum > 0)
        row[i] = sqrt(sum);
      else
        return false;
    }
  }
  return true;
}

void oc_cholesky_solve_lower(const double *at, size_t count, size_t stride, const double *b,
                             double *x) {
  for (size_t i = 0; i < count; i++) {
    double sum = b[i];
    for (size_t k = 0; k < i; k++)
      sum -= at[i * stride + k] * x[k];
    x[i] = sum / at[i * stride + i];
  }
}

void oc_cholesky_solve_upper(const double *at, size_t count, size_t stride, const double *b,
                             double *x) {
  for (size_t i = count; i-- > 0;) {
    double sum = b[i];
    for (size_t k = i + 1; k < count; k++)
      sum -= at[k * stride + i] * x[k];
    x[i] = sum / at[i * stride + i];
  }
}
