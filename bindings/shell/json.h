/* SPDX-License-Identifier: MIT */
/* One JSON object a line on standard output (RFC 8259). */
#ifndef OHM_JSON_H
#define OHM_JSON_H

#include <stdbool.h>

struct ohm_json {
  bool started; /**< a comma is due before the next member */
};

/** Begin an object. */
void ohm_json_begin(struct ohm_json *json);

/** A member; nothing when the value is not finite. */
void ohm_json_number(struct ohm_json *json, const char *key, double value);

/** A member; nothing when text is NULL. Bytes that are no UTF-8 become U+FFFD. */
void ohm_json_text(struct ohm_json *json, const char *key, const char *text);

/** A member that is an array of texts or numbers: begin, each of them, end. A number
 *  that is not finite is null. */
void ohm_json_list_begin(struct ohm_json *json, const char *key);
void ohm_json_list_text(struct ohm_json *json, const char *text);
void ohm_json_list_number(struct ohm_json *json, double value);
void ohm_json_list_end(struct ohm_json *json);

/** End the object and the line. */
void ohm_json_end(struct ohm_json *json);

#endif
