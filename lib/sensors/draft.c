/* SPDX-License-Identifier: MIT */
#include "draft.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/status.h"

enum { NOTES_MAX = 100, BANDS_MAX = 64 };

static const char *const keys[OC_DRAFT_NUMBERS] = {"dissipation_mw_per_k",
                                                   "r0_ohm",
                                                   "t0_c",
                                                   "beta_k",
                                                   "a",
                                                   "b",
                                                   "c",
                                                   "d",
                                                   "r_ref_ohm",
                                                   "a1",
                                                   "b1",
                                                   "c1",
                                                   "d1",
                                                   "r25_ohm",
                                                   "alpha_per_k",
                                                   "beta_per_k2"};

const char *oc_draft_key(size_t index) {
  return index < OC_DRAFT_NUMBERS ? keys[index] : NULL;
}

/* The number a key was given; NaN when it was not. */
static double number(const struct oc_draft *draft, const char *key) {
  for (size_t i = 0; i < OC_DRAFT_NUMBERS; i++)
    if (strcmp(keys[i], key) == 0)
      return draft->numbers[i];
  return NAN;
}

struct oc_draft oc_draft_begin(const char *place, ohm_error *error) {
  struct oc_draft draft = {.place = place,
                           .error = error,
                           .sensor = calloc(1, sizeof(ohm_sensor)),
                           .model = OC_MODEL_POINTS,
                           .degrees = INFINITY,
                           .low_c = NAN,
                           .high_c = NAN};
  for (int i = 0; i < OC_DRAFT_NUMBERS; i++)
    draft.numbers[i] = NAN;
  if (!draft.sensor)
    oc_draft_out_of_memory(&draft);
  return draft;
}

/* ---- faults and notes ---- */

bool oc_draft_goes_on(const struct oc_draft *draft) {
  return draft->status == OHM_OK;
}

void oc_draft_out_of_memory(struct oc_draft *draft) {
  draft->status = oc_fail_memory(draft->error);
}

static bool is_control(char byte) {
  return ((unsigned char)byte < 0x20 && byte != '\t') || byte == 0x7F;
}

/* A text stands on a screen and, printed, in one line of a file: no control byte
 * stays in it. */
char *oc_draft_copy(const char *text, size_t length) {
  char *copy = malloc(length + 1);
  if (copy) {
    for (size_t i = 0; i < length; i++)
      copy[i] = is_control(text[i]) ? '?' : text[i];
    copy[length] = '\0';
  }
  return copy;
}

/* Keep a sentence with its place; the error's message serves as the buffer. */
static void note(struct oc_draft *draft, const ohm_error *sentence) {
  ohm_sensor *sensor = draft->sensor;
  if (sensor->note_count >= NOTES_MAX) {
    draft->further_notes++;
    return;
  }
  char **notes = realloc(sensor->notes, (sensor->note_count + 1) * sizeof *notes);
  if (notes)
    sensor->notes = notes;
  char *copy = notes ? oc_draft_copy(sentence->message, strlen(sentence->message)) : NULL;
  if (copy)
    sensor->notes[sensor->note_count++] = copy;
  else
    oc_draft_out_of_memory(draft);
}

void oc_draft_note(struct oc_draft *draft, int line, int column, const char *what,
                   const char *advice) {
  ohm_error sentence;
  oc_fail_at(&sentence, OHM_BAD_SYNTAX, draft->place, line, column, what, advice,
             (const char *)NULL);
  note(draft, &sentence);
}

/* ---- what was found ---- */

size_t oc_draft_band(struct oc_draft *draft, const char *name, size_t length) {
  ohm_sensor *sensor = draft->sensor;
  if (length == 0)
    return 0;
  char *copy = oc_draft_copy(name, length);
  for (size_t i = 0; i < sensor->band_count && copy; i++)
    if (strcmp(copy, sensor->bands[i].name) == 0) {
      free(copy);
      return i + 1;
    }
  if (copy && sensor->band_count == BANDS_MAX) {
    free(copy);
    return 0;
  }
  struct oc_maker_band *bands = realloc(sensor->bands, (sensor->band_count + 1) * sizeof *bands);
  if (bands)
    sensor->bands = bands;
  if (!copy || !bands) {
    free(copy);
    oc_draft_out_of_memory(draft);
    return 0;
  }
  bands[sensor->band_count] = (struct oc_maker_band){.name = copy};
  return ++sensor->band_count;
}

