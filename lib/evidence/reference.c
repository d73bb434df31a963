/* SPDX-License-Identifier: MIT */
#include "reference.h"

#include <string.h>

#include "../ground/status.h"
#include "../ground/words.h"

static const double LOWEST_M = -430;
static const double HIGHEST_M = 5000;
static const double LEAST_HPA = 500;
static const double GREATEST_HPA = 1100;

/* ---- notations ---- */

enum unit { UNIT_NONE, UNIT_C, UNIT_F, UNIT_K };

static enum unit take_unit(struct oc_words *words) {
  oc_words_take(words, "\xC2\xB0");
  if (oc_words_take(words, "C") || oc_words_take(words, "c"))
    return UNIT_C;
  if (oc_words_take(words, "F") || oc_words_take(words, "f"))
    return UNIT_F;
  if (oc_words_take(words, "K"))
    return UNIT_K;
  return UNIT_NONE;
}

static double celsius_of(double value, enum unit unit) {
  if (unit == UNIT_F)
    return (value - 32) * 5 / 9;
  return unit == UNIT_K ? oc_celsius(value) : value;
}

static ohm_status fail_temperature(const char *text, enum unit unit, bool has_number,
                                   ohm_error *error) {
  if (has_number && unit == UNIT_NONE)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has no unit; ",
                         "write C, F or K after the number, such as 21.5C");
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no temperature; ",
                       "write it as 21.5C, 70F or 294.7K");
}

static ohm_status check_range(const char *text, double t_c, ohm_error *error) {
  if (OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C)
    return OHM_OK;
  return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no temperature of a sensor; ",
                       "write one above -273.15C and up to 1000C");
}

ohm_status ohm_temperature_read(const char *text, double *t_c, ohm_error *error) {
  oc_error_clear(error);
  if (t_c)
    *t_c = NAN;
  if (!text || !t_c)
    return oc_fail_null(error);
  struct oc_words words = {text, strlen(text)};
  double value;
  bool has_number = oc_words_number(&words, &value);
  enum unit unit = has_number ? take_unit(&words) : UNIT_NONE;
  if (unit == UNIT_NONE || words.length > 0)
    return fail_temperature(text, unit, has_number && words.length == 0, error);
  ohm_status status = check_range(text, celsius_of(value, unit), error);
  if (status == OHM_OK)
    *t_c = celsius_of(value, unit);
  return status;
}

/* "+-1", "+-1C" at the end of a reference. */
static bool take_limit(struct oc_words *words, enum unit unit, oc_reference *reference) {
  double limit;
  if (!oc_words_take_plus_minus(words))
    return true;
  if (!oc_words_number(words, &limit))
    return false;
  enum unit own = take_unit(words);
  unit = own == UNIT_NONE ? unit : own;
  reference->accuracy = OC_STATED;
  reference->limit_k = unit == UNIT_F ? limit * 5 / 9 : limit;
  return true;
}

/* "@1200m", "@870hPa" after boil; both is the fault of having both. */
struct heights {
  bool altitude;
  bool pressure;
};

static bool take_height(struct oc_words *words, oc_reference *reference, struct heights *heights) {
  double value;
  if (!oc_words_number(words, &value))
    return false;
  if (oc_words_take(words, "hPa") || oc_words_take(words, "mbar")) {
    reference->pressure_hpa = value;
    heights->pressure = true;
    return true;
  }
  if (oc_words_take(words, "ft"))
    value *= 0.3048;
  else if (!oc_words_take(words, "m"))
    return false;
  reference->altitude_m = value;
  heights->altitude = true;
  return true;
}

static bool take_boil(struct oc_words *words, oc_reference *reference, struct heights *heights) {
  reference->kind = OHM_REFERENCE_BOIL;
  if (!oc_words_take(words, "@"))
    return true;
  if (!take_height(words, reference, heights))
    return false;
  reference->kind = heights->altitude ? OHM_REFERENCE_BOIL_ALTITUDE : OHM_REFERENCE_BOIL_PRESSURE;
  return !oc_words_take(words, ",") || take_height(words, reference, heights);
}

static bool take_reading(struct oc_words *words, oc_reference *reference, enum unit *unit) {
  double value;
  if (!oc_words_number(words, &value))
    return false;
  *unit = take_unit(words);
  reference->t_c = celsius_of(value, *unit);
  reference->not_celsius = *unit != UNIT_C;
  return true;
}

static ohm_status fail_reference(const char *text, bool unit_missing, ohm_error *error) {
  if (unit_missing)
    return fail_temperature(text, UNIT_NONE, true, error);
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no temperature; ",
                       "write it as 21.5C, 70F, 294.7K, 21.5C+-1, ice, boil, boil@1200m, "
                       "boil@870hPa or infrared@80C");
}

static ohm_status check_reference(const char *text, const oc_reference *reference,
                                  const struct heights *heights, ohm_error *error) {
  if (heights->altitude && heights->pressure)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text,
                         " has both altitude and pressure: a pressure given for a place of known "
                         "altitude is as a rule reduced to sea level, and water does not boil by "
                         "that; ",
                         "give the altitude alone, or the reading of a barometer beside the pot "
                         "alone");
  if (!oc_inside(LOWEST_M, reference->altitude_m, HIGHEST_M))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no altitude to boil at; ",
                         "write -430m to 5000m");
  if (heights->pressure && !oc_inside(LEAST_HPA, reference->pressure_hpa, GREATEST_HPA))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no pressure of the air; ",
                         "write 500hPa to 1100hPa");
  if (!oc_inside(0, reference->limit_k, OC_HOTTEST_C))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " has a limit that is none; ",
                         "write 0 to 1000 after +-");
  return check_range(text, reference->t_c, error);
}

