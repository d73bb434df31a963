/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <string.h>

#include "../../lib/arithmetic/least_squares.h"

enum { MOST = 512 };

static double covariance(const struct oc_least_squares *fit, size_t i, size_t j) {
  double sum = 0;
  for (size_t k = 0; k < fit->columns; k++)
    sum += fit->root[i][k] * fit->root[j][k];
  return sum;
}

/* JCGM 100:2008, H.3.2, table H.6: readings of a thermometer and observed corrections;
 * the straight line in t - 20 C and its printed figures, H.3.3 and H.3.4. */
START_TEST(the_calibration_of_a_thermometer_comes_out_as_printed)
{
  static const double t_c[] = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                               24.513, 25.002, 25.503, 26.010, 26.511};
  static const double b_k[] = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                               -0.156, -0.157, -0.159, -0.161, -0.160};
  enum { COUNT = 11 };
  double rows[COUNT * 3];
  for (size_t i = 0; i < COUNT; i++) {
    const double row[3] = {1, t_c[i] - 20, b_k[i]};
    memcpy(&rows[3 * i], row, sizeof row);
  }
  struct oc_least_squares fit;
  ck_assert_int_eq(oc_least_squares_solve(rows, COUNT, 2, &fit), OHM_OK);
  double s = sqrt(fit.residual_square / (COUNT - 2));
  const double at_30[2] = {1, 10};
  CHECK_NEAR(fit.coefficient[0], -0.1712, 0.00005);
  CHECK_NEAR(s * sqrt(covariance(&fit, 0, 0)), 0.0029, 0.00005);
  CHECK_NEAR(fit.coefficient[1], 0.00218, 0.000005);
  CHECK_NEAR(s * sqrt(covariance(&fit, 1, 1)), 0.00067, 0.000005);
  CHECK_NEAR(covariance(&fit, 0, 1) / sqrt(covariance(&fit, 0, 0) * covariance(&fit, 1, 1)), -0.930,
             0.0005);
  CHECK_NEAR(s, 0.0035, 0.00005);
  CHECK_NEAR(fit.coefficient[0] + 10 * fit.coefficient[1], -0.1494, 0.00005);
  CHECK_NEAR(s * oc_least_squares_u(&fit, at_30), 0.0041, 0.00005);
  /* Computed in 50 digits from the same data. */
  CHECK_NEAR(fit.coefficient[0], -0.171203790131, 1e-12);
  CHECK_NEAR(fit.coefficient[1], 0.00218269773989, 1e-14);
  CHECK_NEAR(s, 0.00349756396351, 1e-14);
  CHECK_NEAR(s * sqrt(covariance(&fit, 0, 0)), 0.00287759783516, 1e-14);
  CHECK_NEAR(s * sqrt(covariance(&fit, 1, 1)), 0.000667938773228, 1e-14);
  CHECK_NEAR(fit.residual_square, 0.000110096583109, 1e-15);
}
END_TEST

/* Powers of x on 0 .. 1, a response made of known coefficients. */
static void power_rows(double *rows, size_t count, size_t columns, const double *coefficient) {
  for (size_t i = 0; i < count; i++) {
    double *row = &rows[i * (columns + 1)];
    double x = count > 1 ? (double)i / (double)(count - 1) : 0.5;
    row[columns] = 0;
    for (size_t j = 0; j < columns; j++) {
      row[j] = j == 0 ? 1 : row[j - 1] * x;
      row[columns] += coefficient[j] * row[j];
    }
  }
}

START_TEST(coefficients_without_scatter_come_back)
{
  static const double coefficient[OC_COLUMNS_MAX] = {1, -2, 3, -4, 5, -6, 7, -8};
  double rows[MOST * (OC_COLUMNS_MAX + 1)];
  for (size_t columns = 1; columns <= OC_COLUMNS_MAX; columns++)
    for (size_t count = columns; count <= MOST; count = 3 * count + 1) {
      struct oc_least_squares fit;
      power_rows(rows, count, columns, coefficient);
      ck_assert_int_eq(oc_least_squares_solve(rows, count, columns, &fit), OHM_OK);
      for (size_t j = 0; j < columns; j++)
        CHECK_NEAR(fit.coefficient[j], coefficient[j], 1e-15 * fit.condition * 100);
      CHECK_NEAR(fit.residual_square, 0, 1e-24);
    }
}
END_TEST

START_TEST(the_unit_of_a_column_does_not_matter)
{
  static const double coefficient[3] = {1, -2, 3};
  double rows[20 * 4];
  double scaled[20 * 4];
  power_rows(rows, 20, 3, coefficient);
  for (size_t i = 0; i < 20; i++) {
    rows[4 * i + 3] += i % 2 == 0 ? 0.01 : -0.01;
    scaled[4 * i] = rows[4 * i];
    scaled[4 * i + 1] = rows[4 * i + 1] * 1e-150;
    scaled[4 * i + 2] = rows[4 * i + 2] * 1e150;
    scaled[4 * i + 3] = rows[4 * i + 3];
  }
  struct oc_least_squares plain;
  struct oc_least_squares other;
  ck_assert_int_eq(oc_least_squares_solve(rows, 20, 3, &plain), OHM_OK);
  ck_assert_int_eq(oc_least_squares_solve(scaled, 20, 3, &other), OHM_OK);
  CHECK_NEAR(other.coefficient[1] * 1e-150, plain.coefficient[1], 1e-13);
  CHECK_NEAR(other.coefficient[2] * 1e150, plain.coefficient[2], 1e-13);
  CHECK_NEAR(other.condition, plain.condition, 1e-10);
  CHECK_NEAR(other.residual_square, plain.residual_square, 1e-15);
}
END_TEST

START_TEST(columns_that_are_alike_do_not_determine_anything)
{
  double rows[] = {1, 2, 5, 1, 2, 6, 1, 2, 7};
  struct oc_least_squares fit;
  ck_assert_int_eq(oc_least_squares_solve(rows, 3, 2, &fit), OHM_BAD_DEFINITION);
  ck_assert(isinf(fit.condition));
  ck_assert(isnan(fit.coefficient[0]));
}
END_TEST

START_TEST(too_few_rows_and_bad_numbers_do_not_determine_anything)
{
  double one[] = {1, 2, 5};
  double bad[] = {1, NAN, 5, 1, 2, 6};
  double zero[] = {1, 0, 5, 1, 0, 6};
  double none[] = {1};
  struct oc_least_squares fit;
  ck_assert_int_eq(oc_least_squares_solve(one, 1, 2, &fit), OHM_BAD_DEFINITION);
  ck_assert_int_eq(oc_least_squares_solve(bad, 2, 2, &fit), OHM_BAD_DEFINITION);
  ck_assert_int_eq(oc_least_squares_solve(zero, 2, 2, &fit), OHM_BAD_DEFINITION);
  ck_assert_int_eq(oc_least_squares_solve(none, 1, 0, &fit), OHM_BAD_DEFINITION);
}
END_TEST

int main(void) {
  return RUN_TESTS("least_squares", the_calibration_of_a_thermometer_comes_out_as_printed,
                   coefficients_without_scatter_come_back, the_unit_of_a_column_does_not_matter,
                   columns_that_are_alike_do_not_determine_anything,
                   too_few_rows_and_bad_numbers_do_not_determine_anything);
}
