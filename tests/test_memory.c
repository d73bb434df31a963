/* SPDX-License-Identifier: MIT */
/* Every allocation of the library fails once. The rooms are compiled to call the
 * allocator below in the place of the C library's. */
#include "support.h"
#include "../lib/evidence/meter.h"
#include "../lib/evidence/reference.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* ---- the allocator ---- */

void *failing_malloc(size_t size);
void *failing_calloc(size_t count, size_t size);
void *failing_realloc(void *block, size_t size);
void failing_free(void *block);

static size_t asked;  /* allocations since begin() */
static size_t living; /* blocks not given back */
static size_t first;  /* the first to fail, counted from 0 */
static size_t last;   /* the last to fail */

static void begin(size_t first_to_fail, size_t last_to_fail) {
  asked = 0;
  living = 0;
  first = first_to_fail;
  last = last_to_fail;
}

static void begin_without_failures(void) {
  begin(SIZE_MAX, 0);
}

static bool fails(void) {
  size_t index = asked++;
  return first <= index && index <= last;
}

static void *counted(void *block) {
  living += block != NULL;
  return block;
}

void *failing_malloc(size_t size) {
  return fails() ? NULL : counted(malloc(size));
}

void *failing_calloc(size_t count, size_t size) {
  return fails() ? NULL : counted(calloc(count, size));
}

void *failing_realloc(void *block, size_t size) {
  if (fails())
    return NULL;
  void *moved = realloc(block, size);
  return block ? moved : counted(moved);
}

void failing_free(void *block) {
  living -= block != NULL;
  free(block);
}

/* ---- what is built ---- */

static const char circuit_text[] =
    "# name: c\n# description: d\n# source: s\n# fan_c: none\n# fact told: so\n"
    "# balance: a = b\n# balance: none\n"
    "link,kind,part,action\nfuse,power,fuse,buy\nmotor,motor,fan,buy\n"
    "test,role,what,load,tool,minutes,unit,low,error,clears,accuses,needs,source\n"
    "s,symptom,starts,fan,eyes,1,,,,*,*,,cp\n"
    "a,,volts,fan,meter,1,V,9,1,fuse,fuse,,cp\n"
    "b,,volts,fan,meter,1,V,9,1,fuse,fuse,,cp\n"
    "c,,none,none,meter,1,,,,fuse,fuse,,cp\n"
    "d,,none,none,meter,1,,,,,fuse,c=good,cp\n";

static ohm_status of_circuit(ohm_circuit *circuit, const ohm_error *error) {
  ohm_circuit_free(circuit);
  return circuit ? OHM_OK : (ohm_status)error->status;
}

static ohm_status build_circuit(void) {
  ohm_error error;
  return of_circuit(ohm_circuit_parse(circuit_text, sizeof circuit_text - 1, "c", &error), &error);
}

static ohm_status build_loaded_circuit(void) {
  ohm_error error;
  char *path = source_path("tests/fuzz/corpus/circuit_file/nameless.csv");
  ohm_status status = of_circuit(ohm_circuit_load(path, &error), &error);
  (free)(path);
  return status;
}

static ohm_status build_built_in_circuit(void) {
  ohm_error error;
  return of_circuit(ohm_circuit_built_in_load("radiator-switch", &error), &error);
}

static const char table[] = "# name: t\n"
                            "# description: d\n"
                            "# source: s\n"
                            "# kind: module\n"
                            "# dissipation_mw_per_k: none\n"
                            "# band a: b\n"
                            "# band none: c\n"
                            "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm,flag,band\n"
                            "0,5000,,6600,,\n"
                            "20,,2450,,,\n"
                            "40,,1111,,suspect,\n"
                            "80,300,,340,,\n"
                            "20,2300,,2600,,a\n"
                            "20,2200,,2600,,d\n";

static ohm_status of_curve(ohm_curve *curve, const ohm_error *error) {
  ohm_curve_free(curve);
  return curve ? OHM_OK : (ohm_status)error->status;
}

static ohm_status of_sensor(ohm_sensor *sensor, const ohm_error *error) {
  ohm_sensor_free(sensor);
  return sensor ? OHM_OK : (ohm_status)error->status;
}

static ohm_status build_beta(void) {
  ohm_error error;
  return of_curve(ohm_curve_beta_new(10000, 25, 3950, -40, 125, &error), &error);
}

static ohm_status build_steinhart_hart(void) {
  ohm_error error;
  return of_curve(
      ohm_curve_steinhart_hart_new(1.129241e-3, 2.341077e-4, 8.775468e-8, -40, 125, &error),
      &error);
}

