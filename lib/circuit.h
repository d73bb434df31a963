/* SPDX-License-Identifier: MIT */
/* What a circuit holds: links that can fail, and tests that clear or accuse them. */
#ifndef OHM_CIRCUIT_H
#define OHM_CIRCUIT_H

#include "diagnosis.h"

enum { OHM_CIRCUIT_TESTS = 256, OHM_CIRCUIT_FACTS = 16, OHM_CIRCUIT_BALANCES = 8 };

enum ohm_link_kind {
  OHM_LINK_POWER,       /**< carries the fan's current: only that clears it */
  OHM_LINK_MOTOR,       /**< likewise; a brush motor of two wires, may be fed directly */
  OHM_LINK_BATTERY,     /**< the headlights are load enough for it */
  OHM_LINK_CONTROL,     /**< a coil, and what switches it */
  OHM_LINK_ELECTRONICS, /**< never fed from the battery */
  OHM_LINK_SENSING,
  OHM_LINK_COOLING,
  OHM_LINK_KINDS
};

struct ohm_link {
  char *cells[OHM_LINK_COLUMN_COUNT];
  enum ohm_link_kind kind;
  double odds; /**< that it is at fault; NaN when not told */
};

enum ohm_test_role {
  OHM_ROLE_ORDINARY,
  OHM_ROLE_SYMPTOM,  /**< does the fan start by itself? */
  OHM_ROLE_CONDITION /**< what has to hold before it should; bad: not asked yet */
};

enum ohm_test_load { OHM_LOAD_NONE, OHM_LOAD_LIGHTS, OHM_LOAD_BULB, OHM_LOAD_FAN, OHM_LOADS };

enum ohm_test_unit {
  OHM_UNIT_WORD, /**< good or bad */
  OHM_UNIT_VOLT,
  OHM_UNIT_AMPERE,
  OHM_UNIT_OHM,
  OHM_UNIT_CELSIUS,
  OHM_UNIT_DROP,           /**< volts, judged per ampere; the limit is in ohm */
  OHM_UNIT_FUSE,           /**< millivolts over a fuse */
  OHM_UNIT_FINDING_SENSOR, /**< a finding at the sensor's own pins */
  OHM_UNIT_FINDING_MODULE, /**< at the module's end of the wires */
  OHM_UNITS
};

/** A limit, absolute or relative to where the fan is to start; NaN for none. */
struct ohm_test_limit {
  double value;
  bool over_fan;
};

struct ohm_test {
  char *cells[OHM_TEST_COLUMN_COUNT];
  enum ohm_test_role role;
  enum ohm_test_load load;
  enum ohm_test_unit unit;
  double minutes;
  struct ohm_test_limit low;
  struct ohm_test_limit high;
  double error_percent; /**< of the instrument, of what is read */
  double error;         /**< likewise, in the unit */
  ohm_set clears;       /**< links that are sound when it is good */
  ohm_set accuses;      /**< links of which one is at fault when it is bad; 0: it tells nothing */
  size_t only_if;       /**< the fact without which bad tells nothing; else OHM_NO_PLACE */
  size_t amperes[2];    /**< tests that tell the current; else OHM_NO_PLACE */
};

#define OHM_NO_PLACE ((size_t)-1)

/** One test reads the sum of others: battery = feed drop + motor + ground drop. */
struct ohm_balance {
  char *text;
  size_t whole;
  size_t parts[4];
  size_t part_count;
};

struct ohm_fact {
  char *name;
  char *text;
};

struct ohm_circuit {
  char *name;
  char *description;
  char *source;
  double fan_c;
  double most_a; /**< the fan never draws more */
  size_t link_count;
  struct ohm_link *links;
  size_t test_count;
  struct ohm_test *tests;
  size_t fact_count;
  struct ohm_fact facts[OHM_CIRCUIT_FACTS];
  size_t balance_count;
  struct ohm_balance balances[OHM_CIRCUIT_BALANCES];
  size_t note_count;
  char **notes;
};

/** Place of a link, a test, a fact; OHM_NO_PLACE when there is none of that name. */
size_t ohm_circuit_link(const struct ohm_circuit *circuit, const char *name, size_t length);
size_t ohm_circuit_test(const struct ohm_circuit *circuit, const char *name, size_t length);
size_t ohm_circuit_fact(const struct ohm_circuit *circuit, const char *name, size_t length);

/** The links that are renewed together with this one, it among them. */
ohm_set ohm_circuit_part(const struct ohm_circuit *circuit, size_t link);

/** Whether a test asks for that tool. */
bool ohm_circuit_uses(const struct ohm_test *test, const char *tool, size_t length);

/** Whether any of a circuit's tests does. */
bool ohm_circuit_has_tool(const struct ohm_circuit *circuit, const char *tool, size_t length);

/** Take the next word, apart by spaces; false at the end. */
bool ohm_circuit_word(const char **text, const char **word, size_t *length);

/** Whether a length of text is that word. */
bool ohm_circuit_is(const char *text, size_t length, const char *word);

/** A limit as degrees or in its unit, the fan starting at fan_c. */
static inline double ohm_test_limit_at(struct ohm_test_limit limit, double fan_c) {
  return limit.over_fan ? fan_c + limit.value : limit.value;
}

#endif
