/* SPDX-License-Identifier: MIT */
#include "page.h"

#include <stdint.h>
#include <string.h>

enum { LABEL_WIDTH = 12, LINE_WIDTH = 80 };

void oc_page_begin(struct oc_page *page, struct oc_text *out, const ohm_finding *finding) {
  page->finding = finding;
  page->out = out;
  page->line = oc_text_begin(page->buffer, sizeof page->buffer);
}

/* ---- what the finding has ---- */

double oc_page_number(const struct oc_page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

bool oc_page_has(const struct oc_page *page, ohm_field field) {
  return !isnan(oc_page_number(page, field));
}

const char *oc_page_text(const struct oc_page *page, ohm_field field) {
  return ohm_finding_text(page->finding, (int)field, 0);
}

bool oc_page_is(const struct oc_page *page, ohm_field field, const char *word) {
  const char *text = oc_page_text(page, field);
  return text && strcmp(text, word) == 0;
}

size_t oc_page_count(const struct oc_page *page, ohm_field list) {
  size_t count = 0;
  while (ohm_finding_text(page->finding, (int)list, count))
    count++;
  return count;
}

/* ---- making up a line ---- */

void oc_page_add(struct oc_page *page, const char *words) {
  oc_text_add(&page->line, words);
}

bool oc_page_add_of(struct oc_page *page, const char *const *table, size_t count, size_t index) {
  if (index >= count || !table[index])
    return false;
  oc_page_add(page, table[index]);
  return true;
}

static void add_entries(struct oc_page *page, ohm_field list, size_t most, const char *between) {
  const char *entry;
  for (size_t i = 0; i < most && (entry = ohm_finding_text(page->finding, (int)list, i)); i++) {
    oc_page_add(page, i > 0 ? between : "");
    oc_page_add(page, entry);
  }
}

void oc_page_add_first(struct oc_page *page, ohm_field list, size_t most) {
  size_t count = oc_page_count(page, list);
  add_entries(page, list, most, ", ");
  if (count > most) {
    oc_page_add(page, " and ");
    oc_text_add_count(&page->line, count - most);
    oc_page_add(page, " more");
  }
}

/* ---- laying out ---- */

static size_t columns_of(const char *text, size_t length) {
  size_t columns = 0;
  for (size_t i = 0; i < length; i++)
    columns += !oc_utf8_continues(text[i]);
  return columns;
}

void oc_page_cell(struct oc_text *out, const char *text, size_t width) {
  size_t column = columns_of(text, strlen(text));
  oc_text_add(out, text);
  if (0 < width && width <= column)
    oc_text_add(out, " ");
  for (; column < width; column++)
    oc_text_add(out, " ");
}

void oc_page_end(struct oc_page *page, const char *label) {
  size_t column = columns_of(label, strlen(label));
  column = column < LABEL_WIDTH ? LABEL_WIDTH : column + 1;
  if (page->line.length == 0)
    return;
  oc_page_cell(page->out, label, LABEL_WIDTH);
  for (const char *word = page->buffer; *word; word += strspn(word, " ")) {
    size_t length = strcspn(word, " ");
    size_t wide = columns_of(word, length);
    if (word == page->buffer) {
      column += wide;
    } else if (column + 1 + wide > LINE_WIDTH) {
      oc_text_add(page->out, "\n");
      oc_page_cell(page->out, "", LABEL_WIDTH);
      column = LABEL_WIDTH + wide;
    } else {
      oc_text_add(page->out, " ");
      column += 1 + wide;
    }
    oc_text_add_bytes(page->out, word, length);
    word += length;
  }
  oc_text_add(page->out, "\n");
  page->line = oc_text_begin(page->buffer, sizeof page->buffer);
}

void oc_page_line(struct oc_page *page, const char *label, const char *words) {
  oc_page_add(page, words);
  oc_page_end(page, label);
}

void oc_page_list(struct oc_page *page, const char *label, ohm_field list) {
  add_entries(page, list, SIZE_MAX, "; ");
  oc_page_end(page, label);
}
