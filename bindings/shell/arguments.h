/* SPDX-License-Identifier: MIT */
/* What was written on the command line, sorted by the option table. */
#ifndef OHM_ARGUMENTS_H
#define OHM_ARGUMENTS_H

#include "options.h"

enum { OHM_REPEATED_MAX = 512 };

struct ohm_arguments {
  const struct ohm_verb *verb;
  const char *values[OHM_OPTION_COUNT];   /**< NULL where not given; "" of a flag */
  const char *repeated[OHM_REPEATED_MAX]; /**< every value of --saw or --sensor, in their order */
  size_t repeated_count;
  char **operands;
  size_t count;
};

/**
 * Sort the words after the verb; operands are moved to the front of words.
 *
 * Return  0, or OHM_EXIT_USAGE after saying what to write. When --help was given
 *         nothing else is asked for.
 */
int ohm_arguments_read(const struct ohm_verb *verb, char **words, size_t count,
                       struct ohm_arguments *arguments);

/** Say that there is no such verb and offer the nearest. Returns OHM_EXIT_USAGE. */
int ohm_verb_unknown(const char *name);

#endif
