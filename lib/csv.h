/* SPDX-License-Identifier: MIT */
/* Rows of comma-separated text, one after the other, each cell with its place. */
#ifndef OHM_CSV_H
#define OHM_CSV_H

#include "internal.h"

enum { OHM_CSV_CELLS_MAX = 64, OHM_CSV_ROW_MAX = 4096 };

/** One cell: spaces around it and its quotes taken off. */
struct ohm_csv_cell {
  const char *text; /**< not ended by NUL; good until the next ohm_csv_next() */
  size_t length;
  int column; /**< in bytes, 1 is the first of the line */
};

enum ohm_csv_kind {
  OHM_CSV_END,     /**< no more rows */
  OHM_CSV_COMMENT, /**< a line that begins with #: one cell, the text after it */
  OHM_CSV_ROW,     /**< a row of cells; an empty line is skipped */
  OHM_CSV_FAULT    /**< a line that is no row; the next call goes on after it */
};

/** The state of reading. Its members are for the caller to read. */
struct ohm_csv {
  const char *next;
  const char *end;
  int line;   /**< of the row at hand */
  int column; /**< of a fault */
  int next_line;
  size_t count;
  struct ohm_csv_cell cells[OHM_CSV_CELLS_MAX];
  const char *fault; /**< a clause: what was found and what is allowed */
  char unquoted[OHM_CSV_ROW_MAX];
};

/** Begin at the start of a text, after its byte order mark if it has one. */
void ohm_csv_begin(struct ohm_csv *csv, const char *text, size_t length);

/**
 * Go on to the next row. Lines end in LF, CR LF or CR. A cell may be quoted, with
 * "" for a quote and line ends inside (RFC 4180).
 */
enum ohm_csv_kind ohm_csv_next(struct ohm_csv *csv);

#endif
