/* SPDX-License-Identifier: MIT */
#include "answers.h"

#include <stdio.h>
#include <stdlib.h>

#include "bench.h"
#include "json.h"
#include "screen.h"
#include "sensors.h"

/* ---- JSON ---- */

static void write_list(struct shell_json *json, const ohm_finding *finding, int field) {
  const char *text = ohm_finding_text(finding, field, 0);
  if (!text)
    return;
  shell_json_list_begin(json, ohm_field_name(field));
  for (size_t i = 0; (text = ohm_finding_text(finding, field, i)) != NULL; i++)
    shell_json_list_text(json, text);
  shell_json_list_end(json);
}

void shell_answers_write_finding(const char *record, const ohm_finding *finding) {
  struct shell_json json;
  int field;
  shell_json_begin(&json, record);
  for (size_t i = 0; (field = ohm_field_at(i)) != 0; i++) {
    int kind = ohm_field_kind_of(field);
    if (kind == OHM_KIND_NUMBER)
      shell_json_number(&json, ohm_field_name(field), ohm_finding_number(finding, field));
    else if (kind == OHM_KIND_LIST)
      write_list(&json, finding, field);
    else
      shell_json_text(&json, ohm_field_name(field), ohm_finding_text(finding, field, 0));
  }
  shell_json_end(&json);
}

static void write_json(const ohm_answer *answer) {
  static const struct {
    ohm_group group;
    const char *record;
  } groups[] = {{OHM_GROUP_READINGS, "reading"},
                {OHM_GROUP_CANDIDATES, "candidate"},
                {OHM_GROUP_EXPLANATIONS, "explanation"},
                {OHM_GROUP_TESTS, "test"},
                {OHM_GROUP_RESISTORS, "resistor"}};
  for (size_t i = 0; i < sizeof groups / sizeof groups[0]; i++)
    for (size_t j = 0; j < ohm_answer_count(answer, (int)groups[i].group); j++)
      shell_answers_write_finding(groups[i].record,
                                  ohm_answer_member(answer, (int)groups[i].group, j));
  shell_answers_write_finding("finding", ohm_answer_finding(answer));
}

/* ---- the screen ---- */

int shell_answers_write(shell_print_answer *print, const ohm_answer *answer) {
  size_t size = print(answer, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    return shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  print(answer, text, size);
  fputs(text, stdout);
  free(text);
  return SHELL_EXIT_DONE;
}

static int write_screen(const ohm_answer *answer, bool budget) {
  int status = shell_answers_write(ohm_answer_print_report, answer);
  if (!budget || status != SHELL_EXIT_DONE)
    return status;
  putchar('\n');
  return shell_answers_write(ohm_answer_print_budget, answer);
}

int shell_answers_give(const struct shell_arguments *arguments, const ohm_answer *answer) {
  int status = SHELL_EXIT_DONE;
  if (arguments->values[SHELL_OPTION_JSON])
    write_json(answer);
  else
    status = write_screen(answer, arguments->values[SHELL_OPTION_BUDGET] != NULL);
  return status == SHELL_EXIT_DONE ? (int)ohm_finding_verdict(ohm_answer_finding(answer)) : status;
}

int shell_answers_ask(const struct shell_arguments *arguments, const ohm_bench *bench,
                      shell_ask *ask) {
  ohm_error error;
  ohm_answer *answer = ask(bench, &error);
  if (!answer)
    return shell_bench_refuse(bench, &error);
  int status = shell_answers_give(arguments, answer);
  ohm_answer_free(answer);
  return status;
}

int shell_answers_tell(const struct shell_arguments *arguments, shell_ask *ask) {
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  ohm_bench *bench = sensor ? shell_bench_new(arguments, &status) : NULL;
  ohm_bench_use_sensor(bench, sensor);
  if (bench)
    status = shell_answers_ask(arguments, bench, ask);
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return status == (int)OHM_UNDECIDED ? SHELL_EXIT_DONE : status;
}
