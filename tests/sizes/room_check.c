/* SPDX-License-Identifier: MIT */
/* One check from the words a person types to its own screen, none of the other answers:
 * what it links is what make room-sizes bounds. */
#include "../../lib/answers/bath.h"
#include "../../lib/bench/finding.h"
#include "../../lib/words/report.h"

int main(void) {
  oc_reading reading = OC_READING_INIT;
  oc_meter meter = OC_METER_INIT;
  oc_reference reference = OC_REFERENCE_INIT;
  struct oc_arena arena = {0};
  ohm_finding finding = oc_finding_in(&arena);
  char screen[2000];
  struct oc_text out = oc_text_begin(screen, sizeof screen);
  struct oc_page page;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  int failed = oc_reading_read("2.31k", &reading, NULL) != OHM_OK ||
               oc_meter_read("0.8%+3", &meter, NULL) != OHM_OK ||
               oc_leads_read("0.4", &meter, NULL) != OHM_OK ||
               oc_reference_read("21.5C", &reference, NULL) != OHM_OK ||
               oc_bath_check(sensor, &reading, &meter, &reference, NULL, &finding) != OHM_OK;
  oc_page_begin(&page, &out, &finding);
  oc_report_check(&page);
  oc_arena_free(&arena);
  ohm_sensor_free(sensor);
  return failed || out.length == 0 || out.length >= sizeof screen;
}
