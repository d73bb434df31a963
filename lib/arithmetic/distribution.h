/* SPDX-License-Identifier: MIT */
/* Distributions by which a fit is tested and its intervals are widened. */
#ifndef OC_DISTRIBUTION_H
#define OC_DISTRIBUTION_H

#include "../ground/internal.h"

/**
 * Probability that chi-square exceeds a value by chance.
 *
 * In      chi_square  >= 0
 *         degrees     > 0, finite
 * Return  the upper regularised incomplete gamma function Q(degrees/2, chi_square/2);
 *         NaN outside of the domain. Accuracy 1e-13 absolute, up to 4096 degrees.
 * Source  NIST Digital Library of Mathematical Functions, 8.2.4; series 8.11.4,
 *         continued fraction 8.9.2.
 */
double oc_chi_square_above(double chi_square, double degrees);

/**
 * Probability that Student's t lies outside -t to t.
 *
 * In      t        >= 0
 *         degrees  > 0; INFINITY gives the normal distribution
 * Return  the regularised incomplete beta function I(degrees/2, 1/2) at
 *         degrees/(degrees + t^2); NaN outside of the domain.
 * Source  NIST Digital Library of Mathematical Functions, 8.17; continued fraction
 *         8.17.22.
 */
double oc_student_outside(double t, double degrees);

/**
 * The half-width t for which Student's t lies within -t to t with a probability.
 *
 * In      level    0 < level < 1
 * Return  the coverage factor, JCGM 100:2008, G.3.4; NaN outside of the domain.
 */
double oc_student_factor(double level, double degrees);

#endif
