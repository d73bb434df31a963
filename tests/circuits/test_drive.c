/* SPDX-License-Identifier: MIT */
/* One fan, one relay and a module, driven as on a bench; figures worked out apart, by hand. */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

#include "../../lib/circuits/drive.h"
#include "one_fan.h"

static struct oc_wiring *wiring;
static struct oc_drive *drive;
static struct oc_drive_result result;

static size_t at(const char *name) {
  return point_of(wiring, name);
}

static void add(const char *name, enum oc_thing_kind kind, const char *from, const char *to,
                double value) {
  join(wiring, name, kind, from, to, value);
}

static void begin(void) {
  wiring = malloc(sizeof *wiring);
  drive = malloc(sizeof *drive);
  ck_assert(wiring != NULL && drive != NULL);
  oc_wiring_begin(wiring);
}

static void end(void) {
  free(wiring);
  free(drive);
}

static void begin_one_fan(void) {
  begin();
  one_fan(wiring);
}

static size_t thing(const char *name) {
  size_t found = oc_wiring_find(wiring, name);
  ck_assert_msg(found < OC_WIRING_THINGS, "%s", name);
  return found;
}

static void run(const struct oc_setup *setup, const char *name, enum oc_failure_mode mode,
                double size) {
  struct oc_failure failure = {name ? thing(name) : 0, mode, size, 0};
  oc_drive_begin(drive, wiring, setup);
  ck_assert(oc_drive_run(drive, (struct oc_failures){name != NULL, &failure, 0}, &result));
}

static double speed(void) {
  return result.motor_speed[thing("fan")];
}

static bool has_blown(const char *fuse) {
  return (result.blown & oc_set_of(thing(fuse))) != 0;
}

static const struct oc_setup asked = {.asked = HOT, .key = true};
static const struct oc_setup at_rest = {.key = true};

/* ---- a sound one ---- */

START_TEST(a_fan_runs_when_it_is_asked_and_the_key_is_on)
{
  begin_one_fan();
  run(&asked, NULL, OC_FAILURE_NONE, 0);
  ck_assert(result.steady && result.blown == 0);
  ck_assert_int_eq((int)result.pulled, 1);
  /* 53 mohm before and behind: V = 12.6 - 0.053 I and V = 0.15 I + 9.75 sqrt(I / 15). */
  CHECK_NEAR(result.motor_a[thing("fan")], 14.9, 0.3);
  CHECK_NEAR(speed(), sqrt(result.motor_a[thing("fan")] / 15), 1e-6);
  run(&at_rest, NULL, OC_FAILURE_NONE, 0);
  CHECK_NEAR(speed(), 0, 1e-6);
  struct oc_setup key_off = asked;
  key_off.key = false;
  run(&key_off, NULL, OC_FAILURE_NONE, 0);
  CHECK_NEAR(speed(), 0, 1e-6);
  end();
}
END_TEST

START_TEST(a_jumper_in_the_socket_needs_neither_key_nor_relay)
{
  begin_one_fan();
  struct oc_setup jumped = {.across_count = 1,
                            .across = {{.plus = at("R.30"), .minus = at("R.87"), .ohm = 0.02}}};
  jumped.unplugged = oc_set_of(thing("R.contact")) | oc_set_of(thing("R.coil"));
  run(&jumped, NULL, OC_FAILURE_NONE, 0);
  ck_assert(speed() > 0.95);
  CHECK_NEAR(result.across_a[0], result.motor_a[thing("fan")], 1e-4);
  end();
}
END_TEST

/* ---- the figures of the trade ---- */

static double lost(const char *name) {
  const struct oc_thing *one = &wiring->things[thing(name)];
  return fabs(result.volts[one->from] - result.volts[one->to]);
}

START_TEST(sound_things_have_the_ohms_that_are_common)
{
  begin_one_fan();
  run(&asked, NULL, OC_FAILURE_NONE, 0);
  double fan_a = result.motor_a[thing("fan")];
  double coil_a = lost("R.coil") / 90;
  CHECK_NEAR(lost("feed") / fan_a, 0.002, 1e-6);
  CHECK_NEAR(lost("fuse") / fan_a, 0.003, 1e-6);
  CHECK_NEAR(lost("R.contact") / fan_a, 0.01, 1e-6);
  CHECK_NEAR(lost("output") / coil_a, 1, 1e-4);
  CHECK_NEAR((12.6 - result.volts[at("+")]) / (fan_a + coil_a), 0.02, 1e-5);
  end();
}
END_TEST

