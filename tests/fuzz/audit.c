/* SPDX-License-Identifier: MIT */
/* Any bytes as a table to be audited. What is said keeps its own promises. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int truth) {
  if (!truth)
    abort();
}

static void check_suspect(const ohm_suspect *suspect) {
  require(ohm_suspicion_name(suspect->kind) != NULL);
  require(suspect->line >= 1 && suspect->column >= 1);
  require(-273.15 < suspect->t_c && suspect->t_c <= 1000);
  require(suspect->name && suspect->printed && suspect->sentence && suspect->sentence[0]);
  require(0.5 <= suspect->level && suspect->level <= 1);
  require(isnan(suspect->low) == isnan(suspect->high));
  double value;
  if (suspect->would_fit) {
    require(ohm_number_read(suspect->would_fit, strlen(suspect->would_fit), &value) == OHM_OK);
    require(suspect->low <= value && value <= suspect->high);
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  ohm_audit *audit = ohm_audit_parse((const char *)data, size, "given", &error);
  if (!audit) {
    require(error.status != OHM_OK && error.message[0]);
    return 0;
  }
  require(error.status == OHM_OK);
  int line = 0;
  for (size_t i = 0; i < ohm_audit_count(audit); i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(audit, i);
    check_suspect(suspect);
    require(suspect->line >= line);
    line = suspect->line;
  }
  require(!ohm_audit_suspect(audit, ohm_audit_count(audit)));
  for (size_t i = 0; i < ohm_audit_remark_count(audit); i++)
    require(ohm_audit_remark(audit, i)[0] != '\0');
  ohm_audit_free(audit);
  return 0;
}
