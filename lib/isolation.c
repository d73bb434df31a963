/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault, from what was seen so far, and what to look at
 * next. The record is the whole state. */
#include "diagnosis.h"
#include "finding.h"
#include "fuse.h"
#include "number.h"
#include "record.h"
#include "status.h"

#include <stdlib.h>
#include <string.h>

/* Of a link of which nothing is known; of one that was just renewed; of one that would
 * have shown itself in most tests that were good. Common practice. */
static const double odds_unless_told = 0.02;
static const double odds_if_renewed = 0.1;
static const double odds_if_not_shown = 0.2;

/* Beyond where the fan is to start: engine off. Common practice. */
static const double too_hot_k = 12;

/* Volts were not all read at one moment. Common practice. */
static const double balance_volt = 0.3;

static const double least_bits = 1e-9;

/* ---- what is known ---- */

struct view {
  enum ohm_seen seen;
  double number;
  double amperes;
};

struct state {
  const struct ohm_circuit *circuit;
  double fan_c;
  struct view tests[OHM_CIRCUIT_TESTS];
  bool stated[OHM_CIRCUIT_FACTS];
  const struct ohm_record *record;
  ohm_set renewed;
  ohm_set cleared;
  size_t conflict_count;
  ohm_set conflicts[OHM_CIRCUIT_TESTS];
  ohm_set contradicted; /* what a contradicting test accuses */
  ohm_set faulty;       /* parts of which a conflict leaves nothing else */
  bool is_contradictory;
  bool off_balance[OHM_CIRCUIT_BALANCES];
};

/* Links of which one is at fault when the test is bad; none when that tells nothing. */
static ohm_set accused(const struct state *state, size_t test) {
  const struct ohm_test *t = &state->circuit->tests[test];
  bool holds = t->only_if == OHM_NO_PLACE || state->stated[t->only_if];
  return holds ? t->accuses : 0;
}

/* A bad test that had the part in it is open again; whether the fan starts always is. */
static void renew(struct state *state, size_t link) {
  ohm_set part = ohm_circuit_part(state->circuit, link);
  state->renewed |= part;
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    bool bad = state->tests[i].seen == OHM_SEEN_BAD && state->circuit->tests[i].accuses & part;
    if (bad || state->circuit->tests[i].role == OHM_ROLE_SYMPTOM)
      state->tests[i] = (struct view){OHM_SEEN_NOTHING, NAN, NAN};
  }
}

/* The current a test is judged by, and its limit of error; NaN when it is not known. */
static double current_of(const struct state *state, const struct ohm_test *test, double *u) {
  for (size_t i = 0; i < 2 && test->amperes[i] != OHM_NO_PLACE; i++) {
    const struct view *view = &state->tests[test->amperes[i]];
    const struct ohm_test *by = &state->circuit->tests[test->amperes[i]];
    double amperes = by->unit == OHM_UNIT_FUSE ? view->amperes : view->number;
    if (isnan(amperes))
      continue;
    *u = by->unit == OHM_UNIT_FUSE ? OHM_FUSE_ERROR * amperes : ohm_record_error(by, amperes);
    return amperes;
  }
  *u = NAN;
  return NAN;
}

static void judge_number(struct state *state, size_t test) {
  const struct ohm_test *t = &state->circuit->tests[test];
  struct view *view = &state->tests[test];
  double u_amperes;
  double amperes = current_of(state, t, &u_amperes);
  if (!isnan(view->number))
    view->seen =
        ohm_record_judge(state->circuit, t, view->number, state->fan_c, amperes, u_amperes);
}

/* A volt drop may have been read before the current was. */
static void follow_record(struct state *state) {
  for (size_t i = 0; i < state->circuit->test_count; i++)
    state->tests[i] = (struct view){OHM_SEEN_NOTHING, NAN, NAN};
  for (size_t i = 0; i < state->record->count; i++) {
    const struct ohm_record_entry *entry = &state->record->entries[i];
    if (entry->of == OHM_RECORD_LINK) {
      renew(state, entry->index);
    } else if (entry->of == OHM_RECORD_FACT) {
      state->stated[entry->index] = entry->seen == OHM_SEEN_YES;
    } else if (entry->of == OHM_RECORD_TEST) {
      state->tests[entry->index] = (struct view){entry->seen, entry->number, entry->amperes};
      judge_number(state, entry->index);
    }
  }
  for (size_t i = 0; i < state->circuit->test_count; i++)
    judge_number(state, i);
}

