/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "bench.h"
#include "json.h"
#include "screen.h"
#include "sensors.h"

enum { COLUMN = 14, DIGITS = 4, DECIMALS_MAX = 3 };

/* Temperatures nearer than this are the same row. */
static const double same_k = 1e-9;
static const double least_step_k = 0.001;

struct rows {
  double from_c, to_c, step_k;
  double origin_c; /**< the rows between the ends are whole steps from here */
};

static int read_end(const ohm_sensor *sensor, const char *option, const char *text, double low_c,
                    double high_c, double *end_c) {
  ohm_error error;
  double t_c;
  if (ohm_temperature_read(text, &t_c, &error))
    return shell_refuse(SHELL_EXIT_DATA, "%s", error.message);
  if (!(low_c - same_k <= t_c && t_c <= high_c + same_k))
    return shell_refuse_outside(sensor, option, text, "");
  *end_c = fmin(fmax(t_c, low_c), high_c);
  return SHELL_EXIT_DONE;
}

static int read_step(const char *text, double *step_k) {
  if (ohm_number_read(text, strlen(text), step_k) == OHM_OK && *step_k >= least_step_k)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_DATA,
                      "\"%s\" is no step: write a number of degrees, 0.001 or more, such as 5",
                      text);
}

static int read_rows(const struct shell_arguments *arguments, const ohm_sensor *sensor,
                     struct rows *rows) {
  const char *from = arguments->values[SHELL_OPTION_FROM], *to = arguments->values[SHELL_OPTION_TO];
  const char *step = arguments->values[SHELL_OPTION_STEP];
  double low_c, high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  *rows = (struct rows){low_c, high_c, 10.0, 0.0};
  int status = SHELL_EXIT_DONE;
  if (from)
    status = read_end(sensor, "--from ", from, low_c, high_c, &rows->from_c);
  if (from)
    rows->origin_c = rows->from_c;
  if (to && status == SHELL_EXIT_DONE)
    status = read_end(sensor, "--to ", to, low_c, high_c, &rows->to_c);
  if (status != SHELL_EXIT_DONE)
    return status;
  if (rows->from_c > rows->to_c)
    return shell_refuse(SHELL_EXIT_DATA, "--from is above --to: exchange them");
  return step ? read_step(step, &rows->step_k) : SHELL_EXIT_DONE;
}

static bool is_whole(double value) {
  return fabs(value - round(value)) <= same_k * fmax(1.0, fabs(value));
}

/* As many as the temperatures of all rows need, within reason. */
static int decimals_of(const struct rows *rows) {
  int decimals = 0;
  double scale = 1;
  while (decimals < DECIMALS_MAX &&
         !(is_whole(rows->from_c * scale) && is_whole(rows->to_c * scale) &&
           is_whole(rows->step_k * scale))) {
    decimals++;
    scale *= 10;
  }
  return decimals;
}

static void write_ohms(double r_ohm) {
  char cell[SHELL_CELL_SIZE] = "-";
  if (isfinite(r_ohm))
    ohm_resistance_print(r_ohm, DIGITS, cell, sizeof cell);
  printf("%*s", COLUMN, cell);
}

static void write_row(double t_c, int decimals, const double ohms[3]) {
  char cell[SHELL_CELL_SIZE];
  shell_temperature_print(t_c, decimals, cell);
  printf("%*s", COLUMN, cell);
  for (int i = 0; i < 3; i++)
    write_ohms(ohms[i]);
  putchar('\n');
}

static void write_json(double t_c, const double ohms[3]) {
  struct shell_json json;
  shell_json_begin(&json, "row");
  shell_json_number(&json, "t_c", t_c);
  shell_json_number(&json, "low_ohm", ohms[0]);
  shell_json_number(&json, "nominal_ohm", ohms[1]);
  shell_json_number(&json, "high_ohm", ohms[2]);
  shell_json_end(&json);
}

struct sheet {
  const ohm_sensor *sensor;
  ohm_bench *bench; /**< with the band that was named; NULL for the widest */
  bool json;
  int decimals;
};

/* What a finding says of a band is asked of a reading that says nothing itself. */
static ohm_answer *ask_band(ohm_bench *bench, double t_c, ohm_error *error) {
  char at[OHM_NUMBER_SIZE], reading[OHM_NUMBER_SIZE + 16];
  ohm_number_print(t_c, at, sizeof at);
  snprintf(reading, sizeof reading, "open@%sC", at);
  ohm_bench_forget(bench, 0);
  ohm_bench_read(bench, reading, NULL, NULL);
  return ohm_bench_check(bench, error);
}

