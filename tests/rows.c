/* SPDX-License-Identifier: MIT */
#include "rows.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void fatal(const char *file, int line, const char *what) {
  fprintf(stderr, "%s:%d: %s\n", file, line, what);
  exit(EXIT_FAILURE);
}

static char *whole_file(const char *file) {
  char *path = source_path(file);
  FILE *stream = fopen(path, "rb");
  free(path);
  if (!stream)
    fatal(file, 0, "cannot be opened");
  size_t length = 0;
  size_t room = 1 << 20;
  char *text = malloc(room);
  if (text)
    length = fread(text, 1, room - 1, stream);
  if (!text || ferror(stream) || !feof(stream))
    fatal(file, 0, "cannot be read, or is larger than 1 MiB");
  fclose(stream);
  text[length] = '\0';
  return text;
}

static char *trimmed(char *cell) {
  cell += strspn(cell, " \t");
  size_t length = strlen(cell);
  while (length > 0 && strchr(" \t\r", cell[length - 1]))
    length--;
  cell[length] = '\0';
  return cell;
}

static void split(struct row *row, char *text, size_t cells) {
  size_t found = 0;
  for (char *next = text; next; found++) {
    char *bar = strchr(next, '|');
    if (bar)
      *bar = '\0';
    if (found < cells)
      row->cell[found] = trimmed(next);
    next = bar ? bar + 1 : NULL;
  }
  if (found != cells)
    fatal(row->file, row->line, "has another count of cells than it should");
}

/* The text stays: the cells point into it for as long as the program runs. */
size_t rows_read(const char *file, size_t cells, struct row *rows, size_t count) {
  int line = 1;
  for (char *text = whole_file(file); *text; line++) {
    char *end = text + strcspn(text, "\n");
    char *next = *end ? end + 1 : end;
    *end = '\0';
    if (*text != '#' && *trimmed(text) != '\0') {
      if (count == ROWS_MAX)
        fatal(file, line, "is one row too many: raise ROWS_MAX");
      rows[count] = (struct row){.file = file, .line = line};
      split(&rows[count++], text, cells);
    }
    text = next;
  }
  return count;
}

double row_number(const struct row *row, size_t cell) {
  char *end;
  double value = strtod(row->cell[cell], &end);
  if (end == row->cell[cell] || *end != '\0')
    ck_abort_msg("%s:%d: \"%s\" is no number", row->file, row->line, row->cell[cell]);
  return value;
}

double row_tolerance(const struct row *row) {
  return row_number(row, HALF) + row_number(row, U_SOURCE) + row_number(row, BUDGET);
}

const char *row_input_text(const struct row *row, const char *name, size_t *length) {
  size_t named = strlen(name);
  const char *input = row->cell[INPUTS];
  while (*input) {
    size_t whole = strcspn(input, " ");
    if (whole > named && strncmp(input, name, named) == 0 && input[named] == '=') {
      *length = whole - named - 1;
      return input + named + 1;
    }
    input += whole + strspn(input + whole, " ");
  }
  return NULL;
}

double row_input(const struct row *row, const char *name) {
  size_t length = 0;
  const char *text = row_input_text(row, name, &length);
  char *end = NULL;
  double value = text ? strtod(text, &end) : NAN;
  if (!text || length == 0 || end != text + length)
    ck_abort_msg("%s:%d: there is no number %s among the inputs", row->file, row->line, name);
  return value;
}

static bool is_of_table(const struct row *row, const char *table, size_t length) {
  size_t own = 0;
  const char *name = row_input_text(row, "table", &own);
  return name && strcmp(row->cell[CALL], "band") == 0 && own == length &&
         memcmp(name, table, length) == 0;
}

/* Rows of one temperature stand together; each gives a cell of the line. */
char *rows_sensor_text(const struct row *rows, size_t count, const char *table, size_t length) {
  static const char *const columns[] = {"low_ohm", "nominal_ohm", "high_ohm"};
  size_t room = 64 * (count + 2);
  char *text = malloc(room);
  if (!text)
    abort();
  size_t used = (size_t)snprintf(text, room, "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n");
  for (size_t i = 0; i < count;) {
    if (!is_of_table(&rows[i], table, length)) {
      i++;
      continue;
    }
    double t_c = row_input(&rows[i], "t_c");
    used += (size_t)snprintf(text + used, room - used, "%.17g", t_c);
    for (int column = 0; column < 3; column++) {
      bool has = i < count && is_of_table(&rows[i], table, length) &&
                 is_near(row_input(&rows[i], "t_c"), t_c, 0) &&
                 strcmp(rows[i].cell[QUANTITY], columns[column]) == 0;
      used += (size_t)snprintf(text + used, room - used, ",%s", has ? rows[i].cell[EXPECTED] : "");
      i += has;
    }
    used += (size_t)snprintf(text + used, room - used, "\n");
  }
  return text;
}
