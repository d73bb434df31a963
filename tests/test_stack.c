/* SPDX-License-Identifier: MIT */
/* The header promises how much stack a call needs at most. Every call that computes runs in a
 * thread whose stack is painted; the deepest place without paint says what it needed.
 * OHM_STACK_TOLD=1 tells it of every call. */
#define _POSIX_C_SOURCE 200809L

#include "support.h"

#include <dirent.h>
#include <pthread.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

#if defined __has_feature
#if __has_feature(address_sanitizer) || __has_feature(memory_sanitizer) ||                         \
    __has_feature(thread_sanitizer)
#define IS_SANITIZED 1
#endif
#elif defined __SANITIZE_ADDRESS__ || defined __SANITIZE_THREAD__
#define IS_SANITIZED 1
#endif
#ifndef IS_SANITIZED
#define IS_SANITIZED 0
#endif

/* More than is allowed, so that a call which needs more can be told by how much. */
enum { PROMISED = 48 * 1024, STACK_SIZE = 1024 * 1024, PAINT = 0xA5, SKIPPED = 77 };

/* ---- the stack ---- */

struct job {
  void (*call)(void);
  uintptr_t top;
};

/* What the thread itself takes of its stack lies above the frame of this. */
static void *work(void *given) {
  struct job *job = given;
  volatile char here = 0;
  job->top = (uintptr_t)&here;
  job->call();
  return NULL;
}

/* Memory with a page below it that nothing may touch. */
static unsigned char *stack_new(void) {
  size_t page = (size_t)sysconf(_SC_PAGESIZE);
  void *guard;
  ck_assert_int_eq(posix_memalign(&guard, page, page + STACK_SIZE), 0);
  ck_assert_int_eq(mprotect(guard, page, PROT_NONE), 0);
  return (unsigned char *)guard + page;
}

static size_t depth_of(void (*call)(void)) {
  static unsigned char *stack;
  struct job job = {call, 0};
  pthread_attr_t attributes;
  pthread_t thread;
  if (!stack)
    stack = stack_new();
  memset(stack, PAINT, STACK_SIZE);
  ck_assert_int_eq(pthread_attr_init(&attributes), 0);
  ck_assert_int_eq(pthread_attr_setstack(&attributes, stack, STACK_SIZE), 0);
  ck_assert_int_eq(pthread_create(&thread, &attributes, work, &job), 0);
  ck_assert_int_eq(pthread_join(thread, NULL), 0);
  pthread_attr_destroy(&attributes);
  const unsigned char *deepest = stack;
  while (*deepest == PAINT)
    deepest++;
  return (size_t)(job.top - (uintptr_t)deepest);
}

static void check_depth(const char *name, const char *about, void (*call)(void)) {
  size_t depth = depth_of(call);
  if (getenv("OHM_STACK_TOLD"))
    fprintf(stderr, "%6zu %s of %s\n", depth, name, about);
  ck_assert_msg(depth <= PROMISED, "%s of %s needed %zu bytes of stack, more than %d", name, about,
                depth, PROMISED);
}

#define CHECK_DEPTH(about, call) check_depth(#call, (about), (call))

/* ---- what the calls are made with ---- */

static ohm_error error;
static char buffer[1 << 16];

static ohm_sensor *sensor_at(size_t index) {
  ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(index), &error);
  ck_assert_msg(sensor != NULL, "%s", error.message);
  return sensor;
}

static void put(ohm_bench *bench, const char *reading) {
  ck_assert_msg(ohm_bench_read(bench, reading, NULL, &error) == OHM_OK, "%s", error.message);
}

static void set(ohm_bench *bench, int setting, const char *text) {
  ck_assert_msg(ohm_bench_set(bench, setting, text, &error) == OHM_OK, "%s", error.message);
}

static ohm_bench *bench_new(void) {
  ohm_bench *bench = ohm_bench_new(&error);
  ck_assert_msg(bench != NULL, "%s", error.message);
  return bench;
}

/* Each file of a folder of the source tree in turn. */
static void for_each_file(const char *folder, void (*see)(const char *path)) {
  char path[4096];
  char *whole = source_path(folder);
  DIR *directory = opendir(whole);
  size_t count = 0;
  ck_assert_msg(directory != NULL, "%s cannot be opened", whole);
  for (const struct dirent *entry; (entry = readdir(directory)) != NULL;) {
    const char *end = strrchr(entry->d_name, '.');
    if (!end || strcmp(end, ".csv") != 0)
      continue;
    snprintf(path, sizeof path, "%s/%s", whole, entry->d_name);
    see(path);
    count++;
  }
  closedir(directory);
  free(whole);
  ck_assert_uint_gt(count, 0);
}

