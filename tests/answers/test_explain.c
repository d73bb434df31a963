/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/explain.h"

#include <stdio.h>
#include <string.h>

enum { MOST = 16, SHELF_MAX = 64 };

static const char flat[] = "# name: flat\n# tolerance: 5 %\n# range: -40 to 150 C\n"
                           "# model: beta\n# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

/* ---- the bench ---- */

struct bench {
  size_t count;
  oc_reading readings[MOST + 1];
  oc_reference references[MOST + 1];
  oc_check check;
};

struct answer {
  ohm_finding each[OC_EXPLANATIONS];
  ohm_finding finding;
};

/* Readings and temperatures in turn: "2.31k", "21.5C". */
static struct bench bench_of(size_t words, const char *const *typed) {
  struct bench bench = {.count = words / 2, .check = OC_CHECK_INIT};
  for (size_t i = 0; i < bench.count; i++) {
    ck_assert_int_eq(oc_reading_read(typed[2 * i], &bench.readings[i], NULL), OHM_OK);
    ck_assert_int_eq(oc_reference_read(typed[2 * i + 1], &bench.references[i], NULL), OHM_OK);
  }
  return bench;
}

#define BENCH(...)                                                                                 \
  bench_of(sizeof(const char *[]){__VA_ARGS__} / sizeof(const char *),                             \
           (const char *const[]){__VA_ARGS__})

static struct answer answer_new(void) {
  struct answer answer = {.finding = finding_new()};
  findings_begin(answer.each, OC_EXPLANATIONS);
  return answer;
}

static ohm_status run(const ohm_sensor *sensor, const ohm_sensor *const *others, size_t count,
                      const struct bench *bench, struct answer *answer) {
  return oc_explain(sensor, others, count, bench->readings, bench->references, bench->count, NULL,
                    &bench->check, answer->each, &answer->finding);
}

static struct answer explained(const char *name, struct bench bench) {
  struct answer answer = answer_new();
  ohm_sensor *sensor = strchr(name, '\n') ? sensor_of(name) : sensor_built_in(name);
  PROVOKES(oc_explain, OHM_OK, run(sensor, NULL, 0, &bench, &answer));
  ohm_sensor_free(sensor);
  return answer;
}

static struct answer explained_among_all(const char *name, struct bench bench) {
  struct answer answer = answer_new();
  const ohm_sensor *shelf[SHELF_MAX];
  size_t count = ohm_sensor_built_in_count();
  ck_assert(count <= SHELF_MAX);
  for (size_t i = 0; i < count; i++)
    shelf[i] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
  ohm_sensor *sensor = sensor_built_in(name);
  ck_assert_int_eq(run(sensor, shelf, count, &bench, &answer), OHM_OK);
  ohm_sensor_free(sensor);
  for (size_t i = 0; i < count; i++)
    ohm_sensor_free((ohm_sensor *)shelf[i]);
  return answer;
}

static double of(const struct answer *answer, ohm_explanation explanation, ohm_field field) {
  return number_in(&answer->each[explanation], field);
}

static bool leads(const struct answer *answer, ohm_explanation explanation) {
  return of(answer, explanation, OHM_FIELD_LEADING) == 1;
}

static const char *line_of(const struct answer *answer, ohm_explanation explanation) {
  return report_of(&answer->each[explanation]);
}

/* ---- bad values ---- */

static void check_absent(const struct answer *answer) {
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert(isnan(number_in(&answer->finding, (ohm_field)i)));
    ck_assert_ptr_null(ohm_finding_text(&answer->finding, i, 0));
    for (int j = 0; j < OC_EXPLANATIONS; j++)
      ck_assert_ptr_null(ohm_finding_text(&answer->each[j], i, 0));
  }
}

