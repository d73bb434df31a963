/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault, from what was seen so far, and what to look at
 * next. The record is the whole state. */
#include "isolation.h"

#include <stdlib.h>
#include <string.h>

#include "../model/next_test.h"
#include "../bench/finding.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "told.h"

/* ---- the answer ---- */

static const char *test_name(const struct oc_deduction *it, size_t test) {
  return it->circuit->tests[test].cells[OHM_TEST_TEST];
}

/* The most probable first. */
static void add_suspects(const struct oc_deduction *it, const struct oc_candidates *candidates,
                         ohm_finding *finding) {
  double chance[OC_DIAGNOSIS_PARTS] = {0};
  for (size_t i = 0; i < candidates->count; i++)
    for (size_t link = 0; link < it->circuit->link_count; link++)
      if (candidates->each[i].set & oc_set_of(link))
        chance[link] += candidates->each[i].weight;
  for (oc_set left = candidates->any & ~it->faulty; left;) {
    size_t best = OC_NO_PLACE;
    for (size_t link = 0; link < it->circuit->link_count; link++)
      if (left & oc_set_of(link) && (best == OC_NO_PLACE || chance[link] > chance[best]))
        best = link;
    left &= ~oc_set_of(best);
    oc_told_links(finding, OHM_FIELD_SUSPECTS, it->circuit, oc_set_of(best));
  }
}

/* "fuse: a new one of the same rating", each part once. */
static void add_parts(const struct oc_deduction *it, ohm_finding *finding) {
  const struct ohm_circuit *circuit = it->circuit;
  oc_set said = 0;
  for (size_t i = 0; i < circuit->link_count; i++) {
    const struct oc_link *link = &circuit->links[i];
    if (!(it->faulty & oc_set_of(i)) || said & oc_set_of(i))
      continue;
    said |= oc_circuit_part(circuit, i);
    char buffer[512];
    struct oc_text text = oc_text_begin(buffer, sizeof buffer);
    oc_text_add(&text, link->cells[OHM_LINK_PART]);
    oc_text_add(&text, link->cells[OHM_LINK_RENEW][0] ? ": " : "");
    oc_text_add(&text, link->cells[OHM_LINK_RENEW]);
    bool buy = strcmp(link->cells[OHM_LINK_ACTION], "buy") == 0;
    oc_finding_add_entry(finding, buy ? OHM_FIELD_BUY : OHM_FIELD_REPAIR, buffer);
  }
}

static void add_limit(struct oc_text *text, const struct oc_deduction *it,
                      struct oc_test_limit limit) {
  oc_text_add_number(text, oc_test_limit_at(limit, it->fan_c));
}

/* "good is 11 V or more"; empty for a word. */
static void add_expected(struct oc_text *text, const struct oc_deduction *it,
                         const struct oc_test *test) {
  static const char *const units[] = {"", " V", " A", " ohm", " C", " ohm (volts over amperes)"};
  bool has_low = !isnan(test->low.value);
  bool has_high = !isnan(test->high.value);
  if (test->unit == OC_UNIT_FUSE) {
    oc_text_add(text, "more than ");
    oc_text_add_number(text, OC_DRAWS_MV);
    oc_text_add(text, " mV");
  }
  if (!(OC_UNIT_VOLT <= test->unit && test->unit <= OC_UNIT_DROP))
    return;
  if (has_low)
    add_limit(text, it, test->low);
  if (has_low && has_high)
    oc_text_add(text, " to ");
  if (has_high)
    add_limit(text, it, test->high);
  oc_text_add(text, units[test->unit]);
  if (has_low != has_high)
    oc_text_add(text, has_low ? " or more" : " or less");
  oc_text_add(text, ", the instrument within ");
  oc_text_add(text, test->cells[OHM_TEST_ERROR]);
}

/* What was bad with the part in it, at the same place, and at last the fan by itself. */
static void add_again(const struct oc_deduction *it, ohm_finding *finding) {
  for (int symptoms = 0; symptoms < 2; symptoms++)
    for (size_t i = 0; i < it->circuit->test_count; i++) {
      const struct oc_test *test = &it->circuit->tests[i];
      bool is_symptom = test->role == OC_ROLE_SYMPTOM;
      bool bad = it->tests[i].seen == OC_SEEN_BAD && test->accuses & it->faulty;
      if (is_symptom != (symptoms == 1) || !bad)
        continue;
      char buffer[160];
      struct oc_text text = oc_text_begin(buffer, sizeof buffer);
      oc_text_add(&text, test_name(it, i));
      oc_text_add(&text, ": ");
      size_t before = text.length;
      add_expected(&text, it, test);
      oc_text_add(&text, text.length == before ? "good" : "");
      oc_finding_add_entry(finding, OHM_FIELD_AGAIN, buffer);
    }
}

