/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/diagnosis.h"

#include "../support.h"

#include <stdlib.h>

/* ---- three multipliers and two adders ----
 *
 * J. de Kleer and B. C. Williams, "Diagnosing multiple faults", Artificial Intelligence
 * 32 (1987) 97-130, section 2: A = 3, B = 2, C = 2, D = 3, E = 3; F should be 12 and is
 * observed as 10, G should be 12 and is. X = AC, Y = BD, Z = CE, F = X + Y, G = Y + Z. */

enum part { M1, M2, M3, A1, A2, PARTS };
enum wire { A, B, C, D, E, X, Y, Z, F, G, WIRES };

static const struct {
  enum wire one;
  enum wire other;
  enum wire out;
} wiring[PARTS] = {{A, C, X}, {B, D, Y}, {C, E, Z}, {X, Y, F}, {Y, Z, G}};

struct circuit {
  int value[WIRES];
  bool known[WIRES];
  bool consistent;
};

static struct circuit observed(void) {
  struct circuit circuit = {.consistent = true};
  static const struct {
    enum wire wire;
    int value;
  } given[] = {{A, 3}, {B, 2}, {C, 2}, {D, 3}, {E, 3}, {F, 10}, {G, 12}};
  for (size_t i = 0; i < sizeof given / sizeof given[0]; i++) {
    circuit.value[given[i].wire] = given[i].value;
    circuit.known[given[i].wire] = true;
  }
  return circuit;
}

static bool set_wire(struct circuit *circuit, enum wire wire, int value) {
  if (!circuit->known[wire]) {
    circuit->known[wire] = true;
    circuit->value[wire] = value;
    return true;
  }
  circuit->consistent = circuit->consistent && circuit->value[wire] == value;
  return false;
}

/* What a part makes known; an adder also tells one input from the other and its output. */
static bool work(struct circuit *circuit, enum part part) {
  enum wire one = wiring[part].one;
  enum wire other = wiring[part].other;
  enum wire out = wiring[part].out;
  const bool *known = circuit->known;
  const int *value = circuit->value;
  bool adds = part == A1 || part == A2;
  if (known[one] && known[other])
    return set_wire(circuit, out, adds ? value[one] + value[other] : value[one] * value[other]);
  if (adds && known[out] && known[one])
    return set_wire(circuit, other, value[out] - value[one]);
  if (adds && known[out] && known[other])
    return set_wire(circuit, one, value[out] - value[other]);
  return false;
}

/* Everything that follows when these parts are sound. */
static struct circuit follow(oc_set sound) {
  struct circuit circuit = observed();
  for (bool more = true; more;) {
    more = false;
    for (int part = 0; part < PARTS; part++)
      if (sound & oc_set_of((size_t)part))
        more |= work(&circuit, (enum part)part);
  }
  return circuit;
}

static const oc_set all_parts = (1u << PARTS) - 1;

/* The smallest sets that cannot all be sound. */
static size_t find_conflicts(oc_set *conflicts) {
  size_t count = 0;
  for (size_t size = 1; size <= PARTS; size++)
    for (oc_set set = 1; set <= all_parts; set++) {
      bool holds_one = false;
      for (size_t i = 0; i < count; i++)
        holds_one |= (conflicts[i] & set) == conflicts[i];
      if (oc_set_size(set) == size && !holds_one && !follow(set).consistent)
        conflicts[count++] = set;
    }
  return count;
}

static struct oc_diagnosis diagnosis;

static size_t diagnose_paper(void) {
  oc_set conflicts[1 << PARTS];
  size_t count = find_conflicts(conflicts);
  oc_diagnosis_find(conflicts, count, &diagnosis);
  return count;
}

static oc_set set(size_t one, size_t other) {
  return oc_set_of(one) | oc_set_of(other);
}

START_TEST(finds_the_conflicts_of_the_published_circuit)
{
  oc_set conflicts[1 << PARTS];
  ck_assert_uint_eq(find_conflicts(conflicts), 2);
  ck_assert_uint_eq(conflicts[0], set(A1, M1) | set(M2, M2));
  ck_assert_uint_eq(conflicts[1], set(A1, A2) | set(M1, M3));
}
END_TEST

