/* SPDX-License-Identifier: MIT */
/* A sensor being built of what was told of it: numbers, rows and makers' bands. */
#ifndef OC_SENSOR_BUILD_H
#define OC_SENSOR_BUILD_H

#include "sensor.h"

/** What can be told beside rows and bands, by its key in a sensor file. */
enum oc_sensor_key {
  OC_KEY_NAME,
  OC_KEY_DESCRIPTION,
  OC_KEY_SOURCE,
  OC_KEY_KIND,
  OC_KEY_MODEL,
  OC_KEY_TOLERANCE,
  OC_KEY_RANGE,
  OC_KEY_COVARIANCE,
  OC_KEY_DEGREES,
  OC_KEY_DISSIPATION,
  OC_KEY_PARAMETERS, /**< the first of the parameters of all models */
  OC_SENSOR_KEYS = OC_KEY_PARAMETERS + 15
};

extern const char *const oc_sensor_keys[OC_SENSOR_KEYS];

struct oc_told_row {
  ohm_sensor_row row;
  size_t band; /**< 0 for the sensor's own, else the band's place and 1 */
  int line;
};

struct oc_sensor_build {
  struct oc_complaints *complaints;
  ohm_sensor *sensor;
  enum oc_model model;
  double numbers[OC_SENSOR_KEYS]; /**< of the keys from OC_KEY_DISSIPATION on; NaN when not given */
  double low_c;                   /**< of the range line */
  double high_c;
  struct oc_tolerance tolerance; /**< of the tolerance line */
  struct oc_triangle covariance; /**< of the covariance line */
  int covariance_line;           /**< 0 when there is none */
  double degrees;                /**< of the line of degrees of freedom; else INFINITY */
  bool has_rows;                 /**< a header row was seen */
  struct oc_told_row *rows;
  size_t row_count;
  size_t row_room;
};

/** Notes go to the sensor. Without memory for it the complaints go on no more. */
struct oc_sensor_build oc_sensor_build_begin(struct oc_complaints *complaints);

/** The number of a key, "r0_ohm"; NULL when it is no key. */
double *oc_sensor_build_number(struct oc_sensor_build *build, const char *key);

/** The place of a band and 1, a new one for a new name; 0 for an empty name, for one
 *  after the 64th, and without memory. */
size_t oc_sensor_build_band(struct oc_sensor_build *build, const char *name, size_t length);

void oc_sensor_build_keep_row(struct oc_sensor_build *build, const ohm_sensor_row *row, size_t band,
                              int line);

/** The sensor, or NULL after a fault. What was told is used up. */
ohm_sensor *oc_sensor_build_finish(struct oc_sensor_build *build, const char *default_name);

#endif