START_TEST(every_pointer_but_others_meter_and_check_is_required)
{
  struct bench bench = BENCH("2.31k", "21.5C");
  struct answer answer;
  ohm_sensor *sensor = sensor_of(flat);
  const ohm_sensor *const none = NULL;
  findings_stale(answer.each, OC_EXPLANATIONS);
  findings_stale(&answer.finding, 1);
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT, run(NULL, NULL, 0, &bench, &answer));
  check_absent(&answer);
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT, run(sensor, NULL, 1, &bench, &answer));
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT, run(sensor, &none, 1, &bench, &answer));
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT,
           oc_explain(sensor, NULL, 0, NULL, bench.references, 1, NULL, NULL, answer.each,
                      &answer.finding));
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT,
           oc_explain(sensor, NULL, 0, bench.readings, NULL, 1, NULL, NULL, answer.each,
                      &answer.finding));
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT,
           oc_explain(sensor, NULL, 0, bench.readings, bench.references, 1, NULL, NULL, NULL,
                      &answer.finding));
  PROVOKES(oc_explain, OHM_NULL_ARGUMENT,
           oc_explain(sensor, NULL, 0, bench.readings, bench.references, 1, NULL, NULL, answer.each,
                      NULL));
  PROVOKES(oc_explain, OHM_OK,
           oc_explain(sensor, NULL, 0, bench.readings, bench.references, 1, NULL, NULL, answer.each,
                      &answer.finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_to_16_readings_are_explained)
{
  struct bench bench = BENCH("2.31k", "21.5C");
  struct answer answer = answer_new();
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 1; i <= MOST; i++) {
    bench.readings[i] = bench.readings[0];
    bench.references[i] = bench.references[0];
  }
  bench.count = 0;
  PROVOKES(oc_explain, OHM_BAD_ARGUMENT, run(sensor, NULL, 0, &bench, &answer));
  bench.count = MOST;
  PROVOKES(oc_explain, OHM_OK, run(sensor, NULL, 0, &bench, &answer));
  bench.count = MOST + 1;
  PROVOKES(oc_explain, OHM_TOO_LARGE, run(sensor, NULL, 0, &bench, &answer));
  check_absent(&answer);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_member_that_is_no_number_is_refused)
{
  struct bench bench = BENCH("2.31k", "21.5C");
  struct answer answer = answer_new();
  ohm_sensor *sensor = sensor_of(flat);
  bench.references[0].t_c = NAN;
  PROVOKES(oc_explain, OHM_BAD_ARGUMENT, run(sensor, NULL, 0, &bench, &answer));
  check_absent(&answer);
  bench = BENCH("2.31k", "21.5C");
  bench.check.level = 1.5;
  PROVOKES(oc_explain, OHM_OUT_OF_RANGE, run(sensor, NULL, 0, &bench, &answer));
  bench = BENCH("2.31k", "300C");
  PROVOKES(oc_explain, OHM_OUT_OF_RANGE, run(sensor, NULL, 0, &bench, &answer));
  check_absent(&answer);
  bench = BENCH("2.31k", "21.5C");
  bench.check.band = "nobody's";
  PROVOKES(oc_explain, OHM_NOT_FOUND, run(sensor, NULL, 0, &bench, &answer));
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- explanations ---- */

START_TEST(readings_of_a_healthy_sensor_are_explained_by_health_alone)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("2.31k", "21.5C", "185", "boil"));
  check_verdict(&answer.finding, OHM_WITHIN, "conforms");
  ck_assert(leads(&answer, OHM_EXPLANATION_HEALTHY));
  for (int i = OHM_EXPLANATION_HEALTHY + 1; i < OC_EXPLANATIONS; i++)
    ck_assert(!leads(&answer, (ohm_explanation)i));
  check_has(report_of(&answer.finding), "GOOD: the readings go with a healthy sensor");
  check_has(line_of(&answer, OHM_EXPLANATION_HEALTHY),
            "Healthy     the readings go with a good one");
}
END_TEST

