/* SPDX-License-Identifier: MIT */
#include "likelihood.h"

#include "../arithmetic/distribution.h"
#include "contributions.h"

/* No finer step of a fault's size than this shows in a reading. */
static const double SMALL_CHANGE = 1e-4;

enum { BAND_NODES = 12 * OC_PANEL_NODES };

static const struct oc_fault sound = {OC_FAULT_DRIFT, 0};

/* ---- gathering ---- */

double oc_evidence_shared(const struct oc_evidence_reading *a,
                          const struct oc_evidence_reading *b) {
  double meter = a->range == b->range ? a->u_meter * b->u_meter : 0;
  return meter + a->u_leads * b->u_leads;
}

/* Printed limits are not continued here: one row of 1 % says nothing 80 K further up. */
static const struct oc_tolerance *tolerance_of(const struct oc_measurement *measurement) {
  static const struct oc_tolerance assumed = {.kind = OC_TOLERANCE_PERCENT,
                                              .percent = OC_ASSUMED_TOLERANCE_PERCENT};
  return measurement->covered == OHM_OK ? &measurement->tolerance : &assumed;
}

static void take_band(struct oc_evidence_reading *reading,
                      const struct oc_measurement *measurement) {
  const struct oc_tolerance *tolerance = tolerance_of(measurement);
  struct oc_band band = oc_tolerance_band(measurement->curve, tolerance, reading->at_c);
  reading->up = log(band.high_ohm / band.nominal_ohm);
  reading->down = log(band.low_ohm / band.nominal_ohm);
}

static bool reaches(const struct oc_measurement *measurement) {
  double low_c;
  double high_c;
  ohm_curve_range(measurement->curve, &low_c, &high_c, NULL, NULL);
  double slack_k = oc_budget_u(&measurement->bath);
  return oc_inside(low_c - slack_k, measurement->bath.value, high_c + slack_k);
}

/* The meter's ranges are taken to err each its own way: that two of them differ is then never
 * a fault. Nor is it known that this is the curve of the part: it may be off by all of the scatter,
 * however little is allowed. */
static void take(struct oc_evidence *evidence, const struct oc_measurement *measurement) {
  struct oc_contributions by = oc_contributions_of(measurement);
  struct oc_evidence_reading *reading = &evidence->readings[evidence->count++];
  *reading = (struct oc_evidence_reading){
      .log_ohm = by.log_ohm,
      .at_c = by.at_c,
      .log_nominal = log(oc_curve_resistance_beyond(measurement->curve, by.at_c)),
      .thermometer_k = by.thermometer_k,
      .u_display = by.u_counts,
      .u_meter = by.meter / sqrt(3),
      .u_leads = by.leads / sqrt(3),
      .range = by.range};
  take_band(reading, measurement);
  reading->u_own = hypot(by.u_bath, OC_SCATTER);
  if (evidence->count == 1 || reading->at_c > evidence->readings[evidence->hottest].at_c) {
    evidence->hottest = evidence->count - 1;
    evidence->tolerance = *tolerance_of(measurement);
  }
  evidence->covered = evidence->covered && reaches(measurement);
  evidence->toleranced = evidence->toleranced && measurement->tolerance.kind != OC_TOLERANCE_NONE;
}

/* Nodes as close as the narrowest thing to be seen asks for: a panel in the logarithm of
 * the resistance may be no wider than a few of what so many readings together leave of
 * the scatter. */
static size_t panels_for(double width, size_t count, size_t most) {
  double narrowest = OC_SCATTER / sqrt(fmax(1, (double)count));
  return (size_t)fmin(fmax(ceil(width / (8 * narrowest)), 2), (double)most);
}

static double widest_swing(const struct oc_evidence *evidence) {
  double widest = 0;
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    double swing =
        log(oc_curve_resistance_beyond(evidence->curve, reading->at_c - reading->thermometer_k) /
            oc_curve_resistance_beyond(evidence->curve, reading->at_c + reading->thermometer_k));
    widest = fmax(widest, fabs(swing));
  }
  return widest;
}

static double widest_band(const struct oc_evidence *evidence) {
  double widest = 0;
  for (size_t i = 0; i < evidence->count; i++)
    widest = fmax(widest, fmax(evidence->readings[i].up, -evidence->readings[i].down));
  return widest;
}