/* ---- verbs ---- */

typedef ohm_answer *verb_function(const ohm_bench *bench, ohm_error *error);

static const struct {
  const char *name;
  verb_function *ask;
} verbs[] = {{"check", ohm_bench_check},     {"identify", ohm_bench_identify},
             {"pins", ohm_bench_pins},       {"explain", ohm_bench_explain},
             {"soak", ohm_bench_soak},       {"signal", ohm_bench_signal},
             {"loom", ohm_bench_loom},       {"substitute", ohm_bench_substitute},
             {"isolate", ohm_bench_isolate}, {"fanpoint", ohm_bench_fanpoint},
             {"measure", ohm_bench_measure}, {"expect", ohm_bench_expect}};

enum { VERBS = sizeof verbs / sizeof verbs[0] };

static const ohm_bench *bench_asked;
static ohm_circuit *circuit_asked;
static size_t verb_asked;
static ohm_answer *answer;

static void ask(void) {
  answer = verbs[verb_asked].ask(bench_asked, &error);
}

static void print(void) {
  ohm_answer_print_report(answer, buffer, sizeof buffer);
  ohm_answer_print_budget(answer, buffer, sizeof buffer);
  for (int group = OHM_GROUP_READINGS; group <= OHM_GROUP_RESISTORS; group++)
    for (size_t i = 0; i < ohm_answer_count(answer, group); i++)
      ohm_finding_print_report(ohm_answer_member(answer, group, i), buffer, sizeof buffer);
  ohm_circuit_print_answer(circuit_asked, answer, buffer, sizeof buffer);
}

/* Every verb, whether it answers or not; those that are named have to. */
static void check_verbs(const ohm_bench *bench, const char *about, const char *must) {
  bench_asked = bench;
  for (verb_asked = 0; verb_asked < VERBS; verb_asked++) {
    char name[40];
    snprintf(name, sizeof name, "ohm_bench_%s", verbs[verb_asked].name);
    check_depth(name, about, ask);
    ck_assert_msg(answer || !strstr(must, verbs[verb_asked].name), "%s of %s: %s", name, about,
                  error.message);
    check_depth("the report", name, print);
    ohm_answer_free(answer);
  }
}

static ohm_sensor *compared[512];
static size_t compared_count;

static const ohm_sensor *the_sensor(void) {
  for (size_t i = 0; i < compared_count; i++)
    if (strcmp(ohm_sensor_name(compared[i]), "ntc-2k45-20c") == 0)
      return compared[i];
  ck_abort_msg("ntc-2k45-20c is not built in");
  return NULL;
}

static void set_up(void) {
  circuit_asked = ohm_circuit_built_in_load(ohm_circuit_built_in_name(0), &error);
  compared_count = ohm_sensor_built_in_count();
  ck_assert_uint_le(compared_count, sizeof compared / sizeof compared[0]);
  for (size_t i = 0; i < compared_count; i++)
    compared[i] = sensor_at(i);
}

static void tear_down(void) {
  ohm_circuit_free(circuit_asked);
  for (size_t i = 0; i < compared_count; i++)
    ohm_sensor_free(compared[i]);
}

static ohm_bench *bench_compared(void) {
  ohm_bench *bench = bench_new();
  ohm_bench_use_sensor(bench, the_sensor());
  for (size_t i = 0; i < compared_count; i++)
    ck_assert_int_eq(ohm_bench_compare(bench, compared[i], &error), OHM_OK);
  return bench;
}

/* Sixteen readings of the sensor with ohms in series and so many times as large, with a
 * thermometer whose limit asks for the most nodes. */
static void check_sixteen(const char *about, double series_ohm, double factor, const char *limit) {
  ohm_bench *bench = bench_compared();
  for (int i = 0; i < 16; i++) {
    char reading[80];
    double t_c = 18 + 5 * i;
    double r_ohm;
    ohm_curve_resistance(ohm_sensor_curve(the_sensor()), t_c, &r_ohm);
    snprintf(reading, sizeof reading, "%.1f@%.0fC%s", factor * r_ohm + series_ohm, t_c, limit);
    put(bench, reading);
  }
  check_verbs(bench, about, "check identify explain measure");
  ohm_bench_free(bench);
}

