/* SPDX-License-Identifier: MIT */
/* What was written on the command line, sorted by the option table. */
#ifndef SHELL_ARGUMENTS_H
#define SHELL_ARGUMENTS_H

#include "options.h"

enum { SHELL_REPEATED_MAX = 512 };

struct shell_arguments {
  const struct shell_verb *verb;
  const char *values[SHELL_OPTION_COUNT];   /**< NULL where not given; "" of a flag */
  const char *repeated[SHELL_REPEATED_MAX]; /**< every value of --saw or --sensor, in their order */
  size_t repeated_count;
  char **operands;
  size_t count;
};

/**
 * Sort the words after the verb; operands are moved to the front of words.
 *
 * Return  0, or SHELL_EXIT_USAGE after saying what to write. When --help was given
 *         nothing else is asked for.
 */
int shell_arguments_read(const struct shell_verb *verb, char **words, size_t count,
                         struct shell_arguments *arguments);

/** Say that there is no such verb and offer the nearest. Returns SHELL_EXIT_USAGE. */
int shell_verb_unknown(const char *name);

#endif
