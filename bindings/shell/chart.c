/* SPDX-License-Identifier: MIT */
/* A sensor as a picture: resistance, logarithmic, against temperature. */
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "bench.h"
#include "screen.h"
#include "sensors.h"
#include "svg.h"

enum {
  WIDTH = 900,
  HEIGHT = 680,
  LEFT = 98,
  RIGHT = 24,
  TOP = 84,
  BOTTOM = 128,
  CURVE_STEPS = 240,
  TEXT_SIZE = 4000
};

/* Shown of a wide curve unless asked for more: what an engine can be. */
static const double usual_low_c = -40;
static const double usual_high_c = 150;

/* Every mark differs in shape or dash too, for paper and for eyes that tell no
 * colours apart. */
static const char style[] =
    "svg { font-family: system-ui, sans-serif; }\n"
    ".paper { fill: #fff; }\n"
    "text { fill: #1a1a1a; font-size: 17px; }\n"
    ".name { font-size: 25px; font-weight: 600; }\n"
    ".small { font-size: 14px; }\n"
    ".grid { stroke: #d5d5d5; stroke-width: 1; }\n"
    ".axis { stroke: #1a1a1a; stroke-width: 1.5; }\n"
    ".band { fill: #bcd4ee; stroke: none; }\n"
    ".curve { fill: none; stroke: #0b4f8a; stroke-width: 3; stroke-linejoin: round; }\n"
    ".point { fill: #fff; stroke: #0b4f8a; stroke-width: 2; }\n"
    ".mark { stroke: #b3261e; stroke-width: 2.5; fill: none; }\n"
    ".fan { stroke: #8a5a00; stroke-width: 2; stroke-dasharray: 8 5; }\n"
    "@media screen and (prefers-color-scheme: dark) {\n"
    ".paper, .point { fill: #15181c; }\n"
    "text { fill: #ececec; }\n"
    ".grid { stroke: #3a4048; }\n"
    ".axis { stroke: #ececec; }\n"
    ".band { fill: #24466b; }\n"
    ".curve, .point { stroke: #8cc4ff; }\n"
    ".mark { stroke: #ff8a80; }\n"
    ".fan { stroke: #ffc861; }\n"
    "}\n";

struct chart {
  struct shell_svg svg;
  const ohm_sensor *sensor;
  const ohm_answer *answer; /* on the readings; NULL without one */
  double low_c, high_c;
  double low_decade, high_decade; /* log10 of ohm */
  double fan_c;                   /* NaN without one */
};

/* ---- from quantities to places ---- */

static double x_of(const struct chart *chart, double t_c) {
  double part = (t_c - chart->low_c) / (chart->high_c - chart->low_c);
  return LEFT + part * (WIDTH - LEFT - RIGHT);
}

static double y_of(const struct chart *chart, double r_ohm) {
  double part = (log10(r_ohm) - chart->low_decade) / (chart->high_decade - chart->low_decade);
  return HEIGHT - BOTTOM - part * (HEIGHT - TOP - BOTTOM);
}

static double t_at_step(const struct chart *chart, int step) {
  return chart->low_c + (chart->high_c - chart->low_c) * step / CURVE_STEPS;
}

static void include_ohm(struct chart *chart, double r_ohm) {
  if (!(0 < r_ohm && r_ohm < INFINITY))
    return;
  chart->low_decade = fmin(chart->low_decade, log10(r_ohm));
  chart->high_decade = fmax(chart->high_decade, log10(r_ohm));
}

/* ---- what it has to hold ---- */

static size_t reading_count(const struct chart *chart) {
  return ohm_answer_count(chart->answer, OHM_GROUP_READINGS);
}

static const ohm_finding *reading_at(const struct chart *chart, size_t index) {
  return ohm_answer_member(chart->answer, OHM_GROUP_READINGS, index);
}

