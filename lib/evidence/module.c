/* SPDX-License-Identifier: MIT */
#include "module.h"

#include <string.h>

#include "meter.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/words.h"

static const double LEAST_PULL_UP_OHM = 1;
static const double GREATEST_PULL_UP_OHM = 1e7;
static const double GREATEST_PULL_UP_PERCENT = 50;
static const double LEAST_SUPPLY_VOLT = 0.5;
static const double GREATEST_VOLT = 30;
static const double COLDEST_REPORT_C = -60;
static const double HOTTEST_REPORT_C = 300;
static const double GREATEST_REPORT_K = 20;
static const double KELVIN_PER_F = 5.0 / 9;
/* SAE J1979: one byte, A - 40. */
static const double BYTE_LOW_C = -40;
static const double BYTE_HIGH_C = 215;

/* ---- notations ---- */

/* Celsius or Fahrenheit; the factor makes kelvin of a difference in it, 0 for neither. */
static double take_degrees(struct oc_words *words) {
  oc_words_take(words, "\xC2\xB0");
  if (oc_words_take(words, "C") || oc_words_take(words, "c"))
    return 1;
  return oc_words_take(words, "F") || oc_words_take(words, "f") ? KELVIN_PER_F : 0;
}

static double celsius_of(double value, double factor) {
  return factor == 1 ? value : (value - 32) * factor;
}

/* 10k,1k@50C */
static bool take_pull_ups(struct oc_words *words, oc_module *module) {
  double quantum_ohm;
  module->hot_pull_up_ohm = 0;
  module->changeover_c = 0;
  if (!oc_words_resistance(words, &module->pull_up_ohm, &quantum_ohm))
    return false;
  if (!oc_words_take(words, ","))
    return true;
  double value;
  if (!oc_words_resistance(words, &module->hot_pull_up_ohm, &quantum_ohm) ||
      !oc_words_take(words, "@") || !oc_words_number(words, &value))
    return false;
  double factor = take_degrees(words);
  module->changeover_c = celsius_of(value, factor);
  return factor > 0;
}

static bool take_percent(struct oc_words *words, oc_module *module) {
  module->pull_up_accuracy = OC_ASSUMED;
  module->pull_up_percent = 0;
  if (!oc_words_take_plus_minus(words))
    return true;
  module->pull_up_accuracy = OC_STATED;
  return oc_words_number(words, &module->pull_up_percent) && oc_words_take(words, "%");
}

static bool are_pull_ups(const oc_module *module) {
  bool two = module->hot_pull_up_ohm != 0;
  return oc_inside(LEAST_PULL_UP_OHM, module->pull_up_ohm, GREATEST_PULL_UP_OHM) &&
         (!two || (oc_inside(LEAST_PULL_UP_OHM, module->hot_pull_up_ohm, module->pull_up_ohm) &&
                   module->hot_pull_up_ohm < module->pull_up_ohm)) &&
         oc_inside(0, module->pull_up_percent, GREATEST_PULL_UP_PERCENT) &&
         oc_inside(COLDEST_REPORT_C, module->changeover_c, HOTTEST_REPORT_C);
}

ohm_status oc_pull_up_read(const char *text, oc_module *module, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !module)
    return oc_fail_null(error);
  oc_module read = *module;
  struct oc_words words = {text, strlen(text)};
  if (!take_pull_ups(&words, &read) || !take_percent(&words, &read) || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no pull-up; ",
                         "write 1k, 1k+-1%, or two and where they change, such as 10k,1k@50C");
  if (!are_pull_ups(&read))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no pull-up of a module; ",
                         "write 1 ohm to 10M, of two the larger first, within 50 % at most");
  *module = read;
  return OHM_OK;
}

/* A number of volts, and what one in its last digit is worth. */
static bool take_volts(struct oc_words *words, double *v_volt, double *quantum_volt) {
  size_t used;
  oc_words_skip(words);
  if (oc_number_scan(words->text, words->length, &used, v_volt, quantum_volt) != OHM_OK)
    return false;
  words->text += used;
  words->length -= used;
  bool milli = oc_words_take(words, "mV");
  if (!milli)
    (void)(oc_words_take(words, "V") || oc_words_take(words, "v"));
  double factor = milli ? 1e-3 : 1;
  *v_volt *= factor;
  *quantum_volt *= factor;
  return true;
}

static bool take_volts_limit(struct oc_words *words, int *accuracy, double *limit_volt) {
  double quantum_volt;
  *accuracy = OC_ASSUMED;
  *limit_volt = 0;
  if (!oc_words_take_plus_minus(words))
    return true;
  *accuracy = OC_STATED;
  return take_volts(words, limit_volt, &quantum_volt);
}

static bool is_supply(double supply_volt, double limit_volt) {
  return oc_inside(LEAST_SUPPLY_VOLT, supply_volt, GREATEST_VOLT) && 0 <= limit_volt &&
         limit_volt < supply_volt / 2;
}

