/* SPDX-License-Identifier: MIT */
#include "path_point.h"

#include "bath.h"

#include "../model/hidden.h"
#include "../evidence/reference.h"

static const double GREATEST_MOVED_K = 20;

/* ---- how strictly ---- */

ohm_status oc_strictness_of(const oc_pin *pin, struct oc_strictness *strictness) {
  static const oc_pin all_default = OC_PIN_INIT;
  pin = pin ? pin : &all_default;
  if (!isfinite(pin->level) || !isfinite(pin->fan_c) || !isfinite(pin->limit_k) ||
      !isfinite(pin->moved_limit_k) || !oc_inside(OC_ASSUMED, pin->moved, OC_EXACT))
    return OHM_BAD_ARGUMENT;
  *strictness =
      (struct oc_strictness){.level = pin->level == 0 ? OC_ASSUMED_LEVEL : pin->level,
                             .fan_c = pin->fan_c == 0 ? OC_ASSUMED_FAN_C : pin->fan_c,
                             .limit_k = pin->limit_k == 0 ? OC_ASSUMED_FAN_LIMIT_K : pin->limit_k,
                             .moved_limit_k = pin->moved == OC_STATED    ? pin->moved_limit_k
                                              : pin->moved == OC_ASSUMED ? OC_ASSUMED_MOVED_LIMIT_K
                                                                         : 0,
                             .fan_assumed = pin->fan_c == 0,
                             .limit_assumed = pin->limit_k == 0,
                             .moved_assumed = pin->moved == OC_ASSUMED};
  bool good = 0.5 < strictness->level && strictness->level < 1 && 0 < strictness->fan_c &&
              strictness->fan_c < OC_NEVER_C && 0 < strictness->limit_k &&
              strictness->limit_k <= OC_MOST_LIMIT_K &&
              oc_inside(0, strictness->moved_limit_k, GREATEST_MOVED_K);
  return good ? OHM_OK : OHM_OUT_OF_RANGE;
}

/* ---- kelvins as ohms ---- */

/* Ohm that a kelvin is worth at a resistance; beyond its range, at the nearer end. */
double oc_per_kelvin(const ohm_curve *curve, double r_ohm) {
  double low_c;
  double high_c;
  double at_low_ohm;
  double at_high_ohm;
  double t_c;
  double alpha_per_k = 0;
  ohm_curve_range(curve, &low_c, &high_c, &at_low_ohm, &at_high_ohm);
  double least_ohm = fmin(at_low_ohm, at_high_ohm);
  double most_ohm = fmax(at_low_ohm, at_high_ohm);
  double within_ohm = fmin(fmax(r_ohm, least_ohm), most_ohm);
  if (ohm_curve_temperature(curve, within_ohm, &t_c) == OHM_OK)
    ohm_curve_alpha(curve, t_c, &alpha_per_k);
  return fabs(alpha_per_k) * r_ohm;
}

static void add_kelvins(struct oc_budget *r_ohm, enum oc_cause_name name, const ohm_curve *curve,
                        double limit_k) {
  oc_budget_add_limit(r_ohm, name, limit_k * oc_per_kelvin(curve, r_ohm->value));
}

ohm_status oc_reported_ohms(const ohm_curve *curve, const oc_reported *reported,
                            struct oc_budget *r_ohm, bool *assumed) {
  struct oc_budget t_c;
  double value_ohm;
  ohm_status status = oc_reported_budget(reported, &t_c, assumed);
  if (status == OHM_OK)
    status = ohm_curve_resistance(curve, t_c.value, &value_ohm);
  if (status != OHM_OK)
    return status;
  *r_ohm = oc_budget_of(value_ohm);
  for (size_t i = 0; i < t_c.count; i++)
    add_kelvins(r_ohm, t_c.causes[i].name, curve, oc_cause_limit(&t_c.causes[i]));
  return OHM_OK;
}

/* ---- what was taken ---- */

