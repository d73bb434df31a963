/* SPDX-License-Identifier: MIT */
#include <stdio.h>

#include <ohmcurve.h>

#include "json.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { NAME_WIDTH = 16, LABEL_WIDTH = 8, DIGITS = 4 };

struct range {
  double low_c, high_c, at_low_ohm, at_high_ohm;
};

/* What was not told is absent. */
static const char *told(const char *text) {
  return *text ? text : NULL;
}

static void write_json(const ohm_sensor *sensor, const struct range *range) {
  struct ohm_json json;
  ohm_json_begin(&json);
  ohm_json_text(&json, "sensor", ohm_sensor_name(sensor));
  ohm_json_text(&json, "description", told(ohm_sensor_description(sensor)));
  ohm_json_text(&json, "kind", told(ohm_sensor_kind(sensor)));
  ohm_json_number(&json, "low_c", range->low_c);
  ohm_json_number(&json, "high_c", range->high_c);
  ohm_json_number(&json, "at_low_ohm", range->at_low_ohm);
  ohm_json_number(&json, "at_high_ohm", range->at_high_ohm);
  ohm_json_number(&json, "dissipation_mw_per_k", ohm_sensor_dissipation_mw_per_k(sensor));
  ohm_json_text(&json, "source", told(ohm_sensor_source(sensor)));
  ohm_json_end(&json);
}

static void write_labelled(const char *label, const char *text) {
  printf("%*s%-*s", NAME_WIDTH, "", LABEL_WIDTH, label);
  ohm_screen_wrap(NAME_WIDTH + LABEL_WIDTH, text);
}

static void write_range(const struct range *range) {
  char low[OHM_NUMBER_SIZE], high[OHM_NUMBER_SIZE], text[4 * OHM_CELL_SIZE];
  char at_low[OHM_CELL_SIZE], at_high[OHM_CELL_SIZE];
  ohm_number_print(range->low_c, low, sizeof low);
  ohm_number_print(range->high_c, high, sizeof high);
  ohm_resistance_print(range->at_low_ohm, DIGITS, at_low, sizeof at_low);
  ohm_resistance_print(range->at_high_ohm, DIGITS, at_high, sizeof at_high);
  snprintf(text, sizeof text, "%s C to %s C, %s to %s", low, high, at_low, at_high);
  write_labelled("range", text);
}

static void write_entry(const ohm_sensor *sensor, const struct range *range) {
  ohm_screen_text(ohm_sensor_name(sensor));
  ohm_screen_pad(ohm_sensor_name(sensor), NAME_WIDTH);
  ohm_screen_wrap(NAME_WIDTH, ohm_sensor_description(sensor));
  write_range(range);
  write_labelled("source", ohm_sensor_source(sensor));
}

int ohm_parts_run(const struct ohm_arguments *arguments) {
  for (size_t i = 0; i < ohm_catalogue_count(); i++) {
    int status = OHM_EXIT_DONE;
    ohm_sensor *sensor = ohm_sensor_named(ohm_catalogue_name(i), &status);
    if (!sensor)
      return status;
    struct range range;
    ohm_curve_range(ohm_sensor_curve(sensor), &range.low_c, &range.high_c, &range.at_low_ohm,
                    &range.at_high_ohm);
    if (arguments->values[OHM_OPTION_JSON])
      write_json(sensor, &range);
    else
      write_entry(sensor, &range);
    ohm_sensor_free(sensor);
  }
  return OHM_EXIT_DONE;
}
