/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "lines.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

void shell_lines_begin(struct shell_lines *lines) {
  lines->start = lines->end = 0;
  lines->ended = lines->failed = false;
  lines->line = 0;
  lines->text = NULL;
}

/* Results go out before more input is waited for: a live stream is answered at
 * once, a file in large pieces. */
static void fill(struct shell_lines *lines) {
  fflush(stdout);
  memmove(lines->bytes, lines->bytes + lines->start, lines->end - lines->start);
  lines->end -= lines->start;
  lines->start = 0;
  ssize_t got;
  do
    got = read(STDIN_FILENO, lines->bytes + lines->end, SHELL_LINE_MAX - lines->end);
  while (got < 0 && errno == EINTR);
  if (got > 0)
    lines->end += (size_t)got;
  else
    lines->ended = true;
  lines->failed = got < 0;
}

/* Length of the raw line at start, its end in the buffer; too_long when it was cut. */
static bool take(struct shell_lines *lines, char **line, size_t *length, bool *too_long) {
  *too_long = false;
  size_t seen = 0;
  for (;;) {
    char *from = lines->bytes + lines->start;
    size_t held = lines->end - lines->start;
    char *stop = memchr(from + seen, '\n', held - seen);
    if (stop || (lines->ended && held > 0)) {
      *line = from;
      *length = stop ? (size_t)(stop - from) : held;
      lines->start += *length + (stop != NULL);
      return true;
    }
    if (lines->ended)
      return *too_long;
    seen = held;
    if (held == SHELL_LINE_MAX) {
      *too_long = true;
      *line = from;
      *length = seen = 0;
      lines->start = lines->end;
    }
    fill(lines);
  }
}

static bool is_space(char byte) {
  return byte == ' ' || byte == '\t' || byte == '\r';
}

static void trim(char **line, size_t *length) {
  while (*length > 0 && is_space((*line)[*length - 1]))
    (*length)--;
  while (*length > 0 && is_space((*line)[0])) {
    (*line)++;
    (*length)--;
  }
}

static void skip_byte_order_mark(char **line, size_t *length) {
  if (*length >= 3 && memcmp(*line, "\xEF\xBB\xBF", 3) == 0) {
    *line += 3;
    *length -= 3;
  }
}

enum shell_line_kind shell_lines_next(struct shell_lines *lines) {
  char *line;
  size_t length;
  bool too_long;
  while (take(lines, &line, &length, &too_long)) {
    if (++lines->line == 1)
      skip_byte_order_mark(&line, &length);
    trim(&line, &length);
    if (too_long || memchr(line, '\0', length))
      return SHELL_LINE_UNFIT;
    if (length == 0 || line[0] == '#')
      continue;
    line[length] = '\0'; /* over its own end of line, or the byte kept spare */
    lines->text = line;
    return SHELL_LINE_TEXT;
  }
  return lines->failed ? SHELL_LINE_FAILED : SHELL_LINE_END;
}