/* What is lost along the way and what is left add up to the battery, or one was misread. */
static bool is_off(const struct state *state, const struct ohm_balance *balance) {
  double left = state->tests[balance->whole].number;
  double error = balance_volt + ohm_record_error(&state->circuit->tests[balance->whole], left);
  for (size_t i = 0; i < balance->part_count; i++) {
    double part = state->tests[balance->parts[i]].number;
    left -= part;
    error += ohm_record_error(&state->circuit->tests[balance->parts[i]], part);
  }
  return fabs(left) > error;
}

static void set_aside(struct state *state, size_t test) {
  state->tests[test].seen = OHM_SEEN_UNSURE;
}

static void weigh_balances(struct state *state) {
  for (size_t i = 0; i < state->circuit->balance_count; i++) {
    const struct ohm_balance *balance = &state->circuit->balances[i];
    state->off_balance[i] = is_off(state, balance);
    if (!state->off_balance[i])
      continue;
    state->is_contradictory = true;
    set_aside(state, balance->whole);
    for (size_t k = 0; k < balance->part_count; k++)
      set_aside(state, balance->parts[k]);
  }
}

/* ---- conflicts ---- */

/* Whether everything held that has to before the fan should start. */
static bool was_asked(const struct state *state) {
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    enum ohm_seen seen = state->tests[i].seen;
    if (state->circuit->tests[i].role == OHM_ROLE_CONDITION && seen != OHM_SEEN_GOOD &&
        seen != OHM_SEEN_SKIPPED)
      return false;
  }
  return true;
}

