/* SPDX-License-Identifier: MIT */
/*
 * The air while the car stood, as a logger wrote it: a header row, then a row for each
 * time. A time is in hours after the engine was stopped, or what a clock showed.
 */
#include "history.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/table_file.h"

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

#define NOT_AIR    "; write a temperature above -273.15 and up to 1000 C"
#define NOT_TIME   "; write one within 1000 hours of the stop"
#define NOT_RISING "; times must rise from row to row"

ohm_history *ohm_history_new(const double *after_h, const double *t_c, size_t count,
                             ohm_error *error) {
  oc_error_clear(error);
  if (!after_h || !t_c) {
    oc_fail_null(error);
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
              is_time(after_h[i]) ? NOT_AIR : NOT_TIME, (const char *)NULL);
      return NULL;
    } else if (i > 0 && !(after_h[i - 1] < after_h[i])) {
      oc_fail(error, OHM_BAD_DEFINITION, "two points of the history are not in order" NOT_RISING,
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
  struct oc_table_file file;
  struct oc_complaints complaints;
  bool has_stop;
  struct clock stop;
  bool has_date;
  ohm_history *history; /* times not yet counted from the stop */
};

static bool has(const struct reading *reading, enum column column) {
  return reading->file.columns[column] >= 0;
}

/* What stands in a cell, and what is wrong with it. */
static void fail(struct reading *reading, ohm_status status, const struct oc_csv_cell *cell,
                 const char *what) {
  oc_table_file_fail(&reading->file, status, "", cell, what);
}

/* "# stopped: 21:40" */
static void take_stop(struct reading *reading) {
  const struct oc_csv_cell *value = &reading->file.value;
  reading->has_stop = read_clock(value, &reading->stop);
  if (!reading->has_stop)
    fail(reading, OHM_BAD_SYNTAX, value,
         " is no time of a clock; write when the engine was stopped, such as 21:40 or 2026-11-03 "
         "21:40");
}

static void take_header(struct reading *reading) {
  oc_table_file_take_header(&reading->file, column_names, COLUMNS);
  int times = has(reading, TIME) + has(reading, HOURS) + has(reading, MINUTES);
  int temperatures = has(reading, TEMP_C) + has(reading, TEMP_F);
  if (times == 0)
    fail(reading, OHM_BAD_SYNTAX, NULL,
         "the header row has no column of times; name one hours (after the engine was stopped), "
         "minutes, or time (of a clock)");
  else if (temperatures == 0)
    fail(reading, OHM_BAD_SYNTAX, NULL,
         "the header row has no column of temperatures; name one temp_c or temp_f");
  else if (times > 1 || temperatures > 1)
    fail(reading, OHM_BAD_SYNTAX, NULL,
         "the header row says times or temperatures twice; leave one of them out");
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
  if (!has(reading, TIME)) {
    if (ohm_number_read(cell->text, cell->length, after_h) == OHM_OK) {
      *after_h /= has(reading, MINUTES) ? 60 : 1;
      return true;
    }
    fail(reading, OHM_BAD_SYNTAX, cell, " is no count of hours; write a plain number, such as 6.5");
    return false;
  }
  if (!read_clock(cell, &clock)) {
    fail(reading, OHM_BAD_SYNTAX, cell,
         " is no time of a clock; write it as 21:40, 21:40:30 or 2026-11-03 21:40");
    return false;
  }
  if (reading->history->count > 0 && clock.has_date != reading->has_date) {
    fail(reading, OHM_BAD_SYNTAX, cell,
         " has a date or lacks one, unlike the rows before; give a date to all or to none");
    return false;
  }
  reading->has_date = clock.has_date;
  *after_h = unrolled(reading, &clock);
  return true;
}

static bool take_temperature(struct reading *reading, const struct oc_csv_cell *cell, double *t_c) {
  bool is_number = ohm_number_read(cell->text, cell->length, t_c) == OHM_OK;
  if (is_number && has(reading, TEMP_F))
    *t_c = (*t_c - 32) * 5 / 9;
  if (is_number && is_air(*t_c))
    return true;
  if (is_number)
    fail(reading, OHM_OUT_OF_RANGE, cell, " is no temperature" NOT_AIR);
  else
    fail(reading, OHM_BAD_SYNTAX, cell, " is no temperature; write a plain number, such as 9.5");
  return false;
}

static void take_row(struct reading *reading) {
  ohm_history *history = reading->history;
  const struct oc_table_file *file = &reading->file;
  enum column time = has(reading, TIME) ? TIME : has(reading, HOURS) ? HOURS : MINUTES;
  enum column temperature = has(reading, TEMP_C) ? TEMP_C : TEMP_F;
  double after_h;
  double t_c;
  if (file->csv.count <= (size_t)file->columns[time] ||
      file->csv.count <= (size_t)file->columns[temperature]) {
    fail(reading, OHM_BAD_SYNTAX, NULL,
         "the row is shorter than the header row; give it a cell for each column");
    return;
  }
  const struct oc_csv_cell *cell = oc_table_file_cell(file, time);
  if (!take_time(reading, cell, &after_h) ||
      !take_temperature(reading, oc_table_file_cell(file, temperature), &t_c))
    return;
  if (history->count > 0 && !(history->after_h[history->count - 1] < after_h)) {
    fail(reading, OHM_BAD_DEFINITION, cell, " is not after the row before" NOT_RISING);
  } else if (history->count == ROWS_MAX) {
    fail(reading, OHM_TOO_LARGE, NULL, "there are more than 4096 rows; leave out every second one");
  } else {
    history->after_h[history->count] = after_h;
    history->t_c[history->count++] = t_c;
  }
}

/* Clock times become hours after the stop: that told, or the first row. A stop without
 * a date is the one nearest to the first row. */
static void count_from_stop(struct reading *reading) {
  ohm_history *history = reading->history;
  if (has(reading, TIME)) {
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
  for (size_t i = 0; i < history->count && oc_goes_on(&reading->complaints); i++)
    if (!is_time(history->after_h[i]))
      oc_complaints_fail(&reading->complaints, OHM_OUT_OF_RANGE, (struct oc_spot){0},
                         "a row is further from the stop than a soak is long", NOT_TIME);
}

static void read_parts(struct reading *reading) {
  for (enum oc_part part; (part = oc_table_file_next(&reading->file)) != OC_PART_END;)
    if (part == OC_PART_KEY)
      take_stop(reading);
    else if (part == OC_PART_FAULT)
      fail(reading, OHM_BAD_SYNTAX, NULL, reading->file.csv.fault);
    else if (reading->file.has_header)
      take_row(reading);
    else
      take_header(reading);
}

static void *parse(const struct oc_table_text *text, ohm_error *error) {
  static const char *const words[] = {"stopped"};
  static const struct oc_keys keys = {1, words, NULL};
  struct reading reading = {.complaints = {.place = text->place, .error = error},
                            .history = blank(ROWS_MAX, error)};
  if (!reading.history)
    return NULL;
  oc_table_file_begin(&reading.file, &keys, text, &reading.complaints);
  read_parts(&reading);
  if (oc_goes_on(&reading.complaints) && reading.history->count == 0)
    oc_complaints_fail(&reading.complaints, OHM_BAD_DEFINITION, (struct oc_spot){0},
                       "there is no row of a time and a temperature",
                       "; write a header row, such as hours,temp_c, and the rows below it");
  if (oc_goes_on(&reading.complaints))
    count_from_stop(&reading);
  if (oc_goes_on(&reading.complaints))
    return reading.history;
  ohm_history_free(reading.history);
  return NULL;
}

ohm_history *ohm_history_parse(const char *text, size_t length, const char *name,
                               ohm_error *error) {
  return oc_table_file_parse(text, length, name, parse, error);
}

ohm_history *ohm_history_load(const char *path, ohm_error *error) {
  return oc_table_file_load(path, parse, error);
}
