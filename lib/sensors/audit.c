/* SPDX-License-Identifier: MIT */
/*
 * The checks of a printed table, and the sentences of what they find. A series is one
 * column of the sensor's own rows, or of one maker's band.
 */
#include "suspect.h"

#include <stdlib.h>
#include <string.h>

#include "pull_up.h"
#include "smooth.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/text.h"

/* Limits are drawn by people: how far they lie off a line, and their middle, as
 * shares of the mean half-width of the band. */
static const double LIMIT_SHARE = 0.3;
static const double MIDDLE_SHARE = 0.2;

struct point {
  double t_c;
  const struct oc_printed_row *row;
};

struct work {
  ohm_audit *audit;
  const char *place;
  struct oc_printed printed;
  struct point *points; /* of the series at hand, in rising temperature */
  struct oc_smooth *smooth;
  struct oc_signal *signals;
  size_t count;
  double width; /* mean half-width of its band, relative */
};

/* ---- degrees ---- */

static void add_degrees(struct oc_text *text, double t, double half, const char *unit) {
  oc_clause_add_fixed(text, t, half >= 0.5 ? 0 : half >= 0.05 ? 1 : 2);
  oc_text_add(text, unit);
}

static void check_degrees(struct work *work, const struct oc_printed_row *row) {
  const struct oc_printed_degrees *c = &row->celsius;
  const struct oc_printed_degrees *f = &row->fahrenheit;
  double as_c = (f->t - 32) / 1.8;
  double allowed = (c->half + f->half / 1.8) * (1 + 1e-9) + 1e-9;
  if (!(fabs(as_c - c->t) > allowed))
    return;
  struct oc_record *record = oc_record_new(work->audit, row, OHM_SUSPECT_DEGREES, 0.99);
  if (!record)
    return;
  oc_record_set_figure(record, "temp_c", row->text, f->column);
  record->suspect.low = as_c - f->half / 1.8;
  record->suspect.high = as_c + f->half / 1.8;
  struct oc_text text = oc_clause_begin(record);
  oc_text_add(&text, "the degrees disagree: ");
  oc_text_add_number(&text, f->t);
  oc_text_add(&text, " F is ");
  add_degrees(&text, as_c, fmin(c->half, 0.49), " C");
  oc_text_add(&text, ", and ");
  oc_text_add_number(&text, c->t);
  oc_text_add(&text, " C is ");
  add_degrees(&text, c->t * 1.8 + 32, f->half, " F");
  oc_text_add(&text, "; find out which of the two is meant");
}

/* ---- order of temperatures ---- */

static bool is_between(double a, double x, double b) {
  return oc_inside(a, x, b) || oc_inside(b, x, a);
}

/* The row before, or after, of the same band; NULL at the end of the table. */
static struct oc_printed_row *neighbour(const struct oc_printed *printed, size_t i, bool after) {
  uint64_t band = printed->rows[i].band;
  for (size_t j = i; after ? ++j < printed->count : j-- > 0;)
    if (printed->rows[j].band == band)
      return &printed->rows[j];
  return NULL;
}

static bool is_misplaced(const struct oc_printed *printed, size_t i, bool rising) {
  const struct oc_printed_row *before = neighbour(printed, i, false);
  const struct oc_printed_row *after = neighbour(printed, i, true);
  return before && after && !before->misplaced && (before->t_c < after->t_c) == rising &&
         before->t_c != after->t_c && !is_between(before->t_c, printed->rows[i].t_c, after->t_c);
}

static void report_misplaced(struct work *work, size_t i) {
  struct oc_printed_row *row = &work->printed.rows[i];
  const struct oc_printed_row *before = neighbour(&work->printed, i, false);
  const struct oc_printed_row *after = neighbour(&work->printed, i, true);
  row->misplaced = true;
  struct oc_record *record = oc_record_new(work->audit, row, OHM_SUSPECT_ORDER, 0.9);
  if (!record)
    return;
  oc_record_set_figure(record, "temp_c", row->text, row->column);
  double middle = (before->t_c + after->t_c) / 2;
  oc_record_suggest(record, fmin(before->t_c, after->t_c), middle, fmax(before->t_c, after->t_c));
  struct oc_text text = oc_clause_begin(record);
  oc_text_add(&text, "temp_c ");
  oc_text_add(&text, row->text);
  oc_text_add(&text, " does not stand between ");
  oc_text_add_number(&text, before->t_c);
  oc_text_add(&text, " and ");
  oc_text_add_number(&text, after->t_c);
  oc_text_add(&text, " C, the rows before and after");
  oc_clause_add_suggestion(&text, record, middle);
}

