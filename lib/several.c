/* SPDX-License-Identifier: MIT */
/*
 * Several readings of one sensor. What errs alike in all of them (the meter, the leads,
 * one thermometer) is one variable each, stepped through; given those, the readings are
 * independent and their probabilities multiply. What a step leaves open is counted as
 * each reading's own, so that of a reading alone nothing is lost by stepping.
 */
#include "finding.h"
#include "question.h"

enum { READINGS_MAX = 16, METER_STEPS = 24, LEAD_STEPS = 4, THERMOMETER_STEPS = 32 };

/* ---- one reading among several ---- */

struct member {
  const struct ohm_finding *finding;
  struct ohm_question question;
  double meter_ohm; /* limits of the common causes */
  double lead_ohm;
  double thermometer_k;
  struct ohm_spread own; /* the rest, as resistance */
  struct ohm_band band[THERMOMETER_STEPS];
};

static bool is_one_thermometer(int kind) {
  return kind == OHM_REFERENCE_THERMOMETER || kind == OHM_REFERENCE_INFRARED;
}

/* Middle of a step of -1 to 1. */
static double step_at(int step, int steps) {
  return (2 * step + 1.0) / steps - 1;
}

static void divide_causes(struct member *member) {
  const struct ohm_question *question = &member->question;
  struct ohm_budget own = ohm_budget_of(question->read.value);
  double alpha_per_k;
  if (ohm_curve_alpha(question->curve, question->bath.value, &alpha_per_k) != OHM_OK)
    alpha_per_k = 0;
  double ohm_per_k = fabs(alpha_per_k) * question->read.value;
  for (size_t i = 0; i < question->read.count; i++) {
    const struct ohm_cause *cause = &question->read.causes[i];
    if (cause->name == OHM_CAUSE_LEADS)
      member->lead_ohm = ohm_cause_limit(cause);
    else
      member->meter_ohm = ohm_cause_limit(cause);
  }
  bool common = is_one_thermometer(question->reference->kind);
  for (size_t i = 0; i < question->element.count; i++) {
    const struct ohm_cause *cause = &question->element.causes[i];
    if (cause->shape == OHM_NORMAL)
      ohm_budget_add_normal(&own, cause->name, cause->u * ohm_per_k);
    else if (common && cause->name == OHM_CAUSE_REFERENCE_LIMIT)
      member->thermometer_k = ohm_cause_limit(cause);
    else
      ohm_budget_add_limit(&own, cause->name, ohm_cause_limit(cause) * ohm_per_k);
  }
  ohm_budget_add_limit(&own, OHM_CAUSE_METER, member->meter_ohm / METER_STEPS);
  ohm_budget_add_limit(&own, OHM_CAUSE_LEADS, member->lead_ohm / LEAD_STEPS);
  ohm_budget_add_limit(&own, OHM_CAUSE_REFERENCE_LIMIT,
                       member->thermometer_k * ohm_per_k / THERMOMETER_STEPS);
  member->own = ohm_spread_of(&own);
}

static void fill_bands(struct member *member) {
  const struct ohm_question *question = &member->question;
  for (int i = 0; i < THERMOMETER_STEPS; i++)
    member->band[i] = ohm_tolerance_band(question->curve, &question->tolerance,
                                         question->element.value +
                                             step_at(i, THERMOMETER_STEPS) * member->thermometer_k);
}

/* ---- all together ---- */

struct joint {
  double within;
  double none_low;
  double none_high;
};

static struct joint at_step(const struct member *members, size_t count, double meter, double lead,
                            int thermometer) {
  struct joint p = {1, 1, 1};
  for (size_t i = 0; i < count; i++) {
    struct ohm_spread own = members[i].own;
    own.value += meter * members[i].meter_ohm + lead * members[i].lead_ohm;
    double low = ohm_spread_below(&own, members[i].band[thermometer].low_ohm);
    double not_high = ohm_spread_below(&own, members[i].band[thermometer].high_ohm);
    p.within *= fmax(0, not_high - low);
    p.none_low *= 1 - low;
    p.none_high *= not_high;
  }
  return p;
}

static struct joint over_common_causes(const struct member *members, size_t count) {
  struct joint sum = {0, 0, 0};
  for (int g = 0; g < METER_STEPS; g++)
    for (int l = 0; l < LEAD_STEPS; l++)
      for (int t = 0; t < THERMOMETER_STEPS; t++) {
        struct joint p =
            at_step(members, count, step_at(g, METER_STEPS), step_at(l, LEAD_STEPS), t);
        sum.within += p.within;
        sum.none_low += p.none_low;
        sum.none_high += p.none_high;
      }
  double steps = (double)METER_STEPS * LEAD_STEPS * THERMOMETER_STEPS;
  return (struct joint){sum.within / steps, sum.none_low / steps, sum.none_high / steps};
}

/* However the steps fall, all within is no likelier than any one of them, and any low
 * no less likely. */
static void bound_by_each(struct joint *p, const struct member *members, size_t count) {
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *one = members[i].finding;
    p->within = fmin(p->within, ohm_finding_number(one, OHM_FIELD_P_WITHIN));
    p->none_low = fmin(p->none_low, 1 - ohm_finding_number(one, OHM_FIELD_P_LOW));
    p->none_high = fmin(p->none_high, 1 - ohm_finding_number(one, OHM_FIELD_P_HIGH));
  }
}

