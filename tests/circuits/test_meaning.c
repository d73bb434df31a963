/* SPDX-License-Identifier: MIT */
/* What tests of one fan clear and accuse, against what the way of the current says. */
#include "../support.h"

#include <stdlib.h>

#include "../../lib/circuits/meaning.h"
#include "one_fan.h"

static struct oc_wiring *wiring;
static struct oc_drive *drive;
static struct oc_faults *faults;
static struct oc_meaning meaning;

static void begin(void) {
  wiring = malloc(sizeof *wiring);
  drive = malloc(sizeof *drive);
  faults = malloc(sizeof *faults);
  ck_assert(wiring != NULL && drive != NULL && faults != NULL);
  oc_wiring_begin(wiring);
  one_fan(wiring);
  oc_faults_list(faults, drive, wiring, HOT | AC);
}

static void end(void) {
  free(wiring);
  free(drive);
  free(faults);
}

static size_t thing(const char *name) {
  size_t found = oc_wiring_find(wiring, name);
  ck_assert_msg(found < OC_WIRING_THINGS, "%s", name);
  return found;
}

static void find(const struct oc_look *look) {
  ck_assert(oc_meaning_find(drive, wiring, faults, look, &meaning));
  ck_assert(meaning.useful);
  ck_assert((meaning.clears & ~meaning.accuses) == 0);
}

static bool holds(oc_set set, const char *name) {
  return (set & oc_set_of(thing(name))) != 0;
}

static void check_all(oc_set set, bool held, const char *const *names, size_t count) {
  for (size_t i = 0; i < count; i++)
    ck_assert_msg(holds(set, names[i]) == held, "%s", names[i]);
}

#define CHECK_HOLDS(set, held, ...)                                                                \
  check_all(set, held, (const char *const[]){__VA_ARGS__},                                         \
            sizeof(const char *const[]){__VA_ARGS__} / sizeof(const char *))

static oc_set pins_of_fan(void) {
  return oc_set_of(thing("fan.1")) | oc_set_of(thing("fan.2"));
}

static oc_set relay(void) {
  return oc_set_of(thing("R.contact")) | oc_set_of(thing("R.coil")) | oc_set_of(thing("R.30")) |
         oc_set_of(thing("R.87")) | oc_set_of(thing("R.85")) | oc_set_of(thing("R.86"));
}

START_TEST(a_fan_that_runs_when_asked_clears_all_that_could_have_stopped_it)
{
  begin();
  find(&(struct oc_look){OC_LOOK_FAN, thing("fan"), {.asked = HOT, .key = true}});
  CHECK_HOLDS(meaning.accuses, true, "strap", "rail", "fuse", "feed", "wire", "chafe", "fan",
              "ground", "point", "key-fuse", "coil-feed", "control", "output", "R.30", "R.contact",
              "R.coil");
  CHECK_HOLDS(meaning.clears, true, "key-fuse", "coil-feed", "control", "R.85", "R.86", "chafe");
  end();
}
END_TEST

/* Half an ohm leaves a fan at three quarters, which an eye may take for one that runs. */
START_TEST(an_eye_on_a_running_fan_does_not_clear_a_few_tenths_of_an_ohm)
{
  begin();
  find(&(struct oc_look){OC_LOOK_FAN, thing("fan"), {.asked = HOT, .key = true}});
  CHECK_HOLDS(meaning.clears, false, "feed", "wire", "ground");
  double most_ohm = meaning.unseen_ohm[thing("feed")];
  ck_assert(0.05 <= most_ohm && most_ohm <= 0.45);
  end();
}
END_TEST

/* A lead from 30 to 87 bypasses contact and coil; the relay is out with its terminals. */
START_TEST(a_jumper_in_the_socket_says_nothing_of_the_relay_nor_of_its_terminals)
{
  begin();
  find(&(struct oc_look){
      OC_LOOK_FAN,
      thing("fan"),
      {.unplugged = relay(),
       .across_count = 1,
       .across = {{point_of(wiring, "R.30"), point_of(wiring, "R.87"), 0, 0.02}}}});
  CHECK_HOLDS(meaning.accuses, false, "R.contact", "R.coil", "R.30", "R.87", "R.85", "coil-feed",
              "control", "output", "key-fuse");
  CHECK_HOLDS(meaning.accuses, true, "rail", "fuse", "feed", "wire", "fan", "fan.1", "ground",
              "point", "strap");
  end();
}
END_TEST

