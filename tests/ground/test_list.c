/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>

#include "../../lib/ground/list.h"

START_TEST(a_list_that_grows_keeps_its_members)
{
  int *list = NULL;
  size_t room = 0;
  for (size_t count = 0; count < 1000; count++) {
    int *moved = oc_list_grow(list, count, &room, sizeof *list);
    ck_assert_ptr_nonnull(moved);
    list = moved;
    ck_assert_uint_gt(room, count);
    list[count] = (int)count;
  }
  for (size_t i = 0; i < 1000; i++)
    ck_assert_int_eq(list[i], (int)i);
  free(list);
}
END_TEST

START_TEST(a_list_with_room_stays_where_it_is)
{
  size_t room = 0;
  int *list = oc_list_grow(NULL, 0, &room, sizeof *list);
  ck_assert_ptr_eq(oc_list_grow(list, room - 1, &room, sizeof *list), list);
  free(list);
}
END_TEST

int main(void) {
  return RUN_TESTS("list", a_list_that_grows_keeps_its_members, a_list_with_room_stays_where_it_is);
}
