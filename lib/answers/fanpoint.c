/* SPDX-License-Identifier: MIT */
/* Where the fan starts and stops, in ohms and volts. */
#include "fanpoint.h"

#include "request.h"

#include "../bench/finding.h"
#include "../model/hidden.h"
#include "../evidence/module.h"
#include "../sensors/sensor.h"
#include "../model/fan_start.h"

static const double GREATEST_HIDDEN_OHM = 1e6;

struct point {
  double r_ohm;
  double v;
  double ohm_per_k;
  double volt_per_k;
};

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, isfinite(value) ? value : NAN);
}

static ohm_status point_at(const ohm_curve *curve, const struct oc_divider *divider, double t_c,
                           struct point *point) {
  double alpha_per_k;
  ohm_status status = ohm_curve_resistance(curve, t_c, &point->r_ohm);
  if (status == OHM_OK)
    status = ohm_curve_alpha(curve, t_c, &alpha_per_k);
  if (status != OHM_OK)
    return status;
  double pull_up_ohm = oc_divider_pull_up(divider, point->r_ohm);
  double sum_ohm = pull_up_ohm + point->r_ohm;
  bool known = divider->pull_up_ohm > 0;
  point->ohm_per_k = alpha_per_k * point->r_ohm;
  point->v = known ? oc_divided(divider->supply_v, pull_up_ohm, point->r_ohm) : NAN;
  point->volt_per_k =
      known ? divider->supply_v * pull_up_ohm / (sum_ohm * sum_ohm) * point->ohm_per_k : NAN;
  return OHM_OK;
}

static bool is_fan(double on_c, double off_c) {
  return 0 < on_c && on_c < OC_NEVER_C && (isnan(off_c) || (0 < off_c && off_c < on_c));
}

static void tell_hidden(ohm_finding *finding, const ohm_curve *curve, double on_c, double off_c,
                        double hidden_ohm) {
  double start_c = oc_start_behind(curve, on_c, hidden_ohm, 1);
  tell(finding, OHM_FIELD_START_C, start_c);
  tell(finding, OHM_FIELD_LATE_K, start_c - on_c);
  if (isfinite(start_c) && !isnan(off_c))
    tell(finding, OHM_FIELD_FAN_STOP_C, oc_start_behind(curve, off_c, hidden_ohm, 1));
}

ohm_status oc_fanpoint_find(const ohm_sensor *sensor, double on_c, double off_c,
                            const oc_module *module, double hidden_ohm, ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  if (!sensor || !finding)
    return OHM_NULL_ARGUMENT;
  struct oc_input input;
  struct point on;
  struct point off = {NAN, NAN, NAN, NAN};
  if (isnan(on_c) || isnan(hidden_ohm))
    return OHM_BAD_ARGUMENT;
  if (!is_fan(on_c, off_c) || !oc_inside(0, hidden_ohm, GREATEST_HIDDEN_OHM))
    return OHM_OUT_OF_RANGE;
  ohm_status status = oc_input_of(module, &input);
  if (status != OHM_OK)
    return status;
  input.divider.changeover_ohm = oc_curve_resistance_beyond(sensor->curve, input.changeover_c);
  status = point_at(sensor->curve, &input.divider, on_c, &on);
  if (status == OHM_OK && !isnan(off_c))
    status = point_at(sensor->curve, &input.divider, off_c, &off);
  if (status != OHM_OK)
    return status;
  oc_finding_set_about(finding, OHM_VERB_FANPOINT);
  oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_ALONE);
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(sensor));
  tell(finding, OHM_FIELD_ON_C, on_c);
  tell(finding, OHM_FIELD_OFF_C, off_c);
  tell(finding, OHM_FIELD_ON_OHM, on.r_ohm);
  tell(finding, OHM_FIELD_OFF_OHM, off.r_ohm);
  tell(finding, OHM_FIELD_ON_VOLT, on.v);
  tell(finding, OHM_FIELD_OFF_VOLT, off.v);
  tell(finding, OHM_FIELD_OHM_PER_K, on.ohm_per_k);
  tell(finding, OHM_FIELD_VOLT_PER_K, on.volt_per_k);
  tell(finding, OHM_FIELD_HIDDEN_OHM, hidden_ohm);
  if (input.divider.pull_up_ohm > 0) {
    tell(finding, OHM_FIELD_SUPPLY_VOLT, input.divider.supply_v);
    tell(finding, OHM_FIELD_PULL_UP_OHM, oc_divider_pull_up(&input.divider, on.r_ohm));
  }
  if (oc_curve_falls(sensor->curve))
    tell_hidden(finding, sensor->curve, on_c, off_c, hidden_ohm);
  return OHM_OK;
}

/* ---- the verb ---- */

static ohm_status ask_reach(const struct oc_request *ask, const char *what, double t_c) {
  double r_ohm;
  if (isnan(t_c) ||
      ohm_curve_resistance(ohm_sensor_curve(ask->bench->sensor), t_c, &r_ohm) == OHM_OK)
    return OHM_OK;
  return oc_request_refuse_reach(ask, what, t_c);
}

ohm_answer *ohm_bench_fanpoint(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  ohm_status status = oc_request_begin(&ask, bench, "fanpoint", error);
  if (status == OHM_OK)
    status = oc_request_sensor(&ask);
  if (status != OHM_OK)
    return NULL;
  double on_c = oc_request_number(&ask, OHM_SETTING_FAN_C, OC_ASSUMED_FAN_C);
  double off_c = oc_request_number(&ask, OHM_SETTING_OFF_C, NAN);
  double hidden_ohm = oc_request_number(&ask, OHM_SETTING_HIDDEN_OHM, OC_ASSUMED_HIDDEN_OHM);
  if (off_c >= on_c)
    status = oc_fail(error, OHM_BAD_ARGUMENT, "a fan stops below where it starts: set off_c lower ",
                     "than fan_c", (const char *)NULL);
  if (status == OHM_OK)
    status = ask_reach(&ask, "where the fan starts", on_c);
  if (status == OHM_OK)
    status = ask_reach(&ask, "where the fan stops", off_c);
  if (status != OHM_OK)
    return NULL;
  oc_module module = oc_request_module(&ask);
  ohm_answer *answer = oc_answer_new(error);
  if (answer)
    status = oc_request_told(
        &ask, oc_fanpoint_find(bench->sensor, on_c, off_c, &module, hidden_ohm, &answer->whole));
  return oc_answer_done(answer, status, error);
}
