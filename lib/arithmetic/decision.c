/* SPDX-License-Identifier: MIT */
/*
 * The sum of a normal part (standard deviation s) and n rectangles (half-widths
 * a_i) has, with H_0 the normal distribution function and H_k its k-fold integral,
 *
 *   F(z) = sum over signs e of  prod(e_i) H_n(z + sum e_i a_i)  /  prod(2 a_i)
 *
 * because integrating over one rectangle is a difference of the next integral. With
 * H_k(z) = s^k G_k(z/s), integration by parts gives k G_k(z) = z G_{k-1}(z) +
 * G_{k-2}(z), G_{-1} the normal density. The density of the sum is the same with
 * H_{n-1}.
 */
#include "decision.h"

#include "gaussian.h"
#include "quadrature.h"

#include <float.h>
#include <string.h>

static const double DENSITY_0 = 0.39894228040143268; /* 1/sqrt(2 pi) */

/* Beside a normal part, a rectangle this narrow against it differs from a normal
 * part of equal variance by under 1e-10 in probability, whatever else is summed. */
static const double NARROW = 0.01;
/* So does a rectangle this narrow against the widest by under 1e-9; as a rectangle
 * it would cost more than that in cancellation. */
static const double NARROW_BESIDE_RECTANGLE = 1e-7;
/* A normal part this narrow against a rectangle is no part. */
static const double NO_NORMAL = 1e-12;
/* Beyond this many standard deviations lies under 1e-17. */
static const double FAR_SIGMA = 8.5;
/* Beyond this many the normal density is 0 as a double. */
static const double NOTHING_SIGMA = 39;
/* A condition that reaches no further is exact; its density would leave the doubles. */
static const double NO_CONDITION = 1e-300;
/* From here on the integral of the normal tail is under 1e-12. */
static const double FOOT_SIGMA = 7;

static void add_normal(struct oc_spread *spread, double u) {
  spread->sigma = fmin(hypot(spread->sigma, u), DBL_MAX);
}

static void insert_half(struct oc_spread *spread, double half) {
  size_t at = spread->count;
  if (at == OC_RECTANGLES_MAX) {
    double least = spread->half[at - 1];
    add_normal(spread, fmin(half, least) / sqrt(3));
    if (half <= least)
      return;
    at--;
  } else {
    spread->count++;
  }
  for (; at > 0 && spread->half[at - 1] < half; at--)
    spread->half[at] = spread->half[at - 1];
  spread->half[at] = half;
}

/* Each rectangle multiplies what cancels by the widest over it. Where that costs more than
 * a normal part of equal variance in its place would, those from there on become normal:
 * near an edge of the widest the two differ by up to a 100th of its share of that. */
static void give_up_costly(struct oc_spread *spread) {
  double cancels = DBL_EPSILON / 4;
  size_t kept = 0;
  for (; kept < spread->count; kept++) {
    double share = spread->half[kept] / spread->half[0];
    cancels /= share;
    if (!(cancels <= share / 100))
      break;
  }
  for (size_t i = kept; i < spread->count; i++)
    add_normal(spread, spread->half[i] / sqrt(3));
  spread->count = kept;
}

struct oc_spread oc_spread_of(const struct oc_budget *budget) {
  struct oc_spread spread = {.value = budget->value};
  double widest = 0;
  for (size_t i = 0; i < budget->count; i++) {
    const struct oc_cause *cause = &budget->causes[i];
    if (cause->shape == OC_RECTANGULAR)
      widest = fmax(widest, oc_cause_limit(cause));
    else
      add_normal(&spread, cause->u);
  }
  double narrow = fmax(NARROW * spread.sigma, NARROW_BESIDE_RECTANGLE * widest);
  for (size_t i = 0; i < budget->count; i++) {
    const struct oc_cause *cause = &budget->causes[i];
    if (cause->shape != OC_RECTANGULAR)
      continue;
    if (oc_cause_limit(cause) > narrow)
      insert_half(&spread, fmin(oc_cause_limit(cause), DBL_MAX));
    else
      add_normal(&spread, cause->u);
  }
  give_up_costly(&spread);
  if (spread.count > 0 && spread.sigma < NO_NORMAL * spread.half[0])
    spread.sigma = 0;
  return spread;
}

