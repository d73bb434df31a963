/* SPDX-License-Identifier: MIT */
/* Resistors in the sensor's place and the fan's points, in the words of the bench. */
#include <string.h>

#include "../bench/finding.h"
#include "../ground/number.h"
#include "report.h"
#include "sentence.h"

struct page {
  const ohm_finding *finding;
  struct oc_text *out;
};

static double number(const struct page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

static bool has(const struct page *page, ohm_field field) {
  return !isnan(number(page, field));
}

static void add_fixed(struct oc_text *text, double value, int decimals, const char *unit) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(value, decimals, digits, sizeof digits);
  oc_text_add(text, digits);
  oc_text_add(text, unit);
}

static void caution_lines(const struct page *page) {
  oc_sentence_line(page->out, "CAUTION",
                   "Key off to fit it. Blades clear: the fan is meant to start.");
  oc_sentence_line(page->out, "",
                   "Engine running: one minute at most, for nothing watches its heat.");
  oc_sentence_line(page->out, "",
                   "A matching terminal, never a lead pushed in. Maker's book first.");
}

/* ---- a substitute ---- */

static void fit_line(const struct page *page) {
  OC_SENTENCE(text);
  const char *joined = ohm_finding_text(page->finding, OHM_FIELD_JOINED, 0);
  oc_say_resistance(&text, number(page, OHM_FIELD_FIRST_OHM));
  if (has(page, OHM_FIELD_SECOND_OHM)) {
    bool in_series = joined && strcmp(joined, "series") == 0;
    oc_text_add(&text, in_series ? " and " : " across ");
    oc_say_resistance(&text, number(page, OHM_FIELD_SECOND_OHM));
    oc_text_add(&text, in_series ? " in a row: " : ": ");
    oc_say_digits(&text, number(page, OHM_FIELD_R_OHM), 4);
  }
  oc_text_add(&text, ", at the plug in the sensor's place");
  oc_sentence_line(page->out, "Fit", text.buffer);
}

static void seen_line(const struct page *page) {
  OC_SENTENCE(text);
  oc_say_temperature(&text, number(page, OHM_FIELD_T_C));
  oc_text_add(&text, ", ");
  add_fixed(&text, number(page, OHM_FIELD_SEEN_LOW_C), 1, " to ");
  oc_say_temperature(&text, number(page, OHM_FIELD_SEEN_HIGH_C));
  oc_text_add(&text, " with ");
  oc_text_add_number(&text, number(page, OHM_FIELD_TOLERANCE_PERCENT));
  oc_text_add(&text, " % of it; wanted ");
  oc_say_temperature(&text, number(page, OHM_FIELD_AIM_C));
  oc_sentence_line(page->out, "Module sees", text.buffer);
}

static void pin_line(const struct page *page) {
  OC_SENTENCE(text);
  if (has(page, OHM_FIELD_V_VOLT)) {
    add_fixed(&text, number(page, OHM_FIELD_V_VOLT), 2, " V through ");
    oc_say_resistance(&text, number(page, OHM_FIELD_PULL_UP_OHM));
    oc_text_add(&text, "; ");
  }
  oc_text_add(&text, "the gauge shows ");
  add_fixed(&text, number(page, OHM_FIELD_SHOWN_C), 0, " C; each bears ");
  add_fixed(&text, ceil(number(page, OHM_FIELD_POWER_MW)), 0, " mW");
  oc_sentence_line(page->out, "At the pin", text.buffer);
}

static void substitute_verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  bool surely = ohm_finding_verdict(page->finding) == OHM_OUTSIDE;
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_OPEN:
    oc_text_add(&text, surely ? "NO USE: the module takes it for an open sensor"
                              : "CANNOT TELL: the module may take it for an open sensor");
    break;
  case OHM_REASON_SHORTED:
    oc_text_add(&text, surely ? "NO USE: the module takes it for a short"
                              : "CANNOT TELL: the module may take it for a short");
    break;
  case OHM_REASON_COLD:
    oc_text_add(&text, surely ? "NO FAN: it asks for none before "
                              : "CANNOT TELL: it may not ask for the fan, set for ");
    oc_say_temperature(&text, number(page, OHM_FIELD_FAN_C));
    break;
  default:
    oc_text_add(&text, "ASKS FOR THE FAN, set for ");
    oc_say_temperature(&text, number(page, OHM_FIELD_FAN_C));
    oc_text_add(&text, ", and looks like a sensor");
    break;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

void oc_report_substitute(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  caution_lines(&page);
  fit_line(&page);
  seen_line(&page);
  pin_line(&page);
  substitute_verdict_line(&page);
  oc_sentence_line(out, "Next", "no fan though asked: fuse, relay, motor and their wires");
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}

/* ---- the loom by two substitutes ---- */

static void add_loom(struct oc_text *text, const struct page *page) {
  double between_ohm = number(page, OHM_FIELD_BETWEEN_OHM);
  oc_say_resistance(text, fmax(0, between_ohm));
  oc_say_give_or_take(text, number(page, OHM_FIELD_EXPANDED_BETWEEN_OHM));
}

