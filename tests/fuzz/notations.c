/* SPDX-License-Identifier: MIT */
/* Any text in every notation a person types; the first byte says which. What reads
 * must keep its promise, and what does not must leave NaN and a sentence. */
#include "contract.h"
#include "../../lib/answers/bath.h"
#include "../../lib/answers/terminals.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

#define promise(truth) require((truth), #truth)

static int is_utf8(const char *text) {
  for (size_t n; *text; text += n)
    if ((n = character(text)) == 0)
      return 0;
  return 1;
}

/* Whether it read; a failure has its status in the error and a sentence. */
static int reads(const char *text, ohm_status status, const ohm_error *error) {
  promise(error->status == (int)status);
  promise((status == OHM_OK) == (error->message[0] == '\0'));
  promise(status == OHM_OK || status == OHM_BAD_SYNTAX || status == OHM_OUT_OF_RANGE);
  promise(memchr(error->message, '\0', sizeof error->message) != NULL);
  promise(!is_utf8(text) || is_utf8(error->message));
  return status == OHM_OK;
}

static void check_bath(const oc_reading *reading, const oc_meter *meter,
                       const oc_reference *reference) {
  oc_reference room = OC_REFERENCE_INIT;
  room.t_c = 20;
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
    promise(sensor != NULL);
    ohm_finding finding = finding_new();
    promise(oc_bath_check(sensor, reading, meter, reference ? reference : &room, NULL, &finding) ==
            OHM_OK);
    require_finding(&finding, 0);
    ohm_sensor_free(sensor);
  }
}

static void read_reading(const char *text) {
  oc_reading reading;
  ohm_error error;
  if (!reads(text, oc_reading_read(text, &reading, &error), &error)) {
    promise(isnan(reading.r_ohm));
    return;
  }
  if (reading.display == OC_DISPLAY_VALUE)
    promise(within(0, reading.r_ohm, 1e12) && within(0, reading.resolution_ohm, 1e300));
  check_bath(&reading, NULL, NULL);
}

static void read_reference(const char *text) {
  oc_reference reference;
  ohm_error error;
  if (!reads(text, oc_reference_read(text, &reference, &error), &error)) {
    promise(isnan(reference.t_c));
    return;
  }
  promise(-273.15 < reference.t_c && reference.t_c <= 1000 && within(0, reference.limit_k, 1000));
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = 2450;
  check_bath(&reading, NULL, &reference);
}

static void check_meter(const oc_meter *meter) {
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = 2450;
  double limit_ohm;
  ohm_estimate r_ohm;
  promise(oc_meter_limit(meter, &reading, &limit_ohm) == OHM_OK && within(0, limit_ohm, 1e300));
  promise(oc_meter_estimate(meter, &reading, &r_ohm) == OHM_OK && within(0, r_ohm.value, 2450));
  check_bath(&reading, meter, NULL);
}

static void read_meter(const char *text) {
  oc_meter meter = OC_METER_INIT;
  oc_meter before = meter;
  ohm_error error;
  if (!reads(text, oc_meter_read(text, &meter, &error), &error)) {
    promise(memcmp(&meter, &before, sizeof meter) == 0);
    return;
  }
  promise(within(0, meter.percent, 100) && within(0, meter.counts, 1e300));
  check_meter(&meter);
}

static void read_leads(const char *text) {
  oc_meter meter = OC_METER_INIT;
  oc_meter before = meter;
  ohm_error error;
  if (!reads(text, oc_leads_read(text, &meter, &error), &error)) {
    promise(memcmp(&meter, &before, sizeof meter) == 0);
    return;
  }
  promise(within(0, meter.lead_ohm, 1000) && within(0, meter.lead_limit_ohm, 1000));
  check_meter(&meter);
}

static void read_temperature(const char *text) {
  double t_c;
  ohm_error error;
  if (reads(text, ohm_temperature_read(text, &t_c, &error), &error))
    promise(-273.15 < t_c && t_c <= 1000);
  else
    promise(isnan(t_c));
}

static void read_tolerance(const char *text) {
  double percent;
  ohm_error error;
  if (reads(text, oc_tolerance_read(text, &percent, &error), &error))
    promise(0 < percent && percent < 100);
  else
    promise(isnan(percent));
}

static void print_number(double value) {
  enum { FIXED_SIZE = 400 };
  char ours[FIXED_SIZE];
  char theirs[FIXED_SIZE];
  for (int decimals = 0; decimals <= 20; decimals++) {
    size_t length = ohm_number_print_fixed(value, decimals, ours, sizeof ours);
    promise(length == (size_t)snprintf(theirs, sizeof theirs, "%.*f", decimals, value));
    promise(strcmp(ours, theirs) == 0);
  }
  for (int digits = 0; digits <= 18; digits++)
    promise(ohm_resistance_print(value, digits, ours, sizeof ours) == strlen(ours));
}

/* The C library, in its own locale, is asked for a second opinion. */
static void read_number(const char *text) {
  double value;
  double again;
  char digits[OHM_NUMBER_SIZE];
  if (ohm_number_read(text, strlen(text), &value) != OHM_OK) {
    promise(isnan(value));
    return;
  }
  promise(isfinite(value) && value == strtod(text, NULL));
  size_t length = ohm_number_print(value, digits, sizeof digits);
  promise(length < sizeof digits && ohm_number_read(digits, length, &again) == OHM_OK);
  promise(memcmp(&value, &again, sizeof value) == 0);
  print_number(value);
}

static void read_pair(const char *text) {
  oc_pair pair;
  ohm_error error;
  if (!reads(text, oc_pair_read(text, &pair, &error), &error)) {
    promise(pair.from == 0 && pair.to == 0);
    return;
  }
  promise(pair.from != pair.to);
  ohm_finding candidate = finding_new();
  ohm_finding each = finding_new();
  ohm_finding finding = finding_new();
  oc_reference room = OC_REFERENCE_INIT;
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  const ohm_sensor *shelf[] = {sensor};
  promise(sensor != NULL);
  promise(oc_pins_identify(shelf, 1, &pair, 1, &room, NULL, NULL, &each, &candidate, &finding) ==
          OHM_OK);
  require_finding(&finding, 1);
  ohm_sensor_free(sensor);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  static void (*const notations[])(const char *) = {read_reading, read_reference,   read_meter,
                                                    read_leads,   read_temperature, read_tolerance,
                                                    read_number,  read_pair};
  if (size == 0)
    return 0;
  char *text = malloc(size);
  promise(text != NULL);
  memcpy(text, data + 1, size - 1);
  text[size - 1] = '\0';
  notations[data[0] % (sizeof notations / sizeof notations[0])](text);
  free(text);
  findings_free();
  return 0;
}