/* A table in which the order breaks more often than in one row of six is not sorted. */
static void check_temperatures(struct work *work) {
  struct oc_printed *printed = &work->printed;
  size_t rises = 0;
  size_t falls = 0;
  for (size_t i = 0; i < printed->count; i++) {
    const struct oc_printed_row *after = neighbour(printed, i, true);
    rises += after && after->t_c > printed->rows[i].t_c;
    falls += after && after->t_c < printed->rows[i].t_c;
  }
  bool rising = rises >= falls;
  if (6 * (rising ? falls : rises) > printed->count)
    return;
  for (size_t i = 0; i < printed->count; i++)
    if (is_misplaced(printed, i, rising))
      report_misplaced(work, i);
}

/* ---- a series of resistances ---- */

static const struct oc_printed_figure *figure_of(const struct point *point,
                                                 enum oc_printed_column column) {
  return &point->row->figures[column];
}

static bool has(const struct oc_printed_row *row, enum oc_printed_column column) {
  return !isnan(row->figures[column].value);
}

static bool has_middle(const struct oc_printed_row *row) {
  return has(row, OC_PRINTED_MIN) && has(row, OC_PRINTED_MAX);
}

static double relative(const struct oc_printed_figure *figure) {
  return figure->half / figure->value;
}

/* ln R of a row and how well it is known; a nominal that is not printed is the middle
 * of its limits. */
static struct oc_smooth value_of(const struct work *work, const struct oc_printed_row *row,
                                 enum oc_printed_column column) {
  const struct oc_printed_figure *figure = &row->figures[column];
  struct oc_smooth value = {.x = 1 / oc_kelvin(row->t_c)};
  if (!isnan(figure->value)) {
    value.y = log(figure->value);
    value.half = relative(figure);
    value.u = column == OC_PRINTED_NOMINAL ? 0 : LIMIT_SHARE * work->width;
  } else {
    const struct oc_printed_figure *min = &row->figures[OC_PRINTED_MIN];
    const struct oc_printed_figure *max = &row->figures[OC_PRINTED_MAX];
    value.y = (log(min->value) + log(max->value)) / 2;
    value.half = (relative(min) + relative(max)) / 2;
    value.u = MIDDLE_SHARE * work->width;
  }
  return value;
}

static int by_temperature(const void *left, const void *right) {
  const struct point *a = left;
  const struct point *b = right;
  if (a->t_c != b->t_c)
    return a->t_c < b->t_c ? -1 : 1;
  return a->row->line < b->row->line ? -1 : 1;
}

/* In rising temperature, of equal ones the first. */
static void sort(struct work *work) {
  if (work->count == 0)
    return;
  qsort(work->points, work->count, sizeof *work->points, by_temperature);
  size_t kept = 1;
  for (size_t i = 1; i < work->count; i++)
    if (work->points[i].t_c != work->points[kept - 1].t_c)
      work->points[kept++] = work->points[i];
  work->count = kept;
}

static void collect(struct work *work, uint64_t band, enum oc_printed_column column) {
  work->count = 0;
  double width = 0;
  size_t bands = 0;
  for (size_t i = 0; i < work->printed.count; i++) {
    const struct oc_printed_row *row = &work->printed.rows[i];
    bool usable = has(row, column) || (column == OC_PRINTED_NOMINAL && has_middle(row));
    if (row->band != band || row->misplaced || !usable)
      continue;
    work->points[work->count++] = (struct point){row->t_c, row};
    if (has_middle(row)) {
      const struct oc_printed_figure *figures = row->figures;
      width += fabs(log(figures[OC_PRINTED_MAX].value / figures[OC_PRINTED_MIN].value)) / 2;
      bands++;
    }
  }
  work->width = bands > 0 ? width / (double)bands : 0;
  sort(work);
  for (size_t i = 0; i < work->count; i++)
    work->smooth[i] = value_of(work, work->points[i].row, column);
}

static bool is_above(const struct oc_smooth *smooth) {
  return smooth->y > smooth->led_y;
}

/* Rows off to the same side as the one at i, all in a row: first to last - 1. */
static size_t run_of(const struct work *work, size_t i, size_t *last) {
  size_t first = i;
  bool above = is_above(&work->smooth[i]);
  while (first > 0 && work->smooth[first - 1].off && is_above(&work->smooth[first - 1]) == above)
    first--;
  *last = i + 1;
  while (*last < work->count && work->smooth[*last].off && is_above(&work->smooth[*last]) == above)
    ++*last;
  return first;
}

