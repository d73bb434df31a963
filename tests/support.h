/* SPDX-License-Identifier: MIT */
/* What every test program includes first. */
#ifndef OHM_TESTS_SUPPORT_H
#define OHM_TESTS_SUPPORT_H

#include <check.h>
#include <stddef.h>

#include "../include/ohmcurve.h"
#include "near.h"

/** Both sides are printed with all their digits when they are not near. */
#define CHECK_NEAR(got, want, tol) check_near((got), (want), (tol), #got, __FILE__, __LINE__)

/**
 * A call of the public function gave this status. tests/header.sh holds these
 * against the Status texts of the header: every status named there has a test.
 * Of a function that returns an object, give the status in its error.
 *
 *     PROVOKES(ohm_curve_alpha, OHM_NULL_ARGUMENT, ohm_curve_alpha(NULL, 20, &alpha));
 */
#define PROVOKES(function, expected, got)                                                          \
  ((void)&function, check_status((expected), (int)(got), #function, __FILE__, __LINE__))

/** Run tests as one suite; what main() returns. */
#define RUN_TESTS(name, ...) RUN_TESTS_FOR_EACH(name, 1, __VA_ARGS__)

/** The same, each test once for every _i of 0 .. count - 1. */
#define RUN_TESTS_FOR_EACH(name, count, ...)                                                       \
  run_tests((name), (int)(count), (const TTest *const[]){__VA_ARGS__, NULL})

void check_near(double got, double want, double tol, const char *text, const char *file, int line);
void check_status(ohm_status expected, int got, const char *function, const char *file, int line);
int run_tests(const char *name, int count, const TTest *const *tests);

/** Path of a file of the source tree, "tests/refs/curve.psv"; to be given to free(). */
char *source_path(const char *name);

#endif
