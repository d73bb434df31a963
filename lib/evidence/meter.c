/* SPDX-License-Identifier: MIT */
#include "meter.h"

#include <string.h>

#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/words.h"

static const double GREATEST_LEAD_OHM = 1000;
static const double GREATEST_MA = 1000;

/* ---- notations ---- */

/* The factor of a unit prefix at the beginning of words, which is taken. */
static double take_prefix(struct oc_words *words) {
  static const struct {
    const char *word;
    double factor;
  } prefixes[] = {{"k", 1e3}, {"K", 1e3}, {"M", 1e6}, {"G", 1e9}};
  for (size_t i = 0; i < sizeof prefixes / sizeof prefixes[0]; i++)
    if (oc_words_take(words, prefixes[i].word))
      return prefixes[i].factor;
  return 1;
}

/* Omega and the ohm sign look alike; both are typed. */
static void take_ohm(struct oc_words *words) {
  static const char *const units[] = {"ohms", "ohm", "Ohms", "Ohm", "\xCE\xA9", "\xE2\x84\xA6"};
  for (size_t i = 0; i < sizeof units / sizeof units[0]; i++)
    if (oc_words_take(words, units[i]))
      return;
}

bool oc_words_resistance(struct oc_words *words, double *r_ohm, double *quantum_ohm) {
  size_t used;
  oc_words_skip(words);
  if (oc_rkm_scan(words->text, words->length, &used, r_ohm, quantum_ohm) == OHM_OK) {
    words->text += used;
    words->length -= used;
  } else if (oc_number_scan(words->text, words->length, &used, r_ohm, quantum_ohm) == OHM_OK) {
    words->text += used;
    words->length -= used;
    double factor = take_prefix(words);
    *r_ohm *= factor;
    *quantum_ohm *= factor;
  } else {
    return false;
  }
  take_ohm(words);
  return true;
}

/* The same text with a point for the comma, if that is all that was wrong. */
static bool mend_comma(const char *text, char *mended, size_t size) {
  const char *comma = strchr(text, ',');
  size_t length = strlen(text);
  if (!comma || strchr(comma + 1, ',') || length >= size)
    return false;
  memcpy(mended, text, length + 1);
  mended[comma - text] = '.';
  struct oc_words words = {mended, length};
  double r_ohm;
  double quantum_ohm;
  return oc_words_resistance(&words, &r_ohm, &quantum_ohm) && words.length == 0;
}

static ohm_status fail_reading(const char *text, ohm_error *error) {
  char mended[32];
  char advice[64];
  if (!mend_comma(text, mended, sizeof mended))
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no reading; write it as 2310, 2.31k, ",
                         "2k31, OL, OL@20k or open");
  struct oc_text sentence = oc_text_begin(advice, sizeof advice);
  oc_text_add(&sentence, "write ");
  oc_text_add(&sentence, mended);
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has a comma; ", advice);
}

/* OL, OL@20k, >20k */
static bool take_over(struct oc_words *words, double *range_ohm) {
  static const char *const faces[] = {"OL", "ol", "0L", "O.L", "0.L"};
  double quantum_ohm;
  *range_ohm = 0;
  if (oc_words_take(words, ">"))
    return oc_words_resistance(words, range_ohm, &quantum_ohm);
  for (size_t i = 0; i < sizeof faces / sizeof faces[0]; i++)
    if (oc_words_take(words, faces[i]))
      return !oc_words_take(words, "@") || oc_words_resistance(words, range_ohm, &quantum_ohm);
  return false;
}

/* What a whole number leaves open: 100 of 2300, 1000 of 10k. Other zeros were shown. */
static double left_open(const char *text, double quantum_ohm) {
  size_t digits = strspn(text, "0123456789");
  bool bare = text[digits] == '\0';
  if (!bare && (quantum_ohm < 1000 || strchr(text, '.')))
    return 0;
  while (bare && digits > 1 && text[--digits] == '0')
    quantum_ohm *= 10;
  return quantum_ohm > 1 ? quantum_ohm : 0;
}

static bool is_bare(const char *text) {
  return text[strspn(text, "0123456789.")] == '\0';
}

