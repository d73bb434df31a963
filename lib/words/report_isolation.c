/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault, in the words of the bench. */
#include "report.h"

static bool state_is(const struct oc_page *page, const char *word) {
  return oc_page_is(page, OHM_FIELD_STATE, word);
}

static void list_line(struct oc_page *page, const char *label, ohm_field list, size_t most) {
  oc_page_add_first(page, list, most);
  oc_page_end(page, label);
}

static void caution_line(struct oc_page *page) {
  const char *caution = oc_page_text(page, OHM_FIELD_NEXT_CAUTION);
  if (state_is(page, "too_hot"))
    oc_page_line(page, "STOP",
                 "Engine off now and let it cool: it is far above where the fan "
                 "starts. Never open it hot.");
  else
    oc_page_line(page, "CAUTION",
                 caution ? caution
                         : "The fan may start by itself, key off too. The vehicle "
                           "maker's procedure comes first.");
}

static void seen_line(struct oc_page *page) {
  double tests = oc_page_number(page, OHM_FIELD_TESTS);
  if (!(tests > 0))
    return;
  OC_SAY(page, tests > 1 ? "{} tests, about {} min" : "{} test, about {} min", OHM_FIELD_TESTS,
         OHM_FIELD_MINUTES);
  if (oc_page_text(page, OHM_FIELD_LAST))
    OC_SAY(page, "; the last: {text}", OHM_FIELD_LAST);
  oc_page_end(page, "You saw");
}

static void fuse_line(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_FUSE_AMPERES))
    OC_SAY(page, "about {.1} A, by the millivolts over it", OHM_FIELD_FUSE_AMPERES);
  oc_page_end(page, "The fuse");
}

/* ---- the verdict ---- */

static void part_lines(struct oc_page *page) {
  const char *label = "VERDICT";
  for (int repair = 0; repair < 2; repair++) {
    ohm_field list = repair ? OHM_FIELD_REPAIR : OHM_FIELD_BUY;
    const char *part;
    for (size_t i = 0; (part = ohm_finding_text(page->finding, (int)list, i)); i++) {
      oc_page_add(page, repair ? "REPAIR " : "BUY ");
      oc_page_line(page, label, part);
      label = "";
    }
  }
}

static void say_known(struct oc_page *page) {
  size_t suspects = oc_page_count(page, OHM_FIELD_SUSPECTS);
  oc_page_add(page, "CANNOT TELL YET");
  if (oc_page_count(page, OHM_FIELD_FAULTY) > 0) {
    oc_page_add(page, ": at fault for certain is ");
    oc_page_add_first(page, OHM_FIELD_FAULTY, 4);
    oc_page_add(page, ", but it does not explain all");
  } else if (suspects > 0) {
    oc_page_add(page, ": ");
    oc_text_add_count(&page->line, suspects);
    oc_page_add(page, " links could be at fault");
  }
}

static void verdict_lines(struct oc_page *page) {
  if (state_is(page, "found")) {
    part_lines(page);
    return;
  }
  if (state_is(page, "closed")) {
    oc_page_add(page, oc_page_text(page, OHM_FIELD_RENEWED) ? "CLOSED" : "NOTHING TO BUY");
    oc_page_add(page, ": the fan has started by itself");
  } else if (state_is(page, "not_asked")) {
    oc_page_add(page, "NOT ASKED YET: nothing to buy before the fan was really asked for");
  } else if (state_is(page, "contradiction")) {
    oc_page_add(page, "CANNOT TELL YET: these do not go together, one was misread or comes and "
                      "goes");
  } else {
    say_known(page);
  }
  oc_page_end(page, "VERDICT");
}

/* ---- what to do next ---- */

static void add_after(struct oc_page *page, const char *before, ohm_field field) {
  const char *part = oc_page_text(page, field);
  if (!part || !part[0])
    return;
  oc_page_add(page, page->line.length > 0 ? before : "");
  oc_page_add(page, part);
}

static void next_lines(struct oc_page *page, const char *label) {
  if (!oc_page_text(page, OHM_FIELD_NEXT))
    return;
  OC_SAY(page, "{text}: {text}", OHM_FIELD_NEXT, OHM_FIELD_NEXT_WHAT);
  oc_page_end(page, label);
  add_after(page, "", OHM_FIELD_NEXT_POINTS);
  add_after(page, "; ", OHM_FIELD_NEXT_CONDITION);
  oc_page_end(page, "Where");
  add_after(page, "", OHM_FIELD_NEXT_GOOD);
  oc_page_end(page, "Good is");
  OC_SAY(page, "{} min", OHM_FIELD_NEXT_MINUTES);
  add_after(page, "; ", OHM_FIELD_NEXT_TOOLS);
  oc_page_end(page, "Takes");
}

static void end_lines(struct oc_page *page) {
  if (state_is(page, "found")) {
    next_lines(page, "Before that");
    list_line(page, "At fault", OHM_FIELD_FAULTY, 4);
    list_line(page, "Then again", OHM_FIELD_AGAIN, 4);
    oc_page_line(page, "Closed when",
                 "it is renewed (say LINK=renewed) and the fan has started by itself");
  } else if (state_is(page, "contradiction")) {
    list_line(page, "Again", OHM_FIELD_CONTRADICTION, 6);
  } else if (state_is(page, "no_test_left")) {
    oc_page_line(page, "Next",
                 oc_page_text(page, OHM_FIELD_SUSPECTS)
                     ? "no test is left with these tools: what was skipped, or another tool"
                     : "say whether the fan starts, and what held when it should have");
  } else {
    next_lines(page, "Next");
  }
}

void oc_report_circuit(struct oc_page *page) {
  caution_line(page);
  seen_line(page);
  fuse_line(page);
  verdict_lines(page);
  if (!state_is(page, "found") && !state_is(page, "closed"))
    list_line(page, "Suspect", OHM_FIELD_SUSPECTS, 6);
  list_line(page, "Skipped", OHM_FIELD_SKIPPED, 6);
  end_lines(page);
}