static bool counts(const struct state *state, size_t test) {
  return state->tests[test].seen == OHM_SEEN_BAD && accused(state, test) != 0 &&
         (state->circuit->tests[test].role != OHM_ROLE_SYMPTOM || was_asked(state));
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

static void find_conflicts(struct state *state) {
  const struct ohm_circuit *circuit = state->circuit;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (state->tests[i].seen == OHM_SEEN_GOOD)
      state->cleared |= circuit->tests[i].clears;
  for (size_t i = 0; i < circuit->test_count; i++) {
    if (!counts(state, i))
      continue;
    ohm_set conflict = accused(state, i) & ~state->cleared;
    if (conflict == 0) {
      state->is_contradictory = true;
      state->contradicted |= accused(state, i);
      continue;
    }
    state->conflicts[state->conflict_count++] = conflict;
    state->faulty |= only_part(circuit, conflict);
  }
}

static bool is_explained(const struct state *state) {
  for (size_t i = 0; i < state->conflict_count; i++)
    if (!(state->conflicts[i] & state->faulty))
      return false;
  return state->faulty != 0;
}

/* ---- how probable ---- */

static double odds_of(const struct state *state, size_t link) {
  const struct ohm_circuit *circuit = state->circuit;
  double odds = circuit->links[link].odds;
  odds = isnan(odds) ? odds_unless_told : odds / (1 - odds);
  if (state->renewed & ohm_set_of(link))
    odds *= odds_if_renewed;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (state->tests[i].seen == OHM_SEEN_GOOD && circuit->tests[i].accuses & ohm_set_of(link))
      odds *= odds_if_not_shown;
  return odds;
}

struct candidate {
  ohm_set set;
  ohm_set parts; /* what would be renewed */
  double weight;
};

struct candidates {
  size_t count;
  struct candidate each[OHM_DIAGNOSIS_ROOM]; /* those that renew the same stand together */
  double weights[OHM_DIAGNOSIS_ROOM];
  ohm_set parts[OHM_DIAGNOSIS_ROOM];
  ohm_set any; /* every link in one of the sets */
};

static ohm_set parts_of(const struct ohm_circuit *circuit, ohm_set set) {
  ohm_set parts = 0;
  for (size_t link = 0; link < circuit->link_count; link++)
    if (set & ohm_set_of(link) && !(parts & ohm_set_of(link)))
      parts |= ohm_circuit_part(circuit, link);
  return parts;
}

static int by_parts(const void *left, const void *right) {
  const struct candidate *a = left;
  const struct candidate *b = right;
  if (a->parts != b->parts)
    return a->parts < b->parts ? -1 : 1;
  return a->set < b->set ? -1 : a->set > b->set;
}

static void find_candidates(const struct state *state, struct candidates *candidates) {
  struct ohm_diagnosis diagnosis;
  double odds[OHM_DIAGNOSIS_PARTS] = {0};
  for (size_t i = 0; i < state->circuit->link_count; i++)
    odds[i] = odds_of(state, i);
  ohm_diagnosis_find(state->conflicts, state->conflict_count, &diagnosis);
  ohm_diagnosis_weigh(&diagnosis, odds, candidates->weights);
  candidates->count = diagnosis.count;
  candidates->any = 0;
  for (size_t i = 0; i < diagnosis.count; i++) {
    candidates->any |= diagnosis.sets[i];
    candidates->each[i] = (struct candidate){
        diagnosis.sets[i], parts_of(state->circuit, diagnosis.sets[i]), candidates->weights[i]};
  }
  qsort(candidates->each, candidates->count, sizeof candidates->each[0], by_parts);
  for (size_t i = 0; i < candidates->count; i++) {
    candidates->weights[i] = candidates->each[i].weight;
    candidates->parts[i] = candidates->each[i].parts;
  }
}

/* ---- the next test ---- */

static bool has_tools(const struct state *state, const struct ohm_test *test) {
  bool has = true;
  for (size_t i = 0; i < state->record->count; i++) {
    const struct ohm_record_entry *entry = &state->record->entries[i];
    if (entry->of != OHM_RECORD_TOOL || !ohm_circuit_uses(test, entry->tool, entry->tool_length))
      continue;
    /* The last word on each tool counts. */
    bool last = true;
    for (size_t k = i + 1; k < state->record->count; k++) {
      const struct ohm_record_entry *later = &state->record->entries[k];
      last = last && !(later->of == OHM_RECORD_TOOL && later->tool_length == entry->tool_length &&
                       memcmp(later->tool, entry->tool, entry->tool_length) == 0);
    }
    has = has && !(last && entry->seen == OHM_SEEN_NONE);
  }
  return has;
}

static bool need_is_met(const struct state *state, const char *word, size_t length) {
  const struct ohm_circuit *circuit = state->circuit;
  const char *sign = memchr(word, '=', length);
  size_t name = (size_t)(sign - word);
  size_t rest = length - name - 1;
  if (ohm_circuit_is(sign + 1, rest, "yes"))
    return state->stated[ohm_circuit_fact(circuit, word, name)];
  if (ohm_circuit_is(sign + 1, rest, "renewed"))
    return state->renewed & ohm_set_of(ohm_circuit_link(circuit, word, name));
  bool good = ohm_circuit_is(sign + 1, rest, "good");
  return state->tests[ohm_circuit_test(circuit, word, name)].seen ==
         (good ? OHM_SEEN_GOOD : OHM_SEEN_BAD);
}

static bool needs_are_met(const struct state *state, const struct ohm_test *test) {
  const char *needs = test->cells[OHM_TEST_NEEDS];
  const char *word;
  size_t length;
  while (ohm_circuit_word(&needs, &word, &length))
    if (!need_is_met(state, word, length))
      return false;
  if (test->amperes[0] == OHM_NO_PLACE)
    return true;
  for (size_t i = 0; i < 2 && test->amperes[i] != OHM_NO_PLACE; i++)
    if (state->tests[test->amperes[i]].seen == OHM_SEEN_GOOD)
      return true;
  return false;
}

static bool can_be_made(const struct state *state, size_t test) {
  const struct ohm_test *t = &state->circuit->tests[test];
  return has_tools(state, t) && needs_are_met(state, t);
}

/* Good is 0, bad is 1. */
static int predicted(const struct state *state, size_t test, ohm_set set) {
  ohm_set bad = accused(state, test);
  if (state->circuit->tests[test].clears & set)
    return 1;
  return bad && !(bad & set) ? 0 : OHM_UNPREDICTED;
}

static double bits_of(const struct state *state, const struct candidates *candidates, size_t test) {
  int outcomes[OHM_DIAGNOSIS_ROOM];
  for (size_t i = 0; i < candidates->count; i++)
    outcomes[i] = predicted(state, test, candidates->each[i].set);
  return ohm_diagnosis_information(candidates->weights, candidates->parts, outcomes,
                                   candidates->count, 2);
}

static size_t first_of_role(const struct state *state, enum ohm_test_role role) {
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    enum ohm_seen seen = state->tests[i].seen;
    if (state->circuit->tests[i].role == role && can_be_made(state, i) &&
        (seen == OHM_SEEN_NOTHING || seen == OHM_SEEN_UNSURE))
      return i;
  }
  return OHM_NO_PLACE;
}

