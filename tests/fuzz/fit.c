/* SPDX-License-Identifier: MIT */
/*
 * Fits from bytes: the first byte chooses the model, the next ones are doubles as they
 * lie in memory, four to a point. What can be fitted must fall steadily, have a
 * covariance, and come back from the text of its sensor.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

enum { POINTS_MAX = 16, GRID = 50, TEXT_MAX = 4096 };

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int condition, const char *what) {
  if (condition)
    return;
  fprintf(stderr, "%s\n", what);
  abort();
}

static void check_curve(const ohm_curve *curve) {
  double low_c;
  double high_c;
  double before_ohm;
  ohm_curve_range(curve, &low_c, &high_c, &before_ohm, NULL);
  for (int i = 0; i <= GRID; i++) {
    double r_ohm = NAN;
    double t_c = i == GRID ? high_c : low_c + (high_c - low_c) * i / GRID;
    require(ohm_curve_resistance(curve, t_c, &r_ohm) == OHM_OK, "no resistance");
    require(r_ohm <= before_ohm, "rises");
    before_ohm = r_ohm;
  }
}

static void check_covariance(const ohm_fit *fit) {
  for (size_t i = 0; ohm_fit_parameter_name(fit, i); i++)
    for (size_t j = 0; ohm_fit_parameter_name(fit, j); j++) {
      double one = 0;
      double other = 0;
      if (ohm_fit_covariance(fit, i, j, &one, NULL) != OHM_OK)
        continue;
      ohm_fit_covariance(fit, j, i, &other, NULL);
      require(one == other || isnan(one), "not symmetric");
      require(i != j || !(one < 0), "a variance below 0");
    }
}

static void check_sensor(const ohm_fit *fit) {
  char text[TEXT_MAX];
  char again[TEXT_MAX];
  ohm_sensor *sensor = ohm_fit_sensor_new(fit, "fit", NULL);
  require(sensor != NULL, "no sensor");
  size_t length = ohm_sensor_print(sensor, text, sizeof text);
  require(length < sizeof text, "a long text");
  ohm_sensor *read = ohm_sensor_parse(text, length, "fit", NULL);
  require(read != NULL, "does not come back");
  ohm_sensor_print(read, again, sizeof again);
  require(ohm_sensor_note_count(read) > 0 || strcmp(text, again) == 0, "comes back otherwise");
  ohm_sensor_free(read);
  ohm_sensor_free(sensor);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_fit_point points[POINTS_MAX];
  if (size < 1)
    return 0;
  size_t count = (size - 1) / sizeof points[0];
  count = count < POINTS_MAX ? count : POINTS_MAX;
  memcpy(points, data + 1, count * sizeof points[0]);
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  request.model = data[0] % 3;
  ohm_fit *fit = ohm_curve_fit(points, count, &request, NULL);
  if (fit) {
    check_curve(ohm_fit_curve(fit));
    check_covariance(fit);
    check_sensor(fit);
  }
  ohm_fit_free(fit);
  return 0;
}