START_TEST(a_fuse_blows_above_1_6_times_its_rating)
{
  for (int over = 0; over < 2; over++) {
    begin();
    double whole_ohm = 12.6 / (16 * (over ? 1.01 : 0.99));
    add("battery", OC_THING_BATTERY, "+", "-", 12.6);
    add("fuse", OC_THING_FUSE, "+", "out", 10);
    add("load", OC_THING_RESISTOR, "out", "-", whole_ohm - 0.023);
    run(&at_rest, NULL, OC_FAILURE_NONE, 0);
    ck_assert_int_eq(has_blown("fuse"), over);
    end();
  }
}
END_TEST

/* The coil's own current drops when its feed is drawn down by what its contact puts on: it holds
 * above 2.5 V and would let go below. */
START_TEST(a_relay_that_is_in_lets_go_below_2_5_volts)
{
  for (int holds = 0; holds < 2; holds++) {
    begin();
    add("battery", OC_THING_BATTERY, "+", "-", 12.6);
    add("thin", OC_THING_RESISTOR, "+", "R.30", 10);
    add("back", OC_THING_CONDUCTOR, "R.30", "R.85", 0);
    add("ground", OC_THING_CONDUCTOR, "R.86", "-", 0);
    /* Behind 10 ohm 90 of the coil and x of the load leave 2.5 V where x is 2.54 ohm. */
    add("load", OC_THING_RESISTOR, "R.87", "-", holds ? 2.62 : 2.46);
    ck_assert(oc_wiring_add_relay(wiring, "R", 90));
    run(&at_rest, NULL, OC_FAILURE_NONE, 0);
    ck_assert_int_eq(result.steady, holds);
    end();
  }
}
END_TEST

/* ---- faults ---- */

START_TEST(whatever_carries_the_current_or_the_coil_stops_the_fan_when_open)
{
  static const char *const links[] = {"strap",  "rail",    "fuse",   "feed",      "wire",
                                      "fan",    "fan.1",   "fan.2",  "ground",    "point",
                                      "R.30",   "R.87",    "R.85",   "R.86",      "R.contact",
                                      "R.coil", "control", "output", "coil-feed", "key-fuse"};
  begin_one_fan();
  for (size_t i = 0; i < sizeof links / sizeof links[0]; i++) {
    run(&asked, links[i], OC_FAILURE_RESISTS, INFINITY);
    ck_assert_msg(fabs(speed()) < 1e-3, "%s", links[i]);
  }
  end();
}
END_TEST

/* Worked out apart: 12.6 V behind 0.045 and 0.45 ohm leave 8.6 V of a fan that had 11.9. */
START_TEST(half_an_ohm_in_the_feed_leaves_a_slow_fan)
{
  begin_one_fan();
  run(&asked, "feed", OC_FAILURE_RESISTS, 0.45);
  double fan_v = result.volts[at("fan.plus")] - result.volts[at("fan.minus")];
  CHECK_NEAR(fan_v, 8.6, 0.15);
  ck_assert(speed() < 0.78);
  end();
}
END_TEST

/* A bulb of 4.6 A hardly sees what keeps the fan from half of its speed. */
START_TEST(a_bulb_in_the_place_of_the_fan_is_nearly_as_bright_behind_half_an_ohm)
{
  begin_one_fan();
  struct oc_setup lit = asked;
  lit.unplugged = oc_set_of(thing("fan.1")) | oc_set_of(thing("fan.2"));
  lit.across_count = 1;
  lit.across[0] = (struct oc_across){.plus = at("fan.plus"), .minus = at("fan.minus"), .watt = 55};
  run(&lit, NULL, OC_FAILURE_NONE, 0);
  double sound_a = result.across_a[0];
  CHECK_NEAR(sound_a, 4.6, 0.1);
  run(&lit, "feed", OC_FAILURE_RESISTS, 0.45);
  CHECK_NEAR(result.across_a[0] / sound_a, 0.91, 0.02);
  CHECK_NEAR(speed(), 0, 0);
  end();
}
END_TEST