static void add_contradiction(const struct oc_deduction *it, ohm_finding *finding) {
  const struct ohm_circuit *circuit = it->circuit;
  bool off[OC_CIRCUIT_TESTS] = {false};
  for (size_t i = 0; i < circuit->balance_count; i++) {
    off[circuit->balances[i].whole] |= it->off_balance[i];
    for (size_t k = 0; k < circuit->balances[i].part_count; k++)
      off[circuit->balances[i].parts[k]] |= it->off_balance[i];
  }
  for (size_t i = 0; i < circuit->test_count; i++) {
    bool accuses = oc_deduction_counts(it, i) && oc_deduction_blamed(it, i) == 0;
    bool clears = it->tests[i].seen == OC_SEEN_GOOD && circuit->tests[i].clears & it->contradicted;
    if (off[i] || accuses || clears)
      oc_finding_add_entry(finding, OHM_FIELD_CONTRADICTION, test_name(it, i));
  }
}

static void add_count(struct oc_text *text, oc_set set) {
  oc_text_add_count(text, oc_set_size(set));
}

static void add_why(const struct oc_deduction *it, const struct oc_candidates *candidates,
                    size_t next, ohm_finding *finding) {
  const struct oc_test *test = &it->circuit->tests[next];
  char buffer[200];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  if (it->faulty && oc_deduction_is_explained(it)) {
    oc_text_add(&text, "it goes round what is at fault, and shows a second fault before you buy");
  } else if (test->role == OC_ROLE_SYMPTOM) {
    oc_text_add(&text, "nothing is closed before the fan has started by itself");
  } else if (test->role == OC_ROLE_CONDITION && it->conflict_count == 0) {
    oc_text_add(&text, "a fan that was never asked for is not dead");
  } else {
    oc_text_add(&text, "of ");
    add_count(&text, candidates->any);
    oc_text_add(&text, " suspects, good clears ");
    add_count(&text, test->clears & candidates->any);
    oc_text_add(&text, oc_deduction_accused(it, next) ? ", bad leaves "
                                                      : "; bad tells nothing on this car");
    if (oc_deduction_accused(it, next))
      add_count(&text, oc_deduction_accused(it, next) & candidates->any);
  }
  oc_finding_add_entry(finding, OHM_FIELD_NEXT_WHY, buffer);
}

static void add_next(const struct oc_deduction *it, const struct oc_candidates *candidates,
                     size_t next, double bits, ohm_finding *finding) {
  static const struct {
    ohm_field field;
    ohm_test_column column;
  } texts[] = {
      {OHM_FIELD_NEXT, OHM_TEST_TEST},          {OHM_FIELD_NEXT_WHAT, OHM_TEST_WHAT},
      {OHM_FIELD_NEXT_POINTS, OHM_TEST_POINTS}, {OHM_FIELD_NEXT_CONDITION, OHM_TEST_CONDITION},
      {OHM_FIELD_NEXT_TOOLS, OHM_TEST_TOOL},    {OHM_FIELD_NEXT_CAUTION, OHM_TEST_CAUTION},
      {OHM_FIELD_NEXT_SOURCE, OHM_TEST_SOURCE},
  };
  const struct oc_test *test = &it->circuit->tests[next];
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    oc_finding_add_entry(finding, texts[i].field, test->cells[texts[i].column]);
  char good[120];
  struct oc_text text = oc_text_begin(good, sizeof good);
  add_expected(&text, it, test);
  oc_finding_add_entry(finding, OHM_FIELD_NEXT_GOOD, good);
  add_why(it, candidates, next, finding);
  oc_finding_set_number(finding, OHM_FIELD_NEXT_MINUTES, test->minutes);
  oc_finding_set_number(finding, OHM_FIELD_NEXT_BITS, bits);
}

/* ---- what stands now ---- */

