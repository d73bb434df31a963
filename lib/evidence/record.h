/* SPDX-License-Identifier: MIT */
/* What was seen on a circuit so far: lines of NAME=OUTCOME, and how each is judged. */
#ifndef OC_RECORD_H
#define OC_RECORD_H

#include "../circuits/circuit.h"

enum { OC_RECORD_MAX = 512 };

enum oc_seen {
  OC_SEEN_NOTHING,
  OC_SEEN_GOOD,
  OC_SEEN_BAD,
  OC_SEEN_UNSURE, /**< too near a limit, or nothing to judge it by */
  OC_SEEN_SKIPPED,
  OC_SEEN_RENEWED, /**< of a link */
  OC_SEEN_YES,     /**< of a fact: stated */
  OC_SEEN_NONE     /**< of a tool: not to be had */
};

enum oc_record_of { OC_RECORD_TEST, OC_RECORD_LINK, OC_RECORD_FACT, OC_RECORD_TOOL };

struct oc_record_entry {
  enum oc_record_of of;
  size_t index; /**< of the test, link or fact */
  enum oc_seen seen;
  oc_outcomes shown; /**< of a word: the outcomes it may stand for */
  double number;     /**< what was read; NaN for a word */
  double amperes;    /**< of millivolts over a known fuse; else NaN */
  const char *tool;  /**< its name, in the text of the record */
  size_t tool_length;
};

struct oc_record {
  double fan_c; /**< as told, else the circuit's */
  size_t count;
  struct oc_record_entry entries[OC_RECORD_MAX];
};

/**
 * Read a record. Lines that are blank or begin with # say nothing. circuit=NAME, where it
 * is given, must name the circuit; fan=102C says where the fan is to start.
 *
 * Status  OHM_OK; OHM_BAD_SYNTAX; OHM_NOT_FOUND a name that is none of the circuit's;
 *         OHM_BAD_DEFINITION it is of another circuit; OHM_TOO_LARGE.
 */
ohm_status oc_record_read(const struct ohm_circuit *circuit, const char *text, size_t length,
                          struct oc_record *record, ohm_error *error);

/** Whether a line can be one of a record of the circuit.  Status  those of
 *  oc_record_read(). */
ohm_status oc_record_check(const struct ohm_circuit *circuit, const char *line, ohm_error *error);

/**
 * Judge a number by the limits of a test, its instrument's error counted.
 *
 * In      amperes, u_amperes  the current and its limit of error, for V/A; NaN when not known
 */
enum oc_seen oc_record_judge(const struct ohm_circuit *circuit, const struct oc_test *test,
                             double number, double fan_c, double amperes, double u_amperes);

/** The outcomes that a number may stand for, its instrument's error counted; all of them when there
 *  is nothing to judge it by. */
oc_outcomes oc_record_shown(const struct ohm_circuit *circuit, const struct oc_test *test,
                            double number, double fan_c, double amperes, double u_amperes);

/** Limit of error of what a test's instrument shows. */
double oc_record_error(const struct oc_test *test, double number);

#endif