static bool has_complaint(const struct state *state) {
  for (size_t i = 0; i < state->circuit->test_count; i++)
    if (state->circuit->tests[i].role == OHM_ROLE_SYMPTOM && state->tests[i].seen == OHM_SEEN_BAD)
      return true;
  return false;
}

/* Of the tests so seen the one that tells most in a minute. */
static size_t most_telling(const struct state *state, const struct candidates *candidates,
                           enum ohm_seen seen, double *bits) {
  size_t best = OHM_NO_PLACE;
  double best_rate = 0;
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    const struct ohm_test *test = &state->circuit->tests[i];
    if (test->role == OHM_ROLE_SYMPTOM || state->tests[i].seen != seen || !can_be_made(state, i))
      continue;
    double told = bits_of(state, candidates, i);
    if (told > least_bits && told / test->minutes > best_rate) {
      best_rate = told / test->minutes;
      *bits = told;
      best = i;
    }
  }
  return best;
}

/* Whether the fan starts, whether it was asked, then what tells most; what was too near to
 * tell once more when nothing else is left. */
static size_t next_test(const struct state *state, const struct candidates *candidates,
                        double *bits) {
  *bits = NAN;
  size_t next = first_of_role(state, OHM_ROLE_SYMPTOM);
  if (next == OHM_NO_PLACE && has_complaint(state) && state->conflict_count == 0)
    next = first_of_role(state, OHM_ROLE_CONDITION);
  if (next == OHM_NO_PLACE)
    next = most_telling(state, candidates, OHM_SEEN_NOTHING, bits);
  return next == OHM_NO_PLACE ? most_telling(state, candidates, OHM_SEEN_UNSURE, bits) : next;
}

/* ---- the answer ---- */

static const char *test_name(const struct state *state, size_t test) {
  return state->circuit->tests[test].cells[OHM_TEST_TEST];
}

static void add_links(const struct state *state, ohm_set links, ohm_field field,
                      ohm_finding *finding) {
  for (size_t i = 0; i < state->circuit->link_count; i++)
    if (links & ohm_set_of(i))
      ohm_finding_add_entry(finding, field, state->circuit->links[i].cells[OHM_LINK_LINK]);
}

/* The most probable first. */
static void add_suspects(const struct state *state, const struct candidates *candidates,
                         ohm_finding *finding) {
  double chance[OHM_DIAGNOSIS_PARTS] = {0};
  for (size_t i = 0; i < candidates->count; i++)
    for (size_t link = 0; link < state->circuit->link_count; link++)
      if (candidates->each[i].set & ohm_set_of(link))
        chance[link] += candidates->each[i].weight;
  for (ohm_set left = candidates->any & ~state->faulty; left;) {
    size_t best = OHM_NO_PLACE;
    for (size_t link = 0; link < state->circuit->link_count; link++)
      if (left & ohm_set_of(link) && (best == OHM_NO_PLACE || chance[link] > chance[best]))
        best = link;
    left &= ~ohm_set_of(best);
    add_links(state, ohm_set_of(best), OHM_FIELD_SUSPECTS, finding);
  }
}

/* "fuse: a new one of the same rating", each part once. */
static void add_parts(const struct state *state, ohm_finding *finding) {
  const struct ohm_circuit *circuit = state->circuit;
  ohm_set said = 0;
  for (size_t i = 0; i < circuit->link_count; i++) {
    const struct ohm_link *link = &circuit->links[i];
    if (!(state->faulty & ohm_set_of(i)) || said & ohm_set_of(i))
      continue;
    said |= ohm_circuit_part(circuit, i);
    char buffer[512];
    struct ohm_text text = ohm_text_begin(buffer, sizeof buffer);
    ohm_text_add(&text, link->cells[OHM_LINK_PART]);
    ohm_text_add(&text, link->cells[OHM_LINK_RENEW][0] ? ": " : "");
    ohm_text_add(&text, link->cells[OHM_LINK_RENEW]);
    bool buy = strcmp(link->cells[OHM_LINK_ACTION], "buy") == 0;
    ohm_finding_add_entry(finding, buy ? OHM_FIELD_BUY : OHM_FIELD_REPAIR, buffer);
  }
}

static void add_limit(struct ohm_text *text, const struct state *state,
                      struct ohm_test_limit limit) {
  ohm_text_add_number(text, ohm_test_limit_at(limit, state->fan_c));
}

