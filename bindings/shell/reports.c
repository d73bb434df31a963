/* SPDX-License-Identifier: MIT */
/* Reports of several findings: the lines of the members of an answer about its report. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "answers.h"
#include "screen.h"

static double number(const ohm_finding *finding, int field) {
  return ohm_finding_number(finding, field);
}

static int write_lines(const ohm_finding *finding) {
  size_t size = ohm_finding_print_report(finding, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    return shell_refuse(SHELL_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  ohm_finding_print_report(finding, text, size);
  fputs(text, stdout);
  free(text);
  return SHELL_EXIT_DONE;
}

/* ---- several readings ---- */

static void print_degrees(const ohm_finding *finding, int field, char *cell) {
  double t_c = number(finding, field);
  strcpy(cell, "-");
  if (isfinite(t_c))
    shell_temperature_print(t_c, 1, cell);
}

static void write_readings(const ohm_answer *answer) {
  enum { COLUMN = 20 };
  printf("%-*s%-*s%s\n", COLUMN, "read", COLUMN, "at", "means");
  for (size_t i = 0; i < ohm_answer_count(answer, OHM_GROUP_READINGS); i++) {
    const ohm_finding *finding = ohm_answer_member(answer, OHM_GROUP_READINGS, i);
    char at[SHELL_CELL_SIZE], means[SHELL_CELL_SIZE];
    print_degrees(finding, OHM_FIELD_AT_C, at);
    print_degrees(finding, OHM_FIELD_T_C, means);
    printf("%-*s%-*s%s\n", COLUMN, ohm_finding_text(finding, OHM_FIELD_READ, 0), COLUMN, at, means);
  }
  putchar('\n');
}

/* ---- candidates ---- */

enum { NAME_WIDTH = 24, CHANCE_WIDTH = 10, KIND_WIDTH = 10, FURTHER_MAX = 3 };

static bool leads(const ohm_finding *member) {
  return number(member, OHM_FIELD_LEADING) == 1;
}

/* Of those compared; where none leads, how they share what is not theirs says nothing. */
static void write_chance(double p, bool none_leads) {
  char cell[SHELL_CELL_SIZE];
  double in_100 = nearbyint(100 * p);
  if (none_leads)
    strcpy(cell, "-");
  else if (in_100 < 1)
    strcpy(cell, "under 1");
  else if (in_100 > 99)
    strcpy(cell, "over 99");
  else
    snprintf(cell, sizeof cell, "%.0f", in_100);
  printf("%-*s", CHANCE_WIDTH, cell);
}

static const char *mark(const ohm_finding *candidate) {
  if (leads(candidate))
    return "";
  bool fits = number(candidate, OHM_FIELD_P_FIT) >= 1 - number(candidate, OHM_FIELD_LEVEL);
  return fits ? "  less likely" : "  fits badly";
}

static void write_candidate(const ohm_finding *candidate, bool none_leads) {
  const char *name = ohm_finding_text(candidate, OHM_FIELD_SENSOR, 0);
  const char *kind = ohm_finding_text(candidate, OHM_FIELD_SENSOR_KIND, 0);
  double further_ohm = number(candidate, OHM_FIELD_SEPARATING_OHM);
  shell_screen_text(name);
  shell_screen_pad(name, NAME_WIDTH);
  write_chance(number(candidate, OHM_FIELD_P_SENSOR), none_leads);
  shell_screen_text(kind ? kind : "-");
  if (isfinite(further_ohm)) {
    char cell[SHELL_CELL_SIZE];
    ohm_resistance_print(further_ohm, 3, cell, sizeof cell);
    shell_screen_pad(kind ? kind : "-", KIND_WIDTH);
    fputs(cell, stdout);
  }
  printf("%s\n", mark(candidate));
}

static void write_head(const ohm_finding *finding) {
  double t_c = number(finding, OHM_FIELD_SEPARATING_C);
  printf("%-*s%-*s%s", NAME_WIDTH, "it may be", CHANCE_WIDTH, "in 100", "feeds");
  if (isfinite(t_c))
    printf("%*snear %.0f C it would read", KIND_WIDTH - (int)strlen("feeds"), "", t_c);
  putchar('\n');
}

/* Those that lead, and the next few. */
static void write_candidates(const ohm_answer *answer) {
  const ohm_finding *finding = ohm_answer_finding(answer);
  size_t further = 0;
  bool none_leads = !ohm_finding_text(finding, OHM_FIELD_SENSOR, 0);
  write_head(finding);
  for (size_t i = 0; i < ohm_answer_count(answer, OHM_GROUP_CANDIDATES); i++) {
    const ohm_finding *candidate = ohm_answer_member(answer, OHM_GROUP_CANDIDATES, i);
    if (leads(candidate) || further++ < FURTHER_MAX)
      write_candidate(candidate, none_leads);
  }
  putchar('\n');
}

/* ---- members with lines of their own ---- */

static int write_members(const ohm_answer *answer, int group, bool leading_only) {
  int status = SHELL_EXIT_DONE;
  bool any = false;
  for (size_t i = 0; i < ohm_answer_count(answer, group) && status == SHELL_EXIT_DONE; i++) {
    const ohm_finding *member = ohm_answer_member(answer, group, i);
    if (leading_only && !leads(member))
      continue;
    any = true;
    status = write_lines(member);
  }
  if (any)
    putchar('\n');
  return status;
}

static int write_above(const ohm_answer *answer) {
  switch (ohm_finding_word(ohm_answer_finding(answer), OHM_FIELD_ABOUT)) {
  case OHM_VERB_CHECK:
    if (ohm_answer_count(answer, OHM_GROUP_READINGS) > 1)
      write_readings(answer);
    return SHELL_EXIT_DONE;
  case OHM_VERB_IDENTIFY:
    if (ohm_answer_count(answer, OHM_GROUP_CANDIDATES) > 0)
      write_candidates(answer);
    return SHELL_EXIT_DONE;
  case OHM_VERB_PINS:
    return write_members(answer, OHM_GROUP_READINGS, false);
  case OHM_VERB_EXPLAIN:
    return write_members(answer, OHM_GROUP_EXPLANATIONS, true);
  default:
    return SHELL_EXIT_DONE;
  }
}

static int write_below(const ohm_answer *answer) {
  if (ohm_answer_count(answer, OHM_GROUP_RESISTORS) < 2)
    return SHELL_EXIT_DONE;
  puts("\nOr two of them:\n");
  return write_lines(ohm_answer_member(answer, OHM_GROUP_RESISTORS, 1));
}

int shell_answers_write_report(const ohm_answer *answer) {
  int status = write_above(answer);
  if (status == SHELL_EXIT_DONE)
    status = shell_answers_write(ohm_answer_print_report, answer);
  return status == SHELL_EXIT_DONE ? write_below(answer) : status;
}
