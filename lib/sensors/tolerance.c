/* SPDX-License-Identifier: MIT */
#include "tolerance.h"

#include <float.h>
#include <string.h>

#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/words.h"

/* ---- limits ---- */

/* Where both limits are one figure, the product of roots may miss it by a last digit. */
double oc_row_nominal(const ohm_sensor_row *row) {
  if (!isnan(row->nominal_ohm))
    return row->nominal_ohm;
  return fmin(fmax(row->min_ohm, sqrt(row->min_ohm) * sqrt(row->max_ohm)), row->max_ohm);
}

bool oc_row_has_limits(const ohm_sensor_row *row) {
  return row->min_ohm <= row->max_ohm;
}

/* The rows with limits on either side of a temperature; the same one twice when it
 * is the temperature of a row, or lies beyond the first or last. */
static void rows_about(const struct oc_tolerance *tolerance, double t_c,
                       const ohm_sensor_row **below, const ohm_sensor_row **above) {
  *below = NULL;
  *above = NULL;
  for (size_t i = 0; i < tolerance->row_count; i++) {
    const ohm_sensor_row *row = &tolerance->rows[i];
    if (!oc_row_has_limits(row))
      continue;
    if (row->t_c <= t_c)
      *below = row;
    if (row->t_c >= t_c && !*above)
      *above = row;
  }
  if (!*below)
    *below = *above;
  if (!*above)
    *above = *below;
}

ohm_status oc_tolerance_covers(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                               double t_c) {
  double low_c;
  double high_c;
  ohm_curve_range(curve, &low_c, &high_c, NULL, NULL);
  if (!oc_inside(low_c, t_c, high_c))
    return OHM_OUT_OF_RANGE;
  if (tolerance->kind == OC_TOLERANCE_NONE)
    return OHM_NOT_FOUND;
  if (tolerance->kind != OC_TOLERANCE_ROWS)
    return OHM_OK;
  const ohm_sensor_row *below;
  const ohm_sensor_row *above;
  rows_about(tolerance, t_c, &below, &above);
  return oc_inside(below->t_c, t_c, above->t_c) ? OHM_OK : OHM_OUT_OF_RANGE;
}

/* ln of the nominal at a row; a maker's row may lie so far beyond the curve that no double
 * holds it. */
static double ln_nominal(const ohm_curve *curve, const ohm_sensor_row *row) {
  return log(fmin(fmax(DBL_TRUE_MIN, oc_curve_resistance_beyond(curve, row->t_c)), DBL_MAX));
}

static struct oc_band band_of_rows(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                                   double t_c, double nominal_ohm) {
  const ohm_sensor_row *below;
  const ohm_sensor_row *above;
  rows_about(tolerance, t_c, &below, &above);
  /* What is printed is what is allowed, to the last digit. */
  if (t_c == below->t_c)
    return (struct oc_band){below->min_ohm, nominal_ohm, below->max_ohm};
  if (t_c == above->t_c)
    return (struct oc_band){above->min_ohm, nominal_ohm, above->max_ohm};
  double part = 0;
  if (below != above) {
    double y_below = 1 / oc_kelvin(below->t_c);
    part = (1 / oc_kelvin(t_c) - y_below) / (1 / oc_kelvin(above->t_c) - y_below);
  }
  double ln_below = ln_nominal(curve, below);
  double ln_above = ln_nominal(curve, above);
  double down =
      (1 - part) * (ln_below - log(below->min_ohm)) + part * (ln_above - log(above->min_ohm));
  double up =
      (1 - part) * (log(below->max_ohm) - ln_below) + part * (log(above->max_ohm) - ln_above);
  return (struct oc_band){nominal_ohm * exp(-down), nominal_ohm, nominal_ohm * exp(up)};
}

/* Percent at one temperature widens away from it by beta_percent of ln(R/R there):
 * R = R0 exp(B (1/T - 1/T0)) gives dR/R = (1/T - 1/T0) dB = ln(R/R0) dB/B. */
static struct oc_band band_of_percent(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                                      double nominal_ohm) {
  /* At absolute zero and below, where a coarse thermometer may reach. */
  if (isinf(nominal_ohm))
    return (struct oc_band){nominal_ohm, nominal_ohm, nominal_ohm};
  double part = tolerance->percent / 100;
  double widening = 1;
  if (tolerance->kind == OC_TOLERANCE_BETA) {
    double there_ohm = oc_curve_resistance_beyond(curve, tolerance->at_c);
    widening = exp(tolerance->beta_percent / 100 * fabs(log(nominal_ohm / there_ohm)));
  }
  return (struct oc_band){nominal_ohm * (1 - part) / widening, nominal_ohm,
                          nominal_ohm * (1 + part) * widening};
}

struct oc_band oc_tolerance_band(const ohm_curve *curve, const struct oc_tolerance *tolerance,
                                 double t_c) {
  double nominal_ohm = oc_curve_resistance_beyond(curve, t_c);
  if (tolerance->kind == OC_TOLERANCE_ROWS)
    return band_of_rows(curve, tolerance, t_c, nominal_ohm);
  if (tolerance->kind == OC_TOLERANCE_KELVIN) {
    double half_k = tolerance->kelvin + tolerance->kelvin_per_c * fabs(t_c);
    double colder_ohm = oc_curve_resistance_beyond(curve, t_c - half_k);
    double hotter_ohm = oc_curve_resistance_beyond(curve, t_c + half_k);
    /* Where a curve is almost flat or upright, the last digits of the three may cross. */
    return (struct oc_band){fmin(nominal_ohm, fmin(colder_ohm, hotter_ohm)), nominal_ohm,
                            fmax(nominal_ohm, fmax(colder_ohm, hotter_ohm))};
  }
  return band_of_percent(curve, tolerance, nominal_ohm);
}

