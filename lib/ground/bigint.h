/* SPDX-License-Identifier: MIT */
/* Whole numbers of up to 4096 bits, for exact conversion between bases. */
#ifndef OC_BIGINT_H
#define OC_BIGINT_H

#include <stdint.h>

enum { OC_BIGINT_LIMBS = 128 };

/**
 * limb[0] is the least; limb[count - 1] is not 0; zero has a count of 0.
 * No operation checks for room: each caller shows that its numbers fit.
 */
struct oc_bigint {
  int count;
  uint32_t limb[OC_BIGINT_LIMBS];
};

void oc_bigint_set(struct oc_bigint *a, uint64_t value);

/** a = a * factor + term. */
void oc_bigint_multiply(struct oc_bigint *a, uint32_t factor, uint32_t term);

/** a = a * 2^bits. */
void oc_bigint_shift(struct oc_bigint *a, int bits);

/** a = a * 5^power. */
void oc_bigint_multiply_fives(struct oc_bigint *a, int power);

/** sum = a + b; sum is neither of them. */
void oc_bigint_add(const struct oc_bigint *a, const struct oc_bigint *b, struct oc_bigint *sum);

/** The sign of a - b. */
int oc_bigint_compare(const struct oc_bigint *a, const struct oc_bigint *b);

/** How many bits a has: 0 for 0, 1 for 1, 2 for 2 and 3. */
int oc_bigint_bits(const struct oc_bigint *a);

/** By how many bits to shift a divisor, and what it divides, for
 *  oc_bigint_divide(). */
int oc_bigint_slack(const struct oc_bigint *divisor);

/**
 * Divide, and leave the remainder in a.
 *
 * In      divisor  without slack; a < divisor * 2^32
 * Return  the quotient
 */
uint32_t oc_bigint_divide(struct oc_bigint *a, const struct oc_bigint *divisor);

#endif