void oc_draft_keep_row(struct oc_draft *draft, const ohm_sensor_row *row, size_t band, int line) {
  if (draft->row_count == OC_POINTS_MAX) {
    draft->status = oc_fail_at(draft->error, OHM_TOO_LARGE, draft->place, line, 0,
                               "more than 4096 rows: leave some out", (const char *)NULL);
    return;
  }
  if (draft->row_count == draft->row_room) {
    size_t room = draft->row_room ? 2 * draft->row_room : 32;
    struct oc_draft_row *rows = realloc(draft->rows, room * sizeof *rows);
    if (!rows) {
      oc_draft_out_of_memory(draft);
      return;
    }
    draft->rows = rows;
    draft->row_room = room;
  }
  draft->rows[draft->row_count++] = (struct oc_draft_row){*row, band, line};
}

/* ---- from draft to sensor ---- */

static int by_band_and_temperature(const void *left, const void *right) {
  const struct oc_draft_row *a = left;
  const struct oc_draft_row *b = right;
  if (a->band != b->band)
    return a->band < b->band ? -1 : 1;
  if (a->row.t_c != b->row.t_c)
    return a->row.t_c < b->row.t_c ? -1 : 1;
  return a->line < b->line ? -1 : 1;
}

static void sort_rows(struct oc_draft *draft) {
  if (draft->row_count == 0)
    return;
  qsort(draft->rows, draft->row_count, sizeof *draft->rows, by_band_and_temperature);
  size_t kept = 1;
  for (size_t i = 1; i < draft->row_count; i++) {
    const struct oc_draft_row *row = &draft->rows[i];
    const struct oc_draft_row *before = &draft->rows[kept - 1];
    if (row->band == before->band && row->row.t_c == before->row.t_c)
      oc_draft_note(draft, row->line, 0,
                    "row left out: ", "its temperature stands in an earlier row");
    else
      draft->rows[kept++] = *row;
  }
  draft->row_count = kept;
}

/* Rows of one band (0: the sensor's own) as an array of its own; they are sorted. */
static ohm_sensor_row *rows_of_band(struct oc_draft *draft, size_t band, size_t *count) {
  size_t first = 0;
  while (first < draft->row_count && draft->rows[first].band < band)
    first++;
  size_t last = first;
  while (last < draft->row_count && draft->rows[last].band == band)
    last++;
  *count = last - first;
  ohm_sensor_row *rows = *count > 0 ? malloc(*count * sizeof *rows) : NULL;
  if (*count > 0 && !rows)
    oc_draft_out_of_memory(draft);
  for (size_t i = 0; i < *count && rows; i++)
    rows[i] = draft->rows[first + i].row;
  return rows;
}

/* A band without rows says nothing and is dropped. */
static void build_bands(struct oc_draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  size_t kept = 0;
  for (size_t i = 0; i < sensor->band_count; i++) {
    struct oc_maker_band band = sensor->bands[i];
    band.rows = rows_of_band(draft, i + 1, &band.row_count);
    if (band.rows) {
      sensor->bands[kept++] = band;
    } else {
      ohm_error sentence;
      oc_fail_at(&sentence, OHM_BAD_DEFINITION, draft->place, 0, 0, "band ", band.name,
                 " has no row and is left out", (const char *)NULL);
      note(draft, &sentence);
      free(band.name);
      free(band.source);
    }
  }
  sensor->band_count = kept;
}

static void fail_turn(struct oc_draft *draft, const struct oc_draft_row *before,
                      const struct oc_draft_row *row) {
  char t_text[OHM_NUMBER_SIZE];
  char r_text[OHM_NUMBER_SIZE];
  char t_before[OHM_NUMBER_SIZE];
  char r_before[OHM_NUMBER_SIZE];
  ohm_number_print(row->row.t_c, t_text, sizeof t_text);
  ohm_number_print(before->row.t_c, t_before, sizeof t_before);
  ohm_resistance_print(oc_row_nominal(&row->row), 4, r_text, sizeof r_text);
  ohm_resistance_print(oc_row_nominal(&before->row), 4, r_before, sizeof r_before);
  draft->status = oc_fail_at(
      draft->error, OHM_BAD_DEFINITION, draft->place, row->line, 0, "the curve turns: ", r_text,
      " at ", t_text, " C is not below ", r_before, " at ", t_before,
      " C; resistance must fall as temperature rises, look both rows up again", (const char *)NULL);
}

static void check_rows(struct oc_draft *draft, size_t count) {
  if (count < 2) {
    draft->status =
        oc_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0,
                   count == 0 ? "no usable row" : "only one usable row",
                   "; a curve needs at least two rows that can be believed", (const char *)NULL);
    return;
  }
  for (size_t i = 1; i < count && oc_draft_goes_on(draft); i++)
    if (!(oc_row_nominal(&draft->rows[i - 1].row) > oc_row_nominal(&draft->rows[i].row)))
      fail_turn(draft, &draft->rows[i - 1], &draft->rows[i]);
}

