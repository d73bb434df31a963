/* SPDX-License-Identifier: MIT */
/* What may be at fault, how probably, and when that is enough. */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

#include "../../lib/model/candidates.h"

static const char three_wires[] = "link,kind,from,to,value,by,odds,standing\n"
                                  "battery,battery,+,-,,,,\n"
                                  "one,wire,+,a,,,0.02,own count\n"
                                  "two,wire,a,b,,,0.02,own count\n"
                                  "fan,motor,b,c,15,,,\n"
                                  "back,wire,c,d,,,0.02,own count\n"
                                  "output,output,d,-,,hot ac,,\n";

static struct ohm_circuit *circuit;
static struct oc_record *record;
static struct oc_deduction *it;
static struct oc_candidates *candidates;

static void begin(void) {
  ohm_error error;
  circuit = ohm_circuit_parse(three_wires, strlen(three_wires), "own", &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  record = malloc(sizeof *record);
  it = malloc(sizeof *it);
  candidates = malloc(sizeof *candidates);
  ck_assert(record != NULL && it != NULL && candidates != NULL);
}

static void end(void) {
  ohm_circuit_free(circuit);
  free(record);
  free(it);
  free(candidates);
}

static void see(const char *text) {
  ohm_error error;
  ck_assert_msg(oc_record_read(circuit, text, strlen(text), record, &error) == OHM_OK, "%s",
                error.message);
  oc_deduction_begin(it, circuit, record);
  oc_candidates_find(it, candidates);
}

static size_t link_of(const char *name) {
  size_t link = oc_circuit_link(circuit, name, strlen(name));
  ck_assert_msg(link != OC_NO_PLACE, "%s", name);
  return link;
}

static double weight_of(const char *name) {
  oc_set set = oc_set_of(link_of(name));
  double sum = 0;
  for (size_t i = 0; i < candidates->count; i++)
    sum += candidates->each[i].set == set ? candidates->each[i].weight : 0;
  return sum;
}

START_TEST(weights_are_one_together_and_equal_parts_stand_together)
{
  begin();
  see("ac-fan=still\n");
  double sum = 0;
  for (size_t i = 0; i < candidates->count; i++) {
    sum += candidates->weights[i];
    ck_assert(i == 0 || candidates->parts[i - 1] <= candidates->parts[i]);
  }
  CHECK_NEAR(sum, 1, 1e-12);
  end();
}
END_TEST

/* Of three alike. */
START_TEST(links_of_one_chain_and_the_same_odds_are_as_probable)
{
  begin();
  see("ac-fan=still\n");
  CHECK_NEAR(weight_of("one"), weight_of("two"), 1e-12);
  CHECK_NEAR(weight_of("one"), weight_of("back"), 1e-12);
  end();
}
END_TEST

START_TEST(volts_lost_there_leave_one_of_them)
{
  begin();
  see("ac-fan=still\nlost-two=12.5\n");
  ck_assert(weight_of("two") > 0.99);
  ck_assert(weight_of("one") < 0.01);
  end();
}
END_TEST

/* Open is four times as frequent as any one size short of it: 4 of 18. */
START_TEST(what_is_open_counts_four_times)
{
  begin();
  see("ac-fan=bad\n");
  double open = 0;
  double one = 0;
  for (size_t i = 0; i < candidates->count; i++) {
    if (candidates->each[i].set != oc_set_of(link_of("one")))
      continue;
    double ohm = circuit->failings[candidates->each[i].failing].ohm;
    open += ohm == INFINITY ? candidates->each[i].weight : 0;
    one += ohm == 5e4 ? candidates->each[i].weight : 0;
  }
  CHECK_NEAR(open / one, 4, 1e-9);
  end();
}
END_TEST

/* A fan that stands still for want of a few tenths of an ohm: one wire alone cannot do that. */
START_TEST(a_link_that_would_have_to_fail_in_two_ways_is_not_condemned_alone)
{
  begin();
  see("ac-fan=still\nlost-two=0.5\n");
  for (size_t i = 0; i < candidates->count; i++)
    ck_assert(candidates->each[i].set != oc_set_of(link_of("two")) ||
              candidates->each[i].failing == OC_NO_PLACE);
  ck_assert(weight_of("two") > 0);
  ck_assert(oc_candidates_condemned(it, candidates, false) == 0);
  see("ac-fan=slow\nlost-two=4\n");
  ck_assert(oc_candidates_condemned(it, candidates, true) == oc_set_of(link_of("two")));
  end();
}
END_TEST

/* Two parts, of which the first is so probable. */
static oc_set condemned(double share, bool is_test_left) {
  candidates->count = 2;
  candidates->each[0] = (struct oc_candidate){oc_set_of(link_of("one")), 1, 0, share};
  candidates->each[1] = (struct oc_candidate){oc_set_of(link_of("two")), 2, 0, 1 - share};
  for (size_t i = 0; i < 2; i++) {
    candidates->weights[i] = candidates->each[i].weight;
    candidates->parts[i] = candidates->each[i].parts;
  }
  return oc_candidates_condemned(it, candidates, is_test_left);
}

START_TEST(a_part_is_condemned_as_good_as_certain_or_probable_when_no_test_is_left)
{
  begin();
  see("ac-fan=still\n");
  oc_set one = oc_set_of(link_of("one"));
  ck_assert(condemned(0.994, true) == 0 && condemned(0.996, true) == one);
  ck_assert(condemned(0.94, false) == 0 && condemned(0.96, false) == one);
  end();
}
END_TEST

START_TEST(nothing_is_condemned_before_anything_was_bad)
{
  begin();
  see("ac-fan=runs\n");
  ck_assert(condemned(1, false) == 0);
  end();
}
END_TEST

START_TEST(a_test_tells_most_of_what_it_halves_and_nothing_of_what_is_known)
{
  begin();
  see("ac-fan=still\n");
  size_t lost = oc_circuit_test(circuit, "lost-two", 8);
  size_t again = oc_circuit_test(circuit, "ac-fan", 6);
  ck_assert(lost != OC_NO_PLACE && again != OC_NO_PLACE);
  ck_assert(oc_candidates_bits(it, candidates, lost) > 0.1);
  see("ac-fan=still\nlost-two=12.5\n");
  ck_assert(oc_candidates_bits(it, candidates, again) < 0.01);
  end();
}
END_TEST

int main(void) {
  return RUN_TESTS("candidates", weights_are_one_together_and_equal_parts_stand_together,
                   links_of_one_chain_and_the_same_odds_are_as_probable,
                   volts_lost_there_leave_one_of_them, what_is_open_counts_four_times,
                   a_link_that_would_have_to_fail_in_two_ways_is_not_condemned_alone,
                   a_part_is_condemned_as_good_as_certain_or_probable_when_no_test_is_left,
                   nothing_is_condemned_before_anything_was_bad,
                   a_test_tells_most_of_what_it_halves_and_nothing_of_what_is_known);
}
