/* SPDX-License-Identifier: MIT */
#include "complaints.h"

#include <stdlib.h>
#include <string.h>

#include "list.h"
#include "status.h"

enum { NOTES_MAX = 100 };

const char *oc_notes_at(const struct oc_notes *notes, size_t index) {
  return index < notes->count ? notes->texts[index] : NULL;
}

void oc_notes_free(struct oc_notes *notes) {
  for (size_t i = 0; i < notes->count; i++)
    free(notes->texts[i]);
  free(notes->texts);
}

static void say(ohm_error *error, ohm_status status, const char *place, struct oc_spot spot,
                const char *what, const char *advice) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  if (spot.text) {
    oc_text_add(&text, "\"");
    oc_text_add_quoted(&text, spot.text, spot.length);
    oc_text_add(&text, "\"");
  }
  oc_fail_at(error, status, place, spot.line, spot.column, what, quoted, advice,
             (const char *)NULL);
}

static void keep(struct oc_complaints *complaints, const char *sentence) {
  struct oc_notes *notes = complaints->notes;
  char **texts = oc_list_grow(notes->texts, notes->count, &notes->room, sizeof *texts);
  if (texts)
    notes->texts = texts;
  char *copy = texts ? oc_text_new(sentence, strlen(sentence)) : NULL;
  if (copy)
    notes->texts[notes->count++] = copy;
  else
    oc_complaints_fail_memory(complaints);
}

void oc_complaints_note(struct oc_complaints *complaints, struct oc_spot spot, const char *what,
                        const char *advice) {
  struct oc_notes *notes = complaints->notes;
  if (!notes)
    return;
  if (notes->count == NOTES_MAX) {
    notes->further++;
    return;
  }
  ohm_error sentence;
  say(&sentence, OHM_BAD_SYNTAX, complaints->place, spot, what, advice);
  keep(complaints, sentence.message);
}

void oc_complaints_fail(struct oc_complaints *complaints, ohm_status status, struct oc_spot spot,
                        const char *what, const char *advice) {
  complaints->status = status;
  if (complaints->error)
    say(complaints->error, status, complaints->place, spot, what, advice);
}

void oc_complaints_fail_memory(struct oc_complaints *complaints) {
  complaints->status = oc_fail_memory(complaints->error);
}

void oc_complaints_end(struct oc_complaints *complaints) {
  struct oc_notes *notes = complaints->notes;
  if (notes->further == 0)
    return;
  char buffer[40];
  struct oc_text count = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&count, "and ");
  /* The last note gives its place to this one and is counted with the rest. */
  oc_text_add_count(&count, notes->further + 1);
  free(notes->texts[--notes->count]);
  oc_complaints_note(complaints, (struct oc_spot){0}, buffer, " more of the kind");
}
