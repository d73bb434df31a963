/* SPDX-License-Identifier: MIT */
/* A resistance to ground below a pull-up resistor, and the volts between them. */
#ifndef OC_DIVIDER_H
#define OC_DIVIDER_H

#include "../ground/internal.h"

/** V = V0 R/(P + R). */
static inline double oc_divided(double supply_v, double pull_up_ohm, double r_ohm) {
  return supply_v * (r_ohm / (pull_up_ohm + r_ohm));
}

/** The resistance below that divides to v; needs v < supply_v. */
static inline double oc_below(double supply_v, double pull_up_ohm, double v) {
  return pull_up_ohm * v / (supply_v - v);
}

/** The pull-up above r_ohm that leaves v; needs v > 0. */
static inline double oc_above(double supply_v, double v, double r_ohm) {
  return r_ohm * (supply_v / v - 1);
}

/** A supply with one pull-up, or with a second one for resistances below the
 *  changeover. */
struct oc_divider {
  double supply_v;
  double pull_up_ohm;
  double hot_pull_up_ohm; /**< 0 when there is one range */
  double changeover_ohm;
};

/** The pull-up that a resistance meets. */
double oc_divider_pull_up(const struct oc_divider *divider, double r_ohm);

enum { OC_RANGES_MAX = 2 };

/**
 * What may stand below when the volts are v: one resistance, or one of each range. A
 * range changes a little late in either direction, so each is taken to reach 20 % of
 * resistance, some 6 kelvin, past the changeover (common practice, no source).
 *
 * Out     r_ohm  the colder range first; pull_up_ohm  which each one meets
 * Return  how many; 0 when v is not between 0 and the supply, or no range has it
 */
size_t oc_divider_solve(const struct oc_divider *divider, double v, double r_ohm[OC_RANGES_MAX],
                        double pull_up_ohm[OC_RANGES_MAX]);

#endif
