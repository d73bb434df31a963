/* SPDX-License-Identifier: MIT */
#include "next_reading.h"

const double oc_at_hand_c[OC_AT_HAND] = {0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100};

ohm_status oc_ask_gather(struct oc_evidence *evidence, const ohm_sensor *sensor,
                         const struct oc_ask *ask) {
  return oc_evidence_gather(evidence, sensor, ask->readings, ask->references, ask->count,
                            ask->meter, ask->check);
}

void oc_next_reading_plan(struct oc_next_reading *further, const struct oc_ask *ask, double t_c) {
  static const oc_reference thermometer = OC_REFERENCE_INIT;
  static const oc_reading reading = OC_READING_INIT;
  for (size_t i = 0; i < ask->count; i++) {
    further->readings[i] = ask->readings[i];
    further->references[i] = ask->references[i];
  }
  const oc_reference *first = &ask->references[0];
  bool good = first->kind == OHM_REFERENCE_THERMOMETER && first->accuracy != OC_ASSUMED &&
              first->limit_k <= OC_ASSUMED_THERMOMETER_LIMIT_K;
  oc_reference *reference = &further->references[ask->count];
  *reference = good ? *first : thermometer;
  reference->t_c = t_c;
  further->readings[ask->count] = reading;
  further->ask = *ask;
  further->ask.readings = further->readings;
  further->ask.references = further->references;
  further->ask.count = ask->count + 1;
}

struct oc_forecast oc_next_reading_foretell(struct oc_next_reading *further,
                                            const ohm_sensor *sensor, const struct oc_fault *fault,
                                            double u_size) {
  static const struct oc_forecast none = {NAN, NAN};
  struct oc_evidence evidence;
  size_t last = further->ask.count - 1;
  double at_c = further->references[last].t_c;
  double low_c;
  double high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  if (!oc_inside(low_c, at_c, high_c))
    return none;
  further->readings[last].r_ohm = oc_curve_resistance_beyond(ohm_sensor_curve(sensor), at_c);
  const struct oc_ask *ask = &further->ask;
  if (oc_evidence_take(&evidence, sensor, ask->readings, ask->references, ask->count, ask->meter,
                       ask->check) != OHM_OK)
    return none;
  return oc_evidence_forecast(&evidence, fault, u_size);
}
