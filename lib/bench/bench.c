/* SPDX-License-Identifier: MIT */
#include "bench.h"

#include <stdlib.h>
#include <string.h>

#include "../evidence/record.h"
#include "../ground/status.h"
#include "../ground/text.h"

static char *copy_of(const char *text, size_t length) {
  char *copy = malloc(length + 1);
  if (!copy)
    return NULL;
  memcpy(copy, text, length);
  copy[length] = '\0';
  return copy;
}

/* ---- its life ---- */

static void forget_numbers(ohm_bench *bench) {
  for (int i = 0; i < OC_SETTINGS; i++)
    bench->numbers[i] = NAN;
}

ohm_bench *ohm_bench_new(ohm_error *error) {
  ohm_bench *bench = calloc(1, sizeof *bench);
  oc_error_clear(error);
  if (!bench) {
    oc_fail_memory(error);
    return NULL;
  }
  forget_numbers(bench);
  return bench;
}

void ohm_bench_clear(ohm_bench *bench) {
  if (!bench)
    return;
  for (int i = 0; i < OC_SETTINGS; i++)
    free(bench->settings[i]);
  for (size_t i = 0; i < bench->count; i++)
    free(bench->lines[i].text);
  free(bench->lines);
  free(bench->compared);
  memset(bench, 0, sizeof *bench);
  forget_numbers(bench);
}

void ohm_bench_free(ohm_bench *bench) {
  ohm_bench_clear(bench);
  free(bench);
}

/* Room for one more in an array that doubles. */
static bool reserve(void **items, size_t count, size_t *room, size_t size) {
  if (count < *room)
    return true;
  size_t wider = *room ? 2 * *room : 8;
  void *moved = realloc(*items, wider * size);
  if (!moved)
    return false;
  *items = moved;
  *room = wider;
  return true;
}

static bool add_line(ohm_bench *bench, const char *text, const struct oc_bench_reading *reading) {
  void *lines = bench->lines;
  char *copy = copy_of(text, strlen(text));
  bool fits = copy && reserve(&lines, bench->count, &bench->room, sizeof *bench->lines);
  bench->lines = lines;
  if (!fits) {
    free(copy);
    return false;
  }
  bench->lines[bench->count++] = (struct oc_bench_line){copy, *reading};
  return true;
}

static bool add_compared(ohm_bench *bench, const ohm_sensor *sensor) {
  void *compared = bench->compared;
  bool fits =
      reserve(&compared, bench->compared_count, &bench->compared_room, sizeof *bench->compared);
  bench->compared = compared;
  if (fits)
    bench->compared[bench->compared_count++] = sensor;
  return fits;
}

static bool copy_settings(ohm_bench *to, const ohm_bench *from) {
  for (int i = 0; i < OC_SETTINGS; i++) {
    if (!from->settings[i])
      continue;
    to->settings[i] = copy_of(from->settings[i], strlen(from->settings[i]));
    to->numbers[i] = from->numbers[i];
    if (!to->settings[i])
      return false;
  }
  return true;
}

static bool copy_all(ohm_bench *to, const ohm_bench *from) {
  bool copied = copy_settings(to, from);
  to->sensor = from->sensor;
  to->history = from->history;
  to->circuit = from->circuit;
  for (size_t i = 0; copied && i < from->count; i++)
    copied = add_line(to, from->lines[i].text, &from->lines[i].reading);
  for (size_t i = 0; copied && i < from->compared_count; i++)
    copied = add_compared(to, from->compared[i]);
  return copied;
}

ohm_bench *ohm_bench_copy_new(const ohm_bench *bench, ohm_error *error) {
  oc_error_clear(error);
  if (!bench) {
    oc_fail_null(error);
    return NULL;
  }
  ohm_bench *copy = ohm_bench_new(error);
  if (copy && !copy_all(copy, bench)) {
    ohm_bench_free(copy);
    oc_fail_memory(error);
    return NULL;
  }
  return copy;
}

/* ---- settings ---- */

static bool is_setting(int setting) {
  return ohm_setting_name(setting) != NULL;
}

ohm_status ohm_bench_set(ohm_bench *bench, int setting, const char *text, ohm_error *error) {
  oc_error_clear(error);
  if (!bench)
    return oc_fail_null(error);
  double number = NAN;
  char *copy = NULL;
  if (text || !is_setting(setting)) {
    ohm_status status = oc_setting_read(setting, text ? text : "", &number, error);
    if (status != OHM_OK)
      return status;
    copy = copy_of(text, strlen(text));
    if (!copy)
      return oc_fail_memory(error);
  }
  free(bench->settings[setting]);
  bench->settings[setting] = copy;
  bench->numbers[setting] = number;
  return OHM_OK;
}

