/* SPDX-License-Identifier: MIT */
/*
 * The module's side from bytes: any input, volts, degrees and ohms a caller could hand
 * over, against the built-in sensors; then any resistors in the sensor's place, and any
 * text in the notations of all of them.
 */
#include "contract.h"
#include "../../lib/answers/fanpoint.h"
#include "../../lib/answers/loom.h"
#include "../../lib/answers/signal_path.h"
#include "../../lib/answers/substitute.h"
#include "../../lib/evidence/reference.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { SENSORS_MAX = 64, DRAWER_MAX = 5 };

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

static double take_double(struct bytes *bytes) {
  static const double usual[] = {0.97, 5,    1000,  348,      4000, 40,  91,   187,
                                 240,  0.05, 4.95,  2,        20e3, 952, 85,   -40,
                                 140,  -1,   1e300, 1e-300,   30,   0.5, 0.95, 97,
                                 100,  1,    0.1,   INFINITY, NAN,  50,  220,  1e7};
  unsigned how = take(bytes);
  double x = 0;
  if (how % 4 == 1)
    x = usual[take(bytes) % (sizeof usual / sizeof usual[0])];
  else if (how % 4 == 2)
    x = ((int)take(bytes) * 256 + (int)take(bytes)) / 10.0 - 100;
  else if (how % 4 == 3)
    for (size_t i = 0; i < sizeof x; i++)
      ((unsigned char *)&x)[i] = (unsigned char)take(bytes);
  return x;
}

static int take_int(struct bytes *bytes) {
  return (int)(take(bytes) % 5) - (take(bytes) > 0xF0);
}

static oc_module take_module(struct bytes *bytes) {
  oc_module module = OC_MODULE_INIT;
  module.pull_up_ohm = take_double(bytes);
  module.hot_pull_up_ohm = take_double(bytes);
  module.changeover_c = take_double(bytes);
  module.range = take_int(bytes);
  module.pull_up_accuracy = take_int(bytes);
  module.pull_up_percent = take_double(bytes);
  module.supply_volt = take_double(bytes);
  module.supply_accuracy = take_int(bytes);
  module.supply_limit_volt = take_double(bytes);
  module.open_volt = take_double(bytes);
  module.short_volt = take_double(bytes);
  return module;
}

static oc_volts take_volts(struct bytes *bytes) {
  oc_volts volts = OC_VOLTS_INIT;
  volts.v_volt = take_double(bytes);
  volts.resolution_volt = take_double(bytes);
  volts.accuracy = take_int(bytes);
  volts.limit_volt = take_double(bytes);
  volts.negative = take_int(bytes);
  return volts;
}

static oc_reported take_reported(struct bytes *bytes) {
  oc_reported reported = OC_REPORTED_INIT;
  reported.t_c = take_double(bytes);
  reported.resolution_k = take_double(bytes);
  reported.rounding = take_int(bytes);
  reported.accuracy = take_int(bytes);
  reported.limit_k = take_double(bytes);
  reported.moves = take_int(bytes);
  return reported;
}

static oc_reading take_reading(struct bytes *bytes) {
  oc_reading reading = OC_READING_INIT;
  reading.display = take_int(bytes);
  reading.r_ohm = take_double(bytes);
  reading.resolution_ohm = take_double(bytes);
  reading.zeros_ohm = take_double(bytes);
  return reading;
}

static oc_reference take_reference(struct bytes *bytes) {
  oc_reference reference = OC_REFERENCE_INIT;
  reference.kind = take_int(bytes);
  reference.t_c = take_double(bytes);
  reference.accuracy = take_int(bytes);
  reference.limit_k = take_double(bytes);
  reference.u_k = take_double(bytes);
  return reference;
}

static oc_pin take_pin(struct bytes *bytes) {
  oc_pin pin = OC_PIN_INIT;
  pin.level = take_double(bytes);
  pin.fan_c = take_double(bytes);
  pin.limit_k = take_double(bytes);
  pin.moved = take_int(bytes);
  pin.moved_limit_k = take_double(bytes);
  return pin;
}

/* Read once, and kept to the end. */
static const ohm_sensor *sensor_at(size_t index) {
  static ohm_sensor *sensors[SENSORS_MAX];
  if (!sensors[index])
    sensors[index] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(index), NULL);
  require(sensors[index] != NULL, "a built-in sensor loads");
  return sensors[index];
}

/* A finding on this side of the wire: fields, words, a report that fits. */
static void require_answer(const ohm_finding *finding) {
  for (int field = 1; field < OC_FIELDS; field++)
    require_field(finding, field);
  require(ohm_finding_text(finding, OHM_FIELD_ABOUT, 0) != NULL, "a finding says what about");
  require(ohm_finding_text(finding, OHM_FIELD_VERDICT, 0) != NULL, "a finding has a verdict");
  require(ohm_finding_text(finding, OHM_FIELD_REASON, 0) != NULL, "a verdict has a reason");
  double low_c = ohm_finding_number(finding, OHM_FIELD_START_LOW_C);
  double high_c = ohm_finding_number(finding, OHM_FIELD_START_HIGH_C);
  require(isnan(low_c) || isnan(high_c) || low_c <= high_c, "a start has its ends in order");
  double expanded_ohm = ohm_finding_number(finding, OHM_FIELD_EXPANDED_BETWEEN_OHM);
  require(isnan(expanded_ohm) || expanded_ohm >= 0, "an expanded uncertainty is not negative");
  require_report(finding, ohm_finding_print_report, COLUMNS_MAX);
}

