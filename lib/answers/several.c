/* SPDX-License-Identifier: MIT */
/* Several readings of one sensor: one part, whose resistance at each temperature that was
 * measured is judged by all of them. */
#include "bath.h"

#include "../bench/finding.h"
#include "../model/part.h"

enum { READINGS_MAX = OC_PART_READINGS };

/* What is asked of every reading. */
struct question {
  const ohm_sensor *sensor;
  const oc_meter *meter;
  const oc_check *check;
};

struct member {
  const struct ohm_finding *finding;
  const oc_reading *reading;
  const oc_reference *reference;
};

/* A measurement is asked again instead of kept: sixteen are too large for a stack. */
static void ask(struct oc_measurement *measurement, const struct question *question,
                const struct member *member) {
  oc_measurement_ask(measurement, question->sensor, member->reading, question->meter,
                     member->reference, question->check);
}

/* ---- the part ---- */

/* All readings by the limits of one band where it says something, else by those judged by;
 * false when it says nothing at that reading. */
static bool fill(struct oc_part *part, const struct question *question,
                 const struct member *members, size_t count, size_t band, size_t reading,
                 const char **name) {
  bool says = false;
  struct oc_measurement measurement;
  ask(&measurement, question, &members[reading]);
  struct oc_measurement by = measurement;
  if (!oc_measurement_band(&by, band, name))
    return false;
  struct oc_tolerance tolerance = by.tolerance;
  oc_part_begin(part);
  for (size_t i = 0; i < count; i++) {
    ask(&measurement, question, &members[i]);
    bool covers =
        oc_tolerance_covers(measurement.curve, &tolerance, measurement.bath.value) == OHM_OK;
    oc_part_add(part, &measurement, covers ? &tolerance : &measurement.tolerance);
    says = says || covers;
  }
  return says;
}

static void fill_by_chosen(struct oc_part *part, const struct question *question,
                           const struct member *members, size_t count, double *level, bool *told) {
  struct oc_measurement measurement;
  oc_part_begin(part);
  for (size_t i = 0; i < count; i++) {
    ask(&measurement, question, &members[i]);
    oc_part_add(part, &measurement, &measurement.tolerance);
  }
  *level = measurement.level;
  *told = measurement.band_told;
}

static size_t greatest(const double *p, size_t count) {
  size_t at = 0;
  for (size_t i = 1; i < count; i++)
    if (p[i] > p[at])
      at = i;
  return at;
}

/* A maker, or the table itself, by whose limits the part is not beyond them there; NULL when
 * it is by those of all. */
static ohm_status find_allowing(const struct question *question, const struct member *members,
                                size_t count, double level, size_t reading, bool high,
                                const char **allowing) {
  struct oc_part part;
  struct oc_part_answer answer;
  const char *name;
  *allowing = NULL;
  for (size_t band = 0; fill(&part, question, members, count, band, reading, &name); band++) {
    if (!oc_part_judge(&part, level, &answer))
      return OHM_NO_MEMORY;
    double p = high ? answer.p_high[reading] : answer.p_low[reading];
    if (p < oc_part_level(&part, level))
      *allowing = name;
  }
  return OHM_OK;
}

static ohm_status condemn(ohm_finding *finding, const struct question *question,
                          const struct member *members, size_t count, double level, size_t reading,
                          bool high, bool told) {
  const char *allowing = NULL;
  ohm_status status =
      told ? OHM_OK : find_allowing(question, members, count, level, reading, high, &allowing);
  if (status != OHM_OK)
    return status;
  oc_finding_set_number(finding, OHM_FIELD_BEYOND_AT_C,
                        ohm_finding_number(members[reading].finding, OHM_FIELD_AT_C));
  if (allowing) {
    oc_finding_set_text(finding, OHM_FIELD_ALLOWED_BY, allowing);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_ANOTHER_BAND);
  } else {
    oc_finding_set_verdict(finding, OHM_OUTSIDE, high ? OHM_REASON_HIGH : OHM_REASON_LOW);
  }
  return OHM_OK;
}

/* Of two at one temperature the one that tells is shown. */
static void show_instead(ohm_finding *finding, const ohm_finding *one) {
  if (ohm_finding_number(one, OHM_FIELD_AT_C) != ohm_finding_number(finding, OHM_FIELD_AT_C))
    return;
  double readings = ohm_finding_number(finding, OHM_FIELD_READINGS);
  double unlimited = ohm_finding_number(finding, OHM_FIELD_UNLIMITED);
  *finding = *one;
  oc_finding_set_number(finding, OHM_FIELD_READINGS, readings);
  oc_finding_set_number(finding, OHM_FIELD_UNLIMITED, unlimited);
}

