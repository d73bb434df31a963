/* SPDX-License-Identifier: MIT */
/* Outcomes of numbers, a bit each. */
#include "../support.h"

#include <math.h>

#include "../../lib/circuits/outcome.h"

static const struct oc_limits both = {2, 10};
static const struct oc_limits least = {2, NAN};
static const struct oc_limits most = {NAN, 10};

static unsigned at(struct oc_limits limits, double number) {
  return oc_outcome_range(limits, number, number);
}

START_TEST(a_number_has_one_outcome_and_the_limits_are_within)
{
  const struct oc_limits all[] = {both, least, most};
  for (size_t i = 0; i < 3; i++)
    for (double number = 0.01; number < 500; number *= 1.1) {
      unsigned outcome = at(all[i], number);
      ck_assert_uint_ne(outcome, 0);
      ck_assert_uint_eq(outcome & (outcome - 1), 0);
      ck_assert_uint_eq(outcome & ~(unsigned)oc_outcome_numbers(all[i]), 0);
      bool within = !(number < all[i].low) && !(number > all[i].high);
      ck_assert_int_eq(outcome == oc_outcome_within(all[i]), within);
    }
  ck_assert_uint_eq(at(both, 2), oc_outcome_within(both));
  ck_assert_uint_eq(at(both, 10), oc_outcome_within(both));
}
END_TEST

START_TEST(outcomes_rise_with_the_number)
{
  unsigned before = 0;
  for (double number = 0.01; number < 500; number *= 1.1) {
    unsigned outcome = at(both, number);
    ck_assert(outcome >= before);
    before = outcome;
  }
  ck_assert_uint_eq(before, 128);
}
END_TEST

START_TEST(a_range_has_every_outcome_between_its_ends)
{
  for (double from = 0.01; from < 400; from *= 1.3)
    for (double to = from; to < 500; to *= 1.3) {
      unsigned range = oc_outcome_range(both, from, to);
      unsigned seen = 0;
      for (double number = from; number <= to; number *= 1.01)
        seen |= at(both, number);
      ck_assert_uint_eq(range & seen, seen);
      ck_assert_uint_eq(range, (seen | at(both, to)));
    }
}
END_TEST

/* The steps are shares of a limit, not amounts. */
START_TEST(outcomes_are_free_of_scale)
{
  const struct oc_limits large = {2000, 10000};
  for (double number = 0.01; number < 500; number *= 1.07)
    ck_assert_uint_eq(at(both, number), at(large, 1000 * number));
}
END_TEST

START_TEST(what_is_open_is_the_highest_of_all)
{
  ck_assert_uint_eq(at(both, INFINITY), 128);
  ck_assert_uint_eq(at(most, INFINITY), 8);
  ck_assert_uint_eq(at(least, INFINITY), oc_outcome_within(least));
}
END_TEST

int main(void) {
  return RUN_TESTS("outcome", a_number_has_one_outcome_and_the_limits_are_within,
                   outcomes_rise_with_the_number, a_range_has_every_outcome_between_its_ends,
                   outcomes_are_free_of_scale, what_is_open_is_the_highest_of_all);
}
