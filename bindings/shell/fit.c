/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

#include "arguments.h"
#include "fitted.h"
#include "points.h"
#include "screen.h"

enum { ANSWERS_MAX = 64, NAME_SIZE = 256 };

static const double level = 0.95;

static const char *const models[] = {
    [OHM_FIT_BETA] = "beta",
    [OHM_FIT_STEINHART_HART] = "steinhart-hart",
    [OHM_FIT_FOUR_TERM] = "four-term",
};
enum { MODELS = sizeof models / sizeof models[0] };

static int exit_for(int status) {
  return status == OHM_NO_MEMORY ? SHELL_EXIT_MEMORY : SHELL_EXIT_DATA;
}

static int refuse(const ohm_error *error) {
  return shell_refuse(exit_for(error->status), "%s", error->message);
}

/* ---- what to fit ---- */

/* Two temperatures carry a beta, three or more Steinhart-Hart. */
static int model_for(const struct shell_points *points) {
  double first = points->count > 0 ? points->list[0].t_c : NAN;
  double second = first;
  for (size_t i = 1; i < points->count; i++) {
    double t_c = points->list[i].t_c;
    if (second == first)
      second = t_c;
    else if (t_c != first && t_c != second)
      return OHM_FIT_STEINHART_HART;
  }
  return OHM_FIT_BETA;
}

static int read_model(const char *text, const struct shell_points *points, int *model) {
  if (!text) {
    *model = model_for(points);
    return SHELL_EXIT_DONE;
  }
  for (int i = 0; i < MODELS; i++)
    if (strcmp(text, models[i]) == 0) {
      *model = i;
      return SHELL_EXIT_DONE;
    }
  const char *near = ohm_nearest(text, models, MODELS);
  return shell_refuse(SHELL_EXIT_DATA,
                      "\"%s\" is no model to fit%s%s: write beta, steinhart-hart or "
                      "four-term",
                      text, near ? "; was meant " : "", near ? near : "");
}

static int read_end(const char *option, const char *text, double *t_c) {
  ohm_error error;
  if (text && ohm_temperature_read(text, t_c, &error) != OHM_OK)
    return shell_refuse(SHELL_EXIT_DATA, "%s: %s", option, error.message);
  return SHELL_EXIT_DONE;
}

static int read_range(const struct shell_arguments *arguments, const struct shell_points *points,
                      ohm_fit_request *request) {
  const char *from = arguments->values[SHELL_OPTION_FROM];
  const char *to = arguments->values[SHELL_OPTION_TO];
  if ((!from && !to) || points->count == 0)
    return SHELL_EXIT_DONE;
  request->low_c = request->high_c = points->list[0].t_c;
  for (size_t i = 1; i < points->count; i++) {
    request->low_c = fmin(request->low_c, points->list[i].t_c);
    request->high_c = fmax(request->high_c, points->list[i].t_c);
  }
  int status = read_end("--from", from, &request->low_c);
  if (status == SHELL_EXIT_DONE)
    status = read_end("--to", to, &request->high_c);
  if (status == SHELL_EXIT_DONE && !(request->low_c < request->high_c))
    return shell_refuse(SHELL_EXIT_DATA,
                        "the range ends where it begins or below: write --from TEMP "
                        "and a higher --to TEMP");
  return status;
}

/* ---- temperatures that were asked for ---- */

struct answers {
  size_t count;
  struct shell_answered list[ANSWERS_MAX];
};