static void draw_thermometer(struct oc_evidence *evidence) {
  double widest = widest_swing(evidence);
  evidence->nodes = 1;
  evidence->thermometer[0] = 0;
  evidence->weight[0] = 1;
  if (widest > 0) {
    size_t panels = panels_for(widest, evidence->count, OC_EVIDENCE_NODES / OC_PANEL_NODES);
    evidence->nodes = panels * OC_PANEL_NODES;
    oc_quadrature_fill(-1, 1, panels, evidence->thermometer, evidence->weight);
    for (size_t k = 0; k < evidence->nodes; k++)
      evidence->weight[k] /= 2;
  }
  for (size_t k = 0; k < evidence->nodes; k++)
    for (size_t i = 0; i < evidence->count; i++) {
      const struct oc_evidence_reading *reading = &evidence->readings[i];
      evidence->log_nominal[k][i] = log(oc_curve_resistance_beyond(
          evidence->curve, reading->at_c + evidence->thermometer[k] * reading->thermometer_k));
    }
}

ohm_status oc_evidence_take(struct oc_evidence *evidence, const ohm_sensor *sensor,
                            const oc_reading *readings, const oc_reference *references,
                            size_t count, const oc_meter *meter, const oc_check *check) {
  evidence->curve = ohm_sensor_curve(sensor);
  evidence->count = 0;
  evidence->covered = true;
  evidence->toleranced = true;
  for (size_t i = 0; i < count; i++) {
    struct oc_measurement measurement;
    ohm_status status =
        oc_measurement_ask(&measurement, sensor, &readings[i], meter, &references[i], check);
    if (status != OHM_OK)
      return status;
    evidence->level = measurement.level;
    if (measurement.has_number && measurement.read.value > 0)
      take(evidence, &measurement);
  }
  return OHM_OK;
}

ohm_status oc_evidence_gather(struct oc_evidence *evidence, const ohm_sensor *sensor,
                              const oc_reading *readings, const oc_reference *references,
                              size_t count, const oc_meter *meter, const oc_check *check) {
  ohm_status status = oc_evidence_take(evidence, sensor, readings, references, count, meter, check);
  if (status == OHM_OK)
    draw_thermometer(evidence);
  return status;
}

/* ---- the readings as a fault shows them ---- */

/* The readings' errors at one fault, made independent. */
struct view {
  const struct oc_evidence *evidence;
  const struct oc_fault *fault;
  struct oc_gaussian errors;
  double up[OC_EVIDENCE_MAX]; /* a whole half-band, seen through the fault */
  double down[OC_EVIDENCE_MAX];
};

static double temperature_at(const struct oc_evidence_reading *reading, double error) {
  return reading->at_c + error * reading->thermometer_k;
}

static bool open_view(struct view *view, const struct oc_evidence *evidence,
                      const struct oc_fault *fault) {
  view->evidence = evidence;
  view->fault = fault;
  view->errors.count = evidence->count;
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    double log_nominal = reading->log_nominal;
    double at = oc_fault_log(fault, log_nominal, reading->at_c);
    double beside = oc_fault_log(fault, log_nominal + SMALL_CHANGE, reading->at_c);
    double slope = (beside - at) / SMALL_CHANGE;
    view->up[i] = oc_fault_log(fault, log_nominal + reading->up, reading->at_c) - at;
    view->down[i] = oc_fault_log(fault, log_nominal + reading->down, reading->at_c) - at;
    if (!isfinite(view->up[i] + view->down[i] + slope))
      return false;
    for (size_t j = 0; j <= i; j++)
      view->errors.factor[i][j] = oc_evidence_shared(reading, &evidence->readings[j]);
    view->errors.factor[i][i] +=
        reading->u_own * reading->u_own * slope * slope + reading->u_display * reading->u_display;
  }
  return true;
}

/* What is read beyond what an error of the thermometer explains. */
static void deviate(const struct view *view, size_t node, double *deviation) {
  const struct oc_evidence *evidence = view->evidence;
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    deviation[i] =
        reading->log_ohm - oc_fault_log(view->fault, evidence->log_nominal[node][i],
                                        temperature_at(reading, evidence->thermometer[node]));
  }
}

