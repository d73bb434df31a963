/* SPDX-License-Identifier: MIT */
/* Memory that is given back at once, for texts of any length. */
#ifndef OC_ARENA_H
#define OC_ARENA_H

#include "internal.h"

struct oc_arena_block;

/** Starts all zero. */
struct oc_arena {
  struct oc_arena_block *blocks;
  bool failed; /**< an allocation failed since */
};

/** Memory for any type, until oc_arena_free(); NULL when there is none. */
void *oc_arena_allocate(struct oc_arena *arena, size_t size);

/** Give all of it back; the arena is as at its start. */
void oc_arena_free(struct oc_arena *arena);

#endif
