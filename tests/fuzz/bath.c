/* SPDX-License-Identifier: MIT */
/*
 * Checks from bytes: any reading, meter, reference and strictness a caller could hand
 * over, against the built-in sensors. A member is nothing, a usual value, a value of
 * few digits or any double at all, as its first byte says.
 */
#include "contract.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { READINGS_MAX = 4, SENSORS_MAX = 64, NAME_SIZE = 24 };

/* What is left of the bytes; 0 after the last. */
struct bytes {
  const uint8_t *data;
  size_t size;
};

static unsigned take(struct bytes *bytes) {
  if (bytes->size == 0)
    return 0;
  bytes->size--;
  return *bytes->data++;
}

static void take_raw(struct bytes *bytes, void *to, size_t size) {
  unsigned char *place = to;
  for (size_t i = 0; i < size; i++)
    place[i] = (unsigned char)take(bytes);
}

static double take_double(struct bytes *bytes) {
  static const double usual[] = {1,   0.5,  2,     5,    20,      80,     97,      100,
                                 188, 2450, 37387, 1e12, 1e-300,  1e300,  0.3,     0.95,
                                 -1,  3520, 10000, 1000, 1013.25, 130,    -273.15, INFINITY,
                                 NAN, 0.1,  1e-3,  850,  1e6,     99.999, -40,     260};
  unsigned how = take(bytes);
  double x = 0;
  if (how % 4 == 1)
    x = usual[take(bytes) % (sizeof usual / sizeof usual[0])];
  else if (how % 4 == 2)
    x = ((int)take(bytes) * 256 + (int)take(bytes)) / 10.0;
  else if (how % 4 == 3)
    take_raw(bytes, &x, sizeof x);
  return x;
}

static int take_int(struct bytes *bytes) {
  unsigned how = take(bytes);
  int x = (int)(how % 8);
  if (how >= 0xF0)
    take_raw(bytes, &x, sizeof x);
  return x;
}

static void take_size(struct bytes *bytes, size_t *size) {
  if (take(bytes) >= 0xF8)
    *size = take(bytes);
}

static ohm_reading take_reading(struct bytes *bytes) {
  ohm_reading reading = OHM_READING_INIT;
  take_size(bytes, &reading.size);
  reading.display = take_int(bytes);
  reading.r_ohm = take_double(bytes);
  reading.resolution_ohm = take_double(bytes);
  reading.range_ohm = take_double(bytes);
  reading.zeros_ohm = take_double(bytes);
  reading.bare = take_int(bytes);
  return reading;
}

static ohm_meter take_meter(struct bytes *bytes) {
  ohm_meter meter = OHM_METER_INIT;
  take_size(bytes, &meter.size);
  meter.accuracy = take_int(bytes);
  meter.percent = take_double(bytes);
  meter.counts = take_double(bytes);
  meter.resolution_ohm = take_double(bytes);
  meter.display_count = take_double(bytes);
  meter.leads = take_int(bytes);
  meter.lead_ohm = take_double(bytes);
  meter.lead_limit_ohm = take_double(bytes);
  meter.current_ma = take_double(bytes);
  return meter;
}

static ohm_reference take_reference(struct bytes *bytes) {
  ohm_reference reference = OHM_REFERENCE_INIT;
  take_size(bytes, &reference.size);
  reference.kind = take_int(bytes);
  reference.t_c = take_double(bytes);
  reference.accuracy = take_int(bytes);
  reference.limit_k = take_double(bytes);
  reference.u_k = take_double(bytes);
  reference.altitude_m = take_double(bytes);
  reference.pressure_hpa = take_double(bytes);
  return reference;
}

static ohm_check take_check(struct bytes *bytes, const ohm_sensor *sensor, char *name) {
  ohm_check check = OHM_CHECK_INIT;
  take_size(bytes, &check.size);
  check.level = take_double(bytes);
  check.tolerance_percent = take_double(bytes);
  check.place = take_int(bytes);
  check.fan_c = take_double(bytes);
  check.limit_k = take_double(bytes);
  unsigned band = take(bytes);
  if (band == 0xFF) {
    take_raw(bytes, name, NAME_SIZE - 1);
    check.band = name;
  } else if (band % 2 == 1) {
    check.band = ohm_sensor_band_name(sensor, band / 2 % (ohm_sensor_band_count(sensor) + 1));
  }
  return check;
}

/* Read once, and kept to the end. */
static const ohm_sensor *sensor_at(size_t index) {
  static ohm_sensor *sensors[SENSORS_MAX];
  if (!sensors[index])
    sensors[index] = ohm_catalogue_load(ohm_catalogue_name(index), NULL);
  require(sensors[index] != NULL, "a built-in sensor loads");
  return sensors[index];
}

/* What an earlier call left in them must not be taken for what this one found. */
static void stale_findings(ohm_finding *findings) {
  ohm_reading reading = OHM_READING_INIT;
  ohm_reference reference = OHM_REFERENCE_INIT;
  reading.display = OHM_DISPLAY_OPEN;
  for (size_t i = 0; i < READINGS_MAX; i++)
    ohm_bath_check(sensor_at(0), &reading, NULL, &reference, NULL, &findings[i]);
}

static int is_status(ohm_status status) {
  return status == OHM_OK || status == OHM_BAD_ARGUMENT || status == OHM_OUT_OF_RANGE ||
         status == OHM_NOT_FOUND;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  struct bytes bytes = {data, size};
  unsigned first = take(&bytes);
  require(ohm_catalogue_count() <= SENSORS_MAX, "SENSORS_MAX is large enough");
  const ohm_sensor *sensor = sensor_at(first / 16 % ohm_catalogue_count());
  size_t count = first % 4 + 1;
  char name[NAME_SIZE] = "";
  ohm_meter meter = take_meter(&bytes);
  ohm_check check = take_check(&bytes, sensor, name);
  const ohm_meter *meter_told = first & 4 ? &meter : NULL;
  const ohm_check *check_told = first & 8 ? &check : NULL;
  ohm_reading readings[READINGS_MAX];
  ohm_reference references[READINGS_MAX];
  ohm_finding findings[READINGS_MAX];
  for (size_t i = 0; i < count; i++) {
    readings[i] = take_reading(&bytes);
    references[i] = take_reference(&bytes);
  }
  stale_findings(findings);
  ohm_finding finding;
  ohm_status status =
      ohm_bath_check(sensor, &readings[0], meter_told, &references[0], check_told, &finding);
  require(is_status(status), "a status is one of those named");
  if (status == OHM_OK)
    require_finding(&finding, 0);
  else
    require_nothing(&finding);
  status = ohm_bath_check_several(sensor, readings, references, count, meter_told, check_told,
                                  findings, &finding);
  require(is_status(status), "a status is one of those named");
  for (size_t i = 0; i < count; i++)
    if (status == OHM_OK)
      require_finding(&findings[i], 0);
    else
      require_nothing(&findings[i]);
  if (status == OHM_OK)
    require_finding(&finding, 1);
  else
    require_nothing(&finding);
  return 0;
}