static ohm_status build_points(void) {
  static const double t_c[] = {0, 25, 50, 100};
  static const double r_ohm[] = {32650, 10000, 3603, 680};
  ohm_error error;
  return of_curve(ohm_curve_points_new(t_c, r_ohm, 4, &error), &error);
}

static ohm_status build_four_term(void) {
  ohm_error error;
  return of_curve(ohm_curve_four_term_new(10000, 3.354016e-3, 2.569850e-4, 2.620131e-6, 6.383091e-8,
                                          -40, 125, &error),
                  &error);
}

static ohm_status build_four_term_of_temperature(void) {
  ohm_error error;
  return of_curve(ohm_curve_four_term_of_temperature_new(10000, -14.6337, 4791.842, -115334,
                                                         -3.730535e6, -40, 125, &error),
                  &error);
}

static ohm_status build_platinum(void) {
  ohm_error error;
  return of_curve(ohm_curve_platinum_new(100, -200, 850, &error), &error);
}

static ohm_status build_silicon(void) {
  ohm_error error;
  return of_curve(ohm_curve_silicon_new(1000, 7.9e-3, 1.9e-5, -50, 150, &error), &error);
}

static ohm_status build_parsed(void) {
  ohm_error error;
  return of_sensor(ohm_sensor_parse(table, sizeof table - 1, "t", &error), &error);
}

static ohm_status build_loaded(void) {
  char *path = source_path("tests/sensors/ntc-2k5-at-20c-rover-820-measured.csv");
  ohm_error error;
  ohm_status status = of_sensor(ohm_sensor_load(path, &error), &error);
  free(path);
  return status;
}

static ohm_status build_from_catalogue(void) {
  ohm_error error;
  return of_sensor(ohm_sensor_built_in_load(ohm_sensor_built_in_name(0), &error), &error);
}

static ohm_fit *fit_of_three(ohm_error *error) {
  static const ohm_fit_point points[] = {
      {0, 32650, 0.1, 0}, {25, 10000, 0.1, 0}, {100, 680, 0.1, 0}};
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  request.model = OHM_FIT_STEINHART_HART;
  return ohm_curve_fit(points, 3, &request, error);
}

static ohm_status build_fit(void) {
  ohm_error error;
  ohm_fit *fit = fit_of_three(&error);
  ohm_fit_free(fit);
  return fit ? OHM_OK : (ohm_status)error.status;
}

static ohm_status build_fitted_sensor(void) {
  ohm_error error;
  ohm_fit *fit = fit_of_three(&error);
  if (!fit)
    return (ohm_status)error.status;
  ohm_status status = of_sensor(ohm_fit_sensor_new(fit, "t", &error), &error);
  ohm_fit_free(fit);
  return status;
}

static ohm_status build_audit(void) {
  static const char misprinted[] = "temp_c,r_nom_ohm\n0,32128\n10,19549\n20,12262\n25,9814\n"
                                   "30,7908\n40,5331\n50,3542\n";
  ohm_error error;
  ohm_audit *audit = ohm_audit_parse(misprinted, sizeof misprinted - 1, "t", &error);
  ohm_audit_free(audit);
  return audit ? OHM_OK : (ohm_status)error.status;
}

static ohm_status build_loaded_audit(void) {
  char *path = source_path("tests/sensors/ntc-3k4-at-20c-jeep-comanche-1991.csv");
  ohm_error error;
  ohm_audit *audit = ohm_audit_load(path, &error);
  free(path);
  ohm_audit_free(audit);
  return audit ? OHM_OK : (ohm_status)error.status;
}

static const char air[] = "hours,temp_c\n0,18\n4,9\n8,7\n";

static ohm_status of_history(ohm_history *history, const ohm_error *error) {
  ohm_history_free(history);
  return history ? OHM_OK : (ohm_status)error->status;
}

static ohm_status build_history(void) {
  static const double after_h[] = {0, 4, 8};
  static const double t_c[] = {18, 9, 7};
  ohm_error error;
  return of_history(ohm_history_new(after_h, t_c, 3, &error), &error);
}

static ohm_status build_parsed_history(void) {
  ohm_error error;
  return of_history(ohm_history_parse(air, sizeof air - 1, "air", &error), &error);
}

static ohm_status build_loaded_history(void) {
  char *path = source_path("tests/fuzz/corpus/history/clock");
  ohm_error error;
  ohm_status status = of_history(ohm_history_load(path, &error), &error);
  free(path);
  return status;
}