START_TEST(sixteen_readings_of_any_sensor_need_no_more_than_is_promised)
{
  set_up();
  check_sixteen("sound readings", 0, 1, "+-5");
  check_sixteen("sound exact readings", 0, 1, "+-0");
  check_sixteen("readings with ohms in series", 60, 1, "");
  check_sixteen("readings of a drifted sensor", 0, 1.3, "+-2");
  check_sixteen("readings without their k", 0, 0.001, "");
  check_sixteen("readings of no sensor", 1000, 0.01, "+-5");
  tear_down();
}
END_TEST

START_TEST(few_readings_and_displays_without_a_number_need_no_more_than_is_promised)
{
  static const char *const readings[] = {"2.31k@21.5C,sensor", "187@97C,module",  "open@20C",
                                         "OL@20k@20C",         "1@20C",           "0.2@boil",
                                         "2.31@ice",           "2400@20C,plug_on"};
  set_up();
  for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
    ohm_bench *bench = bench_compared();
    put(bench, readings[i]);
    check_verbs(bench, readings[i], "check");
    ohm_bench_free(bench);
  }
  tear_down();
}
END_TEST

START_TEST(pins_of_a_body_need_no_more_than_is_promised)
{
  static const char *const pairs[] = {"1-2=2450",   "1-3=open",    "1-4=open",     "2-3=open",
                                      "2-4=open",   "3-4=480",     "1-5=2930",     "2-5=480",
                                      "3-5=480",    "4-5=0.5",     "1-body=2452",  "2-body=0.4",
                                      "3-body=480", "4-body=open", "1-minus=2470", "2-minus=18"};
  set_up();
  ohm_bench *bench = bench_compared();
  set(bench, OHM_SETTING_AT, "20C");
  for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++)
    put(bench, pairs[i]);
  check_verbs(bench, "sixteen pairs", "pins");
  ohm_bench_free(bench);
  tear_down();
}
END_TEST

START_TEST(a_soak_with_a_long_history_needs_no_more_than_is_promised)
{
  static const char *const others[] = {"intake=10.5C", "oil=12C+-1", "ambient=9C",  "intake=11C",
                                       "oil=13C",      "ambient=9C", "intake=9.5C", "oil=30C"};
  enum { POINTS = 4096 };
  static double after_h[POINTS], t_c[POINTS];
  set_up();
  for (int i = 0; i < POINTS; i++) {
    after_h[i] = 10.0 * i / (POINTS - 1);
    t_c[i] = 9 + i % 7;
  }
  ohm_history *history = ohm_history_new(after_h, t_c, POINTS, &error);
  ohm_bench *bench = bench_compared();
  ohm_bench_use_history(bench, history);
  put(bench, "3.1k");
  check_verbs(bench, "a history", "soak");
  set(bench, OHM_SETTING_U_AIR_K, "0.5C");
  for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
    put(bench, others[i]);
  check_verbs(bench, "a history and other sensors", "soak");
  ohm_bench_free(bench);
  ohm_history_free(history);
  tear_down();
}
END_TEST

START_TEST(verbs_of_a_module_need_no_more_than_is_promised)
{
  set_up();
  ohm_bench *bench = bench_compared();
  check_verbs(bench, "no reading", "fanpoint substitute");
  set(bench, OHM_SETTING_PULL_UP, "10k,1k@50C");
  set(bench, OHM_SETTING_SERIES, "E96");
  set(bench, OHM_SETTING_OFF_C, "92C");
  set(bench, OHM_SETTING_AT, "91C");
  put(bench, "220");
  put(bench, "0.97V,body");
  put(bench, "84C+-2");
  check_verbs(bench, "ohms, volts and degrees", "signal substitute fanpoint");
  check_verbs(bench, "the temperature alone", "expect");
  ohm_bench_clear(bench);
  ohm_bench_use_sensor(bench, the_sensor());
  put(bench, "179.4@93C");
  put(bench, "2.2k@21C");
  check_verbs(bench, "two resistors", "loom");
  ohm_bench_free(bench);
  tear_down();
}
END_TEST