static bool is_too_hot(const struct oc_deduction *it) {
  const struct oc_record *record = it->record;
  if (record->count == 0)
    return false;
  const struct oc_record_entry *last = &record->entries[record->count - 1];
  return last->of == OC_RECORD_TEST && it->circuit->tests[last->index].unit == OC_UNIT_CELSIUS &&
         last->number >= it->fan_c + OC_TOO_HOT_K;
}

static bool has_started(const struct oc_deduction *it) {
  bool any = false;
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    if (it->circuit->tests[i].role != OC_ROLE_SYMPTOM)
      continue;
    if (it->tests[i].seen != OC_SEEN_GOOD && it->tests[i].seen != OC_SEEN_SKIPPED)
      return false;
    any |= it->tests[i].seen == OC_SEEN_GOOD;
  }
  return any;
}

/* A condition that did not hold, though nothing is at fault with it. */
static size_t not_asked(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++)
    if (it->circuit->tests[i].role == OC_ROLE_CONDITION && it->tests[i].seen == OC_SEEN_BAD &&
        oc_deduction_accused(it, i) == 0)
      return i;
  return OC_NO_PLACE;
}

/* What an eye took for a fan that runs is proved by a number: the first such test that is open, or
 * what has to be known before it. */
static size_t open_proof(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    const struct oc_test *test = &it->circuit->tests[i];
    if (test->role != OC_ROLE_PROOF || it->tests[i].seen == OC_SEEN_GOOD ||
        it->tests[i].seen == OC_SEEN_SKIPPED || oc_next_test_was_made_twice(it, i))
      continue;
    if (oc_next_test_can_be_made(it, i))
      return i;
    size_t before = test->amperes[0];
    if (oc_deduction_has_tools(it, i) && before != OC_NO_PLACE &&
        oc_next_test_can_be_made(it, before) && it->tests[before].seen == OC_SEEN_NOTHING)
      return before;
  }
  return OC_NO_PLACE;
}

/* A test that goes round what is at fault, to look for a second fault before buying: it is
 * there for a test that was bad, and accuses nothing that is known. */
static size_t goes_round(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    const struct oc_test *test = &it->circuit->tests[i];
    if (strstr(test->cells[OHM_TEST_NEEDS], "=bad") && oc_next_test_can_be_made(it, i) &&
        it->tests[i].seen == OC_SEEN_NOTHING && !(test->accuses & it->faulty))
      return i;
  }
  return OC_NO_PLACE;
}

static const char *word_of(struct oc_deduction *it, struct oc_candidates *candidates, size_t *next,
                           double *bits) {
  *next = oc_next_test(it, candidates, bits);
  it->faulty |= oc_candidates_condemned(it, candidates, *next != OC_NO_PLACE);
  if (*next == OC_NO_PLACE)
    *next = not_asked(it);
  if (is_too_hot(it))
    return "too_hot";
  if (it->is_contradictory)
    return "contradiction";
  if (has_started(it) && it->conflict_count == 0) {
    *next = open_proof(it);
    return *next == OC_NO_PLACE ? "closed" : "go_on";
  }
  /* What is certain is renewed first when no test can go round it. */
  if (oc_deduction_is_explained(it) || (*next == OC_NO_PLACE && it->faulty)) {
    *next = goes_round(it);
    return "found";
  }
  if (it->conflict_count == 0 && not_asked(it) != OC_NO_PLACE)
    return "not_asked";
  return *next == OC_NO_PLACE ? "no_test_left" : "go_on";
}

static void add_seen(const struct oc_deduction *it, ohm_finding *finding) {
  double tests = 0;
  double minutes = 0;
  for (size_t i = 0; i < it->record->count; i++) {
    const struct oc_record_entry *entry = &it->record->entries[i];
    if (entry->of != OC_RECORD_TEST || entry->seen == OC_SEEN_SKIPPED)
      continue;
    tests++;
    minutes += it->circuit->tests[entry->index].minutes;
    if (!isnan(entry->amperes))
      oc_finding_set_number(finding, OHM_FIELD_FUSE_AMPERES, entry->amperes);
  }
  oc_finding_set_number(finding, OHM_FIELD_TESTS, tests);
  oc_finding_set_number(finding, OHM_FIELD_MINUTES, minutes);
  static const char *const words[] = {"", " good", " bad", " too near to tell", " skipped"};
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    if (it->tests[i].seen == OC_SEEN_SKIPPED)
      oc_finding_add_entry(finding, OHM_FIELD_SKIPPED, test_name(it, i));
  }
  if (it->record->count == 0)
    return;
  const struct oc_record_entry *last = &it->record->entries[it->record->count - 1];
  char buffer[80];
  struct oc_text text = oc_text_begin(buffer, sizeof buffer);
  if (last->of != OC_RECORD_TEST)
    return;
  oc_text_add(&text, test_name(it, last->index));
  oc_text_add(&text, words[it->tests[last->index].seen]);
  oc_finding_add_entry(finding, OHM_FIELD_LAST, buffer);
}

