/* SPDX-License-Identifier: MIT */
/* Random numbers of the simulations: the same on every machine. */
#ifndef OHM_TESTS_DRAW_H
#define OHM_TESTS_DRAW_H

#include <math.h>
#include <stddef.h>
#include <stdint.h>

/** Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014. */
static inline uint64_t draw_bits(uint64_t *state) {
  uint64_t z = *state += 0x9E3779B97F4A7C15;
  z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9;
  z = (z ^ z >> 27) * 0x94D049BB133111EB;
  return z ^ z >> 31;
}

/** Between 0 and 1, neither of them. */
static inline double draw_share(uint64_t *state) {
  return ((double)(draw_bits(state) >> 11) + 0.5) / 9007199254740992.0;
}

static inline double draw_between(uint64_t *state, double low, double high) {
  return low + (high - low) * draw_share(state);
}

static inline size_t draw_below(uint64_t *state, size_t count) {
  return (size_t)(draw_bits(state) % count);
}

/** An error known by its limit. */
static inline double draw_rectangular(uint64_t *state, double limit) {
  return draw_between(state, -limit, limit);
}

/** One known by its standard uncertainty. */
static inline double draw_normal(uint64_t *state, double u) {
  double radius = sqrt(-2 * log(draw_share(state)));
  return u * radius * cos(6.283185307179586 * draw_share(state));
}

#endif
