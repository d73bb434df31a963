/* SPDX-License-Identifier: MIT */
/*
 * Over a span d in which the air goes straight from a to b, with x = d/tau and
 * p = (1 - e^-x)/x, the lag comes to T e^-x + a (p - e^-x) + b (1 - p): three shares
 * that add up to 1.
 */
#include "cooling.h"

/* Of a mean, far above the round-off of the probabilities it is asked for. */
static const double TOLERANCE = 1e-7;

/* ---- along the air ---- */

double oc_air_at(const struct oc_air *air, double after_h) {
  size_t last = air->count - 1;
  if (after_h <= air->after_h[0])
    return air->t_c[0];
  if (after_h >= air->after_h[last])
    return air->t_c[last];
  size_t low = 0;
  for (size_t high = last; high - low > 1;) {
    size_t middle = low + (high - low) / 2;
    if (air->after_h[middle] <= after_h)
      low = middle;
    else
      high = middle;
  }
  double share = (after_h - air->after_h[low]) / (air->after_h[low + 1] - air->after_h[low]);
  return air->t_c[low] + share * (air->t_c[low + 1] - air->t_c[low]);
}

struct follow {
  double t_c;
  double start_share;
  double squares; /* of the shares of points passed */
  double pending; /* share of the point at hand, which the next span adds to */
};

static void pass_span(struct follow *follow, double x, double a_c, double b_c) {
  double kept = exp(-x);
  double p = x > 0 ? -expm1(-x) / x : 1;
  follow->t_c = follow->t_c * kept + a_c * (p - kept) + b_c * (1 - p);
  follow->start_share *= kept;
  double share = follow->pending * kept + p - kept;
  follow->squares = follow->squares * kept * kept + share * share;
  follow->pending = 1 - p;
}

/* The last point goes on. */
static void hold(struct follow *follow, double x, double a_c) {
  double kept = exp(-x);
  follow->t_c = follow->t_c * kept - a_c * expm1(-x);
  follow->start_share *= kept;
  follow->squares *= kept * kept;
  follow->pending = follow->pending * kept - expm1(-x);
}

struct oc_cooled oc_cooling_follow(const struct oc_air *air, double start_c, double from_h,
                                   double to_h, double tau_h) {
  struct follow follow = {start_c, 1, 0, 0};
  double at_h = from_h;
  double a_c = oc_air_at(air, from_h);
  for (size_t i = 0; i < air->count && at_h < to_h; i++) {
    if (air->after_h[i] <= at_h)
      continue;
    double end_h = fmin(air->after_h[i], to_h);
    double b_c = oc_air_at(air, end_h);
    if (i == 0)
      hold(&follow, (end_h - at_h) / tau_h, a_c);
    else
      pass_span(&follow, (end_h - at_h) / tau_h, a_c, b_c);
    at_h = end_h;
    a_c = b_c;
  }
  if (at_h < to_h)
    hold(&follow, (to_h - at_h) / tau_h, a_c);
  return (struct oc_cooled){follow.t_c, follow.start_share,
                            sqrt(follow.squares + follow.pending * follow.pending)};
}

/* ---- over the time constant ---- */

struct integrand {
  oc_at_tau at_tau;
  const void *context;
  size_t count;
};

/* Gauss-Legendre, 5 points. Abramowitz and Stegun, Handbook of Mathematical Functions,
 * table 25.4. */
static const double gauss_x[5] = {-0.90617984593866399, -0.53846931010568309, 0,
                                  0.53846931010568309, 0.90617984593866399};
static const double gauss_w[5] = {0.23692688505618909, 0.47862867049936647, 0.56888888888888889,
                                  0.47862867049936647, 0.23692688505618909};

static void panel(const struct integrand *f, double a, double b, double *sums) {
  double values[OC_MEANS_MAX];
  for (size_t k = 0; k < f->count; k++)
    sums[k] = 0;
  for (int i = 0; i < 5; i++) {
    f->at_tau(f->context, (a + b) / 2 + (b - a) / 2 * gauss_x[i], values);
    for (size_t k = 0; k < f->count; k++)
      sums[k] += gauss_w[i] * (b - a) / 2 * values[k];
  }
}