static void include_readings(struct chart *chart) {
  for (size_t i = 0; i < reading_count(chart); i++) {
    const ohm_finding *finding = reading_at(chart, i);
    double at_c = ohm_finding_number(finding, OHM_FIELD_AT_C);
    double r_ohm = ohm_finding_number(finding, OHM_FIELD_R_OHM);
    double half_ohm = ohm_finding_number(finding, OHM_FIELD_EXPANDED_R_OHM);
    if (isnan(r_ohm))
      continue;
    chart->low_c = fmin(chart->low_c, at_c - 5);
    chart->high_c = fmax(chart->high_c, at_c + 5);
    include_ohm(chart, r_ohm - half_ohm);
    include_ohm(chart, r_ohm + half_ohm);
  }
}

/* Resistance runs to the next line of the grid, 1, 2 or 5 of a decade. */
static double grid_line(int index) {
  static const double leads[] = {1, 2, 5};
  int decade = index >= 0 ? index / 3 : -((2 - index) / 3);
  return leads[index - 3 * decade] * pow(10, decade);
}

static void round_to_grid(struct chart *chart) {
  int below = -30;
  while (log10(grid_line(below + 1)) <= chart->low_decade + 1e-9)
    below++;
  int above = below;
  while (log10(grid_line(above)) < chart->high_decade - 1e-9)
    above++;
  chart->low_decade = log10(grid_line(below));
  chart->high_decade = log10(grid_line(above > below ? above : below + 1));
}

static void set_out(struct chart *chart) {
  ohm_curve_range(ohm_sensor_curve(chart->sensor), &chart->low_c, &chart->high_c, NULL, NULL);
  chart->low_c = fmax(chart->low_c, fmin(usual_low_c, chart->high_c - 10));
  chart->high_c = fmin(chart->high_c, fmax(usual_high_c, chart->low_c + 10));
  chart->low_decade = INFINITY;
  chart->high_decade = -INFINITY;
  for (int step = 0; step <= CURVE_STEPS; step++) {
    double ohms[3];
    ohm_sensor_band(chart->sensor, t_at_step(chart, step), &ohms[0], &ohms[1], &ohms[2]);
    for (int i = 0; i < 3; i++)
      include_ohm(chart, ohms[i]);
  }
  include_readings(chart);
  round_to_grid(chart);
}

/* ---- the picture, from the back to the front ---- */

static void draw_temperatures(struct chart *chart) {
  double span = chart->high_c - chart->low_c;
  double step = span > 240 ? 50 : span > 100 ? 20 : span > 40 ? 10 : 5;
  for (double t_c = ceil(chart->low_c / step) * step; t_c <= chart->high_c + 1e-9; t_c += step) {
    char label[OHM_NUMBER_SIZE];
    double x = x_of(chart, t_c);
    ohm_number_print_fixed(t_c + 0.0, 0, label, sizeof label);
    shell_svg_line(&chart->svg, "grid", x, TOP, x, HEIGHT - BOTTOM);
    shell_svg_text(&chart->svg, "label", SHELL_SVG_MIDDLE, x, HEIGHT - BOTTOM + 24, label);
  }
  shell_svg_text(&chart->svg, "label", SHELL_SVG_END, WIDTH - RIGHT, HEIGHT - BOTTOM + 46,
                 "temperature, degrees Celsius");
}

static void draw_resistances(struct chart *chart) {
  for (int line = -30; line <= 60; line++) {
    double r_ohm = grid_line(line);
    double decade = log10(r_ohm);
    if (!(chart->low_decade - 1e-9 <= decade && decade <= chart->high_decade + 1e-9))
      continue;
    char label[OHM_NUMBER_SIZE];
    double y = y_of(chart, r_ohm);
    ohm_resistance_print(r_ohm, 1, label, sizeof label);
    shell_svg_line(&chart->svg, "grid", LEFT, y, WIDTH - RIGHT, y);
    shell_svg_text(&chart->svg, "label", SHELL_SVG_END, LEFT - 8, y + 6, label);
  }
}

