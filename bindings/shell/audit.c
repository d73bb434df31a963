/* SPDX-License-Identifier: MIT */
#include <stdio.h>

#include <ohmcurve.h>

#include "json.h"
#include "screen.h"
#include "verbs.h"

enum { SUSPECT = 1 };

static void write_json(const char *path, const ohm_suspect *suspect) {
  struct ohm_json json;
  ohm_json_begin(&json);
  ohm_json_text(&json, "file", path);
  ohm_json_text(&json, "kind", ohm_suspicion_name(suspect->kind));
  ohm_json_number(&json, "line", suspect->line);
  ohm_json_number(&json, "column", suspect->column);
  ohm_json_number(&json, "t_c", suspect->t_c);
  ohm_json_text(&json, "name", suspect->name);
  ohm_json_text(&json, "printed", suspect->printed);
  ohm_json_text(&json, "would_fit", suspect->would_fit);
  ohm_json_number(&json, "low", suspect->low);
  ohm_json_number(&json, "high", suspect->high);
  ohm_json_number(&json, "level", suspect->level);
  ohm_json_text(&json, "sentence", suspect->sentence);
  ohm_json_end(&json);
}

static void write_remark_json(const char *path, const char *remark) {
  struct ohm_json json;
  ohm_json_begin(&json);
  ohm_json_text(&json, "file", path);
  ohm_json_text(&json, "sentence", remark);
  ohm_json_end(&json);
}

static void write_summary(const char *path, const ohm_audit *audit) {
  size_t suspects = ohm_audit_count(audit);
  ohm_screen_text(path);
  printf(": %zu rows, ", ohm_audit_row_count(audit));
  if (suspects == 0)
    puts("nothing is suspect");
  else
    printf("%zu suspect\n", suspects);
}

static void write_audit(const char *path, const ohm_audit *audit, bool json) {
  if (!json)
    write_summary(path, audit);
  for (size_t i = 0; i < ohm_audit_count(audit); i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(audit, i);
    if (json) {
      write_json(path, suspect);
    } else {
      fputs("  ", stdout);
      ohm_screen_wrap(2, suspect->sentence);
    }
  }
  for (size_t i = 0; i < ohm_audit_remark_count(audit); i++) {
    const char *remark = ohm_audit_remark(audit, i);
    if (json) {
      write_remark_json(path, remark);
    } else {
      fputs("  ", stdout);
      ohm_screen_wrap(2, remark);
    }
  }
}

int ohm_audit_run(const struct ohm_arguments *arguments) {
  int status = OHM_EXIT_DONE;
  /* One file that cannot be read does not cost the others. */
  for (size_t i = 0; i < arguments->count; i++) {
    const char *path = arguments->operands[i];
    ohm_error error;
    ohm_audit *audit = ohm_audit_load(path, &error);
    if (!audit) {
      status = ohm_refuse(error.status == OHM_CANNOT_OPEN ? OHM_EXIT_MISSING : OHM_EXIT_DATA, "%s",
                          error.message);
      continue;
    }
    write_audit(path, audit, arguments->values[OHM_OPTION_JSON] != NULL);
    if (status == OHM_EXIT_DONE && ohm_audit_count(audit) > 0)
      status = SUSPECT;
    ohm_audit_free(audit);
  }
  return status;
}