/* The status of a build in which one allocation fails, or it and all after it: the
 * same whichever it is, and nothing is left behind. */
static ohm_status every_failure(ohm_status (*build)(void)) {
  begin_without_failures();
  ck_assert_int_eq(build(), OHM_OK);
  ck_assert_uint_eq(living, 0);
  size_t count = asked;
  ck_assert_uint_gt(count, 0);
  for (size_t i = 0; i < count; i++) {
    for (int alone = 0; alone < 2; alone++) {
      begin(i, alone ? i : SIZE_MAX);
      ck_assert_int_eq(build(), OHM_NO_MEMORY);
      ck_assert_uint_eq(living, 0);
    }
  }
  return OHM_NO_MEMORY;
}

START_TEST(a_curve_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_curve_beta_new, OHM_NO_MEMORY, every_failure(build_beta));
  PROVOKES(ohm_curve_steinhart_hart_new, OHM_NO_MEMORY, every_failure(build_steinhart_hart));
  PROVOKES(ohm_curve_points_new, OHM_NO_MEMORY, every_failure(build_points));
  PROVOKES(ohm_curve_four_term_new, OHM_NO_MEMORY, every_failure(build_four_term));
  PROVOKES(ohm_curve_four_term_of_temperature_new, OHM_NO_MEMORY,
           every_failure(build_four_term_of_temperature));
  PROVOKES(ohm_curve_platinum_new, OHM_NO_MEMORY, every_failure(build_platinum));
  PROVOKES(ohm_curve_silicon_new, OHM_NO_MEMORY, every_failure(build_silicon));
}
END_TEST

START_TEST(a_sensor_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_sensor_parse, OHM_NO_MEMORY, every_failure(build_parsed));
  PROVOKES(ohm_sensor_load, OHM_NO_MEMORY, every_failure(build_loaded));
  PROVOKES(ohm_sensor_built_in_load, OHM_NO_MEMORY, every_failure(build_from_catalogue));
}
END_TEST

START_TEST(a_circuit_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_circuit_parse, OHM_NO_MEMORY, every_failure(build_circuit));
  PROVOKES(ohm_circuit_load, OHM_NO_MEMORY, every_failure(build_loaded_circuit));
  PROVOKES(ohm_circuit_built_in_load, OHM_NO_MEMORY, every_failure(build_built_in_circuit));
}
END_TEST

START_TEST(a_refused_circuit_leaves_nothing)
{
  static const char bad[] = "# name: a\n# fact a: b\n# balance: a = b\n"
                            "link,kind,part,action\na,power,a,buy\nb,soft,b,buy\n";
  begin_without_failures();
  ck_assert_ptr_null(ohm_circuit_parse(bad, sizeof bad - 1, "bad", NULL));
  ck_assert_uint_eq(living, 0);
}
END_TEST

START_TEST(a_fit_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_curve_fit, OHM_NO_MEMORY, every_failure(build_fit));
  PROVOKES(ohm_fit_sensor_new, OHM_NO_MEMORY, every_failure(build_fitted_sensor));
}
END_TEST

START_TEST(a_refused_fit_leaves_nothing)
{
  static const ohm_fit_point rising[] = {{0, 100, 0, 0}, {10, 200, 0, 0}};
  static const ohm_fit_point close[] = {{0, 100, 0, 0}, {1e-9, 100 - 1e-9, 0, 0}};
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  begin_without_failures();
  ck_assert_ptr_null(ohm_curve_fit(rising, 2, &request, NULL));
  ck_assert_ptr_null(ohm_curve_fit(close, 2, &request, NULL));
  ck_assert_uint_eq(living, 0);
}
END_TEST

START_TEST(an_audit_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_audit_parse, OHM_NO_MEMORY, every_failure(build_audit));
  PROVOKES(ohm_audit_load, OHM_NO_MEMORY, every_failure(build_loaded_audit));
}
END_TEST

START_TEST(a_history_that_gets_no_memory_says_so_and_leaves_nothing)
{
  PROVOKES(ohm_history_new, OHM_NO_MEMORY, every_failure(build_history));
  PROVOKES(ohm_history_parse, OHM_NO_MEMORY, every_failure(build_parsed_history));
  PROVOKES(ohm_history_load, OHM_NO_MEMORY, every_failure(build_loaded_history));
}
END_TEST

