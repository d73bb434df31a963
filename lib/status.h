/* SPDX-License-Identifier: MIT */
/* Filling in an ohm_error, and writing into a caller's buffer. */
#ifndef OHM_STATUS_H
#define OHM_STATUS_H

#include "internal.h"

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

/** Append a number as ohm_number_print() writes it. */
void ohm_text_add_number(struct ohm_text *text, double value);

/** Append a count. */
void ohm_text_add_count(struct ohm_text *text, size_t count);

/** Append what a person typed or a file holds, at most 40 bytes of it, control
 *  bytes as '?', cut between UTF-8 characters with "..." after the cut. */
void ohm_text_add_quoted(struct ohm_text *text, const char *bytes, size_t count);

/**
 * Fill in an error and return its status. The message is the given parts, up to
 * the NULL that must end them. error may be NULL.
 */
ohm_status ohm_fail(ohm_error *error, ohm_status status, ...)
#if defined(__GNUC__)
    __attribute__((sentinel))
#endif
    ;

/** ohm_fail() at a place of a named text: "name, line 3, column 5: ...". A column
 *  of 0 is left out. */
ohm_status ohm_fail_at(ohm_error *error, ohm_status status, const char *name, int line, int column,
                       ...)
#if defined(__GNUC__)
    __attribute__((sentinel))
#endif
    ;

/** The sentence for a failed allocation. */
ohm_status ohm_fail_memory(ohm_error *error);

/** No fault: an error all of zeros. */
void ohm_error_clear(ohm_error *error);

#endif
