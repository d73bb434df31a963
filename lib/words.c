/* SPDX-License-Identifier: MIT */
#include "words.h"

#include <string.h>

#include "number.h"
#include "status.h"

void ohm_words_skip(struct ohm_words *words) {
  while (words->length > 0 && (words->text[0] == ' ' || words->text[0] == '\t')) {
    words->text++;
    words->length--;
  }
}

static void take_bytes(struct ohm_words *words, size_t count) {
  words->text += count;
  words->length -= count;
  ohm_words_skip(words);
}

bool ohm_words_number(struct ohm_words *words, double *value) {
  ohm_words_skip(words);
  size_t used;
  if (ohm_number_scan(words->text, words->length, &used, value, NULL) != OHM_OK)
    return false;
  take_bytes(words, used);
  return true;
}

bool ohm_words_take(struct ohm_words *words, const char *word) {
  ohm_words_skip(words);
  size_t length = strlen(word);
  if (words->length < length || memcmp(words->text, word, length) != 0)
    return false;
  take_bytes(words, length);
  return true;
}

bool ohm_words_take_plus_minus(struct ohm_words *words) {
  return ohm_words_take(words, "+-") || ohm_words_take(words, "\xC2\xB1");
}

ohm_status ohm_words_fail(ohm_error *error, ohm_status status, const char *given, const char *what,
                          const char *advice) {
  char quoted[64];
  struct ohm_text text = ohm_text_begin(quoted, sizeof quoted);
  ohm_text_add(&text, "\"");
  ohm_text_add_quoted(&text, given, strlen(given));
  ohm_text_add(&text, "\"");
  return ohm_fail(error, status, quoted, what, advice, (const char *)NULL);
}