/* As many lines as a record may have; of the tests one in so many bad. */
static void check_record(const ohm_circuit *circuit, size_t every, size_t lines) {
  ohm_bench *bench = bench_new();
  size_t count = ohm_circuit_test_count(circuit);
  ohm_bench_use_circuit(bench, circuit);
  for (size_t i = 0; i < lines; i++) {
    char line[160];
    size_t test = i % count;
    const char *role = ohm_circuit_test_text(circuit, test, OHM_TEST_ROLE);
    bool bad = strcmp(role, "symptom") == 0 || (role[0] == '\0' && test % every == 0);
    for (int word = 0; word < 3; word++) {
      static const char *const good_words[] = {"good", "within", "skip"};
      static const char *const bad_words[] = {"bad", "outside", "skip"};
      snprintf(line, sizeof line, "%s=%s", ohm_circuit_test_text(circuit, test, OHM_TEST_TEST),
               bad ? bad_words[word] : good_words[word]);
      if (ohm_bench_read(bench, line, NULL, &error) == OHM_OK)
        break;
    }
  }
  check_verbs(bench, ohm_circuit_name(circuit), "isolate");
  ohm_bench_free(bench);
}

START_TEST(a_circuit_with_a_full_record_needs_no_more_than_is_promised)
{
  set_up();
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), &error);
    ck_assert_msg(circuit != NULL, "%s", error.message);
    check_record(circuit, 3, 0);
    check_record(circuit, 1000, ohm_circuit_test_count(circuit));
    check_record(circuit, 3, 512);
    check_record(circuit, 7, 512);
    ohm_circuit_free(circuit);
  }
  tear_down();
}
END_TEST

/* ---- benches as text ---- */

static ohm_bench *bench_filled;

static void read_bench(void) {
  static const char record[] = "# fan_c: 97C\n2.31k@21.5C+-1,sensor\n187@boil@1200m\nOL@20k@20C\n"
                               "1-2=480\n0.97V,body\n91C+-2\nintake=10.5C\nfuse-look=good\n";
  ohm_bench_read(bench_filled, "not a reading", NULL, &error);
  ohm_bench_read(bench_filled, "2.31k@21.5C,nowhere", NULL, &error);
  ohm_bench_set(bench_filled, OHM_SETTING_METER, "nonsense", &error);
  for (size_t i = 0; i < ohm_setting_count(); i++) {
    int setting = ohm_setting_at(i);
    ohm_bench_set(bench_filled, setting, ohm_setting_example(setting), &error);
    ohm_setting_allowed(setting, buffer, sizeof buffer);
  }
  ohm_bench_read_record(bench_filled, record, sizeof record - 1, &error);
  ohm_bench_read_number(bench_filled, OHM_QUANTITY_OHMS, 2310.0, 21.5, NULL, &error);
  ohm_bench_print(bench_filled, buffer, sizeof buffer);
  ohm_bench_free(ohm_bench_copy_new(bench_filled, &error));
}

static void read_misspelt(void) {
  ohm_bench_use_circuit(bench_filled, circuit_asked);
  ohm_bench_read(bench_filled, "fuse-lok=good", NULL, &error);
}

START_TEST(benches_as_text_need_no_more_than_is_promised)
{
  set_up();
  bench_filled = bench_new();
  CHECK_DEPTH("all there is", read_bench);
  CHECK_DEPTH("a circuit", read_misspelt);
  ohm_bench_free(bench_filled);
  tear_down();
}
END_TEST

/* ---- files ---- */

static const char *path_read;
static ohm_sensor *sensor_read;

static void load_sensor(void) {
  sensor_read = ohm_sensor_load(path_read, &error);
  ohm_sensor_print(sensor_read, buffer, sizeof buffer);
  ohm_sensor_band(sensor_read, 20, NULL, NULL, NULL);
}

static void load_audit(void) {
  ohm_audit_free(ohm_audit_load(path_read, &error));
}

static void load_circuit(void) {
  ohm_circuit *circuit = ohm_circuit_load(path_read, &error);
  ohm_circuit_print(circuit, buffer, sizeof buffer);
  ohm_circuit_free(circuit);
}

static void load_history(void) {
  ohm_history_free(ohm_history_load(path_read, &error));
}