START_TEST(fifty_ohm_in_the_plug_are_found_hot_and_named_with_what_they_do_to_the_fan)
{
  /* 2452 and 237 ohm of the nominal curve, and 50 more. */
  struct answer answer = explained("ntc-2k45-20c", BENCH("2.50k", "20C", "287", "90C"));
  ck_assert(leads(&answer, OHM_EXPLANATION_SERIES));
  ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_LOW_OHM) < 50);
  ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_HIGH_OHM) > 50);
  CHECK_NEAR(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_LATE_K), 11, 3);
  ck_assert(!leads(&answer, OHM_EXPLANATION_LEAKAGE));
  ck_assert(!leads(&answer, OHM_EXPLANATION_HEALTHY));
  check_has(line_of(&answer, OHM_EXPLANATION_SERIES), " in plug, pins or wire; the fan ");
  check_has(line_of(&answer, OHM_EXPLANATION_SERIES), " late");
}
END_TEST

START_TEST(one_reading_goes_with_every_fault_that_can_be_so_large_and_ranks_none)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("412", "80C"));
  check_verdict(&answer.finding, OHM_OUTSIDE, "several");
  ck_assert(leads(&answer, OHM_EXPLANATION_SERIES) && leads(&answer, OHM_EXPLANATION_DRIFT) &&
            leads(&answer, OHM_EXPLANATION_BETA_DRIFT));
  ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_P_FIT) == 1 &&
            of(&answer, OHM_EXPLANATION_DRIFT, OHM_FIELD_P_FIT) == 1);
  ck_assert(!leads(&answer, OHM_EXPLANATION_LEAKAGE));
  ck_assert_str_eq(ohm_finding_text(&answer.finding, OHM_FIELD_CANDIDATES, 0), "series");
  ck_assert_str_eq(ohm_finding_text(&answer.finding, OHM_FIELD_CANDIDATES, 1), "drift");
  check_has(report_of(&answer.finding), "NOT AS IT SHOULD BE; 3 things would explain");
}
END_TEST

START_TEST(the_further_reading_parts_what_one_does_not)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("412", "80C"));
  double at_c = number_in(&answer.finding, OHM_FIELD_SEPARATING_C);
  double series_ohm = of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_SEPARATING_OHM);
  ck_assert(fabs(at_c - 80) >= 15);
  ck_assert(fabs(log(of(&answer, OHM_EXPLANATION_DRIFT, OHM_FIELD_SEPARATING_OHM) / series_ohm)) >
            0.1);
  /* Take it as series resistance foretells it: drift is out. */
  char read[OHM_NUMBER_SIZE];
  char at[OHM_NUMBER_SIZE];
  snprintf(read, sizeof read, "%.4gohm", series_ohm);
  snprintf(at, sizeof at, "%gC", at_c);
  struct answer after = explained("ntc-2k45-20c", BENCH("412", "80C", read, at));
  ck_assert(leads(&after, OHM_EXPLANATION_SERIES));
  ck_assert(!leads(&after, OHM_EXPLANATION_DRIFT));
  check_has(report_of(&answer.finding), "C too, thermometer beside it");
}
END_TEST

START_TEST(two_readings_rank_the_best_fit_first)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("2.31k", "21.5C", "412", "80C"));
  const char *first = ohm_finding_text(&answer.finding, OHM_FIELD_CANDIDATES, 0);
  double best = 0;
  for (int i = 0; i < OC_EXPLANATIONS; i++)
    best = fmax(best, of(&answer, (ohm_explanation)i, OHM_FIELD_P_FIT));
  for (int i = 0; i < OC_EXPLANATIONS; i++)
    if (strcmp(first, ohm_finding_text(&answer.each[i], OHM_FIELD_EXPLANATION, 0)) == 0)
      ck_assert(of(&answer, (ohm_explanation)i, OHM_FIELD_P_FIT) == best);
}
END_TEST

