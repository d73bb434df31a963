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

#include <float.h>
#include <string.h>

static const double SQRT_HALF = 0.70710678118654752;
static const double DENSITY_0 = 0.39894228040143268; /* 1/sqrt(2 pi) */

/* A rectangle this narrow against the whole spread differs from a normal part of
 * equal variance by under 1e-10 in probability; as a rectangle it would cost more
 * than that in cancellation. */
static const double NARROW = 0.01;
/* A normal part this narrow against a rectangle is no part. */
static const double NO_NORMAL = 1e-9;
/* Beyond this many standard deviations lies under 1e-17. */
static const double FAR_SIGMA = 8.5;

static void insert_half(struct ohm_spread *spread, double half) {
  size_t at = spread->count;
  if (at == OHM_RECTANGLES_MAX) {
    double least = spread->half[at - 1];
    double folded = half < least ? half : least;
    spread->sigma = hypot(spread->sigma, folded / sqrt(3));
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

struct ohm_spread ohm_spread_of(const struct ohm_budget *budget) {
  struct ohm_spread spread = {.value = budget->value};
  double u = ohm_budget_u(budget);
  for (size_t i = 0; i < budget->count; i++) {
    const struct ohm_cause *cause = &budget->causes[i];
    if (cause->shape == OHM_RECTANGULAR && ohm_cause_limit(cause) > NARROW * u)
      insert_half(&spread, ohm_cause_limit(cause));
    else
      spread.sigma = hypot(spread.sigma, cause->u);
  }
  if (spread.count > 0 && spread.sigma < NO_NORMAL * spread.half[0])
    spread.sigma = 0;
  return spread;
}

/* H_k(z); k from -1 (the density) upwards. */
static double integral(int k, double z, double sigma) {
  if (sigma == 0) {
    double power = z > 0 ? 1 : z < 0 ? 0 : 0.5;
    for (int i = 1; i <= k; i++)
      power *= z / i;
    return power;
  }
  double x = z / sigma;
  double before = DENSITY_0 * exp(-x * x / 2);
  if (k < 0)
    return before / sigma;
  double g = 0.5 * erfc(-x * SQRT_HALF);
  double scale = 1;
  for (int i = 1; i <= k; i++) {
    double next = (x * g + before) / i;
    before = g;
    g = next;
    scale *= sigma;
  }
  return g * scale;
}

/* The sum over signs above, for the distribution function (k = n) and the density
 * (k = n - 1). */
static double over_rectangles(const struct ohm_spread *spread, int k, double z) {
  double sum = 0;
  for (unsigned signs = 0; signs < 1u << spread->count; signs++) {
    double shifted = z;
    double sign = 1;
    for (size_t i = 0; i < spread->count; i++) {
      bool minus = signs >> i & 1;
      shifted += minus ? -spread->half[i] : spread->half[i];
      sign = minus ? -sign : sign;
    }
    sum += sign * integral(k, shifted, spread->sigma);
  }
  for (size_t i = 0; i < spread->count; i++)
    sum /= 2 * spread->half[i];
  return sum;
}

static double unit_clamp(double p) {
  return p < 0 ? 0 : p > 1 ? 1 : p;
}

static double reach(const struct ohm_spread *spread) {
  double far = FAR_SIGMA * spread->sigma;
  for (size_t i = 0; i < spread->count; i++)
    far += spread->half[i];
  return far;
}

double ohm_spread_below(const struct ohm_spread *spread, double x) {
  double z = x - spread->value;
  if (z != 0 && fabs(z) >= reach(spread))
    return z > 0 ? 1 : 0;
  /* The lower tail has no cancellation; the upper one is its mirror. */
  double tail = unit_clamp(over_rectangles(spread, (int)spread->count, -fabs(z)));
  return z > 0 ? 1 - tail : tail;
}

double ohm_spread_expanded(const struct ohm_spread *spread, double p) {
  double low = 0;
  double high = reach(spread);
  for (int i = 0; i < 60 && low < high; i++) {
    double middle = low + (high - low) / 2;
    double inside = 1 - 2 * ohm_spread_below(spread, spread->value - middle);
    if (inside < p)
      low = middle;
    else
      high = middle;
  }
  return high;
}

/* ---- over an uncertain condition ---- */

struct integrand {
  const struct ohm_spread *quantity;
  const struct ohm_spread *condition;
  ohm_limits_at limits;
  const void *context;
};

struct pair {
  double low;
  double high;
};

/* Probabilities of lying low and high at one condition. */
static struct pair misses_at(const struct integrand *f, double condition) {
  double low;
  double high;
  f->limits(f->context, condition, &low, &high);
  double value = f->quantity->value;
  /* The upper tail as the lower one of the mirror image, so that neither loses
   * digits. */
  return (struct pair){ohm_spread_below(f->quantity, low),
                       ohm_spread_below(f->quantity, value - (high - value))};
}

static struct pair weighted_at(const struct integrand *f, double condition) {
  double density =
      over_rectangles(f->condition, (int)f->condition->count - 1, condition - f->condition->value);
  if (!(density > 0))
    return (struct pair){0, 0};
  struct pair misses = misses_at(f, condition);
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

static struct pair integrate(const struct integrand *f, double a, double b, double tolerance,
                             int depth) {
  double error;
  struct pair whole = rule(f, a, b, &error);
  if (error <= tolerance || depth == 0)
    return whole;
  double middle = (a + b) / 2;
  struct pair left = integrate(f, a, middle, tolerance / 2, depth - 1);
  struct pair right = integrate(f, middle, b, tolerance / 2, depth - 1);
  return (struct pair){left.low + right.low, left.high + right.high};
}

enum { CUTS_MAX = 96 };

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

/* Every sum of value and signed half-widths: where a spread bends. */
static size_t bends(const struct ohm_spread *spread, double *at) {
  size_t count = (size_t)1 << spread->count;
  for (size_t signs = 0; signs < count; signs++) {
    at[signs] = spread->value;
    for (size_t i = 0; i < spread->count; i++)
      at[signs] += signs >> i & 1 ? -spread->half[i] : spread->half[i];
  }
  return count;
}

static double limit_at(const struct integrand *f, bool upper, double condition) {
  double low;
  double high;
  f->limits(f->context, condition, &low, &high);
  return upper ? high : low;
}

/* The condition where a limit passes a level, if it does so between a and b. */
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
  double levels[1 << OHM_RECTANGLES_MAX];
  size_t count = bends(f->quantity, levels);
  for (int upper = 0; upper <= 1; upper++) {
    for (size_t i = 0; i < count; i++)
      cut_crossing(cuts, f, upper, levels[i]);
    if (f->quantity->sigma > 0) {
      /* A narrow normal edge hides between nodes unless its feet are cut out too. */
      cut_crossing(cuts, f, upper, levels[0] - 5 * f->quantity->sigma);
      cut_crossing(cuts, f, upper, levels[count - 1] + 5 * f->quantity->sigma);
    }
  }
}

ohm_conformance ohm_conformance_over(const struct ohm_spread *quantity,
                                     const struct ohm_spread *condition, ohm_limits_at limits,
                                     const void *context, const double *breaks, size_t count) {
  struct integrand f = {quantity, condition, limits, context};
  struct pair misses = {0, 0};
  double far = reach(condition);
  if (far == 0) {
    misses = misses_at(&f, condition->value);
  } else {
    struct cuts cuts = {2, {condition->value - far, condition->value + far}};
    double edges[1 << OHM_RECTANGLES_MAX];
    size_t edge_count = bends(condition, edges);
    for (size_t i = 0; i < edge_count; i++)
      cut(&cuts, edges[i]);
    cut_at_crossings(&cuts, &f);
    for (size_t i = 0; i < count; i++)
      cut(&cuts, breaks[i]);
    sort_cuts(&cuts);
    for (size_t i = 1; i < cuts.count; i++) {
      struct pair part = integrate(&f, cuts.at[i - 1], cuts.at[i], 1e-12, 20);
      misses.low += part.low;
      misses.high += part.high;
    }
  }
  ohm_conformance p = {unit_clamp(misses.low), 0, unit_clamp(misses.high)};
  p.p_within = unit_clamp(1 - p.p_low - p.p_high);
  return p;
}

/* ---- a condition as nodes ---- */

/* Gauss-Legendre, 8 points. Abramowitz and Stegun, Handbook of Mathematical Functions,
 * table 25.4. */
static const double gl_x[4] = {0.18343464249564980, 0.52553240991632899, 0.79666647741362674,
                               0.96028985649753623};
static const double gl_w[4] = {0.36268378337836198, 0.31370664587788729, 0.22238103445337447,
                               0.10122853629037626};

static void add_panel(struct ohm_nodes *nodes, const struct ohm_spread *condition, double a,
                      double b) {
  for (int i = 0; i < 8; i++) {
    double x = (a + b) / 2 + (i % 2 ? -1 : 1) * (b - a) / 2 * gl_x[i / 2];
    double density = over_rectangles(condition, (int)condition->count - 1, x - condition->value);
    if (nodes->count == OHM_NODES_MAX || !(density > 0))
      continue;
    nodes->condition[nodes->count] = x;
    nodes->weight[nodes->count++] = density * gl_w[i / 2] * (b - a) / 2;
  }
}

void ohm_nodes_of(const struct ohm_spread *condition, struct ohm_nodes *nodes) {
  enum { PANELS = 18 };
  double far = reach(condition);
  nodes->count = 0;
  if (far == 0) {
    nodes->count = 1;
    nodes->condition[0] = condition->value;
    nodes->weight[0] = 1;
    return;
  }
  struct cuts cuts = {2, {condition->value - far, condition->value + far}};
  double edges[1 << OHM_RECTANGLES_MAX];
  size_t edge_count = condition->count <= 2 ? bends(condition, edges) : 0;
  for (size_t i = 0; i < edge_count; i++)
    cut(&cuts, edges[i]);
  sort_cuts(&cuts);
  size_t panels = PANELS / (cuts.count - 1);
  for (size_t i = 1; i < cuts.count; i++)
    for (size_t j = 0; j < panels; j++) {
      double step = (cuts.at[i] - cuts.at[i - 1]) / (double)panels;
      double from = cuts.at[i - 1] + (double)j * step;
      add_panel(nodes, condition, from, from + step);
    }
  double sum = 0;
  for (size_t i = 0; i < nodes->count; i++)
    sum += nodes->weight[i];
  for (size_t i = 0; i < nodes->count; i++)
    nodes->weight[i] /= sum;
}

static double below_over(const struct ohm_spread *quantity, const struct ohm_nodes *nodes,
                         ohm_edge_at edge, const void *context, double q) {
  double p = 0;
  for (size_t i = 0; i < nodes->count; i++)
    p += nodes->weight[i] * ohm_spread_below(quantity, edge(context, i, q));
  return p;
}

double ohm_quantile_over(const struct ohm_spread *quantity, const struct ohm_nodes *nodes,
                         ohm_edge_at edge, const void *context, double low, double high, double p) {
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
  if (!(isfinite(value) && ohm_inside(0, u, DBL_MAX) && ohm_inside(0, limit, DBL_MAX) &&
        low <= high && low < INFINITY && high > -INFINITY))
    return OHM_BAD_ARGUMENT;
  struct ohm_budget budget = ohm_budget_of(value);
  ohm_budget_add_normal(&budget, OHM_CAUSE_METER, u);
  ohm_budget_add_limit(&budget, OHM_CAUSE_METER, limit);
  struct ohm_spread spread = ohm_spread_of(&budget);
  struct ohm_spread certain = {0};
  struct pair limits = {low, high};
  *conformance = ohm_conformance_over(&spread, &certain, fixed_limits, &limits, NULL, 0);
  return OHM_OK;
}