/* "good is 11 V or more"; empty for a word. */
static void add_expected(struct ohm_text *text, const struct state *state,
                         const struct ohm_test *test) {
  static const char *const units[] = {"", " V", " A", " ohm", " C", " ohm (volts over amperes)"};
  bool has_low = !isnan(test->low.value);
  bool has_high = !isnan(test->high.value);
  if (test->unit == OHM_UNIT_FUSE)
    ohm_text_add(text, "more than 0.7 mV");
  if (!(OHM_UNIT_VOLT <= test->unit && test->unit <= OHM_UNIT_DROP))
    return;
  if (has_low)
    add_limit(text, state, test->low);
  if (has_low && has_high)
    ohm_text_add(text, " to ");
  if (has_high)
    add_limit(text, state, test->high);
  ohm_text_add(text, units[test->unit]);
  if (has_low != has_high)
    ohm_text_add(text, has_low ? " or more" : " or less");
}

/* What was bad with the part in it, at the same place, and at last the fan by itself. */
static void add_again(const struct state *state, ohm_finding *finding) {
  for (int symptoms = 0; symptoms < 2; symptoms++)
    for (size_t i = 0; i < state->circuit->test_count; i++) {
      const struct ohm_test *test = &state->circuit->tests[i];
      bool is_symptom = test->role == OHM_ROLE_SYMPTOM;
      bool bad = state->tests[i].seen == OHM_SEEN_BAD && test->accuses & state->faulty;
      if (is_symptom != (symptoms == 1) || !bad)
        continue;
      char buffer[160];
      struct ohm_text text = ohm_text_begin(buffer, sizeof buffer);
      ohm_text_add(&text, test_name(state, i));
      ohm_text_add(&text, ": ");
      size_t before = text.length;
      add_expected(&text, state, test);
      ohm_text_add(&text, text.length == before ? "good" : "");
      ohm_finding_add_entry(finding, OHM_FIELD_AGAIN, buffer);
    }
}

static void add_contradiction(const struct state *state, ohm_finding *finding) {
  const struct ohm_circuit *circuit = state->circuit;
  bool off[OHM_CIRCUIT_TESTS] = {false};
  for (size_t i = 0; i < circuit->balance_count; i++) {
    off[circuit->balances[i].whole] |= state->off_balance[i];
    for (size_t k = 0; k < circuit->balances[i].part_count; k++)
      off[circuit->balances[i].parts[k]] |= state->off_balance[i];
  }
  for (size_t i = 0; i < circuit->test_count; i++) {
    bool accuses = counts(state, i) && (accused(state, i) & ~state->cleared) == 0;
    bool clears =
        state->tests[i].seen == OHM_SEEN_GOOD && circuit->tests[i].clears & state->contradicted;
    if (off[i] || accuses || clears)
      ohm_finding_add_entry(finding, OHM_FIELD_CONTRADICTION, test_name(state, i));
  }
}

static void add_count(struct ohm_text *text, ohm_set set) {
  ohm_text_add_count(text, ohm_set_size(set));
}

static void add_why(const struct state *state, const struct candidates *candidates, size_t next,
                    ohm_finding *finding) {
  const struct ohm_test *test = &state->circuit->tests[next];
  char buffer[200];
  struct ohm_text text = ohm_text_begin(buffer, sizeof buffer);
  if (state->faulty && is_explained(state)) {
    ohm_text_add(&text, "it goes round what is at fault, and shows a second fault before you buy");
  } else if (test->role == OHM_ROLE_SYMPTOM) {
    ohm_text_add(&text, "nothing is closed before the fan has started by itself");
  } else if (test->role == OHM_ROLE_CONDITION && state->conflict_count == 0) {
    ohm_text_add(&text, "a fan that was never asked for is not dead");
  } else {
    ohm_text_add(&text, "of ");
    add_count(&text, candidates->any);
    ohm_text_add(&text, " suspects, good clears ");
    add_count(&text, test->clears & candidates->any);
    ohm_text_add(&text, accused(state, next) ? ", bad leaves " : "; bad tells nothing on this car");
    if (accused(state, next))
      add_count(&text, accused(state, next) & candidates->any);
  }
  ohm_finding_add_entry(finding, OHM_FIELD_NEXT_WHY, buffer);
}

