/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault, in the words of the bench. */
#include <string.h>

#include "../bench/finding.h"
#include "../ground/number.h"
#include "report.h"
#include "sentence.h"

static const char *text_of(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_text(finding, (int)field, 0);
}

static bool state_is(const ohm_finding *finding, const char *word) {
  const char *state = text_of(finding, OHM_FIELD_STATE);
  return state && strcmp(state, word) == 0;
}

static size_t count_of(const ohm_finding *finding, ohm_field field) {
  size_t count = 0;
  while (ohm_finding_text(finding, (int)field, count))
    count++;
  return count;
}

/* The first entries of a list, and how many more there are. */
static void add_list(struct oc_text *text, const ohm_finding *finding, ohm_field field,
                     size_t most) {
  size_t count = count_of(finding, field);
  for (size_t i = 0; i < count && i < most; i++) {
    oc_text_add(text, i > 0 ? ", " : "");
    oc_text_add(text, ohm_finding_text(finding, (int)field, i));
  }
  if (count > most) {
    oc_text_add(text, " and ");
    oc_text_add_count(text, count - most);
    oc_text_add(text, " more");
  }
}

static void list_line(struct oc_text *out, const char *label, const ohm_finding *finding,
                      ohm_field field, size_t most) {
  OC_SENTENCE(text);
  add_list(&text, finding, field, most);
  if (text.length > 0)
    oc_sentence_line(out, label, text.buffer);
}

static void caution_line(struct oc_text *out, const ohm_finding *finding) {
  const char *caution = text_of(finding, OHM_FIELD_NEXT_CAUTION);
  if (state_is(finding, "too_hot"))
    oc_sentence_line(out, "STOP",
                     "Engine off now and let it cool: it is far above where the fan "
                     "starts. Never open it hot.");
  else if (caution)
    oc_sentence_line(out, "CAUTION", caution);
  else
    oc_sentence_line(out, "CAUTION",
                     "The fan may start by itself, key off too. The vehicle "
                     "maker's procedure comes first.");
}

static void seen_line(struct oc_text *out, const ohm_finding *finding) {
  OC_SENTENCE(text);
  const char *last = text_of(finding, OHM_FIELD_LAST);
  double tests = ohm_finding_number(finding, OHM_FIELD_TESTS);
  if (!(tests > 0))
    return;
  oc_text_add_number(&text, tests);
  oc_text_add(&text, tests > 1 ? " tests, about " : " test, about ");
  oc_text_add_number(&text, ohm_finding_number(finding, OHM_FIELD_MINUTES));
  oc_text_add(&text, " min");
  if (last) {
    oc_text_add(&text, "; the last: ");
    oc_text_add(&text, last);
  }
  oc_sentence_line(out, "You saw", text.buffer);
}

static void part_lines(struct oc_text *out, const ohm_finding *finding) {
  const char *label = "VERDICT";
  for (int repair = 0; repair < 2; repair++) {
    ohm_field field = repair ? OHM_FIELD_REPAIR : OHM_FIELD_BUY;
    for (size_t i = 0; i < count_of(finding, field); i++) {
      OC_SENTENCE(text);
      oc_text_add(&text, repair ? "REPAIR " : "BUY ");
      oc_text_add(&text, ohm_finding_text(finding, (int)field, i));
      oc_sentence_line(out, label, text.buffer);
      label = "";
    }
  }
}

static void add_known(struct oc_text *text, const ohm_finding *finding) {
  oc_text_add(text, "CANNOT TELL YET");
  if (count_of(finding, OHM_FIELD_FAULTY) > 0) {
    oc_text_add(text, ": at fault for certain is ");
    add_list(text, finding, OHM_FIELD_FAULTY, 4);
    oc_text_add(text, ", but it does not explain all");
  } else if (count_of(finding, OHM_FIELD_SUSPECTS) > 0) {
    oc_text_add(text, ": ");
    oc_text_add_count(text, count_of(finding, OHM_FIELD_SUSPECTS));
    oc_text_add(text, " links could be at fault");
  }
}