/* H_k(z); k from -1 (the density) upwards. */
static double integral(int k, double z, double sigma) {
  if (sigma == 0) {
    if (z < 0)
      return 0;
    double power = z > 0 ? 1 : 0.5;
    double factorial = 1;
    for (int i = 1; i <= k; i++) {
      power *= z;
      factorial *= i;
    }
    return power / factorial;
  }
  double x = z / sigma;
  if (x < -NOTHING_SIGMA)
    return 0;
  double before = DENSITY_0 * exp(-x * x / 2);
  if (k < 0)
    return before / sigma;
  double g = 0.5 * erfc(-x * OC_SQRT_HALF);
  double scale = 1;
  for (int i = 1; i <= k; i++) {
    double next = (x * g + before) / i;
    before = g;
    g = next;
    scale *= sigma;
  }
  return g * scale;
}

/* A power of two that brings a width near 1: no digit is lost, and none of its powers leaves
 * the doubles. */
static double unit_near(double width) {
  enum { MOST = 1000 };
  int exponent = width > 0 ? ilogb(width) : 0;
  return scalbn(1, exponent < -MOST ? MOST : exponent > MOST ? -MOST : -exponent);
}

/* The sum over signs above, for the distribution function (k = n) and the density
 * (k = n - 1), at z <= 0 where least cancels. */
static double over_rectangles(const struct oc_spread *spread, int k, double z) {
  double widest = fmax(spread->sigma, spread->half[0]);
  double unit = unit_near(widest);
  double sigma = spread->sigma * unit;
  double corner[1 << OC_RECTANGLES_MAX];
  double sign[1 << OC_RECTANGLES_MAX];
  double sides = 1;
  size_t count = 1;
  corner[0] = z * unit;
  sign[0] = 1;
  for (size_t i = 0; i < spread->count; i++) {
    double half = spread->half[i] * unit;
    sides *= 2 * half;
    for (size_t c = 0; c < count; c++) {
      corner[count + c] = corner[c] - half;
      sign[count + c] = -sign[c];
      corner[c] += half;
    }
    count *= 2;
  }
  double sum = 0;
  for (size_t c = 0; c < count; c++)
    sum += sign[c] * integral(k, corner[c], sigma);
  sum /= sides;
  return k < (int)spread->count ? sum * unit : sum;
}

static double unit_clamp(double p) {
  return p < 0 ? 0 : p > 1 ? 1 : p;
}

static double reach(const struct oc_spread *spread) {
  double far = FAR_SIGMA * spread->sigma;
  for (size_t i = 0; i < spread->count; i++)
    far += spread->half[i];
  return far;
}

/* Probability of lying below value + z. */
static double below_by(const struct oc_spread *spread, double z) {
  if (z != 0 && fabs(z) >= reach(spread))
    return z > 0 ? 1 : 0;
  /* The lower tail has no cancellation; the upper one is its mirror. */
  double tail = unit_clamp(over_rectangles(spread, (int)spread->count, -fabs(z)));
  return z > 0 ? 1 - tail : tail;
}

double oc_spread_below(const struct oc_spread *spread, double x) {
  return below_by(spread, x - spread->value);
}

double oc_spread_expanded(const struct oc_spread *spread, double p) {
  double low = 0;
  double high = reach(spread);
  for (int i = 0; i < 60 && low < high; i++) {
    double middle = low + (high - low) / 2;
    double inside = 1 - 2 * below_by(spread, -middle);
    if (inside < p)
      low = middle;
    else
      high = middle;
  }
  return high;
}

