/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "../ground/internal.h"
#include "../ground/status.h"
#include "../ground/tables_data.h"

const char *ohm_tables_version(void) {
  return oc_tables_version_text;
}

size_t ohm_catalogue_count(void) {
  return oc_table_count;
}

const char *ohm_catalogue_name(size_t index) {
  return index < oc_table_count ? oc_tables[index].name : NULL;
}

enum { NAMES_MAX = 256 };

const char *ohm_catalogue_nearest(const char *name) {
  const char *names[NAMES_MAX];
  size_t count = 0;
  for (; count < oc_table_count && count < NAMES_MAX; count++)
    names[count] = oc_tables[count].name;
  return ohm_nearest(name, names, count);
}

/* ---- looking by words ---- */

static char lower(char c) {
  return 'A' <= c && c <= 'Z' ? (char)(c + ('a' - 'A')) : c;
}

static bool holds(const char *text, size_t length, const char *word, size_t word_length) {
  for (size_t i = 0; i + word_length <= length; i++) {
    size_t same = 0;
    while (same < word_length && lower(text[i + same]) == lower(word[same]))
      same++;
    if (same == word_length)
      return true;
  }
  return false;
}

/* Whether a line at the top of a sensor file tells what it is or where it is from. */
static bool tells(const char *line, size_t length) {
  static const char *const keys[] = {"# name:", "# description:", "# source:", "# band "};
  for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
    if (length > strlen(keys[i]) && memcmp(line, keys[i], strlen(keys[i])) == 0)
      return true;
  return false;
}

static bool head_holds(const struct oc_table *table, const char *word, size_t word_length) {
  const char *text = (const char *)table->bytes;
  const char *end = text + table->length;
  while (text < end && *text == '#') {
    const char *stop = memchr(text, '\n', (size_t)(end - text));
    size_t length = (size_t)((stop ? stop : end) - text);
    const char *value = memchr(text, ':', length);
    if (value && tells(text, length) &&
        holds(value, length - (size_t)(value - text), word, word_length))
      return true;
    text += length + 1;
  }
  return false;
}

static bool matches(const struct oc_table *table, const char *words) {
  bool any = false;
  for (words += strspn(words, " "); *words; words += strspn(words, " ")) {
    size_t word_length = strcspn(words, " ");
    if (!head_holds(table, words, word_length))
      return false;
    words += word_length;
    any = true;
  }
  return any;
}

size_t ohm_catalogue_matches(const char *words, size_t *indices, size_t room) {
  size_t count = 0;
  for (size_t i = 0; words && i < oc_table_count; i++) {
    if (!matches(&oc_tables[i], words))
      continue;
    if (indices && count < room)
      indices[count] = i;
    count++;
  }
  return count;
}

/* ---- reading ---- */

static ohm_status fail_unknown(const char *name, ohm_error *error) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  oc_text_add_quoted(&text, name, strlen(name));
  const char *nearest = ohm_catalogue_nearest(name);
  return oc_fail(error, OHM_NOT_FOUND, "no sensor is called ", quoted,
                 nearest ? "; did you mean " : "; look in the list of sensors",
                 nearest ? nearest : "", nearest ? "?" : "", (const char *)NULL);
}

ohm_sensor *ohm_catalogue_load(const char *name, ohm_error *error) {
  oc_error_clear(error);
  if (!name) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  for (size_t i = 0; i < oc_table_count; i++)
    if (strcmp(oc_tables[i].name, name) == 0)
      return ohm_sensor_parse((const char *)oc_tables[i].bytes, oc_tables[i].length, name, error);
  fail_unknown(name, error);
  return NULL;
}