static void verdict_lines(struct oc_text *out, const ohm_finding *finding) {
  OC_SENTENCE(text);
  if (state_is(finding, "found")) {
    part_lines(out, finding);
    return;
  }
  if (state_is(finding, "closed"))
    oc_text_add(&text, count_of(finding, OHM_FIELD_RENEWED) > 0
                           ? "CLOSED: the fan has started by itself"
                           : "NOTHING TO BUY: the fan has started by itself");
  else if (state_is(finding, "not_asked"))
    oc_text_add(&text, "NOT ASKED YET: nothing to buy before the fan was really asked for");
  else if (state_is(finding, "contradiction"))
    oc_text_add(&text, "CANNOT TELL YET: these do not go together, one was misread or comes and "
                       "goes");
  else
    add_known(&text, finding);
  oc_sentence_line(out, "VERDICT", text.buffer);
}

static void add_after(struct oc_text *text, const char *before, const char *part) {
  if (!part || !part[0])
    return;
  oc_text_add(text, text->length > 0 ? before : "");
  oc_text_add(text, part);
}

static void next_lines(struct oc_text *out, const char *label, const ohm_finding *finding) {
  const char *name = text_of(finding, OHM_FIELD_NEXT);
  if (!name)
    return;
  OC_SENTENCE(what);
  oc_text_add(&what, name);
  oc_text_add(&what, ": ");
  oc_text_add(&what, text_of(finding, OHM_FIELD_NEXT_WHAT));
  oc_sentence_line(out, label, what.buffer);
  OC_SENTENCE(where);
  add_after(&where, "", text_of(finding, OHM_FIELD_NEXT_POINTS));
  add_after(&where, "; ", text_of(finding, OHM_FIELD_NEXT_CONDITION));
  if (where.length > 0)
    oc_sentence_line(out, "Where", where.buffer);
  OC_SENTENCE(good);
  add_after(&good, "", text_of(finding, OHM_FIELD_NEXT_GOOD));
  if (good.length > 0)
    oc_sentence_line(out, "Good is", good.buffer);
  OC_SENTENCE(takes);
  oc_text_add_number(&takes, ohm_finding_number(finding, OHM_FIELD_NEXT_MINUTES));
  oc_text_add(&takes, " min");
  add_after(&takes, "; ", text_of(finding, OHM_FIELD_NEXT_TOOLS));
  oc_sentence_line(out, "Takes", takes.buffer);
}

static void end_lines(struct oc_text *out, const ohm_finding *finding) {
  if (state_is(finding, "found")) {
    OC_SENTENCE(again);
    add_list(&again, finding, OHM_FIELD_AGAIN, 4);
    next_lines(out, "Before that", finding);
    list_line(out, "At fault", finding, OHM_FIELD_FAULTY, 4);
    oc_sentence_line(out, "Then again", again.buffer);
    oc_sentence_line(out, "Closed when",
                     "it is renewed (say LINK=renewed) and the fan has started "
                     "by itself");
  } else if (state_is(finding, "contradiction")) {
    list_line(out, "Again", finding, OHM_FIELD_CONTRADICTION, 6);
  } else if (state_is(finding, "no_test_left")) {
    oc_sentence_line(out, "Next",
                     count_of(finding, OHM_FIELD_SUSPECTS) > 0
                         ? "no test is left with these tools: what was skipped, or another tool"
                         : "say whether the fan starts, and what held when it should have");
  } else {
    next_lines(out, "Next", finding);
  }
}

void oc_report_isolation(struct oc_text *out, const ohm_finding *finding) {
  double amperes = ohm_finding_number(finding, OHM_FIELD_FUSE_AMPERES);
  caution_line(out, finding);
  seen_line(out, finding);
  if (!isnan(amperes)) {
    char digits[OHM_NUMBER_SIZE];
    OC_SENTENCE(text);
    ohm_number_print_fixed(amperes, 1, digits, sizeof digits);
    oc_text_add(&text, "about ");
    oc_text_add(&text, digits);
    oc_text_add(&text, " A, by the millivolts over it");
    oc_sentence_line(out, "The fuse", text.buffer);
  }
  verdict_lines(out, finding);
  if (!state_is(finding, "found") && !state_is(finding, "closed"))
    list_line(out, "Suspect", finding, OHM_FIELD_SUSPECTS, 6);
  list_line(out, "Skipped", finding, OHM_FIELD_SKIPPED, 6);
  end_lines(out, finding);
}