double oc_spread_quantile(const struct oc_spread *spread, double p) {
  double away = oc_spread_expanded(spread, fabs(2 * p - 1));
  return spread->value + (p < 0.5 ? -away : away);
}

/* ---- over an uncertain condition ---- */

struct integrand {
  const struct oc_spread *quantity;
  const struct oc_spread *condition;
  oc_limits_at limits;
  const void *context;
};

struct pair {
  double low;
  double high;
};

/* Probabilities of lying low and high at one offset from the condition's value. An
 * offset keeps its digits where a narrow condition would lose them. */
static struct pair misses_at(const struct integrand *f, double offset) {
  double low;
  double high;
  f->limits(f->context, f->condition->value + offset, &low, &high);
  double value = f->quantity->value;
  /* The upper tail as the lower one of the mirror image, so that neither loses
   * digits. */
  return (struct pair){below_by(f->quantity, low - value), below_by(f->quantity, value - high)};
}

static struct pair weighted_at(const struct integrand *f, double offset) {
  double density = over_rectangles(f->condition, (int)f->condition->count - 1, -fabs(offset));
  if (!(density > 0))
    return (struct pair){0, 0};
  struct pair misses = misses_at(f, offset);
  return (struct pair){density * misses.low, density * misses.high};
}

/* Gauss-Kronrod 7 and 15 points: abscissae, Kronrod weights, Gauss weights. Kronrod,
 * Nodes and Weights of Quadrature Formulas, 1965. */
static const double gk_x[8] = {
    0.99145537112081264, 0.94910791234275852, 0.86486442335976907, 0.74153118559939444,
    0.58608723546769113, 0.40584515137739717, 0.20778495500789847, 0.0};
static const double gk_w[8] = {0.022935322010529225, 0.063092092629978553, 0.10479001032225018,
                               0.14065325971552592,  0.16900472663926790,  0.19035057806478541,
                               0.20443294007529889,  0.20948214108472783};
static const double gauss_w[4] = {0.12948496616886969, 0.27970539148927667, 0.38183005050511894,
                                  0.41795918367346939};

static struct pair rule(const struct integrand *f, double a, double b, double *error) {
  double centre = (a + b) / 2;
  double half = (b - a) / 2;
  struct pair kronrod = {0, 0};
  struct pair gauss = {0, 0};
  for (int i = 0; i < 8; i++) {
    struct pair sum = weighted_at(f, centre + half * gk_x[i]);
    if (i < 7) {
      struct pair mirror = weighted_at(f, centre - half * gk_x[i]);
      sum.low += mirror.low;
      sum.high += mirror.high;
    }
    kronrod.low += gk_w[i] * sum.low;
    kronrod.high += gk_w[i] * sum.high;
    if (i % 2 == 1) {
      gauss.low += gauss_w[i / 2] * sum.low;
      gauss.high += gauss_w[i / 2] * sum.high;
    }
  }
  *error = half * fmax(fabs(kronrod.low - gauss.low), fabs(kronrod.high - gauss.high));
  return (struct pair){half * kronrod.low, half * kronrod.high};
}

/* The tolerance is not shared out between halves: the rule's error lies far below its
 * estimate, and round-off must not make every branch go to the full depth. */
static struct pair integrate(const struct integrand *f, double a, double b, int depth) {
  double error;
  struct pair whole = rule(f, a, b, &error);
  if (error <= 1e-12 || depth == 0)
    return whole;
  double middle = (a + b) / 2;
  struct pair left = integrate(f, a, middle, depth - 1);
  struct pair right = integrate(f, middle, b, depth - 1);
  return (struct pair){left.low + right.low, left.high + right.high};
}

/* Ends, bends of a condition and crossings of two limits with their feet, breaks. */
enum { CUTS_MAX = 2 + 9 * (1 << OC_RECTANGLES_MAX) + 64 };

struct cuts {
  size_t count;
  double at[CUTS_MAX];
};