static void remark_curve(struct work *work, size_t first, size_t last) {
  char *remark = oc_remark_new(work->audit);
  if (!remark)
    return;
  struct oc_text text = oc_text_begin(remark, OC_SENTENCE);
  oc_text_add(&text, work->place);
  oc_text_add(&text, ": the rows from ");
  oc_text_add_number(&text, work->points[first].t_c);
  oc_text_add(&text, " to ");
  oc_text_add_number(&text, work->points[last - 1].t_c);
  oc_text_add(&text,
              is_above(&work->smooth[first]) ? " C lie together above" : " C lie together below");
  oc_text_add(&text, " the line through the others: they may be of another curve");
}

static void report_off_line(struct work *work, size_t i, enum oc_printed_column column) {
  const struct oc_smooth *smooth = &work->smooth[i];
  const struct oc_printed_figure *figure = figure_of(&work->points[i], column);
  size_t last;
  size_t first = run_of(work, i, &last);
  bool together = last - first > 1;
  struct oc_record *record =
      oc_record_new(work->audit, work->points[i].row,
                    together ? OHM_SUSPECT_CURVE : OHM_SUSPECT_LINE, smooth->level);
  if (!record)
    return;
  oc_record_set_figure(record, oc_printed_column_name(column), figure->text, figure->column);
  double led = exp(smooth->led_y);
  double reach = 2 * smooth->u_sound + smooth->half;
  oc_record_suggest(record, led * exp(-reach), led, led * exp(reach));
  if (together)
    record->would_fit[0] = '\0';
  else if (record->would_fit[0])
    record->suspect.kind = OHM_SUSPECT_DIGITS;
  struct oc_text text = oc_clause_begin(record);
  oc_clause_add_subject(&text, record);
  oc_text_add(&text, together ? " and its neighbours lie " : " looks like a misprint, it lies ");
  oc_clause_add_fixed(&text, 100 * fabs(expm1(smooth->y - smooth->led_y)), 1);
  oc_text_add(&text, is_above(smooth) ? " % above " : " % below ");
  oc_clause_add_resistance(&text, led);
  oc_text_add(&text, ", where the other rows lead (");
  oc_clause_add_resistance(&text, record->suspect.low);
  oc_text_add(&text, " to ");
  oc_clause_add_resistance(&text, record->suspect.high);
  oc_text_add(&text, ")");
  if (together)
    oc_text_add(&text, "; rows of another curve?");
  else
    oc_clause_add_suggestion(&text, record, led);
  if (together && first == i && column == OC_PRINTED_NOMINAL)
    remark_curve(work, first, last);
}

/* ---- order of resistances ---- */

/* Would the rows around it be in order without it? */
static bool bars_order(const struct work *work, size_t i, double sign) {
  return i == 0 || i + 1 == work->count ||
         sign * (work->smooth[i + 1].y - work->smooth[i - 1].y) > 0;
}

static void report_turn(struct work *work, size_t i, enum oc_printed_column column, double sign) {
  const struct point *pair = &work->points[i];
  bool told = pair[0].row->flagged != pair[1].row->flagged;
  bool this_bars = told ? pair[0].row->flagged : bars_order(work, i, sign);
  bool next_bars = told ? pair[1].row->flagged : bars_order(work, i + 1, sign);
  size_t bad = this_bars && !next_bars ? i : i + 1;
  size_t other = bad == i ? i + 1 : i;
  const struct oc_printed_figure *figure = figure_of(&work->points[bad], column);
  if (figure->text[0] == '\0')
    return;
  struct oc_record *record = oc_record_new(work->audit, work->points[bad].row, OHM_SUSPECT_ORDER,
                                           this_bars != next_bars ? 0.9 : 0.5);
  if (!record)
    return;
  oc_record_set_figure(record, oc_printed_column_name(column), figure->text, figure->column);
  struct oc_text text = oc_clause_begin(record);
  oc_clause_add_subject(&text, record);
  oc_text_add(&text, " breaks the order with ");
  oc_text_add(&text, figure_of(&work->points[other], column)->text);
  oc_text_add(&text, " at ");
  oc_text_add_number(&text, work->points[other].t_c);
  oc_text_add(&text, " C; look both rows up again");
}

/* 1 when most steps rise, else -1. */
static double direction(const struct work *work) {
  size_t rises = 0;
  for (size_t i = 0; i + 1 < work->count; i++)
    rises += work->smooth[i + 1].y > work->smooth[i].y;
  return 2 * rises > work->count - 1 ? 1 : -1;
}

