/* SPDX-License-Identifier: MIT */
#include "bigint.h"

#include <string.h>

static void trim(struct oc_bigint *a) {
  while (a->count > 0 && a->limb[a->count - 1] == 0)
    a->count--;
}

void oc_bigint_set(struct oc_bigint *a, uint64_t value) {
  a->limb[0] = (uint32_t)value;
  a->limb[1] = (uint32_t)(value >> 32);
  a->count = 2;
  trim(a);
}

void oc_bigint_multiply(struct oc_bigint *a, uint32_t factor, uint32_t term) {
  uint64_t carry = term;
  for (int i = 0; i < a->count; i++) {
    carry += (uint64_t)a->limb[i] * factor;
    a->limb[i] = (uint32_t)carry;
    carry >>= 32;
  }
  if (carry > 0)
    a->limb[a->count++] = (uint32_t)carry;
}

void oc_bigint_shift(struct oc_bigint *a, int bits) {
  int limbs = bits / 32;
  if (bits % 32 > 0)
    oc_bigint_multiply(a, (uint32_t)1 << bits % 32, 0);
  if (a->count == 0 || limbs == 0)
    return;
  memmove(a->limb + limbs, a->limb, (size_t)a->count * sizeof a->limb[0]);
  memset(a->limb, 0, (size_t)limbs * sizeof a->limb[0]);
  a->count += limbs;
}

void oc_bigint_multiply_fives(struct oc_bigint *a, int power) {
  enum { FIVE_TO_13 = 1220703125 };
  for (; power >= 13; power -= 13)
    oc_bigint_multiply(a, FIVE_TO_13, 0);
  uint32_t rest = 1;
  for (; power > 0; power--)
    rest *= 5;
  if (rest > 1)
    oc_bigint_multiply(a, rest, 0);
}

void oc_bigint_add(const struct oc_bigint *a, const struct oc_bigint *b, struct oc_bigint *sum) {
  const struct oc_bigint *longer = a->count < b->count ? b : a;
  const struct oc_bigint *shorter = longer == a ? b : a;
  uint64_t carry = 0;
  for (int i = 0; i < longer->count; i++) {
    carry += (uint64_t)longer->limb[i] + (i < shorter->count ? shorter->limb[i] : 0);
    sum->limb[i] = (uint32_t)carry;
    carry >>= 32;
  }
  sum->count = longer->count;
  if (carry > 0)
    sum->limb[sum->count++] = (uint32_t)carry;
}

int oc_bigint_compare(const struct oc_bigint *a, const struct oc_bigint *b) {
  if (a->count != b->count)
    return a->count < b->count ? -1 : 1;
  for (int i = a->count - 1; i >= 0; i--)
    if (a->limb[i] != b->limb[i])
      return a->limb[i] < b->limb[i] ? -1 : 1;
  return 0;
}

int oc_bigint_bits(const struct oc_bigint *a) {
  int bits = 32 * a->count;
  if (a->count > 0)
    for (uint32_t top = a->limb[a->count - 1]; top >> 31 == 0; top <<= 1)
      bits--;
  return bits;
}

int oc_bigint_slack(const struct oc_bigint *divisor) {
  return 32 * divisor->count - oc_bigint_bits(divisor);
}

/* a -= b * factor, which must not go below 0. */
static void subtract(struct oc_bigint *a, const struct oc_bigint *b, uint32_t factor) {
  uint64_t borrow = 0;
  for (int i = 0; i < a->count; i++) {
    borrow += (uint64_t)factor * (i < b->count ? b->limb[i] : 0);
    uint32_t low = (uint32_t)borrow;
    borrow = (borrow >> 32) + (a->limb[i] < low);
    a->limb[i] -= low;
  }
  trim(a);
}

uint32_t oc_bigint_divide(struct oc_bigint *a, const struct oc_bigint *divisor) {
  int n = divisor->count;
  if (a->count < n)
    return 0;
  uint64_t top = a->limb[n - 1];
  if (a->count > n)
    top |= (uint64_t)a->limb[n] << 32;
  /* Too small by a few at most, never too great: the divisor's top bit is set. */
  uint32_t quotient = (uint32_t)(top / ((uint64_t)divisor->limb[n - 1] + 1));
  if (quotient > 0)
    subtract(a, divisor, quotient);
  for (; oc_bigint_compare(a, divisor) >= 0; quotient++)
    subtract(a, divisor, 1);
  return quotient;
}
