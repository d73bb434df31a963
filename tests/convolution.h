/* SPDX-License-Identifier: MIT */
/*
 * The distribution of a sum of a normal part and rectangles, found another way than
 * the library does: the rectangles are summed by averaging their piecewise polynomial
 * over one after the other, then averaged over the normal part, both by
 * Gauss-Legendre quadrature in long double.
 */
#ifndef OHM_TESTS_CONVOLUTION_H
#define OHM_TESTS_CONVOLUTION_H

#include "../lib/arithmetic/decision.h"

struct parts {
  double sigma;
  int count;
  double half[OC_RECTANGLES_MAX];
};

enum { CONVOLUTION_KINKS = 1 << OC_RECTANGLES_MAX };

/** Find the nodes; once, before anything else. */
void convolution_begin(void);

/** Where the sum of the first count rectangles bends, in rising order: between
 *  neighbours it is a polynomial. How many there are is returned. */
int convolution_kinks(const struct parts *parts, int count, long double *at);

/** Probability of lying below z. */
double convolution_below(const struct parts *parts, double z);

#endif