static void add_adaptively(const struct integrand *f, double a, double b, const double *whole,
                           double tolerance, int depth, double *means) {
  double left[OC_MEANS_MAX];
  double right[OC_MEANS_MAX];
  double middle = a + (b - a) / 2;
  panel(f, a, middle, left);
  panel(f, middle, b, right);
  bool rough = false;
  /* A value that is no number stays one: it is not rough. */
  for (size_t k = 0; k < f->count; k++)
    rough = rough || fabs(left[k] + right[k] - whole[k]) > tolerance * fmax(1, fabs(whole[k]));
  if (rough && depth > 0) {
    add_adaptively(f, a, middle, left, tolerance, depth - 1, means);
    add_adaptively(f, middle, b, right, tolerance, depth - 1, means);
    return;
  }
  for (size_t k = 0; k < f->count; k++)
    means[k] += left[k] + right[k];
}

void oc_cooling_mean(double low_h, double high_h, oc_at_tau at_tau, const void *context,
                     size_t count, double *means) {
  struct integrand f = {at_tau, context, count};
  double whole[OC_MEANS_MAX];
  if (!(low_h < high_h)) {
    at_tau(context, low_h, means);
    return;
  }
  for (size_t k = 0; k < count; k++)
    means[k] = 0;
  panel(&f, low_h, high_h, whole);
  add_adaptively(&f, low_h, high_h, whole, TOLERANCE * (high_h - low_h), 22, means);
  for (size_t k = 0; k < count; k++)
    means[k] /= high_h - low_h;
}

/* ---- in air that never changes ---- */

static bool is_temperature(double t_c) {
  return OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C;
}

static bool is_span(double hours) {
  return 0 < hours && hours <= OHM_SOAK_MOST_H;
}

ohm_status ohm_cooling_temperature(double start_c, double air_c, double tau_h, double after_h,
                                   double *t_c) {
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = NAN;
  if (!(isfinite(start_c) && isfinite(air_c) && isfinite(tau_h) && isfinite(after_h)))
    return OHM_BAD_ARGUMENT;
  if (!(is_temperature(start_c) && is_temperature(air_c) && is_span(tau_h) &&
        oc_inside(0, after_h, OHM_SOAK_MOST_H)))
    return OHM_OUT_OF_RANGE;
  double x = after_h / tau_h;
  *t_c = start_c * exp(-x) - air_c * expm1(-x);
  return OHM_OK;
}

/* How many time constants it takes: ln((start - air)/(t - air)). */
static ohm_status constants_passed(double start_c, double air_c, double t_c, double *x) {
  if (!(isfinite(start_c) && isfinite(air_c) && isfinite(t_c)))
    return OHM_BAD_ARGUMENT;
  if (!(is_temperature(start_c) && is_temperature(air_c) && is_temperature(t_c)))
    return OHM_OUT_OF_RANGE;
  double ratio = (start_c - air_c) / (t_c - air_c);
  if (!(1 < ratio && ratio < INFINITY))
    return OHM_OUT_OF_RANGE;
  *x = log(ratio);
  return OHM_OK;
}

ohm_status ohm_cooling_hours(double start_c, double air_c, double tau_h, double t_c,
                             double *after_h) {
  double x;
  if (!after_h)
    return OHM_NULL_ARGUMENT;
  *after_h = NAN;
  ohm_status status = constants_passed(start_c, air_c, t_c, &x);
  if (status == OHM_OK && !isfinite(tau_h))
    status = OHM_BAD_ARGUMENT;
  if (status == OHM_OK && !is_span(tau_h))
    status = OHM_OUT_OF_RANGE;
  if (status == OHM_OK)
    *after_h = x * tau_h;
  return status;
}

ohm_status ohm_cooling_tau(double start_c, double air_c, double t_c, double after_h,
                           double *tau_h) {
  double x;
  if (!tau_h)
    return OHM_NULL_ARGUMENT;
  *tau_h = NAN;
  ohm_status status = constants_passed(start_c, air_c, t_c, &x);
  if (status == OHM_OK && !isfinite(after_h))
    status = OHM_BAD_ARGUMENT;
  if (status == OHM_OK && !is_span(after_h))
    status = OHM_OUT_OF_RANGE;
  if (status == OHM_OK)
    *tau_h = after_h / x;
  return status;
}
