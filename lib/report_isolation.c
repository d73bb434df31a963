/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault, in the words of the bench. */
#include <string.h>

#include "finding.h"
#include "number.h"
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
static void add_list(struct ohm_text *text, const ohm_finding *finding, ohm_field field,
                     size_t most) {
  size_t count = count_of(finding, field);
  for (size_t i = 0; i < count && i < most; i++) {
    ohm_text_add(text, i > 0 ? ", " : "");
    ohm_text_add(text, ohm_finding_text(finding, (int)field, i));
  }
  if (count > most) {
    ohm_text_add(text, " and ");
    ohm_text_add_count(text, count - most);
    ohm_text_add(text, " more");
  }
}

static void list_line(struct ohm_text *out, const char *label, const ohm_finding *finding,
                      ohm_field field, size_t most) {
  OHM_SENTENCE(text);
  add_list(&text, finding, field, most);
  if (text.length > 0)
    ohm_sentence_line(out, label, text.buffer);
}

static void caution_line(struct ohm_text *out, const ohm_finding *finding) {
  const char *caution = text_of(finding, OHM_FIELD_NEXT_CAUTION);
  if (state_is(finding, "too_hot"))
    ohm_sentence_line(out, "STOP",
                      "Engine off now and let it cool: it is far above where the fan "
                      "starts. Never open it hot.");
  else if (caution)
    ohm_sentence_line(out, "CAUTION", caution);
  else
    ohm_sentence_line(out, "CAUTION",
                      "The fan may start by itself, key off too. The vehicle "
                      "maker's procedure comes first.");
}

static void seen_line(struct ohm_text *out, const ohm_finding *finding) {
  OHM_SENTENCE(text);
  const char *last = text_of(finding, OHM_FIELD_LAST);
  double tests = ohm_finding_number(finding, OHM_FIELD_TESTS);
  if (!(tests > 0))
    return;
  ohm_text_add_number(&text, tests);
  ohm_text_add(&text, tests > 1 ? " tests, about " : " test, about ");
  ohm_text_add_number(&text, ohm_finding_number(finding, OHM_FIELD_MINUTES));
  ohm_text_add(&text, " min");
  if (last) {
    ohm_text_add(&text, "; the last: ");
    ohm_text_add(&text, last);
  }
  ohm_sentence_line(out, "You saw", text.buffer);
}

static void part_lines(struct ohm_text *out, const ohm_finding *finding) {
  const char *label = "VERDICT";
  for (int repair = 0; repair < 2; repair++) {
    ohm_field field = repair ? OHM_FIELD_REPAIR : OHM_FIELD_BUY;
    for (size_t i = 0; i < count_of(finding, field); i++) {
      OHM_SENTENCE(text);
      ohm_text_add(&text, repair ? "REPAIR " : "BUY ");
      ohm_text_add(&text, ohm_finding_text(finding, (int)field, i));
      ohm_sentence_line(out, label, text.buffer);
      label = "";
    }
  }
}

static void add_known(struct ohm_text *text, const ohm_finding *finding) {
  ohm_text_add(text, "CANNOT TELL YET");
  if (count_of(finding, OHM_FIELD_FAULTY) > 0) {
    ohm_text_add(text, ": at fault for certain is ");
    add_list(text, finding, OHM_FIELD_FAULTY, 4);
    ohm_text_add(text, ", but it does not explain all");
  } else if (count_of(finding, OHM_FIELD_SUSPECTS) > 0) {
    ohm_text_add(text, ": ");
    ohm_text_add_count(text, count_of(finding, OHM_FIELD_SUSPECTS));
    ohm_text_add(text, " links could be at fault");
  }
}

static void verdict_lines(struct ohm_text *out, const ohm_finding *finding) {
  OHM_SENTENCE(text);
  if (state_is(finding, "found")) {
    part_lines(out, finding);
    return;
  }
  if (state_is(finding, "closed"))
    ohm_text_add(&text, count_of(finding, OHM_FIELD_RENEWED) > 0
                            ? "CLOSED: the fan has started by itself"
                            : "NOTHING TO BUY: the fan has started by itself");
  else if (state_is(finding, "not_asked"))
    ohm_text_add(&text, "NOT ASKED YET: nothing to buy before the fan was really asked for");
  else if (state_is(finding, "contradiction"))
    ohm_text_add(&text, "CANNOT TELL YET: these do not go together, one was misread or comes and "
                        "goes");
  else
    add_known(&text, finding);
  ohm_sentence_line(out, "VERDICT", text.buffer);
}