static bool take_reading(const char *text, oc_reading *reading) {
  struct oc_words words = {text, strlen(text)};
  if (oc_words_take(&words, "open") || oc_words_take(&words, "OPEN"))
    reading->display = OC_DISPLAY_OPEN;
  else if (take_over(&words, &reading->range_ohm))
    reading->display = OC_DISPLAY_OVER;
  else if (!oc_words_resistance(&words, &reading->r_ohm, &reading->resolution_ohm))
    return false;
  return words.length == 0;
}

ohm_status oc_reading_read(const char *text, oc_reading *reading, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !reading)
    return oc_fail_null(error);
  oc_reading read = OC_READING_INIT;
  *reading = read;
  reading->r_ohm = NAN;
  if (!take_reading(text, &read))
    return fail_reading(text, error);
  if (!oc_inside(0, read.r_ohm, OC_GREATEST_OHM) ||
      !oc_inside(0, read.range_ohm, OC_GREATEST_OHM) ||
      !oc_inside(0, read.resolution_ohm, OC_GREATEST_OHM))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no resistance a meter shows; ",
                         "write 0 to 1e12 ohm");
  if (read.display != OC_DISPLAY_VALUE) {
    read.r_ohm = NAN;
  } else {
    read.r_ohm += 0.0; /* -0 is 0 */
    read.zeros_ohm = left_open(text, read.resolution_ohm);
    read.bare = is_bare(text);
    if (strcmp(text, "1") == 0)
      read.display = OC_DISPLAY_ONE;
  }
  *reading = read;
  return OHM_OK;
}

ohm_status ohm_resistance_read(const char *text, double *r_ohm, ohm_error *error) {
  oc_reading reading;
  if (r_ohm)
    *r_ohm = NAN;
  if (!r_ohm)
    text = NULL;
  ohm_status status = oc_reading_read(text, &reading, error);
  if (status != OHM_OK)
    return status;
  if (reading.display != OC_DISPLAY_VALUE && reading.display != OC_DISPLAY_ONE)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no resistance; ",
                         "write a number, such as 2.31k");
  *r_ohm = reading.display == OC_DISPLAY_ONE ? 1 : reading.r_ohm;
  return OHM_OK;
}

/* A stated 0 is no display, and not one that was not told. */
static bool take_display(struct oc_words *words, oc_meter *meter) {
  if (!oc_words_number(words, &meter->display_count))
    return false;
  if (meter->display_count == 0)
    meter->display_count = -1;
  return true;
}

/* 0.8%+3x10, 0.8%+3@2000, 0.8%, @2000 */
static bool take_specification(struct oc_words *words, oc_meter *meter) {
  if (oc_words_take(words, "@"))
    return take_display(words, meter);
  meter->accuracy = OC_STATED;
  if (!oc_words_number(words, &meter->percent) || !oc_words_take(words, "%"))
    return false;
  if (oc_words_take(words, "+") && !oc_words_number(words, &meter->counts))
    return false;
  if (oc_words_take(words, "x"))
    return oc_words_number(words, &meter->resolution_ohm) && meter->resolution_ohm != 0;
  return !oc_words_take(words, "@") || take_display(words, meter);
}

static bool is_specification(const oc_meter *meter) {
  bool display = meter->display_count == 0 || oc_inside(100, meter->display_count, 1e9);
  return oc_inside(0, meter->percent, 99.999) && oc_inside(0, meter->counts, 1e6) &&
         oc_inside(0, meter->resolution_ohm, OC_GREATEST_OHM) && display;
}

ohm_status oc_meter_read(const char *text, oc_meter *meter, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !meter)
    return oc_fail_null(error);
  oc_meter read = *meter;
  read.accuracy = OC_ASSUMED;
  read.percent = read.counts = read.resolution_ohm = read.display_count = 0;
  struct oc_words words = {text, strlen(text)};
  if (oc_words_take(&words, "exact"))
    read.accuracy = OC_EXACT;
  else if (!take_specification(&words, &read))
    words.length = 1;
  if (words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no accuracy of a meter; ",
                         "write 0.8%+3, 0.8%+3x10, 0.8%+3@2000, @2000 or exact");
  if (!is_specification(&read))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no accuracy of a meter; ",
                         "parts must not be negative, percent is under 100, a display has at "
                         "least 100 counts");
  *meter = read;
  return OHM_OK;
}

