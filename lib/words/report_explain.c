/* SPDX-License-Identifier: MIT */
/* What is wrong with a sensor, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

/* ---- one explanation ---- */

static void say_percent(struct oc_page *page, double percent) {
  oc_say_decimals(&page->line, fabs(percent), fabs(percent) < 10 ? 1 : 0);
}

/* "97 to 130 ohm"; one of them alone where the other is not bounded. */
static void say_ohms(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_FAULT_HIGH_OHM))
    OC_SAY(page, "{2 ohm} to {2 ohm}", OHM_FIELD_FAULT_LOW_OHM, OHM_FIELD_FAULT_HIGH_OHM);
  else if (oc_page_has(page, OHM_FIELD_FAULT_LOW_OHM))
    OC_SAY(page, "more than {2 ohm}", OHM_FIELD_FAULT_LOW_OHM);
  else
    oc_page_add(page, "any");
}

/* "36 to 42 % more ohms", or how far to either side. */
static void say_percents(struct oc_page *page, const char *more, const char *less) {
  double low = oc_page_number(page, OHM_FIELD_FAULT_LOW_PERCENT);
  double high = oc_page_number(page, OHM_FIELD_FAULT_HIGH_PERCENT);
  bool below = high <= 0;
  bool around = low < 0 && high > 0;
  say_percent(page, below ? high : low);
  if (around) {
    oc_page_add(page, " % ");
    oc_page_add(page, less);
  }
  oc_page_add(page, " to ");
  say_percent(page, below ? low : high);
  oc_page_add(page, " % ");
  oc_page_add(page, below ? less : more);
}

/* Whether it is too many ohms that the module would see when hot. */
static bool never_starts(const struct oc_page *page) {
  double percent = oc_page_number(page, OHM_FIELD_FAULT_PERCENT);
  switch (oc_finding_explanation(page->finding)) {
  case OHM_EXPLANATION_SERIES:
    return true;
  case OHM_EXPLANATION_DRIFT:
    return percent > 0;
  case OHM_EXPLANATION_BETA_DRIFT:
    return percent < 0;
  case OHM_EXPLANATION_OTHER_PART:
    return !oc_page_has(page, OHM_FIELD_START_HIGH_C);
  default:
    return false;
  }
}

static void say_fan(struct oc_page *page) {
  double late_k = oc_page_number(page, OHM_FIELD_FAULT_LATE_K);
  oc_page_add(page, "; the fan ");
  if (fabs(late_k) < OC_LEAST_SAID_K)
    oc_page_add(page, "as it should");
  else if (isnan(late_k) && !never_starts(page))
    oc_page_add(page, "always runs");
  else
    OC_SAY(page, isnan(late_k) ? "stays {late}" : "{late}", OHM_FIELD_FAULT_LATE_K);
}

static void say_other_part(struct oc_page *page) {
  OC_SAY(page, "it reads like {text|none of those compared}", OHM_FIELD_SENSOR);
  if (oc_page_is(page, OHM_FIELD_SENSOR_KIND, "gauge"))
    oc_page_add(page, ", a gauge's sender, which asks for no fan and may be good");
  else
    say_fan(page);
}

static void explanation_line(struct oc_page *page, ohm_explanation explanation) {
  static const char *const labels[OC_EXPLANATIONS] = {
      "Healthy", "In series", "Leakage", "Drift",       "Steepness", "Other part",
      "Open",    "Shorted",   "Plug on", "Wrong range", "Fahrenheit"};
  switch (explanation) {
  case OHM_EXPLANATION_SERIES:
    say_ohms(page);
    oc_page_add(page, " in plug, pins or wire");
    say_fan(page);
    break;
  case OHM_EXPLANATION_LEAKAGE:
    say_ohms(page);
    oc_page_add(page, " across it: wet plug, cracked body");
    say_fan(page);
    break;
  case OHM_EXPLANATION_DRIFT:
    say_percents(page, "too many ohms", "too few ohms");
    oc_page_add(page, ", everywhere");
    say_fan(page);
    break;
  case OHM_EXPLANATION_BETA_DRIFT:
    say_percents(page, "steeper than printed", "flatter than printed");
    say_fan(page);
    break;
  case OHM_EXPLANATION_OTHER_PART:
    say_other_part(page);
    break;
  case OHM_EXPLANATION_PLUG_ON:
    oc_page_add(page, "a good one, and the plug left on: a module's ");
    say_ohms(page);
    oc_page_add(page, " beside it");
    break;
  case OHM_EXPLANATION_WRONG_RANGE:
    OC_SAY(page, "a good one, if you read {ohm}", OHM_FIELD_SUGGESTED_OHM);
    break;
  case OHM_EXPLANATION_FAHRENHEIT:
    OC_SAY(page, "a good one, if the thermometer showed Fahrenheit: then it was {C}",
           OHM_FIELD_AT_C);
    break;
  case OHM_EXPLANATION_OPEN:
    oc_page_add(page, OC_OPEN_CIRCUIT);
    break;
  case OHM_EXPLANATION_SHORT:
    oc_page_add(page, OC_SHORT_CIRCUIT);
    break;
  default:
    oc_page_add(page, "the readings go with a good one");
    break;
  }
  if (oc_page_has(page, OHM_FIELD_SEPARATING_OHM))
    OC_SAY(page, "; at {} C about {2 ohm}", OHM_FIELD_SEPARATING_C, OHM_FIELD_SEPARATING_OHM);
  oc_page_end(page, labels[explanation]);
}

