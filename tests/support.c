/* SPDX-License-Identifier: MIT */
#include "support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void check_near(double got, double want, double tol, const char *text, const char *file, int line) {
  if (!is_near(got, want, tol))
    ck_abort_msg("%s:%d: %s is %.17g, not within %.17g of %.17g", file, line, text, got, tol, want);
}

void check_status(ohm_status expected, int got, const char *function, const char *file, int line) {
  if (got != (int)expected)
    ck_abort_msg("%s:%d: %s gave status %d (%s), not %d (%s)", file, line, function, got,
                 ohm_status_name(got), (int)expected, ohm_status_name((int)expected));
}

int run_tests(const char *name, int count, const TTest *const *tests) {
  Suite *suite = suite_create(name);
  TCase *tcase = tcase_create(name);
  /* A loaded machine is no fault. */
  tcase_set_timeout(tcase, 120);
  suite_add_tcase(suite, tcase);
  for (; *tests; tests++)
    tcase_add_loop_test(tcase, *tests, 0, count);
  SRunner *runner = srunner_create(suite);
  srunner_run_all(runner, CK_ENV);
  int failed = srunner_ntests_failed(runner);
  srunner_free(runner);
  return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

char *source_path(const char *name) {
  const char *top = getenv("srcdir");
  if (!top)
    top = ".";
  size_t size = strlen(top) + 1 + strlen(name) + 1;
  char *path = malloc(size);
  if (!path)
    abort();
  snprintf(path, size, "%s/%s", top, name);
  return path;
}
