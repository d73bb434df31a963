/* SPDX-License-Identifier: MIT */
#include "scene.h"

#include <string.h>

START_TEST(no_finding_has_no_budget)
{
  char buffer[4] = "abc";
  ck_assert_uint_eq(ohm_report_print_budget(NULL, buffer, sizeof buffer), 0);
  ck_assert_str_eq(buffer, "");
  ohm_finding zeroed;
  memset(&zeroed, 0, sizeof zeroed);
  ck_assert_uint_eq(ohm_report_print_budget(&zeroed, NULL, 0), 0);
}
END_TEST

int main(void) {
  return RUN_TESTS("budget", no_finding_has_no_budget);
}
