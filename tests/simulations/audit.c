/* SPDX-License-Identifier: MIT */
/*
 * How often an audit errs, on tables of which all is known: thermistors of realistic
 * constants, 6 to 25 rows, printed to three digits, first clean, then with one misprint.
 * A misprint counts when it moves an inner row by more than four times what is left open
 * there: its rounding, and how far the curve through the other printed rows misses the
 * true value. Fails beyond 1 % false alarms, or below 95 % found.
 */
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"
#include "../draw.h"

enum { TABLES = 20000, ROWS_MIN = 6, ROWS_MOST = 25, DIGITS = 3 };

static const uint64_t SEED = 20240229;

/* ---- a table ---- */

struct table {
  size_t count;
  double t_c[ROWS_MOST];
  double true_ohm[ROWS_MOST];
  char printed[ROWS_MOST][OHM_NUMBER_SIZE];
};

/* A beta, or a Steinhart-Hart curve of the same slope with the cubic term that printed
 * data sheets have. */
static ohm_curve *random_curve(uint64_t *state, double low_c, double high_c) {
  double r25_ohm = exp(draw_between(state, log(100), log(100000)));
  double beta_k = draw_between(state, 3000, 4500);
  if (draw_below(state, 2) == 0)
    return ohm_curve_beta_new(r25_ohm, 25, beta_k, low_c, high_c, NULL);
  double c = draw_between(state, 2e-8, 2e-7);
  double ln = log(r25_ohm);
  double b = 1 / beta_k - 3 * c * ln * ln;
  double a = 1 / 298.15 - b * ln - c * ln * ln * ln;
  return ohm_curve_steinhart_hart_new(a, b, c, low_c, high_c, NULL);
}

/* Even steps, uneven ones, or any. */
static void random_temperatures(uint64_t *state, struct table *table) {
  static const double steps[] = {5, 10, 10, 20};
  double step = steps[draw_below(state, 4)];
  bool even = draw_below(state, 2) == 0;
  double t_c = -40 + 5 * (double)draw_below(state, 9);
  table->count = ROWS_MIN + draw_below(state, ROWS_MOST - ROWS_MIN + 1);
  for (size_t i = 0; i < table->count; i++) {
    table->t_c[i] = t_c;
    t_c += even ? step : step * (double)(1 + draw_below(state, 2));
    if (t_c > 150) {
      table->count = i + 1;
      return;
    }
  }
}

static void print_rounded(double r_ohm, char *text) {
  int decimals = DIGITS - 1 - (int)floor(log10(r_ohm));
  double scale = pow(10, decimals);
  ohm_number_print(decimals >= 0 ? rint(r_ohm * scale) / scale
                                 : rint(r_ohm * scale) * pow(10, -decimals),
                   text, OHM_NUMBER_SIZE);
}

static double printed_ohm(const struct table *table, size_t i) {
  double r_ohm;
  ohm_number_read(table->printed[i], strlen(table->printed[i]), &r_ohm);
  return r_ohm;
}

static bool falls(const struct table *table) {
  for (size_t i = 1; i < table->count; i++)
    if (!(printed_ohm(table, i) < printed_ohm(table, i - 1)))
      return false;
  return true;
}

static bool fill(uint64_t *state, struct table *table) {
  random_temperatures(state, table);
  if (table->count < ROWS_MIN)
    return false;
  ohm_curve *curve = random_curve(state, -41, 151);
  for (size_t i = 0; i < table->count && curve; i++) {
    ohm_curve_resistance(curve, table->t_c[i], &table->true_ohm[i]);
    print_rounded(table->true_ohm[i], table->printed[i]);
  }
  bool usable = curve && falls(table);
  ohm_curve_free(curve);
  return usable;
}

static ohm_audit *audit(const struct table *table) {
  char text[64 * (ROWS_MOST + 1)] = "temp_c,r_nom_ohm\n";
  size_t length = strlen(text);
  for (size_t i = 0; i < table->count; i++)
    length += (size_t)snprintf(text + length, sizeof text - length, "%g,%s\n", table->t_c[i],
                               table->printed[i]);
  return ohm_audit_parse(text, length, "table", NULL);
}

/* ---- a misprint ---- */

static void exchange(char *text, size_t i) {
  char digit = text[i];
  text[i] = text[i + 1];
  text[i + 1] = digit;
}

