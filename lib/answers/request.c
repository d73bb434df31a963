/* SPDX-License-Identifier: MIT */
#include "request.h"

#include <string.h>

#include "../ground/status.h"
#include "../ground/text.h"

double oc_request_number(const struct oc_request *ask, ohm_setting setting, double otherwise) {
  double number = ask->bench->numbers[setting];
  return isnan(number) ? otherwise : number;
}

int oc_request_word(const struct oc_request *ask, ohm_setting setting) {
  return (int)oc_request_number(ask, setting, 0);
}

static const char *text_of(const struct oc_request *ask, ohm_setting setting) {
  return ask->bench->settings[setting];
}

static void take_meter(struct oc_request *ask) {
  const char *meter = text_of(ask, OHM_SETTING_METER);
  const char *leads = text_of(ask, OHM_SETTING_LEADS);
  if (meter)
    oc_meter_read(meter, &ask->meter, NULL);
  if (leads)
    oc_leads_read(leads, &ask->meter, NULL);
  ask->meter.current_ma = oc_request_number(ask, OHM_SETTING_CURRENT_MA, 0);
  ask->meter.ranges_alike = oc_request_number(ask, OHM_SETTING_RANGES_ALIKE, NAN);
}

static void take_check(struct oc_request *ask) {
  ask->check.level = oc_request_number(ask, OHM_SETTING_LEVEL, 0);
  ask->check.tolerance_percent = oc_request_number(ask, OHM_SETTING_TOLERANCE_PERCENT, 0);
  ask->check.fan_c = oc_request_number(ask, OHM_SETTING_FAN_C, 0);
  ask->check.limit_k = oc_request_number(ask, OHM_SETTING_LIMIT_K, 0);
}

ohm_status oc_request_begin(struct oc_request *ask, const ohm_bench *bench, const char *verb,
                            ohm_error *error) {
  *ask = (struct oc_request){bench, verb,  error, OC_METER_INIT, OC_CHECK_INIT,
                             0,     {{0}}, {{0}}, {0},           false};
  oc_error_clear(error);
  if (!bench)
    return oc_fail_null(error);
  take_meter(ask);
  take_check(ask);
  return OHM_OK;
}

/* ---- the sensor ---- */

ohm_status oc_request_sensor(const struct oc_request *ask) {
  if (ask->bench->sensor)
    return OHM_OK;
  return oc_fail(ask->error, OHM_NOT_FOUND, ask->verb, " needs a sensor, and there is none on the ",
                 "bench: name it with ohm_bench_use_sensor()", (const char *)NULL);
}

/* The one that was meant, when one is near, and all there are. */
static void add_bands(struct oc_text *out, const ohm_sensor *sensor, const char *band) {
  enum { BANDS_MAX = 64 };
  const char *names[BANDS_MAX];
  size_t count = 0;
  while (count < BANDS_MAX && (names[count] = ohm_sensor_band_name(sensor, count)) != NULL)
    count++;
  const char *near = ohm_nearest(band, names, count);
  if (near) {
    oc_text_add(out, "; did you mean ");
    oc_text_add(out, near);
    oc_text_add(out, "? it has ");
  }
  for (size_t i = 0; i < count; i++) {
    oc_text_add(out, i > 0 ? ", " : near ? "" : "; it has ");
    oc_text_add(out, names[i]);
  }
}

static ohm_status find_band(const struct oc_request *ask, const char *band) {
  const ohm_sensor *sensor = ask->bench->sensor;
  const char *name;
  for (size_t i = 0; (name = ohm_sensor_band_name(sensor, i)) != NULL; i++)
    if (strcmp(name, band) == 0)
      return OHM_OK;
  char given[60];
  char bands[300];
  struct oc_text quoted = oc_text_begin(given, sizeof given);
  oc_text_add_quoted(&quoted, band, strlen(band));
  struct oc_text list = oc_text_begin(bands, sizeof bands);
  add_bands(&list, sensor, band);
  return oc_fail(ask->error, OHM_NOT_FOUND, ohm_sensor_name(sensor), " has no band \"", given, "\"",
                 list.length > 0 ? bands : ", and no other of any maker: leave it out",
                 (const char *)NULL);
}

ohm_status oc_request_compared(const struct oc_request *ask) {
  if (ask->bench->compared_count > 0)
    return OHM_OK;
  return oc_fail(ask->error, OHM_NOT_FOUND, ask->verb,
                 " needs sensors to compare with, and there is ",
                 "none on the bench: add them with ohm_bench_compare()", (const char *)NULL);
}

/* ---- how it is judged ---- */

