/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/terminals.h"

#include <stdio.h>
#include <string.h>

enum { MOST = 16, SHELF_MAX = 64 };

static const ohm_sensor *shelf[SHELF_MAX];
static size_t shelf_count;

static void load_shelf(void) {
  shelf_count = ohm_sensor_built_in_count();
  for (size_t i = 0; i < shelf_count; i++)
    shelf[i] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
}

static void free_shelf(void) {
  for (size_t i = 0; i < shelf_count; i++)
    ohm_sensor_free((ohm_sensor *)shelf[i]);
}

/* ---- the bench ---- */

struct bench {
  size_t count;
  oc_pair pairs[MOST + 1];
  oc_reference reference;
  ohm_finding each[MOST + 1];
  ohm_finding finding;
};

static ohm_finding candidates[SHELF_MAX];

static struct bench bench_of(const char *at, size_t count, const char *const *typed) {
  struct bench bench = {.count = count, .finding = finding_new()};
  findings_begin(bench.each, MOST + 1);
  findings_begin(candidates, shelf_count);
  ck_assert_int_eq(oc_reference_read(at, &bench.reference, NULL), OHM_OK);
  for (size_t i = 0; i < count; i++)
    PROVOKES(oc_pair_read, OHM_OK, oc_pair_read(typed[i], &bench.pairs[i], NULL));
  return bench;
}

static ohm_status run(struct bench *bench) {
  return oc_pins_identify(shelf, shelf_count, bench->pairs, bench->count, &bench->reference, NULL,
                          NULL, bench->each, candidates, &bench->finding);
}

static struct bench answered(const char *at, size_t count, const char *const *typed) {
  struct bench bench = bench_of(at, count, typed);
  PROVOKES(oc_pins_identify, OHM_OK, run(&bench));
  return bench;
}

#define ANSWERED(at, ...)                                                                          \
  answered(at, sizeof(const char *[]){__VA_ARGS__} / sizeof(const char *),                         \
           (const char *const[]){__VA_ARGS__})

static const char *role(const struct bench *bench, size_t i) {
  return ohm_finding_text(&bench->each[i], OHM_FIELD_ROLE, 0);
}

static const char *text(const ohm_finding *finding, ohm_field field) {
  const char *found = ohm_finding_text(finding, (int)field, 0);
  return found ? found : "";
}

/* ---- bad values ---- */

START_TEST(bad_values_are_refused_and_leave_nothing)
{
  static const char *const typed[] = {"1-2=2.31k", "2-3=OL"};
  struct bench bench = bench_of("21.5C", 2, typed);
  PROVOKES(oc_pins_identify, OHM_NULL_ARGUMENT,
           oc_pins_identify(NULL, 1, bench.pairs, 2, &bench.reference, NULL, NULL, bench.each,
                            candidates, &bench.finding));
  PROVOKES(oc_pins_identify, OHM_NULL_ARGUMENT,
           oc_pins_identify(shelf, shelf_count, bench.pairs, 2, NULL, NULL, NULL, bench.each,
                            candidates, &bench.finding));
  bench.pairs[1] = bench.pairs[0];
  bench.pairs[1].from = bench.pairs[0].to;
  bench.pairs[1].to = bench.pairs[0].from;
  PROVOKES(oc_pins_identify, OHM_BAD_ARGUMENT, run(&bench));
  ck_assert_ptr_null(ohm_finding_text(&bench.finding, OHM_FIELD_ABOUT, 0));
  bench.pairs[1].to = 99;
  PROVOKES(oc_pins_identify, OHM_OUT_OF_RANGE, run(&bench));
  bench.count = 0;
  PROVOKES(oc_pins_identify, OHM_BAD_ARGUMENT, run(&bench));
  bench.count = MOST + 1;
  PROVOKES(oc_pins_identify, OHM_TOO_LARGE, run(&bench));
  bench = bench_of("21.5C", 2, typed);
  bench.reference.t_c = NAN;
  PROVOKES(oc_pins_identify, OHM_BAD_ARGUMENT, run(&bench));
  ck_assert_ptr_null(ohm_finding_text(&bench.each[0], OHM_FIELD_ABOUT, 0));
}
END_TEST

/* ---- bodies ---- */

/* Kawasaki Z750 service manual, 16-76: the module's element on 1 and 3 (2.46 k at 20 C),
 * the gauge's from 2 to the body (210 ohm at 50 C). */
