/* SPDX-License-Identifier: MIT */
/* Which pins of a body with several are which element. */
#include <string.h>

#include "terminals.h"

#include "request.h"

#include "identify.h"
#include "told.h"
#include "../arithmetic/estimate.h"
#include "../evidence/meter.h"
#include "../ground/text.h"
#include "../ground/words.h"

enum { PAIRS_MAX = 16 };

/* ---- what each pair read ---- */

struct member {
  const oc_pair *pair;
  bool has_number;
  double r_ohm;
  double limit_ohm; /* what meter and leads may be off by */
  ohm_role role;
};

static bool is_pair(const oc_pair *pair) {
  return oc_terminal_name(pair->from) && oc_terminal_name(pair->to) && pair->from != pair->to;
}

static bool are_same(const oc_pair *a, const oc_pair *b) {
  return (a->from == b->from && a->to == b->to) || (a->from == b->to && a->to == b->from);
}

static ohm_status take(struct member *member, const oc_pair *pair, const oc_meter *meter) {
  struct oc_budget budget;
  *member = (struct member){.pair = pair, .role = OHM_ROLE_NONE};
  ohm_status status = oc_meter_budget(meter, &pair->reading, &budget, NULL);
  if (status == OHM_OUT_OF_RANGE) {
    int display = pair->reading.display;
    member->role = display == OC_DISPLAY_ONE ? OHM_ROLE_ASK : OHM_ROLE_NONE;
    return OHM_OK;
  }
  if (status != OHM_OK)
    return status;
  member->has_number = true;
  member->r_ohm = budget.value;
  for (size_t i = 0; i < budget.count; i++)
    member->limit_ohm += oc_cause_limit(&budget.causes[i]);
  member->role = budget.value < OC_SHORTED_OHM ? OHM_ROLE_JOINED : OHM_ROLE_UNKNOWN;
  return OHM_OK;
}

/* ---- what lies in a row ---- */

static bool is_element(const struct member *member) {
  return member->role == OHM_ROLE_UNKNOWN;
}

/* The end of b that is not an end of a, when they share the other; 0 when not. */
static int far_end(const oc_pair *a, const oc_pair *b, int *near) {
  const int ends[2] = {b->from, b->to};
  for (int i = 0; i < 2; i++)
    if (ends[i] == a->from || ends[i] == a->to) {
      *near = ends[i];
      return ends[1 - i];
    }
  return 0;
}

/* Whether whole runs from one end of a to the far end of b by way of what they share. */
static bool runs_over(const oc_pair *whole, const oc_pair *a, const oc_pair *b) {
  int shared = 0;
  int end = far_end(a, b, &shared);
  if (end == 0)
    return false;
  int start = a->from == shared ? a->to : a->from;
  return (whole->from == start && whole->to == end) || (whole->from == end && whole->to == start);
}

static bool adds_up(const struct member *whole, const struct member *a, const struct member *b) {
  double slack_ohm = whole->limit_ohm + a->limit_ohm + b->limit_ohm;
  return fabs(whole->r_ohm - a->r_ohm - b->r_ohm) <= slack_ohm &&
         whole->r_ohm > fmax(a->r_ohm, b->r_ohm);
}

static bool goes_to(const oc_pair *pair, int terminal) {
  return pair->from == terminal || pair->to == terminal;
}

static int pin_of(const oc_pair *pair, int terminal) {
  return pair->from == terminal ? pair->to : pair->from;
}

/* The reading of the same pin to the body, of one to battery negative. */
static const struct member *to_body(const struct member *members, size_t count,
                                    const struct member *minus) {
  if (!goes_to(minus->pair, OC_TERMINAL_MINUS))
    return NULL;
  int pin = pin_of(minus->pair, OC_TERMINAL_MINUS);
  for (size_t i = 0; i < count; i++)
    if (goes_to(members[i].pair, OC_TERMINAL_BODY) && members[i].has_number &&
        pin_of(members[i].pair, OC_TERMINAL_BODY) == pin)
      return &members[i];
  return NULL;
}

