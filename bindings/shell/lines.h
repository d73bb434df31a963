/* SPDX-License-Identifier: MIT */
/* Standard input, a line at a time. */
#ifndef SHELL_LINES_H
#define SHELL_LINES_H

#include <stdbool.h>
#include <stddef.h>

enum { SHELL_LINE_MAX = 65536 };

enum shell_line_kind {
  SHELL_LINE_TEXT,  /**< text is the line, spaces around it taken off */
  SHELL_LINE_UNFIT, /**< the line is too long or holds a NUL byte */
  SHELL_LINE_END,   /**< no more lines */
  SHELL_LINE_FAILED /**< the input cannot be read */
};

struct shell_lines {
  size_t start, end;
  bool ended, failed;
  unsigned long line; /**< number of the line at hand, 1 is the first */
  char *text;
  char bytes[SHELL_LINE_MAX + 1];
};

/** Begin. */
void shell_lines_begin(struct shell_lines *lines);

/** Go on to the next line that is not blank and no comment. Whenever more input
 *  is waited for, standard output is flushed first. */
enum shell_line_kind shell_lines_next(struct shell_lines *lines);

#endif
