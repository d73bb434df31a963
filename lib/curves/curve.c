/* SPDX-License-Identifier: MIT */
/* One face over all models. */
#include <stdalign.h>
#include <stdint.h>

#include "curve.h"

#include <stdlib.h>

#include "../arithmetic/platinum.h"
#include "../arithmetic/silicon.h"

void ohm_curve_free(ohm_curve *curve) {
  if (!curve)
    return;
  free(curve->ntc.knots);
  free(curve->ntc.pieces);
  free(curve);
}

/* ---- by model, inside the range ---- */

static struct oc_silicon silicon_of(const ohm_curve *curve) {
  return (struct oc_silicon){curve->parameters[1], curve->parameters[2]};
}

static double temperature_of(const ohm_curve *curve, double r_ohm) {
  struct oc_silicon silicon = silicon_of(curve);
  switch (curve->model) {
  case OC_MODEL_PLATINUM:
    return oc_platinum_temperature_c(r_ohm / curve->parameters[0]);
  case OC_MODEL_SILICON:
    return oc_silicon_temperature_c(&silicon, r_ohm / curve->parameters[0]);
  default:
    return oc_ntc_temperature_c(&curve->ntc, r_ohm);
  }
}

static double resistance_of(const ohm_curve *curve, double t_c) {
  struct oc_silicon silicon = silicon_of(curve);
  switch (curve->model) {
  case OC_MODEL_PLATINUM:
    return curve->parameters[0] * oc_platinum_ratio(t_c);
  case OC_MODEL_SILICON:
    return curve->parameters[0] * oc_silicon_ratio(&silicon, t_c);
  default:
    return oc_ntc_resistance_ohm(&curve->ntc, t_c);
  }
}

static double alpha_of(const ohm_curve *curve, double t_c) {
  struct oc_silicon silicon = silicon_of(curve);
  switch (curve->model) {
  case OC_MODEL_PLATINUM:
    return oc_platinum_slope(t_c) / oc_platinum_ratio(t_c);
  case OC_MODEL_SILICON:
    return oc_silicon_slope(&silicon, t_c) / oc_silicon_ratio(&silicon, t_c);
  default:
    return oc_ntc_alpha_per_k(&curve->ntc, t_c);
  }
}

bool oc_curve_falls(const ohm_curve *curve) {
  return curve->hot.r_ohm < curve->cold.r_ohm;
}

/* ---- asking ---- */

static double between(double low, double x, double high) {
  return x < low ? low : x > high ? high : x;
}

static ohm_status temperature(const ohm_curve *curve, double r_ohm, double *t_c) {
  const struct oc_end *cold = &curve->cold;
  const struct oc_end *hot = &curve->hot;
  *t_c = NAN;
  if (!(r_ohm > 0))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(fmin(cold->r_ohm, hot->r_ohm), r_ohm, fmax(cold->r_ohm, hot->r_ohm)))
    return OHM_OUT_OF_RANGE;
  /* The ends of the range belong to each other, to the last digit. */
  if (r_ohm == cold->r_ohm)
    *t_c = cold->t_c;
  else if (r_ohm == hot->r_ohm)
    *t_c = hot->t_c;
  else
    *t_c = between(cold->t_c, temperature_of(curve, r_ohm), hot->t_c);
  return OHM_OK;
}

static ohm_status in_range(const ohm_curve *curve, double t_c) {
  if (!(t_c > OC_ZERO_C))
    return OHM_BAD_ARGUMENT;
  return oc_inside(curve->cold.t_c, t_c, curve->hot.t_c) ? OHM_OK : OHM_OUT_OF_RANGE;
}

/* Inside the range. */
static double resistance_at(const ohm_curve *curve, double t_c) {
  const struct oc_end *cold = &curve->cold;
  const struct oc_end *hot = &curve->hot;
  if (t_c == cold->t_c)
    return cold->r_ohm;
  if (t_c == hot->t_c)
    return hot->r_ohm;
  return between(fmin(cold->r_ohm, hot->r_ohm), resistance_of(curve, t_c),
                 fmax(cold->r_ohm, hot->r_ohm));
}

static ohm_status resistance(const ohm_curve *curve, double t_c, double *r_ohm) {
  ohm_status status = in_range(curve, t_c);
  *r_ohm = status == OHM_OK ? resistance_at(curve, t_c) : NAN;
  return status;
}

ohm_status ohm_curve_temperature(const ohm_curve *curve, double r_ohm, double *t_c) {
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = NAN;
  return curve ? temperature(curve, r_ohm, t_c) : OHM_NULL_ARGUMENT;
}

