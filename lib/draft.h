/* SPDX-License-Identifier: MIT */
/* A sensor while its file is being read: what was found so far, and what was wrong. */
#ifndef OHM_DRAFT_H
#define OHM_DRAFT_H

#include "csv.h"
#include "sensor.h"

/** Every number a line can give: the parameters of all models, and one more. */
enum { OHM_DRAFT_NUMBERS = 16 };

struct ohm_draft_row {
  ohm_sensor_row row;
  size_t band; /**< 0 for the sensor's own, else the band's place and 1 */
  int line;
};

struct ohm_draft {
  const char *place; /**< what sentences call the text */
  ohm_error *error;
  ohm_status status; /**< of the first fault that cannot be passed over */
  ohm_sensor *sensor;
  enum ohm_model model;
  double numbers[OHM_DRAFT_NUMBERS]; /**< in the order of their keys; NaN when not given */
  double low_c;                      /**< of the range line */
  double high_c;
  struct ohm_tolerance tolerance; /**< of the tolerance line */
  struct ohm_triangle covariance; /**< of the covariance line */
  int covariance_line;            /**< 0 when there is none */
  double degrees;                 /**< of the line of degrees of freedom; else INFINITY */
  bool has_rows;                  /**< a header row was seen */
  struct ohm_draft_row *rows;
  size_t row_count;
  size_t row_room;
  size_t further_notes;
};

/** Key of a number in a file, "r0_ohm"; NULL past the last. The first is that of the
 *  dissipation factor, the others are parameters of models. */
const char *ohm_draft_key(size_t index);

/** A draft without a sensor has failed already. */
struct ohm_draft ohm_draft_begin(const char *place, ohm_error *error);

bool ohm_draft_goes_on(const struct ohm_draft *draft);

void ohm_draft_out_of_memory(struct ohm_draft *draft);

/** A copy to be given to free(), control bytes in it as '?'; NULL without memory. */
char *ohm_draft_copy(const char *text, size_t length);

/** Leave a note with its place: two parts of a sentence. */
void ohm_draft_note(struct ohm_draft *draft, int line, int column, const char *what,
                    const char *advice);

/** The place of a band and 1, a new one for a new name; 0 for an empty name, for one
 *  after the 64th, and without memory. */
size_t ohm_draft_band(struct ohm_draft *draft, const char *name, size_t length);

void ohm_draft_keep_row(struct ohm_draft *draft, const ohm_sensor_row *row, size_t band, int line);

/** The sensor of a draft, or NULL with the error filled in. The draft is used up. */
ohm_sensor *ohm_draft_finish(struct ohm_draft *draft, const char *default_name);

#endif