static void limits_of_band(ohm_bench *bench, double t_c, double ohms[3]) {
  ohm_answer *answer = ask_band(bench, t_c, NULL);
  const ohm_finding *finding = ohm_answer_finding(answer);
  ohms[0] = ohm_finding_number(finding, OHM_FIELD_LOW_OHM);
  ohms[2] = ohm_finding_number(finding, OHM_FIELD_HIGH_OHM);
  ohm_answer_free(answer);
}

static void write_at(const struct sheet *sheet, double t_c) {
  double ohms[3];
  ohm_sensor_band(sheet->sensor, t_c, &ohms[0], &ohms[1], &ohms[2]);
  if (sheet->bench)
    limits_of_band(sheet->bench, t_c, ohms);
  if (sheet->json)
    write_json(t_c, ohms);
  else
    write_row(t_c, sheet->decimals, ohms);
}

/* Whole nanokelvins, so that 3 steps of 0.1 are 0.3. */
static double row_temperature(const struct rows *rows, double steps) {
  return round((rows->origin_c + steps * rows->step_k) * 1e9) / 1e9;
}

static void write_rows(const struct sheet *sheet, const struct rows *rows) {
  write_at(sheet, rows->from_c);
  double steps = floor((rows->from_c - rows->origin_c) / rows->step_k);
  for (; !ferror(stdout); steps++) {
    double t_c = row_temperature(rows, steps);
    if (t_c >= rows->to_c - same_k)
      break;
    if (t_c > rows->from_c + same_k)
      write_at(sheet, t_c);
  }
  if (rows->to_c > rows->from_c)
    write_at(sheet, rows->to_c);
}

static void write_band(const ohm_sensor *sensor, const char *band) {
  for (size_t i = 0; i < ohm_sensor_band_count(sensor); i++) {
    if (!band) {
      shell_screen_wrap(0, "Allowed: by each row's widest band; --band NAME prints one of them");
      return;
    }
    if (strcmp(ohm_sensor_band_name(sensor, i), band) == 0) {
      printf("Allowed: ");
      shell_screen_text(band);
      printf("\n%*s", (int)strlen("Allowed: "), "");
      shell_screen_wrap(strlen("Allowed: "), ohm_sensor_band_source(sensor, i));
    }
  }
}

static void write_heading(const struct sheet *sheet) {
  const ohm_sensor *sensor = sheet->sensor;
  const char *description = ohm_sensor_description(sensor);
  shell_screen_text(ohm_sensor_name(sensor));
  fputs(*description ? "\n" : "", stdout);
  shell_screen_wrap(0, description);
  write_band(sensor, ohm_bench_setting(sheet->bench, OHM_SETTING_BAND));
  printf("\n%*s%*s%*s%*s\n", COLUMN, "temperature", COLUMN, "allowed from", COLUMN, "nominal",
         COLUMN, "allowed to");
}

/* A bench that judges by the named band, which the sensor has to have. */
static ohm_bench *band_new(const struct shell_arguments *arguments, const ohm_sensor *sensor,
                           int *status) {
  ohm_error error;
  ohm_bench *bench = shell_bench_new(arguments, status);
  if (!bench)
    return NULL;
  ohm_bench_use_sensor(bench, sensor);
  ohm_answer *answer = NULL;
  if (ohm_bench_set(bench, OHM_SETTING_BAND, arguments->values[SHELL_OPTION_BAND], &error) ==
      OHM_OK)
    answer = ask_band(bench, 0, &error);
  if (!answer)
    *status = shell_bench_refuse(bench, &error);
  ohm_answer_free(answer);
  return bench;
}

static int print(const struct shell_arguments *arguments, const ohm_sensor *sensor,
                 ohm_bench *bench) {
  struct rows rows;
  int status = read_rows(arguments, sensor, &rows);
  if (status != SHELL_EXIT_DONE)
    return status;
  const struct sheet sheet = {sensor, bench, arguments->values[SHELL_OPTION_JSON] != NULL,
                              decimals_of(&rows)};
  if (!sheet.json)
    write_heading(&sheet);
  write_rows(&sheet, &rows);
  return SHELL_EXIT_DONE;
}

int shell_table_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  if (!sensor)
    return status;
  ohm_bench *bench = NULL;
  if (arguments->values[SHELL_OPTION_BAND])
    bench = band_new(arguments, sensor, &status);
  if (status == SHELL_EXIT_DONE)
    status = print(arguments, sensor, bench);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