static ohm_status judge_together(ohm_finding *finding, const struct question *question,
                                 const struct member *members, size_t count) {
  struct oc_part part;
  struct oc_part_answer answer;
  double level;
  bool told;
  fill_by_chosen(&part, question, members, count, &level, &told);
  if (!oc_part_judge(&part, level, &answer))
    return OHM_NO_MEMORY;
  size_t low = greatest(answer.p_low, count);
  size_t high = greatest(answer.p_high, count);
  double needed = oc_part_level(&part, level);
  bool is_high = answer.p_high[high] >= needed;
  bool is_low = !is_high && answer.p_low[low] >= needed;
  if (is_high || is_low)
    show_instead(finding, members[is_high ? high : low].finding);
  oc_finding_set_number(finding, OHM_FIELD_P_WITHIN, answer.p_within);
  oc_finding_set_number(finding, OHM_FIELD_P_LOW, answer.p_low[low]);
  oc_finding_set_number(finding, OHM_FIELD_P_HIGH, answer.p_high[high]);
  oc_finding_set_text(finding, OHM_FIELD_ALLOWED_BY, "");
  oc_finding_set_number(finding, OHM_FIELD_IN_BAND, answer.place);
  oc_finding_set_number(finding, OHM_FIELD_IN_BAND_LOW, answer.place_low);
  oc_finding_set_number(finding, OHM_FIELD_IN_BAND_HIGH, answer.place_high);
  if (is_high || is_low)
    return condemn(finding, question, members, count, level, is_high ? high : low, is_high, told);
  if (answer.p_within >= level)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_CONFORMS);
  else
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_UNCERTAIN);
  return OHM_OK;
}

/* Those at temperatures for which limits are printed judge the part, if there are any. */
static size_t keep_limited(struct member *members, size_t count) {
  size_t kept = 0;
  for (size_t i = 0; i < count; i++)
    if (oc_finding_reason(members[i].finding) != OHM_REASON_OUTSIDE_BAND)
      members[kept++] = members[i];
  return kept > 0 ? kept : count;
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

/* The milder of two answers. */
static bool is_surer(const ohm_finding *a, const ohm_finding *b) {
  static const int rank[] = {[OHM_WITHIN] = 2, [OHM_UNDECIDED] = 1, [OHM_OUTSIDE] = 0};
  int first = rank[ohm_finding_job(a)];
  int second = rank[ohm_finding_job(b)];
  double late_k = ohm_finding_number(b, OHM_FIELD_LATE_K);
  return first > second || (first == second && ohm_finding_number(a, OHM_FIELD_LATE_K) < late_k);
}

/* The reading whose own fields stand for all: of those that speak for the fan the one
 * nearest to where it is to start, of two as near the one that promises less. How a sensor reads
 * there needs no curve to be right. */
static const ohm_finding *nearest_to_fan(const struct member *members, size_t count) {
  const ohm_finding *best = NULL;
  double nearest_k = INFINITY;
  for (size_t i = 0; i < count; i++) {
    const ohm_finding *one = members[i].finding;
    double away_k =
        fabs(ohm_finding_number(one, OHM_FIELD_AT_C) - ohm_finding_number(one, OHM_FIELD_FAN_C));
    bool nearer = away_k < nearest_k || (away_k == nearest_k && best && is_surer(best, one));
    if (ohm_finding_text(one, OHM_FIELD_JOB, 0) && nearer) {
      best = one;
      nearest_k = away_k;
    }
  }
  return best;
}

static const ohm_field fan_fields[] = {
    OHM_FIELD_SERIES_OHM,  OHM_FIELD_SERIES_LATE_K,   OHM_FIELD_SERIES_SOUND_LATE_K,
    OHM_FIELD_LEAKAGE_OHM, OHM_FIELD_LEAKAGE_EARLY_K, OHM_FIELD_LEAKAGE_SOUND_EARLY_K,
    OHM_FIELD_LATE_K,      OHM_FIELD_EARLY_K};

static void tell_job(ohm_finding *finding, const ohm_finding *from) {
  for (size_t i = 0; i < sizeof fan_fields / sizeof fan_fields[0]; i++)
    oc_finding_set_number(finding, fan_fields[i], ohm_finding_number(from, (int)fan_fields[i]));
  oc_finding_set_job(finding, ohm_finding_job(from), oc_finding_job_reason(from));
}

/* ---- repeats ---- */

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
    bool repeated = i + 1 < count && oc_reference_is_same(&references[i], &references[i + 1]);
    if (repeated)
      continue;
    if (i > 0 && oc_reference_is_same(&references[i - 1], &references[i]))
      moved_ohm = fmax(moved_ohm, still_moving(readings, i));
    members[kept++] = (struct member){
        .finding = &findings[i], .reading = &readings[i], .reference = &references[i]};
  }
  const ohm_finding *near = nearest_to_fan(members, kept);
  const size_t told = kept;
  kept = keep_limited(members, kept);
  const struct member *speaker = spokesman(members, kept);
  const ohm_finding *shown = nearest_to_fan(members, kept);
  *finding = *(speaker ? speaker->finding : shown ? shown : members[kept - 1].finding);
  oc_finding_set_number(finding, OHM_FIELD_READINGS, (double)count);
  if (told > kept)
    oc_finding_set_number(finding, OHM_FIELD_UNLIMITED, (double)(told - kept));
  if (moved_ohm > 0) {
    oc_finding_set_number(finding, OHM_FIELD_MOVED_OHM, moved_ohm);
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_MOVING);
    return OHM_OK;
  }
  const struct question question = {sensor, meter, check};
  ohm_status status = OHM_OK;
  if (kept > 1 && !speaker)
    status = judge_together(finding, &question, members, kept);
  /* A question that silences the fan in one reading silences it in all. */
  if (near && ohm_finding_text(finding, OHM_FIELD_JOB, 0))
    tell_job(finding, near);
  return status;
}
