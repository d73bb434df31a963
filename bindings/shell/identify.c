/* SPDX-License-Identifier: MIT */
#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "shelf.h"

/* A reading that is no pair is one that pins did not look at. */
static int write_pins(const struct shell_arguments *arguments, const ohm_bench *bench) {
  ohm_error error;
  ohm_answer *answer = ohm_bench_pins(bench, &error);
  if (!answer)
    return shell_bench_refuse(bench, &error);
  int status = ohm_answer_count(answer, OHM_GROUP_READINGS) == ohm_bench_count(bench)
                   ? shell_answers_give(arguments, answer)
                   : shell_refuse(SHELL_EXIT_DATA, "--pins takes pairs of pins and nothing else: "
                                                   "write each reading as 1-2=480");
  ohm_answer_free(answer);
  return status;
}

static int identify_pins(const struct shell_arguments *arguments, ohm_bench *bench) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = 0; i < arguments->count && status == SHELL_EXIT_DONE; i++)
    status = shell_bench_read(bench, arguments->operands[i]);
  return status == SHELL_EXIT_DONE ? write_pins(arguments, bench) : status;
}

static int identify(const struct shell_arguments *arguments, ohm_bench *bench) {
  if (arguments->values[SHELL_OPTION_PINS])
    return identify_pins(arguments, bench);
  int status = shell_bench_read_ohms(bench, arguments, 0);
  return status == SHELL_EXIT_DONE ? shell_answers_ask(arguments, bench, ohm_bench_identify)
                                   : status;
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
