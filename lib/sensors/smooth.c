/* SPDX-License-Identifier: MIT */
/*
 * A linear model with a normal prior (ridge regression), each row against the others
 * by its deleted residual. Rows are taken away worst first, and those off are the
 * most that were significant when taken away (Rosner 1983, generalized extreme
 * studentized deviate): neither does a bad row hide another, nor accuse a good one.
 */
#include "smooth.h"

#include "../arithmetic/cholesky.h"

enum {
  TERMS = 8,
  STEP = 12, /* rows judged by one block in the middle of a long table */
  BLOCK = 2 * STEP,
  BLOCK_MAX = BLOCK + STEP
};

/* Of the coefficients of w^j. The slope is -B/T0, up to some tens; how it changes
 * follows from B changing by some kelvin per kelvin: a few in every power. */
static const double prior_u[TERMS] = {100, 40, 3, 1, 1, 1, 1, 1};

/* What a table printed to any number of digits is smooth to: a hundredth of a kelvin.
 * Standard curves that were pieced together miss a line by more than their digits. */
static const double FLOOR_U = 3e-4;
/* Of a row, before anything is known: one in a hundred is off, by up to a factor of
 * ten in either direction. */
static const double PRIOR_OFF = 0.01;
static const double RANGE_OFF = 4.6;
/* The curve is only led to an end from one side. */
static const double END_WIDTH = 1.5;
static const double SCATTER_MAX = 1;
static const double SQRT_2_PI = 2.50662827463100050;

struct block {
  struct oc_smooth *rows;
  size_t count;
  double w[BLOCK_MAX][TERMS];
  bool gone[BLOCK_MAX];
  double scatter; /* of the rows beyond their rounding */
  /* of the fit at hand */
  double root[TERMS][TERMS]; /* Cholesky factor of the normal matrix, lower */
  double coefficient[TERMS];
  double leverage[BLOCK_MAX]; /* variance of the line there in that of the row */
  double freedom;             /* rows less what they determine */
  double sum;                 /* of squares, residuals and coefficients, each in its u */
};

struct step {
  size_t row;
  double led_y;
  double u_sound;
  double level;
};

static double variance(const struct block *block, size_t i) {
  double half = block->rows[i].half;
  double u = block->rows[i].u;
  return half * half / 3 + u * u + FLOOR_U * FLOOR_U + block->scatter * block->scatter;
}

/* ---- the fit ---- */

static double line_at(const struct block *block, size_t i) {
  double y = 0;
  for (int j = 0; j < TERMS; j++)
    y += block->coefficient[j] * block->w[i][j];
  return y;
}

static double line_variance(const struct block *block, size_t i) {
  double v[TERMS];
  double sum = 0;
  oc_cholesky_solve_lower(block->root[0], TERMS, TERMS, block->w[i], v);
  for (int j = 0; j < TERMS; j++)
    sum += v[j] * v[j];
  return sum;
}

static void add_row(struct block *block, size_t i, double weight) {
  const double *w = block->w[i];
  for (int j = 0; j < TERMS; j++) {
    block->coefficient[j] += weight * w[j] * block->rows[i].y;
    for (int k = 0; k <= j; k++)
      block->root[j][k] += weight * w[j] * w[k];
  }
}

static void fit(struct block *block) {
  for (int j = 0; j < TERMS; j++) {
    block->coefficient[j] = 0;
    for (int k = 0; k <= j; k++)
      block->root[j][k] = j == k ? 1 / (prior_u[j] * prior_u[j]) : 0;
  }
  for (size_t i = 0; i < block->count; i++)
    if (!block->gone[i])
      add_row(block, i, 1 / variance(block, i));
  /* The prior keeps it definite: no eigenvalue below 1e-4, beside rounding of 1e-6. */
  oc_cholesky_factor(block->root[0], TERMS, TERMS);
  double *coefficient = block->coefficient;
  oc_cholesky_solve_lower(block->root[0], TERMS, TERMS, coefficient, coefficient);
  oc_cholesky_solve_upper(block->root[0], TERMS, TERMS, coefficient, coefficient);
  block->sum = 0;
  block->freedom = 0;
  for (int j = 0; j < TERMS; j++)
    block->sum += block->coefficient[j] * block->coefficient[j] / (prior_u[j] * prior_u[j]);
  for (size_t i = 0; i < block->count; i++) {
    block->leverage[i] = line_variance(block, i) / variance(block, i);
    if (!block->gone[i]) {
      double residual = block->rows[i].y - line_at(block, i);
      block->sum += residual * residual / variance(block, i);
      block->freedom += 1 - block->leverage[i];
    }
  }
}

/* ---- the worst row ---- */

/* Square of a deleted residual in its standard uncertainty. */
static double deleted_square(const struct block *block, size_t i) {
  double residual = block->rows[i].y - line_at(block, i);
  return residual * residual / (variance(block, i) * fmax(1 - block->leverage[i], 1e-9));
}

static size_t worst_row(const struct block *block) {
  size_t worst = block->count;
  for (size_t i = 0; i < block->count; i++)
    if (!block->gone[i] &&
        (worst == block->count || deleted_square(block, i) > deleted_square(block, worst)))
      worst = i;
  return worst;
}

