/* SPDX-License-Identifier: MIT */
/* How probable it is that a quantity lies between its limits. */
#ifndef OC_DECISION_H
#define OC_DECISION_H

#include "estimate.h"

enum { OC_RECTANGLES_MAX = 4 };

/** The distribution of a quantity: a normal part plus independent rectangular
 *  parts, all centred on value. */
struct oc_spread {
  double value;
  double sigma;
  size_t count;
  double half[OC_RECTANGLES_MAX]; /**< half-widths, the widest first */
};

/** The distribution of a budget. Rectangles too narrow to show, and those beyond
 *  the widest four, are counted as normal. Accuracy of a probability: 1e-9 absolute
 *  for up to two rectangles, 3e-7 for more, 1e-12 when none is under 1e-2 of the widest. */
struct oc_spread oc_spread_of(const struct oc_budget *budget);

/** Probability of lying below x; half of an exact value counts as below itself. */
double oc_spread_below(const struct oc_spread *spread, double x);

/** Half-width of the interval about the value that holds a probability, 0 < p < 1:
 *  the expanded uncertainty at that coverage. */
double oc_spread_expanded(const struct oc_spread *spread, double p);

/** The p-quantile, 0 < p < 1. */
double oc_spread_quantile(const struct oc_spread *spread, double p);

/** Limits of a quantity at a condition (here: of resistance at a temperature). */
typedef void (*oc_limits_at)(const void *context, double condition, double *low, double *high);

/**
 * Probabilities that a quantity lies low, within and high when its limits depend
 * on a condition that is itself uncertain and independent of the quantity's error.
 *
 * In      breaks   conditions where the limits bend; may be NULL when count is 0
 * Accuracy  1e-9 absolute, measured against brute force in tests/test_decision.c.
 */
ohm_conformance oc_conformance_over(const struct oc_spread *quantity,
                                    const struct oc_spread *condition, oc_limits_at limits,
                                    const void *context, const double *breaks, size_t count);

enum { OC_NODES_MAX = 192 };

/** Conditions with weights that add up to 1: a distribution as a sum. */
struct oc_nodes {
  size_t count;
  double condition[OC_NODES_MAX];
  double weight[OC_NODES_MAX];
};

void oc_nodes_of(const struct oc_spread *condition, struct oc_nodes *nodes);

/** The value a quantity has to stay below at a node for what is derived from both to
 *  stay below q; rising in q. */
typedef double (*oc_edge_at)(const void *context, size_t node, double q);

/**
 * The p-quantile of what is derived from a quantity and a condition, looked for
 * between low and high; the nearer end when it lies outside.
 */
double oc_quantile_over(const struct oc_spread *quantity, const struct oc_nodes *nodes,
                        oc_edge_at edge, const void *context, double low, double high, double p);

#endif
