/* SPDX-License-Identifier: MIT */
/* Rows of comma-separated text, one after the other, each cell with its place. */
#ifndef OC_CSV_H
#define OC_CSV_H

#include "internal.h"

enum { OC_CSV_CELLS_MAX = 64, OC_CSV_ROW_MAX = 4096 };

/** One cell: spaces around it and its quotes taken off. */
struct oc_csv_cell {
  const char *text; /**< not ended by NUL; good until the next oc_csv_next() */
  size_t length;
  int column; /**< in bytes, 1 is the first of the line */
};

enum oc_csv_kind {
  OC_CSV_END,     /**< no more rows */
  OC_CSV_COMMENT, /**< a line that begins with #: one cell, the text after it */
  OC_CSV_ROW,     /**< a row of cells; an empty line is skipped */
  OC_CSV_FAULT    /**< a line that is no row; the next call goes on after it */
};

/** The state of reading. Its members are for the caller to read. */
struct oc_csv {
  const char *next;
  const char *end;
  int line;   /**< of the row at hand */
  int column; /**< of a fault */
  int next_line;
  size_t count;
  struct oc_csv_cell cells[OC_CSV_CELLS_MAX];
  const char *fault; /**< a clause: what was found and what is allowed */
  char unquoted[OC_CSV_ROW_MAX];
};

/** Begin at the start of a text, after its byte order mark if it has one. */
void oc_csv_begin(struct oc_csv *csv, const char *text, size_t length);

/**
 * Go on to the next row. Lines end in LF, CR LF or CR. A cell may be quoted, with
 * "" for a quote and line ends inside (RFC 4180).
 */
enum oc_csv_kind oc_csv_next(struct oc_csv *csv);

/** Whether a cell holds that word and nothing else. */
bool oc_csv_is(const struct oc_csv_cell *cell, const char *word);

#endif