static void answer(struct oc_deduction *it, struct oc_candidates *candidates,
                   ohm_finding *finding) {
  size_t next;
  double bits;
  oc_candidates_find(it, candidates);
  const char *word = word_of(it, candidates, &next, &bits);
  bool closed = strcmp(word, "closed") == 0;
  bool found = strcmp(word, "found") == 0;
  oc_finding_set_about(finding, OHM_VERB_CIRCUIT);
  oc_finding_set_number(finding, OHM_FIELD_VERDICT,
                        closed  ? OHM_WITHIN
                        : found ? OHM_OUTSIDE
                                : OHM_UNDECIDED);
  oc_finding_add_entry(finding, OHM_FIELD_CIRCUIT, it->circuit->name);
  oc_finding_add_entry(finding, OHM_FIELD_STATE, word);
  oc_finding_set_number(finding, OHM_FIELD_FAN_C, it->fan_c);
  add_parts(it, finding);
  if (found)
    add_again(it, finding);
  add_seen(it, finding);
  oc_told_links(finding, OHM_FIELD_RENEWED, it->circuit, it->renewed);
  if (it->is_contradictory)
    add_contradiction(it, finding);
  if (next != OC_NO_PLACE)
    add_next(it, candidates, next, bits, finding);
  oc_told_links(finding, OHM_FIELD_FAULTY, it->circuit, it->faulty);
  add_suspects(it, candidates, finding);
  oc_told_links(finding, OHM_FIELD_CLEARED, it->circuit, it->cleared);
}

/* Too large for a stack. */
struct work {
  struct oc_record record;
  struct oc_deduction deduction;
  struct oc_candidates candidates;
};

ohm_status oc_isolation_judge(const ohm_circuit *circuit, const char *record, size_t length,
                              ohm_finding *finding, ohm_error *error) {
  oc_error_clear(error);
  if (finding)
    oc_finding_clear(finding);
  if (!circuit || !finding || (!record && length > 0))
    return oc_fail_null(error);
  struct work *work = malloc(sizeof *work);
  if (!work)
    return oc_fail_memory(error);
  ohm_status status = oc_record_read(circuit, record, length, &work->record, error);
  if (status == OHM_OK) {
    oc_deduction_begin(&work->deduction, circuit, &work->record);
    answer(&work->deduction, &work->candidates, finding);
  }
  free(work);
  return status;
}

/* ---- a finding of the sensor ---- */

/* What is outside, or makes the fan late, is at fault; what is good enough for the fan is
 * not why it stays off. A cold reading that cannot tell clears nothing. */
static const char *outcome_of(const ohm_finding *finding) {
  ohm_verdict part = ohm_finding_verdict(finding);
  ohm_verdict job = ohm_finding_job(finding);
  if (part == OHM_OUTSIDE || job == OHM_OUTSIDE)
    return "outside";
  return part == OHM_WITHIN && job == OHM_WITHIN ? "within" : "undecided";
}

size_t oc_isolation_print_finding(const ohm_circuit *circuit, const ohm_finding *finding,
                                  char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  const char *place = ohm_finding_text(finding, OHM_FIELD_PLACE, 0);
  if (!circuit || !place)
    return 0;
  enum oc_test_unit unit = strcmp(place, "sensor") == 0   ? OC_UNIT_FINDING_SENSOR
                           : strcmp(place, "module") == 0 ? OC_UNIT_FINDING_MODULE
                                                          : OC_UNITS;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (circuit->tests[i].unit == unit) {
      oc_text_add(&out, circuit->tests[i].cells[OHM_TEST_TEST]);
      oc_text_add(&out, "=");
      oc_text_add(&out, outcome_of(finding));
      oc_text_add(&out, "\n");
      return out.length;
    }
  return 0;
}