/* ---- what they come to ---- */

static void say_several(struct oc_page *page) {
  bool outside = ohm_finding_verdict(page->finding) == OHM_OUTSIDE;
  oc_page_add(page, outside ? "NOT AS IT SHOULD BE; " : "CANNOT TELL YET: ");
  oc_text_add_count(&page->line, oc_page_count(page, OHM_FIELD_CANDIDATES));
  oc_page_add(page, " things would explain these readings");
}

static void verdict_line(struct oc_page *page) {
  static const char *const verdicts[] = {
      [OHM_REASON_CONFORMS] = "GOOD: the readings go with a healthy sensor",
      [OHM_REASON_ONE] = "NOT AS IT SHOULD BE, and one thing explains it",
      [OHM_REASON_NONE] = "NOT AS IT SHOULD BE, and no single fault explains it",
      [OHM_REASON_FAHRENHEIT] = "CANNOT TELL YET: were those degrees Fahrenheit?",
  };
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_SEVERAL)
    say_several(page);
  else if (!OC_ADD_OF(page, verdicts, reason))
    oc_reading_verdict(page);
  oc_page_end(page, "VERDICT");
}

/* "5 C late", of a lateness in whole degrees. */
static void say_late(struct oc_page *page, double late_k) {
  oc_say_decimals(&page->line, fabs(late_k), 0);
  oc_page_add(page, late_k < 0 ? " C early" : " C late");
}

/* Where all that leads says the same of the fan, that need not wait for which it is. */
static void fan_line(struct oc_page *page) {
  double fan_c = oc_page_number(page, OHM_FIELD_FAN_C);
  double first_k = floor(oc_page_number(page, OHM_FIELD_START_LOW_C) - fan_c);
  double last_k = ceil(oc_page_number(page, OHM_FIELD_START_HIGH_C) - fan_c);
  double limit_k = oc_page_number(page, OHM_FIELD_LIMIT_K);
  bool never_late = last_k <= limit_k;
  bool late = first_k >= limit_k;
  if (oc_page_count(page, OHM_FIELD_CANDIDATES) < 2 || !(never_late || late))
    return;
  OC_SAY(page, "whichever it is, set for {C}, it ", OHM_FIELD_FAN_C);
  if (first_k + fan_c >= OC_NEVER_C) {
    OC_SAY(page, "stays {late}", OHM_FIELD_START_HIGH_C);
    oc_page_end(page, "For the fan");
    return;
  }
  oc_page_add(page, isnan(first_k) ? "always runs, or starts " : "starts ");
  if (!isnan(first_k)) {
    say_late(page, first_k);
    oc_page_add(page, isnan(last_k) ? ", or stays " : " to ");
  }
  if (isnan(last_k))
    OC_SAY(page, "{late}", OHM_FIELD_START_HIGH_C);
  else
    say_late(page, last_k);
  if (never_late)
    oc_page_add(page, ": not what keeps the fan off");
  oc_page_end(page, "For the fan");
}

static const char *after_one(const struct oc_page *page) {
  bool at_pins = oc_page_is(page, OHM_FIELD_PLACE, "sensor");
  switch (oc_finding_explanation(page->finding)) {
  case OHM_EXPLANATION_SERIES:
    return at_pins ? "clean its pins and read once more there; the same again: the sensor is bad"
                   : "read at the sensor's own pins: good there, and it is plug or wires";
  case OHM_EXPLANATION_LEAKAGE:
    return at_pins
               ? "dry and clean its pins, read once more; the same again: the sensor is bad"
               : "plug off, dry, and read at the sensor's own pins: good there, and it is outside";
  case OHM_EXPLANATION_OTHER_PART:
    return "compare the part number with the car's before you buy";
  case OHM_EXPLANATION_WRONG_RANGE:
    return "read once more, and note the k";
  default:
    return OC_ONCE_MORE;
  }
}

static void next_line(struct oc_page *page) {
  static const char *const nexts[] = {
      [OHM_REASON_CONFORMS] = "what it does not see: plug and wires, at the module's end, hot",
      [OHM_REASON_SEVERAL] = "no reading from ice to boiling parts them: clean plug and pins, then "
                             "once more at the sensor's own pins",
      [OHM_REASON_NONE] = "each reading once more, standing still; then the part number",
  };
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_ONE)
    oc_page_add(page, after_one(page));
  else if (reason == OHM_REASON_SEVERAL && oc_page_has(page, OHM_FIELD_SEPARATING_C))
    OC_SAY(page, "read it near {} C too, thermometer beside it: each would read otherwise there",
           OHM_FIELD_SEPARATING_C);
  else if (reason == OHM_REASON_FAHRENHEIT)
    oc_page_add(page, "look which the thermometer shows: if F, type it with an F; if C, read it at "
                      "another temperature too");
  else if (!OC_ADD_OF(page, nexts, reason))
    oc_reading_next(page);
  oc_page_end(page, "Next");
}

void oc_report_explain(struct oc_page *page) {
  int explanation = oc_finding_explanation(page->finding);
  if (!oc_page_text(page, OHM_FIELD_VERDICT)) {
    if (explanation != OC_EXPLANATIONS)
      explanation_line(page, (ohm_explanation)explanation);
    return;
  }
  oc_reading_caution(page, oc_page_number(page, OHM_FIELD_AT_C) > OC_SCALDS_C ||
                               oc_page_number(page, OHM_FIELD_SEPARATING_C) > OC_SCALDS_C);
  verdict_line(page);
  fan_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
