/* SPDX-License-Identifier: MIT */
#include "../support.h"
#include "../findings.h"
#include "../../lib/answers/isolation.h"
#include "../../lib/answers/bath.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ohm_finding finding;

static ohm_circuit *load(const char *name) {
  ohm_error error;
  ohm_circuit *circuit = ohm_circuit_built_in_load(name, &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  return circuit;
}

/* What stands after a record on a built-in circuit. */
static const char *state(const char *name, const char *record) {
  ohm_error error;
  ohm_circuit *circuit = load(name);
  finding = finding_new();
  ohm_status status = oc_isolation_judge(circuit, record, strlen(record), &finding, &error);
  ck_assert_msg(status == OHM_OK, "%s", error.message);
  ohm_circuit_free(circuit);
  return ohm_finding_text(&finding, OHM_FIELD_STATE, 0);
}

static const char *text(ohm_field field, size_t index) {
  const char *found = ohm_finding_text(&finding, (int)field, index);
  return found ? found : "";
}

static bool lists(ohm_field field, const char *word) {
  for (size_t i = 0; text(field, i)[0]; i++)
    if (strcmp(text(field, i), word) == 0)
      return true;
  return false;
}

static size_t count(ohm_field field) {
  size_t i = 0;
  while (text(field, i)[0])
    i++;
  return i;
}

/* Asked for, and nothing came. */
#define DEAD                                                                                       \
  "starts=bad\ncoolant-level=good\nstanding=good\nbattery-volts=12.4\nhoses=good\n"                \
  "engine-heat=103\n"

#define STATE_IS(name, record, want) ck_assert_str_eq(state(name, record), want)

/* ---- was it ever asked for ---- */

START_TEST(first_of_all_does_the_fan_start)
{
  STATE_IS("radiator-switch", "", "go_on");
  ck_assert_str_eq(text(OHM_FIELD_NEXT, 0), "starts");
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_UNDECIDED);
}
END_TEST

START_TEST(a_fan_that_starts_needs_nothing)
{
  STATE_IS("radiator-switch", "starts=good\n", "closed");
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_WITHIN);
  ck_assert_uint_eq(count(OHM_FIELD_BUY), 0);
}
END_TEST

START_TEST(then_whether_it_was_ever_asked_for)
{
  STATE_IS("radiator-switch", "starts=bad\n", "go_on");
  ck_assert_str_eq(text(OHM_FIELD_NEXT, 0), "coolant-level");
  ck_assert_uint_eq(count(OHM_FIELD_SUSPECTS), 0);
}
END_TEST

START_TEST(what_was_not_asked_for_is_no_fault)
{
  STATE_IS("radiator-switch", "starts=bad\ncoolant-level=good\nstanding=bad\n", "not_asked");
  STATE_IS("radiator-switch",
           "starts=bad\ncoolant-level=good\nstanding=good\nbattery-volts=12.4\nhoses=good\n"
           "engine-heat=80\n",
           "not_asked");
  ck_assert_str_eq(text(OHM_FIELD_NEXT, 0), "engine-heat");
  ck_assert_uint_eq(count(OHM_FIELD_FAULTY), 0);
}
END_TEST

START_TEST(low_coolant_is_a_repair_before_anything_is_bought)
{
  STATE_IS("radiator-switch", "starts=bad\ncoolant-level=bad\n", "found");
  ck_assert_uint_eq(count(OHM_FIELD_BUY), 0);
  ck_assert_ptr_nonnull(strstr(text(OHM_FIELD_REPAIR, 0), "coolant: "));
}
END_TEST

START_TEST(a_gauge_far_above_the_fan_stops_the_engine)
{
  STATE_IS("radiator-switch", "starts=bad\nengine-heat=109\n", "too_hot");
  STATE_IS("radiator-switch", "fan=100C\nstarts=bad\nengine-heat=109\n", "go_on");
}
END_TEST

/* ---- links ---- */

START_TEST(one_bad_look_at_a_fuse_finds_it)
{
  STATE_IS("radiator-switch", DEAD "fuse-look=bad\n", "found");
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_OUTSIDE);
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "fuse");
  ck_assert_ptr_nonnull(strstr(text(OHM_FIELD_BUY, 0), "fan fuse: "));
  ck_assert(lists(OHM_FIELD_AGAIN, "fuse-look: good"));
  ck_assert(lists(OHM_FIELD_AGAIN, "starts: good"));
}
END_TEST

