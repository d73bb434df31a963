/* SPDX-License-Identifier: MIT */
#include "deduction.h"

#include <string.h>

#include "../arithmetic/fuse.h"

static bool bad_tells(const struct oc_deduction *it, size_t test) {
  size_t fact = it->circuit->tests[test].only_if;
  return fact == OC_NO_PLACE || it->stated[fact];
}

static oc_outcomes bad_of(const struct oc_test *test) {
  return (oc_outcomes)(oc_test_any(test) & ~oc_test_good(test));
}

oc_set oc_deduction_accused(const struct oc_deduction *it, size_t test) {
  const struct ohm_circuit *circuit = it->circuit;
  const struct oc_test *t = &circuit->tests[test];
  oc_outcomes bad = bad_of(t);
  oc_set accused = 0;
  for (size_t i = 0; bad_tells(it, test) && i < circuit->failing_count; i++)
    if (t->foretold[i] & bad)
      accused |= oc_set_of(circuit->failings[i].link);
  return t->accuses != 0 ? accused : 0;
}

oc_set oc_deduction_blamed(const struct oc_deduction *it, size_t test) {
  const struct ohm_circuit *circuit = it->circuit;
  const struct oc_test *t = &circuit->tests[test];
  oc_outcomes bad = bad_of(t);
  oc_set blame = 0;
  for (size_t i = 0; i < circuit->failing_count; i++)
    if (it->possible[i] && t->foretold[i] & bad)
      blame |= oc_set_of(circuit->failings[i].link);
  return blame;
}

bool oc_deduction_has_tools(const struct oc_deduction *it, size_t test) {
  bool has = true;
  for (size_t i = 0; i < it->record->count; i++) {
    const struct oc_record_entry *entry = &it->record->entries[i];
    if (entry->of != OC_RECORD_TOOL ||
        !oc_circuit_uses(&it->circuit->tests[test], entry->tool, entry->tool_length))
      continue;
    /* The last word on each tool counts. */
    bool last = true;
    for (size_t k = i + 1; k < it->record->count; k++) {
      const struct oc_record_entry *later = &it->record->entries[k];
      last = last && !(later->of == OC_RECORD_TOOL && later->tool_length == entry->tool_length &&
                       memcmp(later->tool, entry->tool, entry->tool_length) == 0);
    }
    has = has && !(last && entry->seen == OC_SEEN_NONE);
  }
  return has;
}

/* A bad test that had the part in it is open again; whether the fan starts always is. */
static void renew(struct oc_deduction *it, size_t link) {
  oc_set part = oc_circuit_part(it->circuit, link);
  it->renewed |= part;
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    bool bad = it->tests[i].seen == OC_SEEN_BAD && it->circuit->tests[i].accuses & part;
    if (bad || it->circuit->tests[i].role == OC_ROLE_SYMPTOM)
      it->tests[i] = (struct oc_view){OC_SEEN_NOTHING, 0, NAN, NAN};
  }
}

/* The current a test is judged by, and its limit of error; NaN when it is not known. */
static double current_of(const struct oc_deduction *it, const struct oc_test *test, double *u) {
  for (size_t i = 0; i < 2 && test->amperes[i] != OC_NO_PLACE; i++) {
    const struct oc_view *view = &it->tests[test->amperes[i]];
    const struct oc_test *by = &it->circuit->tests[test->amperes[i]];
    double amperes = by->unit == OC_UNIT_FUSE ? view->amperes : view->number;
    if (isnan(amperes))
      continue;
    *u = by->unit == OC_UNIT_FUSE ? OC_FUSE_ERROR * amperes : oc_record_error(by, amperes);
    return amperes;
  }
  *u = NAN;
  return NAN;
}

static oc_outcomes plain_outcomes(const struct oc_test *test, enum oc_seen seen) {
  return seen == OC_SEEN_GOOD     ? oc_test_good(test)
         : seen == OC_SEEN_BAD    ? bad_of(test)
         : seen == OC_SEEN_UNSURE ? oc_test_any(test)
                                  : 0;
}

static void judge_number(struct oc_deduction *it, size_t test) {
  const struct oc_test *t = &it->circuit->tests[test];
  struct oc_view *view = &it->tests[test];
  double u_amperes;
  double amperes = current_of(it, t, &u_amperes);
  if (isnan(view->number))
    return;
  view->seen = oc_record_judge(it->circuit, t, view->number, it->fan_c, amperes, u_amperes);
  view->shown = t->unit == OC_UNIT_FUSE
                    ? plain_outcomes(t, view->seen)
                    : oc_record_shown(it->circuit, t, view->number, it->fan_c, amperes, u_amperes);
}

/* A volt drop may have been read before the current was. */
static void follow_record(struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++)
    it->tests[i] = (struct oc_view){OC_SEEN_NOTHING, 0, NAN, NAN};
  for (size_t i = 0; i < it->record->count; i++) {
    const struct oc_record_entry *entry = &it->record->entries[i];
    if (entry->of == OC_RECORD_LINK) {
      renew(it, entry->index);
    } else if (entry->of == OC_RECORD_FACT) {
      it->stated[entry->index] = entry->seen == OC_SEEN_YES;
    } else if (entry->of == OC_RECORD_TEST) {
      const struct oc_test *test = &it->circuit->tests[entry->index];
      oc_outcomes shown = entry->shown ? entry->shown : plain_outcomes(test, entry->seen);
      it->tests[entry->index] = (struct oc_view){entry->seen, shown, entry->number, entry->amperes};
      judge_number(it, entry->index);
    }
  }
  for (size_t i = 0; i < it->circuit->test_count; i++)
    judge_number(it, i);
}

