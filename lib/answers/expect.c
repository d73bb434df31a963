/* SPDX-License-Identifier: MIT */
/* What a good sensor shows at a temperature, before it is measured. */
#include "bath.h"
#include "request.h"
#include "told.h"

enum { SHOWN_DIGITS = 3 };

/* The middle of what a good one shows, to the digits of a display of 2000 counts. */
static ohm_status take_nominal(oc_reading *reading, const ohm_curve *curve, double t_c) {
  char shown[OHM_NUMBER_SIZE];
  ohm_resistance_print(oc_curve_resistance_beyond(curve, t_c), SHOWN_DIGITS, shown, sizeof shown);
  return oc_reading_read(shown, reading, NULL);
}

static ohm_status tell(const struct oc_request *ask, const oc_reference *at, double t_c,
                       ohm_finding *finding) {
  const ohm_sensor *sensor = ask->bench->sensor;
  oc_reading reading;
  struct oc_measurement measurement;
  ohm_status status = take_nominal(&reading, ohm_sensor_curve(sensor), t_c);
  if (status == OHM_OK)
    status = oc_measurement_ask(&measurement, sensor, &reading, &ask->meter, at, &ask->check);
  if (status != OHM_OK)
    return status;
  measurement.fan_assumed = measurement.limit_assumed = false;
  oc_finding_set_about(finding, OHM_VERB_EXPECT);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  oc_finding_set_number(finding, OHM_FIELD_LEVEL, measurement.level);
  oc_told_assumed(&measurement, finding);
  oc_bath_tell_temperature(finding, &measurement);
  oc_bath_tell_allowed(finding, &measurement);
  oc_finding_set_number(finding, OHM_FIELD_LEAD_OHM, reading.r_ohm - measurement.read.value);
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_ALONE);
  return OHM_OK;
}

/* A bath that is warmer than the curve by no more than it is known to is at its end. */
static ohm_status ask_temperature(const struct oc_request *ask, const oc_reference *at,
                                  double *t_c) {
  double low_c;
  double high_c;
  struct oc_budget bath;
  bool assumed;
  ohm_status status = oc_reference_budget(at, &bath, &assumed);
  if (status != OHM_OK)
    return status;
  double slack_k = oc_budget_u(&bath);
  *t_c = bath.value;
  ohm_curve_range(ohm_sensor_curve(ask->bench->sensor), &low_c, &high_c, NULL, NULL);
  return oc_inside(low_c - slack_k, *t_c, high_c + slack_k)
             ? OHM_OK
             : oc_request_refuse_reach(ask, "the temperature", *t_c);
}

static ohm_status ask_all(struct oc_request *ask, const ohm_bench *bench, ohm_error *error,
                          oc_reference *at, double *t_c) {
  ohm_status status = oc_request_begin(ask, bench, "expect", error);
  if (status == OHM_OK)
    status = oc_request_sensor(ask);
  if (status == OHM_OK)
    status = oc_request_band(ask);
  if (status != OHM_OK)
    return status;
  return oc_request_at(ask, at)
             ? ask_temperature(ask, at, t_c)
             : oc_fail(error, OHM_NOT_FOUND, "the temperature is missing: set at, such as 21.5C",
                       (const char *)NULL);
}

ohm_answer *ohm_bench_expect(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  oc_reference at = OC_REFERENCE_INIT;
  double t_c = NAN;
  if (ask_all(&ask, bench, error, &at, &t_c) != OHM_OK)
    return NULL;
  ohm_status status = OHM_OK;
  ohm_answer *answer = oc_answer_new(error);
  if (answer)
    status = oc_request_told(&ask, tell(&ask, &at, t_c, &answer->whole));
  return oc_answer_done(answer, status, error);
}
