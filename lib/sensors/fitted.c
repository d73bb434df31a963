/* SPDX-License-Identifier: MIT */
/* A sensor made of a fit. */
#include <string.h>

#include "../curves/fit.h"
#include "draft.h"
#include "../ground/status.h"

static void describe(struct oc_draft *draft, const ohm_fit *fit) {
  char description[120];
  struct oc_text text = oc_text_begin(description, sizeof description);
  oc_text_add(&text, oc_model_form(fit->model)->name);
  oc_text_add(&text, " fitted to ");
  oc_text_add_count(&text, fit->count);
  oc_text_add(&text, " points");
  draft->sensor->description = oc_draft_copy(description, strlen(description));
  if (!draft->sensor->description)
    oc_draft_out_of_memory(draft);
}

static void take_parameters(struct oc_draft *draft, const ohm_fit *fit) {
  const struct oc_model_form *form = oc_model_form(fit->model);
  draft->model = fit->model;
  for (size_t i = 0; i < form->count; i++)
    for (size_t key = 0; oc_draft_key(key); key++)
      if (strcmp(oc_draft_key(key), form->keys[i]) == 0)
        draft->numbers[key] = fit->parameters[i];
  ohm_curve_range(fit->curve, &draft->low_c, &draft->high_c, NULL, NULL);
}

ohm_sensor *ohm_fit_sensor_new(const ohm_fit *fit, const char *name, ohm_error *error) {
  oc_error_clear(error);
  if (!fit || !name) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  struct oc_draft draft = oc_draft_begin(name, error);
  if (oc_draft_goes_on(&draft))
    describe(&draft, fit);
  if (oc_draft_goes_on(&draft))
    take_parameters(&draft, fit);
  ohm_sensor *sensor = oc_draft_finish(&draft, name);
  if (sensor)
    sensor->covariance = fit->covariance;
  return sensor;
}