/* What is lost along the way and what is left add up to the battery, or one was misread. */
static bool is_off(const struct oc_deduction *it, const struct oc_balance *balance) {
  double left = it->tests[balance->whole].number;
  double error = OC_BALANCE_VOLT + oc_record_error(&it->circuit->tests[balance->whole], left);
  for (size_t i = 0; i < balance->part_count; i++) {
    double part = it->tests[balance->parts[i]].number;
    left -= part;
    error += oc_record_error(&it->circuit->tests[balance->parts[i]], part);
  }
  return fabs(left) > error;
}

static void set_aside(struct oc_deduction *it, size_t test) {
  it->tests[test].seen = OC_SEEN_UNSURE;
}

static void weigh_balances(struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->balance_count; i++) {
    const struct oc_balance *balance = &it->circuit->balances[i];
    it->off_balance[i] = is_off(it, balance);
    if (!it->off_balance[i])
      continue;
    it->is_contradictory = true;
    set_aside(it, balance->whole);
    for (size_t k = 0; k < balance->part_count; k++)
      set_aside(it, balance->parts[k]);
  }
}

/* ---- conflicts ---- */

/* What was skipped, or cannot be looked at for want of a tool, is taken to hold. */
static bool is_taken_to_hold(const struct oc_deduction *it, size_t test) {
  enum oc_seen seen = it->tests[test].seen;
  return seen == OC_SEEN_GOOD || seen == OC_SEEN_SKIPPED ||
         (seen == OC_SEEN_NOTHING && !oc_deduction_has_tools(it, test));
}

/* Whether everything held that has to before the fan should start. */
static bool was_asked(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++)
    if (it->circuit->tests[i].role == OC_ROLE_CONDITION && !is_taken_to_hold(it, i))
      return false;
  return true;
}

bool oc_deduction_counts(const struct oc_deduction *it, size_t test) {
  return it->tests[test].seen == OC_SEEN_BAD && oc_deduction_accused(it, test) != 0 &&
         (it->circuit->tests[test].role != OC_ROLE_SYMPTOM || was_asked(it));
}

/* The part that a conflict leaves alone with the fault; 0 when it leaves several. */
static oc_set only_part(const struct ohm_circuit *circuit, oc_set conflict) {
  for (size_t i = 0; i < circuit->link_count; i++)
    if (conflict & oc_set_of(i)) {
      oc_set part = oc_circuit_part(circuit, i);
      return (conflict & ~part) == 0 ? conflict : 0;
    }
  return 0;
}

/* What a good test would have shown is ruled out; a link is cleared when nothing is left of it
 * that matters. */
static void rule_out(struct oc_deduction *it) {
  const struct ohm_circuit *circuit = it->circuit;
  oc_set open = 0;
  oc_set matter = 0;
  for (size_t i = 0; i < circuit->failing_count; i++) {
    const struct oc_failing *failing = &circuit->failings[i];
    it->possible[i] = true;
    for (size_t k = 0; k < circuit->test_count && it->possible[i]; k++)
      it->possible[i] = it->tests[k].seen != OC_SEEN_GOOD ||
                        circuit->tests[k].foretold[i] & oc_test_good(&circuit->tests[k]);
    matter |= failing->matters ? oc_set_of(failing->link) : 0;
    open |= failing->matters && it->possible[i] ? oc_set_of(failing->link) : 0;
  }
  it->cleared = matter & ~open;
}

/* Whether what a test showed counts against what goes not with it. */
static bool tells(const struct oc_deduction *it, size_t test) {
  enum oc_seen seen = it->tests[test].seen;
  return oc_deduction_counts(it, test) || (seen == OC_SEEN_UNSURE && bad_tells(it, test));
}

static void find_alone(struct oc_deduction *it) {
  const struct ohm_circuit *circuit = it->circuit;
  for (size_t i = 0; i < circuit->failing_count; i++) {
    it->alone[i] = it->possible[i];
    for (size_t k = 0; it->alone[i] && k < circuit->test_count; k++)
      it->alone[i] = !tells(it, k) || circuit->tests[k].foretold[i] & it->tests[k].shown;
  }
}

static void find_conflicts(struct oc_deduction *it) {
  const struct ohm_circuit *circuit = it->circuit;
  rule_out(it);
  for (size_t i = 0; i < circuit->test_count; i++) {
    if (!oc_deduction_counts(it, i))
      continue;
    oc_set conflict = oc_deduction_blamed(it, i);
    if (conflict == 0) {
      it->is_contradictory = true;
      it->contradicted |= oc_deduction_accused(it, i);
      continue;
    }
    it->conflicts[it->conflict_count++] = conflict;
    it->faulty |= only_part(circuit, conflict);
  }
  find_alone(it);
}

bool oc_deduction_is_explained(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->conflict_count; i++)
    if (!(it->conflicts[i] & it->faulty))
      return false;
  return it->faulty != 0;
}

/* ---- how probable ---- */

double oc_deduction_odds(const struct oc_deduction *it, size_t link) {
  const struct ohm_circuit *circuit = it->circuit;
  double odds = circuit->links[link].odds;
  odds = isnan(odds) ? OC_ODDS_UNLESS_TOLD : odds / (1 - odds);
  if (it->renewed & oc_set_of(link))
    odds *= OC_ODDS_IF_RENEWED;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (it->tests[i].seen == OC_SEEN_GOOD && circuit->tests[i].accuses & oc_set_of(link))
      odds *= OC_ODDS_IF_NOT_SHOWN;
  return odds;
}

void oc_deduction_begin(struct oc_deduction *it, const struct ohm_circuit *circuit,
                        const struct oc_record *record) {
  memset(it, 0, sizeof *it);
  it->circuit = circuit;
  it->fan_c = record->fan_c;
  it->record = record;
  follow_record(it);
  weigh_balances(it);
  find_conflicts(it);
}