static void check_order(struct work *work, enum oc_printed_column column) {
  if (work->count < 2)
    return;
  double sign = direction(work);
  for (size_t i = 0; i + 1 < work->count; i++)
    if (!(sign * (work->smooth[i + 1].y - work->smooth[i].y) > 0) && !work->smooth[i].off &&
        !work->smooth[i + 1].off)
      report_turn(work, i, column, sign);
  char *remark = sign > 0 && column == OC_PRINTED_NOMINAL ? oc_remark_new(work->audit) : NULL;
  if (remark) {
    struct oc_text text = oc_text_begin(remark, OC_SENTENCE);
    oc_text_add(&text, work->place);
    oc_text_add(&text, ": resistance rises with temperature, which no NTC element does");
  }
}

static void check_series(struct work *work, uint64_t band, enum oc_printed_column column) {
  collect(work, band, column);
  oc_smooth_judge(work->smooth, work->count);
  for (size_t i = 0; i < work->count; i++)
    if (work->smooth[i].off && has(work->points[i].row, column))
      report_off_line(work, i, column);
  check_order(work, column);
}

/* ---- order within a band ---- */

static bool is_suspect(const ohm_audit *audit, int line) {
  for (size_t i = 0; i < audit->count; i++)
    if (audit->records[i].suspect.line == line &&
        audit->records[i].suspect.kind != OHM_SUSPECT_DEGREES)
      return true;
  return false;
}

static void check_band(struct work *work, const struct oc_printed_row *row) {
  const struct oc_printed_figure *figures = row->figures;
  double min = figures[OC_PRINTED_MIN].value;
  double nominal = figures[OC_PRINTED_NOMINAL].value;
  double max = figures[OC_PRINTED_MAX].value;
  bool nominal_out = nominal < min || nominal > max;
  if ((!nominal_out && !(min > max)) || is_suspect(work->audit, row->line))
    return;
  enum oc_printed_column column = min > max       ? OC_PRINTED_MAX
                                  : nominal < min ? OC_PRINTED_MIN
                                                  : OC_PRINTED_MAX;
  struct oc_record *record = oc_record_new(work->audit, row, OHM_SUSPECT_BAND, 0.9);
  if (!record)
    return;
  oc_record_set_figure(record, oc_printed_column_name(column), figures[column].text,
                       figures[column].column);
  struct oc_text text = oc_clause_begin(record);
  oc_clause_add_subject(&text, record);
  oc_text_add(&text, min > max ? " is below r_min_ohm " : " does not leave room for r_nom_ohm ");
  oc_text_add(&text, figures[min > max ? OC_PRINTED_MIN : OC_PRINTED_NOMINAL].text);
  oc_text_add(&text, "; look the row up again");
}

/* ---- volts ---- */

static bool signal_of(const struct oc_printed_row *row, enum oc_printed_column column,
                      struct oc_signal *signal) {
  const struct oc_printed_figure *volts = &row->figures[column];
  if (isnan(volts->value) || !(has(row, OC_PRINTED_NOMINAL) || has_middle(row)))
    return false;
  struct work none = {.width = 0};
  struct oc_smooth r = value_of(&none, row, OC_PRINTED_NOMINAL);
  *signal = (struct oc_signal){
      .r_ohm = exp(r.y), .r_half = r.half, .v = volts->value, .v_half = volts->half};
  return true;
}

static void remark_volts(struct work *work, enum oc_printed_column column,
                         const struct oc_pull_up *pull_up) {
  char *remark = oc_remark_new(work->audit);
  if (!remark)
    return;
  struct oc_text text = oc_text_begin(remark, OC_SENTENCE);
  oc_text_add(&text, work->place);
  oc_text_add(&text, ": the volts of ");
  oc_text_add(&text, oc_printed_column_name(column));
  oc_text_add(&text, " fit no one pull-up to ");
  oc_text_add_number(&text, work->printed.supply_v);
  oc_text_add(&text, " V: the rows alone want ");
  oc_clause_add_resistance(&text, pull_up->least_ohm);
  oc_text_add(&text, " to ");
  oc_clause_add_resistance(&text, pull_up->most_ohm);
  if (pull_up->kind == OC_PULL_UP_LOADED) {
    oc_text_add(&text, "; they fit ");
    oc_clause_add_resistance(&text, pull_up->p_ohm);
    oc_text_add(&text, " with a load of ");
    oc_clause_add_resistance(&text, pull_up->load_ohm);
    oc_text_add(&text, " to ground");
  } else if (pull_up->kind == OC_PULL_UP_CURRENT) {
    oc_text_add(&text, "; they are those of a constant ");
    oc_clause_add_fixed(&text, 1000 * pull_up->current_a, 3);
    oc_text_add(&text, " mA");
  }
}

