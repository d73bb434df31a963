/* SPDX-License-Identifier: MIT */
#include "sensor.h"

#include <stdlib.h>
#include <string.h>

#include "../arithmetic/distribution.h"
#include "../ground/number.h"
#include "../ground/text.h"

void ohm_sensor_free(ohm_sensor *sensor) {
  if (!sensor)
    return;
  free(sensor->name);
  free(sensor->description);
  free(sensor->source);
  free(sensor->kind);
  ohm_curve_free(sensor->curve);
  free(sensor->rows);
  for (size_t i = 0; i < sensor->band_count; i++) {
    free(sensor->bands[i].name);
    free(sensor->bands[i].source);
    free(sensor->bands[i].rows);
  }
  free(sensor->bands);
  oc_notes_free(&sensor->notes);
  free(sensor);
}

/* ---- asking ---- */

const ohm_curve *ohm_sensor_curve(const ohm_sensor *sensor) {
  return sensor ? sensor->curve : NULL;
}

const char *ohm_sensor_name(const ohm_sensor *sensor) {
  return sensor ? sensor->name : NULL;
}

static const char *text_or_empty(const char *text) {
  return text ? text : "";
}

const char *ohm_sensor_description(const ohm_sensor *sensor) {
  return sensor ? text_or_empty(sensor->description) : "";
}

const char *ohm_sensor_source(const ohm_sensor *sensor) {
  return sensor ? text_or_empty(sensor->source) : "";
}

const char *ohm_sensor_kind(const ohm_sensor *sensor) {
  return sensor ? text_or_empty(sensor->kind) : "";
}

double ohm_sensor_dissipation_mw_per_k(const ohm_sensor *sensor) {
  return sensor ? sensor->dissipation_mw_per_k : NAN;
}

size_t ohm_sensor_note_count(const ohm_sensor *sensor) {
  return sensor ? sensor->notes.count : 0;
}

const char *ohm_sensor_note(const ohm_sensor *sensor, size_t index) {
  return sensor ? oc_notes_at(&sensor->notes, index) : NULL;
}

size_t ohm_sensor_row_count(const ohm_sensor *sensor) {
  return sensor ? sensor->row_count : 0;
}

ohm_sensor_row ohm_sensor_row_at(const ohm_sensor *sensor, size_t index) {
  return index < ohm_sensor_row_count(sensor) ? sensor->rows[index]
                                              : (ohm_sensor_row){NAN, NAN, NAN, NAN};
}

size_t ohm_sensor_band_count(const ohm_sensor *sensor) {
  return sensor ? sensor->band_count : 0;
}

const char *ohm_sensor_band_name(const ohm_sensor *sensor, size_t index) {
  return sensor && index < sensor->band_count ? sensor->bands[index].name : NULL;
}

const char *ohm_sensor_band_source(const ohm_sensor *sensor, size_t index) {
  return sensor && index < sensor->band_count ? text_or_empty(sensor->bands[index].source) : NULL;
}

ohm_status ohm_sensor_temperature(const ohm_sensor *sensor, double r_ohm, double level,
                                  ohm_estimate *t_c, double *expanded_k) {
  if (expanded_k)
    *expanded_k = NAN;
  if (!t_c)
    return OHM_NULL_ARGUMENT;
  *t_c = (ohm_estimate){NAN, NAN};
  if (!sensor)
    return OHM_NULL_ARGUMENT;
  if (!(0 < level && level < 1))
    return isnan(level) ? OHM_BAD_ARGUMENT : OHM_OUT_OF_RANGE;
  ohm_status status = ohm_curve_temperature(sensor->curve, r_ohm, &t_c->value);
  if (status != OHM_OK)
    return status;
  const struct oc_covariance *covariance = &sensor->covariance;
  if (!(covariance->degrees > 0))
    return OHM_NOT_FOUND;
  t_c->u = oc_covariance_u_k(covariance, sensor->curve, r_ohm, t_c->value);
  if (expanded_k)
    *expanded_k = t_c->u * oc_student_factor(level, covariance->degrees);
  return OHM_OK;
}

/* ---- what is allowed ---- */

static double width(const ohm_curve *curve, const struct oc_tolerance *tolerance, double t_c) {
  struct oc_band band = oc_tolerance_band(curve, tolerance, t_c);
  return band.high_ohm / band.low_ohm;
}

static ohm_status choose_named(const ohm_sensor *sensor, const char *name, double t_c,
                               struct oc_tolerance *chosen, const struct oc_maker_band **band) {
  for (size_t i = 0; i < sensor->band_count; i++)
    if (strcmp(sensor->bands[i].name, name) == 0) {
      *band = &sensor->bands[i];
      *chosen = oc_tolerance_of_maker(*band);
      return oc_tolerance_covers(sensor->curve, chosen, t_c);
    }
  return OHM_BAD_ARGUMENT;
}

ohm_status oc_sensor_choose(const ohm_sensor *sensor, const char *name, double t_c,
                            struct oc_tolerance *chosen, const struct oc_maker_band **band) {
  *chosen = sensor->tolerance;
  *band = NULL;
  if (name)
    return choose_named(sensor, name, t_c, chosen, band);
  ohm_status status = oc_tolerance_covers(sensor->curve, chosen, t_c);
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct oc_tolerance other = oc_tolerance_of_maker(&sensor->bands[i]);
    ohm_status covers = oc_tolerance_covers(sensor->curve, &other, t_c);
    bool first = status != OHM_OK &&
                 (covers == OHM_OK || status == OHM_NOT_FOUND || chosen->kind == OC_TOLERANCE_NONE);
    bool wider = status == OHM_OK && covers == OHM_OK &&
                 width(sensor->curve, &other, t_c) > width(sensor->curve, chosen, t_c);
    if (!first && !wider)
      continue;
    *chosen = other;
    *band = &sensor->bands[i];
    status = covers;
  }
  return status;
}

