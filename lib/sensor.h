/* SPDX-License-Identifier: MIT */
/* What a sensor holds. */
#ifndef OHM_SENSOR_H
#define OHM_SENSOR_H

#include "covariance.h"
#include "tolerance.h"

struct ohm_sensor {
  char *name;
  char *description;
  char *source;
  char *kind;
  ohm_curve *curve;
  struct ohm_covariance covariance; /**< of its parameters, when it was fitted */
  struct ohm_tolerance tolerance;
  double dissipation_mw_per_k; /**< NaN when not known */
  size_t row_count;
  ohm_sensor_row *rows; /**< in rising temperature; none for a model */
  size_t band_count;
  struct ohm_maker_band *bands;
  size_t note_count;
  char **notes;
};

/**
 * Which of a sensor's tolerances to judge by at a temperature: the named band, or of
 * its own and all bands that say something there the widest.
 *
 * In      name     NULL for the widest
 * Out     chosen   the tolerance; when nothing covers t_c but some say something
 *                  elsewhere, one of those
 *         band     the chosen band; NULL for the sensor's own tolerance
 * Status  as ohm_tolerance_covers(); OHM_BAD_ARGUMENT no band has that name.
 */
ohm_status ohm_sensor_choose(const ohm_sensor *sensor, const char *name, double t_c,
                             struct ohm_tolerance *chosen, const struct ohm_maker_band **band);

#endif