/* Two elements in series read as one; and one through the engine and its ground. */
static void find_wrong_pairs(struct member *members, size_t count) {
  bool both[PAIRS_MAX] = {false};
  for (size_t w = 0; w < count; w++)
    for (size_t a = 0; a < count; a++)
      for (size_t b = 0; b < a; b++)
        if (a != w && b != w && is_element(&members[w]) && is_element(&members[a]) &&
            is_element(&members[b]) &&
            runs_over(members[w].pair, members[a].pair, members[b].pair) &&
            adds_up(&members[w], &members[a], &members[b]))
          both[w] = true;
  for (size_t w = 0; w < count; w++)
    if (both[w])
      members[w].role = OHM_ROLE_BOTH;
    else if (members[w].has_number && to_body(members, count, &members[w]))
      members[w].role = OHM_ROLE_GROUND;
}

/* ---- which element each is ---- */

struct shelf {
  const ohm_sensor *const *sensors;
  size_t count;
  const oc_reference *reference;
  const oc_meter *meter;
  const oc_check *check;
  ohm_finding *candidates;
};

static double number(const ohm_finding *finding, ohm_field field) {
  return ohm_finding_number(finding, (int)field);
}

static ohm_role role_of(const ohm_finding *identified) {
  double leading = 0;
  while (ohm_finding_text(identified, OHM_FIELD_CANDIDATES, (size_t)leading))
    leading++;
  double gauges = number(identified, OHM_FIELD_GAUGES);
  if (leading == 0)
    return OHM_ROLE_UNKNOWN;
  return gauges == leading ? OHM_ROLE_GAUGE : gauges > 0 ? OHM_ROLE_EITHER : OHM_ROLE_MODULE;
}

static void tell_pair(ohm_finding *finding, const oc_pair *pair, ohm_field field) {
  char text[16];
  struct oc_text out = oc_text_begin(text, sizeof text);
  oc_text_add(&out, oc_terminal_name(pair->from));
  oc_text_add(&out, "-");
  oc_text_add(&out, oc_terminal_name(pair->to));
  oc_finding_add_entry(finding, field, text);
}

/* The finding of one pair: of an element, what identify says of it, without a verdict. */
static ohm_status identify(struct member *member, const struct shelf *shelf, ohm_finding *finding) {
  if (is_element(member)) {
    ohm_status status =
        oc_identify(shelf->sensors, shelf->count, &member->pair->reading, shelf->reference, 1,
                    shelf->meter, shelf->check, shelf->candidates, finding);
    if (status != OHM_OK)
      return status;
    member->role = role_of(finding);
    oc_finding_set_number(finding, OHM_FIELD_VERDICT, NAN);
    oc_finding_set_number(finding, OHM_FIELD_REASON, NAN);
  } else {
    oc_finding_clear(finding);
  }
  oc_finding_set_about(finding, OHM_VERB_PINS);
  oc_finding_set_role(finding, member->role);
  oc_told_display(finding, &member->pair->reading);
  tell_pair(finding, member->pair, OHM_FIELD_PAIR);
  if (member->has_number)
    oc_finding_set_number(finding, OHM_FIELD_R_OHM, member->r_ohm);
  return OHM_OK;
}

/* ---- what they come to ---- */

static size_t how_many(const struct member *members, size_t count, ohm_role role) {
  size_t found = 0;
  for (size_t i = 0; i < count; i++)
    found += members[i].role == role;
  return found;
}

static const struct member *first_of(const struct member *members, size_t count, ohm_role role) {
  for (size_t i = 0; i < count; i++)
    if (members[i].role == role)
      return &members[i];
  return NULL;
}

static void tell_ground(ohm_finding *finding, const struct member *members, size_t count) {
  for (size_t i = 0; i < count; i++) {
    const struct member *body = to_body(members, count, &members[i]);
    if (!body)
      continue;
    /* The meter errs alike in both; the leads do not. */
    double limit_ohm = fabs(members[i].limit_ohm - body->limit_ohm) + OC_ASSUMED_LEAD_LIMIT_OHM;
    double ground_ohm = members[i].has_number ? members[i].r_ohm - body->r_ohm : NAN;
    oc_finding_set_number(finding, OHM_FIELD_GROUND_OHM, ground_ohm);
    oc_finding_set_number(finding, OHM_FIELD_GROUND_LIMIT_OHM,
                          members[i].has_number ? limit_ohm : NAN);
    tell_pair(finding, members[i].pair, OHM_FIELD_READ);
  }
}

