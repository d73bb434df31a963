/* SPDX-License-Identifier: MIT */
#include "words.h"

#include <string.h>

#include "number.h"
#include "status.h"

void oc_words_skip(struct oc_words *words) {
  while (words->length > 0 && (words->text[0] == ' ' || words->text[0] == '\t')) {
    words->text++;
    words->length--;
  }
}

static void take_bytes(struct oc_words *words, size_t count) {
  words->text += count;
  words->length -= count;
  oc_words_skip(words);
}

bool oc_words_number(struct oc_words *words, double *value) {
  oc_words_skip(words);
  size_t used;
  if (oc_number_scan(words->text, words->length, &used, value, NULL) != OHM_OK)
    return false;
  take_bytes(words, used);
  return true;
}

bool oc_words_take(struct oc_words *words, const char *word) {
  oc_words_skip(words);
  size_t length = strlen(word);
  if (words->length < length || memcmp(words->text, word, length) != 0)
    return false;
  take_bytes(words, length);
  return true;
}

bool oc_words_take_plus_minus(struct oc_words *words) {
  return oc_words_take(words, "+-") || oc_words_take(words, "\xC2\xB1");
}

ohm_status oc_words_fail(ohm_error *error, ohm_status status, const char *given, const char *what,
                         const char *advice) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  oc_text_add(&text, "\"");
  oc_text_add_quoted(&text, given, strlen(given));
  oc_text_add(&text, "\"");
  return oc_fail(error, status, quoted, what, advice, (const char *)NULL);
}