ohm_status oc_supply_read(const char *text, oc_module *module, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !module)
    return oc_fail_null(error);
  oc_module read = *module;
  struct oc_words words = {text, strlen(text)};
  double quantum_volt;
  if (!take_volts(&words, &read.supply_volt, &quantum_volt) ||
      !take_volts_limit(&words, &read.supply_accuracy, &read.supply_limit_volt) || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no supply of a pull-up; ",
                         "write it as 5V, or as measured at the open plug, 5.02V+-0.01");
  if (!is_supply(read.supply_volt, read.supply_limit_volt))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no supply of a pull-up; ",
                         "write 0.5V to 30V, and less than half of it after +-");
  *module = read;
  return OHM_OK;
}

ohm_status oc_volts_read(const char *text, oc_volts *volts, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !volts)
    return oc_fail_null(error);
  oc_volts read = OC_VOLTS_INIT;
  *volts = read;
  volts->v_volt = NAN;
  struct oc_words words = {text, strlen(text)};
  if (!take_volts(&words, &read.v_volt, &read.resolution_volt) ||
      !take_volts_limit(&words, &read.accuracy, &read.limit_volt) || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no reading of a voltmeter; ",
                         "write 0.97, 0.97V, 970mV or 0.97+-0.02");
  if (!oc_inside(0, read.v_volt, GREATEST_VOLT) || !oc_inside(0, read.limit_volt, GREATEST_VOLT) ||
      !oc_inside(0, read.resolution_volt, GREATEST_VOLT))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " cannot stand at a sensor's pin; ",
                         "write 0V to 30V, the red lead on the signal");
  read.v_volt += 0.0; /* -0 is 0 */
  *volts = read;
  return OHM_OK;
}

ohm_status oc_reported_read(const char *text, oc_reported *reported, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !reported)
    return oc_fail_null(error);
  oc_reported read = OC_REPORTED_INIT;
  *reported = read;
  reported->t_c = NAN;
  struct oc_words words = {text, strlen(text)};
  double value = 0;
  bool taken = oc_words_number(&words, &value);
  double factor = taken ? take_degrees(&words) : 0;
  if (taken && oc_words_take_plus_minus(&words)) {
    read.accuracy = OC_STATED;
    taken = oc_words_number(&words, &read.limit_k);
    double own = take_degrees(&words);
    read.limit_k *= own > 0 ? own : factor;
  }
  if (taken && factor == 0 && words.length == 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has no unit; ",
                         "write C or F after the number, such as 91C");
  if (!taken || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is nothing that a module reports; ",
                         "write degrees, such as 91C, 196F or 91C+-2");
  read.t_c = celsius_of(value, factor);
  read.resolution_k = factor < 1 ? factor : 0;
  if (!oc_inside(COLDEST_REPORT_C, read.t_c, HOTTEST_REPORT_C) ||
      !oc_inside(0, read.limit_k, GREATEST_REPORT_K))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is nothing that a module reports; ",
                         "write -60C to 300C, and up to 20 after +-");
  *reported = read;
  return OHM_OK;
}

/* ---- the input ---- */

static bool is_standing(int standing) {
  return oc_inside(OC_ASSUMED, standing, OC_EXACT);
}

static bool is_module(const oc_module *module) {
  const double all[] = {module->pull_up_ohm,     module->hot_pull_up_ohm, module->changeover_c,
                        module->pull_up_percent, module->supply_volt,     module->supply_limit_volt,
                        module->open_volt,       module->short_volt};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (!isfinite(all[i]))
      return false;
  return is_standing(module->pull_up_accuracy) && is_standing(module->supply_accuracy) &&
         oc_inside(OC_RANGE_NOT_TOLD, module->range, OC_RANGE_HOT);
}

/* What holds of a group: what was stated, what is assumed, or nothing. */
static double limit_of(int standing, double stated, double assumed) {
  return standing == OC_STATED ? stated : standing == OC_ASSUMED ? assumed : 0;
}

