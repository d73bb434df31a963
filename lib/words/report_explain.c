/* SPDX-License-Identifier: MIT */
/* What is wrong with a sensor, in the words of the bench. */
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

static bool text_is(const struct page *page, ohm_field field, const char *word) {
  const char *text = ohm_finding_text(page->finding, (int)field, 0);
  return text && strcmp(text, word) == 0;
}

/* ---- one explanation ---- */

static void add_percent(struct oc_text *out, double percent) {
  char digits[OHM_NUMBER_SIZE];
  double size = fabs(percent);
  ohm_number_print_fixed(size, size < 10 ? 1 : 0, digits, sizeof digits);
  oc_text_add(out, digits);
}

/* "97 to 130 ohm"; one of them alone where the other is not bounded. */
static void add_ohms(struct oc_text *out, const struct page *page) {
  double low = number(page, OHM_FIELD_FAULT_LOW_OHM);
  double high = number(page, OHM_FIELD_FAULT_HIGH_OHM);
  if (isnan(high)) {
    oc_text_add(out, isnan(low) ? "any" : "more than ");
    if (!isnan(low))
      oc_say_digits(out, low, 2);
    return;
  }
  oc_say_digits(out, low, 2);
  oc_text_add(out, " to ");
  oc_say_digits(out, high, 2);
}

/* "36 to 42 % more ohms", or how far to either side. */
static void add_percents(struct oc_text *out, const struct page *page, const char *more,
                         const char *less) {
  double low = number(page, OHM_FIELD_FAULT_LOW_PERCENT);
  double high = number(page, OHM_FIELD_FAULT_HIGH_PERCENT);
  bool below = high <= 0;
  if (low < 0 && high > 0) {
    add_percent(out, low);
    oc_text_add(out, " % ");
    oc_text_add(out, less);
    oc_text_add(out, " to ");
    below = false;
    low = high;
  } else {
    add_percent(out, below ? high : low);
    oc_text_add(out, " to ");
    if (below)
      high = low;
  }
  add_percent(out, high);
  oc_text_add(out, " % ");
  oc_text_add(out, below ? less : more);
}

/* Whether it is too many ohms that the module would see when hot. */
static bool never_starts(const struct page *page) {
  double percent = number(page, OHM_FIELD_FAULT_PERCENT);
  switch (oc_finding_explanation(page->finding)) {
  case OHM_EXPLANATION_SERIES:
    return true;
  case OHM_EXPLANATION_DRIFT:
    return percent > 0;
  case OHM_EXPLANATION_BETA_DRIFT:
    return percent < 0;
  default:
    return false;
  }
}

static void add_fan(struct oc_text *out, const struct page *page) {
  double late_k = number(page, OHM_FIELD_FAULT_LATE_K);
  oc_text_add(out, "; the fan ");
  if (isnan(late_k)) {
    oc_text_add(out, never_starts(page) ? "stays off up to " : "always runs");
    if (never_starts(page))
      oc_say_never(out);
  } else if (fabs(late_k) < OC_LEAST_SAID_K) {
    oc_text_add(out, "as it should");
  } else {
    oc_say_kelvins(out, fabs(late_k));
    oc_text_add(out, late_k > 0 ? " late" : " early");
  }
}

static void add_elsewhere(struct oc_text *out, const struct page *page) {
  double there_ohm = number(page, OHM_FIELD_SEPARATING_OHM);
  if (isnan(there_ohm))
    return;
  oc_text_add(out, "; at ");
  oc_text_add_number(out, number(page, OHM_FIELD_SEPARATING_C));
  oc_text_add(out, " C about ");
  oc_say_digits(out, there_ohm, 2);
}

static void add_other_part(struct oc_text *out, const struct page *page) {
  const char *name = ohm_finding_text(page->finding, OHM_FIELD_SENSOR, 0);
  oc_text_add(out, "it reads like ");
  oc_text_add(out, name ? name : "none of those compared");
  if (text_is(page, OHM_FIELD_SENSOR_KIND, "gauge"))
    oc_text_add(out, ", a gauge's sender, which asks for no fan and may be good");
}

static const char *const labels[OC_EXPLANATIONS] = {"Healthy",   "In series",  "Leakage", "Drift",
                                                    "Steepness", "Other part", "Open",    "Shorted",
                                                    "Plug on",   "Wrong range"};

