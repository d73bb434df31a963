/* SPDX-License-Identifier: MIT */
/*
 * Several readings of one sensor. What errs alike in all of them (the meter, the leads,
 * one thermometer) is one variable each; given those, the readings are independent and
 * their probabilities multiply. The three are drawn over by a lattice whose steps are
 * powers of 1/g, g the root of x^4 = x + 1, which fills the cube evenly.
 */
#include "bath.h"

#include "../bench/finding.h"
#include "../model/measurement.h"

enum { READINGS_MAX = 16, LATTICE_POINTS = 4096, BAND_NODES = 33 };

/* What is asked of every reading. */
struct question {
  const ohm_sensor *sensor;
  const oc_meter *meter;
  const oc_check *check;
  double level;
  double limit_k;
};

/* ---- one reading among several ---- */

struct limits {
  double low_ohm;
  double high_ohm;
};

struct member {
  const struct ohm_finding *finding;
  const oc_reading *reading;
  const oc_reference *reference;
  double meter_ohm; /* limits of the common causes */
  double lead_ohm;
  double thermometer_k;
  struct oc_spread own;           /* the rest, as resistance */
  struct limits band[BAND_NODES]; /* over the thermometer's error */
};

static bool is_one_thermometer(int kind) {
  return kind == OHM_REFERENCE_THERMOMETER || kind == OHM_REFERENCE_INFRARED;
}

static void divide_causes(struct member *member, const struct oc_measurement *measurement) {
  struct oc_budget own = oc_budget_of(measurement->read.value);
  double alpha_per_k;
  if (ohm_curve_alpha(measurement->curve, measurement->bath.value, &alpha_per_k) != OHM_OK)
    alpha_per_k = 0;
  double ohm_per_k = fabs(alpha_per_k) * measurement->read.value;
  for (size_t i = 0; i < measurement->read.count; i++) {
    const struct oc_cause *cause = &measurement->read.causes[i];
    if (cause->name == OC_CAUSE_LEADS)
      member->lead_ohm = oc_cause_limit(cause);
    else
      member->meter_ohm = oc_cause_limit(cause);
  }
  bool common = is_one_thermometer(measurement->reference->kind);
  for (size_t i = 0; i < measurement->element.count; i++) {
    const struct oc_cause *cause = &measurement->element.causes[i];
    if (cause->shape == OC_NORMAL)
      oc_budget_add_normal(&own, cause->name, cause->u * ohm_per_k);
    else if (common && cause->name == OC_CAUSE_REFERENCE_LIMIT)
      member->thermometer_k = oc_cause_limit(cause);
    else
      oc_budget_add_limit(&own, cause->name, oc_cause_limit(cause) * ohm_per_k);
  }
  member->own = oc_spread_of(&own);
}

static void fill_bands(struct member *member, const struct oc_measurement *measurement) {
  for (int i = 0; i < BAND_NODES; i++) {
    double error = 2.0 * i / (BAND_NODES - 1) - 1;
    struct oc_band band =
        oc_tolerance_band(measurement->curve, &measurement->tolerance,
                          measurement->element.value + error * member->thermometer_k);
    member->band[i] = (struct limits){band.low_ohm, band.high_ohm};
  }
}

/* A measurement is asked again instead of kept: sixteen are too large for a stack. Readings
 * that are not judged together need no more of it than the question. */
static void look_at(struct member *member, struct question *question, bool together) {
  struct oc_measurement measurement;
  oc_measurement_ask(&measurement, question->sensor, member->reading, question->meter,
                     member->reference, question->check);
  question->level = measurement.level;
  question->limit_k = measurement.limit_k;
  if (!together)
    return;
  divide_causes(member, &measurement);
  fill_bands(member, &measurement);
}

/* Between nodes that lie so near, limits are straight. */
static struct limits band_at(const struct member *member, double error) {
  double place = (error + 1) / 2 * (BAND_NODES - 1);
  int node = (int)fmin(floor(place), BAND_NODES - 2);
  double part = place - node;
  const struct limits *a = &member->band[node];
  const struct limits *b = a + 1;
  return (struct limits){a->low_ohm + part * (b->low_ohm - a->low_ohm),
                         a->high_ohm + part * (b->high_ohm - a->high_ohm)};
}

/* ---- all together ---- */

struct joint {
  double within;
  double none_low;
  double none_high;
};

/* The common errors, each from -1 to 1 of its limit. */
struct errors {
  double meter;
  double lead;
  double thermometer;
};

static struct joint at_errors(const struct member *members, size_t count,
                              const struct errors *errors) {
  struct joint p = {1, 1, 1};
  for (size_t i = 0; i < count; i++) {
    const struct member *member = &members[i];
    struct limits band = band_at(member, errors->thermometer);
    struct oc_spread own = member->own;
    own.value += errors->meter * member->meter_ohm + errors->lead * member->lead_ohm;
    double low = oc_spread_below(&own, band.low_ohm);
    double not_high = oc_spread_below(&own, band.high_ohm);
    p.within *= fmax(0, not_high - low);
    p.none_low *= 1 - low;
    p.none_high *= not_high;
  }
  return p;
}

