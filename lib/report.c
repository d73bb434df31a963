/* SPDX-License-Identifier: MIT */
/* A finding in the words of the bench: each room that answers has its screen. */
#include "report.h"

#include "finding.h"

typedef void lines_function(struct ohm_text *out, const ohm_finding *finding);

static lines_function *const lines_about[OHM_ABOUTS] = {
    [OHM_ABOUT_BATH] = ohm_report_bath,
    [OHM_ABOUT_IDENTIFY] = ohm_report_identify,
    [OHM_ABOUT_PINS] = ohm_report_pins,
    [OHM_ABOUT_EXPLAIN] = ohm_report_explain,
    [OHM_ABOUT_SOAK] = ohm_report_soak,
    [OHM_ABOUT_PIN] = ohm_report_pin,
    [OHM_ABOUT_SUBSTITUTE] = ohm_report_substitute,
    [OHM_ABOUT_LOOM] = ohm_report_loom,
    [OHM_ABOUT_FANPOINT] = ohm_report_fanpoint,
    [OHM_ABOUT_ISOLATION] = ohm_report_isolation};

size_t ohm_report_print(const ohm_finding *finding, char *buffer, size_t size) {
  struct ohm_text out = ohm_text_begin(buffer, size);
  enum ohm_about about = ohm_finding_about(finding);
  if (about == OHM_ABOUTS)
    return 0;
  lines_about[about](&out, finding);
  return out.length;
}
