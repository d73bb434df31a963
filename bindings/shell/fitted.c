/* SPDX-License-Identifier: MIT */
#include "fitted.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "screen.h"

enum { LABEL = 12, CELL = 12, VALUE = 26, SMALL_SIZE = 32, SENTENCE_SIZE = 400 };

/* Chance below which points are said to disagree, and above which to agree too well. */
static const double rarely = 0.05;
static const double nearly_always = 0.95;

static const struct {
  const char *model;
  const char *equation;
} equations[] = {
    {"beta", "1/T = 1/T0 + ln(R/R0) / beta"},
    {"steinhart-hart", "1/T = a + b ln(R) + c ln(R)^3"},
    {"four-term", "1/T = a1 + b1 L + c1 L^2 + d1 L^3, L = ln(R/Rref)"},
};

static const char *equation_of(const char *model) {
  size_t i = 0;
  while (strcmp(equations[i].model, model) != 0)
    i++;
  return equations[i].equation;
}

static void write_labelled(const char *label, const char *text) {
  fputs(label, stdout);
  shell_screen_pad(label, LABEL);
  shell_screen_wrap(LABEL, text);
}

/* Two digits are enough of what is not known. */
static void print_small(double value, char text[SMALL_SIZE]) {
  snprintf(text, SMALL_SIZE, "%.2g", value);
}

/* ---- coefficients ---- */

static bool is_chosen(const char *parameter) {
  return strcmp(parameter, "t0_c") == 0 || strcmp(parameter, "r_ref_ohm") == 0;
}

/* Covariance and correlation of two that were fitted. */
static bool goes_with(const ohm_fit *fit, size_t i, size_t j, double *covariance,
                      double *correlation) {
  return !is_chosen(ohm_fit_parameter_name(fit, i)) && !is_chosen(ohm_fit_parameter_name(fit, j)) &&
         ohm_fit_covariance(fit, i, j, covariance, correlation) == OHM_OK;
}

static void write_coefficients(const ohm_fit *fit) {
  const char *name;
  printf("%-*s%-*s%s\n", LABEL, "coefficient", VALUE, "", "standard uncertainty");
  for (size_t i = 0; (name = ohm_fit_parameter_name(fit, i)); i++) {
    ohm_estimate parameter;
    char u[SMALL_SIZE] = "not known";
    ohm_fit_parameter(fit, i, &parameter);
    if (parameter.u > 0)
      print_small(parameter.u, u);
    printf("%-*s%-*.17g%s\n", LABEL, name, VALUE, parameter.value, is_chosen(name) ? "chosen" : u);
  }
}

static void write_correlations(const ohm_fit *fit) {
  const char *label = "correlation";
  for (size_t i = 0; ohm_fit_parameter_name(fit, i); i++)
    for (size_t j = i + 1; ohm_fit_parameter_name(fit, j); j++) {
      double correlation;
      char pair[SMALL_SIZE];
      if (!goes_with(fit, i, j, NULL, &correlation))
        continue;
      snprintf(pair, sizeof pair, "%s, %s", ohm_fit_parameter_name(fit, i),
               ohm_fit_parameter_name(fit, j));
      printf("%-*s%-*s%.8f\n", LABEL, label, VALUE, pair, correlation);
      label = "";
    }
}

/* ---- points ---- */

static void print_kelvin(double value, char text[SMALL_SIZE]) {
  ohm_number_print_fixed(fabs(value) < 0.00005 ? 0 : value, 4, text, SMALL_SIZE);
}

static void write_points(const struct shell_fitted *fitted) {
  printf("%6s%*s%*s%*s\n", "point", CELL, "ohms", CELL, "at", CELL + 5, "fit less point");
  for (size_t i = 0; i < fitted->points->count; i++) {
    const ohm_fit_point *point = &fitted->points->list[i];
    char ohms[SHELL_CELL_SIZE], degrees[SHELL_CELL_SIZE], rest[SMALL_SIZE];
    ohm_resistance_print(point->r_ohm, 5, ohms, sizeof ohms);
    shell_temperature_print(point->t_c, 2, degrees);
    print_kelvin(ohm_fit_residual_k(fitted->fit, i), rest);
    printf("%6zu%*s%*s%*s K\n", i + 1, CELL, ohms, CELL, degrees, CELL + 3, rest);
  }
}

/* ---- how good it is ---- */

static void print_chance(double probability, char text[SMALL_SIZE]) {
  if (probability < 1e-4)
    snprintf(text, SMALL_SIZE, "less than 0.01 %%");
  else
    snprintf(text, SMALL_SIZE, "%.2g %%", 100 * probability);
}

