/* SPDX-License-Identifier: MIT */
/* Which things of a wiring carry one current. */
#include "../support.h"

#include <stdlib.h>

#include "../../lib/circuits/chain.h"
#include "one_fan.h"

static struct oc_wiring *wiring;
static struct oc_chains *chains;

static void begin(void) {
  wiring = malloc(sizeof *wiring);
  chains = malloc(sizeof *chains);
  ck_assert(wiring != NULL && chains != NULL);
  oc_wiring_begin(wiring);
}

static void end(void) {
  free(wiring);
  free(chains);
}

static size_t chain_of(const char *name) {
  size_t at = oc_wiring_find(wiring, name);
  ck_assert_msg(at < OC_WIRING_THINGS, "%s", name);
  return chains->chain_of[at];
}

START_TEST(what_lies_one_behind_the_other_is_one_chain)
{
  begin();
  one_fan(wiring);
  oc_chains_find(chains, wiring, NULL);
  /* From the battery to where the wire of the fan may rub. */
  ck_assert_uint_eq(chain_of("rail"), chain_of("wire"));
  ck_assert_uint_eq(chain_of("R.30"), chain_of("R.contact"));
  ck_assert_uint_eq(chain_of("key-fuse"), chain_of("output"));
  ck_assert_uint_ne(chain_of("wire"), chain_of("fan.1"));
  ck_assert_uint_ne(chain_of("ground"), chain_of("strap"));
  ck_assert_uint_eq(chain_of("battery"), OC_WIRING_THINGS);
  ck_assert_uint_eq(chain_of("fan"), OC_WIRING_THINGS);
  end();
}
END_TEST

START_TEST(every_thing_that_joins_is_in_one_chain_and_the_chain_leads_along_it)
{
  begin();
  one_fan(wiring);
  oc_chains_find(chains, wiring, NULL);
  size_t count = 0;
  for (size_t i = 0; i < chains->count; i++) {
    const struct oc_chain *chain = &chains->chain[i];
    size_t point = chain->from;
    for (size_t k = 0; k < chain->count; k++) {
      size_t thing = chains->thing[chain->first + k];
      ck_assert_uint_eq(chains->chain_of[thing], i);
      ck_assert(wiring->things[thing].from == point || wiring->things[thing].to == point);
      ck_assert_int_eq(chains->meets[point], k == 0);
      point = oc_chain_beyond(&wiring->things[thing], point);
    }
    ck_assert_uint_eq(point, chain->to);
    count += chain->count;
  }
  /* Neither battery nor motor, nor its blade. */
  ck_assert_uint_eq(count, wiring->thing_count - 3);
  end();
}
END_TEST

START_TEST(a_chain_ends_where_something_is_put)
{
  bool meets[OC_WIRING_POINTS] = {false};
  begin();
  one_fan(wiring);
  meets[point_of(wiring, "fuse.out")] = true;
  oc_chains_find(chains, wiring, meets);
  ck_assert_uint_eq(chain_of("rail"), chain_of("fuse"));
  ck_assert_uint_ne(chain_of("fuse"), chain_of("feed"));
  end();
}
END_TEST

START_TEST(a_ring_that_nothing_feeds_joins_nothing)
{
  begin();
  join(wiring, "battery", OC_THING_BATTERY, "+", "-", 12);
  join(wiring, "there", OC_THING_CONDUCTOR, "a", "b", 0);
  join(wiring, "back", OC_THING_CONDUCTOR, "b", "a", 0);
  oc_chains_find(chains, wiring, NULL);
  const struct oc_chain *ring = &chains->chain[chain_of("there")];
  ck_assert_uint_eq(chain_of("there"), chain_of("back"));
  ck_assert_uint_eq(ring->from, ring->to);
  end();
}
END_TEST

int main(void) {
  return RUN_TESTS("chain", what_lies_one_behind_the_other_is_one_chain,
                   every_thing_that_joins_is_in_one_chain_and_the_chain_leads_along_it,
                   a_chain_ends_where_something_is_put, a_ring_that_nothing_feeds_joins_nothing);
}
