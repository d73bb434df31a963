/* SPDX-License-Identifier: MIT */
/* Circuits of a wiring: their tests, and what each tells, against what the way of the current
 * says. */
#include "../support.h"

#include <stdio.h>
#include <string.h>

#include "../../lib/circuits/circuit.h"
#include "../../lib/circuits/wired_test.h"

#define HEADER "link,kind,from,to,value,by\n"

/* A fan, a relay that the key feeds, a module that pulls it, and a sensor. */
static const char one_fan[] = HEADER "battery,battery,+,-,,\n"
                                     "strap,strap,body,-,,\n"
                                     "rail,rail,+,rail,,\n"
                                     "fan-fuse,fuse,rail,fuse-out,30,\n"
                                     "feed,wire,fuse-out,R.30,,\n"
                                     "R,relay,,,90,\n"
                                     "fan-wire,wire,R.87,plus,,body\n"
                                     "fan,motor,plus,minus,15,\n"
                                     "ground-wire,wire,minus,G1,,\n"
                                     "G1,ground,G1,body,,\n"
                                     "key-fuse,fuse,+,key-out,10,key\n"
                                     "coil-feed,wire,key-out,R.85,,\n"
                                     "control,wire,R.86,module,,\n"
                                     "output,output,module,-,,hot ac? unplugged? commanded\n"
                                     "sensor,sensor,,,,\n";

/* A switch in the radiator that carries the fan's current. */
static const char by_switch[] = HEADER "battery,battery,+,-,,\n"
                                       "fuse,fuse,+,a,30,\n"
                                       "to-switch,wire,a,b,,\n"
                                       "S,switch,b,c,,hot\n"
                                       "to-fan,wire,c,d,,\n"
                                       "fan,motor,d,e,10,\n"
                                       "ground,ground,e,-,,\n";

static struct ohm_circuit *circuit;