static void explanation_line(const struct page *page, ohm_explanation explanation) {
  OC_SENTENCE(text);
  switch (explanation) {
  case OHM_EXPLANATION_SERIES:
    add_ohms(&text, page);
    oc_text_add(&text, " in plug, pins or wire");
    add_fan(&text, page);
    break;
  case OHM_EXPLANATION_LEAKAGE:
    add_ohms(&text, page);
    oc_text_add(&text, " across it: wet plug, cracked body");
    add_fan(&text, page);
    break;
  case OHM_EXPLANATION_DRIFT:
    add_percents(&text, page, "too many ohms", "too few ohms");
    oc_text_add(&text, ", everywhere");
    add_fan(&text, page);
    break;
  case OHM_EXPLANATION_BETA_DRIFT:
    add_percents(&text, page, "steeper than printed", "flatter than printed");
    add_fan(&text, page);
    break;
  case OHM_EXPLANATION_OTHER_PART:
    add_other_part(&text, page);
    break;
  case OHM_EXPLANATION_PLUG_ON:
    oc_text_add(&text, "a good one, and the plug left on: a module's ");
    add_ohms(&text, page);
    oc_text_add(&text, " beside it");
    break;
  case OHM_EXPLANATION_WRONG_RANGE:
    oc_text_add(&text, "a good one, if you read ");
    oc_say_resistance(&text, number(page, OHM_FIELD_SUGGESTED_OHM));
    break;
  case OHM_EXPLANATION_OPEN:
    oc_text_add(&text, "no circuit between your probes");
    break;
  case OHM_EXPLANATION_SHORT:
    oc_text_add(&text, "next to 0 ohm between your probes");
    break;
  default:
    oc_text_add(&text, "the readings go with a good one");
    break;
  }
  add_elsewhere(&text, page);
  oc_sentence_line(page->out, labels[explanation], text.buffer);
}

/* ---- what they come to ---- */

static size_t how_many(const struct page *page) {
  size_t count = 0;
  while (ohm_finding_text(page->finding, OHM_FIELD_CANDIDATES, count))
    count++;
  return count;
}

static void verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  bool outside = ohm_finding_verdict(page->finding) == OHM_OUTSIDE;
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_text_add(&text, "GOOD: the readings go with a healthy sensor");
    break;
  case OHM_REASON_ONE:
    oc_text_add(&text, "NOT AS IT SHOULD BE, and one thing explains it");
    break;
  case OHM_REASON_SEVERAL:
    oc_text_add(&text, outside ? "NOT AS IT SHOULD BE; " : "CANNOT TELL YET: ");
    oc_text_add_count(&text, how_many(page));
    oc_text_add(&text, " things would explain these readings");
    break;
  case OHM_REASON_NONE:
    oc_text_add(&text, "NOT AS IT SHOULD BE, and no single fault explains it");
    break;
  case OHM_REASON_OPEN:
    oc_text_add(&text, "BAD: open, no circuit between your probes");
    break;
  case OHM_REASON_SHORTED:
    oc_text_add(&text, "BAD: shorted, next to 0 ohm between your probes");
    break;
  case OHM_REASON_PLUG_ON:
    oc_text_add(&text, "CANNOT TELL YET: is the plug off? With it on, a good one reads so");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "CANNOT TELL YET: did you mean ");
    oc_say_resistance(&text, number(page, OHM_FIELD_SUGGESTED_OHM));
    oc_text_add(&text, "? A dial at k shows it without");
    break;
  default:
    oc_text_add(&text, "CANNOT TELL YET: the meter ran out of range; that is not yet open");
    break;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

static const char *after_one(const struct page *page) {
  bool at_pins = text_is(page, OHM_FIELD_PLACE, "sensor");
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
    return "pins cleaned, plug off, at the sensor: once more before you buy";
  }
}

static void next_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_text_add(&text, "what it does not see: plug and wires, at the module's end, hot");
    break;
  case OHM_REASON_ONE:
    oc_text_add(&text, after_one(page));
    break;
  case OHM_REASON_SEVERAL:
    if (isnan(number(page, OHM_FIELD_SEPARATING_C))) {
      oc_text_add(&text, "no reading from ice to boiling parts them: clean plug and pins, then "
                         "once more at the sensor's own pins");
    } else {
      oc_text_add(&text, "read it near ");
      oc_text_add_number(&text, number(page, OHM_FIELD_SEPARATING_C));
      oc_text_add(&text, " C too, thermometer beside it: each would read otherwise there");
    }
    break;
  case OHM_REASON_OPEN:
  case OHM_REASON_SHORTED:
    oc_text_add(&text, "is it a radiator fan switch? OL cold and 0 hot is good. Else repeat");
    break;
  case OHM_REASON_PLUG_ON:
    oc_text_add(&text, "key off, plug off, and at the sensor's own pins");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "type the reading with its k, or with ohm behind it");
    break;
  case OHM_REASON_NONE:
    oc_text_add(&text, "each reading once more, standing still; then the part number");
    break;
  default:
    oc_text_add(&text, "one range up; over range on the highest is open: then type open");
    break;
  }
  oc_sentence_line(page->out, "Next", text.buffer);
}

static void caution_lines(const struct page *page) {
  oc_sentence_line(page->out, "CAUTION",
                   "Key off, blades clear: unplugging this sensor starts many fans.");
  if (number(page, OHM_FIELD_AT_C) > OC_SCALDS_C ||
      number(page, OHM_FIELD_SEPARATING_C) > OC_SCALDS_C)
    oc_sentence_line(page->out, "",
                     "Hot coolant scalds: never open it hot. Maker's procedure first.");
}

void oc_report_explain(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  int explanation = oc_finding_explanation(finding);
  if (!ohm_finding_text(finding, OHM_FIELD_VERDICT, 0)) {
    if (explanation != OC_EXPLANATIONS)
      explanation_line(&page, explanation);
    return;
  }
  caution_lines(&page);
  verdict_line(&page);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(&page);
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