START_TEST(three_pins_have_the_module_on_two_and_the_gauge_to_the_body)
{
  struct bench bench =
      ANSWERED("50C", "1-3=810", "1-2=OL", "2-3=OL", "2-body=210ohm", "1-body=OL", "3-body=OL");
  ck_assert_str_eq(role(&bench, 0), "module");
  ck_assert_str_eq(role(&bench, 3), "gauge");
  ck_assert_str_eq(role(&bench, 1), "none");
  check_verdict(&bench.finding, OHM_WITHIN, "one");
  ck_assert_str_eq(text(&bench.finding, OHM_FIELD_PAIR), "1-3");
  ck_assert_str_eq(text(&bench.finding, OHM_FIELD_GAUGE_PAIR), "2-body");
  check_has(report_of(&bench.finding), "FOUND: the module's element is on 1-3");
  check_has(report_of(&bench.each[3]), "the gauge's: it asks for no fan");
}
END_TEST

/* Two elements that share a pin: the pair of the other two reads their sum. */
START_TEST(a_pair_across_two_elements_is_the_wrong_pair)
{
  struct bench bench = ANSWERED("50C", "A-B=810", "B-C=210ohm", "A-C=1.02k");
  ck_assert_str_eq(role(&bench, 0), "module");
  ck_assert_str_eq(role(&bench, 1), "gauge");
  ck_assert_str_eq(role(&bench, 2), "both");
  check_verdict(&bench.finding, OHM_WITHIN, "one");
  check_has(report_of(&bench.each[2]), "the wrong pair: two elements, one behind the other");
  struct bench apart = ANSWERED("50C", "A-B=810", "B-C=210ohm", "A-C=1.30k");
  ck_assert_str_ne(role(&apart, 2), "both");
}
END_TEST

/* The order of the pairs, and of their pins, does not matter. */
START_TEST(pairs_are_the_same_in_any_order)
{
  struct bench one = ANSWERED("50C", "A-B=810", "B-C=210ohm", "A-C=1.02k");
  struct bench other = ANSWERED("50C", "C-A=1.02k", "C-B=210ohm", "B-A=810");
  for (size_t i = 0; i < 3; i++)
    ck_assert_str_eq(role(&one, i), role(&other, 2 - i));
}
END_TEST

START_TEST(a_sender_that_reads_more_to_battery_negative_has_a_bad_ground)
{
  struct bench good = ANSWERED("60C", "1-body=160.0", "1-minus=160.2");
  ck_assert_str_eq(role(&good, 0), "gauge");
  ck_assert_str_eq(role(&good, 1), "ground");
  check_has(report_of(&good.finding), "GOOD: the body and battery negative read the same");
  struct bench bad = ANSWERED("60C", "1-body=160.0", "1-minus=172.0");
  CHECK_NEAR(number_in(&bad.finding, OHM_FIELD_GROUND_OHM), 12, 1e-9);
  ck_assert(number_in(&bad.finding, OHM_FIELD_GROUND_LIMIT_OHM) < 1);
  check_has(report_of(&bad.finding), "BAD: 12 ohm between the body and battery negative");
  struct bench lost = ANSWERED("60C", "1-body=160.0", "1-minus=OL");
  check_has(report_of(&lost.finding), "BAD: the body has no way to battery negative");
}
END_TEST

START_TEST(bodies_without_a_modules_element_say_so)
{
  struct bench open = ANSWERED("20C", "1-2=OL", "1-3=open");
  check_verdict(&open.finding, OHM_OUTSIDE, "open");
  struct bench joined = ANSWERED("20C", "1-2=0.2", "1-3=OL");
  ck_assert_str_eq(role(&joined, 0), "joined");
  check_verdict(&joined.finding, OHM_OUTSIDE, "none");
  struct bench one = ANSWERED("20C", "1-2=1", "1-3=OL");
  ck_assert_str_eq(role(&one, 0), "ask");
  check_verdict(&one.finding, OHM_UNDECIDED, "lone_one");
  struct bench strange = ANSWERED("20C", "1-2=9.9");
  ck_assert_str_eq(role(&strange, 0), "unknown");
  check_verdict(&strange.finding, OHM_OUTSIDE, "none");
}
END_TEST

START_TEST(two_that_could_be_the_modules_stay_undecided)
{
  struct bench bench = ANSWERED("20C", "1-2=2.45k", "3-4=37.3k");
  check_verdict(&bench.finding, OHM_UNDECIDED, "several");
  ck_assert_ptr_null(ohm_finding_text(&bench.finding, OHM_FIELD_PAIR, 0));
  check_has(report_of(&bench.finding), "more than one pair may be the module's");
}
END_TEST

int main(void) {
  load_shelf();
  int failed = RUN_TESTS(
      "pins", bad_values_are_refused_and_leave_nothing,
      three_pins_have_the_module_on_two_and_the_gauge_to_the_body,
      a_pair_across_two_elements_is_the_wrong_pair, pairs_are_the_same_in_any_order,
      a_sender_that_reads_more_to_battery_negative_has_a_bad_ground,
      bodies_without_a_modules_element_say_so, two_that_could_be_the_modules_stay_undecided);
  free_shelf();
  return failed;
}
