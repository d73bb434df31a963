/* SPDX-License-Identifier: MIT */
#include "meaning.h"

#include <string.h>

/* ---- what is seen ---- */

/* From nothing to as it should be, each with a stretch before it that may be either. */
struct steps {
  double nothing;
  double some;
  double partly;
  double good;
};

static oc_outcomes see(double amount, const struct steps *steps) {
  unsigned seen = 0;
  seen |= amount < steps->some ? OC_OUTCOME_NOTHING : 0;
  seen |= amount > steps->nothing && amount < steps->good ? OC_OUTCOME_PARTLY : 0;
  seen |= amount > steps->partly ? OC_OUTCOME_GOOD : 0;
  return (oc_outcomes)seen;
}

/* Against a sound one: neither slower nor, where it should be slow, at full speed. */
static oc_outcomes see_fan(double speed, double sound) {
  static const struct steps steps = {OC_EYE_FAN_STILL, OC_EYE_FAN_TURNS, OC_EYE_FAN_BAD,
                                     OC_EYE_FAN_GOOD};
  double share = speed / sound;
  if (share <= 1)
    return see(share, &steps);
  unsigned seen = share < 1 / OC_EYE_FAN_BAD ? OC_OUTCOME_GOOD : 0;
  return (oc_outcomes)(seen | (share > 1 / OC_EYE_FAN_GOOD ? OC_OUTCOME_MUCH : 0));
}

static oc_outcomes see_bulb(double volts) {
  static const struct steps steps = {OC_EYE_BULB_DARK_V, OC_EYE_BULB_GLOWS_V, OC_EYE_BULB_BAD_V,
                                     OC_EYE_BULB_GOOD_V};
  return see(volts, &steps);
}

static oc_outcomes see_still(double speed) {
  unsigned seen = fabs(speed) < OC_EYE_FAN_TURNS ? OC_OUTCOME_GOOD : 0;
  return (oc_outcomes)(seen | (fabs(speed) > OC_EYE_FAN_STILL ? OC_OUTCOME_BAD : 0));
}

static oc_outcomes see_whether(bool good) {
  return good ? OC_OUTCOME_GOOD : OC_OUTCOME_NOTHING;
}

static double across_volts(const struct oc_drive_result *result, const struct oc_look *look) {
  const struct oc_across *across = &look->setup.across[look->at];
  return result->volts[across->plus] - result->volts[across->minus];
}

static double number_of(const struct oc_drive_result *result, const struct oc_look *look) {
  double fan_a = fabs(result->motor_a[look->motor]);
  switch (look->kind) {
  case OC_LOOK_VOLTS:
    return across_volts(result, look);
  case OC_LOOK_OHMS:
    return fabs(across_volts(result, look) / result->across_a[look->at]);
  case OC_LOOK_DROP:
    return fan_a < OC_CARRIES_A ? NAN : across_volts(result, look) / fan_a;
  default:
    return fabs(result->motor_a[look->at]);
  }
}

/* What a car that is unlike its file would read: what is lost goes with the amperes of the fan,
 * what is left is the rest of a battery that may be charged. */
static oc_outcomes see_number(const struct oc_look *look, double number, double sound) {
  if (isnan(number))
    return oc_outcome_numbers(look->limits);
  if (look->kind != OC_LOOK_VOLTS)
    return oc_outcome_range(look->limits, number / OC_CAR_SPREAD, number * OC_CAR_SPREAD);
  double lost_v = sound - number;
  double from = sound - OC_CAR_SPREAD * lost_v;
  double to = OC_CHARGED_SHARE * sound - lost_v / OC_CAR_SPREAD;
  return oc_outcome_range(look->limits, fmin(from, number),
                          fmax(number, fmin(to, OC_CAR_SPREAD * (number + 0.1))));
}

