/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <ohmcurve.h>

#include "convert.h"
#include "json.h"
#include "lines.h"
#include "screen.h"
#include "sensors.h"

enum { PLACE_SIZE = 64, FIRST_WIDTH = 12, DIGITS = 4, DECIMALS = 2 };

struct conversion {
  const ohm_sensor *sensor;
  bool to_degrees;
  bool json;
};

struct pair {
  double r_ohm, t_c;
};

static int refuse_display(const char *place, const char *text, const ohm_error *error) {
  if (strcmp(text, "1") == 0)
    return shell_refuse(SHELL_EXIT_DATA,
                        "%s%s alone is over range on many displays, and means no temperature: turn "
                        "the meter to a higher range; if 1 ohm was displayed, write 1.0",
                        place, text);
  return shell_refuse(SHELL_EXIT_DATA, "%s%s", place, error->message);
}

static int degrees_of(const ohm_sensor *sensor, const char *place, const char *text,
                      struct pair *pair) {
  ohm_error error;
  ohm_status status = ohm_resistance_read(text, &pair->r_ohm, &error);
  if (status != OHM_OK || strcmp(text, "1") == 0)
    return refuse_display(place, text, &error);
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  if (ohm_curve_temperature(curve, pair->r_ohm, &pair->t_c) == OHM_OK)
    return SHELL_EXIT_DONE;
  /* On a dial that stands on kilohms 2.31 is 2310 ohm. */
  bool in_kilohms = ohm_curve_temperature(curve, 1000 * pair->r_ohm, &pair->t_c) == OHM_OK;
  return shell_refuse_outside(sensor, place, text,
                              in_kilohms ? "; if the display meant kilohms, add a k" : "");
}

static int ohms_of(const ohm_sensor *sensor, const char *place, const char *text,
                   struct pair *pair) {
  ohm_error error;
  if (ohm_temperature_read(text, &pair->t_c, &error))
    return shell_refuse(SHELL_EXIT_DATA, "%s%s", place, error.message);
  if (ohm_curve_resistance(ohm_sensor_curve(sensor), pair->t_c, &pair->r_ohm))
    return shell_refuse_outside(sensor, place, text, "");
  return SHELL_EXIT_DONE;
}

static void write_json(const struct pair *pair, unsigned long line) {
  struct shell_json json;
  shell_json_begin(&json, "conversion");
  if (line > 0)
    shell_json_number(&json, "line", (double)line);
  shell_json_number(&json, "r_ohm", pair->r_ohm);
  shell_json_number(&json, "t_c", pair->t_c);
  shell_json_end(&json);
}

static void write_line(const struct pair *pair, bool degrees_last) {
  char ohms[SHELL_CELL_SIZE], degrees[SHELL_CELL_SIZE];
  ohm_resistance_print(pair->r_ohm, DIGITS, ohms, sizeof ohms);
  shell_temperature_print(pair->t_c, DECIMALS, degrees);
  printf("%-*s%*s\n", FIRST_WIDTH, degrees_last ? ohms : degrees, FIRST_WIDTH,
         degrees_last ? degrees : ohms);
}

/* Line 0 is a value of the command line. */
static int convert(const struct conversion *conversion, const char *text, unsigned long line) {
  char place[PLACE_SIZE] = "";
  if (line > 0)
    snprintf(place, sizeof place, "standard input, line %lu: ", line);
  struct pair pair = {NAN, NAN};
  int status = conversion->to_degrees ? degrees_of(conversion->sensor, place, text, &pair)
                                      : ohms_of(conversion->sensor, place, text, &pair);
  if (status != SHELL_EXIT_DONE)
    return status;
  if (conversion->json)
    write_json(&pair, line);
  else
    write_line(&pair, conversion->to_degrees);
  return SHELL_EXIT_DONE;
}

static int convert_operands(const struct conversion *conversion, char **texts, size_t count) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = 0; i < count; i++) {
    int one = convert(conversion, texts[i], 0);
    status = one != SHELL_EXIT_DONE ? one : status;
  }
  return status;
}

static int convert_input(const struct conversion *conversion) {
  struct shell_lines lines;
  shell_lines_begin(&lines);
  if (isatty(STDIN_FILENO))
    shell_remark("note", "reading standard input, a value a line; end it with Ctrl-D");
  int status = SHELL_EXIT_DONE;
  while (!ferror(stdout)) {
    int one = SHELL_EXIT_DONE;
    switch (shell_lines_next(&lines)) {
    case SHELL_LINE_TEXT:
      one = convert(conversion, lines.text, lines.line);
      break;
    case SHELL_LINE_UNFIT:
      one = shell_refuse(SHELL_EXIT_DATA,
                         "standard input, line %lu: it is too long or not text: write one value",
                         lines.line);
      break;
    case SHELL_LINE_FAILED:
      return shell_refuse(SHELL_EXIT_MISSING,
                          "standard input cannot be read: give the values after "
                          "the sensor, or a file or pipe to read");
    case SHELL_LINE_END:
      return status;
    }
    status = one != SHELL_EXIT_DONE ? one : status;
  }
  return status;
}

int shell_convert(const struct shell_arguments *arguments, bool to_degrees) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  if (!sensor)
    return status;
  const struct conversion conversion = {sensor, to_degrees,
                                        arguments->values[SHELL_OPTION_JSON] != NULL};
  status = arguments->count > 1
               ? convert_operands(&conversion, arguments->operands + 1, arguments->count - 1)
               : convert_input(&conversion);
  ohm_sensor_free(sensor);
  return status;
}