START_TEST(finds_the_minimal_sets_of_the_published_circuit_small_ones_first)
{
  diagnose_paper();
  ck_assert_uint_eq(diagnosis.count, 4);
  ck_assert(diagnosis.complete);
  ck_assert_uint_eq(diagnosis.sets[0], oc_set_of(M1));
  ck_assert_uint_eq(diagnosis.sets[1], oc_set_of(A1));
  ck_assert_uint_eq(diagnosis.sets[2], set(M2, M3));
  ck_assert_uint_eq(diagnosis.sets[3], set(M2, A2));
}
END_TEST

/* What a wire would read under each set: values out of 0 to 15 as outcomes. */
static double information_of(enum wire wire) {
  double weights[OC_DIAGNOSIS_ROOM];
  unsigned predicted[OC_DIAGNOSIS_ROOM];
  oc_diagnosis_weigh(&diagnosis, NULL, weights);
  for (size_t i = 0; i < diagnosis.count; i++) {
    struct circuit circuit = follow(all_parts & ~diagnosis.sets[i]);
    predicted[i] = circuit.known[wire] ? 1u << circuit.value[wire] : 0xFFFF;
  }
  return oc_diagnosis_information(weights, NULL, predicted, diagnosis.count);
}

START_TEST(measures_next_what_the_paper_measures_next)
{
  diagnose_paper();
  double best = information_of(X);
  for (int wire = A; wire < WIRES; wire++)
    if (wire != X)
      ck_assert_msg(information_of((enum wire)wire) < best, "wire %d is as good as X", wire);
}
END_TEST

START_TEST(expects_nothing_from_what_was_already_observed)
{
  diagnose_paper();
  CHECK_NEAR(information_of(F), 0, 1e-12);
  CHECK_NEAR(information_of(A), 0, 1e-12);
}
END_TEST

/* ---- properties ---- */

static oc_set random_set(unsigned parts) {
  oc_set set = 0;
  for (unsigned i = 0; i < parts; i++)
    if (rand() % 3 == 0)
      set |= oc_set_of(i);
  return set;
}

static bool meets_all(oc_set set, const oc_set *conflicts, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (!(set & conflicts[i]))
      return false;
  return true;
}

START_TEST(every_set_explains_and_none_holds_another)
{
  srand(20261125u);
  for (int trial = 0; trial < 500; trial++) {
    oc_set conflicts[5];
    size_t count = 1 + (size_t)rand() % 5;
    for (size_t i = 0; i < count; i++)
      conflicts[i] = random_set(10) | oc_set_of((size_t)rand() % 10);
    oc_diagnosis_find(conflicts, count, &diagnosis);
    for (size_t i = 0; i < diagnosis.count; i++) {
      ck_assert(meets_all(diagnosis.sets[i], conflicts, count));
      for (size_t k = 0; k < diagnosis.count; k++)
        ck_assert(i == k || (diagnosis.sets[i] & diagnosis.sets[k]) != diagnosis.sets[k]);
      ck_assert(i == 0 || oc_set_size(diagnosis.sets[i - 1]) <= oc_set_size(diagnosis.sets[i]));
    }
  }
}
END_TEST

/* By trying every set of ten parts. */
START_TEST(no_single_or_double_fault_is_missed)
{
  srand(5u);
  for (int trial = 0; trial < 100; trial++) {
    oc_set conflicts[4];
    for (size_t i = 0; i < 4; i++)
      conflicts[i] = random_set(10) | oc_set_of((size_t)rand() % 10);
    oc_diagnosis_find(conflicts, 4, &diagnosis);
    for (oc_set set = 1; set < 1024; set++) {
      if (oc_set_size(set) > 2 || !meets_all(set, conflicts, 4))
        continue;
      bool held = false;
      for (size_t i = 0; i < diagnosis.count; i++)
        held |= (diagnosis.sets[i] & set) == diagnosis.sets[i];
      ck_assert(held);
    }
  }
}
END_TEST

