/* SPDX-License-Identifier: MIT */
#include "misprint.h"

#include <string.h>

struct search {
  double low;
  double middle;
  double high;
  struct oc_misprint best;
};

static bool is_digit(char c) {
  return '0' <= c && c <= '9';
}

static double off_middle(const struct search *search, double value) {
  return fabs(value - search->middle);
}

static void keep(struct search *search, enum oc_misprint_kind kind, double value,
                 const char *text) {
  struct oc_misprint *best = &search->best;
  bool better = best->kind == OC_MISPRINT_NONE ||
                (best->kind == kind && off_middle(search, value) < off_middle(search, best->value));
  if (!better || !oc_inside(search->low, value, search->high))
    return;
  best->kind = kind;
  best->value = value;
  strcpy(best->text, text);
}

static void consider(struct search *search, enum oc_misprint_kind kind, const char *text) {
  double value;
  if (ohm_number_read(text, strlen(text), &value) == OHM_OK)
    keep(search, kind, value, text);
}

/* Every kind of slip is tried at each character in turn. */

static void try_exchange(struct search *search, char *text, size_t i) {
  /* Past a decimal point to the next digit. */
  size_t next = text[i + 1] == '.' ? i + 2 : i + 1;
  if (!is_digit(text[next]))
    return;
  char digit = text[i];
  text[i] = text[next];
  text[next] = digit;
  consider(search, OC_MISPRINT_EXCHANGE, text);
  text[next] = text[i];
  text[i] = digit;
}

static void try_digit(struct search *search, char *text, size_t i) {
  char digit = text[i];
  for (text[i] = '0'; text[i] <= '9'; text[i]++)
    if (text[i] != digit)
      consider(search, OC_MISPRINT_DIGIT, text);
  text[i] = digit;
}

static void try_lost(struct search *search, const char *text, size_t i) {
  char longer[OC_MISPRINT_DIGITS + 2];
  memcpy(longer, text, i);
  strcpy(longer + i + 1, text + i);
  for (longer[i] = '0'; longer[i] <= '9'; longer[i]++)
    consider(search, OC_MISPRINT_LOST, longer);
}

static void try_added(struct search *search, const char *text, size_t i) {
  char shorter[OC_MISPRINT_DIGITS + 1];
  memcpy(shorter, text, i);
  strcpy(shorter + i, text + i + 1);
  consider(search, OC_MISPRINT_ADDED, shorter);
}

static void try_point(struct search *search, const char *text) {
  static const char *const powers[] = {"e1", "e-1", "e3", "e-3", "e2", "e-2"};
  for (size_t i = 0; i < sizeof powers / sizeof powers[0]; i++) {
    char moved[OHM_NUMBER_SIZE];
    double value;
    strcpy(moved, text);
    strcat(moved, powers[i]);
    if (ohm_number_read(moved, strlen(moved), &value) != OHM_OK)
      continue;
    ohm_number_print(value, moved, sizeof moved);
    keep(search, OC_MISPRINT_POINT, value, moved);
  }
}

struct oc_misprint oc_misprint_undo(const char *text, double low, double middle, double high) {
  struct search search = {low, middle, high, {OC_MISPRINT_NONE, NAN, ""}};
  char work[OC_MISPRINT_DIGITS + 1];
  size_t length = strlen(text);
  double value;
  if (length == 0 || length > OC_MISPRINT_DIGITS || strspn(text, "-.0123456789") != length ||
      ohm_number_read(text, length, &value) != OHM_OK)
    return search.best;
  strcpy(work, text);
  try_point(&search, work);
  for (size_t i = 0; i < length; i++)
    if (is_digit(work[i]))
      try_exchange(&search, work, i);
  for (size_t i = 0; i < length; i++)
    if (is_digit(work[i]))
      try_digit(&search, work, i);
  for (size_t i = 0; i <= length; i++)
    try_lost(&search, work, i);
  for (size_t i = 0; i < length; i++)
    if (is_digit(work[i]))
      try_added(&search, work, i);
  return search.best;
}

const char *oc_misprint_words(enum oc_misprint_kind kind) {
  static const char *const words[] = {"with its decimal point moved", "with two digits exchanged",
                                      "with one other digit",         "with a digit put in",
                                      "with a digit left out",        ""};
  return words[kind];
}