static void write_agreement_of_known(const ohm_fit *fit) {
  double probability;
  char chance[SMALL_SIZE], text[SENTENCE_SIZE];
  if (ohm_fit_chi_square(fit, NULL, &probability) != OHM_OK) {
    write_labelled("agreement", "not known: the curve goes through every point, because there are "
                                "only as many as coefficients; give more points");
    return;
  }
  print_chance(probability < rarely ? probability : 1 - probability, chance);
  if (probability < rarely)
    snprintf(
        text, sizeof text,
        "the points disagree by more than they claim: chance alone would do as badly in %s of "
        "such fits; the model does not follow them, or their limits are too small; until that is "
        "settled, believe no interval",
        chance);
  else if (probability > nearly_always)
    snprintf(text, sizeof text,
             "the points agree better than they claim: chance alone would do as well in %s of such "
             "fits; their limits are too large, or the points come from one curve",
             chance);
  else
    snprintf(text, sizeof text, "the points agree with each other as well as they claim");
  write_labelled("agreement", text);
}

static void write_agreement(const ohm_fit *fit) {
  double scatter_k = ohm_fit_scatter_k(fit);
  char scatter[SMALL_SIZE], text[SENTENCE_SIZE];
  if (ohm_fit_basis_of(fit) == OHM_FIT_KNOWN) {
    write_agreement_of_known(fit);
    return;
  }
  if (isnan(scatter_k)) {
    write_labelled("agreement", "not known: the curve goes through every point");
    return;
  }
  print_small(scatter_k, scatter);
  snprintf(text, sizeof text,
           "the points lie about the fit by %s K, what the model cannot follow among it; how well "
           "they should agree was not told",
           scatter);
  write_labelled("agreement", text);
}

static void write_misfit(const ohm_fit *fit) {
  double misfit_k = ohm_fit_misfit_k(fit);
  char misfit[SMALL_SIZE], text[SENTENCE_SIZE];
  print_small(misfit_k, misfit);
  if (isnan(misfit_k))
    snprintf(text, sizeof text, "not known: it takes more points than coefficients, with limits");
  else if (misfit_k > 0)
    snprintf(text, sizeof text,
             "%s K more at every point than they claim would explain it; it is in no other figure "
             "here",
             misfit);
  else
    snprintf(text, sizeof text, "none seen: the points claim no less than they lie off the curve");
  write_labelled("misfit", text);
}

static bool reaches_beyond(const struct shell_points *points, double low_c, double high_c) {
  double least_c = INFINITY;
  double most_c = -INFINITY;
  for (size_t i = 0; i < points->count; i++) {
    least_c = fmin(least_c, points->list[i].t_c);
    most_c = fmax(most_c, points->list[i].t_c);
  }
  return low_c < least_c || most_c < high_c;
}

