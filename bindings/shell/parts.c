/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

#include "json.h"
#include "points.h"
#include "screen.h"
#include "sensors.h"

enum { NAME_WIDTH = 24, LABEL_WIDTH = 8, DIGITS = 4 };

struct range {
  double low_c, high_c, at_low_ohm, at_high_ohm;
};

/* What was not told is absent. */
static const char *told(const char *text) {
  return *text ? text : NULL;
}

typedef const char *band_text(const ohm_sensor *sensor, size_t index);

static void write_list(struct shell_json *json, const char *key, const ohm_sensor *sensor,
                       band_text *text) {
  shell_json_list_begin(json, key);
  for (size_t i = 0; i < ohm_sensor_band_count(sensor); i++)
    shell_json_list_text(json, text(sensor, i));
  shell_json_list_end(json);
}

static void write_json(const ohm_sensor *sensor, const struct range *range) {
  struct shell_json json;
  shell_json_begin(&json, "sensor");
  shell_json_text(&json, "sensor", ohm_sensor_name(sensor));
  shell_json_text(&json, "description", told(ohm_sensor_description(sensor)));
  shell_json_text(&json, "kind", told(ohm_sensor_kind(sensor)));
  shell_json_number(&json, "low_c", range->low_c);
  shell_json_number(&json, "high_c", range->high_c);
  shell_json_number(&json, "at_low_ohm", range->at_low_ohm);
  shell_json_number(&json, "at_high_ohm", range->at_high_ohm);
  shell_json_number(&json, "dissipation_mw_per_k", ohm_sensor_dissipation_mw_per_k(sensor));
  shell_json_text(&json, "source", told(ohm_sensor_source(sensor)));
  write_list(&json, "bands", sensor, ohm_sensor_band_name);
  write_list(&json, "band_sources", sensor, ohm_sensor_band_source);
  shell_json_end(&json);
}

static void write_labelled(const char *label, const char *text) {
  printf("%*s%-*s", NAME_WIDTH, "", LABEL_WIDTH, label);
  shell_screen_wrap(NAME_WIDTH + LABEL_WIDTH, text);
}

static void write_range(const struct range *range) {
  char low[OHM_NUMBER_SIZE], high[OHM_NUMBER_SIZE], text[4 * SHELL_CELL_SIZE];
  char at_low[SHELL_CELL_SIZE], at_high[SHELL_CELL_SIZE];
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
      shell_screen_text(name);
      printf("\n%*s", (int)column + 2, "");
      shell_screen_wrap(column + 2, ohm_sensor_band_source(sensor, i));
      continue;
    }
    shell_screen_word(column, &used, name, strlen(name));
    if (i + 1 == count)
      putchar('\n');
  }
}

static void write_entry(const ohm_sensor *sensor, const struct range *range, bool narrowed) {
  shell_screen_text(ohm_sensor_name(sensor));
  shell_screen_pad(ohm_sensor_name(sensor), NAME_WIDTH);
  shell_screen_wrap(NAME_WIDTH, ohm_sensor_description(sensor));
  write_range(range);
  write_labelled("source", ohm_sensor_source(sensor));
  write_bands(sensor, narrowed);
}

/* Where no limit is printed, this much either way is near. */
static const double near_part = 0.1;

/* Whether a sensor reads about this much at that temperature. */
static bool is_near(const ohm_sensor *sensor, const ohm_fit_point *near) {
  double low_ohm, nominal_ohm, high_ohm;
  ohm_status limits = ohm_sensor_band(sensor, near->t_c, &low_ohm, &nominal_ohm, &high_ohm);
  if (limits != OHM_OK) {
    low_ohm = nominal_ohm * (1 - near_part);
    high_ohm = nominal_ohm * (1 + near_part);
  }
  return low_ohm <= near->r_ohm && near->r_ohm <= high_ohm;
}

static int write_part(const struct shell_arguments *arguments, const ohm_fit_point *near,
                      size_t index, size_t *written) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(ohm_sensor_built_in_name(index), &status);
  if (!sensor)
    return status;
  if (near && !is_near(sensor, near)) {
    ohm_sensor_free(sensor);
    return SHELL_EXIT_DONE;
  }
  ++*written;
  struct range range;
  ohm_curve_range(ohm_sensor_curve(sensor), &range.low_c, &range.high_c, &range.at_low_ohm,
                  &range.at_high_ohm);
  if (arguments->values[SHELL_OPTION_JSON])
    write_json(sensor, &range);
  else
    write_entry(sensor, &range, arguments->count > 0);
  ohm_sensor_free(sensor);
  return SHELL_EXIT_DONE;
}

/* The operands as one text, or NULL. */
static char *words_new(const struct shell_arguments *arguments) {
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

static int write_parts(const struct shell_arguments *arguments, const char *words,
                       size_t *indices) {
  ohm_fit_point near;
  const char *text = arguments->values[SHELL_OPTION_NEAR];
  int status = text ? shell_point_read("--near: ", text, &near) : SHELL_EXIT_DONE;
  size_t count = find(words, indices, ohm_sensor_built_in_count());
  size_t written = 0;
  if (status == SHELL_EXIT_DONE && count == 0)
    return shell_refuse(SHELL_EXIT_MISSING,
                        "no sensor has \"%.*s\" in its description and sources: write fewer words, "
                        "or none to list them all",
                        (int)strlen(words) - 1, words);
  for (size_t i = 0; i < count && status == SHELL_EXIT_DONE; i++)
    status = write_part(arguments, text ? &near : NULL, indices[i], &written);
  if (status == SHELL_EXIT_DONE && written == 0)
    status = shell_refuse(SHELL_EXIT_MISSING, "no sensor built in reads about that much there");
  return status;
}

int shell_parts_run(const struct shell_arguments *arguments) {
  size_t *indices = calloc(ohm_sensor_built_in_count() + 1, sizeof *indices);
  char *words = words_new(arguments);
  int status = indices && words
                   ? write_parts(arguments, words, indices)
                   : shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  free(words);
  free(indices);
  return status;
}
