/* SPDX-License-Identifier: MIT */
/* A sensor while its file is being read: what was found so far, and what was wrong. */
#ifndef OC_DRAFT_H
#define OC_DRAFT_H

#include "../ground/csv.h"
#include "sensor.h"

/** Every number a line can give: the parameters of all models, and one more. */
enum { OC_DRAFT_NUMBERS = 16 };

struct oc_draft_row {
  ohm_sensor_row row;
  size_t band; /**< 0 for the sensor's own, else the band's place and 1 */
  int line;
};

struct oc_draft {
  const char *place; /**< what sentences call the text */
  ohm_error *error;
  ohm_status status; /**< of the first fault that cannot be passed over */
  ohm_sensor *sensor;
  enum oc_model model;
  double numbers[OC_DRAFT_NUMBERS]; /**< in the order of their keys; NaN when not given */
  double low_c;                     /**< of the range line */
  double high_c;
  struct oc_tolerance tolerance; /**< of the tolerance line */
  struct oc_triangle covariance; /**< of the covariance line */
  int covariance_line;           /**< 0 when there is none */
  double degrees;                /**< of the line of degrees of freedom; else INFINITY */
  bool has_rows;                 /**< a header row was seen */
  struct oc_draft_row *rows;
  size_t row_count;
  size_t row_room;
  size_t further_notes;
};

/** Key of a number in a file, "r0_ohm"; NULL past the last. The first is that of the
 *  dissipation factor, the others are parameters of models. */
const char *oc_draft_key(size_t index);

/** A draft without a sensor has failed already. */
struct oc_draft oc_draft_begin(const char *place, ohm_error *error);

bool oc_draft_goes_on(const struct oc_draft *draft);

void oc_draft_out_of_memory(struct oc_draft *draft);

/** A copy to be given to free(), control bytes in it as '?'; NULL without memory. */
char *oc_draft_copy(const char *text, size_t length);

/** Leave a note with its place: two parts of a sentence. */
void oc_draft_note(struct oc_draft *draft, int line, int column, const char *what,
                   const char *advice);

/** The place of a band and 1, a new one for a new name; 0 for an empty name, for one
 *  after the 64th, and without memory. */
size_t oc_draft_band(struct oc_draft *draft, const char *name, size_t length);

void oc_draft_keep_row(struct oc_draft *draft, const ohm_sensor_row *row, size_t band, int line);

/** The sensor of a draft, or NULL with the error filled in. The draft is used up. */
ohm_sensor *oc_draft_finish(struct oc_draft *draft, const char *default_name);

#endif
