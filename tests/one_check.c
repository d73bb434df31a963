/* SPDX-License-Identifier: MIT */
/* One check from the words a person types to its own screen, none of the other answers:
 * what it links is what make room-sizes bounds. */
#include "../lib/words/report.h"

int main(void) {
  ohm_reading reading = OHM_READING_INIT;
  ohm_meter meter = OHM_METER_INIT;
  ohm_reference reference = OHM_REFERENCE_INIT;
  ohm_finding finding;
  char screen[2000];
  struct oc_text out = oc_text_begin(screen, sizeof screen);
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  int failed = ohm_reading_read("2.31k", &reading, NULL) != OHM_OK ||
               ohm_meter_read("0.8%+3", &meter, NULL) != OHM_OK ||
               ohm_leads_read("0.4", &meter, NULL) != OHM_OK ||
               ohm_reference_read("21.5C", &reference, NULL) != OHM_OK ||
               ohm_bath_check(sensor, &reading, &meter, &reference, NULL, &finding) != OHM_OK;
  oc_report_bath(&out, &finding);
  ohm_sensor_free(sensor);
  return failed || out.length == 0 || out.length >= sizeof screen;
}
