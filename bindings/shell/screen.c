/* SPDX-License-Identifier: MIT */
#include "screen.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "options.h"

static bool is_control(const char *at) {
  unsigned char byte = (unsigned char)at[0];
  unsigned char next = byte == 0xC2 ? (unsigned char)at[1] : 0xFF;
  return byte < 0x20 || byte == 0x7F || (0x80 <= next && next <= 0x9F);
}

static void write_clean(FILE *stream, const char *text, size_t length) {
  for (size_t i = 0; i < length; i++)
    putc(is_control(text + i) ? '?' : text[i], stream);
}

int shell_refuse(int status, const char *format, ...) {
  char sentence[1024];
  va_list values;
  va_start(values, format);
  vsnprintf(sentence, sizeof sentence, format, values);
  va_end(values);
  fputs("ohmcurve: ", stderr);
  write_clean(stderr, sentence, strlen(sentence));
  putc('\n', stderr);
  return status;
}

int shell_refuse_load(const ohm_error *error, const char *advice) {
  bool missing = error->status == OHM_CANNOT_OPEN || error->status == OHM_NOT_FOUND;
  int status = missing                          ? SHELL_EXIT_MISSING
               : error->status == OHM_NO_MEMORY ? SHELL_EXIT_MEMORY
                                                : SHELL_EXIT_DATA;
  return shell_refuse(status, "%s%s", error->message, error->status == OHM_NOT_FOUND ? advice : "");
}

void shell_remark(const char *label, const char *text) {
  fprintf(stderr, "%s: ", label);
  write_clean(stderr, text, strlen(text));
  putc('\n', stderr);
}

void shell_screen_text(const char *text) {
  write_clean(stdout, text, strlen(text));
}

/* Of UTF-8, every byte that does not continue a character. */
static size_t columns_of(const char *text, size_t length) {
  size_t columns = 0;
  for (size_t i = 0; i < length; i++)
    columns += ((unsigned char)text[i] & 0xC0) != 0x80;
  return columns;
}

static void write_spaces(size_t count) {
  while (count-- > 0)
    putchar(' ');
}

void shell_screen_pad(const char *text, size_t width) {
  size_t columns = columns_of(text, strlen(text));
  write_spaces(columns < width ? width - columns : 1);
}

void shell_screen_word(size_t column, size_t *used, const char *text, size_t length) {
  size_t width = columns_of(text, length);
  if (*used > column && *used + 1 + width >= SHELL_SCREEN_COLUMNS) {
    putchar('\n');
    write_spaces(column);
    *used = column;
  } else if (*used > column) {
    putchar(' ');
    (*used)++;
  }
  write_clean(stdout, text, length);
  *used += width;
}

void shell_screen_wrap(size_t column, const char *text) {
  size_t used = column;
  for (text += strspn(text, " "); *text != '\0'; text += strspn(text, " ")) {
    size_t length = strcspn(text, " \n");
    shell_screen_word(column, &used, text, length);
    text += length;
    if (*text == '\n') {
      fputs("\n\n", stdout);
      write_spaces(column);
      used = column;
      text++;
    }
  }
  putchar('\n');
}

void shell_temperature_print(double t_c, int decimals, char buffer[SHELL_CELL_SIZE]) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, decimals, digits, sizeof digits);
  bool minus_zero = digits[0] == '-' && digits[1 + strspn(digits + 1, "0.")] == '\0';
  snprintf(buffer, SHELL_CELL_SIZE, "%s C", digits + minus_zero);
}
