/* SPDX-License-Identifier: MIT */
/* What a sensor holds. */
#ifndef OC_SENSOR_H
#define OC_SENSOR_H

#include "../curves/covariance.h"
#include "../ground/complaints.h"
#include "tolerance.h"

struct ohm_sensor {
  char *name;
  char *description;
  char *source;
  char *kind;
  ohm_curve *curve;
  struct oc_covariance covariance; /**< of its parameters, when it was fitted */
  struct oc_tolerance tolerance;
  double dissipation_mw_per_k; /**< NaN when not known */
  size_t row_count;
  ohm_sensor_row *rows; /**< in rising temperature; none for a model */
  size_t band_count;
  struct oc_maker_band *bands;
  struct oc_notes notes;
};

/**
 * Which of a sensor's tolerances to judge by at a temperature: the named band, or of
 * its own and all bands that say something there the widest.
 *
 * In      name     NULL for the widest
 * Out     chosen   the tolerance; when nothing covers t_c but some say something
 *                  elsewhere, one of those
 *         band     the chosen band; NULL for the sensor's own tolerance
 * Status  as oc_tolerance_covers(); OHM_BAD_ARGUMENT no band has that name.
 */
ohm_status oc_sensor_choose(const ohm_sensor *sensor, const char *name, double t_c,
                            struct oc_tolerance *chosen, const struct oc_maker_band **band);

#endif
