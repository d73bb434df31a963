/* SPDX-License-Identifier: MIT */
/* What tests of one fan clear and accuse, against what the way of the current says. */
#include "../support.h"

#include <stdlib.h>

#include "../../lib/circuits/meaning.h"
#include "one_fan.h"

static struct oc_wiring *wiring;
static struct oc_drive *drive;
static struct oc_failings *failings;
static struct oc_meaning_room *room;
static oc_outcomes foretold[OC_FAILURES_MAX];
static struct oc_meaning meaning;
static oc_set clears;
static oc_set accuses;

/* A test: how the car is set up, and what is looked at. */
struct sight {
  enum oc_look_kind kind;
  size_t at;
  struct oc_limits limits;
  struct oc_setup setup;
};

static bool work_out(const struct sight *sight) {
  const struct oc_look look = {.kind = sight->kind, .at = sight->at, .limits = sight->limits};
  meaning.foretold = foretold;
  return oc_meaning_find(room, drive, wiring, failings, &sight->setup, &look, 1, &meaning);
}

static void begin(void) {
  wiring = malloc(sizeof *wiring);
  drive = malloc(sizeof *drive);
  failings = malloc(sizeof *failings);
  room = malloc(sizeof *room);
  ck_assert(wiring != NULL && drive != NULL && failings != NULL && room != NULL);
  oc_wiring_begin(wiring);
  one_fan(wiring);
  ck_assert(oc_failings_list(failings, drive, wiring, HOT | AC));
}

static void end(void) {
  free(wiring);
  free(drive);
  free(failings);
  free(room);
}

static size_t thing(const char *name) {
  size_t found = oc_wiring_find(wiring, name);
  ck_assert_msg(found < OC_WIRING_THINGS, "%s", name);
  return found;
}

static void find(const struct sight *look) {
  ck_assert(work_out(look));
  ck_assert(meaning.useful);
  clears = oc_meaning_clears(&meaning, failings);
  accuses = oc_meaning_accuses(&meaning, failings);
  ck_assert((clears & ~accuses) == 0);
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
  find(&(struct sight){
      .kind = OC_LOOK_FAN, .at = thing("fan"), .setup = {.asked = HOT, .key = true}});
  CHECK_HOLDS(accuses, true, "strap", "rail", "fuse", "feed", "wire", "chafe", "fan", "ground",
              "point", "key-fuse", "coil-feed", "control", "output", "R.30", "R.contact", "R.coil");
  CHECK_HOLDS(clears, true, "key-fuse", "coil-feed", "control", "R.85", "R.86", "chafe");
  end();
}
END_TEST

/* Half an ohm leaves a fan at three quarters, which an eye may take for one that runs. */
START_TEST(an_eye_on_a_running_fan_does_not_clear_a_few_tenths_of_an_ohm)
{
  begin();
  find(&(struct sight){
      .kind = OC_LOOK_FAN, .at = thing("fan"), .setup = {.asked = HOT, .key = true}});
  CHECK_HOLDS(clears, false, "feed", "wire", "ground");
  double most_ohm = oc_meaning_unseen_ohm(&meaning, failings, thing("feed"));
  ck_assert(0.3 <= most_ohm && most_ohm <= 1);
  end();
}
END_TEST

/* A lead from 30 to 87 bypasses contact and coil; the relay is out with its terminals. */
START_TEST(a_jumper_in_the_socket_says_nothing_of_the_relay_nor_of_its_terminals)
{
  begin();
  find(&(struct sight){
      .kind = OC_LOOK_FAN,
      .at = thing("fan"),
      .setup = {.unplugged = relay(),
                .across_count = 1,
                .across = {{point_of(wiring, "R.30"), point_of(wiring, "R.87"), 0, 0.02, 0}}}});
  CHECK_HOLDS(accuses, false, "R.contact", "R.coil", "R.30", "R.87", "R.85", "coil-feed", "control",
              "output", "key-fuse");
  CHECK_HOLDS(accuses, true, "rail", "fuse", "feed", "wire", "fan", "fan.1", "ground", "point",
              "strap");
  end();
}
END_TEST

