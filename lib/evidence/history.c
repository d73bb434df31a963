/* SPDX-License-Identifier: MIT */
/*
 * The air while the car stood, as a logger wrote it: a header row, then a row for each
 * time. A time is in hours after the engine was stopped, or what a clock showed.
 */
#include "history.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/csv.h"
#include "../ground/file.h"
#include "../ground/number.h"
#include "../ground/status.h"

enum { ROWS_MAX = 4096 };

static const double DAY_H = 24;

struct oc_air oc_history_air(const ohm_history *history) {
  return (struct oc_air){history->count, history->after_h, history->t_c};
}

/* ---- making ---- */

static ohm_history *blank(size_t room, ohm_error *error) {
  ohm_history *history = calloc(1, sizeof *history);
  if (history) {
    history->after_h = malloc(room * sizeof *history->after_h);
    history->t_c = malloc(room * sizeof *history->t_c);
  }
  if (history && history->after_h && history->t_c)
    return history;
  ohm_history_free(history);
  oc_fail_memory(error);
  return NULL;
}

void ohm_history_free(ohm_history *history) {
  if (!history)
    return;
  free(history->after_h);
  free(history->t_c);
  free(history);
}

static bool is_time(double after_h) {
  return oc_inside(-OHM_SOAK_MOST_H, after_h, OHM_SOAK_MOST_H);
}

static bool is_air(double t_c) {
  return OC_ZERO_C < t_c && t_c <= OC_HOTTEST_C;
}

static const char *const not_air = "; write a temperature above -273.15 and up to 1000 C";
static const char *const not_time = "; write one within 1000 hours of the stop";
static const char *const not_rising = "; times must rise from row to row";

ohm_history *ohm_history_new(const double *after_h, const double *t_c, size_t count,
                             ohm_error *error) {
  oc_error_clear(error);
  if (!after_h || !t_c) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  if (count == 0 || count > ROWS_MAX) {
    oc_fail(error, count ? OHM_TOO_LARGE : OHM_BAD_DEFINITION,
            "a history of the air has 1 to 4096 points", (const char *)NULL);
    return NULL;
  }
  for (size_t i = 0; i < count; i++)
    if (!is_air(t_c[i]) || !is_time(after_h[i])) {
      oc_fail(error, OHM_BAD_ARGUMENT, "a point of the history cannot be used",
              is_time(after_h[i]) ? not_air : not_time, (const char *)NULL);
      return NULL;
    } else if (i > 0 && !(after_h[i - 1] < after_h[i])) {
      oc_fail(error, OHM_BAD_DEFINITION, "two points of the history are not in order", not_rising,
              (const char *)NULL);
      return NULL;
    }
  ohm_history *history = blank(count, error);
  if (!history)
    return NULL;
  memcpy(history->after_h, after_h, count * sizeof *after_h);
  memcpy(history->t_c, t_c, count * sizeof *t_c);
  history->count = count;
  return history;
}

size_t ohm_history_count(const ohm_history *history) {
  return history ? history->count : 0;
}

ohm_status ohm_history_point(const ohm_history *history, size_t index, double *after_h,
                             double *t_c) {
  bool there = history && index < history->count;
  if (after_h)
    *after_h = there ? history->after_h[index] : NAN;
  if (t_c)
    *t_c = there ? history->t_c[index] : NAN;
  return !history ? OHM_NULL_ARGUMENT : there ? OHM_OK : OHM_NOT_FOUND;
}

ohm_status ohm_history_cooling(const ohm_history *history, double start_c, double tau_h,
                               double after_h, double *t_c) {
  if (t_c)
    *t_c = NAN;
  if (!history || !t_c)
    return OHM_NULL_ARGUMENT;
  if (!(isfinite(start_c) && isfinite(tau_h) && isfinite(after_h)))
    return OHM_BAD_ARGUMENT;
  double from_h = fmax(0, history->after_h[0]);
  if (!(is_air(start_c) && 0 < tau_h && tau_h <= OHM_SOAK_MOST_H &&
        oc_inside(from_h, after_h, history->after_h[history->count - 1])))
    return OHM_OUT_OF_RANGE;
  struct oc_air air = oc_history_air(history);
  *t_c = oc_cooling_follow(&air, start_c, from_h, after_h, tau_h).t_c;
  return OHM_OK;
}