static double lattice_at(int point, double step) {
  double place = 0.5 + point * step;
  return 2 * (place - floor(place)) - 1;
}

static struct joint over_common_causes(const struct member *members, size_t count) {
  struct joint sum = {0, 0, 0};
  for (int point = 0; point < LATTICE_POINTS; point++) {
    const struct errors errors = {lattice_at(point, 0.81917251339616443),
                                  lattice_at(point, 0.67104360670378920),
                                  lattice_at(point, 0.54970047790197026)};
    struct joint p = at_errors(members, count, &errors);
    sum.within += p.within;
    sum.none_low += p.none_low;
    sum.none_high += p.none_high;
  }
  return (struct joint){sum.within / LATTICE_POINTS, sum.none_low / LATTICE_POINTS,
                        sum.none_high / LATTICE_POINTS};
}

/* However the lattice falls, all within is no likelier than any one of them, and any low
 * no less likely. */
static void bound_by_each(struct joint *p, const struct member *members, size_t count) {
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *one = members[i].finding;
    p->within = fmin(p->within, ohm_finding_number(one, OHM_FIELD_P_WITHIN));
    p->none_low = fmin(p->none_low, 1 - ohm_finding_number(one, OHM_FIELD_P_LOW));
    p->none_high = fmin(p->none_high, 1 - ohm_finding_number(one, OHM_FIELD_P_HIGH));
  }
}

static void judge_together(ohm_finding *finding, const struct member *members, size_t count,
                           double level) {
  struct joint p = over_common_causes(members, count);
  bound_by_each(&p, members, count);
  oc_finding_set_number(finding, OHM_FIELD_P_WITHIN, p.within);
  oc_finding_set_number(finding, OHM_FIELD_P_LOW, 1 - p.none_low);
  oc_finding_set_number(finding, OHM_FIELD_P_HIGH, 1 - p.none_high);
  if (1 - p.none_high >= level)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  else if (1 - p.none_low >= level)
    oc_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_LOW);
  else if (p.within >= level)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* A reading with no probabilities of its own speaks for all: a fault seen once is a
 * fault, and a question has to be answered first. */
static const struct member *spokesman(const struct member *members, size_t count) {
  const struct member *found = NULL;
  for (size_t i = 0; i < count; i++) {
    bool speaks = isnan(ohm_finding_number(members[i].finding, OHM_FIELD_P_WITHIN)) ||
                  oc_finding_reason(members[i].finding) == OHM_REASON_PLUG_ON ||
                  oc_finding_reason(members[i].finding) == OHM_REASON_SHORTED;
    bool outside = ohm_finding_verdict(members[i].finding) == OHM_OUTSIDE;
    if (speaks && (!found || outside))
      found = &members[i];
  }
  return found;
}

/* ---- the fan ---- */

static double or_infinity(double x) {
  return isnan(x) ? INFINITY : x;
}

static const ohm_field late_fields[] = {OHM_FIELD_SERIES_OHM, OHM_FIELD_SERIES_LATE_K,
                                        OHM_FIELD_SERIES_SOUND_LATE_K, OHM_FIELD_LATE_K};
static const ohm_field early_fields[] = {OHM_FIELD_LEAKAGE_OHM, OHM_FIELD_LEAKAGE_EARLY_K,
                                         OHM_FIELD_LEAKAGE_SOUND_EARLY_K, OHM_FIELD_EARLY_K};

static void copy_fields(ohm_finding *to, const ohm_finding *from, const ohm_field *fields,
                        size_t count) {
  for (size_t i = 0; i < count; i++)
    oc_finding_set_number(to, fields[i], ohm_finding_number(from, (int)fields[i]));
}

static void judge_job(ohm_finding *finding, double limit_k, bool outside, ohm_job_reason why) {
  double late_k = or_infinity(ohm_finding_number(finding, OHM_FIELD_LATE_K));
  double early_k = or_infinity(ohm_finding_number(finding, OHM_FIELD_EARLY_K));
  if (outside)
    oc_finding_set_job(finding, OHM_OUTSIDE, why);
  else if (late_k <= limit_k && early_k <= limit_k)
    oc_finding_set_job(finding, OHM_WITHIN, OHM_JOB_CONFORMS);
  else
    oc_finding_set_job(finding, OHM_UNDECIDED, OHM_JOB_UNCERTAIN);
}

/* Of each direction the reading that leaves least. Each is asked at a level that
 * leaves the level to all of them together, whatever their errors have in common
 * (Bonferroni). */
