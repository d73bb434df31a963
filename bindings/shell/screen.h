/* SPDX-License-Identifier: MIT */
/* Text for a person: sentences on standard error, wrapped lines on standard output. */
#ifndef OHM_SCREEN_H
#define OHM_SCREEN_H

#include <stddef.h>

#if defined(__GNUC__)
#define OHM_FORMAT(at, from) __attribute__((format(printf, at, from)))
#else
#define OHM_FORMAT(at, from)
#endif

enum { OHM_SCREEN_COLUMNS = 80, OHM_CELL_SIZE = 64 };

/** Say "ohmcurve: ..." on standard error and return status, for the caller to
 *  exit with. Control characters are shown as '?'. */
int ohm_refuse(int status, const char *format, ...) OHM_FORMAT(2, 3);

/** Say "label: text" on standard error. */
void ohm_remark(const char *label, const char *text);

/** Write a text, control characters as '?', without an end of line. */
void ohm_screen_text(const char *text);

/** Write a text that must not be broken, after a space or on a new line that
 *  begins at column; used is where the cursor is. */
void ohm_screen_word(size_t column, size_t *used, const char *text, size_t length);

/** Write words from column on, which the cursor has reached, and every further
 *  line from there too; ends the line. */
void ohm_screen_wrap(size_t column, const char *text);

/** Write spaces until text, already written from column on, fills width; one at least. */
void ohm_screen_pad(const char *text, size_t width);

/** Write a temperature as "21.43 C". */
void ohm_temperature_print(double t_c, int decimals, char buffer[OHM_CELL_SIZE]);

#endif
