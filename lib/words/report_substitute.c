/* SPDX-License-Identifier: MIT */
/* Resistors in the sensor's place and the fan's points, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static void caution_lines(struct oc_page *page) {
  oc_page_line(page, "CAUTION", "Key off to fit it. Blades clear: the fan is meant to start.");
  oc_page_line(page, "", "Engine running: one minute at most, for nothing watches its heat.");
  oc_page_line(page, "", "A matching terminal, never a lead pushed in. Maker's book first.");
}

/* ---- a substitute ---- */

static void fit_line(struct oc_page *page) {
  bool in_series = oc_page_is(page, OHM_FIELD_JOINED, "series");
  OC_SAY(page, "{ohm}", OHM_FIELD_FIRST_OHM);
  if (oc_page_has(page, OHM_FIELD_SECOND_OHM))
    OC_SAY(page, in_series ? " and {ohm} in a row: {4 ohm}" : " across {ohm}: {4 ohm}",
           OHM_FIELD_SECOND_OHM, OHM_FIELD_R_OHM);
  oc_page_line(page, "Fit", ", at the plug in the sensor's place");
}

static void seen_line(struct oc_page *page) {
  OC_SAY(page, "{C}, {.1} to {C} with {} % of it; wanted {C}", OHM_FIELD_T_C, OHM_FIELD_SEEN_LOW_C,
         OHM_FIELD_SEEN_HIGH_C, OHM_FIELD_TOLERANCE_PERCENT, OHM_FIELD_AIM_C);
  oc_page_end(page, "Module sees");
}

static void pin_line(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_V_VOLT))
    OC_SAY(page, "{.2} V through {ohm}; ", OHM_FIELD_V_VOLT, OHM_FIELD_PULL_UP_OHM);
  OC_SAY(page, "the gauge shows {.0} C; each bears ", OHM_FIELD_SHOWN_C);
  oc_say_decimals(&page->line, ceil(oc_page_number(page, OHM_FIELD_POWER_MW)), 0);
  oc_page_line(page, "At the pin", " mW");
}

static void substitute_verdict_line(struct oc_page *page) {
  bool surely = ohm_finding_verdict(page->finding) == OHM_OUTSIDE;
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_OPEN:
    oc_page_add(page, surely ? "NO USE: the module takes it for an open sensor"
                             : "CANNOT TELL: the module may take it for an open sensor");
    break;
  case OHM_REASON_SHORTED:
    oc_page_add(page, surely ? "NO USE: the module takes it for a short"
                             : "CANNOT TELL: the module may take it for a short");
    break;
  case OHM_REASON_COLD:
    OC_SAY(page,
           surely ? "NO FAN: it asks for none before {C}"
                  : "CANNOT TELL: it may not ask for the fan, set for {C}",
           OHM_FIELD_FAN_C);
    break;
  default:
    OC_SAY(page, "ASKS FOR THE FAN, set for {C}, and looks like a sensor", OHM_FIELD_FAN_C);
    break;
  }
  oc_page_end(page, "VERDICT");
}

void oc_report_second_substitute(struct oc_page *page) {
  fit_line(page);
  seen_line(page);
  pin_line(page);
  substitute_verdict_line(page);
  oc_page_line(page, "Next", "no fan though asked: fuse, relay, motor and their wires");
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}

void oc_report_substitute(struct oc_page *page) {
  caution_lines(page);
  oc_report_second_substitute(page);
}

/* ---- the loom by two substitutes ---- */

static void loom_lines(struct oc_page *page) {
  oc_say_digits(&page->line, fmax(0, oc_page_number(page, OHM_FIELD_BETWEEN_OHM)), 3);
  OC_SAY(page, "{+-}, in plug and wires", OHM_FIELD_EXPANDED_BETWEEN_OHM);
  oc_page_end(page, "The loom");
  OC_SAY(page, "takes every resistance for {.2} of it{+-}; 1 is right", OHM_FIELD_FACTOR,
         OHM_FIELD_EXPANDED_FACTOR);
  oc_page_end(page, "The module");
}

static void say_never(struct oc_page *page) {
  oc_page_add(page, "off up to a true ");
  oc_page_add(page, oc_never);
}