ohm_status oc_input_of(const oc_module *module, struct oc_input *input) {
  static const oc_module nothing_told = OC_MODULE_INIT;
  module = module ? module : &nothing_told;
  if (!is_module(module))
    return OHM_BAD_ARGUMENT;
  double supply_v = module->supply_volt == 0 ? OC_ASSUMED_SUPPLY_VOLT : module->supply_volt;
  *input = (struct oc_input){
      .divider = {supply_v, module->pull_up_ohm, module->hot_pull_up_ohm, 0},
      .changeover_c = module->changeover_c,
      .range = (oc_range)module->range,
      .pull_up_share =
          limit_of(module->pull_up_accuracy, module->pull_up_percent, OC_ASSUMED_PULL_UP_PERCENT) /
          100,
      .supply_limit_v = limit_of(module->supply_accuracy, module->supply_limit_volt,
                                 OC_ASSUMED_SUPPLY_PERCENT / 100 * supply_v),
      .open_v = module->open_volt == 0 ? OC_ASSUMED_OPEN_SHARE * supply_v : module->open_volt,
      .short_v = module->short_volt == 0 ? OC_ASSUMED_SHORT_SHARE * supply_v : module->short_volt,
      .pull_up_assumed = module->pull_up_accuracy == OC_ASSUMED,
      .supply_assumed = module->supply_accuracy == OC_ASSUMED};
  bool good = (module->pull_up_ohm == 0 ? module->hot_pull_up_ohm == 0 : are_pull_ups(module)) &&
              is_supply(supply_v, input->supply_limit_v) && 0 <= input->short_v &&
              input->short_v < input->open_v && input->open_v <= supply_v;
  return good ? OHM_OK : OHM_OUT_OF_RANGE;
}

/* ---- what was read ---- */

ohm_status oc_volts_budget(const oc_volts *volts, struct oc_budget *budget, bool *assumed) {
  if (!isfinite(volts->v_volt) || !isfinite(volts->limit_volt) ||
      !isfinite(volts->resolution_volt) || !is_standing(volts->accuracy) ||
      !oc_inside(OHM_NEGATIVE_NOT_TOLD, volts->negative, OHM_NEGATIVE_BODY))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(0, volts->v_volt, GREATEST_VOLT) ||
      !oc_inside(0, volts->limit_volt, GREATEST_VOLT) ||
      !oc_inside(0, volts->resolution_volt, GREATEST_VOLT))
    return OHM_OUT_OF_RANGE;
  double by_practice = OC_ASSUMED_VOLTS_PERCENT / 100 * volts->v_volt +
                       OC_ASSUMED_VOLTS_COUNTS * volts->resolution_volt;
  double limit_v = limit_of(volts->accuracy, volts->limit_volt, by_practice);
  if (volts->accuracy == OC_STATED)
    limit_v = fmax(limit_v, volts->resolution_volt / 2);
  *assumed = volts->accuracy == OC_ASSUMED;
  *budget = oc_budget_of(volts->v_volt);
  oc_budget_add_limit(budget, OC_CAUSE_VOLTS, limit_v);
  return OHM_OK;
}

ohm_status oc_reported_budget(const oc_reported *reported, struct oc_budget *budget,
                              bool *assumed) {
  if (!isfinite(reported->t_c) || !isfinite(reported->resolution_k) ||
      !isfinite(reported->limit_k) || !is_standing(reported->accuracy) ||
      !oc_inside(OC_ROUNDING_NOT_TOLD, reported->rounding, OC_TRUNCATED) ||
      !oc_inside(OC_MOVES_NOT_TOLD, reported->moves, OC_NEVER_MOVES))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(COLDEST_REPORT_C, reported->t_c, HOTTEST_REPORT_C) ||
      !oc_inside(0, reported->resolution_k, GREATEST_REPORT_K) ||
      !oc_inside(0, reported->limit_k, GREATEST_REPORT_K))
    return OHM_OUT_OF_RANGE;
  double low_k = reported->rounding == OC_TRUNCATED ? 0 : -0.5;
  double high_k = reported->rounding == OC_ROUNDED ? 0.5 : 1;
  *assumed = reported->accuracy == OC_ASSUMED;
  *budget = oc_budget_of(reported->t_c + (low_k + high_k) / 2);
  oc_budget_add_limit(budget, OC_CAUSE_DEGREE, (high_k - low_k) / 2);
  oc_budget_add_limit(budget, OC_CAUSE_DISPLAY, reported->resolution_k / 2);
  oc_budget_add_limit(budget, OC_CAUSE_CONVERSION,
                      limit_of(reported->accuracy, reported->limit_k, OC_ASSUMED_REPORTED_LIMIT_K));
  return OHM_OK;
}

bool oc_reported_stands_in(double t_c) {
  static const double known_c[] = {OC_STAND_INS_C};
  for (size_t i = 0; i < sizeof known_c / sizeof known_c[0]; i++)
    if (fabs(t_c - known_c[i]) < 0.5)
      return true;
  return false;
}

ohm_status ohm_reported_of(double t_c, int cut, double *shown_c) {
  if (!shown_c)
    return OHM_NULL_ARGUMENT;
  *shown_c = NAN;
  if (isnan(t_c))
    return OHM_BAD_ARGUMENT;
  if (!(OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C))
    return OHM_OUT_OF_RANGE;
  double whole_c = cut ? floor(t_c) : floor(t_c + 0.5);
  *shown_c = fmin(fmax(whole_c, BYTE_LOW_C), BYTE_HIGH_C);
  return OHM_OK;
}