START_TEST(a_size_that_cannot_be_negative_is_not)
{
  struct answer low = explained(flat, BENCH("1.00k", "20.0C+-0.1"));
  CHECK_NEAR(of(&low, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_OHM), 0, 0);
  CHECK_NEAR(of(&low, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_HIGH_OHM), 0, 0);
  struct answer high = explained(flat, BENCH("4.00k", "20.0C+-0.1"));
  ck_assert(isnan(of(&high, OHM_EXPLANATION_LEAKAGE, OHM_FIELD_FAULT_OHM)));
  ck_assert(!leads(&low, OHM_EXPLANATION_SERIES) && !leads(&high, OHM_EXPLANATION_LEAKAGE));
}
END_TEST

START_TEST(a_plug_left_on_is_a_question_before_any_blame)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("620", "20C"));
  check_verdict(&answer.finding, OHM_UNDECIDED, "plug_on");
  ck_assert(leads(&answer, OHM_EXPLANATION_PLUG_ON));
  check_has(report_of(&answer.finding), "is the plug off? With it on, a good one reads so");
  check_has(line_of(&answer, OHM_EXPLANATION_PLUG_ON),
            "a good one, and the plug left on: a module's ");
  struct bench at_pins = BENCH("620", "20C");
  at_pins.check.place = OHM_PLACE_SENSOR;
  answer = explained("ntc-2k45-20c", at_pins);
  ck_assert_int_eq(ohm_finding_verdict(&answer.finding), OHM_OUTSIDE);
  ck_assert(!leads(&answer, OHM_EXPLANATION_PLUG_ON));
}
END_TEST

START_TEST(another_part_is_named_by_what_it_reads_like)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("3.5k", "20C", "177", "boil"));
  check_verdict(&answer.finding, OHM_OUTSIDE, "one");
  ck_assert(leads(&answer, OHM_EXPLANATION_OTHER_PART));
  ck_assert_str_eq(ohm_finding_text(&answer.each[OHM_EXPLANATION_OTHER_PART], OHM_FIELD_SENSOR, 0),
                   "ntc-3k5-20c");
  check_has(line_of(&answer, OHM_EXPLANATION_OTHER_PART), "it reads like ntc-3k5-20c");
  check_has(report_of(&answer.finding), "compare the part number");
}
END_TEST

/* The fan starts where the other part, a half percent off, reads what the module waits for. */
START_TEST(another_part_starts_the_fan_where_it_reads_what_the_module_waits_for)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("3.5k", "20C", "177", "boil"));
  ohm_sensor *expected = sensor_built_in("ntc-2k45-20c");
  ohm_sensor *fitted = sensor_built_in("ntc-3k5-20c");
  double waited_ohm, late_k = of(&answer, OHM_EXPLANATION_OTHER_PART, OHM_FIELD_FAULT_LATE_K);
  ohm_curve_resistance(ohm_sensor_curve(expected), 97, &waited_ohm);
  CHECK_NEAR(oc_curve_resistance_beyond(ohm_sensor_curve(fitted), 97 + late_k), waited_ohm,
             0.005 * waited_ohm);
  double low_c = of(&answer, OHM_EXPLANATION_OTHER_PART, OHM_FIELD_START_LOW_C);
  double high_c = of(&answer, OHM_EXPLANATION_OTHER_PART, OHM_FIELD_START_HIGH_C);
  ck_assert(low_c < 97 + late_k && 97 + late_k < high_c);
  ohm_sensor_free(expected);
  ohm_sensor_free(fitted);
}
END_TEST

START_TEST(what_makes_the_fan_early_whichever_it_is_is_not_what_keeps_it_off)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("1.9k", "21.5C", "150", "boil"));
  ck_assert_ptr_nonnull(ohm_finding_text(&answer.finding, OHM_FIELD_CANDIDATES, 1));
  ck_assert(number_in(&answer.finding, OHM_FIELD_START_HIGH_C) < 97);
  check_has(report_of(&answer.finding), "whichever it is");
  check_has(report_of(&answer.finding), "keeps the fan off");
}
END_TEST