static void add_next(const struct state *state, const struct candidates *candidates, size_t next,
                     double bits, ohm_finding *finding) {
  static const struct {
    ohm_field field;
    ohm_test_column column;
  } texts[] = {
      {OHM_FIELD_NEXT, OHM_TEST_TEST},          {OHM_FIELD_NEXT_WHAT, OHM_TEST_WHAT},
      {OHM_FIELD_NEXT_POINTS, OHM_TEST_POINTS}, {OHM_FIELD_NEXT_CONDITION, OHM_TEST_CONDITION},
      {OHM_FIELD_NEXT_TOOLS, OHM_TEST_TOOL},    {OHM_FIELD_NEXT_CAUTION, OHM_TEST_CAUTION},
      {OHM_FIELD_NEXT_SOURCE, OHM_TEST_SOURCE},
  };
  const struct ohm_test *test = &state->circuit->tests[next];
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    ohm_finding_add_entry(finding, texts[i].field, test->cells[texts[i].column]);
  char good[120];
  struct ohm_text text = ohm_text_begin(good, sizeof good);
  add_expected(&text, state, test);
  ohm_finding_add_entry(finding, OHM_FIELD_NEXT_GOOD, good);
  add_why(state, candidates, next, finding);
  ohm_finding_set_number(finding, OHM_FIELD_NEXT_MINUTES, test->minutes);
  ohm_finding_set_number(finding, OHM_FIELD_NEXT_BITS, bits);
}

/* ---- what stands now ---- */

static bool is_too_hot(const struct state *state) {
  const struct ohm_record *record = state->record;
  if (record->count == 0)
    return false;
  const struct ohm_record_entry *last = &record->entries[record->count - 1];
  return last->of == OHM_RECORD_TEST &&
         state->circuit->tests[last->index].unit == OHM_UNIT_CELSIUS &&
         last->number >= state->fan_c + too_hot_k;
}

static bool has_started(const struct state *state) {
  bool any = false;
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    if (state->circuit->tests[i].role != OHM_ROLE_SYMPTOM)
      continue;
    if (state->tests[i].seen != OHM_SEEN_GOOD && state->tests[i].seen != OHM_SEEN_SKIPPED)
      return false;
    any |= state->tests[i].seen == OHM_SEEN_GOOD;
  }
  return any;
}

/* A condition that did not hold, though nothing is at fault with it. */
static size_t not_asked(const struct state *state) {
  for (size_t i = 0; i < state->circuit->test_count; i++)
    if (state->circuit->tests[i].role == OHM_ROLE_CONDITION &&
        state->tests[i].seen == OHM_SEEN_BAD && accused(state, i) == 0)
      return i;
  return OHM_NO_PLACE;
}

/* A test that goes round what is at fault, to look for a second fault before buying: it is
 * there for a test that was bad, and accuses nothing that is known. */
static size_t goes_round(const struct state *state) {
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    const struct ohm_test *test = &state->circuit->tests[i];
    if (strstr(test->cells[OHM_TEST_NEEDS], "=bad") && can_be_made(state, i) &&
        state->tests[i].seen == OHM_SEEN_NOTHING && !(test->accuses & state->faulty))
      return i;
  }
  return OHM_NO_PLACE;
}

static const char *word_of(const struct state *state, const struct candidates *candidates,
                           size_t *next, double *bits) {
  *next = next_test(state, candidates, bits);
  if (*next == OHM_NO_PLACE)
    *next = not_asked(state);
  if (is_too_hot(state))
    return "too_hot";
  if (state->is_contradictory)
    return "contradiction";
  if (has_started(state) && state->conflict_count == 0) {
    *next = OHM_NO_PLACE;
    return "closed";
  }
  /* What is certain is renewed first when no test can go round it. */
  if (is_explained(state) || (*next == OHM_NO_PLACE && state->faulty)) {
    *next = goes_round(state);
    return "found";
  }
  if (state->conflict_count == 0 && not_asked(state) != OHM_NO_PLACE)
    return "not_asked";
  return *next == OHM_NO_PLACE ? "no_test_left" : "go_on";
}

