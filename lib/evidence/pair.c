/* SPDX-License-Identifier: MIT */
#include "pair.h"

#include <string.h>

#include "../ground/words.h"

static const struct terminal {
  const char *name;
  int terminal;
} terminals[] = {{"1", OC_TERMINAL_1},        {"2", OC_TERMINAL_1 + 1}, {"3", OC_TERMINAL_1 + 2},
                 {"4", OC_TERMINAL_1 + 3},    {"5", OC_TERMINAL_1 + 4}, {"6", OC_TERMINAL_1 + 5},
                 {"7", OC_TERMINAL_1 + 6},    {"8", OC_TERMINAL_1 + 7}, {"9", OC_TERMINAL_1 + 8},
                 {"A", OC_TERMINAL_A},        {"B", OC_TERMINAL_A + 1}, {"C", OC_TERMINAL_A + 2},
                 {"D", OC_TERMINAL_A + 3},    {"E", OC_TERMINAL_A + 4}, {"F", OC_TERMINAL_A + 5},
                 {"G", OC_TERMINAL_A + 6},    {"H", OC_TERMINAL_A + 7}, {"body", OC_TERMINAL_BODY},
                 {"minus", OC_TERMINAL_MINUS}};

enum { TERMINALS = sizeof terminals / sizeof terminals[0] };

const char *oc_terminal_name(int terminal) {
  for (size_t i = 0; i < TERMINALS; i++)
    if (terminals[i].terminal == terminal)
      return terminals[i].name;
  return NULL;
}

static bool take_terminal(struct oc_words *words, int *terminal) {
  for (size_t i = 0; i < TERMINALS; i++)
    if (oc_words_take(words, terminals[i].name)) {
      *terminal = terminals[i].terminal;
      return true;
    }
  return false;
}

ohm_status oc_pair_read(const char *text, oc_pair *pair, ohm_error *error) {
  static const oc_pair nothing = OC_PAIR_INIT;
  static const char advice[] = "write two pins and what was read, as 1-2=2.31k, B-D=OL or "
                               "1-body=480; pins are 1 to 9 or A to H";
  if (pair)
    *pair = nothing;
  if (!text || !pair)
    return OHM_NULL_ARGUMENT;
  struct oc_words words = {text, strlen(text)};
  oc_pair read = nothing;
  if (!take_terminal(&words, &read.from) || !oc_words_take(&words, "-") ||
      !take_terminal(&words, &read.to) || !oc_words_take(&words, "="))
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no pair of pins; ", advice);
  if (read.from == read.to)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has one pin twice; ", advice);
  ohm_status status = oc_reading_read(words.text, &read.reading, error);
  if (status == OHM_OK)
    *pair = read;
  return status;
}

bool oc_pair_is_meant(const char *name) {
  struct oc_words words = {name, strlen(name)};
  int terminal;
  return take_terminal(&words, &terminal) && oc_words_take(&words, "-") &&
         take_terminal(&words, &terminal) && words.length == 0;
}
