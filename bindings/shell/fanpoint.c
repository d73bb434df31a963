/* SPDX-License-Identifier: MIT */
#include <ohmcurve.h>

#include "answers.h"

int shell_fanpoint_run(const struct shell_arguments *arguments) {
  return shell_answers_tell(arguments, ohm_bench_fanpoint);
}