static void say_late(struct oc_page *page) {
  OC_SAY(page, "set for {C}, the fan ", OHM_FIELD_FAN_C);
  if (oc_page_has(page, OHM_FIELD_START_C)) {
    OC_SAY(page, "starts at a true {.0} C", OHM_FIELD_START_C);
  } else {
    oc_page_add(page, "is ");
    say_never(page);
  }
}

static void loom_verdict_line(struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_page_add(page, "GOOD: plug and wires leave the fan in time; ");
    say_late(page);
    break;
  case OHM_REASON_SERIES:
    oc_page_add(page, "BAD: ohms in plug or wires; ");
    say_late(page);
    break;
  case OHM_REASON_STUCK:
    oc_page_add(page, "CANNOT TELL YET: the reports do not move the way the resistors do");
    break;
  case OHM_REASON_BETWEEN:
    oc_page_add(page, "CANNOT TELL YET: fewer ohms than were fitted: a path across the "
                      "plug, or another sensor's module");
    break;
  default:
    oc_page_add(page, "CANNOT TELL YET: too coarse; ");
    say_late(page);
    break;
  }
  oc_page_end(page, "VERDICT");
}

static const char *next_of_loom(const struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    return "the sensor itself: hot, at its own pins";
  case OHM_REASON_SERIES:
    return "key off, clean and tighten the plug; then both once more";
  case OHM_REASON_STUCK:
    return "does the report move at all? It may be a substitute value: read the codes";
  case OHM_REASON_BETWEEN:
    return "is it this sensor's module? Compare part numbers; dry and clean the plug";
  default:
    return "one of them near what the sensor has hot, the other five times that or more";
  }
}

void oc_report_loom(struct oc_page *page) {
  caution_lines(page);
  if (oc_page_has(page, OHM_FIELD_BETWEEN_OHM))
    loom_lines(page);
  loom_verdict_line(page);
  oc_page_line(page, "Next", next_of_loom(page));
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}

/* ---- the fan's points ---- */

static void point_line(struct oc_page *page, const char *label, ohm_field t_c, ohm_field r_ohm,
                       ohm_field v_volt) {
  if (!oc_page_has(page, t_c))
    return;
  OC_SAY(page, "{C}: {4 ohm}", t_c, r_ohm);
  if (oc_page_has(page, v_volt))
    OC_SAY(page, ", {.3} V", v_volt);
  oc_page_end(page, label);
}

static void kelvin_line(struct oc_page *page) {
  oc_page_add(page, "is worth ");
  oc_say_decimals(&page->line, fabs(oc_page_number(page, OHM_FIELD_OHM_PER_K)), 2);
  oc_page_add(page, " ohm");
  if (oc_page_has(page, OHM_FIELD_VOLT_PER_K)) {
    oc_page_add(page, ", ");
    oc_say_decimals(&page->line, 1e3 * fabs(oc_page_number(page, OHM_FIELD_VOLT_PER_K)), 1);
    oc_page_add(page, " mV");
  }
  oc_page_line(page, "One degree", " where it starts");
}

static void hidden_line(struct oc_page *page) {
  double hidden_ohm = oc_page_number(page, OHM_FIELD_HIDDEN_OHM);
  oc_say_digits(&page->line, hidden_ohm, hidden_ohm < 100 ? 2 : 3);
  oc_page_add(page, " in plug or wire: ");
  if (oc_page_has(page, OHM_FIELD_START_C))
    OC_SAY(page, "starts at a true {C}", OHM_FIELD_START_C);
  else
    say_never(page);
  if (oc_page_has(page, OHM_FIELD_START_C) && oc_page_has(page, OHM_FIELD_FAN_STOP_C))
    OC_SAY(page, ", stops at {C}", OHM_FIELD_FAN_STOP_C);
  oc_page_end(page, "Hidden");
}

void oc_report_fanpoint(struct oc_page *page) {
  oc_page_line(page, "CAUTION", OC_HANDS);
  point_line(page, "Starts at", OHM_FIELD_ON_C, OHM_FIELD_ON_OHM, OHM_FIELD_ON_VOLT);
  point_line(page, "Stops at", OHM_FIELD_OFF_C, OHM_FIELD_OFF_OHM, OHM_FIELD_OFF_VOLT);
  kelvin_line(page);
  if (oc_page_number(page, OHM_FIELD_OHM_PER_K) < 0)
    hidden_line(page);
}
