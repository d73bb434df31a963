/* SPDX-License-Identifier: MIT */
/* Writing into a caller's buffer, and copies of what others wrote. */
#ifndef OC_TEXT_H
#define OC_TEXT_H

#include "internal.h"

/** Whether a byte goes on with a UTF-8 character that an earlier byte began. */
static inline bool oc_utf8_continues(char byte) {
  return ((unsigned char)byte & 0xC0) == 0x80;
}

/** A caller's buffer being filled; length counts what did not fit too. */
struct oc_text {
  char *buffer;
  size_t size;
  size_t length;
};

/** Start filling; the text is empty and ended by NUL when size is not 0. */
struct oc_text oc_text_begin(char *buffer, size_t size);

/** Append bytes; what does not fit is counted, the text stays ended by NUL. */
void oc_text_add_bytes(struct oc_text *text, const char *bytes, size_t count);

/** Append a string. */
void oc_text_add(struct oc_text *text, const char *string);

/** Append a count. */
void oc_text_add_count(struct oc_text *text, size_t count);

/** Append what a person typed or a file holds, at most 40 bytes of it, control
 *  bytes as '?', cut between UTF-8 characters with "..." after the cut. */
void oc_text_add_quoted(struct oc_text *text, const char *bytes, size_t count);

/** A copy of bytes to be given to free(), control bytes but tabs as '?'; NULL without
 *  memory. */
char *oc_text_new(const char *bytes, size_t count);

#endif
