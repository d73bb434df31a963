/* SPDX-License-Identifier: MIT */
#include "sensor_build.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/list.h"
#include "../ground/number.h"

enum { BANDS_MAX = 64 };

const char *const oc_sensor_keys[OC_SENSOR_KEYS] = {"name",
                                                    "description",
                                                    "source",
                                                    "kind",
                                                    "model",
                                                    "tolerance",
                                                    "range",
                                                    "covariance",
                                                    "degrees_of_freedom",
                                                    "dissipation_mw_per_k",
                                                    "r0_ohm",
                                                    "t0_c",
                                                    "beta_k",
                                                    "a",
                                                    "b",
                                                    "c",
                                                    "d",
                                                    "r_ref_ohm",
                                                    "a1",
                                                    "b1",
                                                    "c1",
                                                    "d1",
                                                    "r25_ohm",
                                                    "alpha_per_k",
                                                    "beta_per_k2"};

struct oc_sensor_build oc_sensor_build_begin(struct oc_complaints *complaints) {
  struct oc_sensor_build build = {.complaints = complaints,
                                  .sensor = calloc(1, sizeof(ohm_sensor)),
                                  .model = OC_MODEL_POINTS,
                                  .degrees = INFINITY,
                                  .low_c = NAN,
                                  .high_c = NAN};
  for (int key = 0; key < OC_SENSOR_KEYS; key++)
    build.numbers[key] = NAN;
  if (build.sensor)
    complaints->notes = &build.sensor->notes;
  else
    oc_complaints_fail_memory(complaints);
  return build;
}

/* ---- what is told ---- */

double *oc_sensor_build_number(struct oc_sensor_build *build, const char *key) {
  for (int i = OC_KEY_DISSIPATION; i < OC_SENSOR_KEYS; i++)
    if (strcmp(oc_sensor_keys[i], key) == 0)
      return &build->numbers[i];
  return NULL;
}

size_t oc_sensor_build_band(struct oc_sensor_build *build, const char *name, size_t length) {
  ohm_sensor *sensor = build->sensor;
  if (length == 0)
    return 0;
  char *copy = oc_text_new(name, length);
  for (size_t i = 0; i < sensor->band_count && copy; i++)
    if (strcmp(copy, sensor->bands[i].name) == 0) {
      free(copy);
      return i + 1;
    }
  if (copy && sensor->band_count == BANDS_MAX) {
    free(copy);
    return 0;
  }
  struct oc_maker_band *bands = realloc(sensor->bands, (sensor->band_count + 1) * sizeof *bands);
  if (bands)
    sensor->bands = bands;
  if (!copy || !bands) {
    free(copy);
    oc_complaints_fail_memory(build->complaints);
    return 0;
  }
  bands[sensor->band_count] = (struct oc_maker_band){.name = copy};
  return ++sensor->band_count;
}

void oc_sensor_build_keep_row(struct oc_sensor_build *build, const ohm_sensor_row *row, size_t band,
                              int line) {
  if (build->row_count == OC_POINTS_MAX) {
    oc_complaints_fail(build->complaints, OHM_TOO_LARGE, (struct oc_spot){.line = line},
                       "more than 4096 rows", ": leave some out");
    return;
  }
  struct oc_told_row *rows =
      oc_list_grow(build->rows, build->row_count, &build->row_room, sizeof *rows);
  if (!rows) {
    oc_complaints_fail_memory(build->complaints);
    return;
  }
  build->rows = rows;
  build->rows[build->row_count++] = (struct oc_told_row){*row, band, line};
}

/* ---- from what was told to a sensor ---- */

static int by_band_and_temperature(const void *left, const void *right) {
  const struct oc_told_row *a = left;
  const struct oc_told_row *b = right;
  if (a->band != b->band)
    return a->band < b->band ? -1 : 1;
  if (a->row.t_c != b->row.t_c)
    return a->row.t_c < b->row.t_c ? -1 : 1;
  return a->line < b->line ? -1 : 1;
}

