/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "points.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "lines.h"
#include "screen.h"

enum { PLACE_SIZE = 64, TEXT_SIZE = 256 };

/* Within a limit and nothing else known, JCGM 100:2008, 4.3.7. */
static double u_of_limit(double limit) {
  return limit / sqrt(3);
}

/* A limit is set off by +- or by the sign, two bytes either way. */
enum { MARK = 2 };

static char *limit_in(char *text) {
  char *typed = strstr(text, "+-");
  return typed ? typed : strstr(text, "\xC2\xB1");
}

static int read_ohms(const char *place, const char *text, double *r_ohm) {
  ohm_reading reading;
  ohm_error error;
  if (ohm_reading_read(text, &reading, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s%s", place, error.message);
  if (reading.display != OHM_DISPLAY_VALUE)
    return ohm_refuse(OHM_EXIT_DATA,
                      "%s%s is no resistance, so no curve goes through it: write what a display "
                      "with a number showed; 1 ohm is 1.0",
                      place, text);
  *r_ohm = reading.r_ohm;
  return OHM_EXIT_DONE;
}

/* Percent, or a resistance; of a limit 1 is no lone 1 of a display. */
static int read_limit(const char *place, const char *text, double r_ohm, double *limit_ohm) {
  double percent;
  if (ohm_tolerance_read(text, &percent, NULL) == OHM_OK)
    *limit_ohm = r_ohm * percent / 100;
  else if (ohm_number_read(text, strlen(text), limit_ohm) != OHM_OK || !(*limit_ohm >= 0))
    return read_ohms(place, text, limit_ohm);
  return OHM_EXIT_DONE;
}

static int read_resistance(const char *place, char *text, ohm_fit_point *point) {
  double limit_ohm = 0;
  char *limit = limit_in(text);
  if (limit)
    *limit = '\0';
  int status = read_ohms(place, text, &point->r_ohm);
  if (limit && status == OHM_EXIT_DONE)
    status = read_limit(place, limit + MARK, point->r_ohm, &limit_ohm);
  point->u_r_ohm = u_of_limit(limit_ohm);
  return status;
}

static int read_temperature(const char *place, const char *text, ohm_fit_point *point) {
  ohm_reference reference;
  ohm_error error;
  if (ohm_reference_read(text, &reference, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s%s", place, error.message);
  bool has_number =
      reference.kind == OHM_REFERENCE_THERMOMETER || reference.kind == OHM_REFERENCE_INFRARED;
  if (!has_number && reference.kind != OHM_REFERENCE_ICE)
    return ohm_refuse(OHM_EXIT_DATA,
                      "%s%s is for check: a point of a fit needs the temperature itself, such as "
                      "99.6C",
                      place, text);
  point->t_c = has_number ? reference.t_c : 0;
  point->u_t_k = u_of_limit(reference.limit_k);
  return OHM_EXIT_DONE;
}

/* Line 0 is an operand. */
static int read_point(struct ohm_points *points, const char *given, unsigned long line) {
  char place[PLACE_SIZE] = "";
  char text[TEXT_SIZE];
  ohm_fit_point point = {0};
  if (line > 0)
    snprintf(place, sizeof place, "standard input, line %lu: ", line);
  snprintf(text, sizeof text, "%s", given);
  char *at = strchr(text, '@');
  if (!at || strlen(given) >= sizeof text)
    return ohm_refuse(OHM_EXIT_DATA,
                      "%s\"%.60s\" is no point: write a resistance and the temperature it was read "
                      "at, such as 2.45k@20C or 2.45k+-12@20C+-0.1",
                      place, given);
  *at = '\0';
  int status = read_resistance(place, text, &point);
  if (status == OHM_EXIT_DONE)
    status = read_temperature(place, at + 1, &point);
  if (status == OHM_EXIT_DONE && points->count < OHM_POINTS_ROOM)
    points->list[points->count++] = point;
  return status;
}

static int read_input(struct ohm_points *points) {
  struct ohm_lines lines;
  ohm_lines_begin(&lines);
  if (isatty(STDIN_FILENO))
    ohm_remark("note", "reading standard input, a point a line; end it with Ctrl-D");
  int status = OHM_EXIT_DONE;
  for (;;) {
    int one = OHM_EXIT_DONE;
    switch (ohm_lines_next(&lines)) {
    case OHM_LINE_TEXT:
      one = read_point(points, lines.text, lines.line);
      break;
    case OHM_LINE_UNFIT:
      one = ohm_refuse(OHM_EXIT_DATA,
                       "standard input, line %lu: it is too long or not text: write one point",
                       lines.line);
      break;
    case OHM_LINE_FAILED:
      return ohm_refuse(OHM_EXIT_MISSING, "standard input cannot be read: give the points as "
                                          "words, or a file or pipe to read");
    case OHM_LINE_END:
      return status;
    }
    status = one != OHM_EXIT_DONE ? one : status;
  }
}

int ohm_points_read(const struct ohm_arguments *arguments, struct ohm_points *points) {
  points->count = 0;
  if (arguments->count == 0)
    return read_input(points);
  int status = OHM_EXIT_DONE;
  for (size_t i = 0; i < arguments->count; i++) {
    int one = read_point(points, arguments->operands[i], 0);
    status = one != OHM_EXIT_DONE ? one : status;
  }
  return status;
}
