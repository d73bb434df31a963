/* SPDX-License-Identifier: MIT */
#include "screen.h"

#include "report.h"

enum { READING_WIDTH = 20, NAME_WIDTH = 24, CHANCE_WIDTH = 10, KIND_WIDTH = 10, FURTHER_MAX = 3 };

static void add(struct oc_text *out, void (*lines)(struct oc_page *page),
                const ohm_finding *finding) {
  struct oc_page page;
  oc_page_begin(&page, out, finding);
  lines(&page);
}

/* What was said of the line is a cell. */
static void end_cell(struct oc_page *page, size_t width) {
  oc_page_cell(page->out, page->buffer, width);
  oc_page_begin(page, page->out, page->finding);
}

static bool leads(const ohm_finding *finding) {
  return ohm_finding_number(finding, OHM_FIELD_LEADING) == 1;
}

static bool is_about_anything(const ohm_finding *finding) {
  return oc_finding_about(finding) != OC_VERBS;
}

/* ---- readings ---- */

static void reading_line(struct oc_page *page) {
  OC_SAY(page, "{text}", OHM_FIELD_READ);
  end_cell(page, READING_WIDTH);
  OC_SAY(page, "{C|-}", OHM_FIELD_AT_C);
  end_cell(page, READING_WIDTH);
  OC_SAY(page, "{C|-}\n", OHM_FIELD_T_C);
  end_cell(page, 0);
}

void oc_screen_readings(struct oc_text *out, const ohm_finding *whole,
                        const struct oc_group *readings) {
  if (readings->count > 1) {
    oc_page_cell(out, "read", READING_WIDTH);
    oc_page_cell(out, "at", READING_WIDTH);
    oc_text_add(out, "means\n");
    for (size_t i = 0; i < readings->count; i++)
      add(out, reading_line, &readings->members[i]);
    oc_text_add(out, "\n");
  }
  add(out, oc_report_check, whole);
}

static void reading_title(struct oc_page *page) {
  OC_SAY(page, "{text} at {C|-}, by itself\n", OHM_FIELD_READ, OHM_FIELD_AT_C);
  end_cell(page, 0);
}

void oc_screen_budgets(struct oc_text *out, const struct oc_group *readings) {
  for (size_t i = 0; i < readings->count; i++) {
    oc_text_add(out, i > 0 ? "\n" : "");
    if (readings->count > 1)
      add(out, reading_title, &readings->members[i]);
    add(out, oc_report_budget, &readings->members[i]);
  }
}

/* ---- candidates ---- */

static void candidates_head(struct oc_page *page) {
  bool further = oc_page_has(page, OHM_FIELD_SEPARATING_C);
  oc_page_cell(page->out, "it may be", NAME_WIDTH);
  oc_page_cell(page->out, "in 100", CHANCE_WIDTH);
  oc_page_cell(page->out, "feeds", further ? KIND_WIDTH : 0);
  if (further)
    OC_SAY(page, "near {.0} C it would read", OHM_FIELD_SEPARATING_C);
  oc_page_add(page, "\n");
  end_cell(page, 0);
}

static void say_chance(struct oc_page *page, double p) {
  double in_100 = nearbyint(100 * p);
  if (in_100 < 1)
    oc_page_add(page, "under 1");
  else if (in_100 > 99)
    oc_page_add(page, "over 99");
  else
    oc_say_decimals(&page->line, in_100, 0);
}

static const char *mark_of(const struct oc_page *page) {
  if (leads(page->finding))
    return "\n";
  return oc_page_number(page, OHM_FIELD_P_FIT) >= 1 - oc_page_number(page, OHM_FIELD_LEVEL)
             ? "  less likely\n"
             : "  fits badly\n";
}

/* Where none leads, how they share what is not theirs says nothing. */
static void candidate_line(struct oc_page *page, bool none_leads, double p_these) {
  OC_SAY(page, "{text}", OHM_FIELD_SENSOR);
  end_cell(page, NAME_WIDTH);
  if (none_leads)
    oc_page_add(page, "-");
  else
    say_chance(page, p_these * oc_page_number(page, OHM_FIELD_P_SENSOR));
  end_cell(page, CHANCE_WIDTH);
  OC_SAY(page, "{text|-}", OHM_FIELD_SENSOR_KIND);
  end_cell(page, oc_page_has(page, OHM_FIELD_SEPARATING_OHM) ? KIND_WIDTH : 0);
  OC_SAY(page, "{ohm|}", OHM_FIELD_SEPARATING_OHM);
  oc_page_add(page, mark_of(page));
  end_cell(page, 0);
}

static void none_line(struct oc_page *page) {
  oc_page_add(page, "none of these");
  end_cell(page, NAME_WIDTH);
  say_chance(page, oc_page_number(page, OHM_FIELD_P_NONE));
  oc_page_add(page, "\n");
  end_cell(page, 0);
}

void oc_screen_candidates(struct oc_text *out, const ohm_finding *whole,
                          const struct oc_group *candidates) {
  bool none_leads = !ohm_finding_text(whole, OHM_FIELD_SENSOR, 0);
  double p_none = ohm_finding_number(whole, OHM_FIELD_P_NONE);
  size_t further = 0;
  if (candidates->count > 0 && is_about_anything(&candidates->members[0])) {
    add(out, candidates_head, whole);
    for (size_t i = 0; i < candidates->count; i++) {
      struct oc_page page;
      oc_page_begin(&page, out, &candidates->members[i]);
      if (is_about_anything(&candidates->members[i]) &&
          (leads(&candidates->members[i]) || further++ < FURTHER_MAX))
        candidate_line(&page, none_leads, isnan(p_none) ? 1 : 1 - p_none);
    }
    if (!none_leads && !isnan(p_none))
      add(out, none_line, whole);
    oc_text_add(out, "\n");
  }
  add(out, oc_report_identify, whole);
}

/* ---- a line each ---- */

void oc_screen_pairs(struct oc_text *out, const ohm_finding *whole, const struct oc_group *pairs) {
  for (size_t i = 0; i < pairs->count; i++)
    add(out, oc_report_pins, &pairs->members[i]);
  oc_text_add(out, "\n");
  add(out, oc_report_pins, whole);
}

void oc_screen_explanations(struct oc_text *out, const ohm_finding *whole,
                            const struct oc_group *explanations) {
  for (size_t i = 0; i < explanations->count; i++)
    if (leads(&explanations->members[i]))
      add(out, oc_report_explain, &explanations->members[i]);
  if (ohm_finding_text(whole, OHM_FIELD_CANDIDATES, 0))
    oc_text_add(out, "\n");
  add(out, oc_report_explain, whole);
}

void oc_screen_substitutes(struct oc_text *out, const struct oc_group *resistors) {
  add(out, oc_report_substitute, &resistors->members[0]);
  if (resistors->count < 2)
    return;
  oc_text_add(out, "\nOr two of them:\n\n");
  add(out, oc_report_second_substitute, &resistors->members[1]);
}