static void judge_together(ohm_finding *finding, const struct member *members, size_t count) {
  struct joint p = over_common_causes(members, count);
  bound_by_each(&p, members, count);
  double level = members[0].question.level;
  ohm_finding_set_number(finding, OHM_FIELD_P_WITHIN, p.within);
  ohm_finding_set_number(finding, OHM_FIELD_P_LOW, 1 - p.none_low);
  ohm_finding_set_number(finding, OHM_FIELD_P_HIGH, 1 - p.none_high);
  if (1 - p.none_high >= level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_HIGH);
  else if (1 - p.none_low >= level)
    ohm_finding_set_verdict(finding, OHM_OUTSIDE, OHM_REASON_LOW);
  else if (p.within >= level)
    ohm_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
}

/* A reading with no probabilities of its own speaks for all: a fault seen once is a
 * fault, and a question has to be answered first. */
static const struct member *spokesman(const struct member *members, size_t count) {
  const struct member *found = NULL;
  for (size_t i = 0; i < count; i++) {
    bool speaks = isnan(ohm_finding_number(members[i].finding, OHM_FIELD_P_WITHIN)) ||
                  ohm_finding_reason(members[i].finding) == OHM_REASON_PLUG_ON ||
                  ohm_finding_reason(members[i].finding) == OHM_REASON_SHORTED;
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
    ohm_finding_set_number(to, fields[i], ohm_finding_number(from, (int)fields[i]));
}

static void judge_job(ohm_finding *finding, double limit_k, bool outside, ohm_job_reason why) {
  double late_k = or_infinity(ohm_finding_number(finding, OHM_FIELD_LATE_K));
  double early_k = or_infinity(ohm_finding_number(finding, OHM_FIELD_EARLY_K));
  if (outside)
    ohm_finding_set_job(finding, OHM_OUTSIDE, why);
  else if (late_k <= limit_k && early_k <= limit_k)
    ohm_finding_set_job(finding, OHM_WITHIN, OHM_JOB_CONFORMS);
  else
    ohm_finding_set_job(finding, OHM_UNDECIDED, OHM_JOB_UNCERTAIN);
}

/* Of each direction the reading that leaves least. Each is asked at a level that
 * leaves the level to all of them together, whatever their errors have in common
 * (Bonferroni). */
static void tell_job(ohm_finding *finding, const struct member *members, size_t count,
                     const ohm_check *check) {
  ohm_check stricter = check ? *check : (ohm_check)OHM_CHECK_INIT;
  stricter.level = 1 - (1 - members[0].question.level) / (double)count;
  bool outside = false;
  bool any = false;
  ohm_job_reason why = OHM_JOB_UNCERTAIN;
  for (size_t i = 0; i < count; i++) {
    const struct ohm_question *question = &members[i].question;
    ohm_finding one;
    if (ohm_bath_check(question->sensor, question->reading, question->meter, question->reference,
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
      why = ohm_finding_job_reason(&one);
    }
  }
  if (any)
    judge_job(finding, members[0].question.limit_k, outside, why);
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

static bool is_repeat(const ohm_reference *a, const ohm_reference *b) {
  return a->kind == b->kind && a->t_c == b->t_c && a->altitude_m == b->altitude_m &&
         a->pressure_hpa == b->pressure_hpa;
}

/* What the last two readings of one bath differ by, when that is more than a count. */
static double still_moving(const ohm_reading *readings, size_t last) {
  const ohm_reading *now = &readings[last];
  const ohm_reading *before = &readings[last - 1];
  if (now->display != OHM_DISPLAY_VALUE || before->display != OHM_DISPLAY_VALUE)
    return 0;
  double moved = fabs(now->r_ohm - before->r_ohm);
  double count = fmax(now->resolution_ohm, before->resolution_ohm);
  return moved > count * (1 + 1e-9) ? moved : 0;
}

ohm_status ohm_bath_check_several(const ohm_sensor *sensor, const ohm_reading *readings,
                                  const ohm_reference *references, size_t count,
                                  const ohm_meter *meter, const ohm_check *check,
                                  ohm_finding *findings, ohm_finding *finding) {
  if (finding)
    ohm_finding_clear(finding);
  for (size_t i = 0; findings && count <= READINGS_MAX && i < count; i++)
    ohm_finding_clear(&findings[i]);
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
        ohm_bath_check(sensor, &readings[i], meter, &references[i], check, &findings[i]);
    if (status != OHM_OK) {
      for (size_t j = 0; j < i; j++)
        ohm_finding_clear(&findings[j]);
      return status;
    }
    bool repeated = i + 1 < count && is_repeat(&references[i], &references[i + 1]);
    if (repeated)
      continue;
    if (i > 0 && is_repeat(&references[i - 1], &references[i]))
      moved_ohm = fmax(moved_ohm, still_moving(readings, i));
    struct member *member = &members[kept++];
    *member = (struct member){.finding = &findings[i]};
    ohm_question_ask(&member->question, sensor, &readings[i], meter, &references[i], check);
  }
  const struct member *speaker = spokesman(members, kept);
  *finding = speaker ? *speaker->finding : *plainest(members, kept)->finding;
  ohm_finding_set_number(finding, OHM_FIELD_READINGS, (double)count);
  if (moved_ohm > 0) {
    ohm_finding_set_number(finding, OHM_FIELD_MOVED_OHM, moved_ohm);
    ohm_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MOVING);
    return OHM_OK;
  }
  if (kept == 1)
    return OHM_OK;
  if (!speaker) {
    for (size_t i = 0; i < kept; i++) {
      divide_causes(&members[i]);
      fill_bands(&members[i]);
    }
    judge_together(finding, members, kept);
  }
  /* A question that silences the fan in one reading silences it in all. */
  if (!speaker || ohm_finding_text(finding, OHM_FIELD_JOB, 0))
    tell_job(finding, members, kept, check);
  return OHM_OK;
}
