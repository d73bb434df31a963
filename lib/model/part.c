/* SPDX-License-Identifier: MIT */
/*
 * The common errors are drawn over by a lattice whose steps are powers of 1/g, g the root of
 * x^(d+1) = x + 1, which fills a box of d sides evenly. Given those, all that is left is
 * normal: the places follow by weighted least squares, and what lies off them weighs the
 * case. At a temperature that was measured the part is where its own reading and the place
 * put it, each by what it is worth.
 */
#include "part.h"

#include <stdlib.h>

#include "../arithmetic/gaussian.h"
#include "contributions.h"

enum { POINTS = 4096, POINTS_MAX = 32768, RANGES = 4, HERMITE = 5, BINS = 256, TURNS = 4 };

/* Readings of one part are this far from one place, as chi-square over what it should be, in
 * under 1 of 100 cases. */
static const double MISFIT = 7;
/* Less than this of the weightiest case is nothing. */
static const double NOTHING = 1e-5;
/* Cases that weigh as much as so many alike. */
static const double ENOUGH = 300;
static const double CERTAIN = 1e-4;
/* Beyond this many standard deviations lies under 1e-9. */
static const double FAR = 6;
/* No reading is looked at more sharply than by this share of what is allowed. */
static const double LEAST_SHARE = 0.02;

/* ---- readings ---- */

void oc_part_begin(struct oc_part *part) {
  part->count = 0;
  part->places = 1;
  part->ranges_alike = NAN;
}

static double log_middle(const struct oc_band *band) {
  return (log(band->low_ohm) + log(band->high_ohm)) / 2;
}

void oc_part_worth(const ohm_curve *curve, const struct oc_tolerance *tolerance, double t_c,
                   double worth[2]) {
  struct oc_band band = oc_tolerance_band(curve, tolerance, t_c);
  worth[0] = log(band.high_ohm / band.low_ohm) / 2;
  worth[1] = 0;
  if (tolerance->kind == OC_TOLERANCE_BETA) {
    double there_ohm = oc_curve_resistance_beyond(curve, tolerance->at_c);
    worth[1] = tolerance->beta_percent / 100 * log(band.nominal_ohm / there_ohm);
    worth[0] -= fabs(worth[1]);
  }
}

static void take_band(struct oc_part_reading *reading, const struct oc_contributions *by,
                      const ohm_curve *curve, const struct oc_tolerance *tolerance) {
  oc_part_worth(curve, tolerance, by->at_c, reading->worth);
  reading->half = reading->worth[0] + fabs(reading->worth[1]);
  for (int i = 0; i < OC_PART_NODES; i++) {
    double error = 2.0 * i / (OC_PART_NODES - 1) - 1;
    struct oc_band there =
        oc_tolerance_band(curve, tolerance, by->at_c + error * by->thermometer_k);
    reading->middle[i] = log_middle(&there);
  }
}

void oc_part_add(struct oc_part *part, const struct oc_measurement *measurement,
                 const struct oc_tolerance *tolerance) {
  struct oc_part_reading *reading = &part->readings[part->count++];
  struct oc_contributions by = oc_contributions_of(measurement);
  *reading = (struct oc_part_reading){.scatter = 0};
  take_band(reading, &by, measurement->curve, tolerance);
  reading->log_ohm = by.log_ohm;
  reading->meter = by.meter;
  reading->leads = by.leads;
  reading->range = by.range;
  if (oc_curve_falls(measurement->curve))
    reading->scatter = fmin(OC_SCATTER, OC_SCATTER_SHARE * reading->half);
  reading->u_own = fmax(hypot(by.u_counts, by.u_bath), LEAST_SHARE * reading->half);
  if (tolerance->kind == OC_TOLERANCE_BETA)
    part->places = 2;
  if (measurement->meter)
    part->ranges_alike = measurement->meter->ranges_alike;
}

double oc_part_level(const struct oc_part *part, double level) {
  size_t places = part->places < part->count ? part->places : part->count;
  return 1 - (1 - level) / (double)places;
}

