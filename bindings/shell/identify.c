/* SPDX-License-Identifier: MIT */
#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "shelf.h"

/* Of the notation of pairs all operands are to be: others would not be looked at. */
static int read_pairs(ohm_bench *bench, const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = 0; i < arguments->count && status == SHELL_EXIT_DONE; i++)
    status = shell_bench_read(bench, arguments->operands[i]);
  return status;
}

static int identify(const struct shell_arguments *arguments, ohm_bench *bench) {
  if (!arguments->values[SHELL_OPTION_PINS]) {
    int status = shell_bench_read_ohms(bench, arguments, 0);
    return status == SHELL_EXIT_DONE ? shell_answers_ask(arguments, bench, ohm_bench_identify)
                                     : status;
  }
  int status = read_pairs(bench, arguments);
  return status == SHELL_EXIT_DONE ? shell_answers_ask(arguments, bench, ohm_bench_pins) : status;
}

int shell_identify_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  struct shell_shelf shelf;
  ohm_bench *bench = shell_bench_new(arguments, &status);
  if (!bench)
    return status;
  status = shell_shelf_load(&shelf, arguments);
  if (status == SHELL_EXIT_DONE)
    status = shell_shelf_compare(&shelf, bench);
  if (status == SHELL_EXIT_DONE)
    status = identify(arguments, bench);
  ohm_bench_free(bench);
  shell_shelf_free(&shelf);
  return status;
}
