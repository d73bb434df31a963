/* SPDX-License-Identifier: MIT */
/* The uncertainty of a finding by cause, to be worked out again by hand. */
#include <string.h>

#include "report.h"

/* ---- a table ---- */

static void add_amount(struct oc_text *out, double value, const char *unit, size_t width) {
  char digits[OHM_NUMBER_SIZE + 8];
  if (isnan(value)) {
    oc_page_cell(out, "none", width);
    return;
  }
  /* Five significant digits, more than any of the figures is known to. */
  int decimals = value == 0 ? 0 : 4 - (int)floor(log10(fabs(value)));
  if (ohm_number_print_fixed(value, decimals < 0 ? 0 : decimals, digits, OHM_NUMBER_SIZE) >=
      OHM_NUMBER_SIZE)
    ohm_number_print(value, digits, OHM_NUMBER_SIZE);
  memcpy(digits + strlen(digits), unit, strlen(unit) + 1);
  oc_page_cell(out, digits, width);
}

/* A cause given by its limit or by its standard uncertainty, and what that makes of
 * resistance. */
static void cause_line(const struct oc_page *page, const char *name, double limit, double u,
                       const char *unit, double oc_per_unit) {
  bool rectangular = !isnan(limit);
  if (!(rectangular ? limit > 0 : u > 0))
    return;
  double own_u = rectangular ? limit / sqrt(3) : u;
  oc_page_cell(page->out, name, 20);
  if (rectangular)
    add_amount(page->out, limit, unit, 15);
  else
    oc_page_cell(page->out, "-", 15);
  oc_page_cell(page->out, rectangular ? "rectangular" : "normal", 13);
  add_amount(page->out, own_u, unit, 15);
  add_amount(page->out, own_u * oc_per_unit, " ohm", 0);
  oc_text_add(page->out, "\n");
}

static void amount_line(const struct oc_page *page, const char *name, double value,
                        const char *unit, const char *how) {
  oc_page_cell(page->out, name, 20);
  add_amount(page->out, value, unit, how[0] ? 15 : 0);
  oc_text_add(page->out, how);
  oc_text_add(page->out, "\n");
}

static void interval_line(const struct oc_page *page, const char *name, ohm_field low,
                          ohm_field high, const char *none) {
  oc_page_cell(page->out, name, 20);
  if (isnan(oc_page_number(page, low))) {
    oc_text_add(page->out, none);
  } else {
    add_amount(page->out, oc_page_number(page, low), " to ", 0);
    add_amount(page->out, oc_page_number(page, high), " ohm", 0);
  }
  oc_text_add(page->out, "\n");
}

/* ---- its parts ---- */

static void causes(const struct oc_page *page) {
  double ohm_per_k = fabs(oc_page_number(page, OHM_FIELD_ALPHA_PER_K)) *
                     oc_page_number(page, OHM_FIELD_EXPECTED_OHM);
  oc_text_add(page->out,
              "Cause               limit          shape        u (k = 1)      as resistance\n");
  cause_line(page, "meter", oc_page_number(page, OHM_FIELD_METER_LIMIT_OHM), NAN, " ohm", 1);
  cause_line(page, "leads", oc_page_number(page, OHM_FIELD_LEAD_LIMIT_OHM), NAN, " ohm", 1);
  cause_line(page, "reference, limit", oc_page_number(page, OHM_FIELD_REFERENCE_LIMIT_K), NAN, " K",
             ohm_per_k);
  cause_line(page, "reference, noise", NAN, oc_page_number(page, OHM_FIELD_REFERENCE_U_K), " K",
             ohm_per_k);
  cause_line(page, "test current", oc_page_number(page, OHM_FIELD_HEATING_LIMIT_K), NAN, " K",
             ohm_per_k);
  amount_line(page, "reading", oc_page_number(page, OHM_FIELD_R_OHM), " ohm", "leads taken off");
  amount_line(page, "leads taken off", oc_page_number(page, OHM_FIELD_LEAD_OHM), " ohm", "");
  amount_line(page, "u(reading)", oc_page_number(page, OHM_FIELD_U_R_OHM), " ohm",
              "root of the sum of squares of meter and leads");
  amount_line(page, "u(temperature)", oc_page_number(page, OHM_FIELD_U_AT_C), " K",
              "the same of the reference");
  if (!isnan(oc_page_number(page, OHM_FIELD_HEATING_K)))
    amount_line(page, "test current warms", oc_page_number(page, OHM_FIELD_HEATING_K), " K",
                "added to the temperature");
  amount_line(page, "alpha", 100 * oc_page_number(page, OHM_FIELD_ALPHA_PER_K), " %/K",
              "(dR/dT)/R of the nominal curve there");
  amount_line(page, "u(together)", oc_page_number(page, OHM_FIELD_U_COMBINED_OHM), " ohm",
              "reading, and nominal x alpha x temperature");
}

static void decision(const struct oc_page *page) {
  double needed_k = oc_page_number(page, OHM_FIELD_NEEDED_K);
  interval_line(page, "allowed", OHM_FIELD_LOW_OHM, OHM_FIELD_HIGH_OHM,
                "nothing is printed for this temperature");
  amount_line(page, "Cm", oc_page_number(page, OHM_FIELD_CM), "",
              "allowed / (4 u(together)): under 2 is coarse");
  interval_line(page, "would pass", OHM_FIELD_ACCEPT_LOW_OHM, OHM_FIELD_ACCEPT_HIGH_OHM,
                "no reading: wherever it fell, the part might be outside");
  if (!isnan(needed_k))
    amount_line(page, "would be enough", needed_k, " K", "limit of the reference, with this meter");
  amount_line(page, "p(low)", oc_page_number(page, OHM_FIELD_P_LOW), "", "");
  amount_line(page, "p(within)", oc_page_number(page, OHM_FIELD_P_WITHIN), "",
              "over reading and temperature, shapes as above");
  amount_line(page, "p(high)", oc_page_number(page, OHM_FIELD_P_HIGH), "", "");
  amount_line(page, "level", oc_page_number(page, OHM_FIELD_LEVEL), "", "what p has to reach");
}

void oc_report_budget(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_R_OHM))
    causes(page);
  decision(page);
}
