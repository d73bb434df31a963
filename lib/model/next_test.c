/* SPDX-License-Identifier: MIT */
#include "next_test.h"

#include <string.h>

static const double least_bits = 1e-9;
/* Of tests that tell as much the first is made, whatever the last digit says. */
static const double more = 1 + 1e-9;

/* ---- whether it can be made ---- */

static bool need_is_met(const struct oc_deduction *it, const char *word, size_t length) {
  const struct ohm_circuit *circuit = it->circuit;
  const char *sign = memchr(word, '=', length);
  size_t name = (size_t)(sign - word);
  size_t rest = length - name - 1;
  if (oc_circuit_is(sign + 1, rest, "yes"))
    return it->stated[oc_circuit_fact(circuit, word, name)];
  if (oc_circuit_is(sign + 1, rest, "renewed"))
    return it->renewed & oc_set_of(oc_circuit_link(circuit, word, name));
  bool good = oc_circuit_is(sign + 1, rest, "good");
  return it->tests[oc_circuit_test(circuit, word, name)].seen ==
         (good ? OC_SEEN_GOOD : OC_SEEN_BAD);
}

static bool needs_are_met(const struct oc_deduction *it, const struct oc_test *test) {
  const char *needs = test->cells[OHM_TEST_NEEDS];
  const char *word;
  size_t length;
  while (oc_circuit_word(&needs, &word, &length))
    if (!need_is_met(it, word, length))
      return false;
  if (test->amperes[0] == OC_NO_PLACE)
    return true;
  for (size_t i = 0; i < 2 && test->amperes[i] != OC_NO_PLACE; i++)
    if (it->tests[test->amperes[i]].seen == OC_SEEN_GOOD)
      return true;
  return false;
}

bool oc_next_test_can_be_made(const struct oc_deduction *it, size_t test) {
  const struct oc_test *t = &it->circuit->tests[test];
  return oc_deduction_has_tools(it, test) && needs_are_met(it, t);
}

/* ---- which is next ---- */

static size_t first_of_role(const struct oc_deduction *it, enum oc_test_role role) {
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    enum oc_seen seen = it->tests[i].seen;
    if (it->circuit->tests[i].role == role && oc_next_test_can_be_made(it, i) &&
        (seen == OC_SEEN_NOTHING || seen == OC_SEEN_UNSURE))
      return i;
  }
  return OC_NO_PLACE;
}

static bool has_complaint(const struct oc_deduction *it) {
  for (size_t i = 0; i < it->circuit->test_count; i++)
    if (it->circuit->tests[i].role == OC_ROLE_SYMPTOM && it->tests[i].seen == OC_SEEN_BAD)
      return true;
  return false;
}

bool oc_next_test_was_made_twice(const struct oc_deduction *it, size_t test) {
  size_t times = 0;
  for (size_t i = 0; i < it->record->count; i++)
    times += it->record->entries[i].of == OC_RECORD_TEST && it->record->entries[i].index == test;
  return times >= 2;
}

/* Of the tests so seen the one that tells most in a minute. */
static size_t most_telling(const struct oc_deduction *it, struct oc_candidates *candidates,
                           enum oc_seen seen, double *bits) {
  size_t best = OC_NO_PLACE;
  double best_rate = 0;
  for (size_t i = 0; i < it->circuit->test_count; i++) {
    const struct oc_test *test = &it->circuit->tests[i];
    if (test->role == OC_ROLE_SYMPTOM || it->tests[i].seen != seen ||
        !oc_next_test_can_be_made(it, i) ||
        (seen == OC_SEEN_UNSURE && oc_next_test_was_made_twice(it, i)))
      continue;
    double told = oc_candidates_bits(it, candidates, i);
    if (told > least_bits && told / test->minutes > more * best_rate) {
      best_rate = told / test->minutes;
      *bits = told;
      best = i;
    }
  }
  return best;
}

size_t oc_next_test(const struct oc_deduction *it, struct oc_candidates *candidates, double *bits) {
  *bits = NAN;
  size_t next = first_of_role(it, OC_ROLE_SYMPTOM);
  if (next == OC_NO_PLACE && has_complaint(it) && it->conflict_count == 0)
    next = first_of_role(it, OC_ROLE_CONDITION);
  if (next == OC_NO_PLACE)
    next = most_telling(it, candidates, OC_SEEN_NOTHING, bits);
  return next == OC_NO_PLACE ? most_telling(it, candidates, OC_SEEN_UNSURE, bits) : next;
}