/* ---- one case of the common errors ---- */

/* The place of each reading's range among those in use; beyond the last one they share it. */
static size_t number_ranges(const struct oc_part *part, bool alike, size_t *number) {
  int seen[RANGES];
  size_t count = 0;
  for (size_t i = 0; i < part->count; i++) {
    size_t at = 0;
    while (at < count && !alike && seen[at] != part->readings[i].range)
      at++;
    if (at == count && count < RANGES)
      seen[count++] = part->readings[i].range;
    number[i] = at < RANGES ? at : RANGES - 1;
  }
  return count;
}

struct lattice {
  size_t sides;
  double step[RANGES + 2];
};

static struct lattice lattice_of(size_t sides) {
  double g = 2;
  for (int i = 0; i < 60; i++)
    g = pow(1 + g, 1 / (double)(sides + 1));
  struct lattice lattice = {.sides = sides};
  double step = 1;
  for (size_t k = 0; k < sides; k++)
    lattice.step[k] = step /= g;
  return lattice;
}

static double lattice_at(const struct lattice *lattice, size_t side, int point) {
  double place = 0.5 + (point + 1) * lattice->step[side];
  return 2 * (place - floor(place)) - 1;
}

/* Between nodes that lie so near, the middle is straight. */
static double middle_at(const struct oc_part_reading *reading, double error) {
  double place = (error + 1) / 2 * (OC_PART_NODES - 1);
  int node = (int)fmin(floor(place), OC_PART_NODES - 2);
  double share = place - node;
  return reading->middle[node] + share * (reading->middle[node + 1] - reading->middle[node]);
}

/* What the readings know of the places: the same in every case. */
struct design {
  size_t places;
  double precision[OC_PART_READINGS]; /* 1 / variance of a reading about its place */
  double kept[OC_PART_READINGS];      /* share of what it is off that is the part's own */
  double scatter[OC_PART_READINGS];
  double worth[OC_PART_READINGS][2];
  double covariance[2][2];              /* of the places */
  double by_place[OC_PART_READINGS][2]; /* what the part there owes to the places */
  double u_beside[OC_PART_READINGS];    /* standard, beside them */
  double u_whole[OC_PART_READINGS];     /* and with them */
};

/* Readings at one temperature leave one place to find, that of the whole half-band. */
static void lay_out(struct design *design, const struct oc_part *part, double roughness) {
  double information[2][2] = {{0, 0}, {0, 0}};
  for (size_t i = 0; i < part->count; i++) {
    const struct oc_part_reading *reading = &part->readings[i];
    double scatter = roughness * reading->scatter * reading->scatter;
    double variance = scatter + reading->u_own * reading->u_own;
    design->scatter[i] = sqrt(scatter);
    design->precision[i] = 1 / variance;
    design->kept[i] = scatter / variance;
    for (int a = 0; a < 2; a++)
      for (int b = 0; b < 2; b++)
        information[a][b] += reading->worth[a] * reading->worth[b] / variance;
  }
  double determinant =
      information[0][0] * information[1][1] - information[0][1] * information[1][0];
  bool apart = determinant > 1e-6 * information[0][0] * information[1][1];
  design->places = apart ? 2 : 1;
  double total = 0;
  for (size_t i = 0; i < part->count; i++) {
    design->worth[i][0] = apart ? part->readings[i].worth[0] : part->readings[i].half;
    design->worth[i][1] = apart ? part->readings[i].worth[1] : 0;
    total += design->worth[i][0] * design->worth[i][0] * design->precision[i];
  }
  design->covariance[0][0] = apart ? information[1][1] / determinant : 1 / total;
  design->covariance[1][1] = apart ? information[0][0] / determinant : 0;
  design->covariance[0][1] = design->covariance[1][0] =
      apart ? -information[0][1] / determinant : 0;
}

/* At a reading the part is where its own resistance and the places put it, each by what it is
 * worth. */