static void write_range(const struct shell_fitted *fitted) {
  double low_c, high_c, at_low_ohm, at_high_ohm;
  char low[OHM_NUMBER_SIZE], high[OHM_NUMBER_SIZE], text[SENTENCE_SIZE];
  char at_low[OHM_NUMBER_SIZE], at_high[OHM_NUMBER_SIZE];
  ohm_curve_range(ohm_fit_curve(fitted->fit), &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  ohm_number_print(low_c, low, sizeof low);
  ohm_number_print(high_c, high, sizeof high);
  ohm_resistance_print(at_low_ohm, 4, at_low, sizeof at_low);
  ohm_resistance_print(at_high_ohm, 4, at_high, sizeof at_high);
  snprintf(text, sizeof text, "%s C (%s) to %s C (%s)%s", low, at_low, high, at_high,
           reaches_beyond(fitted->points, low_c, high_c)
               ? "; beyond the points nothing shows whether the model still holds"
               : "");
  write_labelled("range", text);
}

static void write_answers(const struct shell_fitted *fitted) {
  const char *label = "\nmeans";
  for (size_t i = 0; i < fitted->answer_count; i++) {
    const struct shell_answered *answer = &fitted->answers[i];
    char ohms[SHELL_CELL_SIZE], degrees[SHELL_CELL_SIZE], half[SMALL_SIZE];
    ohm_resistance_print(answer->r_ohm, 5, ohms, sizeof ohms);
    shell_temperature_print(answer->t_c.value, 4, degrees);
    print_small(answer->expanded_k, half);
    printf("%-*s%-*s%s", LABEL + (label[0] == '\n'), label, CELL, ohms, degrees);
    if (!isnan(answer->expanded_k))
      printf(", give or take %s K (19 times in 20)", half);
    putchar('\n');
    label = "";
  }
  if (fitted->answer_count > 0 && ohm_fit_basis_of(fitted->fit) != OHM_FIT_NO_INTERVAL)
    write_labelled("", "by the points alone; what the reading leaves open comes on top");
}

void shell_fitted_write_screen(const struct shell_fitted *fitted) {
  printf("%s, %zu points\n%s; T in kelvin, R in ohm\n\n", fitted->model, fitted->points->count,
         equation_of(fitted->model));
  write_coefficients(fitted->fit);
  write_correlations(fitted->fit);
  putchar('\n');
  write_points(fitted);
  putchar('\n');
  write_range(fitted);
  write_agreement(fitted->fit);
  write_misfit(fitted->fit);
  write_labelled("sureness", ohm_fit_basis_text(ohm_fit_basis_of(fitted->fit)));
  write_answers(fitted);
}

/* ---- JSON ---- */

static const char *basis_name(int basis) {
  return basis == OHM_FIT_KNOWN ? "known" : basis == OHM_FIT_SCATTER ? "scatter" : "no_interval";
}

static void write_json_parameters(struct shell_json *json, const ohm_fit *fit) {
  const char *name;
  for (size_t i = 0; (name = ohm_fit_parameter_name(fit, i)); i++) {
    ohm_estimate parameter;
    char key[SMALL_SIZE];
    ohm_fit_parameter(fit, i, &parameter);
    shell_json_number(json, name, parameter.value);
    snprintf(key, sizeof key, "u_%s", name);
    shell_json_number(json, key, parameter.u);
  }
  for (size_t i = 0; ohm_fit_parameter_name(fit, i); i++)
    for (size_t j = i + 1; (name = ohm_fit_parameter_name(fit, j)); j++) {
      double covariance;
      char key[2 * SMALL_SIZE];
      if (!goes_with(fit, i, j, &covariance, NULL))
        continue;
      snprintf(key, sizeof key, "covariance_%s_%s", ohm_fit_parameter_name(fit, i), name);
      shell_json_number(json, key, covariance);
    }
}

static void write_json_answers(struct shell_json *json, const struct shell_fitted *fitted) {
  if (fitted->answer_count == 0)
    return;
  shell_json_list_begin(json, "r_ohm");
  for (size_t i = 0; i < fitted->answer_count; i++)
    shell_json_list_number(json, fitted->answers[i].r_ohm);
  shell_json_list_end(json);
  shell_json_list_begin(json, "t_c");
  for (size_t i = 0; i < fitted->answer_count; i++)
    shell_json_list_number(json, fitted->answers[i].t_c.value);
  shell_json_list_end(json);
  if (ohm_fit_basis_of(fitted->fit) == OHM_FIT_NO_INTERVAL)
    return;
  shell_json_list_begin(json, "u_t_c");
  for (size_t i = 0; i < fitted->answer_count; i++)
    shell_json_list_number(json, fitted->answers[i].t_c.u);
  shell_json_list_end(json);
  shell_json_list_begin(json, "expanded_t_k");
  for (size_t i = 0; i < fitted->answer_count; i++)
    shell_json_list_number(json, fitted->answers[i].expanded_k);
  shell_json_list_end(json);
}

void shell_fitted_write_json(const struct shell_fitted *fitted) {
  struct shell_json json;
  double low_c, high_c, chi_square, probability;
  const ohm_fit *fit = fitted->fit;
  ohm_curve_range(ohm_fit_curve(fit), &low_c, &high_c, NULL, NULL);
  ohm_fit_chi_square(fit, &chi_square, &probability);
  shell_json_begin(&json, "fit");
  shell_json_text(&json, "model", fitted->model);
  write_json_parameters(&json, fit);
  shell_json_number(&json, "low_c", low_c);
  shell_json_number(&json, "high_c", high_c);
  shell_json_number(&json, "points", (double)fitted->points->count);
  shell_json_text(&json, "basis", basis_name(ohm_fit_basis_of(fit)));
  shell_json_number(&json, "degrees_of_freedom", (double)ohm_fit_degrees(fit));
  shell_json_number(&json, "chi_square", chi_square);
  shell_json_number(&json, "probability", probability);
  shell_json_number(&json, "scatter_k", ohm_fit_scatter_k(fit));
  shell_json_number(&json, "misfit_k", ohm_fit_misfit_k(fit));
  shell_json_list_begin(&json, "residual_k");
  for (size_t i = 0; i < fitted->points->count; i++)
    shell_json_list_number(&json, ohm_fit_residual_k(fit, i));
  shell_json_list_end(&json);
  write_json_answers(&json, fitted);
  shell_json_end(&json);
}
