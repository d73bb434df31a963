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

/* A lone 1 is over range on many displays; of a limit it is 1 ohm. */
static int read_ohms(const char *place, const char *text, double *r_ohm) {
  ohm_error error;
  if (strcmp(text, "1") == 0)
    return shell_refuse(SHELL_EXIT_DATA,
                        "%s%s is no resistance, so no curve goes through it: write what a display "
                        "with a number showed; 1 ohm is 1.0",
                        place, text);
  if (ohm_resistance_read(text, r_ohm, &error) == OHM_OK)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_DATA, "%s%s", place, error.message);
}

/* A number, with a unit behind it or not. */
static bool is_amount(const char *text, const char *units, double *value) {
  size_t length = strlen(text);
  if (length > 0 && strchr(units, text[length - 1]))
    length--;
  return ohm_number_read(text, length, value) == OHM_OK && *value >= 0;
}

/* Percent, or a resistance. */
static int read_limit(const char *place, const char *text, double r_ohm, double *limit_ohm) {
  size_t length = strlen(text);
  ohm_error error;
  if (length > 0 && text[length - 1] == '%' && is_amount(text, "%", limit_ohm)) {
    *limit_ohm = r_ohm * *limit_ohm / 100;
    return SHELL_EXIT_DONE;
  }
  if (ohm_resistance_read(text, limit_ohm, &error) == OHM_OK)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_DATA, "%s%s", place, error.message);
}

static int read_resistance(const char *place, char *text, ohm_fit_point *point) {
  double limit_ohm = 0;
  char *limit = limit_in(text);
  if (limit)
    *limit = '\0';
  int status = read_ohms(place, text, &point->r_ohm);
  if (limit && status == SHELL_EXIT_DONE)
    status = read_limit(place, limit + MARK, point->r_ohm, &limit_ohm);
  point->u_r_ohm = u_of_limit(limit_ohm);
  return status;
}

/* A limit is in the unit of its temperature. */
static int read_temperature(const char *place, char *text, ohm_fit_point *point) {
  static const double kelvin_of_f = 5.0 / 9;
  double limit_k = 0;
  ohm_error error;
  char *limit = limit_in(text);
  if (limit)
    *limit = '\0';
  bool ice = strcmp(text, "ice") == 0;
  if (!ice && ohm_temperature_read(text, &point->t_c, &error) != OHM_OK)
    return shell_refuse(SHELL_EXIT_DATA, "%s%s", place, error.message);
  if (limit && !is_amount(limit + MARK, "CFK", &limit_k))
    return shell_refuse(SHELL_EXIT_DATA,
                        "%s\"%s\" is no limit of %s: write degrees of the same unit, such as 0.1",
                        place, limit + MARK, text);
  if (!ice && text[strlen(text) - 1] == 'F')
    limit_k *= kelvin_of_f;
  point->u_t_k = u_of_limit(limit_k);
  return SHELL_EXIT_DONE;
}

int shell_point_read(const char *place, const char *given, ohm_fit_point *point) {
  char text[TEXT_SIZE];
  *point = (ohm_fit_point){0};
  snprintf(text, sizeof text, "%s", given);
  char *at = strchr(text, '@');
  if (!at || strlen(given) >= sizeof text)
    return shell_refuse(SHELL_EXIT_DATA,
                        "%s\"%.60s\" is no point: write a resistance and the temperature it was "
                        "read at, such as 2.45k@20C or 2.45k+-12@20C+-0.1",
                        place, given);
  *at = '\0';
  int status = read_resistance(place, text, point);
  return status == SHELL_EXIT_DONE ? read_temperature(place, at + 1, point) : status;
}

/* Line 0 is an operand. */
static int read_point(struct shell_points *points, const char *given, unsigned long line) {
  char place[PLACE_SIZE] = "";
  ohm_fit_point point;
  if (line > 0)
    snprintf(place, sizeof place, "standard input, line %lu: ", line);
  int status = shell_point_read(place, given, &point);
  if (status == SHELL_EXIT_DONE && points->count < SHELL_POINTS_ROOM)
    points->list[points->count++] = point;
  return status;
}

static int read_input(struct shell_points *points) {
  struct shell_lines lines;
  shell_lines_begin(&lines);
  if (isatty(STDIN_FILENO))
    shell_remark("note", "reading standard input, a point a line; end it with Ctrl-D");
  int status = SHELL_EXIT_DONE;
  for (;;) {
    int one = SHELL_EXIT_DONE;
    switch (shell_lines_next(&lines)) {
    case SHELL_LINE_TEXT:
      one = read_point(points, lines.text, lines.line);
      break;
    case SHELL_LINE_UNFIT:
      one = shell_refuse(SHELL_EXIT_DATA,
                         "standard input, line %lu: it is too long or not text: write one point",
                         lines.line);
      break;
    case SHELL_LINE_FAILED:
      return shell_refuse(SHELL_EXIT_MISSING, "standard input cannot be read: give the points as "
                                              "words, or a file or pipe to read");
    case SHELL_LINE_END:
      return status;
    }
    status = one != SHELL_EXIT_DONE ? one : status;
  }
}

int shell_points_read(const struct shell_arguments *arguments, struct shell_points *points) {
  points->count = 0;
  if (arguments->count == 0)
    return read_input(points);
  int status = SHELL_EXIT_DONE;
  for (size_t i = 0; i < arguments->count; i++) {
    int one = read_point(points, arguments->operands[i], 0);
    status = one != SHELL_EXIT_DONE ? one : status;
  }
  return status;
}
