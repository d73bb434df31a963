/* SPDX-License-Identifier: MIT */
/* A finding in the words of the bench: each room that answers has its screen. */
#include "report.h"

#include "../bench/answer.h"
#include "sentence.h"

typedef void lines_function(struct oc_text *out, const ohm_finding *finding);

/* With no sensor a resistance means no temperature. */
static void measure(struct oc_text *out, const ohm_finding *finding) {
  double r_ohm = ohm_finding_number(finding, OHM_FIELD_R_OHM);
  oc_sentence_line(out, "You read", ohm_finding_text(finding, OHM_FIELD_READ, 0));
  if (!isnan(r_ohm)) {
    OC_SENTENCE(sentence);
    oc_say_resistance(&sentence, r_ohm);
    oc_text_add(&sentence, ", give or take ");
    oc_say_resistance(&sentence, ohm_finding_number(finding, OHM_FIELD_EXPANDED_R_OHM));
    oc_sentence_line(out, "That means", sentence_buffer);
  }
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}

static lines_function *const lines_about[OC_VERBS] = {[OHM_VERB_CHECK] = oc_report_bath,
                                                      [OHM_VERB_IDENTIFY] = oc_report_identify,
                                                      [OHM_VERB_PINS] = oc_report_pins,
                                                      [OHM_VERB_EXPLAIN] = oc_report_explain,
                                                      [OHM_VERB_SOAK] = oc_report_soak,
                                                      [OHM_VERB_SIGNAL] = oc_report_pin,
                                                      [OHM_VERB_SUBSTITUTE] = oc_report_substitute,
                                                      [OHM_VERB_LOOM] = oc_report_loom,
                                                      [OHM_VERB_FANPOINT] = oc_report_fanpoint,
                                                      [OHM_VERB_CIRCUIT] = oc_report_isolation,
                                                      [OHM_VERB_MEASURE] = measure};

size_t ohm_finding_print_report(const ohm_finding *finding, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  int about = oc_finding_about(finding);
  if (about == OC_VERBS)
    return 0;
  lines_about[about](&out, finding);
  return out.length;
}

static void add_finding(struct oc_text *out, const ohm_finding *finding) {
  int about = oc_finding_about(finding);
  if (about != OC_VERBS)
    lines_about[about](out, finding);
}

size_t ohm_answer_print_report(const ohm_answer *answer, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  if (answer)
    add_finding(&out, &answer->whole);
  return out.length;
}