/* One stretch of temperatures for which limits are printed, as a closed shape. */
static void draw_band_stretch(struct chart *chart, int from, int to) {
  double ohms[3];
  shell_svg_path_begin(&chart->svg, "band");
  for (int step = from; step <= to; step++) {
    double t_c = t_at_step(chart, step);
    ohm_sensor_band(chart->sensor, t_c, NULL, NULL, &ohms[2]);
    shell_svg_path_point(&chart->svg, x_of(chart, t_c), y_of(chart, ohms[2]));
  }
  for (int step = to; step >= from; step--) {
    double t_c = t_at_step(chart, step);
    ohm_sensor_band(chart->sensor, t_c, &ohms[0], NULL, NULL);
    shell_svg_path_point(&chart->svg, x_of(chart, t_c), y_of(chart, ohms[0]));
  }
  shell_svg_path_end(&chart->svg);
}

static bool has_limits(const struct chart *chart, int step) {
  return step <= CURVE_STEPS &&
         ohm_sensor_band(chart->sensor, t_at_step(chart, step), NULL, NULL, NULL) == OHM_OK;
}

static bool draw_band(struct chart *chart) {
  bool any = false;
  for (int step = 0; step <= CURVE_STEPS; step++) {
    if (!has_limits(chart, step))
      continue;
    int from = step;
    while (has_limits(chart, step + 1))
      step++;
    draw_band_stretch(chart, from, step);
    any = true;
  }
  return any;
}

static void draw_curve(struct chart *chart) {
  const ohm_curve *curve = ohm_sensor_curve(chart->sensor);
  shell_svg_path_begin(&chart->svg, "curve");
  for (int step = 0; step <= CURVE_STEPS; step++) {
    double r_ohm;
    double t_c = t_at_step(chart, step);
    if (ohm_curve_resistance(curve, t_c, &r_ohm) == OHM_OK)
      shell_svg_path_point(&chart->svg, x_of(chart, t_c), y_of(chart, r_ohm));
  }
  shell_svg_path_end(&chart->svg);
}

static bool draw_points(struct chart *chart) {
  const ohm_curve *curve = ohm_sensor_curve(chart->sensor);
  bool any = false;
  for (size_t i = 0; i < ohm_sensor_row_count(chart->sensor); i++) {
    double t_c = ohm_sensor_row_at(chart->sensor, i).t_c;
    double r_ohm;
    if (!(chart->low_c <= t_c && t_c <= chart->high_c) ||
        ohm_curve_resistance(curve, t_c, &r_ohm) != OHM_OK)
      continue;
    shell_svg_circle(&chart->svg, "point", x_of(chart, t_c), y_of(chart, r_ohm), 4);
    any = true;
  }
  return any;
}

static void draw_fan(struct chart *chart) {
  double r_ohm;
  if (!(chart->low_c <= chart->fan_c && chart->fan_c <= chart->high_c) ||
      ohm_curve_resistance(ohm_sensor_curve(chart->sensor), chart->fan_c, &r_ohm) != OHM_OK)
    return;
  char label[120] = "fan ";
  char ohms[OHM_NUMBER_SIZE];
  ohm_number_print(chart->fan_c, label + strlen(label), OHM_NUMBER_SIZE);
  ohm_resistance_print(r_ohm, 3, ohms, sizeof ohms);
  strcat(strcat(label, " C, "), ohms);
  double x = x_of(chart, chart->fan_c);
  shell_svg_line(&chart->svg, "fan", x, TOP, x, HEIGHT - BOTTOM);
  shell_svg_line(&chart->svg, "fan", LEFT, y_of(chart, r_ohm), x, y_of(chart, r_ohm));
  shell_svg_text(&chart->svg, "label", x > (double)WIDTH * 2 / 3 ? SHELL_SVG_END : SHELL_SVG_START,
                 x > (double)WIDTH * 2 / 3 ? x - 8 : x + 8, TOP + 22, label);
}