/* Whatever the file is meant to be. */
static void see_file(const char *path) {
  path_read = path;
  CHECK_DEPTH(path, load_sensor);
  ohm_sensor_free(sensor_read);
  CHECK_DEPTH(path, load_audit);
  CHECK_DEPTH(path, load_circuit);
  CHECK_DEPTH(path, load_history);
}

START_TEST(files_need_no_more_than_is_promised)
{
  for_each_file("tables", see_file);
  for_each_file("tables/circuits", see_file);
  for_each_file("tests/sensors", see_file);
}
END_TEST

/* As long as a table may be, in cells as wide as they may be. */
static char *long_text(const char *head, const char *row) {
  enum { ROWS = 4096, ROW_SIZE = 128 };
  char *text = malloc(strlen(head) + (size_t)ROWS * ROW_SIZE);
  ck_assert_ptr_nonnull(text);
  char *end = strcpy(text, head) + strlen(head);
  for (int i = 0; i < ROWS; i++)
    end += snprintf(end, ROW_SIZE, row, 0.01 * i, 32650.0 * exp(-0.001 * i));
  return text;
}

static char *text_read;

static void parse_sensor(void) {
  ohm_sensor_free(ohm_sensor_parse(text_read, strlen(text_read), "long", &error));
}

static void parse_audit(void) {
  ohm_audit_free(ohm_audit_parse(text_read, strlen(text_read), "long", &error));
}

static void parse_circuit(void) {
  ohm_circuit_free(ohm_circuit_parse(text_read, strlen(text_read), "long", &error));
}

static void parse_history(void) {
  ohm_history_free(ohm_history_parse(text_read, strlen(text_read), "long", &error));
}

static void check_text(const char *about, const char *head, const char *row) {
  text_read = long_text(head, row);
  CHECK_DEPTH(about, parse_sensor);
  CHECK_DEPTH(about, parse_circuit);
  CHECK_DEPTH(about, parse_history);
  CHECK_DEPTH(about, parse_audit);
  free(text_read);
}

START_TEST(long_texts_need_no_more_than_is_promised)
{
  check_text("a long table", "temp_c,r_nom_ohm\n", "%.2f,%.4f\n");
  check_text("a long history", "hours,temp_c\n", "%.2f,%.4f\n");
  check_text("a long circuit", "link,kind,part\n", "a%.2f,power,b%.4f\n");
}
END_TEST

/* ---- curves and fits ---- */

static bool succeeded;
static ohm_fit_point points[4096];
static size_t point_count;
static int model_fitted;

static void fit(void) {
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_estimate estimate;
  double expanded_k;
  request.model = model_fitted;
  ohm_fit *fitted = ohm_curve_fit(points, point_count, &request, &error);
  succeeded = fitted != NULL;
  if (!succeeded)
    return;
  ohm_fit_temperature(fitted, points[0].r_ohm, 0.95, &estimate, &expanded_k);
  ohm_fit_misfit_k(fitted);
  ohm_sensor *sensor = ohm_fit_sensor_new(fitted, "fitted", &error);
  ohm_sensor_print(sensor, buffer, sizeof buffer);
  ohm_sensor_temperature(sensor, points[0].r_ohm, 0.95, &estimate, &expanded_k);
  ohm_sensor_free(sensor);
  ohm_fit_free(fitted);
}

START_TEST(fits_need_no_more_than_is_promised)
{
  point_count = sizeof points / sizeof points[0];
  for (int known = 0; known < 2; known++) {
    for (size_t i = 0; i < point_count; i++) {
      double t_c = 100.0 * (double)i / (double)point_count;
      double r_ohm = 2500 * exp(3500 * (1 / (t_c + 273.15) - 1 / 293.15));
      points[i] = (ohm_fit_point){t_c, r_ohm * (1 + 1e-5 * (double)(i % 5)), 0.1 * known, 0};
    }
    for (model_fitted = OHM_FIT_BETA; model_fitted <= OHM_FIT_FOUR_TERM; model_fitted++) {
      CHECK_DEPTH("points", fit);
      ck_assert_msg(succeeded, "%s", error.message);
    }
  }
}
END_TEST

