/* SPDX-License-Identifier: MIT */
/* What is wrong with a text, and where: notes, beside which its reading goes on, and the
 * fault that ends it. */
#ifndef OC_COMPLAINTS_H
#define OC_COMPLAINTS_H

#include "internal.h"

/** Sentences that stay with what was made of the text. */
struct oc_notes {
  size_t count;
  size_t room;
  char **texts;
  size_t further; /**< those that there was no place for */
};

/** NULL past the last. */
const char *oc_notes_at(const struct oc_notes *notes, size_t index);

void oc_notes_free(struct oc_notes *notes);

struct oc_complaints {
  const char *place; /**< what sentences call the text */
  ohm_error *error;
  struct oc_notes *notes; /**< NULL when they are not wanted */
  ohm_status status;      /**< of the fault */
};

/** A place in a text, and what stands there. */
struct oc_spot {
  int line;         /**< 0 for the whole text */
  int column;       /**< 0 for the whole line */
  const char *text; /**< to be given in quotes, or NULL */
  size_t length;
};

/** Whether no fault ended the reading. */
static inline bool oc_goes_on(const struct oc_complaints *complaints) {
  return complaints->status == OHM_OK;
}

/** Leave a note: its place, what, the text of the spot, advice. */
void oc_complaints_note(struct oc_complaints *complaints, struct oc_spot spot, const char *what,
                        const char *advice);

/** The same as the fault. */
void oc_complaints_fail(struct oc_complaints *complaints, ohm_status status, struct oc_spot spot,
                        const char *what, const char *advice);

void oc_complaints_fail_memory(struct oc_complaints *complaints);

/** After the last one: when there were more than 100 notes, the last says how many more. */
void oc_complaints_end(struct oc_complaints *complaints);

#endif
