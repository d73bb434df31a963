/* SPDX-License-Identifier: MIT */
#include <stdio.h>

#include <ohmcurve.h>

#include "arguments.h"
#include "json.h"
#include "screen.h"

enum { SUSPECT = 1 };

static void write_json(const char *path, const ohm_suspect *suspect) {
  struct shell_json json;
  shell_json_begin(&json, "suspect");
  shell_json_text(&json, "file", path);
  shell_json_text(&json, "kind", ohm_suspicion_name(suspect->kind));
  shell_json_number(&json, "line", suspect->line);
  shell_json_number(&json, "column", suspect->column);
  shell_json_number(&json, "t_c", suspect->t_c);
  shell_json_text(&json, "name", suspect->name);
  shell_json_text(&json, "printed", suspect->printed);
  shell_json_text(&json, "would_fit", suspect->would_fit);
  shell_json_number(&json, "low", suspect->low);
  shell_json_number(&json, "high", suspect->high);
  shell_json_number(&json, "level", suspect->level);
  shell_json_text(&json, "sentence", suspect->sentence);
  shell_json_end(&json);
}

static void write_remark_json(const char *path, const char *remark) {
  struct shell_json json;
  shell_json_begin(&json, "remark");
  shell_json_text(&json, "file", path);
  shell_json_text(&json, "sentence", remark);
  shell_json_end(&json);
}

static void write_summary(const char *path, const ohm_audit *audit) {
  size_t suspects = ohm_audit_count(audit);
  shell_screen_text(path);
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
      shell_screen_wrap(2, suspect->sentence);
    }
  }
  for (size_t i = 0; i < ohm_audit_remark_count(audit); i++) {
    const char *remark = ohm_audit_remark(audit, i);
    if (json) {
      write_remark_json(path, remark);
    } else {
      fputs("  ", stdout);
      shell_screen_wrap(2, remark);
    }
  }
}

int shell_audit_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  /* One file that cannot be read does not cost the others. */
  for (size_t i = 0; i < arguments->count; i++) {
    const char *path = arguments->operands[i];
    ohm_error error;
    ohm_audit *audit = ohm_audit_load(path, &error);
    if (!audit) {
      status = shell_refuse_load(&error, "");
      continue;
    }
    write_audit(path, audit, arguments->values[SHELL_OPTION_JSON] != NULL);
    if (status == SHELL_EXIT_DONE && ohm_audit_count(audit) > 0)
      status = SUSPECT;
    ohm_audit_free(audit);
  }
  return status;
}
