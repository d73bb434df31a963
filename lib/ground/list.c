/* SPDX-License-Identifier: MIT */
#include "list.h"

#include <stdlib.h>

void *oc_list_grow(void *list, size_t count, size_t *room, size_t size) {
  if (count < *room)
    return list;
  size_t wanted = *room ? 2 * *room : 16;
  void *moved = realloc(list, wanted * size);
  if (moved)
    *room = wanted;
  return moved;
}
