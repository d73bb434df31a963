/* SPDX-License-Identifier: MIT */
/* A table as it was printed: every figure with its digits and its place. */
#ifndef OHM_PRINTED_H
#define OHM_PRINTED_H

#include <stdint.h>

#include "internal.h"

enum ohm_printed_column {
  OHM_PRINTED_MIN,
  OHM_PRINTED_NOMINAL,
  OHM_PRINTED_MAX,
  OHM_PRINTED_VOLTS,
  OHM_PRINTED_HOT_VOLTS,
  OHM_PRINTED_COLUMNS
};

enum { OHM_PRINTED_TEXT = 24 };

struct ohm_printed_figure {
  double value;     /**< NaN when blank or no number above 0 */
  double half;      /**< half of what one in the last printed digit is worth */
  double read_half; /**< the same by this figure alone */
  bool is_known;    /**< told by as_printed */
  int column;
  char text[OHM_PRINTED_TEXT];
};

/** A temperature printed in degrees of one kind. */
struct ohm_printed_degrees {
  double t; /**< NaN when not printed */
  double half;
  int column;
};

struct ohm_printed_row {
  int line;
  double t_c;
  int column; /**< of t_c */
  char text[OHM_PRINTED_TEXT];
  struct ohm_printed_degrees celsius; /**< beside t_c, which may be converted */
  struct ohm_printed_degrees fahrenheit;
  struct ohm_printed_figure figures[OHM_PRINTED_COLUMNS];
  uint64_t band; /**< rows of one maker's band have one number, the sensor's own 0 */
  bool flagged;  /**< suspect already */
  bool misplaced;
};

struct ohm_printed {
  struct ohm_printed_row *rows;
  size_t count;
  size_t room;
  double supply_v; /**< of the line "# supply_v: 5"; 5 when there is none */
};

/** Name of a column in a header row, "r_nom_ohm". */
const char *ohm_printed_column_name(enum ohm_printed_column column);

/**
 * Read the rows that have a temperature; a figure that is no number is left blank.
 *
 * Out     printed  none when the text has no header row; to be given back in any case
 * Status  OHM_OK; OHM_BAD_SYNTAX the header row lacks a column; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 */
ohm_status ohm_printed_parse(const char *text, size_t length, const char *place,
                             struct ohm_printed *printed, ohm_error *error);

void ohm_printed_free(struct ohm_printed *printed);

#endif
