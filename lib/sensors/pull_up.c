/* SPDX-License-Identifier: MIT */
/*
 * A row of V volts at R is met by the pull-ups P = R (V0/V - 1), an interval because V
 * and R are rounded. What lies in most intervals is the pull-up; no row has to be
 * trusted beforehand.
 */
#include "pull_up.h"

#include "../arithmetic/divider.h"

/* Volts are printed for guidance: of a reading, beside its digits. */
static const double SLACK = 0.0025;

/* What the volts may be off. */
static double reach(const struct oc_signal *row) {
  return row->v_half + SLACK * row->v;
}

static void set_interval(struct oc_signal *row, double supply_v) {
  double least_v = row->v - reach(row);
  row->low = fmax(oc_above(supply_v, row->v + reach(row), row->r_ohm * (1 - row->r_half)), 0);
  row->high = least_v > 0 ? oc_above(supply_v, least_v, row->r_ohm * (1 + row->r_half)) : INFINITY;
}

static size_t met_by(const struct oc_signal *rows, size_t count, double p_ohm) {
  size_t met = 0;
  for (size_t i = 0; i < count; i++)
    met += oc_inside(rows[i].low, p_ohm, rows[i].high);
  return met;
}

/* The middle of the pull-ups that meet most rows. */
static double most_met(const struct oc_signal *rows, size_t count, size_t *met) {
  double from = NAN;
  *met = 0;
  for (size_t i = 0; i < count; i++) {
    size_t of_this = met_by(rows, count, rows[i].low);
    if (of_this > *met) {
      *met = of_this;
      from = rows[i].low;
    }
  }
  double to = INFINITY;
  for (size_t i = 0; i < count; i++)
    if (oc_inside(rows[i].low, from, rows[i].high))
      to = fmin(to, rows[i].high);
  return isinf(to) ? from : (from + to) / 2;
}

static bool find_two(const struct oc_signal *rows, size_t count, struct oc_pull_up *found) {
  for (size_t cold = 2; cold + 2 <= count; cold++) {
    size_t met;
    size_t met_hot;
    double p_ohm = most_met(rows, cold, &met);
    double hot_ohm = most_met(rows + cold, count - cold, &met_hot);
    /* A range for the heat has a much smaller resistor. */
    if (met == cold && met_hot == count - cold && p_ohm > 2 * hot_ohm) {
      found->kind = OC_PULL_UP_TWO;
      found->p_ohm = p_ohm;
      found->hot_ohm = hot_ohm;
      return true;
    }
  }
  return false;
}

static double volts(const struct oc_pull_up *found, double r_ohm, double supply_v) {
  if (found->kind == OC_PULL_UP_CURRENT)
    return found->current_a * r_ohm;
  if (found->kind == OC_PULL_UP_LOADED)
    r_ohm = 1 / (1 / r_ohm + 1 / found->load_ohm);
  return oc_divided(supply_v, found->p_ohm, r_ohm);
}

/* Change of the volts with the rounding of R is at most a quarter of V0 times it. */
static bool meets(const struct oc_pull_up *found, const struct oc_signal *row, double supply_v) {
  double allowed = reach(row) + supply_v / 4 * row->r_half;
  return fabs(volts(found, row->r_ohm, supply_v) - row->v) <= allowed;
}

static bool all_meet(const struct oc_pull_up *found, const struct oc_signal *rows, size_t count,
                     double supply_v) {
  for (size_t i = 0; i < count; i++)
    if (!meets(found, &rows[i], supply_v))
      return false;
  return true;
}

/* V0/V - 1 = P (1/R + 1/load): a straight line in 1/R, weighted by its rounding. */
static bool find_loaded(const struct oc_signal *rows, size_t count, double supply_v,
                        struct oc_pull_up *found) {
  double w = 0;
  double wx = 0;
  double wy = 0;
  double wxx = 0;
  double wxy = 0;
  for (size_t i = 0; i < count; i++) {
    double x = 1 / rows[i].r_ohm;
    double y = supply_v / rows[i].v - 1;
    double half = reach(&rows[i]) * supply_v / (rows[i].v * rows[i].v) + (y + 1) * rows[i].r_half;
    double weight = 1 / (half * half);
    w += weight;
    wx += weight * x;
    wy += weight * y;
    wxx += weight * x * x;
    wxy += weight * x * y;
  }
  double p_ohm = (w * wxy - wx * wy) / (w * wxx - wx * wx);
  double at_open = (wy - p_ohm * wx) / w;
  struct oc_pull_up loaded = *found;
  loaded.kind = OC_PULL_UP_LOADED;
  loaded.p_ohm = p_ohm;
  loaded.load_ohm = p_ohm / at_open;
  if (!(p_ohm > 0 && at_open > 0 && isfinite(loaded.load_ohm)) ||
      !all_meet(&loaded, rows, count, supply_v))
    return false;
  *found = loaded;
  return true;
}

static bool find_current(const struct oc_signal *rows, size_t count, struct oc_pull_up *found) {
  double low = 0;
  double high = INFINITY;
  for (size_t i = 0; i < count; i++) {
    low = fmax(low, (rows[i].v - reach(&rows[i])) / rows[i].r_ohm * (1 - rows[i].r_half));
    high = fmin(high, (rows[i].v + reach(&rows[i])) / rows[i].r_ohm * (1 + rows[i].r_half));
  }
  if (!(low <= high))
    return false;
  found->kind = OC_PULL_UP_CURRENT;
  found->p_ohm = NAN;
  found->current_a = (low + high) / 2;
  return true;
}

static void measure_spread(const struct oc_signal *rows, size_t count, double supply_v,
                           struct oc_pull_up *found) {
  for (size_t i = 0; i < count; i++) {
    double p_ohm = oc_above(supply_v, rows[i].v, rows[i].r_ohm);
    found->least_ohm = fmin(found->least_ohm, p_ohm);
    found->most_ohm = fmax(found->most_ohm, p_ohm);
  }
}

struct oc_pull_up oc_pull_up_find(struct oc_signal *rows, size_t count, double supply_v) {
  struct oc_pull_up found = {OC_PULL_UP_UNKNOWN, NAN, NAN, NAN, NAN, INFINITY, 0};
  for (size_t i = 0; i < count; i++) {
    set_interval(&rows[i], supply_v);
    rows[i].off = false;
    rows[i].fits_v = NAN;
  }
  if (count < 3)
    return found;
  measure_spread(rows, count, supply_v, &found);
  size_t met;
  double p_ohm = most_met(rows, count, &met);
  found.kind = OC_PULL_UP_NONE;
  if (met < count && (find_two(rows, count, &found) || find_loaded(rows, count, supply_v, &found) ||
                      find_current(rows, count, &found)))
    return found;
  /* One in five rows may be off, and one of four. */
  if (count - met > (count < 5 ? 1 : count / 5) || met < 3)
    return found;
  found.kind = OC_PULL_UP_ONE;
  found.p_ohm = p_ohm;
  for (size_t i = 0; i < count; i++) {
    rows[i].off = !oc_inside(rows[i].low, p_ohm, rows[i].high);
    rows[i].fits_v = volts(&found, rows[i].r_ohm, supply_v);
  }
  return found;
}
