/* SPDX-License-Identifier: MIT */
#include "candidates.h"

#include <stdlib.h>

/* ---- who they are ---- */

static oc_set parts_of(const struct ohm_circuit *circuit, oc_set set) {
  oc_set parts = 0;
  for (size_t link = 0; link < circuit->link_count; link++)
    if (set & oc_set_of(link) && !(parts & oc_set_of(link)))
      parts |= oc_circuit_part(circuit, link);
  return parts;
}

static int by_parts(const void *left, const void *right) {
  const struct oc_candidate *a = left;
  const struct oc_candidate *b = right;
  if (a->parts != b->parts)
    return a->parts < b->parts ? -1 : 1;
  return a->set < b->set ? -1 : a->set > b->set;
}

static size_t only_link(oc_set set) {
  size_t link = 0;
  if (oc_set_size(set) != 1)
    return OC_NO_PLACE;
  while (set != oc_set_of(link))
    link++;
  return link;
}

static void add_candidate(struct oc_candidates *candidates, const struct oc_deduction *it,
                          oc_set set, size_t failing, double weight) {
  candidates->any |= set;
  candidates->each[candidates->count++] =
      (struct oc_candidate){set, parts_of(it->circuit, set), failing, weight};
}

/* One link alone, in each way that goes with all that was seen. What would have to fail in one way
 * for one test and in another for the next is hardly alone at fault. */
static void add_single(struct oc_candidates *candidates, const struct oc_deduction *it, size_t link,
                       double weight) {
  const struct ohm_circuit *circuit = it->circuit;
  size_t count = candidates->count;
  double ways = 0;
  for (size_t i = 0; i < circuit->failing_count; i++)
    if (circuit->failings[i].link == link)
      ways += circuit->failings[i].share;
  for (size_t i = 0; i < circuit->failing_count; i++)
    if (circuit->failings[i].link == link && it->alone[i])
      add_candidate(candidates, it, oc_set_of(link), i, weight * circuit->failings[i].share / ways);
  if (candidates->count == count)
    add_candidate(candidates, it, oc_set_of(link), OC_NO_PLACE, weight * OC_ODDS_IF_TWO_WAYS);
}

void oc_candidates_find(const struct oc_deduction *it, struct oc_candidates *candidates) {
  struct oc_diagnosis *diagnosis = &candidates->diagnosis;
  double odds[OC_DIAGNOSIS_PARTS] = {0};
  double sum = 0;
  for (size_t i = 0; i < it->circuit->link_count; i++)
    odds[i] = oc_deduction_odds(it, i);
  oc_diagnosis_find(it->conflicts, it->conflict_count, diagnosis);
  oc_diagnosis_weigh(diagnosis, odds, candidates->of_sets);
  candidates->count = 0;
  candidates->any = 0;
  for (size_t i = 0; i < diagnosis->count; i++) {
    size_t link = only_link(diagnosis->sets[i]);
    if (link == OC_NO_PLACE)
      add_candidate(candidates, it, diagnosis->sets[i], OC_NO_PLACE, candidates->of_sets[i]);
    else
      add_single(candidates, it, link, candidates->of_sets[i]);
  }
  for (size_t i = 0; i < candidates->count; i++)
    sum += candidates->each[i].weight;
  qsort(candidates->each, candidates->count, sizeof candidates->each[0], by_parts);
  for (size_t i = 0; i < candidates->count; i++) {
    candidates->weights[i] = candidates->each[i].weight /= sum;
    candidates->parts[i] = candidates->each[i].parts;
  }
}

/* ---- what a test would tell of them ---- */

/* Of a set: one of it is enough to make a test bad, and all of it has to be good with. */
static oc_outcomes foretold_of_set(const struct oc_deduction *it, size_t test, oc_set set) {
  const struct ohm_circuit *circuit = it->circuit;
  const struct oc_test *t = &circuit->tests[test];
  oc_outcomes good = oc_test_good(t);
  oc_outcomes any = oc_test_any(t);
  oc_set may_be_good = 0;
  oc_set may_be_bad = 0;
  for (size_t i = 0; i < circuit->failing_count; i++) {
    oc_set link = oc_set_of(circuit->failings[i].link);
    if (!it->possible[i] || !(set & link))
      continue;
    may_be_good |= t->foretold[i] & good ? link : 0;
    may_be_bad |= t->foretold[i] & ~good ? link : 0;
  }
  if (set & ~may_be_good)
    return (oc_outcomes)(any & ~good);
  return may_be_bad == 0 ? good : any;
}

/* Where bad says nothing more than that, it is one outcome. */
static unsigned predicted(const struct oc_deduction *it, size_t test, bool tells,
                          const struct oc_candidate *candidate) {
  const struct oc_test *t = &it->circuit->tests[test];
  oc_outcomes good = oc_test_good(t);
  oc_outcomes seen = !tells                              ? oc_test_any(t)
                     : candidate->failing == OC_NO_PLACE ? foretold_of_set(it, test, candidate->set)
                                                         : t->foretold[candidate->failing];
  bool is_plain = !t->is_usual || candidate->failing == OC_NO_PLACE;
  if (is_plain && seen & ~good)
    seen = (oc_outcomes)((seen & good) | OC_OUTCOME_NOTHING);
  return seen;
}

double oc_candidates_bits(const struct oc_deduction *it, struct oc_candidates *candidates,
                          size_t test) {
  bool tells = oc_deduction_accused(it, test) != 0;
  for (size_t i = 0; i < candidates->count; i++)
    candidates->outcomes[i] = predicted(it, test, tells, &candidates->each[i]);
  return oc_diagnosis_information(candidates->weights, candidates->parts, candidates->outcomes,
                                  candidates->count);
}

/* ---- who it is ---- */

oc_set oc_candidates_condemned(const struct oc_deduction *it,
                               const struct oc_candidates *candidates, bool is_test_left) {
  double least = is_test_left ? OC_AS_GOOD_AS_CERTAIN : OC_PROBABLE_PART;
  if (!it->circuit->wired || it->conflict_count == 0 || it->is_contradictory)
    return 0;
  for (size_t next, i = 0; i < candidates->count; i = next) {
    double sum = 0;
    oc_set links = 0;
    for (next = i; next < candidates->count && candidates->parts[next] == candidates->parts[i];
         next++) {
      sum += candidates->weights[next];
      links |= candidates->each[next].set;
    }
    if (sum >= least && candidates->each[i].failing != OC_NO_PLACE)
      return links;
  }
  return 0;
}