static void cut(struct cuts *cuts, double x) {
  double low = cuts->at[0];
  double high = cuts->at[1];
  if (low < x && x < high && cuts->count < CUTS_MAX)
    cuts->at[cuts->count++] = x;
}

static void sort_cuts(struct cuts *cuts) {
  for (size_t i = 1; i < cuts->count; i++) {
    double x = cuts->at[i];
    size_t j = i;
    for (; j > 0 && cuts->at[j - 1] > x; j--)
      cuts->at[j] = cuts->at[j - 1];
    cuts->at[j] = x;
  }
}

enum { BENDS_MAX = 3 << OC_RECTANGLES_MAX };

/* Where a spread bends, from its value: every sum of signed half-widths, and the feet
 * of the normal edge there, which would hide between nodes. */
static size_t bends(const struct oc_spread *spread, double *at) {
  size_t count = 0;
  for (size_t signs = 0; signs < (size_t)1 << spread->count; signs++) {
    double edge = 0;
    for (size_t i = 0; i < spread->count; i++)
      edge += signs >> i & 1 ? -spread->half[i] : spread->half[i];
    at[count++] = edge;
    if (spread->sigma > 0) {
      at[count++] = edge - FOOT_SIGMA * spread->sigma;
      at[count++] = edge + FOOT_SIGMA * spread->sigma;
    }
  }
  return count;
}

static double limit_at(const struct integrand *f, bool upper, double offset) {
  double low;
  double high;
  f->limits(f->context, f->condition->value + offset, &low, &high);
  return upper ? high : low;
}

/* The offset where a limit passes a level, if it does so between a and b. */
static void cut_crossing(struct cuts *cuts, const struct integrand *f, bool upper, double level) {
  double a = cuts->at[0];
  double b = cuts->at[1];
  bool falls = limit_at(f, upper, a) > level;
  if (falls == (limit_at(f, upper, b) > level))
    return;
  for (int i = 0; i < 60; i++) {
    double middle = a + (b - a) / 2;
    if ((limit_at(f, upper, middle) > level) == falls)
      a = middle;
    else
      b = middle;
  }
  cut(cuts, a + (b - a) / 2);
}

static void cut_at_crossings(struct cuts *cuts, const struct integrand *f) {
  double levels[BENDS_MAX];
  size_t count = bends(f->quantity, levels);
  for (int upper = 0; upper <= 1; upper++)
    for (size_t i = 0; i < count; i++)
      cut_crossing(cuts, f, upper, f->quantity->value + levels[i]);
}

ohm_conformance oc_conformance_over(const struct oc_spread *quantity,
                                    const struct oc_spread *condition, oc_limits_at limits,
                                    const void *context, const double *breaks, size_t count) {
  struct integrand f = {quantity, condition, limits, context};
  struct pair misses = {0, 0};
  double far = reach(condition);
  if (far < NO_CONDITION) {
    misses = misses_at(&f, 0);
  } else {
    struct cuts cuts = {2, {-far, far}};
    double edges[BENDS_MAX];
    size_t edge_count = bends(condition, edges);
    for (size_t i = 0; i < edge_count; i++)
      cut(&cuts, edges[i]);
    cut_at_crossings(&cuts, &f);
    for (size_t i = 0; i < count; i++)
      cut(&cuts, breaks[i] - condition->value);
    sort_cuts(&cuts);
    for (size_t i = 1; i < cuts.count; i++) {
      struct pair part = integrate(&f, cuts.at[i - 1], cuts.at[i], 20);
      misses.low += part.low;
      misses.high += part.high;
    }
  }
  ohm_conformance p = {unit_clamp(misses.low), 0, unit_clamp(misses.high)};
  p.p_within = unit_clamp(1 - p.p_low - p.p_high);
  return p;
}

/* ---- a condition as nodes ---- */

