/* SPDX-License-Identifier: MIT */
#include "arena.h"

#include <stdlib.h>

enum { BLOCK_SIZE = 4096 };

/* The alignment that malloc gives holds behind the head too. */
union unit {
  long double number;
  void *pointer;
  long long whole;
};

struct oc_arena_block {
  struct oc_arena_block *next;
  size_t used; /* in units */
  size_t room;
  union unit units[];
};

static struct oc_arena_block *add_block(struct oc_arena *arena, size_t units) {
  size_t room = units > BLOCK_SIZE / sizeof(union unit) ? units : BLOCK_SIZE / sizeof(union unit);
  struct oc_arena_block *block = malloc(sizeof *block + room * sizeof(union unit));
  if (!block) {
    arena->failed = true;
    return NULL;
  }
  *block = (struct oc_arena_block){.next = arena->blocks, .room = room};
  arena->blocks = block;
  return block;
}

void *oc_arena_allocate(struct oc_arena *arena, size_t size) {
  size_t units = size / sizeof(union unit) + 1;
  struct oc_arena_block *block = arena->blocks;
  if (!block || block->room - block->used < units)
    block = add_block(arena, units);
  if (!block)
    return NULL;
  union unit *place = block->units + block->used;
  block->used += units;
  return place;
}

void oc_arena_free(struct oc_arena *arena) {
  while (arena->blocks) {
    struct oc_arena_block *next = arena->blocks->next;
    free(arena->blocks);
    arena->blocks = next;
  }
  arena->failed = false;
}
