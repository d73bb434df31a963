/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

#include "json.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { NAME_WIDTH = 24, LABEL_WIDTH = 8, DIGITS = 4 };

struct range {
  double low_c, high_c, at_low_ohm, at_high_ohm;
};

/* What was not told is absent. */
static const char *told(const char *text) {
  return *text ? text : NULL;
}

typedef const char *band_text(const ohm_sensor *sensor, size_t index);

static void write_list(struct ohm_json *json, const char *key, const ohm_sensor *sensor,
                       band_text *text) {
  ohm_json_list_begin(json, key);
  for (size_t i = 0; i < ohm_sensor_band_count(sensor); i++)
    ohm_json_list_text(json, text(sensor, i));
  ohm_json_list_end(json);
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
  write_list(&json, "bands", sensor, ohm_sensor_band_name);
  write_list(&json, "band_sources", sensor, ohm_sensor_band_source);
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

/* Names on one line, or each with its source. */
static void write_bands(const ohm_sensor *sensor, bool with_sources) {
  size_t count = ohm_sensor_band_count(sensor);
  size_t column = NAME_WIDTH + LABEL_WIDTH, used = column;
  if (count > 0)
    printf("%*s%-*s", NAME_WIDTH, "", LABEL_WIDTH, "bands");
  for (size_t i = 0; i < count; i++) {
    const char *name = ohm_sensor_band_name(sensor, i);
    if (with_sources) {
      printf("%*s", i == 0 ? 0 : (int)column, "");
      ohm_screen_text(name);
      printf("\n%*s", (int)column + 2, "");
      ohm_screen_wrap(column + 2, ohm_sensor_band_source(sensor, i));
      continue;
    }
    ohm_screen_word(column, &used, name, strlen(name));
    if (i + 1 == count)
      putchar('\n');
  }
}

static void write_entry(const ohm_sensor *sensor, const struct range *range, bool narrowed) {
  ohm_screen_text(ohm_sensor_name(sensor));
  ohm_screen_pad(ohm_sensor_name(sensor), NAME_WIDTH);
  ohm_screen_wrap(NAME_WIDTH, ohm_sensor_description(sensor));
  write_range(range);
  write_labelled("source", ohm_sensor_source(sensor));
  write_bands(sensor, narrowed);
}

/* Where no limit is printed, this much either way is near. */
static const double near_part = 0.1;

/* Whether a sensor reads about this much at that temperature. */
static bool is_near(const ohm_sensor *sensor, const struct ohm_measurement *near) {
  double low_ohm, nominal_ohm, high_ohm;
  double r_ohm = near->readings[0].r_ohm;
  ohm_status limits =
      ohm_sensor_band(sensor, near->references[0].t_c, &low_ohm, &nominal_ohm, &high_ohm);
  if (limits != OHM_OK) {
    low_ohm = nominal_ohm * (1 - near_part);
    high_ohm = nominal_ohm * (1 + near_part);
  }
  return low_ohm <= r_ohm && r_ohm <= high_ohm;
}

static int write_part(const struct ohm_arguments *arguments, const struct ohm_measurement *near,
                      size_t index, size_t *written) {
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(ohm_sensor_built_in_name(index), &status);
  if (!sensor)
    return status;
  if (near->count > 0 && !is_near(sensor, near)) {
    ohm_sensor_free(sensor);
    return OHM_EXIT_DONE;
  }
  ++*written;
  struct range range;
  ohm_curve_range(ohm_sensor_curve(sensor), &range.low_c, &range.high_c, &range.at_low_ohm,
                  &range.at_high_ohm);
  if (arguments->values[OHM_OPTION_JSON])
    write_json(sensor, &range);
  else
    write_entry(sensor, &range, arguments->count > 0);
  ohm_sensor_free(sensor);
  return OHM_EXIT_DONE;
}

/* The operands as one text, or NULL. */
static char *words_new(const struct ohm_arguments *arguments) {
  size_t size = 1;
  for (size_t i = 0; i < arguments->count; i++)
    size += strlen(arguments->operands[i]) + 1;
  char *words = malloc(size);
  if (words)
    words[0] = '\0';
  for (size_t i = 0; words && i < arguments->count; i++)
    strcat(strcat(words, arguments->operands[i]), " ");
  return words;
}

/* The sensors that fit; all of them when no words were given. */
static size_t find(const char *words, size_t *indices, size_t room) {
  if (*words)
    return ohm_sensor_built_in_matches(words, indices, room);
  for (size_t i = 0; i < room; i++)
    indices[i] = i;
  return room;
}

/* "2.3k@20C", read as check reads it; none without --near. */
static int read_near(const struct ohm_arguments *arguments, struct ohm_measurement *near) {
  char *word = (char *)arguments->values[OHM_OPTION_NEAR];
  char *operands[1] = {word};
  *near = (struct ohm_measurement){.meter = OHM_METER_INIT, .check = OHM_CHECK_INIT};
  if (!word)
    return OHM_EXIT_DONE;
  struct ohm_arguments one = {.verb = arguments->verb, .operands = operands, .count = 1};
  int status = ohm_measurement_read_readings(&one, near);
  if (status == OHM_EXIT_DONE && near->readings[0].display != OHM_DISPLAY_VALUE)
    status = ohm_refuse(OHM_EXIT_DATA, "--near needs a number of ohms, as in 2.3k@20C");
  return status;
}

static int write_parts(const struct ohm_arguments *arguments, const char *words, size_t *indices) {
  struct ohm_measurement near;
  int status = read_near(arguments, &near);
  size_t count = find(words, indices, ohm_sensor_built_in_count());
  size_t written = 0;
  if (status == OHM_EXIT_DONE && count == 0)
    return ohm_refuse(OHM_EXIT_MISSING,
                      "no sensor has \"%.*s\" in its description and sources: write fewer words, "
                      "or none to list them all",
                      (int)strlen(words) - 1, words);
  for (size_t i = 0; i < count && status == OHM_EXIT_DONE; i++)
    status = write_part(arguments, &near, indices[i], &written);
  if (status == OHM_EXIT_DONE && written == 0)
    status = ohm_refuse(OHM_EXIT_MISSING, "no sensor built in reads about that much there");
  return status;
}

int ohm_parts_run(const struct ohm_arguments *arguments) {
  size_t *indices = calloc(ohm_sensor_built_in_count() + 1, sizeof *indices);
  char *words = words_new(arguments);
  int status = indices && words ? write_parts(arguments, words, indices)
                                : ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  free(words);
  free(indices);
  return status;
}
