/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "../ground/built_in.h"
#include "../ground/table_file.h"

size_t ohm_sensor_built_in_count(void) {
  return oc_sensor_tables.count;
}

const char *ohm_sensor_built_in_name(size_t index) {
  return oc_built_in_name(&oc_sensor_tables, index);
}

const char *ohm_sensor_built_in_nearest(const char *name) {
  return oc_built_in_nearest(&oc_sensor_tables, name);
}

ohm_sensor *ohm_sensor_built_in_load(const char *name, ohm_error *error) {
  const struct oc_table *table = oc_built_in_find(&oc_sensor_tables, name, error);
  return table ? ohm_sensor_parse((const char *)table->bytes, table->length, name, error) : NULL;
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

/* What the lines at the top tell of what it is and where it is from. */
static bool head_holds(const struct oc_table *table, const char *word, size_t word_length) {
  static const char *const words[] = {"name", "description", "source"};
  static const struct oc_keys keys = {sizeof words / sizeof words[0], words, "band"};
  struct oc_table_text text = {(const char *)table->bytes, table->length, "", ""};
  struct oc_complaints unheard = {.place = ""};
  struct oc_table_file file;
  oc_table_file_begin(&file, &keys, &text, &unheard);
  while (oc_table_file_next(&file) == OC_PART_KEY)
    if (holds(file.value.text, file.value.length, word, word_length))
      return true;
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

size_t ohm_sensor_built_in_matches(const char *words, size_t *indices, size_t room) {
  size_t count = 0;
  for (size_t i = 0; words && i < oc_sensor_tables.count; i++) {
    if (!matches(&oc_sensor_tables.at[i], words))
      continue;
    if (indices && count < room)
      indices[count] = i;
    count++;
  }
  return count;
}
