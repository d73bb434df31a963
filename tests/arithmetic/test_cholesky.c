/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/cholesky.h"

#include <string.h>

/* Worked by hand: A = L L^T in whole numbers. */
static const double whole[] = {4, 12, -16, 12, 37, -43, -16, -43, 98};
static const double whole_factor[] = {2, 0, 0, 6, 1, 0, -8, 5, 3};

START_TEST(a_matrix_made_of_whole_numbers_has_them_as_its_factor)
{
  double at[9];
  memcpy(at, whole, sizeof at);
  ck_assert(oc_cholesky_factor(at, 3, 3));
  for (size_t i = 0; i < 3; i++)
    for (size_t j = 0; j <= i; j++)
      CHECK_NEAR(at[3 * i + j], whole_factor[3 * i + j], 0);
}
END_TEST

/* Hilbert's matrix, 1/(i + j + 1): its condition grows fastest of the well-known ones. */
static void fill_hilbert(double *at, size_t count, size_t stride) {
  for (size_t i = 0; i < count; i++)
    for (size_t j = 0; j <= i; j++)
      at[i * stride + j] = 1 / (double)(i + j + 1);
}

START_TEST(the_factor_times_itself_is_the_matrix)
{
  for (size_t count = 1; count <= 8; count++) {
    double at[8 * 9];
    fill_hilbert(at, count, 9);
    ck_assert(oc_cholesky_factor(at, count, 9));
    for (size_t i = 0; i < count; i++)
      for (size_t j = 0; j <= i; j++) {
        double sum = 0;
        for (size_t k = 0; k <= j; k++)
          sum += at[9 * i + k] * at[9 * j + k];
        CHECK_NEAR(sum, 1 / (double)(i + j + 1), 1e-15);
      }
  }
}
END_TEST

START_TEST(both_solutions_together_solve_by_the_matrix)
{
  static const double x[] = {1, -2, 3};
  double at[9];
  double b[3] = {0};
  memcpy(at, whole, sizeof at);
  for (size_t i = 0; i < 3; i++)
    for (size_t j = 0; j < 3; j++)
      b[i] += whole[3 * i + j] * x[j];
  ck_assert(oc_cholesky_factor(at, 3, 3));
  double half[3];
  oc_cholesky_solve_lower(at, 3, 3, b, half);
  oc_cholesky_solve_upper(at, 3, 3, half, half);
  for (size_t i = 0; i < 3; i++)
    CHECK_NEAR(half[i], x[i], 1e-12);
}
END_TEST

START_TEST(what_lies_above_the_diagonal_is_neither_read_nor_written)
{
  double at[9];
  double x[] = {8, 7, 6};
  memcpy(at, whole, sizeof at);
  at[1] = at[2] = at[5] = NAN;
  ck_assert(oc_cholesky_factor(at, 3, 3));
  oc_cholesky_solve_lower(at, 3, 3, x, x);
  oc_cholesky_solve_upper(at, 3, 3, x, x);
  ck_assert(isfinite(x[0] + x[1] + x[2]));
  ck_assert(isnan(at[1]) && isnan(at[2]) && isnan(at[5]));
}
END_TEST

START_TEST(what_is_not_positive_definite_has_no_factor)
{
  static const double bad[][4] = {{0, 0, 0, 1},  {1, 1, 1, 1},   {1, 2, 2, 1},
                                  {-1, 0, 0, 1}, {NAN, 0, 0, 1}, {1, NAN, NAN, 1}};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    double at[4];
    memcpy(at, bad[i], sizeof at);
    ck_assert(!oc_cholesky_factor(at, 2, 2));
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("cholesky", a_matrix_made_of_whole_numbers_has_them_as_its_factor,
                   the_factor_times_itself_is_the_matrix,
                   both_solutions_together_solve_by_the_matrix,
                   what_lies_above_the_diagonal_is_neither_read_nor_written,
                   what_is_not_positive_definite_has_no_factor);
}
