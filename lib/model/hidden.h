/* SPDX-License-Identifier: MIT */
/* What a measurement could not have seen, and what that does to the fan. */
#ifndef OC_HIDDEN_H
#define OC_HIDDEN_H

#include "../arithmetic/decision.h"
#include "fault.h"
#include "../sensors/tolerance.h"

/** One reading at one temperature, and the fan it is to be good for. */
struct oc_exposure {
  const ohm_curve *curve;
  const struct oc_tolerance *tolerance;
  struct oc_spread read; /**< ohm */
  struct oc_spread at;   /**< degrees Celsius */
  double level;
  double fan_c;
  double limit_k;
};

/** Lateness and earliness are in kelvin; INFINITY for a fan that never starts, or
 *  always runs. */
struct oc_hidden {
  double series_ohm;  /**< largest that could hide; 0 for none */
  double leakage_ohm; /**< smallest that could hide; INFINITY for none */
  double series_late_k;
  double series_sound_late_k; /**< the same in series with a nominal sensor */
  double leakage_early_k;
  double leakage_sound_early_k;
  double fifty_late_k; /**< OC_ASSUMED_HIDDEN_OHM in series with a nominal sensor */
  double late_k;       /**< the latest by any shape of fault */
  double early_k;
  ohm_verdict job;
  ohm_job_reason reason;
};

/** How late so many ohms in series with a nominal sensor make the fan, likewise. */
double oc_hidden_late_by(const struct oc_exposure *exposure, double series_ohm);

/** What a curve that ends before the fan's temperature leaves open of a start, kelvin. */
double oc_hidden_beyond_k(const struct oc_exposure *exposure);

/**
 * What could hide behind one reading, and what of the fan is certain. Late is certain when
 * whatever could stand behind the reading is: ohms in series, a leakage, a drift, or another
 * thermistor whose beta is none steeper than OC_STEEPEST_BETA_K; early likewise. Only a reading
 * hot enough makes it so: no further below the fan's temperature than 5 K / (steepest
 * beta / flattest beta - 1), 9.4 K.
 */
struct oc_hidden oc_hidden_behind(const struct oc_exposure *exposure);

#endif
