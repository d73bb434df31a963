/* SPDX-License-Identifier: MIT */
/* Any text in every notation a person types; the first byte says which. What reads
 * must keep its promise, and what does not must leave NaN and a sentence. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "ohmcurve.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void require(int truth) {
  if (!truth)
    abort();
}

static int within(double low, double x, double high) {
  return low <= x && x <= high;
}

/* Whether it read; a failure has its status in the error and a sentence. */
static int reads(ohm_status status, const ohm_error *error) {
  require(error->status == (int)status);
  require((status == OHM_OK) == (error->message[0] == '\0'));
  require(status == OHM_OK || status == OHM_BAD_SYNTAX || status == OHM_OUT_OF_RANGE);
  require(memchr(error->message, '\0', sizeof error->message) != NULL);
  return status == OHM_OK;
}

static void check_finding(const ohm_finding *finding) {
  char text[4096];
  double sum = 0;
  size_t absent = 0;
  for (int i = OHM_FIELD_P_LOW; i <= OHM_FIELD_P_HIGH; i++) {
    double p = ohm_finding_number(finding, i);
    absent += isnan(p) != 0;
    sum += p;
    require(isnan(p) || within(0, p, 1));
  }
  require(absent == 0 ? fabs(sum - 1) < 1e-9 : absent == 3);
  const char *reason = ohm_finding_text(finding, OHM_FIELD_REASON, 0);
  static const char *const by_probability[] = {"conforms", "low", "high", "uncertain"};
  for (size_t i = 0; i < sizeof by_probability / sizeof by_probability[0]; i++)
    require(strcmp(reason, by_probability[i]) != 0 || absent == 0);
  require(within(2, (double)ohm_report_print(finding, text, sizeof text), sizeof text - 1));
}

static void check_bath(const ohm_reading *reading, const ohm_meter *meter,
                       const ohm_reference *reference) {
  ohm_reference room = OHM_REFERENCE_INIT;
  room.t_c = 20;
  ohm_sensor *sensor = ohm_catalogue_load("ntc-2k45-20c", NULL);
  require(sensor != NULL);
  ohm_finding finding;
  require(ohm_bath_check(sensor, reading, meter, reference ? reference : &room, NULL, &finding) ==
          OHM_OK);
  check_finding(&finding);
  ohm_sensor_free(sensor);
}

static void read_reading(const char *text) {
  ohm_reading reading;
  ohm_error error;
  if (!reads(ohm_reading_read(text, &reading, &error), &error)) {
    require(isnan(reading.r_ohm));
    return;
  }
  require(reading.size == sizeof reading);
  if (reading.display == OHM_DISPLAY_VALUE)
    require(within(0, reading.r_ohm, 1e12) && within(0, reading.resolution_ohm, 1e300));
  check_bath(&reading, NULL, NULL);
}

static void read_reference(const char *text) {
  ohm_reference reference;
  ohm_error error;
  if (!reads(ohm_reference_read(text, &reference, &error), &error)) {
    require(isnan(reference.t_c));
    return;
  }
  require(-273.15 < reference.t_c && reference.t_c <= 1000 && within(0, reference.limit_k, 1000));
  ohm_reading reading = OHM_READING_INIT;
  reading.r_ohm = 2450;
  check_bath(&reading, NULL, &reference);
}

static void check_meter(const ohm_meter *meter) {
  ohm_reading reading = OHM_READING_INIT;
  reading.r_ohm = 2450;
  double limit_ohm;
  ohm_estimate r_ohm;
  require(ohm_meter_limit(meter, &reading, &limit_ohm) == OHM_OK && within(0, limit_ohm, 1e300));
  require(ohm_meter_estimate(meter, &reading, &r_ohm) == OHM_OK && within(0, r_ohm.value, 2450));
  check_bath(&reading, meter, NULL);
}

static void read_meter(const char *text) {
  ohm_meter meter = OHM_METER_INIT;
  ohm_meter before = meter;
  ohm_error error;
  if (!reads(ohm_meter_read(text, &meter, &error), &error)) {
    require(memcmp(&meter, &before, sizeof meter) == 0);
    return;
  }
  require(within(0, meter.percent, 100) && within(0, meter.counts, 1e300));
  check_meter(&meter);
}

static void read_leads(const char *text) {
  ohm_meter meter = OHM_METER_INIT;
  ohm_meter before = meter;
  ohm_error error;
  if (!reads(ohm_leads_read(text, &meter, &error), &error)) {
    require(memcmp(&meter, &before, sizeof meter) == 0);
    return;
  }
  require(within(0, meter.lead_ohm, 1000) && within(0, meter.lead_limit_ohm, 1000));
  check_meter(&meter);
}

static void read_temperature(const char *text) {
  double t_c;
  ohm_error error;
  if (reads(ohm_temperature_read(text, &t_c, &error), &error))
    require(-273.15 < t_c && t_c <= 1000);
  else
    require(isnan(t_c));
}

static void read_tolerance(const char *text) {
  double percent;
  ohm_error error;
  if (reads(ohm_tolerance_read(text, &percent, &error), &error))
    require(0 < percent && percent < 100);
  else
    require(isnan(percent));
}

static void read_number(const char *text) {
  double value;
  double again;
  char digits[OHM_NUMBER_SIZE];
  if (ohm_number_read(text, strlen(text), &value) != OHM_OK) {
    require(isnan(value));
    return;
  }
  require(isfinite(value));
  size_t length = ohm_number_print(value, digits, sizeof digits);
  require(length < sizeof digits && ohm_number_read(digits, length, &again) == OHM_OK);
  require(memcmp(&value, &again, sizeof value) == 0);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  static void (*const notations[])(const char *) = {read_reading, read_reference,   read_meter,
                                                    read_leads,   read_temperature, read_tolerance,
                                                    read_number};
  if (size == 0)
    return 0;
  char *text = malloc(size);
  require(text != NULL);
  memcpy(text, data + 1, size - 1);
  text[size - 1] = '\0';
  notations[data[0] % (sizeof notations / sizeof notations[0])](text);
  free(text);
  return 0;
}