static void begin(const char *text) {
  ohm_error error;
  circuit = ohm_circuit_parse(text, strlen(text), "own", &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  ck_assert_msg(ohm_circuit_note_count(circuit) == 0, "%s", ohm_circuit_note(circuit, 0));
}

static void end(void) {
  ohm_circuit_free(circuit);
}

static const struct oc_test *test_of(const char *name) {
  size_t at = oc_circuit_test(circuit, name, strlen(name));
  ck_assert_msg(at != OC_NO_PLACE, "no test %s", name);
  return &circuit->tests[at];
}

static bool has_test(const char *name) {
  return oc_circuit_test(circuit, name, strlen(name)) != OC_NO_PLACE;
}

/* Whether names, apart by spaces, are all in a set, or all out of it. */
static void check_set(oc_set set, bool in, const char *names) {
  const char *word;
  size_t length;
  while (oc_circuit_word(&names, &word, &length)) {
    size_t link = oc_circuit_link(circuit, word, length);
    ck_assert_msg(link != OC_NO_PLACE, "no link %.*s", (int)length, word);
    ck_assert_msg(((set & oc_set_of(link)) != 0) == in, "%.*s", (int)length, word);
  }
}

static void check(const char *test, const char *accused, const char *left_alone) {
  const struct oc_test *it = test_of(test);
  ck_assert_msg((it->clears & ~it->accuses) == 0, "%s clears what it does not accuse", test);
  check_set(it->accuses, true, accused);
  check_set(it->accuses, false, left_alone);
}

/* What a test may show of a link that is open. */
static unsigned of_open(const char *test, const char *link) {
  size_t at = oc_circuit_link(circuit, link, strlen(link));
  for (size_t i = 0; i < circuit->failing_count; i++)
    if (circuit->failings[i].link == at && circuit->failings[i].ohm == INFINITY)
      return test_of(test)->foretold[i];
  ck_abort_msg("%s is never open", link);
}

START_TEST(a_fan_asked_for_by_heat_needs_all_and_by_command_not_the_sensor)
{
  begin(one_fan);
  check("starts-fan",
        "rail fan-fuse feed R.30 R.contact R.87 fan-wire fan.1 fan fan.2 ground-wire "
        "G1 strap key-fuse coil-feed R.85 R.coil R.86 control output sensor "
        "sensor.plug sensor.wires sensor.reading coolant thermostat pump",
        "");
  check("commanded-fan", "rail fan R.coil output", "sensor sensor.reading coolant thermostat");
  check("unplugged-fan", "rail fan sensor.reading", "sensor coolant");
  end();
}
END_TEST

START_TEST(what_the_maker_has_to_state_is_a_fact)
{
  begin(one_fan);
  ck_assert_uint_eq(test_of("ac-fan")->only_if, oc_circuit_fact(circuit, "ac-runs-fan", 11));
  ck_assert(test_of("unplugged-fan")->only_if != OC_NO_PLACE);
  ck_assert(test_of("commanded-fan")->only_if == OC_NO_PLACE);
  end();
}
END_TEST

START_TEST(a_jumper_in_the_socket_goes_round_relay_and_terminals)
{
  begin(one_fan);
  check("jump-R", "rail fan-fuse feed fan-wire fan.1 fan ground-wire",
        "R.30 R.87 R.contact R.coil coil-feed control output");
  end();
}
END_TEST

START_TEST(a_bulb_says_nothing_of_the_pins_it_is_put_in_place_of)
{
  begin(one_fan);
  check("plug-bulb-fan", "feed R.30 R.contact fan-wire ground-wire strap", "fan.1 fan.2");
  check("minus-bulb-fan", "ground-wire G1 strap", "feed fan-wire R.contact fan.2");
  check("from-fuse-out", "rail fan-fuse", "feed R.30 ground-wire strap");
  end();
}
END_TEST

START_TEST(a_relay_on_the_bench_is_alone_with_its_socket_far_away)
{
  begin(one_fan);
  check("bench-R", "R.contact R.coil", "R.30 R.87 R.85 R.86 feed fan-wire control");
  check("coil-R", "R.coil", "R.85 R.86 coil-feed");
  check("click-R", "R.85 R.86 R.coil coil-feed control output key-fuse", "R.contact R.30 fan");
  end();
}
END_TEST

START_TEST(volts_that_are_lost_accuse_what_lies_between_the_leads_alone)
{
  begin(one_fan);
  check("lost-fan-wire", "fan-wire", "feed R.87 R.contact fan.1 ground-wire fan");
  check("lost-R.contact", "R.30 R.contact R.87", "feed fan-wire fan.1");
  check("lost-fan-fuse", "fan-fuse fan-fuse.clips", "rail feed");
  check("lost-G1", "G1", "ground-wire strap");
  end();
}
END_TEST

START_TEST(the_wire_of_the_module_is_pulled_by_hand_and_no_bulb_is_put_on_it)
{
  begin(one_fan);
  check("pull-output", "control R.86 R.coil R.85 coil-feed fan", "output sensor.reading");
  ck_assert(!has_test("from-R.86") && !has_test("to-R.86") && !has_test("from-module"));
  end();
}
END_TEST

START_TEST(a_fuse_that_blew_accuses_what_may_have_blown_it)
{
  begin(one_fan);
  check("look-fan-fuse", "fan-fuse fan-wire.chafe fan fan.blade", "feed fan-wire R.contact");
  check("holds-fan-fuse", "fan-wire.chafe fan fan.blade", "fan-fuse feed");
  check("holds-bare-fan-fuse", "fan-wire.chafe", "fan fan.blade fan-fuse");
  ck_assert_str_eq(test_of("holds-fan-fuse")->cells[OHM_TEST_NEEDS], "look-fan-fuse=bad");
  end();
}
END_TEST

/* An open wire leaves the fan still and the bulb dark; what an eye calls slow or dim is not it. */
START_TEST(what_is_open_shows_nothing_at_all)
{
  begin(one_fan);
  ck_assert_uint_eq(of_open("starts-fan", "feed"), OC_OUTCOME_NOTHING);
  ck_assert_uint_eq(of_open("jump-R", "feed"), OC_OUTCOME_NOTHING);
  ck_assert_uint_eq(of_open("from-R.30", "feed"), OC_OUTCOME_NOTHING);
  ck_assert_uint_eq(of_open("from-fuse-out", "feed"), OC_OUTCOME_GOOD);
  ck_assert_uint_eq(of_open("spare-R", "R.contact"), OC_OUTCOME_GOOD);
  end();
}
END_TEST

START_TEST(a_switch_is_bridged_at_its_plug_and_read_hot)
{
  begin(by_switch);
  check("bridge-S", "fuse to-switch to-fan fan ground", "S S.1 S.2");
  check("hot-S", "S", "S.1 to-switch fan");
  check("lost-S", "S S.1 S.2", "to-switch to-fan");
  ck_assert(!has_test("ac-fan") && !has_test("commanded-fan"));
  end();
}
END_TEST

/* A switch of two stages, the first through a resistor. */
static const char two_stages[] = HEADER "battery,battery,+,-,,\n"
                                        "fuse,fuse,+,a,30,\n"
                                        "feed,wire,a,common,,\n"
                                        "low,switch,common,b,,hot\n"
                                        "high,switch,common,c,,high\n"
                                        "wire-low,wire,b,d,,\n"
                                        "resistor,resistor,d,plus,0.8,\n"
                                        "wire-high,wire,c,plus,,body\n"
                                        "fan,motor,plus,minus,15,\n"
                                        "ground,ground,minus,body,,\n"
                                        "strap,strap,body,-,,\n";

START_TEST(a_test_says_how_the_fan_is_asked_for_and_at_full_speed_first)
{
  begin(two_stages);
  const char *said = test_of("plug-bulb-fan")->cells[OHM_TEST_CONDITION];
  ck_assert_str_eq(said, "plug of high bridged by a fused jumper, key on");
  check("plug-bulb-fan", "feed wire-high ground", "wire-low resistor high low fan.1");
  said = test_of("lost-wire-low")->cells[OHM_TEST_CONDITION];
  ck_assert_str_eq(said, "plug of low bridged by a fused jumper, key on");
  end();
  begin(one_fan);
  said = test_of("plug-bulb-fan")->cells[OHM_TEST_CONDITION];
  ck_assert_msg(strstr(said, "in a way that holds for this car") != NULL, "%s", said);
  end();
}
END_TEST

START_TEST(a_fan_that_heat_runs_slowly_is_proved_slow_and_fast)
{
  begin(two_stages);
  ck_assert_int_eq((int)test_of("volts-fan")->role, (int)OC_ROLE_PROOF);
  ck_assert_int_eq((int)test_of("low-volts-fan")->role, (int)OC_ROLE_PROOF);
  check("low-volts-fan", "low.1 wire-low resistor", "wire-high high");
  check("lost-resistor", "resistor", "wire-low wire-high");
  end();
  begin(one_fan);
  ck_assert(!has_test("low-volts-fan"));
  end();
}
END_TEST

START_TEST(a_wire_that_rubs_is_found_by_ohms_with_all_unplugged)
{
  begin(two_stages);
  check("rub-wire-high", "wire-high.chafe", "wire-high feed ground fan");
  end();
}
END_TEST

/* Stuck behind the resistor it blows nothing; bridged to full speed it does, and who knows whether
 * that was before. */
START_TEST(a_fuse_that_another_test_may_have_blown_can_look_either_way)
{
  begin(two_stages);
  size_t blade = oc_circuit_link(circuit, "fan.blade", 9);
  bool seen = false;
  for (size_t i = 0; i < circuit->failing_count; i++)
    seen = seen || (circuit->failings[i].link == blade &&
                    test_of("look-fuse")->foretold[i] == (OC_OUTCOME_GOOD | OC_OUTCOME_NOTHING));
  ck_assert(seen);
  end();
}
END_TEST

/* ---- the figures of the trade ---- */

static void check_cell(const char *test, ohm_test_column column, const char *text) {
  ck_assert_str_eq(test_of(test)->cells[column], text);
}

/* To two digits: 90 ohm give or take 0.3; 15 A times 0.3 and 1.7; 25 mohm twice and 30 more; 30 mV
 * times 3.4 and 0.1 V more. */
START_TEST(limits_are_shares_of_what_a_sound_car_has)
{
  begin(one_fan);
  check_cell("coil-R", OHM_TEST_LOW, "63");
  check_cell("coil-R", OHM_TEST_HIGH, "120");
  check_cell("amps-fan", OHM_TEST_LOW, "4.5");
  check_cell("amps-fan", OHM_TEST_HIGH, "26");
  check_cell("feed-drop-fan", OHM_TEST_HIGH, "0.08");
  check_cell("lost-feed", OHM_TEST_HIGH, "0.2");
  end();
  begin(two_stages);
  /* 12.6 V lose 4.9 A in 0.8 ohm and joints; of the rest 0.85. */
  double low_v = test_of("low-volts-fan")->low.value;
  ck_assert_msg(6 < low_v && low_v < 6.4, "%g", low_v);
  end();
}
END_TEST

START_TEST(leads_and_bulbs_are_as_heavy_as_is_usual)
{
  CHECK_NEAR(oc_wired_lead(1, 0).ohm, 0.02, 0);
  CHECK_NEAR(oc_wired_bulb(1, 0).watt, 55, 0);
  begin(one_fan);
  /* 120 W of headlights on 0.02 ohm; a battery with a tenth more falls to 11.4 V. */
  check("battery-volts", "battery", "strap rail");
  ck_assert(test_of("coil-lamp-R")->accuses != 0);
  end();
}
END_TEST

START_TEST(from_one_ampere_on_a_link_carries_a_fan)
{
  for (int more = 0; more < 2; more++) {
    char text[400];
    snprintf(text, sizeof text,
             HEADER "battery,battery,+,-,,\nw,wire,+,a,,\nm,motor,a,b,%s,\no,output,b,-,,hot\n",
             more ? "1.15" : "0.9");
    begin(text);
    size_t wire = oc_circuit_link(circuit, "w", 1);
    ck_assert_int_eq((int)circuit->links[wire].kind,
                     (int)(more ? OHM_LINK_POWER : OHM_LINK_CONTROL));
    end();
  }
}
END_TEST

START_TEST(of_every_way_to_fail_every_test_foretells_something)
{
  const char *const texts[] = {one_fan, by_switch, two_stages};
  for (size_t k = 0; k < 3; k++) {
    begin(texts[k]);
    for (size_t i = 0; i < circuit->test_count; i++) {
      const struct oc_test *test = &circuit->tests[i];
      oc_outcomes any = oc_test_any(test);
      for (size_t j = 0; j < circuit->failing_count; j++) {
        ck_assert_uint_ne(test->foretold[j], 0);
        ck_assert_uint_eq(test->foretold[j] & ~any, 0);
      }
    }
    end();
  }
}
END_TEST

START_TEST(a_table_of_tests_below_the_wiring_adds_the_makers_own)
{
  char text[4000];
  snprintf(text, sizeof text,
           "%stest,what,load,tool,minutes,clears,accuses,source\n"
           "own-look,Wire of the fan not green: good,none,eyes,2,,fan-wire,own sketch\n",
           one_fan);
  begin(text);
  check("own-look", "fan-wire", "feed fan");
  ck_assert(has_test("starts-fan"));
  end();
}
END_TEST

/* Two fans in series at low speed, each by itself at high: the jumper names the fan it is for. */
START_TEST(two_fans_have_tests_of_their_own)
{
  begin(HEADER "battery,battery,+,-,,\nf,fuse,+,a,30,\nm,motor,a,b,10,\nn,motor,a,c,10,\n"
               "w,wire,b,A.30,,\nx,wire,c,B.30,,\ng,ground,A.87,-,,\nh,ground,B.87,-,,\n"
               "A,relay,,,,\nB,relay,,,,\nk,wire,+,A.85,,\nl,wire,+,B.85,,\n"
               "o,output,A.86,-,,hot\np,output,B.86,-,,hot\n");
  /* A fan that is stuck blows the fuse of both. */
  check("starts-m", "f m w g A.contact n", "n.1 x h B.contact");
  check("jump-A-m", "m w g", "n.1 x h A.contact");
  ck_assert(!has_test("jump-A-n") && has_test("jump-B-n"));
  end();
}
END_TEST

START_TEST(a_wiring_that_cannot_be_solved_or_lacks_a_way_to_the_fan_is_told)
{
  ohm_error error;
  const char *apart = HEADER "battery,battery,+,-,,\nm,motor,a,b,10,\n";
  struct ohm_circuit *none = ohm_circuit_parse(apart, strlen(apart), "own", &error);
  ck_assert_ptr_null(none);
  ck_assert_msg(strstr(error.message, "symptom") != NULL, "%s", error.message);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "wired circuit", a_fan_asked_for_by_heat_needs_all_and_by_command_not_the_sensor,
      what_the_maker_has_to_state_is_a_fact, a_jumper_in_the_socket_goes_round_relay_and_terminals,
      a_bulb_says_nothing_of_the_pins_it_is_put_in_place_of,
      a_relay_on_the_bench_is_alone_with_its_socket_far_away,
      volts_that_are_lost_accuse_what_lies_between_the_leads_alone,
      the_wire_of_the_module_is_pulled_by_hand_and_no_bulb_is_put_on_it,
      a_fuse_that_blew_accuses_what_may_have_blown_it, what_is_open_shows_nothing_at_all,
      a_switch_is_bridged_at_its_plug_and_read_hot,
      a_test_says_how_the_fan_is_asked_for_and_at_full_speed_first,
      a_fan_that_heat_runs_slowly_is_proved_slow_and_fast,
      a_wire_that_rubs_is_found_by_ohms_with_all_unplugged,
      a_fuse_that_another_test_may_have_blown_can_look_either_way,
      limits_are_shares_of_what_a_sound_car_has, leads_and_bulbs_are_as_heavy_as_is_usual,
      from_one_ampere_on_a_link_carries_a_fan, of_every_way_to_fail_every_test_foretells_something,
      a_table_of_tests_below_the_wiring_adds_the_makers_own, two_fans_have_tests_of_their_own,
      a_wiring_that_cannot_be_solved_or_lacks_a_way_to_the_fan_is_told);
}
