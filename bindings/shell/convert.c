/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <math.h>
#include <stdio.h>
#include <unistd.h>

#include <ohmcurve.h>

#include "json.h"
#include "lines.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { PLACE_SIZE = 64, FIRST_WIDTH = 12, DIGITS = 4, DECIMALS = 2 };

struct conversion {
  const ohm_sensor *sensor;
  bool to_degrees;
  bool json;
};

struct pair {
  double r_ohm, t_c;
};

static int refuse_display(const char *place, const char *text, int display) {
  if (display == OHM_DISPLAY_OPEN)
    return ohm_refuse(OHM_EXIT_DATA,
                      "%s%s is no resistance, so it means no temperature: 'ohmcurve check' judges "
                      "a sensor without circuit",
                      place, text);
  if (display == OHM_DISPLAY_ONE)
    return ohm_refuse(OHM_EXIT_DATA,
                      "%s%s alone is over range on many displays, and means no temperature: turn "
                      "the meter to a higher range; if 1 ohm was displayed, write 1.0",
                      place, text);
  return ohm_refuse(OHM_EXIT_DATA,
                    "%s%s is no resistance, so it means no temperature: turn the meter to a higher "
                    "range and give the number it shows",
                    place, text);
}

static int to_degrees(const ohm_sensor *sensor, const char *place, const char *text,
                      struct pair *pair) {
  ohm_reading reading = OHM_READING_INIT;
  ohm_error error;
  if (ohm_reading_read(text, &reading, &error))
    return ohm_refuse(OHM_EXIT_DATA, "%s%s", place, error.message);
  if (reading.display != OHM_DISPLAY_VALUE)
    return refuse_display(place, text, reading.display);
  pair->r_ohm = reading.r_ohm;
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  if (ohm_curve_temperature(curve, pair->r_ohm, &pair->t_c) == OHM_OK)
    return OHM_EXIT_DONE;
  /* On a dial that stands on kilohms 2.31 is 2310 ohm. */
  bool in_kilohms = ohm_curve_temperature(curve, 1000 * pair->r_ohm, &pair->t_c) == OHM_OK;
  return ohm_refuse_outside(sensor, place, text,
                            in_kilohms ? "; if the display meant kilohms, add a k" : "");
}

static int to_ohms(const ohm_sensor *sensor, const char *place, const char *text,
                   struct pair *pair) {
  ohm_error error;
  if (ohm_temperature_read(text, &pair->t_c, &error))
    return ohm_refuse(OHM_EXIT_DATA, "%s%s", place, error.message);
  if (ohm_curve_resistance(ohm_sensor_curve(sensor), pair->t_c, &pair->r_ohm))
    return ohm_refuse_outside(sensor, place, text, "");
  return OHM_EXIT_DONE;
}

static void write_json(const struct pair *pair, unsigned long line) {
  struct ohm_json json;
  ohm_json_begin(&json);
  if (line > 0)
    ohm_json_number(&json, "line", (double)line);
  ohm_json_number(&json, "r_ohm", pair->r_ohm);
  ohm_json_number(&json, "t_c", pair->t_c);
  ohm_json_end(&json);
}

static void write_line(const struct pair *pair, bool degrees_last) {
  char ohms[OHM_CELL_SIZE], degrees[OHM_CELL_SIZE];
  ohm_resistance_print(pair->r_ohm, DIGITS, ohms, sizeof ohms);
  ohm_temperature_print(pair->t_c, DECIMALS, degrees);
  printf("%-*s%*s\n", FIRST_WIDTH, degrees_last ? ohms : degrees, FIRST_WIDTH,
         degrees_last ? degrees : ohms);
}

/* Line 0 is a value of the command line. */
static int convert(const struct conversion *conversion, const char *text, unsigned long line) {
  char place[PLACE_SIZE] = "";
  if (line > 0)
    snprintf(place, sizeof place, "standard input, line %lu: ", line);
  struct pair pair = {NAN, NAN};
  int status = conversion->to_degrees ? to_degrees(conversion->sensor, place, text, &pair)
                                      : to_ohms(conversion->sensor, place, text, &pair);
  if (status != OHM_EXIT_DONE)
    return status;
  if (conversion->json)
    write_json(&pair, line);
  else
    write_line(&pair, conversion->to_degrees);
  return OHM_EXIT_DONE;
}

static int convert_operands(const struct conversion *conversion, char **texts, size_t count) {
  int status = OHM_EXIT_DONE;
  for (size_t i = 0; i < count; i++) {
    int one = convert(conversion, texts[i], 0);
    status = one != OHM_EXIT_DONE ? one : status;
  }
  return status;
}

static int convert_input(const struct conversion *conversion) {
  struct ohm_lines lines;
  ohm_lines_begin(&lines);
  if (isatty(STDIN_FILENO))
    ohm_remark("note", "reading standard input, a value a line; end it with Ctrl-D");
  int status = OHM_EXIT_DONE;
  while (!ferror(stdout)) {
    int one = OHM_EXIT_DONE;
    switch (ohm_lines_next(&lines)) {
    case OHM_LINE_TEXT:
      one = convert(conversion, lines.text, lines.line);
      break;
    case OHM_LINE_UNFIT:
      one = ohm_refuse(OHM_EXIT_DATA,
                       "standard input, line %lu: it is too long or not text: write one value",
                       lines.line);
      break;
    case OHM_LINE_FAILED:
      return ohm_refuse(OHM_EXIT_MISSING, "standard input cannot be read: give the values after "
                                          "the sensor, or a file or pipe to read");
    case OHM_LINE_END:
      return status;
    }
    status = one != OHM_EXIT_DONE ? one : status;
  }
  return status;
}

int ohm_convert_run(const struct ohm_arguments *arguments) {
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (!sensor)
    return status;
  const struct conversion conversion = {sensor, arguments->verb == &ohm_verbs[OHM_VERB_DEGREES],
                                        arguments->values[OHM_OPTION_JSON] != NULL};
  status = arguments->count > 1
               ? convert_operands(&conversion, arguments->operands + 1, arguments->count - 1)
               : convert_input(&conversion);
  ohm_sensor_free(sensor);
  return status;
}
