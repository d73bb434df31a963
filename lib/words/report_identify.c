/* SPDX-License-Identifier: MIT */
/* Which sensor it is, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static bool is_because(const struct oc_page *page, ohm_reason reason) {
  return oc_finding_reason(page->finding) == reason;
}

/* ---- which it is ---- */

static void verdict_line(struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_ONE:
    OC_SAY(page, "FOUND: of the {} compared it is {text} ({in 100})", OHM_FIELD_COMPARED,
           OHM_FIELD_SENSOR, OHM_FIELD_P_SENSOR);
    if (oc_page_has(page, OHM_FIELD_P_NONE))
      OC_SAY(page, "; none of these {in 100}", OHM_FIELD_P_NONE);
    break;
  case OHM_REASON_ALIKE:
    oc_page_add(page, "FOUND: one of these; no reading by such instruments parts them");
    break;
  case OHM_REASON_SEVERAL:
    oc_page_add(page, "CANNOT TELL YET: these fit, and are not told apart");
    break;
  case OHM_REASON_FAN_SWITCH:
    oc_page_add(page, "A RADIATOR FAN SWITCH, no sensor: open cold, closed hot, as it should be");
    break;
  case OHM_REASON_MISSING_K:
    oc_reading_verdict(page);
    break;
  case OHM_REASON_NONE:
    OC_SAY(page, "NONE of the {} compared goes with these readings", OHM_FIELD_COMPARED);
    break;
  case OHM_REASON_SHORTED:
    oc_page_add(page, "CANNOT TELL: 0 ohm names no sensor");
    break;
  default:
    oc_page_add(page, "CANNOT TELL YET: over range or open names no sensor");
    break;
  }
  oc_page_end(page, "VERDICT");
}

/* A sender of the instrument, judged as a module's sensor, would be condemned. */
static void gauge_line(struct oc_page *page) {
  double gauges = oc_page_number(page, OHM_FIELD_GAUGES);
  if (!(gauges > 0))
    return;
  oc_page_add(page, gauges < (double)oc_page_count(page, OHM_FIELD_CANDIDATES)
                        ? "among them is a gauge's sender: it"
                        : "a gauge's sender: it feeds the instrument and");
  oc_page_line(page, "Mind",
               " asks for no fan. Read against a module's sensor it looks bad, and is not.");
}

static void fan_line(struct oc_page *page) {
  double least_k = oc_page_number(page, OHM_FIELD_FIFTY_LEAST_LATE_K);
  double most_k = oc_page_number(page, OHM_FIELD_FIFTY_LATE_K);
  if (!oc_page_has(page, OHM_FIELD_FAN_C))
    return;
  oc_page_add(page, is_because(page, OHM_REASON_ONE) ? "" : "whichever it is, ");
  OC_SAY(page, "set for {C}, ", OHM_FIELD_FAN_C);
  oc_page_add(page, oc_hidden);
  oc_page_add(page, " in the plug make it ");
  if (isnan(least_k))
    OC_SAY(page, "stay {late}", OHM_FIELD_FIFTY_LEAST_LATE_K);
  else if (isnan(most_k))
    OC_SAY(page, "{K} late, or stay {late}", OHM_FIELD_FIFTY_LEAST_LATE_K, OHM_FIELD_FIFTY_LATE_K);
  else if (most_k - least_k >= 1)
    OC_SAY(page, "{K} to {K} late", OHM_FIELD_FIFTY_LEAST_LATE_K, OHM_FIELD_FIFTY_LATE_K);
  else
    OC_SAY(page, "{K} late", OHM_FIELD_FIFTY_LEAST_LATE_K);
  oc_page_end(page, "For the fan");
}

/* ---- what to do next ---- */

static void next_line(struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_SEVERAL:
    OC_SAY(page, "measure near {} C, thermometer beside: {ohm} or {ohm} settles it",
           OHM_FIELD_SEPARATING_C, OHM_FIELD_SEPARATING_OHM, OHM_FIELD_SEPARATING_OTHER_OHM);
    break;
  case OHM_REASON_ONE:
  case OHM_REASON_ALIKE:
    oc_page_add(page, "check it" OC_BY_NAME);
    break;
  case OHM_REASON_FAN_SWITCH:
    oc_page_add(page, "does it close at the degrees on its case? Warm it in water, thermometer "
                      "beside it; then 'circuit' follows the rest");
    break;
  case OHM_REASON_MISSING_K:
    oc_reading_next(page);
    break;
  case OHM_REASON_NONE:
    oc_page_add(page, "plug off, right pins, range and its k? Another pair of pins? Then the "
                      "part number: a sensor's file can be given too");
    break;
  default:
    oc_page_add(page, "another range, the right pins; a radiator fan switch reads OL cold, 0 "
                      "hot, and is good");
    break;
  }
  oc_page_end(page, "Next");
}

void oc_report_identify(struct oc_page *page) {
  oc_page_line(page, "CAUTION", OC_UNPLUGGING " " OC_SCALDS_FIRST);
  verdict_line(page);
  if (!is_because(page, OHM_REASON_ONE))
    oc_page_list(page, "It may be", OHM_FIELD_CANDIDATES);
  gauge_line(page);
  fan_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
