/* SPDX-License-Identifier: MIT */
#include "status.h"

#include <stdarg.h>
#include <string.h>

_Static_assert(sizeof(ohm_error) == 512, "ohm_error is frozen at 512 bytes");

static const struct {
  const char *name;
  const char *text;
} statuses[] = {
    [OHM_OK] = {"ok", "done"},
    [OHM_NULL_ARGUMENT] = {"null_argument", "a required pointer is NULL: pass the object"},
    [OHM_BAD_ARGUMENT] = {"bad_argument", "a value is missing, NaN, infinite, of the wrong sign or "
                                          "too large: pass what its description asks for"},
    [OHM_OUT_OF_RANGE] = {"out_of_range", "a value lies outside the range: ask the curve, or the "
                                          "description, for the range and stay inside it"},
    [OHM_BAD_SYNTAX] = {"bad_syntax", "the text is not in its notation: write it as the "
                                      "description shows"},
    [OHM_BAD_DEFINITION] = {"bad_definition", "the parts do not make a usable curve or sensor: "
                                              "compare them with their source"},
    [OHM_NOT_FOUND] = {"not_found", "there is nothing by that name: look it up in the list"},
    [OHM_CANNOT_OPEN] = {"cannot_open", "the file cannot be opened or read: check its name and "
                                        "that it is a plain file you may read"},
    [OHM_TOO_LARGE] = {"too_large", "it is larger than 16 MiB, or has more than 4096 rows or 16 "
                                    "readings: leave out what is not needed"},
    [OHM_NO_MEMORY] = {"no_memory", "an allocation failed: free some memory and try again"},
};

const char *ohm_version(void) {
  return OHM_VERSION;
}

static bool is_status(int status) {
  return 0 <= status && (size_t)status < sizeof statuses / sizeof statuses[0];
}

const char *ohm_status_name(int status) {
  return is_status(status) ? statuses[status].name : "unknown";
}

const char *ohm_status_text(int status) {
  return is_status(status) ? statuses[status].text
                           : "this number is no status: pass what a call returned";
}

struct ohm_text ohm_text_begin(char *buffer, size_t size) {
  struct ohm_text text = {buffer, buffer ? size : 0, 0};
  if (text.size > 0)
    text.buffer[0] = '\0';
  return text;
}

void ohm_text_add_bytes(struct ohm_text *text, const char *bytes, size_t count) {
  if (text->length < text->size) {
    size_t room = text->size - text->length - 1;
    size_t fits = count < room ? count : room;
    memcpy(text->buffer + text->length, bytes, fits);
    text->buffer[text->length + fits] = '\0';
  }
  text->length += count;
}

void ohm_text_add(struct ohm_text *text, const char *string) {
  ohm_text_add_bytes(text, string, strlen(string));
}

void ohm_text_add_number(struct ohm_text *text, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  ohm_text_add(text, digits);
}

void ohm_text_add_count(struct ohm_text *text, size_t count) {
  char digits[3 * sizeof count];
  size_t at = sizeof digits;
  do {
    digits[--at] = (char)('0' + count % 10);
    count /= 10;
  } while (count > 0);
  ohm_text_add_bytes(text, digits + at, sizeof digits - at);
}

static bool continues_character(char byte) {
  return ((unsigned char)byte & 0xC0) == 0x80;
}

void ohm_text_add_quoted(struct ohm_text *text, const char *bytes, size_t count) {
  enum { LONGEST = 40 };
  size_t kept = count;
  if (count > LONGEST) {
    kept = LONGEST;
    while (kept > 0 && continues_character(bytes[kept]))
      kept--;
  }
  for (size_t i = 0; i < kept; i++) {
    unsigned char byte = (unsigned char)bytes[i];
    ohm_text_add_bytes(text, byte < 0x20 || byte == 0x7F ? "?" : &bytes[i], 1);
  }
  if (kept < count)
    ohm_text_add(text, "...");
}

void ohm_error_clear(ohm_error *error) {
  if (error)
    memset(error, 0, sizeof *error);
}

static void add_parts(struct ohm_text *text, va_list parts) {
  const char *part;
  while ((part = va_arg(parts, const char *)) != NULL)
    ohm_text_add(text, part);
}

/* A message cut by its buffer must not end inside a character. */
static void mend_end(ohm_error *error, const struct ohm_text *text) {
  if (text->length < text->size)
    return;
  size_t end = text->size - 4;
  while (end > 0 && continues_character(error->message[end]))
    end--;
  memcpy(error->message + end, "...", 4);
}

ohm_status ohm_fail(ohm_error *error, ohm_status status, ...) {
  if (!error)
    return status;
  ohm_error_clear(error);
  error->status = (int)status;
  struct ohm_text text = ohm_text_begin(error->message, sizeof error->message);
  va_list parts;
  va_start(parts, status);
  add_parts(&text, parts);
  va_end(parts);
  mend_end(error, &text);
  return status;
}

ohm_status ohm_fail_at(ohm_error *error, ohm_status status, const char *name, int line, int column,
                       ...) {
  if (!error)
    return status;
  ohm_error_clear(error);
  error->status = (int)status;
  error->line = line;
  error->column = column;
  struct ohm_text text = ohm_text_begin(error->message, sizeof error->message);
  ohm_text_add(&text, name);
  if (line > 0) {
    ohm_text_add(&text, ", line ");
    ohm_text_add_count(&text, (size_t)line);
  }
  if (column > 0) {
    ohm_text_add(&text, ", column ");
    ohm_text_add_count(&text, (size_t)column);
  }
  ohm_text_add(&text, ": ");
  va_list parts;
  va_start(parts, column);
  add_parts(&text, parts);
  va_end(parts);
  mend_end(error, &text);
  return status;
}

ohm_status ohm_fail_memory(ohm_error *error) {
  return ohm_fail(error, OHM_NO_MEMORY, ohm_status_text(OHM_NO_MEMORY), (const char *)NULL);
}