/* ---- times ---- */

static bool take_digits(const char **at, const char *end, size_t least, size_t most, int *value) {
  size_t count = 0;
  *value = 0;
  for (; *at < end && count < most && '0' <= **at && **at <= '9'; (*at)++, count++)
    *value = 10 * *value + (**at - '0');
  return count >= least;
}

static bool take_sign(const char **at, const char *end, char sign) {
  if (*at == end || **at != sign)
    return false;
  (*at)++;
  return true;
}

/* Days of a date of the Gregorian calendar, from 1 March of the year 0. */
static int day_number(int year, int month, int day) {
  int from_march = (month + 9) % 12;
  int years = year - (month <= 2);
  return 365 * years + years / 4 - years / 100 + years / 400 + (153 * from_march + 2) / 5 + day;
}

struct clock {
  bool has_date;
  double hours;
};

/* 21:40, 21:40:30, 2026-11-03 21:40, 2026-11-03T21:40 */
static bool read_clock(const struct oc_csv_cell *cell, struct clock *clock) {
  const char *at = cell->text;
  const char *end = at + cell->length;
  int year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0;
  clock->has_date = memchr(at, '-', cell->length) != NULL;
  if (clock->has_date && !(take_digits(&at, end, 4, 4, &year) && take_sign(&at, end, '-') &&
                           take_digits(&at, end, 2, 2, &month) && take_sign(&at, end, '-') &&
                           take_digits(&at, end, 2, 2, &day) &&
                           (take_sign(&at, end, ' ') || take_sign(&at, end, 'T'))))
    return false;
  if (!(take_digits(&at, end, 1, 2, &hour) && take_sign(&at, end, ':') &&
        take_digits(&at, end, 2, 2, &minute)))
    return false;
  if (take_sign(&at, end, ':') && !take_digits(&at, end, 2, 2, &second))
    return false;
  if (at != end || !(1 <= month && month <= 12 && 1 <= day && day <= 31 && hour <= 24 &&
                     minute <= 59 && second <= 59))
    return false;
  clock->hours = hour + minute / 60.0 + second / 3600.0;
  if (clock->has_date)
    clock->hours += DAY_H * day_number(year, month, day);
  return true;
}

/* ---- reading a text ---- */

enum column { TIME, HOURS, MINUTES, TEMP_C, TEMP_F, COLUMNS };

static const char *const column_names[COLUMNS] = {"time", "hours", "minutes", "temp_c", "temp_f"};

struct reading {
  struct oc_csv csv;
  const char *name;
  ohm_error *error;
  ohm_status status;
  int at[COLUMNS]; /* cell of a column; -1 for none */
  bool has_stop;
  struct clock stop;
  bool has_date;
  ohm_history *history; /* times not yet counted from the stop */
};

static void fail(struct reading *reading, ohm_status status, int column, const char *what,
                 const struct oc_csv_cell *cell, const char *advice) {
  char found[80];
  struct oc_text text = oc_text_begin(found, sizeof found);
  if (cell) {
    oc_text_add(&text, "\"");
    oc_text_add_quoted(&text, cell->text, cell->length);
    oc_text_add(&text, "\" ");
  }
  reading->status = oc_fail_at(reading->error, status, reading->name, reading->csv.line, column,
                               found, what, advice, (const char *)NULL);
}

static bool is_word(const struct oc_csv_cell *cell, const char *word) {
  return cell->length == strlen(word) && memcmp(cell->text, word, cell->length) == 0;
}

/* "# stopped: 21:40"; any other comment is one. */
static void take_comment(struct reading *reading) {
  static const char key[] = "stopped:";
  struct oc_csv_cell cell = reading->csv.cells[0];
  if (cell.length < sizeof key - 1 || memcmp(cell.text, key, sizeof key - 1) != 0)
    return;
  cell.text += sizeof key - 1;
  cell.length -= sizeof key - 1;
  cell.column += (int)sizeof key - 1;
  for (; cell.length > 0 && *cell.text == ' '; cell.text++, cell.length--, cell.column++)
    ;
  reading->has_stop = read_clock(&cell, &reading->stop);
  if (!reading->has_stop)
    fail(reading, OHM_BAD_SYNTAX, cell.column, "is no time of a clock", &cell,
         "; write when the engine was stopped, such as 21:40 or 2026-11-03 21:40");
}

