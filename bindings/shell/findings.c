/* SPDX-License-Identifier: MIT */
#include "findings.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "json.h"
#include "options.h"
#include "screen.h"

enum { COLUMN = 20 };

static void write_list(struct ohm_json *json, const ohm_finding *finding, int field) {
  if (!ohm_finding_text(finding, field, 0))
    return;
  ohm_json_list_begin(json, ohm_field_name(field));
  const char *text;
  for (size_t i = 0; (text = ohm_finding_text(finding, field, i)) != NULL; i++)
    ohm_json_list_text(json, text);
  ohm_json_list_end(json);
}

void ohm_findings_write_json(const ohm_finding *finding) {
  struct ohm_json json;
  ohm_json_begin(&json);
  for (int field = 0; ohm_field_name(field); field++) {
    int kind = ohm_field_kind_of(field);
    if (kind == OHM_KIND_NUMBER)
      ohm_json_number(&json, ohm_field_name(field), ohm_finding_number(finding, field));
    else if (kind == OHM_KIND_TEXT)
      ohm_json_text(&json, ohm_field_name(field), ohm_finding_text(finding, field, 0));
    else
      write_list(&json, finding, field);
  }
  ohm_json_end(&json);
}

typedef size_t print_function(const ohm_finding *finding, char *buffer, size_t size);

static int write_whole(print_function *print, const ohm_finding *finding) {
  size_t size = print(finding, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    return ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  print(finding, text, size);
  fputs(text, stdout);
  free(text);
  return OHM_EXIT_DONE;
}

int ohm_findings_write_report(const ohm_finding *finding) {
  return write_whole(ohm_report_print, finding);
}

int ohm_findings_write_budget(const ohm_finding *finding) {
  return write_whole(ohm_report_print_budget, finding);
}

void ohm_findings_print_degrees(const ohm_finding *finding, int field, char *cell) {
  double t_c = ohm_finding_number(finding, field);
  strcpy(cell, "-");
  if (isfinite(t_c))
    ohm_temperature_print(t_c, 1, cell);
}

void ohm_findings_write_readings(const ohm_finding *findings, size_t count) {
  printf("%-*s%-*s%s\n", COLUMN, "read", COLUMN, "at", "means");
  for (size_t i = 0; i < count; i++) {
    char at[OHM_CELL_SIZE], means[OHM_CELL_SIZE];
    ohm_findings_print_degrees(&findings[i], OHM_FIELD_AT_C, at);
    ohm_findings_print_degrees(&findings[i], OHM_FIELD_T_C, means);
    printf("%-*s%-*s%s\n", COLUMN, ohm_finding_text(&findings[i], OHM_FIELD_READ, 0), COLUMN, at,
           means);
  }
}

const char *ohm_findings_verdict(const ohm_finding *finding) {
  static const struct ohm_entry words[] = {
      {"conforms", "GOOD"},
      {"low", "BAD, reads low"},
      {"high", "BAD, reads high"},
      {"open", "BAD, open"},
      {"shorted", "BAD, shorted"},
      {"over_range", "CANNOT TELL YET, one range up"},
      {"no_tolerance", "CANNOT TELL YET, no limits printed"},
      {"outside_band", "CANNOT TELL YET, no limits there"},
      {"uncertain", "CANNOT TELL YET, too coarse"},
      {"plug_on", "CANNOT TELL YET, plug off?"},
      {"missing_k", "CANNOT TELL YET, a k missing?"},
      {"lone_one", "CANNOT TELL YET, one range up"},
      {"moving", "CANNOT TELL YET, still moving"},
      {NULL, NULL},
  };
  const char *reason = ohm_finding_text(finding, OHM_FIELD_REASON, 0);
  for (ohm_entries entry = words; reason && entry->word; entry++)
    if (strcmp(reason, entry->word) == 0)
      return entry->meaning;
  return "CANNOT TELL YET";
}