ohm_status oc_request_band(struct oc_request *ask) {
  ask->check.band = text_of(ask, OHM_SETTING_BAND);
  if (!ask->check.band)
    return OHM_OK;
  if (oc_request_number(ask, OHM_SETTING_TOLERANCE_PERCENT, 0) > 0)
    return oc_fail(ask->error, OHM_BAD_ARGUMENT, "band and tolerance_percent both say what is ",
                   "allowed: set one of them", (const char *)NULL);
  return find_band(ask, ask->check.band);
}

/* ---- readings ---- */

size_t oc_request_kind(const struct oc_request *ask, enum oc_reading_kind kind,
                       const struct oc_bench_reading **first) {
  size_t count = 0;
  *first = NULL;
  for (size_t i = 0; i < ask->bench->count; i++)
    if (ask->bench->lines[i].reading.kind == kind) {
      if (count++ == 0)
        *first = &ask->bench->lines[i].reading;
    }
  return count;
}

const oc_reference *oc_request_at(const struct oc_request *ask, oc_reference *reference) {
  const char *at = text_of(ask, OHM_SETTING_AT);
  if (!at || oc_reference_read(at, reference, NULL) != OHM_OK)
    return NULL;
  reference->u_k = oc_request_number(ask, OHM_SETTING_U_AT_K, 0);
  return reference;
}

static ohm_status count_ohms(struct oc_request *ask) {
  const struct oc_bench_reading *first;
  size_t count = oc_request_kind(ask, OC_READING_OHMS, &first);
  if (count == 0)
    return oc_fail(ask->error, OHM_NOT_FOUND, ask->verb, " needs a reading of ohms, and there is ",
                   "none on the bench: put one down, such as 2.31k@21.5C", (const char *)NULL);
  if (count > OC_REQUEST_READINGS_MAX)
    return oc_fail(ask->error, OHM_TOO_LARGE, "more than 16 readings of ohms lie on the bench: ",
                   "forget those that were only repeats", (const char *)NULL);
  return OHM_OK;
}

ohm_status oc_request_ohms(struct oc_request *ask) {
  ohm_status status = count_ohms(ask);
  if (status != OHM_OK)
    return status;
  for (size_t i = 0; i < ask->bench->count; i++)
    if (ask->bench->lines[i].reading.kind == OC_READING_OHMS)
      ask->readings[ask->count++] = ask->bench->lines[i].reading.ohms;
  return OHM_OK;
}

static ohm_status take_temperature(const struct oc_request *ask, const struct oc_bench_line *line,
                                   oc_reference *reference) {
  if (line->reading.has_at) {
    *reference = line->reading.at;
    reference->u_k = oc_request_number(ask, OHM_SETTING_U_AT_K, 0);
    return OHM_OK;
  }
  if (oc_request_at(ask, reference))
    return OHM_OK;
  return oc_fail(ask->error, OHM_NOT_FOUND, "the temperature of ", line->text,
                 " is missing: write ",
                 "it behind the reading, such as 2.31k@21.5C, or set at, the temperature of all",
                 (const char *)NULL);
}

static bool is_end(ohm_place place) {
  return place == OHM_PLACE_SENSOR || place == OHM_PLACE_MODULE;
}

static ohm_status take_place(struct oc_request *ask, ohm_place place) {
  if (place == OHM_PLACE_NOT_TOLD)
    place = (ohm_place)oc_request_word(ask, OHM_SETTING_PLACE);
  ohm_place before = ask->count == 0 ? place : (ohm_place)ask->check.place;
  ask->places[ask->count] = place;
  bool both = ask->both_ends && is_end(before) && is_end(place);
  if (before == place || both) {
    ask->check.place = (int)(before == OHM_PLACE_SENSOR ? before : place);
    return OHM_OK;
  }
  return oc_fail(
      ask->error, OHM_BAD_ARGUMENT, "the readings were taken at different places, and ", ask->verb,
      ask->both_ends
          ? " takes those of one, or of the sensor's own pins and the module's end: say of every "
            "reading which it was, behind a comma: sensor, module"
          : " takes those of one place: ask it about each place by itself",
      (const char *)NULL);
}

ohm_status oc_request_readings(struct oc_request *ask) {
  ohm_status status = count_ohms(ask);
  for (size_t i = 0; status == OHM_OK && i < ask->bench->count; i++) {
    const struct oc_bench_line *line = &ask->bench->lines[i];
    if (line->reading.kind != OC_READING_OHMS)
      continue;
    status = take_temperature(ask, line, &ask->references[ask->count]);
    if (status == OHM_OK)
      status = take_place(ask, line->reading.place);
    if (status == OHM_OK)
      ask->readings[ask->count++] = line->reading.ohms;
  }
  return status;
}