static void take_header(struct reading *reading) {
  for (int column = 0; column < COLUMNS; column++) {
    reading->at[column] = -1;
    for (size_t i = 0; i < reading->csv.count; i++)
      if (is_word(&reading->csv.cells[i], column_names[column]))
        reading->at[column] = (int)i;
  }
  int times = (reading->at[TIME] >= 0) + (reading->at[HOURS] >= 0) + (reading->at[MINUTES] >= 0);
  int temperatures = (reading->at[TEMP_C] >= 0) + (reading->at[TEMP_F] >= 0);
  if (times == 0)
    fail(reading, OHM_BAD_SYNTAX, 0, "the header row has no column of times", NULL,
         "; name one hours (after the engine was stopped), minutes, or time (of a clock)");
  else if (temperatures == 0)
    fail(reading, OHM_BAD_SYNTAX, 0, "the header row has no column of temperatures", NULL,
         "; name one temp_c or temp_f");
  else if (times > 1 || temperatures > 1)
    fail(reading, OHM_BAD_SYNTAX, 0, "the header row says times or temperatures twice", NULL,
         "; leave one of them out");
}

static const struct oc_csv_cell *cell_of(struct reading *reading, enum column column) {
  int at = reading->at[column];
  if (at >= 0 && (size_t)at < reading->csv.count)
    return &reading->csv.cells[at];
  if (at >= 0)
    fail(reading, OHM_BAD_SYNTAX, 0, "the row is shorter than the header row", NULL,
         "; give it a cell for each column");
  return NULL;
}

/* What a clock shows after midnight, without a date, is less than before it. */
static double unrolled(const struct reading *reading, const struct clock *clock) {
  double hours = clock->hours;
  size_t count = reading->history->count;
  if (clock->has_date || count == 0)
    return hours;
  double before = reading->history->after_h[count - 1];
  hours += DAY_H * floor(before / DAY_H);
  return hours < before ? hours + DAY_H : hours;
}

static bool take_time(struct reading *reading, const struct oc_csv_cell *cell, double *after_h) {
  struct clock clock;
  if (reading->at[TIME] < 0) {
    if (ohm_number_read(cell->text, cell->length, after_h) == OHM_OK) {
      *after_h /= reading->at[MINUTES] >= 0 ? 60 : 1;
      return true;
    }
    fail(reading, OHM_BAD_SYNTAX, cell->column, "is no count of hours", cell,
         "; write a plain number, such as 6.5");
    return false;
  }
  if (!read_clock(cell, &clock)) {
    fail(reading, OHM_BAD_SYNTAX, cell->column, "is no time of a clock", cell,
         "; write it as 21:40, 21:40:30 or 2026-11-03 21:40");
    return false;
  }
  if (reading->history->count > 0 && clock.has_date != reading->has_date) {
    fail(reading, OHM_BAD_SYNTAX, cell->column, "has a date or lacks one, unlike the rows before",
         cell, "; give a date to all or to none");
    return false;
  }
  reading->has_date = clock.has_date;
  *after_h = unrolled(reading, &clock);
  return true;
}

static bool take_temperature(struct reading *reading, const struct oc_csv_cell *cell, double *t_c) {
  bool is_number = ohm_number_read(cell->text, cell->length, t_c) == OHM_OK;
  if (is_number && reading->at[TEMP_F] >= 0)
    *t_c = (*t_c - 32) * 5 / 9;
  if (is_number && is_air(*t_c))
    return true;
  fail(reading, is_number ? OHM_OUT_OF_RANGE : OHM_BAD_SYNTAX, cell->column, "is no temperature",
       cell, is_number ? not_air : "; write a plain number, such as 9.5");
  return false;
}