struct oc_tolerance oc_tolerance_of_maker(const struct oc_maker_band *band) {
  return (struct oc_tolerance){
      .kind = OC_TOLERANCE_ROWS, .rows = band->rows, .row_count = band->row_count};
}

/* ---- notation ---- */

static bool take_percent(struct oc_words *words, double *percent) {
  return oc_words_number(words, percent) && oc_words_take(words, "%");
}

/* "1 % at 25 C, beta 0.75 %", after the percent sign. */
static bool take_beta(struct oc_words *words, struct oc_tolerance *tolerance) {
  tolerance->kind = OC_TOLERANCE_BETA;
  return oc_words_number(words, &tolerance->at_c) && oc_words_take(words, "C") &&
         oc_words_take(words, ",") && oc_words_take(words, "beta") &&
         take_percent(words, &tolerance->beta_percent);
}

/* "class B" of IEC 60751. Longer names first: A begins AA. */
static bool take_class(struct oc_words *words, struct oc_tolerance *tolerance) {
  static const struct {
    const char *name;
    double kelvin;
    double kelvin_per_c;
  } classes[] = {{"AA", 0.1, 0.0017}, {"A", 0.15, 0.002}, {"B", 0.3, 0.005}, {"C", 0.6, 0.01}};
  for (size_t i = 0; i < sizeof classes / sizeof classes[0]; i++)
    if (oc_words_take(words, classes[i].name)) {
      tolerance->kind = OC_TOLERANCE_KELVIN;
      tolerance->kelvin = classes[i].kelvin;
      tolerance->kelvin_per_c = classes[i].kelvin_per_c;
      return true;
    }
  return false;
}

static bool take_tolerance(struct oc_words *words, struct oc_tolerance *tolerance) {
  double first;
  if (oc_words_take(words, "class"))
    return take_class(words, tolerance);
  if (!oc_words_number(words, &first))
    return false;
  if (oc_words_take(words, "%")) {
    tolerance->kind = OC_TOLERANCE_PERCENT;
    tolerance->percent = first;
    return !oc_words_take(words, "at") || take_beta(words, tolerance);
  }
  tolerance->kind = OC_TOLERANCE_KELVIN;
  tolerance->kelvin = first;
  if (!oc_words_take(words, "K"))
    return false;
  return !oc_words_take(words, "+") ||
         (oc_words_number(words, &tolerance->kelvin_per_c) && oc_words_take(words, "|t|"));
}

static bool is_allowed(const struct oc_tolerance *tolerance) {
  bool parts = oc_inside(0, tolerance->percent, 99.999) &&
               oc_inside(0, tolerance->beta_percent, 99.999) &&
               oc_inside(0, tolerance->kelvin, 1000) && oc_inside(0, tolerance->kelvin_per_c, 1) &&
               OC_ZERO_C < tolerance->at_c && tolerance->at_c <= 1000;
  return parts && (tolerance->percent > 0 || tolerance->beta_percent > 0 || tolerance->kelvin > 0 ||
                   tolerance->kelvin_per_c > 0);
}

ohm_status oc_tolerance_scan(const char *text, size_t length, struct oc_tolerance *tolerance) {
  struct oc_words words = {text, length};
  struct oc_tolerance read = {0};
  if (!take_tolerance(&words, &read) || words.length > 0)
    return OHM_BAD_SYNTAX;
  if (!is_allowed(&read))
    return OHM_OUT_OF_RANGE;
  *tolerance = read;
  return OHM_OK;
}

void oc_tolerance_add(struct oc_text *text, const struct oc_tolerance *tolerance) {
  if (tolerance->kind == OC_TOLERANCE_KELVIN) {
    oc_text_add_number(text, tolerance->kelvin);
    oc_text_add(text, " K");
    if (tolerance->kelvin_per_c > 0) {
      oc_text_add(text, " + ");
      oc_text_add_number(text, tolerance->kelvin_per_c);
      oc_text_add(text, " |t|");
    }
    return;
  }
  oc_text_add_number(text, tolerance->percent);
  oc_text_add(text, " %");
  if (tolerance->kind == OC_TOLERANCE_BETA) {
    oc_text_add(text, " at ");
    oc_text_add_number(text, tolerance->at_c);
    oc_text_add(text, " C, beta ");
    oc_text_add_number(text, tolerance->beta_percent);
    oc_text_add(text, " %");
  }
}

ohm_status oc_tolerance_read(const char *text, double *percent, ohm_error *error) {
  oc_error_clear(error);
  if (percent)
    *percent = NAN;
  if (!text || !percent)
    return oc_fail_null(error);
  struct oc_words words = {text, strlen(text)};
  double read;
  if (!take_percent(&words, &read) || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no tolerance; write percent of ",
                         "resistance, such as 5%");
  if (!(0 < read && read < 100))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no tolerance; write more than 0% ",
                         "and less than 100%");
  *percent = read;
  return OHM_OK;
}
