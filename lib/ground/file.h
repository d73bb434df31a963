/* SPDX-License-Identifier: MIT */
/* The only room that opens anything. */
#ifndef OC_FILE_H
#define OC_FILE_H

#include "internal.h"

enum { OC_FILE_MAX = 16 * 1024 * 1024 };

/**
 * Read the whole of one plain file. No directory, device, pipe or socket is
 * opened to be read; a file that grows past the bound while it is read is refused.
 *
 * Return  its bytes, to be given to free(), with a NUL after the last; NULL with
 *         the error filled in.
 * Status  OHM_CANNOT_OPEN (why, by its own words, not the system's); OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 */
char *oc_file_read(const char *path, size_t *length, ohm_error *error);

#endif
