/* SPDX-License-Identifier: MIT */
#include "../../lib/arithmetic/fuse.h"

#include "../support.h"

#include <string.h>

static double amperes(const char *name, double mv) {
  return oc_fuse_amperes(name, strlen(name), mv);
}

/* A trade table of fuse drops has 1 mV as 130 mA over an ATO fuse of 10 A; half a
 * milliampere of its last digit, and no warming yet. */
START_TEST(a_millivolt_over_ten_amperes_is_as_printed)
{ CHECK_NEAR(amperes("ATO10", 1), 0.130, 0.0005); }
END_TEST

/* From memory: 84 mV over a 30 A fuse at its rated current. */
START_TEST(the_rated_drop_is_the_rated_current)
{
  CHECK_NEAR(amperes("ATO30", 84), 30, 1e-6);
  CHECK_NEAR(amperes("ATO40", 96), 40, 1e-6);
}
END_TEST

START_TEST(more_millivolts_are_more_amperes)
{
  double before = amperes("ATO20", 0);
  CHECK_NEAR(before, 0, 1e-12);
  for (double mv = 1; mv <= 98; mv++) {
    double now = amperes("ATO20", mv);
    ck_assert(now > before);
    before = now;
  }
}
END_TEST

START_TEST(what_is_not_in_the_table_has_no_current)
{
  ck_assert(isnan(amperes("ATO12", 5)));
  ck_assert(isnan(amperes("MAXI30", 5)));
  ck_assert(isnan(amperes("", 5)));
  ck_assert(isnan(amperes("ATO30", 84.1)));
  ck_assert(isnan(amperes("ATO30", -0.1)));
  ck_assert(isnan(amperes("ATO30", NAN)));
  ck_assert(isnan(amperes("ATO30", INFINITY)));
}
END_TEST

int main(void) {
  return RUN_TESTS("fuse", a_millivolt_over_ten_amperes_is_as_printed,
                   the_rated_drop_is_the_rated_current, more_millivolts_are_more_amperes,
                   what_is_not_in_the_table_has_no_current);
}
