/* SPDX-License-Identifier: MIT */
#include "notation.h"

#include <string.h>

#include "../evidence/meter.h"
#include "../ground/status.h"
#include "../ground/words.h"

struct unit {
  ohm_setting_kind kind;
  const char *name;
  double factor;
};

/* The first that fits is taken. Two characters are typed for micro. */
static const struct unit units[] = {
    {OHM_SETTING_KIND_DIFFERENCE, "K", 1},
    {OHM_SETTING_KIND_DIFFERENCE, "C", 1},
    {OHM_SETTING_KIND_DIFFERENCE, "F", 5.0 / 9},
    {OHM_SETTING_KIND_DIFFERENCE, "", 1},
    {OHM_SETTING_KIND_PERCENT, "%", 1},
    {OHM_SETTING_KIND_CURRENT, "mA", 1},
    {OHM_SETTING_KIND_CURRENT, "uA", 1e-3},
    {OHM_SETTING_KIND_CURRENT, "\xC2\xB5\x41", 1e-3},
    {OHM_SETTING_KIND_CURRENT, "\xCE\xBC\x41", 1e-3},
    {OHM_SETTING_KIND_CURRENT, "A", 1e3},
    {OHM_SETTING_KIND_HOURS, "h", 1},
    {OHM_SETTING_KIND_HOURS, "", 1},
    {OHM_SETTING_KIND_VOLTS, "mV", 1e-3},
    {OHM_SETTING_KIND_VOLTS, "V", 1},
    {OHM_SETTING_KIND_VOLTS, "", 1},
};

static bool take_unit(struct oc_words *words, const struct unit *unit) {
  return unit->name[0] ? oc_words_take(words, unit->name) : words->length == 0;
}

double oc_notation_amount(ohm_setting_kind kind, const char *text) {
  struct oc_words words = {text, strlen(text)};
  double value;
  if (!oc_words_number(&words, &value))
    return NAN;
  oc_words_skip(&words);
  for (size_t i = 0; i < sizeof units / sizeof units[0]; i++)
    if (units[i].kind == kind && take_unit(&words, &units[i]))
      return words.length == 0 ? value * units[i].factor : NAN;
  return NAN;
}

ohm_status oc_notation_thermometer(const char *text, oc_reference *reference, ohm_error *error) {
  ohm_status status = oc_reference_read(text, reference, error);
  if (status != OHM_OK || reference->kind == OHM_REFERENCE_THERMOMETER)
    return status;
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no temperature of a thermometer; ",
                       "write it as 9C or 9C+-2");
}

/* A number of hours, an h behind it or not. */
static bool take_hours(struct oc_words *words, double *hours) {
  if (!oc_words_number(words, hours))
    return false;
  oc_words_take(words, "h");
  return true;
}

ohm_status oc_notation_tau(const char *text, struct oc_span *tau, ohm_error *error) {
  struct oc_words words = {text, strlen(text)};
  *tau = (struct oc_span){NAN, NAN};
  if (take_hours(&words, &tau->low_h) && oc_words_take(&words, "-") &&
      take_hours(&words, &tau->high_h) && words.length == 0 && oc_span_is_usable(tau))
    return OHM_OK;
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " are no time constants; ",
                       "write the least and the greatest, above 0h and up to 1000h, such as 1h-4h");
}

static bool take_resistor(struct oc_words *words, double *r_ohm) {
  double quantum_ohm;
  return oc_words_resistance(words, r_ohm, &quantum_ohm) && 0 < *r_ohm && *r_ohm <= 1e7;
}

ohm_status oc_notation_drawer(const char *text, struct oc_drawer *drawer, ohm_error *error) {
  struct oc_words words = {text, strlen(text)};
  drawer->count = 0;
  do {
    if (drawer->count == OC_DRAWER_MAX)
      return oc_words_fail(error, OHM_TOO_LARGE, text, " are more than 64 values; ",
                           "write those that are near");
    if (!take_resistor(&words, &drawer->r_ohm[drawer->count]))
      return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no drawer of resistors; ",
                           "write values with commas between, such as 100,220,330,1k");
    drawer->count++;
  } while (oc_words_take(&words, ","));
  if (words.length == 0)
    return OHM_OK;
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no drawer of resistors; ",
                       "write values with commas between, such as 100,220,330,1k");
}
