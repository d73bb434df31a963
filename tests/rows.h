/* SPDX-License-Identifier: MIT */
/* Rows of cells apart by "|", as tests/refs/check.awk describes them. */
#ifndef OHM_TESTS_ROWS_H
#define OHM_TESTS_ROWS_H

#include "support.h"

enum { ROW_CELLS = 11, ROWS_MAX = 3000 };

enum { KIND, ID, SOURCE, PLACE, CALL, INPUTS, QUANTITY, EXPECTED, HALF, U_SOURCE, BUDGET };

struct row {
  const char *file;
  int line;
  const char *cell[ROW_CELLS];
};

/** All rows of a file of the source tree, appended to rows; how many it holds now.
 *  A file that cannot be read, or a row with another count of cells, is fatal. */
size_t rows_read(const char *file, size_t cells, struct row *rows, size_t count);

/** A cell as a number; the text must be nothing else. */
double row_number(const struct row *row, size_t cell);

/** half + u_source + budget. */
double row_tolerance(const struct row *row);

/** The text of an input, up to the next space, and its length; NULL when the row
 *  has none of that name. */
const char *row_input_text(const struct row *row, const char *name, size_t *length);

/** An input as a number; the test fails when the row has none. */
double row_input(const struct row *row, const char *name);

/** The text of a sensor file made of the band rows of a table; to be given to free(). */
char *rows_sensor_text(const struct row *rows, size_t count, const char *table, size_t length);

#endif
