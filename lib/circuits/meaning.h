/* SPDX-License-Identifier: MIT */
/*
 * What a test of a wiring means, worked out by driving it: every thing is failed in every way and
 * size that it can be, one at a time, and what would then be seen is compared with what is good.
 * A thing is cleared when no failure of it that matters would have looked good, and accused when
 * one would have looked bad. Between good and bad lies what an eye cannot tell: that clears
 * nothing and accuses nobody.
 */
#ifndef OC_MEANING_H
#define OC_MEANING_H

#include "drive.h"

enum oc_look_kind {
  OC_LOOK_FAN,   /**< a motor turns: at full speed, or not */
  OC_LOOK_BULB,  /**< what is across is bright */
  OC_LOOK_CLICK, /**< a relay pulls in */
  OC_LOOK_FUSE   /**< a fuse is whole afterwards */
};

/** A test: how the car is set up, and what is looked at. */
struct oc_look {
  enum oc_look_kind kind;
  size_t at; /**< thing, place of what is across, relay */
  struct oc_setup setup;
};

enum oc_seen { OC_SEEN_GOOD, OC_SEEN_UNSURE, OC_SEEN_BAD };

/** What a test tells. */
struct oc_meaning {
  bool useful;                         /**< the sound wiring looks good */
  oc_set clears;                       /**< things */
  oc_set accuses;                      /**< things */
  double unseen_ohm[OC_WIRING_THINGS]; /**< of resistances in series: the most that looked good;
                                            0 for none, INFINITY for open */
};

/** What is seen of a wiring with one thing failed; NULL: none. */
enum oc_seen oc_meaning_see(struct oc_drive *drive, const struct oc_wiring *wiring,
                            const struct oc_failure *failure, const struct oc_look *look);

enum { OC_FAULTS_MAX = OC_WIRING_THINGS * 20 };

/** Every way in which one thing of a wiring can fail, thing by thing. */
struct oc_faults {
  size_t count;
  struct oc_failure failure[OC_FAULTS_MAX];
  bool matters[OC_FAULTS_MAX];
};

/**
 * List them.
 *
 * In      asked  the ways of asking for the fan, a bit each: a failure matters when with one of
 *                them a motor stays below three quarters of its speed, or a fuse blows
 */
void oc_faults_list(struct oc_faults *faults, struct oc_drive *drive,
                    const struct oc_wiring *wiring, unsigned asked);

/** Work a test out.  Return  false when the sound wiring cannot be solved */
bool oc_meaning_find(struct oc_drive *drive, const struct oc_wiring *wiring,
                     const struct oc_faults *faults, const struct oc_look *look,
                     struct oc_meaning *meaning);

#endif