/* Another digit, two digits exchanged, one lost, one added, the point moved. */
static void slip(uint64_t *state, char *text) {
  size_t length = strlen(text);
  size_t i = draw_below(state, length);
  double value;
  switch (draw_below(state, 5)) {
  case 0:
    if (text[i] != '.')
      text[i] = (char)('0' + draw_below(state, 10));
    return;
  case 1:
    if (i + 1 < length)
      exchange(text, i);
    return;
  case 2:
    memmove(text + i, text + i + 1, length - i);
    return;
  case 3:
    memmove(text + i + 1, text + i, length - i + 1);
    text[i] = (char)('0' + draw_below(state, 10));
    return;
  default:
    ohm_number_read(text, length, &value);
    ohm_number_print(draw_below(state, 2) == 0 ? value * 10 : value / 10, text, OHM_NUMBER_SIZE);
  }
}

/* How far the curve through the other printed rows misses, relative. */
static double interpolation_error(const struct table *table, size_t without) {
  double t_c[ROWS_MOST];
  double r_ohm[ROWS_MOST];
  size_t count = 0;
  for (size_t i = 0; i < table->count; i++)
    if (i != without) {
      t_c[count] = table->t_c[i];
      r_ohm[count++] = printed_ohm(table, i);
    }
  ohm_curve *curve = ohm_curve_points_new(t_c, r_ohm, count, NULL);
  double led_ohm = NAN;
  ohm_curve_resistance(curve, table->t_c[without], &led_ohm);
  ohm_curve_free(curve);
  return fabs(led_ohm / table->true_ohm[without] - 1);
}

static double rounding(double r_ohm) {
  return pow(10, floor(log10(r_ohm)) - DIGITS + 1) / 2 / r_ohm;
}

/* ---- counting ---- */

struct counts {
  size_t tables;
  size_t alarms;    /* clean tables with a suspect */
  size_t misprints; /* that count */
  size_t found;
  size_t accused; /* another row and not the misprinted one */
  size_t besides; /* another row beside it */
  size_t meant;   /* found, and the figure suggested is the one that was meant */
};

static void count_clean(const struct table *table, struct counts *counts) {
  ohm_audit *found = audit(table);
  counts->tables++;
  counts->alarms += ohm_audit_count(found) > 0;
  ohm_audit_free(found);
}

static void count_misprinted(const struct table *table, size_t bad, const char *meant,
                             struct counts *counts) {
  ohm_audit *found = audit(table);
  bool right = false;
  bool wrong = false;
  bool named = false;
  for (size_t i = 0; i < ohm_audit_count(found); i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(found, i);
    bool this_row = suspect->line == (int)bad + 2;
    right |= this_row;
    wrong |= !this_row;
    named |= this_row && suspect->would_fit && strcmp(suspect->would_fit, meant) == 0;
  }
  counts->misprints++;
  counts->found += right;
  counts->accused += wrong && !right;
  counts->besides += wrong && right;
  counts->meant += named;
  ohm_audit_free(found);
}

static void misprint(uint64_t *state, struct table *table, struct counts *counts) {
  size_t bad = 1 + draw_below(state, table->count - 2);
  char meant[OHM_NUMBER_SIZE];
  strcpy(meant, table->printed[bad]);
  double open = rounding(table->true_ohm[bad]) + interpolation_error(table, bad);
  slip(state, table->printed[bad]);
  double moved = printed_ohm(table, bad) / table->true_ohm[bad];
  if (moved > 0 && fabs(log(moved)) > 4 * open)
    count_misprinted(table, bad, meant, counts);
}

static double percent(size_t part, size_t all) {
  return 100 * (double)part / (double)all;
}

int main(void) {
  uint64_t state = SEED;
  struct counts counts = {0};
  struct table table;
  for (size_t i = 0; i < TABLES; i++)
    if (fill(&state, &table)) {
      count_clean(&table, &counts);
      misprint(&state, &table, &counts);
    }
  printf("%zu clean tables of three digits: %zu with an alarm, %.2f %%\n", counts.tables,
         counts.alarms, percent(counts.alarms, counts.tables));
  printf("%zu misprints of inner rows beyond four times what is open: %zu found, %.2f %%\n",
         counts.misprints, counts.found, percent(counts.found, counts.misprints));
  printf("%zu times another row was accused instead, %zu times besides; "
         "%zu times the right figure was suggested\n",
         counts.accused, counts.besides, counts.meant);
  return percent(counts.alarms, counts.tables) < 1 &&
                 percent(counts.found, counts.misprints) >= 95 && counts.accused == 0
             ? EXIT_SUCCESS
             : EXIT_FAILURE;
}
