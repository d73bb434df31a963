/* SPDX-License-Identifier: MIT */
/* A finding in the words of the bench: each room that answers has its screen. */
#include "report.h"

#include "../bench/answer.h"
#include "screen.h"

typedef void lines_function(struct oc_page *page);

/* With no sensor a resistance means no temperature. */
void oc_report_measure(struct oc_page *page) {
  oc_page_line(page, "You read", oc_page_text(page, OHM_FIELD_READ));
  if (oc_page_has(page, OHM_FIELD_R_OHM)) {
    OC_SAY(page, "{ohm}, give or take {2 ohm}", OHM_FIELD_R_OHM, OHM_FIELD_EXPANDED_R_OHM);
    oc_page_end(page, "That means");
  }
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}

#define LINES(number, constant, verb, meaning) [number] = oc_report_##verb,
static lines_function *const lines_about[OC_VERBS] = {OHM_VERBS(LINES)};
#undef LINES

static void add_finding(struct oc_text *out, const ohm_finding *finding) {
  int about = oc_finding_about(finding);
  struct oc_page page;
  if (about == OC_VERBS)
    return;
  oc_page_begin(&page, out, finding);
  lines_about[about](&page);
}

size_t ohm_finding_print_report(const ohm_finding *finding, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  add_finding(&out, finding);
  return out.length;
}

size_t ohm_answer_print_report(const ohm_answer *answer, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  const ohm_finding *whole = ohm_answer_finding(answer);
  switch (oc_finding_about(whole)) {
  case OHM_VERB_CHECK:
    oc_screen_readings(&out, whole, &answer->groups[OHM_GROUP_READINGS]);
    break;
  case OHM_VERB_IDENTIFY:
    oc_screen_candidates(&out, whole, &answer->groups[OHM_GROUP_CANDIDATES]);
    break;
  case OHM_VERB_PINS:
    oc_screen_pairs(&out, whole, &answer->groups[OHM_GROUP_READINGS]);
    break;
  case OHM_VERB_EXPLAIN:
    oc_screen_explanations(&out, whole, &answer->groups[OHM_GROUP_EXPLANATIONS]);
    break;
  case OHM_VERB_SUBSTITUTE:
    oc_screen_substitutes(&out, &answer->groups[OHM_GROUP_RESISTORS]);
    break;
  default:
    add_finding(&out, whole);
  }
  return out.length;
}

size_t ohm_finding_print_budget(const ohm_finding *finding, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  struct oc_page page;
  oc_page_begin(&page, &out, finding);
  if (oc_finding_about(finding) == OHM_VERB_CHECK)
    oc_report_budget(&page);
  return out.length;
}

size_t ohm_answer_print_budget(const ohm_answer *answer, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  if (oc_finding_about(ohm_answer_finding(answer)) == OHM_VERB_CHECK)
    oc_screen_budgets(&out, &answer->groups[OHM_GROUP_READINGS]);
  return out.length;
}
