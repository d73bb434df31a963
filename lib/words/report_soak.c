/* SPDX-License-Identifier: MIT */
/* A sensor of a car that stood, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static void caution_lines(struct oc_page *page) {
  oc_reading_caution(page, false);
  if (oc_page_number(page, OHM_FIELD_COOLANT_HIGH_C) > OC_SCALDS_C)
    oc_page_line(page, "",
                 "It may still be hot and scald: do not open it. Maker's procedure first.");
}

static void expected_lines(struct oc_page *page) {
  OC_SAY(page, "{C} to {C} after {h}, air now {C}, coldest {C}", OHM_FIELD_COOLANT_LOW_C,
         OHM_FIELD_COOLANT_HIGH_C, OHM_FIELD_AFTER_H, OHM_FIELD_AIR_C, OHM_FIELD_COLDEST_C);
  oc_page_end(page, "Should be");
  OC_SAY(page, "{K} colder or warmer than the coolant is", OHM_FIELD_ALLOW_K);
  oc_page_end(page, "Allowed");
}

/* ---- the verdict ---- */

static void say_bad(struct oc_page *page) {
  bool cold = oc_page_number(page, OHM_FIELD_P_COLD) >= oc_page_number(page, OHM_FIELD_LEVEL);
  oc_page_add(page,
              cold ? "BAD: colder than the coolant can be" : "BAD: warmer than the coolant can be");
  oc_reading_sure(page, cold ? OHM_FIELD_P_COLD : OHM_FIELD_P_WARM);
}

static void verdict_line(struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_page_add(page, "GOOD cold: it agrees with the air");
    oc_reading_sure(page, OHM_FIELD_P_WITHIN);
    break;
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    say_bad(page);
    break;
  case OHM_REASON_WARM:
    oc_page_add(page, "CANNOT TELL YET: too warm; sun, a heater, a garage or a move do that");
    break;
  case OHM_REASON_OUTSIDE_BAND:
    oc_page_add(page, "CANNOT TELL YET: the curve of this sensor does not reach that far");
    break;
  default:
    oc_reading_verdict(page);
    break;
  }
  oc_page_end(page, "VERDICT");
}

/* ---- the others, and the fan ---- */

static void others_line(struct oc_page *page) {
  if (!oc_page_text(page, OHM_FIELD_AGREEMENT))
    return;
  if (oc_page_text(page, OHM_FIELD_ODD)) {
    OC_SAY(page, "the {text} sensor is the odd one out, {K} too ", OHM_FIELD_ODD,
           OHM_FIELD_ODD_OFF_K);
    oc_page_add(page, oc_page_number(page, OHM_FIELD_ODD_OFF_K) < 0 ? "cold by the others"
                                                                    : "warm by the others");
  } else if (oc_page_is(page, OHM_FIELD_AGREEMENT, "consistent")) {
    oc_page_add(page, "the sensors agree with each other");
  } else {
    oc_page_add(page, "the sensors do not agree, and nothing says which one is off");
  }
  oc_page_end(page, "The others");
}

static void fan_line(struct oc_page *page) {
  double missed_k = oc_page_number(page, OHM_FIELD_MISSED_COLD_K);
  /* What is too cold has shown. */
  if (isnan(missed_k) || ohm_finding_verdict(page->finding) == OHM_OUTSIDE)
    return;
  if (missed_k < OC_LEAST_SAID_K)
    oc_page_add(page, "NOT ANSWERED: nothing too cold hides here, but it was not hot");
  else
    OC_SAY(page, "NOT ANSWERED: {K} too cold would not show here", OHM_FIELD_MISSED_COLD_K);
  if (oc_page_number(page, OHM_FIELD_SERIES_OHM) > 0 && missed_k >= OC_LEAST_SAID_K) {
    OC_SAY(page, "; {ohm} in plug or wire make that", OHM_FIELD_SERIES_OHM);
    oc_reading_series(page, OHM_FIELD_SERIES_SOUND_LATE_K);
  }
  oc_page_end(page, "For the fan");
}

/* ---- what to do next ---- */

static void say_hours(struct oc_page *page, double hours_h) {
  oc_page_add(page, "once more when it has stood ");
  oc_say_hours(&page->line, ceil(2 * hours_h) / 2);
}

static void say_when(struct oc_page *page) {
  double after_h = oc_page_number(page, OHM_FIELD_AFTER_H);
  double decidable_h = oc_page_number(page, OHM_FIELD_DECIDABLE_H);
  double passes_h = oc_page_number(page, OHM_FIELD_PASSES_H);
  if (isnan(decidable_h)) {
    oc_page_add(page, "know the air better, log it, or a thermometer beside the sensor");
  } else if (passes_h > after_h) {
    say_hours(page, passes_h);
    oc_page_add(page, ", if the air stays so: the same reading passes then");
  } else if (decidable_h > after_h) {
    say_hours(page, decidable_h);
    oc_page_add(page, ", if the air stays so");
  } else {
    oc_page_add(page, "a thermometer beside the sensor: it is near the limit");
  }
}

static void next_line(struct oc_page *page) {
  if (oc_finding_reason(page->finding) == OHM_REASON_WARM)
    oc_page_add(page, "after a night outside, no sun, heater unplugged; then --undisturbed");
  else if (!oc_reading_next(page))
    say_when(page);
  oc_page_end(page, "Next");
}

void oc_report_soak(struct oc_page *page) {
  caution_lines(page);
  oc_reading_lines(page);
  expected_lines(page);
  verdict_line(page);
  others_line(page);
  fan_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
