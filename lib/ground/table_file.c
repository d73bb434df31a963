/* SPDX-License-Identifier: MIT */
#include "table_file.h"

#include <stdlib.h>
#include <string.h>

#include "file.h"
#include "status.h"

/* ---- whole texts ---- */

static bool is_given(const void *text, const void *name, ohm_error *error) {
  oc_error_clear(error);
  if (!text || !name)
    oc_fail_null(error);
  return text && name;
}

void *oc_table_file_parse(const char *bytes, size_t length, const char *name,
                          oc_table_parser *parse, ohm_error *error) {
  if (!is_given(bytes, name, error))
    return NULL;
  if (length > OC_FILE_MAX) {
    oc_fail_at(error, OHM_TOO_LARGE, name, 0, 0,
               "it is larger than 16 MiB: leave out what is not needed", (const char *)NULL);
    return NULL;
  }
  return parse(&(struct oc_table_text){bytes, length, name, name}, error);
}

static char *name_new(const char *path) {
  const char *slash = strrchr(path, '/');
  const char *base = slash ? slash + 1 : path;
  size_t length = strlen(base);
  if (length > 4 && strcmp(base + length - 4, ".csv") == 0)
    length -= 4;
  return oc_text_new(base, length);
}

void *oc_table_file_load(const char *path, oc_table_parser *parse, ohm_error *error) {
  if (!is_given(path, path, error))
    return NULL;
  size_t length;
  char *bytes = oc_file_read(path, &length, error);
  if (!bytes)
    return NULL;
  void *made = NULL;
  char *name = name_new(path);
  if (name)
    made = parse(&(struct oc_table_text){bytes, length, path, name}, error);
  else
    oc_fail_memory(error);
  free(name);
  free(bytes);
  return made;
}

/* ---- what is wrong ---- */

static struct oc_spot spot_of(const struct oc_table_file *file, const struct oc_csv_cell *cell) {
  return cell ? (struct oc_spot){file->csv.line, cell->column, cell->text, cell->length}
              : (struct oc_spot){file->csv.line, file->csv.column, NULL, 0};
}

void oc_table_file_note(struct oc_table_file *file, const char *what,
                        const struct oc_csv_cell *cell, const char *advice) {
  oc_complaints_note(file->complaints, spot_of(file, cell), what, advice);
}

void oc_table_file_fail(struct oc_table_file *file, ohm_status status, const char *what,
                        const struct oc_csv_cell *cell, const char *advice) {
  oc_complaints_fail(file->complaints, status, spot_of(file, cell), what, advice);
}

/* ---- lines of "# key: value" ---- */

static bool is_blank(char byte) {
  return byte == ' ' || byte == '\t';
}

/* Bytes of a cell from one on, less the blanks around them. */
static struct oc_csv_cell part_of(const struct oc_csv_cell *cell, size_t first, size_t end) {
  while (first < end && is_blank(cell->text[first]))
    first++;
  while (first < end && is_blank(cell->text[end - 1]))
    end--;
  return (struct oc_csv_cell){cell->text + first, end - first, cell->column + (int)first};
}

static bool find_key(struct oc_table_file *file, const struct oc_csv_cell *key) {
  const struct oc_keys *keys = file->keys;
  for (file->key = 0; file->key < keys->count; file->key++)
    if (oc_csv_is(key, keys->words[file->key]))
      return true;
  size_t length = keys->named ? strlen(keys->named) : 0;
  if (length == 0 || key->length <= length || memcmp(key->text, keys->named, length) != 0 ||
      key->text[length] != ' ')
    return false;
  file->name = part_of(key, length, key->length);
  return true;
}

/* A key that is nearly a known one is a slip. */
static void look_at_unknown(struct oc_table_file *file, const struct oc_csv_cell *key) {
  char word[24];
  if (key->length >= sizeof word || key->length < 4)
    return;
  memcpy(word, key->text, key->length);
  word[key->length] = '\0';
  const char *meant = ohm_nearest(word, file->keys->words, file->keys->count);
  if (!meant)
    return;
  char buffer[80];
  struct oc_text advice = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&advice, " is not known and left out; was ");
  oc_text_add(&advice, meant);
  oc_text_add(&advice, " meant?");
  oc_table_file_note(file, "the key ", key, buffer);
}

static bool take_line(struct oc_table_file *file) {
  const struct oc_csv_cell *line = &file->csv.cells[0];
  const char *colon = memchr(line->text, ':', line->length);
  if (!colon)
    return false;
  size_t at = (size_t)(colon - line->text);
  struct oc_csv_cell key = part_of(line, 0, at);
  file->value = part_of(line, at + 1, line->length);
  if (find_key(file, &key))
    return true;
  look_at_unknown(file, &key);
  return false;
}

void oc_table_file_take_text(struct oc_table_file *file, char **text) {
  if (file->value.length == 0)
    return;
  if (*text) {
    oc_table_file_note(file, "a second line of this key is ", &file->value,
                       "; the first one counts, leave one out");
    return;
  }
  *text = oc_text_new(file->value.text, file->value.length);
  if (!*text)
    oc_complaints_fail_memory(file->complaints);
}

/* ---- tables ---- */

void oc_table_file_take_header(struct oc_table_file *file, const char *const *names, size_t count) {
  file->has_header = true;
  for (size_t column = 0; column < count; column++) {
    file->columns[column] = -1;
    for (size_t i = 0; i < file->csv.count && file->columns[column] < 0; i++)
      if (oc_csv_is(&file->csv.cells[i], names[column]))
        file->columns[column] = (int)i;
  }
}

const struct oc_csv_cell *oc_table_file_cell(const struct oc_table_file *file, size_t column) {
  static const struct oc_csv_cell blank = {"", 0, 0};
  int at = file->columns[column];
  return at >= 0 && (size_t)at < file->csv.count ? &file->csv.cells[at] : &blank;
}

/* ---- one part after the other ---- */

void oc_table_file_begin(struct oc_table_file *file, const struct oc_keys *keys,
                         const struct oc_table_text *text, struct oc_complaints *complaints) {
  file->keys = keys;
  file->complaints = complaints;
  file->has_header = false;
  oc_csv_begin(&file->csv, text->bytes, text->length);
}

enum oc_part oc_table_file_next(struct oc_table_file *file) {
  while (oc_goes_on(file->complaints)) {
    enum oc_csv_kind kind = oc_csv_next(&file->csv);
    if (kind == OC_CSV_COMMENT && !take_line(file))
      continue;
    return kind == OC_CSV_COMMENT ? OC_PART_KEY
           : kind == OC_CSV_ROW   ? OC_PART_ROW
           : kind == OC_CSV_FAULT ? OC_PART_FAULT
                                  : OC_PART_END;
  }
  return OC_PART_END;
}
