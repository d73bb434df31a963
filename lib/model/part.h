/* SPDX-License-Identifier: MIT */
/* What several readings of one sensor say together. */
#ifndef OC_PART_H
#define OC_PART_H

#include "measurement.h"

enum { OC_PART_READINGS = 16, OC_PART_NODES = 33 };

/** One reading of it, in logarithms of resistance. */
struct oc_part_reading {
  double log_ohm;               /**< at the probes' tips */
  double middle[OC_PART_NODES]; /**< of what is allowed, over the thermometer's error */
  double half;                  /**< of what is allowed, either side of the middle */
  double worth[2];              /**< of each place in the band: one half of it */
  double meter;                 /**< limit of the meter's percent */
  double leads;                 /**< limit */
  int range;                    /**< alike for readings of one range of the meter */
  double u_own;                 /**< standard, of what errs in this reading alone */
  double scatter;               /**< standard, of the part about the printed curve */
};

struct oc_part {
  size_t count;
  size_t places;       /**< 1, or 2 of resistance and beta */
  double ranges_alike; /**< of the meter, 1 or 0; NaN: not known */
  struct oc_part_reading readings[OC_PART_READINGS];
};

/** No readings yet. */
void oc_part_begin(struct oc_part *part);

/** What each place in the band is worth at a temperature, as a logarithm of resistance: one half
 *  of what is allowed; of a tolerance on beta the second, with its sign. */
void oc_part_worth(const ohm_curve *curve, const struct oc_tolerance *tolerance, double t_c,
                   double worth[2]);

/**
 * Add a reading that shows a number, as it was asked, judged by a tolerance.
 *
 * In      tolerance  covers the temperature of the reading; that of all of them
 */
void oc_part_add(struct oc_part *part, const struct oc_measurement *measurement,
                 const struct oc_tolerance *tolerance);

/** What they come to. */
struct oc_part_answer {
  double p_within; /**< inside the limits at every temperature that was measured */
  double p_low[OC_PART_READINGS];
  double p_high[OC_PART_READINGS];
  double place; /**< in the band, of one place: middle 0, limits -1 and 1; else NaN */
  double place_low;
  double place_high; /**< it lies between at the level */
};

/**
 * What is known of the part after all readings. The logarithm of each is
 *
 *     middle(t + thermometer) + half place + scatter + meter + leads + own
 *
 * with one place in the band for all readings (of a tolerance on resistance and beta two,
 * half = r25 place1 + beta |ln R/R25| place2), any place as probable as any other, with one
 * error of the thermometer and of the leads (rectangular), and one of the meter on each of
 * its ranges (rectangular). Readings that no one place explains have more scatter, so much that
 * they fit: each then speaks for its own temperature. Scatter and own errors are normal, each
 * reading its own. Whether a meter errs alike on all its ranges its maker does not print: both are
 * taken, and the answer is what both allow.
 *
 * Accuracy of a probability: 0.01 at most, 2e-3 on average, of 60 drawn benches against 64 times
 * as many cases.
 * Return  false without memory
 */
bool oc_part_judge(const struct oc_part *part, double level, struct oc_part_answer *answer);

/** How probable one side must be before a part is condemned at one of several temperatures:
 *  the level split over the places in the band (Bonferroni). */
double oc_part_level(const struct oc_part *part, double level);

#endif