ohm_status oc_leads_read(const char *text, oc_meter *meter, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !meter)
    return oc_fail_null(error);
  struct oc_words words = {text, strlen(text)};
  if (oc_words_take(&words, "exact") && words.length == 0) {
    meter->leads = OC_EXACT;
    return OHM_OK;
  }
  double lead_ohm;
  double limit_ohm = OC_LEADS_REPEAT_OHM;
  bool read = oc_words_number(&words, &lead_ohm);
  take_ohm(&words);
  if (read && oc_words_take_plus_minus(&words)) {
    read = oc_words_number(&words, &limit_ohm);
    take_ohm(&words);
  }
  if (!read || words.length > 0)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no lead resistance; ",
                         "write ohms, such as 0.4 or 0.4+-0.1, or exact");
  if (!oc_inside(0, lead_ohm, GREATEST_LEAD_OHM) || !oc_inside(0, limit_ohm, GREATEST_LEAD_OHM))
    return oc_words_fail(error, OHM_OUT_OF_RANGE, text, " is no lead resistance; ",
                         "write 0 to 1000 ohm");
  meter->leads = OC_STATED;
  meter->lead_ohm = lead_ohm;
  meter->lead_limit_ohm = limit_ohm;
  return OHM_OK;
}

/* ---- error of a reading ---- */

static const oc_meter assumed_meter = OC_METER_INIT;

static bool is_ohm(double r_ohm) {
  return oc_inside(0, r_ohm, OC_GREATEST_OHM);
}

static bool is_meter(const oc_meter *meter) {
  return oc_inside(OC_ASSUMED, meter->accuracy, OC_EXACT) && is_specification(meter) &&
         oc_inside(OC_ASSUMED, meter->leads, OC_EXACT) &&
         oc_inside(0, meter->lead_ohm, GREATEST_LEAD_OHM) &&
         oc_inside(0, meter->lead_limit_ohm, GREATEST_LEAD_OHM) &&
         oc_inside(0, meter->current_ma, GREATEST_MA);
}

/* One count of a display of that many counts on the lowest range that shows r_ohm:
 * a decimal step. */
static double count_of_display(double r_ohm, double display_count) {
  double step = OC_FINEST_COUNT_OHM;
  while (r_ohm >= step * display_count && step < OC_GREATEST_OHM)
    step *= 10;
  return step;
}

/* One count of the display, and what the digits as given leave open beside it. */
struct digits {
  double count_ohm;
  double rounding_ohm;
  bool assumed;
  bool zeros;
};

static struct digits digits_of(const oc_meter *meter, const oc_reading *reading) {
  struct digits digits = {0, 0, false, false};
  double typed_ohm = reading->resolution_ohm;
  if (meter->resolution_ohm > 0) {
    digits.count_ohm = meter->resolution_ohm;
  } else if (meter->display_count > 0) {
    digits.count_ohm = count_of_display(reading->r_ohm, meter->display_count);
  } else if (reading->zeros_ohm > 0) {
    digits.count_ohm = count_of_display(reading->r_ohm, OC_ASSUMED_DISPLAY_COUNT);
    typed_ohm = fmax(typed_ohm, reading->zeros_ohm);
    digits.zeros = true;
  } else if (typed_ohm > 0) {
    digits.count_ohm = typed_ohm;
  } else {
    digits.count_ohm = count_of_display(reading->r_ohm, OC_ASSUMED_DISPLAY_COUNT);
    digits.assumed = true;
  }
  if (digits.zeros)
    digits.rounding_ohm = typed_ohm > digits.count_ohm ? typed_ohm / 2 : 0;
  return digits;
}

static double percent_of(const oc_meter *meter) {
  if (meter->accuracy == OC_EXACT)
    return 0;
  return meter->accuracy == OC_ASSUMED ? OC_ASSUMED_METER_PERCENT : meter->percent;
}

