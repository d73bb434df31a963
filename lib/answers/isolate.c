/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault: a bench's outcomes as the record they are, and what
 * each test that was made says. */
#include <stdlib.h>

#include "request.h"
#include "isolation.h"
#include "told.h"
#include "../ground/status.h"
#include "../ground/text.h"
#include "../model/deduction.h"

/* Where the fan is to start, then what was seen; an outcome may say the first again. */
static size_t print_record(const ohm_bench *bench, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  double fan_c = bench->numbers[OHM_SETTING_FAN_C];
  char number[OHM_NUMBER_SIZE];
  if (!isnan(fan_c)) {
    ohm_number_print(fan_c, number, sizeof number);
    oc_text_add(&out, "fan=");
    oc_text_add(&out, number);
    oc_text_add(&out, "C\n");
  }
  for (size_t i = 0; i < bench->count; i++)
    if (bench->lines[i].reading.kind == OC_READING_OUTCOME) {
      oc_text_add(&out, bench->lines[i].text);
      oc_text_add(&out, "\n");
    }
  return out.length;
}

/* ---- each test ---- */

struct work {
  struct oc_record record;
  struct oc_deduction deduction;
};

/* Whether an entry is the last word on a test, and still stands. */
static bool stands(const struct work *work, size_t at) {
  const struct oc_record_entry *entry = &work->record.entries[at];
  if (entry->of != OC_RECORD_TEST || work->deduction.tests[entry->index].seen == OC_SEEN_NOTHING)
    return false;
  for (size_t i = at + 1; i < work->record.count; i++) {
    const struct oc_record_entry *later = &work->record.entries[i];
    if (later->of == OC_RECORD_TEST && later->index == entry->index)
      return false;
  }
  return true;
}

static ohm_outcome outcome_of(enum oc_seen seen) {
  switch (seen) {
  case OC_SEEN_GOOD:
    return OHM_OUTCOME_GOOD;
  case OC_SEEN_BAD:
    return OHM_OUTCOME_BAD;
  case OC_SEEN_SKIPPED:
    return OHM_OUTCOME_SKIPPED;
  default:
    return OHM_OUTCOME_UNSURE;
  }
}

static void tell_test(const struct oc_deduction *it, size_t test, ohm_finding *finding) {
  const struct oc_test *made = &it->circuit->tests[test];
  const struct oc_view *view = &it->tests[test];
  ohm_verdict verdict = view->seen == OC_SEEN_GOOD  ? OHM_WITHIN
                        : view->seen == OC_SEEN_BAD ? OHM_OUTSIDE
                                                    : OHM_UNDECIDED;
  oc_finding_add_entry(finding, OHM_FIELD_CIRCUIT, it->circuit->name);
  oc_finding_add_entry(finding, OHM_FIELD_TEST, made->cells[OHM_TEST_TEST]);
  oc_finding_set_number(finding, OHM_FIELD_VERDICT, verdict);
  oc_finding_set_number(finding, OHM_FIELD_OUTCOME, outcome_of(view->seen));
  oc_finding_set_number(finding, OHM_FIELD_MINUTES, made->minutes);
  oc_finding_set_number(finding, OHM_FIELD_MEASURED, view->number);
  oc_finding_set_number(finding, OHM_FIELD_FUSE_AMPERES, view->amperes);
  if (verdict == OHM_WITHIN)
    oc_told_links(finding, OHM_FIELD_CLEARED, it->circuit, made->clears);
  if (verdict == OHM_OUTSIDE)
    oc_told_links(finding, OHM_FIELD_SUSPECTS, it->circuit, oc_deduction_accused(it, test));
}

static void tell_tests(const struct work *work, ohm_answer *answer) {
  size_t count = 0;
  for (size_t i = 0; i < work->record.count; i++)
    count += stands(work, i);
  ohm_finding *each = oc_answer_group(answer, OHM_GROUP_TESTS, count);
  for (size_t i = 0; each && i < work->record.count; i++)
    if (stands(work, i))
      tell_test(&work->deduction, work->record.entries[i].index, each++);
}

/* ---- the verb ---- */

static ohm_status judge_record(const ohm_circuit *circuit, const char *record, size_t length,
                               ohm_answer *answer, ohm_error *error) {
  struct work *work = malloc(sizeof *work);
  if (!work)
    return oc_fail_memory(error);
  ohm_status status = oc_record_read(circuit, record, length, &work->record, error);
  if (status == OHM_OK) {
    oc_deduction_begin(&work->deduction, circuit, &work->record);
    tell_tests(work, answer);
  }
  free(work);
  return status == OHM_OK ? oc_isolation_judge(circuit, record, length, &answer->whole, error)
                          : status;
}

static ohm_status judge(const ohm_bench *bench, ohm_answer *answer, ohm_error *error) {
  size_t size = print_record(bench, NULL, 0) + 1;
  char *record = malloc(size);
  if (!record)
    return oc_fail_memory(error);
  print_record(bench, record, size);
  ohm_status status = judge_record(bench->circuit, record, size - 1, answer, error);
  free(record);
  return status;
}

ohm_answer *ohm_bench_isolate(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_begin(&ask, bench, "circuit", error);
  if (status == OHM_OK && !bench->circuit)
    status = oc_fail(error, OHM_NOT_FOUND, "circuit needs a circuit, and there is none on the ",
                     "bench: name it with ohm_bench_use_circuit()", (const char *)NULL);
  if (status != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  if (answer)
    status = judge(bench, answer, error);
  return oc_answer_done(answer, status, error);
}

size_t ohm_circuit_print_answer(const ohm_circuit *circuit, const ohm_answer *answer, char *buffer,
                                size_t size) {
  return oc_isolation_print_finding(circuit, ohm_answer_finding(answer), buffer, size);
}
