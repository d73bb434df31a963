/* SPDX-License-Identifier: MIT */
/* Suspect figures being collected, and the clauses that say why. */
#ifndef OHM_SUSPECT_H
#define OHM_SUSPECT_H

#include "printed.h"
#include "slip.h"
#include "text.h"

enum { OHM_REMARKS_MAX = 8, OHM_SENTENCE = sizeof((ohm_error *)NULL)->message };

struct ohm_record {
  ohm_suspect suspect;
  bool flagged;
  char printed[OHM_PRINTED_TEXT];
  char would_fit[sizeof((struct ohm_slip *)NULL)->text];
  char clause[OHM_SENTENCE];
  char sentence[OHM_SENTENCE];
};

struct ohm_audit {
  size_t row_count;
  struct ohm_record *records;
  size_t count;
  size_t room;
  bool failed; /**< no memory for a record */
  size_t remark_count;
  char remarks[OHM_REMARKS_MAX][OHM_SENTENCE];
};

/** A new record of a row, to be given its figure and its clause; NULL without memory. */
struct ohm_record *ohm_record_new(ohm_audit *audit, const struct ohm_printed_row *row, int kind,
                                  double level);

/** Say which figure it is. */
void ohm_record_set_figure(struct ohm_record *record, const char *name, const char *printed,
                           int column);

/** Say what would fit, and of what the figure may be a slip. */
void ohm_record_suggest(struct ohm_record *record, double low, double middle, double high);

/** Room for the sentence of a remark; NULL when there are enough. */
char *ohm_remark_new(ohm_audit *audit);

/** Start the clause of a record. */
struct ohm_text ohm_clause_begin(struct ohm_record *record);

/** Append "r_nom_ohm 5331 at 40 C". */
void ohm_clause_add_subject(struct ohm_text *text, const struct ohm_record *record);

/** Append what a slip would explain, if any, and what to do. */
void ohm_clause_add_suggestion(struct ohm_text *text, const struct ohm_record *record,
                               double middle);

void ohm_clause_add_number(struct ohm_text *text, double value);
void ohm_clause_add_fixed(struct ohm_text *text, double value, int decimals);
void ohm_clause_add_resistance(struct ohm_text *text, double r_ohm);

/** Bring the records into the order of the lines and write their sentences. */
void ohm_audit_settle(ohm_audit *audit, const char *place);

#endif