ohm_status ohm_bench_set_number(ohm_bench *bench, int setting, double value, ohm_error *error) {
  char text[OC_SETTING_TEXT_SIZE];
  oc_error_clear(error);
  if (!bench)
    return oc_fail_null(error);
  ohm_status status = oc_setting_print(setting, value, text, error);
  return status == OHM_OK ? ohm_bench_set(bench, setting, text, error) : status;
}

const char *ohm_bench_setting(const ohm_bench *bench, int setting) {
  return bench && is_setting(setting) ? bench->settings[setting] : NULL;
}

/* ---- what is borrowed ---- */

ohm_status ohm_bench_use_sensor(ohm_bench *bench, const ohm_sensor *sensor) {
  if (!bench)
    return OHM_NULL_ARGUMENT;
  bench->sensor = sensor;
  return OHM_OK;
}

ohm_status ohm_bench_compare(ohm_bench *bench, const ohm_sensor *sensor, ohm_error *error) {
  oc_error_clear(error);
  if (!bench || !sensor)
    return oc_fail_null(error);
  if (bench->compared_count == OC_BENCH_COMPARED_MAX)
    return oc_fail(error, OHM_TOO_LARGE, "more than 4096 sensors to compare with: leave out those ",
                   "that it cannot be", (const char *)NULL);
  return add_compared(bench, sensor) ? OHM_OK : oc_fail_memory(error);
}

ohm_status ohm_bench_use_history(ohm_bench *bench, const ohm_history *history) {
  if (!bench)
    return OHM_NULL_ARGUMENT;
  bench->history = history;
  return OHM_OK;
}

ohm_status ohm_bench_use_circuit(ohm_bench *bench, const ohm_circuit *circuit) {
  if (!bench)
    return OHM_NULL_ARGUMENT;
  bench->circuit = circuit;
  return OHM_OK;
}

/* ---- readings ---- */

enum { LINE_SIZE = 256 };

/* One line without the spaces at its ends. */
static bool copy_line(const char *text, size_t length, char line[LINE_SIZE]) {
  while (length > 0 && (unsigned char)text[length - 1] <= ' ')
    length--;
  while (length > 0 && (unsigned char)*text <= ' ') {
    text++;
    length--;
  }
  /* A remark may be as long as it likes. */
  if (length >= LINE_SIZE && *text == '#')
    length = 0;
  if (length >= LINE_SIZE || memchr(text, '\0', length))
    return false;
  memcpy(line, text, length);
  line[length] = '\0';
  return true;
}

/* A reading with a line inside would be two in the record. */
static bool is_one_line(const char *line) {
  for (; *line; line++)
    if ((unsigned char)*line < ' ')
      return false;
  return true;
}

static ohm_status put_down(ohm_bench *bench, const char *text,
                           const struct oc_bench_reading *reading, size_t *index,
                           ohm_error *error) {
  if (bench->count == OC_BENCH_READINGS_MAX)
    return oc_fail(error, OHM_TOO_LARGE,
                   "512 readings lie on the bench already: forget those that ",
                   "are no longer needed", (const char *)NULL);
  if (!add_line(bench, text, reading))
    return oc_fail_memory(error);
  if (index)
    *index = bench->count - 1;
  return OHM_OK;
}

ohm_status ohm_bench_read(ohm_bench *bench, const char *text, size_t *index, ohm_error *error) {
  struct oc_bench_reading reading;
  char line[LINE_SIZE];
  oc_error_clear(error);
  if (!bench || !text)
    return oc_fail_null(error);
  if (!copy_line(text, strlen(text), line) || !is_one_line(line))
    return oc_fail(error, OHM_BAD_SYNTAX, "a reading is one short line: put down each by itself",
                   (const char *)NULL);
  ohm_status status = oc_bench_reading_read(line, &reading, error);
  if (status == OHM_OK && reading.kind == OC_READING_OUTCOME && bench->circuit)
    status = oc_record_check(bench->circuit, line, error);
  return status == OHM_OK ? put_down(bench, line, &reading, index, error) : status;
}

