/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "json.h"
#include "lines.h"
#include "screen.h"

enum { RECORD_MAX = 32768 };

/* ---- the circuits there are ---- */

static void write_circuit(const ohm_circuit *circuit, bool as_json) {
  struct shell_json json;
  if (as_json) {
    shell_json_begin(&json, "circuit");
    shell_json_text(&json, "name", ohm_circuit_name(circuit));
    shell_json_text(&json, "description", ohm_circuit_description(circuit));
    shell_json_text(&json, "source", ohm_circuit_source(circuit));
    shell_json_number(&json, "links", (double)ohm_circuit_link_count(circuit));
    shell_json_number(&json, "tests", (double)ohm_circuit_test_count(circuit));
    shell_json_end(&json);
    return;
  }
  shell_screen_text(ohm_circuit_name(circuit));
  shell_screen_pad(ohm_circuit_name(circuit), 20);
  shell_screen_wrap(20, ohm_circuit_description(circuit));
}

static int list_circuits(bool as_json) {
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    ohm_error error;
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), &error);
    if (!circuit)
      return shell_refuse(SHELL_EXIT_MEMORY, "%s", error.message);
    write_circuit(circuit, as_json);
    ohm_circuit_free(circuit);
  }
  return SHELL_EXIT_DONE;
}

static bool is_file(const char *name) {
  size_t length = strlen(name);
  return strchr(name, '/') || (length > 4 && strcmp(name + length - 4, ".csv") == 0) ||
         access(name, F_OK) == 0;
}

static ohm_circuit *circuit_named(const char *name, int *status) {
  bool built_in = false;
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++)
    built_in = built_in || strcmp(ohm_circuit_built_in_name(i), name) == 0;
  ohm_error error;
  ohm_circuit *circuit = !built_in && is_file(name) ? ohm_circuit_load(name, &error)
                                                    : ohm_circuit_built_in_load(name, &error);
  if (!circuit)
    *status = shell_refuse_load(&error, " 'ohmcurve circuit' lists them");
  for (size_t i = 0; i < ohm_circuit_note_count(circuit); i++)
    shell_remark("note", ohm_circuit_note(circuit, i));
  return circuit;
}

static int print_circuit(const ohm_circuit *circuit) {
  size_t size = ohm_circuit_print(circuit, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    return shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  ohm_circuit_print(circuit, text, size);
  fputs(text, stdout);
  free(text);
  return SHELL_EXIT_DONE;
}

/* ---- the record ---- */

/* What was seen so far; the file holds the same at any time. */
struct record {
  ohm_bench *bench;
  const char *called; /* the circuit, as the command line called it */
  const char *path;   /* NULL when it is kept nowhere */
};

static int read_text(const char *path, FILE *file, ohm_bench *bench) {
  static char text[RECORD_MAX];
  ohm_error error;
  size_t length = fread(text, 1, sizeof text, file);
  if (ferror(file) || !feof(file) || memchr(text, '\0', length))
    return shell_refuse(SHELL_EXIT_DATA, "%s is no record: it is text of less than 32 KiB", path);
  if (ohm_bench_read_record(bench, text, length, &error) == OHM_OK)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_DATA, "%s: %s", path, error.message);
}

static int load_record(const struct record *record) {
  FILE *file = fopen(record->path, "r");
  if (!file && errno == ENOENT)
    return SHELL_EXIT_DONE;
  if (!file)
    return shell_refuse(SHELL_EXIT_MISSING, "%s cannot be read: check its name and its rights",
                        record->path);
  int status = read_text(record->path, file, record->bench);
  fclose(file);
  return status;
}

static bool write_text(const ohm_bench *bench, FILE *file) {
  size_t length = ohm_bench_print(bench, NULL, 0);
  char *text = malloc(length + 1);
  if (!text)
    return false;
  ohm_bench_print(bench, text, length + 1);
  bool written = fwrite(text, 1, length, file) == length;
  free(text);
  return written;
}

/* The new file takes the old one's place when it is whole. */
static int save_record(const struct record *record) {
  char beside[4096];
  if (!record->path)
    return SHELL_EXIT_DONE;
  int length = snprintf(beside, sizeof beside, "%s.new", record->path);
  FILE *file = 0 < length && (size_t)length < sizeof beside ? fopen(beside, "w") : NULL;
  bool written = file && write_text(record->bench, file);
  if (file)
    written = fclose(file) == 0 && written;
  if (written && rename(beside, record->path) == 0)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_OUTPUT,
                      "%s cannot be written: check its name, its rights and room", record->path);
}

