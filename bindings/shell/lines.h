/* SPDX-License-Identifier: MIT */
/* Standard input, a line at a time. */
#ifndef OHM_LINES_H
#define OHM_LINES_H

#include <stdbool.h>
#include <stddef.h>

enum { OHM_LINE_MAX = 65536 };

enum ohm_line_kind {
  OHM_LINE_TEXT,  /**< text is the line, spaces around it taken off */
  OHM_LINE_UNFIT, /**< the line is too long or holds a NUL byte */
  OHM_LINE_END,   /**< no more lines */
  OHM_LINE_FAILED /**< the input cannot be read */
};

struct ohm_lines {
  size_t start, end;
  bool ended, failed;
  unsigned long line; /**< number of the line at hand, 1 is the first */
  char *text;
  char bytes[OHM_LINE_MAX + 1];
};

/** Begin. */
void ohm_lines_begin(struct ohm_lines *lines);

/** Go on to the next line that is not blank and no comment. Whenever more input
 *  is waited for, standard output is flushed first. */
enum ohm_line_kind ohm_lines_next(struct ohm_lines *lines);

#endif
