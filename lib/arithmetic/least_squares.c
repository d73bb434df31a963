/* SPDX-License-Identifier: MIT */
#include "least_squares.h"

#include <float.h>

struct matrix {
  double *at;
  size_t count;
  size_t columns;
  size_t stride;
};

static double *entry(const struct matrix *m, size_t row, size_t column) {
  return &m->at[row * m->stride + column];
}

static double length_from(const struct matrix *m, size_t first, size_t column) {
  double largest = 0;
  for (size_t i = first; i < m->count; i++)
    largest = fmax(largest, fabs(*entry(m, i, column)));
  if (!(0 < largest && largest <= DBL_MAX))
    return largest;
  double sum = 0;
  for (size_t i = first; i < m->count; i++) {
    double part = *entry(m, i, column) / largest;
    sum += part * part;
  }
  return largest * sqrt(sum);
}

/* Divide each column by its length; false when one has none. */
static bool scale_columns(const struct matrix *m, double *scale) {
  for (size_t j = 0; j < m->columns; j++) {
    scale[j] = length_from(m, 0, j);
    if (!(0 < scale[j] && scale[j] <= DBL_MAX))
      return false;
    for (size_t i = 0; i < m->count; i++)
      *entry(m, i, j) /= scale[j];
  }
  return true;
}

/* Reflect rows k and below so that column k ends in its diagonal; the response too. */
static void reflect(const struct matrix *m, size_t k, double length) {
  double head = *entry(m, k, k);
  double diagonal = -copysign(length, head);
  /* v = column - diagonal e1, and v^T v = 2 length (length + |head|). */
  double half_square = length * (length + fabs(head));
  *entry(m, k, k) = head - diagonal;
  for (size_t j = k + 1; j <= m->columns; j++) {
    double dot = 0;
    for (size_t i = k; i < m->count; i++)
      dot += *entry(m, i, k) * *entry(m, i, j);
    double factor = dot / half_square;
    for (size_t i = k; i < m->count; i++)
      *entry(m, i, j) -= factor * *entry(m, i, k);
  }
  *entry(m, k, k) = diagonal;
}

static bool triangulate(const struct matrix *m) {
  for (size_t k = 0; k < m->columns; k++) {
    double length = length_from(m, k, k);
    if (!(length > DBL_EPSILON))
      return false;
    reflect(m, k, length);
  }
  return true;
}

/* The inverse of the triangle above, by columns. */
static void invert(const struct matrix *m, double inverse[][OC_COLUMNS_MAX]) {
  for (size_t j = 0; j < m->columns; j++) {
    for (size_t i = 0; i < OC_COLUMNS_MAX; i++)
      inverse[i][j] = 0;
    inverse[j][j] = 1 / *entry(m, j, j);
    for (size_t i = j; i-- > 0;) {
      double sum = 0;
      for (size_t k = i + 1; k <= j; k++)
        sum += *entry(m, i, k) * inverse[k][j];
      inverse[i][j] = -sum / *entry(m, i, i);
    }
  }
}

static double condition_of(const struct matrix *m, double inverse[][OC_COLUMNS_MAX]) {
  double norm = 0;
  double inverse_norm = 0;
  for (size_t j = 0; j < m->columns; j++) {
    double sum = 0;
    double inverse_sum = 0;
    for (size_t i = 0; i <= j; i++) {
      sum += fabs(*entry(m, i, j));
      inverse_sum += fabs(inverse[i][j]);
    }
    norm = fmax(norm, sum);
    inverse_norm = fmax(inverse_norm, inverse_sum);
  }
  return norm * inverse_norm;
}

static ohm_status fail_undetermined(struct oc_least_squares *fit) {
  for (size_t i = 0; i < OC_COLUMNS_MAX; i++) {
    fit->coefficient[i] = NAN;
    for (size_t j = 0; j < OC_COLUMNS_MAX; j++)
      fit->root[i][j] = NAN;
  }
  fit->residual_square = NAN;
  fit->condition = INFINITY;
  return OHM_BAD_DEFINITION;
}

ohm_status oc_least_squares_solve(double *rows, size_t count, size_t columns,
                                  struct oc_least_squares *fit) {
  const struct matrix m = {rows, count, columns, columns + 1};
  double scale[OC_COLUMNS_MAX];
  *fit = (struct oc_least_squares){.columns = columns};
  if (!(0 < columns && columns <= OC_COLUMNS_MAX && columns <= count) ||
      !scale_columns(&m, scale) || !triangulate(&m))
    return fail_undetermined(fit);
  invert(&m, fit->root);
  fit->condition = condition_of(&m, fit->root);
  for (size_t i = 0; i < columns; i++)
    for (size_t j = i; j < columns; j++) {
      fit->root[i][j] /= scale[i];
      fit->coefficient[i] += fit->root[i][j] * *entry(&m, j, columns);
    }
  double left = count > columns ? length_from(&m, columns, columns) : 0;
  fit->residual_square = left * left;
  return OHM_OK;
}

double oc_least_squares_u(const struct oc_least_squares *fit, const double *weight) {
  double u = 0;
  for (size_t j = 0; j < fit->columns; j++) {
    double sum = 0;
    for (size_t i = 0; i <= j; i++)
      sum += weight[i] * fit->root[i][j];
    u = hypot(u, sum);
  }
  return u;
}
