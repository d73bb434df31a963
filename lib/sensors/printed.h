/* SPDX-License-Identifier: MIT */
/* A table as it was printed: every figure with its digits and its place. */
#ifndef OC_PRINTED_H
#define OC_PRINTED_H

#include <stdint.h>

#include "../ground/table_file.h"

enum oc_printed_column {
  OC_PRINTED_MIN,
  OC_PRINTED_NOMINAL,
  OC_PRINTED_MAX,
  OC_PRINTED_VOLTS,
  OC_PRINTED_HOT_VOLTS,
  OC_PRINTED_FIGURES, /**< the columns before are of figures */
  OC_PRINTED_TEMP = OC_PRINTED_FIGURES,
  OC_PRINTED_TEMP_F,
  OC_PRINTED_FLAG,
  OC_PRINTED_BAND,
  OC_PRINTED_AS_PRINTED,
  OC_PRINTED_COLUMNS
};

enum { OC_PRINTED_TEXT = 24 };

struct oc_printed_figure {
  double value;     /**< NaN when blank or no number above 0 */
  double half;      /**< half of what one in the last printed digit is worth */
  double read_half; /**< the same by this figure alone */
  bool is_known;    /**< told by as_printed */
  int column;
  char text[OC_PRINTED_TEXT];
};

/** A temperature printed in degrees of one kind. */
struct oc_printed_degrees {
  double t; /**< NaN when not printed */
  double half;
  int column;
};

struct oc_printed_row {
  int line;
  double t_c;
  int column; /**< of t_c */
  char text[OC_PRINTED_TEXT];
  struct oc_printed_degrees celsius; /**< beside t_c, which may be converted */
  struct oc_printed_degrees fahrenheit;
  struct oc_printed_figure figures[OC_PRINTED_FIGURES];
  uint64_t band; /**< rows of one maker's band have one number, the sensor's own 0 */
  bool flagged;  /**< suspect already */
  bool misplaced;
};

struct oc_printed {
  struct oc_printed_row *rows;
  size_t count;
  size_t room;
  double supply_v; /**< of the line "# supply_v: 5"; 5 when there is none */
};

/** Name of a column in a header row, "r_nom_ohm". */
const char *oc_printed_column_name(enum oc_printed_column column);

/** Find the columns in the header row at hand; what cannot be done without is a fault. */
void oc_printed_take_header(struct oc_table_file *file);

/** Whether a row is flagged as one that cannot be believed. */
bool oc_printed_is_suspect(const struct oc_table_file *file);

/**
 * Read the rows that have a temperature; a figure that is no number is left blank.
 *
 * Out     printed  none when the text has no header row; to be given back in any case
 * Status  OHM_OK; OHM_BAD_SYNTAX the header row lacks a column; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 */
ohm_status oc_printed_parse(const struct oc_table_text *text, struct oc_printed *printed,
                            ohm_error *error);

void oc_printed_free(struct oc_printed *printed);

#endif