START_TEST(it_is_not_closed_until_the_fan_has_started_by_itself)
{
  STATE_IS("radiator-switch", DEAD "fuse-look=bad\nfuse=renewed\n", "go_on");
  ck_assert_str_eq(text(OHM_FIELD_NEXT, 0), "starts");
  STATE_IS("radiator-switch", DEAD "fuse-look=bad\nfuse=renewed\nstarts=good\n", "closed");
  ck_assert(lists(OHM_FIELD_RENEWED, "fuse"));
}
END_TEST

START_TEST(a_second_fault_shows_after_the_first_is_renewed)
{
  STATE_IS("radiator-switch", DEAD "fuse-look=bad\nfuse=renewed\nstarts=bad\n", "go_on");
  STATE_IS("radiator-switch", DEAD "fuse-look=bad\nfuse=renewed\nstarts=bad\ndirect=bad\n",
           "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "motor");
}
END_TEST

START_TEST(two_fans_may_be_dead_for_two_reasons)
{
  STATE_IS("module-relays",
           "starts-1=bad\nstarts-2=bad\ncoolant-level=good\nstanding=good\nbattery-volts=12.4\n"
           "hoses=good\nengine-heat=103\ndirect-1=bad\nfuse-look-2=bad\n",
           "found");
  ck_assert(lists(OHM_FIELD_FAULTY, "motor-1"));
  ck_assert(lists(OHM_FIELD_FAULTY, "fuse-2"));
  ck_assert_uint_eq(count(OHM_FIELD_BUY), 2);
}
END_TEST

START_TEST(what_shows_without_load_clears_no_power_link)
{
  state("radiator-switch", DEAD "fuse-look=good\nlamp-30=good\nmotor-ohms=good\n");
  ck_assert(lists(OHM_FIELD_SUSPECTS, "fuse"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "feed"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "motor"));
  state("radiator-switch", DEAD "lit=good\ndirect=good\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "fuse"));
  ck_assert(lists(OHM_FIELD_CLEARED, "motor"));
}
END_TEST

START_TEST(a_click_clears_the_coil_side_and_never_the_contact)
{
  state("radiator-switch", DEAD "click=good\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "coil"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "contact"));
}
END_TEST

START_TEST(an_identical_relay_that_helps_condemns_the_old_one)
{
  STATE_IS("radiator-switch", DEAD "swap=bad\n", "found");
  ck_assert_ptr_nonnull(strstr(text(OHM_FIELD_BUY, 0), "fan relay: "));
  ck_assert_uint_eq(count(OHM_FIELD_BUY), 1);
}
END_TEST

/* ---- ways to ask ---- */

START_TEST(a_fan_still_dead_with_the_sensor_off_tells_nothing_unless_the_maker_states_it)
{
  state("pulse-width", DEAD "ask-unplugged=bad\n");
  ck_assert(lists(OHM_FIELD_SUSPECTS, "sensor"));
  state("pulse-width", "open-sensor-runs-fan=yes\n" DEAD "ask-unplugged=bad\n");
  ck_assert(!lists(OHM_FIELD_SUSPECTS, "sensor"));
  state("pulse-width", DEAD "ask-unplugged=good\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "unit"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "sensor"));
}
END_TEST

START_TEST(a_tool_that_is_not_to_be_had_is_not_asked_for)
{
  static const char *const tools[] = {"clamp=none\n", "bulb=none\n", "meter=none\n"};
  char record[1024] = DEAD;
  for (size_t i = 0; i < 3; i++)
    strcat(record, tools[i]);
  for (int step = 0; step < 20 && strcmp(state("radiator-switch", record), "go_on") == 0; step++) {
    ck_assert_ptr_null(strstr(text(OHM_FIELD_NEXT_TOOLS, 0), "meter"));
    ck_assert_ptr_null(strstr(text(OHM_FIELD_NEXT_TOOLS, 0), "bulb"));
    strcat(record, text(OHM_FIELD_NEXT, 0));
    strcat(record, "=good\n");
  }
  strcat(record, "bulb=yes\n");
  state("radiator-switch", record);
  ck_assert_str_ne(text(OHM_FIELD_STATE, 0), "");
}
END_TEST

START_TEST(without_a_thermometer_the_tests_go_on_as_if_it_was_hot)
{
  state("module-relays", "thermometer=none\nstarts-1=bad\nstarts-2=bad\ncoolant-level=good\n"
                         "standing=good\nbattery-volts=12.4\nhoses=good\n");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_STATE, 0), "go_on");
  ck_assert_ptr_nonnull(ohm_finding_text(&finding, OHM_FIELD_NEXT, 0));
}
END_TEST

START_TEST(a_skipped_test_is_not_asked_for_again)
{
  STATE_IS("radiator-switch", DEAD, "go_on");
  char record[1024] = DEAD;
  char first[64];
  strcpy(first, text(OHM_FIELD_NEXT, 0));
  strcat(strcat(record, first), "=skip\n");
  STATE_IS("radiator-switch", record, "go_on");
  ck_assert_str_ne(text(OHM_FIELD_NEXT, 0), first);
  ck_assert(lists(OHM_FIELD_SKIPPED, first));
}
END_TEST

/* ---- sensing ---- */

START_TEST(a_sensor_within_leaves_its_plug_and_wires)
{
  state("pulse-width", DEAD "ask-module=good\nsensor-pins=within\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "sensor"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "sensor-plug"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "sensor-wire"));
  state("pulse-width", DEAD "ask-module=good\nsensor-pins=undecided\n");
  ck_assert(lists(OHM_FIELD_SUSPECTS, "sensor"));
}
END_TEST

START_TEST(only_what_is_left_is_the_module)
{
  STATE_IS("pulse-width", DEAD "ask-module=good\nmodule-heat=80\nsensor-end=within\n", "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "reading");
  ck_assert_ptr_nonnull(strstr(text(OHM_FIELD_BUY, 0), "engine module: last of all"));
}
END_TEST

static void check_sensor(const char *display, const char *at, int place) {
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  oc_meter meter = OC_METER_INIT;
  oc_check check = OC_CHECK_INIT;
  oc_reading reading;
  oc_reference reference;
  finding = finding_new();
  check.place = place;
  ck_assert_int_eq(oc_reading_read(display, &reading, NULL), OHM_OK);
  ck_assert_int_eq(oc_meter_read("exact", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_leads_read("exact", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_reference_read(at, &reference, NULL), OHM_OK);
  ck_assert_int_eq(oc_bath_check(sensor, &reading, &meter, &reference, &check, &finding), OHM_OK);
  ohm_sensor_free(sensor);
}

static const char *line_of_finding(const char *name) {
  static char line[64];
  ohm_circuit *circuit = load(name);
  line[0] = '\0';
  size_t length = oc_isolation_print_finding(circuit, &finding, line, sizeof line);
  ck_assert_uint_eq(length, strlen(line));
  ohm_circuit_free(circuit);
  return line;
}

START_TEST(a_finding_says_what_it_could_see)
{
  check_sensor("198.0", "97C+-0.1", OHM_PLACE_SENSOR);
  ck_assert_str_eq(line_of_finding("pulse-width"), "sensor-pins=within\n");
  ck_assert_str_eq(line_of_finding("radiator-switch"), "");
  check_sensor("198.0", "97C+-0.1", OHM_PLACE_MODULE);
  ck_assert_str_eq(line_of_finding("pulse-width"), "sensor-end=within\n");
  check_sensor("2450", "20C+-0.1", OHM_PLACE_SENSOR);
  ck_assert_str_eq(line_of_finding("pulse-width"), "sensor-pins=undecided\n");
  check_sensor("400.0", "97C+-0.1", OHM_PLACE_SENSOR);
  ck_assert_str_eq(line_of_finding("pulse-width"), "sensor-pins=outside\n");
  check_sensor("198.0", "97C+-0.1", OHM_PLACE_NOT_TOLD);
  ck_assert_str_eq(line_of_finding("pulse-width"), "");
  ck_assert_uint_eq(oc_isolation_print_finding(NULL, &finding, NULL, 0), 0);
  ck_assert_str_eq(line_of_finding("pulse-width"), "");
}
END_TEST

/* ---- numbers ---- */

START_TEST(volt_drops_wait_for_the_current)
{
  state("radiator-switch", DEAD "feed-drop=0.2\n");
  ck_assert(!lists(OHM_FIELD_CLEARED, "feed"));
  state("radiator-switch", DEAD "feed-drop=0.2\namps=9.5\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "feed"));
  STATE_IS("radiator-switch",
           DEAD "amps=4.0\nground-drop=0.5\nground-point=renewed\nstarts=bad\n"
                "point-bulb=good\namps=4.0\nground-drop=0.5\n",
           "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "ground");
  state("radiator-switch", DEAD "fuse-mv=18mV@ATO30\nfeed-drop=0.1\n");
  ck_assert(lists(OHM_FIELD_CLEARED, "feed"));
  ck_assert(ohm_finding_number(&finding, OHM_FIELD_FUSE_AMPERES) > 7);
}
END_TEST

START_TEST(drops_and_motor_add_up_to_the_battery_or_contradict)
{
  STATE_IS("radiator-switch",
           DEAD "amps=9.5\npost-volts=12.6\nfeed-drop=0.2\nfan-volts=12.2\nground-drop=0.05\n",
           "go_on");
  STATE_IS("radiator-switch",
           DEAD "amps=9.5\npost-volts=12.6\nfeed-drop=0.2\nfan-volts=11.0\nground-drop=0.05\n",
           "contradiction");
  ck_assert(lists(OHM_FIELD_CONTRADICTION, "fan-volts"));
  ck_assert(lists(OHM_FIELD_CONTRADICTION, "post-volts"));
  ck_assert(!lists(OHM_FIELD_CLEARED, "feed"));
}
END_TEST

START_TEST(a_contradiction_names_its_tests)
{
  STATE_IS("radiator-switch", DEAD "jump=good\ndirect=bad\n", "contradiction");
  ck_assert(lists(OHM_FIELD_CONTRADICTION, "jump"));
  ck_assert(lists(OHM_FIELD_CONTRADICTION, "direct"));
  ck_assert_uint_eq(count(OHM_FIELD_CONTRADICTION), 2);
  STATE_IS("radiator-switch", DEAD "jump=good\ndirect=bad\ndirect=good\n", "go_on");
}
END_TEST

/* ---- a fuse that blows, fans in series ---- */

START_TEST(a_new_fuse_that_blows_is_asked_again_with_the_fan_off)
{
  static const char blown[] = DEAD "fuse-look=bad\nfuse=renewed\nstarts=bad\nfuse-holds=bad\n";
  char record[1024];
  strcat(strcpy(record, blown), "fuse-holds-off=good\n");
  STATE_IS("radiator-switch", record, "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "motor");
  strcat(strcpy(record, blown), "fuse-holds-off=bad\n");
  STATE_IS("radiator-switch", record, "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "chafe");
}
END_TEST

START_TEST(one_open_motor_in_series_is_bridged_to_look_for_a_second_fault)
{
  static const char dead[] =
      "starts-low=bad\nstarts-high-1=bad\nstarts-high-2=good\ncoolant-level=good\nstanding=good\n"
      "battery-volts=12.4\nhoses=good\nengine-heat=103\ndirect-1=bad\n";
  char record[1024];
  STATE_IS("series-parallel", dead, "found");
  ck_assert_str_eq(text(OHM_FIELD_FAULTY, 0), "motor-1");
  ck_assert_str_eq(text(OHM_FIELD_NEXT, 0), "bridged-1");
  strcat(strcpy(record, dead), "bridged-1=bad\n");
  STATE_IS("series-parallel", record, "go_on");
  ck_assert(lists(OHM_FIELD_FAULTY, "motor-1"));
  ck_assert(lists(OHM_FIELD_SUSPECTS, "rest"));
}
END_TEST

/* ---- properties ---- */

START_TEST(the_order_of_good_tests_does_not_matter)
{
  state("radiator-switch", DEAD "click=good\nlit=good\n");
  ohm_finding first = finding;
  state("radiator-switch", DEAD "lit=good\nclick=good\n");
  for (size_t i = 0; i < 40; i++) {
    const char *one = ohm_finding_text(&first, OHM_FIELD_CLEARED, i);
    ck_assert_str_eq(text(OHM_FIELD_CLEARED, i), one ? one : "");
  }
}
END_TEST

START_TEST(without_odds_the_logic_is_the_same)
{
  static const char record[] = DEAD "click=good\njump=bad\nminus-bulb=good\n";
  ohm_circuit *circuit = load("radiator-switch");
  size_t size = ohm_circuit_print(circuit, NULL, 0) + 1;
  char *file = malloc(size);
  ohm_circuit_print(circuit, file, size);
  for (char *at = file; (at = strstr(at, ",0.0")); at++)
    memmove(at + 1, at + 5, strlen(at + 5) + 1);
  ohm_circuit *bare = ohm_circuit_parse(file, strlen(file), "bare", NULL);
  ck_assert_ptr_nonnull(bare);
  ohm_finding other = finding_new();
  ck_assert_int_eq(oc_isolation_judge(bare, record, sizeof record - 1, &other, NULL), OHM_OK);
  state("radiator-switch", record);
  for (size_t i = 0; i < count(OHM_FIELD_CLEARED); i++)
    ck_assert_str_eq(text(OHM_FIELD_CLEARED, i), ohm_finding_text(&other, OHM_FIELD_CLEARED, i));
  size_t suspects = count(OHM_FIELD_SUSPECTS);
  ck_assert_ptr_nonnull(ohm_finding_text(&other, OHM_FIELD_SUSPECTS, suspects - 1));
  ck_assert_ptr_null(ohm_finding_text(&other, OHM_FIELD_SUSPECTS, suspects));
  free(file);
  ohm_circuit_free(bare);
  ohm_circuit_free(circuit);
}
END_TEST

START_TEST(statuses_are_those_the_header_names)
{
  ohm_circuit *circuit = load("pulse-width");
  ohm_error error;
  char many[513 * 11 + 1] = "";
  finding = finding_new();
  for (int i = 0; i < 513; i++)
    strcat(many, "starts=bad\n");
  PROVOKES(oc_isolation_judge, OHM_NULL_ARGUMENT,
           oc_isolation_judge(NULL, "", 0, &finding, &error));
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_STATE, 0));
  PROVOKES(oc_isolation_judge, OHM_NULL_ARGUMENT, oc_isolation_judge(circuit, "", 0, NULL, &error));
  PROVOKES(oc_isolation_judge, OHM_NULL_ARGUMENT,
           oc_isolation_judge(circuit, NULL, 1, &finding, &error));
  PROVOKES(oc_isolation_judge, OHM_OK, oc_isolation_judge(circuit, NULL, 0, &finding, &error));
  PROVOKES(oc_isolation_judge, OHM_BAD_SYNTAX,
           oc_isolation_judge(circuit, "x", 1, &finding, &error));
  PROVOKES(oc_isolation_judge, OHM_NOT_FOUND,
           oc_isolation_judge(circuit, "x=y", 3, &finding, &error));
  PROVOKES(oc_isolation_judge, OHM_BAD_DEFINITION,
           oc_isolation_judge(circuit, "circuit=x", 9, &finding, &error));
  PROVOKES(oc_isolation_judge, OHM_TOO_LARGE,
           oc_isolation_judge(circuit, many, strlen(many), &finding, &error));
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_STATE, 0));
  ohm_circuit_free(circuit);
}
END_TEST

static ohm_status told(const char *reading) {
  ohm_error error = {0};
  ohm_circuit *circuit = load("pulse-width");
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_status status = ohm_bench_read(bench, reading, NULL, &error);
  ohm_bench_use_circuit(bench, circuit);
  ohm_answer *answer = status == OHM_OK ? ohm_bench_isolate(bench, &error) : NULL;
  ck_assert(!answer == (error.message[0] != 0));
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
  return (ohm_status)error.status;
}

START_TEST(a_bench_with_a_circuit_is_asked_or_told_what_is_wrong)
{
  PROVOKES(ohm_bench_isolate, OHM_OK, told("starts=bad"));
  PROVOKES(ohm_bench_isolate, OHM_NOT_FOUND, told("nothing=bad"));
  PROVOKES(ohm_bench_isolate, OHM_BAD_SYNTAX, told("starts=perhaps"));
  PROVOKES(ohm_bench_isolate, OHM_BAD_DEFINITION, told("circuit=radiator-switch"));
}
END_TEST

/* ---- the screen ---- */

static void check_screen(const char *name, const char *record, const char *words) {
  char screen[4096];
  state(name, record);
  size_t length = ohm_finding_print_report(&finding, screen, sizeof screen);
  ck_assert_uint_lt(length, sizeof screen);
  ck_assert_msg(strstr(screen, words) != NULL, "%s", screen);
  size_t lines = 0;
  for (const char *line = screen; *line; line += strcspn(line, "\n") + 1) {
    ck_assert_msg(strcspn(line, "\n") <= 80, "%s", line);
    lines++;
  }
  ck_assert_msg(lines <= 16, "%s", screen);
  ck_assert_msg(strncmp(screen, "CAUTION", 7) == 0 || strncmp(screen, "STOP", 4) == 0, "%s",
                screen);
}

START_TEST(the_screen_says_what_stands)
{
  check_screen("radiator-switch", "", "CANNOT TELL YET");
  check_screen("radiator-switch", "starts=good\n", "NOTHING TO BUY");
  check_screen("radiator-switch", "starts=bad\nstanding=bad\n", "NOT ASKED YET");
  check_screen("radiator-switch", "starts=bad\ncoolant-level=good\nstanding=good\n",
               "Good is     11 V or more, the instrument within 1%+0.02");
  check_screen("radiator-switch", DEAD "fuse-look=bad\n", "BUY fan fuse");
  check_screen("radiator-switch", "starts=bad\ncoolant-level=bad\n", "REPAIR coolant");
  check_screen("radiator-switch", DEAD "fuse-look=bad\nfuse=renewed\nstarts=good\n", "CLOSED");
  check_screen("radiator-switch", DEAD "jump=good\ndirect=bad\n", "do not go together");
  check_screen("radiator-switch", "engine-heat=120\n", "STOP        Engine off now");
  check_screen("radiator-switch", "starts=skip\n", "say whether the fan starts");
  check_screen("radiator-switch", DEAD "fuse-mv=18mV@ATO30\n", "A, by the millivolts over it");
  check_screen("series-parallel",
               "starts-low=bad\nstarts-high-1=bad\nstarts-high-2=good\ncoolant-level=good\n"
               "standing=good\nbattery-volts=12.4\nhoses=good\nengine-heat=103\ndirect-1=bad\n",
               "Before that bridged-1");
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "isolation", first_of_all_does_the_fan_start, a_fan_that_starts_needs_nothing,
      then_whether_it_was_ever_asked_for, what_was_not_asked_for_is_no_fault,
      low_coolant_is_a_repair_before_anything_is_bought, a_gauge_far_above_the_fan_stops_the_engine,
      one_bad_look_at_a_fuse_finds_it, it_is_not_closed_until_the_fan_has_started_by_itself,
      a_second_fault_shows_after_the_first_is_renewed, two_fans_may_be_dead_for_two_reasons,
      what_shows_without_load_clears_no_power_link,
      a_click_clears_the_coil_side_and_never_the_contact,
      an_identical_relay_that_helps_condemns_the_old_one,
      a_fan_still_dead_with_the_sensor_off_tells_nothing_unless_the_maker_states_it,
      a_tool_that_is_not_to_be_had_is_not_asked_for,
      without_a_thermometer_the_tests_go_on_as_if_it_was_hot, a_skipped_test_is_not_asked_for_again,
      a_sensor_within_leaves_its_plug_and_wires, only_what_is_left_is_the_module,
      a_finding_says_what_it_could_see, volt_drops_wait_for_the_current,
      drops_and_motor_add_up_to_the_battery_or_contradict, a_contradiction_names_its_tests,
      a_new_fuse_that_blows_is_asked_again_with_the_fan_off,
      one_open_motor_in_series_is_bridged_to_look_for_a_second_fault,
      the_order_of_good_tests_does_not_matter, without_odds_the_logic_is_the_same,
      statuses_are_those_the_header_names, a_bench_with_a_circuit_is_asked_or_told_what_is_wrong,
      the_screen_says_what_stands);
}
