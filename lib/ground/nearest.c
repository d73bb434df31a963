/* SPDX-License-Identifier: MIT */
#include "internal.h"

#include <string.h>

enum { LONGEST = 64 };

static char lower(char c) {
  return (char)('A' <= c && c <= 'Z' ? c - 'A' + 'a' : c);
}

static bool same(char a, char b) {
  return lower(a) == lower(b);
}

static size_t least(size_t a, size_t b) {
  return a < b ? a : b;
}

/* Optimal string alignment: no stretch of letters is edited twice. */
static size_t distance(const char *a, size_t a_length, const char *b, size_t b_length) {
  size_t rows[3][LONGEST + 1];
  size_t *before = rows[0], *above = rows[1], *here = rows[2];
  for (size_t j = 0; j <= b_length; j++)
    here[j] = j;
  for (size_t i = 1; i <= a_length; i++) {
    size_t *oldest = before;
    before = above;
    above = here;
    here = oldest;
    here[0] = i;
    for (size_t j = 1; j <= b_length; j++) {
      size_t changed = above[j - 1] + !same(a[i - 1], b[j - 1]);
      here[j] = least(changed, least(above[j], here[j - 1]) + 1);
      if (i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1]))
        here[j] = least(here[j], before[j - 2] + 1);
    }
  }
  return here[b_length];
}

/* One slip is always near, unless nothing is left in common. */
static bool is_near(size_t edits, size_t longer) {
  size_t third = longer / 3;
  return edits < longer && edits <= (third > 1 ? third : 1);
}

const char *ohm_nearest(const char *word, const char *const *words, size_t count) {
  if (!word || !words)
    return NULL;
  size_t length = strlen(word);
  const char *nearest = NULL;
  size_t fewest = LONGEST + 1;
  for (size_t i = 0; length <= LONGEST && i < count; i++) {
    size_t other = words[i] ? strlen(words[i]) : LONGEST + 1;
    if (other > LONGEST)
      continue;
    size_t edits = distance(word, length, words[i], other);
    if (edits < fewest && is_near(edits, length > other ? length : other)) {
      nearest = words[i];
      fewest = edits;
    }
  }
  return nearest;
}