static void sort_rows(struct oc_sensor_build *build) {
  if (build->row_count == 0)
    return;
  qsort(build->rows, build->row_count, sizeof *build->rows, by_band_and_temperature);
  size_t kept = 1;
  for (size_t i = 1; i < build->row_count; i++) {
    const struct oc_told_row *row = &build->rows[i];
    const struct oc_told_row *before = &build->rows[kept - 1];
    if (row->band == before->band && row->row.t_c == before->row.t_c)
      oc_complaints_note(build->complaints, (struct oc_spot){.line = row->line},
                         "row left out: ", "its temperature stands in an earlier row");
    else
      build->rows[kept++] = *row;
  }
  build->row_count = kept;
}

/* Rows of one band (0: the sensor's own) as an array of its own; they are sorted. */
static ohm_sensor_row *rows_of_band(struct oc_sensor_build *build, size_t band, size_t *count) {
  size_t first = 0;
  while (first < build->row_count && build->rows[first].band < band)
    first++;
  size_t last = first;
  while (last < build->row_count && build->rows[last].band == band)
    last++;
  *count = last - first;
  ohm_sensor_row *rows = *count > 0 ? malloc(*count * sizeof *rows) : NULL;
  if (*count > 0 && !rows)
    oc_complaints_fail_memory(build->complaints);
  for (size_t i = 0; i < *count && rows; i++)
    rows[i] = build->rows[first + i].row;
  return rows;
}

/* A band without rows says nothing and is dropped. */
static void build_bands(struct oc_sensor_build *build) {
  ohm_sensor *sensor = build->sensor;
  size_t kept = 0;
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct oc_maker_band band = sensor->bands[i];
    band.rows = rows_of_band(build, i + 1, &band.row_count);
    if (band.rows) {
      sensor->bands[kept++] = band;
    } else {
      oc_complaints_note(build->complaints,
                         (struct oc_spot){.text = band.name, .length = strlen(band.name)}, "band ",
                         " has no row and is left out");
      free(band.name);
      free(band.source);
    }
  }
  sensor->band_count = kept;
}

static void add_row(struct oc_text *text, const ohm_sensor_row *row) {
  char r_text[OHM_NUMBER_SIZE];
  ohm_resistance_print(oc_row_nominal(row), 4, r_text, sizeof r_text);
  oc_text_add(text, r_text);
  oc_text_add(text, " at ");
  oc_text_add_number(text, row->t_c);
  oc_text_add(text, " C");
}

static void fail_turn(struct oc_sensor_build *build, const struct oc_told_row *before,
                      const struct oc_told_row *row) {
  char buffer[5 * OHM_NUMBER_SIZE];
  struct oc_text what = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&what, "the curve turns: ");
  add_row(&what, &row->row);
  oc_text_add(&what, " is not below ");
  add_row(&what, &before->row);
  oc_complaints_fail(build->complaints, OHM_BAD_DEFINITION, (struct oc_spot){.line = row->line},
                     buffer,
                     "; resistance must fall as temperature rises, look both rows up again");
}

static void check_rows(struct oc_sensor_build *build, size_t count) {
  if (count < 2) {
    oc_complaints_fail(build->complaints, OHM_BAD_DEFINITION, (struct oc_spot){0},
                       count == 0 ? "no usable row" : "only one usable row",
                       "; a curve needs at least two rows that can be believed");
    return;
  }
  for (size_t i = 1; i < count && oc_goes_on(build->complaints); i++)
    if (!(oc_row_nominal(&build->rows[i - 1].row) > oc_row_nominal(&build->rows[i].row)))
      fail_turn(build, &build->rows[i - 1], &build->rows[i]);
}

static void keep_curve(struct oc_sensor_build *build, ohm_curve *curve, const ohm_error *why) {
  build->sensor->curve = curve;
  if (!curve)
    oc_complaints_fail(build->complaints, (ohm_status)why->status, (struct oc_spot){0},
                       why->message, "");
}