START_TEST(a_wire_that_rubs_through_blows_the_fuse_when_the_relay_is_in)
{
  begin_one_fan();
  run(&asked, "chafe", OC_FAILURE_RUBS, 0.02);
  ck_assert(has_blown("fuse") && !has_blown("key-fuse"));
  ck_assert(result.steady);
  CHECK_NEAR(speed(), 0, 1e-3);
  run(&at_rest, "chafe", OC_FAILURE_RUBS, 0.02);
  ck_assert(!has_blown("fuse"));
  end();
}
END_TEST

START_TEST(a_stuck_motor_blows_the_fuse_and_a_stiff_one_is_slow)
{
  begin_one_fan();
  run(&asked, "fan", OC_FAILURE_DRAGS, INFINITY);
  ck_assert(has_blown("fuse"));
  run(&asked, "fan", OC_FAILURE_DRAGS, 8);
  ck_assert(!has_blown("fuse"));
  ck_assert(speed() < 0.95);
  ck_assert(result.motor_a[thing("fan")] > 18);
  end();
}
END_TEST

START_TEST(what_is_welded_runs_the_fan_unasked)
{
  begin_one_fan();
  run(&at_rest, "R.contact", OC_FAILURE_CLOSED, 0);
  ck_assert(speed() > 0.95);
  run(&at_rest, "output", OC_FAILURE_CLOSED, 0);
  ck_assert(speed() > 0.95);
  run(&asked, "output", OC_FAILURE_NEVER, 0);
  CHECK_NEAR(speed(), 0, 1e-6);
  end();
}
END_TEST

/* 90 ohm that get 7 of 12.6 V: 72 ohm before them at the most. */
START_TEST(a_coil_pulls_in_at_7_volts)
{
  begin_one_fan();
  run(&asked, "coil-feed", OC_FAILURE_RESISTS, 69);
  ck_assert_int_eq((int)result.pulled, 1);
  run(&asked, "coil-feed", OC_FAILURE_RESISTS, 73);
  ck_assert_int_eq((int)result.pulled, 0);
  end();
}
END_TEST

/* Its own contact feeds the coil: as soon as it is in it lets go. */
START_TEST(a_relay_that_breaks_its_own_feed_chatters)
{
  begin();
  add("battery", OC_THING_BATTERY, "+", "-", 12.6);
  add("feed", OC_THING_CONDUCTOR, "+", "R.30", 0);
  add("back", OC_THING_CONDUCTOR, "R.87a", "R.85", 0);
  add("ground", OC_THING_CONDUCTOR, "R.86", "-", 0);
  ck_assert(oc_wiring_add_relay(wiring, "R", 90));
  run(&at_rest, NULL, OC_FAILURE_NONE, 0);
  ck_assert(!result.steady);
  end();
}
END_TEST

/* A meter of 10 Mohm on an unplugged fan shows the battery through a hundred kilohm. */
START_TEST(unloaded_volts_see_no_ohms)
{
  begin_one_fan();
  struct oc_setup measured = asked;
  measured.unplugged = oc_set_of(thing("fan.1")) | oc_set_of(thing("fan.2"));
  measured.across_count = 1;
  measured.across[0] =
      (struct oc_across){.plus = at("fan.plus"), .minus = at("fan.minus"), .ohm = 1e7};
  run(&measured, "feed", OC_FAILURE_RESISTS, 1e5);
  CHECK_NEAR(result.volts[at("fan.plus")] - result.volts[at("fan.minus")], 12.6, 0.3);
  end();
}
END_TEST

int main(void) {
  return RUN_TESTS("drive", a_fan_runs_when_it_is_asked_and_the_key_is_on,
                   a_jumper_in_the_socket_needs_neither_key_nor_relay,
                   sound_things_have_the_ohms_that_are_common,
                   a_fuse_blows_above_1_6_times_its_rating,
                   a_relay_that_is_in_lets_go_below_2_5_volts,
                   whatever_carries_the_current_or_the_coil_stops_the_fan_when_open,
                   half_an_ohm_in_the_feed_leaves_a_slow_fan,
                   a_bulb_in_the_place_of_the_fan_is_nearly_as_bright_behind_half_an_ohm,
                   a_wire_that_rubs_through_blows_the_fuse_when_the_relay_is_in,
                   a_stuck_motor_blows_the_fuse_and_a_stiff_one_is_slow,
                   what_is_welded_runs_the_fan_unasked, a_coil_pulls_in_at_7_volts,
                   a_relay_that_breaks_its_own_feed_chatters, unloaded_volts_see_no_ohms);
}
