/* SPDX-License-Identifier: MIT */
/* A sensor made of a fit. */
#include <string.h>

#include "../curves/fit.h"
#include "sensor_build.h"
#include "../ground/status.h"

static void describe(struct oc_sensor_build *build, const ohm_fit *fit) {
  char description[120];
  struct oc_text text = oc_text_begin(description, sizeof description);
  oc_text_add(&text, oc_model_form(fit->model)->name);
  oc_text_add(&text, " fitted to ");
  oc_text_add_count(&text, fit->count);
  oc_text_add(&text, " points");
  build->sensor->description = oc_text_new(description, strlen(description));
  if (!build->sensor->description)
    oc_complaints_fail_memory(build->complaints);
}

static void take_parameters(struct oc_sensor_build *build, const ohm_fit *fit) {
  const struct oc_model_form *form = oc_model_form(fit->model);
  build->model = fit->model;
  for (size_t i = 0; i < form->count; i++)
    *oc_sensor_build_number(build, form->keys[i]) = fit->parameters[i];
  ohm_curve_range(fit->curve, &build->low_c, &build->high_c, NULL, NULL);
}

ohm_sensor *ohm_fit_sensor_new(const ohm_fit *fit, const char *name, ohm_error *error) {
  oc_error_clear(error);
  if (!fit || !name) {
    oc_fail_null(error);
    return NULL;
  }
  struct oc_complaints complaints = {.place = name, .error = error};
  struct oc_sensor_build build = oc_sensor_build_begin(&complaints);
  if (oc_goes_on(&complaints))
    describe(&build, fit);
  if (oc_goes_on(&complaints))
    take_parameters(&build, fit);
  ohm_sensor *sensor = oc_sensor_build_finish(&build, name);
  if (sensor)
    sensor->covariance = fit->covariance;
  return sensor;
}
