/* SPDX-License-Identifier: MIT */
/* A circuit while its file is being read: every row as it stands, and what is wrong. */
#ifndef OHM_CIRCUIT_DRAFT_H
#define OHM_CIRCUIT_DRAFT_H

#include "circuit.h"
#include "csv.h"

struct ohm_circuit_draft {
  const char *place; /**< what sentences call the text */
  ohm_error *error;
  ohm_status status; /**< of the first fault that cannot be passed over */
  struct ohm_circuit *circuit;
  int link_lines[OHM_DIAGNOSIS_PARTS];
  int test_lines[OHM_CIRCUIT_TESTS];
};

/** Whether nothing has gone wrong that cannot be passed over. */
bool ohm_circuit_draft_goes_on(const struct ohm_circuit_draft *draft);

/** Leave a note: what and given in quotes, then advice. */
void ohm_circuit_draft_note(struct ohm_circuit_draft *draft, int line, int column, const char *what,
                            const char *given, size_t length, const char *advice);

/** The same as the fault that ends the reading. */
void ohm_circuit_draft_fail(struct ohm_circuit_draft *draft, ohm_status status, int line,
                            int column, const char *what, const char *given, size_t length,
                            const char *advice);

/** Understand the cells of every row; tests that cannot be used are left out. */
void ohm_circuit_draft_understand(struct ohm_circuit_draft *draft);

#endif
