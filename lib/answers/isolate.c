/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault: a bench's outcomes as the record they are. */
#include <stdlib.h>

#include "request.h"
#include "isolation.h"
#include "../ground/status.h"
#include "../ground/text.h"

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

static ohm_status judge(const ohm_bench *bench, ohm_answer *answer, ohm_error *error) {
  size_t size = print_record(bench, NULL, 0) + 1;
  char *record = malloc(size);
  if (!record)
    return oc_fail_memory(error);
  print_record(bench, record, size);
  ohm_status status = oc_isolation_judge(bench->circuit, record, size - 1, &answer->whole, error);
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
