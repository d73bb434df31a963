/* SPDX-License-Identifier: MIT */
/*
 * What a wiring does: asked for in some way, with what of it failed and what was put across two of
 * its points. Relays pull in and let go at different volts, and a fuse that blew
 * stays blown, so it begins with everything at rest and goes on until nothing changes.
 */
#ifndef OC_DRIVE_H
#define OC_DRIVE_H

#include "../arithmetic/load.h"
#include "chain.h"
#include "failure.h"

enum { OC_SETUP_ACROSS = 4, OC_SETUP_WAYS = 8 };

/** Something across two points. */
struct oc_across {
  size_t plus;
  size_t minus;
  double watt;  /**< of a bulb; 0: it is a resistance, with volts behind it or none */
  double ohm;   /**< of a jumper with its clips, or of a meter */
  double volts; /**< of what measures ohms */
};

/** How the car is set up. */
struct oc_setup {
  unsigned asked;   /**< the ways in which the fan is asked for, a bit each */
  bool key;         /**< on */
  oc_set unplugged; /**< things that are out: pins of a plug, a relay with all of it, a bit each */
  oc_set spare;     /**< things in whose place sound ones are */
  size_t across_count;
  struct oc_across across[OC_SETUP_ACROSS];
};

struct oc_drive_result {
  bool steady;                          /**< else a relay chatters, and the rest is a moment */
  double volts[OC_WIRING_POINTS];       /**< of every point */
  bool fed[OC_WIRING_POINTS];           /**< whether it is joined to a post, and hangs not free */
  double across_a[OC_SETUP_ACROSS];     /**< through what is across */
  double motor_a[OC_WIRING_THINGS];     /**< of things that are motors */
  double motor_speed[OC_WIRING_THINGS]; /**< over that at 12 V */
  oc_set blown;                         /**< fuses, a bit each */
  unsigned pulled;                      /**< relays that are in, a bit each */
  double chain_a[OC_WIRING_THINGS];     /**< of each chain of the wiring as it is set up */
  oc_set carried;                       /**< chains that carried anything on the way, a bit each */
};

/** A wiring as it is set up, with room to work in: large, one for a thread. */
struct oc_drive {
  const struct oc_wiring *wiring;
  const struct oc_setup *setup;
  struct oc_chains chains;
  size_t node_of[OC_WIRING_POINTS];
  struct oc_network network;
  struct oc_ports seen;
};

/** Set a wiring up; both have to last. */
void oc_drive_begin(struct oc_drive *drive, const struct oc_wiring *wiring,
                    const struct oc_setup *setup);

/** Drive it, with what failed.  Return  false when it cannot be solved */
bool oc_drive_run(struct oc_drive *drive, struct oc_failures failures,
                  struct oc_drive_result *result);

/** Set a wiring up and drive it with nothing failed. */
bool oc_drive_sound(struct oc_drive *drive, const struct oc_wiring *wiring,
                    const struct oc_setup *setup, struct oc_drive_result *result);

#endif
