/* SPDX-License-Identifier: MIT */
/* Linear least squares by orthogonal factors; no normal equations. */
#ifndef OC_LEAST_SQUARES_H
#define OC_LEAST_SQUARES_H

#include "../ground/internal.h"

enum { OC_COLUMNS_MAX = 8 };

struct oc_least_squares {
  size_t columns;
  double coefficient[OC_COLUMNS_MAX];
  /** (X^T X)^-1 = root root^T, the covariance of the coefficients when the rows have unit
   *  variance; upper triangular. */
  double root[OC_COLUMNS_MAX][OC_COLUMNS_MAX];
  double residual_square; /**< what is left, sum of squares; 0 when count is columns */
  double condition;       /**< 1-norm condition of the columns, each scaled to length 1 */
};

/**
 * Solve by Householder reflections, columns scaled to length 1 first.
 *
 * In      rows     count rows of columns + 1 numbers, the response last, each row
 *                  already divided by its standard uncertainty; used up
 *         columns  1 to OC_COLUMNS_MAX, at most count
 * Status  OHM_OK; OHM_BAD_DEFINITION the columns do not determine the coefficients:
 *         condition is infinite, everything else NaN.
 * Source  Golub and Van Loan, Matrix Computations, 4th ed., 5.2 and 5.3.
 */
ohm_status oc_least_squares_solve(double *rows, size_t count, size_t columns,
                                  struct oc_least_squares *fit);

/** Standard deviation of sum(weight[i] coefficient[i]) for rows of unit variance; a sum
 *  of squares, so never of the wrong sign. */
double oc_least_squares_u(const struct oc_least_squares *fit, const double *weight);

#endif
