/* SPDX-License-Identifier: MIT */
/* First-order lag behind the air: what a warm thing left standing comes to. */
#ifndef OC_COOLING_H
#define OC_COOLING_H

#include "../ground/internal.h"

/** Temperature of the air, straight between points; before the first and after the last
 *  it is held. One point is air that never changes. */
struct oc_air {
  size_t count;          /**< 1 and more */
  const double *after_h; /**< rising */
  const double *t_c;
};

double oc_air_at(const struct oc_air *air, double after_h);

/** Where a thing has come to, and what that owes to each cause. */
struct oc_cooled {
  double t_c;
  double start_share; /**< of an error of the start; that of an error common to all of the
                           air is 1 less this */
  double noise_share; /**< of errors of the air's points, each its own, alike in size */
};

/**
 * Exact at the end of a lag dT/dt = (air - T)/tau that began at from_h with start_c.
 *
 * In      tau_h  > 0
 *         to_h   >= from_h
 */
struct oc_cooled oc_cooling_follow(const struct oc_air *air, double start_c, double from_h,
                                   double to_h, double tau_h);

enum { OC_MEANS_MAX = 4 };

/** Values at one time constant. */
typedef void (*oc_at_tau)(const void *context, double tau_h, double *values);

/**
 * Means of count values over a time constant that may be anything from low_h to high_h
 * alike, to 1e-7 of the greater of 1 and the mean.
 */
void oc_cooling_mean(double low_h, double high_h, oc_at_tau at_tau, const void *context,
                     size_t count, double *means);

#endif