static void add_panel(struct oc_nodes *nodes, const struct oc_spread *condition, double a,
                      double b) {
  double x[OC_PANEL_NODES];
  double weight[OC_PANEL_NODES];
  oc_quadrature_fill(a, b, 1, x, weight);
  for (int i = 0; i < OC_PANEL_NODES; i++) {
    double density = over_rectangles(condition, (int)condition->count - 1, x[i] - condition->value);
    if (nodes->count == OC_NODES_MAX || !(density > 0))
      continue;
    nodes->condition[nodes->count] = x[i];
    nodes->weight[nodes->count++] = density * weight[i];
  }
}

void oc_nodes_of(const struct oc_spread *condition, struct oc_nodes *nodes) {
  enum { PANELS = OC_NODES_MAX / OC_PANEL_NODES };
  double far = reach(condition);
  nodes->count = 0;
  if (far == 0) {
    nodes->count = 1;
    nodes->condition[0] = condition->value;
    nodes->weight[0] = 1;
    return;
  }
  /* Even panels: what is asked of the nodes bends where the limits pass the quantity,
   * which is anywhere. */
  double step = 2 * far / PANELS;
  for (int i = 0; i < PANELS; i++) {
    double from = condition->value - far + i * step;
    add_panel(nodes, condition, from, from + step);
  }
  double sum = 0;
  for (size_t i = 0; i < nodes->count; i++)
    sum += nodes->weight[i];
  for (size_t i = 0; i < nodes->count; i++)
    nodes->weight[i] /= sum;
}

static double below_over(const struct oc_spread *quantity, const struct oc_nodes *nodes,
                         oc_edge_at edge, const void *context, double q) {
  double p = 0;
  for (size_t i = 0; i < nodes->count; i++)
    p += nodes->weight[i] * oc_spread_below(quantity, edge(context, i, q));
  return p;
}

double oc_quantile_over(const struct oc_spread *quantity, const struct oc_nodes *nodes,
                        oc_edge_at edge, const void *context, double low, double high, double p) {
  double at_low = below_over(quantity, nodes, edge, context, low) - p;
  double at_high = below_over(quantity, nodes, edge, context, high) - p;
  if (at_low >= 0)
    return low;
  if (at_high <= 0)
    return high;
  double tolerance = 1e-9 * fmax(fabs(low), fabs(high));
  /* The secant is halved at an end that stays (Illinois), and every third step is a
   * bisection, so that flat stretches of the distribution cost little. */
  for (int step = 1; step <= 90 && high - low > tolerance; step++) {
    double middle = low + (high - low) * (step % 3 == 0 ? 0.5 : at_low / (at_low - at_high));
    double at_middle = below_over(quantity, nodes, edge, context, middle) - p;
    if (at_middle < 0) {
      low = middle;
      at_low = at_middle;
      at_high /= 2;
    } else {
      high = middle;
      at_high = at_middle;
      at_low /= 2;
    }
  }
  return low + (high - low) / 2;
}

static void fixed_limits(const void *context, double condition, double *low, double *high) {
  const struct pair *limits = context;
  (void)condition;
  *low = limits->low;
  *high = limits->high;
}

ohm_status ohm_conformance_of(double value, double u, double limit, double low, double high,
                              ohm_conformance *conformance) {
  if (!conformance)
    return OHM_NULL_ARGUMENT;
  *conformance = (ohm_conformance){NAN, NAN, NAN};
  if (!(isfinite(value) && oc_inside(0, u, DBL_MAX) && oc_inside(0, limit, DBL_MAX) &&
        low <= high && low < INFINITY && high > -INFINITY))
    return OHM_BAD_ARGUMENT;
  struct oc_budget budget = oc_budget_of(value);
  oc_budget_add_normal(&budget, OC_CAUSE_METER, u);
  oc_budget_add_limit(&budget, OC_CAUSE_METER, limit);
  struct oc_spread spread = oc_spread_of(&budget);
  struct oc_spread certain = {0};
  struct pair limits = {low, high};
  *conformance = oc_conformance_over(&spread, &certain, fixed_limits, &limits, NULL, 0);
  return OHM_OK;
}