static void add_after(struct ohm_text *text, const char *before, const char *part) {
  if (!part || !part[0])
    return;
  ohm_text_add(text, text->length > 0 ? before : "");
  ohm_text_add(text, part);
}

static void next_lines(struct ohm_text *out, const char *label, const ohm_finding *finding) {
  const char *name = text_of(finding, OHM_FIELD_NEXT);
  if (!name)
    return;
  OHM_SENTENCE(what);
  ohm_text_add(&what, name);
  ohm_text_add(&what, ": ");
  ohm_text_add(&what, text_of(finding, OHM_FIELD_NEXT_WHAT));
  ohm_sentence_line(out, label, what.buffer);
  OHM_SENTENCE(where);
  add_after(&where, "", text_of(finding, OHM_FIELD_NEXT_POINTS));
  add_after(&where, "; ", text_of(finding, OHM_FIELD_NEXT_CONDITION));
  if (where.length > 0)
    ohm_sentence_line(out, "Where", where.buffer);
  OHM_SENTENCE(good);
  add_after(&good, "", text_of(finding, OHM_FIELD_NEXT_GOOD));
  if (good.length > 0)
    ohm_sentence_line(out, "Good is", good.buffer);
  OHM_SENTENCE(takes);
  ohm_text_add_number(&takes, ohm_finding_number(finding, OHM_FIELD_NEXT_MINUTES));
  ohm_text_add(&takes, " min");
  add_after(&takes, "; ", text_of(finding, OHM_FIELD_NEXT_TOOLS));
  ohm_sentence_line(out, "Takes", takes.buffer);
}

static void end_lines(struct ohm_text *out, const ohm_finding *finding) {
  if (state_is(finding, "found")) {
    OHM_SENTENCE(again);
    add_list(&again, finding, OHM_FIELD_AGAIN, 4);
    next_lines(out, "Before that", finding);
    list_line(out, "At fault", finding, OHM_FIELD_FAULTY, 4);
    ohm_sentence_line(out, "Then again", again.buffer);
    ohm_sentence_line(out, "Closed when",
                      "it is renewed (say LINK=renewed) and the fan has started "
                      "by itself");
  } else if (state_is(finding, "contradiction")) {
    list_line(out, "Again", finding, OHM_FIELD_CONTRADICTION, 6);
  } else if (state_is(finding, "no_test_left")) {
    ohm_sentence_line(out, "Next",
                      count_of(finding, OHM_FIELD_SUSPECTS) > 0
                          ? "no test is left with these tools: what was skipped, or another tool"
                          : "say whether the fan starts, and what held when it should have");
  } else {
    next_lines(out, "Next", finding);
  }
}

void ohm_report_isolation(struct ohm_text *out, const ohm_finding *finding) {
  double amperes = ohm_finding_number(finding, OHM_FIELD_FUSE_AMPERES);
  caution_line(out, finding);
  seen_line(out, finding);
  if (!isnan(amperes)) {
    char digits[OHM_NUMBER_SIZE];
    OHM_SENTENCE(text);
    ohm_number_print_fixed(amperes, 1, digits, sizeof digits);
    ohm_text_add(&text, "about ");
    ohm_text_add(&text, digits);
    ohm_text_add(&text, " A, by the millivolts over it");
    ohm_sentence_line(out, "The fuse", text.buffer);
  }
  verdict_lines(out, finding);
  if (!state_is(finding, "found") && !state_is(finding, "closed"))
    list_line(out, "Suspect", finding, OHM_FIELD_SUSPECTS, 6);
  list_line(out, "Skipped", finding, OHM_FIELD_SKIPPED, 6);
  end_lines(out, finding);
}