static void tell_job(ohm_finding *finding, const struct member *members, size_t count,
                     const struct question *question) {
  oc_check stricter = question->check ? *question->check : (oc_check)OC_CHECK_INIT;
  stricter.level = 1 - (1 - question->level) / (double)count;
  bool outside = false;
  bool any = false;
  ohm_job_reason why = OHM_JOB_UNCERTAIN;
  for (size_t i = 0; i < count; i++) {
    ohm_finding one = oc_finding_in(finding->arena);
    if (oc_bath_check(question->sensor, members[i].reading, question->meter, members[i].reference,
                      &stricter, &one) != OHM_OK ||
        !ohm_finding_text(&one, OHM_FIELD_JOB, 0))
      continue;
    if (!any || or_infinity(ohm_finding_number(&one, OHM_FIELD_LATE_K)) <
                    or_infinity(ohm_finding_number(finding, OHM_FIELD_LATE_K)))
      copy_fields(finding, &one, late_fields, sizeof late_fields / sizeof late_fields[0]);
    if (!any || or_infinity(ohm_finding_number(&one, OHM_FIELD_EARLY_K)) <
                    or_infinity(ohm_finding_number(finding, OHM_FIELD_EARLY_K)))
      copy_fields(finding, &one, early_fields, sizeof early_fields / sizeof early_fields[0]);
    any = true;
    if (ohm_finding_job(&one) == OHM_OUTSIDE) {
      outside = true;
      why = oc_finding_job_reason(&one);
    }
  }
  if (any)
    judge_job(finding, question->limit_k, outside, why);
}

/* The reading whose own fields stand for all: the one that says most about the fan. */
static const struct member *plainest(const struct member *members, size_t count) {
  const struct member *best = &members[0];
  for (size_t i = 1; i < count; i++)
    if (or_infinity(ohm_finding_number(members[i].finding, OHM_FIELD_LATE_K)) <
        or_infinity(ohm_finding_number(best->finding, OHM_FIELD_LATE_K)))
      best = &members[i];
  return best;
}

/* ---- repeats ---- */

static bool is_repeat(const oc_reference *a, const oc_reference *b) {
  return a->kind == b->kind && a->t_c == b->t_c && a->altitude_m == b->altitude_m &&
         a->pressure_hpa == b->pressure_hpa;
}

/* What the last two readings of one bath differ by, when that is more than a count. */
static double still_moving(const oc_reading *readings, size_t last) {
  const oc_reading *now = &readings[last];
  const oc_reading *before = &readings[last - 1];
  if (now->display != OC_DISPLAY_VALUE || before->display != OC_DISPLAY_VALUE)
    return 0;
  double moved = fabs(now->r_ohm - before->r_ohm);
  double count = fmax(now->resolution_ohm, before->resolution_ohm);
  return moved > count * (1 + 1e-9) ? moved : 0;
}

ohm_status oc_bath_check_several(const ohm_sensor *sensor, const oc_reading *readings,
                                 const oc_reference *references, size_t count,
                                 const oc_meter *meter, const oc_check *check,
                                 ohm_finding *findings, ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  for (size_t i = 0; findings && count <= READINGS_MAX && i < count; i++)
    oc_finding_clear(&findings[i]);
  if (!sensor || !readings || !references || !findings || !finding)
    return OHM_NULL_ARGUMENT;
  if (count == 0)
    return OHM_BAD_ARGUMENT;
  if (count > READINGS_MAX)
    return OHM_TOO_LARGE;
  struct member members[READINGS_MAX];
  size_t kept = 0;
  double moved_ohm = 0;
  for (size_t i = 0; i < count; i++) {
    ohm_status status =
        oc_bath_check(sensor, &readings[i], meter, &references[i], check, &findings[i]);
    if (status != OHM_OK) {
      for (size_t j = 0; j < i; j++)
        oc_finding_clear(&findings[j]);
      return status;
    }
    bool repeated = i + 1 < count && is_repeat(&references[i], &references[i + 1]);
    if (repeated)
      continue;
    if (i > 0 && is_repeat(&references[i - 1], &references[i]))
      moved_ohm = fmax(moved_ohm, still_moving(readings, i));
    members[kept++] = (struct member){
        .finding = &findings[i], .reading = &readings[i], .reference = &references[i]};
  }
  const struct member *speaker = spokesman(members, kept);
  *finding = speaker ? *speaker->finding : *plainest(members, kept)->finding;
  oc_finding_set_number(finding, OHM_FIELD_READINGS, (double)count);
  if (moved_ohm > 0) {
    oc_finding_set_number(finding, OHM_FIELD_MOVED_OHM, moved_ohm);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MOVING);
    return OHM_OK;
  }
  if (kept == 1)
    return OHM_OK;
  struct question question = {.sensor = sensor, .meter = meter, .check = check};
  for (size_t i = 0; i < kept; i++)
    look_at(&members[i], &question, !speaker);
  if (!speaker)
    judge_together(finding, members, kept, question.level);
  /* A question that silences the fan in one reading silences it in all. */
  if (!speaker || ohm_finding_text(finding, OHM_FIELD_JOB, 0))
    tell_job(finding, members, kept, &question);
  return OHM_OK;
}
