/* SPDX-License-Identifier: MIT */
/* The ways in which the things of a wiring fail. */
#ifndef OC_FAILURE_H
#define OC_FAILURE_H

#include "../arithmetic/diagnosis.h"
#include "wiring.h"

enum oc_failure_mode {
  OC_FAILURE_NONE,
  OC_FAILURE_RESISTS, /**< size: ohm more than it should have; INFINITY is open */
  OC_FAILURE_CLOSED,  /**< contact welded, output or switch always on */
  OC_FAILURE_NEVER,   /**< contact, output or switch never closes */
  OC_FAILURE_DRAGS,   /**< size: amperes before a motor turns; INFINITY is stuck */
  OC_FAILURE_RUBS,    /**< size: ohm to where a wire rubbed through */
  OC_FAILURE_FLAT,    /**< size: volts a battery lacks */
  OC_FAILURE_SILENT,  /**< some ways of asking do nothing */
  OC_FAILURE_ASKS     /**< some ways are asked all the time */
};

struct oc_failure {
  size_t thing;
  enum oc_failure_mode mode;
  double size;
  unsigned ways; /**< that an asker loses, or asks in, a bit each */
};

/** Failures that stand together. */
struct oc_failures {
  size_t count;
  const struct oc_failure *failure;
  oc_set blown; /**< fuses that blew before, a bit each */
};

enum { OC_FAILURES_OF_ONE = 20, OC_FAILURES_MAX = OC_WIRING_THINGS * OC_FAILURES_OF_ONE };

/** The ways one thing can fail: up to OC_FAILURES_OF_ONE of them.  Return  how many */
size_t oc_failure_ways(const struct oc_wiring *wiring, size_t thing, struct oc_failure *ways);

#endif