ohm_status oc_request_part(struct oc_request *ask, const ohm_bench *bench, const char *verb,
                           ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, verb, error);
  ask->both_ends = strcmp(verb, "check") == 0;
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK)
    status = oc_request_band(ask);
  return status == OHM_OK ? oc_request_readings(ask) : status;
}

ohm_status oc_request_need_at(const struct oc_request *ask, oc_reference *reference) {
  if (oc_request_at(ask, reference))
    return OHM_OK;
  return oc_fail(ask->error, OHM_NOT_FOUND, "the temperature is missing: set at, such as 21.5C; ",
                 ask->verb, " takes all its readings at one", (const char *)NULL);
}

ohm_status oc_request_alone(struct oc_request *ask) {
  ohm_status status = oc_request_ohms(ask);
  if (status != OHM_OK)
    return status;
  if (ask->count > 1)
    return oc_fail(ask->error, OHM_BAD_ARGUMENT, ask->verb,
                   " takes one reading of ohms, and several ",
                   "lie on the bench: forget the others", (const char *)NULL);
  const struct oc_bench_reading *first;
  oc_request_kind(ask, OC_READING_OHMS, &first);
  ask->count = 0;
  status = take_place(ask, first->place);
  ask->count = 1;
  return status;
}

ohm_status oc_request_reach(const struct oc_request *ask) {
  for (size_t i = 0; i < ask->count; i++) {
    struct oc_budget at;
    bool assumed;
    double r_ohm;
    if (oc_reference_budget(&ask->references[i], &at, &assumed) == OHM_OK &&
        ohm_curve_resistance(ohm_sensor_curve(ask->bench->sensor), at.value, &r_ohm) != OHM_OK)
      return oc_request_refuse_reach(ask, "the temperature of a reading", at.value);
  }
  return OHM_OK;
}

/* ---- the module ---- */

oc_volts oc_request_volts(const struct oc_request *ask, const struct oc_bench_reading *reading) {
  oc_volts volts = reading->volts;
  if (volts.negative == OHM_NEGATIVE_NOT_TOLD)
    volts.negative = oc_request_word(ask, OHM_SETTING_NEGATIVE);
  return volts;
}

oc_reported oc_request_reported(const struct oc_request *ask, const oc_reported *reported) {
  oc_reported told = *reported;
  told.rounding = oc_request_word(ask, OHM_SETTING_ROUNDING);
  told.moves = oc_request_word(ask, OHM_SETTING_MOVES);
  return told;
}

oc_module oc_request_module(const struct oc_request *ask) {
  oc_module module = OC_MODULE_INIT;
  const char *pull_up = text_of(ask, OHM_SETTING_PULL_UP);
  const char *supply = text_of(ask, OHM_SETTING_SUPPLY);
  if (pull_up)
    oc_pull_up_read(pull_up, &module, NULL);
  if (supply)
    oc_supply_read(supply, &module, NULL);
  module.range = oc_request_word(ask, OHM_SETTING_RANGE);
  module.open_volt = oc_request_number(ask, OHM_SETTING_OPEN_VOLT, 0);
  module.short_volt = oc_request_number(ask, OHM_SETTING_SHORT_VOLT, 0);
  return module;
}

/* ---- what went wrong ---- */

static void add_degrees(struct oc_text *out, double t_c) {
  char number[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, 1, number, sizeof number);
  oc_text_add(out, number);
  oc_text_add(out, " C");
}

ohm_status oc_request_refuse_reach(const struct oc_request *ask, const char *what, double t_c) {
  double low_c, high_c;
  char reach[80];
  char given[40];
  const ohm_sensor *sensor = ask->bench->sensor;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  struct oc_text out = oc_text_begin(reach, sizeof reach);
  add_degrees(&out, low_c);
  oc_text_add(&out, " to ");
  add_degrees(&out, high_c);
  struct oc_text value = oc_text_begin(given, sizeof given);
  add_degrees(&value, t_c);
  return oc_fail(ask->error, OHM_OUT_OF_RANGE, what, ", ", given, ", lies outside the curve of ",
                 ohm_sensor_name(sensor), ", which reaches from ", reach, (const char *)NULL);
}

ohm_status oc_request_told(const struct oc_request *ask, ohm_status status) {
  if (status == OHM_OK || !ask->error || ask->error->message[0])
    return status;
  return oc_fail(ask->error, status, ask->verb, ": ", ohm_status_text((int)status),
                 (const char *)NULL);
}
