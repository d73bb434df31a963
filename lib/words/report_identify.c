/* SPDX-License-Identifier: MIT */
/* Which sensor it is, in the words of the bench. */
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

static const char *text_of(const struct page *page, ohm_field field) {
  const char *text = ohm_finding_text(page->finding, (int)field, 0);
  return text ? text : "";
}

/* ---- which it is ---- */

static void verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_ONE:
    oc_text_add(&text, "FOUND: of the ");
    oc_text_add_number(&text, number(page, OHM_FIELD_COMPARED));
    oc_text_add(&text, " compared it is ");
    oc_text_add(&text, text_of(page, OHM_FIELD_SENSOR));
    oc_text_add(&text, " (");
    oc_say_in_100(&text, number(page, OHM_FIELD_P_SENSOR));
    oc_text_add(&text, ")");
    break;
  case OHM_REASON_ALIKE:
    oc_text_add(&text, "FOUND: one of these; no reading by such instruments parts them");
    break;
  case OHM_REASON_SEVERAL:
    oc_text_add(&text, "CANNOT TELL YET: these fit, and are not told apart");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "CANNOT TELL YET: did you mean ");
    oc_say_resistance(&text, number(page, OHM_FIELD_SUGGESTED_OHM));
    oc_text_add(&text, "? A dial at k shows it without");
    break;
  case OHM_REASON_NONE:
    oc_text_add(&text, "NONE of the ");
    oc_text_add_number(&text, number(page, OHM_FIELD_COMPARED));
    oc_text_add(&text, " compared goes with these readings");
    break;
  case OHM_REASON_SHORTED:
    oc_text_add(&text, "CANNOT TELL: 0 ohm names no sensor");
    break;
  default:
    oc_text_add(&text, "CANNOT TELL YET: over range or open names no sensor");
    break;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

/* A sender of the instrument, judged as a module's sensor, would be condemned. */
static void gauge_line(const struct page *page) {
  double gauges = number(page, OHM_FIELD_GAUGES);
  static const char all[] = "a gauge's sender: it feeds the instrument and asks for no fan. Read "
                            "against a module's sensor it looks bad, and is not.";
  static const char among[] = "among them is a gauge's sender: it asks for no fan. Read against a "
                              "module's sensor it looks bad, and is not.";
  if (gauges > 0)
    oc_sentence_line(page->out, "Mind",
                     ohm_finding_text(page->finding, OHM_FIELD_CANDIDATES, (size_t)gauges) ? among
                                                                                           : all);
}

static void fan_line(const struct page *page) {
  OC_SENTENCE(text);
  double least_k = number(page, OHM_FIELD_FIFTY_LEAST_LATE_K);
  double most_k = number(page, OHM_FIELD_FIFTY_LATE_K);
  if (isnan(number(page, OHM_FIELD_FAN_C)))
    return;
  bool one = oc_finding_reason(page->finding) == OHM_REASON_ONE;
  oc_text_add(&text, one ? "set for " : "whichever it is, set for ");
  oc_say_temperature(&text, number(page, OHM_FIELD_FAN_C));
  oc_text_add(&text, ", ");
  oc_say_digits(&text, OC_ASSUMED_HIDDEN_OHM, 2);
  oc_text_add(&text, " in the plug make it ");
  if (isnan(least_k)) {
    oc_text_add(&text, "stay off up to ");
    oc_say_never(&text);
  } else {
    oc_say_kelvins(&text, least_k);
    if (isnan(most_k)) {
      oc_text_add(&text, " late, or stay off up to ");
      oc_say_never(&text);
    } else {
      if (most_k - least_k >= 1) {
        oc_text_add(&text, " to ");
        oc_say_kelvins(&text, most_k);
      }
      oc_text_add(&text, " late");
    }
  }
  oc_sentence_line(page->out, "For the fan", text.buffer);
}

/* ---- what to do next ---- */

static void add_further(struct oc_text *text, const struct page *page) {
  oc_text_add(text, "measure near ");
  oc_text_add_number(text, number(page, OHM_FIELD_SEPARATING_C));
  oc_text_add(text, " C, thermometer beside it: ");
  oc_say_digits(text, number(page, OHM_FIELD_SEPARATING_OHM), 2);
  oc_text_add(text, " or ");
  oc_say_digits(text, number(page, OHM_FIELD_SEPARATING_OTHER_OHM), 2);
  oc_text_add(text, " settles it");
}

static void next_line(const struct page *page) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_SEVERAL:
    add_further(&text, page);
    break;
  case OHM_REASON_ONE:
  case OHM_REASON_ALIKE:
    oc_text_add(&text, "check it by name at another temperature, the hotter the better");
    break;
  case OHM_REASON_NONE:
    oc_text_add(&text, "plug off, right pins, range and its k? Another pair of pins? Then the "
                       "part number: a sensor's file can be given too");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "type the reading with its k, or with ohm behind it");
    break;
  default:
    oc_text_add(&text, "another range, the right pins; a radiator fan switch reads OL cold, 0 "
                       "hot, and is good");
    break;
  }
  oc_sentence_line(page->out, "Next", text.buffer);
}

void oc_report_identify(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  oc_sentence_line(out, "CAUTION",
                   "Key off, blades clear: unplugging this sensor starts many fans. Hot coolant "
                   "scalds: never open it hot. Maker's procedure first.");
  verdict_line(&page);
  if (oc_finding_reason(finding) != OHM_REASON_ONE)
    oc_report_list(out, finding, "It may be", OHM_FIELD_CANDIDATES);
  gauge_line(&page);
  fan_line(&page);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(&page);
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