/* Do the rows other than the worst scatter more than what the block allows them? */
static bool scatters(struct block *block) {
  fit(block);
  double others = block->sum - deleted_square(block, worst_row(block));
  return others > fmax(block->freedom - 1, 0.1);
}

/* The least scatter that explains the rows other than the worst. */
static void find_scatter(struct block *block) {
  block->scatter = 0;
  if (!scatters(block))
    return;
  double low = log(FLOOR_U);
  double high = log(SCATTER_MAX);
  for (int i = 0; i < 20; i++) {
    double middle = (low + high) / 2;
    block->scatter = exp(middle);
    if (scatters(block))
      low = middle;
    else
      high = middle;
  }
  block->scatter = exp(high);
  fit(block);
}

/* Density of Student's t; the ratio of gamma functions by the first terms of its
 * series, right within 2 % from one degree of freedom on. */
static double student(double t, double freedom) {
  double ratio = 1 - 1 / (4 * freedom) + 1 / (32 * freedom * freedom);
  double tail = isinf(freedom) ? exp(-t * t / 2) : exp(-(freedom + 1) / 2 * log1p(t * t / freedom));
  return ratio * tail / SQRT_2_PI;
}

/* What a sound row may lie off beside its rounding, squared. */
static double spread(const struct block *block, size_t i, double led_variance) {
  double own = block->rows[i].u;
  double end = i == 0 || i + 1 == block->count ? END_WIDTH : 1;
  return end * end *
         (led_variance + own * own + FLOOR_U * FLOOR_U + block->scatter * block->scatter);
}

/* How sure it is that a row is off. Scatter that was estimated from few rows is known
 * badly (Welch and Satterthwaite), rounding is known and bounded. */
static double level_of(const struct block *block, size_t i, double deviation, double u) {
  double scatter = block->scatter * block->scatter;
  double share = scatter > 0 ? fmin(u * u / scatter, 1e4) : INFINITY;
  double freedom = fmax(block->freedom - 1, 0.5) * share * share;
  double half = block->rows[i].half;
  double beyond = fmax(fabs(deviation) - half, 0) / u;
  double sound = student(beyond, freedom) / (u + 2 * half * student(0, freedom));
  double off = PRIOR_OFF / RANGE_OFF;
  return off / (off + (1 - PRIOR_OFF) * sound);
}

/* What the other rows say of a row. */
static struct step judge(const struct block *block, size_t i) {
  double rest = block->gone[i] ? 1 : fmax(1 - block->leverage[i], 1e-9);
  double deviation = (block->rows[i].y - line_at(block, i)) / rest;
  double u = sqrt(spread(block, i, variance(block, i) * block->leverage[i] / rest));
  return (struct step){i, block->rows[i].y - deviation, u, level_of(block, i, deviation, u)};
}

static struct step take_away(struct block *block) {
  find_scatter(block);
  struct step step = judge(block, worst_row(block));
  block->gone[step.row] = true;
  return step;
}

/* ---- a block ---- */

static void begin(struct block *block, struct oc_smooth *rows, size_t count) {
  *block = (struct block){.rows = rows, .count = count};
  double middle = (rows[0].x + rows[count - 1].x) / 2;
  for (size_t i = 0; i < count; i++) {
    double power = 1;
    for (int j = 0; j < TERMS; j++) {
      block->w[i][j] = power;
      power *= rows[i].x / middle - 1;
    }
  }
}

static void keep(struct oc_smooth *row, const struct step *step, bool off) {
  row->led_y = step->led_y;
  row->u_sound = step->u_sound;
  row->level = step->level;
  row->off = off;
}

static double level_when_taken(const struct step *steps, size_t count, size_t row) {
  for (size_t n = 0; n < count; n++)
    if (steps[n].row == row)
      return steps[n].level;
  return 0;
}

/* Rows first to last - 1 are judged, all are used. */
static void judge_block(struct oc_smooth *rows, size_t count, size_t first, size_t last) {
  struct block block;
  struct step steps[BLOCK_MAX / 3 + 1];
  begin(&block, rows, count);
  size_t most = (count - 2) / 3;
  size_t off = 0;
  for (size_t n = 0; n < most; n++) {
    steps[n] = take_away(&block);
    if (steps[n].level > 0.5)
      off = n + 1;
  }
  for (size_t n = most; n > off; n--)
    block.gone[steps[n - 1].row] = false;
  find_scatter(&block);
  for (size_t i = first; i < last; i++) {
    struct step step = judge(&block, i);
    step.level = fmax(step.level, level_when_taken(steps, off, i));
    /* One that went before a worse one may be sound once that is gone too. */
    keep(&rows[i], &step, block.gone[i] && step.level > 0.5);
  }
}

void oc_smooth_judge(struct oc_smooth *rows, size_t count) {
  for (size_t i = 0; i < count; i++)
    keep(&rows[i], &(struct step){i, NAN, NAN, 0}, false);
  if (count < OC_SMOOTH_MIN)
    return;
  for (size_t start = 0;; start += STEP) {
    size_t end = count - start <= BLOCK_MAX ? count : start + BLOCK;
    size_t first = start == 0 ? 0 : STEP / 2;
    size_t last = end == count ? count - start : BLOCK - STEP / 2;
    judge_block(rows + start, end - start, first, last);
    if (end == count)
      return;
  }
}
