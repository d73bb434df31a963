/* SPDX-License-Identifier: MIT */
/* The uncertainty of a finding by cause, to be worked out again by hand. */
#include <string.h>

#include "../bench/finding.h"
#include "../ground/text.h"

/* ---- a table ---- */

/* What fills its column keeps a space to the next one. */
static void add_padded(struct oc_text *out, const char *text, size_t width) {
  size_t length = strlen(text);
  oc_text_add(out, text);
  if (0 < width && width <= length)
    oc_text_add(out, " ");
  for (; length < width; length++)
    oc_text_add(out, " ");
}

static void add_amount(struct oc_text *out, double value, const char *unit, size_t width) {
  char digits[OHM_NUMBER_SIZE + 8];
  if (isnan(value)) {
    add_padded(out, "none", width);
    return;
  }
  /* Five significant digits, more than any of the figures is known to. */
  int decimals = value == 0 ? 0 : 4 - (int)floor(log10(fabs(value)));
  if (ohm_number_print_fixed(value, decimals < 0 ? 0 : decimals, digits, OHM_NUMBER_SIZE) >=
      OHM_NUMBER_SIZE)
    ohm_number_print(value, digits, OHM_NUMBER_SIZE);
  memcpy(digits + strlen(digits), unit, strlen(unit) + 1);
  add_padded(out, digits, width);
}

struct sheet {
  const ohm_finding *finding;
  struct oc_text *out;
};

static double number(const struct sheet *sheet, ohm_field field) {
  return ohm_finding_number(sheet->finding, (int)field);
}

/* A cause given by its limit or by its standard uncertainty, and what that makes of
 * resistance. */
static void cause_line(const struct sheet *sheet, const char *name, double limit, double u,
                       const char *unit, double ohm_per_unit) {
  bool rectangular = !isnan(limit);
  if (!(rectangular ? limit > 0 : u > 0))
    return;
  double own_u = rectangular ? limit / sqrt(3) : u;
  add_padded(sheet->out, name, 20);
  if (rectangular)
    add_amount(sheet->out, limit, unit, 15);
  else
    add_padded(sheet->out, "-", 15);
  add_padded(sheet->out, rectangular ? "rectangular" : "normal", 13);
  add_amount(sheet->out, own_u, unit, 15);
  add_amount(sheet->out, own_u * ohm_per_unit, " ohm", 0);
  oc_text_add(sheet->out, "\n");
}

static void amount_line(const struct sheet *sheet, const char *name, double value, const char *unit,
                        const char *how) {
  add_padded(sheet->out, name, 20);
  add_amount(sheet->out, value, unit, how[0] ? 15 : 0);
  oc_text_add(sheet->out, how);
  oc_text_add(sheet->out, "\n");
}

static void interval_line(const struct sheet *sheet, const char *name, ohm_field low,
                          ohm_field high, const char *none) {
  add_padded(sheet->out, name, 20);
  if (isnan(number(sheet, low))) {
    oc_text_add(sheet->out, none);
  } else {
    add_amount(sheet->out, number(sheet, low), " to ", 0);
    add_amount(sheet->out, number(sheet, high), " ohm", 0);
  }
  oc_text_add(sheet->out, "\n");
}

/* ---- its parts ---- */