START_TEST(what_makes_the_fan_late_whichever_it_is_is_said_to)
{
  struct answer answer = explained(flat, BENCH("300", "boil"));
  ck_assert(number_in(&answer.finding, OHM_FIELD_START_LOW_C) > 97 + 5);
  check_has(report_of(&answer.finding), "whichever it is");
  ck_assert_ptr_null(strstr(report_of(&answer.finding), "keeps the fan off"));
}
END_TEST

START_TEST(nothing_is_said_of_the_fan_when_what_leads_moves_it_either_way)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("3.4k", "21.5C"));
  ck_assert(leads(&answer, OHM_EXPLANATION_SERIES));
  ck_assert(leads(&answer, OHM_EXPLANATION_OTHER_PART));
  ck_assert_ptr_null(strstr(report_of(&answer.finding), "whichever it is"));
}
END_TEST

/* Twenty kilohm across it and 60 ohm before it read 2127 ohm at 21.5 C: then it is 13.8 C late. */
START_TEST(of_the_fan_nothing_is_said_where_it_was_read_cold)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("1.7k", "21.5C"));
  ck_assert_ptr_nonnull(ohm_finding_text(&answer.finding, OHM_FIELD_CANDIDATES, 1));
  ck_assert(isnan(number_in(&answer.finding, OHM_FIELD_START_HIGH_C)));
  ck_assert_ptr_null(strstr(report_of(&answer.finding), "whichever it is"));
}
END_TEST

START_TEST(of_the_fan_nothing_is_said_where_the_plug_may_be_on)
{
  struct answer answer = explained(flat, BENCH("230.0", "85C"));
  ck_assert(leads(&answer, OHM_EXPLANATION_PLUG_ON));
  ck_assert(isnan(of(&answer, OHM_EXPLANATION_PLUG_ON, OHM_FIELD_START_LOW_C)));
  ck_assert_ptr_null(strstr(report_of(&answer.finding), "whichever it is"));
}
END_TEST

START_TEST(a_display_near_what_the_leads_have_is_not_healthy)
{
  struct answer answer = explained(flat, BENCH("0.322", "80C"));
  check_verdict(&answer.finding, OHM_UNDECIDED, "missing_k");
  CHECK_NEAR(number_in(&answer.finding, OHM_FIELD_SUGGESTED_OHM), 322, 1e-9);
  struct answer sound = explained(flat, BENCH("300.1", "80C"));
  ck_assert(!leads(&sound, OHM_EXPLANATION_WRONG_RANGE));
}
END_TEST

START_TEST(a_gauge_sender_is_said_to_be_one)
{
  /* The 160 ohm at 60 C sender of the catalogue: 160 and 67.6 ohm at 60 and 85 C. */
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("160ohm", "60C", "67.6", "85C"));
  ck_assert(leads(&answer, OHM_EXPLANATION_OTHER_PART));
  check_has(line_of(&answer, OHM_EXPLANATION_OTHER_PART), "a gauge's sender");
  check_has(line_of(&answer, OHM_EXPLANATION_OTHER_PART), "asks for no fan");
}
END_TEST

START_TEST(a_forgotten_k_is_a_question)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("2.31", "20C"));
  check_verdict(&answer.finding, OHM_UNDECIDED, "missing_k");
  CHECK_NEAR(number_in(&answer.finding, OHM_FIELD_SUGGESTED_OHM), 2310, 1e-9);
  check_has(report_of(&answer.finding), "did you mean 2.31 k?");
}
END_TEST

