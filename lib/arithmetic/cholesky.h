/* SPDX-License-Identifier: MIT */
/*
 * A symmetric positive definite matrix as a triangle times its transpose, L L^T, and
 * equations solved by it. Entry (i, j) of a matrix is at[i * stride + j]; nothing above
 * the diagonal is read or written.
 * Source  Golub and Van Loan, Matrix Computations, 4th ed., 4.2.
 */
#ifndef OC_CHOLESKY_H
#define OC_CHOLESKY_H

#include "../ground/internal.h"

/** Put L into the place of the matrix.
 *  Return  false when it is not positive definite; the matrix is lost. */
bool oc_cholesky_factor(double *at, size_t count, size_t stride);

/** Solve L x = b; x may be b. */
void oc_cholesky_solve_lower(const double *at, size_t count, size_t stride, const double *b,
                             double *x);

/** Solve L^T x = b; x may be b. */
void oc_cholesky_solve_upper(const double *at, size_t count, size_t stride, const double *b,
                             double *x);

#endif
