/* SPDX-License-Identifier: MIT */
/* Taking a short notation apart, word by word. */
#ifndef OHM_WORDS_H
#define OHM_WORDS_H

#include "internal.h"

/** What is left of a text. Every function below first skips spaces, and takes
 *  nothing unless it answers true. */
struct ohm_words {
  const char *text;
  size_t length;
};

/** Skip spaces. */
void ohm_words_skip(struct ohm_words *words);

/** Take a number. */
bool ohm_words_number(struct ohm_words *words, double *value);

/** Take exactly these bytes; spaces after them are skipped too. */
bool ohm_words_take(struct ohm_words *words, const char *word);

/** Take "+-" or the plus-minus sign. */
bool ohm_words_take_plus_minus(struct ohm_words *words);

/** Fill in an error: "given" in quotes, then the two parts of a sentence. */
ohm_status ohm_words_fail(ohm_error *error, ohm_status status, const char *given, const char *what,
                          const char *advice);

#endif
