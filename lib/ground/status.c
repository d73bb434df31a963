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

void oc_error_clear(ohm_error *error) {
  if (error)
    memset(error, 0, sizeof *error);
}

static void add_parts(struct oc_text *text, va_list parts) {
  const char *part;
  while ((part = va_arg(parts, const char *)) != NULL)
    oc_text_add(text, part);
}

/* A message cut by its buffer must not end inside a character. */
static void mend_end(ohm_error *error, const struct oc_text *text) {
  if (text->length < text->size)
    return;
  size_t end = text->size - 4;
  while (end > 0 && oc_utf8_continues(error->message[end]))
    end--;
  memcpy(error->message + end, "...", 4);
}

ohm_status oc_fail(ohm_error *error, ohm_status status, ...) {
  if (!error)
    return status;
  oc_error_clear(error);
  error->status = (int)status;
  struct oc_text text = oc_text_begin(error->message, sizeof error->message);
  va_list parts;
  va_start(parts, status);
  add_parts(&text, parts);
  va_end(parts);
  mend_end(error, &text);
  return status;
}

ohm_status oc_fail_at(ohm_error *error, ohm_status status, const char *name, int line, int column,
                      ...) {
  if (!error)
    return status;
  oc_error_clear(error);
  error->status = (int)status;
  error->line = line;
  error->column = column;
  struct oc_text text = oc_text_begin(error->message, sizeof error->message);
  oc_text_add(&text, name);
  if (line > 0) {
    oc_text_add(&text, ", line ");
    oc_text_add_count(&text, (size_t)line);
  }
  if (column > 0) {
    oc_text_add(&text, ", column ");
    oc_text_add_count(&text, (size_t)column);
  }
  oc_text_add(&text, ": ");
  va_list parts;
  va_start(parts, column);
  add_parts(&text, parts);
  va_end(parts);
  mend_end(error, &text);
  return status;
}

ohm_status oc_fail_memory(ohm_error *error) {
  return oc_fail(error, OHM_NO_MEMORY, ohm_status_text(OHM_NO_MEMORY), (const char *)NULL);
}

ohm_status oc_fail_null(ohm_error *error) {
  return oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
}