START_TEST(a_bulb_at_the_open_plug_says_nothing_of_motor_and_mated_pins)
{
  begin();
  find(&(struct sight){.kind = OC_LOOK_BULB,
                       .at = 0,
                       .setup = {.asked = HOT,
                                 .key = true,
                                 .unplugged = pins_of_fan(),
                                 .across_count = 1,
                                 .across = {{point_of(wiring, "fan.plus"),
                                             point_of(wiring, "fan.minus"), 55, 0, 0}}}});
  CHECK_HOLDS(accuses, false, "fan.1", "fan.2");
  /* A stuck motor has blown the fuse before. */
  CHECK_HOLDS(accuses, true, "fan", "fuse", "feed", "R.contact", "R.coil", "ground", "point");
  /* 4.6 A lose two volts in 0.45 ohm: still bright, and the fan would be slow; from 1 ohm to 2 it
   * is dim. */
  CHECK_HOLDS(clears, false, "feed", "ground", "wire");
  CHECK_NEAR(oc_meaning_unseen_ohm(&meaning, failings, thing("feed")), 1, 0);
  CHECK_HOLDS(clears, true, "coil-feed", "control", "key-fuse");
  end();
}
END_TEST

/* A bulb from plus to ground says nothing of what lies before the plug, and all of the way back. */
START_TEST(a_bulb_from_battery_plus_to_the_plugs_ground_accuses_the_way_back_alone)
{
  begin();
  find(&(struct sight){
      .kind = OC_LOOK_BULB,
      .at = 0,
      .setup = {.unplugged = pins_of_fan(),
                .across_count = 1,
                .across = {{OC_POINT_PLUS, point_of(wiring, "fan.minus"), 55, 0, 0}}}});
  CHECK_HOLDS(accuses, true, "ground", "point", "strap", "battery");
  CHECK_HOLDS(accuses, false, "rail", "fuse", "feed", "wire", "fan", "R.contact", "output");
  end();
}
END_TEST

START_TEST(a_click_clears_the_coil_side_and_never_the_contact)
{
  begin();
  find(&(struct sight){.kind = OC_LOOK_CLICK, .at = 0, .setup = {.asked = HOT, .key = true}});
  CHECK_HOLDS(clears, true, "key-fuse", "coil-feed", "control", "R.85", "R.86", "R.coil");
  CHECK_HOLDS(accuses, false, "R.contact", "R.30", "R.87", "fan", "feed", "fuse", "ground");
  end();
}
END_TEST

START_TEST(a_new_fuse_that_holds_while_the_relay_is_out_says_nothing_of_a_wire_that_rubs)
{
  begin();
  struct sight look = {.kind = OC_LOOK_FUSE,
                       .at = thing("fuse"),
                       .setup = {.key = true, .spare = oc_set_of(thing("fuse"))}};
  find(&look);
  CHECK_HOLDS(accuses, false, "chafe", "fan");
  look.setup.asked = HOT;
  find(&look);
  CHECK_HOLDS(accuses, true, "chafe", "fan");
  look.setup.unplugged = pins_of_fan();
  find(&look);
  CHECK_HOLDS(accuses, true, "chafe");
  CHECK_HOLDS(accuses, false, "fan");
  end();
}
END_TEST

START_TEST(a_fuse_that_blew_before_looks_bad_whatever_blew_it)
{
  begin();
  find(&(struct sight){.kind = OC_LOOK_FUSE, .at = thing("fuse"), .setup = {.key = true}});
  CHECK_HOLDS(accuses, true, "chafe", "fan", "fuse");
  CHECK_HOLDS(accuses, false, "feed", "wire", "R.contact");
  end();
}
END_TEST

/* Three ways out of four: an open wire, a chafe, a stuck motor; a welded contact runs the fan. */
START_TEST(a_fault_matters_that_keeps_the_fan_slow_or_blows_a_fuse)
{
  begin();
  for (size_t i = 0; i < failings->count; i++) {
    const struct oc_failure *failure = &failings->failure[i];
    const char *name = wiring->things[failure->thing].name;
    bool open = failure->mode == OC_FAILURE_RESISTS && failure->size == INFINITY;
    bool welded = failure->mode == OC_FAILURE_CLOSED;
    bool stuck = failure->mode == OC_FAILURE_DRAGS && failure->size == INFINITY;
    bool rubbed = failure->mode == OC_FAILURE_RUBS && failure->size < 0.1;
    if (open || stuck || rubbed)
      ck_assert_msg(failings->matters[i], "%s", name);
    if (welded)
      ck_assert_msg(!failings->matters[i], "%s", name);
  }
  end();
}
END_TEST

/* ---- the figures of the trade ---- */

/* Straight on a battery. */
static void begin_motor(double volts, double running_a) {
  begin();
  oc_wiring_begin(wiring);
  join(wiring, "battery", OC_THING_BATTERY, "+", "-", volts);
  join(wiring, "fan", OC_THING_MOTOR, "+", "-", running_a);
}

