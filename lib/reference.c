/* SPDX-License-Identifier: MIT */
#include "reference.h"

#include <float.h>
#include <string.h>

#include "status.h"
#include "words.h"

static const double HOTTEST_C = 1000;

/* ---- notations ---- */

enum unit { UNIT_NONE, UNIT_C, UNIT_F, UNIT_K };

static enum unit take_unit(struct ohm_words *words) {
  ohm_words_take(words, "\xC2\xB0");
  if (ohm_words_take(words, "C") || ohm_words_take(words, "c"))
    return UNIT_C;
  if (ohm_words_take(words, "F") || ohm_words_take(words, "f"))
    return UNIT_F;
  if (ohm_words_take(words, "K"))
    return UNIT_K;
  return UNIT_NONE;
}

static double celsius_of(double value, enum unit unit) {
  if (unit == UNIT_F)
    return (value - 32) * 5 / 9;
  return unit == UNIT_K ? ohm_celsius(value) : value;
}

static ohm_status fail_temperature(const char *text, enum unit unit, bool has_number,
                                   ohm_error *error) {
  if (has_number && unit == UNIT_NONE)
    return ohm_words_fail(error, OHM_BAD_SYNTAX, text, " has no unit; ",
                          "write C, F or K after the number, such as 21.5C");
  return ohm_words_fail(error, OHM_BAD_SYNTAX, text, " is no temperature; ",
                        "write it as 21.5C, 70F or 294.7K");
}

static ohm_status check_range(const char *text, double t_c, ohm_error *error) {
  if (OHM_ZERO_C < t_c && t_c <= HOTTEST_C)
    return OHM_OK;
  return ohm_words_fail(error, OHM_OUT_OF_RANGE, text, " is no temperature of a sensor; ",
                        "write one above -273.15C and up to 1000C");
}

ohm_status ohm_temperature_read(const char *text, double *t_c, ohm_error *error) {
  ohm_error_clear(error);
  if (t_c)
    *t_c = NAN;
  if (!text || !t_c)
    return ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT),
                    (const char *)NULL);
  struct ohm_words words = {text, strlen(text)};
  double value;
  bool has_number = ohm_words_number(&words, &value);
  enum unit unit = has_number ? take_unit(&words) : UNIT_NONE;
  if (unit == UNIT_NONE || words.length > 0)
    return fail_temperature(text, unit, has_number && words.length == 0, error);
  ohm_status status = check_range(text, celsius_of(value, unit), error);
  if (status == OHM_OK)
    *t_c = celsius_of(value, unit);
  return status;
}

/* "+-1", "+-1C" at the end of a reference. */
static bool take_limit(struct ohm_words *words, enum unit unit, ohm_reference *reference) {
  double limit;
  if (!ohm_words_take_plus_minus(words))
    return true;
  if (!ohm_words_number(words, &limit))
    return false;
  enum unit own = take_unit(words);
  unit = own == UNIT_NONE ? unit : own;
  reference->accuracy = OHM_STATED;
  reference->limit_k = unit == UNIT_F ? limit * 5 / 9 : limit;
  return true;
}

ohm_status ohm_reference_read(const char *text, ohm_reference *reference, ohm_error *error) {
  ohm_error_clear(error);
  if (!text || !reference)
    return ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT),
                    (const char *)NULL);
  ohm_reference read = OHM_REFERENCE_INIT;
  *reference = read;
  reference->t_c = NAN;
  struct ohm_words words = {text, strlen(text)};
  enum unit unit = UNIT_C;
  bool has_number = false;
  if (ohm_words_take(&words, "ice")) {
    read.kind = OHM_REFERENCE_ICE;
  } else {
    double value;
    has_number = ohm_words_number(&words, &value);
    unit = has_number ? take_unit(&words) : UNIT_NONE;
    if (unit != UNIT_NONE)
      read.t_c = celsius_of(value, unit);
  }
  bool no_unit = unit == UNIT_NONE;
  if (!take_limit(&words, unit, &read) || no_unit || words.length > 0)
    return has_number ? fail_temperature(text, unit, words.length == 0, error)
                      : ohm_words_fail(error, OHM_BAD_SYNTAX, text, " is no temperature; ",
                                       "write it as 21.5C, 70F, 294.7K, 21.5C+-1 or ice");
  ohm_status status = check_range(text, read.t_c, error);
  if (status == OHM_OK && !ohm_inside(0, read.limit_k, HOTTEST_C))
    status = ohm_words_fail(error, OHM_OUT_OF_RANGE, text, " has a limit that is none; ",
                            "write 0 to 1000 after +-");
  if (status == OHM_OK)
    *reference = read;
  return status;
}

/* ---- error of a reference ---- */

static bool is_amount(double x) {
  return ohm_inside(0, x, DBL_MAX);
}

static bool is_reference(const ohm_reference *reference) {
  return reference->size >= sizeof *reference &&
         ohm_inside(OHM_REFERENCE_THERMOMETER, reference->kind, OHM_REFERENCE_ICE) &&
         isfinite(reference->t_c) && ohm_inside(OHM_ASSUMED, reference->accuracy, OHM_EXACT) &&
         is_amount(reference->limit_k) && is_amount(reference->u_k);
}

ohm_status ohm_reference_budget(const ohm_reference *reference, struct ohm_budget *budget,
                                bool *assumed) {
  if (!reference)
    return OHM_NULL_ARGUMENT;
  if (!is_reference(reference))
    return OHM_BAD_ARGUMENT;
  bool ice = reference->kind == OHM_REFERENCE_ICE;
  double t_c = ice ? 0 : reference->t_c;
  if (!(OHM_ZERO_C < t_c && t_c <= HOTTEST_C))
    return OHM_OUT_OF_RANGE;
  *budget = ohm_budget_of(t_c);
  *assumed = reference->accuracy == OHM_ASSUMED;
  if (*assumed)
    ohm_budget_add_limit(budget, OHM_CAUSE_REFERENCE_LIMIT,
                         ice ? OHM_ASSUMED_ICE_LIMIT_K : OHM_ASSUMED_THERMOMETER_LIMIT_K);
  if (reference->accuracy == OHM_STATED) {
    ohm_budget_add_limit(budget, OHM_CAUSE_REFERENCE_LIMIT, reference->limit_k);
    ohm_budget_add_normal(budget, OHM_CAUSE_REFERENCE_NOISE, reference->u_k);
  }
  return OHM_OK;
}