/* Of two elements one is the gauge's: the other feeds the module. */
static void tell_by_elimination(struct member *members, size_t count, ohm_finding *findings) {
  size_t elements = how_many(members, count, OHM_ROLE_MODULE) +
                    how_many(members, count, OHM_ROLE_GAUGE) +
                    how_many(members, count, OHM_ROLE_EITHER);
  if (elements != 2 || how_many(members, count, OHM_ROLE_EITHER) != 1)
    return;
  bool gauge = how_many(members, count, OHM_ROLE_GAUGE) == 1;
  for (size_t i = 0; i < count; i++)
    if (members[i].role == OHM_ROLE_EITHER) {
      members[i].role = gauge ? OHM_ROLE_MODULE : OHM_ROLE_GAUGE;
      oc_finding_set_role(&findings[i], members[i].role);
    }
}

static void conclude(ohm_finding *finding, const struct member *members, size_t count) {
  size_t modules = how_many(members, count, OHM_ROLE_MODULE);
  size_t either = how_many(members, count, OHM_ROLE_EITHER);
  const struct member *gauge = first_of(members, count, OHM_ROLE_GAUGE);
  size_t open = how_many(members, count, OHM_ROLE_NONE);
  if (modules == 1)
    tell_pair(finding, first_of(members, count, OHM_ROLE_MODULE)->pair, OHM_FIELD_PAIR);
  if (gauge)
    tell_pair(finding, gauge->pair, OHM_FIELD_GAUGE_PAIR);
  tell_ground(finding, members, count);
  if (modules == 1 && either == 0)
    oc_finding_set_verdict(finding, OHM_WITHIN, OHM_REASON_ONE);
  else if (modules + either > 0)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_SEVERAL);
  else if (how_many(members, count, OHM_ROLE_ASK) > 0)
    oc_finding_set_verdict(finding, OHM_UNDECIDED, OHM_REASON_LONE_ONE);
  else
    oc_finding_set_verdict(finding, OHM_OUTSIDE, open == count ? OHM_REASON_OPEN : OHM_REASON_NONE);
}

static ohm_status begin(const struct shelf *shelf, const oc_pair *pairs, size_t count,
                        ohm_finding *findings, ohm_finding *finding) {
  if (finding)
    oc_finding_clear(finding);
  for (size_t i = 0; findings && count <= PAIRS_MAX && i < count; i++)
    oc_finding_clear(&findings[i]);
  if (!shelf->sensors || !pairs || !shelf->reference || !findings || !shelf->candidates || !finding)
    return OHM_NULL_ARGUMENT;
  if (count == 0 || shelf->count == 0)
    return OHM_BAD_ARGUMENT;
  if (count > PAIRS_MAX)
    return OHM_TOO_LARGE;
  for (size_t i = 0; i < count; i++) {
    if (!is_pair(&pairs[i]))
      return OHM_OUT_OF_RANGE;
    for (size_t j = 0; j < i; j++)
      if (are_same(&pairs[i], &pairs[j]))
        return OHM_BAD_ARGUMENT;
  }
  return OHM_OK;
}

static ohm_status answer(const struct shelf *shelf, const oc_pair *pairs, size_t count,
                         ohm_finding *findings, ohm_finding *finding) {
  struct member members[PAIRS_MAX];
  /* An identification of nothing, so that what was asked is looked at even when no
   * element is read. */
  oc_reading probe = OC_READING_INIT;
  probe.display = OC_DISPLAY_OPEN;
  ohm_status status = oc_identify(shelf->sensors, shelf->count, &probe, shelf->reference, 1,
                                  shelf->meter, shelf->check, shelf->candidates, finding);
  for (size_t i = 0; i < count && status == OHM_OK; i++)
    status = take(&members[i], &pairs[i], shelf->meter);
  if (status != OHM_OK)
    return status;
  find_wrong_pairs(members, count);
  for (size_t i = 0; i < count && status == OHM_OK; i++)
    status = identify(&members[i], shelf, &findings[i]);
  if (status != OHM_OK)
    return status;
  tell_by_elimination(members, count, findings);
  oc_finding_set_about(finding, OHM_VERB_PINS);
  oc_finding_set_number(finding, OHM_FIELD_READINGS, (double)count);
  oc_finding_leave_untested(finding, OC_UNTESTED_IDENTIFIED);
  conclude(finding, members, count);
  return OHM_OK;
}

