/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <ohmcurve.h>

#include "findings.h"
#include "json.h"
#include "lines.h"
#include "screen.h"
#include "verbs.h"

enum { RECORD_MAX = 32768 };

/* ---- the circuits there are ---- */

static void write_circuit(const ohm_circuit *circuit, bool as_json) {
  struct ohm_json json;
  if (as_json) {
    ohm_json_begin(&json);
    ohm_json_text(&json, "name", ohm_circuit_name(circuit));
    ohm_json_text(&json, "description", ohm_circuit_description(circuit));
    ohm_json_text(&json, "source", ohm_circuit_source(circuit));
    ohm_json_number(&json, "links", (double)ohm_circuit_link_count(circuit));
    ohm_json_number(&json, "tests", (double)ohm_circuit_test_count(circuit));
    ohm_json_end(&json);
    return;
  }
  ohm_screen_text(ohm_circuit_name(circuit));
  ohm_screen_pad(ohm_circuit_name(circuit), 20);
  ohm_screen_wrap(20, ohm_circuit_description(circuit));
}

static int list_circuits(bool as_json) {
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    ohm_error error;
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), &error);
    if (!circuit)
      return ohm_refuse(OHM_EXIT_MEMORY, "%s", error.message);
    write_circuit(circuit, as_json);
    ohm_circuit_free(circuit);
  }
  return OHM_EXIT_DONE;
}

static bool is_file(const char *name) {
  size_t length = strlen(name);
  return strchr(name, '/') || (length > 4 && strcmp(name + length - 4, ".csv") == 0) ||
         access(name, F_OK) == 0;
}

static int exit_for(int status) {
  return status == OHM_CANNOT_OPEN || status == OHM_NOT_FOUND ? OHM_EXIT_MISSING
         : status == OHM_NO_MEMORY                            ? OHM_EXIT_MEMORY
                                                              : OHM_EXIT_DATA;
}

static ohm_circuit *circuit_named(const char *name, int *status) {
  bool built_in = false;
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++)
    built_in = built_in || strcmp(ohm_circuit_built_in_name(i), name) == 0;
  ohm_error error;
  ohm_circuit *circuit = !built_in && is_file(name) ? ohm_circuit_load(name, &error)
                                                    : ohm_circuit_built_in_load(name, &error);
  if (!circuit)
    *status = ohm_refuse(exit_for(error.status), "%s%s", error.message,
                         error.status == OHM_NOT_FOUND ? " 'ohmcurve circuit' lists them" : "");
  for (size_t i = 0; i < ohm_circuit_note_count(circuit); i++)
    ohm_remark("note", ohm_circuit_note(circuit, i));
  return circuit;
}

static int print_circuit(const ohm_circuit *circuit) {
  size_t size = ohm_circuit_print(circuit, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    return ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  ohm_circuit_print(circuit, text, size);
  fputs(text, stdout);
  free(text);
  return OHM_EXIT_DONE;
}

/* ---- the record ---- */

/* What was seen so far, a line each; the file holds the same at any time. */
struct record {
  const ohm_circuit *circuit;
  const char *called; /* the circuit, as the command line called it */
  const char *path;   /* NULL when it is kept nowhere */
  size_t length;
  char text[RECORD_MAX];
};

static int add_line(struct record *record, const char *line) {
  size_t length = strlen(line);
  if (record->length + length + 2 > RECORD_MAX)
    return ohm_refuse(OHM_EXIT_DATA, "the record is full: leave out what was measured again");
  memcpy(record->text + record->length, line, length);
  record->length += length;
  record->text[record->length++] = '\n';
  record->text[record->length] = '\0';
  return OHM_EXIT_DONE;
}

static int load_record(struct record *record) {
  FILE *file = fopen(record->path, "r");
  if (!file && errno == ENOENT)
    return OHM_EXIT_DONE;
  if (!file)
    return ohm_refuse(OHM_EXIT_MISSING, "%s cannot be read: check its name and its rights",
                      record->path);
  record->length = fread(record->text, 1, RECORD_MAX - 1, file);
  record->text[record->length] = '\0';
  bool whole = feof(file) && !ferror(file) && strlen(record->text) == record->length;
  fclose(file);
  if (!whole)
    return ohm_refuse(OHM_EXIT_DATA, "%s is no record: it is text of less than 32 KiB",
                      record->path);
  if (record->length > 0 && record->text[record->length - 1] != '\n')
    return add_line(record, "");
  return OHM_EXIT_DONE;
}

/* The new file takes the old one's place when it is whole. */
static int save_record(const struct record *record) {
  char beside[4096];
  if (!record->path)
    return OHM_EXIT_DONE;
  int length = snprintf(beside, sizeof beside, "%s.new", record->path);
  FILE *file = 0 < length && (size_t)length < sizeof beside ? fopen(beside, "w") : NULL;
  bool written = file && fwrite(record->text, 1, record->length, file) == record->length;
  if (file)
    written = fclose(file) == 0 && written;
  if (written && rename(beside, record->path) == 0)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_OUTPUT, "%s cannot be written: check its name, its rights and room",
                    record->path);
}

/* Whether a line tells something that was seen, and not what the record is of. */
static bool tells(const char *line) {
  line += strspn(line, " \t\r");
  return *line != '#' && *line != '\n' && *line != '\0' && strncmp(line, "circuit=", 8) != 0 &&
         strncmp(line, "fan=", 4) != 0;
}

static bool drop_last(struct record *record) {
  size_t at = record->length;
  while (at > 0) {
    size_t start = at - 1;
    while (start > 0 && record->text[start - 1] != '\n')
      start--;
    if (tells(record->text + start)) {
      memmove(record->text + start, record->text + at, record->length - at + 1);
      record->length -= at - start;
      return true;
    }
    at = start;
  }
  return false;
}