START_TEST(explains_nothing_by_nothing_and_a_contradiction_not_at_all)
{
  static const oc_set none[] = {0};
  oc_diagnosis_find(none, 0, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, 1);
  ck_assert_uint_eq(diagnosis.sets[0], 0);
  oc_diagnosis_find(none, 1, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, 0);
}
END_TEST

START_TEST(goes_one_part_beyond_the_smallest_explanation)
{
  static const oc_set three[] = {1, 2, 4};
  static const oc_set two[] = {1, 2 | 4, 2 | 8};
  static const oc_set one[] = {1 | 2, 1 | 4, 1 | 8};
  oc_diagnosis_find(three, 3, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, 1);
  ck_assert_uint_eq(diagnosis.sets[0], 7);
  oc_diagnosis_find(two, 3, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, 2);
  ck_assert_uint_eq(diagnosis.sets[1], 1 | 4 | 8);
  oc_diagnosis_find(one, 3, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, 1);
}
END_TEST

START_TEST(says_when_there_are_more_sets_than_it_keeps)
{
  static const oc_set conflicts[] = {0xFFFFF, (oc_set)0xFFFFF << 20, (oc_set)0xFFFFF << 40};
  oc_diagnosis_find(conflicts, 3, &diagnosis);
  ck_assert_uint_eq(diagnosis.count, OC_DIAGNOSIS_ROOM);
  ck_assert(!diagnosis.complete);
}
END_TEST

START_TEST(weighs_by_the_product_of_odds)
{
  static const oc_set conflicts[] = {3, 5};
  double odds[OC_DIAGNOSIS_PARTS] = {0.1, 0.5, 0.2};
  double weights[OC_DIAGNOSIS_ROOM];
  oc_diagnosis_find(conflicts, 2, &diagnosis);
  oc_diagnosis_weigh(&diagnosis, odds, weights);
  ck_assert_uint_eq(diagnosis.count, 2);
  CHECK_NEAR(weights[0], 0.5, 1e-12);
  CHECK_NEAR(weights[1], 0.5, 1e-12);
}
END_TEST

START_TEST(a_question_that_halves_four_alike_tells_one_bit)
{
  static const double weights[] = {0.25, 0.25, 0.25, 0.25};
  static const unsigned predicted[] = {1, 1, 2, 2};
  static const unsigned unknown[] = {3, 3, 3, 3};
  static const oc_set same[] = {1, 1, 2, 2};
  CHECK_NEAR(oc_diagnosis_information(weights, NULL, predicted, 4), 1, 1e-12);
  CHECK_NEAR(oc_diagnosis_information(weights, NULL, unknown, 4), 0, 1e-12);
  static const unsigned within_groups[] = {1, 2, 1, 2};
  CHECK_NEAR(oc_diagnosis_information(weights, same, within_groups, 4), 0, 1e-12);
  CHECK_NEAR(oc_diagnosis_information(weights, same, predicted, 4), 1, 1e-12);
  /* Of three outcomes the last is open between two: 1.5 bits, less half a bit of its own. */
  static const unsigned open[] = {1, 1, 2 | 4, 2 | 4};
  CHECK_NEAR(oc_diagnosis_information(weights, same, open, 4), 1, 1e-12);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "diagnosis", finds_the_conflicts_of_the_published_circuit,
      finds_the_minimal_sets_of_the_published_circuit_small_ones_first,
      measures_next_what_the_paper_measures_next, expects_nothing_from_what_was_already_observed,
      every_set_explains_and_none_holds_another, no_single_or_double_fault_is_missed,
      explains_nothing_by_nothing_and_a_contradiction_not_at_all,
      goes_one_part_beyond_the_smallest_explanation, says_when_there_are_more_sets_than_it_keeps,
      weighs_by_the_product_of_odds, a_question_that_halves_four_alike_tells_one_bit);
}
