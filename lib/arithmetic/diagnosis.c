/* SPDX-License-Identifier: MIT */
#include "diagnosis.h"

enum { OUTCOMES_MAX = 16 };

/* A part of which nothing is known. */
static const double odds_unknown = 0.01;

size_t oc_set_size(oc_set set) {
  size_t size = 0;
  for (; set; set &= set - 1)
    size++;
  return size;
}

/* ---- minimal sets ---- */

static bool explains_all(const oc_set *conflicts, size_t count, oc_set set) {
  for (size_t i = 0; i < count; i++)
    if (!(conflicts[i] & set))
      return false;
  return true;
}

/* Whether no part of the set can be done without. */
static bool is_minimal(const oc_set *conflicts, size_t count, oc_set set) {
  for (oc_set left = set; left; left &= left - 1)
    if (explains_all(conflicts, count, set & ~(left & (~left + 1))))
      return false;
  return true;
}

struct search {
  const oc_set *conflicts;
  size_t count;
  struct oc_diagnosis *found;
};

static void keep(const struct search *search, oc_set set) {
  struct oc_diagnosis *found = search->found;
  if (!explains_all(search->conflicts, search->count, set) ||
      !is_minimal(search->conflicts, search->count, set))
    return;
  if (found->count < OC_DIAGNOSIS_ROOM)
    found->sets[found->count++] = set;
  else
    found->complete = false;
}

/* Every set of so many further parts out of left, each once. */
static void extend(const struct search *search, oc_set set, oc_set left, size_t further) {
  if (further == 0) {
    keep(search, set);
    return;
  }
  for (; left; left &= left - 1)
    extend(search, set | (left & (~left + 1)), left & (left - 1), further - 1);
}

void oc_diagnosis_find(const oc_set *conflicts, size_t count, struct oc_diagnosis *diagnosis) {
  const struct search search = {conflicts, count, diagnosis};
  oc_set all = 0;
  for (size_t i = 0; i < count; i++)
    all |= conflicts[i];
  diagnosis->count = 0;
  diagnosis->complete = true;
  for (size_t size = 0; size <= OC_DIAGNOSIS_MOST; size++) {
    if (size > 2 && diagnosis->count > 0 && size > oc_set_size(diagnosis->sets[0]) + 1)
      return;
    extend(&search, 0, all, size);
  }
}

/* ---- how probable ---- */

void oc_diagnosis_weigh(const struct oc_diagnosis *diagnosis, const double *odds, double *weights) {
  double sum = 0;
  for (size_t i = 0; i < diagnosis->count; i++) {
    weights[i] = 1;
    for (size_t part = 0; part < OC_DIAGNOSIS_PARTS; part++)
      if (diagnosis->sets[i] & oc_set_of(part))
        weights[i] *= odds ? odds[part] : odds_unknown;
    sum += weights[i];
  }
  for (size_t i = 0; i < diagnosis->count; i++)
    weights[i] /= sum;
}

/* ---- what a test tells ---- */

static double entropy(const double *p, int count, double sum) {
  double bits = 0;
  for (int i = 0; i < count; i++)
    if (p[i] > 0)
      bits -= p[i] / sum * log2(p[i] / sum);
  return bits;
}

/* Add a set's share to each outcome that it leaves open. */
static void spread(double *p, double weight, unsigned predicted) {
  int open = 0;
  for (int i = 0; i < OUTCOMES_MAX; i++)
    open += (predicted >> i & 1) != 0;
  for (int i = 0; i < OUTCOMES_MAX; i++)
    if (predicted >> i & 1)
      p[i] += weight / open;
}

/* That of the outcome, less what of it would be left were the group known. */
double oc_diagnosis_information(const double *weights, const oc_set *groups,
                                const unsigned *predicted, size_t count) {
  double all[OUTCOMES_MAX] = {0};
  double left = 0;
  for (size_t next, i = 0; i < count; i = next) {
    double own[OUTCOMES_MAX] = {0};
    double sum = 0;
    for (next = i; next < count && (next == i || (groups && groups[next] == groups[i])); next++) {
      spread(all, weights[next], predicted[next]);
      spread(own, weights[next], predicted[next]);
      sum += weights[next];
    }
    if (sum > 0)
      left += sum * entropy(own, OUTCOMES_MAX, sum);
  }
  return fmax(0, entropy(all, OUTCOMES_MAX, 1) - left);
}
