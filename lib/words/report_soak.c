/* SPDX-License-Identifier: MIT */
/* A sensor of a car that stood, in the words of the bench. */
#include "report.h"

#include <string.h>

#include "../bench/finding.h"
#include "../ground/number.h"
#include "sentence.h"

struct page {
  const ohm_finding *finding;
  struct oc_text *out;
};

static double number(const struct page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

static void caution_lines(const struct page *page) {
  oc_sentence_line(page->out, "CAUTION",
                   "Key off, blades clear: unplugging this sensor starts many fans.");
  if (number(page, OHM_FIELD_COOLANT_HIGH_C) > OC_SCALDS_C)
    oc_sentence_line(page->out, "",
                     "It may still be hot and scald: do not open it. Maker's procedure first.");
}

static void add_hours(struct oc_text *out, double hours) {
  oc_text_add_number(out, round(10 * hours) / 10);
  oc_text_add(out, " h");
}

static void expected_lines(const struct page *page) {
  OC_SENTENCE(text);
  oc_say_temperature(&text, number(page, OHM_FIELD_COOLANT_LOW_C));
  oc_text_add(&text, " to ");
  oc_say_temperature(&text, number(page, OHM_FIELD_COOLANT_HIGH_C));
  oc_text_add(&text, " after ");
  add_hours(&text, number(page, OHM_FIELD_AFTER_H));
  oc_text_add(&text, ", air now ");
  oc_say_temperature(&text, number(page, OHM_FIELD_AIR_C));
  oc_text_add(&text, ", coldest ");
  oc_say_temperature(&text, number(page, OHM_FIELD_COLDEST_C));
  oc_sentence_line(page->out, "Should be", text.buffer);
  OC_SENTENCE(allowed);
  oc_say_kelvins(&allowed, number(page, OHM_FIELD_ALLOW_K));
  oc_text_add(&allowed, " colder or warmer than the coolant is");
  oc_sentence_line(page->out, "Allowed", allowed.buffer);
}

/* ---- the verdict ---- */

static void add_sure(struct oc_text *text, double p) {
  oc_text_add(text, " (");
  oc_say_in_100(text, p);
  oc_text_add(text, " sure)");
}

static bool is_cold(const struct page *page) {
  return number(page, OHM_FIELD_P_COLD) >= number(page, OHM_FIELD_LEVEL);
}

static void add_uncertain(struct oc_text *text, const struct page *page) {
  oc_text_add(text, "CANNOT TELL YET: ");
  oc_say_in_100(text, number(page, OHM_FIELD_P_WITHIN));
  oc_text_add(text, " for good, ");
  oc_text_add_number(text, round(1000 * number(page, OHM_FIELD_LEVEL)) / 10);
  oc_text_add(text, " are needed");
}

static void verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_text_add(&text, "GOOD cold: it agrees with the air");
    add_sure(&text, number(page, OHM_FIELD_P_WITHIN));
    break;
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    oc_text_add(&text, is_cold(page) ? "BAD: colder than the coolant can be"
                                     : "BAD: warmer than the coolant can be");
    add_sure(&text, number(page, is_cold(page) ? OHM_FIELD_P_COLD : OHM_FIELD_P_WARM));
    break;
  case OHM_REASON_WARM:
    oc_text_add(&text, "CANNOT TELL YET: too warm; sun, a heater, a garage or a move do that");
    break;
  case OHM_REASON_UNCERTAIN:
    add_uncertain(&text, page);
    break;
  case OHM_REASON_OUTSIDE_BAND:
    oc_text_add(&text, "CANNOT TELL YET: the curve of this sensor does not reach that far");
    break;
  default:
    oc_report_verdict(page->out, page->finding);
    return;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

/* ---- the others, and the fan ---- */

static void others_line(const struct page *page) {
  OC_SENTENCE(text);
  const char *agreement = ohm_finding_text(page->finding, OHM_FIELD_AGREEMENT, 0);
  const char *odd = ohm_finding_text(page->finding, OHM_FIELD_ODD, 0);
  double off_k = number(page, OHM_FIELD_ODD_OFF_K);
  if (!agreement)
    return;
  if (odd) {
    oc_text_add(&text, "the ");
    oc_text_add(&text, odd);
    oc_text_add(&text, " sensor is the odd one out, ");
    oc_say_kelvins(&text, fabs(off_k));
    oc_text_add(&text, off_k < 0 ? " too cold by the others" : " too warm by the others");
  } else if (strcmp(agreement, "consistent") == 0) {
    oc_text_add(&text, "the sensors agree with each other");
  } else {
    oc_text_add(&text, "the sensors do not agree, and nothing says which one is off");
  }
  oc_sentence_line(page->out, "The others", text.buffer);
}

static void add_late(struct oc_text *text, double late_k) {
  if (isnan(late_k)) {
    oc_text_add(text, "fan off up to ");
    oc_say_never(text);
    return;
  }
  oc_text_add(text, "fan ");
  oc_say_kelvins(text, fmax(0, late_k));
  oc_text_add(text, " late");
}

static void fan_line(const struct page *page) {
  OC_SENTENCE(text);
  double missed_k = number(page, OHM_FIELD_MISSED_COLD_K);
  double series_ohm = number(page, OHM_FIELD_SERIES_OHM);
  if (isnan(missed_k))
    return;
  if (missed_k < OC_LEAST_SAID_K) {
    oc_text_add(&text, "NOT ANSWERED: nothing too cold hides here, but it was not hot");
  } else {
    oc_text_add(&text, "NOT ANSWERED: ");
    oc_say_kelvins(&text, missed_k);
    oc_text_add(&text, " too cold would not show here");
  }
  if (series_ohm > 0 && missed_k >= OC_LEAST_SAID_K) {
    oc_text_add(&text, "; ");
    oc_say_resistance(&text, series_ohm);
    oc_text_add(&text, " in plug or wire make that (");
    add_late(&text, number(page, OHM_FIELD_SERIES_SOUND_LATE_K));
    oc_text_add(&text, "), ");
    oc_say_digits(&text, OC_ASSUMED_HIDDEN_OHM, 2);
    oc_text_add(&text, " make it ");
    add_late(&text, number(page, OHM_FIELD_FIFTY_LATE_K));
  }
  oc_sentence_line(page->out, "For the fan", text.buffer);
}

/* ---- what to do next ---- */

static void add_decidable(struct oc_text *text, const struct page *page) {
  double decidable_h = number(page, OHM_FIELD_DECIDABLE_H);
  if (isnan(decidable_h)) {
    oc_text_add(text, "know the air better, log it, or a thermometer beside the sensor");
  } else if (decidable_h > number(page, OHM_FIELD_AFTER_H)) {
    oc_text_add(text, "once more when it has stood ");
    add_hours(text, ceil(2 * decidable_h) / 2);
    oc_text_add(text, ", if the air stays so");
  } else {
    oc_text_add(text, "a thermometer beside the sensor: it is near the limit");
  }
}

static void next_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_say_hot(&text);
    break;
  case OHM_REASON_WARM:
    oc_text_add(&text, "after a night outside, no sun, heater unplugged; then --undisturbed");
    break;
  case OHM_REASON_UNCERTAIN:
  case OHM_REASON_OUTSIDE_BAND:
    add_decidable(&text, page);
    break;
  default:
    oc_report_next(page->out, page->finding);
    return;
  }
  oc_sentence_line(page->out, "Next", text.buffer);
}

void oc_report_soak(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  caution_lines(&page);
  oc_report_reading(out, finding);
  expected_lines(&page);
  verdict_line(&page);
  others_line(&page);
  fan_line(&page);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(&page);
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