static void loom_lines(const struct page *page) {
  OC_SENTENCE(text);
  add_loom(&text, page);
  oc_text_add(&text, ", in plug and wires");
  oc_sentence_line(page->out, "The loom", text.buffer);
  OC_SENTENCE(factor);
  oc_text_add(&factor, "takes every resistance for ");
  add_fixed(&factor, number(page, OHM_FIELD_FACTOR), 2, " of it");
  oc_say_give_or_take(&factor, number(page, OHM_FIELD_EXPANDED_FACTOR));
  oc_text_add(&factor, "; 1 is right");
  oc_sentence_line(page->out, "The module", factor.buffer);
}

static void add_late(struct oc_text *text, const struct page *page) {
  oc_text_add(text, "set for ");
  oc_say_temperature(text, number(page, OHM_FIELD_FAN_C));
  if (has(page, OHM_FIELD_START_C)) {
    oc_text_add(text, ", the fan starts at a true ");
    add_fixed(text, number(page, OHM_FIELD_START_C), 0, " C");
  } else {
    oc_text_add(text, ", the fan is off up to a true ");
    oc_say_never(text);
  }
}

static void loom_verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_text_add(&text, "GOOD: plug and wires leave the fan in time; ");
    add_late(&text, page);
    break;
  case OHM_REASON_SERIES:
    oc_text_add(&text, "BAD: ohms in plug or wires; ");
    add_late(&text, page);
    break;
  case OHM_REASON_STUCK:
    oc_text_add(&text, "CANNOT TELL YET: the reports do not move the way the resistors do");
    break;
  case OHM_REASON_BETWEEN:
    oc_text_add(&text, "CANNOT TELL YET: fewer ohms than were fitted: a path across the "
                       "plug, or another sensor's module");
    break;
  default:
    oc_text_add(&text, "CANNOT TELL YET: too coarse; ");
    add_late(&text, page);
    break;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

static const char *next_of_loom(const struct page *page) {
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

void oc_report_loom(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  caution_lines(&page);
  if (has(&page, OHM_FIELD_BETWEEN_OHM))
    loom_lines(&page);
  loom_verdict_line(&page);
  oc_sentence_line(out, "Next", next_of_loom(&page));
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}

/* ---- the fan's points ---- */

static void point_line(const struct page *page, const char *label, ohm_field t_c, ohm_field r_ohm,
                       ohm_field v_volt) {
  OC_SENTENCE(text);
  if (!has(page, t_c))
    return;
  oc_say_temperature(&text, number(page, t_c));
  oc_text_add(&text, ": ");
  oc_say_digits(&text, number(page, r_ohm), 4);
  if (has(page, v_volt)) {
    oc_text_add(&text, ", ");
    add_fixed(&text, number(page, v_volt), 3, " V");
  }
  oc_sentence_line(page->out, label, text.buffer);
}

static void kelvin_line(const struct page *page) {
  OC_SENTENCE(text);
  oc_text_add(&text, "is worth ");
  add_fixed(&text, fabs(number(page, OHM_FIELD_OHM_PER_K)), 2, " ohm");
  if (has(page, OHM_FIELD_VOLT_PER_K)) {
    oc_text_add(&text, ", ");
    add_fixed(&text, 1e3 * fabs(number(page, OHM_FIELD_VOLT_PER_K)), 1, " mV");
  }
  oc_text_add(&text, " where it starts");
  oc_sentence_line(page->out, "One degree", text.buffer);
}

static void hidden_line(const struct page *page) {
  OC_SENTENCE(text);
  double hidden_ohm = number(page, OHM_FIELD_HIDDEN_OHM);
  oc_say_digits(&text, hidden_ohm, hidden_ohm < 100 ? 2 : 3);
  oc_text_add(&text, " in plug or wire: ");
  if (has(page, OHM_FIELD_START_C)) {
    oc_text_add(&text, "starts at a true ");
    oc_say_temperature(&text, number(page, OHM_FIELD_START_C));
    if (has(page, OHM_FIELD_FAN_STOP_C)) {
      oc_text_add(&text, ", stops at ");
      oc_say_temperature(&text, number(page, OHM_FIELD_FAN_STOP_C));
    }
  } else {
    oc_text_add(&text, "off up to a true ");
    oc_say_never(&text);
  }
  oc_sentence_line(page->out, "Hidden", text.buffer);
}

void oc_report_fanpoint(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  oc_sentence_line(out, "CAUTION", "Hands, hair, sleeves clear: the fan may start, key off too.");
  point_line(&page, "Starts at", OHM_FIELD_ON_C, OHM_FIELD_ON_OHM, OHM_FIELD_ON_VOLT);
  point_line(&page, "Stops at", OHM_FIELD_OFF_C, OHM_FIELD_OFF_OHM, OHM_FIELD_OFF_VOLT);
  kelvin_line(&page);
  if (ohm_finding_number(finding, OHM_FIELD_OHM_PER_K) < 0)
    hidden_line(&page);
}
