/* SPDX-License-Identifier: MIT */
/* What a sensor holds. */
#ifndef OHM_SENSOR_H
#define OHM_SENSOR_H

#include "curve.h"

enum ohm_tolerance_kind {
  OHM_TOLERANCE_NONE,
  OHM_TOLERANCE_PERCENT, /**< of resistance, everywhere */
  OHM_TOLERANCE_BETA,    /**< of resistance at one temperature, and of beta */
  OHM_TOLERANCE_KELVIN,  /**< of temperature: fixed, and growing with |t| in C */
  OHM_TOLERANCE_ROWS     /**< least and greatest resistance at printed rows */
};

struct ohm_row;

struct ohm_tolerance {
  enum ohm_tolerance_kind kind;
  double percent;             /**< OHM_TOLERANCE_PERCENT and _BETA */
  double at_c;                /**< OHM_TOLERANCE_BETA */
  double beta_percent;        /**< OHM_TOLERANCE_BETA */
  double kelvin;              /**< OHM_TOLERANCE_KELVIN */
  double kelvin_per_c;        /**< OHM_TOLERANCE_KELVIN, times |t| */
  const struct ohm_row *rows; /**< OHM_TOLERANCE_ROWS: some with limits, rising */
  size_t row_count;
};

/** One printed row; a cell that was left blank is NaN. */
struct ohm_row {
  double t_c;
  double min_ohm;
  double nominal_ohm;
  double max_ohm;
};

/** The limits one maker printed for a curve that several use. */
struct ohm_maker_band {
  char *name;
  char *source;
  size_t row_count;
  struct ohm_row *rows; /**< in rising temperature, with limits, no nominal */
};

struct ohm_sensor {
  char *name;
  char *description;
  char *source;
  char *kind;
  ohm_curve *curve;
  struct ohm_tolerance tolerance;
  double dissipation_mw_per_k; /**< NaN when not known */
  size_t row_count;
  struct ohm_row *rows; /**< in rising temperature; none for a model */
  size_t band_count;
  struct ohm_maker_band *bands;
  size_t note_count;
  char **notes;
};

/** The nominal of a row: as printed, else the geometric middle of its limits. */
double ohm_row_nominal(const struct ohm_row *row);

bool ohm_row_has_limits(const struct ohm_row *row);

#endif
