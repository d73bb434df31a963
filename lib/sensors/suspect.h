/* SPDX-License-Identifier: MIT */
/* Suspect figures being collected, and the clauses that say why. */
#ifndef OC_SUSPECT_H
#define OC_SUSPECT_H

#include "printed.h"
#include "misprint.h"
#include "../ground/text.h"

enum { OC_REMARKS_MAX = 8, OC_SENTENCE = sizeof((ohm_error *)NULL)->message };

struct oc_record {
  ohm_suspect suspect;
  bool flagged;
  char printed[OC_PRINTED_TEXT];
  char would_fit[sizeof((struct oc_misprint *)NULL)->text];
  char clause[OC_SENTENCE];
  char sentence[OC_SENTENCE];
};

struct ohm_audit {
  size_t row_count;
  struct oc_record *records;
  size_t count;
  size_t room;
  bool failed; /**< no memory for a record */
  size_t remark_count;
  char remarks[OC_REMARKS_MAX][OC_SENTENCE];
};

/** A new record of a row, to be given its figure and its clause; NULL without memory. */
struct oc_record *oc_record_new(ohm_audit *audit, const struct oc_printed_row *row, int kind,
                                double level);

/** Say which figure it is. */
void oc_record_set_figure(struct oc_record *record, const char *name, const char *printed,
                          int column);

/** Say what would fit, and of what the figure may be a slip. */
void oc_record_suggest(struct oc_record *record, double low, double middle, double high);

/** Room for the sentence of a remark; NULL when there are enough. */
char *oc_remark_new(ohm_audit *audit);

/** Start the clause of a record. */
struct oc_text oc_clause_begin(struct oc_record *record);

/** Append "r_nom_ohm 5331 at 40 C". */
void oc_clause_add_subject(struct oc_text *text, const struct oc_record *record);

/** Append what a slip would explain, if any, and what to do. */
void oc_clause_add_suggestion(struct oc_text *text, const struct oc_record *record, double middle);

void oc_clause_add_fixed(struct oc_text *text, double value, int decimals);
void oc_clause_add_resistance(struct oc_text *text, double r_ohm);

/** Bring the records into the order of the lines and write their sentences. */
void oc_audit_settle(ohm_audit *audit, const char *place);

#endif
