/* SPDX-License-Identifier: MIT */
/*
 * What a wiring does: one thing of it failed or none, asked for in some way, with something put
 * across two of its points. Relays pull in and let go at different volts, and a fuse that blew
 * stays blown, so it begins with everything at rest and goes on until nothing changes.
 */
#ifndef OC_DRIVE_H
#define OC_DRIVE_H

#include "wiring.h"

#include "../arithmetic/diagnosis.h"
#include "../arithmetic/load.h"

enum oc_failure_mode {
  OC_FAILURE_NONE,
  OC_FAILURE_RESISTS, /**< size: ohm more than it should have; INFINITY is open */
  OC_FAILURE_CLOSED,  /**< contact welded, output or switch always on */
  OC_FAILURE_NEVER,   /**< contact, output or switch never closes */
  OC_FAILURE_DRAGS,   /**< size: amperes before a motor turns; INFINITY is stuck */
  OC_FAILURE_RUBS     /**< size: ohm to where a wire rubbed through */
};

struct oc_failure {
  size_t thing;
  enum oc_failure_mode mode;
  double size;
};

enum { OC_SETUP_ACROSS = 4, OC_SETUP_WAYS = 8 };

/** Something across two points. */
struct oc_across {
  size_t plus;
  size_t minus;
  double watt; /**< of a bulb; 0: it is a resistance */
  double ohm;  /**< of a jumper with its clips, or of a meter */
};

/** How the car is set up. */
struct oc_setup {
  unsigned asked;   /**< the ways in which the fan is asked for, a bit each */
  bool key;         /**< on */
  oc_set unplugged; /**< things that are out: pins of a plug, a relay with all of it, a bit each */
  size_t across_count;
  struct oc_across across[OC_SETUP_ACROSS];
};

struct oc_drive_result {
  bool steady;                          /**< else a relay chatters, and the rest is a moment */
  double volts[OC_WIRING_POINTS];       /**< of every point */
  double across_a[OC_SETUP_ACROSS];     /**< through what is across */
  double motor_a[OC_WIRING_THINGS];     /**< of things that are motors */
  double motor_speed[OC_WIRING_THINGS]; /**< over that at 12 V */
  oc_set blown;                         /**< fuses, a bit each */
  unsigned pulled;                      /**< relays that are in, a bit each */
};

/** Room to work in: large, one for a thread. */
struct oc_drive {
  struct oc_network network;
  struct oc_ports seen;
};

/** Return  false when the wiring cannot be solved */
bool oc_drive_run(struct oc_drive *drive, const struct oc_wiring *wiring,
                  const struct oc_failure *failure, const struct oc_setup *setup,
                  struct oc_drive_result *result);

#endif
