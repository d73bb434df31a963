/* SPDX-License-Identifier: MIT */
/* Any bytes as a sensor file. What loads is printed, read and printed again, which
 * must give the same text; its curve and limits are asked for along its range. */
#include <float.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require_named(bool holds, const char *promise) {
  if (holds)
    return;
  fprintf(stderr, "does not hold: %s\n", promise);
  abort();
}

#define require(promise) require_named((promise), #promise)

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  require(text && ohm_sensor_print(sensor, text, size) == size - 1 && strlen(text) == size - 1);
  return text;
}

static void check_print(const ohm_sensor *sensor) {
  char *first = printed(sensor);
  ohm_sensor *again = ohm_sensor_parse(first, strlen(first), "another", NULL);
  require(again != NULL);
  /* A row that looks like a misprint looks like one again. */
  for (size_t i = 0; i < ohm_sensor_note_count(again); i++)
    require(strstr(ohm_sensor_note(again, i), "column") ||
            strstr(ohm_sensor_note(again, i), "more of the kind"));
  char *second = printed(again);
  require(strcmp(first, second) == 0);
  free(second);
  free(first);
  ohm_sensor_free(again);
}

static void check_texts(const ohm_sensor *sensor) {
  require(ohm_sensor_name(sensor) && ohm_sensor_description(sensor));
  require(ohm_sensor_source(sensor) && ohm_sensor_kind(sensor));
  size_t count = ohm_sensor_note_count(sensor);
  require(count <= 100);
  for (size_t i = 0; i < count; i++)
    require(strlen(ohm_sensor_note(sensor, i)) > 0);
  require(!ohm_sensor_note(sensor, count));
}

/* Limits between rows are exponentials of sums of two logarithms of at most 1420 each,
 * which meet five roundings of half a DBL_EPSILON; two such sums may cross by this part. */
static const double CROSSING = 1420 * 5 * DBL_EPSILON;

/* NaN unless OHM_OK; limits may reach 0 and infinity where a tolerance does. A sensor's own
 * limits hold its nominal, a maker's band need not. */
static void check_band(const ohm_sensor *sensor, double t_c, double r_ohm) {
  double low;
  double nominal;
  double high;
  ohm_status status = ohm_sensor_band(sensor, t_c, &low, &nominal, &high);
  require(nominal == r_ohm);
  if (status == OHM_OK) {
    require(0 <= low && low <= high * (1 + CROSSING));
    require(ohm_sensor_band_count(sensor) > 0 || (low <= nominal && nominal <= high));
  } else {
    require((status == OHM_NOT_FOUND || status == OHM_OUT_OF_RANGE) && isnan(low) && isnan(high));
  }
}

static void check_at(const ohm_sensor *sensor, bool falls, double t_c) {
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  double r_ohm;
  double back_c;
  double alpha_per_k;
  require(ohm_curve_resistance(curve, t_c, &r_ohm) == OHM_OK);
  require(0 < r_ohm && isfinite(r_ohm));
  require(ohm_curve_temperature(curve, r_ohm, &back_c) == OHM_OK && isfinite(back_c));
  require(ohm_curve_alpha(curve, t_c, &alpha_per_k) == OHM_OK && isfinite(alpha_per_k));
  require(falls ? alpha_per_k < 0 : alpha_per_k > 0);
  check_band(sensor, t_c, r_ohm);
}

static void check_curve(const ohm_sensor *sensor) {
  double low_c;
  double high_c;
  double at_low_ohm;
  double at_high_ohm;
  require(ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, &at_low_ohm, &at_high_ohm) ==
          OHM_OK);
  require(at_low_ohm != at_high_ohm);
  require(-273.15 < low_c && low_c < high_c && high_c <= 1000);
  for (int i = 0; i <= 64; i++) {
    double t_c = low_c + (high_c - low_c) * i / 64;
    if (t_c <= high_c)
      check_at(sensor, at_high_ohm < at_low_ohm, t_c);
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse((const char *)data, size, "given", &error);
  if (sensor) {
    require(error.status == OHM_OK);
    check_texts(sensor);
    check_print(sensor);
    check_curve(sensor);
  } else {
    require(error.status != OHM_OK && error.message[0]);
    require(memchr(error.message, '\0', sizeof error.message) != NULL);
  }
  ohm_sensor_free(sensor);
  return 0;
}