static int refuse_answer(const ohm_fit *fit, const char *text) {
  double low_c, high_c, at_low_ohm, at_high_ohm;
  char at_low[OHM_NUMBER_SIZE], at_high[OHM_NUMBER_SIZE];
  ohm_curve_range(ohm_fit_curve(fit), &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  ohm_resistance_print(at_low_ohm, 4, at_low, sizeof at_low);
  ohm_resistance_print(at_high_ohm, 4, at_high, sizeof at_high);
  return shell_refuse(
      SHELL_EXIT_DATA,
      "--at: %s is outside of the fit, which reaches from %s to %s: --from and --to "
      "widen it",
      text, at_low, at_high);
}

static int answer_one(const ohm_fit *fit, const char *text, struct answers *answers) {
  double r_ohm;
  ohm_error error;
  if (ohm_resistance_read(text, &r_ohm, &error) != OHM_OK)
    return shell_refuse(SHELL_EXIT_DATA, "--at: %s", error.message);
  if (answers->count == ANSWERS_MAX)
    return shell_refuse(SHELL_EXIT_DATA, "--at takes %d resistances at most: write fewer",
                        ANSWERS_MAX);
  struct shell_answered *answer = &answers->list[answers->count++];
  answer->r_ohm = r_ohm;
  ohm_status status =
      ohm_fit_temperature(fit, answer->r_ohm, level, &answer->t_c, &answer->expanded_k);
  return status == OHM_OK || status == OHM_NOT_FOUND ? SHELL_EXIT_DONE : refuse_answer(fit, text);
}

/* Separated by commas. */
static int answer_all(const ohm_fit *fit, const char *text, struct answers *answers) {
  int status = SHELL_EXIT_DONE;
  while (text && status == SHELL_EXIT_DONE) {
    char one[SHELL_CELL_SIZE];
    const char *comma = strchr(text, ',');
    size_t length = comma ? (size_t)(comma - text) : strlen(text);
    snprintf(one, sizeof one, "%.*s", length < sizeof one ? (int)length : (int)sizeof one - 1,
             text);
    status = answer_one(fit, one, answers);
    text = comma ? comma + 1 : NULL;
  }
  return status;
}

/* ---- the sensor file ---- */

/* As a sensor file without a name is called: after the file, .csv taken off. */
static void name_after(const char *path, char name[NAME_SIZE]) {
  const char *slash = strrchr(path, '/');
  snprintf(name, NAME_SIZE, "%s", slash ? slash + 1 : path);
  size_t length = strlen(name);
  if (length > 4 && strcmp(name + length - 4, ".csv") == 0)
    name[length - 4] = '\0';
}

static bool is_name(const char *text) {
  bool visible = false;
  for (; *text; text++) {
    unsigned char byte = (unsigned char)*text;
    if (byte < 0x20 || byte == 0x7F)
      return false;
    visible = visible || byte != ' ';
  }
  return visible;
}

static void write_point(FILE *file, const ohm_fit_point *point) {
  char t_c[OHM_NUMBER_SIZE], r_ohm[OHM_NUMBER_SIZE], u_t_k[OHM_NUMBER_SIZE];
  char u_r_ohm[OHM_NUMBER_SIZE];
  ohm_number_print(point->t_c, t_c, sizeof t_c);
  ohm_number_print(point->r_ohm, r_ohm, sizeof r_ohm);
  ohm_number_print(point->u_t_k, u_t_k, sizeof u_t_k);
  ohm_number_print(point->u_r_ohm, u_r_ohm, sizeof u_r_ohm);
  fprintf(file, "# fitted to %s ohm at %s C", r_ohm, t_c);
  if (point->u_t_k > 0 || point->u_r_ohm > 0)
    fprintf(file, ", standard uncertainties %s ohm and %s K", u_r_ohm, u_t_k);
  putc('\n', file);
}

/* The points are kept as remarks: a curve without them cannot be fitted again. */
static int write_text(const char *path, const char *text, const struct shell_points *points) {
  bool is_stdout = strcmp(path, "-") == 0;
  FILE *file = is_stdout ? stdout : fopen(path, "w");
  if (!file)
    return shell_refuse(SHELL_EXIT_OUTPUT, "%s cannot be written: %s", path, strerror(errno));
  fputs(text, file);
  for (size_t i = 0; i < points->count; i++)
    write_point(file, &points->list[i]);
  bool failed = ferror(file) != 0;
  if (!is_stdout)
    failed = fclose(file) != 0 || failed;
  return failed ? shell_refuse(SHELL_EXIT_OUTPUT, "%s could not be written to its end", path)
                : SHELL_EXIT_DONE;
}

static int write_sensor(const struct shell_arguments *arguments,
                        const struct shell_fitted *fitted) {
  const char *path = arguments->values[SHELL_OPTION_OUTPUT];
  char name[NAME_SIZE];
  ohm_error error;
  if (arguments->values[SHELL_OPTION_NAME])
    snprintf(name, sizeof name, "%s", arguments->values[SHELL_OPTION_NAME]);
  else
    name_after(strcmp(path, "-") == 0 ? "fit" : path, name);
  if (!is_name(name))
    return shell_refuse(SHELL_EXIT_DATA,
                        "\"%s\" is no name of a sensor: write --name with a word or "
                        "some, on one line",
                        name);
  ohm_sensor *sensor = ohm_fit_sensor_new(fitted->fit, name, &error);
  if (!sensor)
    return refuse(&error);
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  int status = SHELL_EXIT_DONE;
  if (text) {
    ohm_sensor_print(sensor, text, size);
    status = write_text(path, text, fitted->points);
  } else {
    status = shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  }
  free(text);
  ohm_sensor_free(sensor);
  return status;
}

/* ---- the verb ---- */

static void write_screen(const struct shell_fitted *fitted, const char *path) {
  shell_fitted_write_screen(fitted);
  if (!path)
    return;
  fputs("\nWritten to ", stdout);
  shell_screen_text(path);
  puts(", a SENSOR for every verb.");
}

static int write_all(const struct shell_arguments *arguments, const struct shell_fitted *fitted) {
  const char *path = arguments->values[SHELL_OPTION_OUTPUT];
  int status = path ? write_sensor(arguments, fitted) : SHELL_EXIT_DONE;
  if (status != SHELL_EXIT_DONE || (path && strcmp(path, "-") == 0))
    return status;
  if (arguments->values[SHELL_OPTION_JSON])
    shell_fitted_write_json(fitted);
  else
    write_screen(fitted, path);
  return SHELL_EXIT_DONE;
}

static int fit_points(const struct shell_arguments *arguments, const struct shell_points *points) {
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  struct answers answers = {.count = 0};
  ohm_error error;
  int status = read_model(arguments->values[SHELL_OPTION_MODEL], points, &request.model);
  if (status == SHELL_EXIT_DONE)
    status = read_range(arguments, points, &request);
  if (status != SHELL_EXIT_DONE)
    return status;
  ohm_fit *fit = ohm_curve_fit(points->list, points->count, &request, &error);
  if (!fit)
    return refuse(&error);
  status = answer_all(fit, arguments->values[SHELL_OPTION_AT], &answers);
  const struct shell_fitted fitted = {fit, models[request.model], points, answers.list,
                                      answers.count};
  if (status == SHELL_EXIT_DONE)
    status = write_all(arguments, &fitted);
  ohm_fit_free(fit);
  return status;
}

static int check_options(const struct shell_arguments *arguments) {
  const char *path = arguments->values[SHELL_OPTION_OUTPUT];
  if (arguments->values[SHELL_OPTION_NAME] && !path)
    return shell_refuse(SHELL_EXIT_USAGE,
                        "--name is for the file that is written: write -o FILE too");
  if (path && strcmp(path, "-") == 0 &&
      (arguments->values[SHELL_OPTION_JSON] || arguments->values[SHELL_OPTION_AT]))
    return shell_refuse(SHELL_EXIT_USAGE,
                        "-o - writes the sensor file in place of all else: leave out "
                        "--json and --at, or write -o with the name of a file");
  return SHELL_EXIT_DONE;
}

/* With a point left out there is a curve to look at, but none to keep. */
static int fit_what_is_left(const struct shell_arguments *arguments,
                            const struct shell_points *points) {
  struct shell_arguments shown = *arguments;
  shown.values[SHELL_OPTION_OUTPUT] = NULL;
  if (arguments->values[SHELL_OPTION_OUTPUT])
    shell_remark("note", "no file is written, because a point was left out");
  int status = fit_points(&shown, points);
  return status == SHELL_EXIT_DONE ? SHELL_EXIT_DATA : status;
}

int shell_fit_run(const struct shell_arguments *arguments) {
  int status = check_options(arguments);
  if (status != SHELL_EXIT_DONE)
    return status;
  struct shell_points *points = malloc(sizeof *points);
  if (!points)
    return shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  status = shell_points_read(arguments, points);
  if (status == SHELL_EXIT_DONE)
    status = fit_points(arguments, points);
  else if (status == SHELL_EXIT_DATA && points->count > 0)
    status = fit_what_is_left(arguments, points);
  free(points);
  return status;
}