static void look_at_parts(struct design *design, size_t count) {
  for (size_t i = 0; i < count; i++) {
    double open = 1 - design->kept[i];
    double variance = design->scatter[i] * design->scatter[i] * fmax(0, open);
    design->u_beside[i] = sqrt(variance);
    for (int a = 0; a < 2; a++)
      design->by_place[i][a] = open * design->worth[i][a];
    for (int a = 0; a < 2; a++)
      for (int b = 0; b < 2; b++)
        variance += design->by_place[i][a] * design->by_place[i][b] * design->covariance[a][b];
    design->u_whole[i] = sqrt(fmax(0, variance));
  }
}

struct state {
  double weight; /* logarithm */
  double place[2];
  double off[OC_PART_READINGS]; /* of each reading from the middle */
};

static void solve(struct state *state, const struct design *design, size_t count) {
  double right[2] = {0, 0};
  double square = 0;
  for (size_t i = 0; i < count; i++) {
    double weighted = design->precision[i] * state->off[i];
    square += weighted * state->off[i];
    for (int a = 0; a < 2; a++)
      right[a] += design->worth[i][a] * weighted;
  }
  for (int a = 0; a < 2; a++)
    state->place[a] = design->covariance[a][0] * right[0] + design->covariance[a][1] * right[1];
  state->weight = -(square - state->place[0] * right[0] - state->place[1] * right[1]) / 2;
}

/* ---- where the part is in one case ---- */

/* Gauss-Hermite, 5 points, for a normal quantity: Abramowitz and Stegun, Handbook of
 * Mathematical Functions, table 25.10, abscissae times root 2, weights over root pi. */
static const double hermite_x[HERMITE] = {-2.85697001387281, -1.35562617997427, 0, 1.35562617997427,
                                          2.85697001387281};
static const double hermite_w[HERMITE] = {0.0112574113277207, 0.222075922005613, 0.533333333333333,
                                          0.222075922005613, 0.0112574113277207};

static double below(double x, double u) {
  if (fabs(x) >= FAR * u)
    return x > 0 ? 1 : x < 0 ? 0 : 0.5;
  return oc_normal_below(x / u);
}

/* Of all readings, the places moved from what is likeliest. */
static double within_at(const struct oc_part *part, const struct design *design,
                        const double *middle, const double *moved) {
  double p = 1;
  for (size_t i = 0; i < part->count; i++) {
    double at = middle[i] + design->by_place[i][0] * moved[0] + design->by_place[i][1] * moved[1];
    double half = part->readings[i].half;
    double u = design->u_beside[i];
    p *= fmax(0, below(half - at, u) - below(-half - at, u));
  }
  return p;
}

static double within(const struct oc_part *part, const struct design *design,
                     const double *middle) {
  double u_first = sqrt(design->covariance[0][0]);
  double along = design->places == 2 ? design->covariance[0][1] / u_first : 0;
  double across = sqrt(fmax(0, design->covariance[1][1] - along * along));
  int second = design->places == 2 ? HERMITE : 1;
  double p = 0;
  for (int i = 0; i < HERMITE; i++)
    for (int k = 0; k < second; k++) {
      double x = second == 1 ? 0 : hermite_x[k];
      const double moved[2] = {u_first * hermite_x[i], along * hermite_x[i] + across * x};
      p += hermite_w[i] * (second == 1 ? 1 : hermite_w[k]) * within_at(part, design, middle, moved);
    }
  return p;
}

/* ---- all cases ---- */

struct cases {
  int points;
  double place[POINTS_MAX];
  double weight[POINTS_MAX];
  double total; /* of the weights */
  double u;
};

/* The cases by their place, in bins that are narrow beside what is looked for. */
struct bins {
  double first;
  double step;
  double weight[BINS];
};

static double place_below(const struct bins *bins, const struct cases *cases, double place) {
  double sum = 0;
  for (int i = 0; i < BINS; i++)
    if (bins->weight[i] > 0)
      sum += bins->weight[i] * below(place - bins->first - i * bins->step, cases->u);
  return sum / cases->total;
}