/* A cross as long as what is not known of it, and its number. */
static void draw_reading(struct chart *chart, size_t index) {
  const ohm_finding *finding = reading_at(chart, index);
  double at_c = ohm_finding_number(finding, OHM_FIELD_AT_C);
  double half_k = ohm_finding_number(finding, OHM_FIELD_EXPANDED_AT_K);
  double r_ohm = ohm_finding_number(finding, OHM_FIELD_R_OHM);
  double half_ohm = ohm_finding_number(finding, OHM_FIELD_EXPANDED_R_OHM);
  if (!(r_ohm > 0))
    return;
  double x = x_of(chart, at_c);
  double y = y_of(chart, r_ohm);
  double least_ohm = fmax(r_ohm - half_ohm, pow(10, chart->low_decade));
  char label[OHM_NUMBER_SIZE];
  ohm_number_print((double)index + 1, label, sizeof label);
  shell_svg_line(&chart->svg, "mark", x_of(chart, at_c - half_k), y, x_of(chart, at_c + half_k), y);
  shell_svg_line(&chart->svg, "mark", x, y_of(chart, least_ohm), x, y_of(chart, r_ohm + half_ohm));
  shell_svg_circle(&chart->svg, "mark", x, y, 9);
  shell_svg_text(&chart->svg, "label", SHELL_SVG_START, x + 13, y - 11, label);
}

static void draw_legend(struct chart *chart, bool band, bool points) {
  double y = HEIGHT - 50;
  double x = LEFT;
  shell_svg_line(&chart->svg, "curve", x, y, x + 34, y);
  shell_svg_text(&chart->svg, "small", SHELL_SVG_START, x + 42, y + 5, "nominal");
  x += 130;
  if (points) {
    shell_svg_circle(&chart->svg, "point", x + 17, y, 4);
    shell_svg_text(&chart->svg, "small", SHELL_SVG_START, x + 32, y + 5, "printed");
    x += 120;
  }
  if (band) {
    shell_svg_rectangle(&chart->svg, "band", x, y - 8, 34, 16);
    shell_svg_text(&chart->svg, "small", SHELL_SVG_START, x + 42, y + 5, "allowed");
    x += 130;
  }
  if (reading_count(chart) > 0) {
    shell_svg_circle(&chart->svg, "mark", x + 12, y, 9);
    shell_svg_text(&chart->svg, "small", SHELL_SVG_START, x + 30, y + 5,
                   "your readings, as wide and high as they are sure");
  }
}

/* ---- the same in words ---- */

struct words {
  char *buffer;
  size_t size;
};

static void say(struct words *words, const char *text) {
  size_t length = strlen(words->buffer);
  if (length + strlen(text) < words->size)
    strcpy(words->buffer + length, text);
}

static void say_ohms(struct words *words, double r_ohm) {
  char text[OHM_NUMBER_SIZE];
  ohm_resistance_print(r_ohm, 4, text, sizeof text);
  say(words, text);
}

static void say_celsius(struct words *words, double t_c) {
  char text[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, fabs(t_c - round(t_c)) < 1e-6 ? 0 : 1, text, sizeof text);
  say(words, text);
  say(words, " C");
}

static void describe(const struct chart *chart, struct words *words) {
  say(words, "Resistance against temperature of ");
  say(words, ohm_sensor_description(chart->sensor));
  say(words, ".\n");
  for (double t_c = ceil(chart->low_c / 10) * 10; t_c <= chart->high_c + 1e-9; t_c += 10) {
    double ohms[3];
    ohm_status limits = ohm_sensor_band(chart->sensor, t_c, &ohms[0], &ohms[1], &ohms[2]);
    if (isnan(ohms[1]))
      continue;
    say_celsius(words, t_c + 0.0);
    say(words, ": ");
    say_ohms(words, ohms[1]);
    if (limits == OHM_OK) {
      say(words, ", allowed ");
      say_ohms(words, ohms[0]);
      say(words, " to ");
      say_ohms(words, ohms[2]);
    }
    say(words, ".\n");
  }
  for (size_t i = 0; i < reading_count(chart); i++) {
    const ohm_finding *finding = reading_at(chart, i);
    say(words, "Reading at ");
    say_celsius(words, ohm_finding_number(finding, OHM_FIELD_AT_C));
    say(words, ": ");
    say(words, ohm_finding_text(finding, OHM_FIELD_READ, 0));
    say(words, ".\n");
  }
}

