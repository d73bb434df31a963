/* SPDX-License-Identifier: MIT */
/*
 * How well each row of a table agrees with the others, however many of them are bad.
 * In x = 1/T and y = ln R the others lead to y with a standard uncertainty: a
 * polynomial in w = x/x0 - 1 whose coefficients are those of thermistors and
 * platinum, order of magnitude, so that few rows suffice and far ends are uncertain.
 */
#ifndef OC_SMOOTH_H
#define OC_SMOOTH_H

#include "../ground/internal.h"

/** A row, and what was found of it. */
struct oc_smooth {
  double x;       /**< 1/T, per kelvin, rising or falling along the table */
  double y;       /**< ln R */
  double half;    /**< of y: half of what one in the last printed digit is worth */
  double u;       /**< of y: what a sound row may lie off the line beside that, standard */
  double led_y;   /**< where the other rows lead to */
  double u_sound; /**< what a sound row may lie off that beside its rounding, standard */
  double level;   /**< how sure it is that the row is off */
  bool off;
};

enum { OC_SMOOTH_MIN = 5 };

/** Judge every row by the others. Below OC_SMOOTH_MIN rows none is off and nothing
 *  is led to (NaN). */
void oc_smooth_judge(struct oc_smooth *rows, size_t count);

#endif