static double product(const double *a, const double *b, size_t count) {
  double sum = 0;
  for (size_t i = 0; i < count; i++)
    sum += a[i] * b[i];
  return sum;
}

/* Logarithm of the integral of exp(-|white - z band|^2 / 2) over z from 0 to 1. */
static double log_over_band(const double *white, const double *band, size_t count) {
  double square = product(white, white, count);
  double length = sqrt(product(band, band, count));
  if (length < 1e-9)
    return -square / 2;
  double along = product(white, band, count) / length;
  double across = fmax(0, square - along * along);
  return -across / 2 + OC_LOG_ROOT_TWO_PI - log(length) +
         oc_normal_log_between(-along, length - along);
}

static double log_sum(double a, double b) {
  double greater = fmax(a, b);
  return isinf(greater) ? greater : greater + log1p(exp(fmin(a, b) - greater));
}

double oc_evidence_log_likelihood(const struct oc_evidence *evidence,
                                  const struct oc_fault *fault) {
  struct view view;
  size_t count = evidence->count;
  if (!open_view(&view, evidence, fault ? fault : &sound) || !oc_gaussian_factor(&view.errors))
    return -INFINITY;
  oc_gaussian_whiten(&view.errors, view.up, view.up);
  oc_gaussian_whiten(&view.errors, view.down, view.down);
  double sum = -INFINITY;
  for (size_t k = 0; k < evidence->nodes; k++) {
    double white[OC_EVIDENCE_MAX];
    deviate(&view, k, white);
    oc_gaussian_whiten(&view.errors, white, white);
    double here =
        log_sum(log_over_band(white, view.up, count), log_over_band(white, view.down, count));
    if (!isnan(here))
      sum = log_sum(sum, here + log(evidence->weight[k] / 2));
  }
  return sum + oc_gaussian_log_peak(&view.errors);
}

/* ---- how well they go together ---- */

/* Sums over all that is not known: of each reading the weight that those before it left,
 * and how much of it lies below what was read. */
struct places {
  size_t count;
  double weight[OC_EVIDENCE_MAX];
  double below[OC_EVIDENCE_MAX];
};

/* Add one case of it, of this weight: the readings as independent normal ones. */
static void add_case(struct places *places, const double *white, const double *band, double place,
                     double weight) {
  for (size_t i = 0; i < places->count; i++) {
    double score = white[i] - place * band[i];
    places->weight[i] += weight;
    places->below[i] += weight * oc_normal_below(score);
    weight *= exp(-score * score / 2);
  }
}

/* Every place in the band, at every error of the thermometer. */
static void add_cases(struct places *places, const struct view *view) {
  const struct oc_evidence *evidence = view->evidence;
  double place[BAND_NODES];
  double share[BAND_NODES];
  size_t panels = panels_for(widest_band(evidence), evidence->count, BAND_NODES / OC_PANEL_NODES);
  oc_quadrature_fill(0, 1, panels, place, share);
  for (size_t k = 0; k < evidence->nodes; k++) {
    double white[OC_EVIDENCE_MAX];
    deviate(view, k, white);
    oc_gaussian_whiten(&view->errors, white, white);
    for (size_t j = 0; j < panels * OC_PANEL_NODES; j++) {
      double weight = evidence->weight[k] * share[j] / 2;
      add_case(places, white, view->up, place[j], weight);
      add_case(places, white, view->down, place[j], weight);
    }
  }
}

double oc_evidence_fit(const struct oc_evidence *evidence) {
  struct view view;
  struct places places = {.count = evidence->count};
  if (!open_view(&view, evidence, &sound) || !oc_gaussian_factor(&view.errors))
    return 0;
  oc_gaussian_whiten(&view.errors, view.up, view.up);
  oc_gaussian_whiten(&view.errors, view.down, view.down);
  add_cases(&places, &view);
  double chi_square = 0;
  for (size_t i = 0; i < places.count; i++) {
    if (!(places.weight[i] > 0))
      return 0;
    double score = oc_normal_quantile(fmin(places.below[i] / places.weight[i], 1));
    chi_square += score * score;
  }
  return oc_chi_square_above(chi_square, (double)places.count);
}

/* ---- every cause as normal ---- */

