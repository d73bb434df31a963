/* SPDX-License-Identifier: MIT */
/* What can be written on the command line: one table behind parsing, help and
 * the manual page. */
#ifndef OHM_OPTIONS_H
#define OHM_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

enum ohm_exit {
  OHM_EXIT_DONE = 0, /**< 0, 1 and 2 are the verdicts of check */
  OHM_EXIT_USAGE = 64,
  OHM_EXIT_DATA = 65,
  OHM_EXIT_MISSING = 66,
  OHM_EXIT_MEMORY = 71,
  OHM_EXIT_OUTPUT = 74
};

enum ohm_option_id {
  OHM_OPTION_AT,
  OHM_OPTION_PLACE,
  OHM_OPTION_FAN,
  OHM_OPTION_LIMIT,
  OHM_OPTION_BAND,
  OHM_OPTION_CURRENT,
  OHM_OPTION_BUDGET,
  OHM_OPTION_METER,
  OHM_OPTION_LEADS,
  OHM_OPTION_TOLERANCE,
  OHM_OPTION_LEVEL,
  OHM_OPTION_FROM,
  OHM_OPTION_TO,
  OHM_OPTION_STEP,
  OHM_OPTION_OUTPUT,
  OHM_OPTION_NEAR,
  OHM_OPTION_MODEL,
  OHM_OPTION_NAME,
  OHM_OPTION_SAW,
  OHM_OPTION_SENSOR,
  OHM_OPTION_PINS,
  OHM_OPTION_RECORD,
  OHM_OPTION_PRINT,
  OHM_OPTION_OHMS,
  OHM_OPTION_VOLTS,
  OHM_OPTION_REPORTED,
  OHM_OPTION_PULLUP,
  OHM_OPTION_REF,
  OHM_OPTION_RANGE,
  OHM_OPTION_NEGATIVE,
  OHM_OPTION_MOVES,
  OHM_OPTION_WHOLE,
  OHM_OPTION_OPEN,
  OHM_OPTION_SHORT,
  OHM_OPTION_WITHIN,
  OHM_OPTION_SERIES,
  OHM_OPTION_DRAWER,
  OHM_OPTION_ON,
  OHM_OPTION_OFF,
  OHM_OPTION_HIDDEN,
  OHM_OPTION_AIR,
  OHM_OPTION_HOURS,
  OHM_OPTION_HISTORY,
  OHM_OPTION_EXTEND,
  OHM_OPTION_TAU,
  OHM_OPTION_ALLOW,
  OHM_OPTION_WITH,
  OHM_OPTION_UNDISTURBED,
  OHM_OPTION_JSON,
  OHM_OPTION_HELP,
  OHM_OPTION_VERSION,
  OHM_OPTION_COUNT
};

struct ohm_option {
  enum ohm_option_id id;
  const char *name;     /**< "--at" */
  const char *argument; /**< "TEMP"; NULL when it takes none */
  const char *meaning;
  const char *fallback; /**< what holds without it; NULL when nothing does */
};

enum ohm_verb_id {
  OHM_VERB_CHECK,
  OHM_VERB_IDENTIFY,
  OHM_VERB_EXPLAIN,
  OHM_VERB_SOAK,
  OHM_VERB_DEGREES,
  OHM_VERB_OHMS,
  OHM_VERB_PARTS,
  OHM_VERB_TABLE,
  OHM_VERB_CHART,
  OHM_VERB_AUDIT,
  OHM_VERB_FIT,
  OHM_VERB_CIRCUIT,
  OHM_VERB_SIGNAL,
  OHM_VERB_SUBSTITUTE,
  OHM_VERB_FANPOINT,
  OHM_VERB_HELP,
  OHM_VERB_COUNT
};

struct ohm_verb {
  const char *name;
  const char *operands; /**< "SENSOR [OHMS...]" */
  size_t least, most;   /**< operands that must and may be given */
  const char *example;  /**< what to write, after the name of the verb */
  const char *summary;
  const char *description;          /**< paragraphs, a newline between them */
  const struct ohm_option *options; /**< --help is the last */
  size_t option_count;
};

/** A word and what it stands for. */
struct ohm_entry {
  const char *word;
  const char *meaning;
};

/** A list that ends at an entry without a word. */
typedef const struct ohm_entry *ohm_entries;

extern const struct ohm_verb ohm_verbs[OHM_VERB_COUNT];

/** What may be written in place of a verb. */
extern const struct ohm_option ohm_program_options[2];

extern const struct ohm_entry ohm_notations[];
extern const struct ohm_entry ohm_check_notations[]; /**< of check alone */
extern const struct ohm_entry ohm_exits[];
extern const char ohm_program_summary[];

/** Whether a verb is asked with a reading and answers with a verdict, its exit status. */
bool ohm_verb_judges(const struct ohm_verb *verb);

/** The verb of that name, or NULL. */
const struct ohm_verb *ohm_verb_find(const char *name);

/** Whether a verb takes a value written as word: "SENSOR". */
bool ohm_verb_takes(const struct ohm_verb *verb, const char *word);

/** The verb's option of that name, length bytes, or NULL. */
const struct ohm_option *ohm_option_find(const struct ohm_verb *verb, const char *name,
                                         size_t length);

#endif