/* Whether a reading tells something that was seen, and not what the record is of. */
static bool tells(const char *reading) {
  return strncmp(reading, "circuit=", 8) != 0 && strncmp(reading, "fan=", 4) != 0;
}

static bool drop_last(ohm_bench *bench) {
  for (size_t i = ohm_bench_count(bench); i-- > 0;)
    if (tells(ohm_bench_reading(bench, i)))
      return ohm_bench_forget(bench, i) == OHM_OK;
  return false;
}

static int begin_record(const struct shell_arguments *arguments, const ohm_circuit *circuit,
                        struct record *record) {
  char line[256];
  ohm_bench_use_circuit(record->bench, circuit);
  int status = record->path ? load_record(record) : SHELL_EXIT_DONE;
  snprintf(line, sizeof line, "circuit=%s", ohm_circuit_name(circuit));
  if (status == SHELL_EXIT_DONE && ohm_bench_count(record->bench) == 0)
    status = shell_bench_read(record->bench, line);
  if (status == SHELL_EXIT_DONE)
    status = shell_bench_set(record->bench, arguments);
  for (size_t i = 0; i < arguments->repeated_count && status == SHELL_EXIT_DONE; i++)
    status = shell_bench_read(record->bench, arguments->repeated[i]);
  for (size_t i = 1; i < arguments->count && status == SHELL_EXIT_DONE; i++)
    status = shell_bench_read(record->bench, arguments->operands[i]);
  return status;
}

/* ---- the conversation ---- */

static const char *text_of(const ohm_finding *finding, int field) {
  const char *text = ohm_finding_text(finding, field, 0);
  return text ? text : "";
}

static void write_list(const char *label, const ohm_finding *finding, int field) {
  const char *entry;
  size_t used = 12;
  for (size_t i = 0; (entry = ohm_finding_text(finding, field, i)); i++) {
    if (i == 0)
      printf("%-12s", label);
    shell_screen_word(12, &used, entry, strlen(entry));
  }
  if (used > 12)
    putchar('\n');
}

static void write_why(const ohm_finding *finding) {
  printf("%-12s", "Why");
  shell_screen_wrap(12, text_of(finding, OHM_FIELD_NEXT_WHY));
  write_list("Suspect", finding, OHM_FIELD_SUSPECTS);
  write_list("Cleared", finding, OHM_FIELD_CLEARED);
  printf("%-12s", "Source");
  shell_screen_wrap(12, text_of(finding, OHM_FIELD_NEXT_SOURCE));
}

static void write_help(void) {
  puts("Answer with a number, good, bad or skip; or write");
  puts("  back           take the last answer out again");
  puts("  why            what this test is for, and where it was printed");
  puts("  none TOOL      that tool is not to be had; yes FACT: the maker states it");
  puts("  renewed LINK   it is renewed or repaired; NAME=OUTCOME for any other test");
  puts("  stop           leave; nothing is lost");
}

static bool begins(const char *line, const char *word) {
  size_t length = strlen(word);
  return strncmp(line, word, length) == 0 && (line[length] == ' ' || line[length] == '\0');
}

/* What an answer adds to the record: "fuse=good". False when it answers nothing. */
static bool line_of(const char *answer, const ohm_finding *finding, char *line, size_t size) {
  static const char *const behind[] = {"none", "yes", "renewed"};
  for (size_t i = 0; i < sizeof behind / sizeof behind[0]; i++) {
    if (!begins(answer, behind[i]))
      continue;
    const char *name = answer + strlen(behind[i]);
    name += strspn(name, " ");
    if (*name == '\0' && i == 2 && !ohm_finding_text(finding, OHM_FIELD_FAULTY, 1))
      name = text_of(finding, OHM_FIELD_FAULTY);
    snprintf(line, size, "%s=%s", name, behind[i]);
    return *name != '\0';
  }
  if (strchr(answer, '=')) {
    snprintf(line, size, "%s", answer);
    return true;
  }
  snprintf(line, size, "%s=%s", text_of(finding, OHM_FIELD_NEXT), answer);
  return line[0] != '=';
}

/* The answer of the library, in place of the one before; NULL after saying why, and then
 * that one is kept. */
static bool judge(const ohm_bench *bench, ohm_answer **answer, int *status) {
  ohm_error error;
  ohm_answer *after = ohm_bench_isolate(bench, &error);
  if (!after) {
    *status = shell_bench_refuse(bench, &error);
    return false;
  }
  ohm_answer_free(*answer);
  *answer = after;
  return true;
}