ohm_status oc_pins_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                            const oc_pair *pairs, size_t count, const oc_reference *reference,
                            const oc_meter *meter, const oc_check *check, ohm_finding *findings,
                            ohm_finding *candidates, ohm_finding *finding) {
  const struct shelf shelf = {sensors, sensor_count, reference, meter, check, candidates};
  ohm_status status = begin(&shelf, pairs, count, findings, finding);
  if (status != OHM_OK)
    return status;
  status = answer(&shelf, pairs, count, findings, finding);
  if (status == OHM_OK)
    return OHM_OK;
  oc_finding_clear(finding);
  for (size_t i = 0; i < count; i++)
    oc_finding_clear(&findings[i]);
  return status;
}

/* ---- the verb ---- */

static ohm_status ask_all(struct oc_request *ask, const ohm_bench *bench, ohm_error *error) {
  ohm_status status = oc_request_begin(ask, bench, "pins", error);
  if (status == OHM_OK)
    status = oc_request_compared(ask);
  return status;
}

static size_t take_pairs(const ohm_bench *bench, oc_pair *pairs) {
  size_t count = 0;
  for (size_t i = 0; i < bench->count; i++)
    if (bench->lines[i].reading.kind == OC_READING_PAIR && count++ < PAIRS_MAX)
      pairs[count - 1] = bench->lines[i].reading.pair;
  return count;
}

static ohm_status refuse_pairs(const struct oc_request *ask, const oc_pair *pairs, size_t count) {
  if (count == 0)
    return oc_fail(ask->error, OHM_NOT_FOUND,
                   "pins needs readings across pairs of pins, and there ",
                   "is none on the bench: put them down, such as 1-2=2.31k", (const char *)NULL);
  if (count > PAIRS_MAX)
    return oc_fail(ask->error, OHM_TOO_LARGE,
                   "more than 16 pairs of pins: a body has fewer; leave ",
                   "out those that were read twice", (const char *)NULL);
  for (size_t i = 1; i < count; i++)
    for (size_t j = 0; j < i; j++)
      if (are_same(&pairs[i], &pairs[j]))
        return oc_fail(ask->error, OHM_BAD_ARGUMENT, "the pins ", oc_terminal_name(pairs[i].from),
                       " and ", oc_terminal_name(pairs[i].to),
                       " were read twice: put each pair down once", (const char *)NULL);
  return OHM_OK;
}

ohm_answer *ohm_bench_pins(const ohm_bench *bench, ohm_error *error) {
  struct oc_request ask;
  oc_pair pairs[PAIRS_MAX];
  oc_reference reference;
  ohm_status status = ask_all(&ask, bench, error);
  if (status != OHM_OK)
    return NULL;
  size_t count = take_pairs(bench, pairs);
  if (refuse_pairs(&ask, pairs, count) != OHM_OK || oc_request_need_at(&ask, &reference) != OHM_OK)
    return NULL;
  ohm_answer *answer = oc_answer_new(error);
  ohm_finding *each = answer ? oc_answer_group(answer, OHM_GROUP_READINGS, count) : NULL;
  ohm_finding *candidates =
      each ? oc_answer_group(answer, OHM_GROUP_CANDIDATES, bench->compared_count) : NULL;
  if (candidates)
    status = oc_request_told(&ask, oc_pins_identify(bench->compared, bench->compared_count, pairs,
                                                    count, &reference, &ask.meter, &ask.check, each,
                                                    candidates, &answer->whole));
  if (answer)
    answer->groups[OHM_GROUP_CANDIDATES].count = 0;
  return oc_answer_done(answer, status, error);
}