static struct oc_meter_parts parts_of(const oc_meter *meter, const oc_reading *reading,
                                      struct oc_meter_assumed *assumed) {
  assumed->accuracy = meter->accuracy == OC_ASSUMED;
  assumed->resolution = false;
  assumed->zeros = false;
  struct digits digits = digits_of(meter, reading);
  if (meter->accuracy == OC_EXACT)
    return (struct oc_meter_parts){0, 0, digits.count_ohm};
  double counts = assumed->accuracy ? OC_ASSUMED_METER_COUNTS : meter->counts;
  assumed->resolution = digits.assumed;
  assumed->zeros = digits.zeros;
  return (struct oc_meter_parts){percent_of(meter) / 100 * reading->r_ohm,
                                 fmax(counts, 0.5) * digits.count_ohm + digits.rounding_ohm,
                                 digits.count_ohm};
}

static double limit_of(const oc_meter *meter, const oc_reading *reading,
                       struct oc_meter_assumed *assumed) {
  struct oc_meter_parts parts = parts_of(meter, reading, assumed);
  return parts.percent_ohm + parts.counts_ohm;
}

static ohm_status check_reading(const oc_meter *meter, const oc_reading *reading) {
  if (!reading)
    return OHM_NULL_ARGUMENT;
  if (!is_meter(meter) || !oc_inside(OC_DISPLAY_VALUE, reading->display, OC_DISPLAY_ONE))
    return OHM_BAD_ARGUMENT;
  if (!is_ohm(reading->range_ohm))
    return OHM_BAD_ARGUMENT;
  if (reading->display != OC_DISPLAY_VALUE)
    return OHM_OUT_OF_RANGE;
  return is_ohm(reading->r_ohm) && is_ohm(reading->resolution_ohm) && is_ohm(reading->zeros_ohm)
             ? OHM_OK
             : OHM_BAD_ARGUMENT;
}

ohm_status oc_meter_limit(const oc_meter *meter, const oc_reading *reading, double *limit_ohm) {
  if (!limit_ohm)
    return OHM_NULL_ARGUMENT;
  *limit_ohm = NAN;
  meter = meter ? meter : &assumed_meter;
  ohm_status status = check_reading(meter, reading);
  struct oc_meter_assumed assumed;
  if (status == OHM_OK)
    *limit_ohm = limit_of(meter, reading, &assumed);
  return status;
}

ohm_status oc_meter_budget(const oc_meter *meter, const oc_reading *reading,
                           struct oc_budget *budget, struct oc_meter_assumed *assumed) {
  meter = meter ? meter : &assumed_meter;
  ohm_status status = check_reading(meter, reading);
  if (status != OHM_OK)
    return status;
  struct oc_meter_assumed taken;
  double limit_ohm = limit_of(meter, reading, &taken);
  taken.leads = meter->leads == OC_ASSUMED;
  bool no_leads = meter->leads == OC_EXACT;
  double lead_ohm = taken.leads ? OC_ASSUMED_LEAD_OHM : no_leads ? 0 : meter->lead_ohm;
  double lead_limit_ohm = taken.leads ? OC_ASSUMED_LEAD_LIMIT_OHM
                          : no_leads  ? 0
                                      : meter->lead_limit_ohm;
  *budget = oc_budget_of(fmax(0, reading->r_ohm - lead_ohm));
  oc_budget_add_limit(budget, OC_CAUSE_METER, limit_ohm);
  oc_budget_add_limit(budget, OC_CAUSE_LEADS, lead_limit_ohm);
  if (assumed)
    *assumed = taken;
  return OHM_OK;
}

ohm_status oc_meter_estimate(const oc_meter *meter, const oc_reading *reading,
                             ohm_estimate *r_ohm) {
  if (!r_ohm)
    return OHM_NULL_ARGUMENT;
  *r_ohm = (ohm_estimate){NAN, NAN};
  struct oc_budget budget;
  ohm_status status = oc_meter_budget(meter, reading, &budget, NULL);
  if (status == OHM_OK)
    *r_ohm = (ohm_estimate){budget.value, oc_budget_u(&budget)};
  return status;
}

struct oc_meter_parts oc_meter_parts(const oc_meter *meter, const oc_reading *reading) {
  struct oc_meter_assumed assumed;
  return parts_of(meter ? meter : &assumed_meter, reading, &assumed);
}

double oc_meter_own_u(const struct oc_meter_parts *parts) {
  return sqrt(parts->counts_ohm * (parts->counts_ohm + 2 * parts->percent_ohm) / 3);
}