static ohm_status take_reading(struct oc_path *path, const oc_reading *reading,
                               const oc_meter *meter) {
  ohm_status status = oc_meter_budget(meter, reading, &path->at_sensor.r_ohm, &path->meter_assumed);
  path->at_sensor.given = status == OHM_OK && path->at_sensor.r_ohm.value > 0;
  if (status == OHM_OUT_OF_RANGE && reading->display != OC_DISPLAY_VALUE) {
    path->display = (oc_display)reading->display;
    return OHM_OK;
  }
  return status;
}

/* Degrees beyond the curve are told, and mean no resistance. */
static ohm_status take_reported(struct oc_path *path, const oc_reported *reported) {
  struct oc_budget t_c;
  ohm_status status = oc_reported_budget(reported, &t_c, &path->reported_assumed);
  if (status != OHM_OK)
    return status;
  path->shown_c = reported->t_c;
  path->moves = (oc_moves)reported->moves;
  path->rounding_assumed = reported->rounding == OC_ROUNDING_NOT_TOLD;
  path->at_gauge.given = oc_reported_ohms(path->curve, reported, &path->at_gauge.r_ohm,
                                          &path->reported_assumed) == OHM_OK;
  return OHM_OK;
}

/* The nominal resistance there, with what the maker allows. */
static ohm_status take_reference(struct oc_path *path, const oc_reference *reference) {
  struct oc_budget at_c;
  ohm_status status = oc_reference_budget(reference, &at_c, &path->reference_assumed);
  path->reference_kind = (ohm_reference_kind)reference->kind;
  double low_ohm = NAN;
  double nominal_ohm = NAN;
  double high_ohm = NAN;
  if (status != OHM_OK)
    return status;
  ohm_status band = ohm_sensor_band(path->sensor, at_c.value, &low_ohm, &nominal_ohm, &high_ohm);
  if (isnan(nominal_ohm))
    return OHM_OUT_OF_RANGE;
  double half_ohm = band == OHM_OK ? fmax(high_ohm - nominal_ohm, nominal_ohm - low_ohm)
                                   : OC_ASSUMED_TOLERANCE_PERCENT / 100 * nominal_ohm;
  struct oc_budget *r_ohm = &path->by_thermometer.r_ohm;
  *r_ohm = oc_budget_of(nominal_ohm);
  oc_budget_add_limit(r_ohm, OC_CAUSE_BAND, half_ohm);
  double slope = oc_per_kelvin(path->curve, nominal_ohm);
  for (size_t i = 0; i < at_c.count; i++) {
    const struct oc_cause *cause = &at_c.causes[i];
    if (cause->shape == OC_NORMAL)
      oc_budget_add_normal(r_ohm, cause->name, slope * cause->u);
    else
      oc_budget_add_limit(r_ohm, cause->name, slope * oc_cause_limit(cause));
  }
  path->by_thermometer.given = true;
  return OHM_OK;
}

/* dR of the limits of volts, supply and pull-up. */
static struct oc_budget seen_by(const struct oc_path *path, double r_ohm, double pull_up_ohm) {
  double supply_v = path->input.divider.supply_v;
  double v = path->volts.value;
  double rest_v = supply_v - v;
  struct oc_budget seen = oc_budget_of(r_ohm);
  double limit_v = oc_cause_limit(&path->volts.causes[0]); /* 0 of one without error */
  oc_budget_add_limit(&seen, OC_CAUSE_VOLTS, pull_up_ohm * supply_v / (rest_v * rest_v) * limit_v);
  oc_budget_add_limit(&seen, OC_CAUSE_SUPPLY,
                      pull_up_ohm * v / (rest_v * rest_v) * path->input.supply_limit_v);
  oc_budget_add_limit(&seen, OC_CAUSE_PULL_UP, r_ohm * path->input.pull_up_share);
  return seen;
}

/* Which range is told, or follows from what else is known; else neither. */
static oc_range range_of(const struct oc_path *path) {
  const struct oc_path_point *hint = path->at_gauge.given ? &path->at_gauge : &path->at_sensor;
  if (path->input.range != OC_RANGE_NOT_TOLD || !hint->given)
    return path->input.range;
  return hint->r_ohm.value < path->input.divider.changeover_ohm ? OC_RANGE_HOT : OC_RANGE_COLD;
}

