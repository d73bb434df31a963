/* SPDX-License-Identifier: MIT */
/* Which part of a circuit is at fault. */
#ifndef OC_ISOLATION_H
#define OC_ISOLATION_H

#include "../bench/finding.h"

/**
 * Which part of a circuit is at fault, from what was seen so far, and which test to make
 * next. Nothing is kept between calls: the record is the whole state.
 *
 * A record is lines of NAME=OUTCOME, blank ones and those that begin with # aside:
 *
 *     fuse-look=good       of a test: good, bad, skip or a number
 *     battery-volts=12.4
 *     fuse-mv=12mV@ATO30   millivolts over a fuse of that rating
 *     sensor-pins=within   of a finding: within, outside, undecided
 *     fuse=renewed         a link that was renewed or repaired
 *     clamp=none           a tool that is not to be had
 *     ac-runs-fan=yes      a fact that the maker states
 *     fan=102C             where the fan is to start
 *     circuit=NAME         which circuit the record is of
 *
 * A good test clears links for certain; a bad one says that one of those it accuses is at
 * fault. What explains all of it with the fewest faults is suspect; a part is at fault
 * when a bad test leaves nothing else. The next test is the one that is expected to tell
 * most in a minute, among those the tools allow.
 *
 * In      record  length bytes; may be NULL when length is 0
 * Out     finding every field absent unless OHM_OK. Its state is
 *                 closed         the fan has started by itself: within
 *                 found          buy and repair say what: outside
 *                 not_asked      the fan was not really asked for: undecided
 *                 go_on          next is a test: undecided
 *                 no_test_left   none is left that tells anything: undecided
 *                 contradiction  tests that cannot all be right: undecided
 *                 too_hot        12 degrees above where the fan starts: engine off
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_NOT_FOUND a name that is none of
 *         the circuit's; OHM_BAD_DEFINITION the record is of another circuit;
 *         OHM_TOO_LARGE more than 512 lines; OHM_NO_MEMORY.
 * Source  J. de Kleer and B. C. Williams, Artificial Intelligence 32 (1987) 97-130.
 */
ohm_status oc_isolation_judge(const ohm_circuit *circuit, const char *record, size_t length,
                              ohm_finding *finding, ohm_error *error);

/**
 * What a finding on the sensor says to a circuit, as a line of its record: a sensor that
 * is within at its own pins leaves plug and wires open. Only what is good enough for the
 * fan as well is within.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when the
 *         finding says nothing to this circuit, or an argument is NULL.
 * Status  cannot fail.
 */
size_t oc_isolation_print_finding(const ohm_circuit *circuit, const ohm_finding *finding,
                                  char *buffer, size_t size);

#endif
