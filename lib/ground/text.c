/* SPDX-License-Identifier: MIT */
#include "text.h"

#include <stdlib.h>
#include <string.h>

struct oc_text oc_text_begin(char *buffer, size_t size) {
  struct oc_text text = {buffer, buffer ? size : 0, 0};
  if (text.size > 0)
    text.buffer[0] = '\0';
  return text;
}

void oc_text_add_bytes(struct oc_text *text, const char *bytes, size_t count) {
  if (text->length < text->size) {
    size_t room = text->size - text->length - 1;
    size_t fits = count < room ? count : room;
    memcpy(text->buffer + text->length, bytes, fits);
    text->buffer[text->length + fits] = '\0';
  }
  text->length += count;
}

void oc_text_add(struct oc_text *text, const char *string) {
  oc_text_add_bytes(text, string, strlen(string));
}

void oc_text_add_count(struct oc_text *text, size_t count) {
  char digits[3 * sizeof count];
  size_t at = sizeof digits;
  do {
    digits[--at] = (char)('0' + count % 10);
    count /= 10;
  } while (count > 0);
  oc_text_add_bytes(text, digits + at, sizeof digits - at);
}

static bool is_control(char byte) {
  return (unsigned char)byte < 0x20 || byte == 0x7F;
}

void oc_text_add_quoted(struct oc_text *text, const char *bytes, size_t count) {
  enum { LONGEST = 40 };
  size_t kept = count;
  if (count > LONGEST) {
    kept = LONGEST;
    while (kept > 0 && oc_utf8_continues(bytes[kept]))
      kept--;
  }
  for (size_t i = 0; i < kept; i++)
    oc_text_add_bytes(text, is_control(bytes[i]) ? "?" : &bytes[i], 1);
  if (kept < count)
    oc_text_add(text, "...");
}

/* A text stands on a screen and, printed, in one line of a file. */
char *oc_text_new(const char *bytes, size_t count) {
  char *copy = malloc(count + 1);
  if (!copy)
    return NULL;
  for (size_t i = 0; i < count; i++)
    copy[i] = is_control(bytes[i]) && bytes[i] != '\t' ? '?' : bytes[i];
  copy[count] = '\0';
  return copy;
}
