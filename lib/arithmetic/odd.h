/* SPDX-License-Identifier: MIT */
/* Whether several that hang on one air agree, and which one does not. */
#ifndef OC_ODD_H
#define OC_ODD_H

#include "../ground/internal.h"

enum { OC_ODD_MAX = 9 };

/** How far one is off what was expected of it, kelvin, and what moves that. */
struct oc_member {
  double off_k;
  double u_k;       /**< its own standard uncertainty */
  double air_share; /**< of an error of the air, which is common to all and not known */
  double start_k;   /**< standard uncertainty from the start, common to those that have it */
};

struct oc_odd {
  double chi_square;
  double probability; /**< that chance alone exceeds it */
  bool agree;
  int odd;      /**< the only one without which the others agree; -1 when there is none */
  double off_k; /**< of the odd one, from what the others say */
};

/**
 * Chi-square with the air eliminated, at count - 1 degrees of freedom. Where it is less
 * likely than 1 - level, that one is odd without which the others reach it, if no other
 * is; of two, none.
 *
 * In      count  2 to OC_ODD_MAX
 */
struct oc_odd oc_odd_of(const struct oc_member *members, size_t count, double level);

#endif