ohm_status ohm_curve_resistance(const ohm_curve *curve, double t_c, double *r_ohm) {
  if (!r_ohm)
    return OHM_NULL_ARGUMENT;
  *r_ohm = NAN;
  return curve ? resistance(curve, t_c, r_ohm) : OHM_NULL_ARGUMENT;
}

ohm_status ohm_curve_alpha(const ohm_curve *curve, double t_c, double *alpha_per_k) {
  if (!alpha_per_k)
    return OHM_NULL_ARGUMENT;
  *alpha_per_k = NAN;
  if (!curve)
    return OHM_NULL_ARGUMENT;
  ohm_status status = in_range(curve, t_c);
  if (status == OHM_OK)
    *alpha_per_k = alpha_of(curve, t_c);
  return status;
}

static void give(double *output, double value) {
  if (output)
    *output = value;
}

ohm_status ohm_curve_range(const ohm_curve *curve, double *low_c, double *high_c,
                           double *at_low_ohm, double *at_high_ohm) {
  give(low_c, curve ? curve->cold.t_c : NAN);
  give(high_c, curve ? curve->hot.t_c : NAN);
  give(at_low_ohm, curve ? curve->cold.r_ohm : NAN);
  give(at_high_ohm, curve ? curve->hot.r_ohm : NAN);
  return curve ? OHM_OK : OHM_NULL_ARGUMENT;
}

typedef ohm_status (*conversion)(const ohm_curve *curve, double from, double *to);

/* Numbers in memory, so many bytes from one to the next. */
struct series {
  char *first;
  size_t stride;
};

static double *number_at(struct series series, size_t index) {
  return (double *)(void *)(series.first + index * series.stride);
}

static bool is_stride(size_t stride) {
  return stride >= sizeof(double) && stride % alignof(double) == 0;
}

static ohm_status convert_all(const ohm_curve *curve, conversion convert, struct series from,
                              struct series to, size_t count, size_t *failed) {
  bool given = curve && ((from.first && to.first) || count == 0);
  bool apart = is_stride(from.stride) && is_stride(to.stride);
  size_t bad = 0;
  for (size_t i = 0; given && apart && i < count; i++)
    bad += convert(curve, *number_at(from, i), number_at(to, i)) != OHM_OK;
  for (size_t i = 0; !given && apart && to.first && i < count; i++, bad++)
    *number_at(to, i) = NAN;
  if (failed)
    *failed = apart ? bad : count;
  return !given ? OHM_NULL_ARGUMENT : apart ? OHM_OK : OHM_BAD_ARGUMENT;
}

/* The first argument is only read. */
static struct series series_of(const double *first, size_t stride) {
  return (struct series){(char *)(uintptr_t)first, stride};
}

ohm_status ohm_curve_temperatures(const ohm_curve *curve, const double *r_ohm, size_t r_stride,
                                  double *t_c, size_t t_stride, size_t count, size_t *failed) {
  return convert_all(curve, temperature, series_of(r_ohm, r_stride), series_of(t_c, t_stride),
                     count, failed);
}

ohm_status ohm_curve_resistances(const ohm_curve *curve, const double *t_c, size_t t_stride,
                                 double *r_ohm, size_t r_stride, size_t count, size_t *failed) {
  return convert_all(curve, resistance, series_of(t_c, t_stride), series_of(r_ohm, r_stride), count,
                     failed);
}

/* ---- beyond the ends ---- */

static double beyond_ntc(const ohm_curve *curve, double t_c) {
  bool hot = t_c > curve->hot.t_c;
  const struct oc_end *end = hot ? &curve->hot : &curve->cold;
  double dy = 1 / oc_kelvin(t_c) - 1 / oc_kelvin(end->t_c);
  return end->r_ohm * exp(dy / oc_ntc_end_slope(&curve->ntc, hot));
}

double oc_curve_resistance_beyond(const ohm_curve *curve, double t_c) {
  if (in_range(curve, t_c) == OHM_OK)
    return resistance_at(curve, t_c);
  if (oc_curve_falls(curve))
    return t_c <= OC_ZERO_C ? INFINITY : beyond_ntc(curve, t_c);
  const struct oc_end *end = t_c > curve->hot.t_c ? &curve->hot : &curve->cold;
  double ohm_per_k = end->r_ohm * alpha_of(curve, end->t_c);
  return fmax(0, end->r_ohm + ohm_per_k * (t_c - end->t_c));
}