static void give(double *output, double value) {
  if (output)
    *output = value;
}

ohm_status ohm_sensor_band(const ohm_sensor *sensor, double t_c, double *low_ohm,
                           double *nominal_ohm, double *high_ohm) {
  give(low_ohm, NAN);
  give(nominal_ohm, NAN);
  give(high_ohm, NAN);
  if (!sensor)
    return OHM_NULL_ARGUMENT;
  double nominal;
  ohm_status status = ohm_curve_resistance(sensor->curve, t_c, &nominal);
  if (status != OHM_OK)
    return status;
  give(nominal_ohm, nominal);
  struct oc_tolerance tolerance;
  const struct oc_maker_band *maker;
  status = oc_sensor_choose(sensor, NULL, t_c, &tolerance, &maker);
  if (status == OHM_OK) {
    struct oc_band band = oc_tolerance_band(sensor->curve, &tolerance, t_c);
    give(low_ohm, band.low_ohm);
    give(high_ohm, band.high_ohm);
  }
  return status;
}

/* ---- as text ---- */

static void add_line(struct oc_text *text, const char *key, const char *value) {
  if (!value)
    return;
  oc_text_add(text, "# ");
  oc_text_add(text, key);
  oc_text_add(text, ": ");
  oc_text_add(text, value);
  oc_text_add(text, "\n");
}

static void add_number_line(struct oc_text *text, const char *key, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  add_line(text, key, digits);
}

static void add_model(struct oc_text *text, const ohm_curve *curve) {
  const struct oc_model_form *form = oc_model_form(curve->model);
  add_line(text, "model", form->name);
  for (size_t i = 0; i < form->count; i++)
    add_number_line(text, form->keys[i], curve->parameters[i]);
  oc_text_add(text, "# range: ");
  oc_text_add_number(text, curve->cold.t_c);
  oc_text_add(text, " to ");
  oc_text_add_number(text, curve->hot.t_c);
  oc_text_add(text, " C\n");
}

static void add_cell(struct oc_text *text, double value, const char *end) {
  if (!isnan(value))
    oc_text_add_number(text, value);
  oc_text_add(text, end);
}

static void add_row(struct oc_text *text, const ohm_sensor_row *row, const char *band) {
  add_cell(text, row->t_c, ",");
  add_cell(text, row->min_ohm, ",");
  add_cell(text, row->nominal_ohm, ",");
  add_cell(text, row->max_ohm, band ? "," : "\n");
  if (band) {
    oc_text_add(text, band);
    oc_text_add(text, "\n");
  }
}

static void add_rows(struct oc_text *text, const ohm_sensor *sensor) {
  bool has_bands = sensor->band_count > 0;
  oc_text_add(text, "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm");
  oc_text_add(text, has_bands ? ",band\n" : "\n");
  for (size_t i = 0; i < sensor->row_count; i++)
    add_row(text, &sensor->rows[i], has_bands ? "" : NULL);
  for (size_t i = 0; i < sensor->band_count; i++)
    for (size_t j = 0; j < sensor->bands[i].row_count; j++)
      add_row(text, &sensor->bands[i].rows[j], sensor->bands[i].name);
}

static void add_bands(struct oc_text *text, const ohm_sensor *sensor) {
  for (size_t i = 0; i < sensor->band_count; i++) {
    oc_text_add(text, "# band ");
    oc_text_add(text, sensor->bands[i].name);
    oc_text_add(text, ": ");
    oc_text_add(text, text_or_empty(sensor->bands[i].source));
    oc_text_add(text, "\n");
  }
}

static void add_covariance(struct oc_text *text, const ohm_sensor *sensor) {
  const struct oc_covariance *covariance = &sensor->covariance;
  if (!(covariance->degrees > 0))
    return;
  oc_text_add(text, "# covariance: ");
  oc_covariance_add(text, covariance, sensor->curve->model);
  oc_text_add(text, "\n");
  if (!isinf(covariance->degrees))
    add_number_line(text, "degrees_of_freedom", covariance->degrees);
}

size_t ohm_sensor_print(const ohm_sensor *sensor, char *buffer, size_t size) {
  struct oc_text text = oc_text_begin(buffer, size);
  if (!sensor)
    return 0;
  bool is_model = sensor->curve->model != OC_MODEL_POINTS;
  add_line(&text, "name", sensor->name);
  add_line(&text, "description", sensor->description);
  add_line(&text, "source", sensor->source);
  add_line(&text, "kind", sensor->kind);
  if (is_model)
    add_model(&text, sensor->curve);
  add_covariance(&text, sensor);
  if (sensor->tolerance.kind != OC_TOLERANCE_NONE && sensor->tolerance.kind != OC_TOLERANCE_ROWS) {
    oc_text_add(&text, "# tolerance: ");
    oc_tolerance_add(&text, &sensor->tolerance);
    oc_text_add(&text, "\n");
  }
  if (!isnan(sensor->dissipation_mw_per_k))
    add_number_line(&text, "dissipation_mw_per_k", sensor->dissipation_mw_per_k);
  add_bands(&text, sensor);
  if (!is_model)
    add_rows(&text, sensor);
  return text.length;
}
