/* SPDX-License-Identifier: MIT */
/* What a circuit holds: links that can fail, and tests that clear or accuse them. */
#ifndef OC_CIRCUIT_H
#define OC_CIRCUIT_H

#include "../arithmetic/diagnosis.h"
#include "../ground/complaints.h"
#include "outcome.h"
#include "wiring.h"

enum { OC_CIRCUIT_TESTS = 256, OC_CIRCUIT_FACTS = 16, OC_CIRCUIT_BALANCES = 8 };

/** Of all links together. */
enum { OC_FAILINGS_MAX = 20 * OC_DIAGNOSIS_PARTS };

enum oc_link_kind {
  OHM_LINK_POWER,       /**< carries the fan's current: only that clears it */
  OHM_LINK_MOTOR,       /**< likewise; a brush motor of two wires, may be fed directly */
  OHM_LINK_BATTERY,     /**< the headlights are load enough for it */
  OHM_LINK_CONTROL,     /**< a coil, and what switches it */
  OHM_LINK_ELECTRONICS, /**< never fed from the battery */
  OHM_LINK_SENSING,
  OHM_LINK_COOLING,
  OHM_LINK_KINDS
};

struct oc_link {
  char *cells[OHM_LINK_COLUMN_COUNT];
  int line; /**< of its file */
  enum oc_link_kind kind;
  double odds; /**< that it is at fault; NaN when not told */
};

enum oc_test_role {
  OC_ROLE_ORDINARY,
  OC_ROLE_SYMPTOM,   /**< does the fan start by itself? */
  OC_ROLE_CONDITION, /**< what has to hold before it should; bad: not asked yet */
  OC_ROLE_PROOF      /**< what has to hold of a fan that runs before the case is closed */
};

enum oc_test_load { OC_LOAD_NONE, OC_LOAD_LIGHTS, OC_LOAD_BULB, OC_LOAD_FAN, OC_LOADS };

enum oc_test_unit {
  OC_UNIT_WORD, /**< good or bad */
  OC_UNIT_VOLT,
  OC_UNIT_AMPERE,
  OC_UNIT_OHM,
  OC_UNIT_CELSIUS,
  OC_UNIT_DROP,           /**< volts, judged per ampere; the limit is in ohm */
  OC_UNIT_FUSE,           /**< millivolts over a fuse */
  OC_UNIT_FINDING_SENSOR, /**< a finding at the sensor's own pins */
  OC_UNIT_FINDING_MODULE, /**< at the module's end of the wires */
  OC_UNITS
};

/** A limit, absolute or relative to where the fan is to start; NaN for none. */
struct oc_test_limit {
  double value;
  bool over_fan;
};

struct oc_test {
  char *cells[OHM_TEST_COLUMN_COUNT];
  int line;      /**< of its file */
  bool is_usual; /**< it follows from the wiring, and is not of the file */
  enum oc_test_role role;
  enum oc_test_load load;
  enum oc_test_unit unit;
  double minutes;
  struct oc_test_limit low;
  struct oc_test_limit high;
  double error_percent;  /**< of the instrument, of what is read */
  double error;          /**< likewise, in the unit */
  oc_set clears;         /**< links that are sound when it is good */
  oc_set accuses;        /**< links of which one is at fault when it is bad; 0: it tells nothing */
  oc_outcomes *foretold; /**< of each failing of the circuit, what may be seen */
  size_t only_if;        /**< the fact without which bad tells nothing; else OC_NO_PLACE */
  size_t amperes[2];     /**< tests that tell the current; else OC_NO_PLACE */
};

#define OC_NO_PLACE ((size_t)-1)

/** One test reads the sum of others: battery = feed drop + motor + ground drop. */
struct oc_balance {
  char *text;
  size_t whole;
  size_t parts[4];
  size_t part_count;
};

/** One way in which a link can fail. Of a link of which nothing is known but its name, one stands
 *  for all. */
struct oc_failing {
  unsigned char link;
  bool matters; /**< a fan would stand still, or be slow */
  double ohm;   /**< more than there should be; NaN where it has no ohms */
  double share; /**< how often it is this way, against the others of the link */
};

struct oc_fact {
  char *name;
  char *text;
};

/** The columns of a wiring's rows; the last five are a link's too. */
enum oc_wiring_column {
  OC_WIRING_LINK,
  OC_WIRING_KIND,
  OC_WIRING_FROM,
  OC_WIRING_TO,
  OC_WIRING_VALUE,
  OC_WIRING_BY,
  OC_WIRING_PART,
  OC_WIRING_ACTION,
  OC_WIRING_RENEW,
  OC_WIRING_ODDS,
  OC_WIRING_STANDING,
  OC_WIRING_COLUMNS
};

extern const char *const oc_wiring_columns[OC_WIRING_COLUMNS];

enum { OC_WIRING_ROWS = 64 };

struct oc_wiring_row {
  int line;
  char *cells[OC_WIRING_COLUMNS];
};

/** A wiring with the rows it was typed as. */
struct oc_wired {
  struct oc_wiring wiring;
  size_t row_count;
  struct oc_wiring_row rows[OC_WIRING_ROWS];
};

struct ohm_circuit {
  char *name;
  char *description;
  char *source;
  double fan_c;
  double most_a; /**< the fan never draws more */
  size_t link_count;
  struct oc_link *links;
  size_t test_count;
  struct oc_test *tests;
  struct oc_wired *wired; /**< whose things are the links; NULL of a circuit that lists them */
  size_t failing_count;
  struct oc_failing *failings;
  size_t fact_count;
  struct oc_fact facts[OC_CIRCUIT_FACTS];
  size_t balance_count;
  struct oc_balance balances[OC_CIRCUIT_BALANCES];
  struct oc_notes notes;
};

/** The columns in the order of their constants. */
extern const char *const oc_link_columns[OHM_LINK_COLUMN_COUNT];
extern const char *const oc_test_columns[OHM_TEST_COLUMN_COUNT];

/** Place of a link, a test, a fact; OC_NO_PLACE when there is none of that name. */
size_t oc_circuit_link(const struct ohm_circuit *circuit, const char *name, size_t length);
size_t oc_circuit_test(const struct ohm_circuit *circuit, const char *name, size_t length);
size_t oc_circuit_fact(const struct ohm_circuit *circuit, const char *name, size_t length);

/** The links that are renewed together with this one, it among them. */
oc_set oc_circuit_part(const struct ohm_circuit *circuit, size_t link);

/** Whether a test asks for that tool. */
bool oc_circuit_uses(const struct oc_test *test, const char *tool, size_t length);

/** Whether any of a circuit's tests does. */
bool oc_circuit_has_tool(const struct ohm_circuit *circuit, const char *tool, size_t length);

/** Take the next word, apart by spaces; false at the end. */
bool oc_circuit_word(const char **text, const char **word, size_t *length);

/** Whether a length of text is that word. */
bool oc_circuit_is(const char *text, size_t length, const char *word);

/** Give back what a test holds. */
void oc_test_free(struct oc_test *test);

/** A limit as degrees or in its unit, the fan starting at fan_c. */
static inline double oc_test_limit_at(struct oc_test_limit limit, double fan_c) {
  return limit.over_fan ? fan_c + limit.value : limit.value;
}

static inline struct oc_limits oc_test_limits(const struct oc_test *test, double fan_c) {
  return (struct oc_limits){oc_test_limit_at(test->low, fan_c),
                            oc_test_limit_at(test->high, fan_c)};
}

/** The outcomes that are good of a test, and all it has. */
oc_outcomes oc_test_good(const struct oc_test *test);
oc_outcomes oc_test_any(const struct oc_test *test);

#endif
