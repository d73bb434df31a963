/* SPDX-License-Identifier: MIT */
/* An array that grows by one member at a time. */
#ifndef OC_LIST_H
#define OC_LIST_H

#include "internal.h"

/**
 * Make room for one more member.
 *
 * In      count   how many members there are
 *         size    bytes of one
 * Out     room    how many there is room for
 * Return  where the list is now; NULL without memory, the list as it was.
 */
void *oc_list_grow(void *list, size_t count, size_t *room, size_t size);

#endif