ohm_status ohm_bench_read_number(ohm_bench *bench, int quantity, double value, double at_c,
                                 size_t *index, ohm_error *error) {
  static const char *const units[] = {
      [OHM_QUANTITY_OHMS] = "", [OHM_QUANTITY_VOLTS] = "V", [OHM_QUANTITY_REPORTED] = "C"};
  char text[3 * OHM_NUMBER_SIZE];
  char number[OHM_NUMBER_SIZE];
  oc_error_clear(error);
  if (!bench)
    return oc_fail_null(error);
  if (quantity < OHM_QUANTITY_OHMS || quantity > OHM_QUANTITY_REPORTED || !isfinite(value) ||
      isinf(at_c))
    return oc_fail(error, OHM_BAD_ARGUMENT, "a reading needs a finite number and one of ",
                   "OHM_QUANTITY_OHMS, _VOLTS and _REPORTED", (const char *)NULL);
  struct oc_text out = oc_text_begin(text, sizeof text);
  ohm_number_print(value, number, sizeof number);
  oc_text_add(&out, quantity == OHM_QUANTITY_REPORTED ? "" : "=");
  oc_text_add(&out, number);
  oc_text_add(&out, units[quantity]);
  if (quantity == OHM_QUANTITY_OHMS && !isnan(at_c)) {
    ohm_number_print(at_c, number, sizeof number);
    oc_text_add(&out, "@");
    oc_text_add(&out, number);
    oc_text_add(&out, "C");
  }
  return ohm_bench_read(bench, text, index, error);
}

size_t ohm_bench_count(const ohm_bench *bench) {
  return bench ? bench->count : 0;
}

const char *ohm_bench_reading(const ohm_bench *bench, size_t index) {
  return bench && index < bench->count ? bench->lines[index].text : NULL;
}

ohm_status ohm_bench_forget(ohm_bench *bench, size_t index) {
  if (!bench)
    return OHM_NULL_ARGUMENT;
  if (index >= bench->count)
    return OHM_NOT_FOUND;
  free(bench->lines[index].text);
  bench->count--;
  memmove(bench->lines + index, bench->lines + index + 1,
          (bench->count - index) * sizeof *bench->lines);
  return OHM_OK;
}

/* ---- the record ---- */

/* The setting that "# fan_c: 97C" sets; 0 of any other remark. */
static int setting_in(const char *line, const char **value) {
  char name[LINE_SIZE];
  const char *start = line + 1 + strspn(line + 1, " ");
  const char *colon = strchr(start, ':');
  if (!colon || (size_t)(colon - start) >= sizeof name)
    return 0;
  memcpy(name, start, (size_t)(colon - start));
  name[colon - start] = '\0';
  *value = colon + 1 + strspn(colon + 1, " ");
  return ohm_setting_named(name);
}

static ohm_status read_line(ohm_bench *bench, const char *line, ohm_error *error) {
  const char *value;
  if (*line == '\0')
    return OHM_OK;
  if (*line != '#')
    return ohm_bench_read(bench, line, NULL, error);
  int setting = setting_in(line, &value);
  return setting ? ohm_bench_set(bench, setting, value, error) : OHM_OK;
}

static ohm_status read_lines(ohm_bench *bench, const char *text, size_t length, ohm_error *error) {
  char line[LINE_SIZE];
  ohm_error own;
  for (int number = 1; length > 0; number++) {
    const char *newline = memchr(text, '\n', length);
    size_t span = newline ? (size_t)(newline - text) : length;
    if (!copy_line(text, span, line))
      return oc_fail_at(error, OHM_BAD_SYNTAX, "record", number, 0,
                        "the line is too long for a reading, or holds a NUL", (const char *)NULL);
    ohm_status status = read_line(bench, line, &own);
    if (status != OHM_OK)
      return oc_fail_at(error, status, "record", number, 0, own.message, (const char *)NULL);
    length -= span + (newline != NULL);
    text += span + (newline != NULL);
  }
  return OHM_OK;
}

ohm_status ohm_bench_read_record(ohm_bench *bench, const char *text, size_t length,
                                 ohm_error *error) {
  oc_error_clear(error);
  if (!bench || (!text && length > 0))
    return oc_fail_null(error);
  ohm_bench *copy = ohm_bench_copy_new(bench, error);
  if (!copy)
    return OHM_NO_MEMORY;
  ohm_status status = read_lines(copy, text, length, error);
  if (status == OHM_OK) {
    ohm_bench kept = *bench;
    *bench = *copy;
    *copy = kept;
  }
  ohm_bench_free(copy);
  return status;
}

size_t ohm_bench_print(const ohm_bench *bench, char *buffer, size_t size) {
  struct oc_text out = oc_text_begin(buffer, size);
  int setting;
  for (size_t i = 0; bench && (setting = ohm_setting_at(i)) != 0; i++)
    if (bench->settings[setting]) {
      oc_text_add(&out, "# ");
      oc_text_add(&out, ohm_setting_name(setting));
      oc_text_add(&out, ": ");
      oc_text_add(&out, bench->settings[setting]);
      oc_text_add(&out, "\n");
    }
  for (size_t i = 0; bench && i < bench->count; i++) {
    oc_text_add(&out, bench->lines[i].text);
    oc_text_add(&out, "\n");
  }
  return out.length;
}