/* To a thousandth of the standard deviation. */
static double place_quantile(const struct bins *bins, const struct cases *cases, double p) {
  double low = bins->first;
  double high = low + (BINS - 1) * bins->step;
  for (int i = 0; i < 14; i++) {
    double middle = low + (high - low) / 2;
    if (place_below(bins, cases, middle) < p)
      low = middle;
    else
      high = middle;
  }
  return low + (high - low) / 2;
}

static void draw(struct state *state, const struct oc_part *part, const struct lattice *lattice,
                 const size_t *range, int point) {
  double error[RANGES + 2]; /* of the thermometer, the leads, and the meter's ranges */
  for (size_t k = 0; k < lattice->sides; k++)
    error[k] = lattice_at(lattice, k, point);
  for (size_t i = 0; i < part->count; i++) {
    const struct oc_part_reading *reading = &part->readings[i];
    state->off[i] = reading->log_ohm - middle_at(reading, error[0]) - error[1] * reading->leads -
                    error[2 + range[i]] * reading->meter;
  }
}

static void tell_place(struct oc_part_answer *answer, const struct cases *cases, double level) {
  double sum = 0;
  double squares = 0;
  for (int i = 0; i < cases->points; i++) {
    sum += cases->weight[i] * cases->place[i];
    squares += cases->weight[i] * cases->place[i] * cases->place[i];
  }
  answer->place = sum / cases->total;
  double variance = squares / cases->total - answer->place * answer->place;
  double reach = FAR * sqrt(fmax(0, variance) + cases->u * cases->u);
  struct bins bins = {.first = answer->place - reach, .step = 2 * reach / (BINS - 1)};
  for (int i = 0; i < cases->points; i++) {
    double bin = round((cases->place[i] - bins.first) / bins.step);
    bins.weight[(int)fmin(fmax(bin, 0), BINS - 1)] += cases->weight[i];
  }
  answer->place_low = place_quantile(&bins, cases, (1 - level) / 2);
  answer->place_high = place_quantile(&bins, cases, (1 + level) / 2);
}

static void add_case(struct oc_part_answer *answer, const struct oc_part *part,
                     const struct design *design, const struct state *state, double weight) {
  double middle[OC_PART_READINGS]; /* of where the part is, at each reading */
  double sum = 0;
  double most = 0;
  for (size_t i = 0; i < part->count; i++) {
    double half = part->readings[i].half;
    middle[i] = design->kept[i] * state->off[i] + design->by_place[i][0] * state->place[0] +
                design->by_place[i][1] * state->place[1];
    double low = below(-half - middle[i], design->u_whole[i]);
    double high = below(middle[i] - half, design->u_whole[i]);
    answer->p_low[i] += weight * low;
    answer->p_high[i] += weight * high;
    sum += low + high;
    most = fmax(most, fmax(low, high));
  }
  /* What is certain needs no sum over places. */
  if (sum < CERTAIN)
    answer->p_within += weight * (1 - sum);
  else if (most < 1 - CERTAIN)
    answer->p_within += weight * within(part, design, middle);
}

struct draft {
  const struct oc_part *part;
  struct design design;
  struct lattice lattice;
  size_t range[OC_PART_READINGS];
};

static void solve_at(struct state *state, const struct draft *draft, int point) {
  draw(state, draft->part, &draft->lattice, draft->range, point);
  solve(state, &draft->design, draft->part->count);
}

/* Of the weights, while they are logarithms. */
static double greatest_of(const struct cases *cases) {
  double greatest = -INFINITY;
  for (int point = 0; point < cases->points; point++)
    greatest = fmax(greatest, cases->weight[point]);
  return greatest;
}

/* Return  how many cases of one weight would tell as much. */
static double weigh(struct cases *cases, const struct draft *draft, int points) {
  struct state state;
  double squares = 0;
  for (int point = cases->points; point < points; point++) {
    solve_at(&state, draft, point);
    cases->place[point] = state.place[0];
    cases->weight[point] = state.weight;
  }
  cases->points = points;
  cases->total = 0;
  double greatest = greatest_of(cases);
  for (int point = 0; point < points; point++) {
    double weight = exp(cases->weight[point] - greatest);
    cases->total += weight;
    squares += weight * weight;
  }
  return cases->total * cases->total / squares;
}

