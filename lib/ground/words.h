/* SPDX-License-Identifier: MIT */
/* Taking a short notation apart, word by word. */
#ifndef OC_WORDS_H
#define OC_WORDS_H

#include "internal.h"

/** What is left of a text. Every function below first skips spaces, and takes
 *  nothing unless it answers true. */
struct oc_words {
  const char *text;
  size_t length;
};

/** Skip spaces. */
void oc_words_skip(struct oc_words *words);

/** Take a number. */
bool oc_words_number(struct oc_words *words, double *value);

/** Take exactly these bytes; spaces after them are skipped too. */
bool oc_words_take(struct oc_words *words, const char *word);

/** Take "+-" or the plus-minus sign. */
bool oc_words_take_plus_minus(struct oc_words *words);

/** Fill in an error: "given" in quotes, then the two parts of a sentence. */
ohm_status oc_words_fail(ohm_error *error, ohm_status status, const char *given, const char *what,
                         const char *advice);

#endif