static void draw(struct chart *chart, FILE *file) {
  char text[TEXT_SIZE] = "";
  struct words words = {text, sizeof text};
  describe(chart, &words);
  shell_svg_begin(&chart->svg, file, WIDTH, HEIGHT, style, ohm_sensor_name(chart->sensor), text);
  shell_svg_rectangle(&chart->svg, "paper", 0, 0, WIDTH, HEIGHT);
  shell_svg_text(&chart->svg, "name", SHELL_SVG_START, LEFT, 38, ohm_sensor_name(chart->sensor));
  shell_svg_text(&chart->svg, "label", SHELL_SVG_START, LEFT, 64,
                 ohm_sensor_description(chart->sensor));
  bool band = draw_band(chart);
  draw_temperatures(chart);
  draw_resistances(chart);
  draw_fan(chart);
  draw_curve(chart);
  bool points = draw_points(chart);
  for (size_t i = 0; i < reading_count(chart); i++)
    draw_reading(chart, i);
  shell_svg_line(&chart->svg, "axis", LEFT, TOP, LEFT, HEIGHT - BOTTOM);
  shell_svg_line(&chart->svg, "axis", LEFT, HEIGHT - BOTTOM, WIDTH - RIGHT, HEIGHT - BOTTOM);
  draw_legend(chart, band, points);
  shell_svg_text(
      &chart->svg, "small", SHELL_SVG_START, LEFT, HEIGHT - 18,
      "Key off, blades clear: unplugging this sensor starts many fans. Hot coolant scalds.");
  shell_svg_end(&chart->svg);
}

/* ---- the verb ---- */

static int write_to(struct chart *chart, const char *path) {
  FILE *file = strcmp(path, "-") == 0 ? stdout : fopen(path, "w");
  if (!file)
    return shell_refuse(SHELL_EXIT_OUTPUT, "%s cannot be written: %s", path, strerror(errno));
  draw(chart, file);
  bool failed = ferror(file) != 0;
  if (file != stdout)
    failed = fclose(file) != 0 || failed;
  return failed ? shell_refuse(SHELL_EXIT_OUTPUT, "%s could not be written to its end", path)
                : SHELL_EXIT_DONE;
}

/* As a setting is read, and from there. */
static int read_fan(const char *text, ohm_bench *bench, double *fan_c) {
  ohm_error error;
  *fan_c = NAN;
  if (!text)
    return SHELL_EXIT_DONE;
  if (ohm_bench_set(bench, OHM_SETTING_FAN_C, text, &error) != OHM_OK)
    return shell_bench_refuse(bench, &error);
  ohm_temperature_read(text, fan_c, NULL);
  return SHELL_EXIT_DONE;
}

static int picture(const struct shell_arguments *arguments, const ohm_sensor *sensor,
                   ohm_bench *bench) {
  struct chart chart = {.sensor = sensor};
  ohm_error error;
  const char *path = arguments->values[SHELL_OPTION_OUTPUT];
  int status = read_fan(arguments->values[SHELL_OPTION_FAN], bench, &chart.fan_c);
  if (status == SHELL_EXIT_DONE)
    status = shell_bench_read_ohms(bench, arguments, 1);
  if (status != SHELL_EXIT_DONE)
    return status;
  ohm_answer *answer = arguments->count > 1 ? ohm_bench_check(bench, &error) : NULL;
  if (arguments->count > 1 && !answer)
    return shell_bench_refuse(bench, &error);
  chart.answer = answer;
  set_out(&chart);
  status = write_to(&chart, path ? path : "-");
  ohm_answer_free(answer);
  return status;
}

int shell_chart_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = picture(arguments, sensor, bench);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status;
}