ohm_status oc_reference_read(const char *text, oc_reference *reference, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !reference)
    return oc_fail_null(error);
  oc_reference read = OC_REFERENCE_INIT;
  *reference = read;
  reference->t_c = NAN;
  struct oc_words words = {text, strlen(text)};
  struct heights heights = {false, false};
  enum unit unit = UNIT_C;
  bool taken = true;
  if (oc_words_take(&words, "ice")) {
    read.kind = OHM_REFERENCE_ICE;
  } else if (oc_words_take(&words, "boil")) {
    taken = take_boil(&words, &read, &heights);
  } else {
    bool infrared = oc_words_take(&words, "infrared");
    read.kind = infrared ? OHM_REFERENCE_INFRARED : OHM_REFERENCE_THERMOMETER;
    taken = (!infrared || oc_words_take(&words, "@")) && take_reading(&words, &read, &unit);
  }
  bool unit_missing = taken && unit == UNIT_NONE;
  if (!taken || !take_limit(&words, unit, &read) || words.length > 0)
    return fail_reference(text, unit_missing && words.length == 0, error);
  if (unit_missing)
    return fail_reference(text, true, error);
  ohm_status status = check_reference(text, &read, &heights, error);
  if (status == OHM_OK)
    *reference = read;
  return status;
}

/* ---- error of a reference ---- */

static bool is_reference(const oc_reference *reference) {
  return oc_inside(OHM_REFERENCE_THERMOMETER, reference->kind, OHM_REFERENCE_INFRARED) &&
         isfinite(reference->altitude_m) && isfinite(reference->pressure_hpa) &&
         isfinite(reference->t_c) && oc_inside(OC_ASSUMED, reference->accuracy, OC_EXACT) &&
         oc_inside(0, reference->limit_k, OC_HOTTEST_C) &&
         oc_inside(0, reference->u_k, OC_HOTTEST_C);
}

/* Water boils a little warmer below its surface than the pressure of the air says. */
static ohm_status boiling(const oc_reference *reference, double *t_c) {
  double pressure_hpa;
  ohm_water_pressure(0, &pressure_hpa);
  if (reference->kind == OHM_REFERENCE_BOIL_PRESSURE)
    pressure_hpa = reference->pressure_hpa;
  if (reference->kind == OHM_REFERENCE_BOIL_ALTITUDE)
    ohm_water_pressure(reference->altitude_m, &pressure_hpa);
  if (!oc_inside(LOWEST_M, reference->altitude_m, HIGHEST_M) ||
      !oc_inside(LEAST_HPA, pressure_hpa, GREATEST_HPA))
    return OHM_OUT_OF_RANGE;
  ohm_status status = ohm_water_boiling(pressure_hpa, t_c);
  *t_c += OC_ASSUMED_BOIL_DEPTH_K;
  return status;
}

static double assumed_limit(int kind) {
  static const double limits[] = {
      [OHM_REFERENCE_THERMOMETER] = OC_ASSUMED_THERMOMETER_LIMIT_K,
      [OHM_REFERENCE_ICE] = OC_ASSUMED_ICE_LIMIT_K,
      [OHM_REFERENCE_BOIL] = OC_ASSUMED_BOIL_LIMIT_K,
      [OHM_REFERENCE_BOIL_ALTITUDE] = OC_ASSUMED_BOIL_ALTITUDE_LIMIT_K,
      [OHM_REFERENCE_BOIL_PRESSURE] = OC_ASSUMED_BOIL_PRESSURE_LIMIT_K,
      [OHM_REFERENCE_INFRARED] = OC_ASSUMED_INFRARED_LIMIT_K,
  };
  return limits[kind];
}

ohm_status oc_reference_budget(const oc_reference *reference, struct oc_budget *budget,
                               bool *assumed) {
  if (!reference)
    return OHM_NULL_ARGUMENT;
  if (!is_reference(reference))
    return OHM_BAD_ARGUMENT;
  double t_c = reference->kind == OHM_REFERENCE_ICE ? 0 : reference->t_c;
  if (oc_inside(OHM_REFERENCE_BOIL, reference->kind, OHM_REFERENCE_BOIL_PRESSURE) &&
      boiling(reference, &t_c) != OHM_OK)
    return OHM_OUT_OF_RANGE;
  if (!(OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C))
    return OHM_OUT_OF_RANGE;
  *budget = oc_budget_of(t_c);
  *assumed = reference->accuracy == OC_ASSUMED;
  if (*assumed)
    oc_budget_add_limit(budget, OC_CAUSE_REFERENCE_LIMIT, assumed_limit(reference->kind));
  if (reference->accuracy == OC_STATED)
    oc_budget_add_limit(budget, OC_CAUSE_REFERENCE_LIMIT, reference->limit_k);
  if (reference->accuracy != OC_EXACT)
    oc_budget_add_normal(budget, OC_CAUSE_REFERENCE_NOISE, reference->u_k);
  return OHM_OK;
}