static void report_volts(struct work *work, size_t i, enum oc_printed_column column,
                         const struct oc_pull_up *pull_up) {
  const struct oc_signal *signal = &work->signals[i];
  const struct oc_printed_figure *figure = figure_of(&work->points[i], column);
  struct oc_record *record =
      oc_record_new(work->audit, work->points[i].row, OHM_SUSPECT_VOLTS, 0.9);
  if (!record)
    return;
  oc_record_set_figure(record, oc_printed_column_name(column), figure->text, figure->column);
  oc_record_suggest(record, signal->fits_v - signal->v_half, signal->fits_v,
                    signal->fits_v + signal->v_half);
  struct oc_text text = oc_clause_begin(record);
  oc_clause_add_subject(&text, record);
  oc_text_add(&text, " does not fit the pull-up of the other rows, ");
  oc_clause_add_resistance(&text, pull_up->p_ohm);
  oc_text_add(&text, " to ");
  oc_text_add_number(&text, work->printed.supply_v);
  oc_text_add(&text, " V, which gives ");
  oc_clause_add_fixed(&text, signal->fits_v, 3);
  oc_clause_add_suggestion(&text, record, signal->fits_v);
}

static void check_volts(struct work *work, enum oc_printed_column column) {
  work->count = 0;
  for (size_t i = 0; i < work->printed.count; i++) {
    const struct oc_printed_row *row = &work->printed.rows[i];
    struct oc_signal ignored;
    if (row->band == 0 && signal_of(row, column, &ignored))
      work->points[work->count++] = (struct point){row->t_c, row};
  }
  sort(work);
  for (size_t i = 0; i < work->count; i++)
    signal_of(work->points[i].row, column, &work->signals[i]);
  struct oc_pull_up pull_up = oc_pull_up_find(work->signals, work->count, work->printed.supply_v);
  if (pull_up.kind == OC_PULL_UP_NONE || pull_up.kind == OC_PULL_UP_LOADED ||
      pull_up.kind == OC_PULL_UP_CURRENT)
    remark_volts(work, column, &pull_up);
  for (size_t i = 0; i < work->count; i++)
    if (work->signals[i].off)
      report_volts(work, i, column, &pull_up);
}

/* ---- all of it ---- */

static bool is_first_of_band(const struct oc_printed *printed, size_t i) {
  return !neighbour(printed, i, false);
}

static void check(struct work *work) {
  const struct oc_printed *printed = &work->printed;
  check_temperatures(work);
  for (size_t i = 0; i < printed->count; i++)
    if (is_first_of_band(printed, i)) {
      check_series(work, printed->rows[i].band, OC_PRINTED_NOMINAL);
      check_series(work, printed->rows[i].band, OC_PRINTED_MIN);
      check_series(work, printed->rows[i].band, OC_PRINTED_MAX);
    }
  for (size_t i = 0; i < printed->count; i++) {
    check_degrees(work, &printed->rows[i]);
    check_band(work, &printed->rows[i]);
  }
  check_volts(work, OC_PRINTED_VOLTS);
  check_volts(work, OC_PRINTED_HOT_VOLTS);
}

static ohm_audit *audit_new(const char *place, const struct oc_printed *printed, ohm_error *error) {
  struct work work = {.audit = calloc(1, sizeof(ohm_audit)), .place = place, .printed = *printed};
  work.points = malloc(printed->count * sizeof *work.points);
  work.smooth = malloc(printed->count * sizeof *work.smooth);
  work.signals = malloc(printed->count * sizeof *work.signals);
  bool works = work.audit && work.points && work.smooth && work.signals;
  if (works) {
    work.audit->row_count = printed->count;
    check(&work);
    oc_audit_settle(work.audit, place);
  }
  free(work.points);
  free(work.smooth);
  free(work.signals);
  if (works && !work.audit->failed)
    return work.audit;
  ohm_audit_free(work.audit);
  oc_fail_memory(error);
  return NULL;
}

static void *parse(const struct oc_table_text *text, ohm_error *error) {
  struct oc_printed printed;
  ohm_audit *audit = NULL;
  if (oc_printed_parse(text, &printed, error) == OHM_OK) {
    if (printed.count > 0)
      audit = audit_new(text->place, &printed, error);
    else
      oc_fail_at(error, OHM_BAD_DEFINITION, text->place, 0, 0,
                 "no row with a temperature; only a table can be audited", (const char *)NULL);
  }
  oc_printed_free(&printed);
  return audit;
}

ohm_audit *ohm_audit_parse(const char *text, size_t length, const char *name, ohm_error *error) {
  return oc_table_file_parse(text, length, name, parse, error);
}

ohm_audit *ohm_audit_load(const char *path, ohm_error *error) {
  return oc_table_file_load(path, parse, error);
}
