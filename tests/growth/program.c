/* SPDX-License-Identifier: MIT */
/*
 * A program of somebody's, kept as it was compiled: program.o, made of this file and the
 * header beside it, is never made again while the soname stays. It asks every verb, reads
 * all that it knows, and prints it, so that any library of the soname is held against it.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "ohmcurve.h"

typedef ohm_answer *verb_function(const ohm_bench *bench, ohm_error *error);

/* What stood in the header when this was compiled. */
static const int fields[] = {
#define FIELD(number, constant, name, kind, meaning) OHM_FIELD_##constant,
    OHM_FIELDS(FIELD)
#undef FIELD
};
static const char *const names[] = {
#define FIELD(number, constant, name, kind, meaning) #name,
    OHM_FIELDS(FIELD)
#undef FIELD
};
static const int settings[] = {
#define SETTING(number, constant, name, kind, without, allowed, example, verbs, meaning) number,
    OHM_SETTINGS(SETTING)
#undef SETTING
};
static const char *const explanations[] = {
#define WORD(number, constant, word, meaning) [number] = #word,
    OHM_EXPLANATIONS(WORD)
#undef WORD
};

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static int failed;

static void expect(int truth, const char *what) {
  if (truth)
    return;
  printf("not true any more: %s\n", what);
  failed = 1;
}

static void print_finding(const ohm_finding *finding) {
  for (size_t i = 0; i < COUNT(fields); i++) {
    double number = ohm_finding_number(finding, fields[i]);
    const char *text;
    expect(strcmp(ohm_field_name(fields[i]), names[i]) == 0, names[i]);
    if (!isnan(number))
      printf("  %s %.9g\n", names[i], number);
    if (fields[i] == OHM_FIELD_VERSION)
      continue;
    for (size_t j = 0; (text = ohm_finding_text(finding, fields[i], j)) != NULL; j++)
      printf("  %s %s\n", names[i], text);
  }
}

static void print_group(const ohm_answer *answer, ohm_group group) {
  for (size_t i = 0; i < ohm_answer_count(answer, group); i++) {
    const ohm_finding *member = ohm_answer_member(answer, group, i);
    const char *word = ohm_finding_text(member, OHM_FIELD_EXPLANATION, 0);
    /* One of a later library is passed over. */
    if (group == OHM_GROUP_EXPLANATIONS && i >= COUNT(explanations))
      continue;
    if (group == OHM_GROUP_EXPLANATIONS)
      expect(word && strcmp(word, explanations[i]) == 0, explanations[i]);
    printf(" member %zu\n", i);
    print_finding(member);
  }
}

static void ask(const char *name, verb_function *verb, const ohm_bench *bench) {
  ohm_error error;
  char report[8000];
  ohm_answer *answer = verb(bench, &error);
  printf("%s\n", name);
  if (!answer) {
    printf(" %s\n", error.message);
    return;
  }
  print_group(answer, OHM_GROUP_READINGS);
  print_group(answer, OHM_GROUP_CANDIDATES);
  print_group(answer, OHM_GROUP_EXPLANATIONS);
  print_group(answer, OHM_GROUP_TESTS);
  print_group(answer, OHM_GROUP_RESISTORS);
  print_finding(ohm_answer_finding(answer));
  expect(ohm_answer_print_report(answer, report, sizeof report) < sizeof report, "its size");
  fputs(report, stdout);
  ohm_answer_free(answer);
}

static void put(ohm_bench *bench, const char *text) {
  ohm_error error;
  expect(ohm_bench_read(bench, text, NULL, &error) == OHM_OK, text);
}

static void set(ohm_bench *bench, int setting, const char *text) {
  ohm_error error;
  expect(ohm_bench_set(bench, setting, text, &error) == OHM_OK, text);
}

static ohm_bench *bench_of(const ohm_sensor *const *sensors, size_t count) {
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_sensor(bench, sensors[0]);
  for (size_t i = 0; i < count; i++)
    ohm_bench_compare(bench, sensors[i], NULL);
  return bench;
}

static void ask_all(const ohm_sensor *const *sensors, size_t count) {
  ohm_bench *bench = bench_of(sensors, count);
  for (size_t i = 0; i < COUNT(settings); i++)
    expect(ohm_setting_kind_of(settings[i]) != 0, ohm_setting_name(settings[i]));
  put(bench, "2.31k@21.5C");
  put(bench, "412@80C");
  ask("check", ohm_bench_check, bench);
  ask("identify", ohm_bench_identify, bench);
  ask("explain", ohm_bench_explain, bench);
  ask("measure", ohm_bench_measure, bench);
  ohm_bench_clear(bench);
  ohm_bench_use_sensor(bench, sensors[0]);
  put(bench, "3.9k");
  put(bench, "intake=10.5C");
  set(bench, OHM_SETTING_AIR, "9C+-2");
  set(bench, OHM_SETTING_AFTER_H, "7h");
  ask("soak", ohm_bench_soak, bench);
  ohm_bench_clear(bench);
  ohm_bench_use_sensor(bench, sensors[0]);
  put(bench, "187");
  put(bench, "0.97V,pin");
  put(bench, "91C");
  set(bench, OHM_SETTING_PULL_UP, "1k");
  ask("signal", ohm_bench_signal, bench);
  ask("substitute", ohm_bench_substitute, bench);
  ask("fanpoint", ohm_bench_fanpoint, bench);
  ohm_bench_free(bench);
}

static void ask_circuit(void) {
  ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(0), NULL);
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_circuit(bench, circuit);
  ask("circuit", ohm_bench_isolate, bench);
  ohm_bench_free(bench);
  ohm_circuit_free(circuit);
}

int main(void) {
  static const char text[] = "# model: beta\n# r0_ohm: 2500\n# t0_c: 20\n# beta_k: 3500\n"
                             "# range: -40 to 140 C\n# tolerance: 5%\n";
  static const char other[] = "# model: beta\n# r0_ohm: 3500\n# t0_c: 20\n# beta_k: 3900\n"
                              "# range: -40 to 140 C\n# tolerance: 5%\n";
  ohm_sensor *sensors[] = {ohm_sensor_parse(text, sizeof text - 1, "one", NULL),
                           ohm_sensor_parse(other, sizeof other - 1, "other", NULL)};
  if (!sensors[0] || !sensors[1])
    return 1;
  ask_all((const ohm_sensor *const *)sensors, 2);
  ask_circuit();
  ohm_sensor_free(sensors[0]);
  ohm_sensor_free(sensors[1]);
  return failed;
}
