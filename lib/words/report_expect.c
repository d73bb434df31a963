/* SPDX-License-Identifier: MIT */
/* What a good sensor shows, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static void say_display(struct oc_page *page, double display_ohm) {
  oc_say_digits(&page->line, display_ohm, 4);
}

static void passing_line(struct oc_page *page) {
  double lead_ohm = oc_page_number(page, OHM_FIELD_LEAD_OHM);
  if (oc_page_has(page, OHM_FIELD_ACCEPT_LOW_OHM)) {
    oc_page_add(page, "a display of ");
    say_display(page, oc_page_number(page, OHM_FIELD_ACCEPT_LOW_OHM) + lead_ohm);
    oc_page_add(page, " to ");
    say_display(page, oc_page_number(page, OHM_FIELD_ACCEPT_HIGH_OHM) + lead_ohm);
    oc_page_add(page, ", with such a meter and thermometer");
  } else if (oc_page_has(page, OHM_FIELD_LOW_OHM)) {
    oc_page_add(page, "no display would: such a meter and thermometer are too coarse");
  }
  oc_page_end(page, "Passes");
}

/* Limits need not lie alike on both sides of what is printed. */
static bool passes_itself(const struct oc_page *page) {
  double expected_ohm = oc_page_number(page, OHM_FIELD_EXPECTED_OHM);
  return !(expected_ohm < oc_page_number(page, OHM_FIELD_ACCEPT_LOW_OHM)) &&
         !(expected_ohm > oc_page_number(page, OHM_FIELD_ACCEPT_HIGH_OHM));
}

static void next_line(struct oc_page *page) {
  double needed_k = oc_page_number(page, OHM_FIELD_NEEDED_K);
  bool coarse =
      oc_page_has(page, OHM_FIELD_LOW_OHM) && !oc_page_has(page, OHM_FIELD_ACCEPT_LOW_OHM);
  if (!oc_page_has(page, OHM_FIELD_LOW_OHM)) {
    oc_page_add(page, "find the maker's limits, or say how far off it may be, such as 5%");
  } else if (coarse && needed_k > OC_LEAST_SAID_K) {
    oc_page_add(page, "know the temperature to ");
    oc_say_decimals(&page->line, floor(needed_k * 10) / 10, 1);
    oc_page_add(page, " C");
  } else if (coarse) {
    oc_page_add(page, "a better thermometer or meter: these leave too much open");
  } else if (!passes_itself(page)) {
    oc_page_add(page, "one as printed may stay undecided: know the temperature better");
  } else {
    oc_page_add(page, "measure, and let check judge it: near a limit it cannot tell");
  }
  oc_page_end(page, "Next");
}

void oc_report_expect(struct oc_page *page) {
  oc_reading_caution(page, oc_page_number(page, OHM_FIELD_AT_C) > OC_SCALDS_C);
  if (oc_page_has(page, OHM_FIELD_EXPECTED_OHM))
    OC_SAY(page, "{4 ohm}, if it is as printed", OHM_FIELD_EXPECTED_OHM);
  oc_page_end(page, "Should read");
  oc_reading_temperature(page);
  oc_reading_allowed(page);
  passing_line(page);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