START_TEST(a_bulb_at_the_open_plug_says_nothing_of_motor_and_mated_pins)
{
  begin();
  find(&(struct oc_look){
      OC_LOOK_BULB,
      0,
      {.asked = HOT,
       .key = true,
       .unplugged = pins_of_fan(),
       .across_count = 1,
       .across = {{point_of(wiring, "fan.plus"), point_of(wiring, "fan.minus"), 55, 0}}}});
  CHECK_HOLDS(meaning.accuses, false, "fan", "fan.1", "fan.2");
  CHECK_HOLDS(meaning.accuses, true, "fuse", "feed", "R.contact", "R.coil", "ground", "point");
  /* 4.6 A lose two volts in 0.45 ohm: still bright, and the fan would be slow. */
  CHECK_HOLDS(meaning.clears, false, "feed", "ground", "wire");
  CHECK_NEAR(meaning.unseen_ohm[thing("feed")], 0.45, 0);
  CHECK_HOLDS(meaning.clears, true, "coil-feed", "control", "key-fuse");
  end();
}
END_TEST

/* A bulb from plus to ground says nothing of what lies before the plug, and all of the way back. */
START_TEST(a_bulb_from_battery_plus_to_the_plugs_ground_accuses_the_way_back_alone)
{
  begin();
  find(&(struct oc_look){OC_LOOK_BULB,
                         0,
                         {.unplugged = pins_of_fan(),
                          .across_count = 1,
                          .across = {{OC_POINT_PLUS, point_of(wiring, "fan.minus"), 55, 0}}}});
  CHECK_HOLDS(meaning.accuses, true, "ground", "point", "strap", "battery");
  CHECK_HOLDS(meaning.accuses, false, "rail", "fuse", "feed", "wire", "fan", "R.contact", "output");
  end();
}
END_TEST

START_TEST(a_click_clears_the_coil_side_and_never_the_contact)
{
  begin();
  find(&(struct oc_look){OC_LOOK_CLICK, 0, {.asked = HOT, .key = true}});
  CHECK_HOLDS(meaning.clears, true, "key-fuse", "coil-feed", "control", "R.85", "R.86", "R.coil");
  CHECK_HOLDS(meaning.accuses, false, "R.contact", "R.30", "R.87", "fan", "feed", "fuse", "ground");
  end();
}
END_TEST

START_TEST(a_new_fuse_that_holds_while_the_relay_is_out_says_nothing_of_a_wire_that_rubs)
{
  begin();
  find(&(struct oc_look){OC_LOOK_FUSE, thing("fuse"), {.key = true}});
  CHECK_HOLDS(meaning.accuses, false, "chafe", "fan");
  find(&(struct oc_look){OC_LOOK_FUSE, thing("fuse"), {.asked = HOT, .key = true}});
  CHECK_HOLDS(meaning.accuses, true, "chafe", "fan");
  find(&(struct oc_look){
      OC_LOOK_FUSE, thing("fuse"), {.asked = HOT, .key = true, .unplugged = pins_of_fan()}});
  CHECK_HOLDS(meaning.accuses, true, "chafe");
  CHECK_HOLDS(meaning.accuses, false, "fan");
  end();
}
END_TEST

/* Three ways out of four: an open wire, a chafe, a stuck motor; a welded contact runs the fan. */
START_TEST(a_fault_matters_that_keeps_the_fan_slow_or_blows_a_fuse)
{
  begin();
  for (size_t i = 0; i < faults->count; i++) {
    const struct oc_failure *failure = &faults->failure[i];
    const char *name = wiring->things[failure->thing].name;
    bool open = failure->mode == OC_FAILURE_RESISTS && failure->size == INFINITY;
    bool welded = failure->mode == OC_FAILURE_CLOSED;
    bool stuck = failure->mode == OC_FAILURE_DRAGS && failure->size == INFINITY;
    bool rubbed = failure->mode == OC_FAILURE_RUBS && failure->size < 0.1;
    if (open || stuck || rubbed)
      ck_assert_msg(faults->matters[i], "%s", name);
    if (welded)
      ck_assert_msg(!faults->matters[i], "%s", name);
  }
  end();
}
END_TEST

/* ---- the figures of the trade ---- */