static void require_either(ohm_status status, const ohm_finding *finding) {
  require(status == OHM_OK || status == OHM_BAD_ARGUMENT || status == OHM_OUT_OF_RANGE ||
              status == OHM_NULL_ARGUMENT || status == OHM_BAD_DEFINITION,
          "a status is one of those named");
  if (status == OHM_OK)
    require_answer(finding);
  else
    require_nothing(finding);
}

static void ask_pin(struct bytes *bytes, const ohm_sensor *sensor) {
  unsigned given = take(bytes);
  oc_module module = take_module(bytes);
  oc_reading reading = take_reading(bytes);
  oc_volts volts = take_volts(bytes);
  oc_reported reported = take_reported(bytes);
  oc_reference reference = take_reference(bytes);
  oc_pin pin = take_pin(bytes);
  ohm_finding finding = finding_new();
  ohm_status status =
      oc_pin_check(sensor, given & 1 ? NULL : &module, given & 2 ? NULL : &reading, NULL,
                   given & 4 ? NULL : &volts, given & 8 ? NULL : &reported,
                   given & 16 ? &reference : NULL, given & 32 ? &pin : NULL, &finding);
  require_either(status, &finding);
}

static void ask_loom(struct bytes *bytes, const ohm_sensor *sensor) {
  oc_reading readings[2];
  oc_reported reported[2];
  for (size_t i = 0; i < 2; i++) {
    readings[i] = take_reading(bytes);
    reported[i] = take_reported(bytes);
  }
  oc_pin pin = take_pin(bytes);
  ohm_finding finding = finding_new();
  require_either(oc_loom_check(sensor, readings, NULL, reported, &pin, &finding), &finding);
}

static void ask_substitute(struct bytes *bytes, const ohm_sensor *sensor) {
  unsigned given = take(bytes);
  double drawer_ohm[DRAWER_MAX];
  oc_module module = take_module(bytes);
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.aim_c = take_double(bytes);
  substitute.fan_c = take_double(bytes);
  substitute.series = take_int(bytes) % 2; /* a pair of the largest series takes its time */
  substitute.tolerance_percent = take_double(bytes);
  substitute.drawer_count = take(bytes) % (DRAWER_MAX + 1);
  substitute.drawer_ohm = drawer_ohm;
  for (size_t i = 0; i < DRAWER_MAX; i++)
    drawer_ohm[i] = take_double(bytes);
  ohm_finding single = finding_new();
  ohm_finding pair = finding_new();
  ohm_status status = oc_substitute_find(sensor, given & 1 ? NULL : &module,
                                         given & 2 ? NULL : &substitute, &single, &pair);
  require_either(status, &single);
  if (status == OHM_OK && substitute.drawer_count != 1)
    require_answer(&pair);
}

static void ask_fanpoint(struct bytes *bytes, const ohm_sensor *sensor) {
  oc_module module = take_module(bytes);
  double on_c = take_double(bytes);
  double off_c = take_double(bytes);
  ohm_finding finding = finding_new();
  ohm_status status = oc_fanpoint_find(sensor, on_c, off_c, &module, take_double(bytes), &finding);
  require_either(status, &finding);
}

/* What reads is taken; what does not leaves a sentence. */
static void read_notation(const char *text) {
  oc_module module = OC_MODULE_INIT;
  oc_volts volts;
  oc_reported reported;
  ohm_error error;
  ohm_finding finding = finding_new();
  int read = oc_pull_up_read(text, &module, &error) == OHM_OK;
  require(read == (error.message[0] == '\0'), "a failure has its sentence");
  if (read)
    require(oc_fanpoint_find(sensor_at(0), 97, NAN, &module, 0, &finding) != OHM_BAD_ARGUMENT,
            "a pull-up that was read is one");
  module = (oc_module)OC_MODULE_INIT;
  if (oc_supply_read(text, &module, &error) == OHM_OK)
    require(within(0.5, module.supply_volt, 30), "a supply that was read is one");
  module.pull_up_ohm = 1000;
  if (oc_volts_read(text, &volts, &error) == OHM_OK)
    require_either(
        oc_pin_check(sensor_at(0), &module, NULL, NULL, &volts, NULL, NULL, NULL, &finding),
        &finding);
  else
    require(isnan(volts.v_volt), "no volts without a reading");
  if (oc_reported_read(text, &reported, &error) == OHM_OK)
    require(oc_pin_check(sensor_at(0), NULL, NULL, NULL, NULL, &reported, NULL, NULL, &finding) ==
                OHM_OK,
            "degrees that were read are taken");
  else
    require(isnan(reported.t_c), "no degrees without a report");
}

static void read_text(const struct bytes *bytes) {
  char *text = malloc(bytes->size + 1);
  require(text != NULL, "there is memory");
  memcpy(text, bytes->data, bytes->size);
  text[bytes->size] = '\0';
  read_notation(text);
  free(text);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  static void (*const asks[])(struct bytes *, const ohm_sensor *) = {ask_pin, ask_loom,
                                                                     ask_substitute, ask_fanpoint};
  struct bytes bytes = {data, size};
  unsigned what = take(&bytes);
  require(ohm_sensor_built_in_count() <= SENSORS_MAX, "SENSORS_MAX is large enough");
  if (what % 5 < 4)
    asks[what % 5](&bytes, sensor_at(take(&bytes) % ohm_sensor_built_in_count()));
  else
    read_text(&bytes);
  findings_free();
  return 0;
}