static void causes(const struct sheet *sheet) {
  double ohm_per_k =
      fabs(number(sheet, OHM_FIELD_ALPHA_PER_K)) * number(sheet, OHM_FIELD_EXPECTED_OHM);
  oc_text_add(sheet->out,
              "Cause               limit          shape        u (k = 1)      as resistance\n");
  cause_line(sheet, "meter", number(sheet, OHM_FIELD_METER_LIMIT_OHM), NAN, " ohm", 1);
  cause_line(sheet, "leads", number(sheet, OHM_FIELD_LEAD_LIMIT_OHM), NAN, " ohm", 1);
  cause_line(sheet, "reference, limit", number(sheet, OHM_FIELD_REFERENCE_LIMIT_K), NAN, " K",
             ohm_per_k);
  cause_line(sheet, "reference, noise", NAN, number(sheet, OHM_FIELD_REFERENCE_U_K), " K",
             ohm_per_k);
  cause_line(sheet, "test current", number(sheet, OHM_FIELD_HEATING_LIMIT_K), NAN, " K", ohm_per_k);
  amount_line(sheet, "reading", number(sheet, OHM_FIELD_R_OHM), " ohm", "leads taken off");
  amount_line(sheet, "leads taken off", number(sheet, OHM_FIELD_LEAD_OHM), " ohm", "");
  amount_line(sheet, "u(reading)", number(sheet, OHM_FIELD_U_R_OHM), " ohm",
              "root of the sum of squares of meter and leads");
  amount_line(sheet, "u(temperature)", number(sheet, OHM_FIELD_U_AT_C), " K",
              "the same of the reference");
  if (!isnan(number(sheet, OHM_FIELD_HEATING_K)))
    amount_line(sheet, "test current warms", number(sheet, OHM_FIELD_HEATING_K), " K",
                "added to the temperature");
  amount_line(sheet, "alpha", 100 * number(sheet, OHM_FIELD_ALPHA_PER_K), " %/K",
              "(dR/dT)/R of the nominal curve there");
  amount_line(sheet, "u(together)", number(sheet, OHM_FIELD_U_COMBINED_OHM), " ohm",
              "reading, and nominal x alpha x temperature");
}

static void decision(const struct sheet *sheet) {
  double needed_k = number(sheet, OHM_FIELD_NEEDED_K);
  interval_line(sheet, "allowed", OHM_FIELD_LOW_OHM, OHM_FIELD_HIGH_OHM,
                "nothing is printed for this temperature");
  amount_line(sheet, "Cm", number(sheet, OHM_FIELD_CM), "",
              "allowed / (4 u(together)): under 2 is coarse");
  interval_line(sheet, "would pass", OHM_FIELD_ACCEPT_LOW_OHM, OHM_FIELD_ACCEPT_HIGH_OHM,
                "no reading: wherever it fell, the part might be outside");
  if (!isnan(needed_k))
    amount_line(sheet, "would be enough", needed_k, " K",
                "limit of the reference, with this meter");
  amount_line(sheet, "p(low)", number(sheet, OHM_FIELD_P_LOW), "", "");
  amount_line(sheet, "p(within)", number(sheet, OHM_FIELD_P_WITHIN), "",
              "over reading and temperature, shapes as above");
  amount_line(sheet, "p(high)", number(sheet, OHM_FIELD_P_HIGH), "", "");
  amount_line(sheet, "level", number(sheet, OHM_FIELD_LEVEL), "", "what p has to reach");
}

static void lines_of(const ohm_finding *finding, struct oc_text *out) {
  const struct sheet sheet = {finding, out};
  if (!isnan(number(&sheet, OHM_FIELD_R_OHM)))
    causes(&sheet);
  decision(&sheet);
}

/* Which of several readings: "2.31 k at 21.5 C, by itself". */
static void heading(const ohm_finding *finding, struct oc_text *out) {
  char at[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(ohm_finding_number(finding, OHM_FIELD_AT_C), 1, at, sizeof at);
  oc_text_add(out, ohm_finding_text(finding, OHM_FIELD_READ, 0));
  oc_text_add(out, " at ");
  oc_text_add(out, at);
  oc_text_add(out, " C, by itself\n");
}

size_t ohm_finding_print_budget(const ohm_finding *finding, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  if (oc_finding_about(finding) == OHM_VERB_CHECK)
    lines_of(finding, &out);
  return out.length;
}

size_t ohm_answer_print_budget(const ohm_answer *answer, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  size_t count = ohm_answer_count(answer, OHM_GROUP_READINGS);
  if (oc_finding_about(ohm_answer_finding(answer)) != OHM_VERB_CHECK)
    return 0;
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *finding = ohm_answer_member(answer, OHM_GROUP_READINGS, i);
    oc_text_add(&out, i > 0 ? "\n" : "");
    if (count > 1)
      heading(finding, &out);
    lines_of(finding, &out);
  }
  return out.length;
}