START_TEST(a_refused_history_leaves_nothing)
{
  static const char bad[] = "hours,temp_c\n0,18\n0,17\n";
  begin_without_failures();
  ck_assert_ptr_null(ohm_history_parse(bad, sizeof bad - 1, "bad", NULL));
  ck_assert_uint_eq(living, 0);
}
END_TEST

START_TEST(a_refused_sensor_leaves_nothing)
{
  static const char bad[] = "temp_c,r_nom_ohm\n0,100\n10,200\n20,50\n";
  ohm_error error;
  begin_without_failures();
  ck_assert_ptr_null(ohm_sensor_parse(bad, sizeof bad - 1, "bad", &error));
  ck_assert_int_eq(error.status, OHM_BAD_DEFINITION);
  ck_assert_uint_eq(living, 0);
}
END_TEST

/* ---- the bench ---- */

static ohm_sensor *any_sensor;

static ohm_bench *filled_bench(ohm_error *error) {
  ohm_bench *bench = ohm_bench_new(error);
  if (bench && ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3", error) == OHM_OK &&
      ohm_bench_read(bench, "2.31k@21.5C", NULL, error) == OHM_OK &&
      ohm_bench_compare(bench, any_sensor, error) == OHM_OK)
    return bench;
  ohm_bench_free(bench);
  return NULL;
}

static ohm_status of_bench(ohm_bench *bench, const ohm_error *error) {
  ohm_bench_free(bench);
  return bench ? OHM_OK : (ohm_status)error->status;
}

static ohm_status build_bench(void) {
  ohm_error error;
  return of_bench(filled_bench(&error), &error);
}

static ohm_status build_copied_bench(void) {
  ohm_error error;
  ohm_bench *bench = filled_bench(&error);
  ohm_bench *copy = bench ? ohm_bench_copy_new(bench, &error) : NULL;
  ohm_bench_free(bench);
  return of_bench(copy, &error);
}

static ohm_status build_bench_of_numbers(void) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_status status = bench ? OHM_OK : (ohm_status)error.status;
  if (status == OHM_OK)
    status = ohm_bench_set_number(bench, OHM_SETTING_FAN_C, 97, &error);
  if (status == OHM_OK)
    status = ohm_bench_read_number(bench, OHM_QUANTITY_OHMS, 2310, 21.5, NULL, &error);
  ohm_bench_free(bench);
  return status;
}

START_TEST(a_bench_that_gets_no_memory_says_so_and_leaves_nothing)
{
  begin_without_failures();
  any_sensor = ohm_sensor_parse(table, sizeof table - 1, "t", NULL);
  ohm_status status = every_failure(build_bench);
  PROVOKES(ohm_bench_new, OHM_NO_MEMORY, status);
  PROVOKES(ohm_bench_set, OHM_NO_MEMORY, status);
  PROVOKES(ohm_bench_read, OHM_NO_MEMORY, status);
  PROVOKES(ohm_bench_compare, OHM_NO_MEMORY, status);
  PROVOKES(ohm_bench_copy_new, OHM_NO_MEMORY, every_failure(build_copied_bench));
  status = every_failure(build_bench_of_numbers);
  PROVOKES(ohm_bench_set_number, OHM_NO_MEMORY, status);
  PROVOKES(ohm_bench_read_number, OHM_NO_MEMORY, status);
  ohm_sensor_free(any_sensor);
}
END_TEST

/* ---- the verbs ---- */

typedef ohm_answer *(*verb_function)(const ohm_bench *, ohm_error *);

static verb_function asked_verb;
static const char *asked_record;
static ohm_circuit *any_circuit;

static ohm_status ask_verb(void) {
  ohm_error error;
  ohm_answer *answer = NULL;
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, any_sensor);
  ohm_bench_use_circuit(bench, any_circuit);
  if (bench && ohm_bench_compare(bench, any_sensor, &error) == OHM_OK &&
      ohm_bench_read_record(bench, asked_record, strlen(asked_record), &error) == OHM_OK)
    answer = asked_verb(bench, &error);
  ohm_bench_free(bench);
  ohm_answer_free(answer);
  return answer ? OHM_OK : (ohm_status)error.status;
}

static ohm_status every_failure_of(verb_function verb, const char *record) {
  asked_verb = verb;
  asked_record = record;
  return every_failure(ask_verb);
}

