/* SPDX-License-Identifier: MIT */
#include "convert.h"

int shell_degrees_run(const struct shell_arguments *arguments) {
  return shell_convert(arguments, true);
}
