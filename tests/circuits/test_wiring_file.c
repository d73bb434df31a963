/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/circuits/drive.h"
#include "../../lib/circuits/circuit.h"

/* One fan, one relay, switched by a module. */
static const char one_fan[] = "# name: one-fan\n"
                              "link,kind,from,to,value,by\n"
                              "battery,battery,+,-,,\n"
                              "strap,strap,body,-,,\n"
                              "rail,rail,+,rail,,\n"
                              "fan-fuse,fuse,rail,fuse.out,30,\n"
                              "feed,wire,fuse.out,R.30,,\n"
                              "R,relay,,,90,\n"
                              "fan-wire,wire,R.87,fan.1,,body\n"
                              "fan,motor,fan.1,fan.2,15,\n"
                              "ground-wire,wire,fan.2,G1,,\n"
                              "G1,ground,G1,body,,\n"
                              "key-fuse,fuse,+,key.out,10,key\n"
                              "coil-feed,wire,key.out,R.85,,\n"
                              "control,wire,R.86,module.5,,\n"
                              "output,output,module.5,-,,hot ac\n";

static struct ohm_circuit *circuit;

static const struct oc_wiring *parsed(const char *text) {
  ohm_error error;
  circuit = ohm_circuit_parse(text, strlen(text), "own", &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  ck_assert_msg(ohm_circuit_note_count(circuit) == 0, "%s", ohm_circuit_note(circuit, 0));
  return &circuit->wired->wiring;
}

static void check_refused(const char *rows, ohm_status status, const char *said) {
  char text[4000];
  ohm_error error;
  snprintf(text, sizeof text, "link,kind,from,to,value,by\nbattery,battery,+,-,,\n%s", rows);
  circuit = ohm_circuit_parse(text, strlen(text), "own", &error);
  ck_assert_msg(circuit == NULL, "%s", rows);
  ck_assert_msg(error.status == (int)status, "%s: %s", rows, error.message);
  ck_assert_msg(strstr(error.message, said) != NULL, "no \"%s\" in: %s", said, error.message);
}

START_TEST(fourteen_rows_are_28_things)
{
  static const char *const names[] = {
      "battery",        "strap",     "rail",       "fan-fuse",  "feed",           "R.30",
      "R.87",           "R.85",      "R.86",       "R.contact", "R.coil",         "fan-wire",
      "fan-wire.chafe", "fan",       "fan.1",      "fan.2",     "ground-wire",    "G1",
      "key-fuse",       "coil-feed", "control",    "output",    "fan-fuse.clips", "key-fuse.clips",
      "fan.blade",      "coolant",   "thermostat", "pump"};
  const struct oc_wiring *wiring = parsed(one_fan);
  ck_assert_uint_eq(wiring->thing_count, 28);
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
    ck_assert_msg(oc_wiring_find(wiring, names[i]) < OC_WIRING_THINGS, "%s", names[i]);
  ck_assert(oc_wiring_find(wiring, "R.rest") == OC_WIRING_THINGS);
  CHECK_NEAR(wiring->things[oc_wiring_find(wiring, "battery")].value, 12.6, 0);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(what_was_typed_drives)
{
  const struct oc_wiring *wiring = parsed(one_fan);
  struct oc_drive *drive = malloc(sizeof *drive);
  struct oc_drive_result result;
  size_t fan = oc_wiring_find(wiring, "fan");
  ck_assert_ptr_nonnull(drive);
  for (unsigned asked = 0; asked < 8; asked++) {
    const struct oc_setup setup = {.asked = asked, .key = true};
    oc_drive_begin(drive, wiring, &setup);
    ck_assert(oc_drive_run(drive, (struct oc_failures){0, NULL, 0}, &result));
    /* By heat or the A/C, the first and the third way. */
    ck_assert_int_eq(result.motor_speed[fan] > 0.9, (asked & 5) != 0);
  }
  free(drive);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(a_relay_that_changes_over_has_a_contact_at_rest)
{
  const struct oc_wiring *wiring = parsed("link,kind,from,to,value,by\nbattery,battery,+,-,12,\n"
                                          "a,wire,+,C.30,,\nb,wire,C.87a,-,,\nC,relay,,,,\n"
                                          "c,wire,+,D.85,,\nd,wire,D.86,-,,\nD,relay,,,,\n"
                                          "m,motor,+,-,10,\n");
  size_t rest = oc_wiring_find(wiring, "C.rest");
  ck_assert(rest < OC_WIRING_THINGS);
  ck_assert_int_eq((int)wiring->things[rest].kind, OC_THING_REST);
  ck_assert(oc_wiring_find(wiring, "C.coil") == OC_WIRING_THINGS);
  CHECK_NEAR(wiring->things[oc_wiring_find(wiring, "D.coil")].value, 90, 0);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(what_cannot_be_used_is_named_with_its_line)
{
  check_refused("x,bulb,+,-,,\n", OHM_BAD_SYNTAX, "line 3, column 3: the kind is \"bulb\"");
  check_refused("battery,wire,+,a,,\n", OHM_BAD_DEFINITION, "already");
  check_refused(",wire,+,a,,\n", OHM_BAD_SYNTAX, "the name is");
  check_refused("a-name-of-sixteen,wire,+,a,,\n", OHM_BAD_SYNTAX, "up to 14 of");
  check_refused("w,wire,,a,,\n", OHM_BAD_SYNTAX, "the point is");
  check_refused("f,fuse,+,a,,\n", OHM_BAD_SYNTAX, "amperes of a fuse");
  check_refused("f,fuse,+,a,-3,\n", OHM_BAD_SYNTAX, "above 0");
  check_refused("o,output,a,-,,\n", OHM_BAD_SYNTAX, "what closes it");
  check_refused("o,output,a,-,,hot cold\n", OHM_BAD_SYNTAX, "\"hot cold\"");
  check_refused("m,motor,+,-,10,body\n", OHM_BAD_SYNTAX, "by says \"body\"");
  check_refused("w,wire,+,\"a,,\n", OHM_BAD_SYNTAX, "line 3");
}
END_TEST

START_TEST(a_wiring_has_a_header_row_and_a_battery)
{
  ohm_error error;
  const char *headless = "battery,battery,+,-,,\n";
  ck_assert_ptr_null(ohm_circuit_parse(headless, strlen(headless), "own", &error));
  ck_assert(strstr(error.message, "a header row comes first") != NULL);
  const char *dead = "link,kind,from,to,value,by\nw,wire,+,a,,\n";
  ck_assert_ptr_null(ohm_circuit_parse(dead, strlen(dead), "own", &error));
  ck_assert_int_eq((int)error.status, OHM_BAD_DEFINITION);
  ck_assert(strstr(error.message, "there is no battery") != NULL);
  check_refused("w,wire,+,a,,\n", OHM_BAD_DEFINITION, "there is no motor");
}
END_TEST

START_TEST(a_circuit_of_a_wiring_is_printed_as_its_rows_and_read_again)
{
  parsed(one_fan);
  char printed[4000];
  char again[4000];
  ck_assert(ohm_circuit_print(circuit, printed, sizeof printed) < sizeof printed);
  size_t links = ohm_circuit_link_count(circuit);
  size_t tests = ohm_circuit_test_count(circuit);
  ck_assert(strstr(printed, "fan-wire,wire,R.87,fan.1,,body,") != NULL);
  ck_assert_ptr_null(strstr(printed, "starts-fan"));
  ohm_circuit_free(circuit);
  parsed(printed);
  ck_assert_uint_eq(ohm_circuit_link_count(circuit), links);
  ck_assert_uint_eq(ohm_circuit_test_count(circuit), tests);
  ohm_circuit_print(circuit, again, sizeof again);
  ck_assert_str_eq(printed, again);
  ohm_circuit_free(circuit);
}
END_TEST

static const char *link_text(const char *name, ohm_link_column column) {
  size_t at = oc_circuit_link(circuit, name, strlen(name));
  ck_assert_msg(at != OC_NO_PLACE, "%s", name);
  return ohm_circuit_link_text(circuit, at, (int)column);
}

START_TEST(part_and_action_follow_from_the_kind_and_a_row_may_say_otherwise)
{
  parsed(one_fan);
  ck_assert_str_eq(link_text("R.30", OHM_LINK_PART), link_text("R.86", OHM_LINK_PART));
  ck_assert_str_eq(link_text("R.30", OHM_LINK_ACTION), "repair");
  ck_assert_str_eq(link_text("R.contact", OHM_LINK_PART), link_text("R.coil", OHM_LINK_PART));
  ck_assert_str_eq(link_text("R.contact", OHM_LINK_ACTION), "buy");
  ck_assert_str_eq(link_text("fan.1", OHM_LINK_PART), "plug of fan");
  ck_assert_str_eq(link_text("fan-wire.chafe", OHM_LINK_PART),
                   link_text("fan-wire", OHM_LINK_PART));
  ck_assert_str_eq(link_text("feed", OHM_LINK_KIND), "power");
  ck_assert_str_eq(link_text("coil-feed", OHM_LINK_KIND), "control");
  ohm_circuit_free(circuit);
  parsed("link,kind,from,to,value,by,part,action,odds,standing\nbattery,battery,+,-,,\n"
         "m,motor,+,-,10,,fan with its frame,repair,0.3,own count\n");
  ck_assert_str_eq(link_text("m", OHM_LINK_PART), "fan with its frame");
  ck_assert_str_eq(link_text("m", OHM_LINK_ACTION), "repair");
  ck_assert_str_eq(link_text("m", OHM_LINK_ODDS), "0.3");
  ck_assert_str_eq(link_text("m.1", OHM_LINK_PART), "plug of m");
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(a_sensor_brings_its_plug_its_wires_and_what_reads_it)
{
  parsed("link,kind,from,to,value,by\nbattery,battery,+,-,,\nsensor,sensor,,,,\n"
         "m,motor,+,a,10,\no,output,a,-,,hot\n");
  ck_assert_str_eq(link_text("sensor", OHM_LINK_PART), "coolant temperature sensor");
  ck_assert_str_eq(link_text("sensor.plug", OHM_LINK_PART), "plug of sensor");
  ck_assert_str_eq(link_text("sensor.reading", OHM_LINK_PART), link_text("o", OHM_LINK_PART));
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(more_than_there_is_room_for_is_told)
{
  char rows[4000] = "";
  for (int i = 0; i < 64; i++)
    sprintf(rows + strlen(rows), "w%d,wire,+,a%d,,\n", i, i);
  check_refused(rows, OHM_TOO_LARGE, "more than 64 things");
  rows[0] = '\0';
  for (int i = 0; i < 9; i++)
    sprintf(rows + strlen(rows), "R%d,relay,,,,\n", i);
  check_refused(rows, OHM_TOO_LARGE, "more than 8 relays");
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "wiring file", fourteen_rows_are_28_things, what_was_typed_drives,
      a_relay_that_changes_over_has_a_contact_at_rest, what_cannot_be_used_is_named_with_its_line,
      a_wiring_has_a_header_row_and_a_battery,
      a_circuit_of_a_wiring_is_printed_as_its_rows_and_read_again,
      part_and_action_follow_from_the_kind_and_a_row_may_say_otherwise,
      a_sensor_brings_its_plug_its_wires_and_what_reads_it, more_than_there_is_room_for_is_told);
}
