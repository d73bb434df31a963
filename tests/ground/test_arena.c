/* SPDX-License-Identifier: MIT */
#include "../support.h"
#include "../../lib/ground/arena.h"

#include <stdint.h>
#include <string.h>

/* Sizes about those of a block, each piece filled with its own byte. */
START_TEST(pieces_of_any_size_lie_apart)
{
  static const size_t sizes[] = {0, 1, 15, 16, 17, 4000, 4096, 5000, 100000, 3, 4095};
  enum { PIECES = 200, SIZES = sizeof sizes / sizeof sizes[0] };
  struct oc_arena arena = {0};
  unsigned char *pieces[PIECES];
  for (int i = 0; i < PIECES; i++) {
    pieces[i] = oc_arena_allocate(&arena, sizes[i % SIZES]);
    ck_assert_ptr_nonnull(pieces[i]);
    memset(pieces[i], i, sizes[i % SIZES]);
  }
  for (int i = 0; i < PIECES; i++)
    for (size_t at = 0; at < sizes[i % SIZES]; at++)
      ck_assert_uint_eq(pieces[i][at], (unsigned char)i);
  oc_arena_free(&arena);
}
END_TEST

START_TEST(a_piece_holds_any_type)
{
  struct oc_arena arena = {0};
  for (size_t size = 0; size < 100; size++)
    ck_assert_uint_eq((uintptr_t)oc_arena_allocate(&arena, size) % _Alignof(long double), 0);
  oc_arena_free(&arena);
}
END_TEST

START_TEST(what_was_given_back_can_be_filled_again)
{
  struct oc_arena arena = {0};
  oc_arena_free(&arena);
  ck_assert_ptr_nonnull(oc_arena_allocate(&arena, 1));
  oc_arena_free(&arena);
  ck_assert_ptr_null(arena.blocks);
  ck_assert_ptr_nonnull(oc_arena_allocate(&arena, 1));
  ck_assert(!arena.failed);
  oc_arena_free(&arena);
}
END_TEST

int main(void) {
  return RUN_TESTS("arena", pieces_of_any_size_lie_apart, a_piece_holds_any_type,
                   what_was_given_back_can_be_filled_again);
}
