/* SPDX-License-Identifier: MIT */
/*
 * Any text as the record of a bench; the first byte says which verb is asked. What reads
 * prints and reads back equal, what does not leaves the bench as it was, and every verb
 * answers or has a sentence.
 */
#include "bytes.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

typedef ohm_answer *verb_function(const ohm_bench *bench, ohm_error *error);

static verb_function *const verbs[] = {ohm_bench_check,      ohm_bench_identify, ohm_bench_pins,
                                       ohm_bench_explain,    ohm_bench_soak,     ohm_bench_signal,
                                       ohm_bench_substitute, ohm_bench_loom,     ohm_bench_fanpoint,
                                       ohm_bench_isolate,    ohm_bench_measure};

enum { VERBS = sizeof verbs / sizeof verbs[0], COMPARED = 4 };

static char *record_of(const ohm_bench *bench) {
  size_t size = ohm_bench_print(bench, NULL, 0) + 1;
  char *record = malloc(size);
  require(record != NULL, "there is memory");
  ohm_bench_print(bench, record, size);
  return record;
}

static ohm_bench *bench_new(void) {
  ohm_bench *bench = ohm_bench_new(NULL);
  require(bench != NULL, "there is memory");
  return bench;
}

static void reads_back(const ohm_bench *bench) {
  ohm_error error;
  ohm_bench *back = bench_new();
  char *record = record_of(bench);
  require(ohm_bench_read_record(back, record, strlen(record), &error) == OHM_OK,
          "a printed record reads back");
  char *again = record_of(back);
  require(strcmp(record, again) == 0, "a record read back prints the same");
  free(record);
  free(again);
  ohm_bench_free(back);
}

static const ohm_circuit *circuit(void) {
  static ohm_circuit *loaded;
  if (!loaded)
    loaded = ohm_circuit_built_in_load(ohm_circuit_built_in_name(0), NULL);
  return loaded;
}

static void require_members(const ohm_answer *answer) {
  for (int group = OHM_GROUP_READINGS; group <= OHM_GROUP_RESISTORS; group++)
    for (size_t i = 0; i < ohm_answer_count(answer, group); i++)
      require(ohm_answer_member(answer, group, i) != NULL, "a group has its members");
}

static void ask(ohm_bench *bench, unsigned verb, unsigned sensor) {
  ohm_error error;
  char report[REPORT_SIZE];
  ohm_bench_use_sensor(bench, sensor_at(sensor % ohm_sensor_built_in_count()));
  ohm_bench_use_circuit(bench, circuit());
  for (unsigned i = 0; i < COMPARED; i++)
    ohm_bench_compare(bench, sensor_at((sensor + 7 * i) % ohm_sensor_built_in_count()), NULL);
  ohm_answer *answer = verbs[verb](bench, &error);
  require((answer != NULL) == (error.status == OHM_OK), "an answer, or a status");
  require((answer != NULL) == (error.message[0] == '\0'), "an answer, or a sentence");
  if (answer) {
    require_members(answer);
    require(ohm_finding_word(ohm_answer_finding(answer), OHM_FIELD_ABOUT) >= 0,
            "the whole says what it is about");
    ohm_answer_print_report(answer, report, sizeof report);
    ohm_answer_print_budget(answer, report, sizeof report);
  }
  ohm_answer_free(answer);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  if (size < 2)
    return 0;
  ohm_error error;
  ohm_bench *bench = bench_new();
  ohm_status status = ohm_bench_read_record(bench, (const char *)data + 2, size - 2, &error);
  require(error.status == (int)status, "the error has the status");
  require((status == OHM_OK) == (error.message[0] == '\0'), "a failure has a sentence");
  if (status == OHM_OK) {
    reads_back(bench);
    ask(bench, data[0] % VERBS, data[1]);
  } else {
    require(ohm_bench_count(bench) == 0, "after a mistake the bench is as it was");
  }
  ohm_bench_free(bench);
  return 0;
}