static void build_points(struct oc_sensor_build *build) {
  ohm_sensor *sensor = build->sensor;
  sensor->rows = rows_of_band(build, 0, &sensor->row_count);
  size_t count = sensor->row_count;
  if (oc_goes_on(build->complaints))
    check_rows(build, count);
  if (!oc_goes_on(build->complaints))
    return;
  double *values = malloc(2 * count * sizeof *values);
  if (!values) {
    oc_complaints_fail_memory(build->complaints);
    return;
  }
  for (size_t i = 0; i < count; i++) {
    values[i] = sensor->rows[i].t_c;
    values[count + i] = oc_row_nominal(&sensor->rows[i]);
    if (oc_row_has_limits(&sensor->rows[i]))
      sensor->tolerance = (struct oc_tolerance){
          .kind = OC_TOLERANCE_ROWS, .rows = sensor->rows, .row_count = count};
  }
  ohm_error why;
  keep_curve(build, ohm_curve_points_new(values, values + count, count, &why), &why);
  free(values);
}

static void fail_model(struct oc_sensor_build *build, const char *what, const char *key,
                       const char *advice) {
  char buffer[100];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&text, "model ");
  oc_text_add(&text, oc_model_form(build->model)->name);
  oc_text_add(&text, what);
  oc_text_add(&text, key);
  oc_complaints_fail(build->complaints, OHM_BAD_DEFINITION, (struct oc_spot){0}, buffer, advice);
}

static void build_model(struct oc_sensor_build *build) {
  const struct oc_model_form *form = oc_model_form(build->model);
  double parameters[OC_PARAMETERS_MAX] = {0};
  for (size_t i = 0; i < form->count && oc_goes_on(build->complaints); i++) {
    parameters[i] = *oc_sensor_build_number(build, form->keys[i]);
    if (isnan(parameters[i]))
      fail_model(build, " needs a line \"# ", form->keys[i], ": ...\"");
  }
  if (oc_goes_on(build->complaints) && isnan(build->low_c))
    fail_model(build, " needs a line \"# range: ", "-40 to 125 C", "\"");
  if (oc_goes_on(build->complaints) && build->has_rows)
    fail_model(build, " has no rows", "", "; leave them out or take out the model line");
  if (!oc_goes_on(build->complaints))
    return;
  ohm_error why;
  keep_curve(build, oc_curve_of_model(build->model, parameters, build->low_c, build->high_c, &why),
             &why);
}

/* Asked of the curve when it is known. */
static void build_covariance(struct oc_sensor_build *build) {
  ohm_sensor *sensor = build->sensor;
  if (build->covariance_line == 0 || !oc_goes_on(build->complaints))
    return;
  if (oc_covariance_of(&build->covariance, build->model, build->degrees, &sensor->covariance))
    return;
  sensor->covariance.degrees = 0;
  oc_complaints_note(build->complaints, (struct oc_spot){.line = build->covariance_line},
                     "the covariance is none of this model's parameters and is left out",
                     "; fit the points again");
}

static void make(struct oc_sensor_build *build) {
  sort_rows(build);
  build_bands(build);
  if (oc_goes_on(build->complaints) && build->model == OC_MODEL_POINTS)
    build_points(build);
  else if (oc_goes_on(build->complaints))
    build_model(build);
  build_covariance(build);
  if (build->sensor->tolerance.kind == OC_TOLERANCE_NONE)
    build->sensor->tolerance = build->tolerance;
  build->sensor->dissipation_mw_per_k = build->numbers[OC_KEY_DISSIPATION];
}

ohm_sensor *oc_sensor_build_finish(struct oc_sensor_build *build, const char *default_name) {
  ohm_sensor *sensor = build->sensor;
  if (oc_goes_on(build->complaints))
    make(build);
  if (oc_goes_on(build->complaints) && !sensor->name) {
    sensor->name = oc_text_new(default_name, strlen(default_name));
    if (!sensor->name)
      oc_complaints_fail_memory(build->complaints);
  }
  if (oc_goes_on(build->complaints))
    oc_complaints_end(build->complaints);
  free(build->rows);
  if (oc_goes_on(build->complaints))
    return sensor;
  ohm_sensor_free(sensor);
  return NULL;
}
