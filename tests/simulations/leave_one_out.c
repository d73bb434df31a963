/* SPDX-License-Identifier: MIT */
/*
 * How well the curve through printed points stands in for rows it was not given: every
 * inner row of every table is left out once, and what the curve through the rest makes of
 * its resistance is held against its temperature. Arguments: sensor files; those of fewer
 * than six rows, and those an audit finds fault with, are passed over.
 */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

enum { ROWS_MIN = 6, ROWS_MOST = 4096 };

struct rows {
  size_t count;
  double t_c[ROWS_MOST];
  double r_ohm[ROWS_MOST];
};

/* The rows that a sensor was made of, from its printed form. */
static size_t rows_of(const ohm_sensor *sensor, struct rows *rows) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  rows->count = 0;
  if (!text)
    return 0;
  ohm_sensor_print(sensor, text, size);
  for (char *line = strtok(text, "\n"); line; line = strtok(NULL, "\n")) {
    double t_c;
    size_t length = strcspn(line, ",");
    if (ohm_number_read(line, length, &t_c) != OHM_OK)
      continue;
    rows->t_c[rows->count] = t_c;
    ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &rows->r_ohm[rows->count]);
    rows->count += rows->count == 0 || t_c > rows->t_c[rows->count - 1];
  }
  free(text);
  return rows->count;
}

/* NaN when the rest makes no curve. */
static double missed_by_k(const struct rows *rows, size_t without) {
  static struct rows rest;
  rest.count = 0;
  for (size_t i = 0; i < rows->count; i++)
    if (i != without) {
      rest.t_c[rest.count] = rows->t_c[i];
      rest.r_ohm[rest.count++] = rows->r_ohm[i];
    }
  ohm_curve *curve = ohm_curve_points_new(rest.t_c, rest.r_ohm, rest.count, NULL);
  double t_c;
  ohm_curve_temperature(curve, rows->r_ohm[without], &t_c);
  ohm_curve_free(curve);
  return t_c - rows->t_c[without];
}

static void print_worst(const char *name, const struct rows *rows) {
  double worst_k = 0;
  size_t at = 1;
  for (size_t i = 1; i + 1 < rows->count; i++) {
    double dt_k = missed_by_k(rows, i);
    if (!(fabs(dt_k) <= fabs(worst_k))) {
      worst_k = dt_k;
      at = i;
    }
  }
  printf("%-52s %4zu rows  %+8.3f K at %g C\n", name, rows->count, worst_k, rows->t_c[at]);
}

/* Of its resistances and temperatures; volts do not matter here. */
static bool is_clean(const char *path) {
  ohm_audit *audit = ohm_audit_load(path, NULL);
  bool clean = audit != NULL;
  for (size_t i = 0; i < ohm_audit_count(audit); i++)
    clean = clean && ohm_audit_suspect(audit, i)->kind == OHM_SUSPECT_VOLTS;
  ohm_audit_free(audit);
  return clean;
}

int main(int count, char **paths) {
  static struct rows rows;
  size_t tables = 0;
  for (int i = 1; i < count; i++) {
    ohm_sensor *sensor = is_clean(paths[i]) ? ohm_sensor_load(paths[i], NULL) : NULL;
    if (sensor && rows_of(sensor, &rows) >= ROWS_MIN) {
      print_worst(ohm_sensor_name(sensor), &rows);
      tables++;
    }
    ohm_sensor_free(sensor);
  }
  printf("%zu tables\n", tables);
  return tables > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