static oc_outcomes look_at(const struct oc_drive_result *result, const struct oc_look *look,
                           const struct oc_drive_result *sound) {
  switch (look->kind) {
  case OC_LOOK_FAN:
    return see_fan(result->motor_speed[look->at], sound->motor_speed[look->at]);
  case OC_LOOK_STILL:
    return see_still(result->motor_speed[look->at]);
  case OC_LOOK_BULB:
    return see_bulb(fabs(across_volts(result, look)));
  case OC_LOOK_CLICK:
    return see_whether(result->pulled >> look->at & 1);
  case OC_LOOK_FUSE:
    return see_whether((result->blown & oc_set_of(look->at)) == 0);
  default:
    return see_number(look, number_of(result, look), number_of(sound, look));
  }
}

/* A fuse that is open looks like one that blew; a meter across it shows the rest. */
static oc_outcomes see_fuse(const struct oc_look *look, const struct oc_failure *failure,
                            oc_outcomes seen) {
  bool is_its_own = look->kind == OC_LOOK_FUSE && failure->thing == look->at &&
                    (look->setup.spare & oc_set_of(look->at)) == 0;
  if (!is_its_own)
    return seen;
  return (oc_outcomes)((failure->size < OC_FUSE_BROKEN_OHM ? OC_OUTCOME_GOOD : 0) |
                       (failure->size > OC_FUSE_WHOLE_OHM ? OC_OUTCOME_NOTHING : 0));
}

static bool is_number(const struct oc_look *look) {
  return look->kind >= OC_LOOK_VOLTS;
}

/* Of a number it is enough that the sound one itself lies within. */
static bool looks_good(const struct oc_drive_result *sound, const struct oc_look *look) {
  if (!is_number(look))
    return look_at(sound, look, sound) == OC_OUTCOME_GOOD;
  double number = number_of(sound, look);
  return !isnan(number) &&
         oc_outcome_range(look->limits, number, number) == oc_outcome_within(look->limits);
}

/* ---- what matters ---- */

static bool is_well(const struct oc_wiring *wiring, const struct oc_drive_result *result,
                    const struct oc_drive_result *sound) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == OC_THING_MOTOR &&
        result->motor_speed[i] < OC_FAN_MATTERS * sound->motor_speed[i])
      return false;
  return result->steady && result->blown == 0;
}

/* With nothing across and all plugged in. */
static bool find_matters(struct oc_failings *failings, struct oc_drive *drive,
                         const struct oc_wiring *wiring, unsigned asked) {
  const struct oc_setup setup = {.asked = asked, .key = true};
  struct oc_drive_result sound;
  struct oc_drive_result result;
  oc_drive_begin(drive, wiring, &setup);
  if (!oc_drive_run(drive, (struct oc_failures){0, NULL, 0}, &sound))
    return false;
  for (size_t i = 0; i < failings->count; i++) {
    bool solved = oc_drive_run(drive, (struct oc_failures){1, &failings->failure[i], 0}, &result);
    failings->matters[i] |= !solved || !is_well(wiring, &result, &sound);
    failings->blown[i] |= solved ? result.blown : 0;
  }
  return true;
}

bool oc_failings_list(struct oc_failings *failings, struct oc_drive *drive,
                      const struct oc_wiring *wiring, unsigned asked) {
  failings->count = 0;
  for (size_t at = 0; at < wiring->thing_count; at++)
    failings->count += oc_failure_ways(wiring, at, &failings->failure[failings->count]);
  memset(failings->matters, 0, sizeof failings->matters);
  memset(failings->blown, 0, sizeof failings->blown);
  for (unsigned way = 1; way != 0 && way <= asked; way <<= 1)
    if ((asked & way) != 0 && !find_matters(failings, drive, wiring, way))
      return false;
  return true;
}

/* ---- a test ---- */

/* What ohms in a chain look like: those of one of its things as those of any other, but for a fuse
 * that is looked at itself and what a spare is put in for; and what carries nothing may have any.
 */
struct alike {
  const struct oc_drive *drive;
  const struct oc_look *look;
  oc_set carried;
  oc_outcomes good;
  oc_outcomes seen[OC_WIRING_THINGS][OC_FAILURES_OF_ONE];
};