/* From logarithms to weights, the greatest 1. */
static void settle(struct cases *cases) {
  double greatest = greatest_of(cases);
  cases->total = 0;
  for (int point = 0; point < cases->points; point++) {
    double weight = exp(cases->weight[point] - greatest);
    cases->weight[point] = weight > NOTHING ? weight : 0;
    cases->total += cases->weight[point];
  }
}

/* Where a reading leaves nearly nothing open beside the common errors, a case is a step. */
static bool is_sharp(const struct draft *draft) {
  for (size_t i = 0; i < draft->part->count; i++)
    if (draft->design.kept[i] > 0.5)
      return true;
  return false;
}

/* How far the readings are from any one place, in the likeliest case: chi-square over what it
 * should be. A part that follows no one place is no rougher than declared, but another one,
 * or drifts along its band: each reading then speaks for its own temperature. */
static double misfit(const struct cases *cases, const struct draft *draft) {
  size_t free = draft->part->count - draft->design.places;
  return free > 0 ? -2 * greatest_of(cases) / (double)free : 0;
}

static void weigh_all(struct cases *cases, struct draft *draft) {
  double roughness = 1;
  for (int turn = 0; turn < TURNS; turn++) {
    lay_out(&draft->design, draft->part, roughness);
    cases->points = 0;
    weigh(cases, draft, POINTS);
    double chi_square = misfit(cases, draft);
    if (chi_square <= MISFIT)
      break;
    roughness *= chi_square;
  }
  for (int points = is_sharp(draft) ? 2 * POINTS : POINTS;
       weigh(cases, draft, points) < ENOUGH && points < POINTS_MAX;)
    points *= 2;
  settle(cases);
}

static void judge(const struct oc_part *part, double level, bool alike, struct cases *cases,
                  struct oc_part_answer *answer) {
  struct draft draft = {.part = part};
  struct state state;
  draft.lattice = lattice_of(2 + number_ranges(part, alike, draft.range));
  weigh_all(cases, &draft);
  look_at_parts(&draft.design, part->count);
  *answer = (struct oc_part_answer){.place = NAN, .place_low = NAN, .place_high = NAN};
  for (int point = 0; point < cases->points; point++) {
    if (cases->weight[point] == 0)
      continue;
    solve_at(&state, &draft, point);
    add_case(answer, part, &draft.design, &state, cases->weight[point] / cases->total);
  }
  cases->u = sqrt(draft.design.covariance[0][0]);
  if (part->places == 1)
    tell_place(answer, cases, level);
}

static void allow_both(struct oc_part_answer *one, const struct oc_part_answer *other,
                       size_t count) {
  one->p_within = fmin(one->p_within, other->p_within);
  for (size_t i = 0; i < count; i++) {
    one->p_low[i] = fmin(one->p_low[i], other->p_low[i]);
    one->p_high[i] = fmin(one->p_high[i], other->p_high[i]);
  }
  one->place = (one->place + other->place) / 2;
  one->place_low = fmin(one->place_low, other->place_low);
  one->place_high = fmax(one->place_high, other->place_high);
}

static bool has_ranges(const struct oc_part *part) {
  for (size_t i = 1; i < part->count; i++)
    if (part->readings[i].range != part->readings[0].range)
      return true;
  return false;
}

bool oc_part_judge(const struct oc_part *part, double level, struct oc_part_answer *answer) {
  struct cases *cases = malloc(sizeof *cases);
  if (!cases)
    return false;
  judge(part, level, part->ranges_alike != 0, cases, answer);
  if (isnan(part->ranges_alike) && has_ranges(part)) {
    struct oc_part_answer apart;
    judge(part, level, false, cases, &apart);
    allow_both(answer, &apart, part->count);
  }
  free(cases);
  return true;
}
