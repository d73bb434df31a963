/* SPDX-License-Identifier: MIT */
#include "fault_size.h"

enum { STEPS_MAX = 30, HALVINGS_MAX = 30, GRID = 97, WIDENINGS_MAX = 6 };

/* Where a likelihood is this small beside its greatest, a grid may end. */
static const double NOTHING = 1e-6;

bool oc_fault_is_one_sided(enum oc_fault_shape shape) {
  return shape == OC_FAULT_SERIES || shape == OC_FAULT_LEAKAGE;
}

/* ---- the best size, every cause counted as normal ---- */

/* Of the sizes by which single readings would fit, the best. */
static struct oc_fault best_of_each(const struct oc_evidence *evidence, enum oc_fault_shape shape) {
  struct oc_fault best = {shape, 0};
  double least = oc_evidence_chi_square(evidence, &best);
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    struct oc_fault fault = {
        shape, oc_fault_size(shape, reading->log_nominal, reading->log_ohm, reading->at_c)};
    double chi_square = oc_evidence_chi_square(evidence, &fault);
    if (chi_square < least) {
      least = chi_square;
      best = fault;
    }
  }
  return best;
}

/* Gauss and Newton, a step halved until it gains. */
static bool improve(const struct oc_evidence *evidence, struct oc_fault *fault, double *u) {
  double least = oc_evidence_chi_square(evidence, fault);
  for (int step = 0; step < STEPS_MAX; step++) {
    double change;
    if (!oc_evidence_step(evidence, fault, &change, u))
      return false;
    if (!(fabs(change) > 1e-4 * *u))
      break;
    struct oc_fault next = *fault;
    double there = INFINITY;
    for (int halving = 0; halving < HALVINGS_MAX && !(there < least); halving++) {
      next.size = fault->size + change;
      there = oc_evidence_chi_square(evidence, &next);
      change /= 2;
    }
    if (!(there < least))
      break;
    *fault = next;
    least = there;
  }
  return isfinite(least) && *u > 0 && isfinite(*u);
}

/* ---- the likelihood of sizes ---- */

struct grid {
  double first;
  double step;
  double likelihood[GRID]; /* relative to the greatest */
};

static void fill(struct grid *grid, const struct oc_evidence *evidence, enum oc_fault_shape shape,
                 double low, double high) {
  double greatest = -INFINITY;
  grid->first = low;
  grid->step = (high - low) / (GRID - 1);
  for (int i = 0; i < GRID; i++) {
    struct oc_fault fault = {shape, low + i * grid->step};
    grid->likelihood[i] = oc_evidence_log_likelihood(evidence, &fault);
    greatest = fmax(greatest, grid->likelihood[i]);
  }
  for (int i = 0; i < GRID; i++)
    grid->likelihood[i] = exp(grid->likelihood[i] - greatest);
}

/* From where the likelihood begins to where it ends. */
static bool span(struct grid *grid, const struct oc_evidence *evidence, const struct oc_fault *best,
                 double u) {
  double below = 6 * u;
  double above = 6 * u;
  for (int i = 0; i < WIDENINGS_MAX; i++) {
    fill(grid, evidence, best->shape, best->size - below, best->size + above);
    bool begins = grid->likelihood[0] <= NOTHING;
    bool ends = grid->likelihood[GRID - 1] <= NOTHING;
    if (begins && ends)
      return true;
    below *= begins ? 1 : 3;
    above *= ends ? 1 : 3;
  }
  return false;
}

static double place(const struct grid *grid, int i) {
  return grid->first + i * grid->step;
}

/* The size below which a share p lies. */
static double quantile(const struct grid *grid, const double *below, double p) {
  int i = 1;
  while (i < GRID - 1 && below[i] < p)
    i++;
  double width = below[i] - below[i - 1];
  double part = width > 0 ? (p - below[i - 1]) / width : 0;
  return place(grid, i - 1) + part * grid->step;
}

static double share_below(const struct grid *grid, const double *below, double size) {
  double at = (size - grid->first) / grid->step;
  if (!(at > 0))
    return 0;
  if (at >= GRID - 1)
    return 1;
  int i = (int)at;
  return below[i] + (at - i) * (below[i + 1] - below[i]);
}

static double spread(const struct grid *grid, const double *below) {
  double mean = 0;
  double square = 0;
  for (int i = 1; i < GRID; i++) {
    double middle = place(grid, i) - grid->step / 2;
    double share = below[i] - below[i - 1];
    mean += share * middle;
    square += share * middle * middle;
  }
  return sqrt(fmax(0, square - mean * mean));
}

bool oc_fault_estimate(const struct oc_evidence *evidence, enum oc_fault_shape shape, double level,
                       struct oc_fault_estimate *estimate) {
  double u = NAN;
  struct grid grid;
  struct oc_fault best = best_of_each(evidence, shape);
  if (!improve(evidence, &best, &u) || !span(&grid, evidence, &best, u))
    return false;
  double below[GRID];
  below[0] = 0;
  for (int i = 1; i < GRID; i++)
    below[i] = below[i - 1] + (grid.likelihood[i - 1] + grid.likelihood[i]) / 2;
  for (int i = 1; i < GRID; i++)
    below[i] /= below[GRID - 1];
  double negative = share_below(&grid, below, 0);
  *estimate = (struct oc_fault_estimate){
      .size = quantile(&grid, below, 0.5),
      .u = spread(&grid, below),
      .low = quantile(&grid, below, (1 - level) / 2),
      .high = quantile(&grid, below, (1 + level) / 2),
      .p_chance = oc_fault_is_one_sided(shape) ? negative : 2 * fmin(negative, 1 - negative),
      .chi_square = oc_evidence_chi_square(evidence, &best)};
  return true;
}
