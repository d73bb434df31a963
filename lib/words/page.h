/* SPDX-License-Identifier: MIT */
/* The screen of a finding: lines of a label and a sentence. */
#ifndef OC_PAGE_H
#define OC_PAGE_H

#include "../bench/finding.h"
#include "sentence.h"

/** A finding, and the line about it that is being made up. */
struct oc_page {
  const ohm_finding *finding;
  struct oc_text *out;
  struct oc_text line;
  char buffer[900];
};

void oc_page_begin(struct oc_page *page, struct oc_text *out, const ohm_finding *finding);

/* ---- what the finding has ---- */

double oc_page_number(const struct oc_page *page, ohm_field field);
bool oc_page_has(const struct oc_page *page, ohm_field field);

/** NULL when absent. */
const char *oc_page_text(const struct oc_page *page, ohm_field field);
bool oc_page_is(const struct oc_page *page, ohm_field field, const char *word);
size_t oc_page_count(const struct oc_page *page, ohm_field list);

/* ---- making up a line ---- */

/** Go on with the line. */
void oc_page_add(struct oc_page *page, const char *words);
#define OC_SAY(page, sentence, ...)                                                                \
  oc_sentence_add(&(page)->line, (page)->finding, sentence, (const ohm_field[]){__VA_ARGS__})

/** Go on with the words of that index, if the table has some. */
#define OC_ADD_OF(page, table, index)                                                              \
  oc_page_add_of(page, table, sizeof(table) / sizeof(table)[0], (size_t)(index))
bool oc_page_add_of(struct oc_page *page, const char *const *table, size_t count, size_t index);

/** The first entries of a list, and how many more there are. */
void oc_page_add_first(struct oc_page *page, ohm_field list, size_t most);

/** Write the line below its label, wrapped between words under its start; no line
 *  when nothing was said. */
void oc_page_end(struct oc_page *page, const char *label);

/** A whole line at once: words, or all entries of a list. */
void oc_page_line(struct oc_page *page, const char *label, const char *words);
void oc_page_list(struct oc_page *page, const char *label, ohm_field list);

/** A cell of a column; what fills it keeps a space to the next one. */
void oc_page_cell(struct oc_text *out, const char *text, size_t width);

#endif
