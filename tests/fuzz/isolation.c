/* SPDX-License-Identifier: MIT */
/* Any bytes as a record of a built-in circuit, which the first byte chooses. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "../findings.h"
#include "../../lib/answers/isolation.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int truth) {
  if (!truth)
    abort();
}

static int lists(const ohm_finding *finding, int field, const char *name) {
  const char *entry;
  for (size_t i = 0; (entry = ohm_finding_text(finding, field, i)); i++)
    if (strcmp(entry, name) == 0)
      return 1;
  return 0;
}

/* What is cleared is neither at fault nor suspect. */
static void check_sense(const ohm_finding *finding) {
  const char *name;
  for (size_t i = 0; (name = ohm_finding_text(finding, OHM_FIELD_CLEARED, i)); i++)
    require(!lists(finding, OHM_FIELD_FAULTY, name) && !lists(finding, OHM_FIELD_SUSPECTS, name));
  const char *state = ohm_finding_text(finding, OHM_FIELD_STATE, 0);
  require(state != NULL);
  require((ohm_finding_verdict(finding) == OHM_WITHIN) == (strcmp(state, "closed") == 0));
  require((ohm_finding_verdict(finding) == OHM_OUTSIDE) == (strcmp(state, "found") == 0));
  if (strcmp(state, "found") == 0)
    require(ohm_finding_text(finding, OHM_FIELD_FAULTY, 0) != NULL);
  if (strcmp(state, "go_on") == 0)
    require(ohm_finding_text(finding, OHM_FIELD_NEXT, 0) != NULL);
}

static void check_screen(const ohm_finding *finding) {
  char screen[8192];
  size_t length = ohm_finding_print_report(finding, screen, sizeof screen);
  require(0 < length && length < sizeof screen && strlen(screen) == length);
  require(screen[length - 1] == '\n');
  for (const char *line = screen; *line; line += strcspn(line, "\n") + 1)
    require(strcspn(line, "\n") <= 160); /* bytes; a column may take more than one */
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  static const char nothing[1] = "";
  ohm_error error;
  ohm_finding finding = finding_new();
  size_t which = size > 0 ? data[0] % ohm_circuit_built_in_count() : 0;
  ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(which), NULL);
  require(circuit != NULL);
  const char *record = size > 1 ? (const char *)data + 1 : nothing;
  ohm_status status =
      oc_isolation_judge(circuit, record, size > 1 ? size - 1 : 0, &finding, &error);
  require(status == (ohm_status)error.status);
  if (status == OHM_OK) {
    check_sense(&finding);
    check_screen(&finding);
  } else {
    require(error.message[0] && memchr(error.message, '\0', sizeof error.message) != NULL);
    require(!ohm_finding_text(&finding, OHM_FIELD_STATE, 0));
  }
  ohm_circuit_free(circuit);
  findings_free();
  return 0;
}
