/* SPDX-License-Identifier: MIT */
#include "meaning.h"

#include <string.h>

/* ---- how a thing fails ---- */

static const double resists_ohm[] = {0.05, 0.1, 0.2, 0.3, 0.45, 0.7, 1,
                                     2,    5,   50,  500, 5e3,  5e4, INFINITY};
static const double rubs_ohm[] = {0.02, 1};
static const double drags[] = {0.3, 0.6, 1, INFINITY}; /* of the running amperes */

enum {
  RESISTS = sizeof resists_ohm / sizeof resists_ohm[0],
  RUBS = sizeof rubs_ohm / sizeof rubs_ohm[0],
  DRAGS = sizeof drags / sizeof drags[0],
  WAYS_MAX = RESISTS + DRAGS + 2
};

_Static_assert(WAYS_MAX *OC_WIRING_THINGS <= OC_FAULTS_MAX, "no room for every way to fail");

static size_t add(struct oc_failure *ways, size_t count, size_t thing, enum oc_failure_mode mode,
                  double size) {
  ways[count] = (struct oc_failure){thing, mode, size};
  return count + 1;
}

static bool is_switched(enum oc_thing_kind kind) {
  return kind == OC_THING_CONTACT || kind == OC_THING_REST || kind == OC_THING_OUTPUT ||
         kind == OC_THING_SWITCH;
}

static size_t ways_of(const struct oc_wiring *wiring, size_t at, struct oc_failure *ways) {
  const struct oc_thing *thing = &wiring->things[at];
  size_t count = 0;
  if (thing->kind == OC_THING_CHAFE) {
    for (size_t i = 0; i < RUBS; i++)
      count = add(ways, count, at, OC_FAILURE_RUBS, rubs_ohm[i]);
    return count;
  }
  for (size_t i = 0; i < RESISTS; i++)
    count = add(ways, count, at, OC_FAILURE_RESISTS, resists_ohm[i]);
  if (thing->kind == OC_THING_MOTOR)
    for (size_t i = 0; i < DRAGS; i++)
      count = add(ways, count, at, OC_FAILURE_DRAGS, drags[i] * thing->value);
  if (is_switched(thing->kind)) {
    count = add(ways, count, at, OC_FAILURE_CLOSED, 0);
    count = add(ways, count, at, OC_FAILURE_NEVER, 0);
  }
  return count;
}

/* ---- what is seen ---- */

static enum oc_seen seen_of(double share, double good, double bad) {
  return share >= good ? OC_SEEN_GOOD : share <= bad ? OC_SEEN_BAD : OC_SEEN_UNSURE;
}

static double across_volts(const struct oc_drive_result *result, const struct oc_across *across) {
  return fabs(result->volts[across->plus] - result->volts[across->minus]);
}

static enum oc_seen look_at(const struct oc_drive_result *result, const struct oc_look *look) {
  switch (look->kind) {
  case OC_LOOK_FAN:
    return seen_of(result->motor_speed[look->at], OC_EYE_FAN_GOOD, OC_EYE_FAN_BAD);
  case OC_LOOK_BULB:
    return seen_of(across_volts(result, &look->setup.across[look->at]), OC_EYE_BULB_GOOD_V,
                   OC_EYE_BULB_BAD_V);
  case OC_LOOK_CLICK:
    return result->pulled >> look->at & 1 ? OC_SEEN_GOOD : OC_SEEN_BAD;
  default:
    return (result->blown & oc_set_of(look->at)) != 0 ? OC_SEEN_BAD : OC_SEEN_GOOD;
  }
}

enum oc_seen oc_meaning_see(struct oc_drive *drive, const struct oc_wiring *wiring,
                            const struct oc_failure *failure, const struct oc_look *look) {
  struct oc_drive_result result;
  if (!oc_drive_run(drive, wiring, failure, &look->setup, &result) || !result.steady)
    return OC_SEEN_UNSURE;
  return look_at(&result, look);
}

/* ---- what matters ---- */

static bool is_well(const struct oc_wiring *wiring, const struct oc_drive_result *result) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == OC_THING_MOTOR && !(result->motor_speed[i] >= OC_FAN_MATTERS))
      return false;
  return result->steady && result->blown == 0;
}

/* With nothing across and all plugged in. */
static bool matters(struct oc_drive *drive, const struct oc_wiring *wiring,
                    const struct oc_failure *failure, unsigned asked) {
  for (unsigned way = 1; way != 0 && way <= asked; way <<= 1) {
    const struct oc_setup setup = {.asked = way, .key = true};
    struct oc_drive_result result;
    if ((asked & way) != 0 && oc_drive_run(drive, wiring, failure, &setup, &result) &&
        !is_well(wiring, &result))
      return true;
  }
  return false;
}

void oc_faults_list(struct oc_faults *faults, struct oc_drive *drive,
                    const struct oc_wiring *wiring, unsigned asked) {
  faults->count = 0;
  for (size_t at = 0; at < wiring->thing_count; at++) {
    size_t count = ways_of(wiring, at, &faults->failure[faults->count]);
    for (size_t i = 0; i < count; i++, faults->count++)
      faults->matters[faults->count] =
          matters(drive, wiring, &faults->failure[faults->count], asked);
  }
}

/* ---- together ---- */

bool oc_meaning_find(struct oc_drive *drive, const struct oc_wiring *wiring,
                     const struct oc_faults *faults, const struct oc_look *look,
                     struct oc_meaning *meaning) {
  struct oc_drive_result sound;
  oc_set matter = 0;
  oc_set missed = 0;
  memset(meaning, 0, sizeof *meaning);
  if (!oc_drive_run(drive, wiring, NULL, &look->setup, &sound))
    return false;
  meaning->useful = sound.steady && look_at(&sound, look) == OC_SEEN_GOOD;
  for (size_t i = 0; meaning->useful && i < faults->count; i++) {
    const struct oc_failure *failure = &faults->failure[i];
    oc_set thing = oc_set_of(failure->thing);
    double *unseen_ohm = &meaning->unseen_ohm[failure->thing];
    enum oc_seen seen = oc_meaning_see(drive, wiring, failure, look);
    if (seen == OC_SEEN_BAD)
      meaning->accuses |= thing;
    if (seen == OC_SEEN_GOOD && failure->mode == OC_FAILURE_RESISTS)
      *unseen_ohm = fmax(*unseen_ohm, failure->size);
    if (faults->matters[i])
      matter |= thing;
    if (faults->matters[i] && seen != OC_SEEN_BAD)
      missed |= thing;
  }
  meaning->clears = matter & ~missed;
  return true;
}
