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

static double across_volts(const struct oc_drive *drive, const struct oc_drive_result *result,
                           size_t at) {
  const struct oc_across *across = &drive->setup->across[at];
  return result->volts[across->plus] - result->volts[across->minus];
}

/* A meter reads nothing from a point that hangs free. */
static double volts_between(const struct oc_drive_result *result, size_t plus, size_t minus) {
  return result->fed[plus] && result->fed[minus] ? result->volts[plus] - result->volts[minus] : 0;
}

static double number_of(const struct oc_drive *drive, const struct oc_drive_result *result,
                        const struct oc_look *look) {
  double fan_a = fabs(result->motor_a[look->motor]);
  switch (look->kind) {
  case OC_LOOK_VOLTS:
    return volts_between(result, look->plus, look->minus);
  case OC_LOOK_OHMS:
    return fabs(across_volts(drive, result, look->at) / result->across_a[look->at]);
  case OC_LOOK_DROP:
    return fan_a < OC_CARRIES_A ? NAN : volts_between(result, look->plus, look->minus) / fan_a;
  default:
    return fabs(result->motor_a[look->at]);
  }
}

/* Of so many volts in all, what is lost in one place when it has so many times the ohms against the
 * rest: all of it where that is open. */
static double lost_with(double lost_v, double times) {
  double left_v = fmax(0, OC_BATTERY_AT_REST_V - lost_v);
  return OC_BATTERY_AT_REST_V * times * lost_v / (times * lost_v + left_v);
}

/* What a car that is unlike its file would read: it may draw more or less, and its battery may be
 * charged. Volts above what a sound one reads are lost, volts below it are what is left. */
static oc_outcomes see_volts(const struct oc_look *look, double number, double sound) {
  bool is_lost = number >= sound;
  double lost_v = is_lost ? number : sound - number;
  double least = lost_with(lost_v, 1 / OC_CAR_SPREAD);
  double most = lost_with(lost_v, OC_CAR_SPREAD);
  if (is_lost)
    return oc_outcome_range(look->limits, fmin(number, least),
                            fmax(number, OC_CHARGED_SHARE * most));
  return oc_outcome_range(look->limits, fmin(number, sound - most),
                          fmax(number, OC_CHARGED_SHARE * (sound - least)));
}

static oc_outcomes see_number(const struct oc_look *look, double number, double sound) {
  if (isnan(number))
    return oc_outcome_numbers(look->limits);
  if (look->kind == OC_LOOK_VOLTS)
    return see_volts(look, number, sound);
  return oc_outcome_range(look->limits, number / OC_CAR_SPREAD, number * OC_CAR_SPREAD);
}

static oc_outcomes look_at(const struct oc_drive *drive, const struct oc_drive_result *result,
                           const struct oc_look *look, const struct oc_drive_result *sound) {
  switch (look->kind) {
  case OC_LOOK_FAN:
    return see_fan(result->motor_speed[look->at], sound->motor_speed[look->at]);
  case OC_LOOK_STILL:
    return see_still(result->motor_speed[look->at]);
  case OC_LOOK_BULB:
    return see_bulb(fabs(across_volts(drive, result, look->at)));
  case OC_LOOK_CLICK:
    return see_whether(result->pulled >> look->at & 1);
  case OC_LOOK_FUSE:
    return see_whether((result->blown & oc_set_of(look->at)) == 0);
  default:
    return see_number(look, number_of(drive, result, look), number_of(drive, sound, look));
  }
}

static bool is_number(const struct oc_look *look) {
  return look->kind >= OC_LOOK_OHMS;
}

/* Of a number it is enough that the sound one itself lies within. */
static bool looks_good(const struct oc_drive *drive, const struct oc_drive_result *sound,
                       const struct oc_look *look) {
  if (!is_number(look))
    return look_at(drive, sound, look, sound) == OC_OUTCOME_GOOD;
  double number = number_of(drive, sound, look);
  return !isnan(number) &&
         oc_outcome_range(look->limits, number, number) == oc_outcome_within(look->limits);
}

/* A fuse that is open looks like one that blew. */
static bool is_own_fuse(const struct oc_drive *drive, const struct oc_failure *failure,
                        const struct oc_look *look) {
  return look->kind == OC_LOOK_FUSE && failure->thing == look->at &&
         (drive->setup->spare & oc_set_of(look->at)) == 0;
}

/* ---- what is alike ---- */

/* The chain of which one thing has more ohms, where that is as if any other of it had them. */
static size_t chain_of(const struct oc_chains *chains, const struct oc_setup *setup,
                       const struct oc_failure *failure) {
  bool is_spare = (setup->spare & oc_set_of(failure->thing)) != 0;
  return failure->mode == OC_FAILURE_RESISTS && !is_spare ? chains->chain_of[failure->thing]
                                                          : OC_WIRING_THINGS;
}

/* Which way to fail it is of its thing; the ways of having ohms are the same for all. */
static size_t way_of(const struct oc_failings *failings, size_t at) {
  size_t way = 0;
  while (way < at && failings->failure[at - way - 1].thing == failings->failure[at].thing)
    way++;
  return way;
}

