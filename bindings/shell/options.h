/* SPDX-License-Identifier: MIT */
/* What can be written on the command line: one table behind parsing, help and
 * the manual page. Options that are settings come from the library's list. */
#ifndef SHELL_OPTIONS_H
#define SHELL_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

enum shell_exit {
  SHELL_EXIT_DONE = 0, /**< 0, 1 and 2 are the verdicts */
  SHELL_EXIT_USAGE = 64,
  SHELL_EXIT_DATA = 65,
  SHELL_EXIT_MISSING = 66,
  SHELL_EXIT_MEMORY = 71,
  SHELL_EXIT_OUTPUT = 74
};

/** The command's own; those from SHELL_OPTION_SETTING on are settings, in the order of the
 *  library's list. */
enum shell_option_id {
  SHELL_OPTION_AT,
  SHELL_OPTION_BAND,
  SHELL_OPTION_BUDGET,
  SHELL_OPTION_FAN,
  SHELL_OPTION_FROM,
  SHELL_OPTION_HISTORY,
  SHELL_OPTION_MODEL,
  SHELL_OPTION_NAME,
  SHELL_OPTION_NEAR,
  SHELL_OPTION_OUTPUT,
  SHELL_OPTION_PINS,
  SHELL_OPTION_PRINT,
  SHELL_OPTION_RECORD,
  SHELL_OPTION_SAW,
  SHELL_OPTION_SENSOR,
  SHELL_OPTION_STEP,
  SHELL_OPTION_TO,
  SHELL_OPTION_JSON,
  SHELL_OPTION_HELP,
  SHELL_OPTION_VERSION,
  SHELL_OPTION_SETTING,
  SHELL_OPTION_COUNT = SHELL_OPTION_SETTING + 64
};

enum { SHELL_OPTION_NAME_SIZE = 24, SHELL_OPTION_TEXT_SIZE = 512 };

struct shell_option {
  int id;
  char name[SHELL_OPTION_NAME_SIZE]; /**< "--at" */
  const char *argument;              /**< "TEMP"; NULL when it takes none */
  const char *meaning;
  const char *fallback; /**< what holds without it; NULL when nothing does */
};

struct shell_arguments;

/** What a verb does. Returns the exit status. */
typedef int shell_verb_run(const struct shell_arguments *arguments);

/** A word and what it stands for. */
struct shell_entry {
  const char *word;
  const char *meaning;
};

/** A list that ends at an entry without a word. */
typedef const struct shell_entry *shell_entries;

struct shell_verb {
  const char *name;
  shell_verb_run *run;
  const char *operands; /**< "SENSOR [OHMS...]" */
  size_t least, most;   /**< operands that must and may be given */
  const char *example;  /**< what to write, after the name of the verb */
  const char *summary;
  const char *description;        /**< paragraphs, a newline between them */
  unsigned asks;                  /**< SHELL_ASKS() of each verb of the library */
  const struct shell_option *own; /**< options that are no settings; --help is the last */
  size_t own_count;
};

/** A bit for a verb of the library. */
#define SHELL_ASKS(verb) (1u << (verb))

extern const struct shell_verb shell_verbs[];
extern const size_t shell_verb_count;

/** What may be written in place of a verb. */
extern const struct shell_option shell_program_options[2];

extern const struct shell_entry shell_notations[];
extern const struct shell_entry shell_reading_notations[]; /**< of verbs that take readings */
extern const struct shell_entry shell_exits[];
extern const char shell_program_summary[];

/** Whether a verb takes readings of ohms at a temperature. */
bool shell_verb_reads(const struct shell_verb *verb);

/** Whether its exit status is a verdict. */
bool shell_verb_judges(const struct shell_verb *verb);

/** The verb of that name, or NULL. */
const struct shell_verb *shell_verb_find(const char *name);

/** Whether a verb takes a value written as word: "SENSOR". */
bool shell_verb_takes(const struct shell_verb *verb, const char *word);

/** An option of a verb by its place, settings first; false past the last, --help. */
bool shell_option_at(const struct shell_verb *verb, size_t index, struct shell_option *option);

/** The verb's option of that name, length bytes; false when it has none. */
bool shell_option_find(const struct shell_verb *verb, const char *name, size_t length,
                       struct shell_option *option);

/** The option that a setting is: "--fan" of fan_c. */
void shell_option_name(int setting, char name[SHELL_OPTION_NAME_SIZE]);

/** What an option means and what may be written for it. */
void shell_option_explain(const struct shell_option *option, char text[SHELL_OPTION_TEXT_SIZE]);

/** What an entry of shell_reading_notations means; of a reference with what the library takes
 *  it to be good to. */
void shell_notation_explain(const struct shell_entry *entry, char text[SHELL_OPTION_TEXT_SIZE]);

#endif
