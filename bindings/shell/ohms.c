/* SPDX-License-Identifier: MIT */
#include "convert.h"

int shell_ohms_run(const struct shell_arguments *arguments) {
  return shell_convert(arguments, false);
}
