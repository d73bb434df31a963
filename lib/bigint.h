/* SPDX-License-Identifier: MIT */
/* Whole numbers of up to 4096 bits, for exact conversion between bases. */
#ifndef OHM_BIGINT_H
#define OHM_BIGINT_H

#include <stdint.h>

enum { OHM_BIGINT_LIMBS = 128 };

/**
 * limb[0] is the least; limb[count - 1] is not 0; zero has a count of 0.
 * No operation checks for room: each caller shows that its numbers fit.
 */
struct ohm_bigint {
  int count;
  uint32_t limb[OHM_BIGINT_LIMBS];
};

void ohm_bigint_set(struct ohm_bigint *a, uint64_t value);

/** a = a * factor + term. */
void ohm_bigint_multiply(struct ohm_bigint *a, uint32_t factor, uint32_t term);

/** a = a * 2^bits. */
void ohm_bigint_shift(struct ohm_bigint *a, int bits);

/** a = a * 5^power. */
void ohm_bigint_multiply_fives(struct ohm_bigint *a, int power);

/** sum = a + b; sum is neither of them. */
void ohm_bigint_add(const struct ohm_bigint *a, const struct ohm_bigint *b, struct ohm_bigint *sum);

/** The sign of a - b. */
int ohm_bigint_compare(const struct ohm_bigint *a, const struct ohm_bigint *b);

/** How many bits a has: 0 for 0, 1 for 1, 2 for 2 and 3. */
int ohm_bigint_bits(const struct ohm_bigint *a);

/** By how many bits to shift a divisor, and what it divides, for
 *  ohm_bigint_divide(). */
int ohm_bigint_slack(const struct ohm_bigint *divisor);

/**
 * Divide, and leave the remainder in a.
 *
 * In      divisor  without slack; a < divisor * 2^32
 * Return  the quotient
 */
uint32_t ohm_bigint_divide(struct ohm_bigint *a, const struct ohm_bigint *divisor);

#endif