START_TEST(degrees_that_were_fahrenheit_are_a_question)
{
  struct answer answer = explained("ntc-2k45-20c", BENCH("2.45k", "68C", "191", "boil"));
  check_verdict(&answer.finding, OHM_UNDECIDED, "fahrenheit");
  CHECK_NEAR(of(&answer, OHM_EXPLANATION_FAHRENHEIT, OHM_FIELD_AT_C), 20, 1e-9);
  check_has(line_of(&answer, OHM_EXPLANATION_FAHRENHEIT), "then it was 20.0 C");
  check_has(report_of(&answer.finding), "were those degrees Fahrenheit?");
  struct answer one = explained("ntc-2k45-20c", BENCH("2.45k", "68C"));
  check_verdict(&one.finding, OHM_UNDECIDED, "fahrenheit");
  ck_assert(leads(&one, OHM_EXPLANATION_SERIES));
  struct answer told = explained("ntc-2k45-20c", BENCH("2.45k", "154.4F"));
  ck_assert(!leads(&told, OHM_EXPLANATION_FAHRENHEIT));
}
END_TEST

START_TEST(baths_and_readings_below_ice_were_not_read_in_fahrenheit)
{
  struct answer baths = explained("ntc-2k45-20c", BENCH("9.0k", "ice", "250", "boil"));
  ck_assert(!leads(&baths, OHM_EXPLANATION_FAHRENHEIT));
  struct answer frost = explained("ntc-2k45-20c", BENCH("7.5k", "21C"));
  ck_assert(!leads(&frost, OHM_EXPLANATION_FAHRENHEIT));
}
END_TEST

START_TEST(displays_without_a_number_are_answered)
{
  struct answer open = explained("ntc-2k45-20c", BENCH("open", "20C"));
  check_verdict(&open.finding, OHM_OUTSIDE, "open");
  check_has(report_of(&open.finding), "radiator fan switch");
  struct answer over = explained("ntc-2k45-20c", BENCH("OL", "20C"));
  check_verdict(&over.finding, OHM_UNDECIDED, "over_range");
  struct answer one = explained("ntc-2k45-20c", BENCH("1", "20C"));
  check_verdict(&one.finding, OHM_UNDECIDED, "lone_one");
  check_has(report_of(&one.finding), "if it was 1 ohm, type 1.0");
  struct answer shorted = explained("ntc-2k45-20c", BENCH("0.00", "20C"));
  check_verdict(&shorted.finding, OHM_OUTSIDE, "shorted");
  check_has(line_of(&shorted, OHM_EXPLANATION_SHORT), "next to 0 ohm");
}
END_TEST

START_TEST(readings_that_no_fault_explains_are_said_so)
{
  struct answer answer = explained(flat, BENCH("9.00k", "20C", "30.0", "80C", "3.00k", "90C"));
  check_verdict(&answer.finding, OHM_OUTSIDE, "none");
  check_has(report_of(&answer.finding), "no single fault explains it");
}
END_TEST

START_TEST(lines_of_the_screen_are_no_wider_than_80_columns)
{
  struct answer answer = explained_among_all("ntc-2k45-20c", BENCH("600", "20C", "150", "80C"));
  for (int i = 0; i <= OC_EXPLANATIONS; i++) {
    const char *text =
        i < OC_EXPLANATIONS ? line_of(&answer, (ohm_explanation)i) : report_of(&answer.finding);
    for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
      ck_assert(strcspn(line, "\n") <= 80);
  }
}
END_TEST

/* ---- the fault table ---- */

/* What a sensor reads behind a fault, as tests/refs/fault.psv has it by degrees: two such
 * readings by an exact meter in an exact bath give the fault back. */
