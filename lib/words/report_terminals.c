/* SPDX-License-Identifier: MIT */
/* Which pins are which, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static const char *const said[] = {
    [OHM_ROLE_NONE] = "no circuit between them, on the highest range",
    [OHM_ROLE_MODULE] = "the module's element",
    [OHM_ROLE_GAUGE] = "the gauge's: it asks for no fan, and looks bad beside a module's",
    [OHM_ROLE_EITHER] = "an element, of the module or of the gauge",
    [OHM_ROLE_UNKNOWN] = "an element that goes with no sensor known here",
    [OHM_ROLE_BOTH] = "the wrong pair: two elements, one behind the other",
    [OHM_ROLE_JOINED] = "joined: a wire, no element",
    [OHM_ROLE_GROUND] = "the same element, by way of the engine and its ground",
    [OHM_ROLE_ASK] = "over range on many meters: one range up, then again",
};

static void pair_line(struct oc_page *page) {
  const char *pair = oc_page_text(page, OHM_FIELD_PAIR);
  OC_SAY(page, "{text}: ", OHM_FIELD_READ);
  oc_page_add(page, said[oc_finding_role(page->finding)]);
  if (oc_page_text(page, OHM_FIELD_CANDIDATES))
    OC_SAY(page, "; it goes with {text}", OHM_FIELD_CANDIDATES);
  if (oc_page_count(page, OHM_FIELD_CANDIDATES) > 1)
    oc_page_add(page, " and others");
  oc_page_end(page, pair ? pair : "");
}

static void verdict_line(struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_ONE:
    OC_SAY(page, "FOUND: the module's element is on {text}", OHM_FIELD_PAIR);
    break;
  case OHM_REASON_SEVERAL:
    oc_page_add(page, "CANNOT TELL YET: more than one pair may be the module's");
    break;
  case OHM_REASON_OPEN:
    oc_page_add(page, "NONE: no circuit across any of these pairs");
    break;
  case OHM_REASON_LONE_ONE:
    oc_reading_verdict(page);
    break;
  default:
    oc_page_add(page, "NONE of these pairs goes with a module's sensor");
    break;
  }
  oc_page_end(page, "VERDICT");
}

/* What the engine and its ground add to an element that returns through its thread. */
static void ground_line(struct oc_page *page) {
  if (!oc_page_text(page, OHM_FIELD_READ))
    return;
  if (!oc_page_has(page, OHM_FIELD_GROUND_OHM))
    oc_page_add(page, "BAD: the body has no way to battery negative: sealing tape, or a strap");
  else if (oc_page_number(page, OHM_FIELD_GROUND_OHM) >
           oc_page_number(page, OHM_FIELD_GROUND_LIMIT_OHM))
    OC_SAY(page, "BAD: {2 ohm} between the body and battery negative", OHM_FIELD_GROUND_OHM);
  else
    oc_page_add(page, "GOOD: the body and battery negative read the same");
  oc_page_end(page, "Ground");
}

static const char *next_of(const struct oc_page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_ONE:
    return "check that pair" OC_BY_NAME;
  case OHM_REASON_SEVERAL:
    return "the same pairs at another temperature, 60 C apart; or the wiring diagram";
  case OHM_REASON_LONE_ONE:
    return "one range up, and that pair again";
  default:
    return "clean the pins, highest range, each pair once more, and each pin to the body";
  }
}

void oc_report_pins(struct oc_page *page) {
  if (!oc_page_text(page, OHM_FIELD_VERDICT)) {
    pair_line(page);
    return;
  }
  oc_reading_caution(page, false);
  verdict_line(page);
  ground_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  oc_page_line(page, "Next", next_of(page));
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
