/* SPDX-License-Identifier: MIT */
/*
 * A file of tables: lines of "# key: value", and tables of a header row and rows. Sensors,
 * circuits, tables as they were printed and logs of the air are such files.
 */
#ifndef OC_TABLE_FILE_H
#define OC_TABLE_FILE_H

#include "complaints.h"
#include "csv.h"

/** The text of one. */
struct oc_table_text {
  const char *bytes;
  size_t length;
  const char *place; /**< what sentences call it */
  const char *name;  /**< for what says no name of its own */
};

/** Make something of a text; NULL with the error filled in. */
typedef void *oc_table_parser(const struct oc_table_text *text, ohm_error *error);

/**
 * Parse a caller's text, which gives its name to sentences too.
 *
 * Status  OHM_NULL_ARGUMENT; OHM_TOO_LARGE; those of parse.
 */
void *oc_table_file_parse(const char *bytes, size_t length, const char *name,
                          oc_table_parser *parse, ohm_error *error);

/**
 * Parse a file. Sentences call it by its path; it is named by what its path ends in,
 * without ".csv".
 *
 * Status  OHM_NULL_ARGUMENT; those of oc_file_read() and of parse.
 */
void *oc_table_file_load(const char *path, oc_table_parser *parse, ohm_error *error);

/** The keys of one kind of file; any other is somebody's remark. */
struct oc_keys {
  size_t count;
  const char *const *words;
  const char *named; /**< one that a name follows, "band"; its place is count; or NULL */
};

enum oc_part {
  OC_PART_END,  /**< no more, or a fault ended the reading */
  OC_PART_KEY,  /**< a line of a key: its place, name and value */
  OC_PART_ROW,  /**< a header row or a row: its cells are in csv */
  OC_PART_FAULT /**< a line that is no row: csv.fault says why */
};

enum { OC_TABLE_COLUMNS_MAX = 32 };

/** The state of reading. Its members are for the caller to read. */
struct oc_table_file {
  const struct oc_keys *keys;
  struct oc_complaints *complaints;
  struct oc_csv csv;
  size_t key;
  struct oc_csv_cell name; /**< what follows a named key */
  struct oc_csv_cell value;
  bool has_header;
  int columns[OC_TABLE_COLUMNS_MAX]; /**< where a column stands in a row; -1 when it does not */
};

void oc_table_file_begin(struct oc_table_file *file, const struct oc_keys *keys,
                         const struct oc_table_text *text, struct oc_complaints *complaints);

/** Go on to the next part. A key that is spelt nearly like a known one is noted. */
enum oc_part oc_table_file_next(struct oc_table_file *file);

/** Leave a note: what, a cell of the line at hand in quotes, advice. Of no cell it is the
 *  place of the line, or of the fault in it. */
void oc_table_file_note(struct oc_table_file *file, const char *what,
                        const struct oc_csv_cell *cell, const char *advice);

/** The same as the fault that ends the reading. */
void oc_table_file_fail(struct oc_table_file *file, ohm_status status, const char *what,
                        const struct oc_csv_cell *cell, const char *advice);

/** Take the value of the line at hand for a text; the first of two counts, and it is noted. */
void oc_table_file_take_text(struct oc_table_file *file, char **text);

/** Take the row at hand for a header row; of two columns of one name the first counts. */
void oc_table_file_take_header(struct oc_table_file *file, const char *const *names, size_t count);

/** The cell of a column in the row at hand; blank where there is none. */
const struct oc_csv_cell *oc_table_file_cell(const struct oc_table_file *file, size_t column);

#endif