static void make_curves(void) {
  static double t_c[4096], r_ohm[4096];
  double value;
  for (int i = 0; i < 4096; i++) {
    t_c[i] = -40 + 0.05 * i;
    r_ohm[i] = 1e5 * exp(-0.002 * i);
  }
  ohm_curve *made[] = {
      ohm_curve_points_new(t_c, r_ohm, 4096, &error),
      ohm_curve_beta_new(2500, 20, 3500, -40, 130, &error),
      ohm_curve_steinhart_hart_new(1.129e-3, 2.341e-4, 8.775e-8, -40, 130, &error),
      ohm_curve_four_term_new(1e4, 3.354e-3, 2.569e-4, 2.62e-6, 6.383e-8, -40, 130, &error),
      ohm_curve_four_term_of_temperature_new(1e4, -14.6337, 4791.842, -115334, -3.730535e6, -40,
                                             130, &error),
      ohm_curve_platinum_new(100, -200, 850, &error),
      ohm_curve_silicon_new(1000, 7.8e-3, 1.8e-5, -50, 150, &error)};
  succeeded = true;
  for (size_t i = 0; i < sizeof made / sizeof made[0]; i++) {
    succeeded = succeeded && made[i];
    ohm_curve_temperatures(made[i], r_ohm, sizeof *r_ohm, &value, sizeof value, 1, NULL);
    ohm_curve_resistances(made[i], t_c, sizeof *t_c, r_ohm, sizeof *r_ohm, 4096, NULL);
    ohm_curve_alpha(made[i], 20, &value);
    ohm_curve_free(made[i]);
  }
}

/* ---- numbers, words and single formulas ---- */

static void print_numbers(void) {
  static const double values[] = {5e-324, 1.7976931348623157e308, 0.1, 2.2250738585072011e-308};
  double value;
  for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
    ohm_number_print(values[i], buffer, sizeof buffer);
    ohm_number_print_fixed(values[i], 20, buffer, sizeof buffer);
    ohm_resistance_print(values[i], 17, buffer, sizeof buffer);
  }
  memset(buffer, '9', 2000);
  buffer[1] = '.';
  ohm_number_read(buffer, 2000, &value);
  buffer[2000] = '\0';
  ohm_resistance_read(buffer, &value, &error);
  ohm_temperature_read("294.7K", &value, &error);
}

static void work_formulas(void) {
  double value;
  ohm_conformance conformance;
  size_t indices[8];
  ohm_conformance_of(1, 0.1, 0.2, 0.9, 1.1, &conformance);
  ohm_water_boiling(1013.25, &value);
  ohm_water_pressure(1200, &value);
  ohm_divider_volts(2500, 1000, 5, &value);
  ohm_divider_resistance(1, 1000, 5, &value);
  ohm_preferred_nearest(187, OHM_SERIES_E96, &value);
  ohm_reported_of(96.5, 1, &value);
  ohm_cooling_temperature(90, 10, 2, 7, &value);
  ohm_cooling_hours(90, 10, 2, 30, &value);
  ohm_cooling_tau(90, 10, 30, 5, &value);
  ohm_sensor_built_in_nearest("ntc-2k45-21c");
  ohm_sensor_built_in_matches("mazda 2004", indices, 8);
  ohm_sensor_free(ohm_sensor_built_in_load("ntc-2k45-21c", &error));
  ohm_circuit_free(ohm_circuit_built_in_load("module-relay", &error));
}

START_TEST(curves_numbers_and_formulas_need_no_more_than_is_promised)
{
  CHECK_DEPTH("every model", make_curves);
  ck_assert_msg(succeeded, "%s", error.message);
  CHECK_DEPTH("the longest", print_numbers);
  CHECK_DEPTH("one value", work_formulas);
}
END_TEST

int main(void) {
  if (IS_SANITIZED) {
    puts("stack: not measured under the sanitizers, whose frames are larger");
    return SKIPPED;
  }
  return RUN_TESTS("stack", sixteen_readings_of_any_sensor_need_no_more_than_is_promised,
                   few_readings_and_displays_without_a_number_need_no_more_than_is_promised,
                   pins_of_a_body_need_no_more_than_is_promised,
                   a_soak_with_a_long_history_needs_no_more_than_is_promised,
                   verbs_of_a_module_need_no_more_than_is_promised,
                   a_circuit_with_a_full_record_needs_no_more_than_is_promised,
                   benches_as_text_need_no_more_than_is_promised,
                   files_need_no_more_than_is_promised, long_texts_need_no_more_than_is_promised,
                   fits_need_no_more_than_is_promised,
                   curves_numbers_and_formulas_need_no_more_than_is_promised);
}
