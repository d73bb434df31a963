/* SPDX-License-Identifier: MIT */
/*
 * The structs a caller hands over, from bytes. A member is nothing, a usual value, a
 * value of few digits or any double at all, as its first byte says.
 */
#ifndef OHM_TESTS_FUZZ_BYTES_H
#define OHM_TESTS_FUZZ_BYTES_H

#include "contract.h"
#include "../../lib/model/measurement.h"

enum { SENSORS_MAX = 64, NAME_SIZE = 24 };

/* What is left of the bytes; 0 after the last. */
struct bytes {
  const uint8_t *data;
  size_t size;
};

static inline unsigned take(struct bytes *bytes) {
  if (bytes->size == 0)
    return 0;
  bytes->size--;
  return *bytes->data++;
}

static inline void take_raw(struct bytes *bytes, void *to, size_t size) {
  unsigned char *place = to;
  for (size_t i = 0; i < size; i++)
    place[i] = (unsigned char)take(bytes);
}

static inline double take_double(struct bytes *bytes) {
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

static inline int take_int(struct bytes *bytes) {
  unsigned how = take(bytes);
  int x = (int)(how % 8);
  if (how >= 0xF0)
    take_raw(bytes, &x, sizeof x);
  return x;
}

static inline oc_reading take_reading(struct bytes *bytes) {
  oc_reading reading = OC_READING_INIT;
  reading.display = take_int(bytes);
  reading.r_ohm = take_double(bytes);
  reading.resolution_ohm = take_double(bytes);
  reading.range_ohm = take_double(bytes);
  reading.zeros_ohm = take_double(bytes);
  reading.bare = take_int(bytes);
  return reading;
}

static inline oc_meter take_meter(struct bytes *bytes) {
  oc_meter meter = OC_METER_INIT;
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

static inline oc_reference take_reference(struct bytes *bytes) {
  oc_reference reference = OC_REFERENCE_INIT;
  reference.kind = take_int(bytes);
  reference.t_c = take_double(bytes);
  reference.accuracy = take_int(bytes);
  reference.limit_k = take_double(bytes);
  reference.u_k = take_double(bytes);
  reference.altitude_m = take_double(bytes);
  reference.pressure_hpa = take_double(bytes);
  return reference;
}

static inline oc_check take_check(struct bytes *bytes, const ohm_sensor *sensor, char *name) {
  oc_check check = OC_CHECK_INIT;
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
static inline const ohm_sensor *sensor_at(size_t index) {
  static ohm_sensor *sensors[SENSORS_MAX];
  require(ohm_sensor_built_in_count() <= SENSORS_MAX, "SENSORS_MAX is large enough");
  if (!sensors[index])
    sensors[index] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(index), NULL);
  require(sensors[index] != NULL, "a built-in sensor loads");
  return sensors[index];
}

static inline int is_status(ohm_status status) {
  return status == OHM_OK || status == OHM_BAD_ARGUMENT || status == OHM_OUT_OF_RANGE ||
         status == OHM_NOT_FOUND;
}

#endif
