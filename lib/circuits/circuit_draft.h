/* SPDX-License-Identifier: MIT */
/* A circuit while its file is being read: every row as it stands, and what is wrong. */
#ifndef OC_CIRCUIT_DRAFT_H
#define OC_CIRCUIT_DRAFT_H

#include "circuit.h"
#include "../ground/csv.h"

struct oc_circuit_draft {
  const char *place; /**< what sentences call the text */
  ohm_error *error;
  ohm_status status; /**< of the first fault that cannot be passed over */
  struct ohm_circuit *circuit;
  int link_lines[OC_DIAGNOSIS_PARTS];
  int test_lines[OC_CIRCUIT_TESTS];
};

/** Whether nothing has gone wrong that cannot be passed over. */
bool oc_circuit_draft_goes_on(const struct oc_circuit_draft *draft);

/** Leave a note: what and given in quotes, then advice. */
void oc_circuit_draft_note(struct oc_circuit_draft *draft, int line, int column, const char *what,
                           const char *given, size_t length, const char *advice);

/** The same as the fault that ends the reading. */
void oc_circuit_draft_fail(struct oc_circuit_draft *draft, ohm_status status, int line, int column,
                           const char *what, const char *given, size_t length, const char *advice);

/** Understand the cells of every row; tests that cannot be used are left out. */
void oc_circuit_draft_understand(struct oc_circuit_draft *draft);

#endif