static struct answer read_behind(const ohm_sensor *sensor, double series_ohm, double leakage_ohm) {
  static const double at_c[] = {20, 100};
  struct bench bench = {.count = 2, .check = OC_CHECK_INIT};
  struct answer answer = answer_new();
  for (size_t i = 0; i < 2; i++) {
    struct scene scene = scene_exact(1, at_c[i]);
    double r_ohm;
    ohm_curve_resistance(ohm_sensor_curve(sensor), at_c[i], &r_ohm);
    bench.readings[i] = scene.reading;
    bench.readings[i].r_ohm =
        leakage_ohm > 0 ? 1 / (1 / r_ohm + 1 / leakage_ohm) : r_ohm + series_ohm;
    bench.references[i] = scene.reference;
  }
  struct scene exact = scene_exact(1, 20);
  ck_assert_int_eq(oc_explain(sensor, NULL, 0, bench.readings, bench.references, 2, &exact.meter,
                              &bench.check, answer.each, &answer.finding),
                   OHM_OK);
  return answer;
}

START_TEST(every_fault_of_the_fault_table_is_found_with_its_size)
{
  static const char *const names[] = {"ntc-2k45-20c", "ntc-3k5-20c", "ntc-37k-20c"};
  static const double series_ohm[] = {50, 100, 500};
  static const double leakage_ohm[] = {1e3, 1e4, 1e5};
  ohm_sensor *sensor = sensor_built_in(names[_i]);
  for (size_t i = 0; i < 3; i++) {
    struct answer answer = read_behind(sensor, series_ohm[i], 0);
    ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_P_FIT) >= 0.05);
    ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_LOW_OHM) <= series_ohm[i]);
    ck_assert(of(&answer, OHM_EXPLANATION_SERIES, OHM_FIELD_FAULT_HIGH_OHM) >= series_ohm[i]);
    answer = read_behind(sensor, 0, leakage_ohm[i]);
    double high_ohm = of(&answer, OHM_EXPLANATION_LEAKAGE, OHM_FIELD_FAULT_HIGH_OHM);
    ck_assert(of(&answer, OHM_EXPLANATION_LEAKAGE, OHM_FIELD_P_FIT) >= 0.05);
    ck_assert(of(&answer, OHM_EXPLANATION_LEAKAGE, OHM_FIELD_FAULT_LOW_OHM) <= leakage_ohm[i]);
    ck_assert(isnan(high_ohm) || high_ohm >= leakage_ohm[i]);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int bad = RUN_TESTS("bad values of explain", every_pointer_but_others_meter_and_check_is_required,
                      one_to_16_readings_are_explained, a_member_that_is_no_number_is_refused);
  int good = RUN_TESTS(
      "explain", readings_of_a_healthy_sensor_are_explained_by_health_alone,
      fifty_ohm_in_the_plug_are_found_hot_and_named_with_what_they_do_to_the_fan,
      one_reading_goes_with_every_fault_that_can_be_so_large_and_ranks_none,
      the_further_reading_parts_what_one_does_not, two_readings_rank_the_best_fit_first,
      a_size_that_cannot_be_negative_is_not, a_plug_left_on_is_a_question_before_any_blame,
      another_part_is_named_by_what_it_reads_like,
      another_part_starts_the_fan_where_it_reads_what_the_module_waits_for,
      what_makes_the_fan_early_whichever_it_is_is_not_what_keeps_it_off,
      what_makes_the_fan_late_whichever_it_is_is_said_to,
      nothing_is_said_of_the_fan_when_what_leads_moves_it_either_way,
      of_the_fan_nothing_is_said_where_it_was_read_cold,
      of_the_fan_nothing_is_said_where_the_plug_may_be_on,
      a_display_near_what_the_leads_have_is_not_healthy, a_gauge_sender_is_said_to_be_one,
      a_forgotten_k_is_a_question, degrees_that_were_fahrenheit_are_a_question,
      baths_and_readings_below_ice_were_not_read_in_fahrenheit,
      displays_without_a_number_are_answered, readings_that_no_fault_explains_are_said_so,
      lines_of_the_screen_are_no_wider_than_80_columns);
  int table = RUN_TESTS_FOR_EACH("the fault table", 3,
                                 every_fault_of_the_fault_table_is_found_with_its_size);
  return bad | good | table;
}