/* What would be seen were the battery's ohms so many more. */
static unsigned seen_behind(double ohm, const struct sight *look) {
  failings->count = 1;
  failings->failure[0] = (struct oc_failure){thing("battery"), OC_FAILURE_RESISTS, ohm, 0};
  ck_assert(work_out(look) && meaning.useful);
  return meaning.foretold[0];
}

enum { NOTHING = OC_OUTCOME_NOTHING, PARTLY = OC_OUTCOME_PARTLY, GOOD = OC_OUTCOME_GOOD };

START_TEST(an_eye_sees_a_fan_run_from_nine_tenths_of_its_speed_and_stand_or_creep_to_six)
{
  static const struct {
    double speed;
    unsigned seen;
  } fans[] = {
      {0.91, GOOD},   {0.89, GOOD | PARTLY},    {0.61, GOOD | PARTLY},     {0.59, PARTLY},
      {0.16, PARTLY}, {0.14, PARTLY | NOTHING}, {0.021, PARTLY | NOTHING}, {0.019, NOTHING}};
  for (size_t i = 0; i < sizeof fans / sizeof fans[0]; i++) {
    /* 12.3 V turn it at full speed: 12.3 = (0.15 + 0.02 + R) 15 n^2 + 9.75 n. */
    double n = fans[i].speed;
    double ohm = (12.3 - 9.75 * n) / (15 * n * n) - 0.17;
    begin_motor(12.3, 15);
    const struct sight look = {.kind = OC_LOOK_FAN, .at = thing("fan"), .setup = {.key = true}};
    ck_assert_uint_eq(seen_behind(ohm, &look), fans[i].seen);
    end();
  }
}
END_TEST

START_TEST(a_fan_that_should_be_slow_and_is_not_looks_bad)
{
  begin();
  oc_wiring_begin(wiring);
  join(wiring, "battery", OC_THING_BATTERY, "+", "-", 12.6);
  join(wiring, "resistor", OC_THING_RESISTOR, "+", "fan.plus", 1.2);
  join(wiring, "chafe", OC_THING_CHAFE, "+", "fan.plus", 0);
  join(wiring, "fan", OC_THING_MOTOR, "fan.plus", "-", 15);
  failings->count = 1;
  failings->failure[0] = (struct oc_failure){thing("chafe"), OC_FAILURE_RUBS, 0.02, 0};
  const struct sight look = {.kind = OC_LOOK_FAN, .at = thing("fan"), .setup = {.key = true}};
  ck_assert(work_out(&look) && meaning.useful);
  ck_assert_uint_eq(meaning.foretold[0], OC_OUTCOME_MUCH);
  end();
}
END_TEST

START_TEST(an_eye_sees_a_fan_stand_still_to_2_hundredths_and_turn_from_15)
{
  static const struct {
    double speed;
    unsigned seen;
  } fans[] = {{0.019, GOOD},
              {0.021, GOOD | OC_OUTCOME_BAD},
              {0.14, GOOD | OC_OUTCOME_BAD},
              {0.16, OC_OUTCOME_BAD}};
  for (size_t i = 0; i < sizeof fans / sizeof fans[0]; i++) {
    double n = fans[i].speed;
    begin_motor(12.3, 15);
    join(wiring, "second", OC_THING_MOTOR, "out", "-", 15);
    join(wiring, "chafe", OC_THING_CHAFE, "+", "out", 0);
    failings->count = 1;
    double ohm = (12 - 9.75 * n) / (15 * n * n) - 0.15;
    failings->failure[0] = (struct oc_failure){thing("chafe"), OC_FAILURE_RUBS, ohm, 0};
    /* The first motor takes 14.6 A of the battery's 0.02 ohm: 12 V are left. */
    wiring->things[thing("battery")].value = 12 + 0.02 * (15 * n * n + 14.5);
    const struct sight look = {
        .kind = OC_LOOK_STILL, .at = thing("second"), .setup = {.key = true}};
    ck_assert(work_out(&look) && meaning.useful);
    ck_assert_uint_eq(meaning.foretold[0], fans[i].seen);
    end();
  }
}
END_TEST