static void keep_curve(struct oc_draft *draft, ohm_curve *curve, const ohm_error *why) {
  draft->sensor->curve = curve;
  if (!curve)
    draft->status = oc_fail_at(draft->error, (ohm_status)why->status, draft->place, 0, 0,
                               why->message, (const char *)NULL);
}

static void build_points(struct oc_draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  sensor->rows = rows_of_band(draft, 0, &sensor->row_count);
  size_t count = sensor->row_count;
  if (oc_draft_goes_on(draft))
    check_rows(draft, count);
  if (!oc_draft_goes_on(draft))
    return;
  double *values = malloc(2 * count * sizeof *values);
  if (!values) {
    oc_draft_out_of_memory(draft);
    return;
  }
  for (size_t i = 0; i < count; i++) {
    values[i] = sensor->rows[i].t_c;
    values[count + i] = oc_row_nominal(&sensor->rows[i]);
    if (oc_row_has_limits(&sensor->rows[i]))
      sensor->tolerance = (struct oc_tolerance){
          .kind = OC_TOLERANCE_ROWS, .rows = sensor->rows, .row_count = count};
  }
  ohm_error why;
  keep_curve(draft, ohm_curve_points_new(values, values + count, count, &why), &why);
  free(values);
}

static void fail_model(struct oc_draft *draft, const char *what, const char *key, const char *end) {
  draft->status = oc_fail_at(draft->error, OHM_BAD_DEFINITION, draft->place, 0, 0, "model ",
                             oc_model_form(draft->model)->name, what, key, end, (const char *)NULL);
}

static void build_model(struct oc_draft *draft) {
  const struct oc_model_form *form = oc_model_form(draft->model);
  double parameters[OC_PARAMETERS_MAX] = {0};
  for (size_t i = 0; i < form->count && oc_draft_goes_on(draft); i++) {
    parameters[i] = number(draft, form->keys[i]);
    if (isnan(parameters[i]))
      fail_model(draft, " needs a line \"# ", form->keys[i], ": ...\"");
  }
  if (oc_draft_goes_on(draft) && isnan(draft->low_c))
    fail_model(draft, " needs a line \"# range: ", "-40 to 125 C", "\"");
  if (oc_draft_goes_on(draft) && draft->has_rows)
    fail_model(draft, " has no rows; ", "leave them out or take out the model line", "");
  if (!oc_draft_goes_on(draft))
    return;
  ohm_error why;
  keep_curve(draft, oc_curve_of_model(draft->model, parameters, draft->low_c, draft->high_c, &why),
             &why);
}

/* Asked of the curve when it is known. */
static void build_covariance(struct oc_draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  if (draft->covariance_line == 0 || !oc_draft_goes_on(draft))
    return;
  if (oc_covariance_of(&draft->covariance, draft->model, draft->degrees, &sensor->covariance))
    return;
  sensor->covariance.degrees = 0;
  oc_draft_note(draft, draft->covariance_line, 0, "the covariance is none of this model's ",
                "parameters and is left out; fit the points again");
}

static void count_further_notes(struct oc_draft *draft) {
  ohm_sensor *sensor = draft->sensor;
  if (draft->further_notes == 0)
    return;
  char count[OHM_NUMBER_SIZE];
  /* The last note gives its place to this one and is counted with the rest. */
  ohm_number_print((double)draft->further_notes + 1, count, sizeof count);
  ohm_error sentence;
  oc_fail_at(&sentence, OHM_BAD_SYNTAX, draft->place, 0, 0, "and ", count, " more of the kind",
             (const char *)NULL);
  free(sensor->notes[NOTES_MAX - 1]);
  sensor->note_count--;
  note(draft, &sentence);
}

static void build(struct oc_draft *draft) {
  sort_rows(draft);
  build_bands(draft);
  if (oc_draft_goes_on(draft) && draft->model == OC_MODEL_POINTS)
    build_points(draft);
  else if (oc_draft_goes_on(draft))
    build_model(draft);
  build_covariance(draft);
  if (draft->sensor->tolerance.kind == OC_TOLERANCE_NONE)
    draft->sensor->tolerance = draft->tolerance;
  draft->sensor->dissipation_mw_per_k = number(draft, "dissipation_mw_per_k");
}

ohm_sensor *oc_draft_finish(struct oc_draft *draft, const char *default_name) {
  ohm_sensor *sensor = draft->sensor;
  if (oc_draft_goes_on(draft))
    build(draft);
  if (oc_draft_goes_on(draft) && !sensor->name) {
    sensor->name = oc_draft_copy(default_name, strlen(default_name));
    if (!sensor->name)
      oc_draft_out_of_memory(draft);
  }
  if (oc_draft_goes_on(draft))
    count_further_notes(draft);
  free(draft->rows);
  if (oc_draft_goes_on(draft))
    return sensor;
  ohm_sensor_free(sensor);
  return NULL;
}
