/* SPDX-License-Identifier: MIT */
#include "case.h"

#include <string.h>

#include "fuse.h"

/* Volts were not all read at one moment. Common practice. */
static const double balance_volt = 0.3;

/* Of a link of which nothing is known; of one that was just renewed; of one that would
 * have shown itself in most tests that were good. Common practice. */
static const double odds_unless_told = 0.02;
static const double odds_if_renewed = 0.1;
static const double odds_if_not_shown = 0.2;

/* Links of which one is at fault when the test is bad; none when that tells nothing. */
ohm_set ohm_case_accused(const struct ohm_case *it, size_t test) {
  const struct ohm_test *t = &it->circuit->tests[test];
  bool holds = t->only_if == OHM_NO_PLACE || it->stated[t->only_if];
  return holds ? t->accuses : 0;
}

/* A bad test that had the part in it is open again; whether the fan starts always is. */
static void renew(struct ohm_case *it, size_t link) {
  ohm_set part = ohm_circuit_part(it->circuit, link);
  it->renewed |= part;
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    bool bad = it->tests[i].seen == OHM_SEEN_BAD && it->circuit->tests[i].accuses & part;
    if (bad || it->circuit->tests[i].role == OHM_ROLE_SYMPTOM)
      it->tests[i] = (struct ohm_view){OHM_SEEN_NOTHING, NAN, NAN};
  }
}

/* The current a test is judged by, and its limit of error; NaN when it is not known. */
static double current_of(const struct ohm_case *it, const struct ohm_test *test, double *u) {
  for (size_t i = 0; i < 2 && test->amperes[i] != OHM_NO_PLACE; i++) {
    const struct ohm_view *view = &it->tests[test->amperes[i]];
    const struct ohm_test *by = &it->circuit->tests[test->amperes[i]];
    double amperes = by->unit == OHM_UNIT_FUSE ? view->amperes : view->number;
    if (isnan(amperes))
      continue;
    *u = by->unit == OHM_UNIT_FUSE ? OHM_FUSE_ERROR * amperes : ohm_record_error(by, amperes);
    return amperes;
  }
  *u = NAN;
  return NAN;
}

static void judge_number(struct ohm_case *it, size_t test) {
  const struct ohm_test *t = &it->circuit->tests[test];
  struct ohm_view *view = &it->tests[test];
  double u_amperes;
  double amperes = current_of(it, t, &u_amperes);
  if (!isnan(view->number))
    view->seen = ohm_record_judge(it->circuit, t, view->number, it->fan_c, amperes, u_amperes);
}

/* A volt drop may have been read before the current was. */
static void follow_record(struct ohm_case *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++)
    it->tests[i] = (struct ohm_view){OHM_SEEN_NOTHING, NAN, NAN};
  for (size_t i = 0; i < it->record->count; i++) {
    const struct ohm_record_entry *entry = &it->record->entries[i];
    if (entry->of == OHM_RECORD_LINK) {
      renew(it, entry->index);
    } else if (entry->of == OHM_RECORD_FACT) {
      it->stated[entry->index] = entry->seen == OHM_SEEN_YES;
    } else if (entry->of == OHM_RECORD_TEST) {
      it->tests[entry->index] = (struct ohm_view){entry->seen, entry->number, entry->amperes};
      judge_number(it, entry->index);
    }
  }
  for (size_t i = 0; i < it->circuit->test_count; i++)
    judge_number(it, i);
}

/* What is lost along the way and what is left add up to the battery, or one was misread. */
static bool is_off(const struct ohm_case *it, const struct ohm_balance *balance) {
  double left = it->tests[balance->whole].number;
  double error = balance_volt + ohm_record_error(&it->circuit->tests[balance->whole], left);
  for (size_t i = 0; i < balance->part_count; i++) {
    double part = it->tests[balance->parts[i]].number;
    left -= part;
    error += ohm_record_error(&it->circuit->tests[balance->parts[i]], part);
  }
  return fabs(left) > error;
}

static void set_aside(struct ohm_case *it, size_t test) {
  it->tests[test].seen = OHM_SEEN_UNSURE;
}

static void weigh_balances(struct ohm_case *it) {
  for (size_t i = 0; i < it->circuit->balance_count; i++) {
    const struct ohm_balance *balance = &it->circuit->balances[i];
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

/* Whether everything held that has to before the fan should start. */
static bool was_asked(const struct ohm_case *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    enum ohm_seen seen = it->tests[i].seen;
    if (it->circuit->tests[i].role == OHM_ROLE_CONDITION && seen != OHM_SEEN_GOOD &&
        seen != OHM_SEEN_SKIPPED)
      return false;
  }
  return true;
}

bool ohm_case_counts(const struct ohm_case *it, size_t test) {
  return it->tests[test].seen == OHM_SEEN_BAD && ohm_case_accused(it, test) != 0 &&
         (it->circuit->tests[test].role != OHM_ROLE_SYMPTOM || was_asked(it));
}

/* The part that a conflict leaves alone with the fault; 0 when it leaves several. */
static ohm_set only_part(const struct ohm_circuit *circuit, ohm_set conflict) {
  for (size_t i = 0; i < circuit->link_count; i++)
    if (conflict & ohm_set_of(i)) {
      ohm_set part = ohm_circuit_part(circuit, i);
      return (conflict & ~part) == 0 ? conflict : 0;
    }
  return 0;
}

static void find_conflicts(struct ohm_case *it) {
  const struct ohm_circuit *circuit = it->circuit;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (it->tests[i].seen == OHM_SEEN_GOOD)
      it->cleared |= circuit->tests[i].clears;
  for (size_t i = 0; i < circuit->test_count; i++) {
    if (!ohm_case_counts(it, i))
      continue;
    ohm_set conflict = ohm_case_accused(it, i) & ~it->cleared;
    if (conflict == 0) {
      it->is_contradictory = true;
      it->contradicted |= ohm_case_accused(it, i);
      continue;
    }
    it->conflicts[it->conflict_count++] = conflict;
    it->faulty |= only_part(circuit, conflict);
  }
}

bool ohm_case_is_explained(const struct ohm_case *it) {
  for (size_t i = 0; i < it->conflict_count; i++)
    if (!(it->conflicts[i] & it->faulty))
      return false;
  return it->faulty != 0;
}

/* ---- how probable ---- */

double ohm_case_odds(const struct ohm_case *it, size_t link) {
  const struct ohm_circuit *circuit = it->circuit;
  double odds = circuit->links[link].odds;
  odds = isnan(odds) ? odds_unless_told : odds / (1 - odds);
  if (it->renewed & ohm_set_of(link))
    odds *= odds_if_renewed;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (it->tests[i].seen == OHM_SEEN_GOOD && circuit->tests[i].accuses & ohm_set_of(link))
      odds *= odds_if_not_shown;
  return odds;
}

void ohm_case_begin(struct ohm_case *it, const struct ohm_circuit *circuit,
                    const struct ohm_record *record) {
  memset(it, 0, sizeof *it);
  it->circuit = circuit;
  it->fan_c = record->fan_c;
  it->record = record;
  follow_record(it);
  weigh_balances(it);
  find_conflicts(it);
}