static void add_seen(const struct state *state, ohm_finding *finding) {
  double tests = 0;
  double minutes = 0;
  for (size_t i = 0; i < state->record->count; i++) {
    const struct ohm_record_entry *entry = &state->record->entries[i];
    if (entry->of != OHM_RECORD_TEST || entry->seen == OHM_SEEN_SKIPPED)
      continue;
    tests++;
    minutes += state->circuit->tests[entry->index].minutes;
    if (!isnan(entry->amperes))
      ohm_finding_set_number(finding, OHM_FIELD_FUSE_AMPERES, entry->amperes);
  }
  ohm_finding_set_number(finding, OHM_FIELD_TESTS, tests);
  ohm_finding_set_number(finding, OHM_FIELD_MINUTES, minutes);
  static const char *const words[] = {"", " good", " bad", " too near to tell", " skipped"};
  for (size_t i = 0; i < state->circuit->test_count; i++) {
    if (state->tests[i].seen == OHM_SEEN_SKIPPED)
      ohm_finding_add_entry(finding, OHM_FIELD_SKIPPED, test_name(state, i));
  }
  if (state->record->count == 0)
    return;
  const struct ohm_record_entry *last = &state->record->entries[state->record->count - 1];
  char buffer[80];
  struct ohm_text text = ohm_text_begin(buffer, sizeof buffer);
  if (last->of != OHM_RECORD_TEST)
    return;
  ohm_text_add(&text, test_name(state, last->index));
  ohm_text_add(&text, words[state->tests[last->index].seen]);
  ohm_finding_add_entry(finding, OHM_FIELD_LAST, buffer);
}

static void answer(const struct state *state, ohm_finding *finding) {
  struct candidates candidates;
  size_t next;
  double bits;
  find_candidates(state, &candidates);
  const char *word = word_of(state, &candidates, &next, &bits);
  bool closed = strcmp(word, "closed") == 0;
  bool found = strcmp(word, "found") == 0;
  ohm_finding_set_about(finding, OHM_ABOUT_ISOLATION);
  ohm_finding_set_number(finding, OHM_FIELD_VERDICT,
                         closed  ? OHM_WITHIN
                         : found ? OHM_OUTSIDE
                                 : OHM_UNDECIDED);
  ohm_finding_add_entry(finding, OHM_FIELD_CIRCUIT, state->circuit->name);
  ohm_finding_add_entry(finding, OHM_FIELD_STATE, word);
  ohm_finding_set_number(finding, OHM_FIELD_FAN_C, state->fan_c);
  add_parts(state, finding);
  if (found)
    add_again(state, finding);
  add_seen(state, finding);
  add_links(state, state->renewed, OHM_FIELD_RENEWED, finding);
  if (state->is_contradictory)
    add_contradiction(state, finding);
  if (next != OHM_NO_PLACE)
    add_next(state, &candidates, next, bits, finding);
  add_links(state, state->faulty, OHM_FIELD_FAULTY, finding);
  add_suspects(state, &candidates, finding);
  add_links(state, state->cleared, OHM_FIELD_CLEARED, finding);
}

ohm_status ohm_isolation_judge(const ohm_circuit *circuit, const char *record, size_t length,
                               ohm_finding *finding, ohm_error *error) {
  ohm_error_clear(error);
  if (finding)
    ohm_finding_clear(finding);
  if (!circuit || !finding || (!record && length > 0))
    return ohm_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT),
                    (const char *)NULL);
  struct ohm_record seen;
  ohm_status status = ohm_record_read(circuit, record, length, &seen, error);
  if (status != OHM_OK)
    return status;
  struct state state = {.circuit = circuit, .fan_c = seen.fan_c, .record = &seen};
  follow_record(&state);
  weigh_balances(&state);
  find_conflicts(&state);
  answer(&state, finding);
  return OHM_OK;
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

size_t ohm_isolation_print_finding(const ohm_circuit *circuit, const ohm_finding *finding,
                                   char *buffer, size_t size) {
  struct ohm_text out = ohm_text_begin(buffer, size);
  const char *place = ohm_finding_text(finding, OHM_FIELD_PLACE, 0);
  if (!circuit || !place)
    return 0;
  enum ohm_test_unit unit = strcmp(place, "sensor") == 0   ? OHM_UNIT_FINDING_SENSOR
                            : strcmp(place, "module") == 0 ? OHM_UNIT_FINDING_MODULE
                                                           : OHM_UNITS;
  for (size_t i = 0; i < circuit->test_count; i++)
    if (circuit->tests[i].unit == unit) {
      ohm_text_add(&out, circuit->tests[i].cells[OHM_TEST_TEST]);
      ohm_text_add(&out, "=");
      ohm_text_add(&out, outcome_of(finding));
      ohm_text_add(&out, "\n");
      return out.length;
    }
  return 0;
}
