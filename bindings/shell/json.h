/* SPDX-License-Identifier: MIT */
/* One JSON object a line on standard output (RFC 8259). */
#ifndef SHELL_JSON_H
#define SHELL_JSON_H

#include <stdbool.h>

struct shell_json {
  bool started; /**< a comma is due before the next member */
};

/** Begin an object: what the line is, "finding", and the version of the keys. */
void shell_json_begin(struct shell_json *json, const char *record);

/** A member; nothing when the value is not finite. */
void shell_json_number(struct shell_json *json, const char *key, double value);

/** A member; nothing when text is NULL. Bytes that are no UTF-8 become U+FFFD. */
void shell_json_text(struct shell_json *json, const char *key, const char *text);

/** A member that is an array of texts or numbers: begin, each of them, end. A number
 *  that is not finite is null. */
void shell_json_list_begin(struct shell_json *json, const char *key);
void shell_json_list_text(struct shell_json *json, const char *text);
void shell_json_list_number(struct shell_json *json, double value);
void shell_json_list_end(struct shell_json *json);

/** End the object and the line. */
void shell_json_end(struct shell_json *json);

#endif