static oc_outcomes *place_of(struct alike *alike, const struct oc_failure *failure, size_t nth) {
  size_t chain = alike->drive->chains.chain_of[failure->thing];
  bool is_own = (alike->look->kind == OC_LOOK_FUSE && failure->thing == alike->look->at) ||
                (alike->look->setup.spare & oc_set_of(failure->thing)) != 0;
  if (failure->mode != OC_FAILURE_RESISTS || chain == OC_WIRING_THINGS || is_own)
    return NULL;
  oc_outcomes *seen = &alike->seen[chain][nth];
  if (!(alike->carried & oc_set_of(chain)))
    *seen = alike->good;
  return seen;
}

static oc_outcomes foretell(struct oc_drive *drive, const struct oc_failings *failings, size_t at,
                            const struct oc_look *look, const struct oc_drive_result *sound) {
  struct oc_drive_result result;
  const struct oc_failures one = {1, &failings->failure[at], failings->blown[at]};
  if (!oc_drive_run(drive, one, &result) || !result.steady)
    return is_number(look) ? oc_outcome_numbers(look->limits) : OC_OUTCOME_ANY;
  return see_fuse(look, one.failure, look_at(&result, look, sound));
}

bool oc_meaning_find(struct oc_drive *drive, const struct oc_wiring *wiring,
                     const struct oc_failings *failings, const struct oc_look *look,
                     struct oc_meaning *meaning) {
  struct oc_drive_result sound;
  oc_drive_begin(drive, wiring, &look->setup);
  if (!oc_drive_run(drive, (struct oc_failures){0, NULL, 0}, &sound))
    return false;
  meaning->good = is_number(look) ? oc_outcome_within(look->limits) : OC_OUTCOME_GOOD;
  meaning->useful = sound.steady && looks_good(&sound, look);
  struct alike alike = {
      .drive = drive, .look = look, .carried = sound.carried, .good = meaning->good};
  size_t nth = 0;
  for (size_t i = 0; meaning->useful && i < failings->count; i++) {
    const struct oc_failure *failure = &failings->failure[i];
    nth = i > 0 && failure[-1].thing == failure->thing ? nth + 1 : 0;
    oc_outcomes *seen = place_of(&alike, failure, nth);
    oc_outcomes own = 0;
    seen = seen ? seen : &own;
    if (*seen == 0)
      *seen = foretell(drive, failings, i, look, &sound);
    meaning->foretold[i] = *seen;
  }
  return true;
}

/* ---- together ---- */

oc_set oc_meaning_clears(const struct oc_meaning *meaning, const struct oc_failings *failings) {
  oc_set matter = 0;
  oc_set missed = 0;
  for (size_t i = 0; meaning->useful && i < failings->count; i++) {
    oc_set thing = oc_set_of(failings->failure[i].thing);
    matter |= failings->matters[i] ? thing : 0;
    missed |= failings->matters[i] && (meaning->foretold[i] & meaning->good) != 0 ? thing : 0;
  }
  return matter & ~missed;
}

oc_set oc_meaning_accuses(const struct oc_meaning *meaning, const struct oc_failings *failings) {
  oc_set accused = 0;
  for (size_t i = 0; meaning->useful && i < failings->count; i++)
    if ((meaning->foretold[i] & meaning->good) == 0)
      accused |= oc_set_of(failings->failure[i].thing);
  return accused;
}

double oc_meaning_unseen_ohm(const struct oc_meaning *meaning, const struct oc_failings *failings,
                             size_t thing) {
  double most_ohm = 0;
  for (size_t i = 0; meaning->useful && i < failings->count; i++) {
    const struct oc_failure *failure = &failings->failure[i];
    if (failure->thing == thing && failure->mode == OC_FAILURE_RESISTS &&
        (meaning->foretold[i] & meaning->good) != 0)
      most_ohm = fmax(most_ohm, failure->size);
  }
  return most_ohm;
}
