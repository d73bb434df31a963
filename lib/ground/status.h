/* SPDX-License-Identifier: MIT */
/* Filling in an ohm_error. */
#ifndef OC_STATUS_H
#define OC_STATUS_H

#include "text.h"

/**
 * Fill in an error and return its status. The message is the given parts, up to
 * the NULL that must end them. error may be NULL.
 */
ohm_status oc_fail(ohm_error *error, ohm_status status, ...)
#if defined(__GNUC__)
    __attribute__((sentinel))
#endif
    ;

/** oc_fail() at a place of a named text: "name, line 3, column 5: ...". A column
 *  of 0 is left out. */
ohm_status oc_fail_at(ohm_error *error, ohm_status status, const char *name, int line, int column,
                      ...)
#if defined(__GNUC__)
    __attribute__((sentinel))
#endif
    ;

/** The sentence for a failed allocation. */
ohm_status oc_fail_memory(ohm_error *error);

/** The sentence for a pointer that is NULL where one is required. */
ohm_status oc_fail_null(ohm_error *error);

/** No fault: an error all of zeros. */
void oc_error_clear(ohm_error *error);

#endif