/* ---- what matters ---- */

static bool is_well(const struct oc_wiring *wiring, const struct oc_drive_result *result,
                    const struct oc_drive_result *sound) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == OC_THING_MOTOR && sound->motor_speed[i] > OC_EYE_FAN_TURNS &&
        result->motor_speed[i] < OC_FAN_MATTERS * sound->motor_speed[i])
      return false;
  return result->steady && result->blown == 0;
}

/* With nothing across and all plugged in. */
static bool find_matters(struct oc_failings *failings, struct oc_drive *drive,
                         const struct oc_wiring *wiring, unsigned asked) {
  const struct oc_setup setup = {.asked = asked, .key = true};
  size_t known[OC_WIRING_THINGS][OC_FAILURES_OF_ONE] = {{0}};
  bool does_matter[OC_FAILURES_MAX];
  struct oc_drive_result sound;
  struct oc_drive_result result;
  if (!oc_drive_sound(drive, wiring, &setup, &sound))
    return false;
  for (size_t i = 0; i < failings->count; i++) {
    size_t chain = chain_of(&drive->chains, &setup, &failings->failure[i]);
    size_t *like = chain < OC_WIRING_THINGS ? &known[chain][way_of(failings, i)] : NULL;
    does_matter[i] = like && *like > 0 && does_matter[*like - 1];
    if (!like || *like == 0) {
      bool solved = oc_drive_run(drive, (struct oc_failures){1, &failings->failure[i], 0}, &result);
      does_matter[i] = !solved || !is_well(wiring, &result, &sound);
      /* By heat it was asked for, or nobody would complain. */
      oc_set *blown = asked == OC_WAY_HOT ? &failings->blown[i] : &failings->may_blow[i];
      *blown |= solved ? result.blown : 0;
    }
    if (like && *like == 0)
      *like = i + 1;
    failings->matters[i] |= does_matter[i];
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
  memset(failings->may_blow, 0, sizeof failings->may_blow);
  for (unsigned way = 1; way != 0 && way <= asked; way <<= 1)
    if ((asked & way) != 0 && !find_matters(failings, drive, wiring, way))
      return false;
  return true;
}

/* Only what rubs through, is stuck or welded makes more current flow than should. */
void oc_failings_blow(struct oc_failings *failings, struct oc_drive *drive,
                      const struct oc_wiring *wiring, const struct oc_setup *setup) {
  struct oc_drive_result result;
  oc_drive_begin(drive, wiring, setup);
  for (size_t i = 0; i < failings->count; i++)
    if (failings->failure[i].mode != OC_FAILURE_RESISTS &&
        oc_drive_run(drive, (struct oc_failures){1, &failings->failure[i], 0}, &result))
      failings->may_blow[i] |= result.blown & ~failings->blown[i];
}

/* ---- looks ---- */

struct task {
  struct oc_meaning_room *room;
  struct oc_drive *drive;
  const struct oc_failings *failings;
  const struct oc_look *looks;
  size_t count;
  struct oc_drive_result sound;
  struct oc_chains chains; /* which end where volts are read, too */
};

/* What is seen of one failing with those fuses blown before, by every look. */
static void see_blown(struct task *task, size_t failing, oc_set blown, oc_outcomes *seen) {
  struct oc_drive_result result;
  const struct oc_failures one = {1, &task->failings->failure[failing], blown};
  bool known = oc_drive_run(task->drive, one, &result) && result.steady;
  for (size_t i = 0; i < task->count; i++) {
    const struct oc_look *look = &task->looks[i];
    seen[i] |= known             ? look_at(task->drive, &result, look, &task->sound)
               : is_number(look) ? oc_outcome_numbers(look->limits)
                                 : OC_OUTCOME_ANY;
  }
}

/* Whether a test before this one has blown a fuse is not known. */
static void see_all(struct task *task, size_t failing, oc_outcomes *seen) {
  oc_set blown = task->failings->blown[failing];
  oc_set may_blow = task->failings->may_blow[failing];
  memset(seen, 0, task->count * sizeof *seen);
  see_blown(task, failing, blown, seen);
  if (may_blow != 0)
    see_blown(task, failing, blown | may_blow, seen);
}

/* Failings of one thing of a chain, in the order of their ohms; the first of the list is open. */
struct ladder {
  size_t chain;
  size_t first; /* failing */
  size_t count;
};

static size_t way_at(const struct ladder *ladder, size_t step) {
  return step + 1 == ladder->count ? 0 : step + 1;
}

/* Where two sizes look the same by every look, so does what is between: more ohms never undo what
 * fewer did. */
static void climb(struct task *task, const struct ladder *ladder, size_t low, size_t high) {
  oc_outcomes(*ways)[OC_LOOKS_MAX] = task->room->of_chains[ladder->chain];
  if (high - low < 2)
    return;
  const oc_outcomes *below = ways[way_at(ladder, low)];
  if (memcmp(below, ways[way_at(ladder, high)], task->count) == 0) {
    for (size_t step = low + 1; step < high; step++)
      memcpy(ways[way_at(ladder, step)], below, task->count);
    return;
  }
  size_t middle = (low + high) / 2;
  size_t way = way_at(ladder, middle);
  see_all(task, ladder->first + way, ways[way]);
  climb(task, ladder, low, middle);
  climb(task, ladder, middle, high);
}

static size_t count_of_ohms(const struct oc_failings *failings, size_t first) {
  size_t count = 0;
  while (first + count < failings->count &&
         failings->failure[first + count].thing == failings->failure[first].thing &&
         failings->failure[first + count].mode == OC_FAILURE_RESISTS)
    count++;
  return count;
}

static bool reads_volts(const struct oc_look *look) {
  return look->kind == OC_LOOK_VOLTS || look->kind == OC_LOOK_DROP;
}

/* What carries nothing may have any ohms; but open it leaves a meter in the air. */
static void see_idle_chain(struct task *task, oc_outcomes (*ways)[OC_LOOKS_MAX], size_t first,
                           size_t count) {
  bool any_volts = false;
  for (size_t i = 0; i < task->count; i++)
    any_volts = any_volts || reads_volts(&task->looks[i]);
  for (size_t way = 0; way < count; way++)
    for (size_t i = 0; i < task->count; i++)
      ways[way][i] = look_at(task->drive, &task->sound, &task->looks[i], &task->sound);
  if (any_volts)
    see_all(task, first, ways[0]);
}

static void see_chain(struct task *task, size_t chain, size_t first) {
  const struct ladder ladder = {chain, first, count_of_ohms(task->failings, first)};
  oc_outcomes(*ways)[OC_LOOKS_MAX] = task->room->of_chains[chain];
  size_t driven = task->drive->chains.chain_of[task->failings->failure[first].thing];
  if (!(task->sound.carried & oc_set_of(driven))) {
    see_idle_chain(task, ways, first, ladder.count);
    return;
  }
  see_all(task, first, ways[0]);
  if (ladder.count > 1)
    see_all(task, first + way_at(&ladder, 0), ways[way_at(&ladder, 0)]);
  climb(task, &ladder, 0, ladder.count - 1);
}

static void find_chains(struct task *task) {
  bool meets[OC_WIRING_POINTS];
  memcpy(meets, task->drive->chains.meets, sizeof meets);
  for (size_t i = 0; i < task->count; i++)
    if (reads_volts(&task->looks[i]))
      meets[task->looks[i].plus] = meets[task->looks[i].minus] = true;
  oc_chains_find(&task->chains, task->drive->wiring, meets);
}

/* Each chain by its thing with the most ways to have ohms. */
static void see_chains(struct task *task, size_t *rungs) {
  size_t firsts[OC_WIRING_THINGS];
  for (size_t i = 0; i < task->chains.count; i++)
    rungs[i] = 0;
  for (size_t i = 0; i < task->failings->count; i++) {
    size_t chain = chain_of(&task->chains, task->drive->setup, &task->failings->failure[i]);
    size_t count = way_of(task->failings, i) == 0 ? count_of_ohms(task->failings, i) : 0;
    if (chain == OC_WIRING_THINGS || count <= rungs[chain])
      continue;
    rungs[chain] = count;
    firsts[chain] = i;
  }
  for (size_t i = 0; i < task->chains.count; i++)
    if (rungs[i] > 0)
      see_chain(task, i, firsts[i]);
}

static void tell(struct task *task, struct oc_meaning *meanings, size_t failing,
                 const oc_outcomes *seen) {
  const struct oc_failure *failure = &task->failings->failure[failing];
  for (size_t i = 0; i < task->count; i++)
    meanings[i].foretold[failing] =
        is_own_fuse(task->drive, failure, &task->looks[i]) ? OC_OUTCOME_NOTHING : seen[i];
}

bool oc_meaning_find(struct oc_meaning_room *room, struct oc_drive *drive,
                     const struct oc_wiring *wiring, const struct oc_failings *failings,
                     const struct oc_setup *setup, const struct oc_look *looks, size_t count,
                     struct oc_meaning *meanings) {
  struct task task = {
      .room = room, .drive = drive, .failings = failings, .looks = looks, .count = count};
  size_t rungs[OC_WIRING_THINGS];
  oc_outcomes seen[OC_LOOKS_MAX];
  bool any = false;
  if (!oc_drive_sound(drive, wiring, setup, &task.sound))
    return false;
  for (size_t i = 0; i < count; i++) {
    meanings[i].good = is_number(&looks[i]) ? oc_outcome_within(looks[i].limits) : OC_OUTCOME_GOOD;
    meanings[i].useful = task.sound.steady && looks_good(drive, &task.sound, &looks[i]);
    any = any || meanings[i].useful;
  }
  if (!any)
    return true;
  find_chains(&task);
  see_chains(&task, rungs);
  for (size_t i = 0; i < failings->count; i++) {
    size_t chain = chain_of(&task.chains, setup, &failings->failure[i]);
    size_t way = way_of(failings, i);
    bool is_alike = chain < OC_WIRING_THINGS && way < rungs[chain];
    if (!is_alike)
      see_all(&task, i, seen);
    tell(&task, meanings, i, is_alike ? room->of_chains[chain][way] : seen);
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
