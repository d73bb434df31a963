/* SPDX-License-Identifier: MIT */
/* The ways in which things fail. */
#include "../support.h"

#include <math.h>

#include "../../lib/circuits/failure.h"
#include "one_fan.h"

static struct oc_wiring wiring;
static struct oc_failure ways[OC_FAILURES_OF_ONE];

static size_t ways_of(const char *name) {
  size_t at = oc_wiring_find(&wiring, name);
  ck_assert_msg(at < OC_WIRING_THINGS, "%s", name);
  size_t count = oc_failure_ways(&wiring, at, ways);
  ck_assert(0 < count && count <= OC_FAILURES_OF_ONE);
  for (size_t i = 0; i < count; i++)
    ck_assert_uint_eq(ways[i].thing, at);
  return count;
}

static bool has(size_t count, enum oc_failure_mode mode, double size) {
  for (size_t i = 0; i < count; i++)
    if (ways[i].mode == mode && ways[i].size == size)
      return true;
  return false;
}

static void begin(void) {
  oc_wiring_begin(&wiring);
  one_fan(&wiring);
  ck_assert(oc_wiring_add_sensor(&wiring, "sensor"));
}

START_TEST(whatever_carries_current_can_be_open)
{
  static const char *const names[] = {"strap", "fuse", "R.coil", "R.contact", "fan", "fan.1"};
  begin();
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    ck_assert_msg(has(ways_of(names[i]), OC_FAILURE_RESISTS, INFINITY), "%s", names[i]);
}
END_TEST

START_TEST(a_fuse_and_a_coil_are_open_or_sound)
{
  begin();
  ck_assert_uint_eq(ways_of("fuse"), 1);
  ck_assert_uint_eq(ways_of("R.coil"), 1);
}
END_TEST

START_TEST(what_switches_sticks_or_never_closes)
{
  static const char *const names[] = {"R.contact", "output"};
  begin();
  for (size_t i = 0; i < 2; i++) {
    size_t count = ways_of(names[i]);
    ck_assert(has(count, OC_FAILURE_CLOSED, 0) && has(count, OC_FAILURE_NEVER, 0));
  }
}
END_TEST

START_TEST(motor_and_blade_are_stuck_or_drag_by_their_own_amperes)
{
  begin();
  ck_assert(has(ways_of("fan"), OC_FAILURE_DRAGS, INFINITY));
  ck_assert(has(ways_of("fan"), OC_FAILURE_DRAGS, 15));
  ck_assert(has(ways_of("fan.blade"), OC_FAILURE_DRAGS, 15));
  ck_assert(!has(ways_of("fan.blade"), OC_FAILURE_RESISTS, INFINITY));
}
END_TEST

START_TEST(a_sensor_is_silent_by_heat_and_what_reads_it_unplugged_too)
{
  begin();
  ck_assert_uint_eq(ways_of("sensor"), 1);
  ck_assert_uint_eq(ways[0].ways, OC_WAY_HOT | OC_WAY_HIGH);
  ck_assert_uint_eq(ways_of("sensor.wires"), 2);
  ck_assert_uint_eq(ways[1].ways, OC_WAY_HOT | OC_WAY_HIGH | OC_WAY_UNPLUGGED);
  ck_assert_uint_eq(ways_of("sensor.reading"), 1);
  ck_assert_uint_eq(ways[0].ways, OC_WAY_HOT | OC_WAY_HIGH | OC_WAY_UNPLUGGED);
}
END_TEST

START_TEST(a_battery_lacks_volts_or_has_ohms)
{
  begin();
  size_t count = ways_of("battery");
  ck_assert(has(count, OC_FAILURE_FLAT, 3) && has(count, OC_FAILURE_RESISTS, 0.1));
}
END_TEST

int main(void) {
  return RUN_TESTS("failure", whatever_carries_current_can_be_open,
                   a_fuse_and_a_coil_are_open_or_sound, what_switches_sticks_or_never_closes,
                   motor_and_blade_are_stuck_or_drag_by_their_own_amperes,
                   a_sensor_is_silent_by_heat_and_what_reads_it_unplugged_too,
                   a_battery_lacks_volts_or_has_ohms);
}