static void solve_volts(struct oc_path *path) {
  double r_ohm[OC_RANGES_MAX];
  double pull_up_ohm[OC_RANGES_MAX];
  struct oc_divider divider = path->input.divider;
  oc_range range = range_of(path);
  if (divider.hot_pull_up_ohm > 0 && range != OC_RANGE_NOT_TOLD) {
    if (range == OC_RANGE_HOT)
      divider.pull_up_ohm = divider.hot_pull_up_ohm;
    divider.hot_pull_up_ohm = 0;
  }
  path->solutions = oc_divider_solve(&divider, path->volts.value, r_ohm, pull_up_ohm);
  if (path->solutions == 0)
    return;
  path->pull_up_ohm = pull_up_ohm[0];
  path->at_pin.r_ohm = seen_by(path, r_ohm[0], pull_up_ohm[0]);
  path->at_pin.given = path->solutions == 1;
  if (path->solutions == OC_RANGES_MAX) {
    path->other_ohm = r_ohm[1];
    path->other_pull_up_ohm = pull_up_ohm[1];
  }
}

bool oc_path_is_open(const struct oc_path *path) {
  return path->has_volts && path->volts.value >= path->input.open_v;
}

bool oc_path_is_shorted(const struct oc_path *path) {
  return path->has_volts && path->volts.value <= path->input.short_v;
}

static ohm_status take_volts(struct oc_path *path, const oc_volts *volts) {
  ohm_status status = oc_volts_budget(volts, &path->volts, &path->volts_assumed);
  if (status != OHM_OK)
    return status;
  if (path->input.divider.pull_up_ohm == 0)
    return OHM_BAD_ARGUMENT;
  path->has_volts = true;
  path->negative = (ohm_negative)volts->negative;
  path->input.divider.changeover_ohm =
      oc_curve_resistance_beyond(path->curve, path->input.changeover_c);
  if (!oc_path_is_open(path) && !oc_path_is_shorted(path))
    solve_volts(path);
  return OHM_OK;
}

static ohm_status judge_sensor(struct oc_path *path, const oc_reading *reading,
                               const oc_meter *meter, const oc_reference *reference) {
  oc_check check = OC_CHECK_INIT;
  check.level = path->strict.level;
  check.place = OHM_PLACE_SENSOR;
  path->judged = true;
  return oc_bath_check(path->sensor, reading, meter, reference, &check, &path->bath);
}

ohm_status oc_path_take(struct oc_path *path, const ohm_sensor *sensor, const oc_module *module,
                        const oc_reading *reading, const oc_meter *meter, const oc_volts *volts,
                        const oc_reported *reported, const oc_reference *reference,
                        const oc_pin *pin, struct oc_arena *arena) {
  *path = (struct oc_path){
      .sensor = sensor, .curve = sensor->curve, .shown_c = NAN, .bath = oc_finding_in(arena)};
  ohm_status status = oc_strictness_of(pin, &path->strict);
  if (status == OHM_OK)
    status = oc_input_of(module, &path->input);
  if (status == OHM_OK && reading)
    status = take_reading(path, reading, meter);
  if (status == OHM_OK && reported)
    status = take_reported(path, reported);
  if (status == OHM_OK && reference)
    status = take_reference(path, reference);
  if (status == OHM_OK && volts)
    status = take_volts(path, volts);
  if (status == OHM_OK && reading && reference)
    status = judge_sensor(path, reading, meter, reference);
  return status;
}

oc_pin oc_request_pin(const struct oc_request *ask) {
  oc_pin pin = OC_PIN_INIT;
  double moved_k = oc_request_number(ask, OHM_SETTING_MOVED_K, NAN);
  pin.level = oc_request_number(ask, OHM_SETTING_LEVEL, 0);
  pin.fan_c = oc_request_number(ask, OHM_SETTING_FAN_C, 0);
  pin.limit_k = oc_request_number(ask, OHM_SETTING_LIMIT_K, 0);
  if (!isnan(moved_k)) {
    pin.moved = OC_STATED;
    pin.moved_limit_k = moved_k;
  }
  return pin;
}