/* Put an answer into the record, unless it cannot be judged. Returns whether it is in. */
static bool take_answer(ohm_bench *bench, const char *words, ohm_answer **answer) {
  char line[256];
  int status;
  if (strlen(words) > 200 || !line_of(words, ohm_answer_finding(*answer), line, sizeof line)) {
    write_help();
    return false;
  }
  size_t count = ohm_bench_count(bench);
  if (shell_bench_read(bench, line) != SHELL_EXIT_DONE)
    return false;
  if (judge(bench, answer, &status))
    return true;
  ohm_bench_forget(bench, count);
  return false;
}

static int go_back(ohm_bench *bench, ohm_answer **answer) {
  int status = SHELL_EXIT_DONE;
  if (!drop_last(bench))
    puts("Nothing was answered yet.");
  judge(bench, answer, &status);
  return status;
}

/* How to go on from here. */
static void write_farewell(const struct record *record) {
  const char *fan = ohm_bench_setting(record->bench, OHM_SETTING_FAN_C);
  if (record->path) {
    printf("\nKept in %s; the same command goes on from there.\n", record->path);
    return;
  }
  printf("\nTo go on: ohmcurve circuit %s", record->called);
  if (fan)
    printf(" --fan %s", fan);
  for (size_t i = 0; i < ohm_bench_count(record->bench); i++)
    if (tells(ohm_bench_reading(record->bench, i)))
      printf(" \\\n  %s", ohm_bench_reading(record->bench, i));
  putchar('\n');
}

static int converse(const struct record *record, ohm_answer **answer) {
  static struct shell_lines lines;
  bool fresh = true;
  int status = save_record(record);
  shell_lines_begin(&lines);
  while (status == SHELL_EXIT_DONE) {
    bool closed = ohm_finding_verdict(ohm_answer_finding(*answer)) == OHM_WITHIN;
    if (fresh)
      status = shell_answers_write(ohm_answer_print_report, *answer);
    if (closed || status != SHELL_EXIT_DONE)
      break;
    fputs("> ", stdout);
    enum shell_line_kind kind = shell_lines_next(&lines);
    if (kind == SHELL_LINE_END || kind == SHELL_LINE_FAILED)
      break;
    if (kind == SHELL_LINE_UNFIT || begins(lines.text, "help") || begins(lines.text, "?")) {
      write_help();
      fresh = false;
    } else if (begins(lines.text, "stop")) {
      break;
    } else if (begins(lines.text, "why")) {
      write_why(ohm_answer_finding(*answer));
      fresh = false;
    } else if (begins(lines.text, "back")) {
      status = go_back(record->bench, answer);
      fresh = true;
    } else {
      fresh = take_answer(record->bench, lines.text, answer);
    }
    if (status == SHELL_EXIT_DONE)
      status = save_record(record);
  }
  write_farewell(record);
  return status == SHELL_EXIT_DONE ? (int)ohm_finding_verdict(ohm_answer_finding(*answer)) : status;
}

/* ---- the verb ---- */

/* What cannot be judged is not kept. */
static int isolate(const struct shell_arguments *arguments, const struct record *record) {
  bool told = arguments->repeated_count > 0 || arguments->count > 1;
  int status = SHELL_EXIT_DONE;
  ohm_answer *answer = NULL;
  if (!judge(record->bench, &answer, &status))
    return status;
  if (!told && !arguments->values[SHELL_OPTION_JSON] && isatty(STDIN_FILENO)) {
    status = converse(record, &answer);
  } else {
    status = told ? save_record(record) : SHELL_EXIT_DONE;
    if (status == SHELL_EXIT_DONE)
      status = shell_answers_give(arguments, answer);
  }
  ohm_answer_free(answer);
  return status;
}

static int isolate_in(const struct shell_arguments *arguments, const ohm_circuit *circuit) {
  int status = SHELL_EXIT_DONE;
  struct record record = {shell_bench_new(arguments, &status), arguments->operands[0],
                          arguments->values[SHELL_OPTION_RECORD]};
  if (record.bench)
    status = begin_record(arguments, circuit, &record);
  if (status == SHELL_EXIT_DONE)
    status = isolate(arguments, &record);
  ohm_bench_free(record.bench);
  return status;
}

int shell_circuit_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  if (arguments->count == 0)
    return list_circuits(arguments->values[SHELL_OPTION_JSON] != NULL);
  ohm_circuit *circuit = circuit_named(arguments->operands[0], &status);
  if (circuit && arguments->values[SHELL_OPTION_PRINT])
    status = print_circuit(circuit);
  else if (circuit)
    status = isolate_in(arguments, circuit);
  ohm_circuit_free(circuit);
  return status;
}