/* A motor straight on a battery that makes it turn at such a share of its speed: V of 15 A. */
static double volts_for(double speed) {
  return (0.15 + 0.02) * 15 * speed * speed + 9.75 * speed;
}

/* One motor on a battery, and a wire to nowhere. */
static void begin_motor(double volts) {
  begin();
  oc_wiring_begin(wiring);
  join(wiring, "battery", OC_THING_BATTERY, "+", "-", volts);
  join(wiring, "fan", OC_THING_MOTOR, "+", "-", 15);
  join(wiring, "spare", OC_THING_CONDUCTOR, "+", "end", 0);
}

START_TEST(an_eye_sees_a_fan_run_from_nine_tenths_of_its_speed_and_stand_or_creep_to_six)
{
  static const struct {
    double speed;
    enum oc_seen seen;
  } fans[] = {
      {0.91, OC_SEEN_GOOD}, {0.89, OC_SEEN_UNSURE}, {0.61, OC_SEEN_UNSURE}, {0.59, OC_SEEN_BAD}};
  for (size_t i = 0; i < sizeof fans / sizeof fans[0]; i++) {
    begin_motor(volts_for(fans[i].speed));
    const struct oc_look look = {OC_LOOK_FAN, thing("fan"), {.key = true}};
    ck_assert_int_eq(oc_meaning_see(drive, wiring, NULL, &look), fans[i].seen);
    end();
  }
}
END_TEST

START_TEST(an_eye_sees_a_bulb_bright_from_10_volts_and_dim_to_8)
{
  static const struct {
    double volts;
    enum oc_seen seen;
  } bulbs[] = {
      {10.1, OC_SEEN_GOOD}, {9.9, OC_SEEN_UNSURE}, {8.1, OC_SEEN_UNSURE}, {7.9, OC_SEEN_BAD}};
  for (size_t i = 0; i < sizeof bulbs / sizeof bulbs[0]; i++) {
    begin_motor(bulbs[i].volts);
    const struct oc_look look = {OC_LOOK_BULB,
                                 0,
                                 {.unplugged = oc_set_of(thing("fan")),
                                  .across_count = 1,
                                  .across = {{OC_POINT_PLUS, OC_POINT_MINUS, 1, 0}}}};
    ck_assert_int_eq(oc_meaning_see(drive, wiring, NULL, &look), bulbs[i].seen);
    end();
  }
}
END_TEST

START_TEST(below_three_quarters_of_its_speed_a_fan_matters)
{
  for (int slow = 0; slow < 2; slow++) {
    begin_motor(volts_for(slow ? 0.74 : 0.76));
    oc_faults_list(faults, drive, wiring, HOT);
    for (size_t i = 0; i < faults->count; i++)
      if (faults->failure[i].thing == thing("spare"))
        ck_assert_int_eq(faults->matters[i], slow);
    end();
  }
}
END_TEST

START_TEST(a_test_that_a_sound_wiring_fails_is_of_no_use)
{
  begin();
  struct oc_look look = {OC_LOOK_FAN, thing("fan"), {.key = true}};
  ck_assert(oc_meaning_find(drive, wiring, faults, &look, &meaning));
  ck_assert(!meaning.useful && meaning.clears == 0 && meaning.accuses == 0);
  end();
}
END_TEST

int main(void) {
  return RUN_TESTS("meaning", a_fan_that_runs_when_asked_clears_all_that_could_have_stopped_it,
                   an_eye_on_a_running_fan_does_not_clear_a_few_tenths_of_an_ohm,
                   a_jumper_in_the_socket_says_nothing_of_the_relay_nor_of_its_terminals,
                   a_bulb_at_the_open_plug_says_nothing_of_motor_and_mated_pins,
                   a_bulb_from_battery_plus_to_the_plugs_ground_accuses_the_way_back_alone,
                   a_click_clears_the_coil_side_and_never_the_contact,
                   a_new_fuse_that_holds_while_the_relay_is_out_says_nothing_of_a_wire_that_rubs,
                   a_fault_matters_that_keeps_the_fan_slow_or_blows_a_fuse,
                   an_eye_sees_a_fan_run_from_nine_tenths_of_its_speed_and_stand_or_creep_to_six,
                   an_eye_sees_a_bulb_bright_from_10_volts_and_dim_to_8,
                   below_three_quarters_of_its_speed_a_fan_matters,
                   a_test_that_a_sound_wiring_fails_is_of_no_use);
}
