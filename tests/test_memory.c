/* SPDX-License-Identifier: MIT */
/* Every allocation of the library fails once. The rooms are compiled to call the
 * allocator below in the place of the C library's. */
#include "support.h"

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

static ohm_status build_built_in_sensor(void) {
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
  PROVOKES(ohm_sensor_built_in_load, OHM_NO_MEMORY, every_failure(build_built_in_sensor));
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

START_TEST(asking_and_judging_and_reporting_allocate_nothing)
{
  begin_without_failures();
  ohm_sensor *sensor = ohm_sensor_parse(table, sizeof table - 1, "t", NULL);
  ohm_history *history = ohm_history_parse(air, sizeof air - 1, "air", NULL);
  ck_assert_ptr_nonnull(sensor);
  ck_assert_ptr_nonnull(history);
  ohm_reading reading;
  ohm_meter meter = OHM_METER_INIT;
  ohm_reference reference;
  ohm_finding finding;
  double low_ohm;
  char text[4096];
  begin(0, SIZE_MAX);
  ck_assert_int_eq(ohm_reading_read("2.31k", &reading, NULL), OHM_OK);
  ck_assert_int_eq(ohm_meter_read("0.8%+3@2000", &meter, NULL), OHM_OK);
  ck_assert_int_eq(ohm_leads_read("0.4+-0.1", &meter, NULL), OHM_OK);
  ck_assert_int_eq(ohm_reference_read("21.5C+-1", &reference, NULL), OHM_OK);
  ck_assert_int_eq(ohm_sensor_band(sensor, 21.5, &low_ohm, NULL, NULL), OHM_OK);
  ck_assert_int_eq(ohm_bath_check(sensor, &reading, &meter, &reference, NULL, &finding), OHM_OK);
  ck_assert_uint_lt(ohm_report_print(&finding, text, sizeof text), sizeof text);
  ck_assert_uint_lt(ohm_report_print_budget(&finding, text, sizeof text), sizeof text);
  ohm_reading readings[] = {reading, reading};
  ohm_reference references[] = {reference, reference};
  ohm_finding findings[2];
  references[1].t_c += 40;
  ck_assert_int_eq(
      ohm_bath_check_several(sensor, readings, references, 2, &meter, NULL, findings, &finding),
      OHM_OK);
  const ohm_sensor *sensors[] = {sensor, sensor};
  ck_assert_int_eq(
      ohm_identify(sensors, 2, readings, references, 2, &meter, NULL, findings, &finding), OHM_OK);
  ohm_companion others[] = {OHM_COMPANION_INIT, OHM_COMPANION_INIT};
  ohm_soak soak = OHM_SOAK_INIT;
  soak.history = history;
  soak.companions = others;
  soak.companion_count = 2;
  ck_assert_int_eq(ohm_soak_check(sensor, &reading, &meter, NULL, &soak, NULL, &finding), OHM_OK);
  static const char record[] = "s=bad\na=3\n";
  begin_without_failures();
  ohm_circuit *circuit = ohm_circuit_parse(circuit_text, sizeof circuit_text - 1, "c", NULL);
  begin(0, SIZE_MAX);
  ck_assert_int_eq(ohm_isolation_judge(circuit, record, sizeof record - 1, &finding, NULL), OHM_OK);
  ck_assert_uint_lt(ohm_report_print(&finding, text, sizeof text), sizeof text);
  ck_assert_uint_gt(ohm_sensor_built_in_matches("mazda", NULL, 0), 0);
  ck_assert_uint_lt(ohm_sensor_print(sensor, text, sizeof text), sizeof text);
  ck_assert_uint_eq(asked, 0);
  ohm_history_free(history);
  ohm_circuit_free(circuit);
  ohm_sensor_free(sensor);
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
      a_refused_sensor_leaves_nothing, asking_and_judging_and_reporting_allocate_nothing);
}