/* Add what one number that is the same for all readings does to their covariance. */
static void add_common(struct oc_gaussian *gaussian, const double *effect, double variance) {
  for (size_t i = 0; i < gaussian->count; i++)
    for (size_t j = 0; j <= i; j++)
      gaussian->factor[i][j] += variance * effect[i] * effect[j];
}

/* The thermometer and the place in the band counted with the errors. */
static bool count_all(struct view *view, double *deviation) {
  const struct oc_evidence *evidence = view->evidence;
  double swing[OC_EVIDENCE_MAX];
  double middle[OC_EVIDENCE_MAX];
  double spread[OC_EVIDENCE_MAX];
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    double ends[2];
    for (int end = 0; end < 2; end++) {
      double t_c = temperature_at(reading, 2.0 * end - 1);
      ends[end] =
          oc_fault_log(view->fault, log(oc_curve_resistance_beyond(evidence->curve, t_c)), t_c);
    }
    swing[i] = (ends[1] - ends[0]) / 2;
    middle[i] = (view->up[i] + view->down[i]) / 4;
    /* Of a number uniform over each half-band with even chances. */
    spread[i] = sqrt((view->up[i] * view->up[i] + view->down[i] * view->down[i]) / 6 -
                     middle[i] * middle[i]);
    deviation[i] = reading->log_ohm -
                   oc_fault_log(view->fault, evidence->readings[i].log_nominal, reading->at_c) -
                   middle[i];
    if (!isfinite(deviation[i] + swing[i]))
      return false;
  }
  add_common(&view->errors, swing, 1.0 / 3);
  add_common(&view->errors, spread, 1);
  return true;
}

double oc_evidence_chi_square(const struct oc_evidence *evidence, const struct oc_fault *fault) {
  struct view view;
  double white[OC_EVIDENCE_MAX];
  if (!open_view(&view, evidence, fault) || !count_all(&view, white) ||
      !oc_gaussian_factor(&view.errors))
    return INFINITY;
  oc_gaussian_whiten(&view.errors, white, white);
  return product(white, white, evidence->count);
}

/* How much a change of the fault's size by one changes each reading. */
static void size_effect(const struct oc_evidence *evidence, const struct oc_fault *fault,
                        double *effect) {
  for (size_t i = 0; i < evidence->count; i++) {
    const struct oc_evidence_reading *reading = &evidence->readings[i];
    effect[i] = oc_fault_slope(fault, reading->log_nominal, reading->at_c);
  }
}

bool oc_evidence_step(const struct oc_evidence *evidence, const struct oc_fault *fault,
                      double *change, double *u) {
  struct view view;
  double white[OC_EVIDENCE_MAX];
  double effect[OC_EVIDENCE_MAX];
  if (!open_view(&view, evidence, fault) || !count_all(&view, white) ||
      !oc_gaussian_factor(&view.errors))
    return false;
  size_effect(evidence, fault, effect);
  oc_gaussian_whiten(&view.errors, white, white);
  oc_gaussian_whiten(&view.errors, effect, effect);
  double square = product(effect, effect, evidence->count);
  *change = product(effect, white, evidence->count) / square;
  *u = 1 / sqrt(square);
  return isfinite(*change) && isfinite(*u);
}

struct oc_forecast oc_evidence_forecast(const struct oc_evidence *evidence,
                                        const struct oc_fault *fault, double u_size) {
  static const struct oc_forecast none = {NAN, NAN};
  struct view view;
  double deviation[OC_EVIDENCE_MAX];
  double white[OC_EVIDENCE_MAX];
  if (!fault)
    fault = &sound;
  if (!open_view(&view, evidence, fault) || !count_all(&view, deviation))
    return none;
  if (u_size > 0) {
    double effect[OC_EVIDENCE_MAX];
    size_effect(evidence, fault, effect);
    add_common(&view.errors, effect, u_size * u_size);
  }
  if (!oc_gaussian_factor(&view.errors))
    return none;
  oc_gaussian_whiten(&view.errors, deviation, white);
  size_t last = evidence->count - 1;
  const double *row = view.errors.factor[last];
  /* What the others say of it, and what is left open. */
  double foretold = product(row, white, last);
  return (struct oc_forecast){evidence->readings[last].log_ohm - deviation[last] + foretold,
                              row[last]};
}