START_TEST(an_eye_sees_a_bulb_bright_from_10_volts_dim_from_8_and_dark_below_7_tenths)
{
  static const struct {
    double volts;
    unsigned seen;
  } bulbs[] = {{10.1, GOOD},  {9.9, GOOD | PARTLY},    {8.1, GOOD | PARTLY},     {7.9, PARTLY},
               {3.1, PARTLY}, {2.9, PARTLY | NOTHING}, {0.71, PARTLY | NOTHING}, {0.69, NOTHING}};
  for (size_t i = 0; i < sizeof bulbs / sizeof bulbs[0]; i++) {
    begin_motor(12, 15);
    const struct sight look = {.kind = OC_LOOK_BULB,
                               .setup = {.unplugged = oc_set_of(thing("fan")),
                                         .across_count = 1,
                                         .across = {{OC_POINT_PLUS, OC_POINT_MINUS, 1, 0, 0}}}};
    /* Of 1 W: with the volts to the power of 0.55, but for cold 13 times as good as hot. */
    double share = bulbs[i].volts / 12;
    double ampere = fmin(pow(share, 0.55), 13 * share) / 12;
    ck_assert_uint_eq(seen_behind((12 - bulbs[i].volts) / ampere - 0.02, &look), bulbs[i].seen);
    end();
  }
}
END_TEST

/* Of V = (0.02 + R + 2.25 / I0) I0 n^2 + 9.75 n, forwards. */
static double speed_behind(double ohm, double running_a) {
  double square = (0.02 + ohm) * running_a + 2.25;
  return (sqrt(9.75 * 9.75 + 4 * square * 12.6) - 9.75) / (2 * square);
}

START_TEST(below_three_quarters_of_its_speed_a_fan_matters)
{
  for (double running_a = 3; running_a < 40; running_a += 0.5) {
    begin_motor(12.6, running_a);
    ck_assert(oc_failings_list(failings, drive, wiring, HOT));
    for (size_t i = 0; i < failings->count; i++) {
      const struct oc_failure *failure = &failings->failure[i];
      double share = speed_behind(failure->size, running_a) / speed_behind(0, running_a);
      if (failure->thing == thing("battery") && failure->mode == OC_FAILURE_RESISTS &&
          isfinite(failure->size))
        ck_assert_msg(failings->matters[i] == (share < 0.75), "%g ohm, %g A", failure->size,
                      running_a);
    }
    end();
  }
}
END_TEST

/* Limits of 2 and 20 ohm, and a car that has 1.7 times more or less. */
START_TEST(a_number_is_foretold_with_what_another_car_would_show)
{
  static const struct {
    double ohm;
    bool below;
    bool within;
    bool above;
  } cars[] = {{1.1, true, false, false}, {1.2, true, true, false},   {3.3, true, true, false},
              {3.5, false, true, false}, {11.7, false, true, false}, {11.8, false, true, true},
              {33, false, true, true},   {35, false, false, true}};
  for (size_t i = 0; i < sizeof cars / sizeof cars[0]; i++) {
    begin_motor(12, 15);
    join(wiring, "part", OC_THING_RESISTOR, "a", "b", 3);
    const struct sight look = {
        .kind = OC_LOOK_OHMS,
        .limits = {2, 20},
        .setup = {.across_count = 1,
                  .across = {{point_of(wiring, "a"), point_of(wiring, "b"), 0, 1000, 1}}}};
    failings->count = 1;
    failings->failure[0] =
        (struct oc_failure){thing("part"), OC_FAILURE_RESISTS, cars[i].ohm - 3, 0};
    ck_assert(work_out(&look) && meaning.useful);
    unsigned within = oc_outcome_within(look.limits);
    ck_assert_int_eq((meaning.foretold[0] & (within - 1)) != 0, cars[i].below);
    ck_assert_int_eq((meaning.foretold[0] & within) != 0, cars[i].within);
    ck_assert_int_eq((meaning.foretold[0] & ~(2 * within - 1)) != 0, cars[i].above);
    end();
  }
}
END_TEST

START_TEST(a_test_that_a_sound_wiring_fails_is_of_no_use)
{
  begin();
  struct sight look = {.kind = OC_LOOK_FAN, .at = thing("fan"), .setup = {.key = true}};
  ck_assert(work_out(&look));
  ck_assert(!meaning.useful && oc_meaning_clears(&meaning, failings) == 0 &&
            oc_meaning_accuses(&meaning, failings) == 0);
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
                   a_fuse_that_blew_before_looks_bad_whatever_blew_it,
                   a_fault_matters_that_keeps_the_fan_slow_or_blows_a_fuse,
                   an_eye_sees_a_fan_run_from_nine_tenths_of_its_speed_and_stand_or_creep_to_six,
                   a_fan_that_should_be_slow_and_is_not_looks_bad,
                   an_eye_sees_a_fan_stand_still_to_2_hundredths_and_turn_from_15,
                   an_eye_sees_a_bulb_bright_from_10_volts_dim_from_8_and_dark_below_7_tenths,
                   a_number_is_foretold_with_what_another_car_would_show,
                   below_three_quarters_of_its_speed_a_fan_matters,
                   a_test_that_a_sound_wiring_fails_is_of_no_use);
}
