/* SPDX-License-Identifier: MIT */
/* Writing into a caller's buffer. */
#ifndef OHM_TEXT_H
#define OHM_TEXT_H

#include "internal.h"

/** Whether a byte goes on with a UTF-8 character that an earlier byte began. */
static inline bool ohm_utf8_continues(char byte) {
  return ((unsigned char)byte & 0xC0) == 0x80;
}

/** A caller's buffer being filled; length counts what did not fit too. */
struct ohm_text {
  char *buffer;
  size_t size;
  size_t length;
};

/** Start filling; the text is empty and ended by NUL when size is not 0. */
struct ohm_text ohm_text_begin(char *buffer, size_t size);

/** Append bytes; what does not fit is counted, the text stays ended by NUL. */
void ohm_text_add_bytes(struct ohm_text *text, const char *bytes, size_t count);

/** Append a string. */
void ohm_text_add(struct ohm_text *text, const char *string);

/** Append a count. */
void ohm_text_add_count(struct ohm_text *text, size_t count);

/** Append what a person typed or a file holds, at most 40 bytes of it, control
 *  bytes as '?', cut between UTF-8 characters with "..." after the cut. */
void ohm_text_add_quoted(struct ohm_text *text, const char *bytes, size_t count);

#endif