static void take_row(struct reading *reading) {
  ohm_history *history = reading->history;
  const struct oc_csv_cell *time = cell_of(reading, reading->at[TIME] >= 0    ? TIME
                                                    : reading->at[HOURS] >= 0 ? HOURS
                                                                              : MINUTES);
  const struct oc_csv_cell *temperature =
      time ? cell_of(reading, reading->at[TEMP_C] >= 0 ? TEMP_C : TEMP_F) : NULL;
  double after_h;
  double t_c;
  if (!time || !temperature || !take_time(reading, time, &after_h) ||
      !take_temperature(reading, temperature, &t_c))
    return;
  if (history->count > 0 && !(history->after_h[history->count - 1] < after_h)) {
    fail(reading, OHM_BAD_DEFINITION, time->column, "is not after the row before", time,
         not_rising);
  } else if (history->count == ROWS_MAX) {
    fail(reading, OHM_TOO_LARGE, 0, "there are more than 4096 rows", NULL,
         "; leave out every second one");
  } else {
    history->after_h[history->count] = after_h;
    history->t_c[history->count++] = t_c;
  }
}

/* Clock times become hours after the stop: that told, or the first row. A stop without
 * a date is the one nearest to the first row. */
static void count_from_stop(struct reading *reading) {
  ohm_history *history = reading->history;
  if (reading->at[TIME] >= 0) {
    double stop_h = history->after_h[0];
    if (reading->has_stop) {
      double early_h = stop_h - reading->stop.hours;
      if (!reading->stop.has_date || !reading->has_date)
        early_h -= DAY_H * ceil(early_h / DAY_H - 0.5);
      stop_h -= early_h;
    }
    for (size_t i = 0; i < history->count; i++)
      history->after_h[i] -= stop_h;
  }
  for (size_t i = 0; i < history->count; i++)
    if (!is_time(history->after_h[i])) {
      reading->status = oc_fail(reading->error, OHM_OUT_OF_RANGE, reading->name,
                                ": a row is further from the stop than a soak is long", not_time,
                                (const char *)NULL);
      return;
    }
}

static void read_rows(struct reading *reading) {
  bool has_header = false;
  for (enum oc_csv_kind kind = oc_csv_next(&reading->csv);
       kind != OC_CSV_END && reading->status == OHM_OK; kind = oc_csv_next(&reading->csv)) {
    if (kind == OC_CSV_FAULT) {
      fail(reading, OHM_BAD_SYNTAX, reading->csv.column, reading->csv.fault, NULL, "");
    } else if (kind == OC_CSV_COMMENT) {
      take_comment(reading);
    } else if (!has_header) {
      take_header(reading);
      has_header = true;
    } else {
      take_row(reading);
    }
    if (reading->status != OHM_OK)
      return;
  }
  if (reading->history->count == 0)
    reading->status = oc_fail(reading->error, OHM_BAD_DEFINITION, reading->name,
                              ": there is no row of a time and a temperature; write a header "
                              "row, such as hours,temp_c, and the rows below it",
                              (const char *)NULL);
  else
    count_from_stop(reading);
}

ohm_history *ohm_history_parse(const char *text, size_t length, const char *name,
                               ohm_error *error) {
  oc_error_clear(error);
  if (!text || !name) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  if (length > OC_FILE_MAX) {
    oc_fail(error, OHM_TOO_LARGE, name, " is larger than 16 MiB; leave out what is not needed",
            (const char *)NULL);
    return NULL;
  }
  struct reading reading = {.name = name, .error = error, .history = blank(ROWS_MAX, error)};
  if (!reading.history)
    return NULL;
  oc_csv_begin(&reading.csv, text, length);
  read_rows(&reading);
  if (reading.status == OHM_OK)
    return reading.history;
  ohm_history_free(reading.history);
  return NULL;
}

ohm_history *ohm_history_load(const char *path, ohm_error *error) {
  size_t length;
  oc_error_clear(error);
  if (!path) {
    oc_fail(error, OHM_NULL_ARGUMENT, ohm_status_text(OHM_NULL_ARGUMENT), (const char *)NULL);
    return NULL;
  }
  char *text = oc_file_read(path, &length, error);
  if (!text)
    return NULL;
  ohm_history *history = ohm_history_parse(text, length, path, error);
  free(text);
  return history;
}