START_TEST(a_verb_that_gets_no_memory_says_so_and_leaves_nothing)
{
  begin_without_failures();
  any_sensor = ohm_sensor_parse(table, sizeof table - 1, "t", NULL);
  any_circuit = ohm_circuit_parse(circuit_text, sizeof circuit_text - 1, "c", NULL);
  PROVOKES(ohm_bench_check, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_check, "2.31k@21.5C\n330@80C\n"));
  PROVOKES(ohm_bench_identify, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_identify, "2.31k@21.5C\n"));
  PROVOKES(ohm_bench_explain, OHM_NO_MEMORY, every_failure_of(ohm_bench_explain, "2.31k@21.5C\n"));
  PROVOKES(ohm_bench_pins, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_pins, "# at: 20C\n1-2=2.45k\n"));
  PROVOKES(
      ohm_bench_soak, OHM_NO_MEMORY,
      every_failure_of(ohm_bench_soak, "# air: 9C\n# after_h: 12h\n3.9k\nintake=10C\noil=10C\n"));
  PROVOKES(ohm_bench_signal, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_signal, "# pull_up: 1k\n300@80C\n1.2V\n80C\n"));
  PROVOKES(ohm_bench_substitute, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_substitute, "# aim_c: 70C\n# fan_c: 60C\n"));
  PROVOKES(ohm_bench_loom, OHM_NO_MEMORY, every_failure_of(ohm_bench_loom, "450@68C\n1k@43C\n"));
  PROVOKES(ohm_bench_fanpoint, OHM_NO_MEMORY,
           every_failure_of(ohm_bench_fanpoint, "# fan_c: 70C\n"));
  PROVOKES(ohm_bench_expect, OHM_NO_MEMORY, every_failure_of(ohm_bench_expect, "# at: 68C\n"));
  PROVOKES(ohm_bench_isolate, OHM_NO_MEMORY, every_failure_of(ohm_bench_isolate, "s=bad\na=3\n"));
  PROVOKES(ohm_bench_measure, OHM_NO_MEMORY, every_failure_of(ohm_bench_measure, "2.31k\n"));
  PROVOKES(ohm_bench_read_record, OHM_NO_MEMORY, every_failure_of(ohm_bench_measure, "2.31k\n"));
  ohm_circuit_free(any_circuit);
  ohm_sensor_free(any_sensor);
}
END_TEST

START_TEST(reading_and_reporting_allocate_nothing)
{
  begin_without_failures();
  any_sensor = ohm_sensor_parse(table, sizeof table - 1, "t", NULL);
  ohm_error error;
  ohm_bench *bench = filled_bench(&error);
  ohm_bench_use_sensor(bench, any_sensor);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  ck_assert_msg(answer != NULL, "%s", error.message);
  oc_reading reading;
  oc_meter meter = OC_METER_INIT;
  oc_reference reference;
  double low_ohm;
  char text[4096];
  begin(0, SIZE_MAX);
  ck_assert_int_eq(oc_reading_read("2.31k", &reading, NULL), OHM_OK);
  ck_assert_int_eq(oc_meter_read("0.8%+3@2000", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_leads_read("0.4+-0.1", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_reference_read("21.5C+-1", &reference, NULL), OHM_OK);
  ck_assert_int_eq(ohm_sensor_band(any_sensor, 21.5, &low_ohm, NULL, NULL), OHM_OK);
  ck_assert_uint_lt(ohm_answer_print_report(answer, text, sizeof text), sizeof text);
  ck_assert_uint_lt(ohm_answer_print_budget(answer, text, sizeof text), sizeof text);
  ck_assert_uint_lt(ohm_bench_print(bench, text, sizeof text), sizeof text);
  ck_assert_uint_gt(ohm_sensor_built_in_matches("mazda", NULL, 0), 0);
  ck_assert_uint_lt(ohm_sensor_print(any_sensor, text, sizeof text), sizeof text);
  ck_assert_uint_eq(asked, 0);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  ohm_sensor_free(any_sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "memory", a_curve_that_gets_no_memory_says_so_and_leaves_nothing,
      a_sensor_that_gets_no_memory_says_so_and_leaves_nothing,
      a_circuit_that_gets_no_memory_says_so_and_leaves_nothing, a_refused_circuit_leaves_nothing,
      a_fit_that_gets_no_memory_says_so_and_leaves_nothing, a_refused_fit_leaves_nothing,
      an_audit_that_gets_no_memory_says_so_and_leaves_nothing,
      a_history_that_gets_no_memory_says_so_and_leaves_nothing, a_refused_history_leaves_nothing,
      a_refused_sensor_leaves_nothing, a_bench_that_gets_no_memory_says_so_and_leaves_nothing,
      a_verb_that_gets_no_memory_says_so_and_leaves_nothing,
      reading_and_reporting_allocate_nothing);
}
