/* SPDX-License-Identifier: MIT */
/*
 * What a test of a wiring means, worked out by driving it: every thing is failed in every way and
 * size that it can be, one at a time, and what would then be seen is compared with what is seen
 * of a sound one. Between two outcomes lies what an eye cannot tell, or a car that draws more or
 * less than its file says: there both may be seen.
 */
#ifndef OC_MEANING_H
#define OC_MEANING_H

#include "drive.h"
#include "outcome.h"

enum oc_look_kind {
  OC_LOOK_FAN,    /**< a motor turns as fast as that of a sound wiring */
  OC_LOOK_STILL,  /**< a motor stands still */
  OC_LOOK_BULB,   /**< what is across is bright */
  OC_LOOK_CLICK,  /**< a relay pulls in */
  OC_LOOK_FUSE,   /**< a fuse is whole afterwards */
  OC_LOOK_OHMS,   /**< of what is across, which has volts of its own */
  OC_LOOK_VOLTS,  /**< from one point to another */
  OC_LOOK_DROP,   /**< likewise, for each ampere of a motor */
  OC_LOOK_AMPERES /**< of a motor */
};

/** What is looked at. */
struct oc_look {
  enum oc_look_kind kind;
  size_t at;    /**< thing, place of what is across, relay */
  size_t motor; /**< of a drop */
  size_t plus;  /**< points that volts are read at */
  size_t minus;
  struct oc_limits limits; /**< of a number */
};

/** Every way in which one thing of a wiring can fail, thing by thing. */
struct oc_failings {
  size_t count;
  struct oc_failure failure[OC_FAILURES_MAX];
  bool matters[OC_FAILURES_MAX];
  oc_set blown[OC_FAILURES_MAX]; /**< fuses that it blew when the fan was asked for, a bit each */
  oc_set may_blow[OC_FAILURES_MAX]; /**< those that it blows when it is asked for otherwise */
};

/**
 * List them.
 *
 * In      asked  the ways of asking for the fan, a bit each: a failure matters when with one of
 *                them a motor stays below three quarters of the speed it has in a sound wiring,
 *                or a fuse blows
 * Return  false when the sound wiring cannot be solved
 */
bool oc_failings_list(struct oc_failings *failings, struct oc_drive *drive,
                      const struct oc_wiring *wiring, unsigned asked);

/** Find what fuses are blown, too, when the car is set up in some way, as a test may have done
 *  before the next. */
void oc_failings_blow(struct oc_failings *failings, struct oc_drive *drive,
                      const struct oc_wiring *wiring, const struct oc_setup *setup);

/** What a look tells of each failing. */
struct oc_meaning {
  bool useful;           /**< the sound wiring looks good */
  oc_outcomes good;      /**< those that are */
  oc_outcomes *foretold; /**< what may be seen of each failing; has to have room for them */
};

enum { OC_LOOKS_MAX = 128 };

/** Room to work in: large, one for a thread. */
struct oc_meaning_room {
  oc_outcomes of_chains[OC_WIRING_THINGS][OC_FAILURES_OF_ONE][OC_LOOKS_MAX];
};

/**
 * Work out looks at a car that is set up in one way.
 *
 * In      count  up to OC_LOOKS_MAX
 * Return  false when the sound wiring cannot be solved
 */
bool oc_meaning_find(struct oc_meaning_room *room, struct oc_drive *drive,
                     const struct oc_wiring *wiring, const struct oc_failings *failings,
                     const struct oc_setup *setup, const struct oc_look *looks, size_t count,
                     struct oc_meaning *meanings);

/** Things of which no failing that matters looks other than bad. */
oc_set oc_meaning_clears(const struct oc_meaning *meaning, const struct oc_failings *failings);

/** Things of which a failing looks bad. */
oc_set oc_meaning_accuses(const struct oc_meaning *meaning, const struct oc_failings *failings);

/** The most ohms of a thing that do not look bad; 0 for none, INFINITY for open. */
double oc_meaning_unseen_ohm(const struct oc_meaning *meaning, const struct oc_failings *failings,
                             size_t thing);

#endif
