/* SPDX-License-Identifier: MIT */
/* A finding in the words of the bench: each room that answers has its screen. */
#include "report.h"

#include "../bench/finding.h"

typedef void lines_function(struct oc_text *out, const ohm_finding *finding);

static lines_function *const lines_about[OC_ABOUTS] = {[OC_ABOUT_BATH] = oc_report_bath,
                                                       [OC_ABOUT_IDENTIFY] = oc_report_identify,
                                                       [OC_ABOUT_PINS] = oc_report_pins,
                                                       [OC_ABOUT_EXPLAIN] = oc_report_explain,
                                                       [OC_ABOUT_SOAK] = oc_report_soak,
                                                       [OC_ABOUT_PIN] = oc_report_pin,
                                                       [OC_ABOUT_SUBSTITUTE] = oc_report_substitute,
                                                       [OC_ABOUT_LOOM] = oc_report_loom,
                                                       [OC_ABOUT_FANPOINT] = oc_report_fanpoint,
                                                       [OC_ABOUT_ISOLATION] = oc_report_isolation};

size_t ohm_report_print(const ohm_finding *finding, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  enum oc_about about = oc_finding_about(finding);
  if (about == OC_ABOUTS)
    return 0;
  lines_about[about](&out, finding);
  return out.length;
}
