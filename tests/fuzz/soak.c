/* SPDX-License-Identifier: MIT */
/*
 * Soaks from bytes: any reading, air, history, companions and strictness a caller could
 * hand over, against the built-in sensors.
 */
#include "bytes.h"
#include "../../lib/answers/soak.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { COMPANIONS_MAX = 12, POINTS_MAX = 12 };

/* Hours and temperatures that rise; whether they can be used is for the library to say. */
static ohm_history *take_history(struct bytes *bytes) {
  double after_h[POINTS_MAX];
  double t_c[POINTS_MAX];
  size_t count = take(bytes) % (POINTS_MAX + 1);
  double at_h = (double)take(bytes) / 16 - 4;
  for (size_t i = 0; i < count; i++) {
    at_h += (double)take(bytes) / 32;
    after_h[i] = at_h;
    t_c[i] = take_double(bytes);
  }
  return ohm_history_new(after_h, t_c, count, NULL);
}

static oc_companion take_companion(struct bytes *bytes) {
  oc_companion companion = OC_COMPANION_INIT;
  companion.kind = take_int(bytes);
  companion.t_c = take_double(bytes);
  companion.limit_k = take_double(bytes);
  companion.tau_low_h = take_double(bytes);
  companion.tau_high_h = take_double(bytes);
  return companion;
}

static oc_soak_told take_soak(struct bytes *bytes) {
  oc_soak_told soak = OC_SOAK_TOLD_INIT;
  soak.after_h = take_double(bytes);
  soak.extend = take_int(bytes);
  soak.start = take_int(bytes);
  soak.stop_c = take_double(bytes);
  soak.stop_limit_k = take_double(bytes);
  soak.tau_low_h = take_double(bytes);
  soak.tau_high_h = take_double(bytes);
  soak.undisturbed = take_int(bytes);
  soak.allow_k = take_double(bytes);
  return soak;
}

static void require_soak(const ohm_finding *finding) {
  require_finding(finding, 0);
  double low_c = ohm_finding_number(finding, OHM_FIELD_COOLANT_LOW_C);
  double high_c = ohm_finding_number(finding, OHM_FIELD_COOLANT_HIGH_C);
  double missed_k = ohm_finding_number(finding, OHM_FIELD_MISSED_COLD_K);
  require(low_c <= high_c + 1e-6, "the coolant has two ends");
  require(isnan(missed_k) || missed_k >= 0, "what could be missed is not negative");
  require(!has_word(finding, OHM_FIELD_AGREEMENT, "odd") ||
              ohm_finding_text(finding, OHM_FIELD_ODD, 0) != NULL,
          "an odd one has a name");
  double decidable_h = ohm_finding_number(finding, OHM_FIELD_DECIDABLE_H);
  require(isnan(decidable_h) || decidable_h >= ohm_finding_number(finding, OHM_FIELD_AFTER_H),
          "what would decide is not over");
  double passes_h = ohm_finding_number(finding, OHM_FIELD_PASSES_H);
  require(isnan(passes_h) || passes_h >= ohm_finding_number(finding, OHM_FIELD_AFTER_H),
          "what would pass is not over");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  struct bytes bytes = {data, size};
  unsigned first = take(&bytes);
  const ohm_sensor *sensor = sensor_at(first / 16 % ohm_sensor_built_in_count());
  char name[NAME_SIZE] = "";
  oc_reading reading = take_reading(&bytes);
  oc_reference air = take_reference(&bytes);
  oc_soak_told soak = take_soak(&bytes);
  oc_companion companions[COMPANIONS_MAX];
  soak.companion_count = take(&bytes) % (COMPANIONS_MAX + 1);
  soak.companions = companions;
  for (size_t i = 0; i < soak.companion_count; i++)
    companions[i] = take_companion(&bytes);
  ohm_history *history = first & 1 ? take_history(&bytes) : NULL;
  soak.history = history;
  oc_meter meter = take_meter(&bytes);
  oc_check check = take_check(&bytes, sensor, name);
  ohm_finding finding = finding_new();
  ohm_status status =
      oc_soak_check(sensor, &reading, first & 4 ? &meter : NULL, history && first & 2 ? NULL : &air,
                    &soak, first & 8 ? &check : NULL, &finding);
  require(is_status(status) || status == OHM_TOO_LARGE, "a status is one of those named");
  if (status == OHM_OK)
    require_soak(&finding);
  else
    require_nothing(&finding);
  ohm_history_free(history);
  findings_free();
  return 0;
}
