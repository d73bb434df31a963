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
  OC_LOOK_VOLTS,  /**< across what is across */
  OC_LOOK_OHMS,   /**< of what is across, which has volts of its own */
  OC_LOOK_DROP,   /**< volts across what is across, for each ampere of a motor */
  OC_LOOK_AMPERES /**< of a motor */
};

/** A test: how the car is set up, and what is looked at. */
struct oc_look {
  enum oc_look_kind kind;
  size_t at;               /**< thing, place of what is across, relay */
  size_t motor;            /**< of a drop */
  struct oc_limits limits; /**< of a number */
  struct oc_setup setup;
};

/** Every way in which one thing of a wiring can fail, thing by thing. */
struct oc_failings {
  size_t count;
  struct oc_failure failure[OC_FAILURES_MAX];
  bool matters[OC_FAILURES_MAX];
  oc_set blown[OC_FAILURES_MAX]; /**< fuses that it blew when the fan was asked for, a bit each */
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

/** What a test tells of each failing. */
struct oc_meaning {
  bool useful;                           /**< the sound wiring looks good */
  oc_outcomes good;                      /**< those that are */
  oc_outcomes foretold[OC_FAILURES_MAX]; /**< what may be seen of each failing */
};

/** Work a test out.  Return  false when the sound wiring cannot be solved */
bool oc_meaning_find(struct oc_drive *drive, const struct oc_wiring *wiring,
                     const struct oc_failings *failings, const struct oc_look *look,
                     struct oc_meaning *meaning);

/** Things of which no failing that matters looks other than bad. */
oc_set oc_meaning_clears(const struct oc_meaning *meaning, const struct oc_failings *failings);

/** Things of which a failing looks bad. */
oc_set oc_meaning_accuses(const struct oc_meaning *meaning, const struct oc_failings *failings);

/** The most ohms of a thing that do not look bad; 0 for none, INFINITY for open. */
double oc_meaning_unseen_ohm(const struct oc_meaning *meaning, const struct oc_failings *failings,
                             size_t thing);

#endif
