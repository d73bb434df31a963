/* SPDX-License-Identifier: MIT */
/* Text for a person: sentences on standard error, wrapped lines on standard output. */
#ifndef SHELL_SCREEN_H
#define SHELL_SCREEN_H

#include <stddef.h>

#include <ohmcurve.h>

#if defined(__GNUC__)
#define SHELL_FORMAT(at, from) __attribute__((format(printf, at, from)))
#else
#define SHELL_FORMAT(at, from)
#endif

enum { SHELL_SCREEN_COLUMNS = 80, SHELL_CELL_SIZE = 64 };

/** Say "ohmcurve: ..." on standard error and return status, for the caller to
 *  exit with. Control characters are shown as '?'. */
int shell_refuse(int status, const char *format, ...) SHELL_FORMAT(2, 3);

/** Say why a file could not be loaded, and the advice where there is none of that name.
 *  Returns the exit status. */
int shell_refuse_load(const ohm_error *error, const char *advice);

/** Say "label: text" on standard error. */
void shell_remark(const char *label, const char *text);

/** Write a text, control characters as '?', without an end of line. */
void shell_screen_text(const char *text);

/** Write a text that must not be broken, after a space or on a new line that
 *  begins at column; used is where the cursor is. */
void shell_screen_word(size_t column, size_t *used, const char *text, size_t length);

/** Write words from column on, which the cursor has reached, and every further
 *  line from there too; ends the line. */
void shell_screen_wrap(size_t column, const char *text);

/** Write spaces until text, already written from column on, fills width; one at least. */
void shell_screen_pad(const char *text, size_t width);

/** Write a temperature as "21.43 C". */
void shell_temperature_print(double t_c, int decimals, char buffer[SHELL_CELL_SIZE]);

#endif
