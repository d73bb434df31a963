/* SPDX-License-Identifier: MIT */
#include "suspect.h"

#include <stdlib.h>
#include <string.h>

#include "audit.h"
#include "../ground/list.h"
#include "../ground/number.h"
#include "../ground/status.h"

/* ---- records ---- */

void oc_clause_add_fixed(struct oc_text *text, double value, int decimals) {
  char number[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(value, decimals, number, sizeof number);
  oc_text_add(text, number);
}

void oc_clause_add_resistance(struct oc_text *text, double r_ohm) {
  char number[OHM_NUMBER_SIZE + 8];
  ohm_resistance_print(r_ohm, 4, number, sizeof number);
  oc_text_add(text, number);
}

/* A new record of a row, its clause begun; NULL without memory. */
struct oc_record *oc_record_new(ohm_audit *audit, const struct oc_printed_row *row, int kind,
                                double level) {
  struct oc_record *records =
      oc_list_grow(audit->records, audit->count, &audit->room, sizeof *records);
  if (!records) {
    audit->failed = true;
    return NULL;
  }
  audit->records = records;
  struct oc_record *record = &records[audit->count++];
  *record = (struct oc_record){.suspect = {.kind = kind,
                                           .line = row->line,
                                           .t_c = row->t_c,
                                           .low = NAN,
                                           .high = NAN,
                                           .level = level},
                               .flagged = row->flagged};
  return record;
}

void oc_record_set_figure(struct oc_record *record, const char *name, const char *printed,
                          int column) {
  record->suspect.name = name;
  record->suspect.column = column;
  strcpy(record->printed, printed);
}

struct oc_text oc_clause_begin(struct oc_record *record) {
  return oc_text_begin(record->clause, sizeof record->clause);
}

void oc_clause_add_subject(struct oc_text *text, const struct oc_record *record) {
  oc_text_add(text, record->suspect.name);
  oc_text_add(text, " ");
  oc_text_add(text, record->printed);
  oc_text_add(text, " at ");
  oc_text_add_number(text, record->suspect.t_c);
  oc_text_add(text, " C");
}

void oc_record_suggest(struct oc_record *record, double low, double middle, double high) {
  record->suspect.low = low;
  record->suspect.high = high;
  struct oc_misprint slip = oc_misprint_undo(record->printed, low, middle, high);
  strcpy(record->would_fit, slip.text);
}

void oc_clause_add_suggestion(struct oc_text *text, const struct oc_record *record, double middle) {
  struct oc_misprint slip =
      oc_misprint_undo(record->printed, record->suspect.low, middle, record->suspect.high);
  if (slip.kind != OC_MISPRINT_NONE) {
    oc_text_add(text, "; ");
    oc_text_add(text, slip.text);
    oc_text_add(text, ", ");
    oc_text_add(text, oc_misprint_words(slip.kind));
    oc_text_add(text, ", would fit");
  }
  oc_text_add(text, "; look it up again");
}

char *oc_remark_new(ohm_audit *audit) {
  return audit->remark_count < OC_REMARKS_MAX ? audit->remarks[audit->remark_count++] : NULL;
}

static int by_line(const void *left, const void *right) {
  const ohm_suspect *a = &((const struct oc_record *)left)->suspect;
  const ohm_suspect *b = &((const struct oc_record *)right)->suspect;
  if (a->line != b->line)
    return a->line < b->line ? -1 : 1;
  if (a->column != b->column)
    return a->column < b->column ? -1 : 1;
  return a->kind < b->kind ? -1 : a->kind > b->kind;
}

/* Texts belong to their record once no record moves any more. */
void oc_audit_settle(ohm_audit *audit, const char *place) {
  if (audit->count > 0)
    qsort(audit->records, audit->count, sizeof *audit->records, by_line);
  for (size_t i = 0; i < audit->count; i++) {
    struct oc_record *record = &audit->records[i];
    ohm_error sentence;
    oc_fail_at(&sentence, OHM_BAD_DEFINITION, place, record->suspect.line, record->suspect.column,
               record->clause, (const char *)NULL);
    strcpy(record->sentence, sentence.message);
    record->suspect.sentence = record->sentence;
    record->suspect.printed = record->printed;
    record->suspect.would_fit = record->would_fit[0] ? record->would_fit : NULL;
  }
}

void ohm_audit_free(ohm_audit *audit) {
  if (audit)
    free(audit->records);
  free(audit);
}

/* ---- asking ---- */

size_t ohm_audit_row_count(const ohm_audit *audit) {
  return audit ? audit->row_count : 0;
}

size_t ohm_audit_count(const ohm_audit *audit) {
  return audit ? audit->count : 0;
}

const ohm_suspect *ohm_audit_suspect(const ohm_audit *audit, size_t index) {
  return audit && index < audit->count ? &audit->records[index].suspect : NULL;
}

size_t ohm_audit_remark_count(const ohm_audit *audit) {
  return audit ? audit->remark_count : 0;
}

const char *ohm_audit_remark(const ohm_audit *audit, size_t index) {
  return audit && index < audit->remark_count ? audit->remarks[index] : NULL;
}

const char *ohm_suspicion_name(int suspicion) {
  static const char *const names[] = {"order", "band",    "digits", "line",
                                      "curve", "degrees", "volts"};
  bool known = 0 <= suspicion && suspicion < (int)(sizeof names / sizeof names[0]);
  return known ? names[suspicion] : NULL;
}

bool oc_audit_is_news(const ohm_audit *audit, size_t index) {
  const struct oc_record *record = &audit->records[index];
  return !record->flagged && record->suspect.kind != OHM_SUSPECT_VOLTS &&
         record->suspect.kind != OHM_SUSPECT_BAND;
}

const char *oc_audit_clause(const ohm_audit *audit, size_t index) {
  return audit->records[index].clause;
}
