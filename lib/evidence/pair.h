/* SPDX-License-Identifier: MIT */
/* A reading across two pins of a body. */
#ifndef OC_PAIR_H
#define OC_PAIR_H

#include "meter.h"

/** What probes touch: pins 1 to 9, or A to H from OC_TERMINAL_A on. */
typedef enum oc_terminal {
  OC_TERMINAL_1 = 1,
  OC_TERMINAL_A = 11,
  OC_TERMINAL_BODY = 30, /**< the metal body of the sensor */
  OC_TERMINAL_MINUS      /**< battery negative */
} oc_terminal;

/** A reading across two terminals. */
typedef struct oc_pair {
  int from; /**< an oc_terminal */
  int to;
  oc_reading reading;
} oc_pair;

#define OC_PAIR_INIT                                                                               \
  { 0, 0, OC_READING_INIT }

/**
 * Read a pair as 1-2=2.31k, B-D=OL, 1-body=480, 1-minus=480: two terminals, and what the
 * display showed as oc_reading_read() has it.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX also one terminal twice;
 *         OHM_OUT_OF_RANGE below 0 or above 1e12 ohm.
 */
ohm_status oc_pair_read(const char *text, oc_pair *pair, ohm_error *error);

/** What a terminal is called; NULL when it is none. */
const char *oc_terminal_name(int terminal);

/** Whether a text is two terminals with a - between, and nothing else. */
bool oc_pair_is_meant(const char *name);

#endif