static int judge(const struct record *record, ohm_finding *finding) {
  ohm_error error;
  if (ohm_isolation_judge(record->circuit, record->text, record->length, finding, &error) == OHM_OK)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
}

static int begin_record(const struct ohm_arguments *arguments, struct record *record) {
  char line[256];
  int status = record->path ? load_record(record) : OHM_EXIT_DONE;
  if (status == OHM_EXIT_DONE && record->length == 0) {
    snprintf(line, sizeof line, "circuit=%s", ohm_circuit_name(record->circuit));
    status = add_line(record, line);
  }
  if (status == OHM_EXIT_DONE && arguments->values[OHM_OPTION_FAN]) {
    snprintf(line, sizeof line, "fan=%s", arguments->values[OHM_OPTION_FAN]);
    status = add_line(record, line);
  }
  for (size_t i = 0; i < arguments->repeated_count && status == OHM_EXIT_DONE; i++)
    status = add_line(record, arguments->repeated[i]);
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
    ohm_screen_word(12, &used, entry, strlen(entry));
  }
  if (used > 12)
    putchar('\n');
}

static void write_why(const ohm_finding *finding) {
  printf("%-12s", "Why");
  ohm_screen_wrap(12, text_of(finding, OHM_FIELD_NEXT_WHY));
  write_list("Suspect", finding, OHM_FIELD_SUSPECTS);
  write_list("Cleared", finding, OHM_FIELD_CLEARED);
  printf("%-12s", "Source");
  ohm_screen_wrap(12, text_of(finding, OHM_FIELD_NEXT_SOURCE));
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

/* Put an answer into the record, unless it cannot be judged. Returns whether it is in. */
static bool take_answer(struct record *record, const char *answer, ohm_finding *finding) {
  char line[256];
  ohm_finding after;
  if (strlen(answer) > 200 || !line_of(answer, finding, line, sizeof line)) {
    write_help();
    return false;
  }
  size_t length = record->length;
  if (add_line(record, line) != OHM_EXIT_DONE || judge(record, &after) != OHM_EXIT_DONE) {
    record->length = length;
    record->text[length] = '\0';
    return false;
  }
  *finding = after;
  return true;
}

static int go_back(struct record *record, ohm_finding *finding) {
  if (!drop_last(record))
    puts("Nothing was answered yet.");
  return judge(record, finding);
}

/* How to go on from here. */
static void write_farewell(const struct record *record) {
  if (record->path) {
    printf("\nKept in %s; the same command goes on from there.\n", record->path);
    return;
  }
  printf("\nTo go on: ohmcurve circuit %s", record->called);
  for (const char *line = record->text; *line; line += strcspn(line, "\n") + 1)
    if (tells(line) || strncmp(line, "fan=", 4) == 0)
      printf(" \\\n  --saw %.*s", (int)strcspn(line, "\n"), line);
  putchar('\n');
}

static int converse(struct record *record, ohm_finding *finding) {
  static struct ohm_lines lines;
  bool fresh = true;
  int status = save_record(record);
  ohm_lines_begin(&lines);
  while (status == OHM_EXIT_DONE) {
    bool closed = ohm_finding_verdict(finding) == OHM_WITHIN;
    if (fresh)
      status = ohm_findings_write_report(finding);
    if (closed || status != OHM_EXIT_DONE)
      break;
    fputs("> ", stdout);
    enum ohm_line_kind kind = ohm_lines_next(&lines);
    if (kind == OHM_LINE_END || kind == OHM_LINE_FAILED)
      break;
    if (kind == OHM_LINE_UNFIT || begins(lines.text, "help") || begins(lines.text, "?")) {
      write_help();
      fresh = false;
    } else if (begins(lines.text, "stop")) {
      break;
    } else if (begins(lines.text, "why")) {
      write_why(finding);
      fresh = false;
    } else if (begins(lines.text, "back")) {
      status = go_back(record, finding);
      fresh = true;
    } else {
      fresh = take_answer(record, lines.text, finding);
    }
    if (status == OHM_EXIT_DONE)
      status = save_record(record);
  }
  write_farewell(record);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(finding) : status;
}

/* ---- the verb ---- */

static int isolate(const struct ohm_arguments *arguments, struct record *record) {
  ohm_finding finding;
  bool as_json = arguments->values[OHM_OPTION_JSON] != NULL;
  int status = begin_record(arguments, record);
  if (status == OHM_EXIT_DONE)
    status = judge(record, &finding);
  if (status != OHM_EXIT_DONE)
    return status;
  if (!as_json && arguments->repeated_count == 0 && isatty(STDIN_FILENO))
    return converse(record, &finding);
  if (arguments->repeated_count > 0)
    status = save_record(record);
  if (status != OHM_EXIT_DONE)
    return status;
  if (as_json)
    ohm_findings_write_json(&finding);
  else
    status = ohm_findings_write_report(&finding);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&finding) : status;
}

int ohm_circuit_run(const struct ohm_arguments *arguments) {
  int status = OHM_EXIT_DONE;
  if (arguments->count == 0)
    return list_circuits(arguments->values[OHM_OPTION_JSON] != NULL);
  struct record *record = calloc(1, sizeof *record);
  ohm_circuit *circuit = record ? circuit_named(arguments->operands[0], &status) : NULL;
  if (!record)
    status = ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  if (circuit && arguments->values[OHM_OPTION_PRINT]) {
    status = print_circuit(circuit);
  } else if (circuit) {
    record->circuit = circuit;
    record->called = arguments->operands[0];
    record->path = arguments->values[OHM_OPTION_RECORD];
    status = isolate(arguments, record);
  }
  ohm_circuit_free(circuit);
  free(record);
  return status;
}
