/* SPDX-License-Identifier: MIT */
/* What was seen on a circuit so far: lines of NAME=OUTCOME, and how each is judged. */
#ifndef OHM_RECORD_H
#define OHM_RECORD_H

#include "circuit.h"

enum { OHM_RECORD_MAX = 512 };

enum ohm_seen {
  OHM_SEEN_NOTHING,
  OHM_SEEN_GOOD,
  OHM_SEEN_BAD,
  OHM_SEEN_UNSURE, /**< too near a limit, or nothing to judge it by */
  OHM_SEEN_SKIPPED,
  OHM_SEEN_RENEWED, /**< of a link */
  OHM_SEEN_YES,     /**< of a fact: stated */
  OHM_SEEN_NONE     /**< of a tool: not to be had */
};

enum ohm_record_of { OHM_RECORD_TEST, OHM_RECORD_LINK, OHM_RECORD_FACT, OHM_RECORD_TOOL };

struct ohm_record_entry {
  enum ohm_record_of of;
  size_t index; /**< of the test, link or fact */
  enum ohm_seen seen;
  double number;    /**< what was read; NaN for a word */
  double amperes;   /**< of millivolts over a known fuse; else NaN */
  const char *tool; /**< its name, in the text of the record */
  size_t tool_length;
};

struct ohm_record {
  double fan_c; /**< as told, else the circuit's */
  size_t count;
  struct ohm_record_entry entries[OHM_RECORD_MAX];
};

/**
 * Read a record. Lines that are blank or begin with # say nothing. circuit=NAME, where it
 * is given, must name the circuit; fan=102C says where the fan is to start.
 *
 * Status  OHM_OK; OHM_BAD_SYNTAX; OHM_NOT_FOUND a name that is none of the circuit's;
 *         OHM_BAD_DEFINITION it is of another circuit; OHM_TOO_LARGE.
 */
ohm_status ohm_record_read(const struct ohm_circuit *circuit, const char *text, size_t length,
                           struct ohm_record *record, ohm_error *error);

/**
 * Judge a number by the limits of a test, its instrument's error counted.
 *
 * In      amperes, u_amperes  the current and its limit of error, for V/A; NaN when not known
 */
enum ohm_seen ohm_record_judge(const struct ohm_circuit *circuit, const struct ohm_test *test,
                               double number, double fan_c, double amperes, double u_amperes);

/** Limit of error of what a test's instrument shows. */
double ohm_record_error(const struct ohm_test *test, double number);

#endif
