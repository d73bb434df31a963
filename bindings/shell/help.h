/* SPDX-License-Identifier: MIT */
#ifndef SHELL_HELP_H
#define SHELL_HELP_H

#include "arguments.h"

/** The help of a verb on standard output; NULL for that of the program. */
void shell_help_print(const struct shell_verb *verb);

#endif
