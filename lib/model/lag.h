/* SPDX-License-Identifier: MIT */
/*
 * Where a thing that lags behind the air has come to, and what a temperature shown is
 * off by. At one time constant everything that is not known adds and has the
 * distribution of a budget; probabilities are means of that over the time constant.
 */
#ifndef OC_LAG_H
#define OC_LAG_H

#include "../arithmetic/cooling.h"
#include "../arithmetic/decision.h"

struct oc_span {
  double low_h;
  double high_h;
};

/* A start of which only the limits are known. */
struct oc_start {
  double c;
  double limit_k;
};

enum { OC_LAG_MEMORY = 512 };

/* Following the air takes long when there are many points, and the means come back to the
 * same time constants. */
struct oc_lag_memory {
  double tau_h[OC_LAG_MEMORY];
  struct oc_cooled cooled[OC_LAG_MEMORY];
};

struct oc_lag {
  struct oc_air air;
  struct oc_start start;
  struct oc_span tau;
  double from_h;
  double to_h;
  double air_limit_k;
  double air_u_k;
  struct oc_lag_memory memory;
};

/* A temperature shown, less what the coolant has come to. */
struct oc_off {
  struct oc_lag *lag;
  const struct oc_budget *shown;
  double low_k;
  double high_k;
};

struct oc_off_summary {
  double mean_k;
  double u_k;
  double start_share;
  double start_square;
};

/** Whether these are time constants: above 0, rising, up to OHM_SOAK_MOST_H. */
bool oc_span_is_usable(const struct oc_span *span);

/** These time constants, or what is assumed of such a sensor when both are 0. */
struct oc_span oc_span_or(double low_h, double high_h, enum ohm_soaked kind);

/** A history that begins after the stop leaves the start anywhere from its air to the stop. */
struct oc_start oc_lag_start_between(const struct oc_lag *lag, double stop_c, double stop_limit_k);

/** To be called when anything but the time constant has changed. */
void oc_lag_forget(struct oc_lag *lag);

/** What is shown less what the lag has come to, over its time constants. */
struct oc_off_summary oc_off_summary_of(struct oc_lag *lag, const struct oc_budget *shown);

/** The p-quantile of what is off. */
double oc_off_quantile(struct oc_lag *lag, const struct oc_budget *shown, double p);

/** Of a struct oc_off at one time constant, for oc_cooling_mean(): the probabilities of
 *  lying below the lower and above the upper. */
void oc_off_outside(const void *context, double tau_h, double *values);

#endif
