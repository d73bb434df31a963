/* SPDX-License-Identifier: MIT */
/* Which pins are which, in the words of the bench. */
#include "../bench/finding.h"
#include "../ground/number.h"
#include "report.h"
#include "sentence.h"

static const char *text_of(const ohm_finding *finding, ohm_field field) {
  const char *text = ohm_finding_text(finding, (int)field, 0);
  return text ? text : "";
}

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

static void pair_line(struct oc_text *out, const ohm_finding *finding) {
  OC_SENTENCE(text);
  oc_text_add(&text, text_of(finding, OHM_FIELD_READ));
  oc_text_add(&text, ": ");
  oc_text_add(&text, said[oc_finding_role(finding)]);
  const char *name = ohm_finding_text(finding, OHM_FIELD_CANDIDATES, 0);
  if (name) {
    oc_text_add(&text, "; it goes with ");
    oc_text_add(&text, name);
    oc_text_add(&text, ohm_finding_text(finding, OHM_FIELD_CANDIDATES, 1) ? " and others" : "");
  }
  oc_sentence_line(out, text_of(finding, OHM_FIELD_PAIR), text.buffer);
}

static void verdict_line(struct oc_text *out, const ohm_finding *finding) {
  OC_SENTENCE(text);
  switch (oc_finding_reason(finding)) {
  case OHM_REASON_ONE:
    oc_text_add(&text, "FOUND: the module's element is on ");
    oc_text_add(&text, text_of(finding, OHM_FIELD_PAIR));
    break;
  case OHM_REASON_SEVERAL:
    oc_text_add(&text, "CANNOT TELL YET: more than one pair may be the module's");
    break;
  case OHM_REASON_OPEN:
    oc_text_add(&text, "NONE: no circuit across any of these pairs");
    break;
  case OHM_REASON_LONE_ONE:
    oc_text_add(&text, "CANNOT TELL YET: a 1 alone at the left of the display is over range");
    break;
  default:
    oc_text_add(&text, "NONE of these pairs goes with a module's sensor");
    break;
  }
  oc_sentence_line(out, "VERDICT", text.buffer);
}

/* What the engine and its ground add to an element that returns through its thread. */
static void ground_line(struct oc_text *out, const ohm_finding *finding) {
  OC_SENTENCE(text);
  double ground_ohm = ohm_finding_number(finding, OHM_FIELD_GROUND_OHM);
  double limit_ohm = ohm_finding_number(finding, OHM_FIELD_GROUND_LIMIT_OHM);
  if (!ohm_finding_text(finding, OHM_FIELD_READ, 0))
    return;
  if (isnan(ground_ohm)) {
    oc_text_add(&text, "BAD: the body has no way to battery negative: sealing tape, or a strap");
  } else if (ground_ohm > limit_ohm) {
    oc_text_add(&text, "BAD: ");
    oc_say_digits(&text, ground_ohm, 2);
    oc_text_add(&text, " between the body and battery negative");
  } else {
    oc_text_add(&text, "GOOD: the body and battery negative read the same");
  }
  oc_sentence_line(out, "Ground", text.buffer);
}

static const char *next_of(const ohm_finding *finding) {
  switch (oc_finding_reason(finding)) {
  case OHM_REASON_ONE:
    return "check that pair by name at another temperature, the hotter the better";
  case OHM_REASON_SEVERAL:
    return "the same pairs at another temperature, 60 C apart; or the wiring diagram";
  case OHM_REASON_LONE_ONE:
    return "one range up, and that pair again";
  default:
    return "clean the pins, highest range, each pair once more, and each pin to the body";
  }
}

void oc_report_pins(struct oc_text *out, const ohm_finding *finding) {
  if (!ohm_finding_text(finding, OHM_FIELD_VERDICT, 0)) {
    pair_line(out, finding);
    return;
  }
  oc_sentence_line(out, "CAUTION",
                   "Key off, blades clear: unplugging this sensor starts many fans.");
  verdict_line(out, finding);
  ground_line(out, finding);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  oc_sentence_line(out, "Next", next_of(finding));
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
